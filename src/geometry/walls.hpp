// Walls as solids: which faces belong together, the holes openings cut, reveals, and the floors and
// ceilings between them.
#pragma once

#include "geometry/frames.hpp"
#include "meshes/meshes.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace gangway::geometry {

/// A plan made ready for many questions (geometry/house_index.hpp). Functions that take a plan and are called
/// for every wall or plate of a house should be given an index instead: then the whole takes linear time.
class HouseIndex;

/// One face of a wall, by room id and index in room.walls.
struct FaceRef {
    std::string room;
    std::size_t wall = 0;
    bool operator==(const FaceRef&) const = default;
};

/// A face on the other side of the same wall, and the stretch of u (on the first face) they share.
struct PairedFace {
    FaceRef other;
    double from_mm = 0; ///< on this face
    double to_mm = 0;
    double thickness_mm = 0; ///< finished face to finished face
};

/// Faces parallel (to 0.5 degrees), opposite, on one storey, not further apart than `wall thickness +
/// build-ups + tolerance` (60 mm) and overlapping along u by more than 50 mm; nearest first.
std::vector<PairedFace> pairedFaces(const plan::Plan& plan, const FaceRef& face);
std::vector<PairedFace> pairedFaces(const HouseIndex& house, const FaceRef& face);

/// A hole as seen on one face, in its (u, v), and the opening it comes from. A door of the hall is a
/// hole of the kitchen too.
struct FaceHole {
    const plan::Opening* opening = nullptr;
    double left_mm = 0;
    double right_mm = 0;
    double bottom_mm = 0;
    double top_mm = 0;
    bool hosted_here = true; ///< false: the opening belongs to the face on the other side
    double through_mm = 0;   ///< depth of the hole to the far face (or the wall's thickness)
};

/// Holes in one face, left to right.
std::vector<FaceHole> faceHoles(const plan::Plan& plan, const FaceRef& face);
std::vector<FaceHole> faceHoles(const HouseIndex& house, const FaceRef& face);

/// A door leaf where it stands on plan, for drawing, collision and coverage. z from sill to head.
struct Leaf {
    const plan::Opening* opening = nullptr;
    Vec2 hinge_mm;  ///< house coordinates
    Vec2 closed_mm; ///< free end when shut
    Vec2 open_mm;   ///< free end at the stop angle
    double width_mm = 0;
    double thickness_mm = 44; ///< common practice, no source
    double bottom_mm = 0;
    double top_mm = 0;
    std::string swings_into; ///< room id; empty: outside
    /// Outline on plan as it stands open, clockwise. A hinged leaf lies on the jamb's side of the line from
    /// the hinge to open_mm, where it can hide something; a parked one lies astride it.
    std::vector<Vec2> standing_mm;
};
/// Hinged leaves (one or two); sliding, pocket and barn leaves come with hinge = parked near end. A glazed
/// sliding door parks within its own opening, before the pane that stays; a barn door before the wall.
std::vector<Leaf> doorLeaves(const plan::Plan& plan, const plan::Opening& opening);
std::vector<Leaf> doorLeaves(const HouseIndex& house, const plan::Opening& opening);

/// Part of the building's fabric as triangles in house coordinates (z above FFL).
struct FabricPart {
    enum class Role {
        Wall,    ///< what is seen from the room
        WallCut, ///< what is seen of a wall's thickness with the lid off
        Reveal,
        Floor,
        Ceiling,
        Skirting,
        Tiles,
        Panel,
        Casing,
        Frame,
        Leaf,
        Glass,
        SillBoard,
        OuterWall ///< what is seen of an outside wall from outside
    };
    Role role = Role::Wall;
    std::string room;    ///< room id
    std::string wall;    ///< wall id; empty for floor and ceiling
    std::string opening; ///< opening id, if any
    std::string colour;  ///< "#RRGGBB", empty: default of the role
    meshes::Mesh mesh;
};

/// Everything built of one room: wall faces with holes, half the wall's thickness behind them (so that
/// cut walls look solid), the outer skin where no room lies behind, reveals, floor, ceiling, lines, frames,
/// leaves (at their stop angle) and glass. Openings are modelled once, by the room that hosts them. Stairs
/// cut their footprint out of the ceiling above them and the floor they lead through.
std::vector<FabricPart> roomFabric(const plan::Plan& plan, const plan::Room& room);
std::vector<FabricPart> roomFabric(const HouseIndex& house, const plan::Room& room);

/// Triangles (counter-clockwise) of a simple polygon with holes, indices into outline followed by the holes'
/// points; any winding. Empty when the polygon has no area.
std::vector<std::array<std::uint32_t, 3>> triangulate(const std::vector<Vec2>& outline,
                                                      const std::vector<std::vector<Vec2>>& holes = {});

} // namespace gangway::geometry
