#include "sheets/plan_clip.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace gangway::sheets {

namespace {

Pt between(Pt a, Pt b, double part) {
    return {a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part};
}

/// The stretch of a-b inside (Liang and Barsky 1984).
std::optional<std::pair<double, double>> stretchInside(Pt a, Pt b, const Rect& window) {
    double enter = 0;
    double leave = 1;
    const auto cut = [&](double from, double step, double low, double high) {
        if (step == 0) return from >= low && from <= high;
        const double first = (low - from) / step;
        const double second = (high - from) / step;
        enter = std::max(enter, std::min(first, second));
        leave = std::min(leave, std::max(first, second));
        return true;
    };
    if (!cut(a.x, b.x - a.x, window.left, window.right) || !cut(a.y, b.y - a.y, window.bottom, window.top) ||
        leave <= enter)
        return std::nullopt;
    return std::pair{enter, leave};
}

/// A polygon cut by the window's four edges in turn (Sutherland and Hodgman 1974).
std::vector<Pt> polygonInside(std::vector<Pt> polygon, const Rect& window) {
    const auto cut = [&](auto depth) {
        std::vector<Pt> kept;
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const Pt a = polygon[i];
            const Pt b = polygon[(i + 1) % polygon.size()];
            const double in_a = depth(a);
            const double in_b = depth(b);
            if (in_a >= 0) kept.push_back(a);
            if ((in_a >= 0) != (in_b >= 0)) kept.push_back(between(a, b, in_a / (in_a - in_b)));
        }
        polygon = std::move(kept);
    };
    cut([&](Pt p) { return p.x - window.left; });
    cut([&](Pt p) { return window.right - p.x; });
    cut([&](Pt p) { return p.y - window.bottom; });
    cut([&](Pt p) { return window.top - p.y; });
    return polygon;
}

class Clip {
public:
    Clip(const Rect& window, std::vector<Item>& kept) : window_(window), kept_(kept) {}

    void take(const Item& item) {
        item_ = &item;
        const Rect extent = extentOf(item.primitive);
        if (inside(extent, window_)) {
            kept_.push_back(item);
            return;
        }
        // Upright lines have no width, so nothing is left out here that only touches.
        if (extent.left > window_.right || extent.right < window_.left || extent.bottom > window_.top ||
            extent.top < window_.bottom)
            return;
        std::visit([&](const auto& primitive) { cut(primitive); }, item.primitive);
    }

private:
    void keep(drawing::Primitive primitive) {
        kept_.push_back({item_->layer, item_->id, std::move(primitive)});
    }
    void cut(const drawing::Text&) {}
    void cut(const drawing::Dimension&) {}
    void cut(const drawing::Line& line) { open({line.from, line.to}, line.pen); }
    void cut(const drawing::Polyline& polyline) {
        std::vector<Pt> points = polyline.points;
        if (polyline.closed && !points.empty()) points.push_back(points.front());
        open(points, polyline.pen);
    }
    void cut(const drawing::Arc& arc) {
        constexpr int kSteps = 48;
        std::vector<Pt> points;
        for (int i = 0; i <= kSteps; ++i) {
            const double degrees = arc.start_deg + (arc.end_deg - arc.start_deg) * i / kSteps;
            const double angle = degrees * std::numbers::pi / 180;
            points.push_back({arc.centre.x + arc.radius_mm * std::cos(angle),
                              arc.centre.y + arc.radius_mm * std::sin(angle)});
        }
        open(points, arc.pen);
    }
    void cut(const drawing::Fill& fill) {
        drawing::Fill part = fill;
        part.outline = polygonInside(fill.outline, window_);
        if (part.outline.size() < 3) return;
        part.holes.clear();
        for (const auto& hole : fill.holes)
            if (auto rest = polygonInside(hole, window_); rest.size() >= 3) part.holes.push_back(rest);
        keep(std::move(part));
    }
    void open(const std::vector<Pt>& points, const Pen& pen) {
        std::vector<Pt> run;
        const auto finish = [&] {
            if (run.size() > 1) keep(drawing::Polyline{run, false, pen});
            run.clear();
        };
        for (std::size_t i = 1; i < points.size(); ++i) {
            const auto part = stretchInside(points[i - 1], points[i], window_);
            if (!part) {
                finish();
                continue;
            }
            if (run.empty()) run.push_back(between(points[i - 1], points[i], part->first));
            run.push_back(between(points[i - 1], points[i], part->second));
            if (part->second < 1) finish();
        }
        finish();
    }

    Rect window_;
    std::vector<Item>& kept_;
    const Item* item_ = nullptr;
};

} // namespace

std::vector<Item> clipped(const std::vector<Item>& items, const Rect& window) {
    std::vector<Item> kept;
    Clip clip(window, kept);
    for (const Item& item : items)
        clip.take(item);
    return kept;
}

} // namespace gangway::sheets
