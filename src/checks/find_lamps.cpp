// Lamps: over the middle of what they belong to, clear of what hangs beside them, clear of fans.
#include "checks/rules.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <limits>
#include <map>

namespace gangway::checks {

using plan::Severity;

namespace {
/// A lamp further from the middle than this is not meant to be there; common practice, no source.
constexpr double kMeantMm = 350;
/// Lower ones are moved about; common practice, no source.
constexpr double kTableMm = 600;
/// What a long lamp is high, which the plan does not say; common practice, no source.
constexpr double kLongLampMm = 60;
/// A board no further behind a bed than this is its headboard; common practice, no source.
constexpr double kHeadboardMm = 200;
constexpr std::array<std::string_view, 2> kUnderPendants = {"table", "island"};

plan::Finding aboutLamp(const Facts& facts, std::string rule, Severity severity,
                        const plan::Luminaire& lamp) {
    plan::Finding finding;
    finding.rule = std::move(rule);
    finding.severity = severity;
    finding.objects = {lamp.id};
    if (const auto at = geometry::hostPoint(facts.house(), lamp.room, lamp.host)) finding.place_mm = *at;
    return finding;
}

std::string lampIn(const Facts& facts, const plan::Luminaire& lamp) {
    return fmt::format("{} in {}", lamp.tag.empty() ? lamp.id : lamp.tag, roomName(facts, lamp.room));
}

std::optional<plan::Vec2> onPlan(const Facts& facts, const plan::Luminaire& lamp) {
    const auto at = geometry::hostPoint(facts.house(), lamp.room, lamp.host);
    if (!at) return std::nullopt;
    return plan::Vec2{at->x, at->y};
}

/// Pendants of one leg in one room are one row.
struct Row {
    std::vector<const plan::Luminaire*> lamps;
    plan::Vec2 middle_mm;
};

std::vector<Row> rowsOf(const Facts& facts, const plan::Room& room) {
    std::vector<Row> rows;
    std::map<std::string, std::size_t, std::less<>> at;
    for (const plan::Luminaire* lamp : facts.lampsIn(room.id)) {
        if (lamp->kind != plan::Luminaire::Kind::Pendant) continue;
        const auto& legs = facts.legsOf(lamp->id);
        const auto [found, is_new] =
            at.emplace(legs.empty() ? "lamp " + lamp->id : legs.front()->id, rows.size());
        if (is_new) rows.emplace_back();
        rows[found->second].lamps.push_back(lamp);
    }
    for (Row& row : rows) {
        std::size_t count = 0;
        for (const plan::Luminaire* lamp : row.lamps)
            if (const auto place = onPlan(facts, *lamp)) {
                row.middle_mm = row.middle_mm + *place;
                ++count;
            }
        if (count > 0) row.middle_mm = row.middle_mm * (1.0 / static_cast<double>(count));
    }
    return rows;
}

/// Whether a row belongs to a piece: near its middle, or half of it still hangs over it.
bool isMeantFor(const Facts& facts, const Row& row, const plan::Furniture& piece) {
    if (length(row.middle_mm - piece.at_mm) <= kMeantMm) return true;
    const auto outline = geometry::footprint(piece);
    const auto over = std::ranges::count_if(row.lamps, [&](const plan::Luminaire* lamp) {
        const auto at = onPlan(facts, *lamp);
        return at && geometry::insidePolygon(outline, *at);
    });
    return 2 * over >= static_cast<std::ptrdiff_t>(row.lamps.size());
}

void findPendants(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const Row& row : rowsOf(facts, room))
        for (const plan::Furniture* piece : facts.house().furnitureIn(room.id)) {
            if (std::ranges::find(kUnderPendants, piece->kind) == kUnderPendants.end() ||
                piece->size.height_mm < kTableMm)
                continue;
            const double off = length(row.middle_mm - piece->at_mm);
            if (off <= facts.limit("centreOff") || !isMeantFor(facts, row, *piece)) continue;
            auto finding = aboutLamp(facts, "off-centre", Severity::Warn, *row.lamps.front());
            for (std::size_t i = 1; i < row.lamps.size(); ++i)
                finding.objects.push_back(row.lamps[i]->id);
            finding.objects.push_back(piece->id);
            finding.value_mm = off;
            finding.limit_mm = facts.limit("centreOff");
            finding.message =
                fmt::format("{}{} {} {} mm off the middle of {}.", lampIn(facts, *row.lamps.front()),
                            row.lamps.size() > 1 ? " and the others of its row" : "",
                            row.lamps.size() > 1 ? "are" : "is", mm(off), pieceName(*piece));
            finding.source = facts.source("centreOff");
            finding.remedy = fmt::format("Move {} over its middle, or move it.",
                                         row.lamps.size() > 1 ? "the row" : "the lamp");
            findings.push_back(std::move(finding));
        }
}

void findBedside(const Facts& facts, const plan::Luminaire& lamp, const geometry::Frame& frame,
                 Findings& findings) {
    for (const plan::Furniture* piece : facts.house().furnitureIn(lamp.room)) {
        if (piece->kind != "bedside-table") continue;
        const plan::Vec3 at = geometry::toFrame(frame, {piece->at_mm.x, piece->at_mm.y, 0});
        const double off = std::abs(at.x - lamp.host.u_mm);
        if (at.z < 0 || at.z > 600 || off <= facts.limit("centreOff") || off > kMeantMm) continue;
        auto finding = aboutLamp(facts, "off-centre", Severity::Warn, lamp);
        finding.objects.push_back(piece->id);
        finding.value_mm = off;
        finding.limit_mm = facts.limit("centreOff");
        finding.message =
            fmt::format("{} is {} mm off the middle of {}.", lampIn(facts, lamp), mm(off), pieceName(*piece));
        finding.source = facts.source("centreOff");
        finding.remedy = fmt::format("Move it to {} mm from the left corner.", mm(at.x));
        findings.push_back(std::move(finding));
    }
}

/// Beside a bed a lamp is read by from the pillow, and dazzles when it is low (C35).
void findBedsideHeight(const Facts& facts, const plan::Luminaire& lamp, const geometry::Frame& frame,
                       Findings& findings) {
    const bool beside =
        std::ranges::any_of(facts.house().furnitureIn(lamp.room), [&](const plan::Furniture* piece) {
            const plan::Vec3 at = geometry::toFrame(frame, {piece->at_mm.x, piece->at_mm.y, 0});
            return piece->kind == "bedside-table" && at.z >= 0 && at.z <= kTableMm &&
                   std::abs(at.x - lamp.host.u_mm) <= kMeantMm;
        });
    const double low = facts.limit("bedLampLow");
    const double high = facts.limit("bedLampHigh");
    const double v = lamp.host.v_mm;
    if (!beside || high <= 0 || (v >= low && v <= high)) return;
    auto finding = aboutLamp(facts, "bedside-lamp", Severity::Hint, lamp);
    finding.value_mm = v;
    finding.limit_mm = v < low ? low : high;
    finding.message = fmt::format("{} beside a bed is {} mm above the floor, {} to {} wanted.",
                                  lampIn(facts, lamp), mm(v), mm(low), mm(high));
    finding.source = facts.source("bedLampLow");
    finding.remedy = fmt::format("Set it at {} mm.", mm(*finding.limit_mm));
    findings.push_back(std::move(finding));
}

/// Over a headboard a lamp keeps clear of heads that lean there (C35).
void findHeadboard(const Facts& facts, const plan::Luminaire& lamp, const geometry::Obstacle& obstacle,
                   Findings& findings) {
    const auto [left, right] = std::ranges::minmax(obstacle.outline_mm, {}, &plan::Vec2::x);
    const double top = std::ranges::max(obstacle.outline_mm, {}, &plan::Vec2::y).y;
    const double over = lamp.host.v_mm - lamp.size_mm / 2 - top;
    const double wanted = facts.limit("headboardClear");
    if (lamp.host.u_mm < left.x || lamp.host.u_mm > right.x || over < 0 || over >= wanted) return;
    auto finding = aboutLamp(facts, "bedside-lamp", Severity::Hint, lamp);
    finding.objects.push_back(obstacle.piece->id);
    finding.value_mm = over;
    finding.limit_mm = wanted;
    finding.message = fmt::format("{} is {} mm over {}, {} wanted: a head leans there.", lampIn(facts, lamp),
                                  mm(over), pieceName(*obstacle.piece), mm(wanted));
    finding.source = facts.source("headboardClear");
    finding.remedy = fmt::format("Set it {} mm higher.", mm(wanted - over));
    findings.push_back(std::move(finding));
}

/// A bed's own headboard, or a board of its own behind a bed.
bool isHeadboard(const Facts& facts, const geometry::Obstacle& obstacle) {
    if (obstacle.piece->kind == "bed") return obstacle.solid == "headboard";
    if (obstacle.piece->kind != "box") return false;
    return std::ranges::any_of(
        facts.house().furnitureIn(obstacle.piece->room), [&](const plan::Furniture* bed) {
            if (bed->kind != "bed") return false;
            const plan::Vec3 at =
                geometry::toLocal(*bed, {obstacle.piece->at_mm.x, obstacle.piece->at_mm.y, 0});
            const double behind = at.y - bed->size.depth_mm / 2;
            return behind >= 0 && behind <= kHeadboardMm && std::abs(at.x) < bed->size.width_mm / 2;
        });
}

void findOver(const Facts& facts, const plan::Luminaire& lamp, const geometry::Frame& frame,
              Findings& findings) {
    if (lamp.size_mm <= 0) return;
    const bool is_long =
        lamp.kind == plan::Luminaire::Kind::Linear || lamp.kind == plan::Luminaire::Kind::UnderUnit;
    const plan::Vec2 half{lamp.size_mm / 2, (is_long ? kLongLampMm : lamp.size_mm) / 2};
    constexpr double kReachMm = 120; // what stands out as far as a wall lamp does
    std::string said;
    for (const geometry::Obstacle& obstacle :
         geometry::obstaclesBefore(facts.house(), lamp.room, frame, kReachMm, {}, facts.base())) {
        if (isHeadboard(facts, obstacle)) findHeadboard(facts, lamp, obstacle, findings);
        if (obstacle.piece->id == said || obstacle.piece->kind == "curtain") continue;
        Bar bar;
        bar.area_mm = obstacle.outline_mm;
        const double gap = gapTo(bar, half, {lamp.host.u_mm, lamp.host.v_mm});
        if (gap >= -1e-6) continue;
        said = obstacle.piece->id;
        auto finding = aboutLamp(facts, "lamp-overlap", Severity::Warn, lamp);
        finding.objects.push_back(obstacle.piece->id);
        finding.value_mm = -gap;
        finding.limit_mm = 0;
        finding.message = fmt::format("{} is {} mm wide and reaches {} mm over {}.", lampIn(facts, lamp),
                                      mm(lamp.size_mm), mm(-gap), pieceName(*obstacle.piece));
        finding.source = "geometry of the plan";
        finding.remedy = fmt::format("Move it {} mm further away.", mm(-gap));
        findings.push_back(std::move(finding));
    }
}

void findWallLamps(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const plan::Luminaire* lamp : facts.lampsIn(room.id)) {
        if (lamp->host.kind != plan::Host::Kind::Wall) continue;
        const auto frame = geometry::hostFrame(facts.house(), room.id, lamp->host);
        if (!frame) continue;
        findBedside(facts, *lamp, *frame, findings);
        findBedsideHeight(facts, *lamp, *frame, findings);
        findOver(facts, *lamp, *frame, findings);
    }
}

void findFan(const Facts& facts, const plan::Furniture& fan, Findings& findings) {
    const double tip = std::max(fan.size.width_mm, fan.size.depth_mm) / 2;
    const double wanted = facts.limit("fanTip");
    const auto say = [&](const std::string& id, const std::string& name, double gap, plan::Vec2 at) {
        plan::Finding finding;
        finding.rule = "fan-tip";
        finding.severity = Severity::Warn;
        finding.objects = {id, fan.id};
        finding.value_mm = gap;
        finding.limit_mm = wanted;
        finding.place_mm = plan::Vec3{at.x, at.y, fan.bottom_mm};
        finding.message = fmt::format("{} is {} mm from the blade tips of {}, {} wanted.", name, mm(gap),
                                      pieceName(fan), mm(wanted));
        finding.source = facts.source("fanTip");
        finding.remedy = "A smaller fan, or another place for one of them.";
        findings.push_back(std::move(finding));
    };
    for (const plan::Furniture* piece : facts.house().furnitureIn(fan.room))
        if (piece->kind == "bunk-bed") { // in others one lies far below the blades
            const double gap = toOutline(geometry::footprint(*piece), fan.at_mm) - tip;
            if (gap < wanted)
                say(piece->id, fmt::format("{} in {}", pieceName(*piece), roomName(facts, fan.room)), gap,
                    piece->at_mm);
        }
    for (const plan::Luminaire* lamp : facts.lampsIn(fan.room)) {
        if (lamp->host.kind != plan::Host::Kind::Ceiling) continue;
        const auto at = onPlan(facts, *lamp);
        if (!at) continue;
        const double gap = length(*at - fan.at_mm) - tip;
        if (gap < wanted) say(lamp->id, lampIn(facts, *lamp), gap, *at);
    }
}
} // namespace

void findLamps(const Facts& facts, const plan::Room& room, Findings& findings) {
    findPendants(facts, room, findings);
    findWallLamps(facts, room, findings);
    for (const plan::Furniture* piece : facts.house().furnitureIn(room.id))
        if (piece->kind == "fan") findFan(facts, *piece, findings);
}

} // namespace gangway::checks
