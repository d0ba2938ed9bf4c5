#include "lighting/illuminance.hpp"

#include <algorithm>

namespace gangway::lighting {

namespace {

constexpr double kNearestSquare = 100; ///< mm2: nearer than 10 mm counts as 10
constexpr double kSquareMmPerSquareM = 1e6;

} // namespace

double illuminance(std::span<const Emitter> emitters, const LitPoint& point, const RayWorld* world) {
    double sum = 0;
    for (const Emitter& emitter : emitters) {
        const plan::Vec3 way = point.at_mm - emitter.at_mm; // from the lamp
        const double facing = -dot(way, point.facing);
        if (facing <= 0) continue;
        const double square = std::max(dot(way, way), kNearestSquare);
        const double inverse = 1 / std::sqrt(square);
        const double along = dot(way, emitter.aim) * inverse;
        const Distribution& shape = *emitter.distribution;
        if (along < shape.leastCosine()) continue;
        // The ray before the intensity: much of a house lies in shadow, and angles cost as much as a ray.
        if (world != nullptr && world->blocked(point.at_mm, emitter.at_mm, inverse)) continue;
        double intensity = 0;
        if (shape.turned())
            intensity = shape.intensity(along, dot(way, emitter.ahead) * inverse,
                                        dot(way, cross(emitter.aim, emitter.ahead)) * inverse);
        else
            intensity = shape.intensity(along);
        sum += intensity * emitter.part * facing * inverse * inverse * inverse * kSquareMmPerSquareM;
    }
    return sum;
}

} // namespace gangway::lighting
