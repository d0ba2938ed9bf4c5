#include "catalogue/place.hpp"

#include "plan/io.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::catalogue::detail {
namespace {

/// First gang from `from` on where a module of `gangs` stays within one row.
int gangInRow(int from, int gangs, int columns) {
    if (columns <= 0 || gangs > columns || from % columns + gangs <= columns) return from;
    return (from / columns + 1) * columns;
}

/// A gang that several modules share knows how many they are only once all are placed.
void countSlots(std::vector<Placed>& placed) {
    for (Placed& item : placed)
        if (item.shares)
            item.slots = static_cast<int>(std::ranges::count_if(placed, [&](const Placed& other) {
                return other.shares && other.first_gang == item.first_gang;
            }));
}

double outlineAlong(const PlateFormat& format, int gangs) {
    const auto count = static_cast<std::size_t>(gangs);
    if (count <= format.widths_mm.size()) return format.widths_mm[count - 1];
    const double known = format.widths_mm.empty() ? format.single_width_mm : format.widths_mm.back();
    const int known_gangs = format.widths_mm.empty() ? 1 : static_cast<int>(format.widths_mm.size());
    return known + format.pitch_mm * (gangs - known_gangs);
}

plan::Direction directionOf(const PlateFormat& format, const plan::Plate& plate, int gangs,
                            Problems& problems) {
    if (plate.direction == plan::Direction::Horizontal || format.vertical) return plate.direction;
    const bool square = gangs == 1 && format.single_width_mm == format.single_height_mm;
    if (!square)
        problems.push_back(
            fmt::format("plates of format '{}' do not stack upwards; drawn side by side", format.id));
    return plan::Direction::Horizontal;
}

/// A single plate's width runs along its row; standing upright, its height does.
Layout oneRow(const PlateFormat& format, const plan::Plate& plate, int gangs, Problems& problems) {
    const bool lying = directionOf(format, plate, gangs, problems) == plan::Direction::Horizontal;
    const double along_mm = outlineAlong(format, gangs);
    Layout layout;
    layout.gangs = gangs;
    layout.columns = lying ? gangs : 1;
    layout.rows = lying ? 1 : gangs;
    layout.width_mm = lying ? along_mm : format.single_height_mm;
    layout.height_mm = lying ? format.single_height_mm : along_mm;
    layout.pitch_mm = {format.pitch_mm, format.pitch_mm};
    return layout;
}

/// More gangs than the largest grid has are drawn in rows below it.
Layout gridOf(const PlateFormat& format, const GridLayout& grid, int taken) {
    Layout layout;
    const int more = std::max(0, (taken + grid.columns - 1) / grid.columns - grid.rows);
    layout.columns = grid.columns;
    layout.rows = grid.rows + more;
    layout.gangs = layout.columns * layout.rows;
    layout.width_mm = grid.width_mm;
    layout.height_mm = grid.height_mm + more * format.row_pitch_mm;
    layout.pitch_mm = {format.pitch_mm, format.row_pitch_mm};
    return layout;
}

void checkCount(const PlateFormat& format, const plan::Plate& plate, int taken, int gangs,
                Problems& problems) {
    if (plate.gangs > 0 && plate.gangs < taken)
        problems.push_back(fmt::format("the plate has {} gang{} but its modules take {}", plate.gangs,
                                       plate.gangs == 1 ? "" : "s", taken));
    if (gangs > format.max_gangs)
        problems.push_back(fmt::format("{} gangs are more than a plate of format '{}' has; at most {}", gangs,
                                       format.id, format.max_gangs));
}

/// The smallest grid that holds the modules and the gangs asked for.
Arrangement inGrid(const std::vector<const ModuleType*>& modules, const PlateFormat& format,
                   const plan::Plate& plate, Problems& problems) {
    Arrangement arrangement;
    int taken = 0;
    for (const GridLayout& grid : format.grid) {
        arrangement.placed = place(modules, format, grid.columns);
        taken = gangsTaken(arrangement.placed);
        arrangement.layout = gridOf(format, grid, std::max(plate.gangs, taken));
        if (std::max(plate.gangs, taken) <= grid.columns * grid.rows) break;
    }
    checkCount(format, plate, taken, std::max(plate.gangs, taken), problems);
    return arrangement;
}

} // namespace

Vec2 Layout::centreOf(int gang) const {
    const int row = gang / columns;
    const int column = gang % columns;
    return {pitch_mm.x * (column - (columns - 1) / 2.0), pitch_mm.y * ((rows - 1) / 2.0 - row)};
}

std::string unknownWord(const std::string& what, const std::string& word,
                        const std::vector<std::string>& known) {
    const std::string nearest = plan::nearestWord(word, known);
    return fmt::format("{} '{}' is not in the catalogue{}", what, word,
                       nearest.empty() ? "" : fmt::format("; the nearest is '{}'", nearest));
}

std::vector<const ModuleType*> chooseModules(const Catalogue& catalogue, const PlateFormat& format,
                                             const plan::Plate& plate, Problems& problems) {
    std::vector<const ModuleType*> modules;
    std::vector<std::string> known; // only listed once a word is not found
    for (const plan::Module& wanted : plate.modules) {
        const ModuleType* module = catalogue.module(wanted.type);
        modules.push_back(module ? &moduleFor(*module, format) : nullptr);
        if (module) continue;
        if (known.empty()) known = moduleIds(catalogue);
        problems.push_back(wanted.type.empty() ? std::string("a module has no type")
                                               : unknownWord("module", wanted.type, known));
    }
    return modules;
}

std::vector<Placed> place(const std::vector<const ModuleType*>& modules, const PlateFormat& format,
                          int columns) {
    std::vector<Placed> placed;
    int next_gang = 0;
    int free_slots = 0; // in the gang before next_gang
    for (std::size_t i = 0; i < modules.size(); ++i) {
        Placed item;
        item.module = modules[i];
        item.number = static_cast<int>(i) + 1;
        item.gangs = item.module ? item.module->gangs : 1;
        item.shares = format.switches_per_gang > 1 && item.module &&
                      item.module->kind == ModuleKind::Switch && item.gangs == 1;
        if (item.shares && free_slots > 0) {
            item.first_gang = next_gang - 1;
            item.slot = format.switches_per_gang - free_slots--;
        } else {
            item.first_gang = gangInRow(next_gang, item.gangs, columns);
            next_gang = item.first_gang + item.gangs;
            free_slots = item.shares ? format.switches_per_gang - 1 : 0;
        }
        placed.push_back(item);
    }
    countSlots(placed);
    return placed;
}

int gangsTaken(const std::vector<Placed>& placed) {
    int taken = 0;
    for (const Placed& item : placed)
        taken = std::max(taken, item.first_gang + item.gangs);
    return taken;
}

bool isSwitchRow(const std::vector<Placed>& placed) {
    return !placed.empty() && std::ranges::all_of(placed, &Placed::shares);
}

Arrangement arrange(const std::vector<const ModuleType*>& modules, const PlateFormat& format,
                    const plan::Plate& plate, Problems& problems) {
    if (!format.grid.empty()) return inGrid(modules, format, plate, problems);
    Arrangement arrangement;
    arrangement.placed = place(modules, format, 0);
    const int taken = gangsTaken(arrangement.placed);
    const int gangs = std::max({plate.gangs, taken, format.min_gangs, 1});
    checkCount(format, plate, taken, gangs, problems);
    arrangement.layout = oneRow(format, plate, gangs, problems);
    return arrangement;
}

} // namespace gangway::catalogue::detail
