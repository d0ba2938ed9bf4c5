// What the checks looked at and what they did not, in words: beside every list of findings.
#pragma once

#include "catalogue/pack.hpp"

namespace gangway::checks {

/// Sentences without their "Checked:" and "Not checked:"; a pack without numbers for a thing does not check
/// it.
struct Scope {
    std::vector<std::string> checked;
    std::vector<std::string> not_checked;
};
Scope scopeOf(const catalogue::CountryPack& pack);

/// All of it as one paragraph: "Checked by the country pack 'gb' (BS 7671:2018+A2:2022): ... Not checked:
/// ..."
std::string scopeText(const catalogue::CountryPack& pack);
/// What holds whatever was found.
std::string cautionText();

} // namespace gangway::checks
