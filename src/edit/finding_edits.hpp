// Commands on findings: taking one as it is, and no longer.
#pragma once

#include "edit/edit.hpp"

namespace gangway::edit {

/// Takes a finding as it is, in place of an earlier acceptance of the same id. `at`: ISO 8601, UTC.
Command acceptFinding(plan::Acceptance acceptance);
/// Takes that back.
Command withdrawAcceptance(const std::string& finding_id);

} // namespace gangway::edit
