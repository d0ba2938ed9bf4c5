#include "geometry/rough_bounds.hpp"

#include "geometry/furniture.hpp"
#include "plan/furniture_kinds.hpp"

#include <algorithm>

namespace gangway::geometry {
namespace {

/// Taps, handles and cushions may stand this far out of a piece's box.
constexpr double kSparePlanMm = 60;
/// Pipes hang below, and hand-rails, taps and shower heads stand above it.
constexpr double kSpareBelowMm = 200;
constexpr double kSpareAboveMm = 1200;
constexpr double kShowerTopMm = 2200;

} // namespace

void Bounds::take(Vec3 p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
}

Bounds roughBounds(const plan::Furniture& piece, const Frame& frame) {
    Bounds bounds;
    if (piece.kind == "gltf") return bounds;
    const auto value = [&](std::string_view key) { return plan::furnitureValue(piece, key); };
    const double x = std::max(piece.size.width_mm, value("headboardWidth")) / 2 + kSparePlanMm;
    const double y = piece.size.depth_mm / 2 + kSparePlanMm + value("steps") * value("going");
    const double tall = std::max({piece.size.height_mm, value("headboardHeight"), value("railHeight"),
                                  value("steps") * value("rise"), kShowerTopMm});
    for (const double z : {-kSpareBelowMm, tall + kSpareAboveMm})
        for (const Vec2 p : {Vec2{-x, -y}, Vec2{-x, y}, Vec2{x, y}, Vec2{x, -y}})
            bounds.take(toFrame(frame, fromLocal(piece, {p.x, p.y, z})));
    return bounds;
}

} // namespace gangway::geometry
