// From a pillow and from a seat: whether the hand reaches the switch and the socket that are meant for it.
#include "checks/comfort.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace gangway::checks {

using plan::Severity;
using plan::Vec2;
using plan::Vec3;

namespace {
/// A bedside table further from a pillow than this is another one's; common practice, no source.
constexpr double kOwnTableMm = 1500;
/// A lamp further from a seat than this is not read by; common practice, no source.
constexpr double kReadByMm = 1200;
/// From the middle of a seat to a shoulder; common practice, no source.
constexpr double kShoulderMm = 200;

/// What one in bed may want: switches and sockets that are used.
bool isForHand(const Point& point) {
    return (point.control || point.socket) && point.plate->use != plan::UseRate::Once &&
           point.plate->sight != plan::Sight::KeepHidden;
}

std::size_t nearestTo(const std::vector<BodyPoint>& bodies, Vec3 at) {
    std::size_t nearest = 0;
    for (std::size_t i = 1; i < bodies.size(); ++i)
        if (length(bodies[i].at_mm - at) < length(bodies[nearest].at_mm - at)) nearest = i;
    return nearest;
}

} // namespace

std::optional<std::size_t> meantFor(const Facts& facts, const plan::Furniture& bed,
                                    const std::vector<BodyPoint>& pillows, const Point& point, Vec3 at) {
    const std::string& anchor = point.plate->anchor;
    if (anchor == bed.id) return nearestTo(pillows, at);
    const plan::Furniture* table = facts.house().furniture(anchor);
    if (table == nullptr || table->kind != "bedside-table") return std::nullopt;
    const std::size_t nearest = nearestTo(pillows, {table->at_mm.x, table->at_mm.y, pillows.front().at_mm.z});
    const Vec3 pillow = pillows[nearest].at_mm;
    if (length(table->at_mm - Vec2{pillow.x, pillow.y}) > kOwnTableMm) return std::nullopt;
    return nearest;
}

namespace {
std::string pillowOf(const BodyPoint& pillow, const plan::Furniture& bed) {
    return fmt::format("the {}{}pillow of {}", pillow.side, pillow.side.empty() ? "" : " ", pieceName(bed));
}

/// What is known of one pillow.
struct Reached {
    bool by_switch = false;         ///< a switch is in reach, or one meant for it was found too far away
    const Point* nearest = nullptr; ///< of what is meant for it
    double nearest_mm = std::numeric_limits<double>::infinity();
};

plan::Finding tooFar(const Facts& facts, const char* rule, const Point& point, const plan::Furniture& piece,
                     Vec3 from, double reach, const char* limit, const std::string& whence) {
    auto finding = about(facts, rule, Severity::Warn, point);
    finding.objects.push_back(piece.id);
    finding.value_mm = reach;
    finding.limit_mm = facts.limit(limit);
    if (finding.place_mm) finding.gap = plan::Gap{from, *finding.place_mm};
    finding.message = fmt::format("{} is {:.0f} mm from {}, {} is within reach.", whoIn(facts, point), reach,
                                  whence, mm(facts.limit(limit)));
    finding.source = facts.source(limit);
    finding.remedy = "Move it nearer, or add one that is in reach.";
    return finding;
}

void sayNone(const Facts& facts, const char* rule, const plan::Furniture& bed, const BodyPoint& pillow,
             Findings& findings) {
    plan::Finding finding;
    finding.rule = rule;
    finding.severity = Severity::Hint;
    finding.objects = {bed.id};
    finding.limit_mm = facts.limit("bedReach");
    finding.place_mm = pillow.at_mm;
    finding.message = fmt::format("In {} no switch is within {} mm of {}.", roomName(facts, bed.room),
                                  mm(facts.limit("bedReach")), pillowOf(pillow, bed));
    finding.source = facts.source("bedReach");
    finding.remedy = "Add a switch that is reached lying down.";
    findings.push_back(std::move(finding));
}

void findBed(const Facts& facts, const plan::Room& room, const plan::Furniture& bed, Findings& findings) {
    const auto pillows = pillowsOf(facts, room, bed);
    if (pillows.empty()) return;
    const double limit = facts.limit("bedReach");
    std::vector<Reached> reached(pillows.size());
    for (const Point* point : facts.pointsIn(room.id)) {
        const auto at = geometry::hostPoint(facts.house(), room.id, point->plate->host);
        if (!at || !isForHand(*point)) continue;
        for (std::size_t i = 0; i < pillows.size(); ++i)
            if (point->control && length(*at - pillows[i].at_mm) <= limit) reached[i].by_switch = true;
        const auto meant = meantFor(facts, bed, pillows, *point, *at);
        if (!meant) continue;
        const double reach = length(*at - pillows[*meant].at_mm);
        if (reach <= limit) continue;
        reached[*meant].by_switch = reached[*meant].by_switch || point->control;
        findings.push_back(tooFar(facts, "bed-reach", *point, bed, pillows[*meant].at_mm, reach, "bedReach",
                                  pillowOf(pillows[*meant], bed)));
    }
    for (std::size_t i = 0; i < pillows.size(); ++i)
        if (!reached[i].by_switch) sayNone(facts, "bed-reach", bed, pillows[i], findings);
}

/// Both who sleep in a bunk reach a switch.
void findBunk(const Facts& facts, const plan::Room& room, const plan::Furniture& bunk, Findings& findings) {
    const double limit = facts.limit("bedReach");
    for (const BodyPoint& pillow : pillowsOf(facts, room, bunk)) {
        Reached reached;
        for (const Point* point : facts.pointsIn(room.id)) {
            const auto at = geometry::hostPoint(facts.house(), room.id, point->plate->host);
            if (!at || !isForHand(*point) || !point->control) continue;
            const double reach = length(*at - pillow.at_mm);
            if (reach <= limit) reached.by_switch = true;
            if (point->plate->anchor != bunk.id || reach >= reached.nearest_mm) continue;
            reached.nearest = point;
            reached.nearest_mm = reach;
        }
        if (reached.by_switch) continue;
        if (reached.nearest == nullptr)
            sayNone(facts, "bunk-reach", bunk, pillow, findings);
        else
            findings.push_back(tooFar(facts, "bunk-reach", *reached.nearest, bunk, pillow.at_mm,
                                      reached.nearest_mm, "bedReach", pillowOf(pillow, bunk)));
    }
}

/// Where the shoulder is that is nearer to a place beside a seat.
Vec3 shoulder(const plan::Furniture& piece, Vec3 middle, Vec3 towards) {
    const Vec3 right = geometry::fromLocal(piece, Vec3{1, 0, 0}) - geometry::fromLocal(piece, Vec3{0, 0, 0});
    return middle + right * (dot(towards - middle, right) > 0 ? kShoulderMm : -kShoulderMm);
}

struct Seat {
    const plan::Furniture* piece = nullptr;
    Vec3 at_mm;
    double away_mm = kReadByMm;
};

/// The seat that a lamp is read by at, on plan; no piece when none is near.
Seat seatBy(const Facts& facts, const plan::Room& room, Vec3 lamp) {
    Seat nearest;
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id))
        for (const BodyPoint& seat : seatsOf(*piece)) {
            const double away = std::hypot(seat.at_mm.x - lamp.x, seat.at_mm.y - lamp.y);
            if (away >= nearest.away_mm) continue;
            nearest = {piece, shoulder(*piece, seat.at_mm, lamp), away};
        }
    return nearest;
}

/// Whether one reads by it: it stands there, or its name says so.
bool isReadBy(const plan::Luminaire& lamp) {
    using Kind = plan::Luminaire::Kind;
    return lamp.kind == Kind::Floor || lamp.kind == Kind::Table ||
           (lamp.kind == Kind::Wall && lamp.name.find("read") != std::string::npos);
}

/// From a seat to what works a lamp: the nearest of its switches in the room, or the lamp itself where it has
/// its own. Infinity when nothing there works it.
double reachOf(const Facts& facts, const plan::Luminaire& lamp, Vec3 lamp_at, Vec3 seat) {
    using Kind = plan::Luminaire::Kind;
    double reach = std::numeric_limits<double>::infinity();
    for (const plan::SwitchLeg* leg : facts.legsOf(lamp.id))
        for (const plan::WayRef& control : leg->controls) {
            const Point* point = facts.point(control.plate);
            if (point == nullptr || point->plate->room != lamp.room) continue;
            if (const auto at = geometry::hostPoint(facts.house(), lamp.room, point->plate->host))
                reach = std::min(reach, length(*at - seat));
        }
    if (!lamp.own_switch && lamp.kind != Kind::Floor && lamp.kind != Kind::Table) return reach;
    // The switch of a standard lamp is on its stem.
    if (lamp.kind == Kind::Floor) lamp_at.z = seat.z;
    return std::min(reach, length(lamp_at - seat));
}
} // namespace

void findSeats(const Facts& facts, const plan::Room& room, Findings& findings) {
    const double limit = facts.limit("sofaReach");
    for (const plan::Luminaire* lamp : facts.lampsIn(room.id)) {
        const auto at = geometry::hostPoint(facts.house(), room.id, lamp->host);
        if (limit <= 0 || !at || !isReadBy(*lamp)) continue;
        const Seat seat = seatBy(facts, room, *at);
        if (seat.piece == nullptr) continue;
        const double reach = reachOf(facts, *lamp, *at, seat.at_mm);
        if (reach <= limit || !std::isfinite(reach)) continue;
        plan::Finding finding;
        finding.rule = "sofa-reach";
        finding.severity = Severity::Hint;
        finding.objects = {lamp->id, seat.piece->id};
        finding.value_mm = reach;
        finding.limit_mm = limit;
        finding.place_mm = *at;
        finding.gap = plan::Gap{seat.at_mm, *at};
        finding.message = fmt::format("The switch of {} in {} is {:.0f} mm from {}, {} is within reach.",
                                      lamp->tag.empty() ? lamp->id : lamp->tag, roomName(facts, room.id),
                                      reach, pieceName(*seat.piece), mm(limit));
        finding.source = facts.source("sofaReach");
        finding.remedy = "Bring the lamp or its switch nearer to the seat.";
        findings.push_back(std::move(finding));
    }
}

void findBeds(const Facts& facts, const plan::Room& room, Findings& findings) {
    if (facts.limit("bedReach") <= 0) return;
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        if (piece->kind == "bed") findBed(facts, room, *piece, findings);
        if (piece->kind == "bunk-bed") findBunk(facts, room, *piece, findings);
    }
}

} // namespace gangway::checks
