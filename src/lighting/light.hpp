// Light in a room, estimated: direct illuminance point by point, and the lumen method beside it.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/house_index.hpp"
#include "plan/plan.hpp"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace gangway::lighting {

/// Printed beside every number until interreflection is computed.
inline constexpr const char* kEstimate = "estimate, direct light only";

/// Horizontal illuminance on a level plane over a room, on the middles of square cells.
struct RoomLight {
    std::string room;
    double plane_mm = 750;  ///< above FFL
    double cell_mm = 250;
    plan::Vec2 origin_mm;   ///< south-west corner of the first cell, house
    int columns = 0;
    int rows = 0;
    std::vector<double> lux; ///< row by row from the south; NaN outside the room
    double average_lx = 0, minimum_lx = 0, maximum_lx = 0;
    double uniformity = 0;  ///< minimum / average
    double area_m2 = 0;     ///< of the room
    double lumens = 0;      ///< of its luminaires that are on, dimmed ones in part
    double lumen_method_lx = 0; ///< E = flux x UF x MF / area, with the pack's factors
    std::vector<std::string> problems; ///< IES files that could not be read, in words
};

struct LightOptions {
    double cell_mm = 250;
    /// 0 to 1 by luminaire id; those that are not listed are on.
    std::map<std::string, float> levels;
    bool shadows = true;
    std::filesystem::path base; ///< folder of the plan, for IES and glTF files
};

} // namespace gangway::lighting
