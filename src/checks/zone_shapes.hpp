// Outlines cut by straight lines, and how much of a straight run lies in them. Only for this folder.
#pragma once

#include "checks/bars.hpp"

namespace gangway::checks {

using Outline = std::vector<plan::Vec2>;

/// What of an outline lies in a convex one (both counter-clockwise): cut by its edges one after another
/// (Sutherland and Hodgman, Reentrant Polygon Clipping, 1974). Empty when nothing does.
Outline within(Outline subject, const Outline& convex);
/// What of a convex outline lies outside the rectangle, in up to four parts.
std::vector<Outline> without(const Outline& convex, Interval across_mm, Interval up_mm);
/// An outline holds its edge.
bool holds(const Outline& outline, plan::Vec2 at_mm);
/// Parts of a run, 0 to 1, that lie in an outline, in order.
std::vector<Interval> partsInside(const Outline& outline, plan::Vec2 from_mm, plan::Vec2 to_mm);

} // namespace gangway::checks
