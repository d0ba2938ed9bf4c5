// Numbers of a wall's elevation: running set-outs of box centres under the floor, edges of openings and
// furniture above the ceiling, heights at the left, levels at the right.
#pragma once

#include "sheets/elevation_view.hpp"

namespace gangway::sheets {

void drawDimensions(std::vector<Item>& items, const WallView& view, OnPaper paper);

/// Levels at the right of the wall: FFL, slab, site line, ceiling.
void drawLevels(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper);

} // namespace gangway::sheets
