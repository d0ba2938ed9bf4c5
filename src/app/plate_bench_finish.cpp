// Handing over what is on the bench: to the mouse, to a plate of the plan, to the library.
#include "app/plate_bench_parts.hpp"

#include "app/placing.hpp"
#include "edit/plate_edits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace gangway::app::bench {

namespace {
/// Nothing typed wrongly may be left behind unseen.
bool nothingWrong(State& state) {
    if (state.bench.mistakes.empty()) return true;
    const auto& [field, words] = *state.bench.mistakes.begin();
    say(state, fmt::format("{}: {}", field, words));
    return false;
}

const plan::OwnFormat* formatOf(const PlateBench& bench) {
    const auto found = std::ranges::find(bench.formats, bench.plate.format, &plan::OwnFormat::id);
    return found == bench.formats.end() ? nullptr : &*found;
}

auto sizesOf(const plan::OwnFormat& own) {
    return std::tie(own.name, own.module_width_mm, own.module_height_mm, own.plate_width_mm,
                    own.plate_height_mm, own.pitch_mm, own.corner_mm, own.relief_mm, own.max_gangs,
                    own.box_width_mm, own.box_height_mm, own.box_depth_mm, own.drill_mm);
}

/// Brings the plate's own format into the plan: added, or changed where the plan has it already.
void keepFormat(edit::Draft& draft, const plan::OwnFormat& own) {
    const auto there = draft.indexOf<plan::OwnFormat>(own.id);
    if (!there)
        draft.add(own);
    else if (sizesOf(draft.plan().formats[*there]) != sizesOf(own))
        draft.change<plan::OwnFormat>(*there) = own;
}

/// What the plate needs goes into the plan, and the plate onto the pointer.
void takeAlong(State& state, const std::string& step, const catalogue::Embedding& embedded) {
    if (!embedded.library.empty() || !embedded.formats.empty())
        state.document.run({step, "", [embedded](edit::Draft& draft) {
                                for (const auto& format : embedded.formats)
                                    draft.add(format);
                                for (const auto& plate : embedded.library)
                                    draft.add(plate);
                            }});
    state.panel = Panel::None;
    startPlacing(state, embedded.plate);
}

/// A plate that was kept in the library goes into the plan's, too, as it is now.
void placeNew(State& state) {
    PlateBench& bench = state.bench;
    auto stored = catalogue::libraryPlate(bench.plate, bench.name, bench.category);
    stored.id = bench.library_id;
    auto embedded = catalogue::embed(state.plan(), stored, bench.formats);
    if (bench.library_id.empty()) embedded.library.clear();
    closeBench(state);
    takeAlong(state, "Take a plate's format along", embedded);
}

void apply(State& state) {
    PlateBench& bench = state.bench;
    auto command = edit::recomposePlate(state.plan(), bench.plate.id, bench.plate);
    if (const auto* own = formatOf(bench))
        command.apply = [inner = command.apply, format = *own](edit::Draft& draft) {
            keepFormat(draft, format);
            inner(draft);
        };
    const std::string name = bench.title;
    state.document.run(command);
    closeBench(state);
    say(state, "Composed " + name);
}
} // namespace

const char* finishWords(BenchPurpose purpose) {
    switch (purpose) {
    case BenchPurpose::New:
        return "Place it";
    case BenchPurpose::Change:
        return "Apply";
    case BenchPurpose::Library:
        return "Save";
    }
    return "";
}

void saveToLibrary(State& state) {
    PlateBench& bench = state.bench;
    if (!nothingWrong(state)) return;
    if (bench.name.find_first_not_of(' ') == std::string::npos) {
        state.message = Message{"Give it a name", {"A plate is kept in the library under a name."}};
        return;
    }
    auto stored = catalogue::libraryPlate(bench.plate, bench.name, bench.category);
    stored.id = bench.library_id;
    const auto before = shelfLibrary(state);
    const auto library = catalogue::withPlate(before, stored, bench.formats);
    if (!keepLibrary(state, library)) return;
    if (bench.library_id.empty() && !library.plates.empty()) bench.library_id = library.plates.back().id;
    say(state, fmt::format("Kept '{}' in the library", bench.name));
}

void finishBench(State& state) {
    if (!nothingWrong(state)) return;
    switch (state.bench.purpose) {
    case BenchPurpose::New:
        placeNew(state);
        return;
    case BenchPurpose::Change:
        apply(state);
        return;
    case BenchPurpose::Library:
        saveToLibrary(state);
        if (!state.message) closeBench(state);
        return;
    }
}

} // namespace gangway::app::bench

namespace gangway::app {

void placeFromLibrary(State& state, const plan::LibraryPlate& stored,
                      const std::vector<plan::OwnFormat>& formats) {
    bench::takeAlong(state, fmt::format("Take '{}' from the library", stored.name),
                     catalogue::embed(state.plan(), stored, formats));
}

} // namespace gangway::app
