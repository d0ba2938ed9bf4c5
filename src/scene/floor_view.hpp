// What stands in the way on a storey's plan: sight lines for cameras and steps for walking. Inside scene
// only.
#pragma once

#include "plan/plan.hpp"

#include <vector>

namespace gangway::scene::detail {

using plan::Vec2;

/// An upright body on the floor: its footprint (clockwise) and its height range above FFL.
struct Obstacle {
    std::vector<Vec2> footprint_mm;
    double bottom_mm = 0;
    double top_mm = 0;
};

/// A person would bump into it: higher than a step, hanging lower than 1800; not rugs, curtains and stairs.
bool blocksWalking(const plan::Furniture& piece);
/// Furniture of a room that an eye must not be in: what blocks walking, and stairs.
std::vector<Obstacle> obstaclesIn(const plan::Plan& plan, const plan::Room& room);

/// The outline's and columns' edges cross the segment between the points.
bool wallBetween(const plan::Room& room, Vec2 a_mm, Vec2 b_mm);
bool edgesCross(const std::vector<Vec2>& polygon, Vec2 a_mm, Vec2 b_mm);
/// Distance to the nearest edge of a polygon.
double distanceToEdges(const std::vector<Vec2>& polygon, Vec2 at_mm);
/// A body of this radius can stand there.
bool standable(const plan::Room& room, const std::vector<Obstacle>& obstacles, Vec2 at_mm, double radius_mm);

struct Bounds2 {
    Vec2 low;
    Vec2 high;
};
Bounds2 boundsOf(const std::vector<Vec2>& polygon);

} // namespace gangway::scene::detail
