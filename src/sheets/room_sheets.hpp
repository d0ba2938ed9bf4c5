// Room sheets: a room's plan with its elevations round it, on one sheet where that can be.
#pragma once

#include "sheets/sheets.hpp"

namespace gangway::sheets {

/// Sheets ...: for each room with a plate or a luminaire its plan in the middle of its elevations,
/// all at one scale, keyed by the walls' letters and the numbers of their elevation sheets, and a table with
/// u and v of every box centre. A room that is too large for one sheet at 1:50 goes on on "R-01-2". Of
/// `options`, paper, scale (10, 20, 25, 50 or 100), room, base, pack, zones, face and level count; a room has
/// the number that it has in the whole set. The error is a sentence: an unknown paper, room or scale, a datum
/// that the plan does not state, a wall that does not fit.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
roomSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options = {});

} // namespace gangway::sheets
