#include "house.hpp"

#include "geometry/house_index.hpp"
#include "scene/leg_route.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

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
    return std::min(
        {std::abs(p.x), std::abs(4000 - p.x), std::abs(p.y), std::abs(3000 - p.y), std::abs(2500 - p.z)});
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

namespace {
/// Height of the drawn ceiling over a place, house mm; the ceilings are those of the stage's triangles.
class DrawnCeilings {
public:
    explicit DrawnCeilings(const scene::Scene& scene) {
        for (const scene::Part& part : scene.parts) {
            if (part.kind != scene::PartKind::Ceiling) continue;
            auto& corners = by_room_[part.room];
            for (std::uint32_t i = 0; i < part.index_count; ++i)
                corners.push_back(
                    scene::toHouse(scene.vertices[scene.indices[part.first_index + i]].position));
        }
    }
    /// How far a point lies below the ceiling of one of the rooms that is nearest over it; large: none is.
    double below(plan::Vec3 point) const {
        double least = 1e9;
        for (const auto& [room, corners] : by_room_)
            for (std::size_t i = 0; i + 2 < corners.size(); i += 3)
                if (const auto z = heightOn(&corners[i], point); z && *z - point.z > -1)
                    least = std::min(least, *z - point.z);
        return least;
    }
    bool hasRoom(const std::string& room) const { return by_room_.contains(room); }

private:
    static std::optional<double> heightOn(const plan::Vec3* t, plan::Vec3 at) {
        const double whole = (t[1].x - t[0].x) * (t[2].y - t[0].y) - (t[1].y - t[0].y) * (t[2].x - t[0].x);
        if (std::abs(whole) < 1) return std::nullopt; // a rim of the ceiling, seen from below as a line
        const auto part = [&](int a, int b) {
            return ((t[a].x - at.x) * (t[b].y - at.y) - (t[a].y - at.y) * (t[b].x - at.x)) / whole;
        };
        const double w0 = part(1, 2);
        const double w1 = part(2, 0);
        const double w2 = part(0, 1);
        if (std::min({w0, w1, w2}) < -1e-4) return std::nullopt;
        return w0 * t[0].z + w1 * t[1].z + w2 * t[2].z;
    }
    std::map<std::string, std::vector<plan::Vec3>> by_room_;
};

double distanceToLine(plan::Vec2 at, plan::Vec2 a, plan::Vec2 b) {
    const plan::Vec2 along = b - a;
    const double part = std::clamp(plan::dot(at - a, along) / plan::dot(along, along), 0.0, 1.0);
    return plan::length(at - (a + along * part));
}

/// The storey whose floor is the next one below.
std::string storeyAt(const plan::Plan& plan, double z_mm) {
    const plan::Storey* found = nullptr;
    for (const plan::Storey& storey : plan.storeys)
        if (storey.elevation_mm <= z_mm && (found == nullptr || storey.elevation_mm > found->elevation_mm))
            found = &storey;
    return found == nullptr ? std::string() : found->id;
}

/// From the nearest wall face, columns included, of the rooms that hold the place on plan; large in no room.
double fromWalls(const plan::Plan& plan, plan::Vec3 point) {
    double least = 1e9;
    const std::string storey = storeyAt(plan, point.z);
    for (const plan::Room& room : plan.rooms) {
        if (room.storey != storey || !geometry::insideRoom(room, {point.x, point.y})) continue;
        const auto edges = [&](const std::vector<plan::Vec2>& corners) {
            for (std::size_t i = 0; i < corners.size(); ++i)
                least = std::min(
                    least, distanceToLine({point.x, point.y}, corners[i], corners[(i + 1) % corners.size()]));
        };
        edges(room.outline);
        for (const auto& column : room.columns)
            edges(column);
    }
    return least;
}

bool inNoRoom(const plan::Plan& plan, plan::Vec3 point) {
    const std::string storey = storeyAt(plan, point.z);
    return std::ranges::none_of(plan.rooms, [&](const plan::Room& room) {
        return room.storey == storey && geometry::insideRoom(room, {point.x, point.y});
    });
}

/// Whether the place is at the ceiling's level where a stair goes through it, so that none is drawn.
bool overStair(const plan::Plan& plan, plan::Vec3 point) {
    const std::string storey = storeyAt(plan, point.z);
    return std::ranges::any_of(plan.furniture, [&](const plan::Furniture& piece) {
        const plan::Room* room = plan::findRoom(plan, piece.room);
        if (piece.kind != "stair" || room == nullptr || room->storey != storey) return false;
        const double floor_mm = plan::findStorey(plan, storey)->elevation_mm;
        return geometry::insideRoom(*room, {point.x, point.y}) &&
               std::abs(floor_mm + geometry::ceilingHeightAt(*room, {point.x, point.y}) - kBefore_mm -
                        point.z) < 1;
    });
}

/// Rooms of what works a leg and what it feeds.
std::set<std::string> roomsOf(const plan::Plan& plan, const plan::SwitchLeg& leg) {
    std::set<std::string> rooms;
    for (const auto& ref : leg.controls)
        if (const auto* plate = plan::findPlate(plan, ref.plate)) rooms.insert(plate->room);
    for (const auto& id : leg.luminaires)
        if (const auto* lamp = plan::findLuminaire(plan, id)) rooms.insert(lamp->room);
    for (const auto& id : leg.plates)
        if (const auto* plate = plan::findPlate(plan, id)) rooms.insert(plate->room);
    return rooms;
}

/// Whether the leg feeds or is worked from something that is on no wall and no ceiling at this place on plan:
/// there its line hangs in the air.
bool hangsThere(const geometry::HouseIndex& house, const plan::SwitchLeg& leg, plan::Vec3 at) {
    const auto there = [&](const std::string& room, const plan::Host& host, double drop_mm) {
        if (host.kind == plan::Host::Kind::Wall || (host.kind == plan::Host::Kind::Ceiling && drop_mm == 0))
            return false;
        const auto point = geometry::hostPoint(house, room, host);
        return point && std::hypot(point->x - at.x, point->y - at.y) < 10;
    };
    for (const auto& ref : leg.controls)
        if (const auto* p = plan::findPlate(house.plan(), ref.plate); p && there(p->room, p->host, 0))
            return true;
    for (const auto& id : leg.plates)
        if (const auto* p = plan::findPlate(house.plan(), id); p && there(p->room, p->host, 0)) return true;
    for (const auto& id : leg.luminaires)
        if (const auto* l = plan::findLuminaire(house.plan(), id); l && there(l->room, l->host, l->drop_mm))
            return true;
    return false;
}
} // namespace

TEST_CASE("every point of every leg of the demo house lies before a wall or under a ceiling that is drawn") {
    const auto read = plan::readFile(std::string(GANGWAY_ASSETS_DIR) + "/demo/terrace.plan.json");
    REQUIRE(read);
    const plan::Plan& plan = read->plan;
    const geometry::HouseIndex house(plan);
    const DrawnCeilings ceilings(scene::build(plan, house::catalogue()));
    REQUIRE(ceilings.hasRoom("attic"));
    int on_ceiling = 0;
    int on_wall = 0;
    int over_stair = 0;
    for (const plan::SwitchLeg& leg : plan.legs) {
        const bool one_room = roomsOf(plan, leg).size() == 1;
        for (const scene::Route& route : scene::legRoute(house, leg))
            for (std::size_t i = 0; i + 1 < route.size(); ++i) {
                const plan::Vec3 way = route[i + 1] - route[i];
                const bool upright = std::hypot(way.x, way.y) < 0.2;
                const int steps = std::max(1, static_cast<int>(plan::length(way) / 25));
                for (int k = 0; k <= steps; ++k) {
                    const plan::Vec3 at = route[i] + way * (static_cast<double>(k) / steps);
                    INFO(leg.id << " at " << at.x << ", " << at.y << ", " << at.z);
                    if (std::abs(ceilings.below(at) - kBefore_mm) < 1) {
                        ++on_ceiling;
                    } else if (std::abs(fromWalls(plan, at) - kBefore_mm) < 1) {
                        CHECK(upright);
                        ++on_wall;
                    } else if (ceilings.below(at) > 500 && overStair(plan, at)) {
                        ++over_stair;
                    } else if (one_room) {
                        CHECK((upright && hangsThere(house, leg, at)));
                    } else {
                        // From room to room: through the wall between, or straight through a floor.
                        CHECK((upright || inNoRoom(plan, at)));
                    }
                }
            }
    }
    CHECK(on_ceiling > 1000);
    CHECK(on_wall > 500);
    CHECK(over_stair < on_ceiling / 20);
}

TEST_CASE("in an L-shaped room a leg goes round the corner instead of through it") {
    PlainRoom room;
    // An L: the south-west quarter, 2 x 1.5 m, is not room. Clockwise from the north-west.
    room.plan.rooms.front().outline = {{0, 3000}, {4000, 3000}, {4000, 0},
                                       {2000, 0}, {2000, 1500}, {0, 1500}};
    room.plan.rooms.front().walls.clear();
    for (const char* id : {"A", "B", "C", "D", "E", "F"})
        room.plan.rooms.front().walls.emplace_back().id = std::string(id);
    room.plan.openings.clear();
    room.plan.plates.clear();
    room.plan.luminaires.clear();
    room.addSwitch("north-west", "F", 1000); // wall F runs from (0, 1500) to the north: x = 0, y = 2500
    // Ceiling lamps count from the outline's bounds, which begin at (0, 0) as before.
    room.addLamp("south-east", 3000, 400);
    room.addLamp("south-west-end", 2300, 300);
    room.leg.controls = {{"north-west", 1, 1}};
    room.leg.luminaires = {"south-east", "south-west-end"};
    const auto routes = room.routes();
    REQUIRE(passes(routes, {3000, 400, 2500}));
    REQUIRE(passes(routes, {2300, 300, 2500}));
    CHECK(plan::length(routes.front().front() - plan::Vec3{kBefore_mm, 2500, 1100}) < 0.01);
    for (const scene::Route& route : routes)
        for (std::size_t i = 0; i + 1 < route.size(); ++i)
            for (double part = 0; part <= 1; part += 0.02) {
                const plan::Vec3 at = route[i] + (route[i + 1] - route[i]) * part;
                INFO(at.x << ", " << at.y << ", " << at.z);
                CHECK_FALSE((at.x < 2000 && at.y < 1500));
                CHECK((at.x > 0 && at.x < 4000 && at.y > 0 && at.y < 3000));
            }
}
