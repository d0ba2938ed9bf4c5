// Extents of text on paper, and which texts touch.
#include "drawing/face.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace gangway::drawing {

namespace {

struct Turned {
    Pt along; // unit vector of the baseline
    Pt up;    // unit vector of the letters
};

Turned turned(double turn_deg) {
    // Quarter turns are exact, so that vertical numbers keep clean coordinates.
    const double quarter = turn_deg / 90;
    if (quarter == std::round(quarter)) {
        static constexpr std::array<Pt, 4> kAxes{{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};
        const auto k = static_cast<std::size_t>(((static_cast<long long>(quarter) % 4) + 4) % 4);
        return {kAxes[k], kAxes[(k + 1) % 4]};
    }
    const double angle = turn_deg * std::numbers::pi / 180;
    return {{std::cos(angle), std::sin(angle)}, {-std::sin(angle), std::cos(angle)}};
}

double startFromAnchor(Align align, double width_mm) {
    switch (align) {
    case Align::Left:
        return 0;
    case Align::Centre:
        return -width_mm / 2;
    case Align::Right:
        return -width_mm;
    }
    return 0;
}

Pt offset(Pt from, const Turned& axes, double along, double up) {
    return {from.x + axes.along.x * along + axes.up.x * up, from.y + axes.along.y * along + axes.up.y * up};
}

struct Box {
    std::size_t item = 0;
    std::vector<Pt> corners;
    double left = 0, right = 0, bottom = 0, top = 0;
};

void addBox(std::vector<Box>& boxes, std::size_t item, const Text& text, double margin_mm) {
    if (text.text.empty()) return;
    Box box{item, textCorners(text, margin_mm)};
    const auto [x_min, x_max] =
        std::minmax_element(box.corners.begin(), box.corners.end(), [](Pt a, Pt b) { return a.x < b.x; });
    const auto [y_min, y_max] =
        std::minmax_element(box.corners.begin(), box.corners.end(), [](Pt a, Pt b) { return a.y < b.y; });
    box.left = x_min->x;
    box.right = x_max->x;
    box.bottom = y_min->y;
    box.top = y_max->y;
    boxes.push_back(std::move(box));
}

// Separating axes of two rectangles: the sides of either (Ericson, Real-Time Collision Detection
// (2005), 4.4.1).
bool separated(const Box& a, const Box& b) {
    for (const Box* sides : {&a, &b}) {
        for (std::size_t side = 0; side < 2; ++side) {
            const Pt from = sides->corners[side];
            const Pt to = sides->corners[side + 1];
            const Pt axis{to.x - from.x, to.y - from.y};
            const auto span = [&](const Box& box) {
                std::array<double, 4> along{};
                std::transform(box.corners.begin(), box.corners.end(), along.begin(),
                               [&](Pt p) { return p.x * axis.x + p.y * axis.y; });
                return std::minmax({along[0], along[1], along[2], along[3]});
            };
            const auto [a_low, a_high] = span(a);
            const auto [b_low, b_high] = span(b);
            if (a_high <= b_low || b_high <= a_low) return true;
        }
    }
    return false;
}

} // namespace

TextBox measure(const std::string& text, double height_mm) {
    const Face& face = Face::drawingFace();
    const double unit_mm = height_mm / face.capHeight();
    TextBox box;
    for (const char32_t code : codePoints(text)) {
        const Glyph& glyph = face.glyph(code);
        box.width_mm += glyph.advance * unit_mm;
        box.ascent_mm = std::max(box.ascent_mm, glyph.y_max * unit_mm);
        box.descent_mm = std::max(box.descent_mm, -glyph.y_min * unit_mm);
    }
    return box;
}

Pt baselineStart(const Text& text) {
    const double width = text.align == Align::Left ? 0 : measure(text.text, text.height_mm).width_mm;
    return offset(text.at, turned(text.turn_deg), startFromAnchor(text.align, width), 0);
}

std::vector<Pt> textCorners(const Text& text, double margin_mm) {
    const TextBox box = measure(text.text, text.height_mm);
    const Turned axes = turned(text.turn_deg);
    const double start = startFromAnchor(text.align, box.width_mm);
    const double left = start - margin_mm;
    const double right = start + box.width_mm + margin_mm;
    const double bottom = -box.descent_mm - margin_mm;
    const double top = box.ascent_mm + margin_mm;
    return {offset(text.at, axes, left, bottom), offset(text.at, axes, right, bottom),
            offset(text.at, axes, right, top), offset(text.at, axes, left, top)};
}

std::vector<std::pair<std::size_t, std::size_t>> touchingTexts(const Sheet& sheet, double margin_mm) {
    std::vector<Box> boxes;
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        const Primitive& primitive = sheet.items[i].primitive;
        // Half the margin round each: two texts are then `margin_mm` apart when their boxes just meet.
        if (const auto* text = std::get_if<Text>(&primitive)) addBox(boxes, i, *text, margin_mm / 2);
        if (const auto* dimension = std::get_if<Dimension>(&primitive))
            for (const Text& text : dimension->texts)
                addBox(boxes, i, text, margin_mm / 2);
    }
    std::sort(boxes.begin(), boxes.end(), [](const Box& a, const Box& b) { return a.left < b.left; });

    std::vector<std::pair<std::size_t, std::size_t>> touching;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        for (std::size_t k = i + 1; k < boxes.size() && boxes[k].left < boxes[i].right; ++k) {
            if (boxes[k].top <= boxes[i].bottom || boxes[i].top <= boxes[k].bottom) continue;
            if (!separated(boxes[i], boxes[k])) touching.push_back(std::minmax(boxes[i].item, boxes[k].item));
        }
    }
    std::sort(touching.begin(), touching.end());
    touching.erase(std::unique(touching.begin(), touching.end()), touching.end());
    return touching;
}

} // namespace gangway::drawing
