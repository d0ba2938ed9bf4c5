// What doors, fronts and drawers pass through as they open. Only for this folder.
#pragma once

#include "checks/point.hpp"

#include <functional>

namespace gangway::checks {

/// Something that opens.
struct Sweep {
    std::string object; ///< id of the opening or the piece of furniture
    std::string name;   ///< "door 1 of wardrobe"
    /// How far a place in the house lies within what is passed through, mm; 0 or less outside.
    std::function<double(plan::Vec3)> into;
    /// Of hinged fronts: where the open leaf stands on plan, from its hinge to its free end, and its height.
    bool stands = false;
    plan::Vec2 hinge_mm;
    plan::Vec2 free_mm;
    double low_mm = 0;
    double high_mm = 0;
};

/// A leaf on plan that turns about its hinge from where it is shut to where it stands open.
struct Turning {
    plan::Vec2 hinge_mm;
    plan::Vec2 shut; ///< unit direction from the hinge, shut
    plan::Vec2 open; ///< and open
    double angle_rad = 0;
    double width_mm = 0;
    double low_mm = 0; ///< heights above FFL
    double high_mm = 0;
    double thick_mm = 0;                         ///< of the leaf, on the side that it turns towards
    double handle_mm = 0;                        ///< how far a handle stands out on that side
    double handle_from_mm = 0, handle_to_mm = 0; ///< where along the leaf, from the hinge
    double handle_low_mm = 0, handle_high_mm = 0;
};
/// How far a place lies within what a leaf passes through: the way out by its free end or past its side where
/// it stands open, whichever is shorter.
double intoTurning(const Turning& leaf, plan::Vec3 at_mm);

/// Doors of the building that open into a room.
std::vector<Sweep> doorSweeps(const Facts& facts, const plan::Room& room);
/// Doors, flaps and drawers of a piece of furniture.
std::vector<Sweep> frontSweeps(const Facts& facts, const plan::Furniture& piece);

} // namespace gangway::checks
