// What stands before a surface, solid by solid, as outlines in the surface's own (u, v).
#pragma once

#include "geometry/furniture.hpp"

namespace gangway::geometry {

/// One solid of a piece of furniture before a surface.
struct Obstacle {
    const plan::Furniture* piece = nullptr;
    std::string solid;            ///< "door left", "mattress"
    std::vector<Vec2> outline_mm; ///< convex hull, counter-clockwise, of what is nearer than the reach
    double near_mm = 0;           ///< from the surface to its nearest point; less than 0 when let into it
    double far_mm = 0;            ///< to the furthest point within the reach
};

/// Obstacles within `reach_mm` straight out of a surface of a room, in the order of the room's furniture.
/// Rugs and the piece `except` (the surface's own) are left out. A solid that is not convex is taken as its
/// hull; so is all of a glTF piece whose surface is open where the reach cuts it.
std::vector<Obstacle> obstaclesBefore(const HouseIndex& house, const std::string& room_id,
                                      const Frame& surface, double reach_mm, const std::string& except = {},
                                      const std::filesystem::path& base = {});

} // namespace gangway::geometry
