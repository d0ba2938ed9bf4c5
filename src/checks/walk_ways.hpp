// Where one walks through a room from entrance to entrance. Only for this folder.
#pragma once

#include "geometry/house_index.hpp"
#include "geometry/walls.hpp"

namespace gangway::checks {

/// The shortest ways between a room's entrances round its furniture (floor_grid.hpp), and from each entrance
/// as far into the room as the way is wide; house coordinates.
std::vector<std::vector<plan::Vec2>> walkWays(const geometry::HouseIndex& house, const plan::Room& room,
                                              double width_mm);
/// From a point to the nearest of the ways; infinity when there are none.
double toWays(const std::vector<std::vector<plan::Vec2>>& ways, plan::Vec2 at_mm);

} // namespace gangway::checks
