// Rows of lamps with equal distances, and downlights before wall units.
#include "checks/comfort.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>

namespace gangway::checks {

using plan::Luminaire;
using plan::Severity;
using plan::Vec2;
using plan::Vec3;

namespace {
/// Lamps off one line by no more than this are one row; common practice, no source.
constexpr double kOneLineMm = 20;
/// Distances that differ by more than this are not meant to be equal; common practice, no source.
constexpr double kMeantEqualMm = 150;
/// A downlight further before a unit's front than this lights the room; common practice, no source.
constexpr double kBeforeUnitMm = 700;

struct Hung {
    const Luminaire* lamp = nullptr;
    Vec2 at_mm;
};

/// Lamps of one kind and one leg on the ceiling of a room.
std::vector<std::vector<Hung>> groupsOf(const Facts& facts, const plan::Room& room) {
    std::map<std::pair<Luminaire::Kind, std::string>, std::vector<Hung>> groups;
    for (const Luminaire* lamp : facts.lampsIn(room.id)) {
        if (lamp->host.kind != plan::Host::Kind::Ceiling) continue;
        const auto at = geometry::hostPoint(facts.house(), room.id, lamp->host);
        if (!at) continue;
        const auto& legs = facts.legsOf(lamp->id);
        groups[{lamp->kind, legs.empty() ? std::string() : legs.front()->id}].push_back(
            {lamp, {at->x, at->y}});
    }
    std::vector<std::vector<Hung>> list;
    for (auto& [key, lamps] : groups)
        list.push_back(std::move(lamps));
    return list;
}

void sayUnequal(const Facts& facts, const plan::Room& room, const std::vector<Hung>& row,
                const std::vector<double>& gaps, Findings& findings) {
    const auto [least, most] = std::ranges::minmax(gaps);
    const double spread = most - least;
    if (spread <= facts.limit("equalSpacing") || spread > kMeantEqualMm) return;
    plan::Finding finding;
    finding.rule = "lamp-spacing";
    finding.severity = Severity::Hint;
    std::string names;
    for (const Hung& hung : row) {
        finding.objects.push_back(hung.lamp->id);
        names += (names.empty() ? "" : ", ") + (hung.lamp->tag.empty() ? hung.lamp->id : hung.lamp->tag);
    }
    finding.value_mm = spread;
    finding.limit_mm = facts.limit("equalSpacing");
    finding.place_mm = Vec3{row.front().at_mm.x, row.front().at_mm.y, 0};
    finding.message =
        fmt::format("The distances in a row of lamps in {} differ by {} mm, between {} and {}: {}.",
                    roomName(facts, room.id), mm(spread), mm(least), mm(most), names);
    finding.source = facts.source("equalSpacing");
    finding.remedy =
        fmt::format("{} mm from each to the next.",
                    mm(length(row.back().at_mm - row.front().at_mm) / static_cast<double>(gaps.size())));
    findings.push_back(std::move(finding));
}

/// Rows along one direction of the house: `along` the coordinate that runs, `across` the one that stays.
void findAlong(const Facts& facts, const plan::Room& room, std::vector<Hung> lamps, double Vec2::* along,
               double Vec2::* across, Findings& findings) {
    std::ranges::stable_sort(lamps, {}, [&](const Hung& hung) { return hung.at_mm.*across; });
    for (std::size_t first = 0; first < lamps.size();) {
        std::size_t last = first + 1;
        while (last < lamps.size() && lamps[last].at_mm.*across - lamps[first].at_mm.*across <= kOneLineMm)
            ++last;
        std::vector<Hung> row(lamps.begin() + static_cast<std::ptrdiff_t>(first),
                              lamps.begin() + static_cast<std::ptrdiff_t>(last));
        first = last;
        if (row.size() < 3) continue;
        std::ranges::stable_sort(row, {}, [&](const Hung& hung) { return hung.at_mm.*along; });
        std::vector<double> gaps;
        for (std::size_t i = 1; i < row.size(); ++i)
            gaps.push_back(row[i].at_mm.*along - row[i - 1].at_mm.*along);
        sayUnequal(facts, room, row, gaps, findings);
    }
}

void findBefore(const Facts& facts, const Luminaire& lamp, Vec3 at, const plan::Furniture& unit,
                Findings& findings) {
    const Vec3 local = geometry::toLocal(unit, at);
    const double before = -unit.size.depth_mm / 2 - local.y;
    if (std::abs(local.x) > unit.size.width_mm / 2 || before > kBeforeUnitMm || before < -unit.size.depth_mm)
        return;
    const double near = facts.limit("unitLampNear");
    const double far = facts.limit("unitLampFar");
    if (before >= near && before <= far) return;
    plan::Finding finding;
    finding.rule = "unit-lamp";
    finding.severity = Severity::Hint;
    finding.objects = {lamp.id, unit.id};
    finding.value_mm = before;
    finding.limit_mm = before < near ? near : far;
    finding.place_mm = at;
    finding.message = fmt::format(
        "{} in {} is {} mm {} the front of {}, {} to {} wanted{}.", lamp.tag.empty() ? lamp.id : lamp.tag,
        roomName(facts, lamp.room), mm(std::abs(before)), before < 0 ? "behind" : "before", pieceName(unit),
        mm(near), mm(far), before < near ? ": it lights the unit and not the worktop" : "");
    finding.source = facts.source("unitLampNear");
    finding.remedy = "Move it over the front edge of the worktop.";
    findings.push_back(std::move(finding));
}
} // namespace

void findRows(const Facts& facts, const plan::Room& room, Findings& findings) {
    if (facts.lampsIn(room.id).size() < 3) return;
    for (const auto& lamps : groupsOf(facts, room)) {
        findAlong(facts, room, lamps, &Vec2::x, &Vec2::y, findings);
        findAlong(facts, room, lamps, &Vec2::y, &Vec2::x, findings);
    }
}

void findUnitLamps(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const plan::Furniture* unit : facts.house().furnitureIn(room.id)) {
        if (unit->kind != "wall-unit") continue;
        for (const Luminaire* lamp : facts.lampsIn(room.id)) {
            if (lamp->kind != Luminaire::Kind::Recessed || lamp->host.kind != plan::Host::Kind::Ceiling)
                continue;
            if (const auto at = geometry::hostPoint(facts.house(), room.id, lamp->host))
                findBefore(facts, *lamp, *at, *unit, findings);
        }
    }
}

} // namespace gangway::checks
