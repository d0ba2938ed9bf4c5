// The dark walk: from a bed or a stair to where a switch for the light is in reach.
#include "checks/night.hpp"
#include "checks/rules.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::checks {

namespace {
/// A stair that ends at an entrance is spoken of there (rule dark-entrance).
bool isAtEntrance(const Night& night, const Walk& walk, double reach_mm) {
    return walk.from.kind == WalkEnd::Kind::Stair &&
           std::ranges::any_of(night.doorsOf(walk.from.room), [&](const switching::Entrance* entrance) {
               return length(entrance->middle_mm - walk.from.at_mm) <= reach_mm;
           });
}

std::string remedyFor(const Night& night, const Walk& walk) {
    const plan::SwitchLeg* leg = night.leg(walk.leg);
    const std::string where =
        fmt::format("{} {}", walk.from.kind == WalkEnd::Kind::Bed ? "beside" : "at", walk.from.name);
    if (leg == nullptr) return fmt::format("Put a switch for the light of the room {}.", where);
    return fmt::format("Give {} a two-way position {}.", switching::legName(*leg), where);
}

plan::Finding said(const Facts& facts, const Night& night, const Walk& walk) {
    plan::Finding finding;
    finding.rule = "dark-walk";
    finding.severity = plan::Severity::Warn;
    finding.objects = {walk.from.id, walk.to.id};
    if (!walk.leg.empty()) finding.objects.push_back(walk.leg);
    finding.value_mm = walk.dark_mm;
    finding.limit_mm = facts.limit("darkStretch");
    finding.place_mm = plan::Vec3{walk.from.at_mm.x, walk.from.at_mm.y, 0};
    finding.gap =
        plan::Gap{{walk.dark_from_mm.x, walk.dark_from_mm.y, 0}, {walk.dark_to_mm.x, walk.dark_to_mm.y, 0}};
    finding.message =
        fmt::format("At night from {} in {} to {}: {} mm in the dark before a switch is in reach, "
                    "{} mm at most wanted.",
                    walk.from.name, roomName(facts, walk.from.room), walk.to.name,
                    mm(std::round(walk.dark_mm)), mm(*finding.limit_mm));
    finding.source = facts.source("darkStretch");
    finding.remedy = remedyFor(night, walk);
    return finding;
}
} // namespace

// What is dark from a door on is said of that door by the switching (rule dark-entrance).
void findDark(const Facts& facts, Night& night, const plan::Room& room, std::set<std::string>& looked,
              Findings& findings) {
    if (facts.plan().legs.empty()) return;
    const auto walks = walksFrom(night, room, Walks::DarkFromStart, looked);
    // Of each place one sets out from the longest.
    std::vector<const Walk*> longest;
    for (const Walk& walk : walks) {
        if (!walk.dark_from_start || walk.dark_mm <= facts.limit("darkStretch") ||
            isAtEntrance(night, walk, facts.limit("darkReach")))
            continue;
        const auto same = std::ranges::find_if(longest, [&](const Walk* one) {
            return one->from.id == walk.from.id && one->from.room == walk.from.room;
        });
        if (same == longest.end())
            longest.push_back(&walk);
        else if (walk.dark_mm > (*same)->dark_mm)
            *same = &walk;
    }
    for (const Walk* walk : longest)
        findings.push_back(said(facts, night, *walk));
}

} // namespace gangway::checks
