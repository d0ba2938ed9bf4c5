// The zones round baths and showers (IEC 60364-7-701 and what countries make of it), with the pack's sizes:
// for the checks, the stage and the sheets.
#pragma once

#include "catalogue/pack.hpp"
#include "checks/taut_string.hpp"
#include "geometry/furniture.hpp"

namespace gangway::checks {

/// One zone as it is reached from the basin on plan, between two heights.
struct WetShell {
    int number = 1; ///< 0, 1, 2, 3
    double reach_mm =
        0; ///< along the taut string from the basin's edge or the outlet; less than 0: inside it
    double bottom_mm = 0; ///< above FFL
    double top_mm = 0;
};

/// The zones of one bath, shower or, where the pack has zones round them, wash basin.
struct WetZone {
    const plan::Furniture* piece = nullptr;
    std::vector<plan::Vec2> outline_mm; ///< of the basin on plan, clockwise; of a shower without: one point
    double radius_mm = 0;               ///< of zone 1 round that point; else 0
    double rim_mm = 0;                  ///< of the bath, threshold of the shower, above FFL
    std::vector<WetShell> shells;       ///< the innermost first
    TautString string;
    const WetShell* shell(int number) const; ///< nullptr when it has none
};
/// The index and its plan must outlive them.
std::vector<WetZone> wetZones(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                              const std::string& room_id);

/// From zone 1 on plan to a point in the room, 0 within it: along the taut string. Partitions that close a
/// basin off altogether have a door in them, so there it is measured straight.
double fromZone1(const WetZone& zone, plan::Vec2 at_mm);
/// The zone a point is in, nullptr outside all.
const WetShell* shellAt(const WetZone& zone, plan::Vec3 at_mm);

/// A zone as an upright prism.
struct WetVolume {
    const plan::Furniture* piece = nullptr;
    int number = 1;
    std::vector<plan::Vec2> outline_mm; ///< counter-clockwise, house mm, with the inner zones within it
    double bottom_mm = 0;               ///< above FFL
    double top_mm = 0;
};
/// All zones of a room, a piece's innermost first. Arcs in steps of 5 degrees; behind partitions and in rooms
/// with inner corners the outline is right to 20 mm, point tests are exact.
std::vector<WetVolume> wetVolumes(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                                  const std::string& room_id);

/// What a zone takes of a wall's face, without the zones within it.
struct WetWallArea {
    const plan::Furniture* piece = nullptr;
    int number = 1;
    std::vector<plan::Vec2> outline_mm; ///< (u, v) of the wall, counter-clockwise
};
std::vector<WetWallArea> wallZoneAreas(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                                       const plan::Room& room, std::size_t wall);

} // namespace gangway::checks
