// What is plugged in where: which outlet of its plate each plug goes into, which outlets are left, and which
// a body beside them hides.
#pragma once

#include "catalogue/catalogue.hpp"
#include "plan/plan.hpp"

#include <span>

namespace gangway::catalogue {

/// A device plugged into a plate, decided or proposed.
struct PluggedIn {
    std::string plate;
    std::string device;
    plan::Device::Plug plug = plan::Device::Plug::Straight;
    std::string plug_type; ///< letter of IEC TR 60083; empty: what the outlet takes
};

/// One outlet of a plate; a fixed connection (cord outlet) is one too.
struct OutletPlace {
    enum class State { Free, Taken, Blocked };
    std::string plate;
    int number = 1;       ///< of the plate's outlets, from 1: gang by gang, in the order of a module's front
    plan::Vec2 centre_mm; ///< middle of the pins, from the plate's centre, x right, y up
    std::string type;     ///< letter of IEC TR 60083; empty: not known
    double recess_mm = 0; ///< diameter of a round recess; 0: none
    bool fixed = false;   ///< a cord outlet: nothing is plugged, a cord comes out
    State state = State::Free;
    PluggedIn plugged;      ///< when taken
    std::string blocked_by; ///< the device whose body stands in the way; of a taken one: both can't be in
};

struct PlugPlaces {
    std::vector<OutletPlace> outlets; ///< plate by plate in the plan's order
    std::vector<PluggedIn> left_over; ///< more than their plate has outlets, or of an unknown plate
};

/// The plan says plates, not outlets: on each plate the plugs go where fewest get in each other's way, then
/// where fewest free outlets are hidden, then to the first outlets. An outlet is blocked where the outline of
/// a body cuts that of a straight plug of the outlet's type, on the same plate or on one beside it.
[[nodiscard]] PlugPlaces plugPlaces(const plan::Plan& plan, const Catalogue& catalogue,
                                    std::span<const PluggedIn> plugged);

/// Of one plate by itself; `plugged`: what is plugged into it.
[[nodiscard]] PlugPlaces plugPlaces(const plan::Plate& plate, const ComposedPlate& composed,
                                    std::span<const PluggedIn> plugged);

} // namespace gangway::catalogue
