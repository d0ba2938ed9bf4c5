// Stairs through ceilings and floors: their footprints are cut out, and the edge of the floor above is lined.
#include "geometry/wall_build.hpp"

#include <algorithm>

namespace gangway::geometry {
namespace {

using Polygon = std::vector<Vec3>;

/// Pieces smaller than this are left away.
constexpr double kLeastAreaMm2 = 0.5;
/// The lining stands this far inside the void, clear of walls and boxes that are flush with its edge.
constexpr double kLiningInsetMm = 1;

double planArea(const Polygon& polygon) {
    double twice = 0;
    for (std::size_t i = 1; i + 1 < polygon.size(); ++i) {
        const Vec3 a = polygon[i] - polygon[0];
        const Vec3 b = polygon[i + 1] - polygon[0];
        twice += a.x * b.y - a.y * b.x;
    }
    return std::abs(twice) / 2;
}

/// The part of a convex polygon to the right (sign 1) or left (-1) of the line from a to b on plan.
Polygon besideLine(const Polygon& polygon, Vec2 a, Vec2 b, double sign) {
    const auto beside = [&](Vec3 p) { return -sign * cross(b - a, Vec2{p.x, p.y} - a); };
    Polygon kept;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec3 p = polygon[i];
        const Vec3 q = polygon[(i + 1) % polygon.size()];
        const double at_p = beside(p);
        const double at_q = beside(q);
        if (at_p >= 0) kept.push_back(p);
        if ((at_p > 0 && at_q < 0) || (at_p < 0 && at_q > 0))
            kept.push_back(p + (q - p) * (at_p / (at_p - at_q)));
    }
    return kept.size() < 3 || planArea(kept) < kLeastAreaMm2 ? Polygon{} : kept;
}

/// A convex polygon less a void, as convex pieces: what lies outside the first side of the void, then of the
/// rest what lies outside the second, and so on.
void addRest(const Polygon& polygon, const StairVoid& cut, std::vector<Polygon>& pieces) {
    std::vector<Polygon> outside;
    Polygon rest = polygon;
    const auto& ring = cut.outline_mm;
    for (std::size_t i = 0; i < ring.size() && !rest.empty(); ++i) {
        const Vec2 a = ring[i];
        const Vec2 b = ring[(i + 1) % ring.size()];
        if (Polygon piece = besideLine(rest, a, b, -1); !piece.empty()) outside.push_back(std::move(piece));
        rest = besideLine(rest, a, b, 1);
    }
    if (rest.empty())
        pieces.push_back(polygon); // the void does not reach it
    else
        pieces.insert(pieces.end(), outside.begin(), outside.end());
}

} // namespace

void cutVoids(meshes::Mesh& mesh, std::span<const StairVoid> voids) {
    if (voids.empty()) return;
    meshes::Mesh cut;
    for (const auto& t : mesh.triangles) {
        std::vector<Polygon> pieces = {
            {mesh.positions_mm[t[0]], mesh.positions_mm[t[1]], mesh.positions_mm[t[2]]}};
        for (const StairVoid& hole : voids) {
            std::vector<Polygon> left;
            for (const Polygon& piece : pieces)
                addRest(piece, hole, left);
            pieces = std::move(left);
        }
        for (const Polygon& piece : pieces) {
            const auto first = static_cast<std::uint32_t>(cut.positions_mm.size());
            cut.positions_mm.insert(cut.positions_mm.end(), piece.begin(), piece.end());
            cut.normals.insert(cut.normals.end(), piece.size(), mesh.normals[t[0]]);
            for (std::uint32_t i = 1; i + 1 < piece.size(); ++i)
                cut.triangles.push_back({first, first + i, first + i + 1});
        }
    }
    mesh = std::move(cut);
}

void addLinings(meshes::Mesh& mesh, const plan::Room& room, std::span<const StairVoid> voids) {
    for (const StairVoid& cut : voids) {
        if (!cut.rise_mm) continue;
        const double top = *cut.rise_mm;
        for (std::size_t i = 0; i < cut.outline_mm.size(); ++i) {
            const Vec2 from = cut.outline_mm[i];
            const Vec2 to = cut.outline_mm[(i + 1) % cut.outline_mm.size()];
            const double size = length(to - from);
            if (size <= 2 * kLiningInsetMm) continue;
            const Vec2 along = (to - from) * (1 / size);
            const Vec2 inwards = Vec2{along.y, -along.x} * kLiningInsetMm;
            const Vec2 a = from + along * kLiningInsetMm + inwards;
            const Vec2 b = to - along * kLiningInsetMm + inwards;
            const double low_a = ceilingHeightAt(room, a);
            const double low_b = ceilingHeightAt(room, b);
            if (low_a >= top || low_b >= top) continue;
            addQuad(mesh, {a.x, a.y, low_a}, {b.x, b.y, low_b}, {b.x, b.y, top}, {a.x, a.y, top});
        }
    }
}

} // namespace gangway::geometry
