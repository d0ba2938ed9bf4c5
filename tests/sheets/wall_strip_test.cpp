#include "sheet_reading.hpp"
#include "sheets/wall_strip.hpp"
#include "shipped_plans.hpp"

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

TEST_CASE("a strip is as high as its walls need, so that it is large on screen") {
    // Drawn at 1:40 on some 210 px: 2500 of wall are 62.5 mm, and 95 keep 3.5 mm figures 7 to 8 px high.
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& room : plan->rooms) {
            const auto strip = sheets::wallStrip(*plan, test::shippedCatalogue(), room, 40);
            INFO(plan->project.name << " " << room.name);
            CHECK(test::touchingWords(strip.sheet, 0.2) == "");
            CHECK_FALSE(test::hasText(strip.sheet, "behind "));
            if (room.name == "Kitchen-diner") CHECK(strip.sheet.height_mm <= 95);
        }
}
