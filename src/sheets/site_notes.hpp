// What an electrician must know before using the numbers of a sheet, in words.
#pragma once

#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// Datum, faces and build-ups of this wall and floor.
std::vector<Block> datumNotes(const WallView& view, double width_mm);
/// Cautions that stand on every sheet.
std::vector<Block> cautions(double width_mm);
/// The line that stands under every view.
inline constexpr const char* kDoNotScale =
    "Do not scale. Use written dimensions. Check on site before drilling. Dimensions in mm.";

} // namespace gangway::sheets
