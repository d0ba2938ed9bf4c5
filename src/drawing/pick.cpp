#include "drawing/pick.hpp"

#include "drawing/bounds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace gangway::drawing {

namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();

double distance(Pt a, Pt b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

double toSegment(Pt a, Pt b, Pt at) {
    const Pt along{b.x - a.x, b.y - a.y};
    const double square = along.x * along.x + along.y * along.y;
    if (square == 0) return distance(a, at);
    const double part = std::clamp(((at.x - a.x) * along.x + (at.y - a.y) * along.y) / square, 0.0, 1.0);
    return distance({a.x + along.x * part, a.y + along.y * part}, at);
}

/// Crossing number; points on the outline are found by their distance instead.
bool inside(const std::vector<Pt>& outline, Pt at) {
    bool in = false;
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
        const Pt a = outline[i];
        const Pt b = outline[j];
        if ((a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x) in = !in;
    }
    return in;
}

double toOutline(const std::vector<Pt>& points, bool closed, Pt at) {
    double nearest = points.size() == 1 ? distance(points.front(), at) : kFar;
    for (std::size_t i = 1; i < points.size(); ++i)
        nearest = std::min(nearest, toSegment(points[i - 1], points[i], at));
    if (closed && points.size() > 2)
        nearest = std::min(nearest, toSegment(points.back(), points.front(), at));
    return nearest;
}

double toArc(const Arc& arc, Pt at) {
    const double from_centre = distance(arc.centre, at);
    const double sweep = arc.end_deg - arc.start_deg;
    if (sweep >= 360) return std::max(0.0, from_centre - arc.radius_mm);
    const double angle = std::atan2(at.y - arc.centre.y, at.x - arc.centre.x) * 180 / std::numbers::pi;
    const double past_start = std::fmod(std::fmod(angle - arc.start_deg, 360) + 360, 360);
    if (past_start <= sweep) return std::abs(from_centre - arc.radius_mm);
    const auto end = [&arc](double deg) {
        const double rad = deg * std::numbers::pi / 180;
        return Pt{arc.centre.x + arc.radius_mm * std::cos(rad), arc.centre.y + arc.radius_mm * std::sin(rad)};
    };
    return std::min(distance(end(arc.start_deg), at), distance(end(arc.end_deg), at));
}

struct Distance {
    Pt at;
    double operator()(const Line& line) const {
        return std::max(0.0, toSegment(line.from, line.to, at) - line.pen.width_mm / 2);
    }
    double operator()(const Polyline& line) const {
        if (line.closed && line.points.size() > 2 && inside(line.points, at)) return 0;
        return std::max(0.0, toOutline(line.points, line.closed, at) - line.pen.width_mm / 2);
    }
    double operator()(const Arc& arc) const { return std::max(0.0, toArc(arc, at) - arc.pen.width_mm / 2); }
    double operator()(const Fill& fill) const {
        if (fill.outline.size() < 3) return kFar;
        double nearest = toOutline(fill.outline, true, at);
        bool in = inside(fill.outline, at);
        for (const auto& hole : fill.holes) {
            if (hole.size() < 3) continue;
            nearest = std::min(nearest, toOutline(hole, true, at));
            in = in != inside(hole, at); // even-odd, as it is drawn
        }
        return in ? 0 : nearest;
    }
    double operator()(const Text& text) const {
        if (text.text.empty()) return kFar;
        const std::vector<Pt> box = textCorners(text);
        return inside(box, at) ? 0 : toOutline(box, true, at);
    }
    double operator()(const Dimension& dimension) const {
        double nearest = kFar;
        for (const Line& line : dimension.lines)
            nearest = std::min(nearest, (*this)(line));
        for (const Arc& arc : dimension.arcs)
            nearest = std::min(nearest, (*this)(arc));
        for (const Text& text : dimension.texts)
            nearest = std::min(nearest, (*this)(text));
        return nearest;
    }
};

double areaOf(const Bounds& box) {
    return (box.high.x - box.low.x) * (box.high.y - box.low.y);
}

} // namespace

double distanceTo(const Primitive& primitive, Pt at) {
    return std::visit(Distance{at}, primitive);
}

std::optional<std::size_t> itemAt(const Sheet& sheet, Pt at, double reach_mm,
                                  const std::function<bool(const Item&)>& wanted) {
    const Bounds reach{{at.x - reach_mm, at.y - reach_mm}, {at.x + reach_mm, at.y + reach_mm}};
    std::optional<std::size_t> best;
    double best_distance = kFar;
    double best_area = kFar;
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        const Item& item = sheet.items[i];
        if (wanted && !wanted(item)) continue;
        const Bounds box = bounds(item.primitive);
        if (!box.overlaps(reach)) continue;
        const double away = distanceTo(item.primitive, at);
        const double area = areaOf(box);
        if (away > reach_mm || away > best_distance || (away == best_distance && area > best_area)) continue;
        best = i;
        best_distance = away;
        best_area = area;
    }
    return best;
}

} // namespace gangway::drawing
