// Solids before a surface: each mesh is clipped to the space between the surface and the reach, then seen
// square on.
#include "geometry/obstacles.hpp"

#include "geometry/convex_hull.hpp"
#include "geometry/house_index.hpp"
#include "geometry/rough_bounds.hpp"
#include "meshes/flaws.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <numbers>

namespace gangway::geometry {
namespace {

/// A back that touches the surface, or is let into it, belongs to what stands before it.
constexpr double kBehindMm = 20;
/// What stands out no further than this covers nothing.
constexpr double kFlushMm = 0.5;

bool mayStandBefore(const Frame& surface, const Bounds& bounds, double reach_mm) {
    return bounds.low.x < surface.length_mm && bounds.high.x > 0 && bounds.low.z < reach_mm &&
           bounds.high.z > kFlushMm;
}

/// Points at which the edges of a mesh pass a distance from the surface, and its corners between both ends.
std::vector<Vec3> between(const std::vector<Vec3>& points,
                          const std::vector<std::array<std::uint32_t, 3>>& triangles, double low,
                          double high) {
    std::vector<Vec3> kept;
    for (const Vec3 p : points)
        if (p.z >= low && p.z <= high) kept.push_back(p);
    for (const auto& triangle : triangles)
        for (std::size_t i = 0; i < 3; ++i) {
            const Vec3 a = points[triangle[i]];
            const Vec3 b = points[triangle[(i + 1) % 3]];
            for (const double plane : {low, high})
                if ((a.z - plane) * (b.z - plane) < 0)
                    kept.push_back(a + (b - a) * ((plane - a.z) / (b.z - a.z)));
        }
    return kept;
}

/// Of many points those that lie furthest out in directions 7.5 degrees apart; of few all.
std::vector<Vec3> outermost(const std::vector<Vec3>& points) {
    constexpr std::size_t kFew = 64;
    constexpr int kRound = 48;
    if (points.size() <= kFew) return points;
    std::vector<Vec3> kept;
    for (int up = -kRound / 4; up <= kRound / 4; ++up)
        for (int round = 0; round < kRound; ++round) {
            const double tilt = 2 * std::numbers::pi * up / kRound;
            const double turn = 2 * std::numbers::pi * round / kRound;
            const Vec3 way{std::cos(tilt) * std::cos(turn), std::cos(tilt) * std::sin(turn), std::sin(tilt)};
            const Vec3 furthest = std::ranges::max(points, {}, [&](Vec3 p) { return dot(p, way); });
            const auto same = [&](Vec3 p) { return length(p - furthest) == 0; };
            if (std::ranges::none_of(kept, same)) kept.push_back(furthest);
        }
    return kept;
}

/// The same of the hull of points: where lines between the points on either side of a distance pass it.
std::vector<Vec3> hullBetween(const std::vector<Vec3>& points, double low, double high) {
    std::vector<Vec3> kept = between(points, {}, low, high);
    for (const double plane : {low, high}) {
        std::vector<Vec3> nearer;
        std::vector<Vec3> beyond;
        for (const Vec3 p : points)
            (p.z < plane ? nearer : beyond).push_back(p);
        nearer = outermost(nearer);
        beyond = outermost(beyond);
        for (const Vec3 a : nearer)
            for (const Vec3 b : beyond)
                kept.push_back(a + (b - a) * ((plane - a.z) / (b.z - a.z)));
    }
    return kept;
}

std::vector<Vec3> inFrame(const Frame& surface, const Solid& solid) {
    std::vector<Vec3> points;
    points.reserve(solid.mesh.positions_mm.size());
    for (const Vec3 p : solid.mesh.positions_mm)
        points.push_back(toFrame(surface, p));
    return points;
}

/// An open surface that goes on beyond the reach bounds nothing at the reach: only its hull can be judged.
/// The parts of a file are one surface together.
std::vector<Vec3> openBeyond(const Frame& surface, const std::vector<Solid>& solids, double reach_mm) {
    std::vector<Vec3> points;
    std::vector<const meshes::Mesh*> meshes;
    for (const Solid& solid : solids) {
        std::ranges::move(inFrame(surface, solid), std::back_inserter(points));
        meshes.push_back(&solid.mesh);
    }
    const auto beyond = [&](Vec3 p) { return p.z > reach_mm; };
    if (std::ranges::none_of(points, beyond) || std::ranges::all_of(points, beyond) ||
        !meshes::isOpen(meshes))
        points.clear();
    return points;
}

void addPoints(const plan::Furniture& piece, const std::string& solid, const std::vector<Vec3>& points,
               std::vector<Obstacle>& obstacles) {
    Obstacle obstacle{&piece, solid, {}, std::numeric_limits<double>::infinity(), 0};
    std::vector<Vec2> flat;
    for (const Vec3 p : points) {
        flat.push_back({p.x, p.y});
        obstacle.near_mm = std::min(obstacle.near_mm, p.z);
        obstacle.far_mm = std::max(obstacle.far_mm, p.z);
    }
    obstacle.outline_mm = convexHull(std::move(flat));
    if (obstacle.outline_mm.size() >= 3 && obstacle.far_mm > kFlushMm)
        obstacles.push_back(std::move(obstacle));
}

} // namespace

std::vector<Obstacle> obstaclesBefore(const HouseIndex& house, const std::string& room_id,
                                      const Frame& surface, double reach_mm, const std::string& except,
                                      const std::filesystem::path& base) {
    std::vector<Obstacle> obstacles;
    for (const plan::Furniture* piece : house.furnitureIn(room_id)) {
        if (piece->kind == "rug" || piece->id == except) continue;
        const Bounds rough = roughBounds(*piece, surface);
        if (!rough.empty() && !mayStandBefore(surface, rough, reach_mm)) continue;
        const auto solids = furnitureSolids(*piece, base).solids;
        for (const Solid& solid : solids)
            addPoints(*piece, solid.name,
                      between(inFrame(surface, solid), solid.mesh.triangles, -kBehindMm, reach_mm),
                      obstacles);
        if (piece->kind != "gltf") continue;
        if (const auto points = openBeyond(surface, solids, reach_mm); !points.empty())
            addPoints(*piece, solids.front().name, hullBetween(points, -kBehindMm, reach_mm), obstacles);
    }
    return obstacles;
}

} // namespace gangway::geometry
