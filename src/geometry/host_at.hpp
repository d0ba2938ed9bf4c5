// From a place in the house to what a plate or luminaire would be mounted on there: the way back of
// hostPoint().
#pragma once

#include "geometry/house_index.hpp"

#include <optional>

namespace gangway::geometry {

/// How far a place may be in front of or behind a host's surface and still count as on it: more than tiles,
/// panelling, skirtings and plates stand out of a wall.
inline constexpr double kOnHostMm = 60;

/// The wall, column face, floor or ceiling of a room at a point (house mm, z above the storey's FFL).
/// `normal` (any length but 0) points out of the surface into the room: of several in reach, as at a corner,
/// those that look along it to within 45 degrees count, and of these the nearest. nullopt when there is none,
/// or no such room. For a point on the surface, hostPoint() of the result is the point again.
std::optional<plan::Host> hostAt(const HouseIndex& house, const std::string& room_id, Vec3 point_mm,
                                 Vec3 normal);

/// The face of a piece of furniture's box at a point, by the same rules. nullopt inside the piece, deeper
/// than kOnHostMm behind the face (a knee space, an open cupboard).
std::optional<plan::Host> furnitureHostAt(const plan::Furniture& piece, Vec3 point_mm, Vec3 normal);

} // namespace gangway::geometry
