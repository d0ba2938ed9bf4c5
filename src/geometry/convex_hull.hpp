// The convex hull of points on a plane; inside geometry/ only.
#pragma once

#include "plan/vec.hpp"

#include <vector>

namespace gangway::geometry {

/// Counter-clockwise, without collinear points; fewer than three corners when the points have no area.
std::vector<plan::Vec2> convexHull(std::vector<plan::Vec2> points);

} // namespace gangway::geometry
