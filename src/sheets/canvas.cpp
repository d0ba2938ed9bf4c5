#include "sheets/canvas.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::sheets {

namespace {

Rect extentOfPoints(const std::vector<Pt>& points) {
    if (points.empty()) return {};
    Rect rect{points.front().x, points.front().y, points.front().x, points.front().y};
    for (Pt p : points)
        rect = united(rect, {p.x, p.y, p.x, p.y});
    return rect;
}

void moveBy(Pt& p, double dx, double dy) {
    p.x += dx;
    p.y += dy;
}

void moveBy(std::vector<Pt>& points, double dx, double dy) {
    for (Pt& p : points)
        moveBy(p, dx, dy);
}

struct Mover {
    double dx, dy;
    void operator()(drawing::Line& line) const {
        moveBy(line.from, dx, dy);
        moveBy(line.to, dx, dy);
    }
    void operator()(drawing::Polyline& polyline) const { moveBy(polyline.points, dx, dy); }
    void operator()(drawing::Arc& arc) const { moveBy(arc.centre, dx, dy); }
    void operator()(drawing::Fill& fill) const {
        moveBy(fill.outline, dx, dy);
        for (auto& hole : fill.holes)
            moveBy(hole, dx, dy);
    }
    void operator()(drawing::Text& text) const { moveBy(text.at, dx, dy); }
    void operator()(drawing::Dimension& dimension) const {
        moveBy(dimension.from, dx, dy);
        moveBy(dimension.to, dx, dy);
        for (auto& line : dimension.lines)
            (*this)(line);
        for (auto& arc : dimension.arcs)
            (*this)(arc);
        for (auto& text : dimension.texts)
            (*this)(text);
    }
};

struct QuarterTurn {
    static void turn(Pt& p) { p = {-p.y, p.x}; }
    static void turn(std::vector<Pt>& points) {
        for (Pt& p : points)
            turn(p);
    }
    void operator()(drawing::Line& line) const {
        turn(line.from);
        turn(line.to);
    }
    void operator()(drawing::Polyline& polyline) const { turn(polyline.points); }
    void operator()(drawing::Arc& arc) const {
        turn(arc.centre);
        if (arc.end_deg - arc.start_deg >= 360) return; // a whole circle is 0 to 360 however it lies
        arc.start_deg += 90;
        arc.end_deg += 90;
    }
    void operator()(drawing::Fill& fill) const {
        turn(fill.outline);
        for (auto& hole : fill.holes)
            turn(hole);
    }
    void operator()(drawing::Text& text) const {
        turn(text.at);
        text.turn_deg += 90;
    }
    void operator()(drawing::Dimension& dimension) const {
        turn(dimension.from);
        turn(dimension.to);
        for (auto& line : dimension.lines)
            (*this)(line);
        for (auto& arc : dimension.arcs)
            (*this)(arc);
        for (auto& text : dimension.texts)
            (*this)(text);
    }
};

struct Extent {
    Rect operator()(const drawing::Line& line) const { return extentOfPoints({line.from, line.to}); }
    Rect operator()(const drawing::Polyline& polyline) const { return extentOfPoints(polyline.points); }
    Rect operator()(const drawing::Arc& arc) const {
        return Rect{arc.centre.x, arc.centre.y, arc.centre.x, arc.centre.y}.grown(arc.radius_mm);
    }
    Rect operator()(const drawing::Fill& fill) const { return extentOfPoints(fill.outline); }
    Rect operator()(const drawing::Text& text) const { return extentOf(text); }
    Rect operator()(const drawing::Dimension& dimension) const {
        Rect rect = extentOfPoints({dimension.from, dimension.to});
        for (const auto& line : dimension.lines)
            rect = united(rect, (*this)(line));
        for (const auto& arc : dimension.arcs)
            rect = united(rect, (*this)(arc));
        for (const auto& text : dimension.texts)
            rect = united(rect, (*this)(text));
        return rect;
    }
};

/// Length in bytes of the UTF-8 character that starts at `at`.
std::size_t characterLength(const std::string& text, std::size_t at) {
    std::size_t length = 1;
    while (at + length < text.size() && (static_cast<unsigned char>(text[at + length]) & 0xC0U) == 0x80U)
        ++length;
    return length;
}

/// Splits a word that is too long for a line of its own.
void breakWord(const std::string& word, double height_mm, double width_mm, std::vector<std::string>& lines) {
    std::string line;
    for (std::size_t at = 0; at < word.size();) {
        const std::string character = word.substr(at, characterLength(word, at));
        if (!line.empty() && drawing::measure(line + character, height_mm).width_mm > width_mm) {
            lines.push_back(line);
            line.clear();
        }
        line += character;
        at += character.size();
    }
    lines.push_back(line);
}

} // namespace

bool overlaps(const Rect& a, const Rect& b) {
    return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}

bool inside(const Rect& inner, const Rect& outer) {
    return inner.left >= outer.left && inner.right <= outer.right && inner.bottom >= outer.bottom &&
           inner.top <= outer.top;
}

Rect united(const Rect& a, const Rect& b) {
    return {std::min(a.left, b.left), std::min(a.bottom, b.bottom), std::max(a.right, b.right),
            std::max(a.top, b.top)};
}

bool crosses(const Rect& rect, Pt a, Pt b) {
    // Liang and Barsky, A New Concept and Method for Line Clipping (1984).
    const double dx = b.x - a.x;
    const double dy = b.y - a.y;
    double enter = 0;
    double leave = 1;
    const double p[4] = {-dx, dx, -dy, dy};
    const double q[4] = {a.x - rect.left, rect.right - a.x, a.y - rect.bottom, rect.top - a.y};
    for (int side = 0; side < 4; ++side) {
        if (p[side] == 0) {
            if (q[side] < 0) return false;
            continue;
        }
        const double t = q[side] / p[side];
        if (p[side] < 0)
            enter = std::max(enter, t);
        else
            leave = std::min(leave, t);
    }
    return enter <= leave;
}

Rect extentOf(const drawing::Text& text) {
    return extentOfPoints(drawing::textCorners(text));
}

Rect extentOf(const drawing::Primitive& primitive) {
    return std::visit(Extent{}, primitive);
}

Rect extentOf(const std::vector<Item>& items) {
    if (items.empty()) return {};
    Rect rect = extentOf(items.front().primitive);
    for (const Item& item : items)
        rect = united(rect, extentOf(item.primitive));
    return rect;
}

void move(std::vector<Item>& items, double dx, double dy) {
    for (Item& item : items)
        std::visit(Mover{dx, dy}, item.primitive);
}

void turnQuarter(std::vector<Item>& items) {
    for (Item& item : items)
        std::visit(QuarterTurn{}, item.primitive);
}

void placePicture(drawing::Sheet& sheet, std::vector<Item> picture, Pt origin, std::string name, double scale,
                  std::vector<drawing::PlacedObject> placed) {
    sheet.views.push_back({std::move(name), scale, origin});
    move(picture, origin.x, origin.y);
    for (Item& item : picture) {
        item.view = sheet.views.size();
        sheet.items.push_back(std::move(item));
    }
    for (drawing::PlacedObject& object : placed) {
        object.view = sheet.views.size();
        sheet.placed.push_back(std::move(object));
    }
}

std::vector<std::string> wrapped(const std::string& text, double height_mm, double width_mm) {
    std::vector<std::string> lines;
    std::string line;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string word = text.substr(at, end - at);
        at = end + 1;
        if (word.empty()) continue;
        const std::string longer = line.empty() ? word : line + " " + word;
        if (drawing::measure(longer, height_mm).width_mm <= width_mm) {
            line = longer;
            continue;
        }
        if (!line.empty()) lines.push_back(line);
        line.clear();
        breakWord(word, height_mm, width_mm, lines);
        line = lines.back();
        lines.pop_back();
    }
    if (!line.empty()) lines.push_back(line);
    return lines;
}

double lineDrop(const std::string& upper, const std::string& lower, double height_mm) {
    constexpr double kClear = 0.5;
    return std::max(1.5 * height_mm, drawing::measure(upper, height_mm).descent_mm +
                                         drawing::measure(lower, height_mm).ascent_mm + kClear);
}

double paragraphHeight(const std::vector<std::string>& lines, double height_mm) {
    double height = lines.empty() ? 0 : height_mm;
    for (std::size_t i = 1; i < lines.size(); ++i)
        height += lineDrop(lines[i - 1], lines[i], height_mm);
    return height;
}

void Ink::add(drawing::Primitive primitive) {
    items_->push_back({layer_, id_, std::move(primitive)});
}
void Ink::line(Pt from, Pt to, const Pen& pen) {
    add(drawing::Line{from, to, pen});
}
void Ink::polyline(std::vector<Pt> points, bool closed, const Pen& pen) {
    add(drawing::Polyline{std::move(points), closed, pen});
}
void Ink::rect(const Rect& rect, const Pen& pen) {
    polyline(cornersOf(rect), true, pen);
}
void Ink::circle(Pt centre, double radius_mm, const Pen& pen) {
    arc(centre, radius_mm, 0, 360, pen);
}
void Ink::arc(Pt centre, double radius_mm, double start_deg, double end_deg, const Pen& pen) {
    add(drawing::Arc{centre, radius_mm, start_deg, end_deg, pen});
}
void Ink::fill(std::vector<Pt> outline, drawing::Colour colour) {
    add(drawing::Fill{std::move(outline), {}, colour});
}
void Ink::fill(const Rect& rect, drawing::Colour colour) {
    fill(cornersOf(rect), colour);
}
void Ink::text(drawing::Text text) {
    if (!text.text.empty()) add(std::move(text));
}
void Ink::text(Pt at, const std::string& words, double height_mm, drawing::Align align) {
    drawing::Text line;
    line.at = at;
    line.text = words;
    line.height_mm = height_mm;
    line.align = align;
    text(std::move(line));
}

double Ink::paragraph(Pt first_baseline, const std::vector<std::string>& lines, double height_mm,
                      drawing::Align align) {
    double y = first_baseline.y;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i > 0) y -= lineDrop(lines[i - 1], lines[i], height_mm);
        text({first_baseline.x, y}, lines[i], height_mm, align);
    }
    return y;
}

std::vector<Pt> cornersOf(const Rect& rect) {
    return {
        {rect.left, rect.bottom}, {rect.right, rect.bottom}, {rect.right, rect.top}, {rect.left, rect.top}};
}

std::vector<Pt> disc(Pt centre, double radius_mm) {
    std::vector<Pt> points;
    constexpr int kCorners = 32;
    for (int i = 0; i < kCorners; ++i) {
        const double angle_rad = 2 * std::numbers::pi * i / kCorners;
        points.push_back(
            {centre.x + radius_mm * std::cos(angle_rad), centre.y + radius_mm * std::sin(angle_rad)});
    }
    return points;
}

} // namespace gangway::sheets
