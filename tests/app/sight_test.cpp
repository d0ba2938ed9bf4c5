#include "app/sight.hpp"

#include <catch2/catch.hpp>

#include <numbers>

using namespace gangway;

namespace {
/// 8000 from west to east, 2000 from south to north, 2400 high, clockwise from the north-west corner.
plan::Plan corridor() {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    plan::Room room;
    room.id = "room";
    room.storey = "ground";
    room.outline = {{0, 2000}, {8000, 2000}, {8000, 0}, {0, 0}};
    for (const char* id : {"A", "B", "C", "D"}) {
        plan::Wall wall;
        wall.id = id;
        room.walls.push_back(wall);
    }
    room.ceiling.heights_mm = {2400};
    plan.rooms.push_back(room);
    return plan;
}

plan::Furniture fridge(plan::Vec2 at_mm) {
    plan::Furniture piece;
    piece.id = "fridge";
    piece.kind = "box";
    piece.room = "room";
    piece.layer = plan::kLayerFurniture;
    piece.at_mm = at_mm;
    piece.size = {600, 600, 2000};
    return piece;
}

/// On the north wall: u runs from west to east.
plan::Plate plateAt(double u_mm, double v_mm) {
    plan::Plate plate;
    plate.id = "plate";
    plate.room = "room";
    plate.host.kind = plan::Host::Kind::Wall;
    plate.host.wall = "A";
    plate.host.u_mm = u_mm;
    plate.host.v_mm = v_mm;
    return plate;
}
} // namespace

TEST_CASE("one looks along the room, not at the wall beside one") {
    const plan::Plan plan = corridor();
    const double step = std::numbers::pi / 36;
    // Yaw 0 is north, clockwise: east is a quarter turn, west three.
    CHECK(app::openYaw(plan, plan.rooms[0], {1000, 1000}) == Approx(std::numbers::pi / 2).margin(step));
    CHECK(app::openYaw(plan, plan.rooms[0], {7000, 1000}) == Approx(1.5 * std::numbers::pi).margin(step));
}

TEST_CASE("a piece as tall as the eye ends the look, a low one does not") {
    plan::Plan plan = corridor();
    plan.furniture.push_back(fridge({2000, 1000}));
    plan.furniture[0].size.width_mm = 600;
    plan.furniture[0].size.depth_mm = 2000;
    const double east = std::numbers::pi / 2;
    // Between the west wall, 1500 away, and the fridge's side, 200 away.
    CHECK(app::openYaw(plan, plan.rooms[0], {1500, 1000}) != Approx(east).margin(0.5));
    plan.furniture[0].size.height_mm = 700;
    CHECK(app::openYaw(plan, plan.rooms[0], {1500, 1000}) == Approx(east).margin(0.1));
}

TEST_CASE("a plate above a tall fridge is seen from higher up, and through a fridge that is seen past") {
    plan::Plan plan = corridor();
    plan.plates.push_back(plateAt(4000, 2100));
    plan.furniture.push_back(fridge({4000, 1700})); // 300 to 600 before the wall, 2000 high
    const app::Sighted sighted{&plan.plates[0], 80, 80, {}};
    const app::Sight sight(plan, sighted, {});
    // By similar triangles: the plate's lower edge (2064) is seen over the front edge (600 out, 2000 high)
    // from 1000 out only by an eye above 2064 - 64 * 1000 / 600 = 1957.
    CHECK_FALSE(sight.free({4000, 1000, 1600}));
    CHECK(sight.free({4000, 1000, 2100}));
    CHECK(app::Sight(plan, sighted, {"fridge"}).free({4000, 1000, 1600}));
}

TEST_CASE("the eye goes up for what is above 1700, but stays 200 under the ceiling") {
    CHECK(app::eyeFor(1050, 2400) == 1600);
    CHECK(app::eyeFor(1700, 2400) == 1600);
    CHECK(app::eyeFor(2000, 2400) == 2000);
    CHECK(app::eyeFor(2380, 2400) == 2200);
    CHECK(app::eyeFor(1750, 1800) == 1600);
}
