#include "checks/part_of_plan.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::checks {

namespace {
/// Places in the plan's lists.
struct Places {
    std::set<std::uint32_t> plates, lamps, legs;
};

void addLegs(const std::vector<std::uint32_t>& legs, Places& places) {
    places.legs.insert(legs.begin(), legs.end());
}

void addMembers(const plan::Plan& plan, const Ledger& ledger, Places& places) {
    const auto add = [](std::optional<std::uint32_t> at, std::set<std::uint32_t>& to) {
        if (at) to.insert(*at);
    };
    for (const std::uint32_t leg : places.legs) {
        for (const plan::WayRef& way : plan.legs[leg].controls)
            add(ledger.plateAt(way.plate), places.plates);
        for (const std::string& id : plan.legs[leg].plates)
            add(ledger.plateAt(id), places.plates);
        for (const std::string& id : plan.legs[leg].luminaires)
            add(ledger.lampAt(id), places.lamps);
    }
}

Places placesOf(const plan::Plan& plan, const Ledger& ledger, const RoomSet& rooms) {
    Places places;
    for (const std::uint32_t room : rooms) {
        for (const std::uint32_t plate : ledger.platesIn(room)) {
            places.plates.insert(plate);
            addLegs(ledger.legsOfPlate(plan.plates[plate].id), places);
        }
        for (const std::uint32_t lamp : ledger.lampsIn(room)) {
            places.lamps.insert(lamp);
            addLegs(ledger.legsOfLamp(plan.luminaires[lamp].id), places);
        }
    }
    return places;
}

plan::Plan copied(const plan::Plan& plan, const Ledger& ledger, const Places& places, RoomSet rooms) {
    plan::Plan part;
    const auto take = [&](const auto& from, const std::set<std::uint32_t>& which, auto& to) {
        to.reserve(which.size());
        for (const std::uint32_t at : which) {
            to.push_back(from[at]);
            rooms.insert(ledger.roomNumber(from[at].room));
        }
    };
    take(plan.plates, places.plates, part.plates);
    take(plan.luminaires, places.lamps, part.luminaires);
    for (const std::uint32_t leg : places.legs)
        part.legs.push_back(plan.legs[leg]);
    for (const std::uint32_t room : rooms)
        if (room < ledger.rooms()) part.rooms.push_back(plan.rooms[room]);
    return part;
}
} // namespace

plan::Plan partOfRooms(const plan::Plan& plan, const Ledger& ledger, const RoomSet& rooms) {
    Places places = placesOf(plan, ledger, rooms);
    addMembers(plan, ledger, places);
    return copied(plan, ledger, places, rooms);
}

plan::Plan partOfStairs(const geometry::HouseIndex& house, const Ledger& ledger) {
    const plan::Plan& plan = house.plan();
    RoomSet rooms;
    Places places;
    std::vector<const plan::Furniture*> stairs;
    for (const plan::Furniture& piece : plan.furniture)
        if (piece.kind == "stair") {
            stairs.push_back(&piece);
            rooms.insert(ledger.roomNumber(piece.room));
        }
    // The rule's own reach is less than this; what is out of it is not looked at.
    constexpr double kFarMm = 3000;
    for (const plan::Luminaire& lamp : plan.luminaires) {
        const auto& legs = ledger.legsOfLamp(lamp.id);
        if (legs.empty()) continue;
        const auto at = geometry::hostPoint(house, lamp.room, lamp.host);
        if (!at) continue;
        const bool near = std::ranges::any_of(stairs, [&](const plan::Furniture* stair) {
            const double half = std::hypot(stair->size.width_mm, stair->size.depth_mm) / 2;
            return length(plan::Vec2{at->x, at->y} - stair->at_mm) <= half + kFarMm;
        });
        if (near) addLegs(legs, places);
    }
    addMembers(plan, ledger, places);
    plan::Plan part = copied(plan, ledger, places, rooms);
    part.storeys = plan.storeys;
    for (const plan::Furniture* stair : stairs)
        part.furniture.push_back(*stair);
    return part;
}

FactParts factsOfRooms(const plan::Plan& plan, const Ledger& ledger, const RoomSet& rooms) {
    FactParts parts;
    Places places = placesOf(plan, ledger, rooms);
    for (const std::uint32_t plate : places.plates)
        parts.plates.push_back(&plan.plates[plate]);
    addMembers(plan, ledger, places);
    for (const std::uint32_t lamp : places.lamps)
        parts.lamps.push_back(&plan.luminaires[lamp]);
    for (const std::uint32_t leg : places.legs)
        parts.legs.push_back(&plan.legs[leg]);
    std::set<std::uint32_t> devices;
    for (const std::uint32_t room : rooms)
        devices.insert(ledger.devicesIn(room).begin(), ledger.devicesIn(room).end());
    for (const plan::Plate* plate : parts.plates)
        for (const std::string& id : ledger.devicesOn(plate->id))
            if (const auto at = ledger.deviceAt(id)) devices.insert(*at);
    for (const std::uint32_t device : devices)
        parts.devices.push_back(&plan.devices[device]);
    return parts;
}

} // namespace gangway::checks
