// By how many mm a plate's place is right, passing or not, and what takes it: for the electrician, the docket
// and the picture over a wall.
#pragma once

#include "checks/bars.hpp"
#include "checks/point.hpp"

namespace gangway::checks {

/// How far a plate on a wall may be out, along the wall and in height at once, before a warning or a fault
/// comes up. 0 or less: it is wrong as it stands.
struct PlaceMargin {
    std::string plate; ///< id
    double mm = 0;
    std::string rule;   ///< of the check that fails first; empty: the wall's end
    std::string object; ///< id of what it is about
    std::string name;   ///< as a person says it
    /// Which way it fails first.
    enum class Way { Left, Right, Up, Down } way = Way::Left;
};

/// Of every plate on a wall, in the plan's order.
std::vector<PlaceMargin> margins(const Facts& facts);

/// Margins of a plate like one of the plan's for every centre on its wall: a grid of squares, from the wall's
/// left end and the floor up, row by row. Values as PlaceMargin::mm, less than 0 where it would be wrong.
struct MarginPicture {
    double cell_mm = 0;
    int columns = 0;
    int rows = 0;
    std::vector<float> mm;
    float at(int column, int row) const { return mm[static_cast<std::size_t>(row * columns + column)]; }
};
MarginPicture marginPicture(const Facts& facts, const WallScene& scene, const Point& point, double cell_mm);

} // namespace gangway::checks
