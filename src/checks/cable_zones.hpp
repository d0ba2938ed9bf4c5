// Where cables run in a wall by the country's pack: bands along the ceiling or above the floor, upright
// strips beside corners, doors and windows, and strips straight from what is mounted (DIN 18015-3; BS 7671,
// 522.6.202). For the checks, and for sheets and the window that draw them.
//
// All in the wall's (u, v), mm. Corners that stand out into the room and the faces of columns have no strip.
// Nothing is said of cables in floors, ceilings or roofs.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/house_index.hpp"

#include <array>
#include <optional>

namespace gangway::checks {

class Facts;

/// A piece of a zone, cut to the wall and its ceiling, openings cut out.
struct ZoneArea {
    std::string zone;                ///< CableZone::id
    std::string name;                ///< "upper level zone"
    std::vector<plan::Vec2> area_mm; ///< counter-clockwise
    std::string source;
    catalogue::Grade grade = catalogue::Grade::Practice;
    bool across = false; ///< along the ceiling or the floor, or beside a point; else upright
    /// Where a cable is preferably laid, when the pack says it.
    std::optional<std::array<plan::Vec2, 2>> preferred_mm;
    std::string point;                      ///< id of the plate or wall lamp it belongs to; empty: a band
    plan::Feed side = plan::Feed::Unstated; ///< of that point that it lies on
    bool beyond = false;                    ///< the point is on the wall's other side (limit thinWall)
};

/// The areas of one wall, bands first, in the order of the pack's zones; none when the pack has no zones, the
/// room has no such wall, or nothing stands there (structure "none"). Plates behind something fixed are no
/// visible points and have no strips. In a pack with bands above the floor a point has a strip only when it
/// lies in no band, to the nearest one. Time linear in the house's plates.
std::vector<ZoneArea> zoneAreas(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                const catalogue::CountryPack& pack, const plan::Room& room, std::size_t wall);
/// The same from facts, in time linear in what is on the wall. `hidden_too`: with the strips of points that
/// cannot be seen, for a cable comes to them as well.
std::vector<ZoneArea> zoneAreas(const Facts& facts, const plan::Room& room, std::size_t wall,
                                bool hidden_too = false);
/// Whether something fixed stands before a place of a wall, so that nothing shows that a point is there.
bool behindFixed(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                 const plan::Room& room, std::size_t wall, plan::Vec2 at_mm);

/// Whether bands lie above the floor in this room: then cables keep to bands (DIN 18015-3).
bool keepsToBands(const catalogue::CountryPack& pack, const plan::Room& room);

/// An area holds its edges.
bool inZone(const std::vector<ZoneArea>& areas, plan::Vec2 at_mm);

/// A straight piece of cable in a wall.
struct CableRun {
    plan::Vec2 from_mm;
    plan::Vec2 to_mm;
    double depth_mm = 0; ///< from the finished surface
};
/// Whether a run lies in the areas from end to end, or so deep that it is bound to none (limit zoneDepth). A
/// run that is neither level nor upright never does, but for one along a sloping ceiling.
bool runInZones(const std::vector<ZoneArea>& areas, const catalogue::CountryPack& pack, const CableRun& run);

/// "above": the side of a point.
const char* sideName(plan::Feed side);

} // namespace gangway::checks
