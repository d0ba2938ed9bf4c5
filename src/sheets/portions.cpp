#include "sheets/portions.hpp"

#include "drawing/dimensions.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace gangway::sheets {

namespace {

constexpr double kFar = 1e6;         ///< farther than any paper
constexpr double kClearOfPlate = 80; ///< of a cut, real mm
constexpr double kClearOfEdge = 60;  ///< of a cut from an opening
constexpr double kAround = 40;       ///< of a detail's frame past its plates
constexpr double kNeighbour = 120;   ///< plates nearer than this to a crowded one go with it
constexpr Pen kMatch{0.5, drawing::LineType::LongDashDoubleDot, drawing::kBlack};
constexpr Pen kFrame{0.35, drawing::LineType::LongDashDot, drawing::kBlack};

using Interval = std::pair<double, double>;

/// Stretches where no cut had better be, sorted and joined.
std::vector<Interval> barred(const WallView& view) {
    std::vector<Interval> bars;
    for (const Mounted& item : view.mounted)
        bars.emplace_back(item.at_mm.x - item.width_mm / 2 - kClearOfPlate,
                          item.at_mm.x + item.width_mm / 2 + kClearOfPlate);
    for (const auto& hole : view.holes)
        bars.emplace_back(hole.left_mm - kClearOfEdge, hole.right_mm + kClearOfEdge);
    std::ranges::sort(bars);
    std::vector<Interval> joined;
    for (const Interval& bar : bars) {
        if (!joined.empty() && bar.first <= joined.back().second)
            joined.back().second = std::max(joined.back().second, bar.second);
        else
            joined.push_back(bar);
    }
    return joined;
}

/// The place nearest to `ideal` that is not barred, between two limits; `ideal` where there is none.
double cutNear(double ideal, const std::vector<Interval>& bars, double low, double high) {
    double best = ideal;
    double least = kFar;
    const auto consider = [&](double place) {
        const bool free = std::ranges::none_of(
            bars, [&](const Interval& bar) { return place > bar.first && place < bar.second; });
        if (!free || place < low || place > high || std::abs(place - ideal) >= least) return;
        least = std::abs(place - ideal);
        best = place;
    };
    consider(std::round(ideal / 10) * 10);
    for (const Interval& bar : bars) {
        consider(bar.first);
        consider(bar.second);
    }
    return best;
}

Rect reachOf(const Mounted& item) {
    return {item.at_mm.x - item.width_mm / 2, item.at_mm.y - item.height_mm / 2,
            item.at_mm.x + item.width_mm / 2, item.at_mm.y + item.height_mm / 2};
}

/// Rectangles round what is crowded, those that come near each other made one, with all plates near them.
std::vector<Rect> clusters(const WallView& view, const std::vector<std::string>& crowded) {
    std::vector<Rect> found;
    for (const Mounted& item : view.mounted)
        if (std::ranges::find(crowded, item.id) != crowded.end()) found.push_back(reachOf(item));
    for (bool grew = true; grew;) {
        grew = false;
        for (Rect& cluster : found)
            for (const Mounted& item : view.mounted) {
                const Rect reach = reachOf(item);
                if (!overlaps(cluster.grown(kNeighbour), reach) || inside(reach, cluster)) continue;
                cluster = united(cluster, reach);
                grew = true;
            }
        for (std::size_t i = 0; i < found.size(); ++i)
            for (std::size_t k = found.size(); k-- > i + 1;)
                if (overlaps(found[i].grown(kNeighbour), found[k])) {
                    found[i] = united(found[i], found[k]);
                    found.erase(found.begin() + static_cast<std::ptrdiff_t>(k));
                    grew = true;
                }
    }
    std::ranges::sort(found, {}, &Rect::left);
    return found;
}

void matchLine(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view, OnPaper paper,
               End end) {
    const bool left = end == End::Left;
    const double u = left ? view.left_mm() : view.right_mm();
    const double x = paper.mm(u);
    const double foot = paper.mm(view.slab_mm()) - 2;
    const double top = paper.mm(view.topAt(u)) + 2;
    Ink(items, "building").line({x, foot}, {x, top}, kMatch);
    // Its words stand along it, outside of the picture.
    Label words;
    words.lines = {fmt::format("match line, part {}", view.portion->number + (left ? -1UL : 1UL))};
    words.turn_deg = 90;
    words.within = left ? Rect{x - 4.8, foot, x - 1, top} : Rect{x + 1, foot, x + 4.8, top};
    words.layer = "text";
    words.need = Label::Need::Always;
    labels.push_back(std::move(words));
}

} // namespace

std::vector<WallView> parted(const WallView& view, std::size_t parts) {
    const auto bars = barred(view);
    const double length = view.length_mm();
    const double part = length / static_cast<double>(parts);
    std::vector<double> cuts{0};
    for (std::size_t i = 1; i < parts; ++i) {
        const double ideal = part * static_cast<double>(i);
        cuts.push_back(cutNear(ideal, bars, std::max(cuts.back() + part / 4, ideal - part / 2),
                               std::min(length - part / 4, ideal + part / 2)));
    }
    cuts.push_back(length);
    std::vector<WallView> views;
    for (std::size_t i = 0; i < parts; ++i) {
        WallView one = view;
        one.portion = Portion{cuts[i], cuts[i + 1], std::nullopt, i + 1, parts, 0};
        const bool last = i + 1 == parts;
        const auto beyond = [&](double u) { return (i > 0 && u < cuts[i]) || (!last && u >= cuts[i + 1]); };
        std::erase_if(one.mounted, [&](const Mounted& item) { return beyond(item.at_mm.x); });
        std::erase_if(one.changes, [&](const RevisionMark& mark) { return beyond(mark.at_mm.x); });
        views.push_back(std::move(one));
    }
    return views;
}

std::optional<WallView> withDetails(const WallView& view, const std::vector<std::string>& crowded,
                                    double most_width_mm, double most_height_mm) {
    WallView detailed = view;
    for (const Rect& cluster : clusters(view, crowded)) {
        const Rect frame = cluster.grown(kAround);
        if (frame.width() > most_width_mm || frame.height() > most_height_mm) return std::nullopt;
        const std::size_t number = detailed.details.size() + 1;
        detailed.details.push_back(
            {frame.left, frame.right, std::pair{frame.bottom, frame.top}, number, 0, 0});
        for (Mounted& item : detailed.mounted)
            if (inside(reachOf(item), frame)) item.detail = number;
    }
    return detailed;
}

WallView detailView(const WallView& view, const Portion& detail) {
    WallView one = view;
    one.portion = detail;
    one.details.clear();
    one.changes.clear();
    std::erase_if(one.mounted, [&](const Mounted& item) { return item.detail != detail.number; });
    for (Mounted& item : one.mounted)
        item.detail = 0;
    return one;
}

Rect windowOf(const WallView& view, OnPaper paper) {
    const Portion& portion = *view.portion;
    if (portion.v_mm)
        return paper.rect(portion.left_mm, portion.v_mm->first, portion.right_mm, portion.v_mm->second);
    return {view.shows(End::Left) ? -kFar : paper.mm(portion.left_mm), -kFar,
            view.shows(End::Right) ? kFar : paper.mm(portion.right_mm), kFar};
}

void drawPortionEdges(std::vector<Item>& items, std::vector<Label>& labels, const WallView& view,
                      OnPaper paper) {
    if (view.portion->v_mm) {
        Ink(items, "building").rect(windowOf(view, paper), kFrame);
        return;
    }
    if (!view.shows(End::Left)) matchLine(items, labels, view, paper, End::Left);
    if (!view.shows(End::Right)) matchLine(items, labels, view, paper, End::Right);
}

void drawDetailFrames(std::vector<Item>& items, Occupancy& occupancy, const WallView& view, OnPaper paper) {
    std::vector<Label> names;
    for (const Portion& detail : view.details) {
        const Rect frame =
            paper.rect(detail.left_mm, detail.v_mm->first, detail.right_mm, detail.v_mm->second);
        Ink(items, "building").rect(frame, kFrame);
        for (const auto& [a, b] : {std::pair{Pt{frame.left, frame.bottom}, Pt{frame.right, frame.bottom}},
                                   std::pair{Pt{frame.right, frame.bottom}, Pt{frame.right, frame.top}},
                                   std::pair{Pt{frame.right, frame.top}, Pt{frame.left, frame.top}},
                                   std::pair{Pt{frame.left, frame.top}, Pt{frame.left, frame.bottom}}})
            occupancy.takeLeader(a, b);
        occupancy.take(frame);
        Label name;
        name.lines = {fmt::format("detail {}", detail.number)};
        name.height_mm = kValueText;
        name.within = {frame.left, frame.top + 0.8, std::max(frame.right, frame.left + 22), frame.top + 7};
        name.layer = "text";
        name.need = Label::Need::Always;
        names.push_back(std::move(name));
    }
    placeLabels(items, occupancy, names);
}

std::string portionWords(const WallView& view) {
    if (!view.portion) return {};
    return fmt::format("part {} of {}, u {} to {}", view.portion->number, view.portion->count,
                       drawing::number(view.printed({view.left_mm(), 0}).x),
                       drawing::number(view.printed({view.right_mm(), 0}).x));
}

} // namespace gangway::sheets
