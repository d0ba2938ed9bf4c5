// Parts of a plan that answer for some of its rooms. Only for this folder.
#pragma once

#include "checks/ledger.hpp"
#include "checks/point.hpp"

namespace gangway::checks {

/// The rooms, their plates and luminaires, the legs with members there and those legs' members wherever they
/// are: enough for what the switching says of these rooms. In the plan's order.
plan::Plan partOfRooms(const plan::Plan& plan, const Ledger& ledger, const RoomSet& rooms);
/// Storeys, stairs, and every leg with a lamp that may light one.
plan::Plan partOfStairs(const geometry::HouseIndex& house, const Ledger& ledger);
/// What Facts needs to speak of the rooms.
FactParts factsOfRooms(const plan::Plan& plan, const Ledger& ledger, const RoomSet& rooms);

} // namespace gangway::checks
