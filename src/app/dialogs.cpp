// What must be answered before going on: messages, unsaved work, recovered work, choosing a file, and the
// search box for every action.
#include "app/panels.hpp"

#include "plan/io.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <GLFW/glfw3.h>

#include <algorithm>

namespace gangway::app {

namespace {
/// A modal in the middle of the window; call ImGui::EndPopup when true.
bool beginModal(const State& state, const char* name, float width) {
    const ImGuiViewport& view = *ImGui::GetMainViewport();
    ImGui::SetNextWindowPos({view.Pos.x + view.Size.x / 2, view.Pos.y + view.Size.y * 0.42F},
                            ImGuiCond_Always, {0.5F, 0.5F});
    ImGui::SetNextWindowSize({width * state.scale, 0});
    if (!ImGui::IsPopupOpen(name)) ImGui::OpenPopup(name);
    return ImGui::BeginPopupModal(name, nullptr,
                                  ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize |
                                      ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings);
}

void title(const State& state, const char* text) {
    ImGui::PushFont(state.fonts.large);
    wrapped(text);
    ImGui::PopFont();
    ImGui::Dummy({0, 4 * state.scale});
}

void messageBox(State& state) {
    if (!state.message) return;
    if (!beginModal(state, "message", 680)) return;
    title(state, state.message->title.c_str());
    ImGui::BeginChild(
        "lines",
        {0, std::min(320.0F, 60.0F + 44.0F * static_cast<float>(state.message->lines.size())) * state.scale});
    for (const auto& line : state.message->lines)
        wrapped(line);
    ImGui::EndChild();
    if (largeButton(state, "Close", state.tokens->accent, {140 * state.scale, 40 * state.scale}, true) ||
        ImGui::IsKeyPressed(GLFW_KEY_ESCAPE)) {
        state.message.reset();
        ImGui::CloseCurrentPopup();
    }
    place(state, "message-close");
    ImGui::EndPopup();
}

void unsavedQuestion(State& state) {
    if (!state.ask_unsaved || state.message) return;
    if (!beginModal(state, "unsaved", 520)) return;
    title(state, "Save what you changed?");
    wrapped(
        fmt::format("'{}' has changes that are not saved yet.", state.document.file().filename().string()));
    ImGui::Dummy({0, 8 * state.scale});
    const ImVec2 size{150 * state.scale, 44 * state.scale};
    bool close = false;
    if (largeButton(state, "Save", state.tokens->accent, size, true)) {
        close = true;
        if (savePlan(state))
            goOn(state);
        else
            state.ask_unsaved = false;
    }
    place(state, "unsaved-save");
    ImGui::SameLine();
    if (largeButton(state, "Don't save", state.tokens->fault, size, false)) {
        close = true;
        edit::discardJournal(state.document.file());
        goOn(state);
    }
    place(state, "unsaved-discard");
    ImGui::SameLine();
    if (largeButton(state, "Stay here", state.tokens->ink, size, false) ||
        ImGui::IsKeyPressed(GLFW_KEY_ESCAPE)) {
        close = true;
        state.ask_unsaved = false;
        state.pending = {};
    }
    place(state, "unsaved-stay");
    if (close) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
}

void recoverQuestion(State& state) {
    if (!state.ask_recover || state.message) return;
    if (!beginModal(state, "recover", 560)) return;
    title(state, "Unsaved work from last time was found");
    wrapped("Gangway ended before the last changes to this plan were saved. They were kept beside it.");
    ImGui::Dummy({0, 8 * state.scale});
    const ImVec2 size{200 * state.scale, 44 * state.scale};
    const auto file = state.document.file();
    if (largeButton(state, "Bring it back", state.tokens->accent, size, true)) {
        if (auto read = plan::readFile(edit::journalFor(file))) {
            state.document = edit::Document::recovered(std::move(read->plan), file);
            state.derived = {};
            state.lamps = {};
            state.findings = {};
            state.tying = {};
            state.strip.room.clear();
        } else {
            state.message =
                Message{"The kept work could not be read", {plan::toLine("journal", read.error().front())}};
        }
        state.ask_recover = false;
        ImGui::CloseCurrentPopup();
    }
    place(state, "recover-yes");
    ImGui::SameLine();
    if (largeButton(state, "Leave it", state.tokens->ink, size, false)) {
        edit::discardJournal(file);
        state.ask_recover = false;
        ImGui::CloseCurrentPopup();
    }
    place(state, "recover-no");
    ImGui::EndPopup();
}

/// Folders and plans of a folder, folders first.
std::vector<std::filesystem::directory_entry> entriesOf(const std::filesystem::path& folder) {
    std::vector<std::filesystem::directory_entry> list;
    std::error_code error;
    for (std::filesystem::directory_iterator
             it(folder, std::filesystem::directory_options::skip_permission_denied, error),
         end;
         !error && it != end; it.increment(error)) {
        const std::string name = it->path().filename().string();
        std::error_code ignored;
        if (name.starts_with('.')) continue;
        if (it->is_directory(ignored) || name.ends_with(".plan.json")) list.push_back(*it);
    }
    std::sort(list.begin(), list.end(), [](const auto& a, const auto& b) {
        std::error_code ignored;
        const bool folder_a = a.is_directory(ignored);
        const bool folder_b = b.is_directory(ignored);
        return folder_a != folder_b ? folder_a : a.path().filename() < b.path().filename();
    });
    return list;
}

void choose(State& state, const std::filesystem::path& file) {
    state.browse_open = false;
    if (state.browse_save) {
        auto target = file;
        if (!target.string().ends_with(".plan.json")) target += ".plan.json";
        savePlan(state, target);
    } else {
        requestOpen(state, file);
    }
}

void browser(State& state) {
    if (!state.browse_open || state.message || state.ask_unsaved) return;
    if (state.browse_folder.empty()) {
        std::error_code error;
        const auto here = std::filesystem::absolute(state.document.file(), error).parent_path();
        state.browse_folder = (error || here.empty() ? std::filesystem::current_path() : here).string();
        state.browse_path = state.document.file().string();
    }
    if (!beginModal(state, "browse", 760)) return;
    title(state, state.browse_save ? "Save the plan as" : "Open a plan");
    ImGui::SetNextItemWidth(-1);
    const bool entered =
        ImGui::InputText("##path", &state.browse_path,
                         ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    place(state, "browse-path");
    ImGui::TextDisabled("%s", state.browse_folder.c_str());
    ImGui::BeginChild("entries", {0, 260 * state.scale}, true);
    const std::filesystem::path folder = state.browse_folder;
    if (ImGui::Selectable("..  (one folder up)")) state.browse_folder = folder.parent_path().string();
    for (const auto& entry : entriesOf(folder)) {
        std::error_code ignored;
        const bool is_folder = entry.is_directory(ignored);
        const std::string name = entry.path().filename().string() + (is_folder ? "/" : "");
        if (!ImGui::Selectable(name.c_str(), state.browse_path == entry.path().string(),
                               ImGuiSelectableFlags_AllowDoubleClick))
            continue;
        if (is_folder)
            state.browse_folder = entry.path().string();
        else
            state.browse_path = entry.path().string();
    }
    ImGui::EndChild();
    if (!state.browse_save && !state.recent.empty()) {
        ImGui::TextDisabled("Recent");
        for (std::size_t i = 0; i < std::min<std::size_t>(4, state.recent.size()); ++i)
            if (ImGui::Selectable(state.recent[i].string().c_str()))
                state.browse_path = state.recent[i].string();
    }
    ImGui::Dummy({0, 4 * state.scale});
    const ImVec2 size{150 * state.scale, 44 * state.scale};
    const bool go = largeButton(state, state.browse_save ? "Save" : "Open", state.tokens->accent, size, true);
    place(state, "browse-go");
    ImGui::SameLine();
    const bool cancel =
        largeButton(state, "Cancel", state.tokens->ink, size, false) || ImGui::IsKeyPressed(GLFW_KEY_ESCAPE);
    if (cancel) state.browse_open = false;
    if ((go || entered) && !state.browse_path.empty()) choose(state, state.browse_path);
    if (!state.browse_open) {
        state.browse_folder.clear();
        ImGui::CloseCurrentPopup();
    }
    ImGui::EndPopup();
}

bool matches(const std::string& name, const std::string& typed) {
    std::size_t at = 0;
    const auto lower = [](char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); };
    for (const char c : name)
        if (at < typed.size() && lower(c) == lower(typed[at])) ++at;
    return at == typed.size();
}

bool contains(const std::string& name, const std::string& typed) {
    return std::search(name.begin(), name.end(), typed.begin(), typed.end(), [](char a, char b) {
               return std::tolower(static_cast<unsigned char>(a)) ==
                      std::tolower(static_cast<unsigned char>(b));
           }) != name.end();
}

/// What has the typed words in its name; only when nothing has, what has its letters in order.
std::vector<Action> actionsNamed(const State& state, const std::string& typed) {
    auto all = actions(state);
    std::vector<Action> found;
    for (auto& action : all)
        if (contains(action.name, typed)) found.push_back(action);
    if (!found.empty()) return found;
    for (auto& action : all)
        if (matches(action.name, typed)) found.push_back(action);
    return found;
}
} // namespace

void drawSearch(State& state) {
    if (!state.search_open || state.message || state.ask_unsaved) return;
    if (!beginModal(state, "search", 560)) return;
    if (state.search_focus) ImGui::SetKeyboardFocusHere();
    state.search_focus = false;
    ImGui::SetNextItemWidth(-1);
    const bool entered = ImGui::InputTextWithHint("##search", "A room, a plate, something to do",
                                                  &state.search, ImGuiInputTextFlags_EnterReturnsTrue);
    std::vector<Action> found = actionsNamed(state, state.search);
    bool done = ImGui::IsKeyPressed(GLFW_KEY_ESCAPE);
    ImGui::BeginChild("found", {0, 300 * state.scale});
    if (found.empty())
        wrapped("Nothing is called that. Try a room's name, a plate's tag, or a word such as Save.");
    for (std::size_t i = 0; i < found.size() && i < 60; ++i) {
        ImGui::PushID(static_cast<int>(i));
        const bool clicked = ImGui::Selectable(found[i].name.c_str(), i == 0 && !state.search.empty());
        if (!found[i].key.empty()) {
            ImGui::SameLine(ImGui::GetContentRegionAvail().x - 90 * state.scale);
            ImGui::TextDisabled("%s", found[i].key.c_str());
        }
        ImGui::PopID();
        if (clicked || (entered && i == 0)) {
            done = true;
            found[i].run(state);
            break;
        }
    }
    ImGui::EndChild();
    if (done) {
        state.search_open = false;
        state.search.clear();
        ImGui::CloseCurrentPopup();
    }
    ImGui::EndPopup();
}

void drawDialogs(State& state) {
    drawSearch(state);
    browser(state);
    recoverQuestion(state);
    unsavedQuestion(state);
    messageBox(state);
}

} // namespace gangway::app
