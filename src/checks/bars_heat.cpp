// Bars of heat and water: radiators, hobs, sinks.
#include "checks/point.hpp"
#include "checks/standing.hpp"

#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace gangway::checks {

using plan::Severity;

namespace {
/// A hob or sink this near to a wall is at that wall: a worktop's depth; common practice, no source.
constexpr double kAtWallMm = 650;
/// AS/NZS 3000:2018 4.7.3 (trade facts 2.34): up to the hood or 2.5 m.
constexpr double kHobTopMm = 2500;

struct Extent {
    double left = std::numeric_limits<double>::infinity();
    double right = -std::numeric_limits<double>::infinity();
    double near = std::numeric_limits<double>::infinity();
};

/// How far a part of a piece reaches along the wall: its middle `offset_mm` to the right of the piece's own.
Extent extentOf(const WallScene& scene, const plan::Furniture& piece, double width_mm, double offset_mm) {
    Extent extent;
    for (const double x : {offset_mm - width_mm / 2, offset_mm + width_mm / 2})
        for (const double y : {-piece.size.depth_mm / 2, piece.size.depth_mm / 2}) {
            const plan::Vec3 at =
                geometry::toFrame(scene.frame, geometry::fromLocal(piece, plan::Vec3{x, y, 0}));
            extent.left = std::min(extent.left, at.x);
            extent.right = std::max(extent.right, at.x);
            extent.near = std::min(extent.near, at.z);
        }
    return extent;
}

/// Where the first hood over a place begins.
double hoodOver(const WallScene& scene, const Extent& extent) {
    double bottom = kHobTopMm;
    for (const geometry::Obstacle& obstacle : scene.obstacles) {
        if (obstacle.piece->kind != "hood") continue;
        const auto [low, high] = std::ranges::minmax(obstacle.outline_mm, {}, &plan::Vec2::x);
        if (low.x < extent.right && high.x > extent.left)
            bottom = std::min(bottom, obstacle.piece->bottom_mm);
    }
    return bottom;
}

void barOver(const Facts& facts, const WallScene& scene, const plan::Furniture& piece, const char* limit,
             std::vector<Bar>& bars) {
    const bool sink = piece.kind == "sink";
    const double width = sink ? plan::furnitureValue(piece, "bowlWidth") : piece.size.width_mm;
    const double offset = sink ? plan::furnitureValue(piece, "bowlOffset") : 0;
    const Extent extent = extentOf(scene, piece, width, offset);
    if (extent.near < -1 || extent.near > kAtWallMm || extent.right < 0 ||
        extent.left > scene.frame.length_mm)
        return;
    // Water also runs down behind a sink; the heat of a hob rises.
    const double from = sink ? 0 : piece.bottom_mm;
    const double to = sink ? kHobTopMm : hoodOver(scene, extent);
    Bar bar;
    bar.rule = sink ? "sink-gap" : "hob-gap";
    bar.severity = Severity::Fault;
    bar.object = piece.id;
    bar.name = sink ? "the bowl of " + pieceName(piece) : pieceName(piece);
    bar.area_mm = rectangle(extent.left, extent.right, from, std::max(from + 1, to));
    bar.keep = {facts.limit(limit), facts.limit(limit), 0, 0};
    bar.limit_mm = facts.limit(limit);
    bar.why = sink ? "water splashes that far" : "heat and steam reach that far";
    bar.source = facts.source(limit);
    bars.push_back(std::move(bar));
}

void barRadiator(const Facts& facts, const WallScene& scene, const plan::Furniture& piece,
                 std::vector<Bar>& bars) {
    std::vector<plan::Vec2> corners;
    for (const geometry::Obstacle& obstacle : scene.obstacles)
        if (obstacle.piece == &piece)
            corners.insert(corners.end(), obstacle.outline_mm.begin(), obstacle.outline_mm.end());
    if (corners.empty()) return;
    const auto [left, right] = std::ranges::minmax(corners, {}, &plan::Vec2::x);
    Bar bar;
    bar.rule = "radiator";
    bar.severity = Severity::Fault;
    bar.object = piece.id;
    bar.name = pieceName(piece);
    bar.area_mm = rectangle(left.x, right.x, piece.bottom_mm, piece.bottom_mm + piece.size.height_mm);
    bar.why = "nothing is reached behind a radiator, and it is hot there";
    bar.source = "none behind (7.8 P); common practice, no source";
    bars.push_back(bar);
    bar.severity = Severity::Warn;
    bar.why = "a radiator's heat rises and spreads that far";
    // Beside it the first is said, over it the second, each with its own limit.
    const double beside = facts.limit("radiatorBeside");
    for (const auto& [limit, above] :
         {std::pair{"radiatorBeside", 0.0}, std::pair{"radiatorAbove", facts.limit("radiatorAbove")}}) {
        bar.keep = {beside, beside, 0, above};
        bar.limit_mm = facts.limit(limit);
        bar.source = facts.source(limit);
        bars.push_back(bar);
    }
}
} // namespace

void barHeat(const Facts& facts, const WallScene& scene, const Point& point, std::vector<Bar>& bars) {
    for (const plan::Furniture* piece : facts.house().furnitureIn(scene.room->id)) {
        if (piece->kind == "radiator" && point.plate->anchor != piece->id)
            barRadiator(facts, scene, *piece, bars);
        if (!point.socket && !point.control)
            continue; // a fixed connection has its own place at the appliance
        if (piece->kind == "hob") barOver(facts, scene, *piece, "hobGap", bars);
        if (piece->kind == "sink") barOver(facts, scene, *piece, "sinkGap", bars);
    }
}

} // namespace gangway::checks
