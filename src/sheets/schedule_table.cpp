#include "sheets/schedule_table.hpp"

#include "catalogue/parts.hpp"
#include "drawing/dimensions.hpp"
#include "review/review.hpp"
#include "sheets/surfaces.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kCellPad = 1.0;
constexpr double kRowPad = 1.0;
constexpr double kTightPad = 0.5; ///< where that saves a sheet
constexpr double kDescent = 0.6;  ///< letters below the last baseline
constexpr double kBoxPitch = 4.6; ///< figures and capitals alone: b3 of ISO 3098-1
constexpr double kHeadHeight = 8.6;
constexpr double kUnderGap = 0.8; ///< a line under the cells stands this much nearer than another row would

/// A column: its titles, its least width, and its share of what width is left over.
struct Column {
    std::array<const char*, 2> title;
    double width_mm;
    double share;
    double text_mm;
};

enum ColumnId { kTag, kBox, kU, kV, kSite, kSlab, kBoxSize, kModules, kFor, kMove, kState, kColumns };

constexpr std::array<Column, kColumns> kTable{{
    {{"tag", ""}, 16.5, 0.05, kValueText},
    {{"box", ""}, 8, 0, kNoteText},
    {{"u", "set-out"}, 17.5, 0, kValueText},
    {{"v", "FFL"}, 17, 0, kValueText},
    {{"above", "site line"}, 18.5, 0, kValueText},
    {{"above", "slab"}, 17, 0, kValueText},
    {{"box size,", "depth"}, 17, 0, kNoteText},
    {{"modules,", "finish"}, 20, 0.25, kNoteText},
    {{"for", ""}, 15.5, 0.7, kNoteText},
    {{"move,", "play"}, 15.5, 0, kNoteText},
    {{"state,", "fingerprint"}, 21, 0, kNoteText},
}};

/// Under this width (A4) the column that numbers a plate's boxes goes (their lines stay in order), and what a
/// plate is for stands under its row.
constexpr double kNarrow_mm = 190;

std::string purposeText(const Mounted& item, Density density);
std::vector<std::string> moduleLines(const Mounted& item, const catalogue::Catalogue& catalogue,
                                     double width_mm);

/// True when a line under each row takes less height than a column of its own for what things are for.
bool purposeUnder(const WallView& view, double width_mm, double column_mm, double modules_mm,
                  Density density) {
    if (width_mm < kNarrow_mm) return true;
    constexpr std::size_t kCellLines = 2; // box size and state need as much anyway
    std::size_t beside = 0;
    std::size_t under = 0;
    for (const Mounted& item : view.mounted) {
        const std::string text = purposeText(item, density);
        const auto& catalogue = view.house->catalogue();
        const std::size_t least = std::max(kCellLines, item.box_centres_mm.size());
        beside += std::max({least, wrapped(text, kNoteText, column_mm - 2 * kCellPad).size(),
                            moduleLines(item, catalogue, modules_mm - 2 * kCellPad).size()});
        under += std::max(least, moduleLines(item, catalogue, modules_mm + column_mm - 2 * kCellPad).size()) +
                 wrapped(text, kNoteText, width_mm - kTable[kTag].width_mm).size();
    }
    return under < beside;
}

/// Edges of the columns for a wall; box numbers only where some plate has several.
std::vector<double> columnEdges(const WallView& view, double width_mm, Density density) {
    const bool several = std::any_of(view.mounted.begin(), view.mounted.end(),
                                     [](const Mounted& item) { return item.box_centres_mm.size() > 1; });
    const bool numbered = several && width_mm >= kNarrow_mm;
    double least = numbered ? 0 : -kTable[kBox].width_mm;
    for (const Column& column : kTable)
        least += column.width_mm;
    const double spare = std::max(0.0, width_mm - least);
    const auto grown = [&](ColumnId id) { return kTable[id].width_mm + kTable[id].share * spare; };
    const bool under = purposeUnder(view, width_mm, grown(kFor), grown(kModules), density);
    const double freed = under ? grown(kFor) : 0;
    std::vector<double> edges{0};
    for (std::size_t column = 0; column < kColumns; ++column) {
        const bool left_out = (column == kBox && !numbered) || (column == kFor && under);
        double own = left_out ? 0 : kTable[column].width_mm + kTable[column].share * spare;
        if (column == kModules) own += freed;
        edges.push_back(edges.back() + own);
    }
    return edges;
}

bool shown(const std::vector<double>& edges, std::size_t column) {
    return edges[column + 1] > edges[column];
}

std::string signedNumber(double value_mm) {
    return fmt::format("{}{}", value_mm > 0.25 ? "+" : "", drawing::number(value_mm));
}

std::string boxSize(const catalogue::BoxSpec& spec) {
    if (spec.shape == catalogue::BoxSpec::Shape::Round) return fmt::format("Ø{:g}", spec.width_mm);
    return fmt::format("{:g} × {:g}", spec.width_mm, spec.height_mm);
}

std::vector<std::string> boxLines(const Mounted& item) {
    if (item.plate == nullptr) return {"lamp point"};
    if (item.face.boxes.empty()) return {"no box"};
    return {boxSize(item.face.boxes.front().spec),
            fmt::format("{:g} deep", catalogue::boxDepth(*item.plate, item.face))};
}

std::string finishName(const catalogue::Catalogue& catalogue, const std::string& id) {
    const catalogue::Finish* finish = catalogue.finish(id);
    return finish != nullptr ? finish->name : id;
}

/// Modules in order by their codes, with numbers when there are several: "1 SO-F, 2 SO-F, 3 DA".
std::string moduleCodes(const Mounted& item) {
    std::string words;
    int number = 0;
    for (const auto& gang : item.face.gangs) {
        ++number;
        std::string code = gangCode(gang);
        if (gang.module != nullptr && gang.finish != item.face.finish && !gang.finish.empty())
            code += " " + gang.finish;
        words += words.empty() ? "" : ", ";
        words += item.face.gangs.size() > 1 ? fmt::format("{} {}", number, code) : code;
    }
    return words;
}

std::vector<std::string> moduleLines(const Mounted& item, const catalogue::Catalogue& catalogue,
                                     double width_mm) {
    std::string words;
    std::string finish;
    if (item.luminaire != nullptr) {
        words = "wall luminaire";
        if (item.luminaire->watts > 0) words += fmt::format(" {:g} W", item.luminaire->watts);
        if (item.luminaire->dimmable) finish = "dimmable";
    } else {
        words = moduleCodes(item);
        if (item.plate->direction == plan::Direction::Vertical)
            words = fmt::format("top to bottom: {}", words);
        finish = finishName(catalogue, item.face.finish);
    }
    return wrapped(finish.empty() ? words : words + ", " + finish, kNoteText, width_mm);
}

/// What it is for, what hides it, circuit and note as one running text, so that rows stay low.
std::string purposeText(const Mounted& item, Density density) {
    std::string words;
    const auto add = [&](const std::string& part) {
        if (part.empty()) return;
        if (!words.empty()) words += "; ";
        words += part;
    };
    add(item.plate != nullptr ? item.plate->purpose : item.luminaire->name);
    if (!item.on.empty()) add(fmt::format("on {}, {:.0f} before the wall", item.on, item.out_mm));
    if (!item.behind.empty()) add("behind " + item.behind);
    if (item.plate != nullptr && !item.plate->circuit.empty()) add("circuit " + item.plate->circuit);
    // What only checks a number goes first where paper is short.
    if (density == Density::Roomy) add(item.checks);
    if (item.plate != nullptr) add(item.plate->note);
    return words;
}

/// Nobody errs by more; what is printed stays true.
constexpr double kMostPlay_mm = 500;

/// What the electrician may change by himself, and by how much the place may be wrong before a check fails.
std::vector<std::string> moveLines(const Mounted& item, Density density) {
    if (item.plate == nullptr) return {"ask"};
    const auto& tolerance = item.plate->tolerance;
    std::vector<std::string> lines;
    if (tolerance.along_mm <= 0 && tolerance.height_mm <= 0) {
        lines.emplace_back("fixed");
    } else {
        // Where paper is short only what may move is named.
        const auto add = [&](const char* name, double play_mm) {
            if (play_mm > 0)
                lines.push_back(fmt::format("{} ±{:g}", name, play_mm));
            else if (density == Density::Roomy || !item.margin_mm)
                lines.push_back(fmt::format("{} fixed", name));
        };
        add("u", tolerance.along_mm);
        add("v", tolerance.height_mm);
    }
    // Rounded down: what is printed must hold.
    if (item.margin_mm)
        lines.push_back(*item.margin_mm < 1
                            ? "no play"
                            : fmt::format("play {:g}", std::floor(std::min(*item.margin_mm, kMostPlay_mm))));
    return lines;
}

std::vector<std::string> stateLines(const Mounted& item) {
    if (item.plate == nullptr) return {"-"};
    return {std::string(review::word(item.state)), item.fingerprint.substr(0, 8)};
}

/// Cells of a row as lines; the numeric ones have a line a box.
using Cells = std::array<std::vector<std::string>, kColumns>;

Cells cellsOf(const WallView& view, const Mounted& item, const catalogue::Catalogue& catalogue,
              const std::vector<double>& edges, Density density) {
    const auto room = [&](ColumnId id) { return edges[id + 1U] - edges[id] - 2 * kCellPad; };
    Cells cells;
    cells[kTag] = wrapped(item.tag, kValueText, room(kTag));
    const plan::Storey* storey = view.storey();
    int number = 0;
    for (Vec2 box : item.box_centres_mm) {
        cells[kBox].push_back(item.box_centres_mm.size() > 1 ? std::to_string(++number) : "");
        cells[kU].push_back(drawing::number(view.printed(box).x));
        cells[kV].push_back(drawing::number(box.y));
        const bool site = storey != nullptr && storey->site_line_mm.has_value();
        cells[kSite].push_back(site ? signedNumber(box.y - *storey->site_line_mm) : "-");
        cells[kSlab].push_back(view.slab_mm() < 0 ? drawing::number(box.y - view.slab_mm()) : "-");
    }
    for (const std::string& part : boxLines(item))
        for (std::string& line : wrapped(part, kNoteText, room(kBoxSize)))
            cells[kBoxSize].push_back(std::move(line));
    cells[kModules] = moduleLines(item, catalogue, room(kModules));
    if (shown(edges, kFor)) cells[kFor] = wrapped(purposeText(item, density), kNoteText, room(kFor));
    cells[kMove] = moveLines(item, density);
    cells[kState] = stateLines(item);
    return cells;
}

bool numeric(std::size_t column) {
    return column >= kU && column <= kSlab;
}

/// Figures and capitals alone stand at the closer pitch, so that a box's numbers are on one line.
bool closeSet(std::size_t column) {
    return numeric(column) || column == kBox || column == kTag;
}

double cellHeight(std::size_t column, const std::vector<std::string>& lines) {
    if (lines.empty()) return 0;
    if (!closeSet(column)) return paragraphHeight(lines, kTable[column].text_mm) + kValueText - kNoteText;
    return kValueText + static_cast<double>(lines.size() - 1) * kBoxPitch;
}

void drawCell(Ink& ink, std::size_t column, const std::vector<std::string>& lines,
              const std::vector<double>& edges, double row_pad) {
    const bool right = numeric(column);
    const auto align = right ? drawing::Align::Right : drawing::Align::Left;
    const Pt first{right ? edges[column + 1] - kCellPad : edges[column] + kCellPad, -row_pad - kValueText};
    if (!closeSet(column)) {
        ink.paragraph(first, lines, kTable[column].text_mm, align);
        return;
    }
    for (std::size_t i = 0; i < lines.size(); ++i)
        ink.text({first.x, first.y - static_cast<double>(i) * kBoxPitch}, lines[i], kTable[column].text_mm,
                 align);
}

/// Rules between cells go down as far as the cells; text under them keeps the outer ones and the tag's.
void drawRules(Ink& ink, const std::vector<double>& edges, double cells_mm, double height_mm,
               const Pen& foot) {
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const bool whole = i == 0 || i == kBox || i + 1 == edges.size();
        ink.line({edges[i], 0}, {edges[i], whole ? -height_mm : -cells_mm}, kThin);
    }
    ink.line({0, -height_mm}, {edges.back(), -height_mm}, foot);
}

} // namespace

std::vector<Block> scheduleHead(const WallView& view, double width_mm, Density density, bool continued) {
    const auto edges = columnEdges(view, width_mm, density);
    Block heading = headingBlock(fmt::format("Set-out schedule, {}, wall {}{}", view.room->name,
                                             view.data().id, continued ? " (continued)" : ""),
                                 edges.back());
    heading.gap_after_mm = 0.4;
    Block head;
    head.keep_with_next = true;
    head.height_mm = kHeadHeight;
    Ink ink(head.items, "notes");
    ink.line({0, 0}, {edges.back(), 0}, kThin);
    for (std::size_t column = 0; column < kColumns; ++column) {
        if (!shown(edges, column)) continue;
        double y = -kRowPad - kNoteText;
        std::array<const char*, 2> title = kTable[column].title;
        if (column == kU && view.datum.face == Face::Structural) title[1] = "bare face";
        for (const char* line : title) {
            ink.text({edges[column] + kCellPad, y}, line, kNoteText);
            y -= 1.5 * kNoteText;
        }
    }
    drawRules(ink, edges, kHeadHeight, kHeadHeight, kOutline);
    return {heading, head};
}

std::vector<Block> scheduleRows(const WallView& view, const catalogue::Catalogue& catalogue, double width_mm,
                                Density density) {
    const auto edges = columnEdges(view, width_mm, density);
    const double row_pad = density == Density::Tight ? kTightPad : kRowPad;
    std::vector<Block> rows;
    for (const Mounted& item : view.mounted) {
        const Cells cells = cellsOf(view, item, catalogue, edges, density);
        Block row;
        for (std::size_t column = 0; column < kColumns; ++column)
            row.height_mm =
                std::max(row.height_mm, cellHeight(column, cells[column]) + 2 * row_pad + kDescent);
        // What it is for stands right under the cells, without their foot's clearance.
        const double foot_mm = kUnderGap - (kRowPad - row_pad);
        const double cells_mm = row.height_mm - (shown(edges, kFor) ? 0 : foot_mm);
        Ink ink(row.items, "text", item.id);
        if (!shown(edges, kFor)) {
            const auto under =
                wrapped(purposeText(item, density), kNoteText, edges.back() - edges[kBox] - 2 * kCellPad);
            // Brackets and accents rise over the capitals.
            const double rise_mm = under.empty() ? 0 : drawing::measure(under.front(), kNoteText).ascent_mm;
            const Pt first{edges[kBox] + kCellPad, -cells_mm - std::max(rise_mm, kNoteText) - 0.5};
            if (!under.empty()) row.height_mm = -ink.paragraph(first, under, kNoteText) + row_pad + kDescent;
        }
        for (std::size_t column = 0; column < kColumns; ++column)
            if (shown(edges, column)) drawCell(ink, column, cells[column], edges, row_pad);
        Ink rules(row.items, "notes", item.id);
        drawRules(rules, edges, cells_mm, row.height_mm, kThin);
        rows.push_back(std::move(row));
    }
    return rows;
}

} // namespace gangway::sheets
