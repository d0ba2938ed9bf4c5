#include "drawing/bounds.hpp"

#include <algorithm>
#include <limits>

namespace gangway::drawing {

namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();

class Collector {
public:
    void operator()(const Line& line) {
        add(line.from, line.pen.width_mm / 2);
        add(line.to, line.pen.width_mm / 2);
    }
    void operator()(const Polyline& line) {
        // Mitred corners reach past the points by more than half a width; one width covers right angles.
        for (const Pt& p : line.points)
            add(p, line.pen.width_mm);
    }
    void operator()(const Arc& arc) { add(arc.centre, arc.radius_mm + arc.pen.width_mm / 2); }
    void operator()(const Fill& fill) {
        for (const Pt& p : fill.outline)
            add(p, 0);
    }
    void operator()(const Text& text) {
        if (text.text.empty()) return;
        for (const Pt& p : textCorners(text, text.knock_out ? kKnockOutMargin_mm : 0))
            add(p, 0);
    }
    void operator()(const Dimension& dimension) {
        for (const Line& line : dimension.lines)
            (*this)(line);
        for (const Arc& arc : dimension.arcs)
            (*this)(arc);
        for (const Text& text : dimension.texts)
            (*this)(text);
    }
    Bounds result{{kFar, kFar}, {-kFar, -kFar}};

private:
    void add(Pt p, double around) {
        result.low = {std::min(result.low.x, p.x - around), std::min(result.low.y, p.y - around)};
        result.high = {std::max(result.high.x, p.x + around), std::max(result.high.y, p.y + around)};
    }
};

} // namespace

Bounds bounds(const Primitive& primitive) {
    Collector collector;
    std::visit(collector, primitive);
    return collector.result;
}

} // namespace gangway::drawing
