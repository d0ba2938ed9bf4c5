// What the checks find: kept for the plan as it is, listed in the docket, gone to, drawn where it is.
#pragma once

#include "checks/checker.hpp"
#include "checks/ripple.hpp"
#include "plan/finding.hpp"
#include "plan/plan.hpp"

#include <imgui.h>

#include <array>
#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace gangway::app {

struct State;
enum class Place;

/// What the docket's list is cut into.
enum class FindingGroups { Room, Severity };

/// What a remedy would do, drawn before it is done.
struct RemedyPreview {
    std::optional<plan::PlateMove> move;
    std::optional<plan::Plugging> plug;
    std::string rehang; ///< door id
};

struct Findings {
    std::uint64_t version = 0; ///< of the document that the list is of; kept until the plan changes
    std::vector<plan::Finding> list;
    std::vector<std::string> ids;                           ///< of each, in the list's order
    std::vector<std::string> rooms;                         ///< of each; empty: of the house
    std::map<std::string, std::vector<std::size_t>> plates; ///< those not accepted, by plate

    std::unique_ptr<checks::Checker> checker; ///< keeps the list up to date with what was edited
    std::string checker_pack;                 ///< id of the pack it goes by
    /// What the last step broke and mended, from the list as it was before that step.
    std::vector<plan::Finding> before;
    std::string step; ///< the step's name; empty: none, or it touched no furniture and no door
    std::vector<checks::Ripple> ripples;

    FindingGroups groups = FindingGroups::Room;
    std::array<bool, 3> shown{true, true, true}; ///< by severity
    std::set<std::string> folded;                ///< headings whose rows are not shown
    bool show_accepted = false;                  ///< rows of those taken as they are

    std::string open;              ///< id of the one that is gone to and whose row shows what can be done
    std::string why;               ///< note being typed for it
    bool scroll = false;           ///< its row is to come into view
    std::vector<std::string> then; ///< ids to open when a remedy has settled it, the nearest first
    std::set<std::string> faded; ///< see-through while it is open; those among State::faded that it put there
    bool plan_for_it = false;    ///< the plan is shown only because this one has no place in a room
    std::optional<plan::Vec2> plan_at; ///< where the plan is to be centred in the next frame
    bool previewing = false;           ///< "Preview" was pressed
    RemedyPreview preview;             ///< of this frame, for the views of the next one
};

/// All findings of the plan as it is. While a step is open, as during a drag, only what the edit can touch is
/// looked at again.
const std::vector<plan::Finding>& findingsOf(State& state);
/// The list in the docket: filters, headings and rows of one room, or of the whole house when `room` is
/// empty.
void findingRows(State& state, const std::string& room);
/// Above the list: what the last change of furniture or a door broke and mended, with a way to take it back.
void rippleRows(State& state);
/// How many are not accepted, by severity (Hint, Warn, Fault), of one room or of the house.
std::array<int, 3> findingCounts(State& state, const std::string& room);

/// Goes to a finding: its row opens, the eye flies to where it is seen, what hides it is see-through.
void openFinding(State& state, const std::string& id);
/// Puts back what was see-through for it.
void closeFinding(State& state);
/// The one after (1) or before (-1) the open one, as the docket lists them; round at the ends.
void stepFinding(State& state, int by);
/// Closes the open one at the homeowner's seat, and goes on when it was settled; once a frame.
void followFindings(State& state);

/// The plate that the open finding is about; empty: none.
std::string findingPlate(const State& state);
/// Brings the plan's middle to where a finding was opened, near enough to read it.
void centrePlanOnFinding(State& state);

/// Where a point (house mm, z above FFL) of the finding's room is on screen; nullopt: behind the eye.
using PointProjector = std::function<std::optional<ImVec2>(plan::Vec3)>;
/// The open finding's bodies, what was measured between them, and what a remedy would do.
void drawFindingMarks(State& state, const PointProjector& project, Place place);
/// A small shape at a corner of a plate with an open finding; a click opens it. True while the pointer is on
/// it. `view` names it for the report.
bool findingBadge(State& state, const std::string& plate_id, ImVec2 at, bool over, const char* view);

} // namespace gangway::app
