// Heights: reach, rows that are meant to be one, tiles, and the supply window of mirror cabinets.
#include "checks/rules.hpp"

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

void findReach(const Facts& facts, const Point& point, Findings& findings) {
    const double v = point.plate->host.v_mm;
    const double low = facts.limit("reachLow");
    const double high = facts.limit("reachHigh");
    const bool worked = (point.control || point.socket || point.data) &&
                        point.plate->use != plan::UseRate::Once &&
                        point.plate->sight != plan::Sight::KeepHidden;
    const bool too_low = low > 0 && v < low - kExactMm;
    const bool too_high = high > 0 && v > high + kExactMm;
    if (worked && (too_low || too_high)) {
        auto finding = about(facts, "reach", Severity::Hint, point);
        finding.value_mm = v;
        finding.limit_mm = too_low ? low : high;
        finding.message =
            fmt::format("{} is {} mm above the floor, {} {} mm is asked for.", whoIn(facts, point), mm(v),
                        too_low ? "at least" : "at most", mm(*finding.limit_mm));
        finding.source = facts.source(too_low ? "reachLow" : "reachHigh");
        finding.remedy = fmt::format("Set it at {} mm.", mm(*finding.limit_mm));
        findings.push_back(std::move(finding));
    }
    const double lowest = facts.limit("socketLowest");
    if (!point.socket || v >= lowest) return;
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

bool sameKind(const Point& a, const Point& b) {
    return a.socket == b.socket && a.control == b.control && a.data == b.data;
}

void findRow(const Facts& facts, const Point& point, Findings& findings) {
    const double window = facts.limit("sameHeight");
    const Point* nearest = nullptr;
    for (const Point* other : facts.pointsOn(point.plate->room, point.plate->host.wall)) {
        // Of a pair the later one is named, so that it is said once.
        if (other >= &point || !sameKind(*other, point)) continue;
        const plan::Vec2 way = other->centre_mm() - point.centre_mm();
        if (std::abs(way.x) > kRowMm || std::abs(way.y) <= kSameMm || std::abs(way.y) > window) continue;
        if (nearest == nullptr || std::abs(way.x) < std::abs(nearest->centre_mm().x - point.centre_mm().x))
            nearest = other;
    }
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

void findHeights(const Facts& facts, Findings& findings) {
    for (const Point& point : facts.points()) {
        if (point.plate->host.kind != plan::Host::Kind::Wall) continue;
        const plan::Room* room = facts.house().room(point.plate->room);
        const auto wall = room == nullptr ? std::nullopt : plan::wallIndex(*room, point.plate->host.wall);
        if (!wall) continue;
        findReach(facts, point, findings);
        findRow(facts, point, findings);
        findTiles(facts, room->walls[*wall], point, findings);
        findMirror(facts, point, findings);
    }
}

} // namespace gangway::checks
