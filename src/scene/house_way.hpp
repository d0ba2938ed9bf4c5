// A way on foot through the whole house: round furniture, through doors, up and down stairs.
#pragma once

#include "scene/scene.hpp"

#include <map>
#include <string>
#include <vector>

namespace gangway::scene {

/// A point of a way: where, in mm, and the storey one is on when arriving. Between two points of different
/// storeys lies a stair.
struct WayPoint {
    plan::Vec2 at_mm;
    std::string storey;
};

/// From a point to the free place nearest to another, over at most four stairs; the start is left out, the
/// end is last. One point when start and end are the same; empty when there is no way.
std::vector<WayPoint> wayThroughHouse(const std::map<std::string, WalkMap>& maps,
                                      const std::vector<StairLink>& stairs, const WayPoint& from,
                                      const WayPoint& to);

} // namespace gangway::scene
