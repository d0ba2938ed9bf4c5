// What if: what a change would newly break, mend or leave different, before it is decided.
#pragma once

#include "plan/finding.hpp"

#include <vector>

namespace gangway::checks {

struct Ripple {
    enum class Change { NewlyFails, Worse, Better, NewlyPasses };
    Change change = Change::NewlyFails;
    plan::Finding finding; ///< as it is after the change; as it was before where it passes now
};

/// Differences between two checks of one plan, by what the findings are about: what fails comes first, each
/// part faults first. Accepted ones count like the others. Worse and better: another severity, or a measure
/// that differs by more than half a mm, seen from its limit.
std::vector<Ripple> compare(const std::vector<plan::Finding>& before,
                            const std::vector<plan::Finding>& after);

/// "newly fails", "worse", "better", "newly passes".
const char* word(Ripple::Change change);

} // namespace gangway::checks
