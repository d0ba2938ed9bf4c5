// Opening, saving, recent files, and the question before work would be lost.
#include "app/panels.hpp"

#include "plan/io.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>

namespace gangway::app {

namespace {
std::filesystem::path recentList() {
    if (const char* folder = std::getenv("XDG_STATE_HOME"); folder != nullptr && *folder != '\0')
        return std::filesystem::path(folder) / "gangway" / "recent.txt";
    const char* home = std::getenv("HOME");
    return home == nullptr ? std::filesystem::path()
                           : std::filesystem::path(home) / ".local/state/gangway/recent.txt";
}

void remember(State& state, const std::filesystem::path& file) {
    std::error_code error;
    const auto absolute = std::filesystem::absolute(file, error);
    if (error) return;
    std::erase(state.recent, absolute);
    state.recent.insert(state.recent.begin(), absolute);
    if (state.recent.size() > 8) state.recent.resize(8);
    std::string text;
    for (const auto& entry : state.recent)
        text += entry.string() + "\n";
    const auto list = recentList();
    std::filesystem::create_directories(list.parent_path(), error);
    // A recent list that cannot be written is no loss worth a message.
    static_cast<void>(plan::writeBytesAtomically(text, list));
}

Message problems(const std::filesystem::path& file, const plan::Diagnostics& said) {
    Message message{"This plan could not be opened", {}};
    for (const auto& diagnostic : said)
        message.lines.push_back(plan::toLine(file.filename().string(), diagnostic));
    return message;
}
} // namespace

void loadRecent(State& state) {
    std::ifstream in(recentList());
    for (std::string line; std::getline(in, line) && state.recent.size() < 8;)
        if (!line.empty()) state.recent.emplace_back(line);
}

bool openPlan(State& state, const std::filesystem::path& file) {
    auto read = plan::readFile(file);
    if (!read) {
        state.message = problems(file, read.error());
        return false;
    }
    state.document = edit::Document(std::move(read->plan), file);
    state.derived = {};
    state.lamps = {};
    state.findings = {};
    state.tying = {};
    state.selected.clear();
    state.hovered.clear();
    state.faded.clear();
    state.hidden_rooms.clear();
    state.walk_way.clear();
    state.strip.room.clear();
    state.number_plate.clear();
    state.note_for.clear();
    state.drafts.clear();
    closeBench(state);
    remember(state, file);
    if (state.plan().rooms.empty()) {
        state.room.clear();
    } else {
        enterRoom(state, state.plan().rooms.front().id);
        state.flight.done = 1;
        state.camera = state.flight.to;
    }
    if (!read->warnings.empty()) {
        Message message = problems(file, read->warnings);
        message.title = "Opened, with something to look at";
        state.message = message;
    }
    state.ask_recover = !edit::journalFor(file).empty();
    return true;
}

bool savePlan(State& state, const std::filesystem::path& file) {
    const auto saved = state.document.save(file);
    if (!saved) {
        state.message = Message{
            "Not saved", {saved.error(), "Your changes are still here; choose another place to save them."}};
        return false;
    }
    if (!file.empty()) remember(state, file);
    say(state, "Saved " + state.document.file().filename().string());
    return true;
}

void requestOpen(State& state, const std::filesystem::path& file) {
    // Nobody should decide about unsaved work for the sake of a file that can't be opened.
    if (state.document.changed()) {
        if (const auto read = plan::readFile(file); !read) {
            state.message = problems(file, read.error());
            return;
        }
    }
    state.pending = {Pending::What::Open, file};
    state.ask_unsaved = state.document.changed();
    if (!state.ask_unsaved) goOn(state);
}

void requestClose(State& state) {
    state.pending = {Pending::What::Close, {}};
    state.ask_unsaved = state.document.changed();
    if (!state.ask_unsaved) goOn(state);
}

void goOn(State& state) {
    const Pending pending = std::exchange(state.pending, {});
    state.ask_unsaved = false;
    if (pending.what == Pending::What::Close) state.close = true;
    if (pending.what == Pending::What::Open) openPlan(state, pending.file);
}

} // namespace gangway::app
