// Boxes, bevelled boxes and cushions.
#include "geometry/shapes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::geometry {
namespace {

/// The six faces of a cube: for each the axis of its normal, its sign, and the axes of its columns and rows
/// such that columns x rows points along the normal.
struct CubeFace {
    int normal;
    double sign;
    int column;
    int row;
};
constexpr CubeFace kCubeFaces[] = {{0, 1, 1, 2},  {0, -1, 2, 1}, {1, 1, 2, 0},
                                   {1, -1, 0, 2}, {2, 1, 0, 1},  {2, -1, 1, 0}};

Vec3 fromAxes(const std::array<double, 3>& p) {
    return {p[0], p[1], p[2]};
}

std::array<double, 3> axes(Vec3 p) {
    return {p.x, p.y, p.z};
}

/// Positions along one half axis, from the middle of the flat to the edge of the cube: offsets past the flat
/// part.
std::vector<double> roundingOffsets(double radius, int steps) {
    std::vector<double> offsets;
    for (int i = 0; i <= steps; ++i)
        offsets.push_back(i == steps ? radius : radius * std::tan(std::numbers::pi / 4 * i / steps));
    return offsets;
}

} // namespace

meshes::Mesh box(Vec3 low_mm, Vec3 high_mm) {
    meshes::Mesh mesh;
    const auto low = axes(low_mm);
    const auto high = axes(high_mm);
    for (const CubeFace& face : kCubeFaces) {
        const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
        for (int corner = 0; corner < 4; ++corner) {
            const bool far_column = corner == 1 || corner == 2;
            const bool far_row = corner >= 2;
            std::array<double, 3> p{};
            p[face.normal] = face.sign > 0 ? high[face.normal] : low[face.normal];
            p[face.column] = far_column ? high[face.column] : low[face.column];
            p[face.row] = far_row ? high[face.row] : low[face.row];
            std::array<double, 3> n{};
            n[face.normal] = face.sign;
            mesh.positions_mm.push_back(fromAxes(p));
            mesh.normals.push_back(fromAxes(n));
        }
        mesh.triangles.push_back({first, first + 1, first + 2});
        mesh.triangles.push_back({first, first + 2, first + 3});
    }
    return mesh;
}

meshes::Mesh bevelledBox(Vec3 low_mm, Vec3 high_mm, double bevel_mm) {
    const Vec3 size = high_mm - low_mm;
    const double bevel = std::min(bevel_mm, std::min({size.x, size.y, size.z}) / 3);
    if (bevel <= 0) return box(low_mm, high_mm);
    // Eight corners with three points each, one on every face that meets there: vertex 3 * corner + axis.
    meshes::Mesh mesh;
    for (int corner = 0; corner < 8; ++corner) {
        for (int axis = 0; axis < 3; ++axis) {
            std::array<double, 3> p{};
            std::array<double, 3> n{};
            for (int k = 0; k < 3; ++k) {
                const bool far = (corner >> k & 1) != 0;
                const double end = far ? axes(high_mm)[k] : axes(low_mm)[k];
                p[k] = k == axis ? end : end + (far ? -bevel : bevel);
            }
            n[axis] = (corner >> axis & 1) != 0 ? 1 : -1;
            mesh.positions_mm.push_back(fromAxes(p));
            mesh.normals.push_back(fromAxes(n));
        }
    }
    const auto vertex = [](int corner, int axis) { return static_cast<std::uint32_t>(3 * corner + axis); };
    const auto quad = [&](std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
        mesh.triangles.push_back({a, b, c});
        mesh.triangles.push_back({a, c, d});
    };
    for (const CubeFace& face : kCubeFaces) {
        const int base = face.sign > 0 ? 1 << face.normal : 0;
        const int c = 1 << face.column;
        const int r = 1 << face.row;
        quad(vertex(base, face.normal), vertex(base | c, face.normal), vertex(base | c | r, face.normal),
             vertex(base | r, face.normal));
    }
    // An edge runs along `along` between the faces of the next two axes.
    for (int along = 0; along < 3; ++along) {
        const int a = (along + 1) % 3;
        const int b = (along + 2) % 3;
        for (int ends = 0; ends < 4; ++ends) {
            const int near = ((ends & 1) << a) | ((ends >> 1) << b);
            const int far = near | 1 << along;
            const bool flip = ends == 1 || ends == 2;
            if (flip)
                quad(vertex(near, a), vertex(far, a), vertex(far, b), vertex(near, b));
            else
                quad(vertex(near, b), vertex(far, b), vertex(far, a), vertex(near, a));
        }
    }
    for (int corner = 0; corner < 8; ++corner) {
        const bool odd = ((corner & 1) + (corner >> 1 & 1) + (corner >> 2 & 1)) % 2 != 0;
        if (odd)
            mesh.triangles.push_back({vertex(corner, 0), vertex(corner, 1), vertex(corner, 2)});
        else
            mesh.triangles.push_back({vertex(corner, 0), vertex(corner, 2), vertex(corner, 1)});
    }
    return mesh;
}

meshes::Mesh cushion(Vec3 low_mm, Vec3 high_mm, double radius_mm, int steps) {
    const Vec3 centre = (low_mm + high_mm) * 0.5;
    const auto half = axes((high_mm - low_mm) * 0.5);
    const double radius = std::min({radius_mm, half[0] * 0.98, half[1] * 0.98, half[2] * 0.98});
    const std::vector<double> offsets = roundingOffsets(radius, std::max(steps, 1));
    const auto count = static_cast<int>(offsets.size()) * 2;
    // Coordinate number i of `count` along an axis, from the low end to the high end.
    const auto along = [&](int axis, int i) {
        const int middle = count / 2;
        return i < middle ? -(half[axis] - radius) - offsets[static_cast<std::size_t>(middle - 1 - i)]
                          : half[axis] - radius + offsets[static_cast<std::size_t>(i - middle)];
    };
    meshes::Mesh mesh;
    for (const CubeFace& face : kCubeFaces) {
        const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
        for (int row = 0; row < count; ++row) {
            for (int column = 0; column < count; ++column) {
                std::array<double, 3> p{};
                p[face.normal] = face.sign * half[face.normal];
                p[face.column] = along(face.column, column);
                p[face.row] = along(face.row, row);
                std::array<double, 3> core{};
                for (std::size_t k = 0; k < 3; ++k)
                    core[k] = std::clamp(p[k], -(half[k] - radius), half[k] - radius);
                const Vec3 out = fromAxes(p) - fromAxes(core);
                const Vec3 normal = out * (1 / length(out));
                mesh.positions_mm.push_back(centre + fromAxes(core) + normal * radius);
                mesh.normals.push_back(normal);
            }
        }
        const auto n = static_cast<std::uint32_t>(count);
        for (std::uint32_t row = 0; row + 1 < n; ++row) {
            for (std::uint32_t column = 0; column + 1 < n; ++column) {
                const std::uint32_t a = first + row * n + column;
                mesh.triangles.push_back({a, a + 1, a + n + 1});
                mesh.triangles.push_back({a, a + n + 1, a + n});
            }
        }
    }
    return mesh;
}

meshes::Mesh placed(meshes::Mesh mesh, const std::function<Vec3(Vec3)>& move) {
    const Vec3 zero = move({0, 0, 0});
    const Vec3 x = move({1, 0, 0}) - zero;
    const Vec3 y = move({0, 1, 0}) - zero;
    const Vec3 z = move({0, 0, 1}) - zero;
    for (Vec3& p : mesh.positions_mm)
        p = move(p);
    for (Vec3& n : mesh.normals)
        n = x * n.x + y * n.y + z * n.z;
    return mesh;
}

meshes::Mesh placed(meshes::Mesh mesh, const Frame& frame) {
    for (Vec3& p : mesh.positions_mm)
        p = toHouse(frame, p);
    for (Vec3& n : mesh.normals)
        n = frame.u * n.x + frame.v * n.y + frame.w * n.z;
    return mesh;
}

} // namespace gangway::geometry
