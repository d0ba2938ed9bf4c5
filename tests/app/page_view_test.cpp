// Where a page lies on the preview's table. Expected numbers are worked out by hand; that what is under the
// pointer stays under it while zooming is common practice, no source.
#include "app/page_view.hpp"

#include <catch2/catch.hpp>

using namespace gangway::app;
using gangway::drawing::Pt;

namespace {
constexpr PageSize kA3{420, 297}; // ISO 216
constexpr TableArea kTable{100, 50, 900, 700};
constexpr double kMargin = 30;

PageView fitted(PageFit fit) {
    PageView view;
    view.fit = fit;
    settle(view, kA3, kTable, kMargin);
    return view;
}
} // namespace

TEST_CASE("a page that is fitted lies in the middle of the table with a margin around") {
    const PageView view = fitted(PageFit::Page);
    CHECK(view.px_per_mm == Approx(840.0 / 420)); // the width is what limits it: 2 pixels a mm
    const ScreenPoint corner = pageCorner(view, kA3, kTable);
    CHECK(corner.x == 130);
    CHECK(corner.y == Approx(50 + (700 - 297 * 2) / 2.0).margin(0.5));
    const ScreenPoint lower_right = toScreen(view, kA3, kTable, {420, 0});
    CHECK(lower_right.x == Approx(970).margin(0.5));
}

TEST_CASE("a page fitted to the width of a low table begins at its top edge and can be moved") {
    constexpr TableArea low{0, 0, 900, 300};
    PageView view;
    view.fit = PageFit::Width;
    settle(view, kA3, low, kMargin);
    CHECK(view.px_per_mm == Approx(2));
    panBy(view, 0, 10000);
    settle(view, kA3, low, kMargin);
    CHECK(pageCorner(view, kA3, low).y == Approx(30).margin(0.5));
    panBy(view, 0, -10000);
    settle(view, kA3, low, kMargin);
    CHECK(toScreen(view, kA3, low, {0, 0}).y == Approx(270).margin(0.5));
    CHECK(view.fit == PageFit::Free);
}

TEST_CASE("zooming keeps what is under the pointer there, and stays within its limits") {
    for (const ScreenPoint pointer : {ScreenPoint{300, 300}, ScreenPoint{900, 120}, ScreenPoint{500, 700}}) {
        PageView view = fitted(PageFit::Page);
        const Pt under = toPage(view, kA3, kTable, pointer);
        for (const double factor : {1.5, 2.0, 1.2, 0.8}) {
            zoomAbout(view, kA3, kTable, pointer, factor);
            const ScreenPoint now = toScreen(view, kA3, kTable, under);
            CHECK(now.x == Approx(pointer.x).margin(0.51)); // the page lies on whole pixels
            CHECK(now.y == Approx(pointer.y).margin(0.51));
        }
        for (int i = 0; i < 60; ++i)
            zoomAbout(view, kA3, kTable, pointer, 1.5);
        CHECK(view.px_per_mm == kMostPxPerMm);
        for (int i = 0; i < 60; ++i)
            zoomAbout(view, kA3, kTable, pointer, 0.5);
        CHECK(view.px_per_mm == kLeastPxPerMm);
    }
}

TEST_CASE("from the screen to the page and back is the same point") {
    PageView view = fitted(PageFit::Page);
    zoomAbout(view, kA3, kTable, {420, 333}, 3.7);
    for (const Pt at : {Pt{0, 0}, Pt{420, 297}, Pt{123.4, 56.7}}) {
        const Pt back = toPage(view, kA3, kTable, toScreen(view, kA3, kTable, at));
        CHECK(back.x == Approx(at.x).margin(1e-9));
        CHECK(back.y == Approx(at.y).margin(1e-9));
    }
}

TEST_CASE("an A3 page on A4 is seen 0.7071 times as large, with the same fit") {
    // drawing-standards.md, check 65: A3 printed on A4, factor 0.7071.
    const PageView full = fitted(PageFit::Page);
    PageView small = full;
    small.shrink = 0.7071;
    settle(small, kA3, kTable, kMargin);
    CHECK(small.px_per_mm == full.px_per_mm);
    const double width = toScreen(small, kA3, kTable, {420, 0}).x - toScreen(small, kA3, kTable, {0, 0}).x;
    CHECK(width == Approx(840 * 0.7071));
}

TEST_CASE("the picture of the whole page is coarser where it would be too large") {
    PageView view = fitted(PageFit::Page);
    CHECK(wholePage(view, kA3, 4096).width_px == 840);
    CHECK(wholePage(view, kA3, 4096).height_px == 594);
    CHECK(shows(wholePage(view, kA3, 4096), view, kA3, kTable));
    zoomAbout(view, kA3, kTable, {500, 400}, 10);
    const PagePart coarse = wholePage(view, kA3, 2048);
    CHECK(coarse.width_px == 2048);
    CHECK(coarse.px_per_mm < view.px_per_mm);
    CHECK_FALSE(shows(coarse, view, kA3, kTable));
}

TEST_CASE("the visible part covers the table, no more than the page, and ends at the cap") {
    PageView view = fitted(PageFit::Page);
    zoomAbout(view, kA3, kTable, {500, 400}, 6);
    settle(view, kA3, kTable, kMargin);
    const PagePart part = visiblePart(view, kA3, kTable, 100, 4096);
    CHECK(part.width_px == 900 + 200);
    CHECK(part.height_px == 700 + 200);
    CHECK(shows(part, view, kA3, kTable));
    PageView moved = view;
    panBy(moved, 90, -90);
    CHECK(shows(part, moved, kA3, kTable));
    panBy(moved, 60, 0);
    CHECK_FALSE(shows(part, moved, kA3, kTable));

    const PagePart capped = visiblePart(view, kA3, kTable, 100, 512);
    CHECK(capped.width_px == 512);
    CHECK(capped.height_px == 512);

    // Its lower left corner lies at the same place as the page's drawing says.
    const Pt low = part.lowerLeft(kA3);
    const ScreenPoint at = toScreen(view, kA3, kTable, low);
    CHECK(at.x == Approx(kTable.x - 100).margin(1.01));
    CHECK(at.y == Approx(kTable.y + kTable.height + 100).margin(1.01));
}

TEST_CASE("at the edge of the page the visible part ends with the page") {
    PageView view = fitted(PageFit::Page);
    zoomAbout(view, kA3, kTable, {500, 400}, 6);
    panBy(view, 100000, 100000);
    settle(view, kA3, kTable, kMargin);
    const PagePart part = visiblePart(view, kA3, kTable, 100, 4096);
    CHECK(part.left_px == 0);
    CHECK(part.top_px == 0);
    CHECK(part.width_px == 900 - 30 + 100);
    CHECK(shows(part, view, kA3, kTable));
}
