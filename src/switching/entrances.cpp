#include "switching/entrances.hpp"

#include "geometry/walls.hpp"

#include <algorithm>
#include <limits>

namespace gangway::switching {

using Kind = plan::Opening::Kind;

namespace {

/// What one steps over at most, common practice, no source.
constexpr double kStepMm = 300;

bool isEntrance(const plan::Opening& opening) {
    return opening.kind != Kind::Window && opening.kind != Kind::Hatch && opening.sill_mm <= kStepMm;
}

/// The room behind an opening and the depth of the wall there.
struct Beyond {
    std::string room;
    double through_mm = 0;
};

Beyond beyond(const geometry::HouseIndex& house, const plan::Opening& opening, const plan::Room& room,
              std::size_t wall) {
    const double right_mm = opening.left_mm + opening.width_mm;
    for (const geometry::PairedFace& pair : geometry::pairedFaces(house, {room.id, wall}))
        if (std::min(right_mm, pair.to_mm) - std::max(opening.left_mm, pair.from_mm) > opening.width_mm / 2)
            return {opening.joins.empty() ? pair.other.room : opening.joins, pair.thickness_mm};
    return {opening.joins, room.walls[wall].thickness_mm};
}

/// Places along u from which a switch is reached; see Entrance.
std::vector<double> reachedFrom(const plan::Opening& opening, bool leaf_into) {
    const double right_mm = opening.left_mm + opening.width_mm;
    if (!leaf_into || opening.leaves != 1) return {opening.left_mm, right_mm};
    return {opening.hinge == plan::Side::Left ? right_mm : opening.left_mm};
}

} // namespace

std::vector<Entrance> entrances(const geometry::HouseIndex& house) {
    std::vector<Entrance> all;
    for (const plan::Opening& opening : house.plan().openings) {
        const plan::Room* room = isEntrance(opening) ? house.room(opening.room) : nullptr;
        const auto wall = room == nullptr ? std::nullopt : plan::wallIndex(*room, opening.wall);
        if (!wall) continue;
        const geometry::Frame frame = geometry::wallFrame(*room, *wall);
        const Beyond other = beyond(house, opening, *room, *wall);
        const auto at = [&](double u_mm, double out_mm) {
            const plan::Vec3 p = geometry::toHouse(frame, {u_mm, 0, out_mm});
            return plan::Vec2{p.x, p.y};
        };
        const auto add = [&](const std::string& into, const std::string& from, plan::Swing swing) {
            const bool leaf_into = opening.kind == Kind::HingedDoor && opening.swing == swing;
            Entrance entrance{&opening, into, from, leaf_into, {}, {}};
            for (const double u_mm : reachedFrom(opening, leaf_into))
                for (const double out_mm : {0.0, -other.through_mm})
                    entrance.reach_from_mm.push_back(at(u_mm, out_mm));
            entrance.middle_mm = at(opening.left_mm + opening.width_mm / 2, -other.through_mm / 2);
            all.push_back(std::move(entrance));
        };
        add(room->id, other.room, plan::Swing::In);
        if (!other.room.empty()) add(other.room, room->id, plan::Swing::Out);
    }
    return all;
}

double reachOf(const Entrance& entrance, plan::Vec2 at_mm) {
    double least = std::numeric_limits<double>::infinity();
    for (const plan::Vec2 edge : entrance.reach_from_mm)
        least = std::min(least, length(at_mm - edge));
    return least;
}

const std::string& openingName(const plan::Opening& opening) {
    return opening.name.empty() ? opening.id : opening.name;
}

} // namespace gangway::switching
