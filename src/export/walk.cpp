#include "export/canvas.hpp"

#include "drawing/lines.hpp"

#include <cmath>
#include <numbers>

namespace gangway::exporting {

namespace {

using namespace drawing;

class Walker {
public:
    Walker(Canvas& canvas, Colour paper) : canvas_(canvas), paper_(paper) {}

    void operator()(const Line& line) {
        points_.assign({line.from, line.to});
        strokeRuns(points_, false, line.pen);
    }
    void operator()(const Polyline& line) { strokeRuns(line.points, line.closed, line.pen); }
    void operator()(const Arc& arc) {
        if (!(arc.radius_mm > 0)) return;
        const double span_deg = arc.end_deg - arc.start_deg;
        const double length_mm = arc.radius_mm * std::abs(span_deg) * std::numbers::pi / 180;
        const bool whole = std::abs(span_deg) >= 360;
        canvas_.arc(arc, whole ? dashPatternAround(arc.pen, length_mm) : dashPattern(arc.pen, length_mm));
    }
    void operator()(const Fill& fill) {
        if (fill.outline.size() > 2) canvas_.fill(fill);
    }
    void operator()(const Text& text) {
        if (text.text.empty()) return;
        if (text.knock_out) canvas_.fill({textCorners(text, kKnockOutMargin_mm), {}, paper_});
        canvas_.text(text);
    }
    void operator()(const Dimension& dimension) {
        for (const Line& line : dimension.lines)
            (*this)(line);
        for (const Arc& arc : dimension.arcs)
            (*this)(arc);
        for (const Text& text : dimension.texts)
            (*this)(text);
    }

private:
    void strokeRuns(const std::vector<Pt>& points, bool closed, const Pen& pen) {
        if (points.size() < 2) return;
        if (pen.type == LineType::Continuous) {
            canvas_.stroke(points, closed, pen, {});
            return;
        }
        for (const DashRun& run : dashRuns(points, closed, pen))
            canvas_.stroke(run.points, run.closed, pen, run.pattern_mm);
    }

    Canvas& canvas_;
    Colour paper_;
    std::vector<Pt> points_;
};

} // namespace

void walk(const Sheet& sheet, Canvas& canvas, Colour paper, const std::optional<Bounds>& window) {
    Walker walker(canvas, paper);
    const std::string* layer = nullptr;
    for (const Item& item : sheet.items) {
        if (window && !bounds(item.primitive).overlaps(*window)) continue;
        if (layer == nullptr || *layer != item.layer) {
            if (layer != nullptr) canvas.endLayer();
            canvas.beginLayer(item.layer);
            layer = &item.layer;
        }
        canvas.object(item.id);
        std::visit(walker, item.primitive);
    }
    if (layer != nullptr) canvas.endLayer();
}

} // namespace gangway::exporting
