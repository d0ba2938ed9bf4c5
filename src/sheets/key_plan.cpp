#include "sheets/key_plan.hpp"

#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kPlanHeight = 34; ///< paper for the room itself
constexpr double kMargin = 6;      ///< for the letters around it
constexpr double kNorthWidth = 12;
constexpr double kLetterOut = 3.4; ///< letters stand this far outside their wall

/// The room's plan in house mm, fitted into a rectangle on paper.
struct Fit {
    double scale = 1;
    Vec2 low_mm;
    Pt origin;
    Pt at(Vec2 house_mm) const {
        return {origin.x + (house_mm.x - low_mm.x) / scale, origin.y + (house_mm.y - low_mm.y) / scale};
    }
};

Fit fitInto(const plan::Room& room, const Rect& paper) {
    Vec2 low = room.outline.front();
    Vec2 high = low;
    for (Vec2 p : room.outline) {
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

/// One wall as a line broken where it has openings that reach the floor.
void drawWall(Ink& ink, const plan::Plan& plan, const plan::Room& room, std::size_t wall, const Fit& fit,
              const Pen& pen) {
    const auto edge = geometry::wallEdge(room, wall);
    const double length_mm = plan::length(edge.to_mm - edge.from_mm);
    if (length_mm <= 0) return;
    const Vec2 along = (edge.to_mm - edge.from_mm) * (1 / length_mm);
    double from_mm = 0;
    const auto stroke = [&](double to_mm) {
        if (to_mm > from_mm)
            ink.line(fit.at(edge.from_mm + along * from_mm), fit.at(edge.from_mm + along * to_mm), pen);
    };
    for (const auto& hole : geometry::faceHoles(plan, {room.id, wall})) {
        if (hole.bottom_mm > 1) continue;
        stroke(hole.left_mm);
        from_mm = std::max(from_mm, hole.right_mm);
    }
    stroke(length_mm);
}

} // namespace

Block keyPlan(const WallView& view, double width_mm) {
    const plan::Room& room = *view.room;
    Block block;
    block.height_mm = kPlanHeight + 2 * kMargin + 1.5 * kNoteText + 1;
    block.gap_after_mm = 3;
    Ink ink(block.items, "notes");
    const Rect paper{kMargin, -kMargin - kPlanHeight, width_mm - kMargin - kNorthWidth, -kMargin};
    const Fit fit = fitInto(room, paper);
    Occupancy occupancy;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const bool looked_at = wall == view.wall;
        drawWall(ink, *view.plan, room, wall, fit,
                 looked_at ? Pen{1.0, drawing::LineType::Continuous, drawing::kBlack} : kNarrow);
        const auto edge = geometry::wallEdge(room, wall);
        const auto frame = geometry::wallFrame(room, wall);
        const Pt middle = fit.at((edge.from_mm + edge.to_mm) * 0.5);
        const Pt inward{frame.w.x, frame.w.y};
        if (looked_at) viewArrow(ink, middle, inward, std::min(paper.width(), paper.height()) / 2);
        drawing::Text letter;
        letter.text = room.walls[wall].id;
        letter.height_mm = looked_at ? kValueText : kNoteText;
        letter.align = drawing::Align::Centre;
        letter.at = {middle.x - inward.x * kLetterOut,
                     middle.y - inward.y * kLetterOut - letter.height_mm / 2};
        const Rect extent = extentOf(letter);
        if (!occupancy.isFree(extent)) continue;
        occupancy.take(extent);
        ink.text(letter);
    }
    northArrow(ink, {width_mm - 6, -kMargin - 16});
    ink.text({0, -block.height_mm + 1},
             fmt::format("Key plan, not to scale; wall {} heavy, arrow = view", view.data().id), kNoteText);
    return block;
}

} // namespace gangway::sheets
