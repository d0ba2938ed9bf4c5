#include "app/thing_place.hpp"

#include "edit/luminaire_edits.hpp"
#include "geometry/furniture.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace gangway::app {

using plan::Vec2;

namespace {
/// Between two directions, 0 to 180 degrees.
double angleBetween(double a_deg, double b_deg) {
    const double turn = std::fmod(std::abs(a_deg - b_deg), 360.0);
    return std::min(turn, 360.0 - turn);
}

/// How far along a ray a segment is met; nullopt when it is not.
std::optional<double> alongRay(Vec2 from, Vec2 way, Vec2 a, Vec2 b) {
    const Vec2 edge = b - a;
    const double turned = plan::cross(way, edge);
    if (std::abs(turned) < 1e-9) return std::nullopt;
    const double t = plan::cross(a - from, edge) / turned;
    const double s = plan::cross(a - from, way) / turned;
    return t >= -1e-6 && s >= -1e-9 && s <= 1 + 1e-9 ? std::optional(t) : std::nullopt;
}
} // namespace

std::optional<AtWall> atWall(const plan::Room& room, const plan::Furniture& piece) {
    constexpr double kBehind_mm = 600;
    constexpr double kThrough_mm = 60; // a back that was put into the wall by a slip is still at it
    constexpr double kParallel_deg = 0.5;
    std::optional<AtWall> best;
    for (std::size_t i = 0; i < room.walls.size(); ++i) {
        const geometry::Frame frame = geometry::wallFrame(room, i);
        const double wall_deg = std::atan2(frame.u.y, frame.u.x) * 180 / std::numbers::pi;
        if (angleBetween(wall_deg, piece.turn_deg) > kParallel_deg) continue;
        const plan::Vec3 at = geometry::toFrame(frame, {piece.at_mm.x, piece.at_mm.y, 0});
        const double gap = at.z - piece.size.depth_mm / 2;
        if (at.x < 0 || at.x > frame.length_mm || gap < -kThrough_mm || gap > kBehind_mm) continue;
        if (best && std::abs(best->gap_mm) <= std::abs(gap)) continue;
        const double half = piece.size.width_mm / 2;
        best = AtWall{room.walls[i].id,       at.x - half,           frame.length_mm - at.x - half, gap,
                      {frame.u.x, frame.u.y}, {frame.w.x, frame.w.y}};
    }
    return best;
}

Vec2 towards(Compass side) {
    constexpr std::array<Vec2, 4> kWays{Vec2{-1, 0}, Vec2{1, 0}, Vec2{0, -1}, Vec2{0, 1}};
    return kWays[static_cast<std::size_t>(side)];
}

std::array<std::optional<double>, 4> distancesAround(const plan::Room& room, Vec2 at, Vec2 half) {
    std::array<std::optional<double>, 4> found;
    for (std::size_t side = 0; side < found.size(); ++side) {
        const Vec2 way = towards(static_cast<Compass>(side));
        const double own = std::abs(way.x) * half.x + std::abs(way.y) * half.y;
        for (std::size_t i = 0; i < room.walls.size(); ++i) {
            const geometry::WallEdge edge = geometry::wallEdge(room, i);
            const auto t = alongRay(at, way, edge.from_mm, edge.to_mm);
            if (t && (!found[side] || *t - own < *found[side])) found[side] = *t - own;
        }
    }
    return found;
}

Vec2 halfAround(const plan::Furniture& piece) {
    Vec2 half;
    for (const Vec2 corner : geometry::footprint(piece)) {
        half.x = std::max(half.x, std::abs(corner.x - piece.at_mm.x));
        half.y = std::max(half.y, std::abs(corner.y - piece.at_mm.y));
    }
    return half;
}

std::optional<NearWall> nearestWall(const plan::Plan& plan, const std::string& storey, Vec2 at,
                                    double reach) {
    std::optional<NearWall> best;
    for (const auto& room : plan.rooms) {
        if (room.storey != storey) continue;
        for (std::size_t i = 0; i < room.walls.size(); ++i) {
            const geometry::Frame frame = geometry::wallFrame(room, i);
            const plan::Vec3 local = geometry::toFrame(frame, {at.x, at.y, 0});
            if (local.x < 0 || local.x > frame.length_mm || std::abs(local.z) > reach) continue;
            if (best && std::abs(best->off_mm) <= std::abs(local.z)) continue;
            best = NearWall{room.id, i, local.x, local.z};
        }
    }
    return best;
}

Vec2 southWest(const plan::Room& room) {
    Vec2 low{std::numeric_limits<double>::max(), std::numeric_limits<double>::max()};
    for (const Vec2 corner : room.outline)
        low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
    return low;
}

Vec2 middleOf(const plan::Room& room) {
    const Vec2 low = southWest(room);
    Vec2 high = low;
    for (const Vec2 corner : room.outline)
        high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
    const Vec2 middle = (low + high) * 0.5;
    if (geometry::insideRoom(room, middle)) return middle;
    const edit::PlanRectangle inner = edit::gridRectangle(room);
    return (inner.low_mm + inner.high_mm) * 0.5;
}

const plan::Opening* findOpening(const plan::Plan& plan, const std::string& id) {
    const auto found = std::ranges::find(plan.openings, id, &plan::Opening::id);
    return found == plan.openings.end() ? nullptr : &*found;
}

} // namespace gangway::app
