#include "edit/room_outline.hpp"

#include "edit/part_check.hpp"
#include "edit/wording.hpp"
#include "geometry/ceiling.hpp"
#include "geometry/frames.hpp"
#include "plan/io.hpp"
#include "plan/wall_names.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <tuple>

namespace gangway::edit::detail {
namespace {

using plan::Vec2;

constexpr double kParallel = 1e-3;     ///< sine of the largest angle between parallel walls
constexpr double kShortestWall_mm = 1; ///< nothing can be set out on less

Vec2 corner(const plan::Room& room, std::size_t index) {
    return room.outline[index % room.outline.size()];
}

/// Where the line through `at` along `along` meets the line through `other` along `other_along`.
Vec2 meeting(Vec2 at, Vec2 along, Vec2 other, Vec2 other_along) {
    return at + along * (cross(other - at, other_along) / cross(along, other_along));
}

std::string freeWallId(const plan::Room& room) {
    for (std::size_t number = 0;; ++number) {
        std::string id = plan::letterName(number);
        if (!plan::wallIndex(room, id)) return id;
    }
}

void clampLines(plan::Wall& wall, double length_mm) {
    std::erase_if(wall.lines, [&](plan::WallLine& line) {
        if (line.from_mm) line.from_mm = std::clamp(*line.from_mm, 0.0, length_mm);
        if (line.to_mm) line.to_mm = std::clamp(*line.to_mm, 0.0, length_mm);
        return line.to_mm.value_or(length_mm) <= line.from_mm.value_or(0);
    });
}

double wallLength(const plan::Room& room, std::size_t wall) {
    const geometry::WallEdge edge = geometry::wallEdge(room, wall);
    return length(edge.to_mm - edge.from_mm);
}

/// What speaks against the new shape, said by what it would do to the room.
std::string shapeProblem(const plan::Plan& plan, const plan::Room& room) {
    for (std::size_t i = 0; i < room.outline.size(); ++i)
        if (length(corner(room, i + 1) - corner(room, i)) < kShortestWall_mm)
            return fmt::format("{} would have no length left", wallName(room, i));
    plan::Plan part = partOf(plan, {});
    part.rooms.push_back(room);
    for (plan::Wall& wall : part.rooms.front().walls)
        wall.lines.clear(); // they are cut to their walls afterwards
    for (const plan::Diagnostic& found : plan::validate(part)) {
        if (found.level != plan::Level::Error) continue;
        const std::string name = roomName(room);
        if (found.pointer.starts_with("/rooms/0/outline"))
            return fmt::format("the outline of {} would cross itself", name);
        if (found.pointer.starts_with("/rooms/0/columns"))
            return fmt::format("a column would stand outside {}; move it first", name);
        if (found.pointer.starts_with("/rooms/0/ceiling"))
            return fmt::format("the sloped ceiling of {} would not be plane any more; give it one height, or "
                               "move a whole wall",
                               name);
        return found.message;
    }
    return {};
}

/// Puts openings where they belong on the new walls; the error names one that has no room.
std::string fitOpenings(const plan::Plan& plan, Reshaped& fit, const Rehost& rehost) {
    for (const plan::Opening& before : plan.openings) {
        if (before.room != fit.room.id) continue;
        plan::Opening after = before;
        if (rehost) {
            const double half = before.width_mm / 2;
            const WallPlace middle = rehost({before.wall, before.left_mm + half});
            after.wall = middle.first;
            after.left_mm = middle.second - half;
        }
        const auto wall = plan::wallIndex(fit.room, after.wall);
        if (!wall) return fmt::format("{} would be left without a wall", openingName(before));
        const double length_mm = wallLength(fit.room, *wall);
        if (after.width_mm > length_mm)
            return fmt::format("{} is {} wide and does not fit {}, which would be {} long",
                               openingName(before), shownMm(before.width_mm), wallName(fit.room, *wall),
                               shownMm(length_mm));
        after.left_mm = std::clamp(after.left_mm, 0.0, length_mm - after.width_mm);
        if (after.wall != before.wall || after.left_mm != before.left_mm) fit.openings.push_back(after);
    }
    plan::Plan part = partOf(plan, {fit.room.id});
    part.rooms.front() = fit.room;
    for (plan::Opening& opening : part.openings)
        for (const plan::Opening& moved : fit.openings)
            if (moved.id == opening.id) opening.wall = moved.wall, opening.left_mm = moved.left_mm;
    return problemOf(part).value_or("");
}

/// A distance kept from a corner is taken anew where the wall itself is another. True when it was.
bool renewCornerDistance(const plan::Room& room, plan::Plate& plate) {
    using From = plan::KeptDistance::From;
    const auto wall = plan::wallIndex(room, plate.host.wall);
    if (!plate.kept_along || !wall) return false;
    const double before = plate.kept_along->distance_mm;
    if (plate.kept_along->from == From::LeftCorner) plate.kept_along->distance_mm = plate.host.u_mm;
    if (plate.kept_along->from == From::RightCorner)
        plate.kept_along->distance_mm = plate.host.u_mm - wallLength(room, *wall);
    return plate.kept_along->distance_mm != before;
}
bool renewCornerDistance(const plan::Room&, plan::Luminaire&) {
    return false;
}

/// Where something on the floor or the ceiling is in the new room: at the same place in the house.
plan::Host onSamePlace(const plan::Room& before, const plan::Room& after, plan::Host host) {
    constexpr double kStill_mm = 1e-9; ///< arithmetic's own play; what stands stays to the bit
    const Vec2 low = southWest(after);
    const Vec2 old{host.u_mm, host.v_mm};
    const Vec2 at = nearestInside(after, southWest(before) + old) - low;
    if (length(at - old) < kStill_mm) return host;
    host.u_mm = at.x;
    host.v_mm = at.y;
    return host;
}

template <class T>
void fitMounted(const plan::Room& before, const plan::Room& after, const std::vector<T>& all,
                const Rehost& rehost, std::vector<T>& changed) {
    for (const T& old : all) {
        if (old.room != after.id || old.host.kind == plan::Host::Kind::Furniture) continue;
        T fit = old;
        bool renewed = false;
        if (old.host.kind != plan::Host::Kind::Wall) {
            fit.host = onSamePlace(before, after, old.host);
        } else if (rehost) {
            std::tie(fit.host.wall, fit.host.u_mm) = rehost({old.host.wall, old.host.u_mm});
            renewed = renewCornerDistance(after, fit);
        }
        if (renewed || !(fit.host == old.host)) changed.push_back(std::move(fit));
    }
}

template <class T>
void replace(Draft& draft, const std::vector<T>& list) {
    for (const T& element : list)
        if (T* changed = draft.change<T>(element.id)) *changed = element;
}

/// Moves the run's end at `corner_index`, which the wall `next` carries on from.
Vec2 movedEnd(const plan::Room& room, std::size_t corner_index, std::size_t next, Vec2 along, Vec2 by) {
    const Vec2 at = corner(room, corner_index);
    return meeting(at + by, along, at, edgeDirection(room, next));
}

} // namespace

Vec2 edgeDirection(const plan::Room& room, std::size_t wall) {
    const Vec2 along = corner(room, wall + 1) - corner(room, wall);
    const double size = length(along);
    return {along.x / size, along.y / size};
}

Vec2 outwardNormal(const plan::Room& room, std::size_t wall) {
    const Vec2 along = edgeDirection(room, wall);
    return {-along.y, along.x};
}

bool parallel(Vec2 a, Vec2 b) {
    return std::abs(cross(a, b)) < kParallel;
}

Run straightRun(const plan::Room& room, std::size_t wall) {
    const std::size_t count = room.outline.size();
    const Vec2 along = edgeDirection(room, wall);
    Run run{wall, wall};
    while (parallel(along, edgeDirection(room, (run.first + count - 1) % count)))
        run.first = (run.first + count - 1) % count;
    while (parallel(along, edgeDirection(room, (run.last + 1) % count)))
        run.last = (run.last + 1) % count;
    return run;
}

void insertCorner(plan::Room& room, std::size_t corner_index, Vec2 at_mm, double ceiling_mm, std::size_t wall,
                  std::size_t like) {
    plan::Wall made = room.walls[like];
    made.id = freeWallId(room);
    const auto at = [](auto& list, std::size_t index) {
        return list.begin() + static_cast<std::ptrdiff_t>(index);
    };
    room.outline.insert(at(room.outline, corner_index), at_mm);
    room.walls.insert(at(room.walls, wall), std::move(made));
    if (room.ceiling.heights_mm.size() == 1) return;
    room.ceiling.heights_mm.insert(at(room.ceiling.heights_mm, corner_index), ceiling_mm);
    for (auto& [from, to] : room.ceiling.creases) {
        from += from >= static_cast<int>(corner_index) ? 1 : 0;
        to += to >= static_cast<int>(corner_index) ? 1 : 0;
    }
}

void shiftRun(plan::Room& room, Run run, double outwards_mm) {
    const std::size_t count = room.outline.size();
    const Vec2 along = edgeDirection(room, run.first);
    const Vec2 by = outwardNormal(room, run.first) * outwards_mm;
    const std::size_t before = (run.first + count - 1) % count;
    const std::size_t behind = (run.last + 1) % count;
    const bool jog_before = parallel(along, edgeDirection(room, before));
    const bool jog_behind = parallel(along, edgeDirection(room, behind));
    const Vec2 left = corner(room, run.first);
    const Vec2 right = corner(room, behind);
    const Vec2 new_left = jog_before ? left + by : movedEnd(room, run.first, before, along, by);
    const Vec2 new_right = jog_behind ? right + by : movedEnd(room, behind, behind, along, by);
    const double left_height = geometry::cornerHeight(room, run.first);
    const double right_height = geometry::cornerHeight(room, behind);
    for (std::size_t i = (run.first + 1) % count; i != behind; i = (i + 1) % count)
        room.outline[i] = room.outline[i] + by;
    room.outline[run.first] = new_left;
    room.outline[behind] = new_right;
    // Corners that stay go in outside the run; the later index first, so that the other one still holds.
    const auto stay_behind = [&] { insertCorner(room, behind + 1, right, right_height, behind, run.last); };
    const auto stay_before = [&] { insertCorner(room, run.first, left, left_height, run.first, run.first); };
    const bool wraps = behind <= run.first;
    if (jog_before && wraps) stay_before();
    if (jog_behind) stay_behind();
    if (jog_before && !wraps) stay_before();
}

std::expected<Reshaped, std::string> fitted(const plan::Plan& plan, plan::Room after, const Rehost& rehost) {
    const plan::Room* before = plan::findRoom(plan, after.id);
    if (before == nullptr) return std::unexpected(fmt::format("there is no room '{}'", after.id));
    Reshaped fit;
    fit.room = std::move(after);
    if (std::string problem = shapeProblem(plan, fit.room); !problem.empty())
        return std::unexpected(std::move(problem));
    for (std::size_t wall = 0; wall < fit.room.walls.size(); ++wall)
        clampLines(fit.room.walls[wall], wallLength(fit.room, wall));
    if (std::string problem = fitOpenings(plan, fit, rehost); !problem.empty())
        return std::unexpected(std::move(problem));
    fitMounted(*before, fit.room, plan.plates, rehost, fit.plates);
    fitMounted(*before, fit.room, plan.luminaires, rehost, fit.luminaires);
    return fit;
}

void apply(Draft& draft, const Reshaped& reshaped) {
    if (plan::Room* room = draft.change<plan::Room>(reshaped.room.id)) *room = reshaped.room;
    replace(draft, reshaped.openings);
    replace(draft, reshaped.plates);
    replace(draft, reshaped.luminaires);
}

Vec2 nearestInside(const plan::Room& room, Vec2 at) {
    if (geometry::insidePolygon(room.outline, at)) return at;
    Vec2 best = room.outline.front();
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const Vec2 a = room.outline[i];
        const Vec2 along = corner(room, i + 1) - a;
        const double part = std::clamp(dot(at - a, along) / dot(along, along), 0.0, 1.0);
        const Vec2 foot = a + along * part;
        if (length(at - foot) < length(at - best)) best = foot;
    }
    return best;
}

Vec2 southWest(const plan::Room& room) {
    Vec2 low = room.outline.front();
    for (const Vec2 p : room.outline)
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    return low;
}

} // namespace gangway::edit::detail
