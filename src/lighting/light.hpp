// Light in a room, estimated: direct illuminance point by point, and the lumen method beside it.
//
// Point method: E = I cos(t) / d2, summed over the points of every luminaire that a straight line reaches.
// Nothing is reflected: what walls and ceilings give back is left out, so real rooms are lighter than this.
#pragma once

#include "catalogue/pack.hpp"
#include "geometry/house_index.hpp"
#include "plan/plan.hpp"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace gangway::lighting {

/// Printed beside every number until interreflection is computed.
inline constexpr const char* kEstimate = "estimate, direct light only";

/// Furniture tops up to this far over the work plane carry it: a worktop is lit where it is worked on.
/// Common practice, no source.
inline constexpr double kPlaneRise_mm = 350;

/// The strip along the walls that average and minimum leave out: 15 % of the room's shorter side, at most 500
/// (EN 12464-1, from memory).
inline constexpr double kMarginPart = 0.15;
inline constexpr double kMostMargin_mm = 500;

/// Square cells on a plane, values at their middles, row by row from the first; NaN where there is none.
struct LightGrid {
    double cell_mm = 250;
    plan::Vec2 origin_mm; ///< lower left corner of the first cell: house x and y, or a wall's u and v
    int columns = 0;
    int rows = 0;
    std::vector<double> lux;
    plan::Vec2 middleOf(int column, int row) const {
        return {origin_mm.x + (column + 0.5) * cell_mm, origin_mm.y + (row + 0.5) * cell_mm};
    }
    double at(int column, int row) const {
        return lux[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                   static_cast<std::size_t>(column)];
    }
};

/// Over the cells that have a value; all 0 when none has.
struct Levels {
    double average_lx = 0;
    double minimum_lx = 0;
    double maximum_lx = 0;
    double uniformity = 0; ///< minimum / average; 0 where nothing is lit
};

/// Horizontal illuminance over a room.
struct RoomLight {
    std::string room;
    double plane_mm = 750; ///< above FFL
    LightGrid grid;        ///< house x and y
    double margin_mm = 0;  ///< strip along the walls that counts for no level: behind open doors, in corners
    Levels levels;         ///< of the cells within
    double area_m2 = 0;    ///< of the room, without its columns
    double lumens = 0;     ///< of its luminaires that are on, dimmed ones in part
    double room_index = 0; ///< k = L W / ((L + W) Hm); 0 without lamps over the plane
    std::optional<double> walls_lx; ///< average vertical illuminance on its wall faces, where it was asked for
    double lumen_method_lx = 0;        ///< E = flux x UF x MF / area, with the pack's factors
    std::vector<std::string> problems; ///< IES files and hosts that could not be used, in words
};

/// Illuminance on a wall's finished face; no values in its holes.
struct WallLight {
    std::string room;
    std::string wall;
    LightGrid grid; ///< the wall's u and v
    Levels levels;
};

struct LightOptions {
    double cell_mm = 250; ///< made larger for halls, so that no grid has more than 40,000 cells
    /// 0 to 1 by luminaire id; those that are not listed are on.
    std::map<std::string, float> levels;
    bool shadows = true;
    std::filesystem::path base; ///< folder of the plan, for IES and glTF files
};

} // namespace gangway::lighting
