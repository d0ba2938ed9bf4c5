#include "scene/rocker_at.hpp"

#include "scene/drawn_objects.hpp"
#include "scene/scene.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace gangway::scene {

namespace {

using catalogue::FrontShape;

constexpr double kSameColumn_mm = 2; ///< rockers whose centres are this near are one above the other

bool isWorked(const FrontShape& shape) {
    return shape.kind != FrontShape::Kind::Polyline &&
           (shape.role == FrontShape::Role::Rocker || shape.role == FrontShape::Role::Knob);
}

std::vector<Rocker> shapesOf(const catalogue::Gang& gang) {
    std::vector<Rocker> boxes;
    for (const FrontShape& shape : gang.module->front) {
        if (!isWorked(shape)) continue;
        const double height = shape.kind == FrontShape::Kind::Circle ? shape.width_mm : shape.height_mm;
        boxes.push_back({{},
                         gang.centre_mm + shape.centre_mm,
                         std::min(shape.width_mm, gang.width_mm),
                         std::min(height, gang.height_mm)});
    }
    std::ranges::stable_sort(boxes, [](const Rocker& a, const Rocker& b) {
        if (std::abs(a.centre_mm.x - b.centre_mm.x) > kSameColumn_mm) return a.centre_mm.x < b.centre_mm.x;
        return a.centre_mm.y > b.centre_mm.y;
    });
    return boxes;
}

/// The box round boxes.
Rocker around(std::span<const Rocker> boxes) {
    plan::Vec2 low{1e9, 1e9};
    plan::Vec2 high{-1e9, -1e9};
    for (const Rocker& box : boxes) {
        low = {std::min(low.x, box.centre_mm.x - box.width_mm / 2),
               std::min(low.y, box.centre_mm.y - box.height_mm / 2)};
        high = {std::max(high.x, box.centre_mm.x + box.width_mm / 2),
                std::max(high.y, box.centre_mm.y + box.height_mm / 2)};
    }
    return {{}, (low + high) * 0.5, high.x - low.x, high.y - low.y};
}

/// A box in equal parts, side by side from the left or one above the other from the top.
std::vector<Rocker> partsOf(const Rocker& whole, int parts, bool stacked) {
    std::vector<Rocker> boxes;
    const plan::Vec2 size{stacked ? whole.width_mm : whole.width_mm / parts,
                          stacked ? whole.height_mm / parts : whole.height_mm};
    for (int i = 0; i < parts; ++i) {
        const double from_middle = i - (parts - 1) / 2.0;
        const plan::Vec2 off =
            stacked ? plan::Vec2{0, -from_middle * size.y} : plan::Vec2{from_middle * size.x, 0};
        boxes.push_back({{}, whole.centre_mm + off, size.x, size.y});
    }
    return boxes;
}

/// Whether the parts of what is shown lie one above the other: as the shapes do; a single one that runs a
/// motor up and down is pressed at its top and its bottom.
bool stacked(const catalogue::ModuleType& module, const std::vector<Rocker>& shapes) {
    if (shapes.size() == 1) return module.action == catalogue::WayAction::Motor;
    const auto [left, right] =
        std::ranges::minmax(shapes, {}, [](const Rocker& shape) { return shape.centre_mm.x; });
    const auto [bottom, top] =
        std::ranges::minmax(shapes, {}, [](const Rocker& shape) { return shape.centre_mm.y; });
    return top.centre_mm.y - bottom.centre_mm.y > right.centre_mm.x - left.centre_mm.x;
}

/// One box or more a way, each with its way's number.
std::vector<Rocker> workedBoxes(const catalogue::Gang& gang) {
    std::vector<Rocker> shapes = shapesOf(gang);
    const auto ways = static_cast<std::size_t>(gang.module->ways);
    if (shapes.empty())
        shapes = partsOf({{}, gang.centre_mm, gang.width_mm, gang.height_mm}, gang.module->ways, false);
    else if (shapes.size() % ways != 0)
        shapes = partsOf(around(shapes), gang.module->ways, stacked(*gang.module, shapes));
    // As many shapes for each way, such as a key for on and one for off.
    const std::size_t each = shapes.size() / ways;
    for (std::size_t i = 0; i < shapes.size(); ++i)
        shapes[i].way.way = static_cast<int>(i / each) + 1;
    return shapes;
}

} // namespace

std::vector<Rocker> rockersOf(const catalogue::Catalogue& catalogue, const plan::Plate& plate) {
    std::vector<Rocker> rockers;
    const catalogue::ComposedPlate composed = catalogue::compose(catalogue, plate);
    for (const catalogue::Gang& gang : composed.gangs) {
        if (gang.module == nullptr || gang.module->ways < 1 || gang.module_number < 1) continue;
        for (Rocker& box : workedBoxes(gang)) {
            box.way.plate = plate.id;
            box.way.module = gang.module_number;
            rockers.push_back(box);
        }
    }
    return rockers;
}

std::optional<plan::WayRef> rockerAt(const catalogue::Catalogue& catalogue, const plan::Plate& plate,
                                     plan::Vec2 at_mm) {
    std::optional<plan::WayRef> nearest;
    double least = 1e9;
    for (const Rocker& rocker : rockersOf(catalogue, plate)) {
        const plan::Vec2 off = at_mm - rocker.centre_mm;
        if (std::abs(off.x) > rocker.width_mm / 2 || std::abs(off.y) > rocker.height_mm / 2) continue;
        if (plan::length(off) >= least) continue;
        least = plan::length(off);
        nearest = rocker.way;
    }
    return nearest;
}

std::optional<plan::WayRef> rockerAt(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                     const plan::Plate& plate, glm::vec3 point_m) {
    const auto frame = geometry::hostFrame(house, plate.room, plate.host);
    const auto centre = geometry::hostPoint(house, plate.room, plate.host);
    if (!frame || !centre) return std::nullopt;
    plan::Vec3 point = toHouse(point_m);
    point.z -= detail::elevationOf(house, plate.room);
    const plan::Vec3 off = geometry::toFrame(*frame, point) - geometry::toFrame(*frame, *centre);
    return rockerAt(catalogue, plate, {off.x, off.y});
}

std::optional<glm::vec3> onPlate(const geometry::HouseIndex& house, const plan::Plate& plate,
                                 plan::Vec2 at_mm) {
    const auto frame = geometry::hostFrame(house, plate.room, plate.host);
    const auto centre = geometry::hostPoint(house, plate.room, plate.host);
    if (!frame || !centre) return std::nullopt;
    return toScene(*centre + frame->u * at_mm.x + frame->v * at_mm.y, detail::elevationOf(house, plate.room));
}

} // namespace gangway::scene
