// Lines of equal illuminance on a grid.
#pragma once

#include "lighting/light.hpp"

namespace gangway::lighting {

/// A line of one level in the grid's own coordinates, mm. The higher side is on its left.
struct Contour {
    double level_lx = 0;
    std::vector<plan::Vec2> points_mm;
    bool closed = false;
};

/// Levels in steps of 1, 2 and 5 between two values, ascending: 5, 10, 20, 50 ... Those equal to an end
/// count. None where `low` is not over 0.
std::vector<double> contourLevels(double low, double high);

/// Marching squares over the middles of the cells, linear along their edges; a saddle is parted by the mean
/// of its four corners. Cells with a corner that has no value carry no line. Level by level, the lines in the
/// order of the rows and columns they begin in.
std::vector<Contour> contours(const LightGrid& grid, const std::vector<double>& levels);

} // namespace gangway::lighting
