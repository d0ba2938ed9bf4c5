#include "sheets/packing.hpp"

#include <algorithm>
#include <functional>
#include <numeric>
#include <tuple>

namespace gangway::sheets {

namespace {

constexpr std::size_t kFew = 6; ///< all orders of so many are tried

/// What is free of a sheet as the largest rectangles, which overlap each other (maximal rectangles: Jylanki,
/// A Thousand Ways to Pack the Bin (2010), section 4).
class FreePaper {
public:
    explicit FreePaper(const PackRoom& room) : free_{room.full} {
        if (room.low.width() > 0)
            free_.push_back({room.low.left, room.low.bottom, room.low.right, room.full.top});
    }

    /// The upper left corner as far up, then as far left as can be.
    std::optional<Pt> placeFor(const Rect& size) const {
        std::optional<Pt> best;
        for (const Rect& rect : free_) {
            if (rect.width() < size.width() - kSlack || rect.height() < size.height() - kSlack) continue;
            if (!best || std::tuple(-rect.top, rect.left) < std::tuple(-best->y, best->x))
                best = Pt{rect.left, rect.top};
        }
        return best;
    }

    void take(const Rect& taken) {
        std::vector<Rect> rest;
        for (const Rect& rect : free_) {
            if (!overlaps(rect, taken)) {
                rest.push_back(rect);
                continue;
            }
            const auto keep = [&](const Rect& part) {
                if (part.width() > kSlack && part.height() > kSlack) rest.push_back(part);
            };
            keep({rect.left, rect.bottom, taken.left, rect.top});
            keep({taken.right, rect.bottom, rect.right, rect.top});
            keep({rect.left, rect.bottom, rect.right, taken.bottom});
            keep({rect.left, taken.top, rect.right, rect.top});
        }
        free_ = std::move(rest);
    }

private:
    static constexpr double kSlack = 1e-6;
    std::vector<Rect> free_;
};

/// Rectangles placed in some order.
struct Placing {
    std::vector<PackedAt> places; ///< in the order of the sizes
    std::size_t last_sheet = 0;
    double lowest = 0; ///< of the last sheet
    /// The less, the less paper.
    auto rank() const { return std::tuple(last_sheet, -lowest); }
};

std::optional<Placing> placedInOrder(std::span<const Rect> sizes, std::span<const std::size_t> order,
                                     const PackRoom& room, double gap) {
    Placing made{std::vector<PackedAt>(sizes.size()), 0, room.full.top};
    FreePaper paper(room);
    for (const std::size_t i : order) {
        auto corner = paper.placeFor(sizes[i]);
        if (!corner) {
            paper = FreePaper(room);
            ++made.last_sheet;
            made.lowest = room.full.top;
            corner = paper.placeFor(sizes[i]);
        }
        if (!corner) return std::nullopt;
        made.places[i] = {made.last_sheet, *corner};
        const double bottom = corner->y - sizes[i].height();
        made.lowest = std::min(made.lowest, bottom);
        paper.take({corner->x - gap, bottom - gap, corner->x + sizes[i].width() + gap, corner->y + gap});
    }
    return made;
}

/// Pictures that leave a sheet's width free move apart to its middle, where nothing stands beside the title
/// block.
void centre(Placing& made, std::span<const Rect> sizes, const PackRoom& room) {
    for (std::size_t sheet = 0; sheet <= made.last_sheet; ++sheet) {
        double right = room.full.left;
        double bottom = room.full.top;
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            if (made.places[i].sheet != sheet) continue;
            right = std::max(right, made.places[i].corner.x + sizes[i].width());
            bottom = std::min(bottom, made.places[i].corner.y - sizes[i].height());
        }
        if (bottom < room.full.bottom) continue;
        for (PackedAt& place : made.places)
            if (place.sheet == sheet) place.corner.x += (room.full.right - right) / 2;
    }
}

} // namespace

std::optional<std::vector<PackedAt>> packed(std::span<const Rect> sizes, const PackRoom& room, double gap) {
    std::optional<Placing> best;
    const auto tried = [&](std::span<const std::size_t> order) {
        auto next = placedInOrder(sizes, order, room, gap);
        if (next && (!best || next->rank() < best->rank())) best = std::move(next);
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
    centre(*best, sizes, room);
    return std::move(best->places);
}

} // namespace gangway::sheets
