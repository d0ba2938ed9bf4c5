// The card of the selected plate: what it is, where it is, and the two answers.
#include "app/panels.hpp"

#include "drawing/dimensions.hpp"
#include "edit/length_input.hpp"
#include "geometry/frames.hpp"
#include "review/review.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app {

namespace {
const plan::Plate* selectedPlate(const State& state) {
    return state.selected.empty() ? nullptr : plan::findPlate(state.plan(), state.selected);
}

std::string printed(double value_mm) {
    return drawing::number(value_mm);
}

/// The two typed numbers follow the plate until someone types into them.
void refreshNumbers(State& state, const plan::Plate& plate) {
    if (state.number_plate == plate.id && state.number_version == state.document.version()) return;
    state.number_plate = plate.id;
    state.number_version = state.document.version();
    state.set_out_text = printed(plate.host.u_mm);
    state.height_text = printed(plate.host.v_mm);
    state.number_problem.clear();
}

void applyNumbers(State& state, const plan::Plate& plate) {
    const auto u = edit::parseLength(state.set_out_text);
    const auto v = edit::parseLength(state.height_text);
    state.number_problem = !u ? u.error() : (!v ? v.error() : "");
    if (!u || !v) return;
    const auto frame = geometry::hostFrame(state.plan(), plate.room, plate.host);
    if (!frame) return;
    if (*u < 0 || *u > frame->length_mm) {
        state.number_problem = fmt::format("the wall is {} long; give 0 to {}", printed(frame->length_mm),
                                           printed(frame->length_mm));
        return;
    }
    if (*v < 0 || *v > frame->height_mm) {
        state.number_problem = fmt::format("give a height from 0 to {}", printed(frame->height_mm));
        return;
    }
    if (*u == plate.host.u_mm && *v == plate.host.v_mm) return;
    state.document.run(edit::movePlate(state.plan(), plate.id, *u, *v));
    say(state, "Moved " + (plate.tag.empty() ? plate.id : plate.tag));
}

void numberField(State& state, const plan::Plate& plate, const char* id, std::string& text) {
    ImGui::SetNextItemWidth(144 * state.scale);
    const bool entered =
        ImGui::InputText(id, &text, ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    place(state, id);
    if (entered || ImGui::IsItemDeactivatedAfterEdit()) applyNumbers(state, plate);
}

void positions(State& state, const plan::Plate& plate) {
    const bool upright =
        plate.host.kind == plan::Host::Kind::Wall || plate.host.kind == plan::Host::Kind::Furniture;
    if (state.seat == Seat::Homeowner) {
        wrapped(hostSentence(state, plate));
        return;
    }
    refreshNumbers(state, plate);
    const float second = ImGui::GetCursorPosX() + 152 * state.scale;
    ImGui::PushFont(state.fonts.small);
    ImGui::TextDisabled("%s", upright ? "From left corner" : "East of the corner");
    ImGui::SameLine(second);
    ImGui::TextDisabled("%s", upright ? "Height above FFL" : "North of the corner");
    ImGui::PopFont();
    numberField(state, plate, "##set-out", state.set_out_text);
    ImGui::SameLine(second);
    numberField(state, plate, "##height", state.height_text);
    if (!state.number_problem.empty()) {
        ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->fault));
        wrapped(state.number_problem);
        ImGui::PopStyleColor();
    }
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped(hostSentence(state, plate) + ". Centre of the plate, finished face.");
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

void answers(State& state, const plan::Plate& plate) {
    const float s = state.scale;
    if (state.asking_note) {
        ImGui::TextUnformatted("What should we talk about?");
        if (ImGui::IsWindowAppearing() || ImGui::GetFrameCount() == state.note_frame + 1)
            ImGui::SetKeyboardFocusHere();
        ImGui::InputTextMultiline("##note", &state.query_note, {-1, 72 * s});
        place(state, "note");
        const float half = (ImGui::GetContentRegionAvail().x - 8 * s) / 2;
        if (largeButton(state, "Save the query", state.tokens->query, {half, 44 * s}, true))
            query(state, plate.id, state.query_note);
        place(state, "save-query");
        ImGui::SameLine();
        if (largeButton(state, "Back", state.tokens->soft_ink, {half, 44 * s}, false))
            state.asking_note = false;
        return;
    }
    const float half = (ImGui::GetContentRegionAvail().x - 8 * s) / 2;
    const auto now = stateOf(state, plate);
    if (largeButton(state, "Agree", state.tokens->agreed, {half, 56 * s}, now != review::State::Queried))
        agree(state, plate.id);
    place(state, "agree");
    ImGui::SameLine();
    if (largeButton(state, "Query", state.tokens->query, {half, 56 * s}, now == review::State::Queried)) {
        state.asking_note = true;
        state.note_frame = ImGui::GetFrameCount();
    }
    place(state, "query");
    ImGui::PushFont(state.fonts.small);
    ImGui::AlignTextToFramePadding();
    ImGui::TextDisabled("Answered by");
    ImGui::SameLine();
    ImGui::SetNextItemWidth(-1);
    ImGui::InputTextWithHint("##by", "name", &state.answering);
    place(state, "by");
    ImGui::PopFont();
}

void lastAnswer(const State& state, const plan::Plate& plate) {
    const auto* last = plan::latestAgreement(state.plan(), plate.id);
    if (last == nullptr) return;
    const auto now = stateOf(state, plate);
    std::string text = (last->answer == plan::Agreement::Answer::Agree ? "Agreed by " : "Queried by ") +
                       last->by + ", " + last->at.substr(0, 10);
    if (!last->note.empty()) text += ": \"" + last->note + "\"";
    if (now == review::State::Reopened) text += ". Changed since then, so it is open again.";
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped(text);
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

void heading(const State& state, const plan::Plate& plate) {
    const auto now = stateOf(state, plate);
    ImGui::PushFont(state.fonts.large);
    ImGui::TextUnformatted(plate.tag.empty() ? plate.id.c_str() : plate.tag.c_str());
    ImGui::SameLine();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float r = 9 * state.scale;
    const float line = ImGui::GetTextLineHeight();
    ImGui::PopFont();
    stateShape(state, *ImGui::GetWindowDrawList(), {at.x + r + 4, at.y + line / 2}, r, now);
    const std::string word(review::word(now));
    ImGui::GetWindowDrawList()->AddText({at.x + 2 * r + 14, at.y + (line - ImGui::GetTextLineHeight()) / 2},
                                        packed(stateColour(state, now)), word.c_str());
    ImGui::NewLine();
}
} // namespace

void drawCard(State& state) {
    const plan::Plate* plate = selectedPlate(state);
    if (plate == nullptr) return;
    const float s = state.scale;
    const float width = kCardWidth * s;
    ImGui::SetNextWindowPos({state.stage.x + state.stage.width - width - 16 * s, state.stage.y + 16 * s});
    ImGui::SetNextWindowSize({width, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 10 * s);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1);
    ImGui::Begin("card", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoFocusOnAppearing);
    place(state, "card");
    state.places["card"] = {ImGui::GetWindowPos().x, ImGui::GetWindowPos().y, ImGui::GetWindowSize().x,
                            ImGui::GetWindowSize().y};
    heading(state, *plate);
    const auto composed = catalogue::compose(state.catalogue, *plate);
    const float room_px = width - 32 * s;
    const float px = std::min({room_px / static_cast<float>(std::max(1.0, composed.width_mm)),
                               std::min(120 * s, state.stage.height * 0.16F) /
                                   static_cast<float>(std::max(1.0, composed.height_mm)),
                               1.35F * s});
    const float front_height = static_cast<float>(composed.height_mm) * px;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    plateFront(state, *ImGui::GetWindowDrawList(), *plate,
               {corner.x + room_px / 2, corner.y + front_height / 2 + 4 * s}, px);
    ImGui::Dummy({0, front_height + 12 * s});
    if (!plate->purpose.empty()) {
        ImGui::PushFont(state.fonts.strong);
        wrapped(plate->purpose);
        ImGui::PopFont();
    }
    wrapped(modulesSentence(state, *plate));
    positions(state, *plate);
    if (const auto covers = solidCovers(state, plate->id); !covers.empty()) {
        ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->query));
        wrapped("Behind the " + covers.front().name);
        ImGui::PopStyleColor();
        ImGui::SameLine();
        if (ImGui::SmallButton("Show it"))
            for (const auto& cover : covers)
                state.faded.insert(cover.id);
    }
    lastAnswer(state, *plate);
    ImGui::Dummy({0, 2 * s});
    if (state.seat == Seat::Designer) answers(state, *plate);
    ImGui::End();
    ImGui::PopStyleVar(2);
}

/// The homeowner's bar below the stage: one plate at a time, large answers, the next one.
void drawHomeownerBar(State& state) {
    const float s = state.scale;
    const review::Count count = state.derived.count;
    const int total = count.open + count.agreed + count.queried + count.reopened;
    const plan::Plate* plate = selectedPlate(state);
    ImGui::PushFont(state.fonts.large);
    ImGui::TextUnformatted(plate == nullptr ? "Walk around. Click a plate to answer for it."
                                            : plateTitle(state, *plate).c_str());
    ImGui::PopFont();
    ImGui::TextDisabled("%d of %d agreed, %d to talk about", count.agreed, total, count.queried);
    if (plate != nullptr) {
        if (state.asking_note) {
            ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - 380 * s);
            if (ImGui::GetFrameCount() == state.note_frame + 1) ImGui::SetKeyboardFocusHere();
            ImGui::InputTextWithHint("##home-note", "What should we talk about?", &state.query_note);
            place(state, "note");
            ImGui::SameLine();
            if (largeButton(state, "Save", state.tokens->query, {170 * s, 40 * s}, true))
                query(state, plate->id, state.query_note);
            place(state, "save-query");
            ImGui::SameLine();
            if (largeButton(state, "Back", state.tokens->soft_ink, {170 * s, 40 * s}, false))
                state.asking_note = false;
        } else {
            if (largeButton(state, "Looks right", state.tokens->agreed, {260 * s, 64 * s}, true))
                agree(state, plate->id);
            place(state, "agree");
            ImGui::SameLine();
            if (largeButton(state, "Talk about this", state.tokens->query, {260 * s, 64 * s}, true)) {
                state.asking_note = true;
                state.note_frame = ImGui::GetFrameCount();
            }
            place(state, "query");
        }
        ImGui::SameLine();
    }
    if (!state.asking_note && largeButton(state, "Next plate", state.tokens->ink, {200 * s, 64 * s}, false)) {
        if (const auto next = nextToAnswer(state, state.selected); !next.empty())
            showPlate(state, next);
        else
            say(state, "Every plate has an answer");
    }
    place(state, "next");
    ImGui::SameLine(ImGui::GetWindowWidth() - 276 * s);
    ImGui::BeginGroup();
    ImGui::TextDisabled("Answered by");
    ImGui::SetNextItemWidth(260 * s);
    ImGui::InputTextWithHint("##home-by", "your name", &state.answering);
    place(state, "by");
    ImGui::EndGroup();
}

} // namespace gangway::app
