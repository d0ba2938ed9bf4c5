// What stands on the card of each kind of thing. Each is given a copy, so that it may be changed while it is
// drawn.
#pragma once

#include "app/thing_form.hpp"

namespace gangway::app::form {

void furnitureCard(State& state, const plan::Furniture& piece);
void openingCard(State& state, const plan::Opening& opening);
void luminaireCard(State& state, const plan::Luminaire& lamp);
void wallCard(State& state, const plan::Room& room, std::size_t wall);
void roomCard(State& state, const plan::Room& room);

/// The kinds, as their cards and the palette call them.
std::string kindName(const plan::Furniture& piece);
const char* kindName(plan::Opening::Kind kind);
const char* kindName(plan::Luminaire::Kind kind);
/// The room's name, or its id when it has none.
std::string roomTitle(const plan::Plan& plan, const std::string& room_id);

} // namespace gangway::app::form
