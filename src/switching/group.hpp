// A leg's control group: what kind of arrangement its positions make, how it must be wired, contact by
// contact, and how many conductors run between the positions.
#pragma once

#include "catalogue/pack.hpp"
#include "switching/net.hpp"

namespace gangway::switching {

enum class Arrangement {
    None,         ///< nothing works it
    OneWay,       ///< one position
    TwoWay,       ///< two changeover positions
    Intermediate, ///< two changeover positions and crossovers between them
    Relay,        ///< push-buttons and a relay
    Sensor,       ///< a sensor or timer, alone or beside switches
    Motor,
    Heating,
    Mixed ///< positions that don't make any of these: the findings say why
};

/// The positions of a leg in the order in which its controls are listed, which is the order of the run.
struct Group {
    const plan::SwitchLeg* leg = nullptr;
    std::vector<const Way*> positions; ///< ways that exist
    Arrangement arrangement = Arrangement::None;
};
Group groupOf(const Net& net, const plan::SwitchLeg& leg);

/// "one-way", "two-way", "two-way with 1 intermediate": for legends and schedules.
std::string arrangementName(const Group& group);

/// Whether current passes from the supply to the lamp, traced through every contact: changeovers at both
/// ends, crossovers between, one-way alone. `thrown[i]` says how position i lies. Only for OneWay, TwoWay and
/// Intermediate with the ends first and last in the run; the group's own order is put right for that.
/// With no position thrown the lamp is off. Of an arrangement that is none of these, or too few positions,
/// nothing passes. Patterns 1, 6 and 7 of IEC 60669-1, from memory; positions: trade facts 6.2; the three
/// conductors between switches: 6.4.
bool passes(Arrangement arrangement, const std::vector<bool>& thrown);

/// One run of cable of a leg and the conductors in it beside the protective conductor.
struct Run {
    enum class Between { SupplyToSwitch, SwitchToSwitch, SwitchToLamp, LampToLamp, SwitchToBox, BoxToLamp };
    Between between = Between::SwitchToSwitch;
    std::string from; ///< tag of a plate or luminaire, "joint box", "supply"
    std::string to;
    int conductors = 0;
    std::string what; ///< "line, neutral", "permanent line, switched line": what they are
};
/// All runs of a group in the pack's convention, and the sentence that states the convention.
/// Conductors: trade facts 6.4 (rose to first switch 2; between switches 3; an intermediate passes 3 and cuts
/// 2).
struct GroupWiring {
    std::vector<Run> runs;
    std::string convention;
    std::string source;
};
GroupWiring groupWiring(const Net& net, const Group& group, const catalogue::Wiring& wiring);

} // namespace gangway::switching
