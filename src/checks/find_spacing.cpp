// Sockets along walls and worktops, at islands and basins: NEC 210.52 by the numbers of the country's pack.
#include "checks/counts.hpp"
#include "checks/spacing.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::checks {

using plan::RoomUse;
using plan::Severity;

namespace {
/// Feet and inches are not exact in binary.
constexpr double kExactMm = 1e-6;
constexpr double kMm2PerM2 = 1e6;

std::optional<plan::Vec3> houseAt(const plan::Room& room, const Perimeter& perimeter, double along_mm,
                                  double height_mm) {
    if (room.outline.size() < 3) return std::nullopt;
    const Perimeter::Place place = perimeter.placeAt(along_mm);
    return geometry::toHouse(geometry::wallFrame(room, place.wall), {place.u_mm, height_mm, 0});
}

/// The uncovered place of a run, and the socket nearest to it.
void showFarthest(const plan::Room& room, const PlacedRun& placed, const Farthest& farthest, double height_mm,
                  plan::Finding& finding) {
    const Perimeter perimeter(room);
    finding.place_mm = houseAt(room, perimeter, placed.start_mm + farthest.at_mm, height_mm);
    const auto nearest = std::ranges::min_element(placed.run.sockets_mm, {},
                                                  [&](double at) { return std::abs(at - farthest.at_mm); });
    if (nearest == placed.run.sockets_mm.end() || !finding.place_mm) return;
    const auto socket = houseAt(room, perimeter, placed.start_mm + *nearest, height_mm);
    if (socket) finding.gap = plan::Gap{*finding.place_mm, *socket};
}

struct Spacing {
    const char *rule, *what, *reach, *least;
    double height_mm; ///< at which it is shown
};

/// The worst run of a room against a reach to both sides of each socket; one line a room.
void findSpacing(const Facts& facts, const plan::Room& room, const std::vector<PlacedRun>& runs,
                 const Spacing& rule, Findings& findings) {
    const double reach = facts.limit(rule.reach);
    const PlacedRun* worst = nullptr;
    Farthest farthest;
    int wrong = 0;
    for (const PlacedRun& placed : runs) {
        const int needed = socketsNeeded(placed.run.length_mm, facts.limit(rule.least), reach);
        const Farthest far = farthestPoint(placed.run);
        const bool none = placed.run.sockets_mm.empty();
        if (needed == 0 || (!none && far.distance_mm <= reach + kExactMm)) continue;
        ++wrong;
        if (worst != nullptr && far.distance_mm <= farthest.distance_mm) continue;
        worst = &placed;
        farthest = far;
    }
    if (worst == nullptr) return;
    const int needed = socketsNeeded(worst->run.length_mm, facts.limit(rule.least), reach);
    const int there = static_cast<int>(worst->run.sockets_mm.size());
    auto finding = aboutRoom(rule.rule, severityBy(facts.pack().limit(rule.reach).grade), room);
    finding.value_mm = farthest.distance_mm;
    finding.limit_mm = reach;
    finding.message = fmt::format(
        "{}: {} of {} mm without a break {}; {} mm to both sides of each is asked for, so {} at least{}.",
        roomWords(room), rule.what, mm(worst->run.length_mm),
        there == 0 ? std::string("has no socket")
                   : fmt::format("has {}, its farthest point {} mm from one",
                                 plural(there, "socket", "sockets"), mm(farthest.distance_mm)),
        mm(reach), needed, wrong > 1 ? fmt::format(" ({} such stretches)", wrong) : "");
    finding.source = facts.source(rule.reach);
    finding.remedy = "Put a socket where the gap is widest.";
    showFarthest(room, *worst, farthest, rule.height_mm, finding);
    findings.push_back(std::move(finding));
}

/// 210.52(A): kitchen, family, dining and living rooms, bedrooms and the like; 210.52(C): kitchens and the
/// like.
bool isLivedIn(RoomUse use) {
    return use == RoomUse::Living || use == RoomUse::Dining || use == RoomUse::Kitchen ||
           use == RoomUse::Bedroom || use == RoomUse::Child || use == RoomUse::Study;
}

void findIslands(const Facts& facts, const plan::Room& room, Findings& findings) {
    const double first = facts.limit("islandFirst");
    const bool provide = facts.limit("islandProvision") > 0;
    if (first <= 0 && !provide) return;
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        if (piece->kind != "island") continue;
        int there = 0;
        for (const Point* point : facts.pointsIn(room.id))
            if (point->plate->host.kind == plan::Host::Kind::Furniture &&
                point->plate->host.furniture == piece->id)
                there += outletsOf(*point, true);
        const double area = piece->size.width_mm * piece->size.depth_mm / kMm2PerM2;
        const int needed = islandSocketsNeeded(area, first, facts.limit("islandNext"));
        const bool asked = there < needed;
        if (!asked && (!provide || there > 0)) continue;
        const char* limit = asked ? "islandFirst" : "islandProvision";
        auto finding = aboutRoom("counter-spacing",
                                 asked ? severityBy(facts.pack().limit(limit).grade) : Severity::Hint, room);
        finding.objects.insert(finding.objects.begin(), piece->id);
        finding.message =
            asked ? fmt::format("{} in {} has {} for its {:.2f} m2, at least {}.", pieceName(*piece),
                                roomWords(room), plural(there, "socket", "sockets"), area, needed)
                  : fmt::format("{} in {} has no socket: it is made ready for one to come.",
                                pieceName(*piece), roomWords(room));
        finding.source = facts.source(limit);
        finding.remedy = asked ? fmt::format("Add {} at it.", plural(needed - there, "socket", "sockets"))
                               : "Lead a cable or an empty tube to it, and say so on the sheet.";
        finding.place_mm = plan::Vec3{piece->at_mm.x, piece->at_mm.y, piece->size.height_mm};
        findings.push_back(std::move(finding));
    }
}

/// The basin's own outline: of a vanity unit the basin in its top.
std::vector<plan::Vec2> basinOf(const plan::Furniture& piece) {
    if (piece.kind != "vanity") return geometry::footprint(piece);
    const double half = plan::furnitureValue(piece, "basinWidth") / 2;
    const double offset = plan::furnitureValue(piece, "basinOffset");
    std::vector<plan::Vec2> outline;
    for (const auto& [x, y] : {std::pair{-1, -1}, std::pair{-1, 1}, std::pair{1, 1}, std::pair{1, -1}}) {
        const plan::Vec3 at =
            geometry::fromLocal(piece, plan::Vec3{offset + x * half, y * piece.size.depth_mm / 2, 0});
        outline.push_back({at.x, at.y});
    }
    return outline;
}

/// On plan, from a basin's outer edge to the nearest socket.
std::optional<double> nearestSocket(const Facts& facts, const plan::Room& room,
                                    const plan::Furniture& basin) {
    const std::vector<plan::Vec2> outline = basinOf(basin);
    std::optional<double> nearest;
    for (const Point* point : facts.pointsIn(room.id)) {
        if (!point->socket) continue;
        const auto at = geometry::hostPoint(facts.house(), room.id, point->plate->host);
        if (!at) continue;
        const plan::Vec2 place{at->x, at->y};
        const double away = geometry::insidePolygon(outline, place) ? 0 : toOutline(outline, place);
        nearest = std::min(nearest.value_or(away), away);
    }
    return nearest;
}

void findBasins(const Facts& facts, const plan::Room& room, Findings& findings) {
    const double reach = facts.limit("basinReach");
    if (reach <= 0 || room.use != RoomUse::Bathroom) return;
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
        if (piece->kind != "basin" && piece->kind != "vanity") continue;
        const auto nearest = nearestSocket(facts, room, *piece);
        if (nearest && *nearest <= reach + kExactMm) continue;
        auto finding = aboutRoom("basin-reach", severityBy(facts.pack().limit("basinReach").grade), room);
        finding.objects.insert(finding.objects.begin(), piece->id);
        finding.value_mm = nearest;
        finding.limit_mm = reach;
        finding.message = fmt::format(
            "{} in {} has no socket within {} mm of its edge{}.", pieceName(*piece), roomWords(room),
            mm(reach), nearest ? fmt::format("; the nearest is {} mm away", mm(*nearest)) : "");
        finding.source = facts.source("basinReach");
        finding.remedy = "Put one beside it, outside the zones of bath and shower.";
        finding.place_mm = plan::Vec3{piece->at_mm.x, piece->at_mm.y, piece->size.height_mm};
        findings.push_back(std::move(finding));
    }
}
} // namespace

void findSpacings(const Facts& facts, const plan::Room& room, Findings& findings) {
    if (facts.limit("spacingReach") > 0 && isLivedIn(room.use))
        findSpacing(facts, room, wallRuns(facts, room),
                    {"wall-spacing", "a wall line", "spacingReach", "spacingLeast", 300}, findings);
    const bool cooks = room.use == RoomUse::Kitchen || room.use == RoomUse::Dining;
    if (facts.limit("counterReach") > 0 && cooks) {
        const double high = facts.limit("counterHigh") > 0 ? facts.limit("counterHigh") : highOverTop(facts);
        findSpacing(facts, room, counterRuns(facts, room, true, high),
                    {"counter-spacing", "a worktop", "counterReach", "counterLeast", 1000}, findings);
    }
    if (cooks) findIslands(facts, room, findings);
    findBasins(facts, room, findings);
}

} // namespace gangway::checks
