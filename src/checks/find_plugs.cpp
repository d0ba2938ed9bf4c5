// Plugs: more than a plate takes, blocks that hide the outlet beside them, and watts.
#include "checks/outlet_assignment.hpp"
#include "checks/rules.hpp"
#include "switching/loads.hpp"

#include <fmt/format.h>

namespace gangway::checks {

using plan::Severity;

namespace {
/// Outlets in a row that so many plugs take when each block hides the outlets beside it: blocks stand every
/// other one, and what is between and beside them is lost to the other plugs.
int outletsTaken(int blocks, int plugs) {
    if (blocks == 0) return plugs;
    return plugs == 0 ? 2 * blocks - 1 : 2 * blocks + plugs;
}

void findOverfull(const Facts& facts, const PlateUse& use, Findings& findings) {
    const int plugs = use.outlets - use.free;
    const int taken = outletsTaken(use.blocks, plugs - use.blocks);
    const bool too_many = use.free < 0;
    if (!too_many && (taken <= use.outlets || use.blocks == 0)) return;
    auto finding = about(facts, "outlets-overfull", too_many ? Severity::Fault : Severity::Warn, *use.point);
    for (const plan::Device* device : use.point->devices)
        finding.objects.push_back(device->id);
    const std::string who = whoIn(facts, *use.point);
    finding.message =
        too_many ? fmt::format("{} has {} outlet{} for {} plug{}.", who, use.outlets,
                               use.outlets == 1 ? "" : "s", plugs, plugs == 1 ? "" : "s")
                 : fmt::format("{} has {} outlets for {} plugs, and {} the outlets beside.", who, use.outlets,
                               plugs,
                               use.blocks == 1 ? "a power block among them hides"
                                               : fmt::format("{} power blocks among them hide", use.blocks));
    finding.source = too_many ? "one plug an outlet"
                              : "a power block hides the outlet beside it; common practice, no source";
    finding.remedy = "Another module or plate, or plug one of them in elsewhere.";
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
