// What is set out on a room's ceiling and floor, each centre by its distances from two walls; and where the
// room's other luminaires are. Private to sheets/.
#pragma once

#include "sheets/elevation_work.hpp"
#include "sheets/surfaces.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

/// A centre on the ceiling or the floor: a luminaire's, or a box's of a plate.
struct CeilingPoint {
    std::string id;
    std::string tag;       ///< "K-L04"; of a plate with several boxes "L-10 1/2"
    std::string what;      ///< "recessed 80"
    Vec2 at_mm;            ///< in the house
    double x_mm = 0;       ///< from the left wall's finished face, square to it
    double y_mm = 0;       ///< from the bottom wall's
    double height_mm = 0;  ///< of the ceiling or floor there above FFL
    bool beside_x = false; ///< the left wall ends before it: its face is carried on in its line
    bool beside_y = false;
};

/// A luminaire that is set out elsewhere, by the numbers that it is marked by there.
struct OtherPoint {
    std::string id;
    std::string tag;
    std::string what;  ///< "wall 300"
    std::string where; ///< "wall A, E-07"
    double u_mm = 0;
    double v_mm = 0;
    bool upright = true; ///< v is a height above FFL
};

/// "(4 × 1200 = 4800)": luminaires in a line at equal distances.
struct EqualSpacing {
    bool along_x = true; ///< the line runs square to the left wall
    std::vector<const CeilingPoint*> points;
    double step_mm = 0;
    std::string words() const;
};

struct RoomPoints {
    const plan::Room* room = nullptr;
    std::size_t left_wall = 0;   ///< x counts from it
    std::size_t bottom_wall = 0; ///< y counts from it
    bool square = true; ///< both walls run with the sheet's edges, so that rows of numbers can stand at them
    std::vector<CeilingPoint> points; ///< from the top of the room down, left to right
    std::vector<OtherPoint> others;
    std::vector<std::string> plugged; ///< tags of luminaires with a plug, which have no point

    bool empty() const { return points.empty() && others.empty(); }
    std::vector<EqualSpacing> spacings() const;
};

RoomPoints pointsOf(const House& house, const plan::Room& room, const ElevationNumbers& numbers);

} // namespace gangway::sheets
