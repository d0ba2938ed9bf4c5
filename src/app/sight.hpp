// Where one looks and stands so that there is something to see: the open direction of a room, and the place
// from which a plate is not hidden. Plain geometry, without the window.
#pragma once

#include "plan/plan.hpp"

#include <filesystem>
#include <memory>
#include <set>
#include <string>

namespace gangway::app {

/// Direction with the most open distance before the eye, as a camera's yaw (radians, 0 north, clockwise).
/// Walls, columns and furniture taller than the eye end it; averaged over 60 degrees, so that a slit beside a
/// wardrobe does not win.
double openYaw(const plan::Plan& plan, const plan::Room& room, plan::Vec2 from_mm);

/// A plate's rectangle on its host, mm, and where its furniture's files lie.
struct Sighted {
    const plan::Plate* plate = nullptr;
    double width_mm = 80;
    double height_mm = 80;
    std::filesystem::path base;
};

/// What stands in a room and may hide a plate: furniture of the shown layers and open door leaves, without
/// the objects of `see_through` and the piece that the plate is mounted on.
class Sight {
public:
    Sight(const plan::Plan& plan, const Sighted& sighted, const std::set<std::string>& see_through);
    ~Sight();
    Sight(const Sight&) = delete;
    Sight& operator=(const Sight&) = delete;

    /// True when the plate's middle and its four corners are seen from a point of the room (z above FFL).
    bool free(plan::Vec3 eye_mm) const;

private:
    struct Scene;
    std::unique_ptr<const Scene> scene_;
};

/// Height of an eye (above FFL) that looks at something `height_mm` up: that of a standing person, and higher
/// for what is above 1700, up to 200 under the ceiling.
double eyeFor(double height_mm, double ceiling_mm);

} // namespace gangway::app
