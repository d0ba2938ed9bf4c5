#include "sheets/sheet_layout.hpp"

#include "sheets/title_block.hpp"

namespace gangway::sheets {

namespace {

constexpr double kSideWidth = 83; ///< column of key plan, notes and legend
constexpr double kWideNotes = 98; ///< the same under a view over the whole width
constexpr double kInset = 5.5;    ///< content from the frame, clear of the centring marks

double titleTop(const Rect& frame) {
    return frame.bottom + kTitleHeight + kStripHeight;
}

/// Upright paper has two columns of notes over the title block.
std::vector<Rect> twoColumns(const Rect& place) {
    const double middle = place.centre().x;
    return {{place.left, place.bottom, middle - kGutter / 2, place.top},
            {middle + kGutter / 2, place.bottom, place.right, place.top}};
}

} // namespace

Layout layoutOn(const Paper& paper, Arrangement arrangement) {
    Layout layout;
    layout.arrangement = paper.upright ? Arrangement::SideColumn : arrangement;
    layout.paper = paper;
    layout.frame = frameOf(paper);
    layout.title_corner = {layout.frame.right, layout.frame.bottom};
    const Rect content = layout.frame.grown(-kInset);
    layout.view = {content.left - 2, titleTop(layout.frame) + kGutter, content.right, content.top};
    if (paper.upright) {
        layout.note_width_mm = layout.view.width() / 2 - kGutter / 2;
        layout.table_width_mm = content.width() + 3;
        return layout;
    }
    const Rect table{content.left - 1, content.bottom, layout.frame.right - kTitleWidth - 2, content.top};
    layout.note_width_mm = kSideWidth;
    layout.table_width_mm = table.width();
    if (arrangement == Arrangement::WholeWidth) {
        layout.note_width_mm = kWideNotes;
        return layout;
    }
    layout.side = {{content.right - kSideWidth, titleTop(layout.frame) + 3, content.right, content.top}};
    layout.view.right = layout.side.front().left - kGutter;
    layout.table = table;
    return layout;
}

std::vector<Rect> noteColumns(const Layout& layout, double view_bottom) {
    if (layout.arrangement == Arrangement::WholeWidth) {
        const Rect content = layout.frame.grown(-kInset);
        const double right = layout.frame.right - kTitleWidth - 2;
        return twoColumns({content.left, content.bottom, right, view_bottom - kGutter});
    }
    if (!layout.paper.upright) return layout.side;
    return twoColumns({layout.view.left, layout.view.bottom, layout.view.right, view_bottom - kGutter});
}

std::vector<Rect> columnsBelow(const Layout& layout, const Rect& left) {
    std::vector<Rect> columns;
    const double top = left.top - kGutter;
    for (double x = left.left; x + layout.note_width_mm <= left.right;
         x += layout.note_width_mm + 2 * kGutter)
        columns.push_back({x, left.bottom, x + layout.note_width_mm, top});
    return columns;
}

Layout continuationOn(const Layout& first) {
    Layout layout = layoutOn(first.paper, Arrangement::SideColumn);
    const Rect content = layout.frame.grown(-kInset);
    layout.note_width_mm = first.note_width_mm;
    layout.table_width_mm = first.table_width_mm;
    if (layout.paper.upright) {
        layout.table = {content.left, layout.view.bottom, content.left + layout.table_width_mm, content.top};
        return layout;
    }
    layout.side.clear();
    for (double right = content.right; right - layout.note_width_mm > layout.table.right + kGutter;
         right -= layout.note_width_mm + kGutter)
        layout.side.push_back({right - layout.note_width_mm, titleTop(layout.frame) + 3, right, content.top});
    return layout;
}

} // namespace gangway::sheets
