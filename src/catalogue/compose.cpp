#include "catalogue/catalogue.hpp"

#include "plan/io.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::catalogue {
namespace {

using Problems = std::vector<std::string>;

/// A module of the plate and the gangs it stands in; several switches may share one gang.
struct Placed {
    const ModuleType* module = nullptr;
    int number = 0; ///< from 1 in plate.modules, 0 for a blank
    int first_gang = 0;
    int gangs = 1;
    int slot = 0;        ///< place within a shared gang
    int slots = 1;       ///< how many share it
    bool shares = false; ///< takes part of a gang
};

std::string unknownWord(const std::string& what, const std::string& word,
                        const std::vector<std::string>& known) {
    const std::string nearest = plan::nearestWord(word, known);
    return fmt::format("{} '{}' is not in the catalogue{}", what, word,
                       nearest.empty() ? "" : fmt::format("; the nearest is '{}'", nearest));
}

const PlateFormat& chooseFormat(const Catalogue& catalogue, const std::string& id, Problems& problems) {
    static const PlateFormat kPlain{};
    if (const PlateFormat* format = catalogue.format(id)) return *format;
    const std::vector<std::string> known = formatIds(catalogue);
    problems.push_back(id.empty() ? std::string("no plate format is chosen")
                                  : unknownWord("plate format", id, known));
    if (const PlateFormat* nearest = catalogue.format(plan::nearestWord(id, known))) return *nearest;
    return catalogue.formats.empty() ? kPlain : catalogue.formats.front();
}

std::string chooseFinish(const Catalogue& catalogue, const std::string& id, const std::string& fallback,
                         Problems& problems) {
    if (id.empty()) return fallback;
    if (catalogue.finish(id)) return id;
    const std::string problem = unknownWord("finish", id, finishIds(catalogue));
    if (std::ranges::find(problems, problem) == problems.end()) problems.push_back(problem);
    return fallback;
}

const ModuleType* chooseModule(const Catalogue& catalogue, const PlateFormat& format, const std::string& type,
                               Problems& problems) {
    if (const ModuleType* module = catalogue.module(type)) return &moduleFor(*module, format);
    problems.push_back(type.empty() ? std::string("a module has no type")
                                    : unknownWord("module", type, moduleIds(catalogue)));
    return nullptr;
}

/// Gives each module its gangs from the first on; switches share a gang where the format lets them.
std::vector<Placed> place(const Catalogue& catalogue, const PlateFormat& format, const plan::Plate& plate,
                          Problems& problems) {
    std::vector<Placed> placed;
    int next_gang = 0;
    int free_slots = 0; // in the gang before next_gang
    for (std::size_t i = 0; i < plate.modules.size(); ++i) {
        Placed item;
        item.module = chooseModule(catalogue, format, plate.modules[i].type, problems);
        item.number = static_cast<int>(i) + 1;
        item.gangs = item.module ? item.module->gangs : 1;
        item.shares = format.switches_per_gang > 1 && item.module &&
                      item.module->kind == ModuleKind::Switch && item.gangs == 1;
        if (item.shares && free_slots > 0) {
            item.first_gang = next_gang - 1;
            item.slot = format.switches_per_gang - free_slots--;
        } else {
            item.first_gang = next_gang;
            next_gang += item.gangs;
            free_slots = item.shares ? format.switches_per_gang - 1 : 0;
        }
        placed.push_back(item);
    }
    for (Placed& item : placed)
        if (item.shares)
            item.slots = static_cast<int>(std::ranges::count_if(placed, [&](const Placed& other) {
                return other.shares && other.first_gang == item.first_gang;
            }));
    return placed;
}

int gangsTaken(const std::vector<Placed>& placed) {
    int taken = 0;
    for (const Placed& item : placed)
        taken = std::max(taken, item.first_gang + item.gangs);
    return taken;
}

int gangCount(const PlateFormat& format, const plan::Plate& plate, int taken, Problems& problems) {
    if (plate.gangs > 0 && plate.gangs < taken)
        problems.push_back(fmt::format("the plate has {} gang{} but its modules take {}", plate.gangs,
                                       plate.gangs == 1 ? "" : "s", taken));
    const int gangs = std::max({plate.gangs, taken, format.min_gangs, 1});
    if (gangs > format.max_gangs)
        problems.push_back(fmt::format("{} gangs are more than a plate of format '{}' has; at most {}", gangs,
                                       format.id, format.max_gangs));
    return gangs;
}

double outlineAlong(const PlateFormat& format, int gangs) {
    const auto count = static_cast<std::size_t>(gangs);
    if (count <= format.widths_mm.size()) return format.widths_mm[count - 1];
    const double known = format.widths_mm.empty() ? format.single_width_mm : format.widths_mm.back();
    const int known_gangs = format.widths_mm.empty() ? 1 : static_cast<int>(format.widths_mm.size());
    return known + format.pitch_mm * (gangs - known_gangs);
}

/// Distance of a gang's centre from the plate's, along the row, positive towards its end.
double gangOffset(const PlateFormat& format, int gangs, double gang) {
    return format.pitch_mm * (gang - (gangs - 1) / 2.0);
}

Vec2 along(plan::Direction direction, double offset_mm) {
    return direction == plan::Direction::Horizontal ? Vec2{offset_mm, 0} : Vec2{0, -offset_mm};
}

/// A plate of nothing but switches that share gangs is one row in the middle, whatever its gangs.
bool isSwitchRow(const std::vector<Placed>& placed) {
    return !placed.empty() && std::ranges::all_of(placed, &Placed::shares);
}

std::vector<Placed> withBlanks(std::vector<Placed> placed, int gangs) {
    if (isSwitchRow(placed)) return placed;
    for (int gang = gangsTaken(placed); gang < gangs; ++gang) {
        Placed blank;
        blank.first_gang = gang;
        placed.push_back(blank);
    }
    return placed;
}

Gang gangFor(const PlateFormat& format, const Placed& item, int gangs, std::size_t row_index,
             std::size_t row_length, plan::Direction direction) {
    Gang gang;
    gang.module = item.module;
    gang.module_number = item.number;
    gang.width_mm = format.aperture_width_mm;
    gang.height_mm = format.aperture_height_mm;
    double offset = gangOffset(format, gangs, item.first_gang + (item.gangs - 1) / 2.0);
    if (item.shares) {
        gang.width_mm = format.aperture_width_mm / format.switches_per_gang;
        const double place = row_length > 0
                                 ? static_cast<double>(row_index) - (static_cast<double>(row_length) - 1) / 2
                                 : item.slot - (item.slots - 1) / 2.0;
        offset = (row_length > 0 ? 0 : offset) + place * gang.width_mm;
    } else if (item.gangs > 1) {
        const double more = format.pitch_mm * (item.gangs - 1);
        (direction == plan::Direction::Horizontal ? gang.width_mm : gang.height_mm) += more;
    }
    gang.centre_mm = along(direction, offset);
    return gang;
}

std::vector<Box> boxesFor(const PlateFormat& format, const plan::Plate& plate, int gangs,
                          plan::Direction direction) {
    std::vector<Box> boxes;
    if (format.boxes.empty()) return boxes;
    const std::size_t count = format.shared_box ? 1 : static_cast<std::size_t>(gangs);
    const std::size_t spec =
        format.shared_box ? std::min(static_cast<std::size_t>(gangs), format.boxes.size()) - 1 : 0;
    for (std::size_t i = 0; i < count; ++i) {
        Box box{{}, format.boxes[spec]};
        if (!format.shared_box)
            box.centre_mm = along(direction, gangOffset(format, gangs, static_cast<double>(i)));
        if (plate.box_depth_mm) box.spec.depth_mm = *plate.box_depth_mm;
        boxes.push_back(box);
    }
    return boxes;
}

void checkDepths(const std::vector<Placed>& placed, const std::vector<Box>& boxes, Problems& problems) {
    if (boxes.empty()) return;
    const double depth_mm = boxes.front().spec.depth_mm;
    for (const Placed& item : placed)
        if (item.module && item.module->depth_mm > depth_mm)
            problems.push_back(fmt::format("module {} ({}) needs a box {} mm deep; this one is {} mm",
                                           item.number, item.module->name, item.module->depth_mm, depth_mm));
}

/// Half the width and height that a front needs about the module's centre.
Vec2 frontReach(const ModuleType& module) {
    Vec2 reach;
    const auto include = [&](Vec2 at, double half_width, double half_height) {
        reach.x = std::max(reach.x, std::abs(at.x) + half_width);
        reach.y = std::max(reach.y, std::abs(at.y) + half_height);
    };
    for (const FrontShape& shape : module.front) {
        if (shape.kind != FrontShape::Kind::Polyline)
            include(shape.centre_mm, shape.width_mm / 2, shape.height_mm / 2);
        for (const Vec2& point : shape.points_mm)
            include(point, 0, 0);
    }
    return reach;
}

void checkFits(const PlateFormat& format, const std::vector<Gang>& gangs, Problems& problems) {
    for (const Gang& gang : gangs) {
        if (!gang.module) continue;
        const Vec2 reach = frontReach(*gang.module);
        if (2 * reach.x > gang.width_mm || 2 * reach.y > gang.height_mm)
            problems.push_back(fmt::format("module {} ({}) does not fit the opening of format '{}'",
                                           gang.module_number, gang.module->name, format.id));
    }
}

void checkSharedBox(const PlateFormat& format, const std::vector<Placed>& placed, Problems& problems) {
    if (!format.shared_box) return;
    const ModuleType* low = nullptr;
    const ModuleType* mains = nullptr;
    for (const Placed& item : placed) {
        if (!item.module || item.module->kind == ModuleKind::Blank) continue;
        (item.module->extra_low_voltage ? low : mains) = item.module;
    }
    if (low && mains)
        problems.push_back(
            fmt::format("{} (extra-low voltage) and {} (mains) share one box; give each its own "
                        "plate",
                        low->name, mains->name));
}

} // namespace

ComposedPlate compose(const Catalogue& catalogue, const plan::Plate& plate) {
    ComposedPlate composed;
    Problems& problems = composed.problems;
    const PlateFormat& format = chooseFormat(catalogue, plate.format, problems);
    const std::vector<Placed> modules = place(catalogue, format, plate, problems);
    const int gangs = gangCount(format, plate, gangsTaken(modules), problems);

    plan::Direction direction = plate.direction;
    const bool square = gangs == 1 && format.single_width_mm == format.single_height_mm;
    if (direction == plan::Direction::Vertical && !format.vertical) {
        if (!square)
            problems.push_back(
                fmt::format("plates of format '{}' do not stack upwards; drawn side by side", format.id));
        direction = plan::Direction::Horizontal;
    }
    const double along_mm = outlineAlong(format, gangs);
    const bool horizontal = direction == plan::Direction::Horizontal;
    composed.width_mm = horizontal ? along_mm : format.single_height_mm;
    composed.height_mm = horizontal ? format.single_height_mm : along_mm;
    composed.corner_mm = format.corner_mm;
    composed.relief_mm = format.relief_mm;
    composed.boxes = boxesFor(format, plate, gangs, direction);
    composed.finish = chooseFinish(catalogue, plate.finish,
                                   catalogue.finishes.empty() ? "" : catalogue.finishes.front().id, problems);

    const std::size_t row_length = isSwitchRow(modules) ? modules.size() : 0;
    const std::vector<Placed> placed = withBlanks(modules, gangs);
    for (std::size_t i = 0; i < placed.size(); ++i) {
        Gang gang = gangFor(format, placed[i], gangs, i, row_length, direction);
        gang.finish = composed.finish;
        if (placed[i].number > 0) {
            const plan::Module& module = plate.modules[static_cast<std::size_t>(placed[i].number) - 1];
            gang.finish = chooseFinish(catalogue, module.finish, composed.finish, problems);
            gang.label = module.label;
        }
        composed.gangs.push_back(std::move(gang));
    }
    checkFits(format, composed.gangs, problems);
    checkDepths(placed, composed.boxes, problems);
    checkSharedBox(format, placed, problems);
    return composed;
}

} // namespace gangway::catalogue
