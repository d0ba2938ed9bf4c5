// Pictures of tests: PNG in and out, and comparison with a golden picture by two limits.
#pragma once

#include <cairo.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace gangway::test {

/// 8 bits a channel, opaque; row 0 on top.
struct Image {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba;
};

inline std::optional<Image> readPng(const std::filesystem::path& file) {
    cairo_surface_t* surface = cairo_image_surface_create_from_png(file.c_str());
    std::optional<Image> image;
    if (cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS) {
        image = Image{cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), {}};
        const unsigned char* data = cairo_image_surface_get_data(surface);
        const int stride = cairo_image_surface_get_stride(surface);
        for (int y = 0; y < image->height; ++y)
            for (int x = 0; x < image->width; ++x) {
                const unsigned char* p =
                    data + y * stride + x * 4; // blue, green, red on little-endian machines
                image->rgba.insert(image->rgba.end(), {p[2], p[1], p[0], 255});
            }
    }
    cairo_surface_destroy(surface);
    return image;
}

inline bool writePng(const std::filesystem::path& file, const Image& image) {
    std::error_code ignored;
    std::filesystem::create_directories(file.parent_path(), ignored);
    cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, image.width, image.height);
    unsigned char* data = cairo_image_surface_get_data(surface);
    const int stride = cairo_image_surface_get_stride(surface);
    for (int y = 0; y < image.height; ++y)
        for (int x = 0; x < image.width; ++x) {
            const auto from = static_cast<std::size_t>(4 * (y * image.width + x));
            unsigned char* p = data + y * stride + x * 4;
            p[0] = image.rgba[from + 2];
            p[1] = image.rgba[from + 1];
            p[2] = image.rgba[from];
            p[3] = 255;
        }
    cairo_surface_mark_dirty(surface);
    const bool good = cairo_surface_write_to_png(surface, file.c_str()) == CAIRO_STATUS_SUCCESS;
    cairo_surface_destroy(surface);
    return good;
}

/// Differences of channel values, 0 to 255.
struct ImageDifference {
    int worst = 0;   ///< of any channel of any pixel
    double mean = 0; ///< over all channels and pixels
    int worst_x = 0;
    int worst_y = 0;
};

/// nullopt when the sizes differ.
inline std::optional<ImageDifference> compareImages(const Image& a, const Image& b) {
    if (a.width != b.width || a.height != b.height || a.rgba.empty()) return std::nullopt;
    ImageDifference result;
    double sum = 0;
    for (std::size_t i = 0; i < a.rgba.size(); ++i) {
        if (i % 4 == 3) continue;
        const int apart = std::abs(static_cast<int>(a.rgba[i]) - static_cast<int>(b.rgba[i]));
        sum += apart;
        if (apart <= result.worst) continue;
        result.worst = apart;
        result.worst_x = static_cast<int>(i / 4) % a.width;
        result.worst_y = static_cast<int>(i / 4) / a.width;
    }
    result.mean = sum / (static_cast<double>(a.rgba.size()) * 0.75);
    return result;
}

/// Empty when `actual` is within both limits of the golden picture; otherwise a sentence with file,
/// measure, limit and worst place. On a mismatch the actual picture and a picture of the differences lie
/// in `out_folder`. With GANGWAY_UPDATE_GOLDEN=1 the golden picture is written instead.
inline std::string compareWithGolden(const Image& actual, const std::filesystem::path& golden,
                                     int worst_limit, double mean_limit,
                                     const std::filesystem::path& out_folder) {
    const char* update = std::getenv("GANGWAY_UPDATE_GOLDEN");
    if (update != nullptr && std::string(update) == "1")
        return writePng(golden, actual) ? "" : "cannot write " + golden.string();
    const auto wanted = readPng(golden);
    const auto actual_file = out_folder / (golden.stem().string() + ".actual.png");
    if (!wanted) {
        writePng(actual_file, actual);
        return "cannot read " + golden.string() + "; the picture drawn is " + actual_file.string();
    }
    const auto difference = compareImages(actual, *wanted);
    if (!difference) return golden.string() + ": the size differs";
    if (difference->worst <= worst_limit && difference->mean <= mean_limit) return {};
    writePng(actual_file, actual);
    Image picture = actual;
    for (std::size_t i = 0; i < picture.rgba.size(); ++i)
        if (i % 4 != 3)
            picture.rgba[i] = static_cast<std::uint8_t>(std::min(
                255, 4 * std::abs(static_cast<int>(actual.rgba[i]) - static_cast<int>(wanted->rgba[i]))));
    writePng(out_folder / (golden.stem().string() + ".diff.png"), picture);
    return golden.string() + ": worst " + std::to_string(difference->worst) + " (limit " +
           std::to_string(worst_limit) + ") at " + std::to_string(difference->worst_x) + ", " +
           std::to_string(difference->worst_y) + ", mean " + std::to_string(difference->mean) + " (limit " +
           std::to_string(mean_limit) + "); see " + actual_file.string();
}

} // namespace gangway::test
