#include "switching/suggest_places.hpp"

#include "geometry/coverage.hpp"
#include "geometry/furniture.hpp"
#include "geometry/walls.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace gangway::switching {

using Kind = plan::Opening::Kind;

namespace {

/// From the casing (of a bed: its side) to the plate's centre; 150 to 200 first, then further. Common
/// practice, no source; DIN 18015-3 has 100 to 300 from the structural edge (trade facts 2.35).
constexpr std::array kOffsetsMm = {150.0, 175.0, 200.0, 250.0, 300.0, 400.0, 500.0};
/// Left between plates, and between a plate and a corner; common practice, no source.
constexpr double kAirMm = 20;
constexpr double kSwitchMm = 1050; ///< when the pack has no height for switches
constexpr double kBedsideMm = 700;
/// A bed whose head is further from a wall than this stands free.
constexpr double kHeadToWallMm = 400;

struct Rect {
    double left, right, bottom, top;
};

bool overlap(const Rect& a, const Rect& b) {
    return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}

Rect around(const plan::Host& host, PlateSize size, double air_mm) {
    return {host.u_mm - size.width_mm / 2 - air_mm, host.u_mm + size.width_mm / 2 + air_mm,
            host.v_mm - size.height_mm / 2 - air_mm, host.v_mm + size.height_mm / 2 + air_mm};
}

double casingOf(const geometry::FaceHole& hole) {
    return hole.hosted_here ? hole.opening->casing_mm : hole.opening->casing_beyond_mm;
}

/// One wall face of a room, and what is in the way on it.
class Face {
public:
    Face(const geometry::HouseIndex& house, const plan::Room& room, std::size_t wall)
        : house_(&house), room_(&room), wall_(wall), frame_(geometry::wallFrame(room, wall)),
          holes_(geometry::faceHoles(house, {room.id, wall})) {}

    const std::vector<geometry::FaceHole>& holes() const { return holes_; }
    plan::Host at(double u_mm, double v_mm) const {
        plan::Host host;
        host.kind = plan::Host::Kind::Wall;
        host.wall = room_->walls[wall_].id;
        host.u_mm = u_mm;
        host.v_mm = v_mm;
        return host;
    }
    bool holds(const plan::Host& host, PlateSize size) const {
        const Rect plate = around(host, size, kAirMm);
        return plate.left >= 0 && plate.right <= frame_.length_mm;
    }
    bool isFree(const plan::Host& host, PlateSize size) const {
        const Rect plate = around(host, size, 0);
        for (const geometry::FaceHole& hole : holes_) {
            const double casing = casingOf(hole);
            if (overlap(plate, {hole.left_mm - casing, hole.right_mm + casing, hole.bottom_mm - casing,
                                hole.top_mm + casing}))
                return false;
        }
        return !meetsPlate(host, size) &&
               geometry::coversOf(*house_, room_->id, host, size.width_mm, size.height_mm).empty();
    }

private:
    /// Other plates are taken to be as large as this one for each of their gangs.
    bool meetsPlate(const plan::Host& host, PlateSize size) const {
        return std::ranges::any_of(house_->plan().plates, [&](const plan::Plate& plate) {
            if (plate.room != room_->id || plate.host.kind != plan::Host::Kind::Wall ||
                plate.host.wall != host.wall)
                return false;
            const double gangs = std::max({1, plate.gangs, static_cast<int>(plate.modules.size())});
            PlateSize other = size;
            (plate.direction == plan::Direction::Horizontal ? other.width_mm : other.height_mm) *= gangs;
            return overlap(around(host, size, kAirMm), around(plate.host, other, 0));
        });
    }

    const geometry::HouseIndex* house_;
    const plan::Room* room_;
    std::size_t wall_;
    geometry::Frame frame_;
    std::vector<geometry::FaceHole> holes_;
};

double heightOf(const catalogue::CountryPack& pack) {
    const auto* usual = pack.usualHeight(catalogue::ModuleKind::Switch);
    return usual == nullptr ? kSwitchMm : usual->height_mm;
}

double bedsideHeight(const catalogue::CountryPack& pack) {
    const auto at = std::ranges::find(pack.heights, "bedside", &catalogue::MountingHeight::id);
    return at == pack.heights.end() ? kBedsideMm : at->height_mm;
}

/// Sides of an opening on a face on which a switch would be looked for, the better first.
std::vector<plan::Side> sidesOf(const geometry::FaceHole& hole) {
    const plan::Opening& opening = *hole.opening;
    const auto seen = [&](plan::Side side) {
        if (hole.hosted_here) return side;
        return side == plan::Side::Left ? plan::Side::Right : plan::Side::Left;
    };
    const auto other = [](plan::Side side) {
        return side == plan::Side::Left ? plan::Side::Right : plan::Side::Left;
    };
    if (opening.kind == Kind::Plain || opening.leaves > 1) return {plan::Side::Left, plan::Side::Right};
    if (opening.kind == Kind::HingedDoor) return {other(seen(opening.hinge))};
    return {other(seen(opening.parks)), seen(opening.parks)};
}

/// The first of places that is free, else the first that the wall holds.
std::optional<Place> best(const Face& face, const std::vector<plan::Host>& hosts, PlateSize size) {
    std::optional<Place> held;
    for (const plan::Host& host : hosts) {
        if (!face.holds(host, size)) continue;
        if (face.isFree(host, size)) return Place{host, true};
        if (!held) held = Place{host, false};
    }
    return held;
}

} // namespace

std::optional<Place> placeAtEntrance(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                                     const Entrance& entrance, PlateSize size) {
    const plan::Room* room = house.room(entrance.into);
    if (room == nullptr) return std::nullopt;
    for (std::size_t wall = 0; wall < room->walls.size(); ++wall) {
        const Face face(house, *room, wall);
        for (const geometry::FaceHole& hole : face.holes()) {
            if (hole.opening != entrance.opening) continue;
            std::vector<plan::Host> hosts;
            for (const plan::Side side : sidesOf(hole))
                for (const double offset_mm : kOffsetsMm) {
                    const double out_mm = casingOf(hole) + offset_mm;
                    const double u_mm =
                        side == plan::Side::Left ? hole.left_mm - out_mm : hole.right_mm + out_mm;
                    hosts.push_back(face.at(u_mm, heightOf(pack)));
                }
            return best(face, hosts, size);
        }
    }
    return std::nullopt;
}

std::vector<Place> placesAtBed(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                               const plan::Furniture& bed, PlateSize size) {
    const plan::Room* room = house.room(bed.room);
    if (room == nullptr) return {};
    const double half_depth = bed.size.depth_mm / 2;
    const plan::Vec3 head = geometry::fromLocal(bed, {0, half_depth, 0});
    const plan::Vec3 back = geometry::fromLocal(bed, {0, half_depth + 1, 0}) - head;
    for (std::size_t wall = 0; wall < room->walls.size(); ++wall) {
        const geometry::Frame frame = geometry::wallFrame(*room, wall);
        const plan::Vec3 on_wall = geometry::toFrame(frame, head);
        const bool faces_bed = dot(frame.w, back) < -0.99;
        if (!faces_bed || std::abs(on_wall.z) > kHeadToWallMm || on_wall.x < 0 || on_wall.x > frame.length_mm)
            continue;
        const Face face(house, *room, wall);
        std::vector<Place> places;
        for (const double way : {-1.0, 1.0}) {
            std::vector<plan::Host> hosts;
            for (const double offset_mm : kOffsetsMm)
                hosts.push_back(
                    face.at(on_wall.x + way * (bed.size.width_mm / 2 + offset_mm), bedsideHeight(pack)));
            if (const auto place = best(face, hosts, size)) places.push_back(*place);
        }
        return places;
    }
    return {};
}

} // namespace gangway::switching
