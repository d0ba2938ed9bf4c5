// The rail at the left with the steps of the job, the bar above the stage, and the panel a step opens.
#include "app/panels.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <array>
#include <cmath>

namespace gangway::app {

namespace {
/// A step's picture, drawn in strokes so that it is sharp at any scale.
void stepPicture(ImDrawList& list, Panel panel, bool review, ImVec2 c, float s, ImU32 ink) {
    const float r = 11 * s;
    const auto line = [&](float x0, float y0, float x1, float y1) {
        list.AddLine({c.x + x0 * r, c.y + y0 * r}, {c.x + x1 * r, c.y + y1 * r}, ink, 1.7F * s);
    };
    if (review) { // a tick over a line to sign on
        line(-0.7F, -0.1F, -0.2F, 0.45F);
        line(-0.2F, 0.45F, 0.8F, -0.8F);
        line(-0.9F, 0.95F, 0.9F, 0.95F);
        return;
    }
    switch (panel) {
    case Panel::Rooms: // an L-shaped plan with its door gap
        line(-0.9F, -0.9F, 0.1F, -0.9F);
        line(0.1F, -0.9F, 0.1F, -0.1F);
        line(0.1F, -0.1F, 0.9F, -0.1F);
        line(0.9F, -0.1F, 0.9F, 0.9F);
        line(0.9F, 0.9F, 0.2F, 0.9F);
        line(-0.4F, 0.9F, -0.9F, 0.9F);
        line(-0.9F, 0.9F, -0.9F, -0.9F);
        return;
    case Panel::Furnish: // a bed from above, with its pillows
        line(-0.75F, -0.95F, 0.75F, -0.95F);
        line(0.75F, -0.95F, 0.75F, 0.95F);
        line(0.75F, 0.95F, -0.75F, 0.95F);
        line(-0.75F, 0.95F, -0.75F, -0.95F);
        line(-0.75F, -0.15F, 0.75F, -0.15F);
        list.AddRect({c.x - 0.55F * r, c.y - 0.72F * r}, {c.x - 0.1F * r, c.y - 0.4F * r}, ink, 0, 0,
                     1.4F * s);
        list.AddRect({c.x + 0.1F * r, c.y - 0.72F * r}, {c.x + 0.55F * r, c.y - 0.4F * r}, ink, 0, 0,
                     1.4F * s);
        return;
    case Panel::Plates: // a plate of two gangs
        line(-1, -0.6F, 1, -0.6F);
        line(1, -0.6F, 1, 0.6F);
        line(1, 0.6F, -1, 0.6F);
        line(-1, 0.6F, -1, -0.6F);
        list.AddCircle({c.x - 0.45F * r, c.y}, 0.3F * r, ink, 20, 1.7F * s);
        list.AddCircle({c.x + 0.45F * r, c.y}, 0.3F * r, ink, 20, 1.7F * s);
        return;
    case Panel::Switching: // a lamp, and the switch that works it
        list.AddCircle({c.x + 0.45F * r, c.y - 0.4F * r}, 0.45F * r, ink, 20, 1.7F * s);
        line(0.13F, -0.72F, 0.77F, -0.08F);
        line(0.77F, -0.72F, 0.13F, -0.08F);
        line(-0.95F, 0.9F, -0.35F, 0.3F);
        list.AddCircleFilled({c.x - 0.95F * r, c.y + 0.9F * r}, 2.4F * s, ink);
        line(-0.35F, 0.3F, -0.1F, 0.5F);
        line(-0.05F, 0.9F, 0.45F, 0.9F);
        line(0.45F, 0.9F, 0.45F, 0.1F);
        return;
    case Panel::Layers: // three sheets
        for (const float y : {-0.5F, 0.0F, 0.5F}) {
            line(-0.9F, y, 0, y - 0.42F);
            line(0, y - 0.42F, 0.9F, y);
            line(0.9F, y, 0, y + 0.42F);
            line(0, y + 0.42F, -0.9F, y);
        }
        return;
    case Panel::Sheets: // a sheet with its title block
        line(-0.9F, -0.7F, 0.9F, -0.7F);
        line(0.9F, -0.7F, 0.9F, 0.7F);
        line(0.9F, 0.7F, -0.9F, 0.7F);
        line(-0.9F, 0.7F, -0.9F, -0.7F);
        line(0.1F, 0.7F, 0.1F, 0.3F);
        line(0.1F, 0.3F, 0.9F, 0.3F);
        line(-0.6F, 0.3F, -0.2F, 0.3F);
        return;
    case Panel::Keys:
        line(-0.9F, -0.55F, 0.9F, -0.55F);
        line(0.9F, -0.55F, 0.9F, 0.55F);
        line(0.9F, 0.55F, -0.9F, 0.55F);
        line(-0.9F, 0.55F, -0.9F, -0.55F);
        line(-0.5F, 0.25F, 0.5F, 0.25F);
        for (const float x : {-0.55F, -0.18F, 0.18F, 0.55F})
            line(x, -0.2F, x + 0.02F, -0.2F);
        return;
    case Panel::None:
        return;
    }
}

bool step(State& state, const char* name, const char* hint, Panel panel, bool review, bool chosen) {
    const float s = state.scale;
    const ImVec2 size{ImGui::GetContentRegionAvail().x, 64 * s};
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::PushID(name);
    const bool clicked = ImGui::InvisibleButton("step", size);
    ImGui::PopID();
    place(state, std::string("rail:") + name);
    const bool hovered = ImGui::IsItemHovered();
    if (hovered) {
        ImGui::BeginTooltip();
        ImGui::TextUnformatted(hint);
        ImGui::EndTooltip();
    }
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const Tokens& t = *state.tokens;
    if (chosen || hovered)
        list.AddRectFilled({corner.x + 4 * s, corner.y + 2 * s},
                           {corner.x + size.x - 4 * s, corner.y + size.y - 2 * s},
                           packed(chosen ? t.accent : t.quiet, chosen ? 0.16F : 0.4F), 8 * s);
    const ImU32 ink = packed(chosen ? t.accent : t.ink);
    stepPicture(list, panel, review, {corner.x + size.x / 2, corner.y + 23 * s}, s, ink);
    ImGui::PushFont(state.fonts.small);
    const ImVec2 extent = ImGui::CalcTextSize(name);
    list.AddText({corner.x + (size.x - extent.x) / 2, corner.y + 42 * s}, ink, name);
    ImGui::PopFont();
    return clicked;
}

void toggle(State& state, Panel panel) {
    state.panel = state.panel == panel ? Panel::None : panel;
}

bool barButton(const State& state, const char* label, bool chosen, const char* hint) {
    const Tokens& t = *state.tokens;
    ImGui::PushStyleColor(ImGuiCol_Button, colour(chosen ? t.accent : t.raised));
    ImGui::PushStyleColor(ImGuiCol_ButtonHovered, colour(chosen ? t.accent : t.quiet, chosen ? 1.0F : 0.5F));
    ImGui::PushStyleColor(ImGuiCol_Text, colour(chosen ? t.on_accent : t.ink));
    const bool clicked = ImGui::Button(label);
    ImGui::PopStyleColor(3);
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", hint);
    return clicked;
}

void roomsPanel(State& state) {
    for (const auto& storey : state.plan().storeys) {
        ImGui::PushFont(state.fonts.small);
        ImGui::TextDisabled("%s", storey.name.c_str());
        ImGui::PopFont();
        for (const auto& room : state.plan().rooms) {
            if (room.storey != storey.id) continue;
            ImGui::PushID(room.id.c_str());
            bool shown = !state.hidden_rooms.contains(room.id);
            if (ImGui::Checkbox("##shown", &shown)) {
                if (shown)
                    state.hidden_rooms.erase(room.id);
                else
                    state.hidden_rooms.insert(room.id);
            }
            if (ImGui::IsItemHovered()) ImGui::SetTooltip("Show or hide everything of this room");
            ImGui::SameLine();
            ImGui::AlignTextToFramePadding();
            const std::string label = (room.letter.empty() ? "" : room.letter + "   ") + room.name;
            if (ImGui::Selectable(label.c_str(), room.id == state.room, 0, {0, ImGui::GetFrameHeight()}))
                enterRoom(state, room.id);
            place(state, "room:" + room.id);
            ImGui::PopID();
        }
        ImGui::Dummy({0, 4 * state.scale});
    }
}

struct LayerChoice {
    const char* word;
    plan::Visibility visibility;
};
constexpr std::array<LayerChoice, 3> kLayerChoices = {{{"Shown", plan::Visibility::Shown},
                                                       {"See-through", plan::Visibility::Ghosted},
                                                       {"Hidden", plan::Visibility::Hidden}}};

/// Where the middle of a choice's column stands, from the panel's left.
float layerColumn(const State& state, std::size_t choice) {
    return ImGui::GetWindowContentRegionMin().x + (158 + 78 * static_cast<float>(choice)) * state.scale;
}

void layerHeads(const State& state) {
    ImGui::PushFont(state.fonts.small);
    for (std::size_t i = 0; i < kLayerChoices.size(); ++i) {
        if (i > 0) ImGui::SameLine();
        ImGui::SetCursorPosX(layerColumn(state, i) - ImGui::CalcTextSize(kLayerChoices[i].word).x / 2);
        ImGui::TextDisabled("%s", kLayerChoices[i].word);
    }
    ImGui::PopFont();
}

/// What was clicked in the layer's row, if it is not so already.
const LayerChoice* layerRow(State& state, const plan::Layer& layer) {
    const LayerChoice* clicked = nullptr;
    ImGui::PushID(layer.id.c_str());
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(layer.name.empty() ? layer.id.c_str() : layer.name.c_str());
    for (std::size_t i = 0; i < kLayerChoices.size(); ++i) {
        const LayerChoice& choice = kLayerChoices[i];
        ImGui::SameLine();
        ImGui::SetCursorPosX(layerColumn(state, i) - ImGui::GetFrameHeight() / 2);
        const bool chosen = layer.visibility == choice.visibility;
        ImGui::PushID(choice.word);
        if (ImGui::RadioButton("##", chosen) && !chosen) clicked = &choice;
        ImGui::PopID();
        if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", choice.word);
        place(state, "layer:" + layer.id + ":" + choice.word);
    }
    ImGui::PopID();
    return clicked;
}

void layersPanel(State& state) {
    // Small controls, so that layers and what is laid over them are seen without scrolling.
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {4 * state.scale, 2 * state.scale});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 6 * state.scale});
    layerHeads(state);
    for (const auto& layer : state.plan().layers)
        if (const LayerChoice* clicked = layerRow(state, layer)) {
            // The command changes the list one is walking through: the next frame draws the rest.
            state.document.run(edit::setLayerVisibility(layer.id, clicked->visibility));
            break;
        }
    ImGui::PushFont(state.fonts.small);
    wrapped("See-through keeps a piece in sight and shows what is behind it.");
    ImGui::PopFont();
    if (state.seat == Seat::Designer) overlayRows(state);
    ImGui::PopStyleVar(2);
}

void keysPanel(State& state) {
    const auto row = [](const std::string& key, const std::string& what) {
        ImGui::TextUnformatted(key.c_str());
        ImGui::SameLine(150);
        ImGui::TextUnformatted(what.c_str());
    };
    row("W A S D, arrows", "Walk and turn; Shift hurries");
    row("Drag", "Look round");
    row("Click the floor", "Walk there");
    row("Click a plate", "Its card");
    row("Wheel", "Closer and wider");
    row("Enter / Q", "Agree / query the chosen plate");
    row("Ctrl+K", "Find any action");
    ImGui::Separator();
    for (const auto& action : actions(state))
        if (!action.key.empty()) row(action.key, action.name);
}
} // namespace

void drawRail(State& state) {
    if (step(state, "Rooms", "The rooms by storey: go to one, or hide it", Panel::Rooms, false,
             state.panel == Panel::Rooms))
        toggle(state, Panel::Rooms);
    if (step(state, "Furnish", "Furniture, doors and windows, lights, another room", Panel::Furnish, false,
             state.panel == Panel::Furnish))
        toggle(state, Panel::Furnish);
    if (step(state, "Plates", "Compose a plate, or take one from the library", Panel::Plates, false,
             state.panel == Panel::Plates))
        toggle(state, Panel::Plates);
    if (step(state, "Switch", "Which way works which lamp; proposals", Panel::Switching, false,
             state.panel == Panel::Switching))
        toggle(state, Panel::Switching);
    if (step(state, "Layers", "Show, see through or hide furniture, lamps, plates", Panel::Layers, false,
             state.panel == Panel::Layers))
        toggle(state, Panel::Layers);
    if (step(state, "Review", "Sit down with the homeowner: large answers, one plate at a time", Panel::None,
             true, state.seat == Seat::Homeowner)) {
        state.seat = Seat::Homeowner;
        state.panel = Panel::None;
    }
    if (step(state, "Sheets", "The sheets as they will print: look, print, export", Panel::Sheets, false,
             state.panel == Panel::Sheets)) {
        if (state.panel == Panel::Sheets)
            closeSheets(state);
        else
            openSheets(state);
    }
    if (step(state, "Keys", "What every key does", Panel::Keys, false, state.panel == Panel::Keys))
        toggle(state, Panel::Keys);
}

void drawTopBar(State& state) {
    const float s = state.scale;
    ImGui::AlignTextToFramePadding();
    ImGui::PushFont(state.fonts.strong);
    ImGui::TextUnformatted("Gangway");
    ImGui::PopFont();
    ImGui::SameLine(0, 16 * s);
    const std::string file =
        state.document.file().filename().string() + (state.document.changed() ? "  (unsaved)" : "");
    ImGui::TextDisabled("%s", file.c_str());
    ImGui::SameLine(0, 24 * s);
    if (state.seat == Seat::Designer) {
        if (barButton(state, "Open", false, "Open a plan (Ctrl+O)")) {
            state.browse_open = true;
            state.browse_save = false;
        }
        place(state, "open");
        ImGui::SameLine();
        ImGui::BeginDisabled(!state.document.changed());
        if (barButton(state, "Save", false, "Save the plan (Ctrl+S)")) savePlan(state);
        place(state, "save");
        ImGui::EndDisabled();
        ImGui::SameLine();
        ImGui::BeginDisabled(!state.document.canUndo());
        if (barButton(state, "Undo", false,
                      state.document.canUndo() ? state.document.undoName().c_str() : "Nothing to undo"))
            state.document.undo();
        ImGui::EndDisabled();
        ImGui::SameLine();
        ImGui::BeginDisabled(!state.document.canRedo());
        if (barButton(state, "Redo", false,
                      state.document.canRedo() ? state.document.redoName().c_str() : "Nothing to do again"))
            state.document.redo();
        ImGui::EndDisabled();
        ImGui::SameLine(0, 24 * s);
    }
    if (barButton(state, "Walk", state.stance == Stance::Walk, "Walk through the rooms (1)"))
        setStance(state, Stance::Walk);
    place(state, "walk");
    ImGui::SameLine(0, 4 * s);
    if (barButton(state, "Turn", state.stance == Stance::Orbit, "Turn about the house (2)"))
        setStance(state, Stance::Orbit);
    ImGui::SameLine(0, 4 * s);
    if (barButton(state, "Lid off", state.stance == Stance::LidOff,
                  "The storey from above, without its ceiling (3)"))
        setStance(state, Stance::LidOff);
    place(state, "lid-off");
    ImGui::SameLine(0, 4 * s);
    if (state.seat == Seat::Designer) {
        if (barButton(state, "Plan", state.stance == Stance::Plan, "The drawn plan of the storey (4)"))
            setStance(state, Stance::Plan);
        place(state, "plan");
    }
    const char* seat = state.seat == Seat::Designer ? "Homeowner view" : "Designer view";
    const float width = ImGui::CalcTextSize(seat).x + ImGui::CalcTextSize("Find  Ctrl+K").x + 90 * s;
    if (const auto* room = standingRoom(state); room != nullptr && state.stance == Stance::Walk) {
        ImGui::SameLine(0, 24 * s);
        ImGui::AlignTextToFramePadding();
        ImGui::TextDisabled("Face wall");
        for (std::size_t i = 0; i < room->walls.size(); ++i) {
            ImGui::SameLine(0, 4 * s);
            if (ImGui::GetCursorPosX() > ImGui::GetWindowWidth() - width - 48 * s)
                break; // the rest: F, or Ctrl+K
            if (barButton(state, room->walls[i].id.c_str(), false,
                          "Stand square to this wall (F: the nearest)"))
                faceWall(state, i);
            place(state, "wall:" + room->walls[i].id);
        }
    }
    ImGui::SameLine(ImGui::GetWindowWidth() - width);
    if (barButton(state, "Find  Ctrl+K", false, "Find any room, plate or action"))
        state.search_open = state.search_focus = true;
    ImGui::SameLine();
    if (barButton(state, seat, state.seat == Seat::Homeowner, "Change who sits at the screen (H)"))
        state.seat = state.seat == Seat::Designer ? Seat::Homeowner : Seat::Designer;
    place(state, "seat");
}

void drawSidePanel(State& state) {
    if (state.panel == Panel::None || state.panel == Panel::Sheets) return;
    const float s = state.scale;
    ImGui::SetNextWindowPos({state.stage.x + 16 * s, state.stage.y + 64 * s});
    ImGui::SetNextWindowSizeConstraints({320 * s, 0}, {420 * s, state.stage.height - 80 * s});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 10 * s);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1);
    ImGui::Begin("panel", nullptr,
                 ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                     ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoCollapse |
                     ImGuiWindowFlags_AlwaysAutoResize);
    const char* title = "";
    switch (state.panel) {
    case Panel::Rooms:
        title = "Rooms";
        break;
    case Panel::Furnish:
        title = "Furnish";
        break;
    case Panel::Plates:
        title = "Plates";
        break;
    case Panel::Switching:
        title = "Switching";
        break;
    case Panel::Layers:
        title = "Layers";
        break;
    case Panel::Keys:
        title = "Keys";
        break;
    case Panel::Sheets:
    case Panel::None:
        break;
    }
    ImGui::PushFont(state.fonts.large);
    ImGui::TextUnformatted(title);
    ImGui::PopFont();
    ImGui::Dummy({0, 2 * s});
    switch (state.panel) {
    case Panel::Rooms:
        roomsPanel(state);
        break;
    case Panel::Furnish:
        furnishPanel(state);
        break;
    case Panel::Plates:
        drawLibraryPanel(state);
        break;
    case Panel::Switching:
        tyingPanel(state);
        break;
    case Panel::Layers:
        layersPanel(state);
        break;
    case Panel::Keys:
        keysPanel(state);
        break;
    case Panel::Sheets:
    case Panel::None:
        break;
    }
    ImGui::End();
    ImGui::PopStyleVar(2);
}

} // namespace gangway::app
