// The free floor of one room as a grid, for ways on foot. Only for this folder.
#pragma once

#include "geometry/house_index.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace gangway::checks {

/// Cells of 150 mm, larger in a room that would have more than 20 000. A cell is free when a body of radius
/// 200 mm (common practice, no source: turned sideways in the dark) stands clear of walls and furniture
/// there.
class FloorGrid {
public:
    FloorGrid(const geometry::HouseIndex& house, const plan::Room& room);

    bool isFree(plan::Vec2 at_mm) const;
    /// Shortest way from one place to another, straight where nothing stands between; a place that is not
    /// free counts as the nearest free one within 900 mm, straight out of a wall where there is one. Both
    /// ends are the places as given. Where no way is found it is the straight line.
    std::vector<plan::Vec2> way(plan::Vec2 from_mm, plan::Vec2 to_mm) const;

private:
    std::size_t cellAt(plan::Vec2 at_mm) const; ///< cells_.size() outside
    plan::Vec2 centreOf(std::size_t cell) const;
    void block(const std::vector<plan::Vec2>& outline, bool inside);
    bool isClear(plan::Vec2 from_mm, plan::Vec2 to_mm) const;
    std::optional<plan::Vec2> nearestFree(plan::Vec2 at_mm) const;
    std::vector<plan::Vec2> search(std::size_t from, std::size_t to) const;

    plan::Vec2 origin_mm_;
    double cell_mm_ = 150;
    std::size_t columns_ = 0;
    std::size_t rows_ = 0;
    std::vector<std::uint8_t> cells_; ///< 1: free
};

/// Square of the distance from a point to a segment; asked for very often.
double squaredToSegment(plan::Vec2 at, plan::Vec2 a, plan::Vec2 b);
/// Length of a way, mm.
double lengthOf(const std::vector<plan::Vec2>& way_mm);

} // namespace gangway::checks
