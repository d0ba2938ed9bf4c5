#include "checks/margins.hpp"

#include "checks/stretches.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <unordered_map>

namespace gangway::checks {

namespace {
/// Less than 0 where a bar is broken, unlike Margin, which ends at 0.
double signedMargin(const std::vector<Bar>& bars, plan::Vec2 half_mm, plan::Vec2 at_mm, Interval whole,
                    const Bar** least) {
    double mm = std::min(at_mm.x - whole.from_mm, whole.to_mm - at_mm.x);
    for (const Bar& bar : bars) {
        if (bar.severity < plan::Severity::Warn) continue;
        const double play = playOf(bar, half_mm, at_mm);
        if (play >= mm) continue;
        mm = play;
        if (least != nullptr) *least = &bar;
    }
    return mm;
}
/// Which way a plate fails first: where a small step costs most of what it has.
PlaceMargin::Way wayTo(const Bar* least, plan::Vec2 half_mm, plan::Vec2 at_mm, Interval whole) {
    using Way = PlaceMargin::Way;
    if (least == nullptr) return at_mm.x - whole.from_mm < whole.to_mm - at_mm.x ? Way::Left : Way::Right;
    constexpr double kStep_mm = 0.1;
    constexpr std::array<std::pair<Way, plan::Vec2>, 4> kWays{{{Way::Left, {-kStep_mm, 0}},
                                                               {Way::Right, {kStep_mm, 0}},
                                                               {Way::Up, {0, kStep_mm}},
                                                               {Way::Down, {0, -kStep_mm}}}};
    Way way = Way::Left;
    double left = 1e300;
    for (const auto& [name, step] : kWays)
        if (const double play = playOf(*least, half_mm, at_mm + step); play < left - 1e-9) {
            left = play;
            way = name;
        }
    return way;
}
} // namespace

std::vector<PlaceMargin> margins(const Facts& facts) {
    std::unordered_map<const Point*, PlaceMargin> of;
    for (const plan::Room& room : facts.plan().rooms)
        for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
            const auto& points = facts.pointsOn(room.id, room.walls[wall].id);
            if (points.empty()) continue;
            const WallScene scene = sceneOf(facts, room, wall);
            for (const Point* point : points) {
                const auto bars = barsFor(facts, scene, *point);
                const Bar* least = nullptr;
                PlaceMargin margin;
                margin.plate = point->plate->id;
                margin.mm =
                    signedMargin(bars, point->half_mm, point->centre_mm(), wholeWall(scene, *point), &least);
                margin.way = wayTo(least, point->half_mm, point->centre_mm(), wholeWall(scene, *point));
                if (least != nullptr) {
                    margin.rule = least->rule;
                    margin.object = least->object;
                    margin.name = least->name;
                }
                of.emplace(point, std::move(margin));
            }
        }
    std::vector<PlaceMargin> all;
    for (const Point& point : facts.points())
        if (const auto found = of.find(&point); found != of.end()) all.push_back(found->second);
    return all;
}

MarginPicture marginPicture(const Facts& facts, const WallScene& scene, const Point& point, double cell_mm) {
    MarginPicture picture;
    double top = 0;
    for (const plan::Vec2 corner : geometry::wallOutline(*scene.room, scene.wall))
        top = std::max(top, corner.y);
    picture.cell_mm = cell_mm;
    picture.columns = std::max(1, static_cast<int>(std::ceil(scene.frame.length_mm / cell_mm)));
    picture.rows = std::max(1, static_cast<int>(std::ceil(top / cell_mm)));
    const auto bars = barsFor(facts, scene, point);
    const Interval whole = wholeWall(scene, point);
    picture.mm.reserve(static_cast<std::size_t>(picture.columns) * static_cast<std::size_t>(picture.rows));
    for (int row = 0; row < picture.rows; ++row)
        for (int column = 0; column < picture.columns; ++column)
            picture.mm.push_back(static_cast<float>(signedMargin(
                bars, point.half_mm, {(column + 0.5) * cell_mm, (row + 0.5) * cell_mm}, whole, nullptr)));
    return picture;
}

} // namespace gangway::checks
