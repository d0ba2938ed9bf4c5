// Sheets as one PDF: cairo draws the pages, one marked stretch of content a layer; pdf_finish.cpp makes the
// rest.
#include "drawing/bounds.hpp"
#include "drawing/face.hpp"
#include "export/cairo_canvas.hpp"
#include "export/export.hpp"
#include "export/files.hpp"
#include "export/pdf_finish.hpp"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>

namespace gangway::exporting {

namespace {

constexpr double kPointsPerMillimetre = 72 / 25.4;
constexpr double kMostMillimetres =
    5080; // 200 in, the largest page without a user unit (ISO 32000-1 annex C)

cairo_status_t append(void* closure, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

// cairo has no optional content, but it marks the content of structure tags; the finishing step turns each
// such mark into one of a layer, in this order.
class PdfCanvas : public CairoCanvas {
public:
    PdfCanvas(cairo_t* context, cairo_font_face_t* face, PdfPage& page, std::vector<std::string>& layers)
        : CairoCanvas(context, face), page_(page), layers_(layers) {}

    void beginLayer(const std::string& layer) override {
        const std::string name = drawing::cleanUtf8(layer);
        const auto known = std::find(layers_.begin(), layers_.end(), name);
        page_.layer_runs.push_back(static_cast<std::size_t>(known - layers_.begin()));
        if (known == layers_.end()) layers_.push_back(name);
        cairo_tag_begin(context(), kLayerTag, "");
    }
    void endLayer() override { cairo_tag_end(context(), kLayerTag); }

private:
    PdfPage& page_;
    std::vector<std::string>& layers_;
};

std::expected<std::string, std::string> cairoPdf(const drawing::Drawing& drawing, PdfDocument& document,
                                                 const std::function<bool(std::size_t)>& go_on) {
    auto face = drawingFontFace();
    if (!face) return std::unexpected(face.error());
    std::string bytes;
    const drawing::Sheet& first = drawing.sheets.front();
    const Surface surface(cairo_pdf_surface_create_for_stream(
        append, &bytes, first.width_mm * kPointsPerMillimetre, first.height_mm * kPointsPerMillimetre));
    const Context context(cairo_create(surface.get()));
    for (const drawing::Sheet& sheet : drawing.sheets) {
        if (go_on && !go_on(document.pages.size())) return std::unexpected("it was cancelled");
        PdfPage page;
        page.width_pt = sheet.width_mm * kPointsPerMillimetre;
        page.height_pt = sheet.height_mm * kPointsPerMillimetre;
        page.label = drawing::cleanUtf8(sheet.number);
        page.group = drawing::cleanUtf8(sheet.group);
        page.bookmark = drawing::cleanUtf8(
            sheet.number.empty() ? sheet.title : fmt::format("{} {}", sheet.number, sheet.title));
        cairo_pdf_surface_set_size(surface.get(), page.width_pt, page.height_pt);
        // Points with y down to paper mm with y up: here, once.
        const cairo_matrix_t paper{kPointsPerMillimetre, 0, 0, -kPointsPerMillimetre, 0, page.height_pt};
        cairo_set_matrix(context.get(), &paper);
        PdfCanvas canvas(context.get(), face->get(), page, document.layers);
        walk(sheet, canvas);
        cairo_show_page(context.get());
        document.pages.push_back(std::move(page));
    }
    cairo_surface_finish(surface.get());
    for (const cairo_status_t status : {cairo_status(context.get()), cairo_surface_status(surface.get())})
        if (status != CAIRO_STATUS_SUCCESS)
            return std::unexpected(
                fmt::format("cairo could not draw the sheets: {}", cairo_status_to_string(status)));
    return bytes;
}

/// Of each page, what leads to another sheet of the drawing: items in a row with one id are one link.
std::vector<std::vector<PdfLink>> linksOf(const drawing::Drawing& drawing) {
    std::map<std::string, std::size_t, std::less<>> pages;
    for (std::size_t i = 0; i < drawing.sheets.size(); ++i)
        pages.emplace(drawing.sheets[i].number, i);
    std::vector<std::vector<PdfLink>> links(drawing.sheets.size());
    for (std::size_t i = 0; i < drawing.sheets.size(); ++i) {
        const std::string* last = nullptr;
        for (const drawing::Item& item : drawing.sheets[i].items) {
            const bool goes_on = last != nullptr && *last == item.id;
            last = nullptr;
            if (!item.id.starts_with(drawing::kLeadsTo)) continue;
            const auto target = pages.find(std::string_view(item.id).substr(drawing::kLeadsTo.size()));
            if (target == pages.end()) continue;
            last = &item.id;
            const drawing::Bounds at = drawing::bounds(item.primitive);
            const PdfLink here{at.low.x * kPointsPerMillimetre, at.low.y * kPointsPerMillimetre,
                               at.high.x * kPointsPerMillimetre, at.high.y * kPointsPerMillimetre,
                               target->second};
            if (!goes_on) {
                links[i].push_back(here);
                continue;
            }
            PdfLink& whole = links[i].back();
            whole.left_pt = std::min(whole.left_pt, here.left_pt);
            whole.bottom_pt = std::min(whole.bottom_pt, here.bottom_pt);
            whole.right_pt = std::max(whole.right_pt, here.right_pt);
            whole.top_pt = std::max(whole.top_pt, here.top_pt);
        }
    }
    return links;
}

} // namespace

std::expected<void, std::string> writePdf(const drawing::Drawing& drawing, const std::filesystem::path& file,
                                          const std::function<bool(std::size_t drawn)>& go_on) {
    if (drawing.sheets.empty())
        return std::unexpected(fmt::format("cannot write '{}': there is no sheet to print", file.string()));
    for (const drawing::Sheet& sheet : drawing.sheets)
        if (!(sheet.width_mm > 0 && sheet.width_mm <= kMostMillimetres && sheet.height_mm > 0 &&
              sheet.height_mm <= kMostMillimetres))
            return std::unexpected(
                fmt::format("cannot write '{}': sheet '{}' is {} x {} mm; a side may be up to {} mm",
                            file.string(), sheet.number, sheet.width_mm, sheet.height_mm, kMostMillimetres));
    PdfDocument document;
    const auto links = linksOf(drawing);
    document.title = drawing::cleanUtf8(drawing.title);
    document.subject = drawing::cleanUtf8(drawing.subject);
    document.author = drawing::cleanUtf8(drawing.author);
    document.date = drawing.date;
    const auto drawn = cairoPdf(drawing, document, go_on);
    for (std::size_t i = 0; i < document.pages.size(); ++i)
        document.pages[i].links = links[i];
    if (!drawn) return std::unexpected(fmt::format("cannot write '{}': {}", file.string(), drawn.error()));
    const auto finished = finishPdf(*drawn, document);
    if (!finished.problem.empty())
        return std::unexpected(fmt::format("cannot write '{}': {}", file.string(), finished.problem));
    return writeFile(file, finished.bytes);
}

} // namespace gangway::exporting
