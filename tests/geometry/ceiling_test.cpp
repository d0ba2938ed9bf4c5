#include "houses.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

namespace {

/// 6000 x 4000 with a ridge at 3200 halfway along x, running north to south; eaves at 1200.
plan::Room atticRoom() {
    plan::Room room;
    room.id = "attic";
    room.storey = "ground";
    room.outline = {{0, 4000}, {3000, 4000}, {6000, 4000}, {6000, 0}, {3000, 0}, {0, 0}};
    room.ceiling.heights_mm = {1200, 3200, 1200, 1200, 3200, 1200};
    room.ceiling.creases = {{1, 4}};
    addWalls(room);
    return room;
}

} // namespace

TEST_CASE("a sloped ceiling rises along its slope to the ridge and is plane on each side") {
    const plan::Plan drawn = planOf({atticRoom()});
    for (const Move& move : kMoves) {
        INFO(move.name);
        const plan::Room room = moved(drawn, move).rooms.front();
        // By proportion: 2000 over 3000 from eaves to ridge.
        CHECK(ceilingHeightAt(room, move({0, 2000})) == Approx(1200));
        CHECK(ceilingHeightAt(room, move({1500, 2000})) == Approx(2200));
        CHECK(ceilingHeightAt(room, move({1500, 123})) == Approx(2200));
        CHECK(ceilingHeightAt(room, move({3000, 777})) == Approx(3200));
        CHECK(ceilingHeightAt(room, move({4500, 3999})) == Approx(2200));
    }
}

TEST_CASE("a wall under a slope is a trapezium, one at the eaves a rectangle") {
    const plan::Room room = atticRoom();
    CHECK(wallOutline(room, 0) == std::vector<Vec2>{{0, 0}, {3000, 0}, {3000, 3200}, {0, 1200}});
    CHECK(wallOutline(room, 2) == std::vector<Vec2>{{0, 0}, {4000, 0}, {4000, 1200}, {0, 1200}});
    CHECK(wallFrame(room, 0).height_mm == 3200);
}

TEST_CASE("a column under the ridge gets the ridge into its outline") {
    plan::Room room = atticRoom();
    room.columns = {{{2800, 1000}, {3200, 1000}, {3200, 1300}, {2800, 1300}}};
    addWalls(room);
    const auto outline = wallOutline(room, 6);
    REQUIRE(outline.size() == 5);
    CHECK(outline[3].x == Approx(200));
    CHECK(outline[3].y == Approx(3200));
    CHECK(outline[2].y == Approx(3200 - 200 * 2000.0 / 3000));
}

TEST_CASE("without creases a mono-pitch is plane") {
    plan::Room room = boxRoom("lean-to", 0, 0, 3000, 2000);
    room.ceiling.heights_mm = {3000, 3000, 2000, 2000};
    CHECK(ceilingHeightAt(room, {700, 1000}) == Approx(2500));
    CHECK(ceilingHeightAt(room, {2900, 500}) == Approx(2250));
}

TEST_CASE("a ceiling lamp under a slope hangs at the slope's height") {
    plan::Plan plan = planOf({atticRoom()});
    plan::Host host;
    host.kind = plan::Host::Kind::Ceiling;
    host.u_mm = 1500;
    host.v_mm = 2000;
    CHECK(hostPoint(plan, "attic", host).value().z == Approx(2200));
}
