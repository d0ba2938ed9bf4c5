// Proof of the switching: what is missing, contradicts itself or can't work, as findings.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/house_index.hpp"
#include "plan/finding.hpp"
#include "switching/net.hpp"

#include <span>
#include <string_view>

namespace gangway::switching {

/// A rule as it is listed: every finding's `rule` is one of these ids.
struct Rule {
    std::string_view id;
    std::string_view what; ///< a sentence: what it looks at
};
std::span<const Rule> rules();

/// All findings of the switching, in the order of rules() and then of the plan. Linear in ways, legs and
/// luminaires. Numbers and their sources come from the pack.
[[nodiscard]] std::vector<plan::Finding> prove(const geometry::HouseIndex& house,
                                               const catalogue::Catalogue& catalogue,
                                               const catalogue::CountryPack& pack);

} // namespace gangway::switching
