#include "scene/leg_route.hpp"

#include "geometry/frames.hpp"
#include "scene/drawn_objects.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <set>

namespace gangway::scene {

namespace {

using geometry::HouseIndex;
using plan::Vec2;
using plan::Vec3;

constexpr double kBefore_mm = 8;  ///< before walls and under ceilings, so that the line is seen
constexpr double kStep_mm = 100;  ///< between looks at the ceiling's height along a line
constexpr double kFold_mm = 0.05; ///< how exactly folds and steps of the ceiling are found
constexpr double kTurn_mm = 600;  ///< a turn counts like this much way: few turns read best

/// An end of the leg: where it is, and where the line meets the ceiling over it.
struct End {
    Vec3 foot;
    Vec3 top;
    const plan::Room* room = nullptr;
    double elevation_mm = 0;
};

std::optional<End> endAt(const HouseIndex& house, const std::string& room_id, const plan::Host& host,
                         double out_mm) {
    const plan::Room* room = house.room(room_id);
    const auto frame = geometry::hostFrame(house, room_id, host);
    const auto point = geometry::hostPoint(house, room_id, host);
    if (room == nullptr || !frame || !point) return std::nullopt;
    End end{*point + frame->w * kBefore_mm, {}, room, detail::elevationOf(house, room_id)};
    end.top = end.foot;
    end.top.z = geometry::ceilingHeightAt(*room, {end.foot.x, end.foot.y}) - kBefore_mm;
    end.foot = end.foot + frame->w * out_mm;
    end.foot.z += end.elevation_mm;
    end.top.z += end.elevation_mm;
    return end;
}

void append(Route& route, Vec3 point) {
    if (!route.empty() && plan::length(route.back() - point) < 0.5) return;
    // On a straight line the point between is not needed.
    if (route.size() >= 2) {
        const Vec3 before = route.back() - route[route.size() - 2];
        const Vec3 after = point - route.back();
        if (plan::length(plan::cross(before, after)) < 1e-6 * plan::length(before) * plan::length(after) &&
            plan::dot(before, after) > 0)
            route.pop_back();
    }
    route.push_back(point);
}

/// The line's height under the ceilings of a storey; empty where there is no room, as within walls.
class Ceilings {
public:
    Ceilings(const HouseIndex& house, const End& from) : house_(house), from_(from) {}
    std::optional<double> at(Vec2 place) const {
        const plan::Room* room = geometry::insideRoom(*from_.room, place)
                                     ? from_.room
                                     : geometry::roomAt(house_, from_.room->storey, place);
        if (room == nullptr) return std::nullopt;
        return geometry::ceilingHeightAt(*room, place) - kBefore_mm + from_.elevation_mm;
    }

private:
    const HouseIndex& house_;
    const End& from_;
};

/// Straight on plan from a point to a place, bent where the ceiling folds or steps between; the point
/// reached.
Vec3 followCeiling(Route& route, const Ceilings& ceilings, Vec3 from, Vec2 to) {
    const Vec3 reached{to.x, to.y, ceilings.at(to).value_or(from.z)};
    const Vec2 start{from.x, from.y};
    const Vec2 middle = (start + to) * 0.5;
    const double there = ceilings.at(middle).value_or(from.z);
    if (plan::length(to - start) > kFold_mm && std::abs(there - (from.z + reached.z) / 2) > kFold_mm)
        return followCeiling(route, ceilings, followCeiling(route, ceilings, from, middle), to);
    append(route, reached);
    return reached;
}

/// Along the ceilings over a straight line on plan.
void alongCeiling(Route& route, const Ceilings& ceilings, Vec2 to) {
    Vec3 reached = route.back();
    const Vec2 start{reached.x, reached.y};
    const int steps = std::max(1, static_cast<int>(std::ceil(plan::length(to - start) / kStep_mm)));
    for (int i = 1; i <= steps; ++i)
        reached =
            followCeiling(route, ceilings, reached, start + (to - start) * (static_cast<double>(i) / steps));
}

/// Where lines along x and y may turn in a room: over both ends, and just off every corner of its walls.
std::vector<double> turnsAlong(const plan::Room& room, double plan::Vec2::* axis, Vec2 from, Vec2 to) {
    std::vector<double> places{from.*axis, to.*axis};
    const auto add = [&](const std::vector<Vec2>& corners) {
        for (const Vec2 corner : corners)
            for (const double off : {-kBefore_mm, kBefore_mm})
                places.push_back(corner.*axis + off);
    };
    add(room.outline);
    for (const auto& column : room.columns)
        add(column);
    std::ranges::sort(places);
    const auto rest = std::ranges::unique(places);
    places.erase(rest.begin(), rest.end());
    return places;
}

/// Steps over the crossings of lines along x and y, with as little way and as few turns as may be (Dijkstra).
class Grid {
public:
    Grid(const plan::Room& room, Vec2 from, Vec2 to)
        : room_(room), xs_(turnsAlong(room, &Vec2::x, from, to)), ys_(turnsAlong(room, &Vec2::y, from, to)),
          states_(2 * xs_.size() * ys_.size()) {}

    /// The places after `from`, up to `to`; none when walls part them.
    std::vector<Vec2> path(Vec2 from, Vec2 to) {
        const std::size_t goal = node(to);
        std::set<std::pair<double, std::size_t>> open;
        for (const std::size_t state : {2 * node(from), 2 * node(from) + 1}) {
            states_[state].cost = 0;
            open.emplace(0.0, state);
        }
        while (!open.empty()) {
            const std::size_t state = open.begin()->second;
            open.erase(open.begin());
            if (state / 2 == goal) return back(state);
            step(open, state);
        }
        return {};
    }

private:
    struct Reached {
        double cost = std::numeric_limits<double>::infinity();
        std::size_t from = 0;
    };

    std::size_t node(Vec2 at) const {
        const auto x = std::ranges::lower_bound(xs_, at.x) - xs_.begin();
        const auto y = std::ranges::lower_bound(ys_, at.y) - ys_.begin();
        return static_cast<std::size_t>(y) * xs_.size() + static_cast<std::size_t>(x);
    }
    Vec2 place(std::size_t node) const { return {xs_[node % xs_.size()], ys_[node / xs_.size()]}; }

    /// A state is a node and whether it was reached along y.
    void step(std::set<std::pair<double, std::size_t>>& open, std::size_t state) {
        const std::size_t at = state / 2;
        const std::size_t x = at % xs_.size();
        const std::size_t y = at / xs_.size();
        const auto go = [&](std::size_t next, std::size_t along_y) {
            const Vec2 from = place(at);
            const Vec2 to = place(next);
            if (!geometry::insideRoom(room_, (from + to) * 0.5) || !geometry::insideRoom(room_, to)) return;
            const double turn = state % 2 == along_y ? 0 : kTurn_mm;
            const double cost = states_[state].cost + plan::length(to - from) + turn;
            Reached& reached = states_[2 * next + along_y];
            if (cost >= reached.cost) return;
            open.erase({reached.cost, 2 * next + along_y});
            reached = {cost, state};
            open.emplace(cost, 2 * next + along_y);
        };
        if (x > 0) go(at - 1, 0);
        if (x + 1 < xs_.size()) go(at + 1, 0);
        if (y > 0) go(at - xs_.size(), 1);
        if (y + 1 < ys_.size()) go(at + xs_.size(), 1);
    }

    std::vector<Vec2> back(std::size_t state) const {
        std::vector<Vec2> places;
        for (; states_[state].cost > 0; state = states_[state].from)
            places.push_back(place(state / 2));
        std::ranges::reverse(places);
        return places;
    }

    const plan::Room& room_;
    std::vector<double> xs_;
    std::vector<double> ys_;
    std::vector<Reached> states_;
};

/// Where a line from room to room turns: in the first room where it can, else in any.
Vec2 cornerBetween(const HouseIndex& house, const End& from, const End& to) {
    const Vec2 first{to.top.x, from.top.y};
    const Vec2 second{from.top.x, to.top.y};
    for (const Vec2 corner : {first, second})
        if (geometry::insideRoom(*from.room, corner)) return corner;
    return geometry::roomAt(house, from.room->storey, second) != nullptr ? second : first;
}

void toTop(Route& route, const HouseIndex& house, const End& from, const End& to) {
    const Vec2 start{from.top.x, from.top.y};
    const Vec2 goal{to.top.x, to.top.y};
    std::vector<Vec2> turns;
    if (from.room == to.room) turns = Grid(*from.room, start, goal).path(start, goal);
    if (turns.empty()) turns = {cornerBetween(house, from, to), goal};
    const Ceilings ceilings(house, from);
    for (const Vec2 turn : turns)
        alongCeiling(route, ceilings, turn);
    append(route, to.top);
}

std::vector<End> fedEnds(const HouseIndex& house, const plan::SwitchLeg& leg) {
    const plan::Plan& plan = house.plan();
    std::vector<End> ends;
    const auto add = [&ends](std::optional<End> end) {
        if (end) ends.push_back(*end);
    };
    for (const std::string& id : leg.luminaires)
        if (const auto* lamp = plan::findLuminaire(plan, id))
            add(endAt(house, lamp->room, lamp->host,
                      lamp->host.kind == plan::Host::Kind::Ceiling ? lamp->drop_mm : 0));
    for (const std::string& id : leg.plates)
        if (const auto* plate = plan::findPlate(plan, id)) add(endAt(house, plate->room, plate->host, 0));
    return ends;
}

/// Takes the end nearest to a point out of the list.
End takeNearest(std::vector<End>& ends, Vec3 to) {
    const auto nearest =
        std::ranges::min_element(ends, {}, [to](const End& end) { return plan::length(end.top - to); });
    const End taken = *nearest;
    ends.erase(nearest);
    return taken;
}

} // namespace

std::vector<Route> legRoute(const HouseIndex& house, const plan::SwitchLeg& leg) {
    std::vector<Route> routes;
    std::vector<End> fed = fedEnds(house, leg);
    std::optional<End> last;
    const auto join = [&](const End& end) {
        if (last) toTop(routes.back(), house, *last, end);
        last = end;
    };
    for (const plan::WayRef& ref : leg.controls) {
        const auto* plate = plan::findPlate(house.plan(), ref.plate);
        const auto end = plate == nullptr ? std::nullopt : endAt(house, plate->room, plate->host, 0);
        if (!end) continue;
        join(*end);
        routes.push_back({end->foot});
        append(routes.back(), end->top);
    }
    while (!fed.empty()) {
        const End end = last ? takeNearest(fed, last->top) : takeNearest(fed, fed.front().top);
        if (!last) routes.push_back({end.top});
        join(end);
        append(routes.back(), end.foot);
        routes.push_back({end.top});
    }
    std::erase_if(routes, [](const Route& route) { return route.size() < 2; });
    return routes;
}

} // namespace gangway::scene
