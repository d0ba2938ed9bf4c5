// Plates with their modules, and wall luminaires, at their true size.
#include "sheets/elevation_view.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::sheets {

namespace {

constexpr double kCrossBeyond = 3.0;   ///< centre lines stick out of the plate (drawing-standards 4.2)
constexpr double kSmallestShape = 1.0; ///< front shapes smaller than this on paper are left out
constexpr double kClear = 0.7;         ///< least clear space between parallel lines (ISO 128-2)
constexpr double kSmallestLamp = 2.0;  ///< least radius of a luminaire's sign

Pt turned(Pt p, double angle_deg) {
    const double angle_rad = angle_deg * std::numbers::pi / 180;
    return {p.x * std::cos(angle_rad) - p.y * std::sin(angle_rad),
            p.x * std::sin(angle_rad) + p.y * std::cos(angle_rad)};
}

void drawShape(Ink& ink, const catalogue::FrontShape& shape, Pt centre, double scale, const Pen& pen,
               double smallest_mm) {
    const Pt at{centre.x + shape.centre_mm.x / scale, centre.y + shape.centre_mm.y / scale};
    if (shape.kind == catalogue::FrontShape::Kind::Polyline) {
        std::vector<Pt> points;
        for (Vec2 p : shape.points_mm)
            points.push_back({centre.x + p.x / scale, centre.y + p.y / scale});
        if (points.empty()) return;
        const Rect extent = extentOf(drawing::Primitive{drawing::Polyline{points, false, pen}});
        if (std::max(extent.width(), extent.height()) >= smallest_mm) ink.polyline(points, false, pen);
        return;
    }
    const double width = shape.width_mm / scale;
    if (shape.kind == catalogue::FrontShape::Kind::Circle) {
        if (width >= smallest_mm) ink.circle(at, width / 2, pen);
        return;
    }
    const double height = shape.height_mm / scale;
    if (std::min(width, height) < smallest_mm) return;
    std::vector<Pt> corners;
    for (Pt p : cornersOf({-width / 2, -height / 2, width / 2, height / 2})) {
        const Pt q = turned(p, shape.turn_deg);
        corners.push_back({at.x + q.x, at.y + q.y});
    }
    ink.polyline(corners, true, pen);
}

/// Long-dashed dotted centre lines: one across the plate for each height of boxes, one upright for each box.
void drawCentres(Ink& ink, const Mounted& item, const Rect& outline, OnPaper paper) {
    std::vector<double> xs;
    std::vector<double> ys;
    for (Vec2 box : item.box_centres_mm) {
        xs.push_back(paper.mm(box.x));
        ys.push_back(paper.mm(box.y));
    }
    for (std::vector<double>* values : {&xs, &ys}) {
        std::sort(values->begin(), values->end());
        const auto same = [](double a, double b) { return std::abs(a - b) < 0.01; };
        values->erase(std::unique(values->begin(), values->end(), same), values->end());
    }
    const double beyond = paper.compact ? kCrossBeyond / 2 : kCrossBeyond;
    for (double x : xs)
        ink.line({x, outline.bottom - beyond}, {x, outline.top + beyond}, kCentre);
    for (double y : ys)
        ink.line({outline.left - beyond, y}, {outline.right + beyond, y}, kCentre);
}

/// The wall box where it shows apart from the plate's edge.
void drawBoxes(Ink& ink, const Mounted& item, const Rect& outline, OnPaper paper) {
    constexpr Pen kBox{0.18, drawing::LineType::Dashed, drawing::kBlack};
    for (const auto& box : item.face.boxes) {
        const Pt centre = paper.at(item.at_mm + box.centre_mm);
        const double half_w = paper.mm(box.spec.width_mm) / 2;
        const double half_h = paper.mm(box.spec.height_mm) / 2;
        const bool apart = outline.height() / 2 - half_h >= kClear;
        if (!apart) continue;
        if (box.spec.shape == catalogue::BoxSpec::Shape::Round)
            ink.circle(centre, half_w, kBox);
        else
            ink.rect({centre.x - half_w, centre.y - half_h, centre.x + half_w, centre.y + half_h}, kBox);
    }
}

void drawPlate(Ink& ink, const Mounted& item, OnPaper paper) {
    const Rect outline = outlineOf(item, paper);
    const bool hidden = !item.behind.empty();
    if (!hidden) ink.fill(outline, drawing::kWhite);
    for (const auto& gang : item.face.gangs) {
        const Pt centre = paper.at(item.at_mm + gang.centre_mm);
        const Rect aperture{centre.x - paper.mm(gang.width_mm) / 2, centre.y - paper.mm(gang.height_mm) / 2,
                            centre.x + paper.mm(gang.width_mm) / 2, centre.y + paper.mm(gang.height_mm) / 2};
        if (std::min(aperture.width(), aperture.height()) >= kSmallestShape) ink.rect(aperture, kThin);
        if (gang.unknown) { // crossed out: what goes here is not in the catalogue
            ink.line({aperture.left, aperture.bottom}, {aperture.right, aperture.top}, kThin);
            ink.line({aperture.left, aperture.top}, {aperture.right, aperture.bottom}, kThin);
        }
        if (gang.module != nullptr) drawFront(ink, *gang.module, centre, paper.scale, kThin, kSmallestShape);
    }
    drawBoxes(ink, item, outline, paper);
    ink.rect(outline, hidden ? kHidden : kOutline);
    drawCentres(ink, item, outline, paper);
}

/// What is fixed before the wall is closed: the box itself, round it what is drilled where that differs, and
/// its centre. A plate without a box has its outline.
void drawFirstFix(Ink& ink, const Mounted& item, OnPaper paper) {
    const Rect outline = outlineOf(item, paper);
    if (item.face.boxes.empty()) ink.rect(outline, kHidden);
    for (const auto& box : item.face.boxes) {
        const Pt centre = paper.at(item.at_mm + box.centre_mm);
        const double half_w = paper.mm(box.spec.width_mm) / 2;
        const double half_h = paper.mm(box.spec.height_mm) / 2;
        if (box.spec.shape == catalogue::BoxSpec::Shape::Round) {
            ink.fill(disc(centre, half_w), drawing::kWhite);
            ink.circle(centre, half_w, kOutline);
        } else {
            const Rect sides{centre.x - half_w, centre.y - half_h, centre.x + half_w, centre.y + half_h};
            ink.fill(sides, drawing::kWhite);
            ink.rect(sides, kOutline);
        }
        const double drilled = paper.mm(box.spec.drill_mm) / 2;
        if (drilled >= half_w + kClear) ink.circle(centre, drilled, kThin);
    }
    drawCentres(ink, item, outline, paper);
}

/// Luminaire (IEC 60617-11, from memory): a circle with a saltire.
void drawLuminaire(Ink& ink, const Mounted& item, OnPaper paper) {
    const Pt centre = paper.at(item.at_mm);
    const double radius = std::max(paper.mm(item.width_mm) / 2, kSmallestLamp);
    const bool hidden = !item.behind.empty();
    if (!hidden) ink.fill(disc(centre, radius), drawing::kWhite);
    ink.circle(centre, radius, hidden ? kHidden : kOutline);
    const double leg = radius * std::numbers::sqrt2 / 2;
    ink.line({centre.x - leg, centre.y - leg}, {centre.x + leg, centre.y + leg}, kNarrow);
    ink.line({centre.x - leg, centre.y + leg}, {centre.x + leg, centre.y - leg}, kNarrow);
    drawCentres(ink, item, outlineOf(item, paper), paper);
}

} // namespace

Rect outlineOf(const Mounted& item, OnPaper paper) {
    double half_w = paper.mm(item.width_mm) / 2;
    double half_h = paper.mm(item.height_mm) / 2;
    if (item.luminaire != nullptr) half_w = half_h = std::max(half_w, kSmallestLamp);
    const Pt centre = paper.at(item.at_mm);
    return {centre.x - half_w, centre.y - half_h, centre.x + half_w, centre.y + half_h};
}

void drawFront(Ink& ink, const catalogue::ModuleType& module, Pt centre, double scale, const Pen& pen,
               double smallest_mm) {
    for (const catalogue::FrontShape& shape : module.front)
        drawShape(ink, shape, centre, scale, pen, smallest_mm);
}

void drawMounted(std::vector<Item>& items, const WallView& view, OnPaper paper) {
    for (const Mounted& item : view.mounted) {
        Ink ink(items, "plates", item.id);
        if (item.plate != nullptr && view.fix == Fix::First)
            drawFirstFix(ink, item, paper);
        else if (item.plate != nullptr)
            drawPlate(ink, item, paper);
        else
            drawLuminaire(ink, item, paper);
    }
}

} // namespace gangway::sheets
