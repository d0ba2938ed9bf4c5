#include "review/relations.hpp"

#include "geometry/walls.hpp"

#include <algorithm>

namespace gangway::review::detail {
namespace {

template <typename Index>
auto lookUp(const Index& index, const std::string& id) {
    const auto found = index.find(id);
    return found == index.end() ? nullptr : found->second;
}

bool isDoor(const plan::Opening& opening) {
    using Kind = plan::Opening::Kind;
    return opening.kind == Kind::HingedDoor || opening.kind == Kind::PocketDoor ||
           opening.kind == Kind::SlidingDoor || opening.kind == Kind::BarnDoor;
}

} // namespace

Relations::Relations(const plan::Plan& plan) : house_(plan) {
    for (const plan::Device& device : plan.devices)
        devices_.emplace(device.id, &device);
    for (const plan::SwitchLeg& leg : plan.legs) {
        const auto add = [&](const std::string& plate) {
            auto& legs = legs_[plate];
            if (legs.empty() || legs.back() != &leg) legs.push_back(&leg);
        };
        for (const plan::WayRef& control : leg.controls)
            add(control.plate);
        for (const std::string& plate : leg.plates)
            add(plate);
    }
}

const plan::Room* Relations::room(const std::string& id) const {
    return house_.room(id);
}
const plan::Furniture* Relations::furniture(const std::string& id) const {
    return house_.furniture(id);
}
const plan::Device* Relations::device(const std::string& id) const {
    return lookUp(devices_, id);
}

std::vector<const plan::SwitchLeg*> Relations::legs(const std::string& plate_id) const {
    const auto found = legs_.find(plate_id);
    if (found == legs_.end()) return {};
    auto legs = found->second;
    std::ranges::sort(legs, {}, &plan::SwitchLeg::id);
    return legs;
}

std::vector<const plan::Opening*> Relations::doors(const plan::Plate& plate) const {
    if (plate.host.kind != plan::Host::Kind::Wall) return {};
    const std::string key = plate.room + "/" + plate.host.wall;
    if (const auto known = doors_.find(key); known != doors_.end()) return known->second;
    std::vector<const plan::Opening*> doors;
    const plan::Room* const host_room = room(plate.room);
    const auto wall = host_room ? plan::wallIndex(*host_room, plate.host.wall) : std::nullopt;
    if (wall)
        for (const geometry::FaceHole& hole : geometry::faceHoles(house_, {plate.room, *wall}))
            if (isDoor(*hole.opening)) doors.push_back(hole.opening);
    std::ranges::sort(doors, {}, &plan::Opening::id);
    doors_.emplace(key, doors);
    return doors;
}

} // namespace gangway::review::detail
