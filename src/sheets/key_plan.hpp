// The little plan beside an elevation: the room, the wall looked at, from where, and where north is.
#pragma once

#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// Paper for the room itself, as it reads best and where paper is short.
inline constexpr double kKeyPlan = 34;
inline constexpr double kSmallKeyPlan = 26;

/// Key plan in a column of this width, not to a stated scale: openings as gaps, hinged leaves with their
/// arcs, the plates of the wall looked at as dots.
Block keyPlan(const WallView& view, double width_mm, double plan_height_mm);

} // namespace gangway::sheets
