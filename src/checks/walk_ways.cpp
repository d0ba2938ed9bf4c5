#include "checks/walk_ways.hpp"

#include "checks/floor_grid.hpp"
#include "geometry/walls.hpp"

#include <algorithm>
#include <limits>

namespace gangway::checks {

using plan::Vec2;

namespace {
/// A sill lower than this is stepped over; common practice, no source.
constexpr double kStepMm = 100;

using Way = std::vector<Vec2>;

struct Entrance {
    Vec2 sill_mm;
    Vec2 into; ///< unit, into the room
};

std::vector<Entrance> entrancesOf(const geometry::HouseIndex& house, const plan::Room& room) {
    std::vector<Entrance> entrances;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall)
        for (const geometry::FaceHole& hole : geometry::faceHoles(house, {room.id, wall})) {
            using Kind = plan::Opening::Kind;
            if (hole.opening->kind == Kind::Window || hole.opening->kind == Kind::Hatch ||
                hole.bottom_mm > kStepMm)
                continue;
            const geometry::Frame frame = geometry::wallFrame(room, wall);
            const plan::Vec3 at = geometry::toHouse(frame, {(hole.left_mm + hole.right_mm) / 2, 0, 0});
            entrances.push_back({{at.x, at.y}, {frame.w.x, frame.w.y}});
        }
    return entrances;
}
} // namespace

std::vector<std::vector<Vec2>> walkWays(const geometry::HouseIndex& house, const plan::Room& room,
                                        double width_mm) {
    const auto entrances = entrancesOf(house, room);
    std::vector<Way> ways;
    for (const Entrance& entrance : entrances)
        ways.push_back({entrance.sill_mm, entrance.sill_mm + entrance.into * width_mm});
    if (entrances.size() < 2) return ways;
    const FloorGrid floor(house, room);
    for (std::size_t i = 0; i + 1 < entrances.size(); ++i)
        for (std::size_t j = i + 1; j < entrances.size(); ++j)
            ways.push_back(floor.way(entrances[i].sill_mm, entrances[j].sill_mm));
    return ways;
}

double toWays(const std::vector<std::vector<Vec2>>& ways, Vec2 at_mm) {
    double least = std::numeric_limits<double>::infinity();
    for (const Way& way : ways)
        for (std::size_t i = 1; i < way.size(); ++i) {
            const Vec2 edge = way[i] - way[i - 1];
            const double part = dot(edge, edge) > 0
                                    ? std::clamp(dot(at_mm - way[i - 1], edge) / dot(edge, edge), 0.0, 1.0)
                                    : 0;
            least = std::min(least, length(at_mm - (way[i - 1] + edge * part)));
        }
    return least;
}

} // namespace gangway::checks
