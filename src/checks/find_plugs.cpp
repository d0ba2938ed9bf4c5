// Plugs: more than a plate takes, those that are in each other's way, and watts.
#include "catalogue/plug_places.hpp"
#include "catalogue/plug_shapes.hpp"
#include "checks/outlet_assignment.hpp"
#include "checks/rules.hpp"
#include "switching/loads.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <optional>

namespace gangway::checks {

using plan::Severity;

namespace {
plan::Finding aboutPlugs(const Facts& facts, const PlateUse& use, Severity severity) {
    auto finding = about(facts, "outlets-overfull", severity, *use.point);
    for (const plan::Device* device : use.point->devices)
        finding.objects.push_back(device->id);
    finding.message = fmt::format("{} has {} outlet{} for {} plug{}", whoIn(facts, *use.point), use.outlets,
                                  use.outlets == 1 ? "" : "s", use.outlets - use.free,
                                  use.outlets - use.free == 1 ? "" : "s");
    finding.remedy = "Another module or plate, or plug one of them in elsewhere.";
    return finding;
}

std::string deviceName(const Point& point, const std::string& id) {
    const auto found = std::ranges::find(point.devices, id, &plan::Device::id);
    return found == point.devices.end() || (*found)->name.empty() ? id : (*found)->name;
}

/// An outlet whose plug and another's are in each other's way, though all are put where they are least.
std::optional<catalogue::OutletPlace> crowded(const Point& point) {
    std::vector<catalogue::PluggedIn> plugged;
    for (const plan::Device* device : point.devices)
        plugged.push_back({point.plate->id, device->id, device->plug, device->plug_type});
    const auto places = catalogue::plugPlaces(*point.plate, point.made, plugged);
    for (const catalogue::OutletPlace& outlet : places.outlets)
        if (outlet.state == catalogue::OutletPlace::State::Taken && !outlet.blocked_by.empty()) return outlet;
    return std::nullopt;
}

void findOverfull(const Facts& facts, const PlateUse& use, Findings& findings) {
    if (use.free < 0) {
        findings.push_back(aboutPlugs(facts, use, Severity::Fault));
        findings.back().message += ".";
        findings.back().source = "one plug an outlet";
        return;
    }
    const auto outlet = use.point->devices.size() < 2 ? std::nullopt : crowded(*use.point);
    if (!outlet) return;
    auto finding = aboutPlugs(facts, use, Severity::Warn);
    finding.message += fmt::format(", and those of {} and {} are in each other's way.",
                                   deviceName(*use.point, outlet->blocked_by),
                                   deviceName(*use.point, outlet->plugged.device));
    const auto widest = [&](const plan::Device* device) {
        return catalogue::plugShape(device->plug, device->plug_type).width_mm;
    };
    const plan::Device* body = std::ranges::max(use.point->devices, {}, widest);
    finding.source = fmt::format("outlines of plugs; the widest: {}",
                                 catalogue::plugShape(body->plug, body->plug_type).source);
    findings.push_back(std::move(finding));
}

void findPlateWatts(const Facts& facts, const PlateUse& use, Findings& findings) {
    constexpr double kRoundingW = 1e-6;
    if (use.limit_w <= 0 || use.watts <= use.limit_w + kRoundingW) return;
    auto finding = about(facts, "plate-watts", Severity::Warn, *use.point);
    for (const plan::Device* device : use.point->devices)
        finding.objects.push_back(device->id);
    finding.message =
        fmt::format("{}: {:.0f} W are plugged into it, its outlets carry {:.0f} W at {:g} V{}.",
                    whoIn(facts, *use.point), use.watts, use.limit_w, facts.pack().volts.value,
                    facts.pack().circuit_part.value < 1
                        ? fmt::format(" and {:g} % of their rating", facts.pack().circuit_part.value * 100)
                        : "");
    finding.source = facts.pack().circuit_part.source;
    finding.remedy = "Spread them over more outlets.";
    findings.push_back(std::move(finding));
}
} // namespace

void findPlugs(const Facts& facts, const OutletAssignment& all, Findings& findings) {
    for (const PlateUse& use : all.plates) {
        findOverfull(facts, use, findings);
        findPlateWatts(facts, use, findings);
    }
}

void findCircuitWatts(const Facts& facts, Findings& findings) {
    constexpr double kRoundingW = 1e-6;
    const switching::Net net(facts.plan(), facts.catalogue());
    for (const switching::CircuitLoad& load : switching::circuitLoads(net, facts.pack())) {
        const double watts = load.appliances_w + load.lighting_w;
        // Too much lighting alone is said by the switching.
        if (load.appliances_w <= 0 || load.limit_w <= 0 || load.lighting_w > load.limit_w ||
            watts <= load.limit_w + kRoundingW)
            continue;
        plan::Finding finding;
        finding.rule = "circuit-watts";
        finding.severity = Severity::Warn;
        for (const plan::Device& device : facts.plan().devices)
            if (const plan::Plate* plate = net.plate(device.plate);
                plate != nullptr && plate->circuit == load.id) {
                if (finding.objects.empty()) finding.objects.push_back(plate->id);
                finding.objects.push_back(device.id);
            }
        finding.objects.push_back(load.id);
        const double part = facts.pack().circuit_part.value;
        finding.message = fmt::format(
            "Circuit {}: {:.0f} W are plugged into it{}, all at once; {:g} A at {:g} V carry {:.0f} W{}.",
            load.circuit == nullptr || load.circuit->name.empty() ? load.id : load.circuit->name, watts,
            load.lighting_w > 0 ? " or lit by it" : "", load.rated_a, load.volts, load.limit_w,
            part < 1 ? fmt::format(" at {:g} % of it", part * 100) : "");
        finding.source = facts.pack().circuit_part.source;
        finding.remedy = "Spread the devices over more circuits, or ask the electrician for another rating.";
        findings.push_back(std::move(finding));
    }
}

} // namespace gangway::checks
