// Ways and what they feed; luminaires and what works them.
#include "switching/proof.hpp"

#include "switching/loads.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::switching {

using catalogue::WayAction;
using plan::Severity;

namespace {

constexpr const char* kBySense = "what a switch is for; no source needed";

bool feeds(const Proof& proof, const plan::SwitchLeg& leg) {
    const LegLoad load = legLoad(proof.net, leg);
    return load.luminaires > 0 || load.socket_plates > 0;
}

} // namespace

// A thermostat or floor heating control works a circuit of its own trade: that it has no leg says nothing.
void proveWaysFeed(const Proof& proof, Findings& findings) {
    for (const Way& way : proof.net.ways()) {
        if (way.action == WayAction::Heating || way.action == WayAction::None) continue;
        if (std::ranges::any_of(way.legs, [&](const auto* leg) { return feeds(proof, *leg); })) continue;
        auto finding = aboutPlate(proof, "way-feeds-nothing", Severity::Warn, *way.plate);
        for (const plan::SwitchLeg* leg : way.legs)
            finding.objects.push_back(leg->id);
        const plan::Module& module = way.plate->modules[static_cast<std::size_t>(way.ref.module) - 1];
        finding.message =
            fmt::format("{} ({}{}) in {} feeds nothing.", wayName(proof.net, way.ref), way.module->name,
                        module.label.empty() ? "" : fmt::format(", \"{}\"", module.label),
                        roomName(proof.net, way.plate->room));
        finding.source = kBySense;
        finding.remedy = way.action == WayAction::Motor ? "Tie it to the motor's outlet, or take it away."
                                                        : "Tie it to what it works, or make it a blank.";
        findings.push_back(std::move(finding));
    }
}

void proveWaysExist(const Proof& proof, Findings& findings) {
    for (const Group& group : proof.groups)
        for (const plan::WayRef& ref : group.leg->controls) {
            const plan::Plate* plate = proof.net.plate(ref.plate);
            if (plate == nullptr || proof.net.way(ref) != nullptr) continue;
            auto finding = aboutPlate(proof, "way-missing", Severity::Fault, *plate);
            finding.objects.push_back(group.leg->id);
            finding.message = fmt::format("{} is worked from module {}, way {} of {}, which has no such way.",
                                          legName(*group.leg), ref.module, ref.way, plateTag(*plate));
            finding.source = "the catalogue's number of ways";
            finding.remedy = "Choose a module with enough ways, or tie the leg to another one.";
            findings.push_back(std::move(finding));
        }
}

namespace {

void proveListedOnce(const Proof& proof, const Group& group, Findings& findings) {
    const auto& controls = group.leg->controls;
    for (std::size_t i = 1; i < controls.size(); ++i) {
        const auto before = controls.begin() + static_cast<std::ptrdiff_t>(i);
        const Way* way = proof.net.way(controls[i]);
        if (way == nullptr || std::find(controls.begin(), before, controls[i]) == before) continue;
        auto finding = aboutPlate(proof, "way-twice", Severity::Warn, *way->plate);
        finding.objects.push_back(group.leg->id);
        finding.message = fmt::format("{} is listed twice as a position of {}; it counts once.",
                                      wayName(proof.net, controls[i]), legName(*group.leg));
        finding.source = kBySense;
        finding.remedy = "Take one of them away, or name the way that was meant.";
        findings.push_back(std::move(finding));
    }
}

} // namespace

void proveWaysOnce(const Proof& proof, Findings& findings) {
    for (const Way& way : proof.net.ways()) {
        if (way.legs.size() < 2) continue;
        auto finding = aboutPlate(proof, "way-twice", Severity::Warn, *way.plate);
        std::string names;
        for (const plan::SwitchLeg* leg : way.legs) {
            finding.objects.push_back(leg->id);
            names += fmt::format("{}{}", names.empty() ? "" : ", ", legName(*leg));
        }
        finding.message = fmt::format("{} in {} works {} legs at once: {}.", wayName(proof.net, way.ref),
                                      roomName(proof.net, way.plate->room), way.legs.size(), names);
        finding.source = "one way switches one line; common practice, no source";
        finding.remedy = "Make them one leg, or give each a way of its own.";
        findings.push_back(std::move(finding));
    }
    for (const Group& group : proof.groups)
        proveListedOnce(proof, group, findings);
}

void proveLampsControlled(const Proof& proof, Findings& findings) {
    for (const plan::Luminaire& lamp : proof.plan().luminaires) {
        const auto legs = proof.net.legsOfLuminaire(lamp.id);
        const bool worked = std::ranges::any_of(legs, [&](const auto* leg) {
            const auto& positions = proof.groupOf(*leg).positions;
            return std::ranges::any_of(positions, [](const Way* way) { return isForLight(*way); });
        });
        if (worked || (legs.empty() && hasOwnSwitch(lamp))) continue;
        plan::Finding finding;
        finding.rule = "lamp-without-control";
        finding.severity = Severity::Fault;
        finding.objects = {lamp.id};
        for (const plan::SwitchLeg* leg : legs)
            finding.objects.push_back(leg->id);
        finding.place_mm = proof.placeOf(lamp);
        finding.message =
            legs.empty()
                ? fmt::format("No switch works {} in {}.", lampTag(lamp), roomName(proof.net, lamp.room))
                : fmt::format("{} in {} is on {}, which no switch works.", lampTag(lamp),
                              roomName(proof.net, lamp.room), legName(*legs.front()));
        finding.source = "every luminaire needs a control; common practice, no source";
        finding.remedy = "Tie it to a switch, or say that it has its own.";
        findings.push_back(std::move(finding));
    }
}

} // namespace gangway::switching
