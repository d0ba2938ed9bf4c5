// Loads: of legs, of circuits, against what dimmers and protective devices carry.
#pragma once

#include "catalogue/pack.hpp"
#include "switching/net.hpp"

namespace gangway::switching {

/// What a leg feeds, summed over its luminaires; each counts once.
struct LegLoad {
    int luminaires = 0;
    int socket_plates = 0;
    double watts = 0;
    double lumens = 0;
};
LegLoad legLoad(const Net& net, const plan::SwitchLeg& leg);

/// The circuit a leg is fed by: its own, else that of the first of its switches that names one; "" for none.
const std::string& legCircuit(const Net& net, const plan::SwitchLeg& leg);

/// A circuit of the plan, or a name that plates or legs use without one being described.
struct CircuitLoad {
    std::string id;
    const plan::Circuit* circuit = nullptr; ///< nullptr: not described
    int plates = 0;
    int outlets = 0; ///< plugs of its socket outlets
    int legs = 0;
    double lighting_w = 0;   ///< of the luminaires on its legs, each once
    double appliances_w = 0; ///< of devices plugged into its plates
    double volts = 0;
    double rated_a = 0;    ///< 0: not stated
    double lighting_a = 0; ///< lighting_w / volts
    double limit_w = 0;    ///< volts x rated x the pack's part; 0 without a rating
};
/// Described circuits in the plan's order, then the others by name.
std::vector<CircuitLoad> circuitLoads(const Net& net, const catalogue::CountryPack& pack);

} // namespace gangway::switching
