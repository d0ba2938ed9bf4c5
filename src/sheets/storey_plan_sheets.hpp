// Storey plans: what sits where in the house, and which elevation shows which wall.
#pragma once

#include "sheets/sheets.hpp"

namespace gangway::sheets {

/// Sheets P-01, P-02...: each storey with rooms at the largest scale that fits, every plate and luminaire as
/// a symbol with its tag, plates and wall luminaires with their height above FFL, and for each wall that has
/// an elevation a marker with that sheet's number. Rooms too crowded there for a tag or a marker follow, each
/// larger on its own sheet. What the legend has no room for goes on to "P-01-2". Of `options`, paper, scale
/// (also 100 and 200), room and base count: with a room, its storey's sheets alone, with the numbers that
/// they have in the whole set. The error is a sentence: an unknown paper, room or scale, or a plan that does
/// not fit.
[[nodiscard]] std::expected<drawing::Drawing, std::string>
storeyPlanSheets(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const Options& options = {});

} // namespace gangway::sheets
