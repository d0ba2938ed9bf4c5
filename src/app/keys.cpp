// Everything the window can do, as one list: for the keyboard, for the search box, for the help panel.
#include "app/edit_actions.hpp"
#include "app/panels.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace gangway::app {

namespace {
bool pressed(int key) {
    return ImGui::IsKeyPressed(key, false);
}

const char* word(plan::Visibility visibility) {
    switch (visibility) {
    case plan::Visibility::Shown:
        return "shown";
    case plan::Visibility::Ghosted:
        return "see-through";
    case plan::Visibility::Hidden:
        return "hidden";
    }
    return "";
}

void addFileActions(std::vector<Action>& list) {
    list.push_back({"Save", "Ctrl+S", [](State& s) { savePlan(s); }});
    list.push_back({"Save as", "Ctrl+Shift+S", [](State& s) { s.browse_open = s.browse_save = true; }});
    list.push_back({"Open a plan", "Ctrl+O", [](State& s) {
                        s.browse_open = true;
                        s.browse_save = false;
                    }});
    list.push_back({"Sheets: look at them, print, export", "Ctrl+P", openSheets});
    list.push_back({"Undo", "Ctrl+Z", [](State& s) {
                        if (s.document.canUndo()) {
                            const auto name = s.document.undoName();
                            s.document.undo();
                            say(s, "Undone: " + name);
                        }
                    }});
    list.push_back({"Redo", "Ctrl+Y", [](State& s) {
                        if (s.document.canRedo()) {
                            const auto name = s.document.redoName();
                            s.document.redo();
                            say(s, "Done again: " + name);
                        }
                    }});
}

void addViewActions(std::vector<Action>& list) {
    list.push_back({"Walk", "1", [](State& s) { setStance(s, Stance::Walk); }});
    list.push_back({"Turn about the house", "2", [](State& s) { setStance(s, Stance::Orbit); }});
    list.push_back(
        {"Lid off: see the storey from above", "3", [](State& s) { setStance(s, Stance::LidOff); }});
    list.push_back({"Next scene of light", "G", [](State& s) { nextScene(s); }});
    list.push_back({"All lamps on or off", "O", [](State& s) {
                        const auto levels = s.lamps.lights.levels(netOf(s));
                        setAllLights(s, levels.empty());
                    }});
    list.push_back({"Day or evening", "E", [](State& s) { toggleEvening(s); }});
    list.push_back({"Face this wall squarely", "F", [](State& s) { faceNearestWall(s); }});
    list.push_back(
        {"Rooms", "R", [](State& s) { s.panel = s.panel == Panel::Rooms ? Panel::None : Panel::Rooms; }});
    list.push_back({"Compose a plate", "P", [](State& s) {
                        if (s.seat == Seat::Designer) openBench(s, plan::Plate{}, BenchPurpose::New);
                    }});
    list.push_back({"Plate library", "", [](State& s) {
                        if (s.seat == Seat::Designer) s.panel = Panel::Plates;
                    }});
    list.push_back(
        {"Layers", "L", [](State& s) { s.panel = s.panel == Panel::Layers ? Panel::None : Panel::Layers; }});
    list.push_back({"Homeowner or designer", "H", [](State& s) {
                        s.seat = s.seat == Seat::Designer ? Seat::Homeowner : Seat::Designer;
                        s.panel = Panel::None;
                    }});
    list.push_back({"Next plate to answer", "N", [](State& s) {
                        if (const auto next = nextToAnswer(s, s.selected); !next.empty())
                            showPlate(s, next);
                        else
                            say(s, "Every plate has an answer");
                    }});
    list.push_back({"Light or dark screen", "T", otherTheme});
    list.push_back(
        {"Keys", "F1", [](State& s) { s.panel = s.panel == Panel::Keys ? Panel::None : Panel::Keys; }});
}

void addFindingActions(std::vector<Action>& list) {
    list.push_back({"Next finding", "J", [](State& s) { stepFinding(s, 1); }});
    list.push_back({"Finding before", "K", [](State& s) { stepFinding(s, -1); }});
}

bool controlKeys(State& state) {
    const bool shift = ImGui::GetIO().KeyShift;
    if (pressed(GLFW_KEY_S)) {
        if (shift)
            state.browse_open = state.browse_save = true;
        else
            savePlan(state);
    }
    if (pressed(GLFW_KEY_O)) {
        state.browse_open = true;
        state.browse_save = false;
    }
    if (pressed(GLFW_KEY_P)) openSheets(state);
    if (pressed(GLFW_KEY_K)) state.search_open = state.search_focus = true;
    if (pressed(GLFW_KEY_Q)) requestClose(state);
    const auto named = [&state](const char* name) {
        for (const auto& action : actions(state))
            if (action.name == name) action.run(state);
    };
    if (pressed(GLFW_KEY_Z)) named(shift ? "Redo" : "Undo");
    if (pressed(GLFW_KEY_Y)) named("Redo");
    return true;
}
} // namespace

void otherTheme(State& state) {
    state.tokens = state.tokens == &kLight ? &kDark : &kLight;
    state.strip.version = 0;
    applyColours(*state.tokens, state.scale);
}

std::vector<Action> actions(const State& state) {
    std::vector<Action> list;
    addFileActions(list);
    addViewActions(list);
    addSheetActions(list, state);
    if (state.seat == Seat::Designer) addFindingActions(list);
    addEditActions(list, state);
    for (const auto& room : state.plan().rooms)
        list.push_back({"Go to " + room.name, "", [id = room.id](State& s) { enterRoom(s, id); }});
    if (const auto* room = standingRoom(state))
        for (std::size_t i = 0; i < room->walls.size(); ++i)
            list.push_back({"Face wall " + room->walls[i].id + " of " + room->name, "",
                            [i](State& s) { faceWall(s, i); }});
    for (const auto& layer : state.plan().layers)
        list.push_back({"Layer " + layer.name + ": " + word(layer.visibility) + ", change", "",
                        [id = layer.id](State& s) { cycleLayer(s, id); }});
    for (const auto& plate : state.plan().plates)
        list.push_back(
            {"Show plate " + plateTitle(state, plate), "", [id = plate.id](State& s) { showPlate(s, id); }});
    return list;
}

void cycleLayer(State& state, const std::string& layer_id) {
    const plan::Layer* layer = plan::findLayer(state.plan(), layer_id);
    if (layer == nullptr) return;
    const auto next = static_cast<plan::Visibility>((static_cast<int>(layer->visibility) + 1) % 3);
    const std::string name = layer->name;
    state.document.run(edit::setLayerVisibility(layer_id, next));
    say(state, name + ": " + word(next));
}

namespace {
/// The list of actions is long; it is made only when a key could mean one.
bool anyActionKey() {
    for (int key = GLFW_KEY_0; key <= GLFW_KEY_Z; ++key)
        if (pressed(key)) return true;
    return pressed(GLFW_KEY_F1) || pressed(GLFW_KEY_ENTER) || pressed(GLFW_KEY_KP_ENTER);
}

/// What else Esc closes or lets go of, one thing at a time.
void closeOne(State& state) {
    if (state.panel != Panel::None)
        state.panel = Panel::None;
    else if (!state.findings.open.empty())
        closeFinding(state);
    else if (!state.faded.empty())
        state.faded.clear();
    else
        state.selected.clear();
}

/// With the sheets open: their own, and those that mean the document.
void sheetKeys(State& state) {
    if (state.message || state.ask_unsaved || state.ask_recover || state.search_open || state.browse_open)
        return;
    previewKeys(state);
    if (ImGui::GetIO().KeyCtrl && !ImGui::GetIO().WantTextInput) controlKeys(state);
}
} // namespace

void handleKeys(State& state) {
    const ImGuiIO& io = ImGui::GetIO();
    if (state.bench.open) {
        benchKeys(state);
        return;
    }
    if (state.panel == Panel::Sheets) {
        sheetKeys(state);
        return;
    }
    if (thingKeys(state)) return;
    if (pressed(GLFW_KEY_ESCAPE)) {
        if (askingNote(state))
            state.note_for.clear();
        else if (!endsEdit(state))
            closeOne(state);
    }
    if (io.WantTextInput || asked(state)) return;
    if (editKeys(state)) return;
    if (io.KeyCtrl) {
        controlKeys(state);
        return;
    }
    if (!anyActionKey()) return;
    for (const auto& action : actions(state)) {
        const int key = action.key == "F1" ? GLFW_KEY_F1 : (action.key.size() == 1 ? action.key[0] : 0);
        if (key != 0 && pressed(key)) {
            action.run(state);
            return;
        }
    }
    if (!state.selected.empty() && (pressed(GLFW_KEY_ENTER) || pressed(GLFW_KEY_KP_ENTER)))
        agree(state, state.selected);
    if (!state.selected.empty() && pressed(GLFW_KEY_Q)) askNote(state);
}

} // namespace gangway::app
