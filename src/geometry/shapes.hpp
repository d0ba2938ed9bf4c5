// Closed meshes to build things from: boxes, cushions, cylinders, extrusions and turned bodies. All in the
// caller's own right-handed coordinates, mm, z up; `placed` carries them to where they belong.
#pragma once

#include "geometry/frames.hpp"
#include "meshes/meshes.hpp"

#include <functional>
#include <span>

namespace gangway::geometry {

/// A plain box with sharp edges, between two opposite corners (low below high on every axis).
meshes::Mesh box(Vec3 low_mm, Vec3 high_mm);

/// A box whose edges are cut at 45 degrees and shaded round; the bevel is held to a third of the thinnest
/// side.
meshes::Mesh bevelledBox(Vec3 low_mm, Vec3 high_mm, double bevel_mm = 3);

/// A box with rounded edges and corners, `steps` flat parts each way round an edge of 45 degrees.
meshes::Mesh cushion(Vec3 low_mm, Vec3 high_mm, double radius_mm, int steps = 2);

/// A cylinder (or, with another end radius, a cone frustum) between two points, with flat ends.
meshes::Mesh cylinder(Vec3 from_mm, Vec3 to_mm, double radius_mm, int sides = 20,
                      std::optional<double> end_radius_mm = std::nullopt);

/// A simple polygon (any winding) with holes, between two heights.
meshes::Mesh extrude(const std::vector<Vec2>& outline, double low_mm, double high_mm,
                     const std::vector<std::vector<Vec2>>& holes = {});

/// A profile of (radius, z), from bottom to top on the outside, turned about the vertical through
/// `centre_mm`. Closed when both ends have radius 0. Ends inside a bowl where the profile comes back down.
/// `stretch` scales x and y, for oval bodies. Corners sharper than 40 degrees stay sharp.
meshes::Mesh lathe(std::span<const Vec2> profile, Vec3 centre_mm, int sides = 28, Vec2 stretch = {1, 1});

/// Corners of a rectangle with rounded corners, or of an ellipse, counter-clockwise, centred at `centre_mm`.
std::vector<Vec2> roundedRectangle(Vec2 centre_mm, double width_mm, double depth_mm, double radius_mm,
                                   int steps = 5);
std::vector<Vec2> ellipse(Vec2 centre_mm, double width_mm, double depth_mm, int sides = 28);

/// A bowl let into a flat top: bands between `rings` (loops of one and the same number of corners, listed
/// from the outer foot over the rim and down inside) closed by the first loop's underside and the last loop's
/// floor.
struct Loop {
    std::vector<Vec2> corners; ///< counter-clockwise
    double z_mm = 0;
};
meshes::Mesh lofted(std::span<const Loop> loops);

/// The mesh with every point moved; the move must keep lengths and handedness (turns and shifts).
meshes::Mesh placed(meshes::Mesh mesh, const std::function<Vec3(Vec3)>& move);
/// (x, y, z) read as (u, v, w) of a frame.
meshes::Mesh placed(meshes::Mesh mesh, const Frame& frame);

} // namespace gangway::geometry
