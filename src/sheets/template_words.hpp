// What a drilling template says about where it goes. Private to sheets/.
#pragma once

#include "sheets/surfaces.hpp"

namespace gangway::sheets {

/// The words at a line that runs right across a template, and at the arrow that says how it is held.
struct TemplateLine {
    const char* name;   ///< "level"
    const char* suffix; ///< "above FFL"
    const char* arrow;  ///< "UP"
};
TemplateLine lineWords(const Surface& surface);

/// "3 boxes Ø68, 47 deep, pitch 2 × 71; plate 223 × 81".
std::string boxesInWords(const Mounted& item);
/// "Ø68" of what is cut, "72 × 72" of a box that is not drilled.
std::string cutInWords(const catalogue::BoxSpec& spec);

/// From which edge u is and to which face, and the way from the site's level line: `v_mm` is the highest
/// line's, of `lines`.
std::string datumInWords(const House& house, const plan::Room& room, const Surface& surface, double v_mm,
                         std::size_t lines);
/// What holds for all templates of a room: how they are seen, and what their heights count from.
std::string roomDatumInWords(const House& house, const plan::Room& room);

} // namespace gangway::sheets
