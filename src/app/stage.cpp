// The stage: the 3D view, and what the mouse does on it.
#include "app/lamps.hpp"
#include "app/panels.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gangway::app {

namespace {
constexpr float kClickSlack_px = 5; ///< a press that moves less is a click

/// What is plugged into a plate counts as the plate.
bool isPlate(const render::Pick& hit) {
    return hit.kind == scene::PartKind::Plate || hit.kind == scene::PartKind::Plug;
}

/// What the stage's picture depends on, as text, so that an unchanged stage is not drawn again.
std::string viewKey(const State& state, const render::View& view) {
    std::string key = fmt::format(
        "{} {} {} {} {} {} {} {} {} {} {} {} {}", state.document.version(), view.width, view.height,
        view.camera.eye.x, view.camera.eye.y, view.camera.eye.z, view.camera.yaw, view.camera.pitch,
        view.camera.vertical_fov, view.lid_off, view.storey, view.selected, view.hovered);
    for (const auto* set :
         {&view.hidden_layers, &view.ghosted_layers, &view.hidden_rooms, &view.ghosted_objects}) {
        key += '|';
        for (const auto& entry : *set)
            key += entry + ',';
    }
    return key + (state.tokens == &kLight ? "light" : "dark") + lightKey(state);
}

void click(State& state, const render::Pick& hit, bool twice) {
    const bool worked = !ImGui::GetIO().KeyCtrl && clickLights(state, hit);
    const bool plate = isPlate(hit);
    if (plate) {
        choosePlate(state, hit.object, ImGui::GetIO().KeyCtrl && state.seat == Seat::Designer);
        return;
    }
    if (worked) return;
    choosePlate(state, {}, false);
    const plan::Vec3 at = scene::toHouse(hit.point);
    if (state.stance == Stance::Walk) {
        const auto* piece = plan::findFurniture(state.plan(), hit.object);
        const auto* room = plan::findRoom(state.plan(), hit.room);
        const bool ground =
            hit.kind == scene::PartKind::Floor || hit.kind == scene::PartKind::Soft || piece != nullptr;
        if (piece != nullptr && piece->kind == "stair")
            takeStair(state, piece->id);
        else if (ground)
            walkTo(state, {at.x, at.y}, room == nullptr ? state.storey : room->storey);
    } else if (const auto* room = plan::findRoom(state.plan(), hit.room); twice && room != nullptr) {
        stepInto(state, *room, {at.x, at.y});
    }
}

DragKeys dragKeys(const State& state, const render::View& view, const render::Pick& hit) {
    const ImGuiIO& io = ImGui::GetIO();
    constexpr float kSnap_px = 9;
    // As many mm as the snap's pixels are at the distance of what is under the pointer.
    const float distance_m = glm::distance(hit.point, view.camera.eye);
    const float per_px = 2 * distance_m * std::tan(view.camera.vertical_fov / 2) / state.stage.height;
    return {io.KeyAlt, io.KeyShift, std::clamp(1000.0 * per_px * kSnap_px, 4.0, 60.0)};
}

/// A press on a plate is the beginning of a drag of it.
void press(State& state, const render::View& view, const render::Pick& hit) {
    if (pressKnob(state, hit)) return;
    if (!isPlate(hit) || state.seat != Seat::Designer) return;
    const plan::Plate* plate = plan::findPlate(state.plan(), hit.object);
    if (plate == nullptr) return;
    const Spot at{plate->room, plate->host};
    const auto pointer = spotUnder(state, view, {}, ImGui::GetIO().MousePos, &at);
    beginDrag(state, plate->id, pointer.value_or(at), Place::Stage);
}

/// True while a plate is dragged on the stage.
bool drag(State& state, const render::Renderer& renderer, const render::View& view) {
    if (state.drag.plate.empty() || state.drag.place != Place::Stage) return false;
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left) || !ImGui::IsMouseDown(ImGuiMouseButton_Left)) {
        const bool moved = state.drag.moving;
        endDrag(state);
        return moved;
    }
    const ImGuiIO& io = ImGui::GetIO();
    state.drag.moving = state.drag.moving || ImGui::IsMouseDragging(ImGuiMouseButton_Left, kClickSlack_px);
    if (!state.drag.moving || (io.MouseDelta.x == 0 && io.MouseDelta.y == 0)) return true;
    const plan::Plate* plate = plan::findPlate(state.plan(), state.drag.plate);
    if (plate == nullptr) return true;
    const auto hit = renderer.pick(view, static_cast<int>(io.MousePos.x - state.stage.x),
                                   static_cast<int>(io.MousePos.y - state.stage.y));
    const Spot now{plate->room, plate->host};
    // What is under the pointer may be the plate itself, which stands out of its wall: then its wall counts.
    const bool itself = hit.object == plate->id;
    const auto spot = spotUnder(state, view, itself ? render::Pick{} : hit, io.MousePos, &now);
    if (spot) dragTo(state, *spot, dragKeys(state, view, hit));
    return true;
}

/// A new plate follows the pointer; true when the click was for it.
bool placePlate(State& state, const render::Renderer& renderer, const render::View& view, bool over,
                bool still) {
    if (!state.placing) return false;
    const ImGuiIO& io = ImGui::GetIO();
    std::optional<Spot> spot;
    if (over) {
        const auto hit = renderer.pick(view, static_cast<int>(io.MousePos.x - state.stage.x),
                                       static_cast<int>(io.MousePos.y - state.stage.y));
        spot = spotUnder(state, view, hit, io.MousePos, nullptr);
        hoverPlacing(state, spot, dragKeys(state, view, hit));
    }
    if (state.placing->spot && over)
        drawPlacing(state, *state.placing->spot,
                    stageProjector(state, view, state.placing->spot->room, state.placing->spot->host));
    if (over && still && ImGui::IsMouseReleased(ImGuiMouseButton_Left) && spot) {
        putDown(state, io.KeyShift);
        return true;
    }
    return over;
}

/// New furniture, openings and lamps on the floor or wall under the pointer; true while there is one.
bool placeThing(State& state, const render::Renderer& renderer, const render::View& view, bool over,
                bool still) {
    if (!state.thing_placing) return false;
    const ImGuiIO& io = ImGui::GetIO();
    const auto hit = renderer.pick(view, static_cast<int>(io.MousePos.x - state.stage.x),
                                   static_cast<int>(io.MousePos.y - state.stage.y));
    const auto* room = plan::findRoom(state.plan(), hit.room);
    if (over && room != nullptr) {
        const plan::Vec3 at = scene::toHouse(hit.point);
        hoverThing(state, room->storey, {at.x, at.y}, io.KeyAlt);
    }
    const double floor_mm = elevationOf(state, state.storey);
    drawThing(state, *ImGui::GetWindowDrawList(), [&](plan::Vec2 at) {
        const auto pixel = render::project(view, scene::toScene({at.x, at.y, 0}, floor_mm));
        return pixel ? ImVec2{state.stage.x + pixel->x, state.stage.y + pixel->y} : ImVec2{-1e4F, -1e4F};
    });
    if (over && still && ImGui::IsMouseReleased(ImGuiMouseButton_Left)) putThingDown(state, io.KeyShift);
    return over;
}

/// The right button chooses what is no plate: furniture, an opening, a lamp, a wall, the room by its floor.
void chooseUnder(State& state, const render::Pick& hit) {
    using Kind = scene::PartKind;
    const auto* lamp = plan::findLuminaire(state.plan(), hit.object);
    const auto* piece = plan::findFurniture(state.plan(), hit.object);
    if (isPlate(hit))
        choosePlate(state, hit.object, false);
    else if (piece != nullptr)
        chooseThing(state, {sheets::PlanThing::Furniture, piece->id, {}});
    else if (lamp != nullptr)
        chooseThing(state, {sheets::PlanThing::Luminaire, lamp->id, {}});
    else if (hit.kind == Kind::Opening)
        chooseThing(state, {sheets::PlanThing::Opening, hit.object, {}});
    else if (!hit.wall.empty())
        chooseThing(state, {sheets::PlanThing::Wall, hit.wall, hit.room});
    else if (!hit.room.empty())
        chooseThing(state, {sheets::PlanThing::Room, hit.room, {}});
}

void look(State& state) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool right = ImGui::IsMouseDragging(ImGuiMouseButton_Right, kClickSlack_px);
    const bool left = ImGui::IsMouseDragging(ImGuiMouseButton_Left, kClickSlack_px);
    const bool middle = ImGui::IsMouseDragging(ImGuiMouseButton_Middle, kClickSlack_px);
    if (middle || (left && io.KeyShift))
        panBy(state, io.MouseDelta.x, io.MouseDelta.y);
    else if (left || right)
        lookBy(state, io.MouseDelta.x, io.MouseDelta.y);
}

void mouse(State& state, const render::Renderer& renderer, const render::View& view, bool on_number) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool over = ImGui::IsItemHovered();
    const auto pickHere = [&] {
        return renderer.pick(view, static_cast<int>(io.MousePos.x - state.stage.x),
                             static_cast<int>(io.MousePos.y - state.stage.y));
    };
    const bool still =
        std::hypot(ImGui::GetMouseDragDelta(0, 0).x, ImGui::GetMouseDragDelta(0, 0).y) < kClickSlack_px;
    if (over && !on_number && !state.placing && ImGui::IsMouseClicked(ImGuiMouseButton_Left))
        press(state, view, pickHere());
    if (dragKnob(state) || drag(state, renderer, view)) return;
    if (ImGui::IsItemActive() || over) look(state);
    if (over && io.MouseWheel != 0) zoomBy(state, io.MouseWheel);
    if (placePlate(state, renderer, view, over, still) || placeThing(state, renderer, view, over, still))
        return;
    if (!over) {
        state.hovered.clear();
        noHover(state);
        return;
    }
    // The release that ends a double-click is no click of its own: it would walk on from where one stepped
    // in.
    const bool second = io.MouseClickedLastCount[0] > 1;
    const ImVec2 right_way = ImGui::GetMouseDragDelta(ImGuiMouseButton_Right, 0);
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Right) && state.seat == Seat::Designer &&
        std::hypot(right_way.x, right_way.y) < kClickSlack_px)
        chooseUnder(state, pickHere());
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left) && still && !second && !on_number && !state.typing) {
        click(state, pickHere(), false);
    } else if (ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) {
        click(state, pickHere(), true);
    } else if (!ImGui::IsAnyMouseDown() && (io.MouseDelta.x != 0 || io.MouseDelta.y != 0)) {
        const render::Pick hit = pickHere();
        state.hovered = isPlate(hit) ? hit.object : std::string();
        hoverLights(state, hit);
    }
}

/// Distances of the chosen plate on the stage; true when the pointer is on one of the numbers.
bool measures(State& state, const render::View& view) {
    const plan::Plate* plate = plan::findPlate(state.plan(), state.selected);
    if (plate == nullptr || state.seat != Seat::Designer || state.flight.done < 1 || !state.walk_way.empty())
        return false;
    if (state.stance == Stance::Walk && plate->room != state.room) return false;
    return drawMeasures(state, *plate, stageProjector(state, view, plate->room, plate->host), Place::Stage);
}

/// Over the walls of the room one stands in that look at the eye.
void overlaysOnStage(State& state, const render::View& view) {
    const plan::Room* room = standingRoom(state);
    if (room == nullptr || state.stance != Stance::Walk) return;
    const plan::Vec2 eye = standingAt(state);
    for (std::size_t wall = 0; wall < room->walls.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(*room, wall);
        const plan::Vec2 from = eye - plan::Vec2{frame.origin_mm.x, frame.origin_mm.y};
        if (frame.w.x * from.x + frame.w.y * from.y <= 0) continue;
        plan::Host host;
        host.wall = room->walls[wall].id;
        drawOverlays(state, *room, wall, stageProjector(state, view, room->id, host), Place::Stage);
    }
}

void crumb(const State& state) {
    const auto* storey = plan::findStorey(state.plan(), state.storey);
    const auto* room = standingRoom(state);
    std::string text = storey == nullptr ? "" : storey->name;
    if (room != nullptr && state.stance == Stance::Walk) text += (text.empty() ? "" : "  /  ") + room->name;
    if (state.stance == Stance::LidOff) text += "  /  lid off";
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    ImGui::PushFont(state.fonts.strong);
    const ImVec2 size = ImGui::CalcTextSize(text.c_str());
    const ImVec2 corner{state.stage.x + 16 * s, state.stage.y + 16 * s};
    list.AddRectFilled(corner, {corner.x + size.x + 24 * s, corner.y + size.y + 14 * s},
                       packed(state.tokens->paper, 0.92F), 8 * s);
    list.AddText({corner.x + 12 * s, corner.y + 7 * s}, packed(state.tokens->ink), text.c_str());
    ImGui::PopFont();
    if (!state.faded.empty()) {
        const char* note = "Some pieces are faded. Esc shows them again.";
        const ImVec2 at{corner.x + size.x + 40 * s, corner.y + 7 * s};
        const ImVec2 extent = ImGui::CalcTextSize(note);
        list.AddRectFilled({at.x - 10 * s, corner.y}, {at.x + extent.x + 10 * s, corner.y + size.y + 14 * s},
                           packed(state.tokens->paper, 0.92F), 8 * s);
        list.AddText(at, packed(state.tokens->soft_ink), note);
    }
}

} // namespace

void drawToast(const State& state, Rect area) {
    if (state.toast.empty() || ImGui::GetTime() > state.toast_until) return;
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    const float s = state.scale;
    const ImVec2 size = ImGui::CalcTextSize(state.toast.c_str());
    const ImVec2 corner{area.x + (area.width - size.x) / 2 - 14 * s, area.y + area.height - 56 * s};
    list.AddRectFilled(corner, {corner.x + size.x + 28 * s, corner.y + size.y + 16 * s},
                       packed(state.tokens->ink, 0.92F), 8 * s);
    list.AddText({corner.x + 14 * s, corner.y + 8 * s}, packed(state.tokens->paper), state.toast.c_str());
}

void drawStage(State& state, render::Renderer& renderer) {
    static constexpr ImGuiWindowFlags kFlags =
        ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
        ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoNav;
    ImGui::SetNextWindowPos({state.stage.x, state.stage.y});
    ImGui::SetNextWindowSize({state.stage.width, state.stage.height});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::Begin("stage", nullptr, kFlags);
    followFindings(state);
    if (state.stance == Stance::Plan) {
        drawPlanView(state);
        drawToast(state, state.stage);
        drawTyping(state);
        ImGui::End();
        ImGui::PopStyleVar();
        return;
    }
    deriveLamps(state);
    const render::View view = viewOf(state);
    if (const std::string key = viewKey(state, view); key != state.stage_key) {
        state.stage_texture = renderer.drawToTexture(view);
        state.stage_key = key;
        state.refining = true;
    }
    const ImVec2 size{state.stage.width, state.stage.height};
    ImGui::GetWindowDrawList()->AddImage(
        reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(state.stage_texture)),
        {state.stage.x, state.stage.y}, {state.stage.x + size.x, state.stage.y + size.y}, {0, 1}, {1, 0});
    ImGui::InvisibleButton("stage-mouse", size,
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                               ImGuiButtonFlags_MouseButtonMiddle);
    mouse(state, renderer, view, measures(state, view));
    overlaysOnStage(state, view);
    if (state.flight.done >= 1 && state.walk_way.empty()) drawMarks(state, renderer, view);
    drawFindingOnStage(state, view);
    placeRockers(state, renderer, view);
    drawLightWords(state);
    crumb(state);
    drawToast(state, state.stage);
    drawTyping(state);
    ImGui::End();
    ImGui::PopStyleVar();
}

} // namespace gangway::app
