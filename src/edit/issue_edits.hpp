// Issuing a set of sheets, as a command.
#pragma once

#include "edit/edit.hpp"
#include "review/issues.hpp"

#include <expected>
#include <string>

namespace gangway::edit {

/// "Issue set B": the plan is frozen into its next issue, and the project bears its letter and date. Refused
/// with a sentence as review::freeze does.
[[nodiscard]] std::expected<Command, std::string> issueSet(const plan::Plan& plan,
                                                           const review::Particulars& particulars);

} // namespace gangway::edit
