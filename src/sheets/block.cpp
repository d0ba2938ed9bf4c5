#include "sheets/block.hpp"

namespace gangway::sheets {

namespace {

constexpr double kHeadingHeight = 6.2;
constexpr double kNoteGap = 0.5;
constexpr double kBullet = 3.2;

/// Height of a block, with the one after it when they must stay together.
double heightNeeded(std::span<const Block> blocks, std::size_t at) {
    double height = blocks[at].height_mm;
    if (blocks[at].keep_with_next && at + 1 < blocks.size())
        height += blocks[at].gap_after_mm + heightNeeded(blocks, at + 1);
    return height;
}

} // namespace

std::size_t flow(std::vector<Item>& items, std::span<const Block> blocks, Rect& column) {
    std::size_t placed = 0;
    for (; placed < blocks.size(); ++placed) {
        if (heightNeeded(blocks, placed) > column.height()) break;
        const Block& block = blocks[placed];
        std::vector<Item> copy = block.items;
        move(copy, column.left, column.top);
        items.insert(items.end(), std::make_move_iterator(copy.begin()), std::make_move_iterator(copy.end()));
        column.top -= block.height_mm + block.gap_after_mm;
    }
    return placed;
}

double heightOf(std::span<const Block> blocks) {
    double height = 0;
    for (const Block& block : blocks)
        height += block.height_mm + block.gap_after_mm;
    return height;
}

Block headingBlock(const std::string& heading, double width_mm) {
    Block block;
    Ink ink(block.items, "notes");
    ink.text({0, -kValueText - 0.4}, heading, kValueText);
    ink.line({0, -kValueText - 1.7}, {width_mm, -kValueText - 1.7}, kOutline);
    block.height_mm = kHeadingHeight;
    block.gap_after_mm = 0.6;
    block.keep_with_next = true;
    return block;
}

Block notesBlock(const std::vector<std::string>& notes, double width_mm) {
    Block block;
    Ink ink(block.items, "notes");
    double y = -kNoteText * 1.2;
    std::string last;
    for (const std::string& note : notes) {
        const auto lines = wrapped(note, kNoteText, width_mm - kBullet);
        if (lines.empty()) continue;
        // The first line of a note keeps as clear of the note before as its own capitals need.
        if (!last.empty()) y -= lineDrop(last, lines.front(), kNoteText) + kNoteGap;
        ink.text({0, y}, "-", kNoteText);
        y = ink.paragraph({kBullet, y}, lines, kNoteText);
        last = lines.back();
    }
    block.height_mm = -y + kNoteText * 0.4;
    block.gap_after_mm = 3;
    return block;
}

} // namespace gangway::sheets
