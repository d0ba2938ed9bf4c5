#include "sheets/table_blocks.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <numeric>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kCellPad = 1.2;
constexpr double kRowPad = 0.9;
constexpr double kDescent = 0.6;  ///< letters below the last baseline
constexpr double kUnderGap = 0.8; ///< words under a row stand this much nearer than another row would
constexpr double kLongWord = 30;  ///< longer ones are broken rather than make their column wide
constexpr double kGroupHeight = 7.2;
constexpr double kAfterName = 4;       ///< between a group's name and what is said of all its rows
constexpr std::size_t kMostLines = 20; ///< of a row in one piece: lower than any sheet

/// What the heading of each group says for all its rows, by the group's name.
using GroupNotes = std::map<std::string, std::string>;

/// A column as it is set.
struct Place {
    std::size_t column = 0;
    double least_mm = 0; ///< its longest word fits
    double wish_mm = 0;  ///< nothing is wrapped
    double left_mm = 0;
    double right_mm = 0;
    int decimals = 0; ///< that its numbers have room for
};

struct Setting {
    const Table* table = nullptr;
    double width_mm = 0;
    std::vector<Place> places;
    std::vector<std::size_t> under; ///< columns that stand in words under their row
};

double textHeight(const Column& column) {
    return column.kind == Column::Kind::Number || column.lead ? kValueText : kNoteText;
}

double widthOf(const std::string& text, double height_mm) {
    return drawing::measure(text, height_mm).width_mm;
}

double longestWord(const std::string& text, double height_mm) {
    double longest = 0;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find(' ', from), text.size());
        longest = std::max(longest, widthOf(text.substr(from, to - from), height_mm));
        from = to + 1;
    }
    return longest;
}

/// A cell as it is printed: without what its column's notes say.
std::string printed(const Table& table, const Row& row, std::size_t column, int decimals) {
    std::string text = cellText(row[column], decimals);
    if (text == table.columns[column].usual) text.clear();
    return text;
}

/// Columns that say nothing take no room.
bool isUsed(const Table& table, std::size_t column) {
    return table.group_by != column && std::ranges::any_of(table.rows, [&](const Row& row) {
               return !printed(table, row, column, 0).empty();
           });
}

Place placeOf(const Table& table, std::size_t column) {
    const Column& data = table.columns[column];
    Place place{column, 0, 0, 0, 0, decimalsShown(table, column)};
    const double height = textHeight(data);
    place.least_mm = longestWord(headText(data), kNoteText);
    const auto take = [&](const Row& row) {
        const std::string text = printed(table, row, column, place.decimals);
        const double whole = widthOf(text, height);
        const bool number = data.kind == Column::Kind::Number;
        place.wish_mm = std::max(place.wish_mm, whole);
        place.least_mm =
            std::max(place.least_mm, number ? whole : std::min(longestWord(text, height), kLongWord));
    };
    for (const Row& row : table.rows)
        take(row);
    if (const Row sums = totalsOf(table); !sums.empty() && data.total) take(sums);
    // A little more than measured, so that a text of just that width is not wrapped.
    place.least_mm += 2 * kCellPad + 0.05;
    place.wish_mm = std::max(place.wish_mm + 2 * kCellPad + 0.05, place.least_mm);
    return place;
}

double sumOf(const std::vector<Place>& places, double Place::* member) {
    return std::accumulate(places.begin(), places.end(), 0.0,
                           [&](double sum, const Place& place) { return sum + place.*member; });
}

/// The level under which columns get all they wish, and over which they share what is left.
double levelFor(const std::vector<Place>& places, double width_mm) {
    double low = 0;
    double high = width_mm;
    constexpr int kHalvings = 40; // to well under a micrometre
    for (int i = 0; i < kHalvings; ++i) {
        const double level = (low + high) / 2;
        double sum = 0;
        for (const Place& place : places)
            sum += std::clamp(level, place.least_mm, place.wish_mm);
        (sum <= width_mm ? low : high) = level;
    }
    return low;
}

void shareWidth(std::vector<Place>& places, double width_mm) {
    const double level = levelFor(places, width_mm);
    const double wishes = sumOf(places, &Place::wish_mm);
    const double least = sumOf(places, &Place::least_mm);
    // Room left over goes to all alike; on paper that is too narrow for the longest words all give way alike.
    const double spare = std::max(0.0, width_mm - wishes) / static_cast<double>(places.size());
    const double squeeze = std::min(1.0, width_mm / least);
    double x = 0;
    for (Place& place : places) {
        place.left_mm = x;
        x += std::clamp(level, place.least_mm, place.wish_mm) * squeeze + spare;
        place.right_mm = x;
    }
}

/// The columns that may stand in words under their row, those with something in the fewest rows last.
std::vector<std::size_t> columnsForUnder(const Table& table) {
    std::vector<std::size_t> columns;
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        if (table.columns[i].under && isUsed(table, i)) columns.push_back(i);
    std::ranges::stable_sort(columns, std::greater{}, [&](std::size_t column) {
        return std::ranges::count_if(table.rows,
                                     [&](const Row& row) { return !printed(table, row, column, 0).empty(); });
    });
    return columns;
}

Setting settingOf(const Table& table, double width_mm, const std::vector<std::size_t>& under) {
    Setting setting{&table, width_mm, {}, under};
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (!isUsed(table, i)) continue;
        if (std::ranges::find(under, i) != under.end()) continue;
        setting.places.push_back(placeOf(table, i));
    }
    if (!setting.places.empty()) shareWidth(setting.places, width_mm);
    return setting;
}

bool isTooNarrow(const Setting& setting) {
    return sumOf(setting.places, &Place::least_mm) > setting.width_mm;
}

/// Takes what the rows of a group agree in out of them and gives it as words, "format: round boxes".
GroupNotes takeShared(Table& table) {
    GroupNotes notes;
    if (!table.group_by) return notes;
    std::map<std::string, std::vector<Row*>> groups;
    for (Row& row : table.rows)
        groups[cellText(row[*table.group_by], 0)].push_back(&row);
    for (std::size_t column = 0; column < table.columns.size(); ++column) {
        if (!table.columns[column].shared) continue;
        for (auto& [group, rows] : groups) {
            const Cell first = rows.front()->at(column);
            const std::string text = cellText(first, table.columns[column].decimals);
            if (text.empty() || std::ranges::any_of(rows, [&](Row* row) { return row->at(column) != first; }))
                continue;
            std::string& words = notes[group];
            words += fmt::format("{}{}: {}", words.empty() ? "" : "; ", table.columns[column].title, text);
            for (Row* row : rows)
                row->at(column) = std::monostate{};
        }
    }
    return notes;
}

/// What stands under a row, each with what it is: "circuit: hob; for: worktop".
std::string wordsUnder(const Setting& setting, const Row& row) {
    std::string words;
    for (const std::size_t column : setting.under) {
        const Column& data = setting.table->columns[column];
        const auto* number = std::get_if<double>(&row[column]);
        const int decimals = number != nullptr ? decimalsOf(*number, data.decimals) : 0;
        std::string text = printed(*setting.table, row, column, decimals);
        if (text.empty()) continue;
        if (number != nullptr && !data.unit.empty()) text += fmt::format(" {}", data.unit);
        words += fmt::format("{}{}: {}", words.empty() ? "" : "; ", data.title, text);
    }
    return words;
}

/// Where words under a row begin: past what the row is known by.
double underLeft(const Setting& setting) {
    return setting.places.size() > 1 ? setting.places[1].left_mm : 0;
}

/// The lines of a row: one list a place, the last for what stands under it.
using Lines = std::vector<std::vector<std::string>>;

Lines linesOf(const Setting& setting, const Row& row) {
    Lines lines;
    for (const Place& place : setting.places) {
        const Column& column = setting.table->columns[place.column];
        const Cell& cell = row[place.column];
        if (const auto* value = std::get_if<double>(&cell))
            lines.push_back({cellText(cell, decimalsOf(*value, place.decimals))});
        else
            lines.push_back(wrapped(printed(*setting.table, row, place.column, 0), textHeight(column),
                                    place.right_mm - place.left_mm - 2 * kCellPad));
    }
    lines.push_back(
        wrapped(wordsUnder(setting, row), kNoteText, setting.width_mm - underLeft(setting) - 2 * kCellPad));
    return lines;
}

/// Takes as many lines as a piece of a row may have from each list.
Lines takePiece(Lines& lines) {
    Lines piece;
    for (auto& list : lines) {
        const auto end = list.begin() + static_cast<std::ptrdiff_t>(std::min(list.size(), kMostLines));
        piece.emplace_back(list.begin(), end);
        list.erase(list.begin(), end);
    }
    return piece;
}

/// Numbers keep their units under each other: where others have decimals, whole ones keep that room free.
double unitShift(const std::string& text, int decimals) {
    if (decimals == 0) return 0;
    const auto point = text.find('.');
    const int own = point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
    std::string missing(static_cast<std::size_t>(decimals - own), '0');
    if (own == 0) missing = "." + missing;
    return widthOf("0" + missing, kValueText) - widthOf("0", kValueText);
}

/// Draws the cells of a piece; returns how far down they reach, positive.
double drawCells(Ink& ink, const Setting& setting, const Lines& lines) {
    double height = kValueText;
    for (std::size_t i = 0; i < setting.places.size(); ++i) {
        if (lines[i].empty()) continue;
        const Place& place = setting.places[i];
        const Column& column = setting.table->columns[place.column];
        const double first = -kRowPad - kValueText;
        if (column.kind == Column::Kind::Number) {
            const double shift = unitShift(lines[i].front(), place.decimals);
            ink.text({place.right_mm - kCellPad - shift, first}, lines[i].front(), kValueText,
                     drawing::Align::Right);
            continue;
        }
        const double last = ink.paragraph({place.left_mm + kCellPad, first}, lines[i], textHeight(column));
        height = std::max(height, -last - kRowPad);
    }
    return kRowPad + height;
}

/// Rules between columns go down as far as the cells; words under them keep the outer ones.
void drawRules(Ink& ink, const Setting& setting, double cells_mm, double height_mm, const Pen& foot) {
    for (std::size_t i = 1; i < setting.places.size(); ++i)
        ink.line({setting.places[i].left_mm, 0}, {setting.places[i].left_mm, i == 1 ? -height_mm : -cells_mm},
                 kThin);
    for (const double x : {0.0, setting.width_mm})
        ink.line({x, 0}, {x, -height_mm}, kThin);
    ink.line({0, -height_mm}, {setting.width_mm, -height_mm}, foot);
}

Block rowBlock(const Setting& setting, const Lines& lines) {
    Block block;
    Ink ink(block.items, "text");
    double down = drawCells(ink, setting, lines);
    double cells = down + kDescent + kRowPad;
    if (!lines.back().empty()) {
        cells = down + kDescent + kUnderGap;
        down = -ink.paragraph({underLeft(setting) + kCellPad, -cells - kNoteText - 0.2}, lines.back(),
                              kNoteText);
        block.height_mm = down + kDescent + kRowPad;
    } else {
        block.height_mm = cells;
    }
    Ink rules(block.items, "notes");
    drawRules(rules, setting, cells, block.height_mm, kThin);
    return block;
}

std::vector<TableRow> rowsOf(const Setting& setting, const GroupNotes& notes) {
    std::vector<TableRow> rows;
    const Table& table = *setting.table;
    for (const Row& row : table.rows) {
        const std::string group = table.group_by ? cellText(row[*table.group_by], 0) : "";
        const auto note = notes.find(group);
        Lines lines = linesOf(setting, row);
        do
            rows.push_back(
                {group, note == notes.end() ? "" : note->second, rowBlock(setting, takePiece(lines))});
        while (std::ranges::any_of(lines, [](const auto& list) { return !list.empty(); }));
    }
    return rows;
}

/// Sums stand between two strong lines; what they are is said at the left over all columns.
Block totalsBlock(const Setting& setting) {
    const Row sums = totalsOf(*setting.table);
    Block block;
    if (sums.empty()) return block;
    Row numbers = sums;
    for (Cell& cell : numbers)
        if (std::holds_alternative<std::string>(cell)) cell = std::monostate{};
    Ink ink(block.items, "text");
    ink.text({kCellPad, -kRowPad - kValueText}, cellText(sums.front(), 0), kNoteText);
    block.height_mm = drawCells(ink, setting, linesOf(setting, numbers)) + kDescent + kRowPad;
    Ink rules(block.items, "notes");
    for (const double x : {0.0, setting.width_mm})
        rules.line({x, 0}, {x, -block.height_mm}, kThin);
    for (const double y : {0.0, -block.height_mm})
        rules.line({0, y}, {setting.width_mm, y}, kOutline);
    return block;
}

Block columnTitles(const Setting& setting) {
    Block block;
    Ink ink(block.items, "notes");
    double height = 0;
    for (const Place& place : setting.places) {
        const Column& column = setting.table->columns[place.column];
        const bool right = column.kind == Column::Kind::Number;
        const auto lines =
            wrapped(headText(column), kNoteText, place.right_mm - place.left_mm - 2 * kCellPad);
        const double x = right ? place.right_mm - kCellPad : place.left_mm + kCellPad;
        const double last = ink.paragraph({x, -kRowPad - kNoteText}, lines, kNoteText,
                                          right ? drawing::Align::Right : drawing::Align::Left);
        height = std::max(height, -last + kDescent + kRowPad);
    }
    block.height_mm = height;
    block.keep_with_next = true;
    ink.line({0, 0}, {setting.width_mm, 0}, kThin);
    drawRules(ink, setting, height, height, kOutline);
    return block;
}

double heightOf(const std::vector<TableRow>& rows) {
    return std::accumulate(rows.begin(), rows.end(), 0.0,
                           [](double sum, const TableRow& row) { return sum + row.block.height_mm; });
}

} // namespace

TableBlocks setTable(const Table& given, double width_mm) {
    Table table = given;
    const GroupNotes notes = takeShared(table);
    std::vector<std::size_t> under;
    auto beside = columnsForUnder(table);
    Setting best = settingOf(table, width_mm, under);
    std::vector<TableRow> rows = rowsOf(best, notes);
    while (!beside.empty()) {
        under.insert(std::ranges::lower_bound(under, beside.back()), beside.back());
        beside.pop_back();
        Setting other = settingOf(table, width_mm, under);
        std::vector<TableRow> lower = rowsOf(other, notes);
        if (!isTooNarrow(best) && heightOf(lower) >= heightOf(rows)) continue;
        best = std::move(other);
        rows = std::move(lower);
    }
    return {table.title, width_mm, columnTitles(best), std::move(rows), totalsBlock(best)};
}

std::vector<Block> headOf(const TableBlocks& table, bool continued) {
    Block heading =
        headingBlock(fmt::format("{}{}", table.title, continued ? " (continued)" : ""), table.width_mm);
    heading.gap_after_mm = 0.4;
    return {heading, table.column_titles};
}

Block groupHeading(const TableRow& row, double width_mm, bool continued) {
    Block block;
    const std::string name = fmt::format("{}{}", row.group, continued ? " (continued)" : "");
    Ink ink(block.items, "notes");
    ink.text({kCellPad, -kGroupHeight + 2}, name, kValueText);
    block.height_mm = kGroupHeight;
    // Beside the name where there is room, else under it.
    const double beside = kCellPad + widthOf(name, kValueText) + kAfterName;
    if (beside + widthOf(row.group_note, kNoteText) + kCellPad <= width_mm) {
        ink.text({beside, -kGroupHeight + 2}, row.group_note, kNoteText);
    } else {
        const auto lines = wrapped(row.group_note, kNoteText, width_mm - 2 * kCellPad);
        const double last = ink.paragraph({kCellPad, -kGroupHeight - kNoteText + 0.6}, lines, kNoteText);
        block.height_mm = -last + kDescent + kRowPad;
    }
    for (const double x : {0.0, width_mm})
        ink.line({x, 0}, {x, -block.height_mm}, kThin);
    ink.line({0, -block.height_mm}, {width_mm, -block.height_mm}, kOutline);
    block.keep_with_next = true;
    return block;
}

std::vector<Block> rowWithHeadings(const TableBlocks& table, std::size_t row, bool head) {
    std::vector<Block> blocks;
    if (head) blocks = headOf(table, row > 0);
    const std::string& group = table.rows[row].group;
    const bool same = row > 0 && table.rows[row - 1].group == group;
    if (!group.empty() && (head || !same))
        blocks.push_back(groupHeading(table.rows[row], table.width_mm, same));
    blocks.push_back(table.rows[row].block);
    return blocks;
}

} // namespace gangway::sheets
