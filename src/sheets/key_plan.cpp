#include "sheets/key_plan.hpp"

#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kMargin = 6; ///< for the letters around it
constexpr double kNorthWidth = 12;
constexpr double kLetterOut = 3.4; ///< letters stand this far outside their wall
constexpr double kDot = 0.55;      ///< radius of a plate's dot
constexpr double kDotOut = 1.5;    ///< its centre before the wall

/// The room's plan in house mm, fitted into a rectangle on paper.
struct Fit {
    double scale = 1;
    Vec2 low_mm;
    Pt origin;
    Pt at(Vec2 house_mm) const {
        return {origin.x + (house_mm.x - low_mm.x) / scale, origin.y + (house_mm.y - low_mm.y) / scale};
    }
    Vec2 house(Pt paper) const {
        return {low_mm.x + (paper.x - origin.x) * scale, low_mm.y + (paper.y - origin.y) * scale};
    }
};

/// Openings in the room's walls, each once.
std::vector<const plan::Opening*> openingsOf(const WallView& view) {
    std::vector<const plan::Opening*> openings;
    for (std::size_t wall = 0; wall < view.room->walls.size(); ++wall)
        for (const auto& hole : geometry::faceHoles(view.house->index(), {view.room->id, wall}))
            if (std::find(openings.begin(), openings.end(), hole.opening) == openings.end())
                openings.push_back(hole.opening);
    return openings;
}

/// The point of a leaf's arc furthest from the wall, as if it opened square.
Vec2 furthestOf(const geometry::Leaf& leaf) {
    const Vec2 shut = leaf.closed_mm - leaf.hinge_mm;
    const Vec2 square{-shut.y, shut.x};
    const double side = plan::dot(square, leaf.open_mm - leaf.hinge_mm) < 0 ? -1 : 1;
    return leaf.hinge_mm + square * side;
}

/// The room with the doors that swing out of it.
Fit fitInto(const WallView& view, const Rect& paper) {
    std::vector<Vec2> points = view.room->outline;
    for (const plan::Opening* opening : openingsOf(view))
        if (opening->kind == plan::Opening::Kind::HingedDoor)
            for (const geometry::Leaf& leaf : geometry::doorLeaves(view.house->index(), *opening))
                points.insert(points.end(), {leaf.open_mm, furthestOf(leaf)});
    Vec2 low = points.front();
    Vec2 high = low;
    for (Vec2 p : points) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    const double scale = std::max({(high.x - low.x) / paper.width(), (high.y - low.y) / paper.height(), 1.0});
    const Pt size{(high.x - low.x) / scale, (high.y - low.y) / scale};
    return {scale, low, {paper.centre().x - size.x / 2, paper.centre().y - size.y / 2}};
}

void northArrow(Ink& ink, Pt foot) {
    ink.line(foot, {foot.x, foot.y + 10}, kNarrow);
    ink.fill({{foot.x - 1.6, foot.y + 6}, {foot.x + 1.6, foot.y + 6}, {foot.x, foot.y + 11}},
             drawing::kBlack);
    ink.text({foot.x, foot.y + 12.2}, "N", kValueText, drawing::Align::Centre);
}

/// A filled arrow from inside the room square on the wall.
void viewArrow(Ink& ink, Pt target, Pt inward, double room_mm) {
    const double start = std::clamp(room_mm * 0.7, 4.0, 14.0);
    const Pt tail{target.x + inward.x * start, target.y + inward.y * start};
    const Pt tip{target.x + inward.x * 1.6, target.y + inward.y * 1.6};
    const Pt back{tip.x + inward.x * 3, tip.y + inward.y * 3};
    ink.line(tail, back, kOutline);
    ink.fill({tip,
              {back.x + inward.y * 1.3, back.y - inward.x * 1.3},
              {back.x - inward.y * 1.3, back.y + inward.x * 1.3}},
             drawing::kBlack);
}

/// One wall as a line broken where it has openings; windows as two thin lines in the gap.
void drawWall(Ink& ink, const WallView& view, std::size_t wall, const Fit& fit, const Pen& pen) {
    const auto edge = geometry::wallEdge(*view.room, wall);
    const double length_mm = plan::length(edge.to_mm - edge.from_mm);
    if (length_mm <= 0) return;
    const Vec2 along = (edge.to_mm - edge.from_mm) * (1 / length_mm);
    const Vec2 across{-along.y, along.x};
    const auto at = [&](double u_mm, double out_mm) {
        return fit.at(edge.from_mm + along * u_mm + across * (out_mm * fit.scale));
    };
    double from_mm = 0;
    const auto stroke = [&](double to_mm) {
        if (to_mm > from_mm) ink.line(at(from_mm, 0), at(to_mm, 0), pen);
    };
    for (const auto& hole : geometry::faceHoles(view.house->index(), {view.room->id, wall})) {
        const double left_mm = std::clamp(hole.left_mm, 0.0, length_mm);
        const double right_mm = std::clamp(hole.right_mm, 0.0, length_mm);
        stroke(left_mm);
        from_mm = std::max(from_mm, right_mm);
        if (hole.opening->kind != plan::Opening::Kind::Window) continue;
        for (double out : {0.0, 1.0})
            ink.line(at(left_mm, out), at(right_mm, out), kThin);
    }
    stroke(length_mm);
}

double angleOf(Pt from, Pt to) {
    return std::atan2(to.y - from.y, to.x - from.x) * 180 / std::numbers::pi;
}

/// The leaves of a hinged door as they stand open, with the arc they swing through.
void drawLeaves(Ink& ink, Occupancy& occupancy, const WallView& view, const plan::Opening& opening,
                const Fit& fit) {
    if (opening.kind != plan::Opening::Kind::HingedDoor) return;
    for (const geometry::Leaf& leaf : geometry::doorLeaves(view.house->index(), opening)) {
        const Pt hinge = fit.at(leaf.hinge_mm);
        const Pt shut = fit.at(leaf.closed_mm);
        const Pt open = fit.at(leaf.open_mm);
        ink.line(hinge, open, kThin);
        double start = angleOf(hinge, shut);
        double end = angleOf(hinge, open);
        double sweep = std::fmod(end - start + 720, 360);
        if (sweep > 180) {
            std::swap(start, end);
            sweep = 360 - sweep;
        }
        ink.arc(hinge, leaf.width_mm / fit.scale, start, start + sweep, kThin);
        occupancy.take(united({hinge.x, hinge.y, hinge.x, hinge.y}, {open.x, open.y, open.x, open.y}));
        occupancy.take(united({shut.x, shut.y, shut.x, shut.y}, {open.x, open.y, open.x, open.y}));
    }
}

/// Letters stand outside their wall, at its middle or where they are clear along it.
void drawLetters(Ink& ink, Occupancy& occupancy, const WallView& view, const Fit& fit) {
    std::vector<decltype(geometry::wallEdge(*view.room, 0))> edges;
    for (std::size_t wall = 0; wall < view.room->walls.size(); ++wall)
        edges.push_back(geometry::wallEdge(*view.room, wall));
    for (std::size_t wall = 0; wall < view.room->walls.size(); ++wall) {
        const auto& edge = edges[wall];
        const auto frame = geometry::wallFrame(*view.room, wall);
        for (double part : {0.5, 0.3, 0.7, 0.15, 0.85}) {
            const Pt foot = fit.at(edge.from_mm + (edge.to_mm - edge.from_mm) * part);
            drawing::Text letter;
            letter.text = view.room->walls[wall].id;
            letter.height_mm = wall == view.wall ? kValueText : kNoteText;
            letter.align = drawing::Align::Centre;
            letter.at = {foot.x - frame.w.x * kLetterOut,
                         foot.y - frame.w.y * kLetterOut - letter.height_mm / 2};
            // Beside a short wall a letter would stand on its neighbours.
            const bool on_a_wall = std::ranges::any_of(edges, [&](const auto& other) {
                return crosses(extentOf(letter), fit.at(other.from_mm), fit.at(other.to_mm));
            });
            if (on_a_wall || !occupancy.isFree(extentOf(letter))) continue;
            occupancy.take(extentOf(letter));
            ink.text(letter);
            break;
        }
    }
}

bool insideOnPaper(const plan::Room& room, const Fit& fit, const Rect& rect) {
    const auto corners = cornersOf(rect.grown(0.6));
    const bool within = std::all_of(corners.begin(), corners.end(),
                                    [&](Pt p) { return geometry::insideRoom(room, fit.house(p)); });
    if (!within) return false;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const auto edge = geometry::wallEdge(room, wall);
        if (crosses(rect, fit.at(edge.from_mm), fit.at(edge.to_mm))) return false;
    }
    return true;
}

/// The room's name where it has room inside; left out when it has none, because the sheet's title says it.
void drawName(Ink& ink, const Occupancy& occupancy, const plan::Room& room, const Fit& fit,
              const Rect& extent) {
    const auto lines = wrapped(room.name, kNoteText, std::max(extent.width() - 3, 8.0));
    double width = 0;
    for (const std::string& line : lines)
        width = std::max(width, drawing::measure(line, kNoteText).width_mm);
    const double height = paragraphHeight(lines, kNoteText);
    constexpr int kSteps = 10;
    std::optional<Pt> best;
    double best_distance = 1e9;
    for (int ix = 1; ix < kSteps; ++ix)
        for (int iy = 1; iy < kSteps; ++iy) {
            const Pt at{extent.left + extent.width() * ix / kSteps,
                        extent.bottom + extent.height() * iy / kSteps};
            const double distance = std::hypot(at.x - extent.centre().x, at.y - extent.centre().y);
            const Rect place{at.x - width / 2, at.y - height / 2, at.x + width / 2, at.y + height / 2};
            if (distance >= best_distance || !occupancy.isFree(place) || !insideOnPaper(room, fit, place))
                continue;
            best = at;
            best_distance = distance;
        }
    if (best)
        ink.paragraph({best->x, best->y + height / 2 - kNoteText}, lines, kNoteText, drawing::Align::Centre);
}

/// A dot before the wall for each thing on it.
void drawDots(Ink& ink, const WallView& view, const Fit& fit) {
    const auto edge = geometry::wallEdge(*view.room, view.wall);
    const double length_mm = plan::length(edge.to_mm - edge.from_mm);
    if (length_mm <= 0) return;
    const Vec2 along = (edge.to_mm - edge.from_mm) * (1 / length_mm);
    for (const Mounted& item : view.mounted) {
        const Pt foot = fit.at(edge.from_mm + along * item.at_mm.x);
        ink.fill(disc({foot.x + view.frame.w.x * kDotOut, foot.y + view.frame.w.y * kDotOut}, kDot),
                 drawing::kBlack);
    }
}

} // namespace

Block keyPlan(const WallView& view, double width_mm, double plan_height_mm) {
    const plan::Room& room = *view.room;
    Block block;
    block.height_mm = plan_height_mm + 2 * kMargin + 1.5 * kNoteText + 1;
    block.gap_after_mm = 3;
    Ink ink(block.items, "notes");
    const Rect paper{kMargin, -kMargin - plan_height_mm, width_mm - kMargin - kNorthWidth, -kMargin};
    const Fit fit = fitInto(view, paper);
    Occupancy occupancy;
    const Pen looked_at{1.0, drawing::LineType::Continuous, drawing::kBlack};
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall)
        drawWall(ink, view, wall, fit, wall == view.wall ? looked_at : kNarrow);
    for (const plan::Opening* opening : openingsOf(view))
        drawLeaves(ink, occupancy, view, *opening, fit);
    drawDots(ink, view, fit);
    const auto edge = geometry::wallEdge(room, view.wall);
    const Pt middle = fit.at((edge.from_mm + edge.to_mm) * 0.5);
    const Pt inward{view.frame.w.x, view.frame.w.y};
    const double arrow = std::min(paper.width(), paper.height()) / 2;
    viewArrow(ink, middle, inward, arrow);
    const Pt tail{middle.x + inward.x * 14, middle.y + inward.y * 14};
    occupancy.take(
        united({middle.x, middle.y, middle.x, middle.y}, {tail.x, tail.y, tail.x, tail.y}).grown(1));
    drawLetters(ink, occupancy, view, fit);
    Rect extent{fit.origin.x, fit.origin.y, fit.origin.x, fit.origin.y};
    for (Vec2 corner : room.outline) {
        const Pt p = fit.at(corner);
        extent = united(extent, {p.x, p.y, p.x, p.y});
    }
    drawName(ink, occupancy, room, fit, extent);
    northArrow(ink, {width_mm - 6, -kMargin - 16});
    ink.text({0, -block.height_mm + 1},
             fmt::format("Key plan, not to scale; wall {} heavy, arrow = view", view.data().id), kNoteText);
    return block;
}

} // namespace gangway::sheets
