// Outline of the wall, floor and slab, the adjacent walls in cut, and the lines on the wall's face.
#include "sheets/elevation_view.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kHatchPitch = 1.8; ///< clear space at least 0.7 (ISO 128-2)
constexpr double kSlabStroke = 1.6;
constexpr double kLetterRadius = 3.0;
constexpr double kSmallRadius = 2.1;    ///< on the strip
constexpr double kLeastTilePitch = 1.0; ///< joints nearer than this on paper are left out
constexpr Pen kJoint{0.13, drawing::LineType::Continuous, drawing::kGhost};

using Interval = std::pair<double, double>;

/// Strokes at 45 degrees inside an upright rectangle.
void hatch(Ink& ink, const Rect& rect, double pitch_mm) {
    const double step = pitch_mm * std::sqrt(2.0);
    for (double c = rect.bottom - rect.right + step; c < rect.top - rect.left; c += step) {
        // The stroke y = x + c, from where it enters the rectangle to where it leaves it.
        const Pt from =
            rect.left + c >= rect.bottom ? Pt{rect.left, rect.left + c} : Pt{rect.bottom - c, rect.bottom};
        const Pt to =
            rect.right + c <= rect.top ? Pt{rect.right, rect.right + c} : Pt{rect.top - c, rect.top};
        if (to.x - from.x > 0.05) ink.line(from, to, kThin);
    }
}

/// The stretches of a wall line that no opening cuts.
std::vector<Interval> uncut(Interval whole, const WallView& view, double bottom_mm, double top_mm) {
    std::vector<Interval> left{whole};
    for (const auto& hole : view.holes) {
        if (hole.top_mm <= bottom_mm || hole.bottom_mm >= top_mm) continue;
        const double casing_mm = hole.hosted_here ? hole.opening->casing_mm : hole.opening->casing_beyond_mm;
        const double from = hole.left_mm - casing_mm;
        const double to = hole.right_mm + casing_mm;
        std::vector<Interval> next;
        for (const auto& [a, b] : left) {
            if (from > a) next.emplace_back(a, std::min(b, from));
            if (to < b) next.emplace_back(std::max(a, to), b);
        }
        std::erase_if(next, [](const Interval& part) { return part.second - part.first < 1; });
        left = std::move(next);
    }
    return left;
}

std::string nameOf(const plan::WallLine& line) {
    switch (line.kind) {
    case plan::WallLine::Kind::Skirting:
        return fmt::format("skirting {:g} high", line.height_mm);
    case plan::WallLine::Kind::Dado:
        return fmt::format("dado rail, top {:g}", line.bottom_mm + line.height_mm);
    case plan::WallLine::Kind::PictureRail:
        return fmt::format("picture rail, top {:g}", line.bottom_mm + line.height_mm);
    case plan::WallLine::Kind::Cornice:
        return fmt::format("cornice, from {:g}", line.bottom_mm);
    case plan::WallLine::Kind::Panel:
        return "panel";
    case plan::WallLine::Kind::Tiles:
        return fmt::format("tiles {:g} x {:g}, joint {:g}", line.tile_width_mm, line.tile_height_mm,
                           line.joint_mm);
    }
    return {};
}

/// Joints of a tile field across one stretch, each drawn as its centre line.
void drawJoints(Ink& ink, const plan::WallLine& tiles, Interval part, OnPaper paper) {
    const double top_mm = tiles.bottom_mm + tiles.height_mm;
    const double pitch_u = tiles.tile_width_mm + tiles.joint_mm;
    const double pitch_v = tiles.tile_height_mm + tiles.joint_mm;
    const bool shown = paper.mm(std::min(pitch_u, pitch_v)) >= kLeastTilePitch;
    if (!shown) return;
    const double first_u = tiles.start_u_mm - tiles.joint_mm / 2;
    const double first_v = tiles.start_v_mm - tiles.joint_mm / 2;
    for (double k = std::ceil((part.first - first_u) / pitch_u); first_u + k * pitch_u < part.second; ++k)
        ink.line(paper.at({first_u + k * pitch_u, tiles.bottom_mm}),
                 paper.at({first_u + k * pitch_u, top_mm}), kJoint);
    for (double k = std::ceil((tiles.bottom_mm - first_v) / pitch_v); first_v + k * pitch_v < top_mm; ++k)
        ink.line(paper.at({part.first, first_v + k * pitch_v}),
                 paper.at({part.second, first_v + k * pitch_v}), kJoint);
}

/// The ceiling side of the outline of a wall, and its foot when `with_floor`.
std::vector<Pt> outlineOnPaper(const WallView& view, OnPaper paper) {
    std::vector<Pt> points;
    for (Vec2 p : view.outline_mm)
        points.push_back(paper.at(p));
    return points;
}

double letterRadius(OnPaper paper) {
    return paper.compact ? kSmallRadius : kLetterRadius;
}

/// A wall's letter in a circle; a long name stands upright along the wall instead.
void drawLetter(std::vector<Item>& items, Pt centre, const std::string& letter, OnPaper paper) {
    const double radius = letterRadius(paper);
    Ink texts(items, "text");
    drawing::Text text;
    text.text = letter;
    text.align = drawing::Align::Centre;
    text.height_mm = paper.compact ? kNoteText : kValueText;
    if (drawing::measure(letter, text.height_mm).width_mm > 2 * radius - 1) {
        text.at = {centre.x + text.height_mm / 2, centre.y};
        text.turn_deg = 90;
        text.knock_out = true;
        texts.text(text);
        return;
    }
    Ink building(items, "building");
    building.fill(disc(centre, radius), drawing::kWhite);
    building.circle(centre, radius, kThin);
    text.at = {centre.x, centre.y - text.height_mm / 2};
    texts.text(text);
}

/// Where a letter stands in a return of this height: clear of the lines that carry heights out to their
/// numbers.
double letterHeight(const WallView& view, OnPaper paper, double top) {
    const double usual = top * 0.62;
    const double clear = letterRadius(paper) + 0.8;
    std::vector<double> lines;
    for (const Mounted& item : view.mounted)
        for (const Vec2 box : item.box_centres_mm)
            lines.push_back(paper.mm(box.y));
    const auto is_clear = [&](double y) {
        return std::ranges::none_of(lines, [&](double line) { return std::abs(line - y) < clear - 1e-9; });
    };
    double best = usual;
    double least = std::numeric_limits<double>::infinity();
    std::vector<double> places{usual};
    for (const double line : lines)
        places.insert(places.end(), {line - clear, line + clear});
    for (const double y : places) {
        if (y < clear || y > top - clear || !is_clear(y) || std::abs(y - usual) >= least) continue;
        best = y;
        least = std::abs(y - usual);
    }
    return best;
}

/// An adjacent wall in cut, or a mark that it turns away, with its letter.
void drawReturn(std::vector<Item>& items, const WallView& view, OnPaper paper, End end) {
    const Neighbour neighbour = neighbourOf(*view.room, view.wall, end);
    Ink building(items, "building");
    const double edge = end == End::Left ? 0 : paper.mm(view.length_mm());
    const double sign = end == End::Left ? -1 : 1;
    const double top_mm = view.topAt(end == End::Left ? 0 : view.length_mm());
    const double width = returnWidth(view, paper, end);
    if (neighbour.towards_viewer) {
        const Rect cut{std::min(edge, edge + sign * width), paper.compact ? 0 : paper.mm(view.slab_mm()),
                       std::max(edge, edge + sign * width), paper.mm(top_mm)};
        hatch(building, cut, kHatchPitch);
        // The far side of the cut is a break: only three sides are the wall's own.
        building.polyline({{edge, cut.bottom}, {edge, cut.top}, {edge + sign * width, cut.top}}, false, kCut);
        building.line({edge + sign * width, cut.bottom}, {edge + sign * width, cut.top}, kThin);
    }
    const double out = neighbour.towards_viewer ? width / 2 : letterRadius(paper) + 1.5;
    drawLetter(items, {edge + sign * out, letterHeight(view, paper, paper.mm(top_mm))},
               view.room->walls[neighbour.wall].id, paper);
}

} // namespace

double returnWidth(const WallView& view, OnPaper paper, End end) {
    const Neighbour neighbour = neighbourOf(*view.room, view.wall, end);
    if (!neighbour.towards_viewer) return 0;
    return std::max(paper.mm(std::clamp(neighbour.thickness_mm, kReturnMin, kReturnMax)),
                    2 * letterRadius(paper) + (paper.compact ? 0.4 : 1));
}

void drawWallLines(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                   OnPaper paper) {
    const plan::Wall& wall = view.data();
    for (const plan::WallLine& line : wall.lines) {
        Ink ink(items, "building");
        const double top_mm = line.bottom_mm + line.height_mm;
        const Interval whole{line.from_mm.value_or(0), line.to_mm.value_or(view.length_mm())};
        const auto parts = uncut(whole, view, line.bottom_mm, top_mm);
        Rect widest;
        for (const Interval& part : parts) {
            if (line.kind == plan::WallLine::Kind::Tiles) drawJoints(ink, line, part, paper);
            const Rect rect = paper.rect(part.first, line.bottom_mm, part.second, top_mm);
            ink.rect(rect, kThin);
            if (rect.width() > widest.width()) widest = rect;
        }
        if (parts.empty()) continue;
        // Low lines are named just above themselves, fields inside.
        if (widest.height() < 6) widest = {widest.left, widest.top, widest.right, widest.top + 5};
        Label label;
        label.lines = {nameOf(line)};
        label.within = widest;
        label.layer = "text";
        labels.push_back(label);
    }
}

void drawFabric(std::vector<Item>& items, const WallView& view, OnPaper paper) {
    drawReturn(items, view, paper, End::Left);
    drawReturn(items, view, paper, End::Right);
    Ink ink(items, "building");
    std::vector<Pt> outline = outlineOnPaper(view, paper);
    if (outline.size() >= 3) {
        // The foot is the FFL line's; the rest is the room's profile.
        std::rotate(outline.begin(), outline.begin() + 1, outline.end());
        ink.polyline(outline, false, kCut);
    }
    const double left = -returnWidth(view, paper, End::Left);
    const double right = paper.mm(view.length_mm()) + returnWidth(view, paper, End::Right);
    ink.line({left, 0}, {right, 0}, kHeavy);
    const double slab = paper.mm(view.slab_mm());
    if (slab > -0.7 || paper.compact) return;
    ink.line({left, slab}, {right, slab}, kNarrow);
    for (double x = left + kSlabStroke; x <= right; x += 2 * kSlabStroke)
        ink.line({x - kSlabStroke, slab - kSlabStroke}, {x, slab}, kThin);
}

} // namespace gangway::sheets
