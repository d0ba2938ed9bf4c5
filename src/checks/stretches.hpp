// Free stretches: where along a wall a plate may sit, and what closes each gap. Interval arithmetic, exact.
#pragma once

#include "checks/bars.hpp"

namespace gangway::checks {

struct Stretch {
    Interval u;
    const Bar* left = nullptr;  ///< what closes it at its left end; nullptr: the wall's end
    const Bar* right = nullptr; ///< and at its right end
};

/// The stretches of centres u between `whole.from_mm` and `whole.to_mm` that no bar of at least `least`
/// severity takes, left to right, at a height; also those of no length. Pointers are into `bars`.
std::vector<Stretch> freeStretches(const std::vector<Bar>& bars, plan::Vec2 half_mm, double v_mm,
                                   Interval whole, plan::Severity least = plan::Severity::Hint);

/// The free place nearest to a centre u; nullopt when there is none.
std::optional<double> nearestFree(const std::vector<Stretch>& stretches, double u_mm);

/// By how many mm a place is right: how far the box may be out along the wall and in height, both at once,
/// before a bar of at least `least` severity is broken, and which. 0 when one is.
struct Margin {
    double mm = 0;
    const Bar* bar = nullptr; ///< nullptr: the wall's end
};
Margin marginOf(const std::vector<Bar>& bars, plan::Vec2 half_mm, plan::Vec2 centre_mm, Interval whole,
                plan::Severity least = plan::Severity::Warn);

} // namespace gangway::checks
