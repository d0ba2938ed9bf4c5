#include "checks/ledger.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace gangway::checks {

namespace {
/// What is on a wall concerns the room behind it; furniture the places beside it.
constexpr double kAboutMm = 700;

void mix(std::size_t& mark, std::size_t value) {
    mark ^= value + 0x9E3779B97F4A7C15ULL + (mark << 6) + (mark >> 2);
}

std::size_t markOf(const plan::Plate& plate) {
    std::size_t mark = std::hash<std::string>{}(plate.circuit);
    for (const plan::Module& module : plate.modules)
        mix(mark, std::hash<std::string>{}(module.type));
    return mark;
}

std::size_t markOf(const plan::Luminaire& lamp) {
    return std::hash<double>{}(lamp.watts);
}

std::size_t markOf(const plan::Device& device) {
    std::size_t mark = std::hash<double>{}(device.watts);
    mix(mark, std::hash<std::string>{}(device.plate));
    return mark;
}

std::size_t markOf(const plan::Furniture&) {
    return 0;
}

template <class Map>
const auto& listIn(const Map& map, const std::string& key) {
    static const typename Map::mapped_type kNone;
    const auto found = map.find(key);
    return found == map.end() ? kNone : found->second;
}
} // namespace

std::optional<std::uint32_t> Ledger::at(const List& list, const std::string& id) {
    const auto found = list.by_id.find(id);
    return found == list.by_id.end() ? std::nullopt : std::optional(found->second.at);
}

std::uint32_t Ledger::roomNumber(const std::string& id) const {
    const auto found = room_numbers_.find(id);
    return found == room_numbers_.end() ? rooms_ : found->second;
}

std::uint32_t Ledger::roomAbout(const std::string& id) const {
    if (const auto room = room_numbers_.find(id); room != room_numbers_.end()) return room->second;
    for (const List* list : {&devices_, &lamps_, &furniture_, &plates_})
        if (const auto found = list->by_id.find(id); found != list->by_id.end()) return found->second.room;
    const auto opening = opening_rooms_.find(id);
    return opening == opening_rooms_.end() ? rooms_ : opening->second;
}

const std::vector<std::uint32_t>& Ledger::legsOfPlate(const std::string& id) const {
    return listIn(legs_of_plate_, id);
}

const std::vector<std::uint32_t>& Ledger::legsOfLamp(const std::string& id) const {
    return listIn(legs_of_lamp_, id);
}

const std::set<std::string>& Ledger::devicesOn(const std::string& plate) const {
    return listIn(plugged_, plate);
}

template <class T>
Ledger::Entry Ledger::entryOf(const geometry::HouseIndex& house, const T& element) const {
    Entry entry;
    entry.room = roomNumber(element.room);
    entry.mark = markOf(element);
    if constexpr (std::is_same_v<T, plan::Furniture>) {
        const double reach = std::hypot(element.size.width_mm, element.size.depth_mm) / 2;
        entry.low_mm = element.at_mm - plan::Vec2{reach, reach};
        entry.high_mm = element.at_mm + plan::Vec2{reach, reach};
    } else if constexpr (std::is_same_v<T, plan::Device>) {
        entry.plugged = element.plate;
        entry.low_mm = entry.high_mm = {element.lead_exit_mm.x, element.lead_exit_mm.y};
    } else if (const auto point = geometry::hostPoint(house, element.room, element.host)) {
        entry.low_mm = entry.high_mm = {point->x, point->y};
    } else if (entry.room < rooms_) {
        entry.low_mm = entry.high_mm = house.plan().rooms[entry.room].outline.front();
    }
    return entry;
}

template <class T>
void Ledger::fill(const geometry::HouseIndex& house, const std::vector<T>& elements, List& list) {
    list.by_id.clear();
    list.by_id.reserve(elements.size());
    list.in_room.assign(rooms_ + 1, {});
    for (std::uint32_t i = 0; i < elements.size(); ++i) {
        Entry entry = entryOf(house, elements[i]);
        entry.at = i;
        list.in_room[entry.room].push_back(i);
        list.by_id.emplace(elements[i].id, std::move(entry));
    }
}

/// Nothing has shifted where as many are there as before and what was touched is where it was.
template <class T>
void Ledger::renew(const geometry::HouseIndex& house, const std::vector<T>& elements,
                   const std::set<std::string>& touched, List& list) {
    const bool same =
        elements.size() == list.by_id.size() && std::ranges::all_of(touched, [&](const std::string& id) {
            const auto known = at(list, id);
            return known && *known < elements.size() && elements[*known].id == id;
        });
    if (!same) return fill(house, elements, list);
    for (const std::string& id : touched) {
        Entry& entry = list.by_id.at(id);
        Entry now = entryOf(house, elements[entry.at]);
        now.at = entry.at;
        if (now.room != entry.room) {
            std::erase(list.in_room[entry.room], entry.at);
            auto& there = list.in_room[now.room];
            there.insert(std::ranges::lower_bound(there, now.at), now.at);
        }
        entry = std::move(now);
    }
}

void Ledger::noteLegRooms(const plan::SwitchLeg& leg, std::vector<std::uint32_t>& rooms) const {
    rooms.clear();
    const auto add = [&](const List& list, const std::string& id) {
        if (const auto found = list.by_id.find(id); found != list.by_id.end())
            rooms.push_back(found->second.room);
    };
    for (const plan::WayRef& way : leg.controls)
        add(plates_, way.plate);
    for (const std::string& id : leg.luminaires)
        add(lamps_, id);
    for (const std::string& id : leg.plates)
        add(plates_, id);
    std::ranges::sort(rooms);
    const auto rest = std::ranges::unique(rooms);
    rooms.erase(rest.begin(), rest.end());
}

void Ledger::fillLegs(const plan::Plan& plan) {
    legs_of_plate_.clear();
    legs_of_lamp_.clear();
    leg_at_.clear();
    leg_rooms_.assign(plan.legs.size(), {});
    for (std::uint32_t i = 0; i < plan.legs.size(); ++i) {
        const auto add = [&](std::vector<std::uint32_t>& legs) {
            if (legs.empty() || legs.back() != i) legs.push_back(i);
        };
        const plan::SwitchLeg& leg = plan.legs[i];
        leg_at_.emplace(leg.id, i);
        for (const plan::WayRef& way : leg.controls)
            add(legs_of_plate_[way.plate]);
        for (const std::string& id : leg.plates)
            add(legs_of_plate_[id]);
        for (const std::string& id : leg.luminaires)
            add(legs_of_lamp_[id]);
        noteLegRooms(leg, leg_rooms_[i]);
    }
}

void Ledger::remember(const geometry::HouseIndex& house) {
    const plan::Plan& plan = house.plan();
    rooms_ = static_cast<std::uint32_t>(plan.rooms.size());
    room_numbers_.clear();
    for (std::uint32_t i = 0; i < rooms_; ++i)
        room_numbers_.emplace(plan.rooms[i].id, i);
    opening_rooms_.clear();
    for (const plan::Opening& opening : plan.openings)
        opening_rooms_.emplace(opening.id, roomNumber(opening.room));
    fill(house, plan.plates, plates_);
    fill(house, plan.furniture, furniture_);
    fill(house, plan.luminaires, lamps_);
    fill(house, plan.devices, devices_);
    stairs_.clear();
    for (const plan::Furniture& piece : plan.furniture)
        if (piece.kind == "stair") stairs_.insert(piece.id);
    plugged_.clear();
    for (const plan::Device& device : plan.devices)
        if (!device.plate.empty()) plugged_[device.plate].insert(device.id);
    fillLegs(plan);
}

void Ledger::keepUp(const geometry::HouseIndex& house, const Edited& edited) {
    const plan::Plan& plan = house.plan();
    for (const std::string& id : edited.devices)
        if (const auto known = devices_.by_id.find(id);
            known != devices_.by_id.end() && !known->second.plugged.empty())
            plugged_[known->second.plugged].erase(id);
    renew(house, plan.plates, edited.plates, plates_);
    renew(house, plan.furniture, edited.furniture, furniture_);
    renew(house, plan.luminaires, edited.luminaires, lamps_);
    renew(house, plan.devices, edited.devices, devices_);
    for (const std::string& id : edited.devices)
        if (const auto known = devices_.by_id.find(id);
            known != devices_.by_id.end() && !known->second.plugged.empty())
            plugged_[known->second.plugged].insert(id);
    if (!edited.legs.empty() || plan.legs.size() != leg_rooms_.size()) return fillLegs(plan);
    for (const std::string& id : edited.plates)
        for (const std::uint32_t leg : legsOfPlate(id))
            noteLegRooms(plan.legs[leg], leg_rooms_[leg]);
    for (const std::string& id : edited.luminaires)
        for (const std::uint32_t leg : legsOfLamp(id))
            noteLegRooms(plan.legs[leg], leg_rooms_[leg]);
}

void Ledger::addNear(const geometry::HouseIndex& house, std::uint32_t room, plan::Vec2 low_mm,
                     plan::Vec2 high_mm, RoomSet& rooms) const {
    rooms.insert(room);
    if (room == rooms_) return;
    const plan::Vec2 about{kAboutMm, kAboutMm};
    const std::string& storey = house.plan().rooms[room].storey;
    for (const plan::Room* near : house.roomsNear(storey, low_mm - about, high_mm + about))
        rooms.insert(roomNumber(near->id));
}

void Ledger::addNeighbours(const geometry::HouseIndex& house, const RoomSet& rooms, RoomSet& around) const {
    for (const std::uint32_t room : rooms) {
        if (room == rooms_) continue;
        const auto& outline = house.plan().rooms[room].outline;
        plan::Vec2 low = outline.front();
        plan::Vec2 high = low;
        for (const plan::Vec2 corner : outline) {
            low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
            high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
        }
        addNear(house, room, low, high, around);
    }
}

void Ledger::addConcerned(const geometry::HouseIndex& house, const Edited& edited, RoomSet& rooms) const {
    const auto touch = [&](const List& list, const std::set<std::string>& ids, const auto& more) {
        for (const std::string& id : ids) {
            if (const auto found = list.by_id.find(id); found != list.by_id.end()) {
                addNear(house, found->second.room, found->second.low_mm, found->second.high_mm, rooms);
                more(found->second);
            }
        }
    };
    const auto nothing = [](const Entry&) {};
    touch(plates_, edited.plates, nothing);
    touch(furniture_, edited.furniture, nothing);
    touch(lamps_, edited.luminaires, nothing);
    touch(devices_, edited.devices, [&](const Entry& device) {
        if (const auto plate = plates_.by_id.find(device.plugged); plate != plates_.by_id.end())
            rooms.insert(plate->second.room);
    });
    const auto addLegs = [&](const std::vector<std::uint32_t>& legs) {
        for (const std::uint32_t leg : legs)
            rooms.insert(leg_rooms_[leg].begin(), leg_rooms_[leg].end());
    };
    for (const std::string& id : edited.plates) {
        addLegs(legsOfPlate(id));
        for (const std::string& device : devicesOn(id))
            if (const auto found = devices_.by_id.find(device); found != devices_.by_id.end())
                rooms.insert(found->second.room);
    }
    for (const std::string& id : edited.luminaires)
        addLegs(legsOfLamp(id));
    for (const std::string& id : edited.legs)
        if (const auto leg = leg_at_.find(id); leg != leg_at_.end()) addLegs({leg->second});
}

void Ledger::addTied(const plan::Plan& plan, const RoomSet& rooms, RoomSet& tied) const {
    const auto addLegs = [&](const std::vector<std::uint32_t>& legs) {
        for (const std::uint32_t leg : legs)
            tied.insert(leg_rooms_[leg].begin(), leg_rooms_[leg].end());
    };
    for (const std::uint32_t room : rooms) {
        tied.insert(room);
        for (const std::uint32_t plate : platesIn(room)) {
            addLegs(legsOfPlate(plan.plates[plate].id));
            for (const std::string& device : devicesOn(plan.plates[plate].id))
                if (const auto found = devices_.by_id.find(device); found != devices_.by_id.end())
                    tied.insert(found->second.room);
        }
        for (const std::uint32_t lamp : lampsIn(room))
            addLegs(legsOfLamp(plan.luminaires[lamp].id));
        for (const std::uint32_t device : devicesIn(room))
            if (const auto plate = plates_.by_id.find(plan.devices[device].plate);
                plate != plates_.by_id.end())
                tied.insert(plate->second.room);
    }
}

std::size_t Ledger::circuitMark(const Edited& edited) const {
    std::size_t mark = edited.legs.empty() ? 0 : 1;
    const auto add = [&](const List& list, const std::set<std::string>& ids) {
        for (const std::string& id : ids)
            if (const auto found = list.by_id.find(id); found != list.by_id.end()) {
                mix(mark, found->second.mark);
                mix(mark, found->second.at); // the first plate of a circuit is named
            }
    };
    add(plates_, edited.plates);
    add(lamps_, edited.luminaires);
    add(devices_, edited.devices);
    return mark;
}

bool Ledger::concernsLegs(const Edited& edited) const {
    return !edited.legs.empty() ||
           std::ranges::any_of(edited.plates, [&](const auto& id) { return !legsOfPlate(id).empty(); }) ||
           std::ranges::any_of(edited.luminaires, [&](const auto& id) { return !legsOfLamp(id).empty(); });
}

Edited withHosted(const plan::Plan& plan, const Edited& edited) {
    Edited all = edited;
    if (edited.furniture.empty()) return all;
    const auto add = [&](const auto& elements, std::set<std::string>& ids) {
        for (const auto& element : elements)
            if (element.host.kind == plan::Host::Kind::Furniture &&
                edited.furniture.contains(element.host.furniture))
                ids.insert(element.id);
    };
    add(plan.plates, all.plates);
    add(plan.luminaires, all.luminaires);
    return all;
}

} // namespace gangway::checks
