// Whose arm: what of a wall somebody reaches, over what stands before it.
#pragma once

#include "checks/point.hpp"

namespace gangway::checks {

/// What is reached of an upright strip of a wall. Nothing: `high_mm` is not above `low_mm`.
struct ReachColumn {
    double from_mm = 0; ///< along the wall, u
    double to_mm = 0;
    double low_mm = 0; ///< v
    double high_mm = 0;
    double depth_mm = 0; ///< of what one reaches over
};

/// Strips of at most `step_mm`, left to right. Furniture that stands on the floor and is higher than a step
/// (200) keeps one off by its depth: the hand then works within a circle round the shoulder, cut to the
/// heights that the body reaches with ease. Nothing is reached behind what is higher than the shoulder.
std::vector<ReachColumn> reachShell(const Facts& facts, const plan::Room& room, std::size_t wall,
                                    const catalogue::Body& body, double step_mm);

} // namespace gangway::checks
