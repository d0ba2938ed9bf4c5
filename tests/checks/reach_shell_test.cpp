// What an arm reaches of a wall, worked out by hand. The bodies' measures are the pack's assumptions
// (common practice, no source).
#include "checks/reach_shell.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {
const catalogue::Body kBody{"adult", "an adult", 1600, 1400, 700, 400, 1800, "", catalogue::Grade::Practice};

/// Wall A of the room (4000 x 3000) with a box of a depth and a height before u 1000 to 2000.
checks::ReachColumn behind(double depth_mm, double height_mm, double bottom_mm = 0) {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    addRoom(plan, "room", 0, 4000);
    plan::Furniture piece;
    piece.id = piece.kind = "box";
    piece.room = "room";
    piece.layer = plan::kLayerFurniture;
    piece.size = {1000, depth_mm, height_mm};
    piece.bottom_mm = bottom_mm;
    piece.at_mm = {1500, 3000 - depth_mm / 2};
    plan.furniture.push_back(piece);
    const geometry::HouseIndex house(plan);
    const auto pack = packOf("international");
    const checks::Facts facts(house, shipped(), pack);
    const auto columns = checks::reachShell(facts, plan.rooms.front(), 0, kBody, 100);
    REQUIRE(columns.size() == 40);
    CHECK(columns[5].low_mm == 400); // bare wall beside it
    CHECK(columns[5].high_mm == 1800);
    return columns[15];
}
} // namespace

TEST_CASE("over a counter the hand works within a circle round the shoulder") {
    // sqrt(700^2 - 600^2) = 360.6 up and down from 1400.
    const auto over = behind(600, 900);
    CHECK(over.depth_mm == Approx(600).margin(0.5));
    CHECK(over.low_mm == Approx(1039.4).margin(0.5));
    CHECK(over.high_mm == Approx(1760.6).margin(0.5));
}

TEST_CASE(
    "nothing is reached over a counter deeper than the arm, or behind what is higher than the shoulder") {
    CHECK(behind(699, 900).high_mm > behind(699, 900).low_mm);
    CHECK(behind(701, 900).high_mm <= behind(701, 900).low_mm);
    CHECK(behind(300, 1399).high_mm > behind(300, 1399).low_mm);
    CHECK(behind(300, 1401).high_mm <= behind(300, 1401).low_mm);
}

TEST_CASE("what is low enough to step over, or hangs above the knees, keeps nobody off") {
    CHECK(behind(600, 199).low_mm == 400);
    CHECK(behind(600, 201).low_mm > 400);
    CHECK(behind(300, 700, 1420).high_mm == 1800);
}
