// What stands in the way of light: a storey's walls, ceilings, floors, open door leaves and furniture, as a
// scene for rays. Glass lets light through, soft furnishings and the luminaires themselves are left out.
#pragma once

#include "geometry/house_index.hpp"
#include "meshes/meshes.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

struct RTCSceneTy; // Embree's scene, for measuring beside it

namespace gangway::lighting {

class RayWorld {
public:
    /// The fabric and furniture of the rooms of a storey; glTF files are looked for in `base`. One world
    /// serves all its rooms. z is above FFL.
    RayWorld(const geometry::HouseIndex& house, const std::string& storey_id,
             const std::filesystem::path& base);
    /// Meshes alone.
    explicit RayWorld(const std::vector<meshes::Mesh>& meshes);
    RayWorld(const RayWorld&) = delete;
    RayWorld& operator=(const RayWorld&) = delete;
    RayWorld(RayWorld&&) noexcept;
    RayWorld& operator=(RayWorld&&) noexcept;
    ~RayWorld();

    /// True when something lies between two points, 1 mm off either end left out.
    bool blocked(plan::Vec3 from_mm, plan::Vec3 to_mm) const;
    /// The same for a caller who has 1 / their distance (1 / mm).
    bool blocked(plan::Vec3 from_mm, plan::Vec3 to_mm, double inverse_distance) const;

    /// The nearest thing from a point in a direction (unit) up to `reach_mm`.
    struct Hit {
        double distance_mm = 0;
        const plan::Furniture* piece = nullptr; ///< nullptr: the building
    };
    std::optional<Hit> nearest(plan::Vec3 from_mm, plan::Vec3 direction, double reach_mm) const;

    /// Embree's own scene and the point its coordinates are taken from: for the bench, which measures bare
    /// rays.
    RTCSceneTy* embreeScene() const;
    plan::Vec3 middle_mm() const;

private:
    struct Scene;
    std::unique_ptr<Scene> scene_;
};

} // namespace gangway::lighting
