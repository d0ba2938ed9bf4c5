// A room's corners and walls while they are moved, and what hangs on them afterwards. Private to src/edit.
#pragma once

#include "edit/draft.hpp"
#include "plan/plan.hpp"

#include <expected>
#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace gangway::edit::detail {

/// Unit direction of edge `wall` of the outline, from its left to its right corner, and the unit normal that
/// points out of the room.
plan::Vec2 edgeDirection(const plan::Room& room, std::size_t wall);
plan::Vec2 outwardNormal(const plan::Room& room, std::size_t wall);
/// Directions less than 0.06 degrees apart.
bool parallel(plan::Vec2 a, plan::Vec2 b);

/// The point itself when it is inside the outline, else the nearest one on it.
plan::Vec2 nearestInside(const plan::Room& room, plan::Vec2 at_mm);
/// South-west corner of the outline's bounding box, where places on floor and ceiling count from.
plan::Vec2 southWest(const plan::Room& room);

/// Walls of the outline from `first` to `last`, clockwise; they lie in one line.
struct Run {
    std::size_t first = 0;
    std::size_t last = 0;
};
/// The wall with those before and behind it that lie in one line with it.
Run straightRun(const plan::Room& room, std::size_t wall);

/// Moves a run by so many mm out of the room. The walls at its ends keep their direction and grow or shrink;
/// where one lies in line with the run, a new wall joins the two across.
void shiftRun(plan::Room& room, Run run, double outwards_mm);

/// Puts a corner into the outline before corner `corner`, and a new wall, named and built like wall `like`,
/// at index `wall` of the walls. Ceiling heights and folds keep to their corners.
void insertCorner(plan::Room& room, std::size_t corner, plan::Vec2 at_mm, double ceiling_mm, std::size_t wall,
                  std::size_t like);

/// A room with a new shape and what changed with it, ready to be put into the plan.
struct Reshaped {
    plan::Room room;
    std::vector<plan::Opening> openings;
    std::vector<plan::Plate> plates;
    std::vector<plan::Luminaire> luminaires;
};
/// Where something at (wall id, u) of the old room is in the new one.
using WallPlace = std::pair<std::string, double>;
using Rehost = std::function<WallPlace(const WallPlace&)>;

/// Fits what the room of the plan with this id holds to its new shape: wall lines end at their wall, openings
/// and what hangs on walls keep their distance from the left corner and stay on the wall, what is on floor
/// and ceiling stays where it is in the house, if that is still in the room. The error is a sentence: the
/// outline crosses itself, an opening no longer fits.
std::expected<Reshaped, std::string> fitted(const plan::Plan& plan, plan::Room after,
                                            const Rehost& rehost = {});
void apply(Draft& draft, const Reshaped& reshaped);

} // namespace gangway::edit::detail
