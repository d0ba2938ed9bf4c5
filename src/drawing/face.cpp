#include "drawing/face.hpp"

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_OUTLINE_H

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <numbers>

namespace gangway::drawing {

namespace {

std::string firstFound(const std::string& name, const std::string& system_folder) {
    std::vector<std::filesystem::path> places;
    if (const char* assets = std::getenv("GANGWAY_ASSETS"))
        places.push_back(std::filesystem::path(assets) / "fonts");
    places.emplace_back(system_folder);
    for (const auto& place : places) {
        std::error_code ignored;
        if (std::filesystem::is_regular_file(place / name, ignored)) return (place / name).string();
    }
    return (places.back() / name).string();
}

struct LibraryDone {
    void operator()(FT_Library library) const { FT_Done_FreeType(library); }
};
struct FaceDone {
    void operator()(FT_Face face) const { FT_Done_Face(face); }
};

Pt point(const FT_Vector* v) {
    return {static_cast<double>(v->x), static_cast<double>(v->y)};
}
Pt between(Pt from, Pt to, double part) {
    return {from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part};
}

using Steps = std::vector<OutlineStep>;

void closeContour(Steps& steps) {
    if (!steps.empty() && steps.back().kind != OutlineStep::Kind::Close)
        steps.push_back({OutlineStep::Kind::Close, {}, {}, {}});
}

int moveTo(const FT_Vector* to, void* user) {
    auto& steps = *static_cast<Steps*>(user);
    closeContour(steps);
    steps.push_back({OutlineStep::Kind::Move, {}, {}, point(to)});
    return 0;
}

int lineTo(const FT_Vector* to, void* user) {
    static_cast<Steps*>(user)->push_back({OutlineStep::Kind::Line, {}, {}, point(to)});
    return 0;
}

// A quadratic curve is the cubic whose controls lie two thirds of the way to the quadratic's one.
int conicTo(const FT_Vector* control, const FT_Vector* to, void* user) {
    auto& steps = *static_cast<Steps*>(user);
    const Pt start = steps.back().to;
    const Pt middle = point(control);
    const Pt end = point(to);
    steps.push_back(
        {OutlineStep::Kind::Curve, between(start, middle, 2.0 / 3.0), between(end, middle, 2.0 / 3.0), end});
    return 0;
}

int cubicTo(const FT_Vector* first, const FT_Vector* second, const FT_Vector* to, void* user) {
    static_cast<Steps*>(user)->push_back({OutlineStep::Kind::Curve, point(first), point(second), point(to)});
    return 0;
}

Glyph readGlyph(FT_Face face, unsigned index) {
    Glyph glyph;
    glyph.index = index;
    if (FT_Load_Glyph(face, index, FT_LOAD_NO_SCALE) != 0) return glyph;
    glyph.advance = static_cast<double>(face->glyph->metrics.horiAdvance);
    FT_Outline& outline = face->glyph->outline;
    if (outline.n_points == 0) return glyph;
    FT_BBox box;
    FT_Outline_Get_CBox(&outline, &box);
    glyph.y_min = static_cast<double>(box.yMin);
    glyph.y_max = static_cast<double>(box.yMax);
    FT_Outline_Funcs funcs{moveTo, lineTo, conicTo, cubicTo, 0, 0};
    FT_Outline_Decompose(&outline, &funcs, &glyph.outline);
    closeContour(glyph.outline);
    return glyph;
}

} // namespace

std::string drawingFacePath() {
    return firstFound("osifont.ttf", "/usr/share/fonts/truetype/osifont");
}
std::string screenFacePath() {
    return firstFound("Inter-Regular.otf", "/usr/share/fonts/opentype/inter");
}

const Face& Face::drawingFace() {
    static const Face face(drawingFacePath());
    return face;
}

Face::Face(const std::string& path) {
    missing_.advance = 600;
    FT_Library raw_library = nullptr;
    if (FT_Init_FreeType(&raw_library) != 0) return;
    const std::unique_ptr<FT_LibraryRec_, LibraryDone> library(raw_library);
    FT_Face raw_face = nullptr;
    if (FT_New_Face(raw_library, path.c_str(), 0, &raw_face) != 0) return;
    const std::unique_ptr<FT_FaceRec_, FaceDone> face(raw_face);
    if (!FT_IS_SCALABLE(raw_face) || raw_face->units_per_EM == 0) return;

    units_per_em_ = raw_face->units_per_EM;
    missing_ = readGlyph(raw_face, 0);
    FT_UInt index = 0;
    for (FT_ULong code = FT_Get_First_Char(raw_face, &index); index != 0;
         code = FT_Get_Next_Char(raw_face, code, &index))
        glyphs_.emplace(static_cast<char32_t>(code), readGlyph(raw_face, index));
    const Glyph& capital = glyph(U'H');
    if (capital.y_max <= capital.y_min) return;
    cap_height_ = capital.y_max - capital.y_min;
    loaded_ = true;
}

const Glyph& Face::glyph(char32_t code) const {
    const auto found = glyphs_.find(code);
    return found == glyphs_.end() ? missing_ : found->second;
}

std::u32string codePoints(std::string_view utf8) {
    struct Form {
        unsigned mask, lead;
        std::size_t length;
        char32_t smallest;
    };
    static constexpr std::array<Form, 4> kForms{
        {{0x80, 0x00, 1, 0}, {0xE0, 0xC0, 2, 0x80}, {0xF0, 0xE0, 3, 0x800}, {0xF8, 0xF0, 4, 0x10000}}};
    std::u32string codes;
    codes.reserve(utf8.size());
    for (std::size_t i = 0; i < utf8.size();) {
        const auto byte = static_cast<unsigned char>(utf8[i]);
        const auto form = std::find_if(kForms.begin(), kForms.end(),
                                       [&](const Form& f) { return (byte & f.mask) == f.lead; });
        char32_t code = 0xFFFD;
        std::size_t length = 1;
        if (form != kForms.end() && i + form->length <= utf8.size()) {
            char32_t value = byte & ~form->mask & 0xFFU;
            bool whole = true;
            for (std::size_t k = 1; k < form->length; ++k) {
                const auto next = static_cast<unsigned char>(utf8[i + k]);
                whole = whole && (next & 0xC0U) == 0x80U;
                value = (value << 6U) | (next & 0x3FU);
            }
            const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
            if (whole && value >= form->smallest && value <= 0x10FFFF && !surrogate) {
                code = value;
                length = form->length;
            }
        }
        codes.push_back(code);
        i += length;
    }
    return codes;
}

void appendUtf8(std::string& out, char32_t code) {
    const auto put = [&](char32_t byte) {
        out.push_back(static_cast<char>(static_cast<unsigned char>(byte)));
    };
    if (code < 0x80) {
        put(code);
    } else if (code < 0x800) {
        put(0xC0U | (code >> 6U));
        put(0x80U | (code & 0x3FU));
    } else if (code < 0x10000) {
        put(0xE0U | (code >> 12U));
        put(0x80U | ((code >> 6U) & 0x3FU));
        put(0x80U | (code & 0x3FU));
    } else {
        put(0xF0U | (code >> 18U));
        put(0x80U | ((code >> 12U) & 0x3FU));
        put(0x80U | ((code >> 6U) & 0x3FU));
        put(0x80U | (code & 0x3FU));
    }
}

std::string cleanUtf8(std::string_view utf8) {
    std::string clean;
    clean.reserve(utf8.size());
    for (const char32_t code : codePoints(utf8))
        appendUtf8(clean, code < 0x20 || code == 0x7F || code == 0xFFFE || code == 0xFFFF ? U' ' : code);
    return clean;
}

std::vector<PlacedGlyph> setText(std::string_view utf8, double height_mm) {
    const Face& face = Face::drawingFace();
    const double unit_mm = height_mm / face.capHeight();
    std::vector<PlacedGlyph> placed;
    double x = 0;
    for (const char32_t code : codePoints(utf8)) {
        const Glyph& glyph = face.glyph(code);
        placed.push_back({&glyph, code, x});
        x += glyph.advance * unit_mm;
    }
    return placed;
}

double emSize(double height_mm) {
    const Face& face = Face::drawingFace();
    return height_mm * face.unitsPerEm() / face.capHeight();
}

} // namespace gangway::drawing
