// Control groups: whether the positions of a leg can work together.
#include "switching/proof.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::switching {

using catalogue::WayAction;
using plan::Severity;

namespace {

constexpr const char* kPositions =
    "n positions: one two-way at each end and n - 2 intermediates between; electrician's handbook (trade "
    "facts 6.2)";

using Ways = std::vector<const Way*>;

Ways with(const Ways& ways, std::initializer_list<WayAction> actions) {
    Ways found;
    for (const Way* way : ways)
        if (std::ranges::find(actions, way->action) != actions.end()) found.push_back(way);
    return found;
}

std::string names(const Proof& proof, const Ways& ways) {
    std::string text;
    for (const Way* way : ways)
        text += fmt::format("{}{}", text.empty() ? "" : ", ", wayName(proof.net, way->ref));
    return text;
}

/// Hand switches, as against push-buttons, sensors and timers.
Ways handSwitches(const Group& group) {
    return with(group.positions, {WayAction::OneWay, WayAction::TwoWay, WayAction::Intermediate});
}

Ways ends(const Group& group) {
    return with(group.positions, {WayAction::TwoWay});
}

Ways between(const Group& group) {
    return with(group.positions, {WayAction::Intermediate});
}

/// Groups of several hand switches that can be judged by their number of ends and intermediates.
bool isSeveral(const Group& group) {
    return !group.leg->relay && handSwitches(group).size() > 1;
}

/// Modules of several ways are made with one kind of contact for all: a lone two-way way beside one that does
/// its part in a group is no slip.
bool sharesModuleWithGroup(const Proof& proof, const Way& lone) {
    return std::ranges::any_of(proof.net.waysOf(lone.plate->id), [&](const Way& way) {
        if (way.ref.module != lone.ref.module || way.ref == lone.ref) return false;
        return std::ranges::any_of(way.legs,
                                   [&](const auto* leg) { return proof.groupOf(*leg).positions.size() > 1; });
    });
}

plan::Finding about(const Proof& proof, std::string_view rule, const Group& group, const Way& way) {
    auto finding = aboutLeg(proof, rule, Severity::Fault, group);
    auto& objects = finding.objects;
    std::erase(objects, way.plate->id);
    objects.insert(objects.begin(), way.plate->id);
    finding.place_mm = proof.placeOf(*way.plate);
    finding.source = kPositions;
    return finding;
}

} // namespace

void proveGroupNotAlone(const Proof& proof, Findings& findings) {
    for (const Group& group : proof.groups) {
        if (group.positions.size() != 1 || group.leg->relay) continue;
        const Way& way = *group.positions.front();
        if (way.action != WayAction::TwoWay && way.action != WayAction::Intermediate) continue;
        if (sharesModuleWithGroup(proof, way)) continue;
        auto finding = about(proof, "group-one-member", group, way);
        const bool end = way.action == WayAction::TwoWay;
        finding.severity = end ? Severity::Warn : Severity::Fault;
        finding.message = fmt::format("{} is {} switch, but works {} alone.", wayName(proof.net, way.ref),
                                      end ? "a two-way" : "an intermediate", legName(*group.leg));
        finding.remedy = "Tie the other position to the same leg, or make it a one-way switch.";
        findings.push_back(std::move(finding));
    }
}

void proveGroupNoOneWay(const Proof& proof, Findings& findings) {
    for (const Group& group : proof.groups) {
        if (!isSeveral(group)) continue;
        // Beside a sensor or timer a one-way switch is wired in parallel, which is an arrangement of its own.
        if (group.arrangement == Arrangement::Sensor && ends(group).empty()) continue;
        for (const Way* way : with(group.positions, {WayAction::OneWay})) {
            auto finding = about(proof, "group-one-way-member", group, *way);
            finding.message = fmt::format(
                "{} ({}) is one of {} positions that work {}: a one-way switch can't be one of several.",
                wayName(proof.net, way->ref), way->module->name, group.positions.size(), legName(*group.leg));
            finding.remedy = way->dimmer
                                 ? "Use a dimmer with push-buttons and a relay, or one position only."
                                 : "Make it a two-way switch (an intermediate when it is between others).";
            findings.push_back(std::move(finding));
        }
    }
}

void proveGroupIntermediates(const Proof& proof, Findings& findings) {
    for (const Group& group : proof.groups) {
        const Ways two_way = ends(group);
        if (!isSeveral(group) || two_way.size() < 3) continue;
        const std::size_t all = two_way.size() + between(group).size();
        for (std::size_t i = 1; i + 1 < two_way.size(); ++i) {
            auto finding = about(proof, "group-intermediate-missing", group, *two_way[i]);
            finding.message = fmt::format(
                "{} has {} positions ({}), which need 2 two-way and {} intermediate; {} is a two-way switch.",
                legName(*group.leg), all, names(proof, handSwitches(group)), all - 2,
                wayName(proof.net, two_way[i]->ref));
            finding.remedy =
                fmt::format("Make {} in {} an intermediate switch.", wayName(proof.net, two_way[i]->ref),
                            roomName(proof.net, two_way[i]->plate->room));
            findings.push_back(std::move(finding));
        }
    }
}

void proveGroupEnds(const Proof& proof, Findings& findings) {
    for (const Group& group : proof.groups) {
        const Ways crossing = between(group);
        if (group.leg->relay || group.positions.size() < 2) continue;
        if (crossing.empty() || ends(group).size() >= 2) continue;
        const Way& last = ends(group).empty() ? *crossing.front() : *crossing.back();
        auto finding = about(proof, "group-ends-missing", group, last);
        finding.message = fmt::format("{} has {} intermediate but only {} two-way switch{} ({}).",
                                      legName(*group.leg), crossing.size(), ends(group).size(),
                                      ends(group).size() == 1 ? "" : "es", names(proof, handSwitches(group)));
        finding.remedy = "Put a two-way switch at each end of the run.";
        findings.push_back(std::move(finding));
    }
}

void proveGroupOneTrade(const Proof& proof, Findings& findings) {
    for (const Group& group : proof.groups) {
        const Ways motors = with(group.positions, {WayAction::Motor});
        const Ways heating = with(group.positions, {WayAction::Heating});
        const std::size_t all = group.positions.size();
        if ((motors.empty() || motors.size() == all) && (heating.empty() || heating.size() == all)) continue;
        auto finding =
            about(proof, "group-mixed", group, motors.empty() ? *heating.front() : *motors.front());
        finding.message = fmt::format("{} is worked by motor or heating controls and by others: {}.",
                                      legName(*group.leg), names(proof, group.positions));
        finding.source = "common practice, no source";
        finding.remedy = "Give motors, heating and light legs of their own.";
        findings.push_back(std::move(finding));
    }
}

void provePushHasRelay(const Proof& proof, Findings& findings) {
    for (const Group& group : proof.groups) {
        const Ways buttons = with(group.positions, {WayAction::Push});
        if (group.leg->relay || buttons.empty()) continue;
        auto finding = about(proof, "push-without-relay", group, *buttons.front());
        finding.message = fmt::format("{} gives only a pulse, and {} has no relay that would keep it on.",
                                      names(proof, buttons), legName(*group.leg));
        finding.source = "a push-button closes only while it is pressed; common practice, no source";
        finding.remedy = "Say that the leg has an impulse relay, or use switches.";
        findings.push_back(std::move(finding));
    }
}

void proveRelayHasPush(const Proof& proof, Findings& findings) {
    for (const Group& group : proof.groups) {
        if (!group.leg->relay) continue;
        for (const Way* way : group.positions) {
            if (way->action == WayAction::Push) continue;
            auto finding = about(proof, "relay-without-push", group, *way);
            finding.message =
                fmt::format("{} ({}) works {} through a relay, which needs a push-button.",
                            wayName(proof.net, way->ref), way->module->name, legName(*group.leg));
            finding.source = "an impulse relay turns over at each pulse; common practice, no source";
            finding.remedy = "Make it a push-button, or leave the relay out.";
            findings.push_back(std::move(finding));
        }
    }
}

} // namespace gangway::switching
