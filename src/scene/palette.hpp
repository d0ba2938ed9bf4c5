// What things are made of on the stage: a warm model-maker's palette. Colours are from memory, chosen by eye.
// Inside scene only.
#pragma once

#include "catalogue/catalogue.hpp"
#include "geometry/furniture.hpp"
#include "geometry/walls.hpp"
#include "scene/scene.hpp"

#include <string>

namespace gangway::scene::detail {

/// A plain matt material.
Material matt(const std::string& srgb_hex, float roughness = 0.8f);
/// A material that shines by itself when its lamp is on.
Material glowing(glm::vec3 light, float emission);

/// Of a part of the building; tiles and floors get their pattern's place from the caller.
Material fabricMaterial(geometry::FabricPart::Role role, const std::string& srgb_hex);
/// Of a floor by plan::Room::floor_finish.
Material floorMaterial(const std::string& finish, const std::string& srgb_hex);
Material furnitureMaterial(geometry::Solid::Surface surface, const std::string& srgb_hex);
/// Of a plate or module; white and satin when the catalogue does not know the finish.
Material finishMaterial(const catalogue::Catalogue& catalogue, const std::string& finish_id);
/// The material darker (factor below 1), as a recess or a second tone of one piece.
Material shaded(Material material, float factor);

} // namespace gangway::scene::detail
