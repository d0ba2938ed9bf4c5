// Faces found under a point, and the two sides of a wall. All expected numbers are worked by hand from the
// rooms' coordinates.
#include "geometry/wall_hit.hpp"
#include "houses.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace gangway;
using geometry::HouseIndex;
using geometry::Vec2;

namespace {

/// A room 4000 x 3000 at the origin, one 2500 x 3000 east of it behind a wall of 120.
plan::Plan twoBesideEachOther() {
    auto west = test::boxRoom("west", 0, 0, 4000, 3000);
    auto east = test::boxRoom("east", 4120, 0, 2500, 3000);
    for (auto* room : {&west, &east})
        for (auto& wall : room->walls)
            wall.thickness_mm = 120;
    return test::planOf({west, east});
}

plan::Plan turned(plan::Plan plan, double degrees, Vec2 shift) {
    const double angle = degrees * std::numbers::pi / 180;
    for (auto& room : plan.rooms)
        for (auto& p : room.outline)
            p = Vec2{p.x * std::cos(angle) - p.y * std::sin(angle),
                     p.x * std::sin(angle) + p.y * std::cos(angle)} +
                shift;
    return plan;
}

} // namespace

TEST_CASE("a point before a wall is at that wall's u") {
    const auto plan = twoBesideEachOther();
    const HouseIndex house(plan);
    // North wall of the west room runs east from (0, 3000).
    const auto hit = geometry::wallAt(house, "ground", {1200, 2900}, 300);
    REQUIRE(hit);
    CHECK(hit->room == "west");
    CHECK(hit->wall == 0);
    CHECK(hit->u_mm == Approx(1200));
    CHECK(hit->distance_mm == Approx(100));
}

TEST_CASE("of a wall between two rooms the face on the point's side is found") {
    const auto plan = twoBesideEachOther();
    const HouseIndex house(plan);
    const auto west = geometry::wallAt(house, "ground", {3999, 1000}, 300);
    const auto east = geometry::wallAt(house, "ground", {4121, 1000}, 300);
    const auto nearer_east = geometry::wallAt(house, "ground", {4100, 1000}, 300); // within the wall
    REQUIRE(west);
    REQUIRE(east);
    REQUIRE(nearer_east);
    CHECK(west->room == "west");
    CHECK(west->u_mm == Approx(2000)); // its east wall runs south from (4000, 3000)
    CHECK(east->room == "east");
    CHECK(east->u_mm == Approx(1000)); // its west wall runs north from (4120, 0)
    CHECK(nearer_east->room == "east");
}

TEST_CASE("a face out of reach, another storey and a boundary that is no wall are not found") {
    auto plan = twoBesideEachOther();
    {
        const HouseIndex house(plan);
        CHECK_FALSE(geometry::wallAt(house, "ground", {2000, 1500}, 300));
        CHECK_FALSE(geometry::wallAt(house, "upper", {1200, 2900}, 300));
        CHECK(geometry::wallAt(house, "ground", {1200, 3110}, 150)); // from outside
        CHECK_FALSE(geometry::wallAt(house, "ground", {1200, 3300}, 150));
    }
    plan.rooms[0].walls[0].structure = plan::WallStructure::None;
    CHECK_FALSE(geometry::wallAt(HouseIndex(plan), "ground", {1200, 2900}, 300));
}

TEST_CASE("the other face is the same place seen from the other room") {
    auto plan = twoBesideEachOther();
    plan::Plate plate;
    plate.room = "west";
    plate.host = test::onWall("B", 2000, 450);
    const auto other = geometry::otherFace(plan, plate);
    REQUIRE(other);
    CHECK(other->room == "east");
    CHECK(other->host.wall == "D");
    CHECK(other->host.u_mm == Approx(1000)); // 3000 - 2000: it runs the other way
    CHECK(other->host.v_mm == 450);
    plate.host = test::onWall("A", 2000, 450);
    CHECK_FALSE(geometry::otherFace(plan, plate)); // nothing lies behind
    plate.host.kind = plan::Host::Kind::Floor;
    CHECK_FALSE(geometry::otherFace(plan, plate));
}

TEST_CASE(
    "flipping twice returns to the same place, turned, far out, and where faces are not quite parallel") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> u_mm(100, 2900);
    std::uniform_real_distribution<double> degrees(0, 360);
    for (int i = 0; i < 200; ++i) {
        auto skewed = twoBesideEachOther();
        skewed.rooms[1].outline.back().x += i % 20; // up to 0.36 degrees
        const auto plan = turned(skewed, degrees(random), {1e5 * (i % 3), -2e5});
        const HouseIndex house(plan);
        const auto from = test::onWall("B", u_mm(random), 1050);
        const auto there = geometry::otherFace(house, "west", from);
        REQUIRE(there);
        const auto back = geometry::otherFace(house, there->room, there->host);
        REQUIRE(back);
        CHECK(back->room == "west");
        CHECK(back->host.wall == "B");
        CHECK(back->host.u_mm == Approx(from.u_mm).margin(1e-6));
        CHECK(back->host.v_mm == from.v_mm);
    }
}
