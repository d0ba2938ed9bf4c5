#include "checks/margins.hpp"

#include "checks/stretches.hpp"

#include <algorithm>
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
