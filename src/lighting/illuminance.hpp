// The point method at one point.
#pragma once

#include "lighting/emitters.hpp"
#include "lighting/ray_world.hpp"

#include <span>

namespace gangway::lighting {

/// A point of a surface and the unit direction it faces.
struct LitPoint {
    plan::Vec3 at_mm;
    plan::Vec3 facing{0, 0, 1};
};

/// Illuminance in lx: the sum of I cos(t) / d2 over the emitters in sight (trade-facts 8.4, d in metres).
/// With `world` nullptr nothing is in the way. Nearer than 10 mm counts as 10 mm.
double illuminance(std::span<const Emitter> emitters, const LitPoint& point, const RayWorld* world);

} // namespace gangway::lighting
