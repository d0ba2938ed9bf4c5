// How an elevation sheet's paper is shared out between view, schedule, notes and title block.
#pragma once

#include "sheets/paper.hpp"

#include <vector>

namespace gangway::sheets {

inline constexpr double kHeading = 13;      ///< strip over the view: its title and the scale bar
inline constexpr double kFootnote = 5;      ///< the do-not-scale line under the view
inline constexpr double kWideFootnote = 13; ///< the same with the cautions, under a view over the whole width
inline constexpr double kGutter = 4;        ///< between parts of a sheet

/// Schedule and notes beside and below the view, or (lying paper) the view over the whole width with notes
/// below and the schedule on a sheet of its own, for long walls.
enum class Arrangement { SideColumn, WholeWidth };

/// The parts of a sheet; the schedule begins under the view, wherever that ends.
struct Layout {
    Paper paper;
    Rect frame;
    Rect view;                   ///< largest place for the view, with its heading and footnote
    std::vector<Rect> side;      ///< columns for notes beside the view; none on upright paper
    Rect table;                  ///< largest place for the schedule; no width when it has a sheet of its own
    double note_width_mm = 0;    ///< width that key plan, cautions and legend are set in
    double measure_width_mm = 0; ///< width that the notes on measuring are set in
    Pt title_corner;             ///< lower right corner of the title block
    Arrangement arrangement = Arrangement::SideColumn;
};

/// Height of what stands under the view.
inline double footnoteOf(const Layout& layout) {
    return layout.arrangement == Arrangement::WholeWidth ? kWideFootnote : kFootnote;
}

Layout layoutOn(const Paper& paper, Arrangement arrangement);
/// Columns for notes on the first sheet when the view ends at `view_bottom`.
std::vector<Rect> noteColumns(const Layout& layout, double view_bottom);
/// What is left of the schedule's place under its last row, as columns for notes.
std::vector<Rect> columnsBelow(const Layout& layout, const Rect& left);
/// Places for the schedule on a sheet without a view: one over the whole width over the title block; two side
/// by side that hold more rows. Upright paper has one of the first kind.
std::vector<Rect> wideTable(const Layout& first);
std::vector<Rect> tallTables(const Layout& first);

} // namespace gangway::sheets
