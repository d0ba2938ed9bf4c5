// What stands on a wall and has edges: openings with their casings, furniture. Private to src/edit.
#pragma once

#include "geometry/house_index.hpp"

#include <string>
#include <vector>

namespace gangway::edit::detail {

/// The rectangle of an opening or a piece of furniture in a wall's (u, v), mm. An opening's edges are its
/// casing's outer edges (design.md 9). The sides of a piece are those of its solids, because a headboard may
/// be wider than its bed; its height is the stated one, because a tap is not a worktop.
struct WallMark {
    std::string name;
    double left_mm = 0;
    double right_mm = 0;
    double bottom_mm = 0;
    double top_mm = 0;
    const plan::Opening* opening = nullptr; ///< exactly one of the two is set
    const plan::Furniture* piece = nullptr;
};

/// Openings left to right, then furniture within 400 mm of the wall whose top is 50 mm or more above FFL.
/// Empty when the room has no such wall.
std::vector<WallMark> wallMarks(const geometry::HouseIndex& house, const std::string& room_id,
                                const std::string& wall_id);

/// How far a host reaches in its (u, v): its own length and height, and the headboard of a bed whose face it
/// is.
struct HostExtents {
    double left_mm = 0;
    double right_mm = 0;
    double top_mm = 0; ///< of upright hosts the highest point
};
HostExtents extentsOf(const geometry::Frame& frame, const plan::Host& host, const plan::Furniture* piece);

bool sameHost(const plan::Host& a, const plan::Host& b); ///< one surface, wherever on it
bool isUpright(const geometry::Frame& frame);            ///< its v is a height above FFL
const std::string& nameOf(const plan::Plate& plate);     ///< its tag, else its id

} // namespace gangway::edit::detail
