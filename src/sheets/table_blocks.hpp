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
    std::string group; ///< what its heading says; empty: none
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
/// those that may stand in words under their row so many do, from the last, that the table gets lowest.
TableBlocks setTable(const Table& table, double width_mm);

/// Title and column titles.
std::vector<Block> headOf(const TableBlocks& table, bool continued);
/// The heading over the rows of a group.
Block groupHeading(const std::string& group, double width_mm, bool continued);

} // namespace gangway::sheets
