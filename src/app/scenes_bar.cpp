// Scenes of light at the stage's lower left: which lamps are on, by name; all on, all off; day and evening.
#include "app/edit_actions.hpp"
#include "app/lamps.hpp"
#include "app/thing_form.hpp"
#include "edit/leg_edits.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app {

namespace {
void show(State& state, const plan::LightScene& scene) {
    state.lamps.lights.show(netOf(state), scene);
    state.lamps.scene = scene.id;
}

/// The buttons both seats have. `high`: of a button, pixels at scale 1.
void lightButtons(State& state, float high) {
    const float s = state.scale;
    const auto button = [&](const char* label, const char* name, bool chosen) {
        const float width = ImGui::CalcTextSize(label).x + 32 * s;
        const bool clicked = largeButton(state, label, state.tokens->accent, {width, high * s}, chosen);
        place(state, name);
        ImGui::SameLine(0, 6 * s);
        return clicked;
    };
    if (button("All on", "lights:on", false)) setAllLights(state, true);
    if (button("All off", "lights:off", false)) setAllLights(state, false);
    // Not "Evening", which a scene may be called.
    if (button("Daylight", "evening", !state.lamps.evening)) toggleEvening(state);
}

void sceneButtons(State& state, float high) {
    const float s = state.scale;
    const auto scenes = state.plan().scenes;
    for (const plan::LightScene& scene : scenes) {
        const float width = ImGui::CalcTextSize(scene.name.c_str()).x + 32 * s;
        if (largeButton(state, scene.name.c_str(), state.tokens->accent, {width, high * s},
                        state.lamps.scene == scene.id))
            show(state, scene);
        place(state, fmt::format("scene:{}", scene.id));
        ImGui::SameLine(0, 6 * s);
    }
    ImGui::NewLine();
}

/// What the designer can do with the scene that is shown, and keeping what is on as a new one.
void keeping(State& state) {
    const float s = state.scale;
    const auto& scenes = state.plan().scenes;
    const auto shown = std::ranges::find(scenes, state.lamps.scene, &plan::LightScene::id);
    if (shown != scenes.end()) {
        const plan::LightScene scene = *shown;
        if (ImGui::Button(fmt::format("Remove {}", scene.name).c_str()))
            runArranged(state, edit::removeScene(state.plan(), scene.id));
        place(state, "scene-remove");
        ImGui::SameLine(0, 6 * s);
    }
    ImGui::SetNextItemWidth(150 * s);
    const bool entered = ImGui::InputTextWithHint("##scene", "name of a scene", &state.lamps.new_scene,
                                                  ImGuiInputTextFlags_EnterReturnsTrue);
    place(state, "scene-name");
    ImGui::SameLine(0, 6 * s);
    ImGui::BeginDisabled(state.lamps.new_scene.empty());
    const bool keep = ImGui::Button("Keep what is on") || entered;
    place(state, "scene-keep");
    ImGui::EndDisabled();
    if (!keep || state.lamps.new_scene.empty()) return;
    plan::LightScene scene;
    scene.name = state.lamps.new_scene;
    scene.levels = state.lamps.lights.levels(netOf(state));
    const auto same = std::ranges::find(state.plan().scenes, scene.name, &plan::LightScene::name);
    if (same != state.plan().scenes.end()) {
        scene.id = same->id;
        runArranged(state,
                    edit::changeScene(state.plan(), scene, fmt::format("Change scene {}", scene.name)));
    } else {
        runArranged(state, edit::addScene(state.plan(), scene));
    }
    const auto kept = std::ranges::find(state.plan().scenes, scene.name, &plan::LightScene::name);
    if (kept != state.plan().scenes.end()) state.lamps.scene = kept->id;
    state.lamps.new_scene.clear();
}
} // namespace

void drawScenesBar(State& state) {
    if (state.stance == Stance::Plan || state.bench.open) return;
    const float s = state.scale;
    const bool designer = state.seat == Seat::Designer;
    ImGui::SetNextWindowPos({state.stage.x + 16 * s, state.stage.y + state.stage.height - 12 * s}, 0, {0, 1});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 10 * s);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {8 * s, 8 * s});
    ImGui::Begin("scenes", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoFocusOnAppearing | ImGuiWindowFlags_AlwaysAutoResize);
    if (designer && !state.lamps.bar_open) {
        if (form::chooseButton(state, "Lamps", false)) state.lamps.bar_open = true;
        place(state, "lamps-bar");
    } else {
        const float high = designer ? 32.0F : 46.0F;
        if (!state.plan().scenes.empty()) sceneButtons(state, high);
        lightButtons(state, high);
        if (designer) {
            if (form::chooseButton(state, "Fold", false)) state.lamps.bar_open = false;
            place(state, "lamps-fold");
            keeping(state);
        } else {
            ImGui::NewLine();
        }
    }
    ImGui::End();
    ImGui::PopStyleVar(3);
}

} // namespace gangway::app
