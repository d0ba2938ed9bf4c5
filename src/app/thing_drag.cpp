// Furniture, openings, luminaires, corners and walls dragged on the plan.
#include "app/furnish.hpp"
#include "app/panels.hpp"
#include "app/thing_place.hpp"
#include "edit/furniture_edits.hpp"
#include "edit/opening_edits.hpp"
#include "edit/room_edits.hpp"
#include "geometry/frames.hpp"

#include <cmath>

namespace gangway::app {

using plan::Vec2;
using sheets::PlanThing;

namespace {
constexpr double kRoomStep_mm = 10; ///< corners and walls go to whole centimetres

double stepped(double value, bool free) {
    const double step = free ? 0.5 : kRoomStep_mm;
    return std::round(value / step) * step;
}

const plan::Room* roomOf(const plan::Plan& plan, const sheets::PlanRef& thing) {
    return plan::findRoom(plan, thing.kind == PlanThing::Wall ? thing.room : thing.id);
}

std::optional<std::size_t> cornerNear(const plan::Room& room, Vec2 at, double reach) {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const double off = plan::length(room.outline[i] - at);
        if (off <= reach && (!best || off < plan::length(room.outline[*best] - at))) best = i;
    }
    return best;
}

bool beginRoom(const State& state, ThingDrag& drag, const std::string& storey, Vec2 at, double reach) {
    const plan::Room* room = roomOf(state.plan(), drag.thing);
    if (room == nullptr || room->storey != storey) return false;
    drag.corner = cornerNear(*room, at, reach);
    if (drag.corner) {
        drag.start_mm = room->outline[*drag.corner];
        return true;
    }
    const auto wall =
        drag.thing.kind == PlanThing::Wall ? plan::wallIndex(*room, drag.thing.id) : std::nullopt;
    if (!wall || *wall >= room->outline.size()) return false;
    drag.start_mm = room->outline[*wall];
    return true;
}

bool beginThing(const State& state, ThingDrag& drag) {
    const plan::Plan& plan = state.plan();
    if (drag.thing.kind == PlanThing::Furniture) {
        const auto* piece = plan::findFurniture(plan, drag.thing.id);
        if (piece == nullptr) return false;
        drag.start_mm = piece->at_mm;
        drag.start_turn_deg = piece->turn_deg;
        return true;
    }
    if (drag.thing.kind == PlanThing::Opening) {
        const auto* opening = findOpening(plan, drag.thing.id);
        if (opening != nullptr) drag.start_left_mm = opening->left_mm;
        return opening != nullptr;
    }
    const auto* lamp = plan::findLuminaire(plan, drag.thing.id);
    if (lamp == nullptr) return false;
    drag.start_mm = {lamp->host.u_mm, lamp->host.v_mm};
    return true;
}

edit::Refusable dragFurniture(const State& state, const ThingDrag& drag, const std::string& storey, Vec2 way,
                              bool free) {
    plan::Furniture piece = *plan::findFurniture(state.plan(), drag.thing.id);
    piece.at_mm = drag.start_mm + way;
    piece.turn_deg = drag.start_turn_deg;
    if (const auto* room = geometry::roomAt(state.plan(), storey, piece.at_mm)) piece.room = room->id;
    edit::Stand stand{piece.at_mm, piece.turn_deg};
    if (!free)
        if (const auto wall = edit::snapToWall(state.plan(), piece)) stand = *wall;
    stand.at_mm = {std::round(stand.at_mm.x * 2) / 2, std::round(stand.at_mm.y * 2) / 2};
    return edit::moveFurniture(state.plan(), piece.id, stand);
}

edit::Refusable dragOpening(const State& state, const ThingDrag& drag, Vec2 way, bool free) {
    const plan::Opening& opening = *findOpening(state.plan(), drag.thing.id);
    const plan::Room* room = plan::findRoom(state.plan(), opening.room);
    const auto wall = room ? plan::wallIndex(*room, opening.wall) : std::nullopt;
    if (!wall) return std::unexpected("its wall is not there");
    const geometry::Frame frame = geometry::wallFrame(*room, *wall);
    const double by = plan::dot(way, {frame.u.x, frame.u.y});
    return edit::moveOpening(state.plan(), opening.id, stepped(drag.start_left_mm + by, free));
}

edit::Refusable dragLuminaire(const State& state, const ThingDrag& drag, Vec2 way, bool free) {
    const plan::Luminaire& lamp = *plan::findLuminaire(state.plan(), drag.thing.id);
    const auto frame = geometry::hostFrame(state.plan(), lamp.room, lamp.host);
    if (!frame) return std::unexpected(frame.error());
    plan::Host host = lamp.host;
    host.u_mm = stepped(drag.start_mm.x + plan::dot(way, {frame->u.x, frame->u.y}), free);
    // On upright faces a plan shows the way along only.
    if (std::abs(frame->v.z) < 0.5)
        host.v_mm = stepped(drag.start_mm.y + plan::dot(way, {frame->v.x, frame->v.y}), free);
    return edit::moveLuminaires(state.plan(), {{lamp.id, host, {}}});
}

edit::Refusable dragCorner(const State& state, ThingDrag& drag, Vec2 way, bool free) {
    const plan::Room& room = *roomOf(state.plan(), drag.thing);
    const Vec2 to{stepped(drag.start_mm.x + way.x, free), stepped(drag.start_mm.y + way.y, free)};
    if (*drag.corner >= room.outline.size()) return std::unexpected("the corner is gone");
    return edit::moveCorner(state.plan(), room.id, *drag.corner, to);
}

/// A wall goes where the pointer is, measured along its normal from where it was at the beginning.
edit::Refusable dragWall(const State& state, const ThingDrag& drag, Vec2 way, bool free) {
    const plan::Room& room = *roomOf(state.plan(), drag.thing);
    const auto wall = plan::wallIndex(room, drag.thing.id);
    if (!wall || *wall >= room.outline.size()) return std::unexpected("the wall is gone");
    const geometry::Frame frame = geometry::wallFrame(room, *wall);
    const Vec2 outwards{-frame.w.x, -frame.w.y};
    const double done = plan::dot(room.outline[*wall] - drag.start_mm, outwards);
    const double by = stepped(plan::dot(way, outwards), free) - done;
    const auto beyond = state.furnish.form.both_sides ? edit::Beyond::Together : edit::Beyond::Stays;
    return edit::moveWall(state.plan(), room.id, *wall, by, beyond);
}

edit::Refusable dragged(const State& state, ThingDrag& drag, const std::string& storey, Vec2 way, bool free) {
    switch (drag.thing.kind) {
    case PlanThing::Furniture:
        return dragFurniture(state, drag, storey, way, free);
    case PlanThing::Opening:
        return dragOpening(state, drag, way, free);
    case PlanThing::Luminaire:
        return dragLuminaire(state, drag, way, free);
    case PlanThing::Room:
    case PlanThing::Wall:
        return drag.corner ? dragCorner(state, drag, way, free) : dragWall(state, drag, way, free);
    case PlanThing::Plate:
        break;
    }
    return std::unexpected("plates are dragged otherwise");
}

bool isThere(const State& state, const ThingDrag& drag) {
    ThingDrag again = drag;
    const bool building = drag.thing.kind == PlanThing::Room || drag.thing.kind == PlanThing::Wall;
    return building ? roomOf(state.plan(), drag.thing) != nullptr : beginThing(state, again);
}
} // namespace

bool dragThing(State& state, const std::string& storey, Vec2 at, DragPhase phase, const ThingDragKeys& keys) {
    auto& drag = state.furnish.drag;
    if (phase == DragPhase::Begin) {
        drag.reset();
        if (!state.thing || state.seat != Seat::Designer || state.thing->kind == PlanThing::Plate)
            return false;
        ThingDrag begun{*state.thing, std::nullopt, at, {}, 0, 0, false};
        const bool building = begun.thing.kind == PlanThing::Room || begun.thing.kind == PlanThing::Wall;
        if (building ? !beginRoom(state, begun, storey, at, keys.reach_mm) : !beginThing(state, begun))
            return false;
        state.document.closeStep();
        drag = std::move(begun);
        return true;
    }
    if (!drag) return false;
    if (phase == DragPhase::Move && isThere(state, *drag) && (drag->moved || at != drag->from_mm)) {
        // Refused on the way, as past a wall's end: it stays where it could be last.
        if (const auto command = dragged(state, *drag, storey, at - drag->from_mm, keys.free)) {
            state.document.run(*command);
            drag->moved = true;
        }
    }
    if (phase == DragPhase::End) {
        state.document.closeStep();
        if (drag->moved) say(state, state.document.undoName());
        drag.reset();
    }
    return true;
}

} // namespace gangway::app
