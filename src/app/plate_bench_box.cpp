// The bench's back-box view: what is cut and drilled, seen from the room with the plate taken off.
#include "app/plate_bench_parts.hpp"

#include "app/plate_front.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace gangway::app::bench {

namespace {
Sheet sheetFor(const State& state, ImVec2 low, ImVec2 high) {
    const auto& plate = state.bench.composed;
    double wide = plate.width_mm;
    double tall = plate.height_mm;
    for (const auto& box : plate.boxes) {
        wide = std::max(wide, 2 * std::abs(box.centre_mm.x) + std::max(box.spec.width_mm, box.spec.drill_mm));
        tall =
            std::max(tall, 2 * std::abs(box.centre_mm.y) + std::max(box.spec.height_mm, box.spec.drill_mm));
    }
    const float s = state.scale;
    const float room_x = high.x - low.x - 208 * s;
    const bool tight = high.y - low.y < kTight * s;
    const float room_y = high.y - low.y - (tight ? 104 : 152) * s;
    const float px = std::min({room_x / static_cast<float>(std::max(1.0, wide)),
                               room_y / static_cast<float>(std::max(1.0, tall)), 4.2F * s});
    return {state,
            *ImGui::GetWindowDrawList(),
            {(low.x + high.x) / 2 + 16 * s, low.y + (tight ? 40 : 68) * s + room_y / 2},
            std::max(px, 0.2F)};
}

void box(const Sheet& sheet, const catalogue::Box& box) {
    const Tokens& t = *sheet.state.tokens;
    const ImVec2 c = sheet.at(box.centre_mm.x, box.centre_mm.y);
    const float w = static_cast<float>(box.spec.width_mm) / 2 * sheet.px_per_mm;
    const float h = static_cast<float>(box.spec.height_mm) / 2 * sheet.px_per_mm;
    const float thick = 1.8F * sheet.state.scale;
    if (box.spec.shape == catalogue::BoxSpec::Shape::Round) {
        sheet.list.AddCircleFilled(c, w, packed(t.quiet, 0.22F), 72);
        sheet.list.AddCircle(c, w, packed(t.ink), 72, thick);
    } else {
        const float round = 4 * sheet.px_per_mm;
        sheet.list.AddRectFilled({c.x - w, c.y - h}, {c.x + w, c.y + h}, packed(t.quiet, 0.22F), round);
        sheet.list.AddRect({c.x - w, c.y - h}, {c.x + w, c.y + h}, packed(t.ink), round, 0, thick);
    }
    const float drill = static_cast<float>(box.spec.drill_mm) / 2 * sheet.px_per_mm;
    if (drill > 0 && std::abs(drill - w) > 0.5F)
        sheet.list.AddCircle(c, drill, packed(t.accent), 72, 1.2F * sheet.state.scale);
    const float over = 12 * sheet.state.scale;
    const float reach_x = std::max(w, drill) + over;
    const float reach_y = std::max(h, drill) + over;
    centreLine(sheet, {c.x - reach_x, c.y}, {c.x + reach_x, c.y});
    centreLine(sheet, {c.x, c.y - reach_y}, {c.x, c.y + reach_y});
}

void fixing(const Sheet& sheet, plan::Vec2 at_mm) {
    const ImVec2 c = sheet.at(at_mm.x, at_mm.y);
    const float r = std::max(3 * sheet.state.scale, 1.75F * sheet.px_per_mm);
    const Tokens& t = *sheet.state.tokens;
    sheet.list.AddCircleFilled(c, r, packed(t.raised), 20);
    sheet.list.AddCircle(c, r, packed(t.ink), 20, 1.4F);
    sheet.list.AddLine({c.x - r * 0.6F, c.y + r * 0.6F}, {c.x + r * 0.6F, c.y - r * 0.6F}, packed(t.ink));
}

void plateOutline(const Sheet& sheet) {
    const auto& plate = sheet.state.bench.composed;
    const ImVec2 a = sheet.at(-plate.width_mm / 2, plate.height_mm / 2);
    const ImVec2 b = sheet.at(plate.width_mm / 2, -plate.height_mm / 2);
    dashedRect(sheet.list, a, b, packed(sheet.state.tokens->soft_ink), 7, 4);
}

/// Every box centre from the plate's centre, so that one mark on the wall is enough.
void centreDimensions(const Sheet& sheet) {
    const auto& plate = sheet.state.bench.composed;
    const float s = sheet.state.scale;
    const double h = plate.height_mm / 2;
    const double w = plate.width_mm / 2;
    std::set<long> xs;
    std::set<long> ys;
    for (const auto& box : plate.boxes) {
        xs.insert(std::lround(box.centre_mm.x * 100));
        ys.insert(std::lround(box.centre_mm.y * 100));
    }
    // The nearest first: each further one gets its own row, so that no two lines lie on each other.
    const float below = sheet.at(0, -h).y;
    float row = 0;
    for (const long x : xs) {
        if (x <= 0) continue;
        const float line = below + (28 + 24 * row++) * s;
        dimensionAcross(sheet, 0, static_cast<double>(x) / 100, -h, line);
        if (xs.contains(-x)) dimensionAcross(sheet, -static_cast<double>(x) / 100, 0, -h, line);
    }
    const float right = sheet.at(w, 0).x;
    float column = 0;
    for (const long y : ys) {
        if (y <= 0) continue;
        const float line = right + (24 + 44 * column++) * s;
        dimensionUp(sheet, 0, static_cast<double>(y) / 100, w, line, Beside::Right);
        if (ys.contains(-y)) dimensionUp(sheet, -static_cast<double>(y) / 100, 0, w, line, Beside::Right);
    }
}

/// What is cut: the outside of a single or shared box.
void sizeDimensions(const Sheet& sheet) {
    const auto& plate = sheet.state.bench.composed;
    if (plate.boxes.size() != 1) return;
    const auto& box = plate.boxes.front();
    const float s = sheet.state.scale;
    const double w = box.spec.width_mm / 2;
    const double h = box.spec.height_mm / 2;
    const double below = -std::max(plate.height_mm / 2, h);
    const bool round = box.spec.shape == catalogue::BoxSpec::Shape::Round;
    dimensionAcross(sheet, -w, w, below, sheet.at(0, below).y + 28 * s,
                    round ? fmt::format("{} dia", shown(sheet.state, box.spec.width_mm)) : "");
    const double right = std::max(plate.width_mm / 2, w);
    if (!round) dimensionUp(sheet, -h, h, right, sheet.at(right, 0).x + 24 * s, Beside::Right);
}

/// Where a mounting height is measured to.
void heightReference(const Sheet& sheet) {
    const auto& plate = sheet.state.bench.composed;
    const float s = sheet.state.scale;
    const ImVec2 edge = sheet.at(-plate.width_mm / 2, plate.reference_mm.y);
    const ImU32 ink = packed(sheet.state.tokens->accent);
    const ImVec2 tip{edge.x - 20 * s, edge.y};
    sheet.list.AddTriangleFilled({tip.x - 7 * s, tip.y - 10 * s}, {tip.x + 7 * s, tip.y - 10 * s}, tip, ink);
    sheet.list.AddLine({tip.x - 12 * s, tip.y}, {edge.x + 8 * s, tip.y}, ink, 1.4F * s);
    smallText(sheet, {tip.x - 14 * s, tip.y - 10 * s}, 1, "height", sheet.state.tokens->accent);
    smallText(sheet, {tip.x - 14 * s, tip.y + 5 * s}, 1, "to here", sheet.state.tokens->accent);
}

std::string sizeWords(const State& state, const catalogue::BoxSpec& spec) {
    std::string words =
        spec.shape == catalogue::BoxSpec::Shape::Round
            ? fmt::format("{} dia", shown(state, spec.width_mm))
            : fmt::format("{} x {}", shown(state, spec.width_mm), shown(state, spec.height_mm));
    words += fmt::format(", {} deep", shown(state, spec.depth_mm));
    if (spec.drill_mm > 0) words += fmt::format(", drill {} dia", shown(state, spec.drill_mm));
    if (spec.fixing_mm > 0) words += fmt::format(", screws {} apart", shown(state, spec.fixing_mm));
    return words;
}
} // namespace

void drawBoxView(State& state, ImVec2 low, ImVec2 high) {
    const auto& plate = state.bench.composed;
    const Sheet sheet = sheetFor(state, low, high);
    plateOutline(sheet);
    for (const auto& one : plate.boxes)
        box(sheet, one);
    for (const auto& at : plate.fixings_mm)
        fixing(sheet, at);
    const ImVec2 centre = sheet.origin;
    const float r = 5 * state.scale;
    sheet.list.AddCircle(centre, r, packed(state.tokens->accent), 20, 1.6F);
    sheet.list.AddCircleFilled(centre, 2 * state.scale, packed(state.tokens->accent), 12);
    centreDimensions(sheet);
    sizeDimensions(sheet);
    heightReference(sheet);
    if (plate.boxes.empty()) return;
    const auto count = plate.boxes.size();
    smallText(sheet, {low.x + 16 * state.scale, low.y + 22 * state.scale}, 0,
              fmt::format("{} box{}, {}", count, count == 1 ? "" : "es",
                          sizeWords(state, plate.boxes.front().spec)),
              state.tokens->ink);
}

} // namespace gangway::app::bench
