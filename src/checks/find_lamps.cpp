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

std::vector<Row> rowsOf(const Facts& facts) {
    std::map<std::string, std::string, std::less<>> leg_of;
    for (const plan::SwitchLeg& leg : facts.plan().legs)
        for (const std::string& lamp : leg.luminaires)
            leg_of.emplace(lamp, leg.id);
    std::vector<Row> rows;
    std::map<std::string, std::size_t, std::less<>> at;
    for (const plan::Luminaire& lamp : facts.plan().luminaires) {
        if (lamp.kind != plan::Luminaire::Kind::Pendant) continue;
        const auto leg = leg_of.find(lamp.id);
        const std::string key = lamp.room + '\n' + (leg == leg_of.end() ? "lamp " + lamp.id : leg->second);
        const auto [found, is_new] = at.emplace(key, rows.size());
        if (is_new) rows.emplace_back();
        rows[found->second].lamps.push_back(&lamp);
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

void findPendants(const Facts& facts, Findings& findings) {
    for (const Row& row : rowsOf(facts))
        for (const plan::Furniture* piece : facts.house().furnitureIn(row.lamps.front()->room)) {
            if (std::ranges::find(kUnderPendants, piece->kind) == kUnderPendants.end() ||
                piece->size.height_mm < kTableMm)
                continue;
            const double off = length(row.middle_mm - piece->at_mm);
            if (off <= facts.limit("centreOff") || off > kMeantMm) continue;
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

void findWallLamps(const Facts& facts, Findings& findings) {
    for (const plan::Luminaire& lamp : facts.plan().luminaires) {
        if (lamp.host.kind != plan::Host::Kind::Wall) continue;
        const auto frame = geometry::hostFrame(facts.house(), lamp.room, lamp.host);
        if (!frame) continue;
        findBedside(facts, lamp, *frame, findings);
        findOver(facts, lamp, *frame, findings);
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

void findLamps(const Facts& facts, Findings& findings) {
    findPendants(facts, findings);
    findWallLamps(facts, findings);
    for (const plan::Furniture& piece : facts.plan().furniture)
        if (piece.kind == "fan") findFan(facts, piece, findings);
}

} // namespace gangway::checks
