#include "checks/reach_shell.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::checks {

namespace {
/// One steps over what is lower; common practice, no source.
constexpr double kStepMm = 200;
/// What begins higher than this is hung up: knees and feet go under it.
constexpr double kUnderMm = 700;

struct Extent {
    plan::Vec2 low{1e300, 1e300};
    plan::Vec2 high{-1e300, -1e300};
};

Extent extentOf(const geometry::Obstacle& obstacle) {
    Extent extent;
    for (const plan::Vec2 at : obstacle.outline_mm) {
        extent.low = {std::min(extent.low.x, at.x), std::min(extent.low.y, at.y)};
        extent.high = {std::max(extent.high.x, at.x), std::max(extent.high.y, at.y)};
    }
    return extent;
}
} // namespace

std::vector<ReachColumn> reachShell(const Facts& facts, const plan::Room& room, std::size_t wall,
                                    const catalogue::Body& body, double step_mm) {
    const geometry::Frame frame = geometry::wallFrame(room, wall);
    // What is deeper than an arm is long keeps one off altogether.
    const auto obstacles =
        geometry::obstaclesBefore(facts.house(), room.id, frame, 2 * body.arm_mm, {}, facts.base());
    std::vector<Extent> extents;
    for (const geometry::Obstacle& obstacle : obstacles)
        extents.push_back(extentOf(obstacle));
    std::vector<ReachColumn> columns;
    const auto count = std::max(1, static_cast<int>(std::ceil(frame.length_mm / step_mm)));
    for (int i = 0; i < count; ++i) {
        ReachColumn column{frame.length_mm * i / count, frame.length_mm * (i + 1) / count, body.low_mm,
                           body.high_mm, 0};
        double hidden_to = 0;
        const double u = (column.from_mm + column.to_mm) / 2;
        for (std::size_t o = 0; o < extents.size(); ++o) {
            const Extent& extent = extents[o];
            if (u < extent.low.x || u > extent.high.x || extent.high.y < kStepMm || extent.low.y > kUnderMm)
                continue;
            const geometry::Obstacle& obstacle = obstacles[o];
            column.depth_mm = std::max(column.depth_mm, obstacle.far_mm);
            hidden_to = std::max(hidden_to, extent.high.y);
        }
        if (column.depth_mm > 0) {
            const double left = body.arm_mm * body.arm_mm - column.depth_mm * column.depth_mm;
            const double half = left > 0 ? std::sqrt(left) : -1;
            column.low_mm = std::max({column.low_mm, body.shoulder_mm - half, hidden_to});
            column.high_mm = std::min(column.high_mm, body.shoulder_mm + half);
            if (half < 0 || hidden_to > body.shoulder_mm) column.high_mm = column.low_mm;
        }
        columns.push_back(column);
    }
    return columns;
}

} // namespace gangway::checks
