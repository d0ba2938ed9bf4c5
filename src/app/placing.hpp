// Plates under the pointer: dragged along walls, put down, measured; the same on stage, strip and plan.
#pragma once

#include "edit/kept_distances.hpp"
#include "edit/snapping.hpp"
#include "plan/plan.hpp"

#include <imgui.h>

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace gangway::app {

struct State;

/// A place on something that plates are mounted on.
struct Spot {
    std::string room;
    plan::Host host;
};

/// The view a drag or a measure belongs to.
enum class Place { Stage, Strip, Plan };

/// Plates that are being dragged.
struct Drag {
    std::string plate;        ///< the one under the pointer; empty: nothing is dragged
    plan::Vec2 grab_mm;       ///< from the pointer to the plate's centre, in its host
    plan::Vec2 grab_house_mm; ///< on plan: from the pointer to the plate, which its symbol may stand far from
    Spot start;               ///< where the plate was
    std::map<std::string, plan::Host> others; ///< plates that go along, and where they were
    bool moving = false;                      ///< the pointer has left the slack of a click
    Place place = Place::Stage;
    std::optional<edit::Guide> along, height; ///< what it lies on now
};

/// A new plate on the pointer until it is put down.
struct Placing {
    plan::Plate plate;
    std::optional<Spot> spot; ///< where it would land now
    std::optional<edit::Guide> along, height;
};

/// A distance that is being typed beside a plate.
struct Typing {
    edit::Along along = edit::Along::U;
    plan::KeptDistance from;
    std::string plate, text, problem;
    bool keep = false;
    ImVec2 at{0, 0};
    bool open = false;
};

/// Where a place of the plate's host is on screen; nullopt: not in sight.
using Projector = std::function<std::optional<ImVec2>(double u_mm, double v_mm)>;

struct DragKeys {
    bool free = false;        ///< no snapping (Alt)
    bool keep_height = false; ///< along the wall only (Shift)
    double tolerance_mm = 40;
};

/// Begins with the pointer on a plate. Plates chosen together with it go along.
void beginDrag(State& state, const std::string& plate_id, const Spot& pointer, Place place);
void dragTo(State& state, const Spot& pointer, const DragKeys& keys);
void endDrag(State& state);

/// The new plate follows the pointer.
void hoverPlacing(State& state, const std::optional<Spot>& pointer, const DragKeys& keys);
/// Puts the new plate down where it hovers; it stays on the pointer when `again`.
void putDown(State& state, bool again);
/// A new plate on the pointer: from now on a click puts it down. Its height on plan is the usual one.
void startPlacing(State& state, plan::Plate plate);
double usualHeight(const State& state, const plan::Plate& plate);

/// Guides, live distances and typed numbers of a plate at its place in one view; true when the pointer is on
/// a number, which takes the click.
bool drawMeasures(State& state, const plan::Plate& plate, const Projector& projector, Place place);
/// What hovers: outline and guides.
void drawPlacing(State& state, const Spot& spot, const Projector& projector);
/// The box a distance is typed in, when one is open.
void drawTyping(State& state);

/// Sets a distance typed in the house's units, as it is shown (without its sign); empty, or what is wrong.
std::string typeDistance(State& state, const std::string& plate_id, edit::Along along,
                         const plan::KeptDistance& from, const std::string& text, bool keep);
/// The two ends, the floor and the nearest other thing in each direction: what is measured on screen.
std::vector<edit::KeepChoice> shownChoices(const State& state, const plan::Plate& plate, edit::Along along);

/// Width and height of a plate as composed, mm.
plan::Vec2 plateSize(const State& state, const plan::Plate& plate);

/// Chosen plates: the selected one first.
std::vector<std::string> chosenPlates(const State& state);
void choosePlate(State& state, const std::string& plate_id, bool add);

} // namespace gangway::app
