// Edits from the keyboard and the search box.
#pragma once

#include "app/panels.hpp"

#include <expected>

namespace gangway::app {

/// Runs a command as a step of its own and says its name, or says why it was refused.
void runArranged(State& state, const std::expected<edit::Command, std::string>& command);
/// What can be done with the chosen plates: aligned, spaced, mirrored, copied to a room, flipped.
std::vector<Action> arrangeActions(const State& state);
void addEditActions(std::vector<Action>& list, const State& state);
/// Nudging, removing, copying; true when a key was one of these.
bool editKeys(State& state);
/// What Esc ends first: placing, a drag (taken back), a choice; true when there was something.
bool endsEdit(State& state);

} // namespace gangway::app
