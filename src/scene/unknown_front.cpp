#include "scene/unknown_front.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::scene::detail {
namespace {

using catalogue::FrontShape;
using plan::Vec2;

constexpr double kBoxRelief_mm = 3;
constexpr double kMarkRelief_mm = 4.2;

FrontShape bar(Vec2 from, Vec2 to, double thick_mm) {
    const Vec2 along = to - from;
    FrontShape shape;
    shape.role = FrontShape::Role::Mark;
    shape.centre_mm = (from + to) * 0.5;
    shape.width_mm = plan::length(along) + thick_mm * 0.7; // the ends meet at bends
    shape.height_mm = thick_mm;
    shape.corner_mm = thick_mm * 0.35;
    shape.turn_deg = std::atan2(along.y, along.x) * 180 / std::numbers::pi;
    shape.relief_mm = kMarkRelief_mm;
    return shape;
}

} // namespace

std::vector<FrontShape> unknownFront(double width_mm, double height_mm) {
    FrontShape box;
    box.width_mm = 0.84 * width_mm;
    box.height_mm = 0.84 * height_mm;
    box.corner_mm = 2;
    box.relief_mm = kBoxRelief_mm;
    std::vector<FrontShape> front{box};
    // The hook goes clockwise from the left over the top to the lower right, and back to the stem.
    const double size = std::min(width_mm, height_mm) * 0.62;
    const double radius = 0.24 * size;
    const double thick = 0.12 * size;
    constexpr int kSteps = 7;
    Vec2 last;
    for (int i = 0; i <= kSteps; ++i) {
        const double angle = (175 - 235.0 * i / kSteps) * std::numbers::pi / 180;
        const Vec2 next = Vec2{0, 0.24 * size} + Vec2{std::cos(angle), std::sin(angle)} * radius;
        if (i > 0) front.push_back(bar(last, next, thick));
        last = next;
    }
    const Vec2 stem{0, -0.06 * size};
    front.push_back(bar(last, stem, thick));
    front.push_back(bar(stem, {0, -0.18 * size}, thick));
    FrontShape dot = bar({-0.01, -0.42 * size}, {0.01, -0.42 * size}, thick * 1.2);
    dot.kind = FrontShape::Kind::Circle;
    dot.width_mm = dot.height_mm = thick * 1.5;
    front.push_back(dot);
    return front;
}

} // namespace gangway::scene::detail
