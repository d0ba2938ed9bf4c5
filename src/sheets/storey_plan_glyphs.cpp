#include "sheets/storey_plan_glyphs.hpp"

#include "drawing/symbols.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kBetween = 0.8; ///< paper between the symbols of a group
constexpr double kDegree = std::numbers::pi / 180;

/// Reach of ink along the wall and along the normal.
struct Reach {
    Pt normal;
    double from = 1e300, to = -1e300, out = 0;

    void take(Pt p) {
        const double along = p.x * normal.y - p.y * normal.x;
        from = std::min(from, along);
        to = std::max(to, along);
        out = std::max(out, p.x * normal.x + p.y * normal.y);
    }
    void operator()(const drawing::Line& line) {
        take(line.from);
        take(line.to);
    }
    void operator()(const drawing::Polyline& polyline) {
        std::ranges::for_each(polyline.points, [&](Pt p) { take(p); });
    }
    void operator()(const drawing::Fill& fill) {
        std::ranges::for_each(fill.outline, [&](Pt p) { take(p); });
    }
    void operator()(const drawing::Arc& arc) {
        constexpr double kStep_deg = 15;
        for (double angle = arc.start_deg; angle <= arc.end_deg; angle += kStep_deg)
            take({arc.centre.x + arc.radius_mm * std::cos(angle * kDegree),
                  arc.centre.y + arc.radius_mm * std::sin(angle * kDegree)});
    }
    void operator()(const drawing::Text& text) {
        std::ranges::for_each(drawing::textCorners(text), [&](Pt p) { take(p); });
    }
    void operator()(const drawing::Dimension&) {}
};

/// Symbols of a plate in the order of its modules, equal neighbours counted together.
struct Counted {
    std::string symbol;
    int count = 0;
};

std::vector<Counted> countedSymbols(const catalogue::Catalogue& catalogue, const plan::Plate& plate) {
    std::vector<Counted> symbols;
    for (const plan::Module& module : plate.modules) {
        const catalogue::ModuleType* type = catalogue.module(module.type);
        const std::string symbol = type == nullptr || type->symbol.empty() ? "blank" : type->symbol;
        const int count = type == nullptr ? 1 : std::max(type->outlets, 1);
        if (!symbols.empty() && symbols.back().symbol == symbol)
            symbols.back().count += count;
        else
            symbols.push_back({symbol, count});
    }
    if (symbols.empty()) symbols.push_back({"blank", 1});
    return symbols;
}

Pt alongWall(Pt normal, double mm) {
    return {normal.y * mm, -normal.x * mm};
}

void append(std::vector<Item>& items, const std::vector<Item>& more, Pt by) {
    std::vector<Item> copies = more;
    move(copies, by.x, by.y);
    std::ranges::move(copies, std::back_inserter(items));
}

/// A number upright to the sheet, its box just clear of `edge_mm` along the wall, towards its lower end.
/// Returns how far it reaches.
double addNumber(std::vector<Item>& items, int number, Pt normal, double edge_mm, double depth_mm) {
    constexpr double kClear = 0.5;
    const std::string text = fmt::format("{}", number);
    const double half_width = drawing::measure(text, kNoteText).width_mm / 2;
    const double half_along = std::abs(normal.y) * half_width + std::abs(normal.x) * kNoteText / 2;
    const Pt to = alongWall(normal, edge_mm - kClear - half_along);
    const Pt middle{to.x + normal.x * depth_mm / 2, to.y + normal.y * depth_mm / 2};
    Ink(items, "").text({middle.x, middle.y - kNoteText / 2}, text, kNoteText, drawing::Align::Centre);
    return edge_mm - kClear - 2 * half_along;
}

} // namespace

double turnOf(Pt normal) {
    return std::atan2(normal.y, normal.x) / kDegree - 90;
}

const Glyphs::Glyph& Glyphs::glyph(const std::string& symbol_id, Pt normal) {
    const double turn_deg = turnOf(normal);
    const std::pair key(symbol_id, std::lround(turn_deg * 1000));
    const auto known = made_.find(key);
    if (known != made_.end()) return known->second;
    Glyph made;
    made.items = drawing::symbol(symbol_id, {0, 0}, turn_deg, module_mm_, "");
    if (made.items.empty()) made.items = drawing::symbol("blank", {0, 0}, turn_deg, module_mm_, "");
    Reach reach{normal};
    for (const Item& item : made.items)
        std::visit(reach, item.primitive);
    made.from_mm = reach.from;
    made.to_mm = reach.to;
    made.depth_mm = reach.out;
    return made_.emplace(key, std::move(made)).first->second;
}

GlyphGroup Glyphs::single(const std::string& symbol_id, Pt normal) {
    const Glyph& one = glyph(symbol_id, normal);
    return {one.items, one.from_mm, one.to_mm, one.depth_mm};
}

GlyphGroup Glyphs::round(const std::string& symbol_id) {
    const double radius = module_mm_; // drawing-standards 2.5: circle r 1
    GlyphGroup group{glyph(symbol_id, {0, 1}).items, -radius, radius, 2 * radius};
    move(group.items, 0, radius);
    return group;
}

GlyphGroup Glyphs::plate(const catalogue::Catalogue& catalogue, const plan::Plate& plate, Pt normal) {
    const auto symbols = countedSymbols(catalogue, plate);
    GlyphGroup group;
    // From the left as one looks at the wall: with the normal pointing up that is the right.
    double edge = 0;
    double first_foot = 0;
    double last_foot = 0;
    for (std::size_t i = 0; i < symbols.size(); ++i) {
        const Glyph& one = glyph(symbols[i].symbol, normal);
        const double foot = i == 0 ? 0 : edge - kBetween - one.to_mm;
        append(group.items, one.items, alongWall(normal, foot));
        edge = foot + one.from_mm;
        if (symbols[i].count > 1) edge = addNumber(group.items, symbols[i].count, normal, edge, one.depth_mm);
        if (i == 0) group.to_mm = one.to_mm;
        last_foot = foot;
        group.depth_mm = std::max({group.depth_mm, one.depth_mm, kNoteText});
    }
    group.from_mm = edge;
    if (symbols.size() == 1) return group;
    Ink(group.items, "").line(alongWall(normal, first_foot), alongWall(normal, last_foot), kOutline);
    // Several symbols stand astride the plate's middle.
    const double shift = -(first_foot + last_foot) / 2;
    const Pt by = alongWall(normal, shift);
    move(group.items, by.x, by.y);
    group.from_mm += shift;
    group.to_mm += shift;
    return group;
}

} // namespace gangway::sheets
