// Pictures packed on sheets. Private to sheets/.
#pragma once

#include "sheets/canvas.hpp"

#include <optional>
#include <span>
#include <vector>

namespace gangway::sheets {

/// Where pictures may stand on each of equal sheets.
struct PackRoom {
    Rect full;
    Rect low; ///< the narrower place under it, beside the title block; no width: none
};

/// A place on one of several equal sheets.
struct PackedAt {
    std::size_t sheet = 0;
    Pt corner; ///< upper left
};

/// Places of rectangles (width and height of each `Rect`) as far up and left as they go, at least `gap`
/// apart, on the fewest sheets; of a few in the order that takes least paper, the one given if it does.
/// nullopt when one is larger than a sheet.
std::optional<std::vector<PackedAt>> packed(std::span<const Rect> sizes, const PackRoom& room, double gap);

} // namespace gangway::sheets
