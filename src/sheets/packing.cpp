#include "sheets/packing.hpp"

#include <algorithm>

namespace gangway::sheets {

namespace {

/// Spreads the rectangles of a row over the width that is left.
void spreadRow(std::vector<PackedAt>& places, std::size_t first, double used, const Rect& sheet) {
    const auto count = static_cast<double>(places.size() - first);
    const double spare = (sheet.width() - used) / (count + 1);
    for (std::size_t i = first; i < places.size(); ++i)
        places[i].corner.x += spare * static_cast<double>(i - first + 1);
}

} // namespace

std::optional<std::vector<PackedAt>> packedInRows(std::span<const Rect> sizes, const Rect& sheet,
                                                  double gap) {
    std::vector<PackedAt> places;
    std::size_t page = 0;
    double top = sheet.top;
    for (std::size_t i = 0; i < sizes.size();) {
        double used = 0;
        double height = 0;
        std::size_t end = i;
        while (end < sizes.size()) {
            const double wider = used + (end > i ? gap : 0) + sizes[end].width();
            if (wider > sheet.width()) break;
            used = wider;
            height = std::max(height, sizes[end].height());
            ++end;
        }
        if (end == i || height > sheet.height()) {
            // A row that is too high may still be cut shorter, but no single picture can.
            if (end == i || sizes[i].height() > sheet.height()) return std::nullopt;
        }
        if (top - height < sheet.bottom) {
            if (top == sheet.top) return std::nullopt;
            ++page;
            top = sheet.top;
            continue;
        }
        const std::size_t first = places.size();
        double x = sheet.left;
        for (; i < end; ++i) {
            places.push_back({page, {x, top}});
            x += sizes[i].width() + gap;
        }
        spreadRow(places, first, used, sheet);
        top -= height + gap;
    }
    return places;
}

} // namespace gangway::sheets
