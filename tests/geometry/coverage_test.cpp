#include "houses.hpp"

#include "plan/furniture_kinds.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

namespace {

// Numbers of the invented demo house, checked there by script: furniture boxes, doors and seeded mistakes.

plan::Plan kitchen() {
    plan::Plan plan = planOf({boxRoom("kitchen", 0, 0, 6200, 4200)});
    plan::Opening door =
        opening("kitchen-door", plan::Opening::Kind::HingedDoor, "kitchen", "D", 250, 900, 0, 2100);
    door.name = "hall door";
    door.frame_mm = 37;
    plan.openings.push_back(door);
    plan.furniture = {pieceIn("radiator", "kitchen", {1300, 2500}, {0, 100}, {150, 750}, 180)};
    return plan;
}

plan::Plan bedroom() {
    plan::Plan plan = planOf({boxRoom("bedroom", 0, 0, 4200, 3600, 2450)});
    plan::Furniture bed = pieceIn("bed", "bedroom", {1170, 3030}, {1500, 3600}, {0, 600});
    bed.with = {{"headboardWidth", 2400}, {"headboardHeight", 1150}, {"headboardDepth", 80}};
    bed.at_mm.x = 2100;
    plan.furniture = {bed, pieceIn("bedside-table", "bedroom", {700, 1150}, {3120, 3520}, {0, 550})};
    return plan;
}

} // namespace

TEST_CASE("a switch behind an open door leaf is covered by the leaf") {
    const plan::Plan plan = kitchen();
    // Wall C: u = 6200 - x. The leaf covers x 0 to 826, 243 off the wall.
    const auto covers = coversOf(plan, "kitchen", onWall("C", 6200 - 420, 1050), 86, 86);
    REQUIRE(covers.size() == 1);
    CHECK(covers[0].by == Cover::By::DoorLeaf);
    CHECK(covers[0].id == "kitchen-door");
    CHECK(covers[0].name == "hall door");
    CHECK(covers[0].covered_part == 1);
    CHECK(covers[0].gap_mm == Approx(243));
    CHECK(coversOf(plan, "kitchen", onWall("C", 6200 - 826 + 43.5, 1050), 86, 86).size() == 1);
    CHECK(coversOf(plan, "kitchen", onWall("C", 6200 - 826 - 44, 1050), 86, 86).empty());
}

TEST_CASE("a plate outside the swing and 1313 or more along is free") {
    CHECK(coversOf(kitchen(), "kitchen", onWall("D", 1320, 1050), 146, 86).empty());
}

TEST_CASE("a socket behind a radiator is covered, beside it it is not") {
    const plan::Plan plan = kitchen();
    const auto covers = coversOf(plan, "kitchen", onWall("C", 6200 - 2300, 450), 86, 86);
    REQUIRE(covers.size() == 1);
    CHECK(covers[0].covered_part == 1);
    CHECK(covers[0].name == "radiator");
    CHECK(covers[0].gap_mm == Approx(35)); // its stand-off
    CHECK(coversOf(plan, "kitchen", onWall("C", 6200 - 2800, 450), 86, 86).empty());
}

TEST_CASE("a switch behind a shoe cabinet is covered; at y 2713 it is free") {
    plan::Plan plan = planOf({boxRoom("hall", 0, 0, 1950, 5600)});
    plan.furniture = {pieceIn("shoe-cabinet", "hall", {1600, 1950}, {2900, 3900}, {0, 1100}, 270)};
    const auto covers = coversOf(plan, "hall", onWall("B", 5600 - 2950, 1000), 86, 86);
    REQUIRE(covers.size() == 1);
    CHECK(covers[0].covered_part == 1);
    CHECK(covers[0].gap_mm == Approx(0).margin(1e-6));
    CHECK(coversOf(plan, "hall", onWall("B", 5600 - 2713, 1000), 86, 86).empty());
}

TEST_CASE("a triple socket is hidden by the headboard over 136.5 of its 223") {
    const plan::Plan drawn = bedroom();
    for (const Move& move : kMoves) {
        INFO(move.name);
        const auto covers = coversOf(moved(drawn, move), "bedroom", onWall("A", 925, 700), 223, 81);
        REQUIRE(covers.size() == 1);
        CHECK(covers[0].id == "bed");
        CHECK(covers[0].covered_part == Approx(136.5 / 223).margin(0.04));
        CHECK(covers[0].gap_mm == Approx(0).margin(1e-4));
    }
    CHECK(coversOf(drawn, "bedroom", onWall("A", 778.5, 700), 223, 81).empty());
}

TEST_CASE("a plate low behind a bedside table counts the table's voids and solids") {
    const auto covers = coversOf(bedroom(), "bedroom", onWall("A", 860, 300), 81, 81);
    REQUIRE(covers.size() == 1);
    CHECK(covers[0].id == "bedside-table");
    CHECK(covers[0].gap_mm == Approx(80)); // the table stands in line with the bed, a headboard's depth off
}

TEST_CASE("a plate on a piece of furniture is not covered by that piece, but by one before it") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.furniture = {pieceIn("island", "room", {1500, 3300}, {1000, 1900}, {0, 920}),
                      pieceIn("box", "room", {1500, 2000}, {600, 900}, {0, 900})};
    plan::Host host;
    host.kind = plan::Host::Kind::Furniture;
    host.furniture = "island";
    host.face = "front";
    host.u_mm = 200;
    host.v_mm = 500;
    const auto covers = coversOf(plan, "room", host, 86, 86);
    REQUIRE(covers.size() == 1);
    CHECK(covers[0].id == "box");
    CHECK(covers[0].gap_mm == Approx(100));
    host.u_mm = 1500;
    CHECK(coversOf(plan, "room", host, 86, 86).empty());
}

TEST_CASE("a rug covers nothing and a desk only what its top and legs hide") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.furniture = {pieceIn("rug", "room", {500, 2500}, {500, 2500}, {0, 10}),
                      pieceIn("desk", "room", {1000, 2400}, {2300, 3000}, {0, 740})};
    plan::Host floor;
    floor.kind = plan::Host::Kind::Floor;
    floor.u_mm = 700;
    floor.v_mm = 700;
    CHECK(coversOf(plan, "room", floor, 86, 86).empty());
    CHECK(coversOf(plan, "room", onWall("A", 1700, 400), 86, 86).empty()); // in the knee space
    CHECK(coversOf(plan, "room", onWall("A", 1700, 730), 86, 86).size() == 1);
}

TEST_CASE("what is further away than the reach does not cover") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.furniture = {pieceIn("wardrobe", "room", {0, 4000}, {0, 600}, {0, 2400}, 180)};
    CHECK(coversOf(plan, "room", onWall("A", 2000, 1000), 86, 86).empty());
    CHECK(coversOf(plan, "room", onWall("A", 2000, 1000), 86, 86, 2600).size() == 1);
}

TEST_CASE("covers come with the most covering first") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan::Furniture half = pieceIn("box", "room", {960, 1000}, {2800, 2900}, {0, 2000});
    half.id = "half";
    plan.furniture = {half, pieceIn("wardrobe", "room", {500, 2000}, {2200, 2790}, {0, 2400})};
    const auto covers = coversOf(plan, "room", onWall("A", 1000, 1000), 80, 80);
    REQUIRE(covers.size() == 2);
    CHECK(covers[0].id == "wardrobe");
    CHECK(covers[1].id == "half");
    CHECK(covers[1].covered_part == Approx(0.5).margin(0.05));
}

TEST_CASE("a ray meets a triangle where the plane says, from either side, and misses beside it") {
    meshes::Mesh mesh;
    mesh.positions_mm = {{0, 0, 100}, {100, 0, 100}, {0, 100, 100}};
    mesh.triangles = {{0, 1, 2}};
    CHECK(rayHit(mesh, {20, 20, 0}, {0, 0, 1}).value() == Approx(100));
    CHECK(rayHit(mesh, {20, 20, 150}, {0, 0, -1}).value() == Approx(50));
    CHECK_FALSE(rayHit(mesh, {60, 60, 0}, {0, 0, 1}));
    CHECK_FALSE(rayHit(mesh, {20, 20, 150}, {0, 0, 1}));
    CHECK_FALSE(rayHit(mesh, {20, 20, 100.5}, {1, 0, 0}));
}
