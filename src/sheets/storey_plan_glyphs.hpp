// A plate's or luminaire's picture on a plan: the symbols of its modules side by side, turned to the room.
#pragma once

#include "catalogue/catalogue.hpp"
#include "sheets/canvas.hpp"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace gangway::sheets {

/// A group of symbols around its foot (the point on the wall), drawn for one normal.
struct GlyphGroup {
    std::vector<Item> items; ///< around (0, 0), without layer and id
    double from_mm = 0;      ///< reach along the wall; to the right where the normal points up
    double to_mm = 0;
    double depth_mm = 0; ///< reach along the normal
};

/// Makes groups and keeps the symbols it has made: a storey has few kinds, in few directions.
class Glyphs {
public:
    /// `module_mm`: the symbols' grid module (drawing/symbols.hpp).
    explicit Glyphs(double module_mm) : module_mm_(module_mm) {}

    double module_mm() const { return module_mm_; }
    /// Modules of one kind that follow each other become one symbol with their number beside it; several
    /// symbols stand in the modules' order on a short bar. An unknown module is a blank.
    GlyphGroup plate(const catalogue::Catalogue& catalogue, const plan::Plate& plate, Pt normal);
    GlyphGroup single(const std::string& symbol_id, Pt normal);
    /// A luminaire's symbol around its middle; its reach leaves out the letter beside it.
    GlyphGroup round(const std::string& symbol_id);

private:
    struct Glyph {
        std::vector<Item> items;
        double from_mm = 0, to_mm = 0, depth_mm = 0;
    };
    const Glyph& glyph(const std::string& symbol_id, Pt normal);

    double module_mm_;
    std::map<std::pair<std::string, long>, Glyph> made_;
};

/// Degrees that turn a symbol whose room is towards +y to a normal.
double turnOf(Pt normal);

} // namespace gangway::sheets
