#include "checks/plinths.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <limits>
#include <optional>

namespace gangway::checks {

using plan::Vec3;

namespace {
/// A plinth thicker than this is no board but a foot, solid right through.
constexpr double kBoardMm = 50;

struct Extent {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    void take(double at) {
        low = std::min(low, at);
        high = std::max(high, at);
    }
};

std::optional<geometry::Obstacle> behindPlinth(const Facts& facts, const WallScene& scene,
                                               const plan::Furniture& piece) {
    const auto made = geometry::furnitureSolids(piece, facts.base());
    const auto plinth = std::ranges::find(made.solids, "plinth", &geometry::Solid::name);
    if (plinth == made.solids.end()) return std::nullopt;
    Extent x, y, z;
    for (const Vec3 p : plinth->mesh.positions_mm) {
        const Vec3 at = geometry::toLocal(piece, p);
        x.take(at.x);
        y.take(at.y);
        z.take(p.z);
    }
    if (y.high - y.low > kBoardMm) return std::nullopt;
    Extent u, w;
    for (const double across : {x.low, x.high})
        for (const double out : {y.low, piece.size.depth_mm / 2}) {
            const Vec3 at = geometry::toFrame(scene.frame, geometry::fromLocal(piece, Vec3{across, out, 0}));
            u.take(at.x);
            w.take(at.z);
        }
    if (w.low > facts.limit("coverReach") || w.high <= 0) return std::nullopt;
    return geometry::Obstacle{&piece, plinth->name, rectangle(u.low, u.high, z.low, z.high),
                              std::max(w.low, 0.0), w.high};
}
} // namespace

std::vector<geometry::Obstacle> behindPlinths(const Facts& facts, const WallScene& scene) {
    std::vector<geometry::Obstacle> behind;
    const plan::Furniture* last = nullptr;
    for (const geometry::Obstacle& obstacle : scene.obstacles) {
        const plan::Furniture* piece = obstacle.piece;
        if (piece == last) continue; // a piece's solids follow each other
        last = piece;
        if (plan::furnitureValue(*piece, "plinthHeight") <= 0) continue;
        if (auto room = behindPlinth(facts, scene, *piece)) behind.push_back(std::move(*room));
    }
    return behind;
}

} // namespace gangway::checks
