// Pieces of the docket's findings, for docket.cpp, plan_view.cpp and the finding_*.cpp files.
#pragma once

#include "app/finding_place.hpp"
#include "app/panels.hpp"

#include <string>
#include <vector>

namespace gangway::app {

/// A stretch of the list under one heading, the worst first.
struct FindingGroup {
    std::string key;
    std::string name;
    std::string room; ///< of all of it; empty: of several or none
    std::vector<std::size_t> rows;
};
/// Cut as the docket shows them: of one room by severity, of the house as chosen; without those filtered off.
std::vector<FindingGroup> findingGroups(const State& state, const std::string& room);
/// The docket's room: that of "This room", empty for the whole house.
std::string listedRoom(const State& state);

/// The country pack that the checks go by; nullptr: none could be read.
const catalogue::CountryPack* findingPack(const State& state);
std::optional<std::size_t> findingAt(const State& state, const std::string& id);
/// The open one; nullptr: none.
const plan::Finding* openOne(const State& state);
/// The eye, or the plan, goes to where the open one is seen, with what its remedy would do while previewed.
void lookAtFinding(State& state);
FindingPlace placeOfFinding(const State& state, const plan::Finding& finding);
/// Where a move would put its plate: the four corners, from the lower left one round.
std::vector<plan::Vec3> movedCorners(const State& state, const plan::PlateMove& move);

/// "Fault", "Warning", "Hint".
const char* severityWord(plan::Severity severity);
unsigned severityInk(const Tokens& tokens, plan::Severity severity);
/// Faults a triangle, warnings a lozenge, hints a ring: the shape tells them apart without colour.
void severityShape(ImDrawList& list, plan::Severity severity, ImVec2 centre, float radius, ImU32 ink,
                   float thick);
/// "13 mm, at least 300 mm wanted"; empty when nothing was measured.
std::string measureWords(const State& state, const plan::Finding& finding);

/// The open finding on the drawn plan, and a badge at each plate that has one; true while the pointer is on a
/// badge.
bool findingsOnPlan(State& state, const std::function<ImVec2(plan::Vec2)>& to_screen, bool over);

/// In the open row: what can be done about it; undo takes it back.
void findingDeeds(State& state, const plan::Finding& finding);

} // namespace gangway::app
