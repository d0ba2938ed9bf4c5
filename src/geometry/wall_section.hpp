// Walls as a level cut shows them on plan, before openings are taken out of them.
#pragma once

#include "geometry/frames.hpp"
#include "geometry/house_index.hpp"

namespace gangway::geometry {

/// What is solid behind the faces of a room, as convex polygons that overlap each other: every stretch of a
/// wall to its far face (its stated thickness where no room lies behind), and the corners between walls up to
/// their mitres. Together with those of the neighbouring rooms, and less the rooms themselves, they are the
/// walls of a storey. Boundaries that are no wall (structure "none") and columns give nothing.
std::vector<std::vector<Vec2>> wallSections(const HouseIndex& house, const plan::Room& room);

} // namespace gangway::geometry
