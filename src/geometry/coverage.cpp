// What covers a plate: rays straight out of its host, a grid of them over its rectangle, against furniture
// and open door leaves.
#include "geometry/coverage.hpp"

#include "geometry/rough_bounds.hpp"
#include "geometry/shapes.hpp"
#include "geometry/wall_build.hpp"
#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace gangway::geometry {
namespace {

constexpr int kRays = 24; // a side
/// What does not come further out of the host than this is flush with it and covers nothing.
constexpr double kFlushMm = 0.5;
/// Rays start this far behind the surface, so that a back that touches it, or is let into it, is hit.
constexpr double kBehindMm = 20;

/// Something in the way, in the host's own (u, v, w).
struct Obstacle {
    Cover cover;
    std::vector<meshes::Mesh> meshes;
};

/// The space before a plate that is looked at.
struct View {
    Frame frame;
    double left_mm, right_mm, bottom_mm, top_mm, reach_mm;

    bool reaches(const Bounds& b) const {
        return b.low.x < right_mm && b.high.x > left_mm && b.low.y < top_mm && b.high.y > bottom_mm &&
               b.low.z < reach_mm && b.high.z > kFlushMm;
    }
};

/// Moves a mesh into the host's frame; empty when it can't be before the plate.
meshes::Mesh inView(const View& view, const meshes::Mesh& house) {
    Bounds bounds;
    std::vector<Vec3> points;
    points.reserve(house.positions_mm.size());
    for (const Vec3 p : house.positions_mm) {
        points.push_back(toFrame(view.frame, p));
        bounds.take(points.back());
    }
    if (points.empty() || !view.reaches(bounds)) return {};
    return {std::move(points), {}, house.triangles};
}

std::vector<Obstacle> furnitureBefore(const HouseIndex& house, const std::string& room_id,
                                      const plan::Host& host, const View& view,
                                      const std::filesystem::path& base) {
    std::vector<Obstacle> obstacles;
    for (const plan::Furniture* standing : house.furnitureIn(room_id)) {
        const plan::Furniture& piece = *standing;
        if (piece.kind == "rug") continue;
        if (host.kind == plan::Host::Kind::Furniture && piece.id == host.furniture) continue;
        const Bounds rough = roughBounds(piece, view.frame);
        if (!rough.empty() && !view.reaches(rough)) continue;
        const plan::FurnitureKind* kind = plan::findFurnitureKind(piece.kind);
        Obstacle obstacle;
        obstacle.cover.by = Cover::By::Furniture;
        obstacle.cover.id = piece.id;
        obstacle.cover.name = !piece.name.empty() || kind == nullptr ? piece.name : std::string(kind->name);
        obstacle.cover.layer = piece.layer;
        for (const Solid& solid : furnitureSolids(piece, base).solids) {
            meshes::Mesh mesh = inView(view, solid.mesh);
            if (!mesh.empty()) obstacle.meshes.push_back(std::move(mesh));
        }
        if (!obstacle.meshes.empty()) obstacles.push_back(std::move(obstacle));
    }
    return obstacles;
}

/// Whether the opening is near enough for its leaf to stand before the plate.
bool mayReach(const HouseIndex& house, const plan::Opening& opening, const View& view) {
    const plan::Room* room = house.room(opening.room);
    const auto wall = room == nullptr ? std::nullopt : plan::wallIndex(*room, opening.wall);
    if (!wall) return false;
    const Vec2 door = edgeAxes(*room, *wall).at(opening.left_mm + opening.width_mm / 2);
    const Vec3 plate =
        toHouse(view.frame, {(view.left_mm + view.right_mm) / 2, (view.bottom_mm + view.top_mm) / 2, 0});
    const double leaf = std::max(opening.leaf_mm.value_or(0), opening.width_mm);
    const double reach =
        2 * leaf + view.reach_mm + (view.right_mm - view.left_mm) + (view.top_mm - view.bottom_mm) + 1000;
    return length(door - Vec2{plate.x, plate.y}) < reach;
}

std::vector<Obstacle> leavesBefore(const HouseIndex& house, const std::string& room_id, const View& view) {
    std::vector<Obstacle> obstacles;
    for (const plan::Opening* door : house.doorsInto(room_id)) {
        const plan::Opening& opening = *door;
        if (!mayReach(house, opening, view)) continue;
        Obstacle obstacle;
        obstacle.cover.by = Cover::By::DoorLeaf;
        obstacle.cover.id = opening.id;
        obstacle.cover.name = opening.name.empty() ? "open door" : opening.name;
        obstacle.cover.layer = plan::kLayerBuilding;
        for (const Leaf& leaf : doorLeaves(house, opening)) {
            if (leaf.swings_into != room_id || leaf.standing_mm.empty()) continue;
            meshes::Mesh mesh = inView(view, extrude(leaf.standing_mm, leaf.bottom_mm, leaf.top_mm));
            if (!mesh.empty()) obstacle.meshes.push_back(std::move(mesh));
        }
        if (!obstacle.meshes.empty()) obstacles.push_back(std::move(obstacle));
    }
    return obstacles;
}

/// For every ray of the grid how far out it is stopped. The rays are parallel, so each triangle is laid on
/// the grid instead of each ray being tried on every triangle.
class RayGrid {
public:
    explicit RayGrid(const View& view)
        : view_(view), step_u_((view.right_mm - view.left_mm) / kRays),
          step_v_((view.top_mm - view.bottom_mm) / kRays) {
        nearest_.fill(std::numeric_limits<double>::infinity());
    }

    void lay(Vec3 a, Vec3 b, Vec3 c) {
        const double whole = cross(flat(b) - flat(a), flat(c) - flat(a));
        if (whole == 0) return; // seen edge on
        const auto [first_u, last_u] =
            span(std::min({a.x, b.x, c.x}), std::max({a.x, b.x, c.x}), view_.left_mm, step_u_);
        const auto [first_v, last_v] =
            span(std::min({a.y, b.y, c.y}), std::max({a.y, b.y, c.y}), view_.bottom_mm, step_v_);
        for (int j = first_v; j <= last_v; ++j) {
            for (int i = first_u; i <= last_u; ++i) {
                const Vec2 at{view_.left_mm + step_u_ * (i + 0.5), view_.bottom_mm + step_v_ * (j + 0.5)};
                const double wa = cross(flat(b) - at, flat(c) - at) / whole;
                const double wb = cross(flat(c) - at, flat(a) - at) / whole;
                const double wc = 1 - wa - wb;
                if (wa < 0 || wb < 0 || wc < 0) continue;
                const double out = wa * a.z + wb * b.z + wc * c.z;
                double& nearest = nearest_[static_cast<std::size_t>(j * kRays + i)];
                if (out >= -kBehindMm && out <= view_.reach_mm) nearest = std::min(nearest, out);
            }
        }
    }

    /// Part of the rays that are stopped, and the shortest of them.
    void tell(Cover& cover) const {
        const auto stopped = std::ranges::count_if(nearest_, [](double out) { return std::isfinite(out); });
        cover.covered_part = static_cast<double>(stopped) / (kRays * kRays);
        cover.gap_mm = std::max(*std::ranges::min_element(nearest_), 0.0);
    }

private:
    static Vec2 flat(Vec3 p) { return {p.x, p.y}; }

    /// Rays whose centres may lie between two places along one side of the grid.
    static std::pair<int, int> span(double low, double high, double start, double step) {
        const double first = std::clamp((low - start) / step - 1, 0.0, static_cast<double>(kRays));
        const double last = std::clamp((high - start) / step + 1, -1.0, kRays - 1.0);
        return {static_cast<int>(first), static_cast<int>(last)};
    }

    const View& view_;
    double step_u_;
    double step_v_;
    std::array<double, static_cast<std::size_t>(kRays* kRays)> nearest_;
};

/// Shoots the grid; false when no ray is stopped.
bool measure(Obstacle& obstacle, const View& view) {
    RayGrid grid(view);
    for (const meshes::Mesh& mesh : obstacle.meshes)
        for (const auto& t : mesh.triangles)
            grid.lay(mesh.positions_mm[t[0]], mesh.positions_mm[t[1]], mesh.positions_mm[t[2]]);
    grid.tell(obstacle.cover);
    return obstacle.cover.covered_part > 0;
}

} // namespace

std::optional<double> rayHit(const meshes::Mesh& mesh, Vec3 from_mm, Vec3 direction) {
    std::optional<double> nearest;
    for (const auto& t : mesh.triangles) {
        const Vec3 a = mesh.positions_mm[t[0]];
        const Vec3 side = mesh.positions_mm[t[1]] - a;
        const Vec3 other = mesh.positions_mm[t[2]] - a;
        const Vec3 p = cross(direction, other);
        const double determinant = dot(side, p);
        if (determinant == 0) continue; // the ray runs along the triangle
        const Vec3 offset = from_mm - a;
        const double first = dot(offset, p) / determinant;
        if (first < 0 || first > 1) continue;
        const Vec3 q = cross(offset, side);
        const double second = dot(direction, q) / determinant;
        if (second < 0 || first + second > 1) continue;
        const double distance = dot(other, q) / determinant;
        if (distance >= 0 && (!nearest || distance < *nearest)) nearest = distance;
    }
    return nearest;
}

std::vector<Cover> coversOf(const plan::Plan& plan, const std::string& room_id, const plan::Host& host,
                            double width_mm, double height_mm, double reach_mm,
                            const std::filesystem::path& base) {
    return coversOf(HouseIndex(plan, room_id), room_id, host, width_mm, height_mm, reach_mm, base);
}

namespace {
View viewOf(const Frame& frame, const plan::Host& host, double width_mm, double height_mm, double reach_mm) {
    return {frame,
            host.u_mm - width_mm / 2,
            host.u_mm + width_mm / 2,
            host.v_mm - height_mm / 2,
            host.v_mm + height_mm / 2,
            reach_mm};
}

std::vector<Cover> covering(std::vector<Obstacle> obstacles, const View& view) {
    std::vector<Cover> covers;
    for (Obstacle& obstacle : obstacles)
        if (measure(obstacle, view)) covers.push_back(std::move(obstacle.cover));
    std::ranges::sort(covers, [](const Cover& a, const Cover& b) {
        return a.covered_part != b.covered_part ? a.covered_part > b.covered_part : a.id < b.id;
    });
    return covers;
}
} // namespace

std::vector<Cover> coversOf(const HouseIndex& house, const std::string& room_id, const plan::Host& host,
                            double width_mm, double height_mm, double reach_mm,
                            const std::filesystem::path& base) {
    const auto frame = hostFrame(house, room_id, host);
    if (!frame) return {};
    if (!(width_mm > 0 && height_mm > 0)) return {};
    const View view = viewOf(*frame, host, width_mm, height_mm, reach_mm);
    std::vector<Obstacle> obstacles = furnitureBefore(house, room_id, host, view, base);
    for (Obstacle& leaf : leavesBefore(house, room_id, view))
        obstacles.push_back(std::move(leaf));
    return covering(std::move(obstacles), view);
}

std::vector<Cover> leafCoversOf(const HouseIndex& house, const std::string& room_id, const plan::Host& host,
                                double width_mm, double height_mm, double reach_mm) {
    if (house.doorsInto(room_id).empty() || !(width_mm > 0 && height_mm > 0)) return {};
    const auto frame = hostFrame(house, room_id, host);
    if (!frame) return {};
    const View view = viewOf(*frame, host, width_mm, height_mm, reach_mm);
    return covering(leavesBefore(house, room_id, view), view);
}

} // namespace gangway::geometry
