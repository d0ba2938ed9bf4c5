#include "drawing/leg_lines.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace gangway::drawing {

namespace {

constexpr int kSteps = 32;          ///< pieces of a curve
constexpr double kClear = 0.4;      ///< paper between a symbol and the line that leaves it
constexpr double kTurnRadius = 2.5; ///< of rounded corners

Pt between(Pt a, Pt b, double part) {
    return {a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part};
}
double distance(Pt a, Pt b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

bool within(const LegEnd& end, Pt p) {
    const PaperBox& box = end.symbol;
    if (end.round) return distance(p, box.middle()) < (box.right - box.left) / 2 + kClear;
    return p.x > box.left - kClear && p.x < box.right + kClear && p.y > box.bottom - kClear &&
           p.y < box.top + kClear;
}

/// Where a line from inside a symbol to outside of it comes out.
Pt edgePoint(const LegEnd& end, Pt inner, Pt outer) {
    for (int i = 0; i < 30; ++i) {
        const Pt middle = between(inner, outer, 0.5);
        (within(end, middle) ? inner : outer) = middle;
    }
    return outer;
}

/// The line without what lies before it last leaves the symbol.
std::vector<Pt> leaving(const std::vector<Pt>& line, const LegEnd& end) {
    std::size_t last = line.size();
    for (std::size_t i = 0; i < line.size(); ++i)
        if (within(end, line[i])) last = i;
    if (last == line.size()) return line;
    if (last + 1 == line.size()) return {};
    std::vector<Pt> rest{edgePoint(end, line[last], line[last + 1])};
    rest.insert(rest.end(), line.begin() + static_cast<std::ptrdiff_t>(last) + 1, line.end());
    return rest;
}

std::vector<Pt> trimmed(std::vector<Pt> line, const LegEnd& from, const LegEnd& to) {
    line = leaving(line, from);
    std::ranges::reverse(line);
    line = leaving(line, to);
    std::ranges::reverse(line);
    if (line.size() < 2) line.clear();
    return line;
}

/// Candidate lines from middle to middle with what each costs before anything is in its way, in mm.
struct Candidate {
    std::vector<Pt> points;
    double dislike_mm = 0;
};

std::vector<Candidate> candidates(LegShape shape, Pt from, Pt to) {
    std::vector<Candidate> lines;
    if (shape == LegShape::Straight) return {{{from, to}, 0}};
    if (shape == LegShape::Arc) {
        constexpr std::array<double, 8> kSags{kLegSag, 0.1, 0.2, 0.06, 0.28, 0.38, 0.5, 0.65};
        for (std::size_t i = 0; i < kSags.size(); ++i)
            for (const double side : {1.0, -1.0})
                lines.push_back({arcPoints(from, to, side * kSags[i]), 0.3 * static_cast<double>(i)});
        return lines;
    }
    const double radius = shape == LegShape::Rounded ? kTurnRadius : 0;
    const auto add = [&](const std::vector<Pt>& corners, double dislike) {
        lines.push_back({roundedRuns(corners, radius), dislike});
    };
    add({from, {to.x, from.y}, to}, 0);
    add({from, {from.x, to.y}, to}, 0);
    for (const double part : {0.5, 0.3, 0.7, 0.15, 0.85}) {
        const Pt on = between(from, to, part);
        add({from, {on.x, from.y}, {on.x, to.y}, to}, 1);
        add({from, {from.x, on.y}, {to.x, on.y}, to}, 1);
    }
    return lines;
}

bool meet(const PaperBox& a, const PaperBox& b) {
    return a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;
}

PaperBox boundsOf(const std::vector<Pt>& points) {
    PaperBox box{1e300, 1e300, -1e300, -1e300};
    for (Pt p : points)
        box = {std::min(box.left, p.x), std::min(box.bottom, p.y), std::max(box.right, p.x),
               std::max(box.top, p.y)};
    return box;
}

double lengthOutside(const std::vector<Pt>& line, const std::function<bool(Pt)>& wanted) {
    double outside = 0;
    constexpr int kParts = 8;
    for (std::size_t i = 1; i < line.size(); ++i)
        for (int part = 0; part < kParts; ++part)
            if (!wanted(between(line[i - 1], line[i], (part + 0.5) / kParts)))
                outside += distance(line[i - 1], line[i]) / kParts;
    return outside;
}

/// How much of a line's middle half lies on others that have the same ends.
double lengthAlong(const std::vector<Pt>& line, std::span<const std::vector<Pt>> others) {
    constexpr double kApart = 1.5; // so far two lines are seen as two
    double along = 0;
    for (std::size_t i = line.size() / 4 + 1; i < line.size() - line.size() / 4; ++i) {
        const Pt at = between(line[i - 1], line[i], 0.5);
        const PaperBox near{at.x - kApart, at.y - kApart, at.x + kApart, at.y + kApart};
        for (const std::vector<Pt>& other : others)
            if (lengthInside(other, near) > 0) along += distance(line[i - 1], line[i]);
    }
    return along;
}

} // namespace

std::vector<Pt> arcPoints(Pt from, Pt to, double sag_part) {
    // The middle of a quadratic curve lies half way between the chord and its control point.
    const Pt middle = between(from, to, 0.5);
    const Pt control{middle.x - (to.y - from.y) * 2 * sag_part, middle.y + (to.x - from.x) * 2 * sag_part};
    std::vector<Pt> points;
    for (int i = 0; i <= kSteps; ++i) {
        const double t = static_cast<double>(i) / kSteps;
        points.push_back(between(between(from, control, t), between(control, to, t), t));
    }
    return points;
}

std::vector<Pt> roundedRuns(const std::vector<Pt>& corners, double radius_mm) {
    std::vector<Pt> points;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        if (i == 0 || i + 1 == corners.size() || radius_mm <= 0) {
            points.push_back(corners[i]);
            continue;
        }
        const Pt at = corners[i];
        const double in = distance(corners[i - 1], at);
        const double out = distance(at, corners[i + 1]);
        const double radius = std::min({radius_mm, in / 2, out / 2});
        if (radius < 0.05) continue;
        const Pt back{(corners[i - 1].x - at.x) / in, (corners[i - 1].y - at.y) / in};
        const Pt on{(corners[i + 1].x - at.x) / out, (corners[i + 1].y - at.y) / out};
        constexpr int kTurnSteps = 6;
        for (int step = 0; step <= kTurnSteps; ++step) {
            const double angle = std::numbers::pi / 2 * step / kTurnSteps;
            const double b = radius * (1 - std::sin(angle));
            const double o = radius * (1 - std::cos(angle));
            points.push_back({at.x + back.x * b + on.x * o, at.y + back.y * b + on.y * o});
        }
    }
    return points;
}

double lengthInside(std::span<const Pt> line, const PaperBox& box) {
    double inside = 0;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const Pt a = line[i - 1];
        const Pt way{line[i].x - a.x, line[i].y - a.y};
        double enter = 0;
        double leave = 1;
        const auto clip = [&](double from, double step, double low, double high) {
            if (step == 0) {
                if (from < low || from > high) leave = -1;
                return;
            }
            const double first = (low - from) / step;
            const double second = (high - from) / step;
            enter = std::max(enter, std::min(first, second));
            leave = std::min(leave, std::max(first, second));
        };
        clip(a.x, way.x, box.left, box.right);
        clip(a.y, way.y, box.bottom, box.top);
        if (leave > enter) inside += (leave - enter) * std::hypot(way.x, way.y);
    }
    return inside;
}

LegLine legLine(LegShape shape, const LegEnd& from, const LegEnd& to, std::span<const PaperBox> obstacles,
                const std::function<bool(Pt)>& wanted, std::span<const std::vector<Pt>> beside) {
    LegLine best;
    double best_cost = 1e300;
    for (Candidate& candidate : candidates(shape, from.symbol.middle(), to.symbol.middle())) {
        LegLine line{trimmed(std::move(candidate.points), from, to), 0};
        const PaperBox bounds = boundsOf(line.points);
        for (const PaperBox& box : obstacles)
            if (meet(box, bounds) && box != from.symbol && box != to.symbol)
                line.covered_mm += lengthInside(line.points, box);
        double cost = candidate.dislike_mm + 4 * line.covered_mm;
        if (wanted) cost += lengthOutside(line.points, wanted);
        cost += lengthAlong(line.points, beside);
        if (cost >= best_cost) continue;
        best_cost = cost;
        best = std::move(line);
    }
    return best;
}

} // namespace gangway::drawing
