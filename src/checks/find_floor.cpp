// Floor boxes: under the piece they feed, not under a leg, not where one walks.
#include "checks/walk_ways.hpp"

#include "checks/bars.hpp"
#include "checks/rules.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace gangway::checks {

using plan::Severity;
using plan::Vec2;

namespace {
/// What is nearer to the floor than this stands on it.
constexpr double kStandsMm = 5;

/// How far a point lies within a convex outline: the least distance to its edges, negative outside.
double within(const std::vector<Vec2>& outline, Vec2 at) {
    double least = std::numeric_limits<double>::infinity();
    const bool clockwise = geometry::signedArea(outline) < 0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2 a = outline[i];
        const Vec2 edge = outline[(i + 1) % outline.size()] - a;
        const double size = length(edge);
        if (size > 0) least = std::min(least, cross(edge, at - a) / size * (clockwise ? -1 : 1));
    }
    return least;
}

void findInside(const Facts& facts, const Point& point, const plan::Furniture& piece, Vec2 at,
                Findings& findings) {
    const double inside = within(geometry::footprint(piece), at);
    if (inside >= facts.limit("floorInside")) return;
    auto finding = about(facts, "floor-box", inside < 0 ? Severity::Fault : Severity::Warn, point);
    finding.objects.push_back(piece.id);
    finding.value_mm = inside;
    finding.limit_mm = facts.limit("floorInside");
    finding.message = fmt::format("{} comes up {} mm {} {}, {} mm inside wanted.", whoIn(facts, point),
                                  mm(std::abs(inside)), inside < 0 ? "outside" : "inside the edge of",
                                  pieceName(piece), mm(facts.limit("floorInside")));
    finding.source = facts.source("floorInside");
    finding.remedy = "Move it under the piece, before the screed is laid.";
    findings.push_back(std::move(finding));
}

/// Of its own piece only what carries it is in the way: plinths and cases hide the box, and are meant to.
bool carries(const std::string& solid) {
    return solid.starts_with("leg") || solid.starts_with("foot") || solid.starts_with("post") ||
           solid.starts_with("side");
}

void findLegs(const Facts& facts, const Point& point, const geometry::Frame& floor, Findings& findings) {
    for (const geometry::Obstacle& obstacle :
         geometry::obstaclesBefore(facts.house(), point.plate->room, floor, kStandsMm, {}, facts.base())) {
        if (obstacle.near_mm > kStandsMm) continue;
        const bool own = obstacle.piece->id == point.plate->anchor;
        if (own && !carries(obstacle.solid)) continue;
        Bar bar;
        bar.area_mm = obstacle.outline_mm;
        const double gap = gapTo(bar, point.half_mm, point.centre_mm());
        if (gap >= -1e-6) continue;
        auto finding = about(facts, "floor-leg", Severity::Fault, point);
        finding.objects.push_back(obstacle.piece->id);
        finding.value_mm = -gap;
        finding.limit_mm = 0;
        finding.message =
            fmt::format("{} is {} mm under {} of {}: its lid does not open.", whoIn(facts, point), mm(-gap),
                        obstacle.solid, pieceName(*obstacle.piece));
        finding.source = "not under a leg (C15); common practice, no source";
        finding.remedy = fmt::format("Move it {} mm further from there.", mm(-gap));
        findings.push_back(std::move(finding));
        return;
    }
}

bool underFurniture(const Facts& facts, const std::string& room, Vec2 at) {
    return std::ranges::any_of(facts.house().furnitureIn(room), [&](const plan::Furniture* piece) {
        return piece->kind != "rug" && geometry::insidePolygon(geometry::footprint(*piece), at);
    });
}

void findLane(const Facts& facts, const plan::Room& room, const Point& point, Vec2 at, Findings& findings) {
    const double wide = facts.limit("laneWidth");
    if (wide <= 0 || underFurniture(facts, room.id, at)) return;
    const double away = toWays(walkWays(facts.house(), room, wide), at);
    if (away >= wide / 2) return;
    auto finding = about(facts, "floor-lane", Severity::Warn, point);
    finding.value_mm = away;
    finding.limit_mm = wide / 2;
    finding.message =
        fmt::format("{} is {} mm from the middle of the way one walks there, {} wanted: plugs and "
                    "leads are stumbled over.",
                    whoIn(facts, point), mm(away), mm(wide / 2));
    finding.source = facts.source("laneWidth");
    finding.remedy = "Move it under a piece of furniture, or out of the way from door to door.";
    findings.push_back(std::move(finding));
}
} // namespace

void findFloor(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const Point* point : facts.pointsIn(room.id)) {
        if (point->plate->host.kind != plan::Host::Kind::Floor) continue;
        const auto frame = geometry::hostFrame(facts.house(), room.id, point->plate->host);
        const auto at = geometry::hostPoint(facts.house(), room.id, point->plate->host);
        if (!frame || !at) continue;
        const Vec2 on_plan{at->x, at->y};
        if (const plan::Furniture* piece = facts.house().furniture(point->plate->anchor))
            findInside(facts, *point, *piece, on_plan, findings);
        findLegs(facts, *point, *frame, findings);
        findLane(facts, room, *point, on_plan, findings);
    }
}

} // namespace gangway::checks
