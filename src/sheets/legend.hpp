// What the pictures on a sheet mean: each module used on the wall, and the signs of the elevation.
#pragma once

#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// A heading, one entry for each kind of module used, then the elevation's own signs.
std::vector<Block> legend(const WallView& view, double width_mm);

} // namespace gangway::sheets
