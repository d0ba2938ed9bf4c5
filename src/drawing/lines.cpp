#include "drawing/lines.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::drawing {

namespace {

// Line types as multiples of the line's width d (ISO 128-2 table 3; drawing-standards of this project mark it
// `from memory`): the long element that is stretched, and what stands between two of them.
struct TypeParts {
    double dash = 0;
    std::vector<double> between; // gap, dot, gap ...
};

constexpr double kDot = 0.5;            // a dot is at most half a width long
constexpr double kCornerCosine = 0.866; // 30 degrees

TypeParts parts(LineType type) {
    switch (type) {
    case LineType::Continuous:
        return {};
    case LineType::Dashed:
        return {12, {3}};
    case LineType::DashedSpaced:
        return {12, {18}};
    case LineType::LongDashDot:
        return {24, {3, kDot, 3}};
    case LineType::LongDashDoubleDot:
        return {24, {3, kDot, 3, kDot, 3}};
    case LineType::Dotted:
        return {kDot, {3}};
    case LineType::DashDot:
        return {12, {3, kDot, 3}};
    case LineType::DashDoubleDot:
        return {12, {3, kDot, 3, kDot, 3}};
    }
    return {};
}

double total(const std::vector<double>& lengths) {
    double sum = 0;
    for (const double part : lengths)
        sum += part;
    return sum;
}

std::vector<double> pattern(double dash_mm, const std::vector<double>& between, double width_mm) {
    std::vector<double> lengths{dash_mm};
    for (const double part : between)
        lengths.push_back(part * width_mm);
    return lengths;
}

double distance(Pt a, Pt b) {
    return std::hypot(b.x - a.x, b.y - a.y);
}

bool corner(Pt before, Pt at, Pt after) {
    const double lengths = distance(before, at) * distance(at, after);
    if (lengths == 0) return false;
    const double dot = (at.x - before.x) * (after.x - at.x) + (at.y - before.y) * (after.y - at.y);
    return dot / lengths < kCornerCosine;
}

} // namespace

std::vector<double> dashPattern(const Pen& pen, double length_mm) {
    const double d = pen.width_mm;
    const TypeParts type = parts(pen.type);
    if (type.dash == 0 || d <= 0 || !(length_mm > 0)) return {};
    const double between = total(type.between) * d;
    const double wanted = std::round((length_mm + between) / (type.dash * d + between));
    const double count = std::max(2.0, wanted);
    if (pen.type == LineType::Dotted) {
        // Dots keep their size; the gaps stretch.
        const double gap = (length_mm - count * type.dash * d) / (count - 1);
        return gap > d ? std::vector<double>{type.dash * d, gap} : std::vector<double>{};
    }
    const double dash = (length_mm - between * (count - 1)) / count;
    // Where the gaps would leave no dash worth the name, a short line is drawn through.
    if (dash < 2 * d) return {};
    return pattern(dash, type.between, d);
}

std::vector<double> dashPatternAround(const Pen& pen, double length_mm) {
    const double d = pen.width_mm;
    const TypeParts type = parts(pen.type);
    if (type.dash == 0 || d <= 0 || !(length_mm > 0)) return {};
    const double between = total(type.between) * d;
    const double count = std::max(2.0, std::round(length_mm / (type.dash * d + between)));
    if (pen.type == LineType::Dotted) {
        const double gap = length_mm / count - type.dash * d;
        return gap > d ? std::vector<double>{type.dash * d, gap} : std::vector<double>{};
    }
    const double dash = length_mm / count - between;
    if (dash < 2 * d) return {};
    return pattern(dash, type.between, d);
}

std::vector<double> dashes(const Pen& pen) {
    const TypeParts type = parts(pen.type);
    if (type.dash == 0 || pen.width_mm <= 0) return {};
    return pattern(type.dash * pen.width_mm, type.between, pen.width_mm);
}

double repeat(const Pen& pen) {
    const TypeParts type = parts(pen.type);
    return (type.dash + total(type.between)) * pen.width_mm;
}

double length(const std::vector<Pt>& points, bool closed) {
    double sum = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
        sum += distance(points[i - 1], points[i]);
    if (closed && points.size() > 1) sum += distance(points.back(), points.front());
    return sum;
}

std::vector<DashRun> dashRuns(const std::vector<Pt>& points, bool closed, const Pen& pen) {
    if (points.size() < 2) return {};
    if (pen.type == LineType::Continuous) return {{points, closed, {}}};

    const std::size_t n = points.size();
    const std::size_t first = closed ? 0 : 1;
    const std::size_t last = closed ? n : n - 1;
    std::vector<std::size_t> corners;
    for (std::size_t i = first; i < last; ++i)
        if (corner(points[(i + n - 1) % n], points[i], points[(i + 1) % n])) corners.push_back(i);

    if (corners.empty()) {
        const double whole = length(points, closed);
        return {{points, closed, closed ? dashPatternAround(pen, whole) : dashPattern(pen, whole)}};
    }
    if (!closed) {
        corners.insert(corners.begin(), 0);
        corners.push_back(n - 1);
    } else {
        corners.push_back(corners.front() + n);
    }
    std::vector<DashRun> runs;
    for (std::size_t k = 0; k + 1 < corners.size(); ++k) {
        DashRun run;
        for (std::size_t i = corners[k]; i <= corners[k + 1]; ++i)
            run.points.push_back(points[i % n]);
        run.pattern_mm = dashPattern(pen, length(run.points, false));
        runs.push_back(std::move(run));
    }
    return runs;
}

} // namespace gangway::drawing
