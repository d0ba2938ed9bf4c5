// A schedule as a value: columns, rows of texts and numbers, and totals worked out from the rows. What is
// printed, what a spreadsheet gets and what programs read are all made from it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace gangway::sheets {

struct Column {
    enum class Kind { Text, Number };
    std::string key;   ///< for programs: "setOut"
    std::string title; ///< for people: "set-out"
    std::string unit;  ///< "mm"; empty: none
    Kind kind = Kind::Text;
    int decimals = 0;    ///< of a number, at most, where it is shown
    bool total = false;  ///< its sum means something
    bool under = false;  ///< where paper is narrow, it may stand in words under its row
    std::string usual;   ///< a text that is not printed on sheets, because a note says it
    bool lead = false;   ///< rows are known by it, so it is read from further away
    bool shared = false; ///< on sheets, a group whose rows agree in it says it once, in its heading
};

/// Nothing, a text, or a number in its column's unit.
using Cell = std::variant<std::monostate, std::string, double>;
using Row = std::vector<Cell>; ///< one cell a column

struct Table {
    std::string key;   ///< "plates": what --table and file names say
    std::string title; ///< "Plates by room"
    std::vector<Column> columns;
    std::vector<Row> rows;
    /// Rows with one value of this column stand together; on paper it is a heading over them.
    std::optional<std::size_t> group_by;
    std::vector<std::string> notes; ///< sentences that belong to the numbers
};

/// A cell a column: "together" first, sums under the columns that are totalled, nothing elsewhere. Empty when
/// the table has no rows or totals nothing.
Row totalsOf(const Table& table);

/// Fewest decimals, up to `most`, that show a number as it is: 5780 takes none.
int decimalsOf(double value, int most);
/// The same for all numbers of a column, totals too: what room they are aligned in.
int decimalsShown(const Table& table, std::size_t column);

/// A cell as people read it, numbers with this many decimals.
std::string cellText(const Cell& cell, int decimals);

/// "set-out, mm".
std::string headText(const Column& column);

} // namespace gangway::sheets
