#include "checks/floor_grid.hpp"

#include "geometry/furniture.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>
#include <utility>

namespace gangway::checks {

namespace {
constexpr double kCellMm = 150;
constexpr double kMostCells = 20'000;
constexpr double kBodyMm = 200;
constexpr double kSnapMm = 900;
constexpr double kStraightMm = 50;
/// What one steps over and what one passes under; common practice, no source.
constexpr double kStepMm = 100;
constexpr double kHeadroomMm = 1800;

/// A flight of stairs is gone up and down from its ends, which lie beside it; nobody crosses it.
bool isInTheWay(const plan::Furniture& piece) {
    if (piece.kind == "rug" || piece.kind == "curtain") return false;
    return piece.bottom_mm + piece.size.height_mm > kStepMm && piece.bottom_mm < kHeadroomMm;
}

struct Bounds {
    plan::Vec2 low{1e300, 1e300};
    plan::Vec2 high{-1e300, -1e300};
};

/// Whether a body at a place touches the edge of an outline.
bool isNear(const std::vector<plan::Vec2>& outline, plan::Vec2 at) {
    for (std::size_t i = 0; i < outline.size(); ++i)
        if (squaredToSegment(at, outline[i], outline[(i + 1) % outline.size()]) < kBodyMm * kBodyMm)
            return true;
    return false;
}

Bounds boundsOf(const std::vector<plan::Vec2>& outline) {
    Bounds bounds;
    for (const plan::Vec2 corner : outline) {
        bounds.low = {std::min(bounds.low.x, corner.x), std::min(bounds.low.y, corner.y)};
        bounds.high = {std::max(bounds.high.x, corner.x), std::max(bounds.high.y, corner.y)};
    }
    return bounds;
}
} // namespace

FloorGrid::FloorGrid(const geometry::HouseIndex& house, const plan::Room& room) {
    const Bounds bounds = boundsOf(room.outline);
    const plan::Vec2 size = bounds.high - bounds.low;
    if (!(size.x > 0) || !(size.y > 0)) return;
    cell_mm_ = std::max(kCellMm, std::sqrt(size.x * size.y / kMostCells));
    origin_mm_ = bounds.low;
    columns_ = static_cast<std::size_t>(std::ceil(size.x / cell_mm_));
    rows_ = static_cast<std::size_t>(std::ceil(size.y / cell_mm_));
    cells_.assign(columns_ * rows_, 0);
    for (std::size_t cell = 0; cell < cells_.size(); ++cell)
        cells_[cell] = geometry::insidePolygon(room.outline, centreOf(cell)) ? 1 : 0;
    for (std::size_t i = 0; i < room.outline.size(); ++i)
        block({room.outline[i], room.outline[(i + 1) % room.outline.size()]}, false);
    for (const auto& column : room.columns)
        block(column, true);
    for (const plan::Furniture* piece : house.furnitureIn(room.id))
        if (isInTheWay(*piece)) block(geometry::footprint(*piece), true);
}

void FloorGrid::block(const std::vector<plan::Vec2>& outline, bool inside) {
    const Bounds bounds = boundsOf(outline);
    const auto index = [&](double along_mm, std::size_t count) {
        return static_cast<std::size_t>(
            std::clamp(std::floor(along_mm / cell_mm_), 0.0, static_cast<double>(count) - 1));
    };
    const plan::Vec2 low = bounds.low - origin_mm_ - plan::Vec2{kBodyMm, kBodyMm};
    const plan::Vec2 high = bounds.high - origin_mm_ + plan::Vec2{kBodyMm, kBodyMm};
    for (std::size_t row = index(low.y, rows_); row <= index(high.y, rows_); ++row)
        for (std::size_t column = index(low.x, columns_); column <= index(high.x, columns_); ++column) {
            const std::size_t cell = row * columns_ + column;
            if (cells_[cell] == 0) continue;
            const plan::Vec2 at = centreOf(cell);
            if (isNear(outline, at) || (inside && geometry::insidePolygon(outline, at))) cells_[cell] = 0;
        }
}

std::size_t FloorGrid::cellAt(plan::Vec2 at_mm) const {
    const double column = std::floor((at_mm.x - origin_mm_.x) / cell_mm_);
    const double row = std::floor((at_mm.y - origin_mm_.y) / cell_mm_);
    if (!(column >= 0 && row >= 0 && column < static_cast<double>(columns_) &&
          row < static_cast<double>(rows_)))
        return cells_.size();
    return static_cast<std::size_t>(row) * columns_ + static_cast<std::size_t>(column);
}

plan::Vec2 FloorGrid::centreOf(std::size_t cell) const {
    return origin_mm_ + plan::Vec2{(static_cast<double>(cell % columns_) + 0.5) * cell_mm_,
                                   (static_cast<double>(cell / columns_) + 0.5) * cell_mm_};
}

bool FloorGrid::isFree(plan::Vec2 at_mm) const {
    const std::size_t cell = cellAt(at_mm);
    return cell < cells_.size() && cells_[cell] != 0;
}

bool FloorGrid::isClear(plan::Vec2 from_mm, plan::Vec2 to_mm) const {
    const plan::Vec2 along = to_mm - from_mm;
    const double steps = std::max(1.0, std::ceil(length(along) / (cell_mm_ / 3)));
    for (double i = 0; i <= steps; ++i)
        if (!isFree(from_mm + along * (i / steps))) return false;
    return true;
}

std::optional<plan::Vec2> FloorGrid::nearestFree(plan::Vec2 at_mm) const {
    if (isFree(at_mm)) return at_mm;
    // A doorway is left straight ahead.
    for (double away = kStraightMm; away <= kSnapMm; away += kStraightMm)
        for (const plan::Vec2 way : {plan::Vec2{1, 0}, {-1, 0}, {0, 1}, {0, -1}})
            if (isFree(at_mm + way * away)) return at_mm + way * away;
    std::optional<plan::Vec2> nearest;
    double least = kSnapMm;
    for (std::size_t cell = 0; cell < cells_.size(); ++cell) {
        if (cells_[cell] == 0) continue;
        const double away = length(centreOf(cell) - at_mm);
        if (away < least) {
            least = away;
            nearest = centreOf(cell);
        }
    }
    return nearest;
}

/// A* over the eight neighbours of each cell (Hart, Nilsson, Raphael, 1968); empty when there is no way.
std::vector<plan::Vec2> FloorGrid::search(std::size_t from, std::size_t to) const {
    using Entry = std::pair<double, std::size_t>;
    constexpr double kDiagonal = 1.4142135623730951;
    std::vector<double> way(cells_.size(), std::numeric_limits<double>::infinity());
    std::vector<std::size_t> before(cells_.size(), cells_.size());
    std::vector<std::uint8_t> done(cells_.size(), 0);
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
    const auto left = [&](std::size_t row, std::size_t column) { // no more than what is left to go
        const double rows = std::abs(static_cast<double>(row) - static_cast<double>(from / columns_));
        const double columns = std::abs(static_cast<double>(column) - static_cast<double>(from % columns_));
        return std::max(rows, columns) + (kDiagonal - 1) * std::min(rows, columns);
    };
    way[to] = 0; // from the end, so that `before` leads from the beginning to it
    open.push({left(to / columns_, to % columns_), to});
    while (!open.empty()) {
        const std::size_t cell = open.top().second;
        open.pop();
        if (std::exchange(done[cell], 1) != 0) continue;
        if (cell == from) break;
        const std::size_t column = cell % columns_;
        const std::size_t row = cell / columns_;
        for (std::size_t r = row == 0 ? 0 : row - 1; r <= std::min(row + 1, rows_ - 1); ++r)
            for (std::size_t c = column == 0 ? 0 : column - 1; c <= std::min(column + 1, columns_ - 1); ++c) {
                const std::size_t next = r * columns_ + c;
                const double there = way[cell] + (r != row && c != column ? kDiagonal : 1);
                if (cells_[next] == 0 || there >= way[next]) continue;
                way[next] = there;
                before[next] = cell;
                open.push({there + left(r, c), next});
            }
    }
    std::vector<plan::Vec2> points;
    if (!std::isfinite(way[from])) return points;
    for (std::size_t cell = from; cell < cells_.size(); cell = before[cell])
        points.push_back(centreOf(cell));
    return points;
}

std::vector<plan::Vec2> FloorGrid::way(plan::Vec2 from_mm, plan::Vec2 to_mm) const {
    const auto from = nearestFree(from_mm);
    const auto to = nearestFree(to_mm);
    if (!from || !to) return {from_mm, to_mm};
    const plan::Vec2 first = *from;
    const plan::Vec2 last = *to;
    std::vector<plan::Vec2> steps = {first, last};
    if (!isClear(first, last)) {
        steps = search(cellAt(first), cellAt(last));
        if (steps.empty()) return {from_mm, to_mm};
        steps.insert(steps.begin(), first);
        steps.push_back(last);
    }
    // Pulled straight: from each corner on to the last place that is seen from it.
    std::vector<plan::Vec2> pulled = {from_mm};
    if (!(first == from_mm)) pulled.push_back(first);
    for (std::size_t at = 0; at + 1 < steps.size();) {
        std::size_t next = steps.size() - 1;
        while (next > at + 1 && !isClear(steps[at], steps[next]))
            --next;
        pulled.push_back(steps[next]);
        at = next;
    }
    if (!(last == to_mm)) pulled.push_back(to_mm);
    return pulled;
}

double squaredToSegment(plan::Vec2 at, plan::Vec2 a, plan::Vec2 b) {
    const plan::Vec2 along = b - a;
    const double run = dot(along, along);
    const double part = run > 0 ? std::clamp(dot(at - a, along) / run, 0.0, 1.0) : 0;
    const plan::Vec2 off = at - (a + along * part);
    return dot(off, off);
}

double lengthOf(const std::vector<plan::Vec2>& way_mm) {
    double total = 0;
    for (std::size_t i = 1; i < way_mm.size(); ++i)
        total += length(way_mm[i] - way_mm[i - 1]);
    return total;
}

} // namespace gangway::checks
