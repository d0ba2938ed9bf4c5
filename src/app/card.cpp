// The card of the selected plate: what it is, where it is, and the two answers.
#include "app/card_parts.hpp"
#include "app/panels.hpp"

#include "review/review.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app {

namespace {
const plan::Plate* selectedPlate(const State& state) {
    return state.selected.empty() ? nullptr : plan::findPlate(state.plan(), state.selected);
}

void positions(State& state, const plan::Plate& plate) {
    if (state.seat == Seat::Homeowner) {
        wrapped(hostSentence(state, plate));
        return;
    }
    const std::string id = plate.id;
    cardPlace(state, plate);
    const plan::Plate* now = plan::findPlate(state.plan(), id);
    if (now == nullptr) return;
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped(hostSentence(state, *now) + ". Centre of the plate, finished face.");
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

/// The note of a query, kept with its plate until it is saved.
void queryNote(State& state, const plan::Plate& plate) {
    const float s = state.scale;
    ImGui::TextUnformatted("What should we talk about?");
    if (ImGui::GetFrameCount() == state.note_frame + 1) ImGui::SetKeyboardFocusHere();
    bool save = ImGui::InputTextMultiline("##note", &state.drafts[plate.id], {-1, 72 * s},
                                          ImGuiInputTextFlags_EnterReturnsTrue);
    place(state, "note");
    const float half = (ImGui::GetContentRegionAvail().x - 8 * s) / 2;
    ImGui::BeginDisabled(!draftHasWords(state, plate.id));
    save |= largeButton(state, "Save the query", state.tokens->query, {half, 44 * s}, true);
    ImGui::EndDisabled();
    place(state, "save-query");
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("Ctrl+Enter");
    ImGui::SameLine();
    if (largeButton(state, "Back", state.tokens->soft_ink, {half, 44 * s}, false)) state.note_for.clear();
    place(state, "note-back");
    if (save) query(state, plate.id);
}

void answers(State& state, const plan::Plate& plate) {
    const float s = state.scale;
    if (askingNote(state)) {
        queryNote(state, plate);
    } else {
        const float half = (ImGui::GetContentRegionAvail().x - 8 * s) / 2;
        const auto now = stateOf(state, plate);
        if (largeButton(state, "Agree", state.tokens->agreed, {half, 56 * s}, now != review::State::Queried))
            agree(state, plate.id);
        place(state, "agree");
        ImGui::SameLine();
        if (largeButton(state, "Query", state.tokens->query, {half, 56 * s}, now == review::State::Queried))
            askNote(state);
        place(state, "query");
    }
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
/// What stands before the plate, and seeing past it.
void coverNote(State& state, const plan::Plate& plate) {
    const auto covers = frontCovers(state, plate.id);
    if (covers.empty()) return;
    const bool past = seenPast(state, covers);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(past ? state.tokens->soft_ink : state.tokens->query));
    wrapped((past ? "Seen past the " : "Behind the ") + covers.front().name);
    ImGui::PopStyleColor();
    ImGui::SameLine();
    if (ImGui::SmallButton(past ? "Put back" : "Show it")) seePast(state, covers, !past);
}
} // namespace

namespace {
/// What is under the numbers. Each line may change the plan: the plate is asked for anew.
void restOfCard(State& state, const plan::Plate& plate) {
    coverNote(state, plate);
    lastAnswer(state, plate);
    ImGui::Dummy({0, 2 * state.scale});
    if (state.seat != Seat::Designer) return;
    const std::string id = plate.id;
    cardArrange(state);
    if (const plan::Plate* now = plan::findPlate(state.plan(), id)) answers(state, *now);
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
    // Each plate's boxes are its own: what is being typed for one must not end up in the next.
    ImGui::PushID(plate->id.c_str());
    if (!state.also.empty() && state.seat == Seat::Designer) {
        drawSeveralCard(state);
        ImGui::PopID();
        ImGui::End();
        ImGui::PopStyleVar(2);
        return;
    }
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
    const std::string id = plate->id;
    wayRows(state, id);
    outletLines(state, id);
    positions(state, *plate);
    plate = plan::findPlate(state.plan(), id);
    if (plate != nullptr) restOfCard(state, *plate);
    ImGui::PopID();
    ImGui::End();
    ImGui::PopStyleVar(2);
}

namespace {
constexpr float kNameWidth = 260; ///< of the homeowner's name, pixels at scale 1

/// The note on one line, as wide as the name beside it leaves.
void homeNote(State& state, const plan::Plate& plate, float width) {
    const float s = state.scale;
    const float gap = ImGui::GetStyle().ItemSpacing.x;
    const float button = std::min(150 * s, width * 0.2F);
    ImGui::SetNextItemWidth(width - 2 * (button + gap));
    if (ImGui::GetFrameCount() == state.note_frame + 1) ImGui::SetKeyboardFocusHere();
    bool save = ImGui::InputTextWithHint("##home-note", "What should we talk about?", &state.drafts[plate.id],
                                         ImGuiInputTextFlags_EnterReturnsTrue);
    place(state, "note");
    ImGui::SameLine();
    ImGui::BeginDisabled(!draftHasWords(state, plate.id));
    save |= largeButton(state, "Save", state.tokens->query, {button, 40 * s}, true);
    ImGui::EndDisabled();
    place(state, "save-query");
    ImGui::SameLine();
    if (largeButton(state, "Back", state.tokens->soft_ink, {button, 40 * s}, false)) state.note_for.clear();
    place(state, "note-back");
    if (save) query(state, plate.id);
}

/// Two answers and the next plate, side by side in `width`.
void homeAnswers(State& state, const plan::Plate* plate, float width) {
    const float s = state.scale;
    const float gap = ImGui::GetStyle().ItemSpacing.x;
    const float answer = std::min(260 * s, (width - 2 * gap) * 0.36F);
    const float high = 64 * s;
    if (plate != nullptr) {
        if (largeButton(state, "Looks right", state.tokens->agreed, {answer, high}, true))
            agree(state, plate->id);
        place(state, "agree");
        ImGui::SameLine();
        if (largeButton(state, "Talk about this", state.tokens->query, {answer, high}, true)) askNote(state);
        place(state, "query");
        ImGui::SameLine();
    }
    const float next_width = std::min(200 * s, (width - 2 * gap) * 0.28F);
    if (largeButton(state, "Next plate", state.tokens->ink, {next_width, high}, false)) {
        if (const auto next = nextToAnswer(state, state.selected); !next.empty())
            showPlate(state, next);
        else
            say(state, "Every plate has an answer");
    }
    place(state, "next");
}
} // namespace

/// The homeowner's bar below the stage: one plate at a time, large answers, the next one.
void drawHomeownerBar(State& state) {
    const float s = state.scale;
    const review::Count count = state.derived.count;
    const int total = count.open + count.agreed + count.queried + count.reopened;
    const plan::Plate* plate = selectedPlate(state);
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::PushFont(state.fonts.large);
    const std::string title =
        plate == nullptr ? "Walk around. Click a plate to answer for it." : plateTitle(state, *plate);
    ImGui::TextUnformatted(linesWithin(*ImGui::GetFont(), title, width, 1).front().c_str());
    ImGui::PopFont();
    ImGui::TextDisabled("%d of %d agreed, %d to talk about", count.agreed, total, count.queried);
    const float left = width - kNameWidth * s - 32 * s;
    ImGui::BeginGroup();
    if (plate != nullptr && askingNote(state)) {
        ImGui::PushID(plate->id.c_str());
        homeNote(state, *plate, left);
        ImGui::PopID();
    } else {
        homeAnswers(state, plate, left);
    }
    ImGui::EndGroup();
    ImGui::SameLine(ImGui::GetWindowContentRegionMin().x + left + 32 * s);
    ImGui::BeginGroup();
    ImGui::TextDisabled("Answered by");
    ImGui::SetNextItemWidth(kNameWidth * s);
    ImGui::InputTextWithHint("##home-by", "your name", &state.answering);
    place(state, "by");
    ImGui::EndGroup();
}

} // namespace gangway::app
