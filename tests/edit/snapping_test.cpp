#include "arranging.hpp"
#include "edit/snapping.hpp"
#include "plan_on_disk.hpp"

#include <algorithm>
#include <random>

using namespace gangway;
using namespace gangway::test;
using edit::Guide;
using Axis = Guide::Axis;
using Part = Guide::Part;

namespace {

constexpr plan::Vec2 kSize{81, 81};

/// 4000 x 3000: a window with casing (edges 1450 and 2550, sill 900), a base unit (3000 to 3600, top 920) and
/// a plate at (1000, 300) at wall A; a door with casing (edges 40 and 1060) and a plate at 1050 in wall C;
/// tiles of 200 with joints of 3 on wall B from 900 to 1500.
plan::Plan furnishedRoom() {
    using Kind = plan::Opening::Kind;
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.openings = {opening("window", Kind::Window, "room", "A", 1500, 1000, 900, 1200),
                     opening("door", Kind::HingedDoor, "room", "C", 100, 900, 0, 2100)};
    plan.openings[0].casing_mm = 50;
    plan.openings[1].casing_mm = 60;
    plan.openings[1].name = "door to the hall";
    plan.furniture = {pieceIn("base-unit", "room", {3000, 3600}, {2400, 3000}, {0, 920})};
    plan.furniture[0].name = "base unit";
    plan.plates = {plateOn("r1", "room", onWall("A", 1000, 300)),
                   plateOn("r2", "room", onWall("C", 1500, 1050))};
    plan.plates[0].tag = "R-01";
    plan.plates[1].tag = "R-02";
    plan::WallLine tiles;
    tiles.kind = plan::WallLine::Kind::Tiles;
    tiles.bottom_mm = 900;
    tiles.height_mm = 600;
    tiles.tile_width_mm = tiles.tile_height_mm = 200;
    tiles.joint_mm = 3;
    tiles.start_v_mm = 900;
    plan.rooms[0].walls[1].lines = {tiles};
    return plan;
}

std::vector<Guide> guidesAt(const plan::Plan& plan, const plan::Host& host,
                            const edit::UsualPlaces& usual = {},
                            const std::vector<std::string>& except = {}) {
    const geometry::HouseIndex house(plan);
    return edit::guides(house, plainCatalogue(), "room", host, except, usual);
}

/// The reason of the guide at a place; empty when there is none.
std::string reasonAt(const std::vector<Guide>& guides, Axis axis, Part part, double at_mm) {
    for (const Guide& guide : guides)
        if (guide.axis == axis && guide.part == part && std::abs(guide.at_mm - at_mm) < 1e-6)
            return guide.reason;
    return {};
}

const edit::UsualPlaces kUsual{
    {{"socket outlets", 450, "common practice, no source", {}},
     {"over a worktop", 150, "common practice, no source", edit::UsualHeight::From::Worktop}},
    150};

} // namespace

TEST_CASE("a plate lines up with plates, openings, furniture and usual heights of its wall") {
    const plan::Plan plan = furnishedRoom();
    const auto found = guidesAt(plan, onWall("A", 800, 310), kUsual);
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 1000) == "centre of R-01");
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 300) == "height of R-01");
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 1050) == "height of R-02"); // on another wall
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 1500).empty()); // whose u is not this wall's
    CHECK(reasonAt(found, Axis::Along, Part::LowEdge, 1040.5) == "touches R-01");
    CHECK(reasonAt(found, Axis::Along, Part::HighEdge, 959.5) == "touches R-01");
    CHECK(reasonAt(found, Axis::Along, Part::HighEdge, 1450) == "right edge at window");
    CHECK(reasonAt(found, Axis::Along, Part::LowEdge, 2550) == "left edge at window");
    CHECK(reasonAt(found, Axis::Height, Part::HighEdge, 900) == "top edge at the sill of window");
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 3300) == "middle of base unit");
    CHECK(reasonAt(found, Axis::Along, Part::LowEdge, 3000) == "left edge at base unit, left edge");
    CHECK(reasonAt(found, Axis::Along, Part::HighEdge, 3600) == "right edge at base unit, right edge");
    CHECK(reasonAt(found, Axis::Height, Part::LowEdge, 920) == "lower edge at the top of base unit");
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 450) == "usual height: socket outlets");
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 1070) == "usual height: over a worktop"); // 920 + 150
    CHECK(reasonAt(found, Axis::Along, Part::HighEdge, 4000) == "right end");
    // The window's middle and the wall's are both at 2000; one guide is kept.
    CHECK_FALSE(reasonAt(found, Axis::Along, Part::Centre, 2000).empty());
    CHECK(
        reasonAt(guidesAt(plan, onWall("A", 800, 310), {}, {"r1"}), Axis::Height, Part::Centre, 300).empty());
}

TEST_CASE("the usual distance from a jamb counts from the casing's outer edge") {
    const auto found = guidesAt(furnishedRoom(), onWall("C", 1200, 1050), kUsual);
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 1210) ==
          "usual distance: 150 mm from door to the hall"); // 100 + 900 + 60 + 150
    CHECK(reasonAt(found, Axis::Along, Part::LowEdge, 1060) == "left edge at door to the hall");
    CHECK(reasonAt(guidesAt(furnishedRoom(), onWall("A", 800, 310), kUsual), Axis::Along, Part::Centre, 2700)
              .empty()); // a window has no usual distance
}

TEST_CASE("what is far above or below a plate does not hold it along the wall") {
    const auto found = guidesAt(furnishedRoom(), onWall("A", 3100, 2400));
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 3300).empty());
    CHECK(reasonAt(found, Axis::Height, Part::LowEdge, 920) == "lower edge at the top of base unit");
}

// Tiles from u = 0 and v = 900, pitch 203: the first joint's middle is at 201.5, the first tile's at 100.
TEST_CASE("a plate lies on the middle of a tile or of a joint") {
    const auto found = guidesAt(furnishedRoom(), onWall("B", 500, 1000));
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 100) == "middle of a tile");
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 201.5) == "tile joint");
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 2942) == "middle of a tile"); // 14 x 203 + 100
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 1000) == "middle of a tile");
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 1101.5) == "tile joint");
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 797).empty()); // below the field
}

// The bed is 1660 wide about u = 2000, its headboard 2400 wide and 1000 high: edges 800 and 3200.
TEST_CASE("a headboard's edges and top are lined up with, and its own face") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.furniture = {pieceIn("bed", "room", {1170, 2830}, {100, 3000}, {0, 550})};
    plan.furniture[0].with = {{"headboardWidth", 2400}, {"headboardHeight", 1000}};
    for (const Move& move : kMoves) {
        INFO(move.name);
        const plan::Plan turned = moved(plan, move);
        const auto found = guidesAt(turned, onWall("A", 700, 900));
        CHECK_FALSE(reasonAt(found, Axis::Along, Part::HighEdge, 800).empty());
        CHECK_FALSE(reasonAt(found, Axis::Along, Part::LowEdge, 3200).empty());
        CHECK(reasonAt(found, Axis::Height, Part::LowEdge, 1000) == "lower edge at the top of the headboard");
        // From the foot's wall the headboard is not what stands there.
        const auto foot = guidesAt(turned, onWall("C", 700, 900));
        CHECK(reasonAt(foot, Axis::Height, Part::LowEdge, 1000).empty());
    }
    plan::Host face;
    face.kind = plan::Host::Kind::Furniture;
    face.furniture = "bed";
    face.face = "front";
    face.v_mm = 800;
    const auto on_bed = guidesAt(plan, face, kUsual);
    CHECK(reasonAt(on_bed, Axis::Along, Part::Centre, 830) == "middle between the ends");
    CHECK(reasonAt(on_bed, Axis::Height, Part::Centre, 450) == "usual height: socket outlets");
}

TEST_CASE("a floor has its middle and its plates, but no usual heights") {
    plan::Plan plan = furnishedRoom();
    plan::Host floor;
    floor.kind = plan::Host::Kind::Floor;
    floor.u_mm = 900;
    floor.v_mm = 700;
    plan.plates.push_back(plateOn("f", "room", floor));
    const auto found = guidesAt(plan, floor, kUsual, {"r1"});
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 900) == "centre of f");
    CHECK(reasonAt(found, Axis::Along, Part::Centre, 2000) == "middle");
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 1500) == "middle");
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 450).empty());
    CHECK(reasonAt(found, Axis::Height, Part::Centre, 1050).empty());
    CHECK(guidesAt(plan, onWall("Z", 1, 1)).empty());
}

TEST_CASE("a plate goes to the nearest guide within the tolerance and its edge to the edge of a casing") {
    const auto found = guidesAt(furnishedRoom(), onWall("A", 2600, 308));
    const edit::Snapped snapped = edit::snap(found, 2600, 308, kSize, 12);
    CHECK(snapped.u_mm == Approx(2590.5)); // the casing's edge, 2550, and half a plate
    CHECK(snapped.v_mm == Approx(300));
    REQUIRE(snapped.along);
    CHECK(snapped.along->reason == "left edge at window");
    CHECK(snapped.along->from_mm == plan::Vec2{2550, 308}); // from where the plate is to what it comes from
    CHECK(snapped.along->to_mm == plan::Vec2{2550, 2150});
    REQUIRE(snapped.height);
    CHECK(snapped.height->reason == "height of R-01");
    const edit::Snapped free = edit::snap(found, 2600, 308, kSize, 5);
    CHECK(free.u_mm == 2600);
    CHECK(free.v_mm == 308);
    CHECK_FALSE(free.along);
    CHECK_FALSE(free.height);
}

TEST_CASE("of two guides equally near the one with the lower rank counts") {
    const std::vector<Guide> two = {{Axis::Along, Part::Centre, 990, "left", 5, {}, {}},
                                    {Axis::Along, Part::Centre, 1010, "right", 2, {}, {}}};
    CHECK(edit::snap(two, 1000, 0, kSize, 20).along->reason == "right");
    CHECK(edit::snap(two, 999, 0, kSize, 20).along->reason == "left");
}

TEST_CASE("snapping never moves a plate by more than its tolerance, and again changes nothing") {
    const plan::Plan plan = furnishedRoom();
    const geometry::HouseIndex house(plan);
    std::mt19937 random(20260301);
    std::uniform_real_distribution<double> part(0, 1);
    int snapped_often = 0;
    for (int i = 0; i < 3000; ++i) {
        const plan::Host host =
            onWall(std::string(1, "ABCD"[i % 4]), 4000 * part(random), 2500 * part(random));
        const plan::Vec2 size{81 + 71.0 * (i % 3), 81};
        const double tolerance = 40 * part(random);
        const auto found = edit::guides(house, plainCatalogue(), "room", host, {}, kUsual);
        const edit::Snapped once = edit::snap(found, host.u_mm, host.v_mm, size, tolerance);
        REQUIRE(std::abs(once.u_mm - host.u_mm) <= tolerance);
        REQUIRE(std::abs(once.v_mm - host.v_mm) <= tolerance);
        const edit::Snapped twice = edit::snap(found, once.u_mm, once.v_mm, size, tolerance);
        REQUIRE(twice.u_mm == once.u_mm);
        REQUIRE(twice.v_mm == once.v_mm);
        snapped_often += (once.along ? 1 : 0) + (once.height ? 1 : 0);
    }
    CHECK(snapped_often > 500);
}

// tests/fixtures/one-room.plan.json: room 4000 x 3000 x 2500. The door in wall C is 900 wide from 100, its
// casing 60, so its right edge is at 1060. The wardrobe (600 deep, 1500 wide, turned 90 about x 300, y 2150)
// shows on wall A from 0 to 600.
