// The canvas drawn by cairo: real text for the PDF, outlines for pixels.
#pragma once

#include "export/canvas.hpp"

#include <cairo.h>

#include <expected>
#include <memory>
#include <string>
#include <vector>

namespace gangway::exporting {

struct SurfaceDone {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct ContextDone {
    void operator()(cairo_t* context) const { cairo_destroy(context); }
};
struct FaceDone {
    void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
};
using Surface = std::unique_ptr<cairo_surface_t, SurfaceDone>;
using Context = std::unique_ptr<cairo_t, ContextDone>;
using FontFace = std::unique_ptr<cairo_font_face_t, FaceDone>;

/// The drawing face for cairo's own text; the error is a sentence naming the font file.
std::expected<FontFace, std::string> drawingFontFace();

/// Draws on a context whose user space is paper mm, y up.
class CairoCanvas : public Canvas {
public:
    /// With a face, text is set as text in it; without, as filled outlines (cairo 1.16 puts glyphs in
    /// pictures on whole pixels, which spoils small text on screen).
    explicit CairoCanvas(cairo_t* context, cairo_font_face_t* face = nullptr);

    void beginLayer(const std::string&) override {}
    void endLayer() override {}
    void object(const std::string&) override {}
    void stroke(const std::vector<drawing::Pt>& points, bool closed, const drawing::Pen& pen,
                const std::vector<double>& pattern_mm) override;
    void arc(const drawing::Arc& arc, const std::vector<double>& pattern_mm) override;
    void fill(const drawing::Fill& fill) override;
    void text(const drawing::Text& text) override;

protected:
    cairo_t* context() const { return context_; }

private:
    void source(drawing::Colour colour);
    void pen(const drawing::Pen& pen, const std::vector<double>& pattern_mm);
    void outlinePath(const drawing::Text& text);
    void glyphs(const drawing::Text& text);

    cairo_t* context_; // the caller's
    cairo_font_face_t* face_;
    double font_height_mm_ = 0; // of the font now set
    std::vector<cairo_glyph_t> glyphs_;
    std::vector<cairo_text_cluster_t> clusters_;
};

} // namespace gangway::exporting
