#include "app/lamps.hpp"

#include "app/state.hpp"

namespace gangway::app {

const switching::Net& netOf(State& state) {
    Lamps& lamps = state.lamps;
    if (!lamps.net || lamps.net_version != state.document.version()) {
        lamps.net.emplace(state.plan(), state.catalogue);
        lamps.net_version = state.document.version();
    }
    return *lamps.net;
}

} // namespace gangway::app
