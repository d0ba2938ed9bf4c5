// At what scale a wall is drawn: the one asked for, or the first that fits.
#pragma once

#include "sheets/block.hpp"
#include "sheets/sheet_layout.hpp"
#include "sheets/wall_view.hpp"

#include <expected>
#include <optional>
#include <string>
#include <vector>

namespace gangway::sheets {

/// A view drawn at some scale, around its own origin.
struct Picture {
    double scale = 0;
    std::vector<Item> items;
    Rect extent;
    Layout layout; ///< the arrangement of the paper it fits
    /// Ids of what has no good room for its numbers or its tag.
    std::vector<std::string> crowded;
};

/// The view at 1:scale, or at the first scale that fits: 1:20 and 1:50 are preferred; 1:10 is for short
/// pieces of wall; 1:25, which ISO 5455 does not list, where 1:50 would crowd the numbers of boxes or
/// openings. (Elevation sheets take 1:25 for 1:50 too where that costs no more sheets.)
/// At each scale the view first shares the paper with schedule and notes, then takes the whole width. The
/// error is a sentence with the sizes.
std::expected<Picture, std::string> pictureThatFits(const WallView& view, const Paper& paper,
                                                    const std::optional<double>& scale_asked);

/// A wall, or the part of it that a picture shows, with that picture.
struct Shown {
    WallView view;
    Picture picture;
};

/// The pictures that a wall needs so that all its numbers and tags have room: one; where that is crowded, one
/// with details apart, which fit a column of notes; else parts between match lines, of one scale. Where
/// nothing helps, the least crowded. The error is a sentence with the sizes.
std::expected<std::vector<Shown>, std::string> picturesOf(const WallView& view, const Paper& paper,
                                                          const std::optional<double>& scale_asked);

/// The wall's details as pictures under their headings, for a column of this width.
std::vector<Block> detailBlocks(const WallView& view, double width_mm);

} // namespace gangway::sheets
