#include "app/page_view.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {

/// Where the middle of one side comes to lie so that the page stays on the table; all in mm along that side.
double kept(double middle_mm, double page_mm, double table_mm, double margin_mm) {
    if (page_mm + 2 * margin_mm <= table_mm) return page_mm / 2;
    const double most = page_mm + margin_mm - table_mm / 2;
    const double least = table_mm / 2 - margin_mm;
    return std::clamp(middle_mm, std::min(least, most), std::max(least, most));
}

std::int64_t wholePx(double mm, double px_per_mm) {
    return std::llround(mm * px_per_mm);
}

} // namespace

double fitZoom(PageFit fit, const PageSize& page, const TableArea& table, double margin_px) {
    const double across = (table.width - 2 * margin_px) / page.width_mm;
    const double up = (table.height - 2 * margin_px) / page.height_mm;
    return std::clamp(fit == PageFit::Width ? across : std::min(across, up), kLeastPxPerMm, kMostPxPerMm);
}

void settle(PageView& view, const PageSize& page, const TableArea& table, double margin_px) {
    if (view.fit != PageFit::Free) view.px_per_mm = fitZoom(view.fit, page, table, margin_px);
    view.px_per_mm = std::clamp(view.px_per_mm, kLeastPxPerMm, kMostPxPerMm);
    const double px = view.pagePxPerMm();
    view.middle_mm.x = kept(view.middle_mm.x, page.width_mm, table.width / px, margin_px / px);
    view.middle_mm.y = kept(view.middle_mm.y, page.height_mm, table.height / px, margin_px / px);
}

void zoomAbout(PageView& view, const PageSize& page, const TableArea& table, ScreenPoint about,
               double factor) {
    const drawing::Pt under = toPage(view, page, table, about);
    const double before = view.px_per_mm;
    view.fit = PageFit::Free;
    view.px_per_mm = std::clamp(before * factor, kLeastPxPerMm, kMostPxPerMm);
    const double part = before / view.px_per_mm;
    view.middle_mm = {under.x + (view.middle_mm.x - under.x) * part,
                      under.y + (view.middle_mm.y - under.y) * part};
}

void panBy(PageView& view, double dx_px, double dy_px) {
    view.fit = PageFit::Free;
    view.middle_mm.x -= dx_px / view.pagePxPerMm();
    view.middle_mm.y += dy_px / view.pagePxPerMm();
}

ScreenPoint pageCorner(const PageView& view, const PageSize& page, const TableArea& table) {
    const double px = view.pagePxPerMm();
    return {std::round(table.x + table.width / 2 - view.middle_mm.x * px),
            std::round(table.y + table.height / 2 - (page.height_mm - view.middle_mm.y) * px)};
}

ScreenPoint toScreen(const PageView& view, const PageSize& page, const TableArea& table, drawing::Pt at_mm) {
    const ScreenPoint corner = pageCorner(view, page, table);
    return {corner.x + at_mm.x * view.pagePxPerMm(),
            corner.y + (page.height_mm - at_mm.y) * view.pagePxPerMm()};
}

drawing::Pt toPage(const PageView& view, const PageSize& page, const TableArea& table, ScreenPoint at) {
    const ScreenPoint corner = pageCorner(view, page, table);
    return {(at.x - corner.x) / view.pagePxPerMm(), page.height_mm - (at.y - corner.y) / view.pagePxPerMm()};
}

drawing::Pt PagePart::lowerLeft(const PageSize& page) const {
    return {static_cast<double>(left_px) / px_per_mm,
            page.height_mm - static_cast<double>(top_px + height_px) / px_per_mm};
}

PagePart wholePage(const PageView& view, const PageSize& page, int most_px) {
    PagePart part;
    part.px_per_mm = std::min(view.pagePxPerMm(), most_px / std::max(page.width_mm, page.height_mm));
    part.width_px = static_cast<int>(std::max<std::int64_t>(1, wholePx(page.width_mm, part.px_per_mm)));
    part.height_px = static_cast<int>(std::max<std::int64_t>(1, wholePx(page.height_mm, part.px_per_mm)));
    return part;
}

PagePart visiblePart(const PageView& view, const PageSize& page, const TableArea& table, int around_px,
                     int most_px) {
    PagePart part;
    part.px_per_mm = view.pagePxPerMm();
    const ScreenPoint corner = pageCorner(view, page, table);
    const auto side = [&](double table_from, double table_size, double corner_at, double page_mm) {
        const auto page_px = std::max<std::int64_t>(1, wholePx(page_mm, part.px_per_mm));
        const auto from = static_cast<std::int64_t>(std::floor(table_from - corner_at));
        const auto to = static_cast<std::int64_t>(std::ceil(table_from + table_size - corner_at));
        if (to <= 0 || from >= page_px) return std::pair<std::int64_t, std::int64_t>{0, 0};
        // What is beyond the cap is outside of any window: the middle is what one looks at.
        const std::int64_t spare = std::max<std::int64_t>(0, to - from - most_px) / 2;
        const std::int64_t around =
            spare > 0 ? 0 : std::min<std::int64_t>(around_px, (most_px - (to - from)) / 2);
        return std::pair{std::clamp<std::int64_t>(from + spare - around, 0, page_px),
                         std::clamp<std::int64_t>(to - spare + around, 0, page_px)};
    };
    const auto [left, right] = side(table.x, table.width, corner.x, page.width_mm);
    const auto [top, bottom] = side(table.y, table.height, corner.y, page.height_mm);
    part.left_px = left;
    part.top_px = top;
    part.width_px = static_cast<int>(right - left);
    part.height_px = static_cast<int>(bottom - top);
    return part;
}

bool shows(const PagePart& picture, const PageView& view, const PageSize& page, const TableArea& table) {
    if (picture.px_per_mm != view.pagePxPerMm()) return false;
    constexpr int kAnySize = 1 << 30;
    const PagePart seen = visiblePart(view, page, table, 0, kAnySize);
    if (seen.width_px == 0 || seen.height_px == 0) return true;
    return picture.left_px <= seen.left_px && picture.top_px <= seen.top_px &&
           picture.left_px + picture.width_px >= seen.left_px + seen.width_px &&
           picture.top_px + picture.height_px >= seen.top_px + seen.height_px;
}

} // namespace gangway::app
