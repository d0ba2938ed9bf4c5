// What the checks find, for the docket.
#pragma once

#include "plan/finding.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace gangway::app {

struct State;

/// Kept until the plan changes.
struct Findings {
    std::uint64_t version = 0;
    std::vector<plan::Finding> list;
    std::string open;           ///< id of the one whose row shows what can be done
    std::string why;            ///< note being typed for it
    bool show_accepted = false; ///< rows of those taken as they are
};

/// All findings of the plan as it is; those from before while a step is still open, as during a drag.
const std::vector<plan::Finding>& findingsOf(State& state);
/// Rows of the docket: findings of one room, or of the whole house when `room` is empty. A click goes there.
void findingRows(State& state, const std::string& room);

} // namespace gangway::app
