// Bars of furniture: what is hidden, what leaves no depth for a plug, what stands too near beside.
#include "checks/point.hpp"
#include "checks/standing.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace gangway::checks {

using geometry::Obstacle;
using plan::Severity;
using plan::UseRate;

namespace {
/// What rises above this is tall; common practice, no source.
constexpr double kTallMm = 1500;
/// Smaller outlines are knobs and rods.
constexpr double kLeastAreaMm2 = 1500;
constexpr double kFarMm = 10000;

double areaOf(const std::vector<plan::Vec2>& polygon) {
    return std::abs(geometry::signedArea(polygon));
}

/// Top of a solid and of what stands on it: a dryer on a washer is one tall thing.
double topOf(const WallScene& scene, const Obstacle& obstacle) {
    constexpr double kOnMm = 50;
    const auto across = [](const Obstacle& one) {
        return std::ranges::minmax(one.outline_mm, {}, &plan::Vec2::x);
    };
    const auto up = [](const Obstacle& one) {
        return std::ranges::minmax(one.outline_mm, {}, &plan::Vec2::y);
    };
    const auto [left, right] = across(obstacle);
    double top = up(obstacle).max.y;
    for (const Obstacle& other : scene.obstacles) {
        const auto [other_left, other_right] = across(other);
        const auto [low, high] = up(other);
        if (other_left.x < right.x && other_right.x > left.x && low.y <= top + kOnMm)
            top = std::max(top, high.y);
    }
    return top;
}

Bar barOf(const Obstacle& obstacle, std::string rule, Severity severity) {
    Bar bar;
    bar.rule = std::move(rule);
    bar.severity = severity;
    bar.object = obstacle.piece->id;
    bar.name = pieceName(*obstacle.piece);
    bar.area_mm = obstacle.outline_mm;
    return bar;
}

/// How bad it is that something which is not moved for it hides a plate (practice-checks.md C, severity
/// idea).
Severity severityBehind(Standing standing, const Point& point, double near_mm) {
    const UseRate use = point.plate->use;
    if (standing == Standing::Light) return Severity::Hint;
    if (use == UseRate::Once) return standing == Standing::Heavy ? Severity::Hint : Severity::Warn;
    if (standing == Standing::Heavy) {
        if (use == UseRate::Daily) return Severity::Fault;
        const bool plug_fits = point.plug_mm == 0 || near_mm >= point.plug_mm;
        return use == UseRate::LeftPlugged && plug_fits ? Severity::Hint : Severity::Warn;
    }
    return Severity::Fault;
}

void hide(const Facts& facts, const Obstacle& obstacle, Standing standing, const Point& point,
          std::vector<Bar>& bars, const std::string& rule = "covered-plate") {
    const bool crushed = point.plug_mm > 0 && obstacle.near_mm < point.plug_mm &&
                         standing == Standing::Heavy && point.plate->use != UseRate::Daily;
    Bar bar =
        barOf(obstacle, crushed ? "plug-depth" : rule, severityBehind(standing, point, obstacle.near_mm));
    if (crushed) {
        bar.value_mm = std::max(0.0, obstacle.near_mm);
        bar.limit_mm = point.plug_mm;
        bar.why = fmt::format("{} needs {:.0f} mm, {:.0f} are free", point.plug_words, point.plug_mm,
                              std::max(0.0, obstacle.near_mm));
        bar.source = facts.source(point.plug_limit);
    } else {
        bar.why = standing == Standing::Light ? "it has to be moved first" : "it hides the plate";
        bar.source = "covered plates and the use of a point (C1 to C5); common practice, no source";
    }
    bars.push_back(std::move(bar));
}

/// Comfort: a plate that is not hidden but near is a hint; beside what is tall already from further off.
void keepBeside(const Facts& facts, const WallScene& scene, const Obstacle& obstacle,
                std::vector<Bar>& bars) {
    Bar around = barOf(obstacle, "side-gap", Severity::Hint);
    const double gap = facts.limit("sideGap");
    around.keep = keepAround(gap);
    around.limit_mm = gap;
    around.why = "a plate wants clear wall beside furniture";
    around.source = facts.source("sideGap");
    const double tall_gap = facts.limit("tallGap");
    if (tall_gap > gap && topOf(scene, obstacle) >= kTallMm) {
        Bar beside = around;
        beside.keep = {tall_gap, tall_gap, 0, 0};
        beside.limit_mm = tall_gap;
        beside.source = facts.source("tallGap");
        bars.push_back(std::move(beside)); // first: of two alike the first is said
    }
    bars.push_back(std::move(around));
}

/// Boards of a cupboard or shelf: a plate may be between them, not under their edges.
void barBoard(const Facts& facts, const Obstacle& obstacle, std::vector<Bar>& bars) {
    Bar over = barOf(obstacle, "board-edge", Severity::Fault);
    over.name = fmt::format("{} of {}", obstacle.solid, pieceName(*obstacle.piece));
    over.limit_mm = facts.limit("boardEdge");
    over.why = "a board can't cross a plate";
    over.source = facts.source("boardEdge");
    addOverAndNear(bars, std::move(over), Severity::Warn, keepAround(facts.limit("boardEdge")));
}

void barWorktop(const Facts& facts, const Obstacle& obstacle, std::vector<Bar>& bars) {
    barBoard(facts, obstacle, bars);
    Bar clear = barOf(obstacle, "worktop-clear", Severity::Hint);
    clear.keep = {0, 0, 0, facts.limit("worktopClear")};
    clear.limit_mm = facts.limit("worktopClear");
    clear.why = "what stands and is wiped on a worktop wants that much under a plate";
    clear.source = facts.source("worktopClear");
    bars.push_back(std::move(clear));
}

void barCupboard(const Facts& facts, const WallScene& scene, const Obstacle& obstacle, const Point& point,
                 std::vector<Bar>& bars) {
    const bool reached = isPutAway(*point.plate) && point.plate->host.v_mm <= facts.limit("driverReach");
    if (!reached) {
        hide(facts, obstacle, Standing::Fixed, point, bars,
             isPutAway(*point.plate) ? "no-access" : "covered-plate");
        keepBeside(facts, scene, obstacle, bars);
        return;
    }
    if (obstacle.solid.starts_with("shelf")) {
        // Shelves lie on pins and can be put elsewhere.
        Bar shelf = barOf(obstacle, "board-edge", Severity::Hint);
        shelf.name = fmt::format("a shelf in {}", pieceName(*obstacle.piece));
        shelf.why = "the shelf has to lie higher or lower";
        shelf.source = facts.source("boardEdge");
        bars.push_back(std::move(shelf));
    } else if (isInTheWayInside(obstacle.solid)) {
        barBoard(facts, obstacle, bars);
    }
}

void barHood(const Facts& facts, const Obstacle& obstacle, const Point& point, std::vector<Bar>& bars) {
    if (obstacle.solid != "chimney" || !isPutAway(*point.plate)) {
        hide(facts, obstacle, Standing::Fixed, point, bars);
        return;
    }
    // Within the chimney a plate may be beside the duct, not across the chimney's sides.
    const auto [low, high] = std::ranges::minmax(obstacle.outline_mm, {}, &plan::Vec2::x);
    for (const double side : {low.x, high.x}) {
        Bar edge = barOf(obstacle, "board-edge", Severity::Fault);
        edge.area_mm = rectangle(side - 0.5, side + 0.5, 0, kFarMm);
        edge.name = "the chimney's side";
        edge.why = "a board can't cross a plate";
        edge.source = facts.source("boardEdge");
        bars.push_back(std::move(edge));
    }
    const double duct = plan::furnitureValue(*obstacle.piece, "ductDiameter");
    if (duct <= 0) return;
    const double middle = (low.x + high.x) / 2 + plan::furnitureValue(*obstacle.piece, "ductOffset");
    Bar bar = barOf(obstacle, "in-duct", Severity::Fault);
    bar.area_mm = rectangle(middle - duct / 2, middle + duct / 2, obstacle.piece->bottom_mm, kFarMm);
    bar.name = "the hood's duct";
    bar.why = "the duct runs down before the wall there";
    bar.source = "geometry of the plan";
    bars.push_back(std::move(bar));
}

void barCurtain(const Facts& facts, const Obstacle& obstacle, const Point& point, std::vector<Bar>& bars) {
    const bool stack = obstacle.solid.starts_with("curtain");
    if (!stack && obstacle.solid != "cloth") return;
    Bar bar = barOf(obstacle, stack ? "curtain-stack" : "covered-plate",
                    point.control ? Severity::Fault : Severity::Warn);
    bar.why = "the drawn-back curtain hangs before it";
    bar.source = facts.source("stackGap");
    bars.push_back(bar);
    if (!stack || point.plate->anchor == obstacle.piece->id) return; // it feeds the curtain's own motor
    bar.severity = Severity::Warn;
    bar.keep = {facts.limit("stackGap"), facts.limit("stackGap"), 0, 0};
    bar.limit_mm = facts.limit("stackGap");
    bar.why = "the drawn-back curtain wants that much beside it";
    bars.push_back(std::move(bar));
}

/// What feeds a screen hides behind it, not at its edge: strips along the edges, with the space kept within.
void barScreenEdges(const Facts& facts, const Obstacle& obstacle, std::vector<Bar>& bars) {
    const auto [left, right] = std::ranges::minmax(obstacle.outline_mm, {}, &plan::Vec2::x);
    const auto [low, high] = std::ranges::minmax(obstacle.outline_mm, {}, &plan::Vec2::y);
    const double inside = facts.limit("screenInside");
    const std::pair<std::vector<plan::Vec2>, Keep> edges[] = {
        {rectangle(left.x - 1, left.x, low.y, high.y), {0, inside, 0, 0}},
        {rectangle(right.x, right.x + 1, low.y, high.y), {inside, 0, 0, 0}},
        {rectangle(left.x, right.x, low.y - 1, low.y), {0, 0, 0, inside}},
        {rectangle(left.x, right.x, high.y, high.y + 1), {0, 0, inside, 0}}};
    for (const auto& [area, keep] : edges) {
        Bar bar = barOf(obstacle, "screen-inside", Severity::Warn);
        bar.name = fmt::format("the edge of {}", pieceName(*obstacle.piece));
        bar.area_mm = area;
        bar.keep = keep;
        bar.limit_mm = inside;
        bar.why = "it shows beside the screen";
        bar.source = facts.source("screenInside");
        bars.push_back(std::move(bar));
    }
}

void barScreen(const Facts& facts, const Obstacle& obstacle, const Point& point, std::vector<Bar>& bars) {
    const bool feeds = point.plate->anchor == obstacle.piece->id || isPutAway(*point.plate);
    if (obstacle.solid.starts_with("bracket")) {
        Bar bar = barOf(obstacle, "tv-bracket", Severity::Fault);
        bar.why = "the screen's bracket is screwed on there";
        bar.source = facts.source("bracketGap");
        bar.limit_mm = facts.limit("bracketGap");
        addOverAndNear(bars, std::move(bar), Severity::Warn, keepAround(facts.limit("bracketGap")));
    } else if (!feeds) {
        hide(facts, obstacle, Standing::Fixed, point, bars);
    } else if (point.plug_mm > obstacle.near_mm) {
        hide(facts, obstacle, Standing::Heavy, point, bars);
    }
    if (obstacle.solid == "television" && point.plate->anchor == obstacle.piece->id)
        barScreenEdges(facts, obstacle, bars);
}

void barPicture(const Facts& facts, const Obstacle& obstacle, const Point& point, std::vector<Bar>& bars) {
    if (isPutAway(*point.plate) || point.plate->anchor == obstacle.piece->id) return; // a picture's own light
    Bar bar = barOf(obstacle, "picture-place", Severity::Warn);
    bar.keep = keepAround(facts.limit("artClear"));
    bar.limit_mm = facts.limit("artClear");
    bar.why = "a picture hangs there";
    bar.source = facts.source("artClear");
    bars.push_back(std::move(bar));
}

void barAppliance(const Facts& facts, const WallScene& scene, const Obstacle& obstacle,
                  std::vector<Bar>& bars) {
    Bar bar = barOf(obstacle, "appliance-bay", Severity::Fault);
    bar.why = "in an appliance's own bay nothing can be plugged, and the appliance does not slide home";
    bar.source = "built-in appliances (C20); common practice, no source";
    bars.push_back(std::move(bar));
    keepBeside(facts, scene, obstacle, bars);
}

bool isPartOfIts(const Obstacle& obstacle, const Point& point) {
    const std::string& kind = obstacle.piece->kind;
    return point.plate->anchor == obstacle.piece->id && isPutAway(*point.plate) &&
           (kind == "mirror" || kind == "mirror-cabinet" || kind == "wc" || kind == "boiler");
}

/// Reached by taking off the plinth: by the pack no fault, but disputed.
Bar plinthBar(const Facts& facts, const Obstacle& obstacle) {
    Bar bar =
        barOf(obstacle, "plinth-socket", facts.limit("plinthSockets") > 0 ? Severity::Hint : Severity::Fault);
    bar.why = "it is reached by taking off the plinth, which some ask for and others refuse";
    bar.source = facts.source("plinthSockets");
    return bar;
}

/// Low behind a body that stands on a plinth.
bool barPlinth(const Facts& facts, const Obstacle& obstacle, const Point& point, std::vector<Bar>& bars) {
    constexpr double kPlinthHighMm = 150; // practice-checks.md C20: 50 to 150
    const double plinth = plan::furnitureValue(*obstacle.piece, "plinthHeight");
    if (plinth <= 0 || !isPutAway(*point.plate) || point.plate->host.v_mm > kPlinthHighMm) return false;
    bars.push_back(plinthBar(facts, obstacle));
    return true;
}

/// Below the body, behind the plinth's board.
void barBehindPlinth(const Facts& facts, const Obstacle& room, const Point& point, std::vector<Bar>& bars) {
    if (isPutAway(*point.plate)) {
        bars.push_back(plinthBar(facts, room));
        return;
    }
    const bool heavy = standingOf(*room.piece) == Standing::Heavy;
    hide(facts, room, heavy ? Standing::Heavy : Standing::Fixed, point, bars);
}

void barOne(const Facts& facts, const WallScene& scene, const Obstacle& obstacle, const Point& point,
            std::vector<Bar>& bars) {
    if (isSmallPart(obstacle.solid) || areaOf(obstacle.outline_mm) < kLeastAreaMm2) return;
    if (isPartOfIts(obstacle, point)) return;
    const plan::Furniture& piece = *obstacle.piece;
    const Standing standing = standingOf(piece);
    if (obstacle.solid == "worktop" || piece.kind == "worktop") return barWorktop(facts, obstacle, bars);
    if (piece.kind == "picture") return barPicture(facts, obstacle, point, bars);
    if (piece.kind == "hood") return barHood(facts, obstacle, point, bars);
    if (piece.kind == "shelf" || piece.kind == "bookcase") {
        const bool open = piece.kind == "shelf" || plan::furnitureValue(piece, "back") < 0.5;
        if (open) return barBoard(facts, obstacle, bars);
    }
    switch (standing) {
    case Standing::Hot:
        return; // bars_heat.cpp
    case Standing::Moving:
        return barCurtain(facts, obstacle, point, bars);
    case Standing::Cupboard:
        return barCupboard(facts, scene, obstacle, point, bars);
    case Standing::Appliance:
        return barAppliance(facts, scene, obstacle, bars);
    case Standing::Screen:
        return barScreen(facts, obstacle, point, bars);
    case Standing::Fixed:
    case Standing::Heavy:
        if (barPlinth(facts, obstacle, point, bars)) return;
        hide(facts, obstacle, standing, point, bars);
        return keepBeside(facts, scene, obstacle, bars);
    case Standing::Light:
        return hide(facts, obstacle, standing, point, bars);
    }
}
} // namespace

void barFurniture(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars) {
    for (const Obstacle& obstacle : scene.obstacles)
        barOne(facts, scene, obstacle, point, bars);
    for (const Obstacle& room : scene.behind_plinths)
        barBehindPlinth(facts, room, point, bars);
}

} // namespace gangway::checks
