#include "plan/polygon_checks.hpp"

#include <algorithm>
#include <numeric>

namespace gangway::plan {

namespace {

constexpr double kSamePlaceMm = 0.01;

double distanceToSegment(Vec2 p, Vec2 a, Vec2 b) {
    const Vec2 along = b - a;
    const double square = dot(along, along);
    const double t = square > 0 ? std::clamp(dot(p - a, along) / square, 0.0, 1.0) : 0.0;
    return length(p - (a + along * t));
}

/// Crossing, touching or overlapping, with the play of one place.
bool meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
    if (crossInside(a, b, c, d)) return true;
    return distanceToSegment(a, c, d) < kSamePlaceMm || distanceToSegment(b, c, d) < kSamePlaceMm ||
           distanceToSegment(c, a, b) < kSamePlaceMm || distanceToSegment(d, a, b) < kSamePlaceMm;
}

/// Two edges that follow each other, ab and bc, fold back when c lies on ab or a on bc.
bool foldsBack(Vec2 a, Vec2 b, Vec2 c) {
    return dot(b - a, c - b) < 0 &&
           (distanceToSegment(c, a, b) < kSamePlaceMm || distanceToSegment(a, b, c) < kSamePlaceMm);
}

} // namespace

double signedAreaOf(const std::vector<Vec2>& polygon) {
    double twice = 0;
    for (std::size_t i = 1; i + 1 < polygon.size(); ++i)
        twice += cross(polygon[i] - polygon[0], polygon[i + 1] - polygon[0]);
    return twice / 2;
}

std::optional<std::size_t> zeroEdge(const std::vector<Vec2>& polygon) {
    for (std::size_t i = 0; i < polygon.size(); ++i)
        if (length(polygon[(i + 1) % polygon.size()] - polygon[i]) < kSamePlaceMm) return i;
    return std::nullopt;
}

bool crossInside(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
    const double side_c = cross(b - a, c - a);
    const double side_d = cross(b - a, d - a);
    const double side_a = cross(d - c, a - c);
    const double side_b = cross(d - c, b - c);
    return ((side_c > 0 && side_d < 0) || (side_c < 0 && side_d > 0)) &&
           ((side_a > 0 && side_b < 0) || (side_a < 0 && side_b > 0));
}

std::optional<std::pair<std::size_t, std::size_t>> crossingEdges(const std::vector<Vec2>& polygon) {
    const std::size_t count = polygon.size();
    const auto corner = [&](std::size_t i) { return polygon[i % count]; };
    for (std::size_t i = 0; i < count; ++i)
        if (foldsBack(corner(i), corner(i + 1), corner(i + 2))) return std::pair(i, (i + 1) % count);
    // Edges sorted by their left end: only those that overlap in x can meet.
    const auto left = [&](std::size_t i) { return std::min(corner(i).x, corner(i + 1).x); };
    const auto right = [&](std::size_t i) { return std::max(corner(i).x, corner(i + 1).x); };
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, {}, [&](std::size_t i) { return std::pair(left(i), i); });
    for (std::size_t m = 0; m < count; ++m)
        for (std::size_t n = m + 1; n < count && left(order[n]) <= right(order[m]) + kSamePlaceMm; ++n) {
            const auto [i, j] = std::minmax(order[m], order[n]);
            if (j == i + 1 || (i == 0 && j == count - 1)) continue;
            if (meet(corner(i), corner(i + 1), corner(j), corner(j + 1))) return std::pair(i, j);
        }
    return std::nullopt;
}

bool insideOrOn(const std::vector<Vec2>& polygon, Vec2 point, double play_mm) {
    bool inside = false;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec2 a = polygon[i];
        const Vec2 b = polygon[(i + 1) % polygon.size()];
        if (distanceToSegment(point, a, b) <= play_mm) return true;
        const bool spans = (a.y > point.y) != (b.y > point.y);
        if (spans && point.x < a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y)) inside = !inside;
    }
    return inside;
}

} // namespace gangway::plan
