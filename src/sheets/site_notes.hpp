// What an electrician must know before using the numbers of a sheet, in words.
#pragma once

#include "sheets/block.hpp"
#include "sheets/wall_view.hpp"

namespace gangway::sheets {

/// Datum, faces and build-ups of this wall and floor.
std::vector<Block> datumNotes(const WallView& view, double width_mm);
/// Cautions, one form of which stands on every sheet.
enum class Wording { Full, Short };
std::vector<Block> cautions(double width_mm, Wording wording);
/// The line that stands under every view that is drawn to a scale.
inline constexpr const char* kDoNotScale =
    "Do not scale. Use written dimensions. Check on site before drilling. Dimensions in mm.";
/// `first`, wrapped, and the short cautions as running text from the upper left corner; returns the y under
/// them.
double drawCautionLines(std::vector<Item>& items, Pt upper_left, double width_mm,
                        const std::string& first = kDoNotScale);

} // namespace gangway::sheets
