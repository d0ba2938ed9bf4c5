// A room's ceiling as it is set out, and the table of its numbers. Private to sheets/.
#pragma once

#include "sheets/block.hpp"
#include "sheets/ceiling_points.hpp"
#include "sheets/plan_view.hpp"

#include <vector>

namespace gangway::sheets {

/// A storey at one scale with only what is on its ceilings and in its floors, and its luminaires: made once
/// for all its rooms.
struct CeilingStorey {
    StoreyBase base;
    StoreySymbols symbols;
};
CeilingStorey ceilingStorey(const House& house, const plan::Storey& storey, double scale,
                            const std::filesystem::path& folder);

/// The room around the house's zero point: each point with its tag and the marks of its legs, its distances
/// from the left and the bottom wall as running dimensions (not where these walls are turned to the sheet:
/// there the table has them alone), equal spacing in brackets where there is room, and the walls' letters.
PlanPicture ceilingPicture(const CeilingStorey& storey, const House& house, const RoomPoints& points,
                           const ElevationNumbers& numbers);

/// The numbers of a room: a heading with the walls they count from, a row a point, then the luminaires that
/// are set out elsewhere, and what the numbers want said.
std::vector<Block> ceilingTable(const RoomPoints& points, double width_mm);

} // namespace gangway::sheets
