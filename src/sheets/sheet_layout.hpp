// How an elevation sheet's paper is shared out between view, schedule, notes and title block.
#pragma once

#include "sheets/paper.hpp"

#include <vector>

namespace gangway::sheets {

inline constexpr double kHeading = 13; ///< strip over the view: its title and the scale bar
inline constexpr double kFootnote = 5; ///< the do-not-scale line under the view
inline constexpr double kGutter = 4;   ///< between parts of a sheet

/// Schedule and notes beside and below the view, or (lying paper) the view over the whole width with notes
/// below and the schedule on a sheet of its own, for long walls.
enum class Arrangement { SideColumn, WholeWidth };

/// The parts of a sheet; the schedule begins under the view, wherever that ends.
struct Layout {
    Paper paper;
    Rect frame;
    Rect view;                 ///< largest place for the view, with its heading and footnote
    std::vector<Rect> side;    ///< columns for notes beside the view; none on upright paper
    Rect table;                ///< largest place for the schedule; no width when it has a sheet of its own
    double note_width_mm = 0;  ///< width that notes are set in
    double table_width_mm = 0; ///< width that the schedule is set in
    Pt title_corner;           ///< lower right corner of the title block
    Arrangement arrangement = Arrangement::SideColumn;
};

Layout layoutOn(const Paper& paper, Arrangement arrangement);
/// Columns for notes on the first sheet when the view ends at `view_bottom`.
std::vector<Rect> noteColumns(const Layout& layout, double view_bottom);
/// What is left of the schedule's place under its last row, as columns for notes.
std::vector<Rect> columnsBelow(const Layout& layout, const Rect& left);
/// A sheet without a view: the schedule over the whole height, notes beside it.
Layout continuationOn(const Layout& first);

} // namespace gangway::sheets
