#include "houses.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

namespace {

/// West room 4000 wide, east room 100 beyond it and 500 further south; a door in the west room's wall B.
plan::Plan twoRooms() {
    plan::Plan plan = planOf({boxRoom("west", 0, 0, 4000, 3000), boxRoom("east", 4100, -500, 2000, 2500)});
    plan::Opening door = opening("door", plan::Opening::Kind::HingedDoor, "west", "B", 1400, 900, 0, 2100);
    door.joins = "east";
    plan.openings.push_back(door);
    return plan;
}

} // namespace

TEST_CASE("two faces one wall thickness apart are the sides of one wall, wherever the house stands") {
    for (const Move& move : kMoves) {
        INFO(move.name);
        const plan::Plan plan = moved(twoRooms(), move);
        const auto pairs = pairedFaces(plan, {"west", 1});
        REQUIRE(pairs.size() == 1);
        CHECK(pairs[0].other == FaceRef{"east", 3});
        // Wall B of the west room runs from y 3000 down; the east room begins at y 2000.
        CHECK(pairs[0].from_mm == Approx(1000));
        CHECK(pairs[0].to_mm == Approx(3000));
        CHECK(pairs[0].thickness_mm == Approx(100));
        const auto back = pairedFaces(plan, {"east", 3});
        REQUIRE(back.size() == 1);
        CHECK(back[0].other == FaceRef{"west", 1});
        CHECK(back[0].from_mm == Approx(500));
        CHECK(back[0].to_mm == Approx(2500));
    }
}

TEST_CASE("faces too far apart, on another storey, or facing the same way are not paired") {
    plan::Plan far = twoRooms();
    for (Vec2& corner : far.rooms[1].outline)
        corner.x += 70;
    CHECK(pairedFaces(far, {"west", 1}).empty());
    plan::Plan above = twoRooms();
    above.rooms[1].storey = "upper";
    CHECK(pairedFaces(above, {"west", 1}).empty());
    CHECK(pairedFaces(twoRooms(), {"west", 3}).empty());
    CHECK(pairedFaces(twoRooms(), {"west", 99}).empty());
    CHECK(pairedFaces(twoRooms(), {"nowhere", 0}).empty());
}

TEST_CASE("the build-up widens how far apart two sides may be") {
    plan::Plan plan = twoRooms();
    for (Vec2& corner : plan.rooms[1].outline)
        corner.x += 70;
    plan.rooms[0].walls[1].build_up.push_back({"plaster", 13, {}});
    CHECK(pairedFaces(plan, {"west", 1}).size() == 1);
}

TEST_CASE("a door of one room is a hole of the other, at the same place in the house") {
    for (const Move& move : kMoves) {
        INFO(move.name);
        const plan::Plan plan = moved(twoRooms(), move);
        const auto here = faceHoles(plan, {"west", 1});
        REQUIRE(here.size() == 1);
        CHECK(here[0].hosted_here);
        CHECK(here[0].left_mm == 1400);
        CHECK(here[0].right_mm == 2300);
        CHECK(here[0].through_mm == Approx(100));
        const auto there = faceHoles(plan, {"east", 3});
        REQUIRE(there.size() == 1);
        CHECK_FALSE(there[0].hosted_here);
        // u here 1400 to 2300 is y 1600 to 700; the east room's wall D begins at y -500.
        CHECK(there[0].left_mm == Approx(1200));
        CHECK(there[0].right_mm == Approx(2100));
        CHECK(there[0].bottom_mm == 0);
        CHECK(there[0].top_mm == 2100);
    }
}

TEST_CASE("an opening beyond the shared stretch is no hole of the other room") {
    plan::Plan plan = twoRooms();
    plan.openings[0].left_mm = 50; // y 2950 to 2050: the east room ends at 2000
    CHECK(faceHoles(plan, {"east", 3}).empty());
    CHECK(faceHoles(plan, {"west", 1}).size() == 1);
}
