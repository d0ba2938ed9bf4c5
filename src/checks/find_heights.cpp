// Heights: reach, rows that are meant to be one, tiles, and the supply window of mirror cabinets.
#include "checks/rules.hpp"
#include "checks/spacing.hpp"
#include "checks/stretches.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace gangway::checks {

using plan::Severity;

namespace {
/// Plates further apart than this along a wall are no row; common practice, no source.
constexpr double kRowMm = 1500;
constexpr double kSameMm = 0.5;
/// 48 x 25.4 is not exact in binary.
constexpr double kExactMm = 1e-6;
/// However high over a counter: one reaches over it.
constexpr double kFarUpMm = 5000;

/// Heights asked for, and the limits that say so; 0: not asked.
struct Band {
    double low_mm = 0;
    double high_mm = 0;
    const char* low = "";
    const char* high = "";
};

/// A place on a wall: the plate there, or where it might go.
struct Site {
    const plan::Room& room;
    std::size_t wall = 0;
    const Point& point;
};

bool sameKind(const Point& a, const Point& b) {
    return a.socket == b.socket && a.control == b.control && a.data == b.data;
}

/// Another plate of the kind in the row, at another height so little off that it is meant to be the same.
/// `earlier`: only those before it in the plan, so that of a pair one is named.
const Point* outOfRow(const Facts& facts, const Point& point, plan::Vec2 at_mm, bool earlier) {
    const double window = facts.limit("sameHeight");
    const Point* nearest = nullptr;
    for (const Point* other : facts.pointsOn(point.plate->room, point.plate->host.wall)) {
        if (other == &point || (earlier && other >= &point) || !sameKind(*other, point)) continue;
        const plan::Vec2 way = other->centre_mm() - at_mm;
        if (std::abs(way.x) > kRowMm || std::abs(way.y) <= kSameMm || std::abs(way.y) > window) continue;
        if (nearest == nullptr || std::abs(way.x) < std::abs(nearest->centre_mm().x - at_mm.x))
            nearest = other;
    }
    return nearest;
}

/// Whether a plate could go there without breaking anything: no bar, no fragile place, no lead too short, no
/// row that it drops out of.
bool isFree(const Facts& facts, const Site& site, plan::Vec2 at_mm) {
    plan::Plate plate = *site.point.plate;
    plate.host.u_mm = at_mm.x;
    plate.host.v_mm = at_mm.y;
    Point there = site.point;
    there.plate = &plate;
    const WallScene scene = sceneOf(facts, site.room, site.wall);
    const std::vector<Bar> bars = barsFor(facts, scene, there);
    const bool barred = std::ranges::any_of(
        bars, [&](const Bar& bar) { return playOf(bar, there.half_mm, at_mm) < -kExactMm; });
    const Margin margin = marginOf(bars, there.half_mm, at_mm, wholeWall(scene, there));
    const Interval reached = reachedByLeads(facts, scene, there);
    return !barred && (margin.bar == nullptr || margin.mm >= facts.limit("marginWarn")) &&
           reached.from_mm <= at_mm.x && at_mm.x <= reached.to_mm &&
           outOfRow(facts, site.point, at_mm, false) == nullptr;
}

/// Said as an edit where the place is free.
void proposeAt(const Facts& facts, const Site& site, plan::Vec2 at_mm, const std::string& how,
               plan::Finding& finding) {
    if (isFree(facts, site, at_mm)) {
        finding.remedy = how + ".";
        finding.move = plan::PlateMove{site.point.plate->id, at_mm.x, at_mm.y};
    } else {
        finding.remedy = how + ", once what is in the way there is moved, or put it on another wall.";
    }
}

/// Whether the plate is out of the band; then said.
bool findBand(const Facts& facts, const Site& site, const Band& band, Severity severity, Findings& findings) {
    const double v = site.point.plate->host.v_mm;
    const bool too_low = band.low_mm > 0 && v < band.low_mm - kExactMm;
    const bool too_high = band.high_mm > 0 && v > band.high_mm + kExactMm;
    if (!too_low && !too_high) return false;
    const double limit = too_low ? band.low_mm : band.high_mm;
    auto finding = about(facts, "reach", severity, site.point);
    finding.value_mm = v;
    finding.limit_mm = limit;
    finding.message =
        fmt::format("{} is {} mm above the floor, {} {} mm is asked for{}.", whoIn(facts, site.point), mm(v),
                    too_low ? "at least" : "at most", mm(limit),
                    severity == Severity::Warn ? " where seated and short people reach" : "");
    finding.source = facts.source(too_low ? band.low : band.high);
    // Whole millimetres are set out; towards the inside of the band.
    const double to = too_low ? std::ceil(limit - kExactMm) : std::floor(limit + kExactMm);
    proposeAt(facts, site, {site.point.plate->host.u_mm, to},
              fmt::format("{} it by {} mm, to {}", too_low ? "Raise" : "Lower", mm(std::abs(to - v)), mm(to)),
              finding);
    findings.push_back(std::move(finding));
    return true;
}

Band usualBand(const Facts& facts, const Point& point) {
    const auto own = [&](const char* control, const char* any) {
        return point.control && facts.limit(control) > 0 ? control : any;
    };
    Band band{0, 0, own("controlLow", "reachLow"), own("controlHigh", "reachHigh")};
    band.low_mm = facts.limit(band.low);
    band.high_mm = facts.limit(band.high);
    return band;
}

/// Over a counter the reach is shorter the deeper it is (ADA 2010, 308.2.2).
Band accessBand(const Facts& facts, const Top* counter) {
    Band band{facts.limit("accessLow"), facts.limit("accessHigh"), "accessLow", "accessHigh"};
    if (counter == nullptr || facts.limit("overNearDepth") <= 0) return band;
    const bool near = counter->depth_mm <= facts.limit("overNearDepth") + kExactMm;
    const char* over = near ? "overNearHigh" : "overFarHigh";
    if (band.high_mm <= 0 || facts.limit(over) < band.high_mm) {
        band.high_mm = facts.limit(over);
        band.high = over;
    }
    return band;
}

bool findBehindCounter(const Facts& facts, const Site& site, const Top* counter, Findings& findings) {
    const double deepest = facts.limit("overFarDepth");
    if (counter == nullptr || facts.limit("overNearDepth") <= 0 || counter->depth_mm <= deepest + kExactMm)
        return false;
    auto finding = about(facts, "reach", Severity::Warn, site.point);
    finding.value_mm = counter->depth_mm;
    finding.limit_mm = deepest;
    finding.message = fmt::format(
        "{} is behind a worktop {} mm deep: over more than {} mm nothing is in reach of who sits.",
        whoIn(facts, site.point), mm(counter->depth_mm), mm(deepest));
    finding.source = facts.source("overFarDepth");
    finding.remedy = "Put it at the worktop's front or side, or on another wall.";
    findings.push_back(std::move(finding));
    return true;
}

void findAccessCorner(const Facts& facts, const Site& site, Findings& findings) {
    const double gap = facts.limit("accessCorner");
    if (gap <= facts.limit("cornerGap")) return; // the bar of the corner says it
    const double length = geometry::wallFrame(site.room, site.wall).length_mm;
    const double u = site.point.plate->host.u_mm;
    for (const bool left : {true, false}) {
        const double away = left ? u : length - u;
        if (away >= gap - kExactMm || !insideCorner(site.room, site.wall, left)) continue;
        auto finding = about(facts, "corner-gap", Severity::Warn, site.point);
        finding.value_mm = away;
        finding.limit_mm = gap;
        finding.message =
            fmt::format("{} is {} mm from the corner of the room to its centre, {} wanted where "
                        "seated people reach.",
                        whoIn(facts, site.point), mm(away), mm(gap));
        finding.source = facts.source("accessCorner");
        const double to = left ? std::ceil(gap - kExactMm) : std::floor(length - gap + kExactMm);
        proposeAt(facts, site, {to, site.point.plate->host.v_mm},
                  fmt::format("Slide it {} mm {}, to {} from the left corner", mm(std::abs(to - u)),
                              left ? "right" : "left", mm(to)),
                  findings.emplace_back(std::move(finding)));
        return;
    }
}

void findWorktopLow(const Facts& facts, const Site& site, const Top* counter, Findings& findings) {
    const double least = facts.limit("worktopLow");
    if (counter == nullptr || least <= 0 || !site.point.socket) return;
    const double above = site.point.plate->host.v_mm - counter->top_mm;
    if (above >= least - kExactMm) return;
    auto finding = about(facts, "reach", Severity::Hint, site.point);
    finding.value_mm = above;
    finding.limit_mm = least;
    finding.message = fmt::format("{} is {} mm above the worktop, at least {} mm is asked for.",
                                  whoIn(facts, site.point), mm(above), mm(least));
    finding.source = facts.source("worktopLow");
    const double to = std::ceil(counter->top_mm + least - kExactMm);
    proposeAt(facts, site, {site.point.plate->host.u_mm, to}, fmt::format("Set it at {} mm", mm(to)),
              finding);
    findings.push_back(std::move(finding));
}

/// What counts where seated and short people live is said instead of what is usual, not beside it.
void findReach(const Facts& facts, const Site& site, Findings& findings) {
    const Point& point = site.point;
    if (!(point.control || point.socket || point.data) || point.plate->use == plan::UseRate::Once ||
        point.plate->sight == plan::Sight::KeepHidden)
        return;
    const bool accessible = facts.plan().accessible;
    const bool over = facts.limit("worktopLow") > 0 || (accessible && facts.limit("overNearDepth") > 0);
    const std::vector<Top> tops = over ? topsAlong(facts, site.room) : std::vector<Top>{};
    const Top* counter = topUnder(tops, site.room, point, kFarUpMm);
    bool said = false;
    if (accessible) {
        findAccessCorner(facts, site, findings);
        said = findBehindCounter(facts, site, counter, findings) ||
               findBand(facts, site, accessBand(facts, counter), Severity::Warn, findings);
    }
    said = said || findBand(facts, site, usualBand(facts, point), Severity::Hint, findings);
    if (!said) findWorktopLow(facts, site, counter, findings);
}

void findLowSocket(const Facts& facts, const Point& point, Findings& findings) {
    const double v = point.plate->host.v_mm;
    const double lowest = facts.limit("socketLowest");
    if (!point.socket || v >= lowest - kExactMm) return;
    auto finding = about(facts, "socket-low", Severity::Hint, point);
    finding.value_mm = v;
    finding.limit_mm = lowest;
    finding.message =
        fmt::format("{} is {} mm above the floor, {} wanted: the cord bends down below the plug.",
                    whoIn(facts, point), mm(v), mm(lowest));
    finding.source = facts.source("socketLowest");
    finding.remedy = fmt::format("Set it at {} mm or more.", mm(lowest));
    findings.push_back(std::move(finding));
}

void findRow(const Facts& facts, const Point& point, Findings& findings) {
    const Point* nearest = outOfRow(facts, point, point.centre_mm(), true);
    if (nearest == nullptr) return;
    const double off = point.plate->host.v_mm - nearest->plate->host.v_mm;
    auto finding = about(facts, "row-height", Severity::Warn, point);
    finding.objects.push_back(nearest->plate->id);
    finding.value_mm = std::abs(off);
    finding.limit_mm = kSameMm;
    finding.message =
        fmt::format("{} is {} mm {} than {} beside it: it will look like a mistake.", whoIn(facts, point),
                    mm(std::abs(off)), off > 0 ? "higher" : "lower", nearest->tag());
    finding.source = facts.source("sameHeight");
    finding.remedy = fmt::format("Set it at {} mm too.", mm(nearest->plate->host.v_mm));
    finding.move = plan::PlateMove{point.plate->id, point.plate->host.u_mm, nearest->plate->host.v_mm};
    findings.push_back(std::move(finding));
}

/// How far a centre is off the nearest joint or middle of a tile, in one direction.
double tileOff(double at, double start, double tile, double joint) {
    const double step = tile + joint;
    if (step <= 0) return 0;
    const double in = std::fmod(std::fmod(at - start, step) + step, step);
    const double to_middle = std::abs(in - tile / 2);
    const double to_joint = std::min(std::abs(in - (tile + joint / 2)), std::abs(in + joint / 2));
    return std::min(to_middle, to_joint);
}

void findTiles(const Facts& facts, const plan::Wall& wall, const Point& point, Findings& findings) {
    const plan::Vec2 at = point.centre_mm();
    if (point.plate->sight == plan::Sight::KeepHidden || point.plate->use == plan::UseRate::Once) return;
    for (const plan::WallLine& line : wall.lines) {
        if (line.kind != plan::WallLine::Kind::Tiles) continue;
        if (at.x < line.from_mm.value_or(0) || at.x > line.to_mm.value_or(1e9) || at.y < line.bottom_mm ||
            at.y > line.bottom_mm + line.height_mm)
            continue;
        const double along = tileOff(at.x, line.start_u_mm, line.tile_width_mm, line.joint_mm);
        const double up = tileOff(at.y, line.start_v_mm, line.tile_height_mm, line.joint_mm);
        const double off = std::max(along, up);
        if (off <= facts.limit("tileOff") + 1e-6) return;
        auto finding = about(facts, "tile-joint", Severity::Hint, point);
        finding.value_mm = off;
        finding.limit_mm = facts.limit("tileOff");
        finding.message =
            fmt::format("{} sits {} mm along and {} mm up from the nearest joint or middle of a "
                        "tile: the cuts will look accidental.",
                        whoIn(facts, point), mm(along), mm(up));
        finding.source = facts.source("tileOff");
        finding.remedy = "Put its centre on a joint or on the middle of a tile.";
        findings.push_back(std::move(finding));
        return;
    }
}

void findMirror(const Facts& facts, const Point& point, Findings& findings) {
    const plan::Furniture* piece = facts.house().furniture(point.plate->anchor);
    if (piece == nullptr || piece->kind != "mirror-cabinet") return;
    const double v = point.plate->host.v_mm;
    const double low = facts.limit("mirrorLow");
    const double high = facts.limit("mirrorHigh");
    if (v >= low && v <= high) return;
    auto finding = about(facts, "mirror-supply", Severity::Warn, point);
    finding.objects.push_back(piece->id);
    finding.value_mm = v < low ? low - v : v - high;
    finding.limit_mm = 0;
    finding.message = fmt::format("{} is {} mm {} the window of {} to {} mm in which {} takes its supply.",
                                  whoIn(facts, point), mm(*finding.value_mm), v < low ? "below" : "above",
                                  mm(low), mm(high), pieceName(*piece));
    finding.source = facts.source("mirrorLow");
    finding.remedy = fmt::format("Set it at {} mm, and ask the maker's sheet.", mm((low + high) / 2));
    finding.move = plan::PlateMove{point.plate->id, point.plate->host.u_mm, (low + high) / 2};
    findings.push_back(std::move(finding));
}
} // namespace

void findHeights(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (const Point* point : facts.pointsIn(room.id)) {
        if (point->plate->host.kind != plan::Host::Kind::Wall) continue;
        const auto wall = plan::wallIndex(room, point->plate->host.wall);
        if (!wall) continue;
        findReach(facts, {room, *wall, *point}, findings);
        findLowSocket(facts, *point, findings);
        findRow(facts, *point, findings);
        findTiles(facts, room.walls[*wall], *point, findings);
        findMirror(facts, *point, findings);
    }
}

} // namespace gangway::checks
