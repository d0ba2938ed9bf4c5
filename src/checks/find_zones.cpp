// Cables: whether each plate's feed lies in the pack's zones, and what is screwed into them.
#include "checks/cable_zones.hpp"
#include "checks/fixings.hpp"
#include "checks/rules.hpp"
#include "checks/zone_shapes.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace gangway::checks {

using plan::Feed;
using plan::Severity;
using plan::Vec2;

namespace {
using Areas = std::vector<ZoneArea>;

constexpr double kTouchMm = 0.05; // what is said is rounded to a tenth

/// What is only remembered of a standard, or is a habit, is worth a hint and no more.
Severity atMost(catalogue::Grade grade, Severity severity) {
    const bool read = grade != catalogue::Grade::Memory && grade != catalogue::Grade::Practice;
    return read ? severity : Severity::Hint;
}

/// The band that holds a place; upright ones first, as they carry a cable from band to band.
const ZoneArea* bandAt(const Areas& areas, Vec2 at) {
    const ZoneArea* found = nullptr;
    for (const ZoneArea& area : areas)
        if (area.point.empty() && holds(area.area_mm, at) && (found == nullptr || found->across))
            found = &area;
    return found;
}

/// A cable that comes straight from one side, and how much of it lies in no zone.
struct Way {
    Feed side = Feed::Unstated;
    double length_mm = 0;
    bool in_zones = false;
    const ZoneArea* from = nullptr; ///< the zone it comes out of; nullptr: floor, ceiling or the wall's end
};

Vec2 wallEnd(const geometry::Frame& frame, Vec2 at, Feed side) {
    switch (side) {
    case Feed::Above:
        return {at.x, frame.height_mm};
    case Feed::Below:
        return {at.x, 0};
    case Feed::Left:
        return {0, at.y};
    default:
        return {frame.length_mm, at.y};
    }
}

/// The wall's end or the ceiling's line straight on to one side.
Vec2 reachOf(const plan::Room& room, std::size_t wall, Vec2 at, Feed side) {
    const Vec2 end = wallEnd(geometry::wallFrame(room, wall), at, side);
    const auto inside = partsInside(geometry::wallOutline(room, wall), at, end);
    return inside.empty() ? end : at + (end - at) * inside.front().to_mm;
}

/// From the nearest zone across the way that the plate does not lie in itself, else from the wall's end or
/// the ceiling's line. What comes up out of the floor into a band's device is as good as in the band.
Way wayFrom(const Facts& facts, const plan::Room& room, std::size_t wall, const Areas& areas,
            const Point& point, Feed side) {
    const bool level = side == Feed::Left || side == Feed::Right;
    const Vec2 at = point.centre_mm();
    const Vec2 end = reachOf(room, wall, at, side);
    Way way{side, length(end - at), false, nullptr};
    double nearest = 1;
    bool in_level_band = false;
    for (const ZoneArea& area : areas) {
        if (area.across == level || area.point == point.plate->id) continue;
        const auto parts = partsInside(area.area_mm, at, end);
        if (holds(area.area_mm, at)) {
            in_level_band = in_level_band || area.point.empty();
            continue;
        }
        if (parts.empty() || parts.front().from_mm > nearest) continue;
        nearest = parts.front().from_mm;
        way.from = &area;
    }
    way.length_mm *= nearest;
    way.in_zones = (side == Feed::Below && in_level_band) ||
                   runInZones(areas, facts.pack(), {at, at + (end - at) * nearest, 0});
    return way;
}

struct Feeds {
    std::vector<Way> ways;     ///< above, below, left, right
    const Way* best = nullptr; ///< the shortest in zones
    const Way& of(Feed side) const { return *std::ranges::find(ways, side, &Way::side); }
};

Feeds feedsOf(const Facts& facts, const plan::Room& room, std::size_t wall, const Areas& areas,
              const Point& point) {
    Feeds feeds;
    for (const Feed side : {Feed::Above, Feed::Below, Feed::Left, Feed::Right})
        feeds.ways.push_back(wayFrom(facts, room, wall, areas, point, side));
    for (const Way& way : feeds.ways)
        if (way.in_zones && (feeds.best == nullptr || way.length_mm < feeds.best->length_mm))
            feeds.best = &way;
    return feeds;
}

std::string fromWhat(const Way& way) {
    if (way.from == nullptr) {
        if (way.side == Feed::Above) return "the ceiling";
        return way.side == Feed::Below ? "the floor" : "the end of the wall";
    }
    return way.from->point.empty() ? fmt::format("the {}", way.from->name) : "the way of another point";
}

plan::Finding aboutFeed(const Facts& facts, Severity severity, const Point& point,
                        const catalogue::CableZone& zone) {
    auto finding = about(facts, "feed-zone", atMost(zone.grade, severity), point);
    finding.source = zone.source;
    return finding;
}

void sayOut(const Facts& facts, const Point& point, const Feeds& feeds, const catalogue::CableZone& zone,
            Findings& findings) {
    const Feed stated = point.plate->feed;
    auto finding = aboutFeed(facts, stated == Feed::Unstated ? Severity::Hint : Severity::Warn, point, zone);
    if (stated != Feed::Unstated) {
        const Way& way = feeds.of(stated);
        finding.value_mm = way.length_mm;
        finding.message =
            fmt::format("{}: its cable comes from {} and lies outside the zones for cables, "
                        "{} mm from {}.",
                        whoIn(facts, point), sideName(stated), mm(way.length_mm), fromWhat(way));
    } else {
        finding.message =
            fmt::format("{}: no straight way to it runs in the zones for cables{}.", whoIn(facts, point),
                        keepsToBands(facts.pack(), *facts.house().room(point.plate->room))
                            ? ""
                            : ", and nothing that is seen shows where its cable lies");
    }
    finding.remedy =
        feeds.best != nullptr
            ? fmt::format("Feed it from {}, {} mm from {}.", sideName(feeds.best->side),
                          mm(feeds.best->length_mm), fromWhat(*feeds.best))
            : "Put a point that is seen straight above or below it, move it into a zone, or have "
              "the electrician protect the cable.";
    findings.push_back(std::move(finding));
}

/// Bands only: a straight feed from the nearest level one is what remains for a plate outside them.
void sayOutside(const Facts& facts, const Point& point, const Feeds& feeds, const catalogue::CableZone& zone,
                Findings& findings) {
    auto finding = aboutFeed(facts, Severity::Hint, point, zone);
    finding.value_mm = feeds.best->length_mm;
    finding.message = fmt::format("{} lies outside the zones for cables.", whoIn(facts, point));
    finding.remedy =
        fmt::format("Have it fed straight from {}, {} mm from {}, and note that no one drills there.",
                    sideName(feeds.best->side), mm(feeds.best->length_mm), fromWhat(*feeds.best));
    findings.push_back(std::move(finding));
}

/// How far the devices of a plate stand out of the band that its centre is in, and the shift that brings them
/// all in; 0 for both when they are in a zone, no shift when the band is too narrow for them.
struct Straying {
    double out_mm = 0;
    std::optional<double> shift_mm;
};

Straying strayingOf(const Areas& areas, const ZoneArea& band, const Point& point) {
    Interval wide{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    for (const Vec2 corner : band.area_mm) {
        const double along = band.across ? corner.y : corner.x;
        wide = {std::min(wide.from_mm, along), std::max(wide.to_mm, along)};
    }
    Straying straying;
    double least = 0;
    double most = 0;
    for (const catalogue::Gang& gang : point.made.gangs) {
        const double off = band.across ? gang.centre_mm.y : gang.centre_mm.x;
        const double along = off + (band.across ? point.centre_mm().y : point.centre_mm().x);
        least = std::min(least, off);
        most = std::max(most, off);
        if (bandAt(areas, point.centre_mm() + gang.centre_mm) == nullptr)
            straying.out_mm = std::max({straying.out_mm, wide.from_mm - along, along - wide.to_mm});
    }
    const double centre = band.across ? point.centre_mm().y : point.centre_mm().x;
    const Interval free{wide.from_mm - least, wide.to_mm - most};
    if (free.from_mm <= free.to_mm) straying.shift_mm = std::clamp(centre, free.from_mm, free.to_mm) - centre;
    return straying;
}

void sayStraying(const Facts& facts, const Point& point, const ZoneArea& band, const Straying& straying,
                 Findings& findings) {
    auto finding = about(facts, "feed-zone", Severity::Hint, point);
    finding.value_mm = straying.out_mm;
    finding.limit_mm = 0;
    finding.message = fmt::format("{}: a device's centre lies {} mm outside the {}.", whoIn(facts, point),
                                  mm(straying.out_mm), band.name);
    finding.source = band.source;
    const double shift = straying.shift_mm.value_or(0);
    const char* way =
        band.across ? (shift > 0 ? "up" : "down") : (shift > 0 ? "to the right" : "to the left");
    finding.remedy = straying.shift_mm
                         ? fmt::format("Move the plate {} mm {}.", mm(std::abs(shift)), way)
                         : "Turn the plate, or take two plates: the zone is narrower than its devices.";
    findings.push_back(std::move(finding));
}

void findFeed(const Facts& facts, const plan::Room& room, std::size_t wall, const Areas& areas,
              const Point& point, Findings& findings) {
    const auto& zones = facts.pack().zones;
    const auto strips =
        std::ranges::find(zones, catalogue::CableZone::From::Point, &catalogue::CableZone::from);
    const catalogue::CableZone& zone = strips == zones.end() ? zones.front() : *strips;
    const Feeds feeds = feedsOf(facts, room, wall, areas, point);
    const Feed stated = point.plate->feed;
    const bool to_bands = keepsToBands(facts.pack(), room);
    const ZoneArea* band = bandAt(areas, point.centre_mm());
    const bool out = stated != Feed::Unstated ? !feeds.of(stated).in_zones
                                              : feeds.best == nullptr && (band == nullptr || !to_bands);
    if (out) {
        // What is broken are the bands, where there are any; a strip only remains for what lies in none.
        sayOut(facts, point, feeds, to_bands ? zones.front() : zone, findings);
        return;
    }
    if (!to_bands) return;
    if (band == nullptr) {
        sayOutside(facts, point, feeds, zone, findings);
        return;
    }
    const Straying straying = strayingOf(areas, *band, point);
    if (straying.out_mm > 0) sayStraying(facts, point, *band, straying, findings);
}

/// A screw in a zone.
struct Hit {
    const plan::Furniture* piece = nullptr;
    const ZoneArea* area = nullptr;
    Vec2 at_mm;
    Severity severity = Severity::Hint;
    double in_mm = 0; ///< to the nearest edge of the zone
};

/// How likely a cable lies in an area. Cables run in bands where the country keeps to them; elsewhere a strip
/// along a corner or the ceiling is only one that they may be in. Of a point's four strips only the stated
/// one holds its cable; where none is stated most come from above or below.
std::optional<Severity> cableIn(const Facts& facts, const plan::Room& room, const ZoneArea& area) {
    if (area.point.empty())
        return keepsToBands(facts.pack(), room) ? atMost(area.grade, Severity::Warn) : Severity::Hint;
    const Point* point = facts.point(area.point);
    const Feed stated = point == nullptr ? Feed::Unstated : point->plate->feed;
    const bool turned = area.beyond && area.across; // left is right as seen from the other side
    const Feed seen = !turned ? area.side : area.side == Feed::Left ? Feed::Right : Feed::Left;
    if (stated != Feed::Unstated && stated != seen) return std::nullopt;
    const bool likely = stated != Feed::Unstated || !area.across;
    return atMost(area.grade, likely ? Severity::Warn : Severity::Hint);
}

/// The areas of a wall that a cable may lie in, with what a screw in each is worth.
struct Likely {
    ZoneArea area;
    Severity severity = Severity::Hint;
};

std::vector<Likely> likelyOn(const Facts& facts, const plan::Room& room, std::size_t wall) {
    std::vector<Likely> likely;
    for (ZoneArea& area : zoneAreas(facts, room, wall, true))
        if (const auto severity = cableIn(facts, room, area)) likely.push_back({std::move(area), *severity});
    return likely;
}

std::optional<Hit> worstHit(const std::vector<Likely>& likely, const plan::Furniture& piece,
                            const geometry::Frame& frame) {
    std::optional<Hit> worst;
    for (const Vec2 at : fixingPoints(piece, frame))
        for (const Likely& each : likely) {
            const double in = toOutline(each.area.area_mm, at);
            if (in < kTouchMm || !holds(each.area.area_mm, at)) continue;
            const Hit hit{&piece, &each.area, at, each.severity, in};
            if (!worst || hit.severity > worst->severity ||
                (hit.severity == worst->severity && hit.in_mm > worst->in_mm))
                worst = hit;
        }
    return worst;
}

/// The shortest way for a screw out of all zones, and to which side; nullopt when there is none on the wall.
struct Shift {
    double mm = 0;
    Feed side = Feed::Unstated;
};

std::optional<Shift> wayOut(const std::vector<Likely>& likely, const plan::Room& room, std::size_t wall,
                            Vec2 at) {
    std::optional<Shift> best;
    for (const Feed side : {Feed::Above, Feed::Below, Feed::Left, Feed::Right}) {
        const Vec2 end = reachOf(room, wall, at, side);
        std::vector<Interval> parts;
        for (const Likely& each : likely)
            std::ranges::copy(partsInside(each.area.area_mm, at, end), std::back_inserter(parts));
        std::ranges::sort(parts, {}, &Interval::from_mm);
        double taken = 0;
        for (const Interval& part : parts)
            if (part.from_mm <= taken + 1e-9) taken = std::max(taken, part.to_mm);
        const double way = taken * length(end - at);
        if (taken < 1 - 1e-9 && (!best || way < best->mm)) best = Shift{way, side};
    }
    return best;
}

const char* towards(Feed side) {
    switch (side) {
    case Feed::Above:
        return "up";
    case Feed::Below:
        return "down";
    case Feed::Left:
        return "to the left";
    default:
        return "to the right";
    }
}

std::string whereIn(const Facts& facts, const ZoneArea& area) {
    if (area.point.empty()) return fmt::format("in the {}", area.name);
    const Point* point = facts.point(area.point);
    const std::string tag = point == nullptr ? area.point : point->tag();
    const bool upright = area.side == Feed::Above || area.side == Feed::Below;
    return fmt::format("straight {} {}{}, where its cable may lie", upright ? sideName(area.side) : "beside",
                       tag, area.beyond ? " on the other side of the wall" : "");
}

/// A row of like pieces in one zone is one finding.
void sayFixings(const Facts& facts, const plan::Room& room, std::size_t wall, const std::vector<Hit>& row,
                std::optional<Shift> out, Findings& findings) {
    const Hit& first = row.front();
    plan::Finding finding;
    finding.rule = "fixing-in-zone";
    finding.severity = first.severity;
    for (const Hit& hit : row)
        finding.objects.push_back(hit.piece->id);
    if (!first.area->point.empty()) finding.objects.push_back(first.area->point);
    if (out) finding.value_mm = out->mm;
    finding.place_mm = geometry::toHouse(geometry::wallFrame(room, wall), {first.at_mm.x, first.at_mm.y, 0});
    finding.message =
        fmt::format("{} in {}{}: a usual fixing at {} along the wall and {} above the floor is {}.",
                    pieceName(*first.piece), roomName(facts, room.id),
                    row.size() > 1 ? fmt::format(" and {} more of its row", row.size() - 1) : "",
                    mm(first.at_mm.x), mm(first.at_mm.y), whereIn(facts, *first.area));
    finding.source = fmt::format("{}; where it is screwed: common practice, no source", first.area->source);
    finding.remedy = fmt::format(
        "Look for cables with a detector before drilling{}{}.",
        out ? fmt::format(", set the fixing {} mm {}", mm(out->mm), towards(out->side)) : "",
        first.area->point.empty() ? ", or hang it from a rail outside the zone"
                                  : ", or have the electrician bring the cable from another side");
    findings.push_back(std::move(finding));
}

void findFixings(const Facts& facts, const plan::Room& room, std::size_t wall, Findings& findings) {
    const geometry::Frame frame = geometry::wallFrame(room, wall);
    std::vector<const plan::Furniture*> screwed;
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id))
        if (!fixingPoints(*piece, frame).empty()) screwed.push_back(piece);
    if (screwed.empty()) return;
    const std::vector<Likely> likely = likelyOn(facts, room, wall);
    std::vector<std::vector<Hit>> rows;
    for (const plan::Furniture* piece : screwed) {
        const auto hit = worstHit(likely, *piece, frame);
        if (!hit) continue;
        const auto row = std::ranges::find_if(rows, [&](const std::vector<Hit>& known) {
            return known.front().piece->kind == piece->kind &&
                   known.front().area->point == hit->area->point &&
                   known.front().area->zone == hit->area->zone && known.front().severity == hit->severity;
        });
        if (row == rows.end())
            rows.push_back({*hit});
        else
            row->push_back(*hit);
    }
    for (const auto& row : rows)
        sayFixings(facts, room, wall, row, wayOut(likely, room, wall, row.front().at_mm), findings);
}
} // namespace

void findZones(const Facts& facts, const plan::Room& room, Findings& findings) {
    if (facts.pack().zones.empty()) return;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        if (const auto& points = facts.pointsOn(room.id, room.walls[wall].id); !points.empty()) {
            const Areas areas = zoneAreas(facts, room, wall);
            // Straight strips alone bind no feed: they lie wherever the plate is.
            if (std::ranges::any_of(areas, [](const ZoneArea& area) { return area.point.empty(); }))
                for (const Point* point : points)
                    if (!point->made.boxes.empty()) findFeed(facts, room, wall, areas, *point, findings);
        }
        findFixings(facts, room, wall, findings);
    }
}

} // namespace gangway::checks
