// Where the light of each luminaire comes from and where it is aimed.
#pragma once

#include "geometry/house_index.hpp"
#include "lighting/light.hpp"
#include "lighting/photometry.hpp"

#include <memory>

namespace gangway::lighting {

/// A point that light comes from. Long luminaires are several.
struct Emitter {
    const plan::Luminaire* luminaire = nullptr;
    plan::Vec3 at_mm; ///< house x and y, z above FFL
    plan::Vec3 aim;   ///< unit: vertical angle 0 of the distribution
    plan::Vec3 ahead; ///< unit, square to aim: horizontal angle 0; 90 is at cross(aim, ahead)
    std::shared_ptr<const Distribution> distribution;
    double part = 1; ///< of the distribution's light that comes from here, dimming included
};

struct Emitters {
    std::vector<Emitter> points;
    std::vector<std::string> problems;
};

/// The points of the luminaires that are on, in their order. One whose host is missing gives none and a
/// sentence. Heights and distances from the host follow the bodies that the stage shows (a pendant's drop,
/// 800 when not given; a floor lamp's shade at 1430, a table lamp's 350 over the table); common practice, no
/// source. Lamps on walls shine out of the wall, all others straight down. IES files always have straight
/// down as vertical angle 0 and as horizontal angle 0 the way out of a wall, or the plan's turn.
Emitters emittersOf(const geometry::HouseIndex& house, const std::vector<const plan::Luminaire*>& luminaires,
                    const LightOptions& options);

} // namespace gangway::lighting
