// A table as blocks for a column of paper: its head, the headings of its groups, its rows. Private to
// sheets/.
#pragma once

#include "sheets/block.hpp"
#include "sheets/table.hpp"

#include <string>
#include <vector>

namespace gangway::sheets {

/// A row, or a part of one that is too high for a sheet.
struct TableRow {
    std::string group;      ///< what its heading says; empty: none
    std::string group_note; ///< what all rows of the group agree in, in smaller letters beside it
    Block block;
};

/// A table set in a width. Text never shrinks, rows grow.
struct TableBlocks {
    std::string title;
    double width_mm = 0;
    Block column_titles;
    std::vector<TableRow> rows;
    Block totals; ///< no height: nothing is summed
};

/// Columns get what their words take, long ones are wrapped; columns with nothing in them are left out. Of
/// those that may stand in words under their row, the emptiest first, so many do that the table gets lowest.
TableBlocks setTable(const Table& table, double width_mm);

/// Title and column titles.
std::vector<Block> headOf(const TableBlocks& table, bool continued);
/// The heading over the rows of the group that this row is one of.
Block groupHeading(const TableRow& row, double width_mm, bool continued);
/// A row with what must stand over it: its group's heading where it is the first of it or first in a column,
/// there (`head`) the table's head too.
std::vector<Block> rowWithHeadings(const TableBlocks& table, std::size_t row, bool head);

} // namespace gangway::sheets
