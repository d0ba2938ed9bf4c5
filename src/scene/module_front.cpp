#include "scene/module_front.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::scene::detail {
namespace {

using catalogue::FrontShape;
using Role = FrontShape::Role;

constexpr double kGap_mm = 0.45;        // between frame and module
constexpr double kBlankRelief_mm = 0.5; // a blank stands out a little, so that its edge catches light
constexpr double kTilt_mm = 0.9;        // how far a rocker's ends stand above and below its middle
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
    if (base.role == Role::Rocker) {
        base.level = {space.face_z + std::max(relief, 1.2), 2 * kTilt_mm / space.height, space.centre.y};
    }
    return base;
}

bool boxesTouch(const Loop& a, const Loop& b) {
    const auto bounds = [](const Loop& loop) {
        Vec2 low = loop.front();
        Vec2 high = loop.front();
        for (const Vec2 p : loop) {
            low = {std::min(low.x, p.x), std::min(low.y, p.y)};
            high = {std::max(high.x, p.x), std::max(high.y, p.y)};
        }
        return std::pair{low, high};
    };
    const auto [a_low, a_high] = bounds(a);
    const auto [b_low, b_high] = bounds(b);
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
            next.form = FrontLevel::Form::Raised;
            next.level = {ground.at(centre) + std::max(rise, kTilt_mm + 0.4),
                          2 * kTilt_mm / std::max(1.0, shape.height_mm), centre.y};
        } else if (rise > kLeast_mm) {
            next.form = FrontLevel::Form::Raised;
            next.level = ground.raised(rise);
        } else if (rise < -kLeast_mm && canBeCut(levels, next.parent, next.outline)) {
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
