// Neighbouring sockets over a worktop.
#include "checks/counts.hpp"
#include "checks/spacing.hpp"
#include "checks/stretches.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace gangway::checks {

using plan::Severity;

namespace {
/// Feet and inches are not exact in binary.
constexpr double kExactMm = 1e-6;

/// Whether nothing that makes it a fault to be there bars a plate where it is.
bool canStay(const std::vector<Bar>& bars, const Point& point) {
    return std::ranges::none_of(bars, [&](const Bar& bar) {
        return bar.severity == Severity::Fault && playOf(bar, point.half_mm, point.centre_mm()) < -kExactMm;
    });
}

/// The walls of a room, each looked at once.
class Scenes {
public:
    Scenes(const Facts& facts, const plan::Room& room) : facts_(facts), room_(room) {}
    std::vector<Bar> barsOf(const Point& point) {
        const auto wall = plan::wallIndex(room_, point.plate->host.wall);
        if (!wall) return {};
        auto seen = scenes_.find(*wall);
        if (seen == scenes_.end()) seen = scenes_.emplace(*wall, sceneOf(facts_, room_, *wall)).first;
        return barsFor(facts_, seen->second, point);
    }

private:
    const Facts& facts_;
    const plan::Room& room_;
    std::map<std::size_t, WallScene> scenes_;
};

/// Two neighbours over one run of worktop, and the widest stretch between them in which a plate like the
/// first can't be put anywhere.
struct Neighbours {
    const Point* left = nullptr;
    const Point* right = nullptr;
    double apart_mm = 0;
    Interval barred; ///< on their wall; of no length where they are not on one wall
};

Interval widestBarred(Scenes& scenes, const Point& left, const Point& right) {
    if (left.plate->host.wall != right.plate->host.wall) return {};
    auto bars = scenes.barsOf(left);
    // Plates can be moved for each other; what stands there can't.
    std::erase_if(bars, [](const Bar& bar) { return bar.rule == "plate-overlap"; });
    const Interval between{left.centre_mm().x, right.centre_mm().x};
    Interval widest{between.from_mm, between.from_mm};
    double from = between.from_mm;
    const auto take = [&](double to) {
        if (to - from > widest.to_mm - widest.from_mm) widest = {from, to};
    };
    for (const Stretch& free :
         freeStretches(bars, left.half_mm, left.centre_mm().y, between, Severity::Warn)) {
        take(free.u.from_mm);
        from = free.u.to_mm;
    }
    take(between.to_mm);
    return widest;
}

std::optional<Neighbours> widestApart(const Facts& facts, const plan::Room& room) {
    std::optional<Neighbours> worst;
    Scenes scenes(facts, room);
    for (const PlacedRun& placed : counterRuns(facts, room, false, highOverTop(facts))) {
        const Point* left = nullptr;
        double left_at = 0;
        for (std::size_t i = 0; i < placed.points.size(); ++i) {
            const Point& point = *placed.points[i];
            if (!canStay(scenes.barsOf(point), point)) continue;
            const double apart = placed.run.sockets_mm[i] - left_at;
            if (left != nullptr &&
                apart > (worst ? worst->apart_mm : facts.limit("worktopSpacing")) + kExactMm)
                worst = Neighbours{left, &point, apart, {}};
            left = &point;
            left_at = placed.run.sockets_mm[i];
        }
    }
    if (worst) worst->barred = widestBarred(scenes, *worst->left, *worst->right);
    return worst;
}
} // namespace

/// Sockets that have to go from where they are do not count as neighbours. Where no plate can be put between
/// two neighbours, the stretch that is barred is what is reported: it stays however they are moved.
void findWorktop(const Facts& facts, const plan::Room& room, Findings& findings) {
    const double limit = facts.limit("worktopSpacing");
    if (limit <= 0 || room.use != plan::RoomUse::Kitchen) return;
    const auto apart = widestApart(facts, room);
    if (!apart) return;
    const double barred = apart->barred.to_mm - apart->barred.from_mm;
    const bool helpless = barred > limit + kExactMm;
    auto finding = about(facts, "worktop-spacing", Severity::Warn, *apart->left);
    finding.objects.push_back(apart->right->plate->id);
    finding.value_mm = helpless ? barred : apart->apart_mm;
    finding.limit_mm = limit;
    finding.message = fmt::format(
        "{} and {} are {} mm apart over one run of worktop, {} wanted at most{}.", whoIn(facts, *apart->left),
        apart->right->tag(), mm(apart->apart_mm), mm(limit),
        helpless ? fmt::format(": for {} mm between them no socket has a place", mm(barred)) : "");
    finding.source = facts.source("worktopSpacing");
    finding.remedy = helpless ? "Nothing on this wall mends it: put sockets under the wall units or at the "
                                "island, and accept it."
                              : "Put another socket between them.";
    const auto wall = plan::wallIndex(room, apart->left->plate->host.wall);
    if (wall && helpless) {
        const geometry::Frame frame = geometry::wallFrame(room, *wall);
        const double v = apart->left->centre_mm().y;
        finding.gap = plan::Gap{geometry::toHouse(frame, {apart->barred.from_mm, v, 0}),
                                geometry::toHouse(frame, {apart->barred.to_mm, v, 0})};
    }
    findings.push_back(std::move(finding));
}

} // namespace gangway::checks
