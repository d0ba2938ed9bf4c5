// Comfort: what a hand and an eye are used to. This file: motors, cooker switches, worktops, robot docks.
#include "checks/comfort.hpp"
#include "checks/standing.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace gangway::checks {

using plan::Severity;
using plan::Vec2;
using plan::Vec3;

namespace {
/// Both side boards of a cupboard, as they are drawn.
constexpr double kSidesMm = 36;
/// A place before the wall that is over a worktop when the plate is.
constexpr double kBeforeWallMm = 50;

double toPiece(const plan::Furniture& piece, Vec2 at) {
    const auto outline = geometry::footprint(piece);
    return geometry::insidePolygon(outline, at) ? 0 : toOutline(outline, at);
}

bool hasWord(std::string text, std::string_view word) {
    std::ranges::transform(text, text.begin(), [](unsigned char c) { return std::tolower(c); });
    return text.find(word) != std::string::npos;
}

bool isCooker(const plan::Furniture& piece) {
    return piece.kind == "hob" || piece.kind == "oven" ||
           (piece.kind == "tall-unit" && plan::furnitureValue(piece, "ovenBottom") > 0);
}

/// The cooker that a plate switches: its own anchor, or that of a plate in its room which it works.
const plan::Furniture* cookerOf(const Facts& facts, const Point& point) {
    const auto cooker = [&](const std::string& id) -> const plan::Furniture* {
        const plan::Furniture* piece = facts.house().furniture(id);
        return piece != nullptr && isCooker(*piece) ? piece : nullptr;
    };
    if (const plan::Furniture* own = cooker(point.plate->anchor)) return own;
    for (const WorkedWay& way : facts.waysOf(point.plate->id))
        for (const std::string& id : way.leg->plates)
            if (const Point* fed = facts.point(id); fed != nullptr && fed->plate->room == point.plate->room)
                if (const plan::Furniture* piece = cooker(fed->plate->anchor)) return piece;
    return nullptr;
}
} // namespace

void findMotors(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const Point* point : facts.pointsIn(room.id)) {
        const plan::Furniture* piece = facts.house().furniture(point->plate->anchor);
        const auto at = geometry::hostPoint(facts.house(), room.id, point->plate->host);
        if (piece == nullptr || !at || point->control) continue;
        const int motor = static_cast<int>(plan::furnitureValue(*piece, "motor"));
        if (motor == 0) continue;
        const double half = piece->size.width_mm / 2;
        const double end = motor == 2 ? half : -half;
        const double away = std::abs(geometry::toLocal(*piece, *at).x - end);
        if (away <= half) continue;
        auto finding = about(facts, "motor-side", Severity::Warn, *point);
        finding.objects.push_back(piece->id);
        finding.value_mm = away;
        finding.limit_mm = half;
        Vec3 motor_at = geometry::fromLocal(*piece, Vec3{end, 0, 0});
        motor_at.z = at->z;
        finding.gap = plan::Gap{*at, motor_at};
        finding.message =
            fmt::format("{} is at the wrong end of {}: its motor is at the {}, {} mm away.",
                        whoIn(facts, *point), pieceName(*piece), motor == 2 ? "right" : "left", mm(away));
        finding.source = "motor power on the motor's side (C12); common practice, no source";
        finding.remedy = fmt::format("Move it to the {} end, beside the drawn-back curtain.",
                                     motor == 2 ? "right" : "left");
        findings.push_back(std::move(finding));
    }
}

void findCookers(const Facts& facts, const plan::Room& room, Findings& findings) {
    const double far = facts.limit("cookerFar");
    for (const Point* point : facts.pointsIn(room.id)) {
        const plan::Furniture* piece = far > 0 && point->control ? cookerOf(facts, *point) : nullptr;
        const auto at = geometry::hostPoint(facts.house(), room.id, point->plate->host);
        if (piece == nullptr || !at) continue;
        const double away = toPiece(*piece, {at->x, at->y});
        if (away <= far) continue;
        auto finding = about(facts, "cooker-switch", Severity::Warn, *point);
        finding.objects.push_back(piece->id);
        finding.value_mm = away;
        finding.limit_mm = far;
        finding.gap = plan::Gap{*at, {piece->at_mm.x, piece->at_mm.y, at->z}};
        finding.message = fmt::format("{} switches {} and is {} mm from it, at most {} wanted.",
                                      whoIn(facts, *point), pieceName(*piece), mm(away), mm(far));
        finding.source = facts.source("cookerFar");
        finding.remedy = "Move the switch nearer to what it switches.";
        findings.push_back(std::move(finding));
    }
}

namespace {
/// The worktop that a plate is over: the highest below it; nullptr for none.
const plan::Furniture* worktopUnder(const Facts& facts, const plan::Room& room, Vec2 foot, double v) {
    const plan::Furniture* highest = nullptr;
    double top = -std::numeric_limits<double>::infinity();
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        const double rises = piece->bottom_mm + piece->size.height_mm;
        if (rises > v || rises <= top || piece->kind == "rug" ||
            !geometry::insidePolygon(geometry::footprint(*piece), foot))
            continue;
        top = rises;
        highest = piece;
    }
    const bool works = highest != nullptr &&
                       (highest->kind == "worktop" || plan::furnitureValue(*highest, "worktopThickness") > 0);
    return works ? highest : nullptr;
}

void findWorktops(const Facts& facts, const plan::Room& room, Findings& findings) {
    const double high = facts.limit("worktopHigh");
    for (const Point* point : facts.pointsIn(room.id)) {
        const plan::Host& host = point->plate->host;
        if (high <= 0 || !point->socket || isPutAway(*point->plate) || host.kind != plan::Host::Kind::Wall)
            continue;
        const auto frame = geometry::hostFrame(facts.house(), room.id, host);
        if (!frame) continue;
        const Vec3 foot = geometry::toHouse(*frame, {host.u_mm, host.v_mm, kBeforeWallMm});
        const plan::Furniture* piece = worktopUnder(facts, room, {foot.x, foot.y}, host.v_mm);
        if (piece == nullptr) continue;
        const double top = piece->bottom_mm + piece->size.height_mm;
        if (host.v_mm - top <= high + 1e-6) continue;
        auto finding = about(facts, "worktop-high", Severity::Hint, *point);
        finding.objects.push_back(piece->id);
        finding.value_mm = host.v_mm - top;
        finding.limit_mm = high;
        finding.gap = plan::Gap{{foot.x, foot.y, top}, foot};
        finding.message =
            fmt::format("{} is {} mm above {}, at most {} wanted: the lead hangs down.", whoIn(facts, *point),
                        mm(*finding.value_mm), pieceName(*piece), mm(high));
        finding.source = facts.source("worktopHigh");
        finding.remedy = fmt::format("Set it at {} mm or lower.", mm(top + high));
        findings.push_back(std::move(finding));
    }
}

/// The width free in the piece that a dock stands in.
double nicheWidth(const plan::Furniture& piece) {
    return piece.size.width_mm - (standingOf(piece) == Standing::Cupboard ? kSidesMm : 0);
}

void findNiche(const Facts& facts, const plan::Device& dock, Findings& findings) {
    const plan::Furniture* piece = facts.house().furniture(dock.furniture);
    const double wanted = facts.limit("dockWidth");
    if (piece == nullptr || nicheWidth(*piece) >= wanted) return;
    plan::Finding finding;
    finding.rule = "robot-dock";
    finding.severity = Severity::Hint;
    finding.objects = {dock.id, piece->id};
    finding.value_mm = nicheWidth(*piece);
    finding.limit_mm = wanted;
    finding.place_mm = dock.lead_exit_mm;
    finding.message =
        fmt::format("{} in {}: {} is {} mm wide inside, {} wanted.", dock.name, roomName(facts, dock.room),
                    pieceName(*piece), mm(*finding.value_mm), mm(wanted));
    finding.source = facts.source("dockWidth");
    finding.remedy = "A wider niche, or the dock stands free.";
    findings.push_back(std::move(finding));
}

void findDock(const Facts& facts, const plan::Device& dock, const Point& point, Findings& findings) {
    const auto at = geometry::hostPoint(facts.house(), point.plate->room, point.plate->host);
    const double wanted = facts.limit("dockReach");
    if (!at || wanted <= 0) return;
    const double away = length(*at - dock.lead_exit_mm);
    if (away <= wanted) return;
    auto finding = about(facts, "robot-dock", Severity::Hint, point);
    finding.objects.push_back(dock.id);
    finding.value_mm = away;
    finding.limit_mm = wanted;
    finding.gap = plan::Gap{*at, dock.lead_exit_mm};
    finding.message = fmt::format("{} is {:.0f} mm from {}, at most {} wanted.", whoIn(facts, point), away,
                                  dock.name, mm(wanted));
    finding.source = facts.source("dockReach");
    finding.remedy = "A socket beside the dock: its lead lies where the robot drives.";
    findings.push_back(std::move(finding));
}
} // namespace

void findDocks(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const plan::Device* device : facts.devicesIn(room.id)) {
        if (!hasWord(device->name, "robot")) continue;
        findNiche(facts, *device, findings);
        const Point* point = facts.point(device->plate);
        if (point != nullptr && point->plate->room == room.id) findDock(facts, *device, *point, findings);
    }
}

void findComfort(const Facts& facts, const plan::Room& room, Findings& findings) {
    findBeds(facts, room, findings);
    findSeats(facts, room, findings);
    findBanks(facts, room, findings);
    findMotors(facts, room, findings);
    findCookers(facts, room, findings);
    findWorktops(facts, room, findings);
    findDocks(facts, room, findings);
    findRows(facts, room, findings);
    findUnitLamps(facts, room, findings);
    findMeshes(facts, room, findings);
}

} // namespace gangway::checks
