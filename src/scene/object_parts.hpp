// Triangles of one object sorted by material, and their way into the scene. Inside scene only.
#pragma once

#include "meshes/meshes.hpp"
#include "scene/scene.hpp"

#include <utility>
#include <vector>

namespace gangway::scene::detail {

/// Meshes in house mm (z above the storey's FFL), one a material, in the order of first use.
class ObjectParts {
public:
    meshes::Mesh& of(const Material& material);
    const std::vector<std::pair<Material, meshes::Mesh>>& all() const { return meshes_; }

private:
    std::vector<std::pair<Material, meshes::Mesh>> meshes_;
};

/// Adds one Part a material. `label` gives all but triangles, material and bounds.
void addToScene(Scene& scene, const Part& label, const ObjectParts& parts, double storey_elevation_mm);

/// A direction of the house in the scene's axes.
glm::vec3 toSceneDirection(plan::Vec3 direction);

} // namespace gangway::scene::detail
