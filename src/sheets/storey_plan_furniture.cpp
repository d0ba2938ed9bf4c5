// Furniture and stairs of a storey's plan, as they are seen from above.
#include "sheets/storey_plan_parts.hpp"

#include "geometry/plan_outline.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace gangway::sheets {

namespace {

/// Parts smaller than this on paper both ways are left out.
constexpr double kSmallest = 0.9;
constexpr double kArrow = 1.6; ///< length of an arrow's head

/// A solid of a piece that is looked down on.
struct Seen {
    geometry::TopOutline outline;
    plan::Visibility visibility = plan::Visibility::Shown;
};

bool tooSmall(const std::vector<Pt>& outline) {
    const Rect extent = extentOfPoints(outline);
    return extent.width() < kSmallest && extent.height() < kSmallest;
}

void drawSeen(StoreyDrawing& storey, const Seen& seen) {
    auto outline = storey.at(seen.outline.hull_mm);
    if (tooSmall(outline)) return;
    const std::size_t first = storey.base->items.size();
    Ink ink(storey.base->items, "furniture", seen.outline.piece->id);
    ink.fill(outline, storey.options->paper);
    ink.polyline(std::move(outline), true, kQuiet);
    if (seen.visibility == plan::Visibility::Ghosted) makeLight(storey.base->items, first);
}

/// A piece that hangs above the cut: its footprint, dashed.
void drawOverhead(StoreyDrawing& storey, const plan::Furniture& piece, plan::Visibility visibility) {
    const std::size_t first = storey.base->items.size();
    Ink(storey.base->items, "furniture", piece.id)
        .polyline(storey.at(geometry::footprint(piece)), true, kQuietDashed);
    if (visibility == plan::Visibility::Ghosted) makeLight(storey.base->items, first);
}

void drawRoomFurniture(StoreyDrawing& storey, const plan::Room& room) {
    std::vector<Seen> seen;
    std::vector<std::pair<const plan::Furniture*, plan::Visibility>> overhead;
    std::vector<const plan::Furniture*> hits;
    for (const plan::Furniture* piece : storey.house->furnitureIn(room.id)) {
        const plan::Visibility visibility = visibilityOf(*storey.plan, piece->layer);
        if (visibility == plan::Visibility::Hidden) continue;
        hits.push_back(piece);
        if (piece->bottom_mm >= kCutHeight) {
            overhead.emplace_back(piece, visibility);
            continue;
        }
        for (auto& outline : geometry::topOutlines(*piece, storey.options->base))
            seen.push_back({std::move(outline), visibility});
    }
    // A bed is taken hold of and not the rug under it.
    std::ranges::stable_sort(
        hits, {}, [](const plan::Furniture* piece) { return piece->bottom_mm + piece->size.height_mm; });
    for (const plan::Furniture* piece : hits)
        storey.base->hits.push_back(
            {PlanThing::Furniture, piece->id, room.id, {}, geometry::footprint(*piece)});
    // What is higher lies over what is lower, whichever piece it belongs to: a chair goes under its table.
    std::ranges::stable_sort(seen, {}, [](const Seen& s) { return s.outline.top_mm; });
    for (const Seen& one : seen)
        drawSeen(storey, one);
    for (const auto& [piece, visibility] : overhead)
        drawOverhead(storey, *piece, visibility);
}

/// An arrow along a flight, with a word at its tail.
void drawFlightArrow(StoreyDrawing& storey, const plan::Furniture& stair, Vec2 from_mm, Vec2 to_mm,
                     const std::string& word) {
    Ink ink(storey.base->items, "building", stair.id);
    const Vec2 way = to_mm - from_mm;
    const double size = plan::length(way);
    if (size < storey.real(4 * kArrow)) return;
    const Vec2 unit = way * (1 / size);
    const Pt tail = storey.at(from_mm + unit * storey.real(2));
    const Pt tip = storey.at(to_mm - unit * storey.real(1));
    const Pt back{tip.x - unit.x * kArrow, tip.y - unit.y * kArrow};
    const double half = kArrow * 0.3;
    ink.line(tail, back, kThin);
    ink.circle(tail, 0.5, kThin);
    ink.fill({tip,
              {back.x - unit.y * half, back.y + unit.x * half},
              {back.x + unit.y * half, back.y - unit.x * half}},
             drawing::kBlack);
    drawing::Text text;
    text.text = word;
    text.height_mm = kNoteText;
    text.align = drawing::Align::Centre;
    text.knock_out = true;
    const double half_width = drawing::measure(word, kNoteText).width_mm / 2;
    const double along = 2 + std::abs(unit.x) * half_width + std::abs(unit.y) * kNoteText / 2;
    text.at = {tail.x + unit.x * along, tail.y + unit.y * along - kNoteText / 2};
    storey.base->keep_clear.push_back(drawing::textCorners(text, drawing::kKnockOutMargin_mm));
    ink.text(text);
}

/// A flight from the storey below, seen through the hole it comes up through.
void drawFromBelow(StoreyDrawing& storey, const geometry::StairVoid& through) {
    Ink ink(storey.base->items, "building", through.stair->id);
    ink.fill(storey.at(through.outline_mm), storey.options->paper);
    auto outlines = geometry::topOutlines(*through.stair);
    std::ranges::stable_sort(outlines, {}, &geometry::TopOutline::top_mm);
    for (const auto& outline : outlines)
        if (auto points = storey.at(outline.hull_mm); !tooSmall(points))
            ink.polyline(std::move(points), true, kQuiet);
    ink.polyline(storey.at(through.outline_mm), true, kNarrow);
    const geometry::Rise rise = geometry::stairRise(*through.stair);
    drawFlightArrow(storey, *through.stair, rise.head_mm, rise.foot_mm, "down");
}

} // namespace

void drawPlanFurniture(StoreyDrawing& storey) {
    for (const plan::Room* room : storey.rooms)
        drawRoomFurniture(storey, *room);
}

void drawPlanStairs(StoreyDrawing& storey) {
    if (!storey.options->furniture) return;
    std::set<std::string> drawn; // a flight may come up through the floors of several rooms
    const auto shown = [&](const plan::Furniture& stair) {
        return visibilityOf(*storey.plan, stair.layer) != plan::Visibility::Hidden;
    };
    for (const plan::Room* room : storey.rooms) {
        for (const geometry::StairVoid& through : storey.house->floorVoids(room->id))
            if (shown(*through.stair) && drawn.insert(through.stair->id).second)
                drawFromBelow(storey, through);
        for (const plan::Furniture* piece : storey.house->furnitureIn(room->id)) {
            if (piece->kind != "stair" || !shown(*piece)) continue;
            const geometry::Rise rise = geometry::stairRise(*piece);
            drawFlightArrow(storey, *piece, rise.foot_mm, rise.head_mm, "up");
        }
    }
}

} // namespace gangway::sheets
