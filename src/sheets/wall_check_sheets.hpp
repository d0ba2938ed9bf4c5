// The wall check: every box of a room on paper to tick, so that none is lost behind plaster.
#pragma once

#include "sheets/sheets.hpp"

namespace gangway::sheets {

/// Sheets W-01, W-02...: for each room with boxes one row a box by wall, with places to tick on the box walk,
/// before walls are closed and after plaster, room for the numbers as fixed, a photo slot a wall, counts and
/// signatures. Meant for A4. Of `options`, paper, room and base count; a room's sheets have the numbers that
/// they have in the whole set. Rooms without boxes and points have none. The error is a sentence: an unknown
/// paper or room.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
wallCheckSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options);

} // namespace gangway::sheets
