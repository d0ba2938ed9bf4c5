#include "edit/finding_edits.hpp"

#include "edit/opening_edits.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::edit {

Command acceptFinding(plan::Acceptance acceptance) {
    return {"Accept a finding", "", [acceptance = std::move(acceptance)](Draft& draft) {
                draft.remove<plan::Acceptance>(acceptance.id);
                draft.add(acceptance);
            }};
}

Command withdrawAcceptance(const std::string& finding_id) {
    return {"Take an acceptance back", "",
            [finding_id](Draft& draft) { draft.remove<plan::Acceptance>(finding_id); }};
}

Refusable plugDevice(const plan::Plan& plan, const std::string& device_id, const std::string& plate_id) {
    const auto device = std::ranges::find(plan.devices, device_id, &plan::Device::id);
    if (device == plan.devices.end())
        return std::unexpected(fmt::format("there is no device '{}'", device_id));
    const plan::Plate* plate = plan::findPlate(plan, plate_id);
    if (plate == nullptr) return std::unexpected(fmt::format("there is no plate '{}'", plate_id));
    return Command{fmt::format("Plug {} into {}", device->name.empty() ? device_id : device->name,
                               plate->tag.empty() ? plate_id : plate->tag),
                   "", [device_id, plate_id](Draft& draft) {
                       if (plan::Device* changed = draft.change<plan::Device>(device_id))
                           changed->plate = plate_id;
                   }};
}

Refusable unplugDevice(const plan::Plan& plan, const std::string& device_id) {
    const auto device = std::ranges::find(plan.devices, device_id, &plan::Device::id);
    if (device == plan.devices.end())
        return std::unexpected(fmt::format("there is no device '{}'", device_id));
    return Command{fmt::format("Unplug {}", device->name.empty() ? device_id : device->name), "",
                   [device_id](Draft& draft) {
                       if (plan::Device* changed = draft.change<plan::Device>(device_id))
                           changed->plate.clear();
                   }};
}

Refusable rehangDoor(const plan::Plan& plan, const std::string& door_id) {
    return swapHinge(plan, door_id);
}

} // namespace gangway::edit
