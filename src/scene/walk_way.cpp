// Finding a way over the walk map: A* over its cells, then pulled tight.
#include "scene/scene.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <queue>

namespace gangway::scene {
namespace {

constexpr float kDiagonal = 1.41421356f;

float octile(int columns, int rows) {
    const auto a = static_cast<float>(std::max(std::abs(columns), std::abs(rows)));
    const auto b = static_cast<float>(std::min(std::abs(columns), std::abs(rows)));
    return a + (kDiagonal - 1) * b;
}

struct Open {
    float estimate = 0;
    std::size_t cell = 0;
    // The smallest estimate first; the lower cell first where they are equal, so that ways repeat exactly.
    bool operator<(const Open& other) const {
        return estimate != other.estimate ? estimate > other.estimate : cell > other.cell;
    }
};

} // namespace

// Every cell that the segment passes through is free: Amanatides and Woo, A Fast Voxel Traversal Algorithm
// (1987).
bool WalkMap::freeLine(plan::Vec2 from_mm, plan::Vec2 to_mm) const {
    Cell cell = cellAt(from_mm);
    const Cell last = cellAt(to_mm);
    const plan::Vec2 along = to_mm - from_mm;
    const int step_column = along.x > 0 ? 1 : -1;
    const int step_row = along.y > 0 ? 1 : -1;
    const auto firstBorder = [&](double from, double length, double origin, int index, int step) {
        if (length == 0) return 1e300;
        return (origin + (index + (step > 0 ? 1 : 0)) * cell_mm_ - from) / length;
    };
    double next_column = firstBorder(from_mm.x, along.x, origin_mm_.x, cell.column, step_column);
    double next_row = firstBorder(from_mm.y, along.y, origin_mm_.y, cell.row, step_row);
    const double each_column = along.x != 0 ? cell_mm_ / std::abs(along.x) : 1e300;
    const double each_row = along.y != 0 ? cell_mm_ / std::abs(along.y) : 1e300;
    const int most = std::abs(last.column - cell.column) + std::abs(last.row - cell.row);
    if (!freeCell(cell) || !freeCell(last)) return false;
    for (int i = 0; i < most && !(cell == last); ++i) {
        if (next_column < next_row) {
            cell.column += step_column;
            next_column += each_column;
        } else {
            cell.row += step_row;
            next_row += each_row;
        }
        if (!freeCell(cell)) return false;
    }
    return true;
}

std::vector<WalkMap::Cell> WalkMap::cellPath(Cell from, Cell to) const {
    constexpr float kUnknown = 1e30f;
    std::vector<float> cost(blocked_.size(), kUnknown);
    std::vector<std::int8_t> came(blocked_.size(), -1);
    constexpr int kColumn[] = {1, 0, -1, 0, 1, -1, -1, 1};
    constexpr int kRow[] = {0, 1, 0, -1, 1, 1, -1, -1};
    std::priority_queue<Open> open;
    cost[index(from)] = 0;
    open.push({octile(to.column - from.column, to.row - from.row), index(from)});
    while (!open.empty() && open.top().cell != index(to)) {
        const Open best = open.top();
        open.pop();
        const Cell at{static_cast<int>(best.cell % static_cast<std::size_t>(columns_)),
                      static_cast<int>(best.cell / static_cast<std::size_t>(columns_))};
        const float so_far = cost[best.cell];
        if (best.estimate > so_far + octile(to.column - at.column, to.row - at.row) + 1e-3f) continue;
        for (std::int8_t d = 0; d < 8; ++d) {
            const Cell next{at.column + kColumn[d], at.row + kRow[d]};
            if (!freeCell(next)) continue;
            // Not between two blocked corners.
            if (d >= 4 && (!freeCell({at.column, next.row}) || !freeCell({next.column, at.row}))) continue;
            const float total = so_far + (d < 4 ? 1 : kDiagonal);
            if (total >= cost[index(next)]) continue;
            cost[index(next)] = total;
            came[index(next)] = d;
            open.push({total + octile(to.column - next.column, to.row - next.row), index(next)});
        }
    }
    std::vector<Cell> path;
    if (cost[index(to)] >= kUnknown) return path;
    for (Cell at = to; !(at == from);) {
        path.push_back(at);
        const auto d = static_cast<std::size_t>(came[index(at)]);
        at = {at.column - kColumn[d], at.row - kRow[d]};
    }
    path.push_back(from);
    std::reverse(path.begin(), path.end());
    return path;
}

std::vector<plan::Vec2> WalkMap::way(plan::Vec2 from_mm, plan::Vec2 to_mm) const {
    const plan::Vec2 start = nearestFree(from_mm);
    if (!free(start) || !free(to_mm)) return {};
    std::vector<plan::Vec2> way;
    if (!(start == from_mm)) way.push_back(start);
    if (freeLine(start, to_mm)) {
        way.push_back(to_mm);
        return way;
    }
    const std::vector<Cell> path = cellPath(cellAt(start), cellAt(to_mm));
    if (path.empty()) return {};
    // Pull the string tight: from each corner as far along the path as one sees.
    std::vector<plan::Vec2> points{start};
    for (std::size_t i = 1; i + 1 < path.size(); ++i)
        points.push_back(centreOf(path[i]));
    points.push_back(to_mm);
    std::size_t at = 0;
    while (at + 1 < points.size()) {
        std::size_t furthest = at + 1;
        while (furthest + 1 < points.size() && freeLine(points[at], points[furthest + 1]))
            ++furthest;
        way.push_back(points[furthest]);
        at = furthest;
    }
    return way;
}

} // namespace gangway::scene
