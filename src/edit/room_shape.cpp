// Commands that move a room's corners and walls.
#include "edit/part_check.hpp"
#include "edit/room_edits.hpp"
#include "edit/room_outline.hpp"
#include "edit/wording.hpp"
#include "geometry/ceiling.hpp"
#include "geometry/walls.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <fmt/format.h>
#include <map>

namespace gangway::edit {
namespace {

using detail::edgeDirection;
using detail::outwardNormal;
using detail::shownMm;
using detail::wallName;
using plan::Vec2;

std::expected<const plan::Room*, std::string> roomWithWall(const plan::Plan& plan, const std::string& room_id,
                                                           std::size_t wall) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", room_id));
    if (wall >= room->walls.size())
        return std::unexpected(fmt::format("{} has no wall of that number", detail::roomName(*room)));
    if (wall >= room->outline.size())
        return std::unexpected(
            fmt::format("{} is a side of a column; change the column instead", wallName(*room, wall)));
    return room;
}

std::expected<const plan::Room*, std::string> roomWithCorner(const plan::Plan& plan,
                                                             const std::string& room_id, std::size_t corner) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr) return std::unexpected(fmt::format("there is no room '{}'", room_id));
    if (corner >= room->outline.size())
        return std::unexpected(fmt::format("{} has no corner of that number", detail::roomName(*room)));
    return room;
}

Refusable reshape(const plan::Plan& plan, plan::Room after, std::string name, std::string merge_key,
                  const detail::Rehost& rehost = {}) {
    auto fit = detail::fitted(plan, std::move(after), rehost);
    if (!fit) return std::unexpected(fit.error());
    return Command{std::move(name), std::move(merge_key),
                   [fit = std::move(*fit)](Draft& draft) { detail::apply(draft, fit); }};
}

/// How far a wall lies from where it was before the step, outwards.
double wayOfWall(const plan::Room& before, const plan::Room& after, const std::string& wall_id) {
    const auto from = plan::wallIndex(before, wall_id);
    const auto to = plan::wallIndex(after, wall_id);
    if (!from || !to) return 0;
    return dot(after.outline[*to] - before.outline[*from], outwardNormal(before, *from));
}

/// A face of a wall line, and which way it moves.
struct Face {
    std::string room;
    std::string wall;
    bool operator<(const Face& other) const {
        return std::tie(room, wall) < std::tie(other.room, other.wall);
    }
};

/// The face and all that stand behind it, behind those, and so on, along one line of walls; outlines only.
std::vector<Face> wallLine(const plan::Plan& plan, const Face& first) {
    std::vector<Face> faces;
    std::map<Face, bool> seen{{first, true}};
    std::deque<Face> open{first};
    for (; !open.empty(); open.pop_front()) {
        const Face face = open.front();
        faces.push_back(face);
        const std::size_t wall = *plan::wallIndex(*plan::findRoom(plan, face.room), face.wall);
        for (const geometry::PairedFace& pair : geometry::pairedFaces(plan, {face.room, wall})) {
            const plan::Room& other = *plan::findRoom(plan, pair.other.room);
            if (pair.other.wall >= other.outline.size()) continue;
            const Face beyond{other.id, other.walls[pair.other.wall].id};
            if (seen.emplace(beyond, true).second) open.push_back(beyond);
        }
    }
    return faces;
}

std::expected<std::vector<detail::Reshaped>, std::string> shifted(const plan::Plan& plan,
                                                                  const std::vector<Face>& faces, Vec2 by) {
    std::map<std::string, plan::Room> rooms;
    for (const Face& face : faces) {
        plan::Room& room = rooms.try_emplace(face.room, *plan::findRoom(plan, face.room)).first->second;
        const std::size_t wall = *plan::wallIndex(room, face.wall);
        detail::shiftRun(room, {wall, wall}, dot(by, outwardNormal(room, wall)));
    }
    std::vector<detail::Reshaped> all;
    for (auto& [id, room] : rooms) {
        auto fit = detail::fitted(plan, std::move(room));
        if (!fit) return std::unexpected(fit.error());
        all.push_back(std::move(*fit));
    }
    return all;
}

/// The far end of a wall moved along it by `by_mm`, away from the end that stays.
void lengthen(plan::Room& room, std::size_t wall, double by_mm, End stays) {
    const std::size_t count = room.outline.size();
    const bool left = stays == End::Left;
    const std::size_t next = left ? (wall + 1) % count : (wall + count - 1) % count;
    const Vec2 along = edgeDirection(room, wall) * (left ? 1.0 : -1.0);
    if (detail::parallel(along, edgeDirection(room, next))) {
        Vec2& corner = room.outline[left ? (wall + 1) % count : wall];
        corner = corner + along * by_mm;
        return;
    }
    // A line moved by s along its normal n meets the wall s / (along . n) further on.
    const double outwards = by_mm * dot(along, outwardNormal(room, next));
    detail::shiftRun(room, detail::straightRun(room, next), outwards);
}

} // namespace

Refusable setWallLength(const plan::Plan& plan, const std::string& room_id, std::size_t wall,
                        double length_mm, End stays) {
    const auto room = roomWithWall(plan, room_id, wall);
    if (!room) return std::unexpected(room.error());
    if (!(length_mm > 0)) return std::unexpected("a wall needs a length above 0 mm");
    const std::size_t next = (wall + 1) % (*room)->outline.size();
    const double before = length((*room)->outline[next] - (*room)->outline[wall]);
    plan::Room after = **room;
    lengthen(after, wall, length_mm - before, stays);
    return reshape(plan, std::move(after),
                   fmt::format("{} {} to {}", length_mm < before ? "Shorten" : "Lengthen",
                               wallName(**room, wall), shownMm(length_mm)),
                   "");
}

Refusable moveWall(const plan::Plan& plan, const std::string& room_id, std::size_t wall, double outwards_mm,
                   Beyond beyond) {
    const auto room = roomWithWall(plan, room_id, wall);
    if (!room) return std::unexpected(room.error());
    const std::string wall_id = (*room)->walls[wall].id;
    const Face face{room_id, wall_id};
    const auto faces = beyond == Beyond::Together ? wallLine(plan, face) : std::vector<Face>{face};
    auto all = shifted(plan, faces, outwardNormal(**room, wall) * outwards_mm);
    if (!all) return std::unexpected(all.error());
    const std::string who = wallName(**room, wall);
    return Command{fmt::format("Move {} by {}", who, shownMm(std::abs(outwards_mm))),
                   fmt::format("move wall {} {}", room_id, wall_id),
                   [all = std::move(*all)](Draft& draft) {
                       for (const detail::Reshaped& reshaped : all)
                           detail::apply(draft, reshaped);
                   },
                   [who, room_id, wall_id](const plan::Plan& now, const Delta& step) {
                       const auto* was = step.before<plan::Room>(room_id);
                       const auto* is = plan::findRoom(now, room_id);
                       const double way = was && is ? wayOfWall(*was, *is, wall_id) : 0;
                       return fmt::format("Move {} by {}", who, shownMm(std::abs(way)));
                   }};
}

Refusable moveCorner(const plan::Plan& plan, const std::string& room_id, std::size_t corner, Vec2 to_mm,
                     Angles angles) {
    const auto room = roomWithCorner(plan, room_id, corner);
    if (!room) return std::unexpected(room.error());
    plan::Room after = **room;
    const std::size_t before = (corner + after.outline.size() - 1) % after.outline.size();
    const Vec2 along = edgeDirection(after, corner);
    const Vec2 way = to_mm - after.outline[corner];
    if (angles == Angles::Free) {
        after.outline[corner] = to_mm;
    } else if (detail::parallel(along, edgeDirection(after, before))) {
        after.outline[corner] = after.outline[corner] + along * dot(way, along);
    } else {
        const double left = dot(way, outwardNormal(after, before));
        const double right = dot(way, outwardNormal(after, corner));
        detail::shiftRun(after, detail::straightRun(after, before), left);
        detail::shiftRun(after, detail::straightRun(after, corner), right);
    }
    const std::size_t count = after.outline.size();
    return reshape(plan, std::move(after),
                   fmt::format("Move the corner of walls {} and {} of {}", (*room)->walls[before].id,
                               (*room)->walls[corner].id, detail::roomName(**room)),
                   fmt::format("move corner {} {} of {}", room_id, corner, count));
}

Refusable splitWall(const plan::Plan& plan, const std::string& room_id, std::size_t wall, double at_mm) {
    const auto room = roomWithWall(plan, room_id, wall);
    if (!room) return std::unexpected(room.error());
    const geometry::WallEdge edge = geometry::wallEdge(**room, wall);
    const double whole = length(edge.to_mm - edge.from_mm);
    const std::string left = (*room)->walls[wall].id;
    if (!(at_mm > 0 && at_mm < whole))
        return std::unexpected(
            fmt::format("give a place on {}, between 0 and {}", wallName(**room, wall), shownMm(whole)));
    for (const plan::Opening& o : plan.openings)
        if (o.room == room_id && o.wall == left && o.left_mm < at_mm && o.left_mm + o.width_mm > at_mm)
            return std::unexpected(
                fmt::format("{} is there; split the wall beside it", detail::openingName(o)));
    plan::Room after = **room;
    const Vec2 at = edge.from_mm + (edge.to_mm - edge.from_mm) * (at_mm / whole);
    const std::size_t next = (wall + 1) % after.outline.size();
    const double ceiling =
        std::lerp(geometry::cornerHeight(after, wall), geometry::cornerHeight(after, next), at_mm / whole);
    detail::insertCorner(after, wall + 1, at, ceiling, wall + 1, wall);
    const std::string right = after.walls[wall + 1].id;
    for (plan::WallLine& line : after.walls[wall + 1].lines) {
        if (line.from_mm) line.from_mm = *line.from_mm - at_mm;
        if (line.to_mm) line.to_mm = *line.to_mm - at_mm;
        line.start_u_mm -= line.kind == plan::WallLine::Kind::Tiles ? at_mm : 0;
    }
    return reshape(plan, std::move(after), fmt::format("Split {}", wallName(**room, wall)), "",
                   [left, right, at_mm](const detail::WallPlace& place) {
                       const bool moves = place.first == left && place.second > at_mm;
                       return moves ? detail::WallPlace{right, place.second - at_mm} : place;
                   });
}

Refusable removeCorner(const plan::Plan& plan, const std::string& room_id, std::size_t corner) {
    const auto room = roomWithCorner(plan, room_id, corner);
    if (!room) return std::unexpected(room.error());
    const std::string name = detail::roomName(**room);
    if ((*room)->outline.size() <= 3) return std::unexpected(fmt::format("{} needs three corners", name));
    plan::Room after = **room;
    for (const auto& [from, to] : after.ceiling.creases)
        if (from == static_cast<int>(corner) || to == static_cast<int>(corner))
            return std::unexpected(fmt::format("a fold of the ceiling of {} ends at that corner", name));
    const std::size_t count = after.outline.size();
    const std::size_t before = (corner + count - 1) % count;
    const auto index = static_cast<std::ptrdiff_t>(corner);
    const std::string lost = after.walls[corner].id;
    const std::string stays = after.walls[before].id;
    after.outline.erase(after.outline.begin() + index);
    after.walls.erase(after.walls.begin() + index);
    if (after.ceiling.heights_mm.size() > 1)
        after.ceiling.heights_mm.erase(after.ceiling.heights_mm.begin() + index);
    for (auto& [from, to] : after.ceiling.creases) {
        from -= from > static_cast<int>(corner) ? 1 : 0;
        to -= to > static_cast<int>(corner) ? 1 : 0;
    }
    const plan::Room old = **room;
    const Vec2 start = old.outline[before];
    const Vec2 end = old.outline[(corner + 1) % count];
    const Vec2 along = (end - start) * (1 / length(end - start));
    // What hung on either wall goes to the nearest place on the new one.
    const auto rehost = [=](const detail::WallPlace& place) {
        if (place.first != lost && place.first != stays) return place;
        const std::size_t wall = place.first == lost ? corner : before;
        const Vec2 at = old.outline[wall] + edgeDirection(old, wall) * place.second;
        return detail::WallPlace{stays, std::clamp(dot(at - start, along), 0.0, length(end - start))};
    };
    return reshape(plan, std::move(after),
                   fmt::format("Remove the corner of walls {} and {} of {}", stays, lost, name), "", rehost);
}

} // namespace gangway::edit
