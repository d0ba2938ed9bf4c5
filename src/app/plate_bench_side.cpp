// The bench's side profile: the wall cut through, the box in it, the plate before it, and how deep the
// modules reach.
#include "app/plate_bench_parts.hpp"

#include "app/plate_front.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace gangway::app::bench {

namespace {
constexpr double kWallBehindBox_mm = 18; ///< of wall drawn behind the deepest box
constexpr double kWallRound_mm = 22;     ///< above and below the plate

struct Extent {
    double depth_mm = 0;  ///< deepest box
    double needed_mm = 0; ///< deepest module
    double out_mm = 0;    ///< furthest part before the wall
};

Extent extentOf(const catalogue::ComposedPlate& plate) {
    Extent extent;
    extent.out_mm = plate.relief_mm;
    for (const auto& box : plate.boxes)
        extent.depth_mm = std::max(extent.depth_mm, box.spec.depth_mm);
    for (const auto& gang : plate.gangs) {
        if (gang.module == nullptr) continue;
        extent.needed_mm = std::max(extent.needed_mm, gang.module->depth_mm);
        for (const auto& shape : gang.module->front)
            extent.out_mm = std::max(extent.out_mm, plate.relief_mm + shape.relief_mm);
    }
    return extent;
}

/// x runs out of the wall, 0 on its face; the drawing stands in the middle of its space.
Sheet sheetFor(const State& state, ImVec2 low, ImVec2 high, const Extent& extent) {
    const float s = state.scale;
    const double deep = std::max(extent.depth_mm, extent.needed_mm) + kWallBehindBox_mm;
    const double across = deep + extent.out_mm;
    const double tall = state.bench.composed.height_mm + 2 * kWallRound_mm;
    const bool tight = high.y - low.y < kTight * s;
    const float px =
        std::min({(high.x - low.x - 220 * s) / static_cast<float>(across),
                  (high.y - low.y - (tight ? 104 : 136) * s) / static_cast<float>(tall), 4.2F * s});
    const float used = std::max(px, 0.2F);
    const float middle = (low.x + high.x) / 2 + static_cast<float>((deep - extent.out_mm) / 2) * used;
    return {state, *ImGui::GetWindowDrawList(), {middle, (low.y + high.y) / 2 - (tight ? 16 : 8) * s}, used};
}

void wall(const Sheet& sheet, double deep_mm, double half_mm) {
    const ImVec2 a = sheet.at(-deep_mm, half_mm);
    const ImVec2 b = sheet.at(0, -half_mm);
    const Tokens& t = *sheet.state.tokens;
    sheet.list.AddRectFilled(a, b, packed(t.quiet, 0.28F));
    sheet.list.PushClipRect(a, b, true);
    const float step = 10 * sheet.state.scale;
    const float tall = b.y - a.y;
    for (float x = a.x - tall; x < b.x; x += step)
        sheet.list.AddLine({x, b.y}, {x + tall, a.y}, packed(t.soft_ink, 0.28F));
    sheet.list.PopClipRect();
    sheet.list.AddLine({b.x, a.y}, b, packed(t.ink), 2 * sheet.state.scale);
}

/// Boxes that lie behind each other from the side are drawn once, the deepest.
std::map<long, catalogue::Box> boxesByHeight(const catalogue::ComposedPlate& plate) {
    std::map<long, catalogue::Box> boxes;
    for (const auto& box : plate.boxes) {
        auto& kept = boxes.try_emplace(std::lround(box.centre_mm.y), box).first->second;
        if (box.spec.depth_mm > kept.spec.depth_mm) kept = box;
    }
    return boxes;
}

void box(const Sheet& sheet, const catalogue::Box& box) {
    const double half = box.spec.height_mm / 2;
    const ImVec2 a = sheet.at(-box.spec.depth_mm, box.centre_mm.y + half);
    const ImVec2 b = sheet.at(0, box.centre_mm.y - half);
    const Tokens& t = *sheet.state.tokens;
    sheet.list.AddRectFilled(a, b, packed(t.raised));
    const ImU32 ink = packed(t.ink);
    const float thick = 1.6F * sheet.state.scale;
    sheet.list.AddLine({b.x, a.y}, a, ink, thick);
    sheet.list.AddLine(a, {a.x, b.y}, ink, thick);
    sheet.list.AddLine({a.x, b.y}, b, ink, thick);
    const float y = (a.y + b.y) / 2;
    centreLine(sheet, {a.x - 8, y}, {sheet.at(sheet.state.bench.composed.relief_mm, 0).x + 14, y});
}

/// A module's body as far as it reaches into the box; in the fault's colour when it is deeper than the box.
void moduleBody(const Sheet& sheet, const catalogue::Gang& gang) {
    if (gang.module == nullptr || gang.module->depth_mm <= 0) return;
    const auto& boxes = sheet.state.bench.composed.boxes;
    double half = gang.height_mm / 2;
    bool too_deep = false;
    for (const auto& box : boxes) {
        if (std::abs(box.centre_mm.y - gang.centre_mm.y) > box.spec.height_mm / 2) continue;
        half = std::min(half, box.spec.height_mm / 2 - 3);
        too_deep = too_deep || gang.module->depth_mm > box.spec.depth_mm;
    }
    const Tokens& t = *sheet.state.tokens;
    dashedRect(sheet.list, sheet.at(-gang.module->depth_mm, gang.centre_mm.y + half),
               sheet.at(0, gang.centre_mm.y - half), packed(too_deep ? t.fault : t.soft_ink), 5, 3);
}

void plateBody(const Sheet& sheet) {
    const auto& plate = sheet.state.bench.composed;
    const Tokens& t = *sheet.state.tokens;
    const unsigned frame = finishColour(sheet.state.bench.catalogue, plate.finish);
    const double half = plate.height_mm / 2;
    for (const auto& gang : plate.gangs) {
        if (gang.module == nullptr) continue;
        const unsigned face = finishColour(sheet.state.bench.catalogue, gang.finish);
        for (const auto& shape : gang.module->front) {
            if (shape.relief_mm <= 0 || shape.kind == catalogue::FrontShape::Kind::Polyline) continue;
            const double tall =
                shape.kind == catalogue::FrontShape::Kind::Circle ? shape.width_mm : shape.height_mm;
            const double y = gang.centre_mm.y + shape.centre_mm.y;
            const ImVec2 a = sheet.at(plate.relief_mm - 0.5, y + tall / 2);
            const ImVec2 b = sheet.at(plate.relief_mm + shape.relief_mm, y - tall / 2);
            sheet.list.AddRectFilled(a, b, packed(face), 2);
            sheet.list.AddRect(a, b, packed(t.ink), 2);
        }
    }
    const ImVec2 a = sheet.at(0, half);
    const ImVec2 b = sheet.at(plate.relief_mm, -half);
    const float round = std::min(3 * sheet.state.scale, (b.x - a.x) / 2);
    sheet.list.AddRectFilled(a, b, packed(frame), round, ImDrawFlags_RoundCornersRight);
    sheet.list.AddRect(a, b, packed(t.ink), round, ImDrawFlags_RoundCornersRight, 1.6F * sheet.state.scale);
}

void dimensions(const Sheet& sheet, const Extent& extent, double deep_mm) {
    const State& state = sheet.state;
    const auto& plate = state.bench.composed;
    const float s = state.scale;
    const double half = plate.height_mm / 2;
    const float foot = sheet.at(0, -half - kWallRound_mm).y;
    dimensionUp(sheet, -half, half, extent.out_mm, sheet.at(extent.out_mm, 0).x + 32 * s, Beside::Right);
    dimensionAcross(sheet, 0, plate.relief_mm, half + kWallRound_mm,
                    sheet.at(0, half + kWallRound_mm).y - 14 * s,
                    fmt::format("{} out of the wall", shown(state, plate.relief_mm)));
    if (plate.boxes.empty()) return;
    const auto& first = plate.boxes.front();
    dimensionUp(sheet, first.centre_mm.y - first.spec.height_mm / 2,
                first.centre_mm.y + first.spec.height_mm / 2, -deep_mm, sheet.at(-deep_mm, 0).x - 24 * s,
                Beside::Left);
    // The shorter one nearer to the wall, so that no line goes through its number.
    const bool too_deep = extent.needed_mm > extent.depth_mm;
    const float near_line = foot + 24 * s;
    const float far_line = foot + 48 * s;
    dimensionAcross(sheet, -extent.depth_mm, 0, -half - kWallRound_mm, too_deep ? near_line : far_line,
                    fmt::format("{} deep", shown(state, extent.depth_mm)));
    if (extent.needed_mm <= 0) return;
    dimensionAcross(
        sheet, -extent.needed_mm, 0, -half - kWallRound_mm, too_deep ? far_line : near_line,
        fmt::format("{} needed{}", shown(state, extent.needed_mm), too_deep ? ", too deep for the box" : ""));
}
} // namespace

void drawSideView(State& state, ImVec2 low, ImVec2 high) {
    const auto& plate = state.bench.composed;
    const Extent extent = extentOf(plate);
    const double deep = std::max(extent.depth_mm, extent.needed_mm) + kWallBehindBox_mm;
    const Sheet sheet = sheetFor(state, low, high, extent);
    wall(sheet, deep, plate.height_mm / 2 + kWallRound_mm);
    for (const auto& [height, one] : boxesByHeight(plate))
        box(sheet, one);
    for (const auto& gang : plate.gangs)
        moduleBody(sheet, gang);
    plateBody(sheet);
    dimensions(sheet, extent, deep);
}

} // namespace gangway::app::bench
