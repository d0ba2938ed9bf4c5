// Circuits as the designer describes them: what the lighting takes against what they carry.
#include "switching/proof.hpp"

#include "switching/loads.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <unordered_set>

namespace gangway::switching {

using plan::Severity;

namespace {

const std::string& nameOf(const CircuitLoad& load) {
    return load.circuit == nullptr || load.circuit->name.empty() ? load.id : load.circuit->name;
}

/// The first plate on a circuit, so that the finding has a place; nullptr for none.
const plan::Plate* firstPlate(const std::unordered_map<std::string_view, const plan::Plate*>& first,
                              const std::string& circuit) {
    const auto at = first.find(circuit);
    return at == first.end() ? nullptr : at->second;
}

std::unordered_map<std::string_view, const plan::Plate*> firstPlates(const plan::Plan& plan) {
    std::unordered_map<std::string_view, const plan::Plate*> first;
    for (const plan::Plate& plate : plan.plates)
        if (!plate.circuit.empty()) first.emplace(plate.circuit, &plate);
    return first;
}

/// Circuits that legs or plates with mains name: data and aerial cables have none.
std::unordered_set<std::string_view> mainsCircuits(const Proof& proof) {
    std::unordered_set<std::string_view> low_voltage;
    for (const auto& module : proof.net.catalogue().modules)
        if (module.extra_low_voltage) low_voltage.insert(module.id);
    std::unordered_set<std::string_view> circuits;
    for (const plan::Plate& plate : proof.plan().plates)
        if (std::ranges::any_of(plate.modules, [&](const auto& m) { return !low_voltage.contains(m.type); }))
            circuits.insert(plate.circuit);
    for (const plan::SwitchLeg& leg : proof.plan().legs)
        circuits.insert(legCircuit(proof.net, leg));
    return circuits;
}

plan::Finding about(const Proof& proof, std::string_view rule, Severity severity, const plan::Plate* plate,
                    const std::string& circuit) {
    plan::Finding finding;
    if (plate != nullptr) finding = aboutPlate(proof, rule, severity, *plate);
    finding.rule = rule;
    finding.severity = severity;
    finding.objects.push_back(circuit);
    return finding;
}

} // namespace

void proveCircuitLoads(const Proof& proof, Findings& findings) {
    const auto plates = firstPlates(proof.plan());
    for (const CircuitLoad& load : circuitLoads(proof.net, proof.pack)) {
        if (load.limit_w <= 0 || load.lighting_w <= load.limit_w + kRounding) continue;
        auto finding =
            about(proof, "circuit-over-load", Severity::Fault, firstPlate(plates, load.id), load.id);
        finding.message = fmt::format(
            "Lighting on circuit {} takes {:.0f} W ({:.1f} A); {:g} A at {:g} V carry "
            "{:.0f} W{}.",
            nameOf(load), load.lighting_w, load.lighting_a, load.rated_a, load.volts, load.limit_w,
            proof.pack.circuit_part.value < 1
                ? fmt::format(" at {:g} % of it", proof.pack.circuit_part.value * 100)
                : "");
        finding.source = proof.pack.circuit_part.source;
        finding.remedy = "Spread the legs over more circuits, or ask the electrician for another rating.";
        findings.push_back(std::move(finding));
    }
}

void proveCircuitsDescribed(const Proof& proof, Findings& findings) {
    const auto plates = firstPlates(proof.plan());
    const auto mains = mainsCircuits(proof);
    for (const CircuitLoad& load : circuitLoads(proof.net, proof.pack)) {
        if (load.circuit != nullptr || !mains.contains(load.id)) continue;
        auto finding = about(proof, "circuit-unknown", Severity::Hint, firstPlate(plates, load.id), load.id);
        finding.message =
            fmt::format("Circuit \"{}\" is named by {} plate{} and {} leg{}, but not described.", load.id,
                        load.plates, load.plates == 1 ? "" : "s", load.legs, load.legs == 1 ? "" : "s");
        finding.source = "so that its load can be held against its rating; common practice, no source";
        finding.remedy = "Describe it among the circuits: kind, rated current, protection.";
        findings.push_back(std::move(finding));
    }
}

} // namespace gangway::switching
