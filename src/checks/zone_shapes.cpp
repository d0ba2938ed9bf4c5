#include "checks/zone_shapes.hpp"

#include "checks/rules.hpp"
#include "geometry/frames.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::checks {

using plan::Vec2;

namespace {
constexpr double kLeastAreaMm2 = 1;
constexpr double kOnEdgeMm = 1e-6;

/// What of an outline lies to the left of the line from a to b.
Outline leftOf(const Outline& subject, Vec2 a, Vec2 b) {
    const auto side = [&](Vec2 at) { return cross(b - a, at - a); };
    Outline kept;
    for (std::size_t i = 0; i < subject.size(); ++i) {
        const Vec2 from = subject[i];
        const Vec2 to = subject[(i + 1) % subject.size()];
        const double before = side(from);
        const double after = side(to);
        if (before >= 0) kept.push_back(from);
        if ((before > 0 && after < 0) || (before < 0 && after > 0))
            kept.push_back(from + (to - from) * (before / (before - after)));
    }
    return kept;
}

void add(std::vector<Outline>& parts, Outline part) {
    if (part.size() > 2 && std::abs(geometry::signedArea(part)) > kLeastAreaMm2)
        parts.push_back(std::move(part));
}
} // namespace

Outline within(Outline subject, const Outline& convex) {
    for (std::size_t i = 0; i < convex.size() && !subject.empty(); ++i)
        subject = leftOf(subject, convex[i], convex[(i + 1) % convex.size()]);
    return std::abs(geometry::signedArea(subject)) > kLeastAreaMm2 ? subject : Outline{};
}

std::vector<Outline> without(const Outline& convex, Interval across_mm, Interval up_mm) {
    const Vec2 low{across_mm.from_mm, up_mm.from_mm};
    const Vec2 high{across_mm.to_mm, up_mm.to_mm};
    const Vec2 up{0, 1};
    const Vec2 right{1, 0};
    if (within(convex, rectangle(low.x, high.x, low.y, high.y)).empty()) return {convex};
    std::vector<Outline> parts;
    add(parts, leftOf(convex, low, low + up));
    add(parts, leftOf(convex, high, high - up));
    const Outline middle = leftOf(leftOf(convex, low, low - up), high, high + up);
    add(parts, leftOf(middle, low, low - right));
    add(parts, leftOf(middle, high, high + right));
    return parts;
}

bool holds(const Outline& outline, Vec2 at_mm) {
    return geometry::insidePolygon(outline, at_mm) || toOutline(outline, at_mm) <= kOnEdgeMm;
}

std::vector<Interval> partsInside(const Outline& outline, Vec2 from_mm, Vec2 to_mm) {
    const Vec2 along = to_mm - from_mm;
    std::vector<double> cuts{0, 1};
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 a = outline[i];
        const Vec2 edge = outline[(i + 1) % outline.size()] - a;
        const double slant = cross(along, edge);
        if (slant != 0) cuts.push_back(std::clamp(cross(a - from_mm, edge) / slant, 0.0, 1.0));
        // Corners too: an edge along the run has no crossing of its own.
        if (dot(along, along) > 0)
            cuts.push_back(std::clamp(dot(a - from_mm, along) / dot(along, along), 0.0, 1.0));
    }
    std::ranges::sort(cuts);
    std::vector<Interval> parts;
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        if (cuts[i + 1] <= cuts[i] || !holds(outline, from_mm + along * ((cuts[i] + cuts[i + 1]) / 2)))
            continue;
        if (!parts.empty() && parts.back().to_mm == cuts[i])
            parts.back().to_mm = cuts[i + 1];
        else
            parts.push_back({cuts[i], cuts[i + 1]});
    }
    return parts;
}

} // namespace gangway::checks
