// What is often forgotten in a room of its use: a list to offer, not findings.
#pragma once

#include "checks/point.hpp"

namespace gangway::checks {

struct Forgotten {
    const plan::Room* room = nullptr;
    const catalogue::RoomThing* thing = nullptr; ///< of the facts' pack
};

/// The pack's things of each room's use of which nothing in the room speaks: no device, no plate's purpose or
/// engraving, no piece of furniture and no luminaire, by the beginnings of their words. In the plan's order
/// of rooms, then the pack's. What a house has once is offered in the first room of its use, and not when any
/// room speaks of it. Linear in what is in the rooms.
std::vector<Forgotten> forgottenThings(const Facts& facts);

} // namespace gangway::checks
