// Sloped ceilings: the outline is split along the creases, each part cut into triangles, and a height
// is read off the triangle a point lies in.
#include "geometry/ceiling.hpp"

#include "geometry/walls.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gangway::geometry {
namespace {

using Facet = std::vector<std::size_t>; // corners of the outline, in order

/// Splits a facet between two of its corners; leaves it when they are neighbours or not both in it.
std::vector<Facet> splitFacet(const Facet& facet, std::size_t a, std::size_t b) {
    const auto at_a = std::ranges::find(facet, a) - facet.begin();
    const auto at_b = std::ranges::find(facet, b) - facet.begin();
    const auto count = static_cast<std::ptrdiff_t>(facet.size());
    if (at_a == count || at_b == count) return {facet};
    const auto [low, high] = std::minmax(at_a, at_b);
    if (high - low < 2 || high - low > count - 2) return {facet};
    const Facet inner(facet.begin() + low, facet.begin() + high + 1);
    Facet outer(facet.begin() + high, facet.end());
    outer.insert(outer.end(), facet.begin(), facet.begin() + low + 1);
    return {inner, outer};
}

std::vector<Facet> facets(const plan::Room& room) {
    Facet whole(room.outline.size());
    for (std::size_t i = 0; i < whole.size(); ++i)
        whole[i] = i;
    std::vector<Facet> parts = {whole};
    for (const auto& [a, b] : room.ceiling.creases) {
        if (a < 0 || b < 0) continue;
        std::vector<Facet> next;
        for (const Facet& part : parts)
            for (Facet& piece : splitFacet(part, static_cast<std::size_t>(a), static_cast<std::size_t>(b)))
                next.push_back(std::move(piece));
        parts = std::move(next);
    }
    return parts;
}

/// Barycentric weights of a point in a triangle on plan.
std::array<double, 3> weights(const CeilingTriangle& t, Vec2 at) {
    const Vec2 a{t[0].x, t[0].y};
    const Vec2 b{t[1].x, t[1].y};
    const Vec2 c{t[2].x, t[2].y};
    const double whole = cross(b - a, c - a);
    return {cross(b - at, c - at) / whole, cross(c - at, a - at) / whole, cross(a - at, b - at) / whole};
}

} // namespace

double cornerHeight(const plan::Room& room, std::size_t corner) {
    const auto& heights = room.ceiling.heights_mm;
    if (heights.empty()) return plan::Ceiling{}.heights_mm.front();
    return heights.size() == 1 ? heights.front() : heights[std::min(corner, heights.size() - 1)];
}

bool flatCeiling(const plan::Room& room) {
    const auto& heights = room.ceiling.heights_mm;
    return std::ranges::all_of(heights, [&](double h) { return h == heights.front(); });
}

std::vector<CeilingTriangle> ceilingTriangles(const plan::Room& room) {
    std::vector<CeilingTriangle> triangles;
    for (const Facet& facet : facets(room)) {
        std::vector<Vec2> outline;
        for (const std::size_t corner : facet)
            outline.push_back(room.outline[corner]);
        for (const auto& t : triangulate(outline)) {
            CeilingTriangle triangle;
            for (std::size_t k = 0; k < 3; ++k)
                triangle[k] = {outline[t[k]].x, outline[t[k]].y, cornerHeight(room, facet[t[k]])};
            triangles.push_back(triangle);
        }
    }
    return triangles;
}

double ceilingHeightAt(const plan::Room& room, Vec2 at_mm) {
    if (flatCeiling(room)) return cornerHeight(room, 0);
    // The triangle the point lies in, or is least far outside of.
    double best_weight = -std::numeric_limits<double>::infinity();
    double height = cornerHeight(room, 0);
    for (const CeilingTriangle& triangle : ceilingTriangles(room)) {
        const auto w = weights(triangle, at_mm);
        const double least = std::min({w[0], w[1], w[2]});
        if (!(least > best_weight)) continue;
        best_weight = least;
        height = w[0] * triangle[0].z + w[1] * triangle[1].z + w[2] * triangle[2].z;
    }
    return height;
}

std::vector<double> foldCrossings(const plan::Room& room, Vec2 from_mm, Vec2 to_mm) {
    std::vector<double> parts;
    const Vec2 along = to_mm - from_mm;
    for (const auto& [a, b] : room.ceiling.creases) {
        const auto count = static_cast<int>(room.outline.size());
        if (a < 0 || b < 0 || a >= count || b >= count) continue;
        const Vec2 start = room.outline[static_cast<std::size_t>(a)];
        const Vec2 fold = room.outline[static_cast<std::size_t>(b)] - start;
        const double turn = cross(along, fold);
        if (turn == 0) continue;
        const double on_line = cross(start - from_mm, fold) / turn;
        const double on_fold = cross(start - from_mm, along) / turn;
        if (on_line > 1e-9 && on_line < 1 - 1e-9 && on_fold >= 0 && on_fold <= 1) parts.push_back(on_line);
    }
    std::ranges::sort(parts);
    return parts;
}

} // namespace gangway::geometry
