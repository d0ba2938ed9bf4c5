#include "app/page_look.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

namespace gangway::app {

namespace {

// What a copier set to text gives: darker than this is full black, lighter than that is lost.
constexpr double kFullBlack = 0.25;
constexpr double kLost = 0.92;

void inGrey(drawing::Colour& colour) {
    const std::uint8_t grey = copied(colour);
    colour = {grey, grey, grey};
}

struct InGrey {
    void operator()(drawing::Line& line) const { inGrey(line.pen.colour); }
    void operator()(drawing::Polyline& line) const { inGrey(line.pen.colour); }
    void operator()(drawing::Arc& arc) const { inGrey(arc.pen.colour); }
    void operator()(drawing::Fill& fill) const { inGrey(fill.colour); }
    void operator()(drawing::Text& text) const { inGrey(text.colour); }
    void operator()(drawing::Dimension& dimension) const {
        for (drawing::Line& line : dimension.lines)
            (*this)(line);
        for (drawing::Arc& arc : dimension.arcs)
            (*this)(arc);
        for (drawing::Text& text : dimension.texts)
            (*this)(text);
    }
};

constexpr double kSizeTolerance_mm = 0.05; // half of a tenth: sizes of ISO 3098-1 have one decimal
constexpr double kSameRow_mm = 4;          // objects this near in height are read as one row

void addIfSmall(SmallTexts& small, const drawing::Text& text, double factor) {
    const double printed = text.height_mm * factor;
    if (text.text.empty() || printed >= kLeastLettering_mm - kSizeTolerance_mm) return;
    small.boxes.push_back(drawing::bounds(text));
    small.smallest_mm = small.smallest_mm == 0 ? printed : std::min(small.smallest_mm, printed);
}

drawing::Bounds both(const drawing::Bounds& a, const drawing::Bounds& b) {
    return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
            {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

bool isWords(const drawing::Primitive& primitive) {
    return std::holds_alternative<drawing::Text>(primitive) ||
           std::holds_alternative<drawing::Dimension>(primitive);
}

/// By view, around what draws the object.
std::map<std::size_t, drawing::Bounds> outlinesByView(const drawing::Sheet& sheet, const std::string& id) {
    std::map<std::size_t, drawing::Bounds> outlines;
    for (const drawing::Item& item : sheet.items) {
        if (item.id != id || isWords(item.primitive)) continue;
        const drawing::Bounds box = drawing::bounds(item.primitive);
        if (box.low.x > box.high.x) continue;
        const auto [found, fresh] = outlines.try_emplace(item.view, box);
        if (!fresh) found->second = both(found->second, box);
    }
    return outlines;
}

} // namespace

std::uint8_t copied(drawing::Colour colour) {
    const double bright =
        (0.2126 * colour.r + 0.7152 * colour.g + 0.0722 * colour.b) / 255; // ITU-R BT.709 weights
    const double grey = std::clamp((bright - kFullBlack) / (kLost - kFullBlack), 0.0, 1.0);
    return static_cast<std::uint8_t>(std::lround(grey * 255));
}

drawing::Sheet copied(drawing::Sheet sheet) {
    for (drawing::Item& item : sheet.items)
        std::visit(InGrey{}, item.primitive);
    return sheet;
}

std::string paperName(const drawing::Sheet& sheet) {
    struct Size {
        const char* name;
        double short_mm, long_mm;
    };
    constexpr Size kSizes[] = {
        {"A0", 841, 1189}, {"A1", 594, 841}, {"A2", 420, 594}, {"A3", 297, 420}, {"A4", 210, 297}}; // ISO 216
    const auto [low, high] = std::minmax(sheet.width_mm, sheet.height_mm);
    for (const Size& size : kSizes)
        if (std::abs(low - size.short_mm) < 1 && std::abs(high - size.long_mm) < 1) return size.name;
    return fmt::format("{:.0f} x {:.0f} mm", sheet.width_mm, sheet.height_mm);
}

std::string scaleWords(const drawing::Sheet& sheet) {
    std::set<double> scales;
    for (const drawing::View& view : sheet.views)
        scales.insert(view.scale);
    std::string words;
    for (const double scale : scales)
        words += fmt::format("{}1:{}", words.empty() ? "" : ", ", scale);
    return words;
}

bool isA3(const drawing::Sheet& sheet) {
    return paperName(sheet) == "A3";
}

SmallTexts smallTexts(const drawing::Sheet& sheet, double factor) {
    SmallTexts small;
    for (const drawing::Item& item : sheet.items) {
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive)) addIfSmall(small, *text, factor);
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            for (const drawing::Text& text : dimension->texts)
                addIfSmall(small, text, factor);
    }
    return small;
}

std::vector<std::string> objectsOn(const drawing::Sheet& sheet,
                                   const std::function<bool(const std::string& id)>& wanted) {
    std::map<std::string, drawing::Bounds> where;
    std::set<std::string> refused;
    for (const drawing::Item& item : sheet.items) {
        if (item.id.empty() || isWords(item.primitive) || refused.contains(item.id)) continue;
        const drawing::Bounds box = drawing::bounds(item.primitive);
        if (box.low.x > box.high.x) continue;
        if (!where.contains(item.id) && !wanted(item.id)) {
            refused.insert(item.id);
            continue;
        }
        const auto [found, fresh] = where.try_emplace(item.id, box);
        if (!fresh) found->second = both(found->second, box);
    }
    std::vector<std::string> ids;
    for (const auto& [id, box] : where)
        ids.push_back(id);
    const auto rowOf = [&](const std::string& id) {
        const drawing::Bounds& box = where.at(id);
        return std::llround(-(box.low.y + box.high.y) / 2 / kSameRow_mm);
    };
    std::ranges::stable_sort(ids, [&](const std::string& a, const std::string& b) {
        const auto row_a = rowOf(a);
        const auto row_b = rowOf(b);
        return row_a != row_b ? row_a < row_b : where.at(a).low.x < where.at(b).low.x;
    });
    return ids;
}

std::vector<drawing::Bounds> outlinesOf(const drawing::Sheet& sheet, const std::string& id) {
    std::vector<drawing::Bounds> outlines;
    for (const auto& [view, box] : outlinesByView(sheet, id))
        outlines.push_back(box);
    return outlines;
}

bool marksChange(const drawing::Sheet& sheet) {
    return std::ranges::any_of(sheet.items,
                               [](const drawing::Item& item) { return item.layer == "revision"; });
}

} // namespace gangway::app
