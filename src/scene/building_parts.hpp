// A room's fabric as parts of the scene. Inside scene only.
#pragma once

#include "geometry/house_index.hpp"
#include "scene/object_parts.hpp"

namespace gangway::scene::detail {

/// Adds walls, floor, ceiling, wall lines and openings of a room: one part for each wall (or opening), kind
/// and material. A wall's outer skin belongs to its wall, and goes with it when the lid-off view cuts it
/// away.
void addRoom(Scene& scene, const geometry::HouseIndex& house, const plan::Room& room,
             double storey_elevation_mm);

} // namespace gangway::scene::detail
