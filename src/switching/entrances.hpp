// The ways into a room: doors and openings one can walk through, from each side.
#pragma once

#include "geometry/house_index.hpp"

#include <string>
#include <vector>

namespace gangway::switching {

/// An opening as one enters a room through it. Every opening between two rooms is an entrance of both.
struct Entrance {
    const plan::Opening* opening = nullptr;
    std::string into;       ///< room id
    std::string from;       ///< room id; empty: from outside, or not known
    bool leaf_into = false; ///< a hinged leaf opens into the room
    /// Edges of the opening on plan, on both faces of its wall, from which a switch is reached: both sides,
    /// but of a single leaf that opens into the room only the latch side.
    std::vector<plan::Vec2> reach_from_mm;
    plan::Vec2 middle_mm; ///< of the opening on plan
};

/// Entrances of every room, in the plan's order of openings, the opening's own room first. Windows, hatches
/// and openings with a sill of more than 300 mm (common practice, no source) are no entrances. Linear.
std::vector<Entrance> entrances(const geometry::HouseIndex& house);

/// Shortest way on plan from where an entrance is reached to a place, mm.
double reachOf(const Entrance& entrance, plan::Vec2 at_mm);

/// What an opening is called: its name, else its id.
const std::string& openingName(const plan::Opening& opening);

} // namespace gangway::switching
