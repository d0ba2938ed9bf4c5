// One linear dimension: extension lines, dimension line, oblique strokes and its value.
#include "drawing/dimension_parts.hpp"

#include "drawing/face.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::drawing {

Line dimensionStroke(Pt crossing, double reading_deg) {
    // Lower left to upper right as read (common practice, no source), 45 degrees to the dimension line.
    const double angle = (reading_deg + 45) * std::numbers::pi / 180;
    const Pt half{kStrokeLength_mm / 2 * std::cos(angle), kStrokeLength_mm / 2 * std::sin(angle)};
    return {
        {crossing.x - half.x, crossing.y - half.y}, {crossing.x + half.x, crossing.y + half.y}, kStrokePen};
}

namespace {

constexpr double kGap_mm = 1;       // clear of the feature, where there is room
constexpr double kTextAbove_mm = 1; // text over its line
constexpr double kLeastInside_mm = 10;
constexpr double kBesideStroke_mm = 2.5;

double readingAngle_deg(double angle_deg) {
    constexpr double kSlack_deg = 1e-6;
    if (angle_deg > 90 + kSlack_deg) return angle_deg - 180;
    if (angle_deg <= -90 + kSlack_deg) return angle_deg + 180;
    return angle_deg;
}

Pt moved(Pt from, Pt direction, double by) {
    return {from.x + direction.x * by, from.y + direction.y * by};
}

} // namespace

Dimension linear(Pt from, Pt to, double offset_mm, double measured_mm, double text_height_mm,
                 const std::string& id, bool auxiliary_in_brackets, Units units) {
    Dimension dimension;
    dimension.kind = Dimension::Kind::Linear;
    dimension.measured_mm = measured_mm;
    dimension.id = id;
    dimension.from = from;
    dimension.to = to;

    const double room = std::hypot(to.x - from.x, to.y - from.y);
    const Pt along = room > 0 ? Pt{(to.x - from.x) / room, (to.y - from.y) / room} : Pt{1, 0};
    const Pt left{-along.y, along.x};
    const double side = offset_mm < 0 ? -1 : 1;
    const Pt start = moved(from, left, offset_mm);
    const Pt end = moved(to, left, offset_mm);

    const double angle_deg = std::atan2(along.y, along.x) * 180 / std::numbers::pi;
    const double reading_deg = readingAngle_deg(angle_deg);
    const bool flipped = std::abs(reading_deg - angle_deg) > 1;
    const Pt reading = flipped ? Pt{-along.x, -along.y} : along;
    const Pt up{-reading.y, reading.x};
    const Pt first = flipped ? end : start; // as read
    const Pt last = flipped ? start : end;

    if (std::abs(offset_mm) > kGap_mm * 2) {
        for (const auto& [feature, line_end] : {std::pair{from, start}, std::pair{to, end}})
            dimension.lines.push_back({moved(feature, left, side * kGap_mm),
                                       moved(line_end, left, side * kExtensionPast_mm), kThinPen});
    }

    const std::string value = number(measured_mm, units);
    Text text;
    text.text = auxiliary_in_brackets ? fmt::format("({})", value) : value;
    text.height_mm = text_height_mm;
    text.turn_deg = reading_deg;
    text.knock_out = true;
    const double width = measure(text.text, text_height_mm).width_mm;
    const bool inside = room >= kLeastInside_mm && room >= width + 1;
    Pt line_last = last;
    if (inside) {
        text.align = Align::Centre;
        text.at = moved({(first.x + last.x) / 2, (first.y + last.y) / 2}, up, kTextAbove_mm);
    } else {
        text.align = Align::Left;
        text.at = moved(moved(last, reading, kBesideStroke_mm), up, kTextAbove_mm);
        line_last = moved(last, reading, kBesideStroke_mm + width);
    }
    dimension.lines.push_back({first, line_last, kThinPen});
    dimension.lines.push_back(dimensionStroke(start, reading_deg));
    dimension.lines.push_back(dimensionStroke(end, reading_deg));
    dimension.texts.push_back(std::move(text));
    return dimension;
}

} // namespace gangway::drawing
