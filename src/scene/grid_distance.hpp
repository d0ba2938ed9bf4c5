// Growing the blocked cells of a grid by a radius. Inside scene only.
#pragma once

#include <cstdint>
#include <vector>

namespace gangway::scene::detail {

/// Blocks every cell whose centre is nearer than `radius_cells` to the centre of a blocked one. Linear in the
/// number of cells: Felzenszwalb and Huttenlocher, Distance Transforms of Sampled Functions (2012),
/// section 2.
void inflate(std::vector<std::uint8_t>& blocked, int columns, int rows, double radius_cells);

} // namespace gangway::scene::detail
