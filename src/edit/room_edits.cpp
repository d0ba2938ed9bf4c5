// New rooms, rooms taken away, and what is said of a room besides its shape.
#include "edit/room_edits.hpp"

#include "edit/part_check.hpp"
#include "edit/room_outline.hpp"
#include "edit/wording.hpp"
#include "geometry/frames.hpp"
#include "plan/wall_names.hpp"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>

namespace gangway::edit {
namespace {

using detail::counted;
using detail::roomName;

std::string noRoom(const std::string& id) {
    return fmt::format("there is no room '{}'", id);
}

bool letterTaken(const plan::Plan& plan, const std::string& letter) {
    return std::ranges::find(plan.rooms, letter, &plan::Room::letter) != plan.rooms.end();
}

/// A name as an id: "Bedroom 2" becomes "bedroom-2".
std::string idFrom(const std::string& name) {
    std::string id;
    for (const char c : name)
        if (const auto letter = static_cast<unsigned char>(c); letter >= 128 || std::isalnum(letter) != 0)
            id += letter < 128 ? static_cast<char>(std::tolower(letter)) : c;
        else if (!id.empty() && id.back() != '-')
            id += '-';
    if (!id.empty() && id.back() == '-') id.pop_back();
    return id;
}

/// A command that puts `changed` in the place of the room of that id, if it could be read again.
Refusable replaced(const plan::Plan& plan, plan::Room changed, std::string name) {
    plan::Plan part = detail::partOf(plan, {changed.id});
    part.rooms.front() = changed;
    if (const auto problem = detail::problemOf(part)) return std::unexpected(*problem);
    return Command{std::move(name), "", [changed = std::move(changed)](Draft& draft) {
                       if (plan::Room* room = draft.change<plan::Room>(changed.id)) *room = changed;
                   }};
}

template <class T>
std::size_t countIn(const std::vector<T>& list, const std::vector<std::string>& rooms) {
    return static_cast<std::size_t>(std::ranges::count_if(
        list, [&](const std::string& room) { return std::ranges::find(rooms, room) != rooms.end(); },
        [](const T& element) -> const std::string& { return element.room; }));
}

std::string removalName(const plan::Plan& plan, const std::vector<std::string>& ids) {
    std::vector<std::string> names;
    for (const std::string& id : ids)
        names.push_back(roomName(*plan::findRoom(plan, id)));
    std::vector<std::string> parts;
    const auto add = [&](std::size_t count, std::string_view one, std::string_view many) {
        if (count > 0) parts.push_back(counted(count, one, many));
    };
    add(countIn(plan.openings, ids), "opening", "openings");
    add(countIn(plan.furniture, ids), "piece of furniture", "pieces of furniture");
    add(countIn(plan.plates, ids), "plate", "plates");
    add(countIn(plan.luminaires, ids), "lamp", "lamps");
    add(countIn(plan.devices, ids), "device", "devices");
    return fmt::format("Remove {}{}{}", detail::listed(names), parts.empty() ? "" : " with ",
                       detail::listed(parts));
}

} // namespace

std::vector<plan::Vec2> rectangleOutline(plan::Vec2 corner_mm, plan::Vec2 opposite_mm) {
    const auto [west, east] = std::minmax(corner_mm.x, opposite_mm.x);
    const auto [south, north] = std::minmax(corner_mm.y, opposite_mm.y);
    return {{west, north}, {east, north}, {east, south}, {west, south}};
}

std::string freeRoomId(const plan::Plan& plan, const std::string& name) {
    return detail::freeId(idFrom(name), "room",
                          [&](const std::string& id) { return plan::findRoom(plan, id) != nullptr; });
}

std::string freeRoomLetter(const plan::Plan& plan, const std::string& name) {
    for (const char c : name) {
        const auto letter = static_cast<unsigned char>(c);
        if (letter >= 128 || std::isalpha(letter) == 0) continue;
        std::string upper(1, static_cast<char>(std::toupper(letter)));
        if (!letterTaken(plan, upper)) return upper;
    }
    for (std::size_t number = 0;; ++number)
        if (std::string letter = plan::letterName(number); !letterTaken(plan, letter)) return letter;
}

Refusable addRoom(const plan::Plan& plan, plan::Room room) {
    if (room.storey.empty() && !plan.storeys.empty()) room.storey = plan.storeys.front().id;
    if (room.id.empty() || plan::findRoom(plan, room.id) != nullptr)
        room.id = freeRoomId(plan, room.id.empty() ? room.name : room.id);
    if (room.letter.empty() || letterTaken(plan, room.letter)) room.letter = freeRoomLetter(plan, room.name);
    if (geometry::signedArea(room.outline) > 0) std::ranges::reverse(room.outline);
    if (const auto problem = detail::completeRoom(plan, room)) return std::unexpected(*problem);
    std::string name = fmt::format("Add {}", roomName(room));
    return Command{std::move(name), "", [room = std::move(room)](Draft& draft) { draft.add(room); }};
}

Refusable removeRooms(const plan::Plan& plan, const std::vector<std::string>& room_ids) {
    if (room_ids.empty()) return std::unexpected("choose a room to remove");
    for (const std::string& id : room_ids)
        if (plan::findRoom(plan, id) == nullptr) return std::unexpected(noRoom(id));
    return Command{removalName(plan, room_ids), "", [room_ids](Draft& draft) {
                       for (const std::string& id : room_ids)
                           draft.remove<plan::Room>(id); // what was in it goes when the plan settles
                   }};
}

Refusable setCeilingHeight(const plan::Plan& plan, const std::string& room_id, double height_mm) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(noRoom(room_id));
    plan::Room changed = *room;
    changed.ceiling.heights_mm = {height_mm};
    changed.ceiling.creases.clear();
    return replaced(plan, std::move(changed),
                    fmt::format("Set the ceiling of {} to {}", roomName(*room), detail::shownMm(height_mm)));
}

Refusable setCeiling(const plan::Plan& plan, const std::string& room_id, const plan::Ceiling& ceiling) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(noRoom(room_id));
    plan::Room changed = *room;
    changed.ceiling = ceiling;
    return replaced(plan, std::move(changed), fmt::format("Change the ceiling of {}", roomName(*room)));
}

Refusable setWallThickness(const plan::Plan& plan, const std::string& room_id, std::size_t wall,
                           double thickness_mm) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr || wall >= room->walls.size()) return std::unexpected(noRoom(room_id));
    plan::Wall changed = room->walls[wall];
    changed.thickness_mm = thickness_mm;
    return changeWall(
        plan, room_id, wall, std::move(changed),
        fmt::format("Make {} {} thick", detail::wallName(*room, wall), detail::shownMm(thickness_mm)));
}

Refusable changeWall(const plan::Plan& plan, const std::string& room_id, std::size_t wall, plan::Wall changed,
                     const std::string& what) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr || wall >= room->walls.size()) return std::unexpected(noRoom(room_id));
    const std::string before = room->walls[wall].id;
    const std::string now = changed.id;
    if (now.empty()) return std::unexpected("a wall needs a name");
    if (now != before && plan::wallIndex(*room, now))
        return std::unexpected(fmt::format("{} already has a wall {}", roomName(*room), now));
    plan::Room after = *room;
    after.walls[wall] = std::move(changed);
    detail::Rehost rehost;
    if (now != before)
        rehost = [before, now](const detail::WallPlace& place) {
            return place.first == before ? detail::WallPlace{now, place.second} : place;
        };
    auto fit = detail::fitted(plan, std::move(after), rehost);
    if (!fit) return std::unexpected(fit.error());
    return Command{what, "", [fit = std::move(*fit)](Draft& draft) { detail::apply(draft, fit); }};
}

Refusable renameRoom(const plan::Plan& plan, const std::string& room_id, const std::string& name) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(noRoom(room_id));
    if (name.empty()) return std::unexpected("a room needs a name");
    plan::Room changed = *room;
    changed.name = name;
    return replaced(plan, std::move(changed), fmt::format("Rename {} to '{}'", roomName(*room), name));
}

Refusable setRoomLetter(const plan::Plan& plan, const std::string& room_id, const std::string& letter) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(noRoom(room_id));
    if (letter.empty()) return std::unexpected("give the letter that tags of this room begin with");
    for (const plan::Room& other : plan.rooms)
        if (other.letter == letter && other.id != room_id)
            return std::unexpected(fmt::format("{} already has the letter {}", roomName(other), letter));
    plan::Room changed = *room;
    changed.letter = letter;
    return replaced(plan, std::move(changed), fmt::format("Give {} the letter {}", roomName(*room), letter));
}

Refusable setRoomStorey(const plan::Plan& plan, const std::string& room_id, const std::string& storey_id) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(noRoom(room_id));
    const plan::Storey* storey = plan::findStorey(plan, storey_id);
    if (storey == nullptr) return std::unexpected(fmt::format("there is no storey '{}'", storey_id));
    plan::Room changed = *room;
    changed.storey = storey_id;
    return replaced(plan, std::move(changed),
                    fmt::format("Put {} on storey '{}'", roomName(*room), storey->name));
}

Refusable setFloorFinish(const plan::Plan& plan, const std::string& room_id, const std::string& finish) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(noRoom(room_id));
    plan::Room changed = *room;
    changed.floor_finish = finish;
    return replaced(plan, std::move(changed), fmt::format("Change the floor finish of {}", roomName(*room)));
}

Refusable setWallColour(const plan::Plan& plan, const std::string& room_id, const std::string& colour) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(noRoom(room_id));
    plan::Room changed = *room;
    changed.wall_colour = colour;
    return replaced(plan, std::move(changed), fmt::format("Change the wall colour of {}", roomName(*room)));
}

} // namespace gangway::edit
