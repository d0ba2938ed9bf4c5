#include "houses.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

TEST_CASE("a piece against a wall shows there with its own outline and distance") {
    plan::Plan drawn = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    drawn.furniture = {pieceIn("box", "room", {500, 1500}, {2600, 2990}, {0, 900})};
    for (const Move& move : kMoves) {
        INFO(move.name);
        const plan::Plan plan = moved(drawn, move);
        const auto seen = silhouettes(plan, plan.rooms[0], 0);
        REQUIRE(seen.size() == 1);
        CHECK(seen[0].piece == &plan.furniture[0]);
        CHECK(seen[0].near_mm == Approx(10).margin(1e-6));
        CHECK(seen[0].far_mm == Approx(400));
        REQUIRE(seen[0].hulls_mm.size() == 1);
        double left = 1e9, right = -1e9, top = -1e9;
        for (const Vec2 p : seen[0].hulls_mm[0]) {
            left = std::min(left, p.x);
            right = std::max(right, p.x);
            top = std::max(top, p.y);
        }
        CHECK(left == Approx(500));
        CHECK(right == Approx(1500));
        CHECK(top == Approx(900));
        CHECK(signedArea(seen[0].hulls_mm[0]) > 0);
    }
}

TEST_CASE("pieces out of reach, of another room or beside the wall do not show") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000), boxRoom("next", 0, 3100, 4000, 3000)});
    plan.furniture = {pieceIn("box", "room", {500, 1500}, {100, 500}, {0, 900}),
                      pieceIn("box", "next", {500, 1500}, {3200, 3600}, {0, 900})};
    CHECK(silhouettes(plan, plan.rooms[0], 0).empty());
    CHECK(silhouettes(plan, plan.rooms[0], 0, 2600).size() == 1);
    CHECK(silhouettes(plan, plan.rooms[0], 2).size() == 1);
}

TEST_CASE("the knee space of a desk is not part of its silhouette") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.furniture = {pieceIn("desk", "room", {500, 1900}, {2300, 3000}, {0, 740})};
    const auto seen = silhouettes(plan, plan.rooms[0], 0);
    REQUIRE(seen.size() == 1);
    for (const auto& hull : seen[0].hulls_mm)
        CHECK_FALSE(insidePolygon(hull, {1200, 300}));
}
