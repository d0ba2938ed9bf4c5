// Bath and shower zones: what stands in them, and sockets nearer to them than the pack allows.
#include "checks/rules.hpp"
#include "checks/wet_zones.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace gangway::checks {

using plan::Severity;

namespace {
constexpr const char* kZoneSource =
    "zones of IEC 60364-7-701, from memory; the country's own edition decides";
/// A tray lower than this is level with the floor, and the water goes further.
constexpr double kTrayMm = 20;

} // namespace

std::vector<WetZone> wetZones(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                              const std::string& room_id) {
    std::vector<WetZone> zones;
    for (const plan::Furniture* piece : house.furnitureIn(room_id)) {
        if (piece->kind != "bath" && piece->kind != "shower") continue;
        WetZone zone{piece, geometry::footprint(*piece), 0, pack.limit("wetZone1Top").value,
                     pack.limit("wetZone2").value};
        if (piece->kind == "shower" && plan::furnitureValue(*piece, "trayHeight") < kTrayMm) {
            zone.radius_mm = pack.limit("wetNoTray").value;
            zone.zone2_mm = 0; // IEC 60364-7-701: no zone 2 there, zone 1 reaches further
        }
        zones.push_back(std::move(zone));
    }
    return zones;
}

double fromZone1(const WetZone& zone, plan::Vec2 at_mm) {
    if (zone.radius_mm > 0) return std::max(0.0, length(at_mm - zone.piece->at_mm) - zone.radius_mm);
    return geometry::insidePolygon(zone.outline_mm, at_mm) ? 0 : toOutline(zone.outline_mm, at_mm);
}

WetPlace placeIn(const WetZone& zone, plan::Vec3 at_mm) {
    if (at_mm.z > zone.top_mm) return WetPlace::Outside;
    const double away = fromZone1(zone, {at_mm.x, at_mm.y});
    if (away <= 1e-6) return WetPlace::Zone1;
    return away < zone.zone2_mm ? WetPlace::Zone2 : WetPlace::Outside;
}

namespace {
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

void findPoint(const Facts& facts, const plan::Room& room, const WetZone& zone, const Point& point,
               Findings& findings) {
    const auto at = geometry::hostPoint(facts.house(), room.id, point.plate->host);
    if (!at || !(point.socket || point.control)) return;
    const WetPlace place = placeIn(zone, *at);
    const double away = fromZone1(zone, {at->x, at->y});
    if (place != WetPlace::Outside) {
        auto finding = about(facts, "wet-zone", Severity::Fault, point);
        finding.objects.push_back(zone.piece->id);
        finding.value_mm = away;
        finding.limit_mm = zone.zone2_mm;
        finding.message = fmt::format("{} is in zone {} of {}, {} mm from zone 1.", whoIn(facts, point),
                                      place == WetPlace::Zone1 ? 1 : 2, pieceName(*zone.piece), mm(away));
        finding.source = kZoneSource;
        finding.remedy = "No socket or switch in the zones: another wall, or outside the room.";
        findings.push_back(std::move(finding));
        return;
    }
    const double wanted = facts.limit("wetSocket");
    if (!point.socket || isShaver(point) || away >= wanted) return;
    auto finding = about(facts, "wet-socket", Severity::Fault, point);
    finding.objects.push_back(zone.piece->id);
    finding.value_mm = away;
    finding.limit_mm = wanted;
    finding.message = fmt::format("{} is an ordinary socket {} mm from zone 1 of {}, {} wanted.",
                                  whoIn(facts, point), mm(away), pieceName(*zone.piece), mm(wanted));
    finding.source = facts.source("wetSocket");
    const double most = farthest(room, zone);
    finding.remedy = most < wanted
                         ? fmt::format("No place in this room is far enough: the farthest is {} mm away.",
                                       mm(std::floor(most)))
                         : "Another wall, further from the bath or shower.";
    findings.push_back(std::move(finding));
}

/// A mirror cabinet that is fed is an appliance: how much of it lies in zone 2.
void findCabinet(const Facts& facts, const WetZone& zone, const plan::Furniture& piece, Findings& findings) {
    if (piece.kind != "mirror-cabinet" || piece.bottom_mm > zone.top_mm) return;
    constexpr int kSteps = 400;
    int wet = 0;
    for (int i = 0; i < kSteps; ++i) {
        const double x = piece.size.width_mm * ((i + 0.5) / kSteps - 0.5);
        const plan::Vec3 at = geometry::fromLocal(piece, plan::Vec3{x, piece.size.depth_mm / 2, 0});
        wet += placeIn(zone, at) == WetPlace::Outside ? 0 : 1;
    }
    if (wet == 0) return;
    plan::Finding finding;
    finding.rule = "wet-appliance";
    finding.severity = Severity::Warn;
    finding.objects = {piece.id, zone.piece->id};
    finding.value_mm = piece.size.width_mm * wet / kSteps;
    finding.limit_mm = 0;
    finding.place_mm = plan::Vec3{piece.at_mm.x, piece.at_mm.y, piece.bottom_mm};
    finding.message = fmt::format("{} of the {} mm of {} in {} lie in zone 2 of {}.", mm(*finding.value_mm),
                                  mm(piece.size.width_mm), pieceName(piece), roomName(facts, piece.room),
                                  pieceName(*zone.piece));
    finding.source = kZoneSource;
    finding.remedy =
        "A cabinet whose maker rates it for the zone (at least IPX4), or one without electricity.";
    findings.push_back(std::move(finding));
}

void findLamp(const Facts& facts, const WetZone& zone, const plan::Luminaire& lamp, Findings& findings) {
    const auto at = geometry::hostPoint(facts.house(), lamp.room, lamp.host);
    if (!at) return;
    const WetPlace place = placeIn(zone, *at);
    if (place == WetPlace::Outside) return;
    plan::Finding finding;
    finding.rule = "wet-lamp";
    finding.severity = Severity::Hint;
    finding.objects = {lamp.id, zone.piece->id};
    finding.value_mm = fromZone1(zone, {at->x, at->y});
    finding.limit_mm = zone.zone2_mm;
    finding.place_mm = *at;
    finding.message = fmt::format("{} in {} hangs in zone {} of {}: at least IPX4 is wanted.",
                                  lamp.tag.empty() ? lamp.id : lamp.tag, roomName(facts, lamp.room),
                                  place == WetPlace::Zone1 ? 1 : 2, pieceName(*zone.piece));
    finding.source = kZoneSource;
    finding.remedy = "A lamp that its maker rates for the zone, or another place.";
    findings.push_back(std::move(finding));
}
} // namespace

void findWet(const Facts& facts, Findings& findings) {
    for (const plan::Room& room : facts.plan().rooms)
        for (const WetZone& zone : wetZones(facts.house(), facts.pack(), room.id)) {
            for (const Point* point : facts.pointsIn(room.id))
                findPoint(facts, room, zone, *point, findings);
            for (const plan::Furniture* piece : facts.house().furnitureIn(room.id))
                findCabinet(facts, zone, *piece, findings);
            for (const plan::Luminaire* lamp : facts.lampsIn(room.id))
                findLamp(facts, zone, *lamp, findings);
        }
}

} // namespace gangway::checks
