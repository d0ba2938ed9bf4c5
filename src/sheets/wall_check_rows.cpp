#include "sheets/wall_check_rows.hpp"

#include "drawing/dimensions.hpp"

#include <algorithm>
#include <array>
#include <cctype>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kCellPad = 1.2;
constexpr double kRowPad = 1.0;
constexpr double kDescent = 0.6;      ///< letters below the last baseline
constexpr double kLeastRow = 7.5;     ///< thick fingers, bad light
constexpr double kTick = 5;           ///< side of a square to tick
constexpr std::size_t kMostLines = 2; ///< of what is in a box; all of it is on the elevation
constexpr const char* kPhoto = "photo no.";
constexpr const char* kName = "name, signature";

struct Column {
    std::array<const char*, 2> title;
    double width_mm; ///< 0: what the others leave
};
enum ColumnId { kTag, kWhat, kU, kV, kFixed, kClosing, kPlaster, kFixedU, kFixedV, kColumns };
constexpr double kNumberColumn = 18.5;
constexpr double kFeetColumn = 26.5; ///< (11'-10 11/16") under the number
constexpr std::array<Column, kColumns> kTable{{
    {{"tag, box", ""}, 22},
    {{"what", ""}, 0},
    {{"u", "mm"}, kNumberColumn},
    {{"v", "mm"}, kNumberColumn},
    {{"box", "walk"}, 12},
    {{"before", "closing"}, 14.6},
    {{"after", "plaster"}, 14.6},
    {{"as fixed", "u"}, 16.5},
    {{"as fixed", "v"}, 16.5},
}};

using Edges = std::array<double, kColumns + 1>;

Edges edgesOf(double width_mm, plan::DisplayUnits units) {
    std::array<double, kColumns> widths{};
    for (std::size_t i = 0; i < kColumns; ++i)
        widths[i] = kTable[i].width_mm;
    if (units == plan::DisplayUnits::FeetInches) widths[kU] = widths[kV] = kFeetColumn;
    double stated = 0;
    for (const double width : widths)
        stated += width;
    Edges edges{};
    for (std::size_t i = 0; i < kColumns; ++i)
        edges[i + 1] = edges[i] + (widths[i] > 0 ? widths[i] : width_mm - stated);
    return edges;
}

bool isTicked(std::size_t column) {
    return column == kFixed || column == kClosing || column == kPlaster;
}

void drawRules(Ink& ink, const Edges& edges, double height_mm, const Pen& foot) {
    for (std::size_t i = 0; i < edges.size(); ++i)
        ink.line({edges[i], 0}, {edges[i], -height_mm}, i == kFixedU ? kOutline : kThin);
    ink.line({0, -height_mm}, {edges.back(), -height_mm}, foot);
}

std::string counted(std::size_t count, const char* one, const char* many) {
    return fmt::format("{} {}", count, count == 1 ? one : many);
}

/// "7 boxes, 2 lamp points".
std::string countsInWords(std::size_t boxes, std::size_t points) {
    std::string words = counted(boxes, "box", "boxes");
    if (points > 0) words += ", " + counted(points, "lamp point", "lamp points");
    return words;
}

std::string capitalised(std::string words) {
    if (!words.empty())
        words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
    return words;
}

/// A label with a line to write on behind it; returns where the line ends.
double writingSlot(Ink& ink, Pt at, const std::string& label, double line_mm) {
    ink.text(at, label, kNoteText);
    const double from = at.x + drawing::measure(label, kNoteText).width_mm + 1.2;
    ink.line({from, at.y - 0.8}, {from + line_mm, at.y - 0.8}, kThin);
    return from + line_mm;
}

/// Lines of what is in a box, the last one marked where some are left out.
std::vector<std::string> whatLines(const std::string& what, double width_mm) {
    auto lines = wrapped(what, kNoteText, width_mm);
    if (lines.size() <= kMostLines) return lines;
    lines.resize(kMostLines);
    std::string& last = lines.back();
    while (!last.empty() && drawing::measure(last + "...", kNoteText).width_mm > width_mm)
        last.pop_back();
    while (!last.empty() && (last.back() == ' ' || last.back() == ',' || last.back() == ';'))
        last.pop_back();
    last += "...";
    return lines;
}

/// What is behind one of the boxes, and what it is for: "SO-G2; vacuum"; a luminaire's name.
std::string whatInWords(const Mounted& item, const std::vector<std::string>& codes, std::size_t box) {
    if (item.luminaire != nullptr) return item.luminaire->name.empty() ? codes[box] : item.luminaire->name;
    std::string words = codes[box];
    if (item.face.boxes.empty()) words += ", no box";
    if (box == 0 && !item.plate->purpose.empty()) words += "; " + item.plate->purpose;
    return words;
}

/// How FFL is found while there is no floor yet.
std::string levelWords(const plan::Plan& plan, const plan::Room& room) {
    const double build_up_mm = thicknessOf(room.floor_build_up);
    std::string words =
        build_up_mm > 0 ? fmt::format("FFL is {:g} above the slab", build_up_mm) : "FFL: build-up not stated";
    const plan::Storey* storey = plan::findStorey(plan, room.storey);
    if (storey != nullptr && storey->site_line_mm)
        words += fmt::format("; the site level line is {} above FFL", drawing::number(*storey->site_line_mm));
    return words + ".";
}

/// Where u is measured from on a wall, and what is still to be added while its neighbour is bare.
std::string wallMeasure(const plan::Room& room, const Surface& surface) {
    const Neighbour left = neighbourOf(room, surface.wall, End::Left);
    std::string words = "u from the finished left corner";
    if (left.build_up_mm > 0 && left.towards_viewer)
        words += fmt::format(" (from its bare face add {:g})", left.build_up_mm);
    return words + ", v above FFL";
}

/// One row: the texts of its cells.
struct RowTexts {
    std::vector<std::string> tag;
    double tag_mm = kValueText;
    std::string box;
    std::vector<std::string> what;
    std::vector<std::string> u;
    std::vector<std::string> v;
};

/// A length on one line, its feet and inches smaller under it.
void drawLength(Ink& ink, const std::vector<std::string>& lines, double right, double height_mm) {
    const double under = lines.size() > 1 ? kNoteText + 1.2 : 0;
    const double y = -(height_mm + kValueText + under) / 2 + under;
    ink.text({right, y}, lines.front(), kValueText, drawing::Align::Right);
    if (lines.size() > 1) ink.text({right, y - under}, lines[1], kNoteText, drawing::Align::Right);
}

/// Lines of a paragraph, in the middle of the row's height.
void drawMiddle(Ink& ink, const std::vector<std::string>& lines, double left, double text_mm,
                double height_mm) {
    if (lines.empty()) return;
    const double block = paragraphHeight(lines, text_mm);
    ink.paragraph({left, -(height_mm - block) / 2 - text_mm}, lines, text_mm);
}

Block rowBlock(const RowTexts& texts, const std::string& id, const Edges& edges) {
    Block row;
    const double tall =
        std::max({paragraphHeight(texts.tag, texts.tag_mm), paragraphHeight(texts.what, kNoteText),
                  texts.u.size() > 1 ? kValueText + kNoteText + 1.2 : kValueText});
    row.height_mm = std::max(kLeastRow, tall + 2 * kRowPad + kDescent);
    Ink ink(row.items, "text", id);
    drawMiddle(ink, texts.tag, edges[kTag] + kCellPad, texts.tag_mm, row.height_mm);
    if (!texts.box.empty())
        drawMiddle(ink, {texts.box},
                   edges[kTag + 1U] - kCellPad - drawing::measure(texts.box, kNoteText).width_mm, kNoteText,
                   row.height_mm);
    drawMiddle(ink, texts.what, edges[kWhat] + kCellPad, kNoteText, row.height_mm);
    drawLength(ink, texts.u, edges[kU + 1U] - kCellPad, row.height_mm);
    drawLength(ink, texts.v, edges[kV + 1U] - kCellPad, row.height_mm);
    Ink rules(row.items, "notes", id);
    for (std::size_t column = 0; column < kColumns; ++column) {
        if (!isTicked(column)) continue;
        const Pt centre{(edges[column] + edges[column + 1]) / 2, -row.height_mm / 2};
        rules.rect(Rect{centre.x, centre.y, centre.x, centre.y}.grown(kTick / 2), kNarrow);
    }
    drawRules(rules, edges, row.height_mm, kThin);
    return row;
}

/// Letters of walls that have nothing to be looked for.
std::string bareWalls(const plan::Room& room, const std::vector<Surface>& surfaces) {
    std::string letters;
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const bool used = std::ranges::any_of(surfaces, [&](const Surface& surface) {
            return surface.kind == Surface::Kind::Wall && surface.wall == wall;
        });
        if (!used) letters += (letters.empty() ? "" : ", ") + room.walls[wall].id;
    }
    return letters;
}

} // namespace

std::vector<Block> checkIntroduction(const plan::Plan& plan, const plan::Room& room, double width_mm) {
    Block title;
    const auto words = wrapped(room.name + ": wall check", kTitleText, width_mm);
    title.height_mm = 1.5 - Ink(title.items, "notes").paragraph({0, -kTitleText}, words, kTitleText);
    title.keep_with_next = true;
    Block how = notesBlock(
        {"Tick each box on the box walk (fixed, nothing wired), before closing and after plaster.",
         "Write what you measure beside u and v. They are to the centre of the box, from finished faces. "
         "Photograph each wall with a tape in the picture before it is closed.",
         levelWords(plan, room) + " Codes as on the elevations."},
        width_mm);
    how.gap_after_mm = 1.5;
    how.keep_with_next = true;
    return {title, how};
}

Block checkHead(plan::DisplayUnits units, double width_mm) {
    const Edges edges = edgesOf(width_mm, units);
    Block head;
    head.height_mm = 8.6;
    head.keep_with_next = true;
    Ink ink(head.items, "notes");
    ink.line({0, 0}, {edges.back(), 0}, kThin);
    for (std::size_t column = 0; column < kColumns; ++column) {
        const bool number = column == kU || column == kV;
        const double x = number             ? edges[column + 1] - kCellPad
                         : isTicked(column) ? (edges[column] + edges[column + 1]) / 2
                                            : edges[column] + kCellPad;
        const auto align = number             ? drawing::Align::Right
                           : isTicked(column) ? drawing::Align::Centre
                                              : drawing::Align::Left;
        double y = -kRowPad - kNoteText;
        for (const char* line : kTable[column].title) {
            ink.text({x, y}, line, kNoteText, align);
            y -= 1.5 * kNoteText;
        }
    }
    drawRules(ink, edges, head.height_mm, kOutline);
    return head;
}

Block surfaceHeading(const plan::Room& room, const Surface& surface, double width_mm, bool continued) {
    constexpr double kPhotoSlot = 72;
    constexpr double kBaseline = 4.6;
    constexpr double kUnder = 0.7; ///< from the last line to the rule
    Block heading;
    heading.keep_with_next = true;
    Ink ink(heading.items, "notes");
    const std::string words = capitalised(surface.name) + ": " +
                              countsInWords(surface.boxes(), surface.points()) +
                              (continued ? " (continued)" : "");
    const double place = width_mm - 2 * kCellPad - (continued ? 0 : kPhotoSlot);
    const bool large = drawing::measure(words, kValueText).width_mm <= place;
    const double text_mm = large ? kValueText : kNoteText;
    const auto lines = wrapped(words, text_mm, place);
    double y = ink.paragraph({kCellPad, -kBaseline}, lines, text_mm);
    if (!continued) {
        const double x = writingSlot(ink, {width_mm - kPhotoSlot, -kBaseline}, kPhoto, 18);
        writingSlot(ink, {x + 2, -kBaseline}, "taken", width_mm - x - 13);
    }
    const std::string how =
        surface.kind == Surface::Kind::Wall ? wallMeasure(room, surface) : measuredInWords(surface);
    double over = std::max(drawing::measure(lines.back(), text_mm).descent_mm,
                           drawing::measure(kPhoto, kNoteText).descent_mm);
    for (const std::string& line : wrapped(how, kNoteText, width_mm - 2 * kCellPad)) {
        y -= over + drawing::measure(line, kNoteText).ascent_mm + 0.5;
        ink.text({kCellPad, y}, line, kNoteText);
        over = drawing::measure(line, kNoteText).descent_mm;
    }
    heading.height_mm = kUnder - y + over;
    ink.line({0, 0}, {0, -heading.height_mm}, kThin);
    ink.line({width_mm, 0}, {width_mm, -heading.height_mm}, kThin);
    ink.line({0, -heading.height_mm}, {width_mm, -heading.height_mm}, kOutline);
    return heading;
}

std::vector<Block> checkRows(const Mounted& item, plan::DisplayUnits units, double width_mm) {
    const Edges edges = edgesOf(width_mm, units);
    const auto room = [&](ColumnId id) { return edges[id + 1U] - edges[id] - 2 * kCellPad; };
    const auto codes = codesByBox(item);
    const std::size_t count = item.box_centres_mm.size();
    std::vector<Block> rows;
    for (std::size_t i = 0; i < count; ++i) {
        RowTexts texts;
        if (count > 1) texts.box = fmt::format("{}/{}", i + 1, count);
        const double beside = texts.box.empty() ? 0 : drawing::measure(texts.box, kNoteText).width_mm + 1;
        if (drawing::measure(item.tag, kValueText).width_mm > room(kTag) - beside) texts.tag_mm = kNoteText;
        texts.tag = wrapped(item.tag, texts.tag_mm, room(kTag) - beside);
        texts.what = whatLines(whatInWords(item, codes, i), room(kWhat));
        texts.u = lengthLines(item.box_centres_mm[i].x, units);
        texts.v = lengthLines(item.box_centres_mm[i].y, units);
        rows.push_back(rowBlock(texts, item.id, edges));
    }
    return rows;
}

Block checkTotals(const plan::Room& room, const std::vector<Surface>& surfaces, double width_mm,
                  double pitch_mm) {
    std::size_t boxes = 0;
    std::size_t points = 0;
    for (const Surface& surface : surfaces) {
        boxes += surface.boxes();
        points += surface.points();
    }
    Block block;
    Ink ink(block.items, "notes");
    const double wide = width_mm - 2 * kCellPad;
    double y = ink.paragraph(
        {kCellPad, -kValueText - 2},
        wrapped(fmt::format("{} together: {}", room.name, countsInWords(boxes, points)), kValueText, wide),
        kValueText);
    if (const std::string bare = bareWalls(room, surfaces); !bare.empty()) {
        const auto lines = wrapped("Nothing to look for on: wall " + bare + ".", kNoteText, wide);
        y = ink.paragraph({kCellPad, y - kNoteText - 1.8}, lines, kNoteText);
    }
    constexpr std::array<const char*, 3> kStages{"Box walk: fixed, nothing wired", "Before closing",
                                                 "After plaster"};
    double labels = 0;
    for (const char* stage : kStages)
        labels = std::max(labels, drawing::measure(stage, kNoteText).width_mm);
    for (const char* stage : kStages) {
        y -= pitch_mm;
        ink.text({kCellPad, y}, stage, kNoteText);
        double x = writingSlot(ink, {kCellPad + labels + 3, y}, "counted", 12);
        x = writingSlot(ink, {x + 2, y}, "date", 18);
        const double name = drawing::measure(kName, kNoteText).width_mm;
        writingSlot(ink, {x + 2, y}, kName, width_mm - kCellPad - x - 3.2 - name);
    }
    block.height_mm = -y + 1.2;
    return block;
}

} // namespace gangway::sheets
