#include "sheets/wall_markers.hpp"

#include "sheets/storey_plan_parts.hpp"
#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace gangway::sheets {

namespace {

constexpr double kRadius = 2.9;  ///< of the circle; a longer name makes it a capsule
constexpr double kPointer = 2.2; ///< length of the pointer
constexpr double kPointerHalf = 1.7;
constexpr double kFromWall = 0.9;  ///< between the pointer's tip and the wall
constexpr double kBeside = 0.9;    ///< between the circle and the sheet's number
constexpr double kInRoom = 0.7;    ///< between the marker and the walls
constexpr double kStepAlong = 1.5; ///< between places that are tried
constexpr double kPerLine = 2.5;   ///< what covering a line costs, in mm of distance
constexpr double kOutwards = 1.6;  ///< what a mm away from the wall costs
constexpr std::array<double, 14> kOut{0, 1.5, 3, 5, 7.5, 10, 14, 18, 24, 30, 36, 42, 50, 60};

/// What is around a room's markers.
struct Surroundings {
    std::vector<Rect> taken;
    Occupancy lines; ///< of furniture, which had better not be covered
};

bool isQuiet(const Item& item) {
    return item.layer == "furniture" || item.layer == "building" || item.layer == "openings";
}

void takeItem(Surroundings& around, const Item& item, const Rect& room) {
    const Rect extent = extentOf(item.primitive);
    if (!overlaps(extent.grown(1), room)) return;
    if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive)) {
        for (const drawing::Line& line : dimension->lines)
            around.lines.takeLine(line.from, line.to);
        return;
    }
    const bool text = std::holds_alternative<drawing::Text>(item.primitive);
    if (text) around.taken.push_back(extent.grown(drawing::kKnockOutMargin_mm));
    if (text || std::holds_alternative<drawing::Fill>(item.primitive)) return;
    const auto* polyline = std::get_if<drawing::Polyline>(&item.primitive);
    if (isQuiet(item)) {
        if (polyline == nullptr || item.layer != "furniture") return;
        for (std::size_t i = 1; i < polyline->points.size(); ++i)
            around.lines.takeLine(polyline->points[i - 1], polyline->points[i]);
        return;
    }
    // A long leader across the room is taken as the line it is.
    const auto* line = std::get_if<drawing::Line>(&item.primitive);
    if (line != nullptr && std::min(extent.width(), extent.height()) > 3)
        around.lines.takeLeader(line->from, line->to);
    else
        around.taken.push_back(extent.grown(0.5));
}

Surroundings surroundingsOf(const std::vector<Item>& items, const std::vector<std::vector<Pt>>& keep_clear,
                            const Rect& room) {
    Surroundings around;
    for (const Item& item : items)
        takeItem(around, item, room);
    for (const auto& outline : keep_clear)
        if (const Rect extent = extentOfPoints(outline); overlaps(extent, room))
            around.taken.push_back(extent);
    return around;
}

/// A marker at a place.
struct Standing {
    Pt centre;
    Rect circle;
    Rect number;
    Pt tip;
    double cost = 0;
};

double halfWidth(const std::string& name) {
    return std::max(kRadius, drawing::measure(name, kValueText).width_mm / 2 + 1.3);
}

Rect numberRect(Pt centre, double width) {
    return {centre.x - width / 2, centre.y - kNoteText / 2, centre.x + width / 2, centre.y + kNoteText / 2};
}

class Placing {
public:
    Placing(const PlanMapping& mapping, Surroundings& around, const plan::Room& room)
        : mapping_(mapping), around_(around), room_(room) {}

    std::optional<Standing> best(const WallMarker& marker) const {
        const WallLineOnPlan line = wallLineOnPlan(room_, marker.wall);
        const double length = line.length_mm / mapping_.scale;
        const double half = halfWidth(room_.walls[marker.wall].id);
        const double reach = std::abs(line.out.x) * half + std::abs(line.out.y) * kRadius;
        const double first = kFromWall + kPointer + reach;
        const int steps = static_cast<int>(length / 2 / kStepAlong);
        std::optional<Standing> best;
        for (const double out : kOut)
            for (int step = -steps; step <= steps; ++step) {
                const double along = step * kStepAlong;
                const double cost = std::abs(along) + out * kOutwards;
                if (best && cost >= best->cost) continue;
                const double u_mm = line.length_mm / 2 + along * mapping_.scale;
                const Pt centre = mapping_.paper(line.at(u_mm, (first + out) * mapping_.scale));
                if (!seesWall(marker.wall, mapping_.house(centre), line.at(u_mm))) continue;
                tryAt(best, centre, Pt{line.out.x, line.out.y}, reach, half, marker.sheet, cost);
            }
        return best;
    }

private:
    void tryAt(std::optional<Standing>& best, Pt centre, Pt out, double reach, double half,
               const std::string& sheet, double cost) const {
        const double width = drawing::measure(sheet, kNoteText).width_mm;
        const double beside = half + kBeside + width / 2;
        const double under = kRadius + kBeside + kNoteText / 2;
        Standing standing;
        standing.centre = centre;
        standing.circle = {centre.x - half, centre.y - kRadius, centre.x + half, centre.y + kRadius};
        standing.tip = {centre.x - out.x * (reach + kPointer), centre.y - out.y * (reach + kPointer)};
        const Rect body =
            united(standing.circle, {standing.tip.x, standing.tip.y, standing.tip.x, standing.tip.y});
        if (!isFree(body)) return;
        if (sheet.empty()) {
            standing.number = standing.circle;
            standing.cost = cost + kPerLine * around_.lines.linesUnder(standing.circle);
            if (!best || standing.cost < best->cost) best = standing;
            return;
        }
        // Beside it, or on the side that the pointer is not on.
        const std::array<Pt, 4> numbers{{{centre.x + beside, centre.y},
                                         {centre.x - beside, centre.y},
                                         {centre.x, centre.y - under},
                                         {centre.x, centre.y + under}}};
        for (std::size_t i = 0; i < numbers.size(); ++i) {
            const Pt way{numbers[i].x - centre.x, numbers[i].y - centre.y};
            if (way.x * out.x + way.y * out.y < -1) continue;
            standing.number = numberRect(numbers[i], width);
            if (!isFree(standing.number)) continue;
            const Rect whole = united(standing.circle, standing.number);
            standing.cost = cost + 0.1 * static_cast<double>(i) + kPerLine * around_.lines.linesUnder(whole);
            if (!best || standing.cost < best->cost) best = standing;
        }
    }

    bool isFree(const Rect& rect) const {
        return std::ranges::none_of(around_.taken,
                                    [&](const Rect& taken) { return overlaps(taken, rect.grown(0.5)); }) &&
               around_.lines.isFree(rect) && isInRoom(rect.grown(kInRoom));
    }

    /// No other wall stands between a place and the wall that is pointed at.
    bool seesWall(std::size_t pointed, Vec2 from_mm, Vec2 foot_mm) const {
        for (std::size_t wall = 0; wall < room_.walls.size(); ++wall) {
            const auto edge = geometry::wallEdge(room_, wall);
            const auto side = [](Vec2 a, Vec2 b, Vec2 p) { return plan::cross(b - a, p - a); };
            if (wall != pointed &&
                side(from_mm, foot_mm, edge.from_mm) * side(from_mm, foot_mm, edge.to_mm) < 0 &&
                side(edge.from_mm, edge.to_mm, from_mm) * side(edge.from_mm, edge.to_mm, foot_mm) < 0)
                return false;
        }
        return true;
    }

    bool isInRoom(const Rect& rect) const {
        const auto corners = cornersOf(rect);
        if (!std::ranges::all_of(corners,
                                 [&](Pt p) { return geometry::insideRoom(room_, mapping_.house(p)); }))
            return false;
        for (std::size_t wall = 0; wall < room_.walls.size(); ++wall) {
            const auto edge = geometry::wallEdge(room_, wall);
            if (crosses(rect, mapping_.paper(edge.from_mm), mapping_.paper(edge.to_mm))) return false;
        }
        return true;
    }

    const PlanMapping& mapping_;
    Surroundings& around_;
    const plan::Room& room_;
};

void drawMarker(std::vector<Item>& items, const Standing& standing, const std::string& name,
                const std::string& sheet) {
    const std::string id = sheet.empty() ? sheet : "sheet:" + sheet;
    Ink ink(items, "symbols", id);
    Ink texts(items, "text", id);
    const Pt c = standing.centre;
    const Pt way{standing.tip.x - c.x, standing.tip.y - c.y};
    const double size = std::hypot(way.x, way.y);
    const Pt to{way.x / size, way.y / size};
    const Pt base{standing.tip.x - to.x * (kPointer + 0.7), standing.tip.y - to.y * (kPointer + 0.7)};
    ink.fill(std::vector<Pt>{standing.tip,
                             {base.x - to.y * kPointerHalf, base.y + to.x * kPointerHalf},
                             {base.x + to.y * kPointerHalf, base.y - to.x * kPointerHalf}},
             drawing::kBlack);
    const double half = standing.circle.width() / 2;
    std::vector<Pt> outline;
    for (Pt p : disc({0, 0}, kRadius))
        outline.push_back({c.x + p.x + (p.x >= 0 ? half - kRadius : kRadius - half), c.y + p.y});
    ink.fill(outline, drawing::kWhite);
    if (half > kRadius)
        ink.polyline(std::move(outline), true, kOutline);
    else
        ink.circle(c, kRadius, kOutline);
    texts.text({c.x, c.y - kValueText / 2}, name, kValueText, drawing::Align::Centre);
    if (sheet.empty()) return;
    drawing::Text number;
    number.at = {standing.number.centre().x, standing.number.bottom};
    number.text = sheet;
    number.height_mm = kNoteText;
    number.align = drawing::Align::Centre;
    number.knock_out = true;
    texts.text(std::move(number));
}

} // namespace

std::vector<WallMarker> wallMarkersOf(const plan::Room& room, const ElevationNumbers& numbers) {
    std::vector<WallMarker> markers;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall)
        if (std::string sheet = numbers.of(room, wall); !sheet.empty())
            markers.push_back({&room, wall, std::move(sheet)});
    return markers;
}

std::vector<WallMarker> allWallsOf(const plan::Room& room, const ElevationNumbers& numbers) {
    std::vector<WallMarker> markers;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall)
        if (room.walls[wall].structure != plan::WallStructure::None)
            markers.push_back({&room, wall, numbers.of(room, wall)});
    return markers;
}

std::vector<WallMarker> drawWallMarkers(std::vector<Item>& items, const PlanMapping& mapping,
                                        const std::vector<std::vector<Pt>>& keep_clear,
                                        const std::vector<WallMarker>& markers) {
    std::vector<WallMarker> homeless;
    const plan::Room* room = nullptr;
    Surroundings around;
    for (const WallMarker& marker : markers) {
        if (marker.room != room) {
            room = marker.room;
            std::vector<Pt> corners;
            for (Vec2 p : room->outline)
                corners.push_back(mapping.paper(p));
            around = surroundingsOf(items, keep_clear, extentOfPoints(corners));
        }
        const auto standing = Placing(mapping, around, *room).best(marker);
        if (!standing) {
            homeless.push_back(marker);
            continue;
        }
        drawMarker(items, *standing, room->walls[marker.wall].id, marker.sheet);
        around.taken.push_back(
            united(standing->circle, {standing->tip.x, standing->tip.y, standing->tip.x, standing->tip.y}));
        around.taken.push_back(standing->number.grown(drawing::kKnockOutMargin_mm));
    }
    return homeless;
}

Block wallMarkerSign(double width_mm) {
    constexpr double kBefore = 20;
    Block block;
    Standing standing;
    standing.circle = {-kRadius, -kRadius, kRadius, kRadius};
    standing.tip = {0, kRadius + kPointer};
    const double width = drawing::measure("E-01", kNoteText).width_mm;
    standing.number = numberRect({kRadius + kBeside + width / 2, 0}, width);
    drawMarker(block.items, standing, "A", "E-01");
    for (Item& item : block.items)
        item.id.clear();
    const auto lines =
        wrapped("look this way at wall A: its elevation is sheet E-01", kNoteText, width_mm - kBefore);
    const double height = paragraphHeight(lines, kNoteText);
    block.height_mm = std::max(2 * kRadius + kPointer + 2, height + 2);
    const double middle = -block.height_mm / 2 - kPointer / 2;
    move(block.items, kRadius + 1, middle);
    Ink(block.items, "notes").paragraph({kBefore, middle + height / 2 - kNoteText}, lines, kNoteText);
    block.gap_after_mm = 3;
    return block;
}

} // namespace gangway::sheets
