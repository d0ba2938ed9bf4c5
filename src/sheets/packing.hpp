// Pictures packed on sheets in rows, as words are set in lines. Private to sheets/.
#pragma once

#include "sheets/canvas.hpp"

#include <optional>
#include <span>
#include <vector>

namespace gangway::sheets {

/// A place on one of several equal sheets.
struct PackedAt {
    std::size_t sheet = 0;
    Pt corner; ///< upper left
};

/// Places of rectangles (width and height of each `Rect`) in the order given, in rows from the top left,
/// `gap` apart; a new sheet when the next row does not fit. nullopt when one is larger than a sheet.
std::optional<std::vector<PackedAt>> packedInRows(std::span<const Rect> sizes, const Rect& sheet, double gap);

} // namespace gangway::sheets
