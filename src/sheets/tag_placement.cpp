#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gangway::sheets {

namespace {

constexpr double kTextGap = 0.8;   ///< clear paper around any text
constexpr double kLeaderGap = 1.6; ///< between a plate and its own capsule at the least
constexpr double kStepX = 2.5;
constexpr double kStepY = 1.75;
constexpr int kStepsX = 16;
constexpr int kStepsY = 24;
constexpr double kCostBelow = 4;    ///< mm of distance that a place above the plate is worth
constexpr double kCostLine = 1.5;   ///< for each line covered
constexpr double kCostAcross = 30;  ///< for a place over the wall's outline
constexpr double kCostOutside = 16; ///< for a place outside the wall

struct Offset {
    double dx, dy, distance;
};

/// Offsets around a point, nearest first; ties from above to below, then from right to left.
std::vector<Offset> offsetsAround(double step_x, double step_y, int steps_x, int steps_y) {
    std::vector<Offset> offsets;
    for (int ix = -steps_x; ix <= steps_x; ++ix)
        for (int iy = -steps_y; iy <= steps_y; ++iy)
            offsets.push_back({ix * step_x, iy * step_y, std::hypot(ix * step_x, iy * step_y)});
    std::sort(offsets.begin(), offsets.end(), [](const Offset& a, const Offset& b) {
        if (a.distance != b.distance) return a.distance < b.distance;
        if (a.dy != b.dy) return a.dy > b.dy;
        return a.dx > b.dx;
    });
    return offsets;
}

struct TagSize {
    double width = 0;
    double height = 0;
    double note_width = 0;
};

TagSize sizeOf(const Tag& tag) {
    TagSize size{capsuleWidth(tag.text), kCapsuleHeight, 0};
    if (!tag.note.empty()) {
        size.note_width = drawing::measure(tag.note, kNoteText).width_mm;
        size.height += kNoteText + 1.6;
        size.width = std::max(size.width, size.note_width + 0.6);
    }
    return size;
}

Rect around(Pt centre, double width, double height) {
    return {centre.x - width / 2, centre.y - height / 2, centre.x + width / 2, centre.y + height / 2};
}

/// The point of a rectangle nearest to p.
Pt nearestOn(const Rect& rect, Pt p) {
    return {std::clamp(p.x, rect.left, rect.right), std::clamp(p.y, rect.bottom, rect.top)};
}

/// Leader from a tag's place to the plate's outline.
std::pair<Pt, Pt> leaderOf(const Rect& place, const Rect& target) {
    const Pt on_target = nearestOn(target, place.centre());
    return {nearestOn(place, on_target), on_target};
}

double costOf(const Offset& offset, const Rect& place, const Tag& tag, const Occupancy& occupancy,
              const Rect& region) {
    double cost = offset.distance;
    if (place.centre().y < tag.target.centre().y) cost += kCostBelow;
    if (!inside(place, region)) cost += overlaps(place, region) ? kCostAcross : kCostOutside;
    return cost + kCostLine * occupancy.linesUnder(place);
}

/// The leader must not run over another plate of the view, nor over a tag that stands already.
bool leaderIsClear(const Rect& place, const Tag& tag, const std::vector<Tag>& tags,
                   const std::vector<Rect>& standing) {
    const auto [from, to] = leaderOf(place, tag.target);
    return std::none_of(tags.begin(), tags.end(),
                        [&, a = from, b = to](const Tag& other) {
                            return other.id != tag.id && crosses(other.target, a, b);
                        }) &&
           std::none_of(standing.begin(), standing.end(),
                        [a = from, b = to](const Rect& other) { return crosses(other.grown(0.3), a, b); });
}

Rect bestPlace(const Tag& tag, const TagSize& size, const std::vector<Tag>& tags,
               const std::vector<Rect>& standing, const Occupancy& occupancy, const Rect& region,
               const std::vector<Offset>& offsets) {
    const Pt start{tag.target.centre().x, tag.target.top + kLeaderGap + 2 + size.height / 2};
    Rect best = around(start, size.width, size.height);
    double best_cost = std::numeric_limits<double>::infinity();
    for (const Offset& offset : offsets) {
        if (offset.distance >= best_cost) break;
        const Rect place = around({start.x + offset.dx, start.y + offset.dy}, size.width, size.height);
        if (overlaps(place, tag.target.grown(kLeaderGap)) || !occupancy.isFree(place)) continue;
        if (!leaderIsClear(place, tag, tags, standing)) continue;
        const double cost = costOf(offset, place, tag, occupancy, region);
        if (cost >= best_cost) continue;
        best_cost = cost;
        best = place;
    }
    return best;
}

/// Returns its leader.
std::pair<Pt, Pt> drawTag(std::vector<Item>& items, const Tag& tag, const Rect& place) {
    Ink lines(items, "plates", tag.id);
    Ink texts(items, "text", tag.id);
    const Rect capsule{place.centre().x - capsuleWidth(tag.text) / 2, place.top - kCapsuleHeight,
                       place.centre().x + capsuleWidth(tag.text) / 2, place.top};
    const auto [from, to] = leaderOf(tag.target.centre().y > place.centre().y ? capsule : place, tag.target);
    lines.line(from, to, kThin);
    drawCapsule(lines, texts, capsule.centre(), tag.text);
    if (tag.note.empty()) return {from, to};
    drawing::Text note;
    note.at = {place.centre().x, place.bottom + 0.8};
    note.text = tag.note;
    note.height_mm = kNoteText;
    note.align = drawing::Align::Centre;
    note.knock_out = true;
    texts.text(note);
    return {from, to};
}

/// Width and height of a block of lines.
Rect blockSize(const Label& label) {
    double width = 0;
    for (const std::string& line : label.lines)
        width = std::max(width, drawing::measure(line, label.height_mm).width_mm);
    const double height = paragraphHeight(label.lines, label.height_mm);
    return label.turn_deg == 0 ? Rect{0, 0, width, height} : Rect{0, 0, height, width};
}

std::optional<Rect> roomFor(const Label& label, const Rect& size, const Occupancy& occupancy,
                            const Rect& region) {
    constexpr int kSteps = 12;
    const double room_x = region.width() - size.width();
    const double room_y = region.height() - size.height();
    if (room_x < 0 || room_y < 0) return std::nullopt;
    const auto offsets = offsetsAround(room_x / 2 / kSteps, room_y / 2 / kSteps, kSteps, kSteps);
    std::optional<Rect> best;
    int fewest_lines = std::numeric_limits<int>::max();
    for (const Offset& offset : offsets) {
        const Pt centre = label.within.centre();
        const Rect place = around({centre.x + offset.dx, centre.y + offset.dy}, size.width(), size.height());
        if (!occupancy.isFree(place)) continue;
        const int lines = occupancy.linesUnder(place);
        if (lines >= fewest_lines) continue;
        fewest_lines = lines;
        best = place;
        if (lines == 0) break;
    }
    return best;
}

void drawLabel(std::vector<Item>& items, const Label& label, const Rect& place) {
    Ink ink(items, label.layer, label.id);
    if (!overlaps(place, label.within)) {
        const Pt target = label.within.centre();
        ink.line(nearestOn(place, target), target, kThin);
    }
    if (label.turn_deg != 0) {
        drawing::Text text;
        text.at = {place.right, place.centre().y};
        text.text = label.lines.front();
        text.height_mm = label.height_mm;
        text.align = drawing::Align::Centre;
        text.turn_deg = label.turn_deg;
        text.colour = label.colour;
        text.knock_out = true;
        ink.text(text);
        return;
    }
    double y = place.top - label.height_mm;
    for (std::size_t i = 0; i < label.lines.size(); ++i) {
        if (i > 0) y -= lineDrop(label.lines[i - 1], label.lines[i], label.height_mm);
        drawing::Text text;
        text.at = {place.centre().x, y};
        text.text = label.lines[i];
        text.height_mm = label.height_mm;
        text.align = drawing::Align::Centre;
        text.colour = label.colour;
        text.knock_out = true;
        ink.text(text);
    }
}

} // namespace

void Occupancy::takeTexts(const std::vector<Item>& items) {
    for (const Item& item : items) {
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive)) take(extentOf(*text));
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            for (const auto& text : dimension->texts)
                take(extentOf(text));
    }
}

bool Occupancy::isFree(const Rect& rect) const {
    const Rect grown = rect.grown(kTextGap);
    return std::none_of(taken_.begin(), taken_.end(),
                        [&](const Rect& taken) { return overlaps(taken, grown); }) &&
           std::none_of(leaders_.begin(), leaders_.end(), [&](const Segment& leader) {
               return crosses(rect.grown(0.3), leader.from, leader.to);
           });
}

int Occupancy::linesUnder(const Rect& rect) const {
    return static_cast<int>(std::count_if(lines_.begin(), lines_.end(), [&](const Segment& segment) {
        return crosses(rect, segment.from, segment.to);
    }));
}

void placeLabels(std::vector<Item>& items, Occupancy& occupancy, const std::vector<Label>& labels) {
    for (const Label& label : labels) {
        if (label.lines.empty()) continue;
        const Rect size = blockSize(label);
        auto place = roomFor(label, size, occupancy, label.within);
        // A label that must stand looks for room in ever wider circles round its own region.
        for (double margin = 8; !place && label.need == Label::Need::Always && margin <= 128; margin *= 2)
            place = roomFor(label, size, occupancy, label.within.grown(margin));
        if (!place) continue;
        drawLabel(items, label, *place);
        occupancy.take(place->grown(0.4));
    }
}

void placeTags(std::vector<Item>& items, Occupancy& occupancy, const std::vector<Tag>& tags,
               const Rect& region) {
    const auto offsets = offsetsAround(kStepX, kStepY, kStepsX, kStepsY);
    for (const Tag& tag : tags)
        occupancy.take(tag.target.grown(0.3));
    std::vector<Rect> standing;
    for (const Tag& tag : tags) {
        const TagSize size = sizeOf(tag);
        const Rect place = bestPlace(tag, size, tags, standing, occupancy, region, offsets);
        const auto [from, to] = drawTag(items, tag, place);
        occupancy.take(place);
        occupancy.takeLeader(from, to);
        standing.push_back(place);
    }
}

double capsuleWidth(const std::string& text) {
    return std::max(drawing::measure(text, kValueText).width_mm + 3.6, kCapsuleHeight + 2);
}

Rect drawCapsule(Ink& lines, Ink& texts, Pt centre, const std::string& text) {
    const double radius = kCapsuleHeight / 2;
    const Rect rect = around(centre, capsuleWidth(text), kCapsuleHeight);
    const Pt left{rect.left + radius, centre.y};
    const Pt right{rect.right - radius, centre.y};
    std::vector<Pt> outline;
    const auto half = disc({0, 0}, radius);
    const std::size_t quarter = half.size() / 4;
    for (std::size_t i = 0; i <= half.size() / 2; ++i) { // right end, from the bottom up
        const Pt p = half[(half.size() - quarter + i) % half.size()];
        outline.push_back({right.x + p.x, right.y + p.y});
    }
    for (std::size_t i = 0; i <= half.size() / 2; ++i) { // left end, from the top down
        const Pt p = half[(quarter + i) % half.size()];
        outline.push_back({left.x + p.x, left.y + p.y});
    }
    lines.fill(outline, drawing::kWhite);
    lines.line({left.x, rect.bottom}, {right.x, rect.bottom}, kNarrow);
    lines.line({right.x, rect.top}, {left.x, rect.top}, kNarrow);
    lines.arc(right, radius, 270, 450, kNarrow);
    lines.arc(left, radius, 90, 270, kNarrow);
    texts.text({centre.x, centre.y - kValueText / 2}, text, kValueText, drawing::Align::Centre);
    return rect;
}

} // namespace gangway::sheets
