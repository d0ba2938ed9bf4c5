// The tables of a country pack beside its numbers: cable zones, numbers of outlets, things, bodies. Only for
// this folder.
#pragma once

#include "catalogue/pack.hpp"
#include "catalogue/read_object.hpp"

namespace gangway::catalogue::detail {

Grade readGrade(ObjectReader& reader);
/// The use of rooms that a key names.
plan::RoomUse readUse(ObjectReader& reader, const char* key = "use");

std::vector<CableZone> readCableZones(ObjectReader& pack, Mistakes& mistakes);
std::vector<OutletCount> readOutletCounts(ObjectReader& pack, Mistakes& mistakes);
std::vector<RoomThing> readRoomThings(ObjectReader& pack, Mistakes& mistakes);
std::vector<Body> readBodies(ObjectReader& pack, Mistakes& mistakes);

} // namespace gangway::catalogue::detail
