// Whether what a command would make can be written and read again, asked of the one room it is about.
// Private to src/edit.
#pragma once

#include "plan/plan.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::edit::detail {

/// The head, layers and storeys of a plan, and of its rooms those named with their openings; what leads out
/// of them is left out. Furniture, plates and lamps are for the caller to add.
plan::Plan partOf(const plan::Plan& plan, const std::vector<std::string>& room_ids);

/// What reading `part` from a file would refuse: the first error as a sentence; nullopt when it would be
/// read.
std::optional<std::string> problemOf(const plan::Plan& part);

/// A place on a wall brought onto it, as settle() would; any other host as it is.
plan::Host heldToWall(const plan::Plan& plan, const std::string& room_id, plan::Host host);

/// The room as reading completes it: one named wall for each edge. The error is what reading refuses.
std::optional<std::string> completeRoom(const plan::Plan& plan, plan::Room& room);

} // namespace gangway::edit::detail
