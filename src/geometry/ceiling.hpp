// The ceiling of a room as plane triangles, each with the heights of its corners.
#pragma once

#include "geometry/frames.hpp"

#include <array>

namespace gangway::geometry {

/// A triangle of the ceiling in house coordinates, counter-clockwise seen from above.
using CeilingTriangle = std::array<Vec3, 3>;

/// Ceiling height above FFL at corner `corner` of the outline.
double cornerHeight(const plan::Room& room, std::size_t corner);

/// True when one height does for the whole room.
bool flatCeiling(const plan::Room& room);

/// The ceiling folded along its creases and cut into triangles. A crease that joins no two corners of
/// one part of the outline is ignored.
std::vector<CeilingTriangle> ceilingTriangles(const plan::Room& room);

/// Parts (0 to 1, in order, both ends left out) at which a line on plan crosses a fold of the ceiling.
std::vector<double> foldCrossings(const plan::Room& room, Vec2 from_mm, Vec2 to_mm);

} // namespace gangway::geometry
