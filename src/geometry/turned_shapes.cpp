// Cylinders, extrusions, turned bodies and bowls.
#include "geometry/shapes.hpp"
#include "geometry/walls.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::geometry {
namespace {

Vec3 unit(Vec3 v) {
    const double size = length(v);
    return size > 0 ? v * (1 / size) : Vec3{0, 0, 1};
}

/// Two unit vectors square to an axis and to each other, so that first x second = axis.
std::array<Vec3, 2> across(Vec3 axis) {
    const Vec3 aside = std::abs(axis.z) < 0.9 ? Vec3{0, 0, 1} : Vec3{1, 0, 0};
    const Vec3 first = unit(cross(aside, axis));
    return {first, cross(axis, first)};
}

double angleOf(int i, int sides) {
    return 2 * std::numbers::pi * (i % sides) / sides;
}

/// Neighbouring parts of a profile that turn less than this are shaded as one round surface.
constexpr double kSmoothCosine = 0.766; // 40 degrees

/// A fan that closes a loop of points lying in a plane.
void addCap(meshes::Mesh& mesh, const std::vector<Vec3>& loop, Vec3 normal) {
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    for (const Vec3 p : loop) {
        mesh.positions_mm.push_back(p);
        mesh.normals.push_back(normal);
    }
    for (std::uint32_t i = 1; i + 1 < loop.size(); ++i)
        mesh.triangles.push_back({first, first + i, first + i + 1});
}

/// A level face that closes a loop of any shape, looking up (1) or down (-1).
void addFlat(meshes::Mesh& mesh, const Loop& loop, double up) {
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    for (const Vec2 p : loop.corners) {
        mesh.positions_mm.push_back({p.x, p.y, loop.z_mm});
        mesh.normals.push_back({0, 0, up});
    }
    for (const auto& t : triangulate(loop.corners)) {
        if (up > 0)
            mesh.triangles.push_back({first + t[0], first + t[1], first + t[2]});
        else
            mesh.triangles.push_back({first + t[0], first + t[2], first + t[1]});
    }
}

/// A strip between two rows of as many points, going round; `lower` first.
void addBand(meshes::Mesh& mesh, const std::vector<Vec3>& lower, const std::vector<Vec3>& upper,
             const std::vector<Vec3>& lower_normals, const std::vector<Vec3>& upper_normals) {
    const auto n = static_cast<std::uint32_t>(lower.size());
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    mesh.positions_mm.insert(mesh.positions_mm.end(), lower.begin(), lower.end());
    mesh.positions_mm.insert(mesh.positions_mm.end(), upper.begin(), upper.end());
    mesh.normals.insert(mesh.normals.end(), lower_normals.begin(), lower_normals.end());
    mesh.normals.insert(mesh.normals.end(), upper_normals.begin(), upper_normals.end());
    const auto add = [&](std::uint32_t a, std::uint32_t b, std::uint32_t c) {
        const Vec3 p = mesh.positions_mm[a], q = mesh.positions_mm[b], r = mesh.positions_mm[c];
        if (p != q && q != r && r != p) mesh.triangles.push_back({a, b, c}); // no slivers at a pole
    };
    for (std::uint32_t i = 0; i < n; ++i) {
        const std::uint32_t j = (i + 1) % n;
        add(first + i, first + j, first + n + j);
        add(first + i, first + n + j, first + n + i);
    }
}

/// A strip between two loops: shaded round where the loop bends softly, sharp at its corners.
void addWalls(meshes::Mesh& mesh, const std::vector<Vec3>& lower, const std::vector<Vec3>& upper) {
    const std::size_t n = lower.size();
    std::vector<Vec3> flat;
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t j = (i + 1) % n;
        flat.push_back(unit(cross((lower[j] - lower[i]) + (upper[j] - upper[i]),
                                  (upper[i] + upper[j]) - (lower[i] + lower[j]))));
    }
    const auto shaded = [&](std::size_t edge, std::size_t neighbour) {
        return dot(flat[edge], flat[neighbour]) > kSmoothCosine ? unit(flat[edge] + flat[neighbour])
                                                                : flat[edge];
    };
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t j = (i + 1) % n;
        const Vec3 start = shaded(i, (i + n - 1) % n);
        const Vec3 end = shaded(i, j);
        const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
        mesh.positions_mm.insert(mesh.positions_mm.end(), {lower[i], lower[j], upper[j], upper[i]});
        mesh.normals.insert(mesh.normals.end(), {start, end, end, start});
        mesh.triangles.push_back({first, first + 1, first + 2});
        mesh.triangles.push_back({first, first + 2, first + 3});
    }
}

} // namespace

meshes::Mesh cylinder(Vec3 from_mm, Vec3 to_mm, double radius_mm, int sides,
                      std::optional<double> end_radius_mm) {
    const Vec3 axis = unit(to_mm - from_mm);
    const auto [first, second] = across(axis);
    const double end_radius = end_radius_mm.value_or(radius_mm);
    const double height = length(to_mm - from_mm);
    std::vector<Vec3> lower, upper, normals;
    for (int i = 0; i < sides; ++i) {
        const Vec3 out = first * std::cos(angleOf(i, sides)) + second * std::sin(angleOf(i, sides));
        lower.push_back(from_mm + out * radius_mm);
        upper.push_back(to_mm + out * end_radius);
        normals.push_back(unit(out * height + axis * (radius_mm - end_radius)));
    }
    meshes::Mesh mesh;
    addBand(mesh, lower, upper, normals, normals);
    addCap(mesh, upper, axis);
    std::ranges::reverse(lower);
    addCap(mesh, lower, axis * -1);
    return mesh;
}

meshes::Mesh extrude(const std::vector<Vec2>& outline, double low_mm, double high_mm,
                     const std::vector<std::vector<Vec2>>& holes) {
    meshes::Mesh mesh;
    std::vector<Vec2> points = outline;
    for (const auto& hole : holes)
        points.insert(points.end(), hole.begin(), hole.end());
    const auto triangles = triangulate(outline, holes);
    const auto n = static_cast<std::uint32_t>(points.size());
    for (const double z : {low_mm, high_mm}) {
        for (const Vec2 p : points) {
            mesh.positions_mm.push_back({p.x, p.y, z});
            mesh.normals.push_back({0, 0, z == high_mm ? 1.0 : -1.0});
        }
    }
    for (const auto& t : triangles) {
        mesh.triangles.push_back({t[0], t[2], t[1]});
        mesh.triangles.push_back({n + t[0], n + t[1], n + t[2]});
    }
    const auto addSides = [&](std::vector<Vec2> ring, bool counter_clockwise) {
        if ((signedArea(ring) > 0) != counter_clockwise) std::ranges::reverse(ring);
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Vec2 a = ring[i];
            const Vec2 b = ring[(i + 1) % ring.size()];
            const Vec3 out = unit({b.y - a.y, a.x - b.x, 0});
            addCap(mesh, {{a.x, a.y, low_mm}, {b.x, b.y, low_mm}, {b.x, b.y, high_mm}, {a.x, a.y, high_mm}},
                   out);
        }
    };
    addSides(outline, true);
    for (const auto& hole : holes)
        addSides(hole, false);
    return mesh;
}

meshes::Mesh lathe(std::span<const Vec2> profile, Vec3 centre_mm, int sides, Vec2 stretch) {
    const auto pointAt = [&](Vec2 p, int i) {
        const double c = std::cos(angleOf(i, sides));
        const double s = std::sin(angleOf(i, sides));
        return centre_mm + Vec3{p.x * c * stretch.x, p.x * s * stretch.y, p.y};
    };
    // Outward normal of the profile's part k in (radius, z).
    const auto partNormal = [&](std::size_t k) {
        const Vec2 along = profile[k + 1] - profile[k];
        return along * (1 / length(along));
    };
    const auto cornerNormal = [&](std::size_t corner, std::size_t part) {
        const Vec2 own = partNormal(part);
        Vec2 sum = own;
        const std::size_t other = corner == part ? part - 1 : part + 1;
        const bool has_other = corner == part ? part > 0 : part + 2 < profile.size();
        if (has_other && dot(own, partNormal(other)) > kSmoothCosine) sum = own + partNormal(other);
        return Vec2{sum.y, -sum.x};
    };
    const auto normalAt = [&](Vec2 n, int i) {
        const double c = std::cos(angleOf(i, sides));
        const double s = std::sin(angleOf(i, sides));
        return unit({n.x * c / stretch.x, n.x * s / stretch.y, n.y});
    };
    meshes::Mesh mesh;
    for (std::size_t k = 0; k + 1 < profile.size(); ++k) {
        if (profile[k] == profile[k + 1]) continue;
        std::vector<Vec3> lower, upper, lower_normals, upper_normals;
        for (int i = 0; i < sides; ++i) {
            lower.push_back(pointAt(profile[k], i));
            upper.push_back(pointAt(profile[k + 1], i));
            lower_normals.push_back(normalAt(cornerNormal(k, k), i));
            upper_normals.push_back(normalAt(cornerNormal(k + 1, k), i));
        }
        addBand(mesh, lower, upper, lower_normals, upper_normals);
    }
    return mesh;
}

std::vector<Vec2> roundedRectangle(Vec2 centre_mm, double width_mm, double depth_mm, double radius_mm,
                                   int steps) {
    const double radius = std::min({radius_mm, width_mm * 0.499, depth_mm * 0.499});
    const Vec2 inner{width_mm / 2 - radius, depth_mm / 2 - radius};
    constexpr Vec2 kCorners[] = {{1, 1}, {-1, 1}, {-1, -1}, {1, -1}};
    std::vector<Vec2> outline;
    for (int corner = 0; corner < 4; ++corner) {
        for (int i = 0; i <= steps; ++i) {
            const double angle_rad = std::numbers::pi / 2 * (corner + static_cast<double>(i) / steps);
            outline.push_back(centre_mm + Vec2{inner.x * kCorners[corner].x + radius * std::cos(angle_rad),
                                               inner.y * kCorners[corner].y + radius * std::sin(angle_rad)});
        }
    }
    return outline;
}

std::vector<Vec2> ellipse(Vec2 centre_mm, double width_mm, double depth_mm, int sides) {
    std::vector<Vec2> outline;
    for (int i = 0; i < sides; ++i)
        outline.push_back(centre_mm + Vec2{width_mm / 2 * std::cos(angleOf(i, sides)),
                                           depth_mm / 2 * std::sin(angleOf(i, sides))});
    return outline;
}

meshes::Mesh lofted(std::span<const Loop> loops) {
    meshes::Mesh mesh;
    const auto raised = [](const Loop& loop) {
        std::vector<Vec3> points;
        for (const Vec2 p : loop.corners)
            points.push_back({p.x, p.y, loop.z_mm});
        return points;
    };
    for (std::size_t k = 0; k + 1 < loops.size(); ++k)
        addWalls(mesh, raised(loops[k]), raised(loops[k + 1]));
    addFlat(mesh, loops.front(), -1);
    addFlat(mesh, loops.back(), 1);
    return mesh;
}

} // namespace gangway::geometry
