// The room behind the plinths of what stands at a wall. Only for this folder.
#pragma once

#include "checks/point.hpp"

namespace gangway::checks {

/// As if it were solid: as wide as the plinth's board and as high, from the board to the piece's back. What
/// lies there is closed off by the board, the body above it and what stands beside; what lies before the
/// board is not.
std::vector<geometry::Obstacle> behindPlinths(const Facts& facts, const WallScene& scene);

} // namespace gangway::checks
