// The little plane geometry that checking a room's outline needs; geometry/ has the rest, but lies above
// this folder. Lengths mm, areas mm2. Private to src/plan.
#pragma once

#include "plan/vec.hpp"

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace gangway::plan {

/// Twice the signed area is summed from the first corner, so that a house far from the origin loses no
/// digits; negative for clockwise polygons. Shoelace formula.
double signedAreaOf(const std::vector<Vec2>& polygon);

/// The first edge (i to i+1) that is shorter than 0.01 mm.
std::optional<std::size_t> zeroEdge(const std::vector<Vec2>& polygon);

/// Two edges that cross, touch or fold back on each other without being neighbours that merely meet.
std::optional<std::pair<std::size_t, std::size_t>> crossingEdges(const std::vector<Vec2>& polygon);

/// Whether segments ab and cd cross in one inner point of both.
bool crossInside(Vec2 a, Vec2 b, Vec2 c, Vec2 d);

/// Inside, or not further than `play_mm` from the edge.
bool insideOrOn(const std::vector<Vec2>& polygon, Vec2 point, double play_mm);

} // namespace gangway::plan
