#include "geometry/plan_outline.hpp"

#include "geometry/convex_hull.hpp"

#include <algorithm>

namespace gangway::geometry {

std::vector<TopOutline> topOutlines(const plan::Furniture& piece, const std::filesystem::path& base) {
    std::vector<TopOutline> outlines;
    for (const Solid& solid : furnitureSolids(piece, base).solids) {
        TopOutline outline{&piece, {}, piece.bottom_mm};
        std::vector<Vec2> points;
        for (const Vec3 p : solid.mesh.positions_mm) {
            points.push_back({p.x, p.y});
            outline.top_mm = std::max(outline.top_mm, p.z);
        }
        outline.hull_mm = convexHull(std::move(points));
        if (outline.hull_mm.size() >= 3) outlines.push_back(std::move(outline));
    }
    return outlines;
}

Rise stairRise(const plan::Furniture& stair) {
    const auto turned =
        std::ranges::find(stair.with, "direction", [](const auto& value) { return value.first; });
    const double half = stair.size.depth_mm / 2;
    const Vec3 front = fromLocal(stair, {0, -half, 0});
    const Vec3 back = fromLocal(stair, {0, half, 0});
    const bool rises_to_front = turned != stair.with.end() && turned->second > 0.5;
    if (rises_to_front) return {{back.x, back.y}, {front.x, front.y}};
    return {{front.x, front.y}, {back.x, back.y}};
}

} // namespace gangway::geometry
