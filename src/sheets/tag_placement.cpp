#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gangway::sheets {

namespace {

constexpr double kTextGap = 0.8;     ///< clear paper around any text
constexpr double kLeaderGap = 1.6;   ///< between a plate and its own capsule at the least
constexpr double kLeaderClear = 0.3; ///< between a leader and what it passes
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

using Leader = std::pair<Pt, Pt>;

/// Leader from a tag's place to the plate's outline.
Leader leaderOf(const Rect& place, const Rect& target) {
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

bool runsOver(const Leader& leader, const Rect& rect) {
    return crosses(rect, leader.first, leader.second);
}

bool cross(const Leader& a, const Leader& b) {
    const auto side = [](Pt p, Pt q, Pt r) { return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x); };
    return side(a.first, a.second, b.first) * side(a.first, a.second, b.second) < 0 &&
           side(b.first, b.second, a.first) * side(b.first, b.second, a.second) < 0;
}

/// A place for a tag that nothing fixed is in the way of.
struct Candidate {
    Rect place;
    Leader leader;
    double cost = 0;
};

/// At most `most` of the nearest free places, best first.
std::vector<Candidate> candidatesFor(const Tag& tag, const std::vector<Tag>& tags, const Occupancy& occupancy,
                                     const Rect& region, const std::vector<Offset>& offsets,
                                     std::size_t most) {
    const TagSize size = sizeOf(tag);
    const Pt start{tag.target.centre().x, tag.target.top + kLeaderGap + 2 + size.height / 2};
    std::vector<Candidate> candidates;
    for (const Offset& offset : offsets) {
        if (candidates.size() == most) break;
        const Rect place = around({start.x + offset.dx, start.y + offset.dy}, size.width, size.height);
        if (overlaps(place, tag.target.grown(kLeaderGap)) || !occupancy.isFree(place)) continue;
        const Leader leader = leaderOf(place, tag.target);
        if (!occupancy.leaderIsFree(leader.first, leader.second)) continue;
        // The leader must not run over another plate of the view.
        if (std::ranges::any_of(
                tags, [&](const Tag& other) { return other.id != tag.id && runsOver(leader, other.target); }))
            continue;
        candidates.push_back({place, leader, costOf(offset, place, tag, occupancy, region)});
    }
    std::ranges::stable_sort(candidates, {}, &Candidate::cost);
    return candidates;
}

/// The nearest place clear of words and tags, whatever its leader runs over; over the plate where there is
/// none.
Rect nearestFree(const Tag& tag, const Occupancy& occupancy, const std::vector<Offset>& offsets) {
    const TagSize size = sizeOf(tag);
    const Pt start{tag.target.centre().x, tag.target.top + kLeaderGap + 2 + size.height / 2};
    for (const Offset& offset : offsets) {
        const Rect place = around({start.x + offset.dx, start.y + offset.dy}, size.width, size.height);
        if (!overlaps(place, tag.target.grown(kLeaderGap)) && occupancy.isFree(place)) return place;
    }
    return around(start, size.width, size.height);
}

bool collide(const Candidate& a, const Candidate& b) {
    return overlaps(a.place.grown(kTextGap), b.place) || runsOver(a.leader, b.place.grown(kLeaderClear)) ||
           runsOver(b.leader, a.place.grown(kLeaderClear)) || cross(a.leader, b.leader);
}

/// One candidate for each tag so that no two collide: each takes the place that costs least, where a place
/// that drives others out of theirs costs more the more often those were driven out before (weights that grow
/// lead out of dead ends: Morris, The Breakout Method for Escaping from Local Minima (AAAI 1993)). A tag
/// without a candidate, and those still in each other's way after many rounds, have none.
std::vector<const Candidate*> solve(const std::vector<std::vector<Candidate>>& candidates) {
    constexpr double kDrivenOut = 6; // mm of distance that the first ejection is worth
    std::vector<const Candidate*> chosen(candidates.size(), nullptr);
    std::vector<double> weight(candidates.size(), 1);
    std::vector<std::size_t> queue;
    for (std::size_t i = 0; i < candidates.size(); ++i)
        if (!candidates[i].empty()) queue.push_back(i);
    std::size_t rounds = 80 * candidates.size();
    for (std::size_t next = 0; next < queue.size() && rounds > 0; ++next, --rounds) {
        const std::size_t tag = queue[next];
        double least = std::numeric_limits<double>::infinity();
        for (const Candidate& candidate : candidates[tag]) {
            if (candidate.cost >= least) break;
            double cost = candidate.cost;
            for (std::size_t other = 0; other < chosen.size() && cost < least; ++other)
                if (chosen[other] != nullptr && collide(candidate, *chosen[other]))
                    cost += kDrivenOut * weight[other];
            if (cost >= least) continue;
            least = cost;
            chosen[tag] = &candidate;
        }
        for (std::size_t other = 0; other < chosen.size(); ++other) {
            if (other == tag || chosen[other] == nullptr || !collide(*chosen[tag], *chosen[other])) continue;
            chosen[other] = nullptr;
            weight[other] += 1;
            queue.push_back(other);
        }
    }
    return chosen;
}

/// Returns its leader.
Leader drawTag(std::vector<Item>& items, const Tag& tag, const Rect& place) {
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
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive)) takeWords(extentOf(*text));
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            for (const auto& text : dimension->texts)
                takeWords(extentOf(text));
    }
}

bool Occupancy::isFree(const Rect& rect) const {
    const Rect grown = rect.grown(kTextGap);
    return std::none_of(taken_.begin(), taken_.end(),
                        [&](const Rect& taken) { return overlaps(taken, grown); }) &&
           std::none_of(leaders_.begin(), leaders_.end(), [&](const Segment& leader) {
               return crosses(rect.grown(kLeaderClear), leader.from, leader.to);
           });
}

bool Occupancy::leaderIsFree(Pt from, Pt to) const {
    return std::none_of(words_.begin(), words_.end(),
                        [&](const Rect& word) { return crosses(word.grown(kLeaderClear), from, to); });
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

std::vector<std::size_t> placeTags(std::vector<Item>& items, Occupancy& occupancy,
                                   const std::vector<Tag>& tags, const Rect& region) {
    const auto offsets = offsetsAround(kStepX, kStepY, kStepsX, kStepsY);
    for (const Tag& tag : tags)
        occupancy.take(tag.target.grown(0.3));
    std::vector<std::vector<Candidate>> candidates;
    std::vector<const Candidate*> chosen;
    // Few places for each tag are enough nearly everywhere; all are looked at where they are not.
    for (const std::size_t most : {std::size_t{60}, offsets.size()}) {
        candidates.clear();
        for (const Tag& tag : tags)
            candidates.push_back(candidatesFor(tag, tags, occupancy, region, offsets, most));
        chosen = solve(candidates);
        if (std::ranges::find(chosen, nullptr) == chosen.end()) break;
    }
    const auto put = [&](const Tag& tag, const Rect& place) {
        const auto [from, to] = drawTag(items, tag, place);
        occupancy.take(place);
        occupancy.takeLeader(from, to);
    };
    std::vector<std::size_t> without_room;
    for (std::size_t i = 0; i < tags.size(); ++i) {
        if (chosen[i] != nullptr)
            put(tags[i], chosen[i]->place);
        else
            without_room.push_back(i);
    }
    // What is left stands over lines, but on no words.
    for (const std::size_t i : without_room)
        put(tags[i], nearestFree(tags[i], occupancy, offsets));
    return without_room;
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
