// How furniture stands in the way: how hard it is to move, and whether one gets into it.
#pragma once

#include "plan/plan.hpp"

namespace gangway::checks {

/// From what is screwed down to what a hand pushes aside.
enum class Standing {
    Fixed,     ///< built in or screwed to the wall
    Heavy,     ///< moved by two, rarely
    Light,     ///< moved by one hand
    Moving,    ///< curtains and blinds
    Hot,       ///< radiators
    Appliance, ///< built into a bay of its own
    Cupboard,  ///< fixed, with doors and a void one reaches into
    Screen     ///< a television on its bracket
};

/// By the table of kinds in standing.cpp; what is on the building's layer is fixed.
Standing standingOf(const plan::Furniture& piece);

/// Seen by a hand that comes once, or reaches into a cupboard now and then.
bool isPutAway(const plan::Plate& plate);

/// Whether a solid of a cupboard opens, or has a hole cut for what lies behind it: doors, fronts, the back.
bool isInTheWayInside(const std::string& solid);
/// Handles, rails and pipes that are no reason to move a plate.
bool isSmallPart(const std::string& solid);

} // namespace gangway::checks
