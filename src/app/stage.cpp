// The stage: the 3D view, and what the mouse does on it.
#include "app/panels.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gangway::app {

namespace {
constexpr float kClickSlack_px = 5; ///< a press that moves less is a click

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
    return key + (state.tokens == &kLight ? "light" : "dark");
}

void click(State& state, const render::Pick& hit, bool twice) {
    const bool plate = hit.kind == scene::PartKind::Plate;
    if (plate) {
        state.selected = hit.object;
        state.asking_note = false;
        return;
    }
    state.selected.clear();
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
    } else if (twice && plan::findRoom(state.plan(), hit.room) != nullptr) {
        // Step in where one pointed, looking the way the camera looked.
        state.stance = Stance::Walk;
        scene::Camera camera = state.camera;
        camera.pitch = -0.08F;
        const auto* map = walkMap(state, state.storey);
        const plan::Vec2 stand = map == nullptr ? plan::Vec2{at.x, at.y} : map->nearestFree({at.x, at.y});
        const auto* storey = plan::findStorey(state.plan(), state.storey);
        camera.eye = scene::toScene({stand.x, stand.y, scene::kEyeHeightMm},
                                    storey == nullptr ? 0 : storey->elevation_mm);
        state.room = hit.room;
        flyTo(state, camera);
    }
}

void mouse(State& state, const render::Renderer& renderer, const render::View& view) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool over = ImGui::IsItemHovered();
    const auto pickHere = [&] {
        return renderer.pick(view, static_cast<int>(io.MousePos.x - state.stage.x),
                             static_cast<int>(io.MousePos.y - state.stage.y));
    };
    if (ImGui::IsItemActive() || over) {
        const bool right = ImGui::IsMouseDragging(ImGuiMouseButton_Right, kClickSlack_px);
        const bool left = ImGui::IsMouseDragging(ImGuiMouseButton_Left, kClickSlack_px);
        const bool middle = ImGui::IsMouseDragging(ImGuiMouseButton_Middle, kClickSlack_px);
        if (middle || (left && io.KeyShift))
            panBy(state, io.MouseDelta.x, io.MouseDelta.y);
        else if (left || right)
            lookBy(state, io.MouseDelta.x, io.MouseDelta.y);
    }
    if (over && io.MouseWheel != 0) zoomBy(state, io.MouseWheel);
    if (!over) {
        state.hovered.clear();
        return;
    }
    const bool still =
        std::hypot(ImGui::GetMouseDragDelta(0, 0).x, ImGui::GetMouseDragDelta(0, 0).y) < kClickSlack_px;
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left) && still) {
        click(state, pickHere(), false);
    } else if (ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) {
        click(state, pickHere(), true);
    } else if (!ImGui::IsAnyMouseDown() && (io.MouseDelta.x != 0 || io.MouseDelta.y != 0)) {
        const render::Pick hit = pickHere();
        state.hovered = hit.kind == scene::PartKind::Plate ? hit.object : std::string();
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

void toast(const State& state) {
    if (state.toast.empty() || ImGui::GetTime() > state.toast_until) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    const ImVec2 size = ImGui::CalcTextSize(state.toast.c_str());
    const ImVec2 corner{state.stage.x + (state.stage.width - size.x) / 2 - 14 * s,
                        state.stage.y + state.stage.height - 56 * s};
    list.AddRectFilled(corner, {corner.x + size.x + 28 * s, corner.y + size.y + 16 * s},
                       packed(state.tokens->ink, 0.92F), 8 * s);
    list.AddText({corner.x + 14 * s, corner.y + 8 * s}, packed(state.tokens->paper), state.toast.c_str());
}
} // namespace

void drawStage(State& state, render::Renderer& renderer) {
    static constexpr ImGuiWindowFlags kFlags =
        ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
        ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoNav;
    ImGui::SetNextWindowPos({state.stage.x, state.stage.y});
    ImGui::SetNextWindowSize({state.stage.width, state.stage.height});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::Begin("stage", nullptr, kFlags);
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
    mouse(state, renderer, view);
    if (state.flight.done >= 1 && state.walk_way.empty()) drawMarks(state, renderer, view);
    crumb(state);
    toast(state);
    ImGui::End();
    ImGui::PopStyleVar();
}

} // namespace gangway::app
