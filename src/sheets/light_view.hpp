// The plan of a storey with lines of equal illuminance and values at points.
#pragma once

#include "catalogue/catalogue.hpp"
#include "lighting/light.hpp"
#include "sheets/canvas.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace gangway::sheets {

/// Drawn around the house's zero point.
struct LightView {
    std::vector<Item> items;
    double width_mm = 0;
    double height_mm = 0;
    Pt zero; ///< where the house's zero point is from the picture's lower left corner
    std::vector<drawing::PlacedObject> placed;
};

/// The plan with furniture and luminaires but without plates; lines at 1-2-5 steps from 10 lx, dashed at 50
/// and 500, thick at 10, 100 and 1000, with their levels; values about every metre where nothing is in the
/// way.
LightView lightView(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                    const std::string& storey_id, const std::vector<lighting::RoomLight>& rooms, double scale,
                    const std::filesystem::path& base);

/// A level or value as it is printed: whole lx, tenths under 10.
std::string luxText(double lux);

} // namespace gangway::sheets
