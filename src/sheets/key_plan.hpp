// The little plan beside an elevation: the room, the wall looked at, from where, and where north is.
#pragma once

#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// Key plan in a column of this width, not to a stated scale.
Block keyPlan(const WallView& view, double width_mm);

} // namespace gangway::sheets
