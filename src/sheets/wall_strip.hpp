// The wall strip: the code of the printed elevations, for the screen.
#pragma once

#include "catalogue/catalogue.hpp"
#include "drawing/drawing.hpp"
#include "plan/plan.hpp"

#include <filesystem>
#include <vector>

namespace gangway::sheets {

/// A room unrolled: all its walls side by side on one strip, at 1:scale, with the same symbols, for the
/// screen. `walls` says where each wall's u = 0, v = 0 is on the strip.
struct StripWall {
    std::size_t wall = 0;
    drawing::Pt origin;   ///< paper mm of (0, 0)
    double length_mm = 0; ///< real
};
struct Strip {
    drawing::Sheet sheet;
    std::vector<StripWall> walls;
};
Strip wallStrip(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const plan::Room& room,
                double scale, const std::filesystem::path& base = {});

} // namespace gangway::sheets
