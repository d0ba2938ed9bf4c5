// Running (superimposed) dimensions: one line, one origin, a value at each extension line; crowded values are
// spread along the line as little as possible.
#include "drawing/dimension_parts.hpp"

#include "drawing/face.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::drawing {

namespace {

constexpr double kTextClearance_mm = 1; // between two values
constexpr double kTextGap_mm = 0.8;     // between an extension line's end and its value
constexpr double kSamePlace_mm = 0.05;  // on paper
constexpr double kLineBeyond_mm = 2;    // the dimension line past its last extension line

enum class Direction { Row, Column };

// A point by its place along the dimension line and across it.
Pt place(Direction direction, double along, double across) {
    return direction == Direction::Row ? Pt{along, across} : Pt{across, along};
}
double acrossOf(Direction direction, Pt p) {
    return direction == Direction::Row ? p.y : p.x;
}

struct Entry {
    Pt from;
    double at_mm = 0;
    double value_mm = 0;
    std::string text;
    std::string id;
    bool origin = false;
    bool has_feature = true;
    double slot_mm = 0;
};

// Least movement, in the sense of squares, that keeps order and pitch: after taking i x pitch off each place
// it is isotonic regression, solved by pooling neighbours that are out of order (Barlow, Bartholomew,
// Bremner, Brunk, Statistical Inference under Order Restrictions (1972), 1.2). The origin's place is fixed,
// which bounds the others (the bounded solution is the unbounded one clamped).
void spread(std::vector<Entry>& entries, double pitch_mm) {
    struct Pool {
        double sum = 0;
        std::size_t count = 0;
        double mean() const { return sum / static_cast<double>(count); }
    };
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        pools.push_back({entries[i].at_mm - static_cast<double>(i) * pitch_mm, 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
            const Pool last = pools.back();
            pools.pop_back();
            pools.back().sum += last.sum;
            pools.back().count += last.count;
        }
    }
    std::size_t origin = 0;
    while (origin < entries.size() && !entries[origin].origin)
        ++origin;
    const double fixed = entries[origin].at_mm - static_cast<double>(origin) * pitch_mm;
    std::size_t i = 0;
    for (const Pool& pool : pools) {
        for (std::size_t k = 0; k < pool.count; ++k, ++i) {
            const double clamped = i < origin   ? std::min(pool.mean(), fixed)
                                   : i > origin ? std::max(pool.mean(), fixed)
                                                : fixed;
            entries[i].slot_mm = clamped + static_cast<double>(i) * pitch_mm;
        }
    }
}

void mergeInto(Entry& kept, const Entry& more, Direction direction, double line_mm) {
    const double kept_reach = std::abs(acrossOf(direction, kept.from) - line_mm);
    const double more_reach = std::abs(acrossOf(direction, more.from) - line_mm);
    if (!kept.has_feature || more_reach > kept_reach) kept.from = more.from;
    kept.has_feature = true;
    if (more.id.empty()) return;
    if (!kept.id.empty()) kept.id += ' ';
    kept.id += more.id;
}

std::vector<Entry> entriesOf(Direction direction, double origin_mm, double line_mm,
                             std::vector<RunningMark> marks, const RunningStyle& style) {
    std::sort(marks.begin(), marks.end(), [](const RunningMark& a, const RunningMark& b) {
        if (a.at_mm != b.at_mm) return a.at_mm < b.at_mm;
        if (a.value_mm != b.value_mm) return a.value_mm < b.value_mm;
        if (a.id != b.id) return a.id < b.id;
        return a.from.x != b.from.x ? a.from.x < b.from.x : a.from.y < b.from.y;
    });
    Entry origin;
    origin.at_mm = origin_mm;
    origin.from = place(direction, origin_mm, line_mm);
    origin.value_mm = style.origin_value_mm;
    origin.text = number(style.origin_value_mm, style.units);
    origin.origin = true;
    origin.has_feature = false;

    std::vector<Entry> entries;
    bool origin_in = false;
    for (RunningMark& mark : marks) {
        const Entry entry{mark.from, mark.at_mm, mark.value_mm, number(mark.value_mm, style.units),
                          std::move(mark.id)};
        const bool at_origin = std::abs(entry.at_mm - origin_mm) < kSamePlace_mm && entry.text == origin.text;
        if (!origin_in && !at_origin && entry.at_mm > origin_mm) {
            entries.push_back(origin);
            origin_in = true;
        }
        if (at_origin) {
            Entry& kept = origin_in ? *std::find_if(entries.begin(), entries.end(),
                                                    [](const Entry& e) { return e.origin; })
                                    : origin;
            mergeInto(kept, entry, direction, line_mm);
        } else if (!entries.empty() && !entries.back().origin && entries.back().text == entry.text &&
                   std::abs(entries.back().at_mm - entry.at_mm) < kSamePlace_mm) {
            mergeInto(entries.back(), entry, direction, line_mm);
        } else {
            entries.push_back(entry);
        }
    }
    if (!origin_in) entries.push_back(origin);
    return entries;
}

// Values stand where the features are not.
double valueSide(Direction direction, double line_mm, const std::vector<Entry>& entries) {
    double lean = 0;
    for (const Entry& entry : entries)
        if (entry.has_feature) lean += acrossOf(direction, entry.from) - line_mm;
    return lean < 0 ? 1 : -1;
}

Text valueText(Direction direction, const Entry& entry, double across_mm, double side, double height_mm) {
    Text text;
    text.text = entry.text;
    text.height_mm = height_mm;
    text.align = side < 0 ? Align::Right : Align::Left;
    if (direction == Direction::Row) {
        // Turned by +90 the letters stand up towards -x: half a height to the right centres them.
        text.turn_deg = 90;
        text.at = {entry.slot_mm + height_mm / 2, across_mm};
    } else {
        text.at = {across_mm, entry.slot_mm - height_mm / 2};
    }
    return text;
}

std::vector<Item> running(Direction direction, double origin_mm, double line_mm,
                          std::vector<RunningMark> marks, const RunningStyle& style, const std::string& layer,
                          double* outermost) {
    std::vector<Entry> entries = entriesOf(direction, origin_mm, line_mm, std::move(marks), style);
    const double height = style.text_height_mm;
    spread(entries, style.min_pitch_mm > 0 ? style.min_pitch_mm : height + kTextClearance_mm);
    const double side = valueSide(direction, line_mm, entries);

    double farthest_move = 0;
    for (const Entry& entry : entries)
        farthest_move = std::max(farthest_move, std::abs(entry.slot_mm - entry.at_mm));
    const bool kinked = farthest_move > 0.01;
    // Deep enough that the steepest kink stays near 45 degrees, within reason.
    const double kink = kinked ? std::clamp(farthest_move, 2.5, 8.0) : 0;
    const double bend = line_mm + side * style.past_mm;
    const double foot = bend + side * kink;
    const double text_at = foot + side * kTextGap_mm;
    const double reading_deg = direction == Direction::Row ? 0 : 90;

    std::vector<Item> items;
    Dimension base;
    base.kind = direction == Direction::Row ? Dimension::Kind::Running : Dimension::Kind::Height;
    base.measured_mm = style.origin_value_mm;
    base.from = base.to = place(direction, origin_mm, line_mm);
    const double circle = style.origin_shown ? kOriginRadius_mm : 0;
    if (style.origin_shown) base.arcs.push_back({base.from, kOriginRadius_mm, 0, 360, kThinPen});
    double outer = text_at;
    for (const Entry& entry : entries) {
        if (entry.origin && !style.origin_shown) continue;
        Dimension one;
        Dimension& dimension = entry.origin ? base : one;
        dimension.kind = base.kind;
        dimension.measured_mm = entry.value_mm;
        dimension.id = entry.id;
        dimension.from = place(direction, origin_mm, line_mm);
        dimension.to = entry.from;
        const double rim = entry.origin ? kOriginRadius_mm : 0;
        const auto draw = [&](Pt from, Pt to) {
            if (from != to) dimension.lines.push_back({from, to, kThinPen});
        };
        if (entry.origin) {
            if (entry.has_feature && std::abs(acrossOf(direction, entry.from) - line_mm) > rim)
                draw(entry.from, place(direction, entry.at_mm, line_mm - side * rim));
            draw(place(direction, entry.at_mm, line_mm + side * rim), place(direction, entry.at_mm, bend));
        } else {
            draw(entry.from, place(direction, entry.at_mm, bend));
            dimension.lines.push_back(dimensionStroke(place(direction, entry.at_mm, line_mm), reading_deg));
        }
        if (kinked) draw(place(direction, entry.at_mm, bend), place(direction, entry.slot_mm, foot));
        dimension.texts.push_back(valueText(direction, entry, text_at, side, height));
        const double end = text_at + side * measure(entry.text, height).width_mm;
        outer = side < 0 ? std::min(outer, end) : std::max(outer, end);
        if (!entry.origin) items.push_back({layer, entry.id, std::move(one)});
    }

    const double low = entries.front().origin ? origin_mm + circle : entries.front().at_mm - kLineBeyond_mm;
    const double high = entries.back().origin ? origin_mm - circle : entries.back().at_mm + kLineBeyond_mm;
    const auto stretch = [&](double from, double to) {
        if (to > from)
            base.lines.push_back({place(direction, from, line_mm), place(direction, to, line_mm), kThinPen});
    };
    if (entries.size() > 1) {
        if (!entries.front().origin) stretch(low, origin_mm - circle);
        if (!entries.back().origin) stretch(origin_mm + circle, high);
    }
    if (style.origin_shown)
        items.insert(items.begin(), {layer, base.id, std::move(base)});
    else // there is nothing to measure at the origin: only the line is left
        for (const Line& line : base.lines)
            items.insert(items.begin(), {layer, {}, line});
    if (outermost) *outermost = outer;
    return items;
}

} // namespace

std::vector<Item> runningRow(double origin_x, double row_y, std::vector<RunningMark> marks,
                             const RunningStyle& style, const std::string& layer, double* bottom_y) {
    return running(Direction::Row, origin_x, row_y, std::move(marks), style, layer, bottom_y);
}

std::vector<Item> runningColumn(double column_x, double origin_y, std::vector<RunningMark> marks,
                                const RunningStyle& style, const std::string& layer, double* left_x) {
    return running(Direction::Column, origin_y, column_x, std::move(marks), style, layer, left_x);
}

} // namespace gangway::drawing
