#include "sheets/packing.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace gangway::sheets {

namespace {

constexpr std::size_t kFew = 6; ///< all orders of so many are tried

/// Rectangles that stand beside each other.
struct RowOf {
    std::size_t end = 0;
    double used_mm = 0;
    double height_mm = 0;
};

class Packing {
public:
    Packing(std::span<const Rect> sizes, const PackRoom& room, double gap)
        : sizes_(sizes), room_(room), gap_(gap), places_(sizes.size()) {}

    /// False when one is larger than a sheet.
    bool inOrder(std::span<const std::size_t> order) {
        sheet_ = 0;
        top_ = room_.full.top;
        for (std::size_t i = 0; i < order.size();) {
            RowOf row = fill(order, i, room_.full.width());
            double width = room_.full.width();
            double bottom = room_.full.bottom;
            if (top_ - row.height_mm < bottom && room_.low.width() > 0) {
                width = room_.low.width();
                bottom = room_.low.bottom;
                row = fill(order, i, width);
            }
            if (row.end == i || top_ - row.height_mm < bottom) {
                if (top_ == room_.full.top) return false;
                ++sheet_;
                top_ = room_.full.top;
                continue;
            }
            place(order, i, row, width);
            i = row.end;
            top_ -= row.height_mm + gap_;
        }
        return true;
    }

    /// The less, the less paper: sheets, then how far down the last one is used.
    auto rank() const { return std::tuple(sheet_, -top_); }
    const std::vector<PackedAt>& places() const { return places_; }

private:
    RowOf fill(std::span<const std::size_t> order, std::size_t first, double width_mm) const {
        RowOf row{first, 0, 0};
        for (; row.end < order.size(); ++row.end) {
            const Rect& size = sizes_[order[row.end]];
            const double wider = row.used_mm + (row.end > first ? gap_ : 0) + size.width();
            if (wider > width_mm) break;
            row.used_mm = wider;
            row.height_mm = std::max(row.height_mm, size.height());
        }
        return row;
    }

    /// Spreads a row over the width that is left.
    void place(std::span<const std::size_t> order, std::size_t first, const RowOf& row, double width_mm) {
        const double spare = (width_mm - row.used_mm) / static_cast<double>(row.end - first + 1);
        double x = room_.full.left + spare;
        for (std::size_t i = first; i < row.end; ++i) {
            places_[order[i]] = {sheet_, {x, top_}};
            x += sizes_[order[i]].width() + gap_ + spare;
        }
    }

    std::span<const Rect> sizes_;
    PackRoom room_;
    double gap_;
    std::vector<PackedAt> places_; ///< in the order of `sizes_`
    std::size_t sheet_ = 0;
    double top_ = 0;
};

} // namespace

std::optional<std::vector<PackedAt>> packedInRows(std::span<const Rect> sizes, const PackRoom& room,
                                                  double gap) {
    std::optional<Packing> best;
    const auto tried = [&](std::span<const std::size_t> order) {
        Packing next(sizes, room, gap);
        if (next.inOrder(order) && (!best || next.rank() < best->rank())) best.emplace(std::move(next));
    };
    std::vector<std::size_t> order(sizes.size());
    std::iota(order.begin(), order.end(), 0);
    if (order.size() <= kFew) {
        do
            tried(order);
        while (std::ranges::next_permutation(order).found);
    } else {
        tried(order);
        std::ranges::stable_sort(order, std::greater(), [&](std::size_t i) { return sizes[i].height(); });
        tried(order);
    }
    if (!best) return std::nullopt;
    return best->places();
}

} // namespace gangway::sheets
