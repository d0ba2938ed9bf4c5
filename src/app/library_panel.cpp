// The library's panel: composed plates of the user's own file and of the plan, to place, edit and exchange.
#include "app/plate_bench_parts.hpp"

#include "app/plate_front.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <filesystem>
#include <span>

namespace gangway::app {

namespace {
using bench::choiceButton;
using bench::hint;

enum class Wish { None, Place, Copy, Edit, Remove, Keep };

catalogue::Library ofPlan(const State& state) {
    return {state.plan().library, state.plan().formats, {}};
}

/// A library's plates and what is needed to draw them.
struct Shown {
    catalogue::Library library;
    catalogue::Catalogue catalogue;
    bool mine = true;
};

Shown shownOf(const State& state, catalogue::Library library, bool mine) {
    plan::Plan own;
    own.formats = library.formats;
    return {std::move(library), catalogue::withOwn(state.shipped, own), mine};
}

void drawLibraryFront(const State& state, const Shown& shown, const plan::LibraryPlate& stored, ImVec2 low,
                      ImVec2 size) {
    const auto composed = catalogue::compose(shown.catalogue, catalogue::fromLibrary(stored));
    const float px =
        std::min({size.x / static_cast<float>(std::max(1.0, composed.width_mm)),
                  size.y / static_cast<float>(std::max(1.0, composed.height_mm)), 0.62F * state.scale});
    drawFront(*ImGui::GetWindowDrawList(), *state.tokens, shown.catalogue, composed,
              {low.x + size.x / 2, low.y + size.y / 2}, px);
}

bool smallButton(const State& state, const char* label) {
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {7 * state.scale, 4 * state.scale});
    const bool clicked = choiceButton(state, label, false);
    ImGui::PopStyleVar();
    return clicked;
}

/// Front, name and category on their card; where the words begin.
float rowCard(State& state, const Shown& shown, const plan::LibraryPlate& stored, ImVec2 corner,
              ImVec2 size) {
    const float s = state.scale;
    const float front = std::clamp(size.x - 266 * s, 80 * s, 116 * s);
    const float left = corner.x + front + 8 * s;
    const float room = corner.x + size.x - left - 10 * s;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 end{corner.x + size.x, corner.y + size.y};
    list.AddRectFilled(corner, end, packed(state.tokens->raised), 8 * s);
    list.AddRect(corner, end, packed(state.tokens->quiet), 8 * s);
    drawLibraryFront(state, shown, stored, {corner.x + 10 * s, corner.y + 10 * s},
                     {front - 12 * s, size.y - 20 * s});
    const auto words = [&](ImFont& font, const std::string& text, float y, unsigned rgb) {
        list.AddText(&font, font.FontSize, {left, corner.y + y}, packed(rgb),
                     linesWithin(font, text, room, 1).front().c_str());
    };
    words(*state.fonts.strong, stored.name, 8 * s, state.tokens->ink);
    words(*state.fonts.small, stored.category.empty() ? "no category" : stored.category, 29 * s,
          state.tokens->soft_ink);
    return left;
}

Wish rowButtons(State& state, const std::string& id, bool mine) {
    struct Button {
        const char* label;
        const char* place;
        Wish wish;
        const char* what;
    };
    static constexpr Button kMine[] = {
        {"Place", "place", Wish::Place, "Put it down with the next click"},
        {"Edit a copy", "copy", Wish::Copy, "On the bench; this one stays as it is"},
        {"Edit", "edit", Wish::Edit, "On the bench; plates of the plan stay as they are"},
        {"Remove", "remove", Wish::Remove, "Out of the library; plates of the plan stay as they are"}};
    static constexpr Button kTheirs[] = {
        {"Place", "place", Wish::Place, "Put it down with the next click"},
        {"Edit a copy", "copy", Wish::Copy, "On the bench; this one stays as it is"},
        {"Keep", "keep", Wish::Keep, "Take it from this plan into your own library"}};
    Wish wish = Wish::None;
    const float gap = 4 * state.scale;
    for (const Button& button : mine ? std::span<const Button>(kMine) : std::span<const Button>(kTheirs)) {
        if (button.wish != Wish::Place) ImGui::SameLine(0, gap);
        if (smallButton(state, button.label)) wish = button.wish;
        place(state, fmt::format("library:{}:{}", button.place, id));
        if (ImGui::IsItemHovered()) hint(button.what);
    }
    return wish;
}

/// One plate, and below its words what can be done with it.
Wish plateRow(State& state, const Shown& shown, const plan::LibraryPlate& stored) {
    const float s = state.scale;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const ImVec2 size{ImGui::GetContentRegionAvail().x, 84 * s};
    ImGui::Dummy(size);
    if (!ImGui::IsItemVisible()) {
        ImGui::SetCursorScreenPos({corner.x, corner.y + size.y + 8 * s});
        return Wish::None;
    }
    place(state, "library:" + stored.id);
    const float left = rowCard(state, shown, stored, corner, size);
    ImGui::PushID((stored.id + (shown.mine ? "" : "/plan")).c_str());
    ImGui::PushFont(state.fonts.small);
    ImGui::SetCursorScreenPos({left, corner.y + 51 * s});
    const Wish wish = rowButtons(state, stored.id, shown.mine);
    ImGui::PopFont();
    ImGui::PopID();
    ImGui::SetCursorScreenPos({corner.x, corner.y + size.y + 8 * s});
    return wish;
}

/// By value: what is wished for may change the lists that the plate is in.
void fulfil(State& state, Wish wish, catalogue::Library from, plan::LibraryPlate stored) {
    switch (wish) {
    case Wish::None:
        return;
    case Wish::Place:
        placeFromLibrary(state, stored, from.formats);
        return;
    case Wish::Copy:
        stored.id.clear();
        stored.name += " (copy)";
        openBench(state, stored, from.formats);
        return;
    case Wish::Edit:
        openBench(state, stored, from.formats);
        return;
    case Wish::Remove:
        if (keepLibrary(state, catalogue::withoutPlate(std::move(from), stored.id)))
            say(state, fmt::format("Removed '{}' from the library", stored.name));
        return;
    case Wish::Keep:
        if (keepLibrary(state,
                        catalogue::merged(shelfLibrary(state), catalogue::selection(from, {stored.id}))))
            say(state, fmt::format("Kept '{}' in the library", stored.name));
        return;
    }
}

void filters(State& state, const catalogue::Library& library) {
    LibraryShelf& shelf = state.bench.shelf;
    const float s = state.scale;
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::SetNextItemWidth(width * 0.56F);
    ImGui::InputTextWithHint("##library-search", "Find a plate", &shelf.search);
    place(state, "library:search");
    ImGui::SameLine(0, 8 * s);
    ImGui::SetNextItemWidth(-1);
    if (ImGui::BeginCombo("##library-category",
                          shelf.category.empty() ? "all categories" : shelf.category.c_str())) {
        if (ImGui::Selectable("all categories", shelf.category.empty())) shelf.category.clear();
        for (const auto& category : catalogue::categories(library))
            if (ImGui::Selectable(category.c_str(), shelf.category == category)) shelf.category = category;
        ImGui::EndCombo();
    }
    place(state, "library:category");
}

void importFrom(State& state) {
    const std::filesystem::path file = state.bench.shelf.path;
    std::error_code error;
    if (!std::filesystem::exists(file, error)) {
        state.message =
            Message{"Nothing was imported", {fmt::format("There is no file '{}'.", file.string())}};
        return;
    }
    const auto other = catalogue::readLibrary(file);
    if (!other) {
        state.message = Message{"Nothing was imported", {other.error()}};
        return;
    }
    const auto before = shelfLibrary(state).plates.size();
    if (!keepLibrary(state, catalogue::merged(shelfLibrary(state), *other))) return;
    say(state,
        fmt::format("{} plates came in, {} were there already", shelfLibrary(state).plates.size() - before,
                    other->plates.size() - (shelfLibrary(state).plates.size() - before)));
}

/// What the list shows goes out.
void exportTo(State& state) {
    const LibraryShelf& shelf = state.bench.shelf;
    const auto& library = shelfLibrary(state);
    std::vector<std::string> ids;
    for (const auto* plate : catalogue::search(library, shelf.search, shelf.category))
        ids.push_back(plate->id);
    const auto written = catalogue::writeLibrary(catalogue::selection(library, ids), shelf.path);
    if (!written)
        state.message = Message{"The library was not exported", {written.error()}};
    else
        say(state, fmt::format("{} plates written to {}", ids.size(), shelf.path));
}

void exchange(State& state) {
    LibraryShelf& shelf = state.bench.shelf;
    const float s = state.scale;
    if (choiceButton(state, "Import or export", shelf.path_open)) shelf.path_open = !shelf.path_open;
    place(state, "library:exchange");
    if (!shelf.path_open) return;
    ImGui::SetNextItemWidth(-1);
    ImGui::InputTextWithHint("##library-path", "file, such as /home/me/desk.plates.json", &shelf.path);
    place(state, "library:path");
    ImGui::BeginDisabled(shelf.path.empty());
    const float half = (ImGui::GetContentRegionAvail().x - 8 * s) / 2;
    if (choiceButton(state, "Import from it", false, {half, 0})) importFrom(state);
    place(state, "library:import");
    if (ImGui::IsItemHovered()) hint("A library or any plan; what is there already is not doubled");
    ImGui::SameLine();
    if (choiceButton(state, "Export what is listed", false, {half, 0})) exportTo(state);
    place(state, "library:export");
    ImGui::EndDisabled();
}

/// Plates that came with the plan and that the user's own library does not hold. Comparing takes time, so it
/// is done only when the plan or the library changed.
std::vector<const plan::LibraryPlate*> onlyInPlan(State& state, const catalogue::Library& mine,
                                                  const catalogue::Library& theirs) {
    LibraryShelf& shelf = state.bench.shelf;
    if (shelf.found_at != state.document.version()) {
        shelf.found_at = state.document.version();
        shelf.only_in_plan.clear();
        for (const auto& plate : theirs.plates) {
            const auto both = catalogue::merged(mine, catalogue::selection(theirs, {plate.id}));
            if (both.plates.size() > mine.plates.size()) shelf.only_in_plan.push_back(plate.id);
        }
    }
    auto list = catalogue::search(theirs, shelf.search, shelf.category);
    std::erase_if(list, [&shelf](const plan::LibraryPlate* plate) {
        return std::ranges::find(shelf.only_in_plan, plate->id) == shelf.only_in_plan.end();
    });
    return list;
}

void plates(State& state) {
    // Held by value: a wish may replace the library that the rows are of.
    const Shown mine = shownOf(state, shelfLibrary(state), true);
    const Shown theirs = shownOf(state, ofPlan(state), false);
    const LibraryShelf& shelf = state.bench.shelf;
    const auto found = catalogue::search(mine.library, shelf.search, shelf.category);
    const auto of_plan = onlyInPlan(state, mine.library, theirs.library);
    const float s = state.scale;
    const float rows =
        static_cast<float>(found.size() + of_plan.size()) * 92 * s + (of_plan.empty() ? 0 : 28 * s);
    const float most = std::max(120 * s, state.stage.height - 330 * s);
    ImGui::BeginChild("library-rows", {0, std::clamp(rows, 48 * s, most)});
    Wish wish = Wish::None;
    const plan::LibraryPlate* wished = nullptr;
    const Shown* from = nullptr;
    const auto row = [&](const Shown& shown, const plan::LibraryPlate& plate) {
        const Wish asked_for = plateRow(state, shown, plate);
        if (asked_for == Wish::None) return;
        wish = asked_for;
        wished = &plate;
        from = &shown;
    };
    for (const auto* plate : found)
        row(mine, *plate);
    if (!of_plan.empty()) {
        ImGui::PushFont(state.fonts.small);
        ImGui::TextDisabled("Came with this plan");
        ImGui::PopFont();
    }
    for (const auto* plate : of_plan)
        row(theirs, *plate);
    if (found.empty() && of_plan.empty())
        wrapped(mine.library.plates.empty() ? "Nothing is kept yet. Compose a plate and save it under a name."
                                            : "No plate of the library is called that.");
    ImGui::EndChild();
    if (wished != nullptr) fulfil(state, wish, from->library, *wished);
}
} // namespace

const catalogue::Library& shelfLibrary(State& state) {
    LibraryShelf& shelf = state.bench.shelf;
    if (shelf.library) return *shelf.library;
    shelf.problem.clear();
    auto read = catalogue::readLibrary(catalogue::userLibraryFile());
    if (!read) shelf.problem = read.error();
    shelf.library = read ? std::move(*read) : catalogue::Library{};
    shelf.found_at = 0;
    return *shelf.library;
}

bool keepLibrary(State& state, catalogue::Library library) {
    const auto file = catalogue::userLibraryFile();
    std::string problem = file.empty() ? "No folder of your own was found: set HOME or XDG_DATA_HOME." : "";
    if (problem.empty())
        if (const auto written = catalogue::writeLibrary(library, file); !written) problem = written.error();
    if (!problem.empty()) {
        state.message = Message{"The library was not saved", {problem}};
        return false;
    }
    state.bench.shelf.library = std::move(library);
    state.bench.shelf.problem.clear();
    state.bench.shelf.found_at = 0;
    return true;
}

void drawLibraryPanel(State& state) {
    const float s = state.scale;
    // As wide as a row needs, whatever is listed.
    ImGui::Dummy({384 * s, 0});
    if (largeButton(state, "New plate", state.tokens->accent, {384 * s, 44 * s}, true)) {
        openBench(state, plan::Plate{}, BenchPurpose::New);
        return;
    }
    place(state, "library:new");
    const catalogue::Library& library = shelfLibrary(state);
    if (!state.bench.shelf.problem.empty()) {
        ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->fault));
        wrapped("Your library can't be read and is left as it is: " + state.bench.shelf.problem);
        ImGui::PopStyleColor();
    }
    filters(state, library);
    plates(state);
    exchange(state);
}

} // namespace gangway::app
