// Blocks of a sheet (a legend entry, a row of a table, a note) and the columns they flow into.
#pragma once

#include "sheets/canvas.hpp"

#include <span>

namespace gangway::sheets {

/// Items drawn from the block's upper left corner at (0, 0) downwards, so y runs from 0 to -height.
struct Block {
    std::vector<Item> items;
    double height_mm = 0;
    double gap_after_mm = 0;
    /// A heading stays with what follows it.
    bool keep_with_next = false;
    /// Helps where there is room, but is not worth a sheet of its own.
    bool optional = false;
};

/// Fills a column from the top with as many blocks as fit; returns how many were placed, and moves
/// `column.top` down to what is left.
std::size_t flow(std::vector<Item>& items, std::span<const Block> blocks, Rect& column);

/// Height of blocks under each other, with the gap after each.
double heightOf(std::span<const Block> blocks);

/// A heading and lines of notes in a column of this width.
Block headingBlock(const std::string& heading, double width_mm);
Block notesBlock(const std::vector<std::string>& notes, double width_mm);

} // namespace gangway::sheets
