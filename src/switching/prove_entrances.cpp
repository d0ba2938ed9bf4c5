// Entrances: whether a hand finds the light before one walks into the dark.
#include "switching/proof.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <limits>

namespace gangway::switching {

using plan::Severity;

namespace {

/// The switch that is nearest to an entrance, among those of the room and of the room one comes from.
struct Nearest {
    const Way* way = nullptr;
    double distance_mm = std::numeric_limits<double>::infinity();
};

Nearest nearestSwitch(const Proof& proof, const Entrance& entrance) {
    Nearest nearest;
    for (const RoomSwitch& candidate : proof.switchesOf(entrance.into)) {
        const std::string& room = candidate.way->plate->room;
        if (room != entrance.into && room != entrance.from) continue;
        const double distance_mm = reachOf(entrance, candidate.at_mm);
        if (distance_mm < nearest.distance_mm) nearest = {candidate.way, distance_mm};
    }
    return nearest;
}

/// A sensor in the room sees whoever comes in, by whichever door.
bool isSensed(const Proof& proof, const std::string& room) {
    return std::ranges::any_of(proof.switchesOf(room), [&](const RoomSwitch& candidate) {
        return candidate.way->action == catalogue::WayAction::Sensor && candidate.way->plate->room == room;
    });
}

using ByRoom = std::unordered_map<std::string_view, std::vector<const Entrance*>>;

ByRoom byRoom(const Proof& proof) {
    ByRoom rooms;
    for (const Entrance& entrance : proof.entrances)
        rooms[entrance.into].push_back(&entrance);
    return rooms;
}

/// One comes back from a room that has no other entrance: the light is on by then.
bool isWayBack(const ByRoom& rooms, const Entrance& entrance) {
    const auto at = rooms.find(entrance.from);
    return at != rooms.end() && at->second.size() == 1;
}

struct Dark {
    const Entrance* entrance;
    Nearest nearest;
};

void report(const Proof& proof, const Dark& dark, Severity severity, Findings& findings) {
    const Entrance& entrance = *dark.entrance;
    plan::Finding finding;
    finding.rule = "dark-entrance";
    finding.severity = severity;
    if (dark.nearest.way != nullptr) finding.objects.push_back(dark.nearest.way->plate->id);
    finding.objects.push_back(entrance.opening->id);
    finding.objects.push_back(entrance.into);
    finding.limit_mm = proof.pack.entrance_reach_mm.value;
    if (dark.nearest.way != nullptr) finding.value_mm = dark.nearest.distance_mm;
    finding.place_mm = plan::Vec3{entrance.middle_mm.x, entrance.middle_mm.y, 0};
    const std::string how_far =
        dark.nearest.way == nullptr
            ? std::string("no switch on either side of it lights the room")
            : fmt::format("the nearest switch, {}, is {:.0f} mm from the opening (limit {:.0f})",
                          plateTag(*dark.nearest.way->plate), dark.nearest.distance_mm, *finding.limit_mm);
    finding.message =
        fmt::format("{} is entered in the dark through {}: {}.", roomName(proof.net, entrance.into),
                    openingName(*entrance.opening), how_far);
    finding.source = proof.pack.entrance_reach_mm.source;
    finding.remedy = "Add a position of the room's light beside this entrance, or a sensor.";
    findings.push_back(std::move(finding));
}

} // namespace

void proveEntrancesLit(const Proof& proof, Findings& findings) {
    const ByRoom rooms = byRoom(proof);
    for (const plan::Room& room : proof.plan().rooms) {
        const auto at = rooms.find(room.id);
        if (at == rooms.end() || proof.switchesOf(room.id).empty() || isSensed(proof, room.id)) continue;
        std::vector<Dark> dark;
        for (const Entrance* entrance : at->second) {
            const Nearest nearest = nearestSwitch(proof, *entrance);
            if (nearest.distance_mm > proof.pack.entrance_reach_mm.value) dark.push_back({entrance, nearest});
        }
        const bool all = dark.size() == at->second.size();
        for (const Dark& one : dark) {
            const Severity some = isWayBack(rooms, *one.entrance) ? Severity::Hint : Severity::Warn;
            report(proof, one, all ? Severity::Fault : some, findings);
        }
    }
}

} // namespace gangway::switching
