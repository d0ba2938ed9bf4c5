// What a plate lines up with while it is dragged. Pure functions.
#pragma once

#include "catalogue/catalogue.hpp"
#include "geometry/house_index.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gangway::edit {

/// A line on a host that a plate can lie on, in the host's (u, v).
struct Guide {
    enum class Axis { Along, Height }; ///< Along holds u, Height holds v
    enum class Part {
        Centre,
        LowEdge,
        HighEdge
    }; ///< of the plate: Low is left or lower, High right or upper
    Axis axis = Axis::Along;
    Part part = Part::Centre;
    double at_mm = 0;
    std::string reason; ///< "height of K-04", "left edge at door to the hall, right edge"
    int rank = 0;       ///< of guides equally near the lowest counts
    plan::Vec2 from_mm; ///< where to draw it: from what it comes from to where the host's u and v were
    plan::Vec2 to_mm;
};

/// A usual mounting height of a country.
struct UsualHeight {
    enum class From { Floor, Worktop }; ///< FFL, or the tops of the worktops at the plate's wall
    std::string name;
    double height_mm = 0;
    std::string source;
    From from = From::Floor;
};
/// What is usual in a country.
struct UsualPlaces {
    std::vector<UsualHeight> heights;
    std::optional<double> from_jamb_mm; ///< from a door casing's outer edge to the plate's centre
};

/// Guides for a plate at `host`: centres and heights of other plates there, heights of plates elsewhere in
/// the room, plates that would touch, casings, furniture at the wall (edges, middles, tops, headboards),
/// tiles, usual heights, the host's middle and ends. Openings and furniture more than 600 mm above or below
/// the plate give no guides along, so ask again as the plate moves. Empty when the host is not in the plan.
std::vector<Guide> guides(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                          const std::string& room_id, const plan::Host& host,
                          const std::vector<std::string>& except_plates, const UsualPlaces& usual);

struct Snapped {
    double u_mm = 0;
    double v_mm = 0;
    std::optional<Guide> along; ///< what each coordinate lies on now
    std::optional<Guide> height;
};
/// The place with each coordinate put on its nearest guide, where one is within the tolerance: neither moves
/// by more than that. `plate_size_mm` is the plate's width and height. Snapping again changes nothing.
Snapped snap(const std::vector<Guide>& guides, double u_mm, double v_mm, plan::Vec2 plate_size_mm,
             double tolerance_mm);

} // namespace gangway::edit
