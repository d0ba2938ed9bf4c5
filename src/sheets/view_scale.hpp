// At what scale a wall is drawn: the one asked for, or the first that fits.
#pragma once

#include "sheets/sheet_layout.hpp"
#include "sheets/wall_view.hpp"

#include <expected>
#include <optional>
#include <string>

namespace gangway::sheets {

/// A view drawn at some scale, around its own origin.
struct Picture {
    double scale = 0;
    std::vector<Item> items;
    Rect extent;
    Layout layout; ///< the arrangement of the paper it fits
};

/// The view at 1:scale, or at the first scale that fits: 1:20 and 1:50 are preferred; 1:10 is for short
/// pieces of wall; 1:25, which ISO 5455 does not list, where 1:50 would crowd the numbers of boxes or
/// openings; 1:100 for halls. (Elevation sheets take 1:25 for 1:50 too where that costs no more sheets.)
/// At each scale the view first shares the paper with schedule and notes, then takes the whole width. The
/// error is a sentence with the sizes.
std::expected<Picture, std::string> pictureThatFits(const WallView& view, const Paper& paper,
                                                    const std::optional<double>& scale_asked);

} // namespace gangway::sheets
