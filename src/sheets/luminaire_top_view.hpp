// Luminaires as they are seen from above, at the sheet's scale.
#pragma once

#include "plan/plan.hpp"
#include "sheets/storey_plan_glyphs.hpp"

namespace gangway::sheets {

/// A luminaire's outline around its middle (a wall luminaire: around its foot on the wall, into the room).
/// `along` is the direction of its length, `normal` the wall's. Empty when the plan states no size: then
/// only a symbol is honest. Reach is for a normal of (0, 1), except for a wall luminaire.
GlyphGroup luminaireTopView(const plan::Luminaire& luminaire, double scale, Pt along, Pt normal,
                            bool on_wall);

} // namespace gangway::sheets
