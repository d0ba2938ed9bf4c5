// Who gets which place when places are few: as many as can be, and of those arrangements the one that costs
// least in all. Only for this folder.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace gangway::checks {

struct Choice {
    std::size_t who = 0;
    std::size_t where = 0;
    double cost = 0; ///< at least 0, up to 1e9; counted in tenths
};

/// For each of `count` the index of its place in `room`, which says how many each place takes; nullopt for
/// whoever gets none. A flow of least cost (Ahuja, Magnanti, Orlin, Network Flows, 1993), solved exactly.
std::vector<std::optional<std::size_t>> leastCost(std::size_t count, const std::vector<int>& room,
                                                  const std::vector<Choice>& choices);

} // namespace gangway::checks
