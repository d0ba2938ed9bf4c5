// Boxes and recessed lamps against studs and joists, and against what a wall may lose. Depths of slots by
// national tables (DIN EN 1996-1-1/NA) are not covered.
#include "checks/rules.hpp"
#include "geometry/wall_hit.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>
#include <numbers>

namespace gangway::checks {

using plan::Severity;
using plan::Vec2;

namespace {
constexpr double kRoundingMm = 1e-6;

/// Free space between a centre with half its width and the nearest member; less than 0 when over it.
double toMember(const plan::Framing& framing, double centre, double half) {
    if (framing.spacing_mm <= 0) return std::numeric_limits<double>::infinity();
    const double bays = std::round((centre - framing.first_mm) / framing.spacing_mm);
    const double nearest = framing.first_mm + bays * framing.spacing_mm;
    return std::abs(centre - nearest) - half - framing.width_mm / 2;
}

/// Part of a box along the framing: where its centre is from the plate's, and half its width.
struct Part {
    double off_mm = 0;
    double half_mm = 0;
};

double leastGap(const plan::Framing& framing, const std::vector<Part>& parts, double centre) {
    double least = std::numeric_limits<double>::infinity();
    for (const Part& part : parts)
        least = std::min(least, toMember(framing, centre + part.off_mm, part.half_mm));
    return least;
}

/// The nearest centre at which all parts are clear of the members by `clear`; nullopt when they fit no bay.
std::optional<double> nearestBay(const plan::Framing& framing, const std::vector<Part>& parts, double centre,
                                 double clear, Interval whole) {
    std::optional<double> nearest;
    for (const Part& part : parts) {
        const double keep = framing.width_mm / 2 + part.half_mm + clear;
        const double bay = std::round((centre + part.off_mm - framing.first_mm) / framing.spacing_mm);
        for (const double step : {-1.0, 0.0, 1.0})
            for (const double side : {-1.0, 1.0}) {
                const double member = framing.first_mm + (bay + step) * framing.spacing_mm;
                const double tried = member + side * keep - part.off_mm;
                if (tried < whole.from_mm || tried > whole.to_mm) continue;
                if (leastGap(framing, parts, tried) < clear - kRoundingMm) continue;
                if (!nearest || std::abs(tried - centre) < std::abs(*nearest - centre)) nearest = tried;
            }
    }
    return nearest;
}

void findStud(const Facts& facts, const plan::Wall& wall, const geometry::Frame& frame, const Point& point,
              Findings& findings) {
    if (!wall.studs) return;
    std::vector<Part> parts;
    for (const catalogue::Box& box : point.made.boxes)
        parts.push_back({box.centre_mm.x, box.spec.width_mm / 2});
    const double clear = facts.limit("framingClear");
    const double u = point.plate->host.u_mm;
    const double gap = leastGap(*wall.studs, parts, u);
    if (gap >= clear - kRoundingMm) return;
    auto finding = about(facts, "stud-gap", Severity::Warn, point);
    finding.value_mm = gap;
    finding.limit_mm = clear;
    finding.message = fmt::format("{}: its box {} a stud, {} mm clear wanted.", whoIn(facts, point),
                                  gap < 0 ? fmt::format("reaches {} mm into", mm(-gap))
                                          : fmt::format("is {} mm from", mm(gap)),
                                  mm(clear));
    finding.source = facts.source("framingClear");
    const auto bay =
        nearestBay(*wall.studs, parts, u, clear, {point.half_mm.x, frame.length_mm - point.half_mm.x});
    finding.remedy =
        bay ? fmt::format("Move it {} mm to the {}.", mm(std::abs(*bay - u)), *bay > u ? "right" : "left")
            : "Its boxes fit between no two studs: two plates, or a stud is moved.";
    findings.push_back(std::move(finding));
}

/// Across the joists: from the south-west corner of the room's bounding box, eastwards, or northwards where
/// they run east.
Vec2 acrossJoists(const plan::Framing& joists) {
    const double angle = joists.direction_deg * std::numbers::pi / 180;
    const Vec2 across{std::sin(angle), -std::cos(angle)};
    const bool flip = std::abs(across.x) > 1e-9 ? across.x < 0 : across.y < 0;
    return flip ? across * -1 : across;
}

std::string sideOf(Vec2 way) {
    if (std::abs(way.x) >= std::abs(way.y)) return way.x > 0 ? "east" : "west";
    return way.y > 0 ? "north" : "south";
}

void findJoist(const Facts& facts, const plan::Room& room, const plan::Luminaire& lamp, Findings& findings) {
    const plan::Framing& joists = *room.ceiling.joists;
    const Vec2 across = acrossJoists(joists);
    const double place = dot(across, {lamp.host.u_mm, lamp.host.v_mm});
    const std::vector<Part> parts{{0, lamp.size_mm / 2}};
    const double clear = facts.limit("framingClear");
    const double gap = leastGap(joists, parts, place);
    if (gap >= clear - kRoundingMm) return;
    plan::Finding finding;
    finding.rule = "joist-gap";
    finding.severity = Severity::Warn;
    finding.objects = {lamp.id};
    if (const auto at = geometry::hostPoint(facts.house(), lamp.room, lamp.host)) finding.place_mm = *at;
    finding.value_mm = gap;
    finding.limit_mm = clear;
    finding.message = fmt::format("{} in {} {} a joist, {} mm clear wanted.",
                                  lamp.tag.empty() ? lamp.id : lamp.tag, roomName(facts, room.id),
                                  gap < 0 ? fmt::format("reaches {} mm into", mm(-gap))
                                          : fmt::format("is {} mm from", mm(gap)),
                                  mm(clear));
    finding.source = facts.source("framingClear");
    const auto bay = nearestBay(joists, parts, place, clear, {-1e9, 1e9});
    finding.remedy =
        bay ? fmt::format("Move it {} mm to the {}, and its row with it.", mm(std::abs(*bay - place)),
                          sideOf(across * (*bay > place ? 1 : -1)))
            : "It fits between no two joists: a smaller one, or one that is mounted on the ceiling.";
    findings.push_back(std::move(finding));
}

/// A box or a chase is cut through the finish first; only what goes beyond it weakens the wall.
void findChase(const Facts& facts, const plan::Wall& wall, const Point& point, Findings& findings) {
    if (wall.structure != plan::WallStructure::Masonry) return;
    double finish = 0;
    for (const plan::Course& course : wall.build_up)
        finish += course.thickness_mm;
    double cut = 0;
    for (const catalogue::Box& box : point.made.boxes)
        cut = std::max(cut, point.plate->box_depth_mm.value_or(box.spec.depth_mm) - finish);
    const double most = facts.limit("chaseUpright") * wall.thickness_mm;
    if (most > 0 && cut > most + kRoundingMm) {
        auto finding = about(facts, "chase-depth", Severity::Warn, point);
        finding.value_mm = cut;
        finding.limit_mm = most;
        finding.message = fmt::format("{}: its box cuts {} mm into masonry of {} mm, {} at most.",
                                      whoIn(facts, point), mm(cut), mm(wall.thickness_mm), mm(most));
        finding.source = facts.source("chaseUpright");
        finding.remedy = "A shallower box. A cavity wall counts by the leaf that is cut.";
        findings.push_back(std::move(finding));
    }
    const double along = facts.limit("chaseAcross") * wall.thickness_mm;
    const bool level = point.plate->feed == plan::Feed::Left || point.plate->feed == plan::Feed::Right;
    if (along <= 0 || !level) return;
    auto finding = about(facts, "chase-along", Severity::Hint, point);
    finding.limit_mm = along;
    finding.message = fmt::format("{} is fed along masonry of {} mm: a level chase is {} mm deep at most{}.",
                                  whoIn(facts, point), mm(wall.thickness_mm), mm(along),
                                  most > 0 ? fmt::format(", an upright one {}", mm(most)) : "");
    finding.source = facts.source("chaseAcross");
    finding.remedy = "Feed it from above or below, or keep the chase that shallow.";
    findings.push_back(std::move(finding));
}

double areaOf(const catalogue::BoxSpec& box) {
    const double rectangle = box.width_mm * box.height_mm;
    return box.shape == catalogue::BoxSpec::Shape::Round ? rectangle * std::numbers::pi / 4 : rectangle;
}

/// Boxes through one face of a wall that holds fire back, against the face's area (IRC R302.4.2).
void findBoxAreas(const Facts& facts, const plan::Room& room, std::size_t wall, Findings& findings) {
    const double part = facts.limit("fireBoxPart");
    if (part <= 0 || room.walls[wall].duty != plan::WallDuty::Fire) return;
    const auto& points = facts.pointsOn(room.id, room.walls[wall].id);
    double sum = 0;
    for (const Point* point : points)
        for (const catalogue::Box& box : point->made.boxes)
            sum += areaOf(box.spec);
    const double most = part * std::abs(geometry::signedArea(geometry::wallOutline(room, wall)));
    if (points.empty() || sum <= most + kRoundingMm) return;
    auto finding = about(facts, "fire-boxes", Severity::Warn, *points.front());
    finding.message = fmt::format("The boxes in wall {} of {}, which holds fire back, take {:.0f} cm2 of it, "
                                  "{:.0f} at most.",
                                  room.walls[wall].id, roomName(facts, room.id), sum / 100, most / 100);
    for (std::size_t i = 1; i < points.size(); ++i)
        finding.objects.push_back(points[i]->plate->id);
    finding.source = facts.source("fireBoxPart");
    finding.remedy = "Fewer boxes in this wall, or boxes that are listed for it.";
    findings.push_back(std::move(finding));
}
} // namespace

void findStructure(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const auto& points = facts.pointsOn(room.id, room.walls[wall].id);
        if (points.empty()) continue;
        const geometry::Frame frame = geometry::wallFrame(room, wall);
        for (const Point* point : points) {
            if (point->made.boxes.empty()) continue;
            findStud(facts, room.walls[wall], frame, *point, findings);
            findChase(facts, room.walls[wall], *point, findings);
        }
        findBoxAreas(facts, room, wall, findings);
    }
    if (!room.ceiling.joists) return;
    for (const plan::Luminaire* lamp : facts.lampsIn(room.id))
        if (lamp->kind == plan::Luminaire::Kind::Recessed && lamp->host.kind == plan::Host::Kind::Ceiling)
            findJoist(facts, room, *lamp, findings);
}

} // namespace gangway::checks
