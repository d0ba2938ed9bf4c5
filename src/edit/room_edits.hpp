// Commands on rooms: new ones, their corners and walls, ceilings, names. Lengths mm. Whatever can be refused
// comes back as a sentence. Each command is made for the plan given and is to be run on that plan.
#pragma once

#include "edit/edit.hpp"

#include <expected>
#include <string>
#include <vector>

namespace gangway::edit {

using Refusable = std::expected<Command, std::string>;

/// Corners of a rectangle between two opposite corners, clockwise from the north-west.
std::vector<plan::Vec2> rectangleOutline(plan::Vec2 corner_mm, plan::Vec2 opposite_mm);

/// Adds a room: id and letter are replaced by free ones when they are empty or taken, an anticlockwise
/// outline is turned round, walls left out are added and named. An empty storey means the first one.
Refusable addRoom(const plan::Plan& plan, plan::Room room);
/// The id a room of this name is given, and the letter for its tags: the first free one of the name, else of
/// the alphabet.
std::string freeRoomId(const plan::Plan& plan, const std::string& name);
std::string freeRoomLetter(const plan::Plan& plan, const std::string& name);
/// Removes rooms and everything in them; the name counts what goes.
Refusable removeRooms(const plan::Plan& plan, const std::vector<std::string>& room_ids);

enum class End { Left, Right }; ///< of a wall as seen from inside the room

/// Gives a wall of the outline a length. The end named stays; at the other end the next wall moves in
/// parallel, with those in line with it, and the wall after that takes up the rest, so that all angles stay
/// what they are.
Refusable setWallLength(const plan::Plan& plan, const std::string& room_id, std::size_t wall,
                        double length_mm, End stays);

/// What happens on the other side of a wall that is moved.
enum class Beyond {
    Stays,   ///< only this room changes: the wall becomes thicker or thinner
    Together ///< every face of the same wall line moves too, so that thicknesses stay
};
/// Moves a wall of the outline along its normal, outwards when positive, keeping all angles. Where the wall
/// before or behind lies in line with it, a new wall joins the two across. Moves of one wall merge.
Refusable moveWall(const plan::Plan& plan, const std::string& room_id, std::size_t wall, double outwards_mm,
                   Beyond beyond = Beyond::Stays);

enum class Angles { Kept, Free };
/// Moves a corner of the outline. Kept: both walls at it move in parallel (a corner between walls in one line
/// slides along them); free: only the corner moves. Moves of one corner merge.
Refusable moveCorner(const plan::Plan& plan, const std::string& room_id, std::size_t corner, plan::Vec2 to_mm,
                     Angles angles = Angles::Kept);

/// Puts a corner on a wall, `at_mm` from its left end. The left part keeps the wall's name; what hangs on the
/// right part goes to the new wall and stays where it is. Refused within an opening.
Refusable splitWall(const plan::Plan& plan, const std::string& room_id, std::size_t wall, double at_mm);
/// Removes a corner: the wall before it reaches to the next corner and takes over what hung on the other.
Refusable removeCorner(const plan::Plan& plan, const std::string& room_id, std::size_t corner);

/// One height above FFL for the whole room, or a whole ceiling. Refused where an opening's head would be
/// above.
Refusable setCeilingHeight(const plan::Plan& plan, const std::string& room_id, double height_mm);
Refusable setCeiling(const plan::Plan& plan, const std::string& room_id, const plan::Ceiling& ceiling);

/// Structural thickness of a wall, the only data of its face that other commands' lengths depend on.
Refusable setWallThickness(const plan::Plan& plan, const std::string& room_id, std::size_t wall,
                           double thickness_mm);
/// Replaces what is known of a wall; a new id is followed by what hangs on it. `what` names the step.
Refusable changeWall(const plan::Plan& plan, const std::string& room_id, std::size_t wall, plan::Wall changed,
                     const std::string& what);

Refusable renameRoom(const plan::Plan& plan, const std::string& room_id, const std::string& name);
/// The letter of tags given from now on; tags there are stay. Refused when another room has it.
Refusable setRoomLetter(const plan::Plan& plan, const std::string& room_id, const std::string& letter);
Refusable setRoomStorey(const plan::Plan& plan, const std::string& room_id, const std::string& storey_id);
/// "boards", "tiles", "carpet", "screed" or ""; a colour is "#RRGGBB" or "".
Refusable setFloorFinish(const plan::Plan& plan, const std::string& room_id, const std::string& finish);
Refusable setWallColour(const plan::Plan& plan, const std::string& room_id, const std::string& colour);

} // namespace gangway::edit
