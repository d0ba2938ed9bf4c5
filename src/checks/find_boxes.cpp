// Boxes in their walls: depth, and the boxes of the other side.
#include "checks/rules.hpp"

#include "geometry/wall_hit.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace gangway::checks {

using plan::Severity;

namespace {
constexpr double kRoundingMm = 1e-6;

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

/// Least of a measure between each box of a plate and each of another, seen from this side.
template <class Measure>
double leastBetween(const Point& point, const Point& other, double other_u_mm, const Measure& measure) {
    double least = std::numeric_limits<double>::infinity();
    for (const catalogue::Box& a : point.made.boxes)
        for (const catalogue::Box& b : other.made.boxes) {
            const double along =
                std::abs(point.plate->host.u_mm + a.centre_mm.x - (other_u_mm - b.centre_mm.x)) -
                (a.spec.width_mm + b.spec.width_mm) / 2;
            const double up =
                std::abs(point.plate->host.v_mm + a.centre_mm.y - (other.plate->host.v_mm + b.centre_mm.y)) -
                (a.spec.height_mm + b.spec.height_mm) / 2;
            least = std::min(least, measure(along, up));
        }
    return least;
}

/// Free wall between the boxes of two plates.
double betweenBoxes(const Point& point, const Point& other, double other_u_mm) {
    return leastBetween(point, other, other_u_mm,
                        [](double along, double up) { return std::max(along, up); });
}

/// The same along the wall only.
double alongBetween(const Point& point, const Point& other, double other_u_mm) {
    return leastBetween(point, other, other_u_mm, [](double along, double) { return along; });
}

double betweenPlates(const Point& point, const Point& other, double other_u_mm) {
    return std::max(std::abs(point.plate->host.u_mm - other_u_mm) - point.half_mm.x - other.half_mm.x,
                    std::abs(point.plate->host.v_mm - other.plate->host.v_mm) - point.half_mm.y -
                        other.half_mm.y);
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

/// The stricter of what both faces of a wall say of it.
plan::WallDuty dutyOf(const plan::Wall& here, const plan::Room* beyond, const std::string& there) {
    const auto wall = beyond == nullptr ? std::nullopt : plan::wallIndex(*beyond, there);
    return wall ? std::max(here.duty, beyond->walls[*wall].duty) : here.duty;
}

/// How far apart the boxes of both sides are wanted, how far they are, and why.
struct Apart {
    double gap_mm = 0;
    std::string limit;
    const char* why = "";
};

Apart apartOf(const Facts& facts, const Point& point, const Point& other, double other_u,
              plan::WallDuty duty) {
    if (duty == plan::WallDuty::Fire && facts.limit("fireApart") > 0)
        return {alongBetween(point, other, other_u), "fireApart", "as it holds fire back"};
    const double boxes = betweenBoxes(point, other, other_u);
    if (duty == plan::WallDuty::None) return {boxes, "backToBack", "where it parts sound or fire"};
    // Plates are wider than their boxes or not: the nearer edges count.
    return {std::min(boxes, betweenPlates(point, other, other_u)), "backToBack",
            duty == plan::WallDuty::Fire ? "as it holds fire back" : "as it parts two dwellings"};
}

void sayBehind(const Facts& facts, const Point& point, const Point& other, const Apart& apart,
               plan::WallDuty duty, Findings& findings) {
    auto finding =
        about(facts, "back-to-back", duty == plan::WallDuty::None ? Severity::Hint : Severity::Warn, point);
    finding.objects.push_back(other.plate->id);
    finding.value_mm = apart.gap_mm;
    finding.limit_mm = facts.limit(apart.limit);
    finding.message = fmt::format("The boxes of {} and of {} in {} {} on both sides of one wall, {} mm apart "
                                  "wanted {}.",
                                  whoIn(facts, point), other.tag(), roomName(facts, other.plate->room),
                                  apart.gap_mm < 0 ? "stand back to back"
                                                   : fmt::format("are {} mm apart", mm(apart.gap_mm)),
                                  mm(facts.limit(apart.limit)), apart.why);
    finding.source = facts.source(apart.limit);
    finding.remedy = fmt::format("Move one of them until {} mm of wall lie between the boxes.",
                                 mm(facts.limit(apart.limit)));
    findings.push_back(std::move(finding));
}

void sayCollision(const Facts& facts, const Point& point, const Point& other, double left,
                  Findings& findings) {
    auto finding = about(facts, "back-to-back", Severity::Fault, point);
    finding.objects.push_back(other.plate->id);
    finding.value_mm = left;
    finding.limit_mm = facts.limit("wallLeft");
    finding.message =
        fmt::format("{} and {} in {} are back to back: both boxes leave {} mm of the wall.",
                    whoIn(facts, point), other.tag(), roomName(facts, other.plate->room), mm(left));
    finding.source = facts.source("wallLeft");
    finding.remedy = fmt::format("Move one of them until {} mm of wall lie between the boxes.",
                                 mm(facts.limit("backToBack")));
    findings.push_back(std::move(finding));
}

void findBehind(const Facts& facts, const Point& point, const plan::Wall& wall, double thickness,
                Findings& findings) {
    const auto across = geometry::otherFace(facts.house(), point.plate->room, point.plate->host);
    if (!across) return;
    const plan::WallDuty duty = dutyOf(wall, facts.house().room(across->room), across->host.wall);
    for (const Point* other : facts.pointsOn(across->room, across->host.wall)) {
        if (other->plate->id < point.plate->id) continue; // said once of a pair
        // Seen from here the other's u runs the other way.
        const double other_u = point.plate->host.u_mm + (across->host.u_mm - other->plate->host.u_mm);
        const double left = thickness - deepestBox(point) - deepestBox(*other);
        if (betweenBoxes(point, *other, other_u) < 0 && left < facts.limit("wallLeft")) {
            sayCollision(facts, point, *other, left, findings);
            continue;
        }
        const Apart apart = apartOf(facts, point, *other, other_u, duty);
        if (apart.gap_mm < facts.limit(apart.limit) - kRoundingMm)
            sayBehind(facts, point, *other, apart, duty, findings);
    }
}
} // namespace

void findBoxes(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const Point* point : facts.pointsIn(room.id)) {
        if (point->plate->host.kind != plan::Host::Kind::Wall) continue;
        const auto wall = plan::wallIndex(room, point->plate->host.wall);
        if (!wall || point->made.boxes.empty()) continue;
        const double thickness = thicknessAt(facts, room, *wall, point->plate->host.u_mm);
        findDepth(facts, *point, thickness, findings);
        findBehind(facts, *point, room.walls[*wall], thickness, findings);
    }
}

} // namespace gangway::checks
