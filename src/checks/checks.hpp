// Every check there is, over one plan.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/house_index.hpp"
#include "plan/finding.hpp"
#include "switching/prove.hpp"

#include <filesystem>
#include <vector>

namespace gangway::checks {

/// Every rule: those of the switching, then those of places, lamps, leads and wet rooms. A finding's `rule`
/// is the id of one of them.
std::vector<switching::Rule> rules();

/// All findings, faults first, then warnings, then hints, each in the plan's order of rooms. `base`: the
/// plan's folder, where its furniture's glTF files are.
[[nodiscard]] std::vector<plan::Finding> check(const geometry::HouseIndex& house,
                                               const catalogue::Catalogue& catalogue,
                                               const catalogue::CountryPack& pack,
                                               const std::filesystem::path& base = {});

} // namespace gangway::checks
