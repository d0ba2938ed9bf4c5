// The drawing face (an ISO 3098 face) as outlines and advances, so that measuring, the PDF, the SVG and the
// PNG all set text from the same numbers.
#pragma once

#include "drawing/drawing.hpp"

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace gangway::drawing {

/// One step of a glyph outline, in font units, y up. Curve: cubic with controls a and b, ending at `to`.
struct OutlineStep {
    enum class Kind { Move, Line, Curve, Close };
    Kind kind = Kind::Close;
    Pt a, b, to;
};

/// A glyph in font units; the outline is filled by the non-zero rule.
struct Glyph {
    unsigned index = 0; ///< in the font file
    double advance = 0;
    double y_min = 0, y_max = 0; ///< of the ink; both 0 for a space
    std::vector<OutlineStep> outline;
};

/// A face read from a font file, never changed afterwards.
class Face {
public:
    /// The drawing face, read once. When no font file is found it has no outlines and every glyph is 0.6 em
    /// wide, so that layout still works; writers ask `loaded()` and refuse.
    static const Face& drawingFace();

    explicit Face(const std::string& path);

    bool loaded() const { return loaded_; }
    double unitsPerEm() const { return units_per_em_; }
    /// Height of the outline of H, in font units.
    double capHeight() const { return cap_height_; }
    /// The glyph of a code point; the font's own "missing" glyph when it has none.
    const Glyph& glyph(char32_t code) const;

private:
    bool loaded_ = false;
    double units_per_em_ = 1000;
    double cap_height_ = 700;
    Glyph missing_;
    std::unordered_map<char32_t, Glyph> glyphs_; // looked up, never walked
};

/// The code points of UTF-8 text; each byte that is not valid UTF-8 becomes U+FFFD.
std::u32string codePoints(std::string_view utf8);

/// The same text as valid UTF-8 without control characters.
std::string cleanUtf8(std::string_view utf8);
void appendUtf8(std::string& out, char32_t code);

/// A glyph of a line of text with its place along the baseline, from the left end, in mm.
struct PlacedGlyph {
    const Glyph* glyph = nullptr; ///< in Face::drawingFace(), which outlives everything
    char32_t code = 0;
    double x_mm = 0;
};
/// Sets a line of text in the drawing face, no kerning.
std::vector<PlacedGlyph> setText(std::string_view utf8, double height_mm);

/// Where the baseline starts on paper, after alignment and turning.
Pt baselineStart(const Text& text);

} // namespace gangway::drawing
