// Paper sizes and the sheet's frame: ISO 216 formats, ISO 5457 borders, centring marks and grid references.
#pragma once

#include "sheets/canvas.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace gangway::sheets {

/// A sheet as it lies: A4 upright, larger ones lying (ISO 5457 clause 4.1, from memory).
struct Paper {
    std::string_view id; ///< "A3"
    double width_mm = 0;
    double height_mm = 0;
    int fields_across = 0; ///< grid fields along the width (ISO 5457 table, from memory)
    int fields_up = 0;
    bool upright = false;
};

/// nullopt when the name is not one of paperNames().
std::optional<Paper> findPaper(std::string_view id);
/// "A4, A3, A2, A1", for messages.
std::string paperNames();

/// The drawing space inside the frame: 20 mm filing edge at the left, 10 mm elsewhere.
Rect frameOf(const Paper& paper);

/// Frame, centring marks and grid references of a sheet.
std::vector<Item> sheetFrame(const Paper& paper);

} // namespace gangway::sheets
