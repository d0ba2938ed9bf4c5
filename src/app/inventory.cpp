#include "app/inventory.hpp"

#include "app/finding_parts.hpp"
#include "app/panels.hpp"
#include "checks/forgotten.hpp"
#include "checks/outlet_assignment.hpp"

#include <algorithm>
#include <unordered_map>

namespace gangway::app {

namespace {
using catalogue::OutletPlace;

DeviceRow rowOf(const checks::DeviceOutlet& outlet) {
    const plan::Device& device = *outlet.device;
    DeviceRow row;
    row.device = device.id;
    row.name = device.name.empty() ? device.id : device.name;
    row.watts = device.watts;
    row.lead_mm = device.lead_mm;
    row.decided = outlet.decided;
    if (outlet.plate != nullptr) row.plate = outlet.plate->id;
    if (outlet.data != nullptr) row.data = outlet.data->id;
    if (outlet.way) {
        row.way_mm = outlet.way->length_mm;
        if (!outlet.way->crossings.empty()) row.crosses = checks::crossingWords(*outlet.way);
    }
    row.why = outlet.why;
    return row;
}

catalogue::PluggedIn plugOf(const plan::Device& device, const plan::Plate& plate) {
    return {plate.id, device.id, device.plug, device.plug_type};
}

RoomInventory inventoryOf(const checks::Facts& facts, checks::LeadRooms& leads, const plan::Room& room) {
    RoomInventory made;
    const checks::OutletAssignment assigned = checks::assignOutlets(facts, leads, room);
    std::vector<catalogue::PluggedIn> plugs;
    for (const checks::DeviceOutlet& outlet : assigned.devices) {
        made.devices.push_back(rowOf(outlet));
        if (outlet.plate != nullptr && !outlet.decided)
            plugs.push_back(plugOf(*outlet.device, *outlet.plate));
    }
    plan::Plan plates;
    for (const checks::Point* point : facts.pointsIn(room.id)) {
        plates.plates.push_back(*point->plate);
        // Devices of other rooms that are plugged in here take their outlets first, as they do in the count.
        for (const plan::Device* device : point->devices)
            plugs.push_back(plugOf(*device, *point->plate));
    }
    made.places = catalogue::plugPlaces(plates, facts.catalogue(), plugs);
    std::unordered_map<std::string, int> blocked;
    for (const OutletPlace& outlet : made.places.outlets)
        if (outlet.state == OutletPlace::State::Blocked) ++blocked[outlet.plate];
    for (const checks::PlateUse& use : assigned.plates)
        made.plates.push_back({use.point->plate->id, use.outlets, use.outlets - use.free, use.given,
                               blocked[use.point->plate->id], use.watts, use.limit_w});
    return made;
}

/// Makes what is not there of these rooms, all at once: facts are linear in the house.
void fill(State& state, const std::set<std::string>& wanted) {
    Inventory& inventory = state.inventory;
    const auto* pack = findingPack(state);
    std::set<std::string> rooms;
    for (const std::string& id : wanted)
        if (!inventory.rooms.contains(id)) rooms.insert(id);
    if (rooms.empty() || pack == nullptr || !state.derived.house ||
        state.derived.version != state.document.version())
        return;
    const checks::Facts facts(*state.derived.house, state.catalogue, *pack,
                              state.document.file().parent_path(), &rooms);
    checks::LeadRooms leads(facts);
    for (const std::string& id : rooms)
        if (const plan::Room* room = state.derived.house->room(id))
            inventory.rooms[id] = inventoryOf(facts, leads, *room);
}

bool speaksOf(const RoomInventory& room, const edit::Touched& touched) {
    return std::ranges::any_of(room.devices,
                               [&](const DeviceRow& row) { return touched.devices.contains(row.device); }) ||
           std::ranges::any_of(room.places.outlets, [&](const OutletPlace& outlet) {
               return touched.plates.contains(outlet.plate) ||
                      touched.devices.contains(outlet.plugged.device);
           });
}

/// Rooms that the touched things are in now, or go to.
std::set<std::string> roomsOf(const plan::Plan& plan, const edit::Touched& touched) {
    std::set<std::string> rooms;
    for (const std::string& id : touched.plates)
        if (const auto* plate = plan::findPlate(plan, id)) rooms.insert(plate->room);
    for (const std::string& id : touched.devices) {
        const auto device = std::ranges::find(plan.devices, id, &plan::Device::id);
        if (device == plan.devices.end()) continue;
        rooms.insert(device->room);
        if (const auto* plate = plan::findPlate(plan, device->plate)) rooms.insert(plate->room);
    }
    return rooms;
}

std::set<std::string> allRooms(const plan::Plan& plan) {
    std::set<std::string> rooms;
    for (const plan::Room& room : plan.rooms)
        rooms.insert(room.id);
    return rooms;
}
} // namespace

void forgetTouched(State& state) {
    Inventory& inventory = state.inventory;
    const auto* pack = findingPack(state);
    const std::string pack_id = pack == nullptr ? std::string() : pack->id;
    const auto version = state.document.version();
    // An edit of this frame is looked at in the next one, when the house was indexed again.
    if (!state.derived.house || state.derived.version != version) return;
    const bool same_pack = inventory.pack == pack_id;
    if (inventory.version == version && same_pack) return;
    const bool dragging = !state.drag.plate.empty() || state.furnish.drag.has_value();
    if (dragging && inventory.version != 0 && same_pack) return;
    const auto touched =
        inventory.version == 0 ? std::nullopt : state.document.touchedSince(inventory.version);
    // Furniture turns all leads of its room, and which room it came from is not told.
    const bool all = !touched || touched->others || !touched->furniture.empty() || !same_pack;
    inventory.version = version;
    inventory.pack = pack_id;
    if (all) {
        inventory.rooms.clear();
        inventory.drawn.clear();
        return;
    }
    const auto rooms = roomsOf(state.plan(), *touched);
    std::erase_if(inventory.rooms, [&](const auto& room) {
        const bool changed = rooms.contains(room.first) || speaksOf(room.second, *touched);
        if (changed) inventory.drawn.erase(room.first);
        return changed;
    });
}

const RoomInventory& inventoryOf(State& state, const std::string& room_id) {
    static const RoomInventory kNone;
    forgetTouched(state);
    fill(state, {room_id});
    const auto found = state.inventory.rooms.find(room_id);
    return found == state.inventory.rooms.end() ? kNone : found->second;
}

void fillInventory(State& state) {
    forgetTouched(state);
    fill(state, allRooms(state.plan()));
}

const std::vector<ForgottenRow>& forgottenOf(State& state) {
    Inventory& inventory = state.inventory;
    const auto* pack = findingPack(state);
    const auto version = state.document.version();
    if (inventory.forgotten_version == version || pack == nullptr || !state.derived.house ||
        state.derived.version != version)
        return inventory.forgotten;
    inventory.forgotten_version = version;
    inventory.forgotten.clear();
    const std::set<std::string> none;
    const checks::Facts facts(*state.derived.house, state.catalogue, *pack,
                              state.document.file().parent_path(), &none);
    for (const checks::Forgotten& one : checks::forgottenThings(facts))
        inventory.forgotten.push_back({one.room->id, one.thing->name});
    return inventory.forgotten;
}

} // namespace gangway::app
