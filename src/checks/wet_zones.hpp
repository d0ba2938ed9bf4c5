// The zones round baths and showers on plan (IEC 60364-7-701), with the pack's sizes.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/furniture.hpp"

namespace gangway::checks {

/// Zone 1 of one bath or shower: over its basin, or within the pack's radius of the outlet of a shower
/// without.
struct WetZone {
    const plan::Furniture* piece = nullptr;
    std::vector<plan::Vec2> outline_mm; ///< of the basin on plan, clockwise, house coordinates
    double radius_mm = 0;               ///< of a shower without basin, round the piece's middle; else 0
    double top_mm = 0;                  ///< above FFL
    double zone2_mm = 0;                ///< how far zone 2 reaches beyond
};
std::vector<WetZone> wetZones(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                              const std::string& room_id);

/// From zone 1 on plan to a point, 0 within it.
double fromZone1(const WetZone& zone, plan::Vec2 at_mm);

enum class WetPlace { Zone1, Zone2, Outside };
WetPlace placeIn(const WetZone& zone, plan::Vec3 at_mm);

} // namespace gangway::checks
