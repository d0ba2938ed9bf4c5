// Furnishing a house: new furniture, openings, luminaires and rooms on the pointer, what is chosen of them
// changed by number on its card, and dragged on the plan.
#pragma once

#include "edit/edit.hpp"
#include "edit/luminaire_edits.hpp"
#include "edit/room_edits.hpp"
#include "plan/plan.hpp"
#include "sheets/storey_plan.hpp"

#include <imgui.h>

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace gangway::app {

struct State;

/// Something new on the pointer until it is put down.
struct ThingPlacing {
    std::variant<plan::Furniture, plan::Opening, plan::Luminaire> thing;
    std::string storey;  ///< it hovers on
    double turn_deg = 0; ///< of furniture that stands free, and of linear luminaires
    bool there = false;  ///< it has a place now
    std::string why;     ///< where it is not there: what is missing, in words
};

/// What is typed into a card and not agreed yet. A wrong number stays, with what is wrong with it.
struct ThingForm {
    sheets::PlanRef thing;
    std::map<std::string, std::string> typed;    ///< by the name of the box
    std::map<std::string, std::string> mistakes; ///< in words
    std::optional<edit::Command> todo;           ///< run when the card is drawn
    std::function<void(State&)> then;            ///< after that: what is chosen next
    std::uint64_t version = 0;                   ///< of the document the mistakes belong to
    edit::End stays = edit::End::Left;           ///< of a wall that is given a length
    bool both_sides = true;                      ///< a wall is moved with what lies behind it
};

/// Something that is dragged on the plan.
struct ThingDrag {
    sheets::PlanRef thing;
    std::optional<std::size_t> corner; ///< of the room `thing`
    plan::Vec2 from_mm;                ///< the pointer where the drag began
    plan::Vec2 start_mm;               ///< furniture's and luminaire's place then; a wall's left corner
    double start_left_mm = 0;          ///< an opening's then
    double start_turn_deg = 0;
    bool moved = false;
};

enum class FurnishPage { Furniture, Openings, Luminaires, Room, Here };

/// The panel's own memory, and the card's.
struct Furnish {
    FurnishPage page = FurnishPage::Furniture;
    std::string search;
    std::string gltf_file;
    int rows = 2, columns = 2;
    std::string grid_over; ///< piece of furniture; empty: the room
    plan::Luminaire::Kind grid_kind = plan::Luminaire::Kind::Recessed;
    std::string room_name, room_storey, room_width, room_depth;
    std::string put_problem; ///< why the last thing asked for was not done, in words
    /// Outlines of the kinds from above in their usual size, for the palette.
    std::map<std::string, std::vector<std::vector<plan::Vec2>>> pictures;
    ThingForm form;
    std::optional<ThingDrag> drag;
};

// thing_placing.cpp
/// From now on the thing follows the pointer on plan and stage floor.
void startThing(State& state, plan::Furniture piece);
void startThing(State& state, plan::Opening opening);
void startThing(State& state, plan::Luminaire lamp);
/// The new thing goes to a point of a storey: furniture to the wall within 150 mm, openings into the nearest
/// wall, lamps on what carries them. With `free` furniture does not go to walls.
void hoverThing(State& state, const std::string& storey, plan::Vec2 house_mm, bool free = false);
/// Adds the thing where it hovers, as one undo step, and chooses it; it stays on the pointer when `again`.
/// Where it can't be, a sentence says why and it stays on the pointer.
void putThingDown(State& state, bool again);
/// Into the middle of a room: furniture and lamps; an opening into the middle of a wall of it.
void putThingInto(State& state, const std::string& room_id, const std::string& wall_id = {});
/// A quarter turn counter-clockwise.
void turnThing(State& state);
/// The keys R and Esc while something is on the pointer; true when one was pressed.
bool thingKeys(State& state);
/// What hovers, as an outline. `to_screen` maps a point of the storey (house mm) to pixels.
void drawThing(const State& state, ImDrawList& list, const std::function<ImVec2(plan::Vec2)>& to_screen);
/// Outline of what is placed or chosen on plan, house mm; one polygon a part.
std::vector<std::vector<plan::Vec2>> outlineOf(const plan::Plan& plan, const plan::Opening& opening);
std::vector<std::vector<plan::Vec2>> outlineOf(const plan::Plan& plan, const plan::Luminaire& lamp);

// thing_drag.cpp
enum class DragPhase { Begin, Move, End };
struct ThingDragKeys {
    bool free = false;     ///< no snapping (Alt)
    double reach_mm = 120; ///< how near a corner the pointer takes hold of it
};
/// Drags what is chosen (State::thing) on the plan of a storey: furniture, openings along their wall,
/// luminaires, walls along their normal, and of a room or wall the corner under the pointer. The whole drag
/// is one undo step. True while something is dragged; false at the beginning where nothing can be.
bool dragThing(State& state, const std::string& storey, plan::Vec2 house_mm, DragPhase phase,
               const ThingDragKeys& keys = {});

// furnish_panel.cpp
/// The side panel's contents: what can be put into the house.
void furnishPanel(State& state);

// thing_card.cpp
/// The card of what is chosen beside plates (State::thing), where the plate's card is. Nothing when a plate
/// or nothing is chosen.
void drawThingCard(State& state);
void chooseThing(State& state, const sheets::PlanRef& thing);
/// "wardrobe", "door 'hall'", "K-L02", "Wall A of the kitchen", "Kitchen".
std::string thingName(const plan::Plan& plan, const sheets::PlanRef& thing);

} // namespace gangway::app
