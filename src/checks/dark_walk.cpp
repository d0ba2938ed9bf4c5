#include "checks/dark_walk.hpp"

#include "checks/night.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

namespace gangway::checks {

namespace {
constexpr double kNever = std::numeric_limits<double>::infinity();
/// Doors looked at on the way to the nearest WC: further than that nobody goes for it.
constexpr std::size_t kMostDoors = 24;

/// The part of a walk that lies in one room.
struct Stage {
    const plan::Room* room = nullptr;
    const switching::Entrance* in = nullptr;  ///< by which it is entered; nullptr: it begins here
    const switching::Entrance* out = nullptr; ///< by which it is left, as one enters by it
    std::vector<plan::Vec2> points_mm;
    std::vector<plan::Vec2> hands_mm;
};

/// How far along a way one is when a place first comes into reach. The first point at which a circle meets a
/// segment.
double firstWithin(const std::vector<plan::Vec2>& way, plan::Vec2 at, double reach) {
    double before = 0;
    for (std::size_t i = 0; i + 1 < way.size(); ++i) {
        const plan::Vec2 along = way[i + 1] - way[i];
        const double run = length(along);
        const plan::Vec2 off = way[i] - at;
        if (length(off) <= reach) return before;
        if (run > 0) {
            const double middle = -dot(off, along) / run;
            const double half = reach * reach - (dot(off, off) - middle * middle);
            const double t = half < 0 ? kNever : middle - std::sqrt(half);
            if (t >= 0 && t <= run) return before + t;
        }
        before += run;
    }
    return length(way.back() - at) <= reach ? before : kNever;
}

plan::Vec2 pointAt(const std::vector<plan::Vec2>& way, double along_mm) {
    for (std::size_t i = 0; i + 1 < way.size(); ++i) {
        const double run = length(way[i + 1] - way[i]);
        if (along_mm <= run && run > 0) return way[i] + (way[i + 1] - way[i]) * (along_mm / run);
        along_mm -= run;
    }
    return way.back();
}

/// How far along a stage a source comes into reach.
double reachedAt(const Stage& stage, const LightSource& source, double reach) {
    if (source.sensor) return 0;
    if (stage.in != nullptr && switching::reachOf(*stage.in, source.at_mm) <= reach) return 0;
    const auto in_hand = [&](plan::Vec2 hand) { return length(hand - source.at_mm) <= reach; };
    if (std::ranges::any_of(stage.hands_mm, in_hand)) return 0;
    const double at = firstWithin(stage.points_mm, source.at_mm, reach);
    if (stage.out != nullptr && switching::reachOf(*stage.out, source.at_mm) <= reach)
        return std::min(at, lengthOf(stage.points_mm));
    return at;
}

/// Goes along a walk and notes its longest dark stretch.
class Dark {
public:
    Dark(const Night& night, Walk& walk) : night_(night), walk_(walk) {}

    void enter(const Stage& stage, bool first) {
        const double run = lengthOf(stage.points_mm);
        std::map<std::string, double> lit_at;
        const auto take = [&](const LightSource& source, double at) {
            if (!std::isfinite(at)) return;
            for (const std::string& room : source.lights) {
                const auto [entry, is_new] = lit_at.emplace(room, at);
                if (!is_new) entry->second = std::min(entry->second, at);
            }
        };
        for (const LightSource& source : night_.sourcesIn(stage.room->id))
            take(source, reachedAt(stage, source, night_.reach_mm()));
        if (stage.in != nullptr) // a hand also reaches back through the door
            for (const LightSource& source : night_.sourcesIn(stage.in->from))
                if (switching::reachOf(*stage.in, source.at_mm) <= night_.reach_mm()) take(source, 0);
        const auto light = night_.lightOf(stage.room->id);
        if (!light || lit_.contains(stage.room->id)) {
            close(stage.points_mm.front());
        } else {
            if (dark_mm_ == 0) begin(stage, first, *light);
            const auto at = lit_at.find(stage.room->id);
            const double until = at == lit_at.end() ? run : at->second;
            dark_mm_ += until;
            if (at != lit_at.end() && until < run) close(pointAt(stage.points_mm, until));
        }
        for (const auto& [room, at] : lit_at)
            lit_.insert(room);
    }

    void close(plan::Vec2 at) {
        if (dark_mm_ > walk_.dark_mm) {
            walk_.dark_mm = dark_mm_;
            walk_.dark_from_mm = from_mm_;
            walk_.dark_to_mm = at;
            walk_.dark_room = room_;
            walk_.dark_from_start = from_start_;
            walk_.leg = leg_ == nullptr ? std::string() : leg_->id;
        }
        dark_mm_ = 0;
    }

private:
    void begin(const Stage& stage, bool first, const plan::SwitchLeg* leg) {
        from_mm_ = stage.points_mm.front();
        room_ = stage.room->id;
        from_start_ = first;
        leg_ = leg;
    }

    const Night& night_;
    Walk& walk_;
    std::set<std::string> lit_;
    double dark_mm_ = 0;
    plan::Vec2 from_mm_;
    std::string room_;
    bool from_start_ = false;
    const plan::SwitchLeg* leg_ = nullptr;
};

Walk walkAlong(const Night& night, const WalkEnd& from, const WalkEnd& to, const std::vector<Stage>& stages) {
    Walk walk;
    walk.from = from;
    walk.to = to;
    Dark dark(night, walk);
    for (std::size_t i = 0; i < stages.size(); ++i) {
        dark.enter(stages[i], i == 0);
        for (const plan::Vec2 at : stages[i].points_mm)
            if (walk.points_mm.empty() || !(walk.points_mm.back() == at)) walk.points_mm.push_back(at);
    }
    dark.close(walk.points_mm.back());
    walk.length_mm = lengthOf(walk.points_mm);
    return walk;
}

/// Whether a switch for the room is in hand where a walk begins: then it can't be dark from its beginning.
bool isLightAt(const Night& night, const Stop& stop) {
    const Stage stage{nullptr, stop.entrance, nullptr, {stop.end.at_mm}, stop.hands_mm};
    return std::ranges::any_of(night.sourcesIn(stop.end.room), [&](const LightSource& source) {
        return source.lights.contains(stop.end.room) && reachedAt(stage, source, night.reach_mm()) <= 0;
    });
}

/// The nearest WC beyond the doors of a room: Dijkstra's search from door to door as the crow flies, then the
/// real way.
class ToWc {
public:
    ToWc(Night& night, const plan::Room& room, const Stop& bed) : night_(night), bed_(bed) {
        for (const switching::Entrance* door : night.doorsOf(room.id))
            go(room, bed.end.at_mm, *door, 0, kNone);
    }

    std::optional<Walk> walk(std::set<std::string>& looked) {
        for (std::size_t doors = 0; !open_.empty() && doors < kMostDoors; ++doors) {
            const std::size_t here = open_.top().second;
            open_.pop();
            const Step step = steps_[here];
            if (!seen_.insert(step.out->opening).second) continue;
            const plan::Room* room = night_.house().room(step.into->into);
            if (room == nullptr) continue;
            looked.insert(room->id);
            for (const plan::Furniture* piece : night_.house().furnitureIn(room->id))
                if (piece->kind == "wc") return arrive(here, *room, *piece);
            for (const switching::Entrance* door : night_.doorsOf(room->id))
                if (!seen_.contains(door->opening))
                    go(*room, step.out->middle_mm, *door, step.length_mm, here);
        }
        return std::nullopt;
    }

private:
    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
    /// Through a room to a door of it.
    struct Step {
        const plan::Room* room = nullptr;
        const switching::Entrance* out = nullptr;  ///< the door, as one enters this room by it
        const switching::Entrance* into = nullptr; ///< the same, as one enters the next
        double length_mm = 0;
        std::size_t before = kNone;
    };

    void go(const plan::Room& room, plan::Vec2 from, const switching::Entrance& out, double so_far_mm,
            std::size_t before) {
        if (out.from.empty()) return; // nobody goes out for it
        const auto& beyond = night_.doorsOf(out.from);
        const auto into = std::ranges::find(beyond, out.opening, &switching::Entrance::opening);
        if (into == beyond.end()) return;
        const double total = so_far_mm + length(out.middle_mm - from);
        open_.push({total, steps_.size()});
        steps_.push_back({&room, &out, *into, total, before});
    }

    Walk arrive(std::size_t last, const plan::Room& room, const plan::Furniture& wc) {
        std::vector<const Step*> steps;
        for (std::size_t at = last; at != kNone; at = steps_[at].before)
            steps.insert(steps.begin(), &steps_[at]);
        std::vector<Stage> stages;
        plan::Vec2 at = bed_.end.at_mm;
        const switching::Entrance* in = nullptr;
        for (const Step* step : steps) {
            stages.push_back(
                {step->room, in, step->out, night_.floorOf(*step->room).way(at, step->out->middle_mm), {}});
            at = step->out->middle_mm;
            in = step->into;
        }
        stages.front().hands_mm = bed_.hands_mm;
        stages.push_back({&room, in, nullptr, night_.floorOf(room).way(at, wc.at_mm), {}});
        return walkAlong(night_, bed_.end,
                         {WalkEnd::Kind::Wc, wc.id, wc.name.empty() ? "WC" : wc.name, room.id, wc.at_mm},
                         stages);
    }

    Night& night_;
    const Stop& bed_;
    std::vector<Step> steps_;
    std::set<const plan::Opening*> seen_;
    std::priority_queue<std::pair<double, std::size_t>, std::vector<std::pair<double, std::size_t>>,
                        std::greater<>>
        open_;
};

void addWalks(Night& night, const plan::Room& room, const std::vector<Stop>& stops, const Stop& from,
              std::set<std::string>& looked, std::vector<Walk>& walks) {
    for (const Stop& to : stops) {
        if (to.end.id == from.end.id) continue;
        const Stage stage{&room, from.entrance, to.entrance,
                          night.floorOf(room).way(from.end.at_mm, to.end.at_mm), from.hands_mm};
        walks.push_back(walkAlong(night, from.end, to.end, {stage}));
    }
    const bool has_wc =
        std::ranges::any_of(stops, [](const Stop& stop) { return stop.end.kind == WalkEnd::Kind::Wc; });
    if (from.end.kind != WalkEnd::Kind::Bed || has_wc) return;
    if (auto walk = ToWc(night, room, from).walk(looked)) walks.push_back(std::move(*walk));
}
} // namespace

std::vector<Walk> walksFrom(Night& night, const plan::Room& room, Walks which,
                            std::set<std::string>& looked) {
    std::vector<Walk> walks;
    looked.insert(room.id);
    if (!night.lightOf(room.id)) return walks;
    const std::vector<Stop> stops = night.stopsOf(room);
    for (const Stop& from : stops) {
        const bool from_dark = from.end.kind == WalkEnd::Kind::Bed || from.end.kind == WalkEnd::Kind::Stair;
        if (from.end.kind == WalkEnd::Kind::Wc) continue;
        if (which == Walks::DarkFromStart && (!from_dark || isLightAt(night, from))) continue;
        addWalks(night, room, stops, from, looked, walks);
    }
    return walks;
}

std::vector<Walk> nightWalks(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                             const catalogue::CountryPack& pack, Walks which) {
    std::vector<Walk> walks;
    const switching::Doorways doorways(house);
    Night night(house, house.plan(), doorways, catalogue, pack);
    std::set<std::string> looked;
    for (const plan::Room& room : house.plan().rooms)
        std::ranges::move(walksFrom(night, room, which, looked), std::back_inserter(walks));
    return walks;
}

} // namespace gangway::checks
