// Boxes in their walls: depth, and the boxes of the other side. Floor boxes under what stands on them.
#include "checks/rules.hpp"

#include "geometry/wall_hit.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace gangway::checks {

using plan::Severity;

namespace {
double deepestBox(const Point& point) {
    if (point.plate->box_depth_mm) return *point.plate->box_depth_mm;
    double depth = 0;
    for (const catalogue::Box& box : point.made.boxes)
        depth = std::max(depth, box.spec.depth_mm);
    return depth;
}

/// Finished face to finished face of the wall at a place; what is stated of it where no room lies behind.
double thicknessAt(const Facts& facts, const plan::Room& room, std::size_t wall, double u_mm) {
    for (const geometry::PairedFace& pair : geometry::pairedFaces(facts.house(), {room.id, wall}))
        if (u_mm >= pair.from_mm && u_mm <= pair.to_mm) return pair.thickness_mm;
    double thickness = room.walls[wall].thickness_mm;
    for (const plan::Course& course : room.walls[wall].build_up)
        thickness += course.thickness_mm;
    return thickness;
}

/// Free wall between the boxes of two plates along the wall, with the other one seen from this side.
double betweenBoxes(const Point& point, const Point& other, double other_u_mm) {
    double least = std::numeric_limits<double>::infinity();
    for (const catalogue::Box& a : point.made.boxes)
        for (const catalogue::Box& b : other.made.boxes) {
            const double along =
                std::abs(point.plate->host.u_mm + a.centre_mm.x - (other_u_mm - b.centre_mm.x)) -
                (a.spec.width_mm + b.spec.width_mm) / 2;
            const double up =
                std::abs(point.plate->host.v_mm + a.centre_mm.y - (other.plate->host.v_mm + b.centre_mm.y)) -
                (a.spec.height_mm + b.spec.height_mm) / 2;
            least = std::min(least, std::max(along, up));
        }
    return least;
}

void findDepth(const Facts& facts, const Point& point, double thickness, Findings& findings) {
    const double depth = deepestBox(point);
    const double left = thickness - depth;
    if (depth <= 0 || left >= facts.limit("wallLeft")) return;
    auto finding = about(facts, "box-depth", Severity::Fault, point);
    finding.value_mm = left;
    finding.limit_mm = facts.limit("wallLeft");
    finding.message =
        fmt::format("{}: a box {} mm deep leaves {} mm of a wall of {} mm, {} wanted.", whoIn(facts, point),
                    mm(depth), mm(left), mm(thickness), mm(facts.limit("wallLeft")));
    finding.source = facts.source("wallLeft");
    finding.remedy = "A shallower box, a thicker wall, or another wall.";
    findings.push_back(std::move(finding));
}

void findBehind(const Facts& facts, const Point& point, double thickness, Findings& findings) {
    const auto across = geometry::otherFace(facts.house(), point.plate->room, point.plate->host);
    if (!across) return;
    for (const Point* other : facts.pointsOn(across->room, across->host.wall)) {
        if (other->plate->id < point.plate->id) continue; // said once of a pair
        // Seen from here the other's u runs the other way.
        const double other_u = point.plate->host.u_mm + (across->host.u_mm - other->plate->host.u_mm);
        const double gap = betweenBoxes(point, *other, other_u);
        const double left = thickness - deepestBox(point) - deepestBox(*other);
        const bool collide = gap < 0 && left < facts.limit("wallLeft");
        if (!collide && gap >= facts.limit("backToBack")) continue;
        auto finding = about(facts, "back-to-back", collide ? Severity::Fault : Severity::Hint, point);
        finding.objects.push_back(other->plate->id);
        finding.value_mm = collide ? left : gap;
        finding.limit_mm = facts.limit(collide ? "wallLeft" : "backToBack");
        finding.message =
            collide ? fmt::format("{} and {} in {} are back to back: both boxes leave {} mm of the wall.",
                                  whoIn(facts, point), other->tag(), roomName(facts, across->room), mm(left))
                    : fmt::format(
                          "The boxes of {} and of {} in {} {} on both sides of one wall, {} mm apart wanted "
                          "where it parts sound or fire.",
                          whoIn(facts, point), other->tag(), roomName(facts, across->room),
                          gap < 0 ? "stand back to back" : fmt::format("are {} mm apart", mm(gap)),
                          mm(facts.limit("backToBack")));
        finding.source = facts.source(collide ? "wallLeft" : "backToBack");
        finding.remedy = fmt::format("Move one of them until {} mm of wall lie between the boxes.",
                                     mm(facts.limit("backToBack")));
        findings.push_back(std::move(finding));
    }
}

/// How far a point lies within a convex outline: the least distance to its edges, negative outside.
double within(const std::vector<plan::Vec2>& outline, plan::Vec2 at) {
    double least = std::numeric_limits<double>::infinity();
    const bool clockwise = geometry::signedArea(outline) < 0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const plan::Vec2 a = outline[i];
        const plan::Vec2 edge = outline[(i + 1) % outline.size()] - a;
        const double size = length(edge);
        if (size > 0) least = std::min(least, cross(edge, at - a) / size * (clockwise ? -1 : 1));
    }
    return least;
}
} // namespace

void findBoxes(const Facts& facts, Findings& findings) {
    for (const Point& point : facts.points()) {
        if (point.plate->host.kind != plan::Host::Kind::Wall) continue;
        const plan::Room* room = facts.house().room(point.plate->room);
        const auto wall = room == nullptr ? std::nullopt : plan::wallIndex(*room, point.plate->host.wall);
        if (!wall || point.made.boxes.empty()) continue;
        const double thickness = thicknessAt(facts, *room, *wall, point.plate->host.u_mm);
        findDepth(facts, point, thickness, findings);
        findBehind(facts, point, thickness, findings);
    }
}

void findFloor(const Facts& facts, Findings& findings) {
    for (const Point& point : facts.points()) {
        if (point.plate->host.kind != plan::Host::Kind::Floor) continue;
        const plan::Furniture* piece = facts.house().furniture(point.plate->anchor);
        const auto at = geometry::hostPoint(facts.house(), point.plate->room, point.plate->host);
        if (piece == nullptr || !at) continue;
        const double inside = within(geometry::footprint(*piece), {at->x, at->y});
        if (inside >= facts.limit("floorInside")) continue;
        auto finding = about(facts, "floor-box", inside < 0 ? Severity::Fault : Severity::Warn, point);
        finding.objects.push_back(piece->id);
        finding.value_mm = inside;
        finding.limit_mm = facts.limit("floorInside");
        finding.message = fmt::format("{} comes up {} mm {} {}, {} mm inside wanted.", whoIn(facts, point),
                                      mm(std::abs(inside)), inside < 0 ? "outside" : "inside the edge of",
                                      pieceName(*piece), mm(facts.limit("floorInside")));
        finding.source = facts.source("floorInside");
        finding.remedy = "Move it under the piece, before the screed is laid.";
        findings.push_back(std::move(finding));
    }
}

} // namespace gangway::checks
