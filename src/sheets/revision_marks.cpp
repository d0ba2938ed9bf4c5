#include "sheets/revision_marks.hpp"

#include "review/issues.hpp"
#include "sheets/elevation_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gangway::sheets {

namespace {
// Clouds: no ISO clause was found; common practice, no source (drawing-standards 1.8).
constexpr Pen kCloud{0.5, drawing::LineType::Continuous, drawing::kBlack};
constexpr double kArc_mm = 4.5;      ///< chord of one arc of a cloud
constexpr double kAround_mm = 3;     ///< from what changed to its cloud
constexpr double kTriangle_mm = 6.5; ///< side; a letter of 2.5 stands in it

/// Arcs bulging outwards along one side, a whole number of them.
void side(Ink& ink, Pt from, Pt to) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const auto arcs = std::max(1, static_cast<int>(std::lround(length / kArc_mm)));
    const double along_deg = std::atan2(to.y - from.y, to.x - from.x) * 180 / std::numbers::pi;
    for (int i = 0; i < arcs; ++i) {
        const double at = (i + 0.5) / arcs;
        const Pt centre{from.x + (to.x - from.x) * at, from.y + (to.y - from.y) * at};
        ink.arc(centre, length / arcs / 2, along_deg + 180, along_deg + 360, kCloud);
    }
}

/// Counter-clockwise, with arcs on the right of the way, so that each side bulges away from what it goes
/// round.
void cloud(Ink& ink, const Rect& around) {
    side(ink, {around.right, around.top}, {around.left, around.top});
    side(ink, {around.left, around.top}, {around.left, around.bottom});
    side(ink, {around.left, around.bottom}, {around.right, around.bottom});
    side(ink, {around.right, around.bottom}, {around.right, around.top});
}

void triangle(Ink& ink, Pt foot, const std::string& letter) {
    const double high = kTriangle_mm * std::sqrt(3.0) / 2;
    const std::vector<Pt> corners{
        foot, {foot.x + kTriangle_mm, foot.y}, {foot.x + kTriangle_mm / 2, foot.y + high}};
    ink.fill(corners, drawing::kWhite);
    ink.polyline(corners, true, kOutline);
    ink.text({foot.x + kTriangle_mm / 2, foot.y + 0.9}, letter, kNoteText, drawing::Align::Centre);
}

void crossedOut(Ink& ink, const Rect& gone) {
    ink.rect(gone, kHidden);
    const Rect wide = gone.grown(1.5);
    ink.line({wide.left, wide.bottom}, {wide.right, wide.top}, kOutline);
    ink.line({wide.left, wide.top}, {wide.right, wide.bottom}, kOutline);
}

/// The four sides of a cloud as strips that no tag is put on.
void takeSides(Occupancy& occupancy, const Rect& around) {
    const double half = kArc_mm / 2 + 0.3;
    const Rect out = around.grown(half);
    occupancy.take({out.left, around.top - 0.3, out.right, out.top});
    occupancy.take({out.left, out.bottom, out.right, around.bottom + 0.3});
    occupancy.take({out.left, out.bottom, around.left + 0.3, out.top});
    occupancy.take({around.right - 0.3, out.bottom, out.right, out.top});
}

void add(RevisionMarks& marks, const House& house, const plan::Plate& plate,
         const review::PlateChange& change) {
    const plan::Room* room = house.index().room(plate.room);
    if (room == nullptr) return;
    const auto spot = spotOf(house, *room, plate.host);
    if (!spot) return;
    const auto made = catalogue::compose(house.catalogue(), plate);
    marks[{plate.room, spot->wall}].push_back({spot->at_mm, made.width_mm, made.height_mm,
                                               change.kind == review::PlateChange::Kind::Removed,
                                               change.words});
}
} // namespace

RevisionMarks revisionMarks(const House& before, const House& after) {
    RevisionMarks marks;
    for (const review::PlateChange& change : review::platesChanged(before.plan(), after.plan())) {
        if (change.after != nullptr)
            add(marks, after, *change.after, change);
        else
            add(marks, before, *change.before, change);
    }
    return marks;
}

void drawRevisionMarks(std::vector<Item>& items, Occupancy& occupancy, const WallView& view,
                       const OnPaper& paper) {
    Ink ink(items, "revision");
    const std::string letter = review::markLetter(*view.plan);
    for (const RevisionMark& mark : view.changes) {
        const Pt at = paper.at(mark.at_mm);
        const double wide = paper.mm(mark.width_mm) / 2;
        const double high = paper.mm(mark.height_mm) / 2;
        const Rect outline{at.x - wide, at.y - high, at.x + wide, at.y + high};
        if (mark.gone) crossedOut(ink, outline);
        const Rect around = outline.grown(kAround_mm);
        cloud(ink, around);
        const Pt foot{around.right + 1.5, around.top - 1};
        triangle(ink, foot, letter);
        takeSides(occupancy, around);
        occupancy.take({foot.x - 0.5, foot.y - 0.5, foot.x + kTriangle_mm + 0.5, foot.y + kTriangle_mm});
    }
}

std::vector<Block> revisionNotes(const WallView& view, double width_mm) {
    if (view.since.empty()) return {};
    if (view.changes.empty())
        return {notesBlock({fmt::format("No change on this wall since {}.", view.since)}, width_mm)};
    std::vector<std::string> lines{fmt::format("Since {}, in clouds:", view.since)};
    for (const RevisionMark& mark : view.changes)
        lines.push_back(mark.words + ".");
    return {headingBlock("Changed", width_mm), notesBlock(lines, width_mm)};
}

} // namespace gangway::sheets
