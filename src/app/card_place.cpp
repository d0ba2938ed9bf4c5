// Where the chosen plate is, in typed numbers: from a corner, an edge or another plate, and kept if wanted.
#include "app/card_parts.hpp"

#include "app/edit_actions.hpp"
#include "app/placing.hpp"
#include "edit/arrange.hpp"
#include "edit/number_shown.hpp"
#include "edit/plate_edits.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {
using edit::Along;
using From = plan::KeptDistance::From;

bool same(const plan::KeptDistance& a, const plan::KeptDistance& b) {
    return a.from == b.from && a.id == b.id && a.edge == b.edge;
}

/// One direction of the card: what is measured from, the number, and the link.
struct Side {
    Along along = Along::U;
    const char* name = "";
    const char* field = "";
    std::optional<plan::KeptDistance>* measured = nullptr;
    std::string* text = nullptr;
    std::string* problem = nullptr;
};

Side sideOf(State& state, Along along) {
    if (along == Along::U)
        return {along,
                "Along the wall, from",
                "##set-out",
                &state.measured_along,
                &state.set_out_text,
                &state.set_out_problem};
    return {
        along, "Height, from", "##height", &state.measured_height, &state.height_text, &state.height_problem};
}

const std::optional<plan::KeptDistance>& keptOf(const plan::Plate& plate, Along along) {
    return along == Along::U ? plate.kept_along : plate.kept_height;
}

/// What the number starts from: what was chosen in the list, else the link, else the left corner or the
/// floor.
const edit::KeepChoice* chosenStart(const std::vector<edit::KeepChoice>& choices, const Side& side,
                                    const plan::Plate& plate) {
    const auto& kept = keptOf(plate, side.along);
    for (const std::optional<plan::KeptDistance>* wanted :
         {static_cast<const std::optional<plan::KeptDistance>*>(side.measured), &kept})
        if (*wanted)
            for (const auto& choice : choices)
                if (same(choice.kept, **wanted)) return &choice;
    const From usual = side.along == Along::U ? From::LeftCorner : From::Floor;
    for (const auto& choice : choices)
        if (choice.kept.from == usual) return &choice;
    return choices.empty() ? nullptr : &choices.front();
}

/// "left corner" for "the left corner": the list is narrow.
std::string shortName(const std::string& name) {
    return name.starts_with("the ") ? name.substr(4) : name;
}

void startList(State& state, const Side& side, const std::vector<edit::KeepChoice>& choices,
               const edit::KeepChoice& now, float width) {
    ImGui::SetNextItemWidth(width);
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding,
                        {ImGui::GetStyle().FramePadding.x, ImGui::GetStyle().FramePadding.y + state.scale});
    const std::string id = fmt::format("{}-from", side.field);
    if (ImGui::BeginCombo(id.c_str(), shortName(now.name).c_str(), ImGuiComboFlags_HeightLarge)) {
        for (const auto& choice : choices) {
            const std::string label =
                fmt::format("{}   {}", choice.name,
                            edit::shownLength(std::abs(choice.kept.distance_mm), state.plan().units));
            if (ImGui::Selectable(label.c_str(), same(choice.kept, now.kept))) {
                *side.measured = choice.kept;
                state.number_version = 0;
            }
            place(state, "from:" + choice.name);
        }
        ImGui::EndCombo();
    }
    ImGui::PopStyleVar();
    ImGui::PopFont();
    place(state, side.along == Along::U ? "from-along" : "from-height");
}

/// A chain link that is closed while the distance is kept.
bool linkButton(State& state, const char* id, bool closed) {
    const float s = state.scale;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float side = ImGui::GetFrameHeight();
    const bool clicked = ImGui::InvisibleButton(id, {side + 6 * s, side});
    place(state, id + 2);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(closed ? state.tokens->accent : state.tokens->soft_ink);
    if (ImGui::IsItemHovered()) {
        list.AddRectFilled(corner, {corner.x + side + 6 * s, corner.y + side},
                           packed(state.tokens->quiet, 0.5F), 6 * s);
        ImGui::SetTooltip("%s", closed ? "Kept: the plate follows. Click to cut the link."
                                       : "Keep this distance, so that the plate follows");
    }
    const ImVec2 c{corner.x + side / 2 + 3 * s, corner.y + side / 2};
    const float gap = closed ? 3.0F : 5.5F;
    for (const float way : {-1.0F, 1.0F})
        list.AddRect({c.x + way * gap * s - 5 * s, c.y - 3 * s}, {c.x + way * gap * s + 5 * s, c.y + 3 * s},
                     ink, 3 * s, 0, 1.7F * s);
    return clicked;
}

void sideRow(State& state, const plan::Plate& plate, Along along, bool fresh) {
    const Side side = sideOf(state, along);
    const auto choices = edit::keepChoices(state.plan(), plate, along);
    const edit::KeepChoice* found = chosenStart(choices, side, plate);
    if (found == nullptr) return;
    const edit::KeepChoice start = *found;
    if (fresh) {
        *side.text = edit::shownLength(std::abs(start.kept.distance_mm), state.plan().units);
        side.problem->clear();
    }
    const float s = state.scale;
    const auto& kept = keptOf(plate, along);
    const bool is_kept = kept && same(*kept, start.kept);
    ImGui::PushFont(state.fonts.small);
    ImGui::TextDisabled("%s", side.name);
    ImGui::PopFont();
    ImGui::SetNextItemWidth(92 * s);
    const bool entered = ImGui::InputText(
        side.field, side.text, ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    place(state, side.field);
    const bool left = ImGui::IsItemDeactivatedAfterEdit();
    ImGui::SameLine(0, 6 * s);
    startList(state, side, choices, start, ImGui::GetContentRegionAvail().x - 44 * s);
    ImGui::SameLine(0, 4 * s);
    const bool link = linkButton(state, along == Along::U ? "##link-along" : "##link-height", is_kept);
    const std::string shown = edit::shownLength(std::abs(start.kept.distance_mm), state.plan().units);
    if ((entered || left) && *side.text != shown)
        *side.problem = typeDistance(state, plate.id, along, start.kept, *side.text, is_kept);
    else if (link && is_kept)
        runArranged(state, edit::cutLink(state.plan(), plate.id, along));
    else if (link)
        runArranged(state, edit::keepDistance(state.plan(), plate.id, start.kept, along));
    if (side.problem->empty()) return;
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->fault));
    wrapped(*side.problem);
    ImGui::PopStyleColor();
}

bool smallButton(State& state, const char* label, const char* name) {
    ImGui::PushFont(state.fonts.small);
    const bool clicked = ImGui::Button(label);
    ImGui::PopFont();
    place(state, name);
    return clicked;
}
} // namespace

void cardPlace(State& state, const plan::Plate& plate) {
    const bool fresh = state.number_plate != plate.id || state.number_version != state.document.version();
    if (state.number_plate != plate.id) {
        state.measured_along.reset();
        state.measured_height.reset();
    }
    state.number_plate = plate.id;
    state.number_version = state.document.version();
    sideRow(state, plate, Along::U, fresh);
    // The plate may be another one now: a typed number ran a command.
    if (const auto* again = plan::findPlate(state.plan(), state.selected))
        sideRow(state, *again, Along::V, fresh);
}

void cardArrange(State& state) {
    const float s = state.scale;
    const auto* first = plan::findPlate(state.plan(), state.selected);
    if (first != nullptr && state.also.empty()) {
        if (smallButton(state, "Compose", "compose")) openBench(state, *first, BenchPurpose::Change);
        ImGui::SameLine(0, 6 * s);
    }
    if (smallButton(state, "Arrange", "arrange")) ImGui::OpenPopup("arrange-list");
    ImGui::SetNextWindowSizeConstraints({220 * s, 0}, {420 * s, 420 * s});
    if (ImGui::BeginPopup("arrange-list")) {
        const auto list = arrangeActions(state);
        const auto line = [&state](const Action& action) {
            if (ImGui::Selectable(action.name.c_str())) action.run(state);
            place(state, "arrange:" + action.name);
        };
        const auto copies = [](const Action& action) { return action.name.starts_with("Copy to"); };
        for (const auto& action : list)
            if (!copies(action)) line(action);
        if (ImGui::BeginMenu("Copy to another room")) {
            for (const auto& action : list)
                if (copies(action)) line(action);
            ImGui::EndMenu();
        }
        place(state, "arrange:Copy to another room");
        ImGui::EndPopup();
    }
    ImGui::SameLine(0, 6 * s);
    const auto chosen = chosenPlates(state);
    if (smallButton(state, "Remove", "remove-plates")) {
        state.document.run(edit::removePlates(state.plan(), chosen));
        state.document.closeStep();
        choosePlate(state, {}, false);
        say(state, state.document.undoName());
    }
}

void drawSeveralCard(State& state) {
    const auto chosen = chosenPlates(state);
    ImGui::PushFont(state.fonts.large);
    ImGui::Text("%zu plates", chosen.size());
    ImGui::PopFont();
    std::string tags;
    for (const auto& id : chosen)
        if (const auto* plate = plan::findPlate(state.plan(), id))
            tags += (tags.empty() ? "" : ", ") + (plate->tag.empty() ? plate->id : plate->tag);
    wrapped(tags);
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped("The first one is what the others are put in order with. Arrow keys move all of them.");
    ImGui::PopStyleColor();
    ImGui::PopFont();
    ImGui::Dummy({0, 2 * state.scale});
    for (const auto& action : arrangeActions(state)) {
        if (action.name.starts_with("Copy to")) continue;
        if (ImGui::Button(action.name.c_str(), {-1, 0})) {
            action.run(state);
            return;
        }
        place(state, "arrange:" + action.name);
    }
    cardArrange(state);
}

} // namespace gangway::app
