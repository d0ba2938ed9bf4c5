#include "switching/loads.hpp"

#include <algorithm>
#include <map>
#include <unordered_set>

namespace gangway::switching {

namespace {

/// The circuits of a plan as they are filled: described ones keep the plan's order, others come by name.
class Tally {
public:
    Tally(const Net& net, const catalogue::CountryPack& pack) : pack_(&pack) {
        for (const plan::Circuit& circuit : net.plan().circuits) {
            described_.push_back(start(circuit.id, &circuit));
            by_id_.emplace(circuit.id, described_.size() - 1);
        }
    }

    CircuitLoad& of(const std::string& id) {
        if (const auto at = by_id_.find(id); at != by_id_.end()) return described_[at->second];
        return others_.try_emplace(id, start(id, nullptr)).first->second;
    }

    std::vector<CircuitLoad> all() {
        for (auto& [id, load] : others_)
            described_.push_back(load);
        for (CircuitLoad& load : described_)
            load.lighting_a = load.volts > 0 ? load.lighting_w / load.volts : 0;
        return std::move(described_);
    }

private:
    CircuitLoad start(const std::string& id, const plan::Circuit* circuit) const {
        CircuitLoad load;
        load.id = id;
        load.circuit = circuit;
        load.volts = circuit != nullptr && circuit->volts > 0 ? circuit->volts : pack_->volts.value;
        load.rated_a = circuit == nullptr ? 0 : circuit->rated_a;
        load.limit_w = load.volts * load.rated_a * pack_->circuit_part.value;
        return load;
    }

    const catalogue::CountryPack* pack_;
    std::vector<CircuitLoad> described_;
    std::unordered_map<std::string_view, std::size_t> by_id_;
    std::map<std::string, CircuitLoad> others_;
};

void addPlates(Tally& tally, const Net& net) {
    std::unordered_map<std::string_view, int> outlets;
    for (const auto& module : net.catalogue().modules)
        outlets.emplace(module.id, module.outlets);
    for (const plan::Plate& plate : net.plan().plates) {
        if (plate.circuit.empty()) continue;
        CircuitLoad& load = tally.of(plate.circuit);
        ++load.plates;
        for (const plan::Module& module : plate.modules)
            if (const auto at = outlets.find(module.type); at != outlets.end()) load.outlets += at->second;
    }
}

void addLegs(Tally& tally, const Net& net) {
    std::map<std::string, std::unordered_set<std::string_view>> counted;
    for (const plan::SwitchLeg& leg : net.plan().legs) {
        const std::string& id = legCircuit(net, leg);
        if (id.empty()) continue;
        CircuitLoad& load = tally.of(id);
        ++load.legs;
        auto& seen = counted[id];
        for (const std::string& lamp : leg.luminaires)
            if (const plan::Luminaire* found = net.luminaire(lamp);
                found != nullptr && seen.insert(lamp).second)
                load.lighting_w += found->watts;
    }
}

void addDevices(Tally& tally, const Net& net) {
    for (const plan::Device& device : net.plan().devices) {
        const plan::Plate* plate = net.plate(device.plate);
        if (plate != nullptr && !plate->circuit.empty())
            tally.of(plate->circuit).appliances_w += device.watts;
    }
}

} // namespace

LegLoad legLoad(const Net& net, const plan::SwitchLeg& leg) {
    LegLoad load;
    std::unordered_set<std::string_view> seen;
    for (const std::string& id : leg.luminaires) {
        const plan::Luminaire* lamp = net.luminaire(id);
        if (lamp == nullptr || !seen.insert(id).second) continue;
        ++load.luminaires;
        load.watts += lamp->watts;
        load.lumens += lamp->lumens;
    }
    seen.clear();
    for (const std::string& id : leg.plates)
        if (net.plate(id) != nullptr && seen.insert(id).second) ++load.socket_plates;
    return load;
}

const std::string& legCircuit(const Net& net, const plan::SwitchLeg& leg) {
    static const std::string none;
    if (!leg.circuit.empty()) return leg.circuit;
    for (const plan::WayRef& ref : leg.controls)
        if (const plan::Plate* plate = net.plate(ref.plate); plate != nullptr && !plate->circuit.empty())
            return plate->circuit;
    return none;
}

std::vector<CircuitLoad> circuitLoads(const Net& net, const catalogue::CountryPack& pack) {
    Tally tally(net, pack);
    addPlates(tally, net);
    addLegs(tally, net);
    addDevices(tally, net);
    return tally.all();
}

} // namespace gangway::switching
