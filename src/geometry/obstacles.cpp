// Solids before a surface: each mesh is clipped to the space between the surface and the reach, then seen
// square on.
#include "geometry/obstacles.hpp"

#include "geometry/convex_hull.hpp"
#include "geometry/house_index.hpp"
#include "geometry/rough_bounds.hpp"

#include <algorithm>
#include <limits>

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

void addSolid(const Frame& surface, const plan::Furniture& piece, const Solid& solid, double reach_mm,
              std::vector<Obstacle>& obstacles) {
    std::vector<Vec3> points;
    points.reserve(solid.mesh.positions_mm.size());
    for (const Vec3 p : solid.mesh.positions_mm)
        points.push_back(toFrame(surface, p));
    Obstacle obstacle{&piece, solid.name, {}, std::numeric_limits<double>::infinity(), 0};
    std::vector<Vec2> flat;
    for (const Vec3 p : between(points, solid.mesh.triangles, -kBehindMm, reach_mm)) {
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
        for (const Solid& solid : furnitureSolids(*piece, base).solids)
            addSolid(surface, *piece, solid, reach_mm, obstacles);
    }
    return obstacles;
}

} // namespace gangway::geometry
