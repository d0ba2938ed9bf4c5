// Single objects of a plan into the scene. Inside scene only.
#pragma once

#include "geometry/house_index.hpp"
#include "scene/scene.hpp"
#include "scene/solids.hpp"

#include <expected>

namespace gangway::scene::detail {

/// Elevation of a room's storey in mm; 0 where the plan does not say.
double elevationOf(const geometry::HouseIndex& house, const std::string& room_id);

/// Where something hangs: x right, y up, z out of the surface.
struct Mounting {
    Placement placement;
    glm::vec3 facing{0}; ///< walls only
};
/// Of a plate's middle, on the tiles or panelling that it is fixed to; the error is a sentence.
std::expected<Mounting, std::string> plateMounting(const geometry::HouseIndex& house,
                                                   const plan::Plate& plate,
                                                   const catalogue::ComposedPlate& composed);
/// A plate's part without its triangles.
Part plateLabel(const geometry::HouseIndex& house, const plan::Plate& plate, const Mounting& mounting);

/// Each adds one object's parts, and a luminaire's light. What has no place in the house is told in
/// `scene.problems` and left out.
void drawFurniture(Scene& scene, const geometry::HouseIndex& house, const plan::Furniture& piece,
                   const std::filesystem::path& base);
void drawPlate(Scene& scene, const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
               const plan::Plate& plate);
void drawLuminaire(Scene& scene, const geometry::HouseIndex& house, const plan::Luminaire& luminaire);

} // namespace gangway::scene::detail
