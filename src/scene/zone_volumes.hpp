// Upright volumes shown over a room: the zones round baths and showers.
#pragma once

#include "scene/scene.hpp"

#include <span>

namespace gangway::scene {

/// Layer of the parts, to be hidden or shown like a plan's own.
inline constexpr const char* kLayerZones = "zones";

struct ZoneVolume {
    std::string room;
    std::vector<plan::Vec2> outline_mm; ///< counter-clockwise, house mm
    double bottom_mm = 0;               ///< above FFL
    double top_mm = 0;
    int number = 1; ///< of the zone: 0, 1, 2, 3; each has its own tint
};

/// Adds the sides and the tops, see-through, a little inside what they touch. They can't be picked and throw
/// no shadow.
void addZoneVolumes(Scene& scene, const plan::Plan& plan, std::span<const ZoneVolume> volumes);

} // namespace gangway::scene
