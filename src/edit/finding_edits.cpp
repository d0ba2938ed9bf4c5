#include "edit/finding_edits.hpp"

#include <algorithm>

namespace gangway::edit {

Command acceptFinding(plan::Acceptance acceptance) {
    return {"Accept a finding", "", [acceptance = std::move(acceptance)](Draft& draft) {
                draft.remove<plan::Acceptance>(acceptance.id);
                draft.add(acceptance);
            }};
}

Command withdrawAcceptance(const std::string& finding_id) {
    return {"Take an acceptance back", "",
            [finding_id](Draft& draft) { draft.remove<plan::Acceptance>(finding_id); }};
}

} // namespace gangway::edit
