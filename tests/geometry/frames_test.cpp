#include "houses.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

TEST_CASE("wall frames run left to right as seen from inside") {
    const plan::Room room = boxRoom("kitchen", 1000, 2000, 4000, 3000);
    struct Case {
        std::size_t wall;
        Vec3 origin, u, w;
        double length;
    };
    const std::vector<Case> cases = {
        {0, {1000, 5000, 0}, {1, 0, 0}, {0, -1, 0}, 4000},
        {1, {5000, 5000, 0}, {0, -1, 0}, {-1, 0, 0}, 3000},
        {2, {5000, 2000, 0}, {-1, 0, 0}, {0, 1, 0}, 4000},
        {3, {1000, 2000, 0}, {0, 1, 0}, {1, 0, 0}, 3000},
    };
    for (const Case& c : cases) {
        INFO("wall " << c.wall);
        const Frame frame = wallFrame(room, c.wall);
        CHECK(frame.origin_mm == c.origin);
        CHECK(frame.u == c.u);
        CHECK(frame.w == c.w);
        CHECK(frame.length_mm == c.length);
        CHECK(frame.height_mm == 2500);
    }
}

TEST_CASE("a column's faces look away from the column") {
    plan::Room room = boxRoom("hall", 0, 0, 4000, 4000);
    room.columns = {{{1000, 1000}, {1400, 1000}, {1400, 1300}, {1000, 1300}}};
    room.walls.clear();
    addWalls(room);
    const Frame south = wallFrame(room, 4);
    CHECK(south.origin_mm == Vec3{1000, 1000, 0});
    CHECK(south.w == Vec3{0, -1, 0});
    CHECK(wallFrame(room, 5).w == Vec3{1, 0, 0});
}

TEST_CASE("points on any wall come back from the house to within a millionth of a millimetre") {
    std::mt19937 random(20); // fixed seed: the same walls every time
    std::uniform_real_distribution<double> place(-900'000, 900'000);
    std::uniform_real_distribution<double> turn(0, 360);
    std::uniform_real_distribution<double> along(0, 6000);
    for (int i = 0; i < 2000; ++i) {
        plan::Room room = boxRoom("room", 0, 0, 6000, 4200);
        const Move move{"", turn(random), {place(random), place(random)}};
        for (Vec2& corner : room.outline)
            corner = move(corner);
        const Vec3 given{along(random), along(random) / 2, along(random) / 10};
        const Frame frame = wallFrame(room, static_cast<std::size_t>(i % 4));
        const Vec3 back = toFrame(frame, toHouse(frame, given));
        REQUIRE(length(back - given) < 1e-6);
        REQUIRE(length(cross(frame.u, frame.v) - frame.w) < 1e-12);
    }
}

TEST_CASE("points on every furniture face come back, and the face looks outwards") {
    plan::Furniture piece = pieceIn("box", "room", {0, 800}, {0, 500}, {100, 900});
    for (const double turn : {0.0, 90.0, 180.0, 270.0, 33.3, -45.0}) {
        piece.turn_deg = turn;
        for (const char* face : {"front", "back", "left", "right", "top", "bottom"}) {
            INFO(face << " at " << turn);
            const auto frame = furnitureFaceFrame(piece, face);
            REQUIRE(frame);
            CHECK(length(cross(frame->u, frame->v) - frame->w) < 1e-12);
            CHECK(length(toFrame(*frame, toHouse(*frame, {12, 345, 6})) - Vec3{12, 345, 6}) < 1e-6);
            const Vec3 centre = fromLocal(piece, {0, 0, 400});
            CHECK(dot(frame->w, toHouse(*frame, {frame->length_mm / 2, frame->height_mm / 2, 0}) - centre) >
                  0);
        }
    }
    CHECK_FALSE(furnitureFaceFrame(piece, "inside"));
}

TEST_CASE("heights on an upright furniture face count from the floor") {
    const plan::Furniture piece = pieceIn("wall-unit", "kitchen", {600, 1200}, {3870, 4200}, {1420, 2140});
    const auto front = furnitureFaceFrame(piece, "front");
    REQUIRE(front);
    CHECK(toHouse(*front, {100, 1500, 0}) == Vec3{700, 3870, 1500});
    CHECK(front->height_mm == 2140);
    const auto left = furnitureFaceFrame(piece, "left");
    CHECK(toHouse(*left, {0, 1420, 0}) == Vec3{600, 4200, 1420});
}

TEST_CASE("floor and ceiling are measured from the south-west corner of the room") {
    plan::Plan plan = planOf({boxRoom("hall", 500, 700, 3000, 2000, 2450)});
    plan::Host host;
    host.kind = plan::Host::Kind::Ceiling;
    host.u_mm = 1500;
    host.v_mm = 1000;
    CHECK(hostPoint(plan, "hall", host).value() == Vec3{2000, 1700, 2450});
    host.kind = plan::Host::Kind::Floor;
    CHECK(hostPoint(plan, "hall", host).value() == Vec3{2000, 1700, 0});
}

TEST_CASE("a host that is not there is named in a sentence") {
    plan::Plan plan = planOf({boxRoom("hall", 0, 0, 3000, 2000)});
    using Catch::Matchers::Contains;
    CHECK_THAT(hostFrame(plan, "attic", onWall("A", 0, 0)).error(), Contains("attic"));
    CHECK_THAT(hostFrame(plan, "hall", onWall("Z", 0, 0)).error(), Contains("no wall 'Z'"));
    plan::Host host;
    host.kind = plan::Host::Kind::Furniture;
    host.furniture = "desk-1";
    CHECK_THAT(hostFrame(plan, "hall", host).error(), Contains("desk-1"));
}

TEST_CASE("area and inside hold for an L-shaped room turned, mirrored and far away") {
    const std::vector<Vec2> shape = {{0, 4000}, {3000, 4000}, {3000, 2000}, {5000, 2000}, {5000, 0}, {0, 0}};
    for (const Move& move : kMoves) {
        for (const bool mirrored : {false, true}) {
            INFO(move.name << (mirrored ? " mirrored" : ""));
            const auto place = [&](Vec2 p) { return move(mirrored ? Vec2{-p.x, p.y} : p); };
            std::vector<Vec2> outline;
            for (const Vec2 p : shape)
                outline.push_back(place(p));
            CHECK(std::abs(signedArea(outline)) == Approx(16e6).epsilon(1e-9));
            CHECK((signedArea(outline) > 0) == mirrored);
            CHECK(insidePolygon(outline, place({1000, 3000})));
            CHECK(insidePolygon(outline, place({4999, 1})));
            CHECK_FALSE(insidePolygon(outline, place({3001, 2001})));
            CHECK_FALSE(insidePolygon(outline, place({-1, 2000})));
            CHECK_FALSE(insidePolygon(outline, place({-500, 4000})));
        }
    }
}

TEST_CASE("a point in a column is in no room") {
    plan::Plan plan = planOf({boxRoom("west", 0, 0, 3000, 3000), boxRoom("east", 3100, 0, 3000, 3000)});
    plan.rooms[0].columns = {{{1000, 1000}, {1400, 1000}, {1400, 1300}, {1000, 1300}}};
    REQUIRE(roomAt(plan, "ground", {500, 500}));
    CHECK(roomAt(plan, "ground", {500, 500})->id == "west");
    CHECK(roomAt(plan, "ground", {3500, 500})->id == "east");
    CHECK(roomAt(plan, "ground", {1200, 1150}) == nullptr);
    CHECK(roomAt(plan, "ground", {3050, 500}) == nullptr);
    CHECK(roomAt(plan, "upper", {500, 500}) == nullptr);
}
