#include "scene/object_parts.hpp"

#include <algorithm>

namespace gangway::scene {

glm::vec3 toScene(plan::Vec3 house_mm, double storey_elevation_mm) {
    return {static_cast<float>(house_mm.x / 1000),
            static_cast<float>((house_mm.z + storey_elevation_mm) / 1000),
            static_cast<float>(-house_mm.y / 1000)};
}

plan::Vec3 toHouse(glm::vec3 scene_m) {
    return {static_cast<double>(scene_m.x) * 1000, static_cast<double>(-scene_m.z) * 1000,
            static_cast<double>(scene_m.y) * 1000};
}

namespace detail {

meshes::Mesh& ObjectParts::of(const Material& material) {
    const auto known = std::find_if(meshes_.begin(), meshes_.end(),
                                    [&](const auto& entry) { return entry.first == material; });
    if (known != meshes_.end()) return known->second;
    return meshes_.emplace_back(material, meshes::Mesh{}).second;
}

glm::vec3 toSceneDirection(plan::Vec3 direction) {
    return {static_cast<float>(direction.x), static_cast<float>(direction.z),
            static_cast<float>(-direction.y)};
}

void addToScene(Scene& scene, const Part& label, const ObjectParts& parts, double storey_elevation_mm) {
    for (const auto& [material, mesh] : parts.all()) {
        if (mesh.empty()) continue;
        Part part = label;
        part.material = material;
        part.first_index = static_cast<std::uint32_t>(scene.indices.size());
        part.index_count = static_cast<std::uint32_t>(mesh.triangles.size() * 3);
        part.low = part.high = toScene(mesh.positions_mm.front(), storey_elevation_mm);
        const auto first_vertex = static_cast<std::uint32_t>(scene.vertices.size());
        for (std::size_t i = 0; i < mesh.positions_mm.size(); ++i) {
            const glm::vec3 position = toScene(mesh.positions_mm[i], storey_elevation_mm);
            scene.vertices.push_back({position, toSceneDirection(mesh.normals[i])});
            part.low = glm::min(part.low, position);
            part.high = glm::max(part.high, position);
        }
        for (const auto& triangle : mesh.triangles) {
            for (const std::uint32_t corner : triangle)
                scene.indices.push_back(first_vertex + corner);
        }
        scene.low = scene.parts.empty() ? part.low : glm::min(scene.low, part.low);
        scene.high = scene.parts.empty() ? part.high : glm::max(scene.high, part.high);
        scene.parts.push_back(std::move(part));
    }
}

} // namespace detail
} // namespace gangway::scene
