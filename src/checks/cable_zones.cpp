#include "checks/cable_zones.hpp"

#include "checks/point.hpp"
#include "checks/standing.hpp"
#include "checks/zone_shapes.hpp"
#include "geometry/wall_hit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gangway::checks {

using catalogue::CableZone;
using plan::Feed;
using plan::Vec2;

namespace {
constexpr double kLevelMm = 0.5; // a run out by less is meant to be level or upright

/// Whether a run goes along or across an area: level, upright, or along the slope of a ceiling.
bool follows(const ZoneArea& area, Vec2 along) {
    if (std::min(std::abs(along.x), std::abs(along.y)) <= kLevelMm) return true;
    for (std::size_t i = 0; i < area.area_mm.size(); ++i) {
        const Vec2 edge = area.area_mm[(i + 1) % area.area_mm.size()] - area.area_mm[i];
        if (std::abs(cross(edge, along)) <= kLevelMm * length(edge)) return true;
    }
    return false;
}

/// What a strip runs from.
struct Spot {
    std::string id;
    Vec2 at_mm;
    Vec2 half_mm;
    bool beyond = false;
};

bool appliesTo(const CableZone& zone, const plan::Room& room) {
    return zone.uses.empty() || std::ranges::find(zone.uses, room.use) != zone.uses.end();
}

/// A band before it is cut, and the line a cable is preferably laid on.
struct Band {
    Outline area_mm;
    std::array<Vec2, 2> preferred_mm;
};

/// A wall end that is an inside corner with another wall, and how thick the finish of that wall is.
std::optional<double> cornerFinish(const plan::Room& room, std::size_t wall, bool at_right) {
    const std::size_t count = room.outline.size();
    if (wall >= count) return std::nullopt;
    const std::size_t other = at_right ? (wall + 1) % count : (wall + count - 1) % count;
    const std::size_t first = at_right ? wall : other;
    const auto along = [&](std::size_t edge) {
        return room.outline[(edge + 1) % count] - room.outline[edge];
    };
    const bool inside = cross(along(first), along((first + 1) % count)) < 0;
    if (!inside || room.walls[other].structure == plan::WallStructure::None) return std::nullopt;
    double finish = 0;
    for (const plan::Course& course : room.walls[other].build_up)
        finish += course.thickness_mm;
    return finish;
}

class WallZones {
public:
    WallZones(const geometry::HouseIndex& house, const catalogue::CountryPack& pack, const plan::Room& room,
              std::size_t wall)
        : room_(room), wall_(wall), outline_(geometry::wallOutline(room, wall)),
          holes_(geometry::faceHoles(house, {room.id, wall})) {
        for (const Vec2 corner : outline_) {
            length_ = std::max(length_, corner.x);
            height_ = std::max(height_, corner.y);
        }
        for (const CableZone& zone : pack.zones)
            if (zone.from != CableZone::From::Point && appliesTo(zone, room))
                for (const Band& band : bandsOf(zone))
                    add(zone, band.area_mm, zone.preferred_mm > 0 ? &band.preferred_mm : nullptr);
        to_bands_ = keepsToBands(pack, room);
    }

    void addStrips(const CableZone& zone, const Spot& spot) {
        if (!to_bands_) {
            for (const Feed side : {Feed::Above, Feed::Below, Feed::Left, Feed::Right})
                addStrip(zone, spot, side, farEnd(spot.at_mm, side));
            return;
        }
        const double above = toBand(spot.at_mm, Feed::Above);
        const double below = toBand(spot.at_mm, Feed::Below);
        const double way = std::min(above, below);
        if (inZone(areas_, spot.at_mm) || !std::isfinite(way)) return;
        const Feed side = below <= above ? Feed::Below : Feed::Above;
        addStrip(zone, spot, side, spot.at_mm + Vec2{0, side == Feed::Above ? way : -way});
    }

    std::vector<ZoneArea> take() { return std::move(areas_); }

private:
    std::vector<Band> bandsOf(const CableZone& zone) const {
        switch (zone.from) {
        case CableZone::From::Ceiling:
            return alongCeiling(zone);
        case CableZone::From::Floor:
            return {{rectangle(0, length_, zone.low_mm, zone.high_mm),
                     {{{0, zone.preferred_mm}, {length_, zone.preferred_mm}}}}};
        case CableZone::From::Corner:
            return atCorners(zone);
        case CableZone::From::Point:
            return {};
        default:
            return atOpenings(zone);
        }
    }

    std::vector<Band> alongCeiling(const CableZone& zone) const {
        std::vector<Band> bands;
        for (std::size_t i = 2; i + 1 < outline_.size(); ++i) {
            const Vec2 right = outline_[i];
            const Vec2 left = outline_[i + 1];
            const Vec2 low{0, zone.low_mm};
            const Vec2 high{0, zone.high_mm};
            const Vec2 line{0, zone.preferred_mm};
            bands.push_back(
                {{left - high, right - high, right - low, left - low}, {{left - line, right - line}}});
        }
        return bands;
    }

    /// Upright, from `edge` on by the zone's distances; `way` is 1 to the right, -1 to the left.
    Band upright(const CableZone& zone, double edge, int way) const {
        const double near = edge + way * zone.low_mm;
        const double far = edge + way * zone.high_mm;
        const double line = edge + way * zone.preferred_mm;
        return {rectangle(std::min(near, far), std::max(near, far), 0, height_),
                {{{line, 0}, {line, height_}}}};
    }

    /// A band that leaves the corner free is set out in the raw building; a strip that fills the corner
    /// counts from the finished one.
    std::vector<Band> atCorners(const CableZone& zone) const {
        std::vector<Band> bands;
        if (const auto finish = cornerFinish(room_, wall_, false))
            bands.push_back(upright(zone, zone.low_mm > 0 ? -*finish : 0, 1));
        if (const auto finish = cornerFinish(room_, wall_, true))
            bands.push_back(upright(zone, length_ + (zone.low_mm > 0 ? *finish : 0), -1));
        return bands;
    }

    /// Openings are stated by their structural edges.
    std::vector<Band> atOpenings(const CableZone& zone) const {
        using Kind = plan::Opening::Kind;
        std::vector<Band> bands;
        for (const geometry::FaceHole& hole : holes_) {
            const plan::Opening& opening = *hole.opening;
            const bool window = opening.kind == Kind::Window;
            const bool latch = opening.kind == Kind::HingedDoor && opening.leaves == 1;
            if (opening.kind == Kind::Hatch || window != (zone.from == CableZone::From::Window)) continue;
            if (!window && latch != (zone.from == CableZone::From::DoorLatch)) continue;
            // Sides are given as seen from the host room. A leaf that slides into the wall leaves no cable
            // there.
            const bool pocket = opening.kind == Kind::PocketDoor;
            const plan::Side stated = pocket ? opening.parks : opening.hinge;
            const bool taken_left = (stated == plan::Side::Left) == hole.hosted_here;
            const bool one_side = latch || pocket;
            if (!one_side || !taken_left) bands.push_back(upright(zone, hole.left_mm, -1));
            if (!one_side || taken_left) bands.push_back(upright(zone, hole.right_mm, 1));
        }
        return bands;
    }

    ZoneArea areaOf(const CableZone& zone) const {
        ZoneArea area;
        area.zone = zone.id;
        area.name = zone.name;
        area.source = zone.source;
        area.grade = zone.grade;
        area.across = zone.from == CableZone::From::Ceiling || zone.from == CableZone::From::Floor;
        return area;
    }

    /// Cut to the wall, openings cut out.
    std::vector<Outline> cut(const Outline& whole) const {
        std::vector<Outline> parts;
        if (Outline part = within(outline_, whole); !part.empty()) parts.push_back(std::move(part));
        for (const geometry::FaceHole& hole : holes_) {
            std::vector<Outline> left;
            for (const Outline& part : parts)
                std::ranges::move(without(part, {hole.left_mm, hole.right_mm}, {hole.bottom_mm, hole.top_mm}),
                                  std::back_inserter(left));
            parts = std::move(left);
        }
        return parts;
    }

    void add(const CableZone& zone, const Outline& whole, const std::array<Vec2, 2>* line) {
        for (Outline& part : cut(whole)) {
            ZoneArea area = areaOf(zone);
            if (line != nullptr)
                if (const auto inside = partsInside(part, (*line)[0], (*line)[1]); !inside.empty()) {
                    const Vec2 along = (*line)[1] - (*line)[0];
                    area.preferred_mm = {(*line)[0] + along * inside[0].from_mm,
                                         (*line)[0] + along * inside[0].to_mm};
                }
            area.area_mm = std::move(part);
            areas_.push_back(std::move(area));
        }
    }

    /// Straight on to an opening or the wall's end.
    Vec2 farEnd(Vec2 at, Feed side) const {
        const bool level = side == Feed::Left || side == Feed::Right;
        const bool on = side == Feed::Above || side == Feed::Right;
        double end = on ? (level ? length_ : height_) : 0;
        const double start = level ? at.x : at.y;
        for (const geometry::FaceHole& hole : holes_) {
            const Interval across =
                level ? Interval{hole.bottom_mm, hole.top_mm} : Interval{hole.left_mm, hole.right_mm};
            const double beside = level ? at.y : at.x;
            if (beside <= across.from_mm || beside >= across.to_mm) continue;
            const double edge =
                level ? (on ? hole.left_mm : hole.right_mm) : (on ? hole.bottom_mm : hole.top_mm);
            if (on ? edge >= start : edge <= start) end = on ? std::min(end, edge) : std::max(end, edge);
        }
        return level ? Vec2{end, at.y} : Vec2{at.x, end};
    }

    /// Straight up or down to a level band; infinite when there is none before an opening or the wall's end.
    double toBand(Vec2 at, Feed side) const {
        const Vec2 end = farEnd(at, side);
        double least = std::numeric_limits<double>::infinity();
        for (const ZoneArea& area : areas_)
            if (area.across && area.point.empty())
                if (const auto inside = partsInside(area.area_mm, at, end); !inside.empty())
                    least = std::min(least, inside.front().from_mm * length(end - at));
        return least;
    }

    void addStrip(const CableZone& zone, const Spot& spot, Feed side, Vec2 end) {
        const bool level = side == Feed::Left || side == Feed::Right;
        const Vec2 half = level ? Vec2{0, spot.half_mm.y} : Vec2{spot.half_mm.x, 0};
        const Vec2 at = spot.at_mm;
        const Outline whole = rectangle(std::min(at.x, end.x) - half.x, std::max(at.x, end.x) + half.x,
                                        std::min(at.y, end.y) - half.y, std::max(at.y, end.y) + half.y);
        for (Outline& part : cut(whole)) {
            ZoneArea area = areaOf(zone);
            area.area_mm = std::move(part);
            area.across = level;
            area.point = spot.id;
            area.side = side;
            area.beyond = spot.beyond;
            areas_.push_back(std::move(area));
        }
    }

    const plan::Room& room_;
    std::size_t wall_;
    Outline outline_;
    std::vector<geometry::FaceHole> holes_;
    double length_ = 0;
    double height_ = 0;
    bool to_bands_ = false;
    std::vector<ZoneArea> areas_;
};

/// A point and the room it is looked at in.
struct Mounted {
    std::string id;
    plan::Host host;
    Vec2 half_mm;
};

void addLamp(const plan::Luminaire& lamp, const std::string& wall, std::vector<Mounted>& mounted) {
    // A lamp with a length instead of a diameter is no guide to where its cable comes out.
    if (lamp.host.kind == plan::Host::Kind::Wall && lamp.host.wall == wall &&
        lamp.kind == plan::Luminaire::Kind::Wall && lamp.size_mm > 0)
        mounted.push_back({lamp.id, lamp.host, {lamp.size_mm / 2, lamp.size_mm / 2}});
}

/// All strips of a wall. `mountedOn(room id, wall id)` lists what is mounted on a face.
template <class MountedOn>
void addPoints(const geometry::HouseIndex& house, const catalogue::CountryPack& pack, const plan::Room& room,
               std::size_t wall, bool hidden_too, const MountedOn& mountedOn, WallZones& zones) {
    std::vector<Spot> spots;
    for (const Mounted& point : mountedOn(room.id, room.walls[wall].id)) {
        const Vec2 at{point.host.u_mm, point.host.v_mm};
        // Where cables keep to bands it is no matter whether a point can be seen.
        if (hidden_too || keepsToBands(pack, room) || !behindFixed(house, pack, room, wall, at))
            spots.push_back({point.id, at, point.half_mm, false});
    }
    const double thin = pack.limit("thinWall").value;
    std::vector<geometry::FaceRef> done;
    for (const geometry::PairedFace& pair : geometry::pairedFaces(house, {room.id, wall})) {
        const plan::Room* beyond = house.room(pair.other.room);
        if (beyond == nullptr || pair.thickness_mm > thin ||
            std::ranges::find(done, pair.other) != done.end())
            continue;
        done.push_back(pair.other);
        for (const Mounted& point : mountedOn(beyond->id, beyond->walls[pair.other.wall].id)) {
            const auto here = geometry::otherFace(house, beyond->id, point.host);
            if (!here || here->room != room.id || here->host.wall != room.walls[wall].id) continue;
            const Vec2 there{point.host.u_mm, point.host.v_mm};
            if (hidden_too || !behindFixed(house, pack, *beyond, pair.other.wall, there))
                spots.push_back({point.id, {here->host.u_mm, here->host.v_mm}, point.half_mm, true});
        }
    }
    for (const CableZone& zone : pack.zones)
        if (zone.from == CableZone::From::Point && appliesTo(zone, room))
            for (const Spot& spot : spots)
                zones.addStrips(zone, spot);
}

template <class MountedOn>
std::vector<ZoneArea> areasOf(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                              const plan::Room& room, std::size_t wall, bool hidden_too,
                              const MountedOn& mountedOn) {
    if (pack.zones.empty() || wall >= room.walls.size() ||
        room.walls[wall].structure == plan::WallStructure::None)
        return {};
    WallZones zones(house, pack, room, wall);
    addPoints(house, pack, room, wall, hidden_too, mountedOn, zones);
    return zones.take();
}
} // namespace

std::vector<ZoneArea> zoneAreas(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                const catalogue::CountryPack& pack, const plan::Room& room,
                                std::size_t wall) {
    return areasOf(house, pack, room, wall, false, [&](const std::string& in, const std::string& on) {
        std::vector<Mounted> mounted;
        for (const plan::Plate& plate : house.plan().plates) {
            if (plate.room != in || plate.host.kind != plan::Host::Kind::Wall || plate.host.wall != on)
                continue;
            const auto made = catalogue::compose(catalogue, plate);
            mounted.push_back({plate.id, plate.host, {made.width_mm / 2, made.height_mm / 2}});
        }
        for (const plan::Luminaire& lamp : house.plan().luminaires)
            if (lamp.room == in) addLamp(lamp, on, mounted);
        return mounted;
    });
}

std::vector<ZoneArea> zoneAreas(const Facts& facts, const plan::Room& room, std::size_t wall,
                                bool hidden_too) {
    return areasOf(facts.house(), facts.pack(), room, wall, hidden_too,
                   [&](const std::string& in, const std::string& on) {
                       std::vector<Mounted> mounted;
                       for (const Point* point : facts.pointsOn(in, on))
                           mounted.push_back({point->plate->id, point->plate->host, point->half_mm});
                       for (const plan::Luminaire* lamp : facts.lampsIn(in))
                           addLamp(*lamp, on, mounted);
                       return mounted;
                   });
}

bool behindFixed(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                 const plan::Room& room, std::size_t wall, Vec2 at_mm) {
    const geometry::Frame frame = geometry::wallFrame(room, wall);
    const double reach = pack.limit("coverReach").value;
    return std::ranges::any_of(house.furnitureIn(room.id), [&](const plan::Furniture* piece) {
        const Standing standing = standingOf(*piece);
        if (standing != Standing::Fixed && standing != Standing::Cupboard && standing != Standing::Appliance)
            return false;
        if (at_mm.y <= piece->bottom_mm || at_mm.y >= piece->bottom_mm + piece->size.height_mm) return false;
        double left = std::numeric_limits<double>::infinity();
        double right = -left;
        double near = left;
        double far = right;
        for (const Vec2 corner : geometry::footprint(*piece)) {
            const plan::Vec3 seen = geometry::toFrame(frame, {corner.x, corner.y, 0});
            left = std::min(left, seen.x);
            right = std::max(right, seen.x);
            near = std::min(near, seen.z);
            far = std::max(far, seen.z);
        }
        return at_mm.x > left && at_mm.x < right && near < reach && far > 0;
    });
}

bool keepsToBands(const catalogue::CountryPack& pack, const plan::Room& room) {
    return std::ranges::any_of(pack.zones, [&](const CableZone& zone) {
        return zone.from == CableZone::From::Floor && appliesTo(zone, room);
    });
}

bool inZone(const std::vector<ZoneArea>& areas, Vec2 at_mm) {
    return std::ranges::any_of(areas, [&](const ZoneArea& area) { return holds(area.area_mm, at_mm); });
}

bool runInZones(const std::vector<ZoneArea>& areas, const catalogue::CountryPack& pack, const CableRun& run) {
    const double deep = pack.limit("zoneDepth").value;
    if (deep > 0 && run.depth_mm >= deep) return true;
    const Vec2 along = run.to_mm - run.from_mm;
    if (length(along) <= kLevelMm) return inZone(areas, run.from_mm);
    std::vector<Interval> parts;
    for (const ZoneArea& area : areas)
        if (follows(area, along))
            std::ranges::copy(partsInside(area.area_mm, run.from_mm, run.to_mm), std::back_inserter(parts));
    std::ranges::sort(parts, {}, &Interval::from_mm);
    double reached = 0;
    for (const Interval& part : parts)
        if (part.from_mm <= reached + 1e-9) reached = std::max(reached, part.to_mm);
    return reached >= 1 - 1e-9;
}

const char* sideName(Feed side) {
    switch (side) {
    case Feed::Above:
        return "above";
    case Feed::Below:
        return "below";
    case Feed::Left:
        return "the left";
    case Feed::Right:
        return "the right";
    default:
        return "";
    }
}

} // namespace gangway::checks
