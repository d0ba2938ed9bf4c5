// What stands in front of a plate: furniture, open door leaves, curtains.
#pragma once

#include "geometry/furniture.hpp"
#include "geometry/walls.hpp"

namespace gangway::geometry {

struct Cover {
    enum class By { Furniture, DoorLeaf };
    By by = By::Furniture;
    std::string id;          ///< furniture or opening id
    std::string name;        ///< "wardrobe", as a person says it
    std::string layer;       ///< layer of the piece
    double covered_part = 0; ///< 0 to 1 of the plate's rectangle hidden from straight in front
    double gap_mm = 0;       ///< from the plate's host surface to the nearest point of the cover
};

/// Covers of a rectangle width x height (mm, with its centre at the host's u, v) within `reach_mm` straight
/// out of the host, most covering first. A piece the plate itself is mounted on does not count. The part
/// is measured on a 24 x 24 grid of rays, so it is exact to about 4 %.
std::vector<Cover> coversOf(const plan::Plan& plan, const std::string& room_id, const plan::Host& host,
                            double width_mm, double height_mm, double reach_mm = 900,
                            const std::filesystem::path& base = {});
std::vector<Cover> coversOf(const HouseIndex& house, const std::string& room_id, const plan::Host& host,
                            double width_mm, double height_mm, double reach_mm = 900,
                            const std::filesystem::path& base = {});

/// The same, of open door leaves alone: furniture is not even built.
std::vector<Cover> leafCoversOf(const HouseIndex& house, const std::string& room_id, const plan::Host& host,
                                double width_mm, double height_mm, double reach_mm = 900);

/// First hit of a ray with a mesh: distance in mm along the unit direction; nullopt for a miss.
/// Moeller and Trumbore, Fast Minimum Storage Ray/Triangle Intersection (1997).
std::optional<double> rayHit(const meshes::Mesh& mesh, Vec3 from_mm, Vec3 direction);

} // namespace gangway::geometry
