#include "checks/accepted.hpp"

#include <fmt/format.h>
#include <unordered_map>

namespace gangway::checks {

std::string findingId(const plan::Finding& finding) {
    std::string id = finding.rule;
    for (const std::string& object : finding.objects)
        id += ':' + object;
    return id;
}

std::string factsOf(const plan::Finding& finding) {
    if (!finding.place_mm) return finding.message;
    return fmt::format("{} At {:.0f}, {:.0f}, {:.0f}.", finding.message, finding.place_mm->x,
                       finding.place_mm->y, finding.place_mm->z);
}

void markAccepted(const plan::Plan& plan, std::vector<plan::Finding>& findings) {
    std::unordered_map<std::string, const plan::Acceptance*> by_id;
    for (const plan::Acceptance& acceptance : plan.accepted)
        by_id.emplace(acceptance.id, &acceptance);
    for (plan::Finding& finding : findings) {
        finding.accepted.reset();
        if (by_id.empty()) continue;
        const auto found = by_id.find(findingId(finding));
        if (found != by_id.end() && found->second->facts == factsOf(finding))
            finding.accepted = found->second->note;
    }
}

} // namespace gangway::checks
