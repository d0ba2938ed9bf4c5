#include "checks/wet_zones.hpp"

#include "checks/rules.hpp"
#include "geometry/house_index.hpp"
#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::checks {

using plan::furnitureValue;
using plan::Vec2;

namespace {
constexpr double kOnEdgeMm = 1e-6;

/// A rectangle of a piece between local corners, clockwise.
std::vector<Vec2> rectangleOf(const plan::Furniture& piece, Vec2 low, Vec2 high) {
    std::vector<Vec2> outline;
    for (const Vec2 corner : {Vec2{low.x, high.y}, high, Vec2{high.x, low.y}, low}) {
        const plan::Vec3 at = geometry::fromLocal(piece, plan::Vec3{corner.x, corner.y, 0});
        outline.push_back({at.x, at.y});
    }
    return outline;
}

/// Panes of a shower's own glass stand on the tray's edges.
void addGlass(const plan::Furniture& shower, double top_mm, std::vector<Partition>& partitions) {
    const auto sides = static_cast<int>(std::lround(furnitureValue(shower, "screenSides")));
    if (sides == 0 || shower.bottom_mm + furnitureValue(shower, "screenHeight") < top_mm) return;
    const Vec2 half{shower.size.width_mm / 2, shower.size.depth_mm / 2};
    const auto corners =
        rectangleOf(shower, half * -1, half); // back left, back right, front right, front left
    partitions.push_back({corners[3], corners[2]});
    if (sides == 2) partitions.push_back({corners[0], corners[3]});
    if (sides == 3) partitions.push_back({corners[1], corners[2]});
}

/// A screen counts when it goes from the floor, or from the rim that it stands on, to the top of the zones.
bool closes(const plan::Furniture& screen, const WetZone& zone, double top_mm) {
    if (screen.bottom_mm + screen.size.height_mm < top_mm) return false;
    const bool on_rim =
        zone.outline_mm.size() > 1 && (geometry::insidePolygon(zone.outline_mm, screen.at_mm) ||
                                       toOutline(zone.outline_mm, screen.at_mm) <= screen.size.depth_mm);
    return screen.bottom_mm <= (on_rim ? zone.rim_mm : 0);
}

std::vector<Partition> partitionsFor(const geometry::HouseIndex& house, const WetZone& zone,
                                     const std::string& room_id) {
    double top = 0;
    for (const WetShell& shell : zone.shells)
        top = std::max(top, shell.top_mm);
    std::vector<Partition> partitions;
    for (const plan::Furniture* piece : house.furnitureIn(room_id)) {
        if (piece->kind == "shower") addGlass(*piece, top, partitions);
        if (piece->kind != "shower-screen" || !closes(*piece, zone, top)) continue;
        const auto line = rectangleOf(*piece, {-piece->size.width_mm / 2, 0}, {piece->size.width_mm / 2, 0});
        partitions.push_back({line[0], line[1]});
    }
    return partitions;
}

/// Where the water stands: the floor of the bath's bowl or the tray's (geometry/bath_kinds.cpp).
double basinFloor(const plan::Furniture& piece) {
    if (piece.kind == "bath")
        return piece.bottom_mm + std::max(piece.size.height_mm - furnitureValue(piece, "bowlDepth"), 0.0);
    return piece.bottom_mm + furnitureValue(piece, "trayHeight") / 2;
}

std::vector<WetShell> shellsOf(const plan::Furniture& piece, const catalogue::CountryPack& pack,
                               const WetZone& zone, bool basin) {
    const auto limit = [&](const char* id) { return pack.limit(id).value; };
    const double from = basin && limit("wetFromTray") > 0 ? basinFloor(piece) : 0;
    const double top = std::max(from + limit("wetZone1Top"), furnitureValue(piece, "headHeight"));
    const double top2 = limit("wetZone2Top") > 0 ? limit("wetZone2Top") : top;
    std::vector<WetShell> shells;
    // The wall that a basin stands against is not in it.
    const double edge = piece.kind == "bath" ? furnitureValue(piece, "rimWidth") : 1;
    if (basin)
        shells.push_back({0, -edge, basinFloor(piece), zone.rim_mm});
    else if (limit("wetZone0") > 0)
        shells.push_back({0, 0, 0, limit("wetZone0")});
    shells.push_back({1, 0, 0, top});
    const double zone2 = basin ? limit("wetZone2") : 0; // 701.30: none there, zone 1 reaches further
    if (zone2 > 0) shells.push_back({2, zone2, 0, top2});
    if (limit("wetZone3") > 0) shells.push_back({3, zone2 + limit("wetZone3"), 0, top});
    return shells;
}

void addBathOrShower(const plan::Furniture& piece, const catalogue::CountryPack& pack, WetZone& zone) {
    const bool basin =
        piece.kind == "bath" || furnitureValue(piece, "trayHeight") >= pack.limit("wetTray").value;
    zone.rim_mm =
        piece.bottom_mm + (piece.kind == "bath" ? piece.size.height_mm : furnitureValue(piece, "trayHeight"));
    zone.outline_mm = geometry::footprint(piece);
    if (!basin && pack.limit("wetNoTray").value > 0) {
        zone.outline_mm = {piece.at_mm}; // the outlet stands for the piece's middle
        zone.radius_mm = pack.limit("wetNoTray").value;
    }
    zone.shells = shellsOf(piece, pack, zone, basin);
}

void addWashBasin(const plan::Furniture& piece, const catalogue::CountryPack& pack, WetZone& zone) {
    zone.rim_mm = piece.bottom_mm + piece.size.height_mm;
    zone.outline_mm = geometry::footprint(piece);
    if (piece.kind == "vanity") {
        const double middle = furnitureValue(piece, "basinOffset");
        const double half = std::min(furnitureValue(piece, "basinWidth"), piece.size.width_mm) / 2;
        zone.outline_mm = rectangleOf(piece, {middle - half, -piece.size.depth_mm / 2},
                                      {middle + half, piece.size.depth_mm / 2});
    }
    zone.shells = {{2, pack.limit("wetBasin").value, 0, zone.rim_mm + pack.limit("wetBasinTop").value}};
}

double deepInside(const std::vector<Vec2>& outline, Vec2 at) {
    return outline.size() > 2 && geometry::insidePolygon(outline, at) ? toOutline(outline, at) : 0;
}

/// From the edge of zone 1, less than 0 inside the basin.
double signedFromZone1(const WetZone& zone, Vec2 at) {
    const double away = fromZone1(zone, at);
    return away > kOnEdgeMm ? away : -deepInside(zone.outline_mm, at);
}

bool reaches(const WetShell& shell, double away_mm) {
    return shell.reach_mm > 0 ? away_mm < shell.reach_mm : away_mm <= shell.reach_mm + kOnEdgeMm;
}
} // namespace

const WetShell* WetZone::shell(int number) const {
    const auto found = std::ranges::find(shells, number, &WetShell::number);
    return found == shells.end() ? nullptr : &*found;
}

std::vector<WetZone> wetZones(const geometry::HouseIndex& house, const catalogue::CountryPack& pack,
                              const std::string& room_id) {
    std::vector<WetZone> zones;
    const plan::Room* room = house.room(room_id);
    if (room == nullptr) return zones;
    const bool round_basins = pack.limit("wetBasin").value > 0;
    for (const plan::Furniture* piece : house.furnitureIn(room_id)) {
        const bool wash = round_basins && (piece->kind == "basin" || piece->kind == "vanity");
        if (piece->kind != "bath" && piece->kind != "shower" && !wash) continue;
        WetZone zone{piece, {}, 0, 0, {}, TautString(*room, {piece->at_mm}, {})};
        if (wash)
            addWashBasin(*piece, pack, zone);
        else
            addBathOrShower(*piece, pack, zone);
        zone.string = TautString(*room, zone.outline_mm, partitionsFor(house, zone, room_id));
        zones.push_back(std::move(zone));
    }
    return zones;
}

double fromZone1(const WetZone& zone, Vec2 at_mm) {
    double away = zone.string.to(at_mm);
    if (std::isinf(away))
        away = geometry::insidePolygon(zone.outline_mm, at_mm) ? 0 : toOutline(zone.outline_mm, at_mm);
    return std::max(0.0, away - zone.radius_mm);
}

const WetShell* shellAt(const WetZone& zone, plan::Vec3 at_mm) {
    const double away = signedFromZone1(zone, {at_mm.x, at_mm.y});
    for (const WetShell& shell : zone.shells)
        if (reaches(shell, away) && at_mm.z >= shell.bottom_mm && at_mm.z <= shell.top_mm) return &shell;
    return nullptr;
}

} // namespace gangway::checks
