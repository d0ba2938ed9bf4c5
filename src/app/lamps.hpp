// The lamps of the stage: which are on, what works them, and the net of switches they hang on.
#pragma once

#include "switching/lights.hpp"
#include "switching/net.hpp"

#include <cstdint>
#include <optional>

namespace gangway::app {

struct State;

/// What the window knows of lamps.
struct Lamps {
    switching::Lights lights;
    std::optional<switching::Net> net; ///< of the document's plan at `net_version`
    std::uint64_t net_version = 0;
};

/// The switching of the plan as it is now; made anew when the plan changed.
const switching::Net& netOf(State& state);

} // namespace gangway::app
