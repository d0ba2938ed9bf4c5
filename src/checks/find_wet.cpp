// Bath and shower zones: what stands in them, how it is protected, and sockets nearer than the pack allows.
#include "checks/rules.hpp"
#include "checks/wet_zones.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::checks {

using plan::Severity;

namespace {
/// Whose word a zone is.
const std::string& sourceOf(const Facts& facts, const WetZone& zone, const WetShell& shell) {
    if (zone.shell(1) == nullptr) return facts.source("wetBasin");
    return facts.source(shell.number == 3 ? "wetZone3" : shell.number == 2 ? "wetZone2" : "wetZone1Top");
}

/// "zone 2 of bath"
std::string zoneOf(const WetZone& zone, const WetShell& shell) {
    return fmt::format("zone {} of {}", shell.number, pieceName(*zone.piece));
}

bool isShaver(const Point& point) {
    return std::ranges::any_of(point.plate->modules, [](const plan::Module& module) {
        return module.type.find("shaver") != std::string::npos;
    });
}

double farthest(const plan::Room& room, const WetZone& zone) {
    double most = 0;
    for (const plan::Vec2 corner : room.outline)
        most = std::max(most, fromZone1(zone, corner));
    return most;
}

/// Beneath the bath's floor, where a panel may close it off.
bool isUnder(const WetZone& zone, plan::Vec3 at) {
    const WetShell* inner = zone.shell(0);
    return zone.piece->kind == "bath" && inner != nullptr && at.z < inner->bottom_mm &&
           fromZone1(zone, {at.x, at.y}) == 0;
}

void sayInZone(const Facts& facts, const WetZone& zone, const WetShell& shell, const Point& point,
               plan::Vec3 at, Findings& findings) {
    auto finding = about(facts, "wet-zone", Severity::Fault, point);
    const double away = fromZone1(zone, {at.x, at.y});
    finding.objects.push_back(zone.piece->id);
    finding.value_mm = away;
    finding.limit_mm = std::max(shell.reach_mm, 0.0);
    finding.message = fmt::format("{} is in {}", whoIn(facts, point), zoneOf(zone, shell));
    finding.message += shell.number < 2 ? "."
                                        : fmt::format(", {} mm from {}.", mm(away),
                                                      zone.shell(1) == nullptr ? "it" : "zone 1");
    finding.source = sourceOf(facts, zone, shell);
    finding.remedy = "No socket or switch in the zones: another wall, or outside the room.";
    if (isUnder(zone, at))
        finding.remedy += " Behind a panel that only a tool opens some countries count no zone under a bath; "
                          "others allow nothing there.";
    findings.push_back(std::move(finding));
}

std::string fartherPlace(const plan::Room& room, const WetZone& zone, double wanted) {
    const double most = farthest(room, zone);
    return most < wanted ? fmt::format("No place in this room is far enough: the farthest is {} mm away.",
                                       mm(std::floor(most)))
                         : "Another wall, further from the bath or shower.";
}

/// An ordinary socket, outside zones 0 to 2, that is nearer than the country wants it.
void findNear(const Facts& facts, const plan::Room& room, const WetZone& zone, const Point& point,
              plan::Vec3 at, Findings& findings) {
    const double wanted = facts.limit("wetSocket");
    const double top = facts.limit("wetSocketTop");
    const double away = fromZone1(zone, {at.x, at.y});
    if (away >= wanted || (top > 0 && at.z - zone.rim_mm > top) || zone.shell(1) == nullptr) return;
    auto finding = about(facts, "wet-socket", Severity::Fault, point);
    finding.objects.push_back(zone.piece->id);
    finding.value_mm = away;
    finding.limit_mm = wanted;
    finding.message = fmt::format("{} is an ordinary socket {} mm from zone 1 of {}, {} wanted.",
                                  whoIn(facts, point), mm(away), pieceName(*zone.piece), mm(wanted));
    finding.source = facts.source("wetSocket");
    finding.remedy = fartherPlace(room, zone, wanted);
    findings.push_back(std::move(finding));
}

void findLow(const Facts& facts, const WetZone& zone, const WetShell& shell, const Point& point,
             plan::Vec3 at, Findings& findings) {
    const double lowest = facts.limit("wetZone3Low");
    if (shell.number != 3 || at.z >= lowest) return;
    auto finding = about(facts, "wet-socket", Severity::Warn, point);
    finding.objects.push_back(zone.piece->id);
    finding.value_mm = at.z;
    finding.limit_mm = lowest;
    finding.message = fmt::format("{} is a socket {} mm above the floor in {}, {} wanted.",
                                  whoIn(facts, point), mm(at.z), zoneOf(zone, shell), mm(lowest));
    finding.source = facts.source("wetZone3Low");
    finding.remedy = fmt::format("At least {} above the floor, or on a circuit whose residual current device "
                                 "the electrician names for it.",
                                 mm(lowest));
    findings.push_back(std::move(finding));
}

/// The second digit of a degree of protection, the highest of "IP65/IP67"; nullopt when none can be read.
std::optional<int> waterDigit(const std::string& ip) {
    std::optional<int> digit;
    for (std::size_t at = ip.find("IP"); at != std::string::npos; at = ip.find("IP", at + 2)) {
        if (at + 3 >= ip.size() || ip[at + 3] < '0' || ip[at + 3] > '9') continue;
        digit = std::max(digit.value_or(0), ip[at + 3] - '0');
    }
    return digit;
}

/// A finding about what is mounted in a zone with too low a degree of protection, or none stated: that is a
/// hint of the rule `unstated`.
std::optional<plan::Finding> protection(const Facts& facts, const WetZone& zone, const WetShell& shell,
                                        const std::string& ip, const char* unstated, const std::string& who) {
    if (shell.number > 2) return std::nullopt;
    const std::string limit = fmt::format("ipZone{}", shell.number);
    const int wanted = static_cast<int>(facts.limit(limit));
    const auto stated = waterDigit(ip);
    if (stated && *stated >= wanted) return std::nullopt;
    plan::Finding finding;
    finding.rule = stated ? "ip-needed" : unstated;
    finding.severity = stated ? Severity::Fault : Severity::Hint;
    finding.message = fmt::format("{} is in {}", who, zoneOf(zone, shell));
    finding.message += wanted == 0 ? ": it has to be listed for such a place."
                       : stated    ? fmt::format(": {} is stated, at least IPX{} is wanted.", ip, wanted)
                                   : fmt::format(": at least IPX{} is wanted, none is stated.", wanted);
    finding.source = facts.source(limit);
    finding.remedy = wanted == 0
                         ? "One that its maker lists for it, or another place."
                         : "One that its maker rates for the zone, with its degree stated, or another place.";
    return finding;
}

void findPoint(const Facts& facts, const plan::Room& room, const WetZone& zone, const Point& point,
               Findings& findings) {
    const auto at = geometry::hostPoint(facts.house(), room.id, point.plate->host);
    if (!at) return;
    const WetShell* shell = shellAt(zone, *at);
    // A shaver unit (BS EN 61558-2-5) may be in zone 2 (BS 7671, 701.512.3, 4.10 C).
    const bool barred = point.control || (point.socket && !(isShaver(point) && shell && shell->number == 2));
    if (shell != nullptr && shell->number < 3 && barred)
        return sayInZone(facts, zone, *shell, point, *at, findings);
    if (point.socket && !isShaver(point)) {
        findNear(facts, room, zone, point, *at, findings);
        if (shell != nullptr) findLow(facts, zone, *shell, point, *at, findings);
    }
    const bool live = std::ranges::any_of(point.made.gangs, [](const catalogue::Gang& gang) {
        return gang.module != nullptr && gang.module->kind != catalogue::ModuleKind::Blank;
    });
    if (shell == nullptr || !live) return;
    if (auto finding = protection(facts, zone, *shell, point.plate->ip, "ip-needed", whoIn(facts, point))) {
        finding->objects = {point.plate->id, zone.piece->id};
        finding->place_mm = *at;
        findings.push_back(std::move(*finding));
    }
}

/// A mirror cabinet that is fed is an appliance: how much of it lies in zone 2.
void findCabinet(const Facts& facts, const WetZone& zone, const plan::Furniture& piece, Findings& findings) {
    if (piece.kind != "mirror-cabinet") return;
    constexpr int kSteps = 400;
    int wet = 0;
    int zone_number = 2;
    for (int i = 0; i < kSteps; ++i) {
        const double x = piece.size.width_mm * ((i + 0.5) / kSteps - 0.5);
        const plan::Vec3 at = geometry::fromLocal(piece, plan::Vec3{x, piece.size.depth_mm / 2, 0});
        const WetShell* shell = shellAt(zone, at);
        if (shell == nullptr || shell->number > 2) continue;
        ++wet;
        zone_number = std::min(zone_number, shell->number);
    }
    if (wet == 0) return;
    plan::Finding finding;
    finding.rule = "wet-appliance";
    finding.severity = Severity::Warn;
    finding.objects = {piece.id, zone.piece->id};
    finding.value_mm = piece.size.width_mm * wet / kSteps;
    finding.limit_mm = 0;
    finding.place_mm = plan::Vec3{piece.at_mm.x, piece.at_mm.y, piece.bottom_mm};
    finding.message = fmt::format("{} of the {} mm of {} in {} lie in zone {} of {}.", mm(*finding.value_mm),
                                  mm(piece.size.width_mm), pieceName(piece), roomName(facts, piece.room),
                                  zone_number, pieceName(*zone.piece));
    finding.source = facts.source(zone.shell(1) == nullptr ? "wetBasin" : "wetZone2");
    finding.remedy =
        fmt::format("A cabinet whose maker rates it for the zone (at least IPX{}), or one without "
                    "electricity.",
                    mm(facts.limit("ipZone2")));
    findings.push_back(std::move(finding));
}

std::string lampName(const plan::Luminaire& lamp) {
    return lamp.tag.empty() ? lamp.id : lamp.tag;
}

/// Hanging lamps and fans keep away from the bath as far as sockets do, where a pack says so.
void findHanging(const Facts& facts, const WetZone& zone, const std::string& id, const std::string& who,
                 plan::Vec3 lowest, Findings& findings) {
    const double wanted = facts.limit("wetPendant");
    const double away = fromZone1(zone, {lowest.x, lowest.y});
    const double top = facts.limit("wetSocketTop");
    if (away >= wanted || (top > 0 && lowest.z - zone.rim_mm > top) || zone.shell(1) == nullptr) return;
    plan::Finding finding;
    finding.rule = "wet-lamp";
    finding.severity = Severity::Fault;
    finding.objects = {id, zone.piece->id};
    finding.value_mm = away;
    finding.limit_mm = wanted;
    finding.place_mm = lowest;
    finding.message =
        fmt::format("{} hangs {} mm from {}, {} wanted.", who, mm(away), pieceName(*zone.piece), mm(wanted));
    finding.source = facts.source("wetPendant");
    finding.remedy = "Another place, or a lamp close to the ceiling that is listed for it.";
    findings.push_back(std::move(finding));
}

void findLamp(const Facts& facts, const WetZone& zone, const plan::Luminaire& lamp, Findings& findings) {
    auto at = geometry::hostPoint(facts.house(), lamp.room, lamp.host);
    if (!at) return;
    const bool hangs = lamp.kind == plan::Luminaire::Kind::Pendant;
    if (hangs) at->z -= lamp.drop_mm;
    const std::string who = fmt::format("{} in {}", lampName(lamp), roomName(facts, lamp.room));
    if (hangs) findHanging(facts, zone, lamp.id, who, *at, findings);
    const WetShell* shell = shellAt(zone, *at);
    if (shell == nullptr) return;
    auto finding = protection(facts, zone, *shell, lamp.ip, "wet-lamp", who);
    if (!finding) return;
    finding->objects = {lamp.id, zone.piece->id};
    finding->place_mm = *at;
    findings.push_back(std::move(*finding));
}

void findPieces(const Facts& facts, const plan::Room& room, const WetZone& zone, Findings& findings) {
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        findCabinet(facts, zone, *piece, findings);
        if (piece->kind == "fan")
            findHanging(facts, zone, piece->id,
                        fmt::format("{} in {}", pieceName(*piece), roomName(facts, room.id)),
                        {piece->at_mm.x, piece->at_mm.y, piece->bottom_mm}, findings);
    }
}
} // namespace

void findWet(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const WetZone& zone : wetZones(facts.house(), facts.pack(), room.id)) {
        for (const Point* point : facts.pointsIn(room.id))
            findPoint(facts, room, zone, *point, findings);
        findPieces(facts, room, zone, findings);
        for (const plan::Luminaire* lamp : facts.lampsIn(room.id))
            findLamp(facts, zone, *lamp, findings);
    }
}

} // namespace gangway::checks
