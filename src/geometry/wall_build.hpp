// What the files that build walls share with each other; nobody outside geometry/ includes it.
#pragma once

#include "geometry/house_index.hpp"
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

/// The furthest from this face that a face of the same wall can be, less what the other face adds. For an
/// edge that has no wall in the plan, nullptr.
double wallReach(const plan::Wall* wall);

/// As faceHoles(house, face), for those who have the pairs already.
std::vector<FaceHole> faceHoles(const HouseIndex& house, const FaceRef& face,
                                const std::vector<PairedFace>& pairs);

/// A stretch of a wall and how deep the part of the wall goes that belongs to this face.
struct Stretch {
    double from_mm = 0;
    double to_mm = 0;
    double depth_mm = 0;
    bool outer = false; ///< no room lies behind
};

/// All that is known of one face while a room is built.
struct Face {
    const HouseIndex* house = nullptr;
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

/// Wall face, its half of the wall, and its ends up to the mitres with the walls before and after it.
void addWall(const Face& face, const Face* before, const Face* next, std::vector<FabricPart>& parts);
/// The outside of a wall where no room lies behind it, up to the mitres with the walls before and after it.
void addOuterWall(const Face& face, const Face* before, const Face* next, std::vector<FabricPart>& parts);
/// An upright face from a to b on plan that is seen from the left of that direction.
void addUpright(meshes::Mesh& mesh, Vec2 a, Vec2 b, double height_mm);
/// Where the backs of two walls meet that meet in a corner on plan.
struct BackCorner {
    Vec2 end;   ///< back of the first wall, square to the corner
    Vec2 start; ///< back of the second
    Vec2 mitre; ///< where the backs meet, or between both ends where that is too far out
    double reach_mm =
        0; ///< from `end` to the mitre along the first wall, negative at corners that point inwards
    bool turns_out = false; ///< the corner points outwards, so that the backs must be lengthened to meet
    bool cut_square = false;
};
BackCorner backCorner(const Face& face, const Face& next);
/// Cuts voids out of a mesh that lies flat or slopes: a floor or a ceiling.
void cutVoids(meshes::Mesh& mesh, std::span<const StairVoid> voids);
/// The upright faces round the voids in a room's ceiling, up to the floor above.
void addLinings(meshes::Mesh& mesh, const plan::Room& room, std::span<const StairVoid> voids);
/// Skirting, rails, panels and tiles, interrupted at openings.
void addLines(const Face& face, std::vector<FabricPart>& parts);
/// Casings of every hole, and what stands in those hosted here.
void addOpenings(const Face& face, std::vector<FabricPart>& parts);

} // namespace gangway::geometry
