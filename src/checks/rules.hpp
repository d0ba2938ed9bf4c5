// The rules about places, plates, lamps, leads and wet rooms, by family. Only for this folder.
#pragma once

#include "checks/point.hpp"
#include "plan/finding.hpp"

#include <span>

namespace gangway::checks {

using Findings = std::vector<plan::Finding>;

/// A family of rules looks at one room, or at the whole house.
struct Family {
    enum class Reads {
        Room,      ///< what is in the room and about it
        Switching, ///< rooms and what legs tie to them, stairs, circuits: see switching::provePart
        Walks,     ///< the room and those that one walks through from there
        Circuits,  ///< what circuits are reckoned from
        Legs       ///< legs alone
    };
    Reads reads = Reads::Room;
    void (*in_room)(const Facts&, const plan::Room&, Findings&) = nullptr;
    void (*in_house)(const Facts&, Findings&) = nullptr; ///< for Circuits and Legs
};
/// In the order in which they speak of a room.
std::span<const Family> families();

void findCircuitWatts(const Facts& facts, Findings& findings); ///< devices on their circuits
void findMarks(const Facts& facts, Findings& findings);        ///< marks of legs

// About one room; an edit elsewhere does not change what they find, except through a shared wall or door.
void findPlaces(const Facts& facts, const plan::Room& room, Findings& findings);    ///< bars of the walls
void findHeights(const Facts& facts, const plan::Room& room, Findings& findings);   ///< reach, rows, tiles
void findBoxes(const Facts& facts, const plan::Room& room, Findings& findings);     ///< boxes in the wall
void findWet(const Facts& facts, const plan::Room& room, Findings& findings);       ///< bath, shower zones
void findFloor(const Facts& facts, const plan::Room& room, Findings& findings);     ///< floor boxes
void findLamps(const Facts& facts, const plan::Room& room, Findings& findings);     ///< centring, fans
void findIes(const Facts& facts, const plan::Room& room, Findings& findings);       ///< IES files of lamps
void findLeads(const Facts& facts, const plan::Room& room, Findings& findings);     ///< devices, outlets
void findZones(const Facts& facts, const plan::Room& room, Findings& findings);     ///< cables, fixings
void findStructure(const Facts& facts, const plan::Room& room, Findings& findings); ///< studs, joists, chases
void findCounts(const Facts& facts, const plan::Room& room, Findings& findings);    ///< numbers and spacing
void findSight(const Facts& facts, const plan::Room& room, Findings& findings);   ///< what is seen from where
void findComfort(const Facts& facts, const plan::Room& room, Findings& findings); ///< beds, banks, motors
void findSweeps(const Facts& facts, const plan::Room& room,
                Findings& findings); ///< what opens before a plate

class Night;
/// Ways in the dark from the beds and stairs of a room; adds to `looked` the rooms they depend on.
void findDark(const Facts& facts, Night& night, const plan::Room& room, std::set<std::string>& looked,
              Findings& findings);

struct OutletAssignment;
/// Of findLeads: plates with too many plugs or watts.
void findPlugs(const Facts& facts, const OutletAssignment& all, Findings& findings);

/// A finding about a plate, with its place.
plan::Finding about(const Facts& facts, std::string rule, plan::Severity severity, const Point& point);
/// "K-05 in kitchen".
std::string whoIn(const Facts& facts, const Point& point);
std::string roomName(const Facts& facts, const std::string& room_id);
/// A length as it is said: one decimal where there is one. "13", "136.5".
std::string mm(double length_mm);

/// From a point to the nearest edge of an outline on plan, inside or out.
double toOutline(const std::vector<plan::Vec2>& outline, plan::Vec2 at);

} // namespace gangway::checks
