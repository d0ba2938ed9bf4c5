// What a level cut and a look from above show. Expected numbers are worked by hand.
#include "geometry/plan_outline.hpp"
#include "geometry/wall_section.hpp"
#include "houses.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gangway;
using geometry::Vec2;

namespace {

bool covered(const std::vector<std::vector<Vec2>>& polygons, Vec2 at) {
    return std::ranges::any_of(polygons,
                               [&](const auto& polygon) { return geometry::insidePolygon(polygon, at); });
}

} // namespace

TEST_CASE("a room's walls are cut to their thickness, corners included") {
    auto room = test::boxRoom("only", 0, 0, 4000, 3000);
    room.walls[0].thickness_mm = 300;
    const auto plan = test::planOf({room});
    const auto cut = geometry::wallSections(geometry::HouseIndex(plan), plan.rooms[0]);
    CHECK(covered(cut, {2000, 3299}));
    CHECK_FALSE(covered(cut, {2000, 3301}));
    CHECK(covered(cut, {4099, 3299})); // the corner of a wall of 300 and one of 100
    CHECK_FALSE(covered(cut, {4101, 3299}));
    CHECK(covered(cut, {-99, -99}));
    CHECK_FALSE(covered(cut, {2000, 1500}));
}

TEST_CASE(
    "a wall between rooms is cut through to the other face, and its end in a third room's wall is closed") {
    const auto plan =
        test::planOf({test::boxRoom("long", 0, 0, 6000, 2000), test::boxRoom("left", 0, 2120, 2900, 2000),
                      test::boxRoom("right", 3020, 2120, 2980, 2000)});
    const auto cut = geometry::wallSections(geometry::HouseIndex(plan), plan.rooms[0]);
    CHECK(covered(cut, {1000, 2119}));
    CHECK(covered(cut, {2960, 2119}));
    CHECK_FALSE(covered(cut, {1000, 2121}));
}

TEST_CASE("a boundary that is no wall has no section") {
    auto room = test::boxRoom("only", 0, 0, 4000, 3000);
    room.walls[1].structure = plan::WallStructure::None;
    const auto plan = test::planOf({room});
    const auto cut = geometry::wallSections(geometry::HouseIndex(plan), plan.rooms[0]);
    CHECK_FALSE(covered(cut, {4050, 1500}));
    CHECK(covered(cut, {2000, 3050}));
}

TEST_CASE("from above a table's top lies over its legs and inside its footprint") {
    plan::Furniture table;
    table.kind = "table";
    table.at_mm = {1000, 2000};
    table.turn_deg = 90;
    table.size = {1600, 800, 740};
    const auto outlines = geometry::topOutlines(table);
    REQUIRE(outlines.size() >= 5);
    const auto highest = std::ranges::max_element(outlines, {}, &geometry::TopOutline::top_mm);
    CHECK(highest->top_mm == Approx(740));
    // Turned by 90 degrees the top is 800 along x and 1600 along y.
    const double area = geometry::signedArea(highest->hull_mm);
    CHECK(area == Approx(1600.0 * 800).epsilon(0.02));
    for (const Vec2 p : highest->hull_mm) {
        CHECK(std::abs(p.x - 1000) <= 400 + 1e-6);
        CHECK(std::abs(p.y - 2000) <= 800 + 1e-6);
    }
}

TEST_CASE("a stair's rise runs from its front to its back, or the other way when the plan says so") {
    plan::Furniture stair;
    stair.kind = "stair";
    stair.at_mm = {0, 0};
    stair.size = {900, 3000, 2700};
    const auto rise = geometry::stairRise(stair); // at turn 0 the back is to the north
    CHECK(rise.foot_mm.y == Approx(-1500));
    CHECK(rise.head_mm.y == Approx(1500));
    stair.with = {{"direction", 1}};
    CHECK(geometry::stairRise(stair).foot_mm.y == Approx(1500));
}
