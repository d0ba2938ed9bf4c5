// Changes of the plate on the bench. Modules of a plate stand in a row without gaps, so an empty gang between
// two modules is a blank.
#include "app/plate_bench_parts.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app::bench {

namespace {
constexpr const char* kBlank = "blank";
constexpr double kSameRow_mm = 1;

int gangsOf(const PlateBench& bench, const std::string& type) {
    const auto* module = bench.catalogue.module(type);
    if (module == nullptr || bench.composed.format == nullptr) return 1;
    return catalogue::moduleFor(*module, *bench.composed.format).gangs;
}

/// Gangs that the modules take by themselves.
int taken(const PlateBench& bench) {
    plan::Plate probe = bench.plate;
    probe.gangs = 0;
    return catalogue::compose(bench.catalogue, probe).gang_count;
}

void sortGangs(std::vector<catalogue::Gang>& gangs) {
    std::ranges::stable_sort(gangs, [](const catalogue::Gang& a, const catalogue::Gang& b) {
        if (std::abs(a.centre_mm.y - b.centre_mm.y) > kSameRow_mm) return a.centre_mm.y > b.centre_mm.y;
        return a.centre_mm.x < b.centre_mm.x;
    });
}

/// Counts of gangs that the format has, growing.
std::vector<int> countsOf(const catalogue::PlateFormat& format) {
    std::vector<int> counts;
    if (!format.grid.empty())
        for (const auto& grid : format.grid)
            counts.push_back(grid.columns * grid.rows);
    else
        for (int n = std::max(1, format.min_gangs); n <= std::max(format.max_gangs, format.min_gangs); ++n)
            counts.push_back(n);
    return counts;
}

void dropBeyond(PlateBench& bench, int gangs) {
    while (!bench.plate.modules.empty() && taken(bench) > gangs)
        bench.plate.modules.pop_back();
}

/// Where in plate.modules a module for an empty gang goes, and how many blanks before it.
std::pair<std::size_t, std::size_t> placeFor(const PlateBench& bench, std::size_t gang) {
    const auto& gangs = bench.composed.gangs;
    std::size_t blanks = 0;
    while (blanks < gang && gangs[gang - blanks - 1].module_number == 0)
        ++blanks;
    for (std::size_t i = gang; i < gangs.size(); ++i)
        if (gangs[i].module_number > 0) return {static_cast<std::size_t>(gangs[i].module_number) - 1, blanks};
    return {bench.plate.modules.size(), blanks};
}

/// A wider module takes the place of blanks after it; a narrower one leaves blanks, so that the others stay.
void replaceModule(PlateBench& bench, std::size_t index, const std::string& type) {
    auto& modules = bench.plate.modules;
    int spare = gangsOf(bench, modules[index].type) - gangsOf(bench, type);
    modules[index].type = type;
    const auto next = modules.begin() + static_cast<std::ptrdiff_t>(index) + 1;
    if (spare > 0 && next != modules.end())
        modules.insert(next, static_cast<std::size_t>(spare), plan::Module{kBlank, "", ""});
    while (spare < 0 && index + 1 < modules.size() && modules[index + 1].type == kBlank) {
        modules.erase(modules.begin() + static_cast<std::ptrdiff_t>(index) + 1);
        ++spare;
    }
}

void trimBlanks(std::vector<plan::Module>& modules) {
    while (!modules.empty() && modules.back().type == kBlank && modules.back().label.empty())
        modules.pop_back();
}

std::string freeFormatId(const PlateBench& bench) {
    std::string id = "own";
    for (int number = 2; bench.catalogue.format(id) != nullptr; ++number)
        id = fmt::format("own-{}", number);
    return id;
}

/// Chooses the gang in which a module of the plate stands, after gangs were counted anew.
void chooseModuleNumber(PlateBench& bench, std::size_t index) {
    const auto& gangs = bench.composed.gangs;
    for (std::size_t i = 0; i < gangs.size(); ++i)
        if (gangs[i].module_number == static_cast<int>(index) + 1) bench.gang = i;
}
} // namespace

void recompose(State& state) {
    PlateBench& bench = state.bench;
    plan::Plan own;
    own.formats = bench.formats;
    bench.catalogue = catalogue::withOwn(state.shipped, own);
    bench.composed = catalogue::compose(bench.catalogue, bench.plate);
    sortGangs(bench.composed.gangs);
    bench.gang = std::min(bench.gang, bench.composed.gangs.empty() ? 0 : bench.composed.gangs.size() - 1);
    ++bench.revision;
}

void chooseFormat(State& state, const std::string& format_id) {
    PlateBench& bench = state.bench;
    const auto* format = bench.catalogue.format(format_id);
    if (format == nullptr || bench.plate.format == format_id) return;
    bench.plate.format = format_id;
    bench.plate.box_depth_mm.reset();
    if (!format->vertical) bench.plate.direction = plan::Direction::Horizontal;
    const auto counts = countsOf(*format);
    const auto wanted = std::ranges::find_if(
        counts, [&](int count) { return count >= std::max(bench.plate.gangs, taken(bench)); });
    bench.plate.gangs = wanted == counts.end() ? counts.back() : *wanted;
    bench.typed.clear();
    bench.mistakes.clear();
    recompose(state);
}

void stepGangs(State& state, int direction) {
    PlateBench& bench = state.bench;
    if (bench.composed.format == nullptr) return;
    const auto counts = countsOf(*bench.composed.format);
    const int now = bench.composed.gang_count;
    int next = now;
    if (direction > 0) {
        const auto more = std::ranges::find_if(counts, [now](int count) { return count > now; });
        if (more != counts.end()) next = *more;
    } else {
        for (const int count : counts)
            if (count < now) next = count;
    }
    if (next == now) return;
    bench.plate.gangs = next;
    dropBeyond(bench, next);
    recompose(state);
}

void putModule(State& state, const std::string& type) {
    PlateBench& bench = state.bench;
    if (bench.composed.gangs.empty()) return;
    const auto& gang = bench.composed.gangs[bench.gang];
    auto& modules = bench.plate.modules;
    std::size_t index = 0;
    if (gang.module_number > 0) {
        index = static_cast<std::size_t>(gang.module_number) - 1;
        replaceModule(bench, index, type);
    } else {
        const auto [before, blanks] = placeFor(bench, bench.gang);
        modules.insert(modules.begin() + static_cast<std::ptrdiff_t>(before), blanks,
                       plan::Module{kBlank, "", ""});
        index = before + blanks;
        modules.insert(modules.begin() + static_cast<std::ptrdiff_t>(index), plan::Module{type, "", ""});
    }
    bench.plate.gangs = std::max(bench.plate.gangs, taken(bench));
    recompose(state);
    chooseModuleNumber(bench, index);
}

void emptyGang(State& state) {
    PlateBench& bench = state.bench;
    if (chosenModule(state) == nullptr) return;
    auto& modules = bench.plate.modules;
    const auto index = static_cast<std::size_t>(bench.composed.gangs[bench.gang].module_number) - 1;
    // The plate keeps its size.
    bench.plate.gangs = std::max(bench.plate.gangs, bench.composed.gang_count);
    if (canShare(state)) {
        modules.erase(modules.begin() + static_cast<std::ptrdiff_t>(index));
    } else {
        replaceModule(bench, index, kBlank);
        modules[index] = plan::Module{kBlank, "", ""};
        trimBlanks(modules);
    }
    recompose(state);
}

void fillAll(State& state) {
    PlateBench& bench = state.bench;
    const plan::Module* chosen = chosenModule(state);
    if (chosen == nullptr) return;
    const plan::Module module = *chosen;
    const int each = std::max(1, gangsOf(bench, module.type));
    const int gangs = bench.composed.gang_count;
    bench.plate.modules.assign(static_cast<std::size_t>(std::max(1, gangs / each)), module);
    bench.plate.gangs = gangs;
    // Labels are each gang's own.
    for (std::size_t i = 0; i < bench.plate.modules.size(); ++i)
        if (i > 0) bench.plate.modules[i].label.clear();
    recompose(state);
}

bool canShare(const State& state) {
    const PlateBench& bench = state.bench;
    if (bench.composed.format == nullptr || bench.composed.format->switches_per_gang < 2) return false;
    if (bench.gang >= bench.composed.gangs.size()) return false;
    const auto* module = bench.composed.gangs[bench.gang].module;
    return module != nullptr && module->kind == catalogue::ModuleKind::Switch && module->gangs == 1;
}

void addBeside(State& state) {
    PlateBench& bench = state.bench;
    const plan::Module* chosen = chosenModule(state);
    if (chosen == nullptr) return;
    plan::Module second = *chosen;
    second.label.clear();
    const auto index = static_cast<std::size_t>(bench.composed.gangs[bench.gang].module_number);
    bench.plate.modules.insert(bench.plate.modules.begin() + static_cast<std::ptrdiff_t>(index), second);
    bench.plate.gangs = std::max(bench.plate.gangs, taken(bench));
    recompose(state);
    chooseModuleNumber(bench, index);
}

void newOwnFormat(State& state) {
    PlateBench& bench = state.bench;
    const auto* from = bench.composed.format;
    plan::OwnFormat own;
    own.id = freeFormatId(bench);
    own.name = bench.formats.empty() ? "my format" : fmt::format("my format {}", bench.formats.size() + 1);
    if (from != nullptr) {
        own.module_width_mm = from->aperture_width_mm;
        own.module_height_mm = from->aperture_height_mm;
        // A format whose smallest plate holds several modules is taken back to what one gang would need.
        plan::Plate least;
        least.format = from->id;
        least.gangs = std::max(1, from->min_gangs);
        const double narrow =
            catalogue::compose(bench.catalogue, least).width_mm - from->pitch_mm * (least.gangs - 1);
        own.plate_width_mm = narrow > own.module_width_mm ? narrow : from->single_width_mm;
        own.plate_height_mm = from->single_height_mm;
        own.pitch_mm = from->pitch_mm;
        own.corner_mm = from->corner_mm;
        own.relief_mm = from->relief_mm;
        own.max_gangs = from->max_gangs;
        if (!from->boxes.empty()) {
            const auto& box = from->boxes.front();
            own.box_width_mm = box.width_mm;
            own.box_height_mm = box.shape == catalogue::BoxSpec::Shape::Round ? 0 : box.height_mm;
            own.box_depth_mm = box.depth_mm;
            own.drill_mm = box.drill_mm;
        }
    }
    bench.formats.push_back(own);
    recompose(state);
    chooseFormat(state, own.id);
}

plan::OwnFormat* ownFormat(State& state) {
    for (auto& own : state.bench.formats)
        if (own.id == state.bench.plate.format) return &own;
    return nullptr;
}

plan::Module* chosenModule(State& state) {
    PlateBench& bench = state.bench;
    if (bench.gang >= bench.composed.gangs.size()) return nullptr;
    const int number = bench.composed.gangs[bench.gang].module_number;
    if (number <= 0 || static_cast<std::size_t>(number) > bench.plate.modules.size()) return nullptr;
    return &bench.plate.modules[static_cast<std::size_t>(number) - 1];
}

std::vector<const catalogue::ModuleType*> modulesToChoose(const State& state) {
    const PlateBench& bench = state.bench;
    std::vector<const catalogue::ModuleType*> list;
    if (bench.composed.format == nullptr) return list;
    const auto lower = [](std::string text) {
        std::ranges::transform(text, text.begin(), [](unsigned char c) {
            return static_cast<char>(c < 128 ? std::tolower(c) : c);
        });
        return text;
    };
    const std::string wanted = lower(bench.search);
    for (const auto& module : bench.catalogue.modules) {
        if (!catalogue::isMadeFor(module, *bench.composed.format)) continue;
        const std::string words = lower(module.name + " " + module.code + " " + module.id);
        if (words.find(wanted) != std::string::npos) list.push_back(&module);
    }
    // Kinds in one run each, in the order in which the catalogue first has them.
    std::ranges::stable_sort(list, {}, [](const auto* module) { return module->kind; });
    return list;
}

Lattice latticeOf(const State& state) {
    const PlateBench& bench = state.bench;
    Lattice lattice;
    const auto* format = bench.composed.format;
    if (format == nullptr) return lattice;
    const int gangs = bench.composed.gang_count;
    lattice.pitch_mm = {format->pitch_mm, format->grid.empty() ? format->pitch_mm : format->row_pitch_mm};
    lattice.columns = gangs;
    if (!format->grid.empty()) {
        lattice.columns = format->grid.back().columns;
        for (const auto& grid : format->grid)
            if (grid.columns * grid.rows == gangs) lattice.columns = grid.columns;
        lattice.rows = std::max(1, gangs / std::max(1, lattice.columns));
    } else if (bench.plate.direction == plan::Direction::Vertical && format->vertical) {
        lattice.columns = 1;
        lattice.rows = gangs;
    }
    return lattice;
}

} // namespace gangway::app::bench
