// Openings: on their wall, under its ceiling, clear of each other, and doors that can exist.
#include "plan/number_text.hpp"
#include "plan/validation.hpp"

#include <algorithm>

namespace gangway::plan {

namespace {

struct Place {
    std::string pointer;
    std::string subject;
};

void validateOnWall(Validation& v, const Room& room, std::size_t wall, const Opening& o, const Place& place) {
    const double along = wallLength(room, wall);
    const double right = o.left_mm + o.width_mm;
    if (o.left_mm < -kPlayMm || right > along + kPlayMm) {
        const double most = along - o.width_mm;
        v.error(place.pointer + "/left",
                fmt::format("{}: it reaches from {} to {} but wall '{}' is {} long; {}", place.subject,
                            shownNumber(o.left_mm), shownNumber(right), o.wall, shownNumber(along),
                            most >= 0 ? fmt::format("give 'left' 0 to {}", shownNumber(most))
                                      : std::string("make it narrower")));
        return;
    }
    if (o.sill_mm < -kPlayMm)
        v.error(place.pointer + "/sill", fmt::format("{}: the sill {} lies below the floor; give 0 or more",
                                                     place.subject, shownNumber(o.sill_mm)));
    const double ceiling =
        std::min(ceilingOverWall(room, wall, o.left_mm), ceilingOverWall(room, wall, right));
    const double top = o.sill_mm + o.height_mm;
    if (top > ceiling + kPlayMm)
        v.error(
            place.pointer + "/height",
            fmt::format("{}: its head at {} lies above the ceiling, which is {} high there; give 'sill' and "
                        "'height' that add up to {} at most",
                        place.subject, shownNumber(top), shownNumber(ceiling), shownNumber(ceiling)));
}

void validateDoor(Validation& v, const Opening& o, const Place& place) {
    if (o.kind == Opening::Kind::HingedDoor) {
        if (!o.leaf_mm) {
            v.error(place.pointer,
                    fmt::format("{}: a hinged door states its leaf; add 'leaf', the width of one leaf "
                                "in mm",
                                place.subject));
        } else if (*o.leaf_mm * o.leaves > o.width_mm + kPlayMm) {
            v.error(
                place.pointer + "/leaf",
                fmt::format("{}: {} of {} {} wider than the opening, which is {}; give a leaf of at most {}",
                            place.subject, o.leaves == 1 ? "a leaf" : "two leaves", shownNumber(*o.leaf_mm),
                            o.leaves == 1 ? "is" : "are", shownNumber(o.width_mm),
                            shownNumber(o.width_mm / o.leaves)));
        }
    }
    if (o.kind == Opening::Kind::PocketDoor && !(o.cavity_mm > 0))
        v.error(place.pointer + "/cavity",
                fmt::format(
                    "{}: a pocket door needs its cavity; give the length of the cavity in the wall, in mm",
                    place.subject));
    if (2 * o.frame_mm >= o.width_mm)
        v.error(
            place.pointer + "/frame",
            fmt::format("{}: two frames of {} leave nothing of the opening, which is {}; give less than {}",
                        place.subject, shownNumber(o.frame_mm), shownNumber(o.width_mm),
                        shownNumber(o.width_mm / 2)));
}

/// Holes of one wall that share some of it.
void validateOverlaps(Validation& v, std::vector<std::size_t> on_wall) {
    const std::vector<Opening>& all = v.plan().openings;
    std::ranges::sort(on_wall, {}, [&](std::size_t i) { return std::pair(all[i].left_mm, i); });
    for (std::size_t m = 0; m < on_wall.size(); ++m) {
        const Opening& a = all[on_wall[m]];
        for (std::size_t n = m + 1; n < on_wall.size(); ++n) {
            const Opening& b = all[on_wall[n]];
            if (b.left_mm >= a.left_mm + a.width_mm - kPlayMm) break;
            const double low = std::max(a.sill_mm, b.sill_mm);
            const double high = std::min(a.sill_mm + a.height_mm, b.sill_mm + b.height_mm);
            if (high - low <= kPlayMm) continue;
            const std::size_t later = std::max(on_wall[m], on_wall[n]);
            const std::size_t earlier = std::min(on_wall[m], on_wall[n]);
            v.error(fmt::format("/openings/{}", later),
                    fmt::format(
                        "opening '{}': it overlaps opening '{}' on wall '{}', which reaches from {} to {}; "
                        "move one of them",
                        all[later].id, all[earlier].id, a.wall, shownNumber(all[earlier].left_mm),
                        shownNumber(all[earlier].left_mm + all[earlier].width_mm)));
        }
    }
}

} // namespace

void validateOpenings(Validation& v) {
    const Plan& plan = v.plan();
    std::map<std::pair<std::string, std::string>, std::vector<std::size_t>> by_wall;
    for (std::size_t i = 0; i < plan.openings.size(); ++i) {
        const Opening& o = plan.openings[i];
        if (!v.sound("openings", i)) continue;
        const Place place{fmt::format("/openings/{}", i), fmt::format("opening '{}'", o.id)};
        validateDoor(v, o, place);
        if (!o.joins.empty())
            v.refers(plan.rooms, "rooms", o.joins, place.pointer + "/joins", place.subject, "room");
        if (o.joins == o.room)
            v.error(place.pointer + "/joins",
                    fmt::format("{}: it joins the room it is in; name the room on the other "
                                "side, or leave 'joins' out",
                                place.subject));
        if (!v.refers(plan.rooms, "rooms", o.room, place.pointer + "/room", place.subject, "room")) continue;
        const Room* room = v.soundRoom(o.room);
        if (room == nullptr) continue;
        const auto wall = v.wallOf(*room, o.wall, place.pointer + "/wall", place.subject);
        if (!wall) continue;
        validateOnWall(v, *room, *wall, o, place);
        by_wall[{o.room, o.wall}].push_back(i);
    }
    for (const auto& [wall, openings] : by_wall)
        validateOverlaps(v, openings);
}

} // namespace gangway::plan
