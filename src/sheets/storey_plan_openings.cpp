// Doors, windows and hatches of a storey's plan.
#include "sheets/storey_plan_parts.hpp"

#include <cmath>
#include <numbers>

namespace gangway::sheets {

namespace {

using Kind = plan::Opening::Kind;

/// Depth of a window's frame on plan; common practice, no source.
constexpr double kFrameDepth = 70;
/// How far a sill board passes the hole on each side; common practice, no source.
constexpr double kSillPast = 40;
/// Something to take hold of before and behind a hole.
constexpr double kGripMm = 60;

/// One opening on its wall while it is drawn.
struct OpeningDrawing {
    const StoreyDrawing* storey;
    const plan::Opening* opening;
    WallLineOnPlan line;
    geometry::FaceHole hole;
    Ink ink;

    Pt at(double u_mm, double out_mm) const { return storey->at(line.at(u_mm, out_mm)); }
    /// A line across the hole.
    void across(double out_mm, const Pen& pen) {
        ink.line(at(hole.left_mm, out_mm), at(hole.right_mm, out_mm), pen);
    }
    std::vector<Vec2> box(double left, double right, double low_out, double high_out) const {
        return {line.at(left, low_out), line.at(right, low_out), line.at(right, high_out),
                line.at(left, high_out)};
    }
};

void drawWindow(OpeningDrawing& drawing) {
    const geometry::FaceHole& hole = drawing.hole;
    const double depth = std::min(kFrameDepth, hole.through_mm);
    const double deepest = hole.through_mm - depth;
    const double reveal =
        drawing.opening->reveal_mm > 0 ? std::min(drawing.opening->reveal_mm, deepest) : deepest / 2;
    drawing.across(0, kThin);
    drawing.across(-hole.through_mm, kThin);
    drawing.ink.polyline(
        drawing.storey->at(drawing.box(hole.left_mm, hole.right_mm, -reveal - depth, -reveal)), true,
        kNarrow);
    drawing.across(-reveal - depth / 2, kThin);
    if (drawing.opening->sill_board_mm > 0)
        drawing.ink.polyline(
            drawing.storey->at(drawing.box(hole.left_mm - kSillPast, hole.right_mm + kSillPast, 0,
                                           drawing.opening->sill_board_mm)),
            true, kQuiet);
}

double angleOf(Vec2 from, Vec2 to) {
    return std::atan2(to.y - from.y, to.x - from.x) * 180 / std::numbers::pi;
}

/// The way the free end of a leaf swings.
void drawSwing(OpeningDrawing& drawing, const geometry::Leaf& leaf) {
    double start = angleOf(leaf.hinge_mm, leaf.closed_mm);
    double sweep = std::fmod(angleOf(leaf.hinge_mm, leaf.open_mm) - start + 720, 360);
    if (sweep > 180) {
        start += sweep;
        sweep = 360 - sweep;
    }
    drawing.ink.arc(drawing.storey->at(leaf.hinge_mm), leaf.width_mm / drawing.storey->base->mapping.scale,
                    start, start + sweep, kThin);
}

void drawLeaves(OpeningDrawing& drawing) {
    for (const geometry::Leaf& leaf : geometry::doorLeaves(*drawing.storey->house, *drawing.opening)) {
        const bool hinged = drawing.opening->kind == Kind::HingedDoor;
        if (hinged) drawSwing(drawing, leaf);
        drawing.ink.fill(drawing.storey->at(leaf.standing_mm), drawing.storey->options->paper);
        drawing.ink.polyline(drawing.storey->at(leaf.standing_mm), true, kNarrow);
        if (!hinged) // where it stands shut
            drawing.ink.line(drawing.storey->at(leaf.hinge_mm), drawing.storey->at(leaf.closed_mm), kHidden);
        drawing.storey->base->keep_clear.push_back(drawing.storey->at(leaf.standing_mm));
        if (!leaf.standing_mm.empty())
            drawing.storey->base->hits.push_back({PlanThing::Opening, drawing.opening->id,
                                                  drawing.opening->room, drawing.opening->wall,
                                                  leaf.standing_mm});
    }
}

/// A hole above or below the cut.
void drawBeyondCut(OpeningDrawing& drawing) {
    const geometry::FaceHole& hole = drawing.hole;
    drawing.ink.polyline(drawing.storey->at(drawing.box(hole.left_mm, hole.right_mm, -hole.through_mm, 0)),
                         true, kHidden);
}

void drawOpening(OpeningDrawing& drawing, bool cut) {
    const double through = drawing.hole.through_mm;
    switch (drawing.opening->kind) {
    case Kind::Window:
        drawWindow(drawing);
        break;
    case Kind::Plain:
    case Kind::Hatch:
        if (!cut) {
            drawBeyondCut(drawing);
            break;
        }
        drawing.across(0, kHidden);
        drawing.across(-through, kHidden);
        break;
    case Kind::HingedDoor:
    case Kind::PocketDoor:
    case Kind::SlidingDoor:
    case Kind::BarnDoor:
        drawLeaves(drawing);
        break;
    }
}

} // namespace

void drawPlanOpenings(StoreyDrawing& storey) {
    for (const plan::Room* room : storey.rooms)
        for (std::size_t wall = 0; wall < room->walls.size(); ++wall)
            for (const PlanHole& hole : planHoles(*storey.house, {room->id, wall})) {
                if (!hole.hole.hosted_here) continue;
                const plan::Opening& opening = *hole.hole.opening;
                OpeningDrawing drawing{&storey, &opening, wallLineOnPlan(*room, wall), hole.hole,
                                       Ink(storey.base->items, "openings", opening.id)};
                storey.base->hits.push_back({PlanThing::Opening, opening.id, opening.room, opening.wall,
                                             drawing.box(hole.hole.left_mm, hole.hole.right_mm,
                                                         -hole.hole.through_mm - kGripMm, kGripMm)});
                drawOpening(drawing, hole.cut);
            }
}

} // namespace gangway::sheets
