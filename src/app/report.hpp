// What the window shows, as JSON: for tests that drive it with a real mouse, and for anyone who must know
// without looking where something is.
#pragma once

#include "app/state.hpp"

namespace gangway::app {

/// Writes selection, room, camera, counts and the places of everything clickable, atomically.
void writeReport(const State& state, const render::Statistics& statistics, const std::filesystem::path& file);

} // namespace gangway::app
