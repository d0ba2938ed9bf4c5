// Small solids in a local frame (x right, y up, z out, mm): what plates and luminaires are put together from.
// Inside scene only.
#pragma once

#include "meshes/meshes.hpp"
#include "plan/vec.hpp"

#include <vector>

namespace gangway::scene::detail {

using meshes::Mesh;
using plan::Vec2;
using plan::Vec3;

/// A convex outline, counter-clockwise.
using Loop = std::vector<Vec2>;

/// Height over the local ground: z + slope (y - y0).
struct Level {
    double z = 0;
    double slope = 0;
    double y0 = 0;
    double at(Vec2 p) const { return z + slope * (p.y - y0); }
    Level raised(double by_mm) const { return {z + by_mm, slope, y0}; }
};

/// Rectangle with round corners; the corner radius is cut to what fits. Always 4 (corner_steps + 1) points,
/// so that two of them can be joined by a band.
Loop roundedRect(Vec2 centre, double width, double height, double corner, double turn_deg = 0,
                 int corner_steps = 3);
Loop circle(Vec2 centre, double diameter, int steps);
/// Inside a convex loop by at least `margin` mm.
bool insideConvex(const Loop& loop, Vec2 p, double margin = 0);

enum class Facing { Outwards, Inwards };
enum class Shading { Flat, Round };

/// A face looking along +z, with convex holes that neither touch each other nor the outline.
void addFace(Mesh& mesh, const Loop& outline, const std::vector<Loop>& holes, Level level);
/// The strip between two loops of as many points: the side of a block (outwards) or of a recess (inwards).
void addBand(Mesh& mesh, const Loop& lower, Level lower_level, const Loop& upper, Level upper_level,
             Facing facing, Shading shading = Shading::Flat);
void addBox(Mesh& mesh, Vec3 low, Vec3 high);
/// A body of revolution about the z axis through `centre`: `profile` is (radius, z); walking along it the
/// outside is at the right, so a closed counter-clockwise profile is a ring.
void addLathe(Mesh& mesh, Vec3 centre, const std::vector<Vec2>& profile, int steps, double from_deg = 0,
              double to_deg = 360);
/// A round bar between two points, with flat ends.
void addRod(Mesh& mesh, Vec3 from, Vec3 to, double radius, int steps = 8);
void addSphere(Mesh& mesh, Vec3 centre, double radius, int steps = 14);
/// A line of some width on a level, looking along +z.
void addStroke(Mesh& mesh, const std::vector<Vec2>& points, double width, Level level);

/// A local frame in the house; left-handed ones turn triangles round, so that they keep facing outwards.
struct Placement {
    Vec3 origin_mm;
    Vec3 x{1, 0, 0};
    Vec3 y{0, 1, 0};
    Vec3 z{0, 0, 1};
    Vec3 point(Vec3 local) const { return origin_mm + direction(local); }
    Vec3 direction(Vec3 local) const { return x * local.x + y * local.y + z * local.z; }
    bool leftHanded() const { return plan::dot(plan::cross(x, y), z) < 0; }
};
/// The mesh moved into the house.
Mesh placed(Mesh mesh, const Placement& placement);

} // namespace gangway::scene::detail
