// Parts of the chosen plate's card.
#pragma once

#include "app/panels.hpp"

namespace gangway::app {

/// Set-out and height: typed, from whatever is chosen, kept or free.
void cardPlace(State& state, const plan::Plate& plate);
/// The list of what can be done with the chosen plates, and taking them away.
void cardArrange(State& state);
/// The card's contents when several plates are chosen.
void drawSeveralCard(State& state);

} // namespace gangway::app
