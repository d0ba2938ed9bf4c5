#include "scene/floor_view.hpp"

#include "geometry/frames.hpp"
#include "geometry/furniture.hpp"

#include <algorithm>

namespace gangway::scene::detail {
namespace {

constexpr double kStepMm = 200;      // higher than this is not stepped over; common practice, no source
constexpr double kHeadroomMm = 1800; // what hangs higher is walked under; common practice, no source

bool segmentsCross(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
    const double abc = plan::cross(b - a, c - a);
    const double abd = plan::cross(b - a, d - a);
    const double cda = plan::cross(d - c, a - c);
    const double cdb = plan::cross(d - c, b - c);
    return ((abc > 0) != (abd > 0)) && ((cda > 0) != (cdb > 0));
}

double distanceToSegment(Vec2 a, Vec2 b, Vec2 p) {
    const Vec2 ab = b - a;
    const double l2 = plan::dot(ab, ab);
    const double t = l2 > 0 ? std::clamp(plan::dot(p - a, ab) / l2, 0.0, 1.0) : 0;
    return plan::length(p - (a + ab * t));
}

} // namespace

bool blocksWalking(const plan::Furniture& piece) {
    if (piece.kind == "rug" || piece.kind == "curtain" || piece.kind == "stair") return false;
    return piece.bottom_mm + piece.size.height_mm > kStepMm && piece.bottom_mm < kHeadroomMm;
}

std::vector<Obstacle> obstaclesIn(const plan::Plan& plan, const plan::Room& room) {
    std::vector<Obstacle> obstacles;
    for (const plan::Furniture& piece : plan.furniture) {
        if (piece.room != room.id || !(blocksWalking(piece) || piece.kind == "stair")) continue;
        obstacles.push_back(
            {geometry::footprint(piece), piece.bottom_mm, piece.bottom_mm + piece.size.height_mm});
    }
    return obstacles;
}

bool edgesCross(const std::vector<Vec2>& polygon, Vec2 a_mm, Vec2 b_mm) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        if (segmentsCross(a_mm, b_mm, polygon[i], polygon[(i + 1) % polygon.size()])) return true;
    }
    return false;
}

bool wallBetween(const plan::Room& room, Vec2 a_mm, Vec2 b_mm) {
    return edgesCross(room.outline, a_mm, b_mm) ||
           std::any_of(room.columns.begin(), room.columns.end(),
                       [&](const auto& column) { return edgesCross(column, a_mm, b_mm); });
}

double distanceToEdges(const std::vector<Vec2>& polygon, Vec2 at_mm) {
    double least = 1e300;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        least = std::min(least, distanceToSegment(polygon[i], polygon[(i + 1) % polygon.size()], at_mm));
    }
    return least;
}

bool standable(const plan::Room& room, const std::vector<Obstacle>& obstacles, Vec2 at_mm, double radius_mm) {
    if (!geometry::insideRoom(room, at_mm) || distanceToEdges(room.outline, at_mm) < radius_mm) return false;
    const auto keepsClear = [&](const std::vector<Vec2>& polygon) {
        return !geometry::insidePolygon(polygon, at_mm) && distanceToEdges(polygon, at_mm) >= radius_mm;
    };
    return std::all_of(room.columns.begin(), room.columns.end(), keepsClear) &&
           std::all_of(obstacles.begin(), obstacles.end(),
                       [&](const Obstacle& obstacle) { return keepsClear(obstacle.footprint_mm); });
}

Bounds2 boundsOf(const std::vector<Vec2>& polygon) {
    if (polygon.empty()) return {};
    Bounds2 bounds{polygon.front(), polygon.front()};
    for (const Vec2 p : polygon) {
        bounds.low = {std::min(bounds.low.x, p.x), std::min(bounds.low.y, p.y)};
        bounds.high = {std::max(bounds.high.x, p.x), std::max(bounds.high.y, p.y)};
    }
    return bounds;
}

} // namespace gangway::scene::detail
