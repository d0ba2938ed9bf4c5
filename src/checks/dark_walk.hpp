// Walks at night: from beds, doors and stairs to doors, beds, stairs and WCs, and how far one goes in the
// dark before a switch for the space ahead is in reach.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/house_index.hpp"

#include <string>
#include <vector>

namespace gangway::checks {

struct WalkEnd {
    enum class Kind { Door, Bed, Stair, Wc };
    Kind kind = Kind::Door;
    std::string id;   ///< of the opening or piece
    std::string name; ///< "bed, left side", "kitchen door"
    std::string room;
    plan::Vec2 at_mm;
};

struct Walk {
    WalkEnd from;
    WalkEnd to;
    std::vector<plan::Vec2> points_mm; ///< house x, y, on the storey of `from.room`
    double length_mm = 0;
    /// The longest stretch in the dark, and between which of the way's places. Every lamp is off when one
    /// sets out; a room is light once a switch for it has been in reach, or one has come by its sensor.
    double dark_mm = 0;
    plan::Vec2 dark_from_mm;
    plan::Vec2 dark_to_mm;
    std::string dark_room;        ///< where it begins
    bool dark_from_start = false; ///< it begins where the walk does; else at a door
    std::string leg;              ///< id of a leg that lights that room; empty: none
};

/// What is walked: everything, or only what may be dark from its beginning at a bed or a stair.
enum class Walks { All, DarkFromStart };

/// From each bed's sides, door and stair of a room to the others of that room and to its WCs, and from each
/// bed to the nearest WC of its storey through doors. Rooms that no switch lights are left out of the count:
/// what is missing there is said elsewhere. Reach is the pack's limit `darkReach`, on plan, in the room one
/// is in; at doors from their edges. Linear in the house: each room's floor is looked at by itself.
std::vector<Walk> nightWalks(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                             const catalogue::CountryPack& pack, Walks which = Walks::All);

} // namespace gangway::checks
