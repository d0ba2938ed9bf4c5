// What the files that build walls share with each other; nobody outside geometry/ includes it.
#pragma once

#include "geometry/walls.hpp"

namespace gangway::geometry {

/// The plan part of a wall's frame, cheap to make.
struct EdgeAxes {
    Vec2 from_mm;
    Vec2 u; ///< along the wall, unit
    Vec2 w; ///< into the room, unit
    double length_mm = 0;

    Vec2 at(double along_mm, double out_mm = 0) const { return from_mm + u * along_mm + w * out_mm; }
    double along(Vec2 house_mm) const { return dot(house_mm - from_mm, u); }
    double out(Vec2 house_mm) const { return dot(house_mm - from_mm, w); }
};
EdgeAxes edgeAxes(const plan::Room& room, std::size_t wall_index);

/// Structure and this face's build-up; 0 for a boundary that is no wall.
double fullThickness(const plan::Room& room, std::size_t wall_index);

/// As faceHoles(plan, face), for those who have the pairs already.
std::vector<FaceHole> faceHoles(const plan::Plan& plan, const FaceRef& face,
                                const std::vector<PairedFace>& pairs);

/// A stretch of a wall and how deep the part of the wall goes that belongs to this face.
struct Stretch {
    double from_mm = 0;
    double to_mm = 0;
    double depth_mm = 0;
};

/// All that is known of one face while a room is built.
struct Face {
    const plan::Plan* plan = nullptr;
    const plan::Room* room = nullptr;
    const plan::Wall* wall = nullptr;
    std::size_t index = 0;
    Frame frame;
    std::vector<Vec2> outline;
    std::vector<PairedFace> pairs;
    std::vector<FaceHole> holes;
    std::vector<Stretch> stretches; ///< left to right over the whole wall
};

/// A rectangle on a face.
struct FaceRect {
    double left_mm = 0;
    double right_mm = 0;
    double bottom_mm = 0;
    double top_mm = 0;
};

/// The part of a wall between `area`'s edges and under its outline's top, less the holes, as convex
/// counter-clockwise polygons in (u, v) whose corners meet. Left and right of the outline its top goes on
/// level.
std::vector<std::vector<Vec2>> cutFace(const std::vector<Vec2>& outline, const FaceRect& area,
                                       const std::vector<FaceHole>& holes);
/// Height of the outline's top at u.
double topAt(const std::vector<Vec2>& outline, double u_mm);

FabricPart fabricPart(FabricPart::Role role, const Face& face, const plan::Opening* opening = nullptr);
/// Adds a flat convex polygon given in (u, v) at a w; seen from the room's side, or from behind.
enum class Seen { FromRoom, FromBehind };
void addPolygon(meshes::Mesh& mesh, const Frame& frame, const std::vector<Vec2>& polygon, double w_mm,
                Seen seen);
/// Adds a four-cornered flat face in house coordinates, corners counter-clockwise seen from outside.
void addQuad(meshes::Mesh& mesh, Vec3 a, Vec3 b, Vec3 c, Vec3 d);

/// Wall face, its half of the wall, and the corner to the next wall of the outline.
void addWall(const Face& face, const Face* next, std::vector<FabricPart>& parts);
/// Skirting, rails, panels and tiles, interrupted at openings.
void addLines(const Face& face, std::vector<FabricPart>& parts);
/// Casings of every hole, and what stands in those hosted here.
void addOpenings(const Face& face, std::vector<FabricPart>& parts);

} // namespace gangway::geometry
