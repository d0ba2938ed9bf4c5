#include "checks/ripple.hpp"

#include "checks/accepted.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace gangway::checks {

namespace {
using Change = Ripple::Change;

/// How far the measure is beyond its limit, whichever side it is on.
double beyond(const plan::Finding& finding) {
    return std::abs(finding.value_mm.value_or(0) - finding.limit_mm.value_or(0));
}

constexpr double kSameMm = 0.5;

bool differs(const plan::Finding& before, const plan::Finding& after) {
    return before.severity != after.severity || std::abs(beyond(before) - beyond(after)) > kSameMm;
}

bool isWorse(const plan::Finding& before, const plan::Finding& after) {
    if (before.severity != after.severity) return after.severity > before.severity;
    return beyond(after) > beyond(before);
}
} // namespace

std::vector<Ripple> compare(const std::vector<plan::Finding>& before,
                            const std::vector<plan::Finding>& after) {
    // One rule may speak of the same objects more than once.
    std::multimap<std::string, const plan::Finding*> known;
    for (const plan::Finding& finding : before)
        known.emplace(findingId(finding), &finding);
    std::vector<Ripple> ripples;
    for (const plan::Finding& finding : after) {
        const auto found = known.find(findingId(finding));
        if (found == known.end()) {
            ripples.push_back({Change::NewlyFails, finding});
            continue;
        }
        if (differs(*found->second, finding))
            ripples.push_back({isWorse(*found->second, finding) ? Change::Worse : Change::Better, finding});
        known.erase(found);
    }
    for (const auto& [id, finding] : known)
        ripples.push_back({Change::NewlyPasses, *finding});
    std::ranges::stable_sort(ripples, [](const Ripple& a, const Ripple& b) {
        if (a.change != b.change) return a.change < b.change;
        return a.finding.severity > b.finding.severity;
    });
    return ripples;
}

const char* word(Ripple::Change change) {
    switch (change) {
    case Change::NewlyFails:
        return "newly fails";
    case Change::Worse:
        return "worse";
    case Change::Better:
        return "better";
    case Change::NewlyPasses:
        break;
    }
    return "newly passes";
}

} // namespace gangway::checks
