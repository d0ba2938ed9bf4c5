#include "lighting/contours.hpp"

#include <array>
#include <cmath>
#include <unordered_map>

namespace gangway::lighting {

namespace {

using plan::Vec2;

/// An edge between two neighbouring middles: number of the lower or left one, doubled, plus one for edges
/// upwards.
using Edge = std::size_t;

struct Segment {
    Edge from = 0;
    Edge to = 0;
};

/// Segments of one level, with the higher side at the left.
class Level {
public:
    Level(const LightGrid& grid, double level) : grid_(grid), level_(level) {
        for (int row = 0; row + 1 < grid.rows; ++row)
            for (int column = 0; column + 1 < grid.columns; ++column)
                addCell(column, row);
    }

    std::vector<Contour> lines() const;

private:
    std::size_t number(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(grid_.columns) +
               static_cast<std::size_t>(column);
    }
    void addCell(int column, int row);
    Vec2 pointOn(Edge edge) const;

    const LightGrid& grid_;
    double level_;
    std::vector<Segment> segments_;
};

void Level::addCell(int column, int row) {
    // Corners and edges counter-clockwise from the lower left corner and the lower edge.
    const std::array<double, 4> corner{grid_.at(column, row), grid_.at(column + 1, row),
                                       grid_.at(column + 1, row + 1), grid_.at(column, row + 1)};
    for (const double value : corner)
        if (std::isnan(value)) return;
    const std::array<Edge, 4> edge{2 * number(column, row), 2 * number(column + 1, row) + 1,
                                   2 * number(column, row + 1), 2 * number(column, row) + 1};
    const auto high = [&](std::size_t i) { return corner[i % 4] >= level_; };
    // Going round, the level is crossed downwards on some edges and upwards on as many. A line enters where
    // the way round goes down, and leaves where it next goes up: then the higher side is at its left.
    std::vector<std::size_t> down;
    std::vector<std::size_t> up;
    for (std::size_t i = 0; i < 4; ++i) {
        if (high(i) && !high(i + 1)) down.push_back(i);
        if (!high(i) && high(i + 1)) up.push_back(i);
    }
    const bool middle_high = (corner[0] + corner[1] + corner[2] + corner[3]) / 4 >= level_;
    for (const std::size_t d : down) {
        std::size_t chosen = up.front();
        if (up.size() == 2) {
            // Round a low corner when the middle is high, else round a high one.
            const std::size_t next = (d + 1) % 4 == up[0] ? up[0] : up[1];
            const std::size_t before = next == up[0] ? up[1] : up[0];
            chosen = middle_high ? next : before;
        }
        segments_.push_back({edge[d], edge[chosen]});
    }
}

Vec2 Level::pointOn(Edge edge) const {
    const int column = static_cast<int>(edge / 2 % static_cast<std::size_t>(grid_.columns));
    const int row = static_cast<int>(edge / 2 / static_cast<std::size_t>(grid_.columns));
    const bool upwards = edge % 2 == 1;
    const double a = grid_.at(column, row);
    const double b = upwards ? grid_.at(column, row + 1) : grid_.at(column + 1, row);
    const double part = (level_ - a) / (b - a) * grid_.cell_mm;
    const Vec2 at = grid_.middleOf(column, row);
    return upwards ? Vec2{at.x, at.y + part} : Vec2{at.x + part, at.y};
}

std::vector<Contour> Level::lines() const {
    std::unordered_map<Edge, std::size_t> leaving; // looked up, never walked
    std::unordered_map<Edge, std::size_t> entering;
    for (std::size_t i = 0; i < segments_.size(); ++i) {
        leaving[segments_[i].from] = i;
        entering[segments_[i].to] = i;
    }
    std::vector<Contour> lines;
    std::vector<bool> used(segments_.size(), false);
    const auto follow = [&](std::size_t first, bool closed) {
        Contour line{level_, {pointOn(segments_[first].from)}, closed};
        for (std::size_t i = first; !used[i];) {
            used[i] = true;
            line.points_mm.push_back(pointOn(segments_[i].to));
            const auto next = leaving.find(segments_[i].to);
            if (next == leaving.end()) break;
            i = next->second;
        }
        if (closed) line.points_mm.pop_back();
        lines.push_back(std::move(line));
    };
    for (std::size_t i = 0; i < segments_.size(); ++i)
        if (!entering.contains(segments_[i].from)) follow(i, false);
    for (std::size_t i = 0; i < segments_.size(); ++i)
        if (!used[i]) follow(i, true);
    return lines;
}

} // namespace

std::vector<double> contourLevels(double low, double high) {
    std::vector<double> levels;
    if (!(low > 0) || !std::isfinite(high)) return levels;
    for (int power = static_cast<int>(std::floor(std::log10(low))); std::pow(10, power) <= high; ++power)
        for (const double step : {1.0, 2.0, 5.0}) {
            const double level = step * std::pow(10, power);
            if (level >= low && level <= high) levels.push_back(level);
        }
    return levels;
}

std::vector<Contour> contours(const LightGrid& grid, const std::vector<double>& levels) {
    std::vector<Contour> all;
    for (const double level : levels)
        for (Contour& line : Level(grid, level).lines())
            all.push_back(std::move(line));
    return all;
}

} // namespace gangway::lighting
