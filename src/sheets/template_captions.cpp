#include "sheets/template_captions.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <span>

namespace gangway::sheets {

namespace {

constexpr double kTagPart = 0.3; ///< of the captions' width, at most
constexpr double kBesideTag = 3; ///< from the tag to the words beside it
constexpr double kFromMarks = 0.8;
constexpr double kClear = 0.7; ///< words and the arrow from any mark

/// From one baseline down to the next, of lines of different heights.
double dropTo(const std::string& upper, double upper_mm, const std::string& lower, double lower_mm) {
    constexpr double kBetween = 0.5;
    return std::max(1.5 * lower_mm, drawing::measure(upper, upper_mm).descent_mm +
                                        drawing::measure(lower, lower_mm).ascent_mm + kBetween);
}

double widest(const std::vector<std::string>& lines, double text_mm) {
    double width = 0;
    for (const std::string& line : lines)
        width = std::max(width, drawing::measure(line, text_mm).width_mm);
    return width;
}

double descentOf(const std::vector<std::string>& lines, double text_mm) {
    return lines.empty() ? 0 : drawing::measure(lines.back(), text_mm).descent_mm;
}

struct IsCrossed {
    const Rect& place;
    bool along(std::span<const Pt> points) const {
        for (std::size_t i = 1; i < points.size(); ++i)
            if (crosses(place, points[i - 1], points[i])) return true;
        return false;
    }
    bool operator()(const drawing::Line& line) const { return crosses(place, line.from, line.to); }
    bool operator()(const drawing::Polyline& polyline) const {
        return along(polyline.points) ||
               (polyline.closed && crosses(place, polyline.points.back(), polyline.points.front()));
    }
    bool operator()(const drawing::Arc& arc) const {
        constexpr int kSteps = 48;
        std::vector<Pt> points;
        for (int i = 0; i <= kSteps; ++i) {
            const double degrees = arc.start_deg + (arc.end_deg - arc.start_deg) * i / kSteps;
            const double angle_rad = degrees * std::numbers::pi / 180;
            points.push_back({arc.centre.x + arc.radius_mm * std::cos(angle_rad),
                              arc.centre.y + arc.radius_mm * std::sin(angle_rad)});
        }
        return along(points);
    }
    template <class Other>
    bool operator()(const Other& other) const {
        return overlaps(place, extentOf(drawing::Primitive(other)));
    }
};

} // namespace

TemplateCaptions::TemplateCaptions(const CaptionTexts& texts, double width_mm) : texts_(texts) {
    const double width = width_mm - 2 * kTemplatePad;
    tag_mm_ = kNumberText;
    for (const double height : {kTitleText, kValueText, kNoteText})
        if (drawing::measure(texts.tag, tag_mm_).width_mm > kTagPart * width) tag_mm_ = height;
    // A plate without a tag has its id, which may be long.
    tag_ = wrapped(texts.tag, tag_mm_, kTagPart * width);
    beside_mm_ = widest(tag_, tag_mm_) + kBesideTag;
    room_mm_ = width - beside_mm_;
    double deep = paragraphHeight(tag_, tag_mm_) + descentOf(tag_, tag_mm_);
    for (const Line& line : beside(texts.part))
        deep = std::max(deep, line.baseline_mm + drawing::measure(line.words, line.text_mm).descent_mm);
    above_mm_ = kTemplatePad + deep + kFromMarks;
    notes_ = wrapped(texts.notes, kNoteText, width);
    below_mm_ = kFromMarks + paragraphHeight(notes_, kNoteText) + descentOf(notes_, kNoteText) + kTemplatePad;
}

std::vector<TemplateCaptions::Line> TemplateCaptions::beside(const std::string& part) const {
    std::vector<Line> lines;
    const bool large = drawing::measure(texts_.place, kValueText).width_mm <= room_mm_;
    const auto add = [&](const std::string& words, double text_mm) {
        for (const std::string& line : wrapped(words, text_mm, room_mm_)) {
            const double drop =
                lines.empty() ? text_mm : dropTo(lines.back().words, lines.back().text_mm, line, text_mm);
            lines.push_back({line, text_mm, (lines.empty() ? 0 : lines.back().baseline_mm) + drop});
        }
    };
    add(texts_.place, large ? kValueText : kNoteText);
    // Where boxes and plate need two lines, each has its own.
    const std::size_t plate = texts_.boxes.find("; ");
    if (plate == std::string::npos || drawing::measure(texts_.boxes, kNoteText).width_mm <= room_mm_) {
        add(texts_.boxes, kNoteText);
    } else {
        add(texts_.boxes.substr(0, plate), kNoteText);
        add(texts_.boxes.substr(plate + 2), kNoteText);
    }
    add(part, kNoteText);
    return lines;
}

void TemplateCaptions::draw(std::vector<Item>& items, const std::string& id, const Rect& cell,
                            const std::string& part) const {
    Ink ink(items, "text", id);
    const double left = cell.left + kTemplatePad;
    const double top = cell.top - kTemplatePad;
    ink.paragraph({left, top - tag_mm_}, tag_, tag_mm_);
    for (const Line& line : beside(part))
        ink.text({left + beside_mm_, top - line.baseline_mm}, line.words, line.text_mm);
    ink.paragraph({left, cell.bottom + below_mm_ - kFromMarks - kNoteText}, notes_, kNoteText);
}

bool isFree(const std::vector<Item>& marks, const Rect& place) {
    const Rect around = place.grown(kClear);
    return std::ranges::none_of(
        marks, [&](const Item& mark) { return std::visit(IsCrossed{around}, mark.primitive); });
}

Pt freePlace(const std::vector<Item>& marks, const Rect& window, double width_mm, double height_mm) {
    constexpr double kStep = 0.5;
    const Pt corner{window.right - kClear - width_mm, window.top - kClear - height_mm};
    for (double y = corner.y; y >= window.bottom + kClear; y -= kStep)
        for (double x = corner.x; x >= window.left + kClear; x -= kStep)
            if (isFree(marks, {x, y, x + width_mm, y + height_mm})) return {x, y};
    return corner;
}

} // namespace gangway::sheets
