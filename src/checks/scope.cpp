#include "checks/scope.hpp"

#include <fmt/format.h>

namespace gangway::checks {

Scope scopeOf(const catalogue::CountryPack& pack) {
    Scope scope;
    scope.checked = {
        "switching: ways, groups, dimmers, doors, entrances, stairs, circuits",
        "places on walls: openings, mouldings, furniture, plugs, curtains, radiators, hobs, sinks, open "
        "leaves, other plates",
        "boxes; heights, reach, rows, tiles; studs and joists where stated",
        "lamps and fans; devices and their leads; what is seen from where",
        "bath and shower zones; degrees of protection where stated"};
    scope.not_checked = {
        "sizes of cables and protective devices, residual current devices, earthing, bonding",
        "routes of cables beyond the zones of walls; pipes and what else is in them",
        "fire and sound beyond the distance of boxes", "makers' own instructions"};
    if (pack.zones.empty())
        scope.not_checked.emplace_back("cable zones, of which this pack has none");
    else
        scope.checked.emplace_back("cable zones of walls: feeds of plates, and what is screwed into them");
    const bool counts = !pack.outlets.empty() || pack.limit("spacingReach").value > 0;
    if (counts)
        scope.checked.emplace_back("numbers of outlets and their spacing");
    else
        scope.not_checked.emplace_back("numbers of outlets, of which this pack has none");
    return scope;
}

namespace {
std::string joined(const std::vector<std::string>& sentences) {
    std::string all;
    for (const std::string& sentence : sentences)
        all += (all.empty() ? "" : "; ") + sentence;
    return all;
}
} // namespace

std::string scopeText(const catalogue::CountryPack& pack) {
    const Scope scope = scopeOf(pack);
    const std::string edition = pack.edition.empty() ? "" : fmt::format(" ({})", pack.edition);
    return fmt::format("Checked by the country pack '{}'{}: {}. Not checked: {}.", pack.id, edition,
                       joined(scope.checked), joined(scope.not_checked));
}

std::string cautionText() {
    return "Isolate the supply before any work. Electrical work is for a licensed person, and the local code "
           "prevails over this list.";
}

} // namespace gangway::checks
