#include "catalogue/catalogue.hpp"
#include "catalogue/place.hpp"
#include "catalogue/rules.hpp"

#include "plan/io.hpp"

#include <algorithm>

namespace gangway::catalogue {
namespace {

using detail::Layout;
using detail::Placed;
using detail::Problems;

const PlateFormat& chooseFormat(const Catalogue& catalogue, const std::string& id, Problems& problems) {
    static const PlateFormat kPlain{};
    if (const PlateFormat* format = catalogue.format(id)) return *format;
    const std::vector<std::string> known = formatIds(catalogue);
    problems.push_back(id.empty() ? std::string("no plate format is chosen")
                                  : detail::unknownWord("plate format", id, known));
    if (const PlateFormat* nearest = catalogue.format(plan::nearestWord(id, known))) return *nearest;
    return catalogue.formats.empty() ? kPlain : catalogue.formats.front();
}

std::string chooseFinish(const Catalogue& catalogue, const std::string& id, const std::string& fallback,
                         Problems& problems) {
    if (id.empty()) return fallback;
    if (catalogue.finish(id)) return id;
    const std::string problem = detail::unknownWord("finish", id, finishIds(catalogue));
    if (std::ranges::find(problems, problem) == problems.end()) problems.push_back(problem);
    return fallback;
}

std::vector<Placed> withBlanks(std::vector<Placed> placed, int gangs) {
    if (detail::isSwitchRow(placed)) return placed;
    std::vector<bool> taken(static_cast<std::size_t>(gangs), false);
    for (const Placed& item : placed)
        for (int gang = item.first_gang; gang < item.first_gang + item.gangs && gang < gangs; ++gang)
            taken[static_cast<std::size_t>(gang)] = true;
    for (int gang = 0; gang < gangs; ++gang) {
        if (taken[static_cast<std::size_t>(gang)]) continue;
        Placed blank;
        blank.first_gang = gang;
        placed.push_back(blank);
    }
    return placed;
}

/// `row_place` is the distance from the middle of a row of switches, in switches, where the plate is one.
Gang gangFor(const PlateFormat& format, const Layout& layout, const Placed& item,
             std::optional<double> row_place) {
    Gang gang;
    gang.module = item.module;
    gang.module_number = item.number;
    gang.unknown = item.number > 0 && item.module == nullptr;
    gang.width_mm = format.aperture_width_mm;
    gang.height_mm = format.aperture_height_mm;
    const Vec2 first = layout.centreOf(item.first_gang);
    const Vec2 last = layout.centreOf(item.first_gang + item.gangs - 1);
    gang.centre_mm = (first + last) * 0.5;
    if (item.shares) {
        gang.width_mm = format.aperture_width_mm / format.switches_per_gang;
        if (row_place) gang.centre_mm = {};
        gang.centre_mm.x += row_place.value_or(item.slot - (item.slots - 1) / 2.0) * gang.width_mm;
    } else {
        gang.width_mm += last.x - first.x;
        gang.height_mm += first.y - last.y;
    }
    return gang;
}

/// Which of a format's shared boxes stands behind a plate.
std::size_t sharedBox(const PlateFormat& format, const Layout& layout) {
    const auto fits = [&](const GridLayout& grid) {
        return grid.columns == layout.columns && grid.rows == layout.rows;
    };
    const std::size_t place =
        format.grid.empty()
            ? static_cast<std::size_t>(layout.gangs) - 1
            : static_cast<std::size_t>(std::ranges::find_if(format.grid, fits) - format.grid.begin());
    return std::min(place, format.boxes.size() - 1);
}

std::vector<Box> boxesFor(const PlateFormat& format, const plan::Plate& plate, const Layout& layout) {
    std::vector<Box> boxes;
    if (format.boxes.empty()) return boxes;
    const int count = format.shared_box ? 1 : layout.gangs;
    for (int i = 0; i < count; ++i) {
        Box box{{}, format.boxes[format.shared_box ? sharedBox(format, layout) : 0]};
        if (!format.shared_box) box.centre_mm = layout.centreOf(i);
        if (plate.box_depth_mm) box.spec.depth_mm = *plate.box_depth_mm;
        boxes.push_back(box);
    }
    return boxes;
}

std::vector<Vec2> fixingsFor(const PlateFormat& format, const std::vector<Box>& boxes, const Layout& layout) {
    std::vector<Vec2> fixings;
    for (const Box& box : boxes) {
        const double reach = box.spec.fixing_mm / 2;
        if (reach <= 0) continue;
        if (box.spec.fixing == BoxSpec::Fixing::Lying) {
            fixings.push_back(box.centre_mm + Vec2{-reach, 0});
            fixings.push_back(box.centre_mm + Vec2{reach, 0});
            continue;
        }
        const int held = format.shared_box ? layout.gangs : 1;
        for (int gang = 0; gang < held; ++gang) {
            const Vec2 centre = format.shared_box ? layout.centreOf(gang) : box.centre_mm;
            fixings.push_back(centre + Vec2{0, reach});
            fixings.push_back(centre + Vec2{0, -reach});
        }
    }
    return fixings;
}

Vec2 referenceOf(const PlateFormat& format, const Layout& layout) {
    constexpr int kSecondFrom = 4; // trade facts, section 2: of four, the second is at the height
    const bool upright = format.grid.empty() && layout.columns == 1 && layout.rows > 1;
    if (format.height_reference != HeightReference::TopGang || !upright) return {};
    return layout.centreOf(layout.gangs >= kSecondFrom ? 1 : 0);
}

std::vector<Gang> gangsFor(const Catalogue& catalogue, const PlateFormat& format, const plan::Plate& plate,
                           const Layout& layout, const std::vector<Placed>& placed,
                           const std::string& plate_finish, Problems& problems) {
    const bool switch_row = detail::isSwitchRow(placed);
    std::vector<Gang> gangs;
    for (std::size_t i = 0; i < placed.size(); ++i) {
        std::optional<double> row_place;
        if (switch_row) row_place = static_cast<double>(i) - (static_cast<double>(placed.size()) - 1) / 2;
        Gang gang = gangFor(format, layout, placed[i], row_place);
        gang.finish = plate_finish;
        if (placed[i].number > 0) {
            const plan::Module& module = plate.modules[static_cast<std::size_t>(placed[i].number) - 1];
            gang.finish = chooseFinish(catalogue, module.finish, plate_finish, problems);
            gang.label = gang.unknown ? module.type : module.label;
        }
        gangs.push_back(std::move(gang));
    }
    return gangs;
}

} // namespace

ComposedPlate compose(const Catalogue& catalogue, const plan::Plate& plate) {
    ComposedPlate composed;
    Problems& problems = composed.problems;
    const PlateFormat& format = chooseFormat(catalogue, plate.format, problems);
    const auto modules = detail::chooseModules(catalogue, format, plate, problems);
    const detail::Arrangement arrangement = detail::arrange(modules, format, plate, problems);
    const Layout& layout = arrangement.layout;

    composed.format = &format;
    composed.gang_count = layout.gangs;
    composed.width_mm = layout.width_mm;
    composed.height_mm = layout.height_mm;
    composed.corner_mm = format.corner_mm;
    composed.relief_mm = format.relief_mm;
    composed.boxes = boxesFor(format, plate, layout);
    composed.fixings_mm = fixingsFor(format, composed.boxes, layout);
    composed.reference_mm = referenceOf(format, layout);
    composed.finish = chooseFinish(catalogue, plate.finish,
                                   catalogue.finishes.empty() ? "" : catalogue.finishes.front().id, problems);
    const std::vector<Placed> placed = withBlanks(arrangement.placed, layout.gangs);
    composed.gangs = gangsFor(catalogue, format, plate, layout, placed, composed.finish, problems);
    detail::checkModules(format, placed, composed.gangs, composed.boxes, problems);
    detail::checkVoltages(format, placed, plate.barrier, problems);
    return composed;
}

} // namespace gangway::catalogue
