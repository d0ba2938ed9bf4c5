#include "export/cairo_canvas.hpp"

#include "drawing/face.hpp"
#include "export/files.hpp"

#include <cairo-ft.h>

#include <cmath>
#include <numbers>

namespace gangway::exporting {

using namespace drawing;

namespace {

// Library and face of one font, kept alive by the cairo face that uses them.
struct OpenFont {
    FT_Library library = nullptr;
    FT_Face face = nullptr;
    OpenFont() = default;
    OpenFont(const OpenFont&) = delete;
    OpenFont& operator=(const OpenFont&) = delete;
    ~OpenFont() {
        if (face != nullptr) FT_Done_Face(face);
        if (library != nullptr) FT_Done_FreeType(library);
    }
};

const cairo_user_data_key_t kOpenFontKey{};

void trace(cairo_t* context, const std::vector<Pt>& points) {
    cairo_move_to(context, points.front().x, points.front().y);
    for (std::size_t i = 1; i < points.size(); ++i)
        cairo_line_to(context, points[i].x, points[i].y);
}

} // namespace

std::expected<FontFace, std::string> drawingFontFace() {
    const std::string path = drawingFacePath();
    const auto missing = [] { return std::unexpected(missingFace()); };
    if (!Face::drawingFace().loaded()) return missing();
    auto font = std::make_unique<OpenFont>();
    if (FT_Init_FreeType(&font->library) != 0) return missing();
    if (FT_New_Face(font->library, path.c_str(), 0, &font->face) != 0) return missing();
    FontFace face(cairo_ft_font_face_create_for_ft_face(font->face, FT_LOAD_NO_HINTING));
    const auto release = [](void* held) { delete static_cast<OpenFont*>(held); };
    if (cairo_font_face_set_user_data(face.get(), &kOpenFontKey, font.get(), release) != CAIRO_STATUS_SUCCESS)
        return missing();
    static_cast<void>(font.release()); // now owned by the cairo face, which outlives its users
    return face;
}

CairoCanvas::CairoCanvas(cairo_t* context, cairo_font_face_t* face) : context_(context), face_(face) {
    cairo_set_line_cap(context_, CAIRO_LINE_CAP_BUTT);
    cairo_set_line_join(context_, CAIRO_LINE_JOIN_MITER);
    if (face_ == nullptr) return;
    cairo_set_font_face(context_, face_);
    const std::unique_ptr<cairo_font_options_t, decltype(&cairo_font_options_destroy)> options(
        cairo_font_options_create(), &cairo_font_options_destroy);
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_set_font_options(context_, options.get());
}

void CairoCanvas::source(Colour colour) {
    cairo_set_source_rgb(context_, colour.r / 255.0, colour.g / 255.0, colour.b / 255.0);
}

void CairoCanvas::pen(const Pen& pen, const std::vector<double>& pattern_mm) {
    source(pen.colour);
    cairo_set_line_width(context_, pen.width_mm);
    cairo_set_dash(context_, pattern_mm.data(), static_cast<int>(pattern_mm.size()), 0);
}

void CairoCanvas::stroke(const std::vector<Pt>& points, bool closed, const Pen& with,
                         const std::vector<double>& pattern_mm) {
    pen(with, pattern_mm);
    trace(context_, points);
    if (closed) cairo_close_path(context_);
    cairo_stroke(context_);
}

void CairoCanvas::arc(const Arc& arc, const std::vector<double>& pattern_mm) {
    pen(arc.pen, pattern_mm);
    cairo_new_path(context_);
    cairo_arc(context_, arc.centre.x, arc.centre.y, arc.radius_mm, arc.start_deg * std::numbers::pi / 180,
              arc.end_deg * std::numbers::pi / 180);
    if (arc.end_deg - arc.start_deg >= 360) cairo_close_path(context_);
    cairo_stroke(context_);
}

void CairoCanvas::fill(const Fill& fill) {
    source(fill.colour);
    cairo_set_fill_rule(context_, CAIRO_FILL_RULE_EVEN_ODD);
    trace(context_, fill.outline);
    cairo_close_path(context_);
    for (const auto& hole : fill.holes) {
        if (hole.size() < 3) continue;
        trace(context_, hole);
        cairo_close_path(context_);
    }
    cairo_fill(context_);
}

void CairoCanvas::text(const Text& text) {
    source(text.colour);
    const Pt start = baselineStart(text);
    cairo_matrix_t before;
    cairo_get_matrix(context_, &before);
    cairo_translate(context_, start.x, start.y);
    if (text.turn_deg != 0) cairo_rotate(context_, text.turn_deg * std::numbers::pi / 180);
    if (face_ != nullptr) {
        glyphs(text);
    } else {
        outlinePath(text);
        cairo_set_fill_rule(context_, CAIRO_FILL_RULE_WINDING);
        cairo_fill(context_);
    }
    cairo_set_matrix(context_, &before);
}

void CairoCanvas::glyphs(const Text& text) {
    if (font_height_mm_ != text.height_mm) {
        // User space has y up, glyphs in cairo have y down: the font matrix turns them over.
        const double em = emSize(text.height_mm);
        const cairo_matrix_t matrix{em, 0, 0, -em, 0, 0};
        cairo_set_font_matrix(context_, &matrix);
        font_height_mm_ = text.height_mm;
    }
    glyphs_.clear();
    clusters_.clear();
    std::string utf8;
    for (const PlacedGlyph& placed : setText(text.text, text.height_mm)) {
        const std::size_t bytes = utf8.size();
        appendUtf8(utf8, placed.code);
        glyphs_.push_back({placed.glyph->index, placed.x_mm, 0});
        clusters_.push_back({static_cast<int>(utf8.size() - bytes), 1});
    }
    cairo_show_text_glyphs(context_, utf8.data(), static_cast<int>(utf8.size()), glyphs_.data(),
                           static_cast<int>(glyphs_.size()), clusters_.data(),
                           static_cast<int>(clusters_.size()), static_cast<cairo_text_cluster_flags_t>(0));
}

void CairoCanvas::outlinePath(const Text& text) {
    const double k = text.height_mm / Face::drawingFace().capHeight();
    cairo_new_path(context_);
    for (const PlacedGlyph& placed : setText(text.text, text.height_mm)) {
        const double x = placed.x_mm;
        for (const OutlineStep& step : placed.glyph->outline) {
            switch (step.kind) {
            case OutlineStep::Kind::Move:
                cairo_move_to(context_, x + step.to.x * k, step.to.y * k);
                break;
            case OutlineStep::Kind::Line:
                cairo_line_to(context_, x + step.to.x * k, step.to.y * k);
                break;
            case OutlineStep::Kind::Curve:
                cairo_curve_to(context_, x + step.a.x * k, step.a.y * k, x + step.b.x * k, step.b.y * k,
                               x + step.to.x * k, step.to.y * k);
                break;
            case OutlineStep::Kind::Close:
                cairo_close_path(context_);
                break;
            }
        }
    }
}

} // namespace gangway::exporting
