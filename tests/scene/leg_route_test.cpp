#include "house.hpp"

#include "geometry/house_index.hpp"
#include "scene/leg_route.hpp"

#include <algorithm>

using namespace gangway;

namespace {
constexpr double kBefore_mm = 8; ///< as the header says

/// A plain room 4 x 3 m with a ceiling at 2500: a switch on wall C (south) at 1100, three lamps.
struct PlainRoom {
    plan::Plan plan;
    plan::SwitchLeg leg;

    PlainRoom() {
        const auto read = plan::readFile(std::string(GANGWAY_TESTS_DIR) + "/fixtures/one-room.plan.json");
        REQUIRE(read);
        plan = read->plan;
        plan.plates.clear();
        plan.furniture.clear();
        plan.luminaires.clear();
        addSwitch("door-side", "C", 2500);
        addLamp("west", 1000, 1500);
        addLamp("east", 3000, 1500);
        addLamp("hanging", 2000, 2500).drop_mm = 900;
        leg.id = std::string("leg");
        leg.controls.push_back({"door-side", 1, 1});
        leg.luminaires = {"west", "east", "hanging"};
    }
    void addSwitch(const std::string& id, const std::string& wall, double u_mm) {
        plan::Plate& plate = plan.plates.emplace_back();
        plate.id = id;
        plate.room = std::string("room");
        plate.host.kind = plan::Host::Kind::Wall;
        plate.host.wall = wall;
        plate.host.u_mm = u_mm;
        plate.host.v_mm = 1100;
        plate.modules.emplace_back().type = std::string("switch-2way");
    }
    plan::Luminaire& addLamp(const std::string& id, double east_mm, double north_mm) {
        plan::Luminaire& lamp = plan.luminaires.emplace_back();
        lamp.id = id;
        lamp.room = std::string("room");
        lamp.host.kind = plan::Host::Kind::Ceiling;
        lamp.host.u_mm = east_mm;
        lamp.host.v_mm = north_mm;
        return lamp;
    }
    std::vector<scene::Route> routes() const { return scene::legRoute(geometry::HouseIndex(plan), leg); }
};

double distanceToSurfaces(plan::Vec3 p) {
    return std::min({std::abs(p.x), std::abs(4000 - p.x), std::abs(p.y), std::abs(3000 - p.y),
                     std::abs(2500 - p.z)});
}

bool passes(const std::vector<scene::Route>& routes, plan::Vec3 point) {
    return std::ranges::any_of(routes, [point](const scene::Route& route) {
        return plan::length(route.front() - point) < 20 || plan::length(route.back() - point) < 20;
    });
}
} // namespace

TEST_CASE("a leg begins at its switch, ends at each of its lamps, and keeps to wall and ceiling between") {
    const PlainRoom room;
    const auto routes = room.routes();
    REQUIRE_FALSE(routes.empty());
    // Wall C runs from (4000, 0) to the west: 2500 from its left corner is x = 4000 - 2500 = 1500, y = 0.
    CHECK(plan::length(routes.front().front() - plan::Vec3{1500, kBefore_mm, 1100}) < 0.01);
    CHECK(passes(routes, {1000, 1500, 2500}));
    CHECK(passes(routes, {3000, 1500, 2500}));
    CHECK(passes(routes, {2000, 2500, 1600})); // 900 below the ceiling
    for (const scene::Route& route : routes)
        for (std::size_t i = 0; i + 1 < route.size(); ++i) {
            const plan::Vec3 way = route[i + 1] - route[i];
            const bool down = std::hypot(way.x, way.y) < 0.01;
            for (double part = 0; part <= 1; part += 0.1) {
                const plan::Vec3 at = route[i] + way * part;
                INFO(at.x << ", " << at.y << ", " << at.z);
                const bool to_hanging = down && std::hypot(at.x - 2000, at.y - 2500) < 20;
                if (!to_hanging) CHECK(distanceToSurfaces(at) < 20);
                CHECK((at.x > 0 && at.x < 4000 && at.y > 0 && at.y < 3000 && at.z > 0 && at.z < 2500));
            }
            // Up, down, or parallel to a wall: never slanting.
            const int moving = (std::abs(way.x) > 0.01) + (std::abs(way.y) > 0.01) + (std::abs(way.z) > 0.01);
            CHECK(moving == 1);
        }
}

TEST_CASE("each position of a group begins a line, in its order") {
    PlainRoom room;
    room.addSwitch("far", "A", 3000);
    room.leg.controls.push_back({"far", 1, 1});
    const auto routes = room.routes();
    // Wall A runs from (0, 3000) to the east.
    const auto begins = [&](plan::Vec3 at) {
        return std::ranges::count_if(
            routes, [at](const scene::Route& route) { return plan::length(route.front() - at) < 0.01; });
    };
    CHECK(begins({1500, kBefore_mm, 1100}) == 1);
    CHECK(begins({3000, 3000 - kBefore_mm, 1100}) == 1);
}

TEST_CASE("what the plan lacks is left out of a leg's lines") {
    PlainRoom room;
    room.leg.luminaires = {"west", "no-such-lamp"};
    room.leg.controls.push_back({"no-such-plate", 1, 1});
    CHECK(passes(room.routes(), {1000, 1500, 2500}));
    room.leg.controls.clear();
    room.leg.luminaires.clear();
    CHECK(room.routes().empty());
}
