// What the homeowner says about a plate, given with a name and a time.
#include "app/panels.hpp"

#include "review/review.hpp"

#include <fmt/chrono.h>

namespace gangway::app {

std::string nowUtc() {
    const auto now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(now));
}

namespace {
bool named(State& state) {
    if (state.answering.empty()) say(state, "Say first who answers: type a name under \"Answered by\"");
    return !state.answering.empty();
}
} // namespace

void agree(State& state, const std::string& plate_id) {
    if (!named(state)) return;
    state.document.run(edit::agreePlate(state.plan(), plate_id, state.answering, nowUtc()));
    const auto* plate = plan::findPlate(state.plan(), plate_id);
    say(state, "Agreed " + (plate == nullptr || plate->tag.empty() ? plate_id : plate->tag));
    state.note_for.clear();
}

void query(State& state, const std::string& plate_id) {
    if (!draftHasWords(state, plate_id)) {
        say(state, "Type what to talk about");
        return;
    }
    if (!named(state)) return;
    state.document.run(
        edit::queryPlate(state.plan(), plate_id, state.answering, nowUtc(), state.drafts[plate_id]));
    state.drafts.erase(plate_id);
    state.note_for.clear();
    say(state, "Noted to talk about");
}

bool draftHasWords(const State& state, const std::string& plate_id) {
    const auto draft = state.drafts.find(plate_id);
    return draft != state.drafts.end() && draft->second.find_first_not_of(" \t\r\n") != std::string::npos;
}

void askNote(State& state) {
    state.note_for = state.selected;
    state.note_frame = ImGui::GetFrameCount();
}

bool askingNote(const State& state) {
    return !state.note_for.empty() && state.note_for == state.selected;
}

void keepNoteWithItsPlate(State& state) {
    if (!askingNote(state)) state.note_for.clear();
}

std::string nextToAnswer(const State& state, const std::string& from) {
    std::vector<const plan::Plate*> order;
    for (const auto& room : state.plan().rooms)
        for (const auto& plate : state.plan().plates)
            if (plate.room == room.id) order.push_back(&plate);
    std::size_t start = 0;
    for (std::size_t i = 0; i < order.size(); ++i)
        if (order[i]->id == from) start = i + 1;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const plan::Plate* plate = order[(start + i) % order.size()];
        const auto now = stateOf(state, *plate);
        if (plate->id != from && (now == review::State::Open || now == review::State::Reopened))
            return plate->id;
    }
    return {};
}

} // namespace gangway::app
