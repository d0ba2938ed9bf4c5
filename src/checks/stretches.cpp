#include "checks/stretches.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::checks {

namespace {
struct Taken {
    Interval u;
    const Bar* bar;
};

std::vector<Taken> takenBy(const std::vector<Bar>& bars, plan::Vec2 half_mm, double v_mm, Interval whole,
                           plan::Severity least) {
    std::vector<Taken> taken;
    for (const Bar& bar : bars) {
        if (bar.severity < least) continue;
        const auto along = barredAlong(bar, half_mm, v_mm);
        if (along && along->to_mm > whole.from_mm && along->from_mm < whole.to_mm)
            taken.push_back({*along, &bar});
    }
    std::ranges::stable_sort(taken, {}, [](const Taken& one) { return one.u.from_mm; });
    return taken;
}
} // namespace

std::vector<Stretch> freeStretches(const std::vector<Bar>& bars, plan::Vec2 half_mm, double v_mm,
                                   Interval whole, plan::Severity least) {
    std::vector<Stretch> free;
    if (whole.from_mm > whole.to_mm) return free;
    double from = whole.from_mm;
    const Bar* closes = nullptr;
    for (const Taken& next : takenBy(bars, half_mm, v_mm, whole, least)) {
        if (next.u.from_mm >= from) free.push_back({{from, next.u.from_mm}, closes, next.bar});
        if (next.u.to_mm > from) {
            from = next.u.to_mm;
            closes = next.bar;
        }
    }
    if (from <= whole.to_mm) free.push_back({{from, whole.to_mm}, closes, nullptr});
    return free;
}

std::optional<double> nearestFree(const std::vector<Stretch>& stretches, double u_mm) {
    std::optional<double> nearest;
    for (const Stretch& stretch : stretches) {
        const double at = std::clamp(u_mm, stretch.u.from_mm, stretch.u.to_mm);
        if (!nearest || std::abs(at - u_mm) < std::abs(*nearest - u_mm)) nearest = at;
    }
    return nearest;
}

Margin marginOf(const std::vector<Bar>& bars, plan::Vec2 half_mm, plan::Vec2 centre_mm, Interval whole,
                plan::Severity least) {
    Margin margin{std::min(centre_mm.x - whole.from_mm, whole.to_mm - centre_mm.x), nullptr};
    for (const Bar& bar : bars) {
        if (bar.severity < least) continue;
        const double play = playOf(bar, half_mm, centre_mm);
        if (play < margin.mm) margin = {play, &bar};
    }
    margin.mm = std::max(margin.mm, 0.0);
    return margin;
}

} // namespace gangway::checks
