// A sheet as text, one line an item, for tests that compare exactly.
#include "drawing/drawing.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gangway::drawing {

namespace {

// Three decimals of a mm are finer than any printer; trailing zeros and minus zero go.
std::string decimal(double value) {
    std::string text = fmt::format("{:.3f}", value);
    while (text.back() == '0')
        text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string at(Pt p) {
    return fmt::format("{},{}", decimal(p.x), decimal(p.y));
}

std::string colour(Colour c) {
    return fmt::format("#{:02x}{:02x}{:02x}", c.r, c.g, c.b);
}

std::string pen(const Pen& p) {
    return fmt::format("pen {} {:02d} {}", decimal(p.width_mm), static_cast<int>(p.type), colour(p.colour));
}

std::string points(const std::vector<Pt>& list) {
    std::string text;
    for (const Pt& p : list) {
        if (!text.empty()) text += ' ';
        text += at(p);
    }
    return text;
}

std::string quoted(const std::string& text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        if (c == '\n') {
            out += "\\n";
            continue;
        }
        out += c;
    }
    return out + "\"";
}

std::string shown(const Line& line) {
    return fmt::format("line {} {} {}", at(line.from), at(line.to), pen(line.pen));
}

std::string shown(const Polyline& line) {
    return fmt::format("polyline{} {} {}", line.closed ? " closed" : "", points(line.points), pen(line.pen));
}

std::string shown(const Arc& arc) {
    return fmt::format("arc {} r {} from {} to {} {}", at(arc.centre), decimal(arc.radius_mm),
                       decimal(arc.start_deg), decimal(arc.end_deg), pen(arc.pen));
}

std::string shown(const Fill& fill) {
    std::string text = fmt::format("fill {} {}", colour(fill.colour), points(fill.outline));
    for (const auto& hole : fill.holes)
        text += fmt::format(" hole {}", points(hole));
    return text;
}

std::string shown(const Text& text) {
    static constexpr const char* kAlign[] = {"left", "centre", "right"};
    return fmt::format("text {} {} h {} {} turn {} {}{}", quoted(text.text), at(text.at),
                       decimal(text.height_mm), kAlign[static_cast<int>(text.align)], decimal(text.turn_deg),
                       colour(text.colour), text.knock_out ? " knock-out" : "");
}

std::string shown(const Dimension& dimension) {
    static constexpr const char* kKind[] = {"linear", "running", "height"};
    std::string text = fmt::format("dimension {} {} {} {} {}", kKind[static_cast<int>(dimension.kind)],
                                   decimal(dimension.measured_mm), quoted(dimension.id), at(dimension.from),
                                   at(dimension.to));
    const auto add = [&](const auto& parts) {
        for (const auto& part : parts)
            text += fmt::format(" | {}", shown(part));
    };
    add(dimension.lines);
    add(dimension.arcs);
    add(dimension.texts);
    return text;
}

} // namespace

std::string dump(const Sheet& sheet) {
    std::string text = fmt::format("sheet {} {} {} {}x{} 1:{}\n", quoted(sheet.number), quoted(sheet.title),
                                   quoted(sheet.file_stem), decimal(sheet.width_mm), decimal(sheet.height_mm),
                                   decimal(sheet.scale));
    for (const Item& item : sheet.items)
        text +=
            fmt::format("{} {} {}\n", item.layer, quoted(item.id),
                        std::visit([](const auto& primitive) { return shown(primitive); }, item.primitive));
    return text;
}

} // namespace gangway::drawing
