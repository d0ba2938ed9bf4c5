// Sheets as pixels, and pixels as PNG files.
#include "export/cairo_canvas.hpp"
#include "export/export.hpp"
#include "export/files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstring>

namespace gangway::exporting {

namespace {

constexpr int kMostPixels = 32767; // a side of a cairo picture
constexpr double kMillimetresPerInch = 25.4;

std::uint8_t share(unsigned value, unsigned alpha) {
    return static_cast<std::uint8_t>((value * alpha + 127) / 255);
}

// cairo's 32-bit pixels are native words: alpha (or nothing), red, green, blue from the top byte down.
std::uint32_t word(unsigned a, unsigned r, unsigned g, unsigned b) {
    return (a << 24U) | (r << 16U) | (g << 8U) | b;
}

// The word whose four bytes lie in memory in this order; whole words let the copy loop run wide.
std::uint32_t bytesInOrder(std::uint32_t first, std::uint32_t second, std::uint32_t third,
                           std::uint32_t fourth) {
    constexpr std::uint32_t kByte = 0xFF;
    if constexpr (std::endian::native == std::endian::little)
        return (first & kByte) | (second & kByte) << 8U | (third & kByte) << 16U | (fourth & kByte) << 24U;
    return (first & kByte) << 24U | (second & kByte) << 16U | (third & kByte) << 8U | (fourth & kByte);
}

cairo_status_t append(void* closure, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

} // namespace

Bitmap rasterise(const drawing::Sheet& sheet, drawing::Pt lower_left, double width_mm, double height_mm,
                 double px_per_mm, std::optional<drawing::Colour> paper) {
    const double columns = std::round(width_mm * px_per_mm);
    const double rows = std::round(height_mm * px_per_mm);
    if (!(columns >= 1 && columns <= kMostPixels && rows >= 1 && rows <= kMostPixels)) return {};
    Bitmap bitmap;
    bitmap.width = static_cast<int>(columns);
    bitmap.height = static_cast<int>(rows);

    const Surface surface(cairo_image_surface_create(paper ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32,
                                                     bitmap.width, bitmap.height));
    const Context context(cairo_create(surface.get()));
    if (paper) {
        cairo_set_source_rgb(context.get(), paper->r / 255.0, paper->g / 255.0, paper->b / 255.0);
        cairo_paint(context.get());
    }
    // The lower edge of the part is the lower edge of the picture; y turns over here, once.
    cairo_translate(context.get(), 0, rows);
    cairo_scale(context.get(), px_per_mm, -px_per_mm);
    cairo_translate(context.get(), -lower_left.x, -lower_left.y);
    CairoCanvas canvas(context.get());
    const drawing::Bounds window{lower_left, {lower_left.x + width_mm, lower_left.y + height_mm}};
    walk(sheet, canvas, paper.value_or(drawing::kWhite), window);
    if (cairo_status(context.get()) != CAIRO_STATUS_SUCCESS) return {};
    cairo_surface_flush(surface.get());

    const unsigned char* pixels = cairo_image_surface_get_data(surface.get());
    const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface.get()));
    const auto width = static_cast<std::size_t>(bitmap.width);
    const auto height = static_cast<std::size_t>(bitmap.height);
    bitmap.rgba.resize(width * height * 4);
    for (std::size_t y = 0; y < height; ++y) {
        for (std::size_t x = 0; x < width; ++x) {
            std::uint32_t pixel = 0;
            std::memcpy(&pixel, pixels + y * stride + x * 4, 4);
            const std::uint32_t alpha = paper ? 255 : pixel >> 24U;
            const std::uint32_t rgba = bytesInOrder(pixel >> 16U, pixel >> 8U, pixel, alpha);
            std::memcpy(bitmap.rgba.data() + (y * width + x) * 4, &rgba, 4);
        }
    }
    return bitmap;
}

std::expected<void, std::string> writePng(const Bitmap& picture, const std::filesystem::path& file) {
    const auto width = static_cast<std::size_t>(std::max(picture.width, 0));
    const auto height = static_cast<std::size_t>(std::max(picture.height, 0));
    if (width == 0 || height == 0 || width > kMostPixels || height > kMostPixels ||
        picture.rgba.size() != width * height * 4)
        return std::unexpected(fmt::format("cannot write '{}': a picture of {} x {} pixels with {} bytes",
                                           file.string(), picture.width, picture.height,
                                           picture.rgba.size()));
    bool opaque = true;
    for (std::size_t i = 3; i < picture.rgba.size() && opaque; i += 4)
        opaque = picture.rgba[i] == 255;

    const Surface surface(cairo_image_surface_create(opaque ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32,
                                                     picture.width, picture.height));
    if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS)
        return std::unexpected(fmt::format("cannot write '{}': no memory for the picture", file.string()));
    unsigned char* pixels = cairo_image_surface_get_data(surface.get());
    const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface.get()));
    const std::uint8_t* in = picture.rgba.data();
    for (std::size_t y = 0; y < height; ++y) {
        for (std::size_t x = 0; x < width; ++x, in += 4) {
            const std::uint32_t pixel =
                word(in[3], share(in[0], in[3]), share(in[1], in[3]), share(in[2], in[3]));
            std::memcpy(pixels + y * stride + x * 4, &pixel, 4);
        }
    }
    cairo_surface_mark_dirty(surface.get());
    std::string bytes;
    const cairo_status_t status = cairo_surface_write_to_png_stream(surface.get(), append, &bytes);
    if (status != CAIRO_STATUS_SUCCESS)
        return std::unexpected(
            fmt::format("cannot write '{}': {}", file.string(), cairo_status_to_string(status)));
    return writeFile(file, bytes);
}

std::expected<std::vector<std::filesystem::path>, std::string>
writePngs(const drawing::Drawing& drawing, const std::filesystem::path& folder, double dpi) {
    const auto targets = sheetFiles(drawing, folder, ".png");
    if (!targets) return targets;
    for (std::size_t i = 0; i < targets->size(); ++i) {
        const drawing::Sheet& sheet = drawing.sheets[i];
        const Bitmap picture =
            rasterise(sheet, {}, sheet.width_mm, sheet.height_mm, dpi / kMillimetresPerInch);
        if (picture.rgba.empty())
            return std::unexpected(
                fmt::format("a sheet of {} x {} mm at {} dots an inch makes no picture; give 10 to "
                            "1900 for A3",
                            sheet.width_mm, sheet.height_mm, dpi));
        if (auto written = writePng(picture, (*targets)[i]); !written)
            return std::unexpected(written.error());
    }
    return targets;
}

} // namespace gangway::exporting
