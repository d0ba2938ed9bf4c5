// Numbers of outlets by room.
#include "checks/counts.hpp"
#include "checks/spacing.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>

namespace gangway::checks {

using catalogue::OutletCount;
using plan::Severity;

namespace {
/// Feet and inches are not exact in binary.
constexpr double kExactMm = 1e-6;
constexpr double kExactM2 = 1e-9;
constexpr double kMm2PerM2 = 1e6;

double areaOf(const plan::Room& room) {
    double area = std::abs(geometry::signedArea(room.outline));
    for (const auto& column : room.columns)
        area -= std::abs(geometry::signedArea(column));
    return area / kMm2PerM2;
}

/// Of the box round the room.
double longSideOf(const plan::Room& room) {
    const auto [west, east] = std::ranges::minmax(room.outline, {}, &plan::Vec2::x);
    const auto [south, north] = std::ranges::minmax(room.outline, {}, &plan::Vec2::y);
    return std::max(east.x - west.x, north.y - south.y);
}

bool applies(const OutletCount& count, const Facts& facts, const plan::Room& room) {
    if (count.use != room.use || (count.main && *count.main != room.main)) return false;
    const double area = areaOf(room);
    if (area <= count.area_from_m2 + kExactM2 || area > count.area_to_m2 + kExactM2) return false;
    if (count.length_from_mm > 0 && longSideOf(room) < count.length_from_mm - kExactMm) return false;
    return !count.unless || std::ranges::none_of(facts.plan().rooms, [&](const plan::Room& other) {
        return other.use == *count.unless;
    });
}

int leastOf(const OutletCount& count, const plan::Room& room) {
    if (count.per_m2 <= 0) return count.least;
    return std::max(count.least, static_cast<int>(std::ceil(areaOf(room) / count.per_m2 - kExactM2)));
}

/// Always taken by a machine, so that nothing else is plugged in there.
bool isForAppliance(const plan::Plate& plate) {
    return plate.use == plan::UseRate::LeftPlugged && plate.sight == plan::Sight::KeepHidden;
}

int lightsIn(const Facts& facts, const plan::Room& room) {
    using Kind = plan::Luminaire::Kind;
    const auto& lamps = facts.lampsIn(room.id);
    return static_cast<int>(std::ranges::count_if(lamps, [](const plan::Luminaire* lamp) {
        return lamp->kind != Kind::Floor && lamp->kind != Kind::Table && lamp->kind != Kind::UnderUnit;
    }));
}

int countOf(const OutletCount& count, const Facts& facts, const plan::Room& room) {
    if (count.which == OutletCount::Which::Lighting) return lightsIn(facts, room);
    const bool by_place = count.which != OutletCount::Which::Any;
    const std::vector<Top> tops = by_place ? topsAlong(facts, room) : std::vector<Top>{};
    int counted = 0;
    for (const Point* point : facts.pointsIn(room.id)) {
        if (count.beyond_appliances && isForAppliance(*point->plate)) continue;
        const bool over = topUnder(tops, room, *point, highOverTop(facts)) != nullptr;
        if (count.which == OutletCount::Which::AboveWorktop && !over) continue;
        if (count.which == OutletCount::Which::NotAboveWorktop && over) continue;
        counted += outletsOf(*point, count.double_is_one);
    }
    return counted;
}

const char* wordsOf(OutletCount::Which which, bool one) {
    switch (which) {
    case OutletCount::Which::Lighting:
        return one ? "light" : "lights";
    case OutletCount::Which::AboveWorktop:
        return one ? "outlet over the worktop" : "outlets over the worktop";
    case OutletCount::Which::NotAboveWorktop:
        return one ? "outlet away from the worktop" : "outlets away from the worktop";
    case OutletCount::Which::Any:
        break;
    }
    return one ? "outlet" : "outlets";
}

/// Of each kind of outlet the row that asks for most.
std::map<OutletCount::Which, const OutletCount*> rowsFor(const Facts& facts, const plan::Room& room) {
    std::map<OutletCount::Which, const OutletCount*> rows;
    for (const OutletCount& count : facts.pack().outlets) {
        if (!applies(count, facts, room)) continue;
        const OutletCount*& row = rows[count.which];
        if (row == nullptr || leastOf(count, room) > leastOf(*row, room)) row = &count;
    }
    return rows;
}
} // namespace

Severity severityBy(catalogue::Grade grade) {
    return grade <= catalogue::Grade::Trade ? Severity::Warn : Severity::Hint;
}

plan::Finding aboutRoom(std::string rule, Severity severity, const plan::Room& room) {
    plan::Finding finding;
    finding.rule = std::move(rule);
    finding.severity = severity;
    finding.objects = {room.id};
    return finding;
}

std::string roomWords(const plan::Room& room) {
    return room.name.empty() ? room.id : room.name;
}

std::string plural(int number, const char* one, const char* more) {
    return fmt::format("{} {}", number, number == 1 ? one : more);
}

int outletsOf(const Point& point, bool double_is_one) {
    int outlets = 0;
    for (const catalogue::Gang& gang : point.made.gangs)
        if (gang.module != nullptr && gang.module->kind == catalogue::ModuleKind::Socket)
            outlets += double_is_one ? std::min(gang.module->outlets, 1) : gang.module->outlets;
    return outlets;
}

/// What hangs higher over a worktop does not serve it; common practice, no source, where the pack says none.
double highOverTop(const Facts& facts) {
    constexpr double kHighMm = 500;
    const double high = facts.limit("worktopHigh");
    return high > 0 ? high : kHighMm;
}

/// One line a room, whatever it has too few of.
void findNumbers(const Facts& facts, const plan::Room& room, Findings& findings) {
    std::optional<plan::Finding> finding;
    for (const auto& [which, row] : rowsFor(facts, room)) {
        const int counted = countOf(*row, facts, room);
        const int least = leastOf(*row, room);
        if (counted >= least) continue;
        const std::string said =
            fmt::format("{} {}, at least {}", counted, wordsOf(which, counted == 1), least);
        const std::string add =
            fmt::format("{} more {}", least - counted, wordsOf(which, least - counted == 1));
        if (!finding) {
            finding = aboutRoom(row->length_from_mm > 0 ? "hall-outlet" : "outlet-count",
                                severityBy(row->grade), room);
            finding->message = fmt::format("{} has {}", roomWords(room), said);
            finding->source = row->source;
            finding->remedy = fmt::format("Add {}", add);
        } else {
            finding->severity = std::max(finding->severity, severityBy(row->grade));
            finding->message += fmt::format("; {}", said);
            finding->remedy += fmt::format(", {}", add);
            if (finding->source != row->source) finding->source += fmt::format("; {}", row->source);
        }
    }
    if (!finding) return;
    finding->message += ".";
    finding->remedy += ", or accept it with what is used there.";
    findings.push_back(std::move(*finding));
}

void findCounts(const Facts& facts, const plan::Room& room, Findings& findings) {
    if (room.outline.size() < 3) return;
    findNumbers(facts, room, findings);
    findSpacings(facts, room, findings);
    findWorktop(facts, room, findings);
}

} // namespace gangway::checks
