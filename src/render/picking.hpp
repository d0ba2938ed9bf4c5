// Rays against the scene's triangles, on the processor: no picture has to be read back.
#pragma once

#include "render/visibility.hpp"

#include <optional>

namespace gangway::render {

struct Hit {
    float distance_m = 0;
    glm::vec3 normal{0}; ///< unit, towards where the ray comes from
};

/// The nearest triangle of a part along the ray, nearer than `nearest_m`; nullopt for a miss. Both sides
/// count. Moeller and Trumbore, Fast Minimum Storage Ray/Triangle Intersection (1997).
std::optional<Hit> hitPart(const scene::Scene& scene, const scene::Part& part, const Ray& ray,
                           float nearest_m);

Pick pickAlong(const scene::Scene& scene, const PartIndex& index, const std::vector<Shown>& shown,
               const Ray& ray);

bool reaches(const scene::Scene& scene, const PartIndex& index, const std::vector<Shown>& shown,
             const Ray& ray, float distance_m, int own_object);

} // namespace gangway::render
