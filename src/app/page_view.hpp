// Where a page lies on the preview's table, how large, and which part of it is drawn at which resolution.
// Numbers only: nothing here knows of the screen's library.
#pragma once

#include "drawing/drawing.hpp"

#include <cstdint>

namespace gangway::app {

/// The page as it is drawn, mm on paper before it is made smaller for another paper.
struct PageSize {
    double width_mm = 420;
    double height_mm = 297;
};

/// Where on screen pages lie, pixels, y down.
struct TableArea {
    double x = 0, y = 0, width = 0, height = 0;
};

/// A point on screen, pixels, y down.
struct ScreenPoint {
    double x = 0, y = 0;
};

enum class PageFit { Free, Page, Width };

struct PageView {
    PageFit fit = PageFit::Page;
    double px_per_mm = 1;  ///< of printed paper
    drawing::Pt middle_mm; ///< of the page, in the middle of the table
    double shrink = 1;     ///< printed size over drawn size: 0.7071 for A3 on A4
    /// Pixels of the page's own mm.
    double pagePxPerMm() const { return px_per_mm * shrink; }
};

inline constexpr double kLeastPxPerMm = 0.4;
inline constexpr double kMostPxPerMm = 40;

/// The zoom at which the page drawn full size fits the table with `margin_px` around, at most kMostPxPerMm.
/// It does not depend on `shrink`: on the smaller paper the page is seen to be smaller.
double fitZoom(PageFit fit, const PageSize& page, const TableArea& table, double margin_px);
/// Obeys the fit, keeps the zoom in its limits, and keeps the page on the table: centred along a side in
/// which it fits, else without a gap wider than the margin.
void settle(PageView& view, const PageSize& page, const TableArea& table, double margin_px);
/// Larger or smaller about a point of the screen, which stays over the same point of the page. Ends a fit.
void zoomAbout(PageView& view, const PageSize& page, const TableArea& table, ScreenPoint about,
               double factor);
/// Moves the page by pixels. Ends a fit.
void panBy(PageView& view, double dx_px, double dy_px);

/// The page's upper left corner on screen, on whole pixels so that a picture of the page stays sharp.
ScreenPoint pageCorner(const PageView& view, const PageSize& page, const TableArea& table);
ScreenPoint toScreen(const PageView& view, const PageSize& page, const TableArea& table, drawing::Pt at_mm);
drawing::Pt toPage(const PageView& view, const PageSize& page, const TableArea& table, ScreenPoint at);

/// Part of a page as a picture: whole pixels from the page's upper left corner, at a zoom.
struct PagePart {
    std::int64_t left_px = 0, top_px = 0;
    int width_px = 0, height_px = 0; ///< 0: no part of the page
    double px_per_mm = 1;            ///< of the page's own mm
    bool operator==(const PagePart&) const = default;
    /// Lower left corner in mm on the page, as drawings count.
    drawing::Pt lowerLeft(const PageSize& page) const;
};

/// The whole page at the view's zoom, or coarser where a side would be longer than `most_px`.
PagePart wholePage(const PageView& view, const PageSize& page, int most_px);
/// What the table shows of the page with `around_px` more on each side, no side longer than `most_px`.
PagePart visiblePart(const PageView& view, const PageSize& page, const TableArea& table, int around_px,
                     int most_px);
/// Whether a picture shows all that the table shows of the page, at the view's own zoom.
bool shows(const PagePart& picture, const PageView& view, const PageSize& page, const TableArea& table);

} // namespace gangway::app
