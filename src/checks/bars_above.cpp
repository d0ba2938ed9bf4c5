// Bars of the space over furniture: what stands on a bedside table, cords, pillows.
#include "checks/point.hpp"
#include "checks/standing.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::checks {

using geometry::Obstacle;
using plan::Severity;

namespace {
Bar barOf(const Obstacle& obstacle, std::string rule, Severity severity) {
    Bar bar;
    bar.rule = std::move(rule);
    bar.severity = severity;
    bar.object = obstacle.piece->id;
    bar.name = pieceName(*obstacle.piece);
    return bar;
}

/// A strip along the top of what stands below a plate, with the space that is kept over it.
void barOverTop(const Facts& facts, const Obstacle& obstacle, const char* rule, const char* limit,
                const char* why, std::vector<Bar>& bars) {
    if (facts.limit(limit) <= 0) return;
    const auto [left, right] = std::ranges::minmax(obstacle.outline_mm, {}, &plan::Vec2::x);
    const auto [low, high] = std::ranges::minmax(obstacle.outline_mm, {}, &plan::Vec2::y);
    Bar bar = barOf(obstacle, rule, Severity::Hint);
    bar.area_mm = rectangle(left.x, right.x, std::max(low.y, high.y - 1), high.y);
    bar.keep = {0, 0, 0, facts.limit(limit)};
    bar.limit_mm = facts.limit(limit);
    bar.why = why;
    bar.source = facts.source(limit);
    bars.push_back(std::move(bar));
}

/// Pillows lie, and people lean, before what is over the head of a mattress.
void barPillows(const WallScene& scene, const Obstacle& obstacle, std::vector<Bar>& bars) {
    constexpr double kPillowMm = 150; // common practice, no source
    const plan::Vec3 back = geometry::fromLocal(*obstacle.piece, plan::Vec3{0, 1, 0}) -
                            geometry::fromLocal(*obstacle.piece, plan::Vec3{0, 0, 0});
    if (dot(back, scene.frame.w) > -0.9) return; // another side of the bed
    const auto [left, right] = std::ranges::minmax(obstacle.outline_mm, {}, &plan::Vec2::x);
    const double top = std::ranges::max(obstacle.outline_mm, {}, &plan::Vec2::y).y;
    Bar bar = barOf(obstacle, "covered-plate", Severity::Warn);
    bar.name = fmt::format("the pillows of {}", pieceName(*obstacle.piece));
    bar.area_mm = rectangle(left.x, right.x, top, top + kPillowMm);
    bar.why = "pillows, and who leans back, hide it";
    bar.source = "common practice, no source";
    bars.push_back(std::move(bar));
}

bool isUsed(const Point& point) {
    return (point.socket || point.control) && !isPutAway(*point.plate);
}

} // namespace

void barAbove(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars) {
    for (const Obstacle& obstacle : scene.obstacles) {
        const std::string& kind = obstacle.piece->kind;
        if (kind == "bed" && obstacle.solid == "mattress") barPillows(scene, obstacle, bars);
        if (kind == "bedside-table" && obstacle.solid == "top" && isUsed(point))
            barOverTop(facts, obstacle, "bedside-clear", "bedTableClear",
                       "what stands on the table wants that much under a plate", bars);
        if (point.socket && standingOf(*obstacle.piece) != Standing::Moving)
            barOverTop(facts, obstacle, "cord-room", "cordBelow", "the cord bends down below the plug", bars);
    }
}

} // namespace gangway::checks
