#include "render/picking.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gangway::render {

using scene::PartKind;

namespace {

constexpr float kFar = std::numeric_limits<float>::max();

/// Slab test: does the ray meet the box before `nearest_m`?
bool meetsBox(const Ray& ray, glm::vec3 low, glm::vec3 high, float nearest_m) {
    float from = 0;
    float to = nearest_m;
    for (int axis = 0; axis < 3; ++axis) {
        const float d = ray.direction[axis];
        if (std::abs(d) < 1e-9f) {
            if (ray.from[axis] < low[axis] - 1e-4f || ray.from[axis] > high[axis] + 1e-4f) return false;
            continue;
        }
        const float a = (low[axis] - 1e-4f - ray.from[axis]) / d;
        const float b = (high[axis] + 1e-4f - ray.from[axis]) / d;
        from = std::max(from, std::min(a, b));
        to = std::min(to, std::max(a, b));
        if (from > to) return false;
    }
    return true;
}

std::optional<float> hitTriangle(const Ray& ray, glm::vec3 a, glm::vec3 b, glm::vec3 c) {
    const glm::vec3 ab = b - a;
    const glm::vec3 ac = c - a;
    const glm::vec3 p = glm::cross(ray.direction, ac);
    const float determinant = glm::dot(ab, p);
    if (std::abs(determinant) < 1e-12f) return std::nullopt;
    const glm::vec3 from_a = ray.from - a;
    const float u = glm::dot(from_a, p) / determinant;
    if (u < 0 || u > 1) return std::nullopt;
    const glm::vec3 q = glm::cross(from_a, ab);
    const float v = glm::dot(ray.direction, q) / determinant;
    if (v < 0 || u + v > 1) return std::nullopt;
    const float t = glm::dot(ac, q) / determinant;
    return t > 1e-4f ? std::optional(t) : std::nullopt;
}

glm::vec3 normalTowards(const Ray& ray, glm::vec3 a, glm::vec3 b, glm::vec3 c) {
    const glm::vec3 normal = glm::normalize(glm::cross(b - a, c - a));
    return glm::dot(normal, ray.direction) > 0 ? -normal : normal;
}

Pick pickOf(const scene::Part& part, const Ray& ray, const Hit& hit) {
    return {part.object, part.kind, part.room, part.wall, ray.from + hit.distance_m * ray.direction,
            hit.normal};
}

/// Glass of furniture is looked through, so that a plate behind a shower screen can be picked; a window's is
/// not.
bool lookedThrough(Shown shown, PartKind kind) {
    return shown == Shown::Ghost || (shown == Shown::Glass && kind != PartKind::Opening);
}

} // namespace

std::optional<Hit> hitPart(const scene::Scene& scene, const scene::Part& part, const Ray& ray,
                           float nearest_m) {
    if (!meetsBox(ray, part.low, part.high, nearest_m)) return std::nullopt;
    std::optional<Hit> best;
    const auto at = [&](std::size_t i) { return scene.vertices[scene.indices[i]].position; };
    const std::size_t end = std::size_t{part.first_index} + part.index_count;
    for (std::size_t i = part.first_index; i + 2 < end; i += 3) {
        const auto t = hitTriangle(ray, at(i), at(i + 1), at(i + 2));
        if (t && *t < nearest_m) {
            nearest_m = *t;
            best = Hit{*t, normalTowards(ray, at(i), at(i + 1), at(i + 2))};
        }
    }
    return best;
}

Pick pickAlong(const scene::Scene& scene, const PartIndex& index, const std::vector<Shown>& shown,
               const Ray& ray) {
    Hit solid_hit{kFar};
    Hit through_hit{kFar};
    Hit through_plate_hit{kFar};
    const scene::Part* solid = nullptr;
    const scene::Part* through = nullptr;
    const scene::Part* through_plate = nullptr;
    for (std::size_t i = 0; i < index.parts.size(); ++i) {
        if (shown[i] == Shown::No || shown[i] == Shown::FloorLine) continue;
        const auto& part = scene.parts[i];
        if (part.kind == PartKind::Zone) continue;
        const bool seen_through = lookedThrough(shown[i], part.kind);
        const bool plate = part.kind == PartKind::Plate;
        Hit& nearest = !seen_through ? solid_hit : plate ? through_plate_hit : through_hit;
        if (const auto hit = hitPart(scene, part, ray, nearest.distance_m)) {
            nearest = *hit;
            (!seen_through ? solid : plate ? through_plate : through) = &part;
        }
    }
    // A wall behind a ghosted plate does not win over the plate: plates are what one points at.
    if (through_plate && (!solid || through_plate_hit.distance_m < solid_hit.distance_m) &&
        (!solid || solid->kind != PartKind::Plate))
        return pickOf(*through_plate, ray, through_plate_hit);
    if (solid) return pickOf(*solid, ray, solid_hit);
    return through ? pickOf(*through, ray, through_hit) : Pick{};
}

bool reaches(const scene::Scene& scene, const PartIndex& index, const std::vector<Shown>& shown,
             const Ray& ray, float distance_m, int own_object) {
    for (std::size_t i = 0; i < index.parts.size(); ++i) {
        if (shown[i] != Shown::Solid || index.parts[i].object == own_object) continue;
        if (hitPart(scene, scene.parts[i], ray, distance_m)) return false;
    }
    return true;
}

} // namespace gangway::render
