// Openings of a wall: casing, structural edge, leaf, swing, and where leaves stand when open.
#include "drawing/dimensions.hpp"
#include "sheets/elevation_view.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr Pen kSwing{0.18, drawing::LineType::Dashed, drawing::kBlack};
constexpr Pen kOtherPlace{0.18, drawing::LineType::LongDashDoubleDot, drawing::kBlack};
constexpr double kSillBoardBeyond =
    50; ///< how far a sill board runs past the opening; common practice, no source
constexpr double kSillBoardThick = 25;
/// Open leaves further out from the wall than this are not drawn before it.
constexpr double kLeafReach = 1000;

using Kind = plan::Opening::Kind;

bool isDoor(const plan::Opening& opening) {
    return opening.kind != Kind::Window && opening.kind != Kind::Plain && opening.kind != Kind::Hatch;
}

/// The side as seen on this face: what is left in the host room is right on the other side.
plan::Side seenSide(plan::Side side, bool hosted_here) {
    if (hosted_here) return side;
    return side == plan::Side::Left ? plan::Side::Right : plan::Side::Left;
}

void drawCasing(Ink& ink, const geometry::FaceHole& hole, const Rect& structural, OnPaper paper) {
    const double casing =
        paper.mm(hole.hosted_here ? hole.opening->casing_mm : hole.opening->casing_beyond_mm);
    if (casing <= 0) return;
    const bool to_floor = structural.bottom <= 0.01;
    const Rect outer{structural.left - casing, to_floor ? structural.bottom : structural.bottom - casing,
                     structural.right + casing, structural.top + casing};
    ink.fill(outer, drawing::kWhite);
    if (!to_floor) {
        ink.rect(outer, kThin);
        return;
    }
    ink.polyline({{outer.left, outer.bottom},
                  {outer.left, outer.top},
                  {outer.right, outer.top},
                  {outer.right, outer.bottom}},
                 false, kThin);
}

/// One leaf with its swing: dashed lines that meet at the hinge side.
void drawHingedLeaf(Ink& ink, const Rect& leaf, plan::Side hinge) {
    ink.rect(leaf, kThin);
    const double hinge_x = hinge == plan::Side::Left ? leaf.left : leaf.right;
    const double free_x = hinge == plan::Side::Left ? leaf.right : leaf.left;
    const Pt apex{hinge_x, (leaf.bottom + leaf.top) / 2};
    ink.line({free_x, leaf.top}, apex, kSwing);
    ink.line(apex, {free_x, leaf.bottom}, kSwing);
}

void drawHinged(Ink& ink, const geometry::FaceHole& hole, const Rect& inner) {
    const plan::Side hinge = seenSide(hole.opening->hinge, hole.hosted_here);
    if (hole.opening->leaves < 2) {
        drawHingedLeaf(ink, inner, hinge);
        return;
    }
    const double middle = inner.centre().x;
    drawHingedLeaf(ink, {inner.left, inner.bottom, middle, inner.top}, plan::Side::Left);
    drawHingedLeaf(ink, {middle, inner.bottom, inner.right, inner.top}, plan::Side::Right);
}

/// Sliding kinds: the leaf, an arrow the way it opens, and the open leaf's place beside the opening.
void drawSliding(Ink& ink, const WallView& view, const geometry::FaceHole& hole, const Rect& inner,
                 OnPaper paper) {
    ink.rect(inner, kThin);
    const bool to_left = seenSide(hole.opening->parks, hole.hosted_here) == plan::Side::Left;
    const double reach = std::min(inner.width() * 0.5, 14.0);
    const double y = inner.bottom + inner.height() * 0.3;
    const Pt tail{inner.centre().x + (to_left ? reach / 2 : -reach / 2), y};
    const Pt tip{inner.centre().x + (to_left ? -reach / 2 : reach / 2), y};
    const double back = to_left ? 2.4 : -2.4;
    ink.line(tail, tip, kThin);
    ink.polyline({{tip.x + back, tip.y + 0.9}, tip, {tip.x + back, tip.y - 0.9}}, false, kThin);
    for (const geometry::Leaf& leaf : geometry::doorLeaves(view.house->index(), *hole.opening)) {
        const double a = geometry::toFrame(view.frame, {leaf.hinge_mm.x, leaf.hinge_mm.y, 0}).x;
        const double b = geometry::toFrame(view.frame, {leaf.open_mm.x, leaf.open_mm.y, 0}).x;
        ink.rect(paper.rect(std::min(a, b), leaf.bottom_mm, std::max(a, b), leaf.top_mm), kOtherPlace);
    }
}

void drawWindow(Ink& ink, const geometry::FaceHole& hole, const Rect& structural, const Rect& inner,
                OnPaper paper) {
    if (hole.opening->frame_mm > 0) ink.rect(inner, kThin);
    if (hole.opening->sill_board_mm <= 0 || !hole.hosted_here) return;
    const double beyond = paper.mm(kSillBoardBeyond);
    const Rect board{structural.left - beyond, structural.bottom - paper.mm(kSillBoardThick),
                     structural.right + beyond, structural.bottom};
    ink.fill(board, drawing::kWhite);
    ink.rect(board, kThin);
}

std::string nameOf(const plan::Opening& opening) {
    if (!opening.name.empty()) return opening.name;
    switch (opening.kind) {
    case Kind::HingedDoor:
        return opening.leaves > 1 ? "double door" : "door";
    case Kind::PocketDoor:
        return "pocket door";
    case Kind::SlidingDoor:
        return "sliding door";
    case Kind::BarnDoor:
        return "barn door";
    case Kind::Window:
        return "window";
    case Kind::Plain:
        return "opening";
    case Kind::Hatch:
        return "hatch";
    }
    return {};
}

/// The name in lines of whole words; on one line where some word is too long for the opening.
std::vector<std::string> nameLines(const std::string& name, double width_mm) {
    const auto lines = wrapped(name, kValueText, std::max(width_mm, 1.0));
    const auto words = static_cast<std::size_t>(std::count(name.begin(), name.end(), ' ')) + 1;
    const bool whole = std::all_of(lines.begin(), lines.end(), [&](const std::string& line) {
        return name.find(line + " ") != std::string::npos || name.ends_with(line);
    });
    return whole && lines.size() <= words ? lines : std::vector<std::string>{name};
}

/// Name, size in brackets (its edges are in the running row), sill and head above FFL.
/// On the strip the name alone, where it fits.
Label labelOf(const geometry::FaceHole& hole, const Rect& inner, OnPaper paper) {
    const plan::Opening& opening = *hole.opening;
    Label label;
    label.lines = nameLines(nameOf(opening), inner.width() - 2);
    label.height_mm = kValueText;
    label.within = inner.grown(-0.8);
    label.layer = "text";
    label.id = opening.id;
    if (paper.compact) return label;
    label.need = Label::Need::Always;
    label.lines.push_back(fmt::format("({} × {})", drawing::number(hole.right_mm - hole.left_mm),
                                      drawing::number(hole.top_mm - hole.bottom_mm)));
    if (hole.bottom_mm > 0.25) label.lines.push_back("sill " + drawing::number(hole.bottom_mm));
    label.lines.push_back("head " + drawing::number(hole.top_mm));
    if (opening.kind == Kind::HingedDoor) {
        const bool into_here = (opening.swing == plan::Swing::In) == hole.hosted_here;
        label.lines.push_back(into_here ? "opens in" : "opens out");
    }
    return label;
}

} // namespace

void drawOpenings(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper) {
    for (const geometry::FaceHole& hole : view.holes) {
        const plan::Opening& opening = *hole.opening;
        Ink ink(items, "openings", opening.id);
        const Rect structural = paper.rect(hole.left_mm, hole.bottom_mm, hole.right_mm, hole.top_mm);
        const double frame = paper.mm(opening.frame_mm);
        const Rect inner{structural.left + frame, structural.bottom + (isDoor(opening) ? 0 : frame),
                         structural.right - frame, structural.top - frame};
        drawCasing(ink, hole, structural, paper);
        ink.fill(structural, drawing::kWhite);
        switch (opening.kind) {
        case Kind::HingedDoor:
            drawHinged(ink, hole, inner);
            break;
        case Kind::PocketDoor:
        case Kind::SlidingDoor:
        case Kind::BarnDoor:
            drawSliding(ink, view, hole, inner, paper);
            break;
        case Kind::Window:
            drawWindow(ink, hole, structural, inner, paper);
            break;
        case Kind::Plain:
        case Kind::Hatch:
            ink.line({inner.left, inner.bottom}, {inner.right, inner.top}, kThin);
            ink.line({inner.left, inner.top}, {inner.right, inner.bottom}, kThin);
            break;
        }
        ink.rect(structural, kOutline);
        labels.push_back(labelOf(hole, inner, paper));
    }
}

void drawOpenLeaves(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                    OnPaper paper) {
    for (const plan::Opening* candidate : view.house->index().doorsInto(view.room->id)) {
        const plan::Opening& opening = *candidate;
        const bool here = std::any_of(view.holes.begin(), view.holes.end(),
                                      [&](const auto& hole) { return hole.opening == &opening; });
        if (here || opening.kind != Kind::HingedDoor) continue;
        for (const geometry::Leaf& leaf : geometry::doorLeaves(view.house->index(), opening)) {
            if (leaf.swings_into != view.room->id) continue;
            const auto hinge = geometry::toFrame(view.frame, {leaf.hinge_mm.x, leaf.hinge_mm.y, 0});
            const auto tip = geometry::toFrame(view.frame, {leaf.open_mm.x, leaf.open_mm.y, 0});
            const double left = std::max(std::min(hinge.x, tip.x), 0.0);
            const double right = std::min(std::max(hinge.x, tip.x), view.length_mm());
            const bool before = std::max(hinge.z, tip.z) < kLeafReach && std::min(hinge.z, tip.z) > -1;
            if (!before || right - left < leaf.width_mm / 2) continue;
            Ink ink(items, "openings", opening.id);
            const Rect rect = paper.rect(left, leaf.bottom_mm, right, leaf.top_mm);
            ink.rect(rect, kOtherPlace);
            if (paper.compact) continue;
            Label label;
            label.lines = {"door when open"};
            label.within = rect.grown(-0.8);
            label.layer = "text";
            label.id = opening.id;
            labels.push_back(label);
        }
    }
}

} // namespace gangway::sheets
