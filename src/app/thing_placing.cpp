// New furniture, openings and luminaires on the pointer, and where they are put down.
#include "app/furnish.hpp"
#include "app/panels.hpp"
#include "app/thing_cards.hpp"
#include "app/thing_place.hpp"
#include "edit/furniture_edits.hpp"
#include "edit/opening_edits.hpp"
#include "geometry/furniture.hpp"
#include "geometry/plan_outline.hpp"

#include <GLFW/glfw3.h>

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::app {

using plan::Vec2;

namespace {
constexpr double kWallReach_mm = 400;       ///< a pointer this near to a wall means that wall
constexpr double kWallLampHeight_mm = 1800; ///< common practice, no source
constexpr double kHungFrom_mm = 800;        ///< a piece whose underside is higher hangs on the wall

void start(State& state, ThingPlacing placing, const std::string& what, const char* where) {
    state.thing_placing = std::move(placing);
    state.placing.reset();
    state.selected.clear();
    state.also.clear();
    state.thing.reset();
    state.furnish.put_problem.clear();
    say(state, fmt::format("Click {} to put the {} there. Esc: not after all.", where, what));
}

void rounded(Vec2& at) {
    at = {std::round(at.x * 2) / 2, std::round(at.y * 2) / 2};
}

bool hover(const State& state, ThingPlacing& placing, plan::Furniture& piece, Vec2 at, bool free) {
    piece.at_mm = at;
    piece.turn_deg = placing.turn_deg;
    const plan::Room* room = geometry::roomAt(state.plan(), placing.storey, at);
    piece.room = room == nullptr ? std::string() : room->id;
    placing.why = room == nullptr ? "there is no room; put it inside one" : "";
    if (room == nullptr) return false;
    if (!free)
        if (const auto stand = edit::snapToWall(state.plan(), piece)) {
            piece.at_mm = stand->at_mm;
            piece.turn_deg = stand->turn_deg;
        }
    rounded(piece.at_mm);
    return true;
}

bool hover(const State& state, ThingPlacing& placing, plan::Opening& opening, Vec2 at, bool) {
    const auto near = nearestWall(state.plan(), placing.storey, at, kWallReach_mm);
    placing.why = near ? "" : "there is no wall; put it into one";
    if (!near) return false;
    const plan::Room& room = *plan::findRoom(state.plan(), near->room);
    const double length = geometry::wallFrame(room, near->wall).length_mm;
    opening.room = room.id;
    opening.wall = room.walls[near->wall].id;
    opening.joins.clear();
    opening.left_mm = std::round(
        std::clamp(near->u_mm - opening.width_mm / 2, 0.0, std::max(0.0, length - opening.width_mm)));
    return true;
}

bool onWall(const State& state, ThingPlacing& placing, plan::Luminaire& lamp, Vec2 at) {
    const auto near = nearestWall(state.plan(), placing.storey, at, kWallReach_mm);
    placing.why = near ? "" : "there is no wall; put it onto one";
    if (!near) return false;
    lamp.room = near->room;
    lamp.host = {};
    lamp.host.wall = plan::findRoom(state.plan(), near->room)->walls[near->wall].id;
    lamp.host.u_mm = std::round(near->u_mm);
    lamp.host.v_mm = kWallLampHeight_mm;
    return true;
}

/// The piece under a point that a lamp may stand on (its highest top) or hang under.
const plan::Furniture* pieceUnder(const State& state, const std::string& storey, Vec2 at, bool hung) {
    constexpr double kHighestTable_mm = 1600;
    const plan::Furniture* best = nullptr;
    const auto top = [](const plan::Furniture& piece) { return piece.bottom_mm + piece.size.height_mm; };
    for (const auto& piece : state.plan().furniture) {
        const plan::Room* room = plan::findRoom(state.plan(), piece.room);
        if (room == nullptr || room->storey != storey) continue;
        if (hung ? piece.bottom_mm < kHungFrom_mm : top(piece) > kHighestTable_mm) continue;
        if (!geometry::insidePolygon(geometry::footprint(piece), at)) continue;
        if (best == nullptr || top(piece) > top(*best)) best = &piece;
    }
    return best;
}

bool onPiece(const State& state, ThingPlacing& placing, plan::Luminaire& lamp, Vec2 at) {
    const bool hung = lamp.kind == plan::Luminaire::Kind::UnderUnit;
    const plan::Furniture* piece = pieceUnder(state, placing.storey, at, hung);
    const auto frame = piece ? geometry::furnitureFaceFrame(*piece, hung ? "bottom" : "top") : std::nullopt;
    placing.why = frame  ? ""
                  : hung ? "there is no unit on the wall; put it under one"
                         : "there is no piece of furniture; put it onto one";
    if (!frame) return false;
    const plan::Vec3 local = geometry::toFrame(*frame, {at.x, at.y, frame->origin_mm.z});
    lamp.room = piece->room;
    lamp.host = {};
    lamp.host.kind = plan::Host::Kind::Furniture;
    lamp.host.furniture = piece->id;
    lamp.host.face = hung ? "bottom" : "top";
    lamp.host.u_mm = std::round(local.x);
    lamp.host.v_mm = std::round(local.y);
    return true;
}

bool hover(const State& state, ThingPlacing& placing, plan::Luminaire& lamp, Vec2 at, bool) {
    using Kind = plan::Luminaire::Kind;
    if (lamp.kind == Kind::Wall) return onWall(state, placing, lamp, at);
    if (lamp.kind == Kind::UnderUnit || lamp.kind == Kind::Table) return onPiece(state, placing, lamp, at);
    const plan::Room* room = geometry::roomAt(state.plan(), placing.storey, at);
    placing.why = room == nullptr ? "there is no room; put it inside one" : "";
    if (room == nullptr) return false;
    const Vec2 from = at - southWest(*room);
    lamp.room = room->id;
    lamp.host = {};
    lamp.host.kind = lamp.kind == Kind::Floor ? plan::Host::Kind::Floor : plan::Host::Kind::Ceiling;
    lamp.host.u_mm = std::round(from.x);
    lamp.host.v_mm = std::round(from.y);
    if (lamp.kind == Kind::Linear) lamp.turn_deg = placing.turn_deg;
    return true;
}

edit::Refusable adding(const State& state, const ThingPlacing& placing) {
    if (const auto* piece = std::get_if<plan::Furniture>(&placing.thing))
        return edit::addFurniture(state.plan(), *piece, placing.storey);
    if (const auto* opening = std::get_if<plan::Opening>(&placing.thing))
        return edit::addOpening(state.plan(), *opening);
    return edit::addLuminaire(state.plan(), std::get<plan::Luminaire>(placing.thing));
}

sheets::PlanRef newest(const State& state, const ThingPlacing& placing) {
    using sheets::PlanThing;
    if (std::holds_alternative<plan::Furniture>(placing.thing))
        return {PlanThing::Furniture, state.plan().furniture.back().id, {}};
    if (std::holds_alternative<plan::Opening>(placing.thing))
        return {PlanThing::Opening, state.plan().openings.back().id, {}};
    return {PlanThing::Luminaire, state.plan().luminaires.back().id, {}};
}

void refuse(State& state, const std::string& why) {
    state.furnish.put_problem = why;
    say(state, why);
}

std::size_t longestWall(const plan::Room& room) {
    std::size_t longest = 0;
    for (std::size_t i = 1; i < room.outline.size(); ++i)
        if (geometry::wallFrame(room, i).length_mm > geometry::wallFrame(room, longest).length_mm)
            longest = i;
    return longest;
}

/// The middle of a wall on plan.
Vec2 middleOfWall(const plan::Room& room, std::size_t wall) {
    const geometry::WallEdge edge = geometry::wallEdge(room, wall);
    return (edge.from_mm + edge.to_mm) * 0.5;
}

std::vector<Vec2> circle(Vec2 centre, double radius_mm) {
    constexpr int kParts = 24;
    std::vector<Vec2> points;
    for (int i = 0; i < kParts; ++i) {
        const double angle = 2 * std::numbers::pi * i / kParts;
        points.push_back(centre + Vec2{std::cos(angle), std::sin(angle)} * radius_mm);
    }
    return points;
}
} // namespace

void startThing(State& state, plan::Furniture piece) {
    const std::string what = piece.name.empty() ? form::kindName(piece) : piece.name;
    start(state, {std::move(piece), state.storey, 0, false, {}}, what, "the floor");
}
void startThing(State& state, plan::Opening opening) {
    const char* what = form::kindName(opening.kind);
    start(state, {std::move(opening), state.storey, 0, false, {}}, what, "a wall");
}
void startThing(State& state, plan::Luminaire lamp) {
    const char* what = form::kindName(lamp.kind);
    const bool wall = lamp.kind == plan::Luminaire::Kind::Wall;
    start(state, {std::move(lamp), state.storey, 0, false, {}}, what, wall ? "a wall" : "a place");
}

void hoverThing(State& state, const std::string& storey, Vec2 at, bool free) {
    if (!state.thing_placing) return;
    ThingPlacing& placing = *state.thing_placing;
    placing.storey = storey;
    placing.there =
        std::visit([&](auto& thing) { return hover(state, placing, thing, at, free); }, placing.thing);
}

void putThingDown(State& state, bool again) {
    if (!state.thing_placing) return;
    const ThingPlacing& placing = *state.thing_placing;
    if (!placing.there) {
        refuse(state, placing.why.empty() ? "it has no place yet" : placing.why);
        return;
    }
    const auto command = adding(state, placing);
    if (!command) {
        refuse(state, command.error());
        return;
    }
    state.document.closeStep();
    state.document.run(*command);
    state.document.closeStep();
    state.furnish.put_problem.clear();
    chooseThing(state, newest(state, placing));
    say(state, state.document.undoName());
    if (!again) state.thing_placing.reset();
}

void putThingInto(State& state, const std::string& room_id, const std::string& wall_id) {
    const plan::Room* room = plan::findRoom(state.plan(), room_id);
    if (room == nullptr || !state.thing_placing) return;
    ThingPlacing& placing = *state.thing_placing;
    const auto* lamp = std::get_if<plan::Luminaire>(&placing.thing);
    Vec2 at = middleOf(*room);
    const bool on_wall = std::holds_alternative<plan::Opening>(placing.thing) ||
                         (lamp != nullptr && lamp->kind == plan::Luminaire::Kind::Wall);
    if (on_wall) at = middleOfWall(*room, plan::wallIndex(*room, wall_id).value_or(longestWall(*room)));
    if (lamp != nullptr && !on_wall)
        for (const auto& piece : state.plan().furniture) {
            const bool hung = lamp->kind == plan::Luminaire::Kind::UnderUnit;
            if (!hung && lamp->kind != plan::Luminaire::Kind::Table) break;
            if (piece.room != room_id || pieceUnder(state, room->storey, piece.at_mm, hung) != &piece)
                continue;
            at = piece.at_mm;
            break;
        }
    hoverThing(state, room->storey, at, true);
    putThingDown(state, false);
}

void turnThing(State& state) {
    if (!state.thing_placing) return;
    constexpr double kQuarter_deg = 90;
    double& turn = state.thing_placing->turn_deg;
    turn = std::fmod(turn + kQuarter_deg, 360.0);
    if (auto* piece = std::get_if<plan::Furniture>(&state.thing_placing->thing)) piece->turn_deg = turn;
}

bool thingKeys(State& state) {
    if (!state.thing_placing || ImGui::GetIO().WantTextInput) return false;
    if (ImGui::IsKeyPressed(GLFW_KEY_ESCAPE, false)) {
        state.thing_placing.reset();
        return true;
    }
    if (ImGui::GetIO().KeyCtrl || !ImGui::IsKeyPressed(GLFW_KEY_R, false)) return false;
    turnThing(state);
    return true;
}

std::vector<std::vector<Vec2>> outlineOf(const plan::Plan& plan, const plan::Opening& opening) {
    const plan::Room* room = plan::findRoom(plan, opening.room);
    const auto wall = room ? plan::wallIndex(*room, opening.wall) : std::nullopt;
    if (!wall) return {};
    const geometry::Frame frame = geometry::wallFrame(*room, *wall);
    const double deep = room->walls[*wall].thickness_mm;
    const auto at = [&](double u, double w) {
        const plan::Vec3 house = geometry::toHouse(frame, {u, 0, w});
        return Vec2{house.x, house.y};
    };
    const double right = opening.left_mm + opening.width_mm;
    return {{at(opening.left_mm, 0), at(right, 0), at(right, -deep), at(opening.left_mm, -deep)}};
}

std::vector<std::vector<Vec2>> outlineOf(const plan::Plan& plan, const plan::Luminaire& lamp) {
    const auto at = geometry::hostPoint(plan, lamp.room, lamp.host);
    if (!at) return {};
    constexpr double kLeast_mm = 60;
    const Vec2 centre{at->x, at->y};
    if (lamp.kind != plan::Luminaire::Kind::Linear && lamp.kind != plan::Luminaire::Kind::UnderUnit)
        return {circle(centre, std::max(kLeast_mm, lamp.size_mm / 2))};
    const double turn = lamp.turn_deg * std::numbers::pi / 180;
    const Vec2 along = Vec2{std::cos(turn), std::sin(turn)} * (lamp.size_mm / 2);
    const Vec2 across = Vec2{-std::sin(turn), std::cos(turn)} * (kLeast_mm / 2);
    return {
        {centre - along - across, centre + along - across, centre + along + across, centre - along + across}};
}

void drawThing(const State& state, ImDrawList& list, const std::function<ImVec2(Vec2)>& to_screen) {
    if (!state.thing_placing || !state.thing_placing->there) return;
    std::vector<std::vector<Vec2>> parts;
    if (const auto* piece = std::get_if<plan::Furniture>(&state.thing_placing->thing)) {
        parts.push_back(geometry::footprint(*piece));
        for (auto& top : geometry::topOutlines(*piece, state.document.file().parent_path()))
            parts.push_back(std::move(top.hull_mm));
    } else if (const auto* opening = std::get_if<plan::Opening>(&state.thing_placing->thing)) {
        parts = outlineOf(state.plan(), *opening);
    } else {
        parts = outlineOf(state.plan(), std::get<plan::Luminaire>(state.thing_placing->thing));
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        std::vector<ImVec2> corners;
        for (const Vec2 corner : parts[i])
            corners.push_back(to_screen(corner));
        const auto count = static_cast<int>(corners.size());
        if (i == 0) list.AddConvexPolyFilled(corners.data(), count, packed(kLight.accent, 0.18F));
        list.AddPolyline(corners.data(), count, packed(kLight.accent), ImDrawFlags_Closed,
                         (i == 0 ? 2.0F : 1.2F) * state.scale);
    }
}

} // namespace gangway::app
