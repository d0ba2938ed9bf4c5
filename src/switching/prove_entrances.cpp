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

/// Rooms whose light is all worked at the lamps, and those lamps: none is on a leg, each has its own switch,
/// and no socket outlet that one could be plugged into is switched.
std::unordered_map<std::string_view, std::vector<const plan::Luminaire*>> lampsInHand(const Proof& proof) {
    std::unordered_map<std::string_view, std::vector<const plan::Luminaire*>> rooms;
    for (const plan::Luminaire& lamp : proof.plan().luminaires)
        rooms[lamp.room].push_back(&lamp);
    std::erase_if(rooms, [&](const auto& room) {
        return !std::ranges::all_of(room.second, [&](const plan::Luminaire* lamp) {
            return hasOwnSwitch(*lamp) && proof.net.legsOfLuminaire(lamp->id).empty();
        });
    });
    for (const plan::SwitchLeg& leg : proof.plan().legs)
        for (const std::string& id : leg.plates)
            if (const plan::Plate* plate = proof.net.plate(id)) rooms.erase(plate->room);
    return rooms;
}

/// Whether one of these lamps stands within reach of an entrance.
bool isLampAt(const Proof& proof, const std::vector<const plan::Luminaire*>& lamps,
              const Entrance& entrance) {
    return std::ranges::any_of(lamps, [&](const plan::Luminaire* lamp) {
        const auto at = proof.placeOf(*lamp);
        return at && reachOf(entrance, {at->x, at->y}) <= proof.pack.entrance_reach_mm.value;
    });
}

/// A sensor in the room sees whoever comes in, by whichever door.
bool isSensed(const Proof& proof, const std::string& room) {
    return std::ranges::any_of(proof.switchesOf(room), [&](const RoomSwitch& candidate) {
        return candidate.way->action == catalogue::WayAction::Sensor && candidate.way->plate->room == room;
    });
}

/// One comes back from a room that has no other entrance: the light is on by then.
bool isWayBack(const Proof& proof, const Entrance& entrance) {
    return proof.doorways().into(entrance.from).size() == 1;
}

struct Dark {
    const Entrance* entrance;
    Nearest nearest;
};

void report(const Proof& proof, const Dark& dark, Severity severity, bool in_hand, Findings& findings) {
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
            ? std::string(in_hand ? "its lamps have only their own switches, out of reach there"
                                  : "no switch on either side of it lights the room")
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
    const auto lamps_in_hand = lampsInHand(proof);
    for (const plan::Room& room : proof.plan().rooms) {
        const auto& entrances = proof.doorways().into(room.id);
        if (entrances.empty() || isSensed(proof, room.id)) continue;
        const auto lamps = lamps_in_hand.find(room.id);
        const bool in_hand = lamps != lamps_in_hand.end();
        if (proof.switchesOf(room.id).empty() && !in_hand) continue;
        std::vector<Dark> dark;
        for (const Entrance* entrance : entrances) {
            if (in_hand && isLampAt(proof, lamps->second, *entrance)) continue;
            const Nearest nearest = nearestSwitch(proof, *entrance);
            if (nearest.distance_mm > proof.pack.entrance_reach_mm.value) dark.push_back({entrance, nearest});
        }
        const bool all = dark.size() == entrances.size();
        for (const Dark& one : dark) {
            const Severity some = isWayBack(proof, *one.entrance) ? Severity::Hint : Severity::Warn;
            report(proof, one, all ? Severity::Fault : some, in_hand, findings);
        }
    }
}

} // namespace gangway::switching
