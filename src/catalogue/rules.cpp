#include "catalogue/rules.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::catalogue::detail {
namespace {

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

void checkOpening(const PlateFormat& format, const Gang& gang, Problems& problems) {
    if (!isMadeFor(*gang.module, format)) {
        problems.push_back(fmt::format("module {} ({}) is not made for format '{}'", gang.module_number,
                                       gang.module->name, format.id));
        return;
    }
    const Vec2 reach = frontReach(*gang.module);
    if (2 * reach.x > gang.width_mm || 2 * reach.y > gang.height_mm)
        problems.push_back(fmt::format("module {} ({}) does not fit the opening of format '{}'",
                                       gang.module_number, gang.module->name, format.id));
}

} // namespace

void checkModules(const PlateFormat& format, const std::vector<Placed>& placed,
                  const std::vector<Gang>& gangs, const std::vector<Box>& boxes, Problems& problems) {
    for (const Gang& gang : gangs)
        if (gang.module) checkOpening(format, gang, problems);
    if (boxes.empty()) return;
    const double depth_mm = boxes.front().spec.depth_mm;
    for (const Placed& item : placed)
        if (item.module && isMadeFor(*item.module, format) && item.module->depth_mm > depth_mm)
            problems.push_back(fmt::format("module {} ({}) needs a box {} mm deep; this one is {} mm",
                                           item.number, item.module->name, item.module->depth_mm, depth_mm));
}

void checkVoltages(const PlateFormat& format, const std::vector<Placed>& placed, bool barrier,
                   Problems& problems) {
    if (!format.shared_box || barrier) return;
    const ModuleType* low = nullptr;
    const ModuleType* mains = nullptr;
    for (const Placed& item : placed) {
        if (!item.module || item.module->kind == ModuleKind::Blank) continue;
        (item.module->extra_low_voltage ? low : mains) = item.module;
    }
    if (low && mains)
        problems.push_back(
            fmt::format("{} (extra-low voltage) and {} (mains) share one box without a barrier; "
                        "give each its own plate or fit a barrier",
                        low->name, mains->name));
}

} // namespace gangway::catalogue::detail
