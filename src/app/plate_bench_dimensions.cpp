// Dimensions, centre lines and small numbers of the bench's drawings. Text stands level, as ImGui has it.
#include "app/plate_bench_parts.hpp"

#include "app/plate_front.hpp"
#include "edit/number_shown.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::app::bench {

namespace {
constexpr float kTick_px = 4;

void tick(const Sheet& sheet, ImVec2 at) {
    const float r = kTick_px * sheet.state.scale;
    sheet.list.AddLine({at.x - r, at.y + r}, {at.x + r, at.y - r}, packed(sheet.state.tokens->ink), 1.4F);
}

ImVec2 sizeOf(const Sheet& sheet, const std::string& words) {
    const ImFont& font = *sheet.state.fonts.small;
    return font.CalcTextSizeA(font.FontSize, FLT_MAX, 0, words.c_str());
}
} // namespace

std::string shown(const State& state, double length_mm) {
    return edit::shownLength(length_mm, state.plan().units);
}

void smallText(const Sheet& sheet, ImVec2 at, float align, const std::string& words, unsigned rgb) {
    const ImVec2 size = sizeOf(sheet, words);
    const ImVec2 corner{std::round(at.x - align * size.x), std::round(at.y - size.y / 2)};
    sheet.list.AddRectFilled({corner.x - 3, corner.y}, {corner.x + size.x + 3, corner.y + size.y},
                             packed(sheet.state.tokens->raised));
    sheet.list.AddText(sheet.state.fonts.small, sheet.state.fonts.small->FontSize, corner, packed(rgb),
                       words.c_str());
}

void dimensionAcross(const Sheet& sheet, double x0_mm, double x1_mm, double from_y_mm, float line_y,
                     const std::string& given) {
    const std::string words = given.empty() ? shown(sheet.state, std::abs(x1_mm - x0_mm)) : given;
    const ImVec2 a = sheet.at(std::min(x0_mm, x1_mm), from_y_mm);
    const ImVec2 b = sheet.at(std::max(x0_mm, x1_mm), from_y_mm);
    const ImU32 thin = packed(sheet.state.tokens->soft_ink, 0.75F);
    const float gap = 4 * sheet.state.scale;
    const float side = line_y > a.y ? 1 : -1;
    for (const float x : {a.x, b.x})
        sheet.list.AddLine({x, a.y + side * gap}, {x, line_y + side * gap}, thin);
    sheet.list.AddLine({a.x, line_y}, {b.x, line_y}, thin);
    tick(sheet, {a.x, line_y});
    tick(sheet, {b.x, line_y});
    const ImVec2 size = sizeOf(sheet, words);
    const bool inside = size.x + 14 * sheet.state.scale < b.x - a.x;
    if (inside) {
        smallText(sheet, {(a.x + b.x) / 2, line_y}, 0.5F, words, sheet.state.tokens->ink);
        return;
    }
    // Beside it, on the side away from the middle, where its mirror image has no number.
    const bool left = b.x <= sheet.origin.x + 1;
    const float away = 8 * sheet.state.scale;
    smallText(sheet, {left ? a.x - away : b.x + away, line_y}, left ? 1.0F : 0.0F, words,
              sheet.state.tokens->ink);
}

void dimensionUp(const Sheet& sheet, double y0_mm, double y1_mm, double from_x_mm, float line_x,
                 Beside beside, const std::string& given) {
    const std::string words = given.empty() ? shown(sheet.state, std::abs(y1_mm - y0_mm)) : given;
    const ImVec2 top = sheet.at(from_x_mm, std::max(y0_mm, y1_mm));
    const ImVec2 low = sheet.at(from_x_mm, std::min(y0_mm, y1_mm));
    const ImU32 thin = packed(sheet.state.tokens->soft_ink, 0.75F);
    const float gap = 4 * sheet.state.scale;
    const float side = line_x > top.x ? 1 : -1;
    for (const float y : {top.y, low.y})
        sheet.list.AddLine({top.x + side * gap, y}, {line_x + side * gap, y}, thin);
    sheet.list.AddLine({line_x, top.y}, {line_x, low.y}, thin);
    tick(sheet, {line_x, top.y});
    tick(sheet, {line_x, low.y});
    const float away = 8 * sheet.state.scale;
    const bool left = beside == Beside::Left;
    smallText(sheet, {line_x + (left ? -away : away), (top.y + low.y) / 2}, left ? 1.0F : 0.0F, words,
              sheet.state.tokens->ink);
}

void centreLine(const Sheet& sheet, ImVec2 from, ImVec2 to) {
    const ImU32 ink = packed(sheet.state.tokens->accent, 0.8F);
    dashedLine(sheet.list, from, to, ink, 11, 3);
}

} // namespace gangway::app::bench
