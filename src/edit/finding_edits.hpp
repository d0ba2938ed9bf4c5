// Commands on findings: taking one as it is, and no longer; and the remedies that no other file has.
#pragma once

#include "edit/edit.hpp"

#include <expected>
#include <string>

namespace gangway::edit {

using Refusable = std::expected<Command, std::string>;

/// Takes a finding as it is, in place of an earlier acceptance of the same id. `at`: ISO 8601, UTC.
Command acceptFinding(plan::Acceptance acceptance);
/// Takes that back.
Command withdrawAcceptance(const std::string& finding_id);

/// Plugs a device into a plate: "Plug fridge into K-05". Refused where one of them is not in the plan.
Refusable plugDevice(const plan::Plan& plan, const std::string& device_id, const std::string& plate_id);
/// Takes it out again: "Unplug fridge". Refused where it is not in the plan.
Refusable unplugDevice(const plan::Plan& plan, const std::string& device_id);
/// Hangs a door at its other side: the hinge of a hinged one, where the leaf of another parks. Refused for
/// what is no door.
Refusable rehangDoor(const plan::Plan& plan, const std::string& door_id);

} // namespace gangway::edit
