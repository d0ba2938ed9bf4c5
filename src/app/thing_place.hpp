// Where a piece or a lamp is in its room, as people measure it: along the wall it stands at, or to the walls
// around it. Lengths mm.
#pragma once

#include "plan/plan.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>

namespace gangway::app {

/// A piece with its back to a wall.
struct AtWall {
    std::string wall;
    double left_mm = 0;  ///< from the wall's left corner to the piece's left edge
    double right_mm = 0; ///< from its right edge to the wall's right corner
    double gap_mm = 0;   ///< between its back and the finished face
    plan::Vec2 along;    ///< unit vectors on plan: to the right along the wall, and out of it into the room
    plan::Vec2 out;
};
/// The wall of the room that is at most 600 mm behind the piece's back and parallel to it (0.5 degrees).
std::optional<AtWall> atWall(const plan::Room& room, const plan::Furniture& piece);

enum class Compass : std::uint8_t { West, East, South, North };
inline constexpr std::array<const char*, 4> kCompassWords{"West", "East", "South", "North"};
plan::Vec2 towards(Compass side);
/// From the edges of an upright box (half sizes, 0 for a point) to the next wall face that way; not set where
/// there is none.
std::array<std::optional<double>, 4> distancesAround(const plan::Room& room, plan::Vec2 at_mm,
                                                     plan::Vec2 half_mm = {});
/// Half the sizes of the upright box around a piece's footprint.
plan::Vec2 halfAround(const plan::Furniture& piece);

/// A wall face of a storey near a point.
struct NearWall {
    std::string room;
    std::size_t wall = 0;
    double u_mm = 0;
    double off_mm = 0; ///< from the face, positive into the room
};
/// The nearest face within `reach_mm` whose length the point lies beside; nullopt when there is none.
std::optional<NearWall> nearestWall(const plan::Plan& plan, const std::string& storey, plan::Vec2 at_mm,
                                    double reach_mm);
/// South-west corner of the box around a room, from which places on floor and ceiling count.
plan::Vec2 southWest(const plan::Room& room);
/// A point inside the room: the middle of the box around it, or of its largest upright rectangle.
plan::Vec2 middleOf(const plan::Room& room);
const plan::Opening* findOpening(const plan::Plan& plan, const std::string& id);

} // namespace gangway::app
