#include "checks/bars.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gangway::checks {

namespace {
/// Nearer than this to touching counts as touching: numbers typed in mm are not exact in binary.
constexpr double kTouchMm = 1e-6;

/// Extent in one coordinate of the part of a convex polygon whose other coordinate lies strictly between two
/// values.
template <double plan::Vec2::* Along, double plan::Vec2::* Across>
std::optional<Interval> slice(const std::vector<plan::Vec2>& area, double low, double high) {
    Interval extent{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    const auto take = [&](double at) {
        extent.from_mm = std::min(extent.from_mm, at);
        extent.to_mm = std::max(extent.to_mm, at);
    };
    bool inside = false;
    double least = std::numeric_limits<double>::infinity();
    double most = -least;
    for (std::size_t i = 0; i < area.size(); ++i) {
        const plan::Vec2 a = area[i];
        const plan::Vec2 b = area[(i + 1) % area.size()];
        least = std::min(least, a.*Across);
        most = std::max(most, a.*Across);
        if (a.*Across >= low && a.*Across <= high) take(a.*Along);
        for (const double line : {low, high})
            if ((a.*Across - line) * (b.*Across - line) < 0)
                take(a.*Along + (b.*Along - a.*Along) * (line - a.*Across) / (b.*Across - a.*Across));
    }
    inside = most > low + kTouchMm && least < high - kTouchMm;
    if (!inside || extent.from_mm > extent.to_mm) return std::nullopt;
    return extent;
}
} // namespace

void addOverAndNear(std::vector<Bar>& bars, Bar over, plan::Severity near, const Keep& keep) {
    bars.push_back(over);
    over.severity = near;
    over.keep = keep;
    bars.push_back(std::move(over));
}

std::optional<Interval> barredAlong(const Bar& bar, plan::Vec2 half_mm, double v_mm) {
    const auto extent = slice<&plan::Vec2::x, &plan::Vec2::y>(
        bar.area_mm, v_mm - half_mm.y - bar.keep.above_mm, v_mm + half_mm.y + bar.keep.below_mm);
    if (!extent) return std::nullopt;
    return Interval{extent->from_mm - bar.keep.left_mm - half_mm.x,
                    extent->to_mm + bar.keep.right_mm + half_mm.x};
}

std::optional<Interval> barredUp(const Bar& bar, plan::Vec2 half_mm, double u_mm) {
    const auto extent = slice<&plan::Vec2::y, &plan::Vec2::x>(
        bar.area_mm, u_mm - half_mm.x - bar.keep.right_mm, u_mm + half_mm.x + bar.keep.left_mm);
    if (!extent) return std::nullopt;
    return Interval{extent->from_mm - bar.keep.below_mm - half_mm.y,
                    extent->to_mm + bar.keep.above_mm + half_mm.y};
}

namespace {
Bar bare(const Bar& bar) {
    Bar copy;
    copy.area_mm = bar.area_mm;
    return copy;
}

/// Corners of the plate with the free space round it.
struct Grown {
    plan::Vec2 low;
    plan::Vec2 high;
};

Grown grown(const Bar& bar, plan::Vec2 half, plan::Vec2 centre) {
    return {{centre.x - half.x - bar.keep.right_mm, centre.y - half.y - bar.keep.above_mm},
            {centre.x + half.x + bar.keep.left_mm, centre.y + half.y + bar.keep.below_mm}};
}

/// How far the plate lies beyond an edge of the area, as the way in both directions at once that closes it.
double beyondEdge(plan::Vec2 from, plan::Vec2 to, const Grown& plate) {
    const plan::Vec2 outward{to.y - from.y, from.x - to.x}; // to the right of a counter-clockwise edge
    const double size = std::abs(outward.x) + std::abs(outward.y);
    if (size == 0) return -std::numeric_limits<double>::infinity();
    const plan::Vec2 nearest{outward.x > 0 ? plate.low.x : plate.high.x,
                             outward.y > 0 ? plate.low.y : plate.high.y};
    return dot(nearest - from, outward) / size;
}
} // namespace

double playOf(const Bar& bar, plan::Vec2 half_mm, plan::Vec2 centre_mm) {
    const Grown plate = grown(bar, half_mm, centre_mm);
    const auto [left, right] = std::ranges::minmax(bar.area_mm, {}, &plan::Vec2::x);
    const auto [low, high] = std::ranges::minmax(bar.area_mm, {}, &plan::Vec2::y);
    double play =
        std::max({left.x - plate.high.x, plate.low.x - right.x, low.y - plate.high.y, plate.low.y - high.y});
    for (std::size_t i = 0; i < bar.area_mm.size(); ++i)
        play = std::max(play, beyondEdge(bar.area_mm[i], bar.area_mm[(i + 1) % bar.area_mm.size()], plate));
    return play;
}

double gapTo(const Bar& bar, plan::Vec2 half_mm, plan::Vec2 centre_mm) {
    return playOf(bare(bar), half_mm, centre_mm);
}

double overlapAlong(const Bar& bar, plan::Vec2 half_mm, plan::Vec2 centre_mm) {
    const auto along = barredAlong(bare(bar), {0, half_mm.y}, centre_mm.y);
    if (!along) return 0;
    return std::max(0.0, std::min(along->to_mm, centre_mm.x + half_mm.x) -
                             std::max(along->from_mm, centre_mm.x - half_mm.x));
}

namespace {
plan::Vec2 onEdge(plan::Vec2 from, plan::Vec2 to, plan::Vec2 at) {
    const plan::Vec2 along = to - from;
    const double size = dot(along, along);
    const double part = size == 0 ? 0 : std::clamp(dot(at - from, along) / size, 0.0, 1.0);
    return from + along * part;
}

Interval extent(const std::vector<plan::Vec2>& area) {
    Interval across{1e300, -1e300};
    for (const plan::Vec2 corner : area) {
        across.from_mm = std::min(across.from_mm, corner.x);
        across.to_mm = std::max(across.to_mm, corner.x);
    }
    return across;
}

double middleHeight(const std::vector<plan::Vec2>& area) {
    double low = 1e300;
    double high = -1e300;
    for (const plan::Vec2 corner : area) {
        low = std::min(low, corner.y);
        high = std::max(high, corner.y);
    }
    return (low + high) / 2;
}

bool parted(const std::vector<plan::Vec2>& a, const std::vector<plan::Vec2>& b) {
    for (std::size_t i = 0; i < a.size(); ++i) {
        const plan::Vec2 from = a[i];
        const plan::Vec2 along = a[(i + 1) % a.size()] - from;
        if (std::ranges::all_of(b, [&](plan::Vec2 at) { return cross(along, at - from) <= 0; })) return true;
    }
    return false;
}
} // namespace

std::pair<plan::Vec2, plan::Vec2> nearestPoints(const std::vector<plan::Vec2>& a,
                                                const std::vector<plan::Vec2>& b) {
    if (!parted(a, b) && !parted(b, a)) {
        const Interval first = extent(a);
        const Interval second = extent(b);
        const double v = middleHeight(a);
        const bool leftwards = first.to_mm - second.from_mm < second.to_mm - first.from_mm;
        return leftwards ? std::pair{plan::Vec2{first.to_mm, v}, plan::Vec2{second.from_mm, v}}
                         : std::pair{plan::Vec2{first.from_mm, v}, plan::Vec2{second.to_mm, v}};
    }
    std::pair<plan::Vec2, plan::Vec2> nearest{a.front(), b.front()};
    double least = 1e300;
    const auto take = [&](plan::Vec2 on_a, plan::Vec2 on_b) {
        const double away = length(on_a - on_b);
        if (away >= least) return;
        least = away;
        nearest = {on_a, on_b};
    };
    for (std::size_t i = 0; i < a.size(); ++i)
        for (std::size_t j = 0; j < b.size(); ++j) {
            take(a[i], onEdge(b[j], b[(j + 1) % b.size()], a[i]));
            take(onEdge(a[i], a[(i + 1) % a.size()], b[j]), b[j]);
        }
    return nearest;
}

std::vector<plan::Vec2> rectangle(double left_mm, double right_mm, double bottom_mm, double top_mm) {
    return {{left_mm, bottom_mm}, {right_mm, bottom_mm}, {right_mm, top_mm}, {left_mm, top_mm}};
}

} // namespace gangway::checks
