// Furniture as it is seen square on a wall: the convex hull of every solid.
#include "geometry/convex_hull.hpp"
#include "geometry/furniture.hpp"
#include "geometry/house_index.hpp"
#include "geometry/rough_bounds.hpp"

namespace gangway::geometry {
namespace {

/// Whether something with these bounds in a wall's frame shows on the wall.
bool showsOn(const Frame& wall, const Bounds& bounds, double reach_mm) {
    const bool beside = bounds.high.x <= 0 || bounds.low.x >= wall.length_mm;
    return !beside && bounds.low.z <= reach_mm && bounds.high.z > 0;
}

} // namespace

std::vector<Silhouette> silhouettes(const plan::Plan& plan, const plan::Room& room, std::size_t wall_index,
                                    double reach_mm, const std::filesystem::path& base) {
    return silhouettes(HouseIndex(plan, room.id), room, wall_index, reach_mm, base);
}

std::vector<Silhouette> silhouettes(const HouseIndex& house, const plan::Room& room, std::size_t wall_index,
                                    double reach_mm, const std::filesystem::path& base) {
    const Frame frame = wallFrame(room, wall_index);
    std::vector<Silhouette> seen;
    for (const plan::Furniture* piece : house.furnitureIn(room.id)) {
        const Bounds rough = roughBounds(*piece, frame);
        if (!rough.empty() && !showsOn(frame, rough, reach_mm)) continue;
        Silhouette silhouette;
        silhouette.piece = piece;
        Bounds bounds;
        for (const Solid& solid : furnitureSolids(*piece, base).solids) {
            std::vector<Vec2> points;
            for (const Vec3 p : solid.mesh.positions_mm) {
                const Vec3 at = toFrame(frame, p);
                points.push_back({at.x, at.y});
                bounds.take(at);
            }
            auto hull = convexHull(std::move(points));
            if (hull.size() >= 3) silhouette.hulls_mm.push_back(std::move(hull));
        }
        if (!showsOn(frame, bounds, reach_mm)) continue;
        silhouette.near_mm = bounds.low.z;
        silhouette.far_mm = bounds.high.z;
        seen.push_back(std::move(silhouette));
    }
    return seen;
}

} // namespace gangway::geometry
