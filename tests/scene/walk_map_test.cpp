#include "house.hpp"

#include <cmath>

using namespace gangway;
using plan::Vec2;

namespace {

struct Walk {
    plan::Plan plan = house::read();
    scene::WalkMap map{plan, "ground"};
};

bool legsFree(const scene::WalkMap& map, Vec2 from, const std::vector<Vec2>& way) {
    for (const Vec2 to : way) {
        for (int i = 0; i <= 200; ++i) {
            if (!map.free(from + (to - from) * (i / 200.0))) return false;
        }
        from = to;
    }
    return true;
}

} // namespace

TEST_CASE("one can stand in a room but not in a wall, in a piece of furniture or outside") {
    const Walk walk;
    CHECK(walk.map.free({1750, 2000}));
    CHECK_FALSE(walk.map.free({100, 2000}));   // nearer to the wall than a body's radius
    CHECK_FALSE(walk.map.free({3550, 2200}));  // in the wall between
    CHECK_FALSE(walk.map.free({4500, -900}));  // in the wardrobe
    CHECK_FALSE(walk.map.free({-2000, 2000})); // outside
    CHECK_FALSE(walk.map.free({1e7, -1e7}));
}

TEST_CASE("a rug is walked over and a stair walked onto") {
    const Walk walk;
    CHECK(walk.map.free({1800, 2000}));
    CHECK(walk.map.free({3500, 4550}));
}

TEST_CASE("one cannot leave the house through its front door") {
    const Walk walk;
    const Vec2 end = walk.map.move({1000, 950}, {-3000, 950});
    CHECK(end.x > 200);
    CHECK(walk.map.way({1000, 950}, {-1000, 950}).empty());
}

TEST_CASE("one cannot walk into a wardrobe") {
    const Walk walk;
    const Vec2 end = walk.map.move({4500, 500}, {4500, -900});
    CHECK(end.y > -600 + 200);
    CHECK(walk.map.free(end));
}

TEST_CASE("one passes a door into the next room") {
    const Walk walk;
    const Vec2 end = walk.map.move({3000, 900}, {4200, 900});
    CHECK(end.x == Approx(4200).margin(20));
    CHECK(end.y == Approx(900).margin(60));
}

TEST_CASE("walking at a slant into a wall slides along it") {
    const Walk walk;
    const Vec2 end = walk.map.move({600, 2000}, {100, 3000});
    CHECK(end.y > 2700);
    CHECK(walk.map.free(end));
}

TEST_CASE("a way round the bed is found and each of its legs is free") {
    const Walk walk;
    const Vec2 from{7000, 1950};
    const Vec2 to{7000, -750};
    REQUIRE(walk.map.free(from));
    REQUIRE(walk.map.free(to));
    const auto way = walk.map.way(from, to);
    REQUIRE(way.size() >= 3);
    CHECK(way.back() == to);
    CHECK(legsFree(walk.map, from, way));
    // Taut: out and round two corners 250 off the bed's foot at x 5600, 1600 wide, no longer than 15 % over
    // that.
    double length = 0;
    Vec2 at = from;
    for (const Vec2 p : way) {
        length += plan::length(p - at);
        at = p;
    }
    const double shortest = 2 * std::hypot(7000 - 5450, 1950 - 1550) + 1900;
    CHECK(length < 1.15 * shortest);
    CHECK(way.size() <= 8);
}

TEST_CASE("a way leads through the L-shaped room and the door into the bedroom") {
    const Walk walk;
    const Vec2 from{5500, 3200};
    const Vec2 to{4200, 1900};
    const auto way = walk.map.way(from, to);
    REQUIRE_FALSE(way.empty());
    CHECK(legsFree(walk.map, from, way));
}

TEST_CASE("a closed wall without the door leaves no way") {
    plan::Plan plan = house::read();
    std::erase_if(plan.openings, [](const plan::Opening& o) { return o.id == "bedroom-door"; });
    const scene::WalkMap map(plan, "ground");
    CHECK(map.way({1750, 2000}, {4200, 1900}).empty());
}

TEST_CASE("an opening of 500 lets a body through and one of 450 does not") {
    for (const double width : {500.0, 800.0, 450.0}) {
        plan::Plan plan = house::read();
        for (plan::Opening& opening : plan.openings) {
            if (opening.id == "bedroom-door") opening.width_mm = width;
        }
        const scene::WalkMap map(plan, "ground");
        INFO(width);
        CHECK(map.way({1750, 2000}, {4200, 1900}).empty() == (width < 500));
    }
}

TEST_CASE("the nearest free place to a bed's middle is beside it") {
    const Walk walk;
    const Vec2 place = walk.map.nearestFree({6600, 900});
    CHECK(walk.map.free(place));
    CHECK(place.y > 1600);
    CHECK(place.y < 1800);
    CHECK(walk.map.nearestFree({1750, 2000}) == Vec2{1750, 2000});
}

TEST_CASE("a stair links its foot to the storey above") {
    const plan::Plan plan = house::read();
    const auto links = scene::stairLinks(plan);
    REQUIRE(links.size() == 1);
    CHECK(links[0].furniture == "stair");
    CHECK(links[0].lower_storey == "ground");
    CHECK(links[0].upper_storey == "upper");
    CHECK(links[0].lower_mm.x < 2900); // before the first step, in the west
    CHECK(links[0].upper_mm.x > 5800); // past the last one, in the east
    CHECK(scene::WalkMap(plan, "upper").free(links[0].upper_mm));
}

TEST_CASE("a stair that reaches no floor links nothing") {
    plan::Plan plan = house::read();
    for (plan::Storey& storey : plan.storeys) {
        if (storey.id == "upper") storey.elevation_mm = 4000;
    }
    CHECK(scene::stairLinks(plan).empty());
}

TEST_CASE("a storey without rooms has no place to stand") {
    const scene::WalkMap map(house::read(), "cellar");
    CHECK_FALSE(map.free({0, 0}));
    CHECK(map.way({0, 0}, {100, 100}).empty());
    CHECK(map.nearestFree({5, 6}) == Vec2{5, 6});
    CHECK(map.move({5, 6}, {500, 6}) == Vec2{5, 6});
}
