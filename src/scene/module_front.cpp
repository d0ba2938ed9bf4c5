#include "scene/module_front.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::scene::detail {
namespace {

using catalogue::FrontShape;
using Role = FrontShape::Role;

constexpr double kGap_mm = 0.45;        // between frame and module
constexpr double kBlankRelief_mm = 0.5; // a blank stands out a little, so that its edge catches light
constexpr double kUpperTilt_mm = 2.4;   // how far a rocker's upper end stands above its middle
constexpr double kLowerTilt_mm = 1.1;   // and its lower end: it is off
constexpr double kPivot_mm = 0.5;       // and its middle above what it stands on
constexpr double kLeast_mm = 0.15;      // relief below this is painted on
constexpr double kPaint_mm = 0.08;

// How much deeper than the floor the front would like to go, as a factor on its recesses.
double recessScale(std::span<const FrontShape> front, const FrontSpace& space) {
    double deepest = 0;
    for (const FrontShape& shape : front)
        deepest = std::min(deepest, shape.relief_mm);
    const double room = space.face_z - space.floor_z;
    return -deepest > room ? room / -deepest : 1;
}

bool fillsModule(const FrontShape& shape, const FrontSpace& space) {
    return shape.kind == FrontShape::Kind::Rect && std::abs(shape.turn_deg) < 1e-9 &&
           (shape.role == Role::Cap || shape.role == Role::Rocker) && shape.width_mm > 0.9 * space.width &&
           shape.height_mm > 0.9 * space.height;
}

Loop outlineOf(const FrontShape& shape, const FrontSpace& space) {
    const Vec2 centre = space.centre + shape.centre_mm;
    if (shape.kind == FrontShape::Kind::Circle) {
        const int steps = shape.width_mm > 20 ? 32 : shape.width_mm > 8 ? 18 : 10;
        return circle(centre, shape.width_mm, steps);
    }
    if (std::abs(shape.turn_deg) > 1e-9) {
        return roundedRect(centre, shape.width_mm, shape.height_mm, shape.corner_mm, shape.turn_deg, 2);
    }
    // Upright rectangles that reach the module's edge keep a gap there and between each other.
    const double inset = kGap_mm + 0.1;
    const double left = std::max(centre.x - shape.width_mm / 2, space.centre.x - space.width / 2 + inset);
    const double right = std::min(centre.x + shape.width_mm / 2, space.centre.x + space.width / 2 - inset);
    const double low = std::max(centre.y - shape.height_mm / 2, space.centre.y - space.height / 2 + inset);
    const double high = std::min(centre.y + shape.height_mm / 2, space.centre.y + space.height / 2 - inset);
    if (right - left < 0.2 || high - low < 0.2) return {};
    return roundedRect({(left + right) / 2, (low + high) / 2}, right - left, high - low, shape.corner_mm, 0,
                       2);
}

FrontLevel baseLevel(std::span<const FrontShape> front, const FrontSpace& space) {
    FrontLevel base;
    double relief = kBlankRelief_mm;
    double corner = 1;
    if (!front.empty() && fillsModule(front.front(), space)) {
        base.role = front.front().role;
        relief = std::max(0.0, front.front().relief_mm);
        corner = std::max(corner, front.front().corner_mm);
    } else if (!front.empty()) {
        relief = 0;
    }
    base.outline =
        roundedRect(space.centre, space.width - 2 * kGap_mm, space.height - 2 * kGap_mm, corner, 0, 3);
    base.level = {space.face_z + relief};
    return base;
}

// A rocker is dished: two halves that fall towards its pivot, so that one sees from the front that it rocks.
void addRocker(std::vector<FrontLevel>& levels, std::size_t parent, Vec2 centre, double width, double height,
               double corner) {
    for (const double side : {1.0, -1.0}) {
        FrontLevel half;
        half.role = Role::Rocker;
        half.form = FrontLevel::Form::Raised;
        half.parent = parent;
        half.outline = roundedRect(centre + Vec2{0, side * height / 4}, width, height / 2, corner, 0, 2);
        half.level = {levels[parent].level.at(centre) + kPivot_mm,
                      2 * (side > 0 ? kUpperTilt_mm : -kLowerTilt_mm) / height, centre.y};
        levels.push_back(std::move(half));
    }
}

std::pair<Vec2, Vec2> boundsOf(const Loop& loop) {
    Vec2 low = loop.front();
    Vec2 high = loop.front();
    for (const Vec2 p : loop) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    return {low, high};
}

bool boxesTouch(const Loop& a, const Loop& b) {
    const auto [a_low, a_high] = boundsOf(a);
    const auto [b_low, b_high] = boundsOf(b);
    const double gap = 0.05;
    return a_low.x < b_high.x + gap && b_low.x < a_high.x + gap && a_low.y < b_high.y + gap &&
           b_low.y < a_high.y + gap;
}

// A hole can be cut where it lies wholly inside its parent and clear of the holes cut before it.
bool canBeCut(const std::vector<FrontLevel>& levels, std::size_t parent, const Loop& outline) {
    const Loop& around = levels[parent].outline;
    if (!std::all_of(outline.begin(), outline.end(), [&](Vec2 p) { return insideConvex(around, p, 0.05); })) {
        return false;
    }
    return std::none_of(levels.begin(), levels.end(), [&](const FrontLevel& other) {
        return other.form == FrontLevel::Form::Sunk && other.parent == parent &&
               boxesTouch(other.outline, outline);
    });
}

std::size_t parentOf(const std::vector<FrontLevel>& levels, Vec2 at) {
    for (std::size_t i = levels.size(); i-- > 1;) {
        if (levels[i].form != FrontLevel::Form::Flat && insideConvex(levels[i].outline, at)) return i;
    }
    return 0;
}

} // namespace

std::vector<FrontLevel> frontLevels(std::span<const FrontShape> front, const FrontSpace& space) {
    std::vector<FrontLevel> levels{baseLevel(front, space)};
    if (levels.front().role == Role::Rocker)
        addRocker(levels, 0, space.centre, space.width - 2 * kGap_mm, space.height - 2 * kGap_mm, 1);
    const double scale = recessScale(front, space);
    const std::size_t first = !front.empty() && fillsModule(front.front(), space) ? 1 : 0;
    for (std::size_t i = first; i < front.size(); ++i) {
        const FrontShape& shape = front[i];
        FrontLevel next;
        next.role = shape.role;
        next.round = shape.kind == FrontShape::Kind::Circle;
        if (shape.kind == FrontShape::Kind::Polyline) {
            if (shape.points_mm.size() < 2) continue;
            for (const Vec2 p : shape.points_mm)
                next.stroke.push_back(space.centre + p);
            next.parent = parentOf(levels, next.stroke.front());
            next.form = FrontLevel::Form::Flat;
            next.level = levels[next.parent].level.raised(2 * kPaint_mm);
            levels.push_back(std::move(next));
            continue;
        }
        next.outline = outlineOf(shape, space);
        if (next.outline.empty()) continue;
        const Vec2 centre = space.centre + shape.centre_mm;
        next.parent = parentOf(levels, centre);
        const Level ground = levels[next.parent].level;
        const double relief = shape.relief_mm < 0 ? shape.relief_mm * scale : shape.relief_mm;
        const double rise = std::max(space.face_z + relief, space.floor_z) - ground.at(centre);
        if (shape.role == Role::Rocker) {
            const auto [low, high] = boundsOf(next.outline);
            addRocker(levels, next.parent, (low + high) * 0.5, high.x - low.x, high.y - low.y,
                      shape.corner_mm);
            continue;
        }
        if (rise > kLeast_mm) {
            next.form = FrontLevel::Form::Raised;
            next.level = ground.raised(rise);
        } else if (rise < -kLeast_mm && shape.relief_mm < 0 && canBeCut(levels, next.parent, next.outline)) {
            next.form = FrontLevel::Form::Sunk;
            next.level = ground.raised(rise);
        } else {
            next.form = FrontLevel::Form::Flat;
            next.level = ground.raised(kPaint_mm);
        }
        levels.push_back(std::move(next));
    }
    return levels;
}

} // namespace gangway::scene::detail
