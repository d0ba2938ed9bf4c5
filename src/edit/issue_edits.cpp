#include "edit/issue_edits.hpp"

#include <utility>

namespace gangway::edit {

std::expected<Command, std::string> issueSet(const plan::Plan& plan, const review::Particulars& particulars) {
    auto issue = review::freeze(plan, particulars);
    if (!issue) return std::unexpected(std::move(issue.error()));
    return Command{"Issue set " + issue->letter, "", [issue = std::move(*issue)](Draft& draft) {
                       plan::Project& project = draft.changeProject();
                       project.revision = issue.letter;
                       project.date = issue.date;
                       draft.add(issue);
                   }};
}

} // namespace gangway::edit
