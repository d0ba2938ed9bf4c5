#include "sheets/light_view.hpp"

#include "lighting/contours.hpp"
#include "sheets/storey_plan.hpp"
#include "sheets/tag_placement.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kLowestLevel_lx = 10;
constexpr double kShortest_mm = 14;     ///< on paper; shorter lines say nothing that can be read
constexpr double kLabelEvery_mm = 90;   ///< along a line
constexpr double kLabelStep_mm = 3;     ///< between places that are tried
constexpr double kValueEvery_mm = 1000; ///< in the house
constexpr double kAround_mm = 0.6;      ///< of paper around a luminaire's symbol that stays clear

Pen penOf(double level) {
    const double decade = std::pow(10, std::floor(std::log10(level) + 1e-9));
    const double step = level / decade;
    if (step < 1.5) return kOutline;
    return step < 3 ? kThin : Pen{0.18, drawing::LineType::Dashed, drawing::kBlack};
}

double lengthOf(const std::vector<Pt>& points) {
    double sum = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
        sum += std::hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
    return sum;
}

Pt alongLine(const std::vector<Pt>& points, double distance) {
    for (std::size_t i = 1; i < points.size(); ++i) {
        const double piece = std::hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
        if (distance <= piece && piece > 0) {
            const double part = distance / piece;
            return {points[i - 1].x + (points[i].x - points[i - 1].x) * part,
                    points[i - 1].y + (points[i].y - points[i - 1].y) * part};
        }
        distance -= piece;
    }
    return points.back();
}

/// A line of the drawing, on paper; closed ones end where they begin.
struct Line {
    double level = 0;
    std::vector<Pt> points;
    double length_mm = 0;
};

std::vector<Line> linesOf(const lighting::RoomLight& room, const PlanMapping& mapping) {
    std::vector<Line> lines;
    const auto levels = lighting::contourLevels(kLowestLevel_lx, room.levels.maximum_lx);
    for (const auto& contour : lighting::contours(room.grid, levels)) {
        Line line{contour.level_lx, {}, 0};
        for (plan::Vec2 p : contour.points_mm)
            line.points.push_back(mapping.paper(p));
        if (contour.closed) line.points.push_back(line.points.front());
        line.length_mm = lengthOf(line.points);
        if (line.length_mm >= kShortest_mm) lines.push_back(std::move(line));
    }
    return lines;
}

drawing::Text centred(Pt middle, const std::string& words, drawing::Colour colour) {
    drawing::Text text;
    text.at = {middle.x, middle.y - kNoteText / 2};
    text.text = words;
    text.height_mm = kNoteText;
    text.align = drawing::Align::Centre;
    text.colour = colour;
    text.knock_out = true;
    return text;
}

/// Puts a text where there is room for it.
bool placed(Ink& ink, Occupancy& occupancy, const drawing::Text& text) {
    const Rect rect = extentOf(text).grown(0.6);
    if (!occupancy.isFree(rect)) return false;
    occupancy.take(rect);
    ink.text(text);
    return true;
}

void labelLine(Ink& ink, Occupancy& occupancy, const Line& line) {
    const int labels = std::max(1, static_cast<int>(line.length_mm / kLabelEvery_mm));
    for (int i = 0; i < labels; ++i) {
        const double share = line.length_mm / labels;
        const double middle = share * (i + 0.5);
        // From the middle of its share outwards, to either side in turn.
        for (double off = 0; off <= share / 2; off += kLabelStep_mm) {
            const auto tryAt = [&](double at) {
                const auto text = centred(alongLine(line.points, at), luxText(line.level), drawing::kBlack);
                return placed(ink, occupancy, text);
            };
            if (tryAt(middle + off) || (off > 0 && tryAt(middle - off))) break;
        }
    }
}

void drawValues(std::vector<Item>& items, Occupancy& occupancy, const lighting::RoomLight& room,
                const PlanMapping& mapping) {
    Ink ink(items, "text", room.room);
    const lighting::LightGrid& grid = room.grid;
    const int step = std::max(1, static_cast<int>(std::lround(kValueEvery_mm / grid.cell_mm)));
    for (int row = step / 2; row < grid.rows; row += step)
        for (int column = step / 2; column < grid.columns; column += step) {
            const double lux = grid.at(column, row);
            if (std::isnan(lux)) continue;
            placed(ink, occupancy,
                   centred(mapping.paper(grid.middleOf(column, row)), luxText(lux), drawing::kGhost));
        }
}

/// Takes the plan's own texts out, to be put over the lines on white.
std::vector<Item> takeTexts(std::vector<Item>& items) {
    std::vector<Item> texts;
    for (Item& item : items)
        if (auto* text = std::get_if<drawing::Text>(&item.primitive)) {
            text->knock_out = true;
            texts.push_back(std::move(item));
        }
    std::erase_if(items,
                  [](const Item& item) { return std::holds_alternative<drawing::Text>(item.primitive); });
    return texts;
}

} // namespace

std::string luxText(double lux) {
    return lux < 9.95 ? fmt::format("{:.1f}", lux) : fmt::format("{:.0f}", lux);
}

LightView lightView(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                    const std::string& storey_id, const std::vector<lighting::RoomLight>& rooms, double scale,
                    const std::filesystem::path& base) {
    plan::Plan lamps_only = plan;
    lamps_only.plates.clear();
    StoreyPlanOptions options;
    options.scale = scale;
    options.base = base;
    StoreyBase drawn = storeyBase(lamps_only, storey_id, options);
    StoreySymbols symbols = storeySymbols(lamps_only, catalogue, drawn, options);
    LightView view{std::move(drawn.items), drawn.width_mm, drawn.height_mm, drawn.mapping.origin,
                   std::move(symbols.placed)};
    Occupancy occupancy;
    occupancy.takeTexts(view.items);
    std::vector<Item> names = takeTexts(view.items);
    for (const Item& item : symbols.items)
        occupancy.take(extentOf(item.primitive).grown(kAround_mm));
    std::vector<std::vector<Line>> lines;
    for (const lighting::RoomLight& room : rooms) {
        lines.push_back(linesOf(room, drawn.mapping));
        Ink ink(view.items, "symbols", room.room);
        for (const Line& line : lines.back())
            ink.polyline(line.points, false, penOf(line.level));
    }
    std::ranges::move(names, std::back_inserter(view.items));
    std::ranges::move(symbols.items, std::back_inserter(view.items));
    for (std::size_t i = 0; i < rooms.size(); ++i) {
        Ink ink(view.items, "text", rooms[i].room);
        for (const Line& line : lines[i])
            labelLine(ink, occupancy, line);
    }
    for (const lighting::RoomLight& room : rooms)
        drawValues(view.items, occupancy, room, drawn.mapping);
    move(view.items, -view.zero.x, -view.zero.y);
    return view;
}

} // namespace gangway::sheets
