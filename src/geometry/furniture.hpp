// Furniture as named solids with real voids: what the stage shows and what covers a plate.
#pragma once

#include "geometry/frames.hpp"
#include "meshes/meshes.hpp"

#include <filesystem>

namespace gangway::geometry {

class HouseIndex;

/// A convex box, or a mesh, of a piece in house coordinates.
struct Solid {
    std::string name;   ///< "carcass", "door left", "mattress", "headboard"
    std::string colour; ///< "#RRGGBB"
    enum class Surface {
        Matt,
        Wood,
        Fabric,
        Metal,
        Glass,
        Ceramic,
        Stone,
        Mirror,
        Screen
    } surface = Surface::Matt;
    meshes::Mesh mesh; ///< closed for parametric kinds
};

/// All solids of a piece. For kind "gltf" the file is looked for beside the plan (`base`); one that
/// cannot be read gives a plain box of the stated size and a sentence in `problem`.
struct FurnitureSolids {
    std::vector<Solid> solids;
    std::string problem;
};
FurnitureSolids furnitureSolids(const plan::Furniture& piece, const std::filesystem::path& base = {});

/// Local point of a piece (x right, y to the back, z up, from the footprint's centre) to house mm.
Vec3 fromLocal(const plan::Furniture& piece, Vec3 local_mm);
Vec3 toLocal(const plan::Furniture& piece, Vec3 house_mm);
/// Footprint corners on plan, clockwise.
std::vector<Vec2> footprint(const plan::Furniture& piece);

/// Outline of a piece as seen square on a wall, in its (u, v): the convex hull of each solid's
/// projection, for pieces nearer than `reach_mm` to the wall.
struct Silhouette {
    const plan::Furniture* piece = nullptr;
    std::vector<std::vector<Vec2>> hulls_mm; ///< one a solid
    double near_mm = 0;                      ///< nearest distance to the wall (w)
    double far_mm = 0;
};
std::vector<Silhouette> silhouettes(const plan::Plan& plan, const plan::Room& room, std::size_t wall_index,
                                    double reach_mm = 1200, const std::filesystem::path& base = {});
std::vector<Silhouette> silhouettes(const HouseIndex& house, const plan::Room& room, std::size_t wall_index,
                                    double reach_mm = 1200, const std::filesystem::path& base = {});

} // namespace gangway::geometry
