#include "sheets/elevation_dimensions.hpp"

#include "drawing/dimensions.hpp"
#include "geometry/furniture.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <string_view>
#include <tuple>
#include <utility>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kFirstRow = 10;      ///< first dimension line from the outline (drawing-standards 1.2)
constexpr double kDetailRow = 6;      ///< from a detail's frame
constexpr double kCompactRow = 3.5;   ///< the same on the strip
constexpr double kLoneLetter = 5;     ///< room for a neighbour's letter beside the wall on the strip
constexpr double kCrossEnd = 3.0;     ///< centre lines of plates end here; extension lines go on from there
constexpr double kFurnitureNear = 60; ///< furniture standing this near to the wall gives edges
constexpr double kFurnitureTop = 150; ///< and is at least this high and wide
constexpr double kEdgeMatters = 600;  ///< edges this near to a plate are dimensioned
constexpr double kLevelReach = 17;    ///< length of a level's line
constexpr Pen kSiteLine{0.25, drawing::LineType::LongDashDot, drawing::kBlack};

std::vector<drawing::RunningMark> setOutMarks(const WallView& view, OnPaper paper) {
    std::vector<drawing::RunningMark> marks;
    for (const Mounted& item : view.mounted) {
        if (item.detail != 0) continue;
        const double from_y = outlineOf(item, paper).bottom - kCrossEnd;
        for (Vec2 box : item.box_centres_mm)
            marks.push_back({{paper.mm(box.x), from_y}, paper.mm(box.x), view.printed(box).x, item.id});
    }
    return marks;
}

/// One mark for each height, its extension line from the left-most box that has it.
std::vector<drawing::RunningMark> heightMarks(const WallView& view, OnPaper paper) {
    std::map<std::string, drawing::RunningMark> by_value;
    for (const Mounted& item : view.mounted) {
        if (item.detail != 0) continue;
        const double from_x = outlineOf(item, paper).left - kCrossEnd;
        for (Vec2 box : item.box_centres_mm) {
            const drawing::RunningMark mark{
                {from_x, paper.mm(box.y)}, paper.mm(box.y), view.printed(box).y, item.id};
            const auto [it, added] = by_value.emplace(drawing::number(box.y), mark);
            if (!added && from_x < it->second.from.x) it->second = mark;
        }
    }
    std::vector<drawing::RunningMark> marks;
    for (auto& [value, mark] : by_value)
        marks.push_back(mark);
    return marks;
}

bool nearAPlate(const WallView& view, double u_mm) {
    return std::any_of(view.mounted.begin(), view.mounted.end(), [&](const Mounted& item) {
        return std::abs(item.at_mm.x - u_mm) <= kEdgeMatters + item.width_mm / 2;
    });
}

/// Pieces one sets out from: not what is moved by hand, and no soft furnishings.
bool staysPut(const plan::Furniture& piece) {
    constexpr std::array<std::string_view, 7> kMoved{"chair", "armchair", "table", "plant",
                                                     "bench", "rug",      "fan"};
    const bool moved = std::find(kMoved.begin(), kMoved.end(), piece.kind) != kMoved.end();
    return !moved && piece.layer != plan::kLayerSoft;
}

/// The stretch of the wall a piece's footprint takes, so that edges are the plan's own numbers.
std::pair<double, double> reachAlong(const WallView& view, const plan::Furniture& piece) {
    double left = std::numeric_limits<double>::infinity();
    double right = -left;
    for (Vec2 corner : geometry::footprint(piece)) {
        const double u = geometry::toFrame(view.frame, {corner.x, corner.y, 0}).x;
        left = std::min(left, u);
        right = std::max(right, u);
    }
    return {left, right};
}

/// Structural edges of openings, and edges of furniture at the wall that are near a plate.
std::vector<drawing::RunningMark> edgeMarks(const WallView& view, OnPaper paper) {
    std::vector<drawing::RunningMark> marks;
    const auto add = [&](double u_mm, double v_mm, const std::string& id) {
        if (u_mm > view.left_mm() + 0.5 && u_mm < view.right_mm() - 0.5)
            // What rises past the ceiling, as a stair does, is met where it leaves the wall.
            marks.push_back({paper.at({u_mm, std::min(v_mm, view.topAt(u_mm))}), paper.mm(u_mm),
                             view.printed({u_mm, 0}).x, id});
    };
    for (const auto& hole : view.holes) {
        add(hole.left_mm, hole.top_mm, hole.opening->id);
        add(hole.right_mm, hole.top_mm, hole.opening->id);
    }
    if (view.fix == Fix::First) return marks;
    for (const auto& silhouette :
         geometry::silhouettes(view.house->index(), *view.room, view.wall, kFurnitureNear, view.base())) {
        const plan::Furniture& piece = *silhouette.piece;
        if (!staysPut(piece)) continue;
        double top = 0;
        for (const auto& hull : silhouette.hulls_mm)
            for (Vec2 p : hull)
                top = std::max(top, p.y);
        const auto [left, right] = reachAlong(view, piece);
        if (right - left < kFurnitureTop || top < kFurnitureTop) continue;
        if (nearAPlate(view, left)) add(left, top, piece.id);
        if (nearAPlate(view, right)) add(right, top, piece.id);
    }
    return marks;
}

/// Plates of one height whose middles follow each other at one distance.
struct Series {
    double from_mm = 0;
    double step_mm = 0;
    std::size_t steps = 0;
};

/// Series of three or more, from left to right.
std::vector<Series> equallySpaced(const WallView& view) {
    constexpr double kSame = 0.25; // half of what is printed
    constexpr double kLeast = 150; // nearer they are one group of plates
    std::map<std::string, std::vector<double>> by_height;
    for (const Mounted& item : view.mounted)
        if (item.plate != nullptr && item.detail == 0)
            by_height[drawing::number(item.at_mm.y)].push_back(item.at_mm.x);
    std::vector<Series> found;
    for (auto& [height, us] : by_height) {
        std::ranges::sort(us);
        for (std::size_t i = 0; i + 2 < us.size();) {
            const double step = us[i + 1] - us[i];
            std::size_t last = i + 1;
            while (last + 1 < us.size() && std::abs(us[last + 1] - us[last] - step) <= kSame)
                ++last;
            if (last - i >= 2 && step >= kLeast) found.push_back({us[i], step, last - i});
            i = last - i >= 2 ? last : i + 1;
        }
    }
    std::ranges::sort(found, {}, [](const Series& one) { return std::pair(one.from_mm, one.step_mm); });
    return found;
}

/// What is spaced equally is said once more, in brackets, under the set-outs: each series that does not meet
/// the one before it in a row of its own.
void drawEqualSpacing(std::vector<Item>& items, const WallView& view, OnPaper paper, double under) {
    constexpr double kFirst = 6;
    constexpr double kPitch = 7; // of parallel dimension lines (drawing-standards 1.2)
    std::vector<double> right_ends;
    for (const Series& series : equallySpaced(view)) {
        const Pt from{paper.mm(series.from_mm), 0};
        const Pt to{paper.mm(series.from_mm + static_cast<double>(series.steps) * series.step_mm), 0};
        const std::string words =
            fmt::format("({} × {} = {})", series.steps, drawing::number(series.step_mm),
                        drawing::number(series.step_mm * static_cast<double>(series.steps)));
        if (drawing::measure(words, kValueText).width_mm > to.x - from.x - 4) continue;
        std::size_t row = 0;
        while (row < right_ends.size() && right_ends[row] > from.x - 3)
            ++row;
        if (row == right_ends.size()) right_ends.push_back(0);
        right_ends[row] = to.x;
        const double y = under - kFirst - kPitch * static_cast<double>(row);
        auto dimension = drawing::linear({from.x, y}, {to.x, y}, 0,
                                         series.step_mm * static_cast<double>(series.steps), kValueText, "");
        dimension.texts.front().text = words;
        items.push_back({"dimensions", "", std::move(dimension)});
    }
}

void rowName(std::vector<Item>& items, Pt right_end, const std::string& name) {
    Ink(items, "dimensions").text(right_end, name, kNoteText, drawing::Align::Right);
}

/// A level to be signed at the right of the wall.
struct LevelSign {
    double y = 0;
    std::string value;
};

/// The sign of a level: a line, a triangle standing on it, and the value. `slot_y` is where the value has
/// room; the line is kinked when that is not at the level itself.
void drawLevel(std::vector<Item>& items, double x, const LevelSign& level, double slot_y, bool below) {
    Ink ink(items, "dimensions");
    constexpr double kKink = 2.5;
    if (slot_y != level.y) ink.line({x - kKink, level.y}, {x, slot_y}, kThin);
    ink.line({x, slot_y}, {x + kLevelReach, slot_y}, kThin);
    const double tip = below ? -2.2 : 2.2;
    ink.polyline({{x + 2, slot_y}, {x + 3.3, slot_y + tip}, {x + 0.7, slot_y + tip}}, true, kThin);
    ink.text({x + 4.4, below ? slot_y - 0.9 - kValueText : slot_y + 0.9}, level.value, kValueText);
}

/// Signs from below upwards, each clear of the one under it.
void drawLevelsFrom(std::vector<Item>& items, double x, std::vector<LevelSign> levels) {
    constexpr double kPitch = 5.4;
    std::sort(levels.begin(), levels.end(), [](const LevelSign& a, const LevelSign& b) {
        return std::tie(a.y, a.value) < std::tie(b.y, b.value);
    });
    double lowest = -std::numeric_limits<double>::infinity();
    for (const LevelSign& level : levels) {
        const double slot = std::max(level.y, lowest);
        drawLevel(items, x, level, slot, false);
        lowest = slot + kPitch;
    }
}

/// The site's level line as far as the wall reaches up to it.
void drawSiteLine(std::vector<Item>& items, const WallView& view, double level_mm, OnPaper paper) {
    std::vector<double> us{view.left_mm(), view.right_mm()};
    for (std::size_t i = 2; i + 1 < view.outline_mm.size(); ++i) {
        const Vec2 a = view.outline_mm[i];
        const Vec2 b = view.outline_mm[i + 1];
        if ((a.y - level_mm) * (b.y - level_mm) >= 0) continue;
        const double u = a.x + (b.x - a.x) * (level_mm - a.y) / (b.y - a.y);
        if (u > view.left_mm() && u < view.right_mm()) us.push_back(u);
    }
    std::sort(us.begin(), us.end());
    Ink ink(items, "building");
    for (std::size_t i = 1; i < us.size(); ++i)
        if (view.topAt((us[i - 1] + us[i]) / 2) > level_mm)
            ink.line(paper.at({us[i - 1], level_mm}), paper.at({us[i], level_mm}), kSiteLine);
}

} // namespace

void drawDimensions(std::vector<Item>& items, const WallView& view, OnPaper paper) {
    drawing::RunningStyle style;
    if (paper.compact) style.past_mm = 1;
    const auto append = [&](std::vector<Item> more) {
        items.insert(items.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    };
    if (view.mounted.empty()) return;
    // Where a portion begins after its datum, rows run in from the datum, which is out of the picture.
    const bool detail = view.portion && view.portion->v_mm;
    const bool left_end = view.shows(End::Left) && !detail;
    const double left = paper.mm(view.left_mm());
    const double origin_x = left_end ? paper.mm(view.u_datum_mm) : left;
    drawing::RunningStyle along = style;
    along.origin_shown = left_end;
    const double foot = detail ? paper.mm(view.portion->v_mm->first) : paper.mm(view.slab_mm());
    const double row_y = paper.compact ? -kCompactRow : foot - (detail ? kDetailRow : kFirstRow);
    double under = row_y;
    append(drawing::runningRow(origin_x, row_y, setOutMarks(view, paper), along, "dimensions", &under));
    if (view.check_dimensions && !paper.compact) drawEqualSpacing(items, view, paper, under);
    double beside = left_end ? returnWidth(view, paper, End::Left) : 0;
    // Around an outside corner the neighbour's letter stands alone.
    if (paper.compact && left_end && beside == 0) beside = kLoneLetter;
    const double column_x = left - beside - (paper.compact ? kCompactRow : detail ? kDetailRow : kFirstRow);
    drawing::RunningStyle up = style;
    up.origin_shown = !detail;
    append(drawing::runningColumn(column_x, detail ? foot : paper.mm(view.v_datum_mm),
                                  heightMarks(view, paper), up, "dimensions"));
    if (paper.compact || detail) return;
    rowName(items, {left - 3, row_y - kNoteText / 2}, "box centres, u");
    const auto edges = edgeMarks(view, paper);
    if (edges.empty()) return;
    const double edge_y = paper.mm(view.top_mm()) + kFirstRow;
    append(drawing::runningRow(origin_x, edge_y, edges, along, "dimensions"));
    rowName(items, {left - 3, edge_y - kNoteText / 2}, "edges, u");
}

void drawLevels(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper) {
    // Past a match line the words that stand along it have their place.
    const double beyond = view.shows(End::Right) ? returnWidth(view, paper, End::Right) + 3 : 6;
    const double x = paper.mm(view.right_mm()) + beyond;
    std::vector<LevelSign> levels{{0, "FFL +0"}};
    if (view.slab_mm() < 0) {
        const LevelSign slab{paper.mm(view.slab_mm()),
                             fmt::format("slab {}", drawing::number(view.slab_mm()))};
        drawLevel(items, x, slab, slab.y, true);
    }
    const plan::Storey* storey = view.storey();
    if (storey != nullptr && storey->site_line_mm) {
        const double site_mm = *storey->site_line_mm;
        drawSiteLine(items, view, site_mm, paper);
        levels.push_back({paper.mm(site_mm), fmt::format("site +{}", drawing::number(site_mm))});
    }
    if (!view.sloped())
        levels.push_back({paper.mm(view.top_mm()), fmt::format("+{}", drawing::number(view.top_mm()))});
    drawLevelsFrom(items, x, std::move(levels));
    if (!view.sloped()) return;
    // A sloped ceiling is given at each of its corners.
    for (std::size_t i = 2; i < view.outline_mm.size(); ++i) {
        if (view.outline_mm[i].x < view.left_mm() || view.outline_mm[i].x > view.right_mm()) continue;
        const Pt corner = paper.at(view.outline_mm[i]);
        Label label;
        label.lines = {fmt::format("+{}", drawing::number(view.outline_mm[i].y))};
        label.height_mm = kValueText;
        label.within = {corner.x - 7, corner.y + 1, corner.x + 7, corner.y + 6};
        label.layer = "dimensions";
        label.need = Label::Need::Always;
        labels.push_back(label);
    }
}

} // namespace gangway::sheets
