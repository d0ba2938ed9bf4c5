#include "scene/solids.hpp"

#include "geometry/walls.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

namespace gangway::scene::detail {
namespace {

constexpr double kPi = std::numbers::pi;

Vec3 unit(Vec3 a) {
    const double l = plan::length(a);
    return l > 0 ? a * (1 / l) : Vec3{0, 0, 1};
}

std::uint32_t addVertex(Mesh& mesh, Vec3 position, Vec3 normal) {
    mesh.positions_mm.push_back(position);
    mesh.normals.push_back(normal);
    return static_cast<std::uint32_t>(mesh.positions_mm.size() - 1);
}

// Corners counter-clockwise seen from where the quad is looked at; `normals` one a corner.
void addQuad(Mesh& mesh, const std::array<Vec3, 4>& corners, const std::array<Vec3, 4>& normals) {
    std::array<std::uint32_t, 4> at{};
    for (std::size_t i = 0; i < 4; ++i)
        at[i] = addVertex(mesh, corners[i], normals[i]);
    mesh.triangles.push_back({at[0], at[1], at[2]});
    mesh.triangles.push_back({at[0], at[2], at[3]});
}

void addFlatQuad(Mesh& mesh, const std::array<Vec3, 4>& corners) {
    // The diagonals' product also holds when one side has no length.
    const Vec3 normal = unit(plan::cross(corners[2] - corners[0], corners[3] - corners[1]));
    addQuad(mesh, corners, {normal, normal, normal, normal});
}

Vec3 over(Vec2 p, Level level) {
    return {p.x, p.y, level.at(p)};
}

// Normal of the loop at a point, out of it: mean of its two sides.
Vec3 loopNormal(const Loop& loop, std::size_t i) {
    const Vec2 before = loop[(i + loop.size() - 1) % loop.size()];
    const Vec2 after = loop[(i + 1) % loop.size()];
    return unit({after.y - before.y, before.x - after.x, 0});
}

// A straight cut along x or y.
struct Cut {
    bool across_x = true; ///< the line x = at, else y = at
    double at = 0;
    double of(Vec2 p) const { return across_x ? p.x : p.y; }
};
enum class Side { Below, Above };

// A cut that leaves holes whole on both sides of it, if there is one: faces with one hole each come out as
// calmer triangles than one face with all of them.
std::optional<Cut> cutBetween(const std::vector<Loop>& holes) {
    for (const bool across_x : {true, false}) {
        Cut cut{across_x, 0};
        std::vector<std::pair<double, double>> spans;
        for (const Loop& hole : holes) {
            const auto [low, high] = std::ranges::minmax(hole, {}, [&](Vec2 p) { return cut.of(p); });
            spans.emplace_back(cut.of(low), cut.of(high));
        }
        std::ranges::sort(spans);
        double end = spans.front().second;
        for (const auto& [from, to] : spans) {
            if (from > end) {
                cut.at = (from + end) / 2;
                return cut;
            }
            end = std::max(end, to);
        }
    }
    return std::nullopt;
}

// The part of a convex loop on one side of a cut: Sutherland and Hodgman, Reentrant Polygon Clipping (1974).
Loop clipped(const Loop& loop, const Cut& cut, Side side) {
    const double sign = side == Side::Below ? -1 : 1;
    Loop kept;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vec2 a = loop[i];
        const Vec2 b = loop[(i + 1) % loop.size()];
        const double in_a = sign * (cut.of(a) - cut.at);
        const double in_b = sign * (cut.of(b) - cut.at);
        if (in_a >= 0) kept.push_back(a);
        if ((in_a > 0 && in_b < 0) || (in_a < 0 && in_b > 0))
            kept.push_back(a + (b - a) * (in_a / (in_a - in_b)));
    }
    return kept;
}

} // namespace

Loop roundedRect(Vec2 centre, double width, double height, double corner, double turn_deg, int corner_steps) {
    const double r = std::clamp(corner, 0.0, std::min(width, height) / 2);
    const double turn = turn_deg * kPi / 180;
    Loop loop;
    for (int quarter = 0; quarter < 4; ++quarter) {
        const double sx = quarter == 0 || quarter == 3 ? 1 : -1;
        const double sy = quarter < 2 ? 1 : -1;
        const Vec2 middle{sx * (width / 2 - r), sy * (height / 2 - r)};
        for (int step = 0; step <= corner_steps; ++step) {
            const double a = (quarter + static_cast<double>(step) / corner_steps) * kPi / 2;
            const Vec2 p = middle + Vec2{std::cos(a), std::sin(a)} * r;
            loop.push_back(centre + Vec2{p.x * std::cos(turn) - p.y * std::sin(turn),
                                         p.x * std::sin(turn) + p.y * std::cos(turn)});
        }
    }
    return loop;
}

Loop circle(Vec2 centre, double diameter, int steps) {
    Loop loop;
    for (int i = 0; i < steps; ++i) {
        const double a = 2 * kPi * i / steps;
        loop.push_back(centre + Vec2{std::cos(a), std::sin(a)} * (diameter / 2));
    }
    return loop;
}

bool insideConvex(const Loop& loop, Vec2 p, double margin) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vec2 side = loop[(i + 1) % loop.size()] - loop[i];
        const double l = plan::length(side);
        if (l > 1e-9 && plan::cross(side, p - loop[i]) < margin * l) return false;
    }
    return loop.size() >= 3;
}

void addFace(Mesh& mesh, const Loop& outline, const std::vector<Loop>& holes, Level level) {
    if (holes.size() > 1) {
        if (const auto cut = cutBetween(holes)) {
            for (const Side side : {Side::Below, Side::Above}) {
                std::vector<Loop> kept;
                for (const Loop& hole : holes) {
                    if ((cut->of(hole.front()) < cut->at) == (side == Side::Below)) kept.push_back(hole);
                }
                addFace(mesh, clipped(outline, *cut, side), kept, level);
            }
            return;
        }
    }
    const Vec3 normal = unit({0, -level.slope, 1});
    const auto first = static_cast<std::uint32_t>(mesh.positions_mm.size());
    for (const Vec2 p : outline)
        addVertex(mesh, over(p, level), normal);
    for (const Loop& hole : holes) {
        for (const Vec2 p : hole)
            addVertex(mesh, over(p, level), normal);
    }
    std::vector<std::array<std::uint32_t, 3>> triangles;
    if (!holes.empty()) triangles = geometry::triangulate(outline, holes);
    if (triangles.empty()) {
        for (std::uint32_t i = 1; i + 1 < outline.size(); ++i)
            triangles.push_back({0, i, i + 1});
    }
    for (auto [a, b, c] : triangles) {
        a += first, b += first, c += first;
        const Vec3 pa = mesh.positions_mm[a];
        const Vec3 ab = mesh.positions_mm[b] - pa;
        const Vec3 ac = mesh.positions_mm[c] - pa;
        if (ab.x * ac.y - ab.y * ac.x < 0) std::swap(b, c);
        mesh.triangles.push_back({a, b, c});
    }
}

void addBand(Mesh& mesh, const Loop& lower, Level lower_level, const Loop& upper, Level upper_level,
             Facing facing, Shading shading) {
    const std::size_t n = std::min(lower.size(), upper.size());
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t j = (i + 1) % n;
        std::array<Vec3, 4> corners{over(lower[i], lower_level), over(lower[j], lower_level),
                                    over(upper[j], upper_level), over(upper[i], upper_level)};
        const double sign = facing == Facing::Outwards ? 1 : -1;
        std::array<Vec3, 4> normals{loopNormal(lower, i) * sign, loopNormal(lower, j) * sign,
                                    loopNormal(upper, j) * sign, loopNormal(upper, i) * sign};
        if (facing == Facing::Inwards) {
            std::swap(corners[0], corners[1]), std::swap(corners[2], corners[3]);
            std::swap(normals[0], normals[1]), std::swap(normals[2], normals[3]);
        }
        if (shading == Shading::Round) {
            addQuad(mesh, corners, normals);
        } else {
            addFlatQuad(mesh, corners);
        }
    }
}

void addBox(Mesh& mesh, Vec3 low, Vec3 high) {
    const Loop loop{{low.x, low.y}, {high.x, low.y}, {high.x, high.y}, {low.x, high.y}};
    addFace(mesh, loop, {}, {high.z});
    addBand(mesh, loop, {low.z}, loop, {high.z}, Facing::Outwards);
    addFlatQuad(mesh, {Vec3{low.x, high.y, low.z}, Vec3{high.x, high.y, low.z}, Vec3{high.x, low.y, low.z},
                       Vec3{low.x, low.y, low.z}});
}

void addLathe(Mesh& mesh, Vec3 centre, const std::vector<Vec2>& profile, int steps, double from_deg,
              double to_deg) {
    for (std::size_t k = 0; k + 1 < profile.size(); ++k) {
        const Vec2 a = profile[k];
        const Vec2 b = profile[k + 1];
        const Vec2 out{b.y - a.y, a.x - b.x}; // (radial, along z)
        const double l = plan::length(out);
        if (l < 1e-9) continue;
        for (int i = 0; i < steps; ++i) {
            const double from = (from_deg + (to_deg - from_deg) * i / steps) * kPi / 180;
            const double to = (from_deg + (to_deg - from_deg) * (i + 1) / steps) * kPi / 180;
            const auto point = [&](Vec2 p, double angle) {
                return centre + Vec3{p.x * std::cos(angle), p.x * std::sin(angle), p.y};
            };
            const auto normal = [&](double angle) {
                return Vec3{out.x / l * std::cos(angle), out.x / l * std::sin(angle), out.y / l};
            };
            addQuad(mesh, {point(a, from), point(a, to), point(b, to), point(b, from)},
                    {normal(from), normal(to), normal(to), normal(from)});
        }
    }
}

void addRod(Mesh& mesh, Vec3 from, Vec3 to, double radius, int steps) {
    const double l = plan::length(to - from);
    if (l < 1e-9) return;
    const Vec3 z = (to - from) * (1 / l);
    const Vec3 helper = std::abs(z.x) < 0.9 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
    const Vec3 x = unit(plan::cross(helper, z));
    Mesh rod;
    addLathe(rod, {}, {{0, 0}, {radius, 0}, {radius, l}, {0, l}}, steps);
    meshes::append(mesh, placed(std::move(rod), {from, x, plan::cross(z, x), z}));
}

void addSphere(Mesh& mesh, Vec3 centre, double radius, int steps) {
    std::vector<Vec2> profile;
    const int rings = std::max(4, steps / 2);
    for (int i = 0; i <= rings; ++i) {
        const double a = -kPi / 2 + kPi * i / rings;
        profile.push_back({radius * std::cos(a), radius * std::sin(a)});
    }
    addLathe(mesh, centre, profile, steps);
}

void addStroke(Mesh& mesh, const std::vector<Vec2>& points, double width, Level level) {
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const Vec2 along = points[i + 1] - points[i];
        const double l = plan::length(along);
        if (l < 1e-9) continue;
        const Vec2 side = Vec2{-along.y, along.x} * (width / 2 / l);
        const Vec2 cap = along * (width / 2 / l);
        const Vec2 a = points[i] - cap;
        const Vec2 b = points[i + 1] + cap;
        addFace(mesh, {a - side, b - side, b + side, a + side}, {}, level);
    }
}

Mesh placed(Mesh mesh, const Placement& placement) {
    for (Vec3& p : mesh.positions_mm)
        p = placement.point(p);
    for (Vec3& n : mesh.normals)
        n = placement.direction(n);
    if (placement.leftHanded()) {
        for (auto& triangle : mesh.triangles)
            std::swap(triangle[1], triangle[2]);
    }
    return mesh;
}

} // namespace gangway::scene::detail
