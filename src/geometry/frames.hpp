// Frames: where a wall, floor, ceiling or furniture face is in the house, and the way between a frame's
// (u, v, w) and house coordinates. All lengths mm.
#pragma once

#include "plan/plan.hpp"

#include <expected>
#include <optional>
#include <string>
#include <vector>

namespace gangway::geometry {

using plan::Vec2;
using plan::Vec3;

class HouseIndex;

/// Origin and unit axes of a host: u right, v up (or away), w out of the surface, as seen by someone
/// looking at it. Right-handed for walls, floors and furniture; for ceilings (u east, v north, w down)
/// left-handed, because ceilings are given as seen from above. z is above the storey's FFL.
struct Frame {
    Vec3 origin_mm;
    Vec3 u{1, 0, 0};
    Vec3 v{0, 0, 1};
    Vec3 w{0, -1, 0};
    double length_mm = 0; ///< extent along u
    double height_mm = 0; ///< extent along v (walls: the highest point of the wall)
};

/// (u, v, w) in the frame to house coordinates, and back; the pair returns to within 1e-6 mm.
Vec3 toHouse(const Frame& frame, Vec3 uvw_mm);
Vec3 toFrame(const Frame& frame, Vec3 house_mm);

/// Where edge i of room.walls begins and ends on plan; columns' edges follow the outline's.
struct WallEdge {
    Vec2 from_mm; ///< left corner as seen from inside the room
    Vec2 to_mm;
};
WallEdge wallEdge(const plan::Room& room, std::size_t wall_index);

Frame wallFrame(const plan::Room& room, std::size_t wall_index);
Frame floorFrame(const plan::Room& room);
Frame ceilingFrame(const plan::Room& room);
/// Face is "front", "back", "left", "right", "top" or "bottom"; nullopt for any other word.
std::optional<Frame> furnitureFaceFrame(const plan::Furniture& piece, const std::string& face);

/// The frame a host refers to; the error is a sentence naming what is missing.
std::expected<Frame, std::string> hostFrame(const plan::Plan& plan, const std::string& room_id,
                                            const plan::Host& host);
std::expected<Frame, std::string> hostFrame(const HouseIndex& house, const std::string& room_id,
                                            const plan::Host& host);

/// Centre of a plate's face (w = 0) in house coordinates.
std::expected<Vec3, std::string> hostPoint(const plan::Plan& plan, const std::string& room_id,
                                           const plan::Host& host);
std::expected<Vec3, std::string> hostPoint(const HouseIndex& house, const std::string& room_id,
                                           const plan::Host& host);

/// Ceiling height above FFL at a point of the room's plan (sloped ceilings: on the facet it lies in).
double ceilingHeightAt(const plan::Room& room, Vec2 at_mm);

/// Outline of a wall as seen from inside in (u, v): floor, right end, ceiling line, left end,
/// counter-clockwise from (0, 0).
std::vector<Vec2> wallOutline(const plan::Room& room, std::size_t wall_index);

/// Signed area in mm2, negative for the clockwise outlines of rooms.
double signedArea(const std::vector<Vec2>& polygon);
bool insidePolygon(const std::vector<Vec2>& polygon, Vec2 at_mm);
/// Inside the outline and outside every column.
bool insideRoom(const plan::Room& room, Vec2 at_mm);
/// The room of a storey that holds a point, nullptr outside all.
const plan::Room* roomAt(const plan::Plan& plan, const std::string& storey, Vec2 at_mm);
const plan::Room* roomAt(const HouseIndex& house, const std::string& storey, Vec2 at_mm);

} // namespace gangway::geometry
