// Edits from the keyboard and the search box: nudging, removing, copying, arranging, composing.
#include "app/edit_actions.hpp"

#include "app/placing.hpp"
#include "edit/arrange.hpp"
#include "edit/clipboard.hpp"
#include "edit/head_edits.hpp"
#include "edit/plate_edits.hpp"
#include "geometry/frames.hpp"

#include <GLFW/glfw3.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace gangway::app {

void runArranged(State& state, const std::expected<edit::Command, std::string>& command) {
    if (!command) {
        say(state, command.error());
        return;
    }
    state.document.run(*command);
    state.document.closeStep();
    say(state, state.document.undoName());
}

namespace {
bool nudge(State& state) {
    const ImGuiIO& io = ImGui::GetIO();
    const auto chosen = chosenPlates(state);
    if (chosen.empty()) return false;
    // 1, 5, 10 and one pitch of 71: the steps that positions are agreed in.
    const double step = io.KeyCtrl ? (io.KeyShift ? 71 : 5) : (io.KeyShift ? 10 : 1);
    const auto pressed = [](int key) { return ImGui::IsKeyPressed(key, true); };
    const double along = step * (pressed(GLFW_KEY_RIGHT) - pressed(GLFW_KEY_LEFT));
    const double up = step * (pressed(GLFW_KEY_UP) - pressed(GLFW_KEY_DOWN));
    if (along == 0 && up == 0) return false;
    state.document.run(edit::nudgePlates(state.plan(), chosen, along, up));
    say(state, state.document.undoName());
    return true;
}

edit::Selection selectionOf(const State& state) {
    edit::Selection selection;
    selection.plates = chosenPlates(state);
    if (state.thing && state.thing->kind == sheets::PlanThing::Furniture)
        selection.furniture.push_back(state.thing->id);
    if (state.thing && state.thing->kind == sheets::PlanThing::Luminaire)
        selection.luminaires.push_back(state.thing->id);
    return selection;
}

void copy(State& state) {
    const auto text = edit::copyToText(state.plan(), selectionOf(state));
    if (!text) {
        say(state, text.error());
        return;
    }
    ImGui::SetClipboardText(text->c_str());
    say(state, "Copied");
}

void paste(State& state) {
    const char* text = ImGui::GetClipboardText();
    if (text == nullptr || !edit::isClip(text)) {
        say(state, "Nothing that was copied here or in another plan is on the clipboard");
        return;
    }
    const std::size_t before = state.plan().plates.size();
    // Beside what it was copied from, so that the copy is seen.
    runArranged(state, edit::paste(state.plan(), text, {state.room, std::nullopt, {142, 0}}));
    if (state.plan().plates.size() <= before) return;
    choosePlate(state, {}, false);
    for (std::size_t i = before; i < state.plan().plates.size(); ++i)
        choosePlate(state, state.plan().plates[i].id, true);
}

void duplicate(State& state) {
    const std::size_t before = state.plan().plates.size();
    runArranged(state, edit::duplicate(state.plan(), selectionOf(state), {142, 0}));
    if (state.plan().plates.size() > before) choosePlate(state, state.plan().plates.back().id, false);
}

void removeChosen(State& state) {
    const auto chosen = chosenPlates(state);
    if (chosen.empty()) return;
    state.document.run(edit::removePlates(state.plan(), chosen));
    state.document.closeStep();
    choosePlate(state, {}, false);
    say(state, state.document.undoName());
}

void chooseWhere(State& state, const std::function<bool(const plan::Plate&)>& chosen) {
    choosePlate(state, {}, false);
    for (const auto& plate : state.plan().plates)
        if (chosen(plate)) choosePlate(state, plate.id, true);
    say(state, fmt::format("{} plates chosen", chosenPlates(state).size()));
}

bool controlEdits(State& state) {
    const auto pressed = [](int key) { return ImGui::IsKeyPressed(key, false); };
    if (pressed(GLFW_KEY_C)) copy(state);
    if (pressed(GLFW_KEY_V)) paste(state);
    if (pressed(GLFW_KEY_X)) {
        copy(state);
        removeChosen(state);
    }
    if (pressed(GLFW_KEY_D)) duplicate(state);
    if (pressed(GLFW_KEY_A))
        chooseWhere(state, [&state](const plan::Plate& plate) { return plate.room == state.room; });
    return nudge(state);
}

/// Furniture at the wall of the chosen plate or under it, to mirror about or to fill.
std::vector<const plan::Furniture*> piecesNear(const State& state, const plan::Plate& plate) {
    std::vector<const plan::Furniture*> pieces;
    for (const auto& choice : edit::keepChoices(state.plan(), plate, edit::Along::U)) {
        if (choice.kept.from != plan::KeptDistance::From::Furniture ||
            choice.kept.edge != plan::KeptDistance::Edge::Centre)
            continue;
        if (const auto* piece = plan::findFurniture(state.plan(), choice.kept.id)) pieces.push_back(piece);
    }
    return pieces;
}

bool oneOf(const std::string& kind, std::initializer_list<const char*> kinds) {
    return std::ranges::find(kinds, kind) != kinds.end();
}

/// Runs what makes new plates, chooses the first of them and says when it lies on another one.
void runCopies(State& state, const std::expected<edit::Command, std::string>& command) {
    const std::size_t before = state.plan().plates.size();
    runArranged(state, command);
    if (state.plan().plates.size() <= before) return;
    const plan::Plate made = state.plan().plates[before];
    choosePlate(state, made.id, false);
    const plan::Vec2 half = plateSize(state, made) * 0.5;
    for (const auto& other : state.plan().plates) {
        const plan::Vec2 reach = half + plateSize(state, other) * 0.5;
        const plan::Host& a = made.host;
        const plan::Host& b = other.host;
        const bool same_face = made.room == other.room && a.kind == b.kind && a.wall == b.wall &&
                               a.furniture == b.furniture && a.face == b.face;
        if (other.id != made.id && same_face && std::abs(a.u_mm - b.u_mm) < reach.x &&
            std::abs(a.v_mm - b.v_mm) < reach.y)
            say(state, fmt::format("{}: it lies over {}", state.document.undoName(),
                                   other.tag.empty() ? other.id : other.tag));
    }
}

void addOnePlateActions(std::vector<Action>& list, const State& state, const plan::Plate& plate) {
    const std::string id = plate.id;
    std::set<std::string> named; // two worktops at a wall are told apart by their place: nearest first
    for (const auto* piece : piecesNear(state, plate)) {
        const std::string name =
            named.insert(piece->name).second ? piece->name : piece->name + " " + piece->id;
        if (oneOf(piece->kind, {"bed", "bunk-bed", "sofa", "desk", "table", "dressing-table", "vanity",
                                "tv-stand", "tv-wall"}))
            list.push_back({"Mirror to the other side of the " + name, "", [id, on = piece->id](State& s) {
                                runCopies(s, edit::mirrorToOtherSide(s.plan(), s.catalogue, {id}, on));
                            }});
        if (!oneOf(piece->kind, {"worktop", "desk", "island", "table", "dressing-table", "vanity"})) continue;
        for (const int count : {2, 3, 4})
            list.push_back({fmt::format("Row of {} over the {}", count, name), "",
                            [id, count, on = piece->id](State& s) {
                                runCopies(s, edit::arrayOnFurniture(s.plan(), s.catalogue, id, on, count));
                            }});
    }
    list.push_back({"To the other side of the wall", "",
                    [id](State& s) { runArranged(s, edit::flipToOtherFace(s.plan(), s.catalogue, id)); }});
    for (const auto along : {edit::Along::U, edit::Along::V})
        if (along == edit::Along::U ? plate.kept_along.has_value() : plate.kept_height.has_value())
            list.push_back(
                {along == edit::Along::U ? "Cut the link along the wall" : "Cut the link in height", "",
                 [id, along](State& s) { runArranged(s, edit::cutLink(s.plan(), id, along)); }});
    if (plate.symbol_offset_mm)
        list.push_back({"Put the plan symbol back", "",
                        [id](State& s) { runArranged(s, edit::moveSymbol(s.plan(), id, std::nullopt)); }});
}

void addSeveralActions(std::vector<Action>& list, const std::vector<std::string>& chosen) {
    list.push_back({"Same height as the first", "", [chosen](State& s) {
                        runArranged(s, edit::alignHeightsWith(s.plan(), s.catalogue, chosen, chosen.front()));
                    }});
    list.push_back({"One above the other", "", [chosen](State& s) {
                        runArranged(s, edit::alignCentresWith(s.plan(), s.catalogue, chosen, chosen.front()));
                    }});
    if (chosen.size() > 2)
        list.push_back({"Space evenly", "", [chosen](State& s) {
                            runArranged(s, edit::distributeEvenly(s.plan(), s.catalogue, chosen));
                        }});
}
} // namespace

std::vector<Action> arrangeActions(const State& state) {
    std::vector<Action> list;
    const auto chosen = chosenPlates(state);
    if (chosen.empty() || state.seat != Seat::Designer) return list;
    if (chosen.size() > 1) addSeveralActions(list, chosen);
    const plan::Plate* plate = plan::findPlate(state.plan(), chosen.front());
    if (plate == nullptr) return list;
    if (chosen.size() == 1) addOnePlateActions(list, state, *plate);
    for (const auto& room : state.plan().rooms)
        if (room.id != plate->room)
            list.push_back({"Copy to the " + room.name, "", [chosen, id = room.id](State& s) {
                                runArranged(s, edit::copyToRoom(s.plan(), s.catalogue, chosen, id));
                            }});
    return list;
}

void addEditActions(std::vector<Action>& list, const State& state) {
    if (state.seat != Seat::Designer) return;
    list.push_back({"Plan of the storey", "4", [](State& s) { setStance(s, Stance::Plan); }});
    list.push_back({"Choose all plates of this room", "Ctrl+A", [](State& s) {
                        chooseWhere(s, [&s](const plan::Plate& plate) { return plate.room == s.room; });
                    }});
    if (const auto* plate = plan::findPlate(state.plan(), state.selected)) {
        const std::string kind = plate->modules.empty() ? std::string() : plate->modules.front().type;
        list.push_back({"Choose all plates like " + plateTitle(state, *plate), "", [kind](State& s) {
                            chooseWhere(s, [&](const plan::Plate& other) {
                                return !other.modules.empty() && other.modules.front().type == kind;
                            });
                        }});
        list.push_back({"Copy", "Ctrl+C", copy});
        list.push_back({"Duplicate", "Ctrl+D", duplicate});
        list.push_back({"Remove the chosen plates", "Delete", removeChosen});
    }
    list.push_back({"Paste", "Ctrl+V", paste});
    for (const auto& [units, name] : {std::pair{plan::DisplayUnits::Millimetres, "mm"},
                                      {plan::DisplayUnits::Centimetres, "cm"},
                                      {plan::DisplayUnits::Metres, "m"},
                                      {plan::DisplayUnits::FeetInches, "feet and inches"}})
        if (state.plan().units != units)
            list.push_back({fmt::format("Show lengths in {}", name), "", [units](State& s) {
                                runArranged(s, edit::setUnits(units));
                                s.number_version = 0;
                            }});
    for (auto& action : arrangeActions(state))
        list.push_back(std::move(action));
}

bool editKeys(State& state) {
    if (state.seat != Seat::Designer) return false;
    if (ImGui::GetIO().KeyCtrl) return controlEdits(state);
    if (ImGui::IsKeyPressed(GLFW_KEY_DELETE, false) && !chosenPlates(state).empty()) {
        removeChosen(state);
        return true;
    }
    return nudge(state);
}

bool endsEdit(State& state) {
    if (state.placing) {
        state.placing.reset();
        return true;
    }
    if (!state.drag.plate.empty()) {
        const bool moved = state.drag.moving;
        state.drag = {};
        if (moved) state.document.undo();
        return true;
    }
    if (state.typing) return true;
    if (tying(state)) return endsTying(state);
    if (state.thing) {
        state.thing.reset();
        return true;
    }
    if (!state.also.empty()) {
        state.also.clear();
        return true;
    }
    return false;
}

} // namespace gangway::app
