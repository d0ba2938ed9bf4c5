// Cutting a drawn plan to a window, for sheets that show one room of it.
#pragma once

#include "sheets/canvas.hpp"

namespace gangway::sheets {

/// What of the items lies inside the window: lines and fills are cut at its edge, texts stay only whole.
/// Dimensions are left out.
std::vector<Item> clipped(const std::vector<Item>& items, const Rect& window);

} // namespace gangway::sheets
