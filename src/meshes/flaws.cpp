// Edges are counted after corners are joined; crossings are found by a sweep along x.
#include "meshes/flaws.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace gangway::meshes {

using plan::Vec3;

namespace {
constexpr double kJoinMm = 0.01;
constexpr double kThinMm = 0.1;
/// No piece of furniture is larger; common practice, no source.
constexpr double kLargestMm = 20000;
constexpr std::size_t kMostTriangles = 20000;

using Corners = std::array<std::uint32_t, 3>;

/// The triangles of all meshes over corners that are joined where they lie on each other.
struct Surface {
    std::vector<Vec3> points;
    std::vector<Corners> triangles;
};

Surface joined(const std::vector<const Mesh*>& meshes) {
    Surface surface;
    std::map<std::array<long long, 3>, std::uint32_t> known;
    for (const Mesh* mesh : meshes)
        for (const Corners& triangle : mesh->triangles) {
            Corners made{};
            for (std::size_t i = 0; i < 3; ++i) {
                const Vec3 p = mesh->positions_mm[triangle[i]];
                const std::array<long long, 3> key{std::llround(p.x / kJoinMm), std::llround(p.y / kJoinMm),
                                                   std::llround(p.z / kJoinMm)};
                const auto [at, is_new] =
                    known.emplace(key, static_cast<std::uint32_t>(surface.points.size()));
                if (is_new) surface.points.push_back(p);
                made[i] = at->second;
            }
            if (made[0] != made[1] && made[1] != made[2] && made[2] != made[0])
                surface.triangles.push_back(made);
        }
    return surface;
}

Vec3 sizeOf(const Surface& surface) {
    Vec3 low = surface.points.front();
    Vec3 high = low;
    for (const Vec3 p : surface.points) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
    }
    return high - low;
}

std::size_t openEdges(const Surface& surface) {
    std::map<std::pair<std::uint32_t, std::uint32_t>, int> uses;
    for (const Corners& t : surface.triangles)
        for (std::size_t i = 0; i < 3; ++i)
            ++uses[std::minmax(t[i], t[(i + 1) % 3])];
    return static_cast<std::size_t>(
        std::ranges::count_if(uses, [](const auto& use) { return use.second == 1; }));
}

/// The shell of each triangle, by the corners that they share.
std::vector<std::uint32_t> shellsOf(const Surface& surface) {
    std::vector<std::uint32_t> parent(surface.points.size());
    std::iota(parent.begin(), parent.end(), 0U);
    const auto root = [&](std::uint32_t i) {
        while (parent[i] != i)
            i = parent[i] = parent[parent[i]];
        return i;
    };
    for (const Corners& t : surface.triangles)
        parent[root(t[0])] = parent[root(t[1])] = root(t[2]);
    std::vector<std::uint32_t> shells;
    for (const Corners& t : surface.triangles)
        shells.push_back(root(t[0]));
    return shells;
}

/// Whether an edge passes through the inside of a triangle, not only touches it (Moeller and Trumbore, Fast
/// Minimum Storage Ray/Triangle Intersection, 1997).
bool pierces(Vec3 from, Vec3 to, Vec3 a, Vec3 b, Vec3 c) {
    constexpr double kInside = 1e-6;
    const Vec3 way = to - from;
    const Vec3 p = cross(way, c - a);
    const double determinant = dot(b - a, p);
    if (std::abs(determinant) < 1e-9 * length(way) * length(b - a) * length(c - a)) return false; // along it
    const Vec3 offset = from - a;
    const double u = dot(offset, p) / determinant;
    const Vec3 q = cross(offset, b - a);
    const double v = dot(way, q) / determinant;
    const double t = dot(c - a, q) / determinant;
    return u > kInside && v > kInside && u + v < 1 - kInside && t > kInside && t < 1 - kInside;
}

bool cross(const Surface& surface, const Corners& a, const Corners& b) {
    for (const std::uint32_t corner : a)
        if (std::ranges::find(b, corner) != b.end()) return false; // neighbours
    const auto at = [&](const Corners& t, std::size_t i) { return surface.points[t[i % 3]]; };
    for (std::size_t i = 0; i < 3; ++i)
        if (pierces(at(a, i), at(a, i + 1), at(b, 0), at(b, 1), at(b, 2)) ||
            pierces(at(b, i), at(b, i + 1), at(a, 0), at(a, 1), at(a, 2)))
            return true;
    return false;
}

bool crossesItself(const Surface& surface) {
    const auto shells = shellsOf(surface);
    struct Extent {
        std::size_t triangle;
        Vec3 low, high;
    };
    std::vector<Extent> extents;
    for (std::size_t i = 0; i < surface.triangles.size(); ++i) {
        const Corners& t = surface.triangles[i];
        Extent extent{i, surface.points[t[0]], surface.points[t[0]]};
        for (const std::uint32_t corner : t) {
            const Vec3 p = surface.points[corner];
            extent.low = {std::min(extent.low.x, p.x), std::min(extent.low.y, p.y),
                          std::min(extent.low.z, p.z)};
            extent.high = {std::max(extent.high.x, p.x), std::max(extent.high.y, p.y),
                           std::max(extent.high.z, p.z)};
        }
        extents.push_back(extent);
    }
    std::ranges::sort(extents, {}, [](const Extent& e) { return e.low.x; });
    for (std::size_t i = 0; i < extents.size(); ++i)
        for (std::size_t j = i + 1; j < extents.size() && extents[j].low.x <= extents[i].high.x; ++j) {
            const Extent& a = extents[i];
            const Extent& b = extents[j];
            if (a.low.y > b.high.y || b.low.y > a.high.y || a.low.z > b.high.z || b.low.z > a.high.z ||
                shells[a.triangle] != shells[b.triangle])
                continue;
            if (cross(surface, surface.triangles[a.triangle], surface.triangles[b.triangle])) return true;
        }
    return false;
}
} // namespace

std::string flawOf(const std::vector<Part>& parts) {
    std::size_t count = 0;
    std::vector<const Mesh*> meshes;
    for (const Part& part : parts) {
        count += part.mesh.triangles.size();
        meshes.push_back(&part.mesh);
    }
    if (count == 0) return "is empty";
    if (count > kMostTriangles)
        return fmt::format("has {} triangles, more than the {} that are looked through", count,
                           kMostTriangles);
    const Surface surface = joined(meshes);
    if (surface.triangles.empty()) return "is empty";
    const Vec3 size = sizeOf(surface);
    const double largest = std::max({size.x, size.y, size.z});
    if (!(largest <= kLargestMm))
        return fmt::format("is {:.1f} m large, more than any furniture: save it in metres", largest / 1000);
    if (std::min({size.x, size.y, size.z}) < kThinMm) return "is flat";
    if (const std::size_t open = openEdges(surface); open > 0)
        return fmt::format("is open: {} edges belong to one triangle only", open);
    if (crossesItself(surface)) return "crosses itself: triangles of one shell pass through each other";
    return {};
}

bool isOpen(const std::vector<const Mesh*>& meshes) {
    return openEdges(joined(meshes)) > 0;
}

} // namespace gangway::meshes
