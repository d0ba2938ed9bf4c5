#include "geometry/wall_hit.hpp"

#include "geometry/wall_build.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::geometry {
namespace {

/// A place this near to the end of a shared stretch still counts as on it.
constexpr double kEndSlackMm = 1;

/// Takes the room's nearest face into `best` when it is nearer than what is there.
void takeNearest(const plan::Room& room, Vec2 at_mm, double reach_mm, std::optional<WallHit>& best) {
    for (std::size_t i = 0; i < room.walls.size(); ++i) {
        if (room.walls[i].structure == plan::WallStructure::None) continue;
        const EdgeAxes axes = edgeAxes(room, i);
        const double u = std::clamp(axes.along(at_mm), 0.0, axes.length_mm);
        const double away = length(at_mm - axes.at(u));
        if (away > reach_mm || (best && away >= best->distance_mm)) continue;
        best = WallHit{room.id, i, u, away};
    }
}

/// Where the way from a point on one face along the mean normal of both meets the other face.
double uAcross(const EdgeAxes& here, const EdgeAxes& there, double u_mm) {
    const Vec2 way = here.w - there.w;
    const double out = there.out(here.at(u_mm));
    const double speed = dot(way, there.w); // never near 0: the faces look away from each other
    return there.along(here.at(u_mm) - way * (out / speed));
}

} // namespace

std::optional<WallHit> wallAt(const HouseIndex& house, const std::string& storey, Vec2 at_mm,
                              double reach_mm) {
    std::optional<WallHit> best;
    if (const plan::Room* room = roomAt(house, storey, at_mm)) {
        takeNearest(*room, at_mm, reach_mm, best);
        return best;
    }
    const Vec2 reach{reach_mm, reach_mm};
    for (const plan::Room* room : house.roomsNear(storey, at_mm - reach, at_mm + reach))
        takeNearest(*room, at_mm, reach_mm, best);
    return best;
}

std::optional<OtherFace> otherFace(const HouseIndex& house, const std::string& room_id,
                                   const plan::Host& host) {
    if (host.kind != plan::Host::Kind::Wall) return std::nullopt;
    const plan::Room* room = house.room(room_id);
    const auto wall = room == nullptr ? std::nullopt : plan::wallIndex(*room, host.wall);
    if (!wall) return std::nullopt;
    const EdgeAxes here = edgeAxes(*room, *wall);
    for (const PairedFace& pair : pairedFaces(house, {room->id, *wall})) {
        if (host.u_mm < pair.from_mm - kEndSlackMm || host.u_mm > pair.to_mm + kEndSlackMm) continue;
        const plan::Room* beyond = house.room(pair.other.room);
        if (beyond == nullptr || pair.other.wall >= beyond->walls.size()) continue;
        plan::Host other = host;
        other.wall = beyond->walls[pair.other.wall].id;
        other.u_mm = uAcross(here, edgeAxes(*beyond, pair.other.wall), host.u_mm);
        return OtherFace{beyond->id, std::move(other)};
    }
    return std::nullopt;
}

std::optional<OtherFace> otherFace(const plan::Plan& plan, const plan::Plate& plate) {
    return otherFace(HouseIndex(plan, plate.room), plate.room, plate.host);
}

} // namespace gangway::geometry
