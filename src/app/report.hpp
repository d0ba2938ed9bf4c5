// What the window shows, as JSON: for tests that drive it with a real mouse, and for anyone who must know
// without looking where something is.
#pragma once

#include "app/state.hpp"

namespace gangway::app {

/// Writes selection, room, camera, counts and the places of everything clickable, atomically.
/// `resting` is false when something was touched and the window has not come to rest again.
void writeReport(const State& state, const render::Statistics& statistics, bool resting,
                 const std::filesystem::path& file);

} // namespace gangway::app
