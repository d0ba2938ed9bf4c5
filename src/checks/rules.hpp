// The rules about places, plates, lamps, leads and wet rooms, by family. Only for this folder.
#pragma once

#include "checks/point.hpp"
#include "plan/finding.hpp"

namespace gangway::checks {

using Findings = std::vector<plan::Finding>;

void findPlaces(const Facts& facts, Findings& findings);  ///< bars of the walls
void findHeights(const Facts& facts, Findings& findings); ///< reach, rows, tiles, mirror cabinets
void findBoxes(const Facts& facts, Findings& findings);   ///< depth of the wall, boxes of the other side
void findFloor(const Facts& facts, Findings& findings);   ///< floor boxes
void findLamps(const Facts& facts, Findings& findings);   ///< centring, overlaps, fans
void findLeads(const Facts& facts, Findings& findings);   ///< devices and their outlets
void findWet(const Facts& facts, Findings& findings);     ///< bath and shower zones

void findLight(const Facts& facts, Findings& findings); ///< IES files, marks of legs

// About one room; an edit elsewhere does not change what they find, except through a shared wall or door.
void findZones(const Facts& facts, const plan::Room& room, Findings& findings);     ///< cables, fixings
void findStructure(const Facts& facts, const plan::Room& room, Findings& findings); ///< studs, joists, chases
void findCounts(const Facts& facts, const plan::Room& room, Findings& findings);    ///< numbers and spacing
void findSight(const Facts& facts, const plan::Room& room, Findings& findings);     ///< what is seen from where
void findComfort(const Facts& facts, const plan::Room& room, Findings& findings);   ///< beds, banks, motors
void findSweeps(const Facts& facts, const plan::Room& room, Findings& findings);    ///< what opens before a plate

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
