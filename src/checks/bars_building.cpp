// Bars of the building: the wall's own outline, openings and their casings, skirtings and mouldings, door
// leaves, and the plates that are there.
#include "checks/point.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::checks {

using plan::Severity;

namespace {
constexpr double kFarMm = 10000;
/// A moulding round a panel, as wide as it is drawn; common practice, no source.
constexpr double kMouldingMm = 20;

Bar barOf(std::string rule, Severity severity, std::string object, std::string name,
          std::vector<plan::Vec2> area) {
    Bar bar;
    bar.rule = std::move(rule);
    bar.severity = severity;
    bar.object = std::move(object);
    bar.name = std::move(name);
    bar.area_mm = std::move(area);
    return bar;
}

/// Cross product of the unit directions of the walls that meet at an end of a wall: above 0 where the room
/// turns outwards, below 0 at an inside corner.
double turnAt(const plan::Room& room, std::size_t wall, bool left_end) {
    const std::size_t count = room.outline.size();
    const auto along = [&](std::size_t i) {
        const geometry::WallEdge edge = geometry::wallEdge(room, (i + count) % count);
        const plan::Vec2 way = edge.to_mm - edge.from_mm;
        return length(way) > 0 ? way * (1 / length(way)) : way;
    };
    return left_end ? cross(along(wall + count - 1), along(wall)) : cross(along(wall), along(wall + 1));
}

bool goesStraightOn(const plan::Room& room, std::size_t wall, bool left_end) {
    constexpr double kStraight = 1e-3; // about 0.06 degrees
    return wall < room.outline.size() && std::abs(turnAt(room, wall, left_end)) < kStraight;
}

void barCeiling(const WallScene& scene, std::vector<Bar>& bars) {
    const auto outline = geometry::wallOutline(*scene.room, scene.wall);
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const plan::Vec2 a = outline[i];
        const plan::Vec2 b = outline[(i + 1) % outline.size()];
        if (b.x >= a.x) continue; // the outline goes back from right to left along the ceiling
        Bar bar = barOf("off-wall", Severity::Fault, scene.room->id, "the ceiling",
                        {b, a, {a.x, kFarMm}, {b.x, kFarMm}});
        bar.why = "the wall ends there";
        bar.source = "geometry of the plan";
        bars.push_back(std::move(bar));
    }
    Bar floor = barOf("off-wall", Severity::Fault, scene.room->id, "the floor",
                      rectangle(-kFarMm, scene.frame.length_mm + kFarMm, -kFarMm, 0));
    floor.why = "the wall ends there";
    floor.source = "geometry of the plan";
    bars.push_back(std::move(floor));
}

/// Where a plate reaches past an end of its wall. No other place there is offered: free stretches and margins
/// end with the wall. Where the next wall goes straight on, it carries the plate.
void barEnds(const WallScene& scene, const Point& point, std::vector<Bar>& bars) {
    constexpr double kExactMm = 1e-6;
    for (const bool left : {true, false}) {
        const double at = left ? 0 : scene.frame.length_mm;
        const double u = point.centre_mm().x;
        const double past = (left ? -u : u - at) + point.half_mm.x;
        if (past <= kExactMm || goesStraightOn(*scene.room, scene.wall, left)) continue;
        Bar bar = barOf("off-wall", Severity::Fault, scene.room->id, "the wall's end",
                        left ? rectangle(-kFarMm, at, -kFarMm, kFarMm)
                             : rectangle(at, at + kFarMm, -kFarMm, kFarMm));
        bar.why = "the wall ends there";
        bar.source = "geometry of the plan";
        bars.push_back(std::move(bar));
    }
}

void barOpenings(const Facts& facts, const WallScene& scene, std::vector<Bar>& bars) {
    for (const geometry::FaceHole& hole : scene.holes) {
        const double casing = hole.hosted_here ? hole.opening->casing_mm : hole.opening->casing_beyond_mm;
        const double foot = hole.bottom_mm > 0 ? hole.bottom_mm - casing : 0;
        Bar over =
            barOf("opening-gap", Severity::Fault, hole.opening->id, openingName(*hole.opening),
                  rectangle(hole.left_mm - casing, hole.right_mm + casing, foot, hole.top_mm + casing));
        over.keep = keepAround(facts.limit("openingLeast"));
        over.limit_mm = facts.limit("openingGap");
        over.why = "a plate beside a casing or an opening's edge wants clear wall round it";
        over.source = facts.source("openingGap");
        addOverAndNear(bars, std::move(over), Severity::Warn, keepAround(facts.limit("openingGap")));
        if (hole.opening->kind != plan::Opening::Kind::PocketDoor || hole.opening->cavity_mm <= 0) continue;
        const bool left = (hole.opening->parks == plan::Side::Left) == hole.hosted_here;
        Bar cavity = barOf("pocket-cavity", Severity::Fault, hole.opening->id, openingName(*hole.opening),
                           left ? rectangle(hole.left_mm - hole.opening->cavity_mm, hole.left_mm,
                                            hole.bottom_mm, hole.top_mm)
                                : rectangle(hole.right_mm, hole.right_mm + hole.opening->cavity_mm,
                                            hole.bottom_mm, hole.top_mm));
        cavity.why = "the leaf slides into the wall there, so that no box fits (C6b)";
        cavity.source = "common practice, no source";
        bars.push_back(std::move(cavity));
    }
}

struct LineWords {
    const char* name;
    const char* limit;
};

LineWords wordsOf(plan::WallLine::Kind kind) {
    using Kind = plan::WallLine::Kind;
    switch (kind) {
    case Kind::Skirting:
        return {"the skirting", "skirtingGap"};
    case Kind::Dado:
        return {"the dado rail", "lineGap"};
    case Kind::PictureRail:
        return {"the picture rail", "lineGap"};
    case Kind::Cornice:
        return {"the cornice", "lineGap"};
    case Kind::Panel:
        return {"the panel's moulding", "lineGap"};
    case Kind::Tiles:
        break;
    }
    return {"the tiles", "lineGap"};
}

/// In a panel too small for the usual space on both sides, the middle is right (C9).
Keep keepInPanel(Keep usual, plan::Vec2 panel_mm, plan::Vec2 half_mm) {
    const auto most = [](double panel, double half) {
        return std::max(0.0, (panel - 2 * kMouldingMm) / 2 - half);
    };
    const double along = std::min(usual.left_mm, most(panel_mm.x, half_mm.x));
    const double up = std::min(usual.above_mm, most(panel_mm.y, half_mm.y));
    return {along, along, up, up};
}

void barLine(const Facts& facts, const WallScene& scene, const plan::WallLine& line, const Point& point,
             std::vector<Bar>& bars) {
    using Kind = plan::WallLine::Kind;
    if (line.kind == Kind::Tiles || line.depth_mm <= 0) return;
    const double left = line.from_mm.value_or(0);
    const double right = line.to_mm.value_or(scene.frame.length_mm);
    const double top = line.bottom_mm + line.height_mm;
    const LineWords words = wordsOf(line.kind);
    Keep keep = keepAround(facts.limit(words.limit));
    std::vector<std::vector<plan::Vec2>> areas{rectangle(left, right, line.bottom_mm, top)};
    if (line.kind == Kind::Panel)
        areas = {rectangle(left, right, line.bottom_mm, line.bottom_mm + kMouldingMm),
                 rectangle(left, right, top - kMouldingMm, top),
                 rectangle(left, left + kMouldingMm, line.bottom_mm, top),
                 rectangle(right - kMouldingMm, right, line.bottom_mm, top)};
    if (line.kind == Kind::Panel) keep = keepInPanel(keep, {right - left, line.height_mm}, point.half_mm);
    for (auto& area : areas) {
        Bar over = barOf("line-gap", Severity::Fault, scene.room->id, words.name, std::move(area));
        over.limit_mm = facts.limit(words.limit);
        over.why = "a plate does not lie flat on it";
        over.source = facts.source(words.limit);
        addOverAndNear(bars, std::move(over), Severity::Warn, keep);
    }
}

void barCorners(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars) {
    const double gap = facts.limit("cornerGap");
    if (gap <= 0 || !(point.socket || point.control)) return;
    for (const bool left : {true, false}) {
        if (!insideCorner(*scene.room, scene.wall, left)) continue;
        const double at = left ? 0 : scene.frame.length_mm;
        Bar bar = barOf("corner-gap", Severity::Warn, scene.room->id, "the corner of the room",
                        rectangle(at - (left ? 1 : 0), at + (left ? 0 : 1), -kFarMm, kFarMm));
        const double keep = std::max(0.0, gap - point.half_mm.x);
        bar.keep = {keep, keep, 0, 0};
        bar.limit_mm = keep;
        bar.why = fmt::format("{:.0f} mm from the corner to the plate's centre is asked for", gap);
        bar.source = facts.source("cornerGap");
        bars.push_back(std::move(bar));
    }
}
} // namespace

bool insideCorner(const plan::Room& room, std::size_t wall, bool left_end) {
    return wall < room.outline.size() && turnAt(room, wall, left_end) < 0;
}

void barBuilding(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars) {
    barCeiling(scene, bars);
    barEnds(scene, point, bars);
    barOpenings(facts, scene, bars);
    for (const plan::WallLine& line : scene.room->walls[scene.wall].lines)
        barLine(facts, scene, line, point, bars);
    barCorners(facts, scene, point, bars);
}

void barFace(const WallScene& scene, std::vector<Bar>& bars) {
    const double right = scene.frame.length_mm;
    const double top = scene.frame.height_mm;
    const double foot = scene.frame.v.z != 0 ? scene.host->bottom_mm : 0;
    for (auto& area : {rectangle(-kFarMm, 0, -kFarMm, kFarMm), rectangle(right, kFarMm, -kFarMm, kFarMm),
                       rectangle(-kFarMm, kFarMm, -kFarMm, foot), rectangle(-kFarMm, kFarMm, top, kFarMm)}) {
        Bar bar = barOf("off-face", Severity::Fault, scene.host->id,
                        fmt::format("the edge of {}", pieceName(*scene.host)), area);
        bar.why = "the piece ends there";
        bar.source = "geometry of the plan";
        bars.push_back(std::move(bar));
    }
}

void barLeaves(const WallScene& scene, const Point& point, std::vector<Bar>& bars) {
    for (const LeafShadow& leaf : scene.leaves) {
        Bar bar = barOf("behind-leaf", point.control ? Severity::Fault : Severity::Warn, leaf.opening->id,
                        openingName(*leaf.opening), leaf.area_mm);
        bar.value_mm = leaf.near_mm;
        bar.why = fmt::format("the open leaf stands {:.0f} mm before the wall", leaf.near_mm);
        bar.source = "within reach as one enters (C6); common practice, no source";
        bar.proven_elsewhere = point.control;
        bars.push_back(std::move(bar));
    }
}

void barPlates(const WallScene& scene, const Point& point, std::vector<Bar>& bars) {
    for (const Point* other : scene.points) {
        if (other->plate->id == point.plate->id) continue;
        const plan::Vec2 at = other->centre_mm();
        Bar bar = barOf("plate-overlap", Severity::Fault, other->plate->id, other->tag(),
                        rectangle(at.x - other->half_mm.x, at.x + other->half_mm.x, at.y - other->half_mm.y,
                                  at.y + other->half_mm.y));
        bar.why = "two plates can't take the same wall";
        bar.source = "geometry of the plan";
        bars.push_back(std::move(bar));
    }
}

} // namespace gangway::checks
