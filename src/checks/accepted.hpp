// Findings that the designer takes as they are: how they are known again, and when they no longer count.
#pragma once

#include "plan/finding.hpp"
#include "plan/plan.hpp"

#include <string>

namespace gangway::checks {

/// "covered-plate:kitchen-04:kitchen-dishwasher": the rule and what it is about, the same as long as both
/// are.
std::string findingId(const plan::Finding& finding);
/// What was said and where, with its numbers: when it changes, an acceptance no longer counts.
std::string factsOf(const plan::Finding& finding);
/// Marks findings whose acceptance counts (Finding::accepted).
void markAccepted(const plan::Plan& plan, std::vector<plan::Finding>& findings);

} // namespace gangway::checks
