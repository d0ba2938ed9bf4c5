// A room's fabric as parts of the scene. Inside scene only.
#pragma once

#include "scene/object_parts.hpp"

namespace gangway::scene::detail {

/// Adds walls, floor, ceiling, wall lines and openings of a room: one part for each wall (or opening), kind
/// and material.
void addRoom(Scene& scene, const plan::Plan& plan, const plan::Room& room, double storey_elevation_mm);

} // namespace gangway::scene::detail
