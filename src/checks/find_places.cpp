// Places on walls and on faces of furniture: each bar that a plate breaks, with the way out along the wall.
#include "checks/rules.hpp"
#include "checks/stretches.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <set>

namespace gangway::checks {

using plan::Severity;

namespace {
/// Rules in which something stands before the plate rather than beside it.
bool isBehind(const Bar& bar) {
    static const std::set<std::string, std::less<>> kBehind = {
        "covered-plate", "plug-depth", "no-access", "behind-leaf", "curtain-stack",
        "appliance-bay", "radiator",   "in-duct",   "tv-bracket",  "picture-place"};
    return kBehind.contains(bar.rule);
}

bool isBroken(const Bar& bar, const Point& point) {
    constexpr double kTouchMm = 1e-6;
    return playOf(bar, point.half_mm, point.centre_mm()) < -kTouchMm;
}

/// Of two broken bars of one object the one to report: the worse, else the one that hides more, else the
/// nearer.
bool isWorse(const Bar& a, const Bar& b, const Point& point) {
    if (a.severity != b.severity) return a.severity > b.severity;
    const plan::Vec2 at = point.centre_mm();
    const double over = overlapAlong(a, point.half_mm, at) - overlapAlong(b, point.half_mm, at);
    if (over != 0) return over > 0;
    return gapTo(a, point.half_mm, at) < gapTo(b, point.half_mm, at);
}

std::string whatIsWrong(const Facts& facts, const Bar& bar, const Point& point, plan::Finding& finding) {
    const double gap = gapTo(bar, point.half_mm, point.centre_mm());
    const double over = overlapAlong(bar, point.half_mm, point.centre_mm());
    const std::string who = whoIn(facts, point);
    const double width = 2 * point.half_mm.x;
    if (isBehind(bar) && gap < 0) {
        finding.value_mm = bar.value_mm.value_or(over);
        finding.limit_mm = bar.value_mm ? bar.limit_mm : 0;
        if (over > width - 0.5) return fmt::format("{} is behind {}: {}.", who, bar.name, bar.why);
        return fmt::format("{}: {} of its {} mm are behind {}: {}.", who, mm(over), mm(width), bar.name,
                           bar.why);
    }
    finding.value_mm = gap;
    finding.limit_mm = bar.limit_mm;
    if (gap < 0)
        return fmt::format("{} reaches {} mm over {}{}: {}.", who, mm(-gap), bar.name,
                           bar.limit_mm > 0 ? fmt::format(", {} mm clear wanted", mm(bar.limit_mm)) : "",
                           bar.why);
    return fmt::format("{} is {} mm from {}, {} wanted: {}.", who, mm(gap), bar.name, mm(bar.limit_mm),
                       bar.why);
}

/// What the measure lies between, just before the wall.
plan::Gap gapOf(const WallScene& scene, const Point& point, const Bar& bar) {
    const plan::Vec2 at = point.centre_mm();
    const auto [on_plate, on_area] = nearestPoints(rectangle(at.x - point.half_mm.x, at.x + point.half_mm.x,
                                                             at.y - point.half_mm.y, at.y + point.half_mm.y),
                                                   bar.area_mm);
    constexpr double kBeforeMm = 5;
    return {geometry::toHouse(scene.frame, {on_plate.x, on_plate.y, kBeforeMm}),
            geometry::toHouse(scene.frame, {on_area.x, on_area.y, kBeforeMm})};
}

std::optional<double> nearestOf(const Facts& facts, const WallScene& scene, const Point& point,
                                const std::vector<Bar>& bars, Severity least, double spare_mm) {
    const plan::Vec2 half = point.half_mm + plan::Vec2{spare_mm, spare_mm};
    const plan::Host& host = point.plate->host;
    for (const Interval& whole : {reachedByLeads(facts, scene, point), wholeWall(scene, point)})
        if (const auto at = nearestFree(freeStretches(bars, half, host.v_mm, whole, least), host.u_mm))
            return at;
    return std::nullopt;
}

/// Slid along its wall at the same height to the nearest place without a warning, with some play where there
/// is room for it; a bit further to one without a hint. Within reach of what is plugged into it, if there is
/// such a place.
std::optional<double> freePlace(const Facts& facts, const WallScene& scene, const Point& point,
                                const std::vector<Bar>& bars) {
    constexpr double kBitMm = 300;
    const double play = facts.limit("marginWarn");
    for (const Severity least : {Severity::Warn, Severity::Fault})
        for (const double spare : {play, 0.0}) {
            const auto near = nearestOf(facts, scene, point, bars, least, spare);
            if (!near) continue;
            const auto clear = nearestOf(facts, scene, point, bars, Severity::Hint, spare);
            const double u = point.plate->host.u_mm;
            return clear && std::abs(*clear - u) < std::abs(*near - u) + kBitMm ? clear : near;
        }
    return std::nullopt;
}

/// A little up or down where that is far nearer than along the wall; not for what is in a row with others,
/// whose height people see.
std::optional<double> freeHeight(const Facts& facts, const WallScene& scene, const Point& point,
                                 const std::vector<Bar>& bars, double along_mm) {
    constexpr double kLittleMm = 120;
    constexpr double kFarNearer = 4;
    const plan::Vec2 at = point.centre_mm();
    for (const Point* other : scene.points)
        if (other != &point && std::abs(other->plate->host.v_mm - at.y) < facts.limit("sameHeight"))
            return std::nullopt;
    const double play = facts.limit("marginWarn");
    const plan::Vec2 half = point.half_mm + plan::Vec2{play, play};
    std::vector<double> tried;
    for (const Bar& bar : bars)
        if (const auto barred = barredUp(bar, half, at.x))
            for (const double v : {std::floor(barred->from_mm), std::ceil(barred->to_mm)})
                tried.push_back(v);
    std::ranges::sort(tried, {}, [&](double v) { return std::abs(v - at.y); });
    for (const double v : tried) {
        const double way = std::abs(v - at.y);
        if (way > kLittleMm || way * kFarNearer > along_mm) return std::nullopt;
        const bool free = std::ranges::all_of(bars, [&](const Bar& bar) {
            return bar.severity < Severity::Warn || playOf(bar, half, {at.x, v}) >= -1e-6;
        });
        if (free) return v;
    }
    return std::nullopt;
}

void propose(const Facts& facts, const WallScene& scene, const Point& point, const std::vector<Bar>& bars,
             plan::Finding& finding) {
    const auto at = freePlace(facts, scene, point, bars);
    const plan::Host& host = point.plate->host;
    if (!at && scene.host != nullptr) {
        finding.remedy = fmt::format("There is no place for it on that side of {}: what stands before it has "
                                     "to move, or the plate goes elsewhere.",
                                     pieceName(*scene.host));
        return;
    }
    if (!at) {
        finding.remedy =
            fmt::format("There is no place for it on wall {} at {} mm: another height, another wall, "
                        "or what stands there has to move.",
                        host.wall, mm(host.v_mm));
        return;
    }
    if (const auto height = freeHeight(facts, scene, point, bars, std::abs(*at - host.u_mm))) {
        finding.remedy = fmt::format("Set it {} mm {}, at {}, or move what stands there.",
                                     mm(std::abs(*height - host.v_mm)),
                                     *height > host.v_mm ? "higher" : "lower", mm(*height));
        finding.move = plan::PlateMove{point.plate->id, host.u_mm, *height};
        return;
    }
    // Whole millimetres are set out; towards the inside of the free stretch.
    const double way = *at - host.u_mm;
    const double u = way > 0 ? std::ceil(*at - 1e-6) : std::floor(*at + 1e-6);
    constexpr double kSameMm = 0.05;
    if (std::abs(u - host.u_mm) < kSameMm) {
        finding.remedy =
            "No place near it on this wall is better: move what stands there, or take it as it is.";
        return;
    }
    finding.remedy = fmt::format("Slide it {} mm {}, to {} from the left {}, or move what stands there.",
                                 mm(std::abs(u - host.u_mm)), way > 0 ? "right" : "left", mm(u),
                                 scene.host == nullptr ? "corner" : "edge");
    finding.move = plan::PlateMove{point.plate->id, u, host.v_mm};
}

/// A casing or a moulding stands where it is drawn; furniture is put down by hand.
bool isBuilding(const Bar& bar) {
    return bar.rule == "opening-gap" || bar.rule == "line-gap" || bar.rule == "off-wall" ||
           bar.rule == "corner-gap" || bar.rule == "off-face";
}

void findFragile(const Facts& facts, const WallScene& scene, const Point& point, const std::vector<Bar>& bars,
                 Findings& findings) {
    const double fragile = facts.limit("marginWarn");
    const Margin margin = marginOf(bars, point.half_mm, point.centre_mm(), wholeWall(scene, point));
    const double fault = facts.limit("marginFault");
    if (margin.mm >= std::max(fragile, fault) || margin.bar == nullptr) return;
    const bool too_fragile = margin.mm < fault;
    const Severity usual = isBuilding(*margin.bar) ? Severity::Hint : Severity::Warn;
    auto finding = about(facts, "fragile-place", too_fragile ? Severity::Fault : usual, point);
    finding.objects.push_back(margin.bar->object);
    finding.value_mm = margin.mm;
    finding.limit_mm = too_fragile ? fault : fragile;
    finding.message = fmt::format("{} is right by {} mm only, towards {}: less than a site's accuracy.",
                                  whoIn(facts, point), mm(margin.mm), margin.bar->name);
    finding.source = facts.source(too_fragile ? "marginFault" : "marginWarn");
    finding.remedy = "Move it further from there, or tell the electrician that this box has no play.";
    findings.push_back(std::move(finding));
}

void findOn(const Facts& facts, const WallScene& scene, const Point& point, Findings& findings) {
    const std::vector<Bar> bars = barsFor(facts, scene, point);
    std::map<std::string, const Bar*, std::less<>> worst; // by object
    bool proven_wrong = false;
    for (const Bar& bar : bars) {
        if (!isBroken(bar, point)) continue;
        proven_wrong = proven_wrong || bar.proven_elsewhere;
        if (bar.proven_elsewhere) continue;
        const Bar*& kept = worst[bar.object];
        if (kept == nullptr || isWorse(bar, *kept, point)) kept = &bar;
    }
    for (const auto& [object, bar] : worst) {
        auto finding = about(facts, bar->rule, bar->severity, point);
        finding.objects.push_back(object);
        finding.message = whatIsWrong(facts, *bar, point, finding);
        finding.source = bar->source;
        finding.gap = gapOf(scene, point, *bar);
        propose(facts, scene, point, bars, finding);
        findings.push_back(std::move(finding));
    }
    if (worst.empty() && !proven_wrong) findFragile(facts, scene, point, bars, findings);
}
} // namespace

void findPlaces(const Facts& facts, const plan::Room& room, Findings& findings) {
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const auto& points = facts.pointsOn(room.id, room.walls[wall].id);
        if (points.empty()) continue;
        const WallScene scene = sceneOf(facts, room, wall);
        for (const Point* point : points)
            findOn(facts, scene, *point, findings);
    }
    for (const Point* point : facts.pointsIn(room.id))
        if (const auto face = faceSceneOf(facts, *point)) findOn(facts, *face, *point, findings);
}

} // namespace gangway::checks
