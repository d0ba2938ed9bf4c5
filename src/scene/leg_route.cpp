#include "scene/leg_route.hpp"

#include "geometry/frames.hpp"
#include "scene/drawn_objects.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace gangway::scene {

namespace {

using geometry::HouseIndex;
using plan::Vec2;
using plan::Vec3;

constexpr double kBefore_mm = 8; ///< before walls and under ceilings, so that the line is seen
constexpr double kStep_mm = 100; ///< between looks at the ceiling's height along a line

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

/// Along the ceilings over a straight line on plan.
void alongCeiling(Route& route, const HouseIndex& house, const End& from, Vec2 to) {
    const Vec2 start{route.back().x, route.back().y};
    const double length = plan::length(to - start);
    const int steps = std::max(1, static_cast<int>(std::ceil(length / kStep_mm)));
    for (int i = 1; i <= steps; ++i) {
        const Vec2 at = start + (to - start) * (static_cast<double>(i) / steps);
        const plan::Room* room =
            geometry::insideRoom(*from.room, at) ? from.room : geometry::roomAt(house, from.room->storey, at);
        const double z = room == nullptr
                             ? route.back().z
                             : geometry::ceilingHeightAt(*room, at) - kBefore_mm + from.elevation_mm;
        append(route, {at.x, at.y, z});
    }
}

/// The corner of the way along x and y that lies in the first room, or in any.
Vec2 cornerBetween(const HouseIndex& house, const End& from, const End& to) {
    const Vec2 first{to.top.x, from.top.y};
    const Vec2 second{from.top.x, to.top.y};
    for (const Vec2 corner : {first, second})
        if (geometry::insideRoom(*from.room, corner)) return corner;
    return geometry::roomAt(house, from.room->storey, second) != nullptr ? second : first;
}

void toTop(Route& route, const HouseIndex& house, const End& from, const End& to) {
    alongCeiling(route, house, from, cornerBetween(house, from, to));
    alongCeiling(route, house, from, {to.top.x, to.top.y});
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
