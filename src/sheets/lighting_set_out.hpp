// Where luminaires and outlets sit on ceilings and in floors, dimensioned from two walls of each room.
#pragma once

#include "sheets/sheets.hpp"

namespace gangway::sheets {

/// Sheets L-01, L-02...: for each storey with a luminaire or an outlet in ceiling or floor a plan of it with
/// tags and the marks of switch legs (not where it has one such room), then its rooms side by side, larger:
/// every centre by running dimensions from a left and a bottom wall, finished faces, and again in a table
/// with its height. Seen from above, nothing mirrored. Of `options`, paper, scale (also 100), room and base
/// count: with a room, the sheets that show it, with the numbers that they have in the whole set. None where
/// there is nothing to set out. The error is a sentence: an unknown paper, room or scale, or a room or storey
/// that does not fit.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
lightingSetOutSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                     const Options& options = {});

} // namespace gangway::sheets
