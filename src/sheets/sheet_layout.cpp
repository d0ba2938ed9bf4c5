#include "sheets/sheet_layout.hpp"

#include "sheets/title_block.hpp"

namespace gangway::sheets {

namespace {

constexpr double kSideWidth = 83; ///< column of key plan, notes and legend
constexpr double kWideNotes = 85; ///< the same under a view over the whole width
constexpr double kWideMeasure = 110;
constexpr double kInset = 5.5; ///< content from the frame, clear of the centring marks

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
        layout.measure_width_mm = layout.note_width_mm;
        return layout;
    }
    const Rect table{content.left - 1, content.bottom, layout.frame.right - kTitleWidth - 2, content.top};
    layout.note_width_mm = layout.measure_width_mm = kSideWidth;
    if (arrangement == Arrangement::WholeWidth) {
        layout.note_width_mm = kWideNotes;
        layout.measure_width_mm = kWideMeasure;
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
        // Two columns beside the title block, the second wide for the notes on measuring, and two over it.
        const double top = view_bottom - kGutter;
        const double over = layout.frame.right - kTitleWidth + 2;
        const double width = layout.note_width_mm;
        std::vector<Rect> columns;
        columns.push_back({content.left, content.bottom, content.left + width, top});
        const double second = content.left + width + kGutter;
        columns.push_back({second, content.bottom, second + layout.measure_width_mm, top});
        for (double left : {over, content.right - width})
            columns.push_back({left, titleTop(layout.frame) + 3, left + width, top});
        return columns;
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

std::vector<Rect> wideTable(const Layout& first) {
    const Rect content = first.frame.grown(-kInset);
    const double right = first.paper.upright ? content.left + content.width() + 2 : content.right;
    return {{content.left - 1, titleTop(first.frame) + 3, right, content.top}};
}

std::vector<Rect> tallTables(const Layout& first) {
    if (first.paper.upright) return wideTable(first);
    const Rect content = first.frame.grown(-kInset);
    const double middle = first.frame.right - kTitleWidth;
    return {{content.left - 1, content.bottom, middle - 2, content.top},
            {middle + 2, titleTop(first.frame) + 3, content.right, content.top}};
}

} // namespace gangway::sheets
