// A switch leg as it is shown in the room: along walls and ceilings from its switches to its lamps.
#pragma once

#include "geometry/house_index.hpp"

#include <vector>

namespace gangway::scene {

/// A polyline in house mm, z above the house's datum.
using Route = std::vector<plan::Vec3>;

/// Lines from each position straight to the ceiling, along it parallel to x and y to the next position, from
/// the last one to the nearest lamp or switched plate and on from lamp to lamp; lamps that hang or stand
/// lower are reached straight down. Within a room they go round its corners and columns and bend with the
/// folds of its ceiling, 8 mm before the surfaces. From room to room they pass the walls at the ceiling, and
/// floors straight through. Each position begins a line, and each lamp ends one. It shows what works what,
/// not where cables run. What the plan lacks is left out.
[[nodiscard]] std::vector<Route> legRoute(const geometry::HouseIndex& house, const plan::SwitchLeg& leg);

} // namespace gangway::scene
