// From a point on plan to the wall face it is nearest to, and from a place on a wall to the same place on the
// wall's other side.
#pragma once

#include "geometry/frames.hpp"
#include "geometry/house_index.hpp"

namespace gangway::geometry {

/// A place on a wall face by room id, index in room.walls and u.
struct WallHit {
    std::string room;
    std::size_t wall = 0;
    double u_mm = 0;        ///< within the wall's length
    double distance_mm = 0; ///< from the point asked for
    bool operator==(const WallHit&) const = default;
};

/// The nearest wall face to a point, at most `reach_mm` away; nullopt when there is none. Within a room only
/// that room's faces count, so that of a wall between two rooms the face on the point's side is found; within
/// a wall or outside the house, the nearest face of all. Boundaries that are no wall (structure "none") are
/// passed over.
std::optional<WallHit> wallAt(const HouseIndex& house, const std::string& storey, Vec2 at_mm,
                              double reach_mm);

/// A place on a face together with the room it is in.
struct OtherFace {
    std::string room;
    plan::Host host;
};

/// The same place on the other side of the wall a plate is on, at the same height; nullopt when the plate is
/// on no wall, or no room lies behind it there. The way goes along the mean of both faces' normals, so that
/// going there and back returns to the same u to within 1e-6 mm.
std::optional<OtherFace> otherFace(const HouseIndex& house, const std::string& room_id,
                                   const plan::Host& host);
std::optional<OtherFace> otherFace(const plan::Plan& plan, const plan::Plate& plate);

} // namespace gangway::geometry
