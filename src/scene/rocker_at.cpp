#include "scene/rocker_at.hpp"

#include "scene/drawn_objects.hpp"
#include "scene/scene.hpp"

#include <algorithm>
#include <cmath>

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

/// The module's face in equal parts.
std::vector<Rocker> partsOf(const catalogue::Gang& gang, int parts) {
    std::vector<Rocker> boxes;
    const double width = gang.width_mm / parts;
    for (int i = 0; i < parts; ++i)
        boxes.push_back({{},
                         {gang.centre_mm.x - gang.width_mm / 2 + width * (i + 0.5), gang.centre_mm.y},
                         width,
                         gang.height_mm});
    return boxes;
}

} // namespace

std::vector<Rocker> rockersOf(const catalogue::Catalogue& catalogue, const plan::Plate& plate) {
    std::vector<Rocker> rockers;
    const catalogue::ComposedPlate composed = catalogue::compose(catalogue, plate);
    for (const catalogue::Gang& gang : composed.gangs) {
        if (gang.module == nullptr || gang.module->ways < 1 || gang.module_number < 1) continue;
        std::vector<Rocker> boxes = shapesOf(gang);
        const bool one = gang.module->ways == 1 && !boxes.empty();
        if (!one && boxes.size() != static_cast<std::size_t>(gang.module->ways))
            boxes = partsOf(gang, gang.module->ways);
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            boxes[i].way = {plate.id, gang.module_number, one ? 1 : static_cast<int>(i) + 1};
            rockers.push_back(boxes[i]);
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
