#include "sheet_reading.hpp"
#include "two_rooms.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

TEST_CASE("the strip has every wall of the room from left to right without overlap") {
    const auto& plan = test::twoRooms();
    const auto strip = sheets::wallStrip(plan, test::shippedCatalogue(), plan.rooms[1], 20);
    REQUIRE(strip.walls.size() == 6);
    for (std::size_t i = 0; i < strip.walls.size(); ++i) {
        CHECK(strip.walls[i].wall == i);
        CHECK(strip.walls[i].origin.y == strip.walls[0].origin.y);
        if (i > 0)
            CHECK(strip.walls[i].origin.x > strip.walls[i - 1].origin.x + strip.walls[i - 1].length_mm / 20);
    }
    CHECK(strip.walls[0].length_mm == Approx(3500));
    CHECK(strip.sheet.width_mm > strip.walls.back().origin.x + strip.walls.back().length_mm / 20);
}

TEST_CASE("a plate on the strip is where its wall's origin says, under its own id") {
    const auto& plan = test::twoRooms();
    const auto strip = sheets::wallStrip(plan, test::shippedCatalogue(), plan.rooms[0], 20);
    const auto centre = test::centreOf(test::plateOutline(strip.sheet, "k5"));
    CHECK(centre.x == Approx(strip.walls[2].origin.x + 4050.0 / 20).margin(0.001));
    CHECK(centre.y == Approx(strip.walls[2].origin.y + 300.0 / 20).margin(0.001));
    for (const auto& plate : plan.plates)
        if (plate.room == "kitchen") CHECK_FALSE(test::outlinesOf(strip.sheet, "plates", plate.id).empty());
}

TEST_CASE("no two texts touch on a strip") {
    const auto& plan = test::twoRooms();
    for (const auto& room : plan.rooms)
        CHECK(drawing::touchingTexts(sheets::wallStrip(plan, test::shippedCatalogue(), room, 20).sheet, 0.2)
                  .empty());
}
