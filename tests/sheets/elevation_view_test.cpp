// The picture of a wall: true sizes and places, nothing mirrored, what is hidden is dashed.
#include "sheet_reading.hpp"
#include "two_rooms.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using drawing::Dimension;

namespace {

/// Paper x of the origin circle of the row of set-outs.
double originX(const drawing::Sheet& sheet) {
    for (const auto& dimension : test::dimensionsOf(sheet, Dimension::Kind::Running))
        for (const auto& arc : dimension.arcs)
            return arc.centre.x;
    FAIL("no running row");
    return 0;
}

double originY(const drawing::Sheet& sheet) {
    for (const auto& dimension : test::dimensionsOf(sheet, Dimension::Kind::Height))
        for (const auto& arc : dimension.arcs)
            return arc.centre.y;
    FAIL("no column of heights");
    return 0;
}

} // namespace

TEST_CASE("a plate at 1:20 has its true size: 86 is 4.3 and 146 is 7.3") {
    // Section 6, 15: arithmetic.
    const auto sheet = test::sheetOf(test::twoRooms(), "kitchen", "A");
    const auto plate = test::plateOutline(sheet, "k3");
    CHECK(test::widthOf(plate) == Approx(7.3).margin(0.001));
    CHECK(test::heightOf(plate) == Approx(4.3).margin(0.001));
}

TEST_CASE("a plate stands at its set-out and height on paper") {
    const auto sheet = test::sheetOf(test::twoRooms(), "kitchen", "A");
    const auto centre = test::centreOf(test::plateOutline(sheet, "k1"));
    CHECK(centre.x - originX(sheet) == Approx(801.5 / 20).margin(0.001));
    CHECK(centre.y - originY(sheet) == Approx(1173.0 / 20).margin(0.001));
}

TEST_CASE("a ceiling of 2500 is 125 above FFL at 1:20, and one at 1:50 is 50") {
    const auto heightOfWall = [](const drawing::Sheet& sheet) {
        for (const auto& item : sheet.items)
            if (const auto* outline = std::get_if<drawing::Polyline>(&item.primitive))
                if (item.layer == "building" && outline->pen.width_mm == 0.5 && outline->points.size() == 4)
                    return test::heightOf(*outline);
        return 0.0;
    };
    CHECK(heightOfWall(test::sheetOf(test::twoRooms(), "kitchen", "A")) == Approx(125).margin(0.001));
    sheets::Options options = test::oneWall("kitchen", "A");
    options.scale = 50;
    CHECK(heightOfWall(test::sheetsOf(test::twoRooms(), options).sheets.front()) == Approx(50).margin(0.001));
}

TEST_CASE("an item at the west end is at the left of the north wall and at the right of the south wall") {
    // Section 6, 60: looking north, west is at the left; looking south, at the right. k4 stands 300 and k5
    // 150 from the west wall of a room 4200 wide.
    const auto north = test::sheetOf(test::twoRooms(), "kitchen", "A");
    CHECK(test::centreOf(test::plateOutline(north, "k4")).x - originX(north) ==
          Approx(300.0 / 20).margin(0.001));
    const auto south = test::sheetOf(test::twoRooms(), "kitchen", "C");
    CHECK(test::centreOf(test::plateOutline(south, "k5")).x - originX(south) ==
          Approx(4050.0 / 20).margin(0.001));
    CHECK(test::centreOf(test::plateOutline(south, "k5")).x >
          test::centreOf(test::plateOutline(south, "k6")).x);
}

TEST_CASE("a plate behind the wardrobe is dashed and says so; one in view is not") {
    const auto behind = test::sheetOf(test::twoRooms(), "kitchen", "D");
    CHECK(test::plateOutline(behind, "k8").pen.type == drawing::LineType::Dashed);
    CHECK(test::hasText(behind, "behind wardrobe"));
    const auto clear = test::sheetOf(test::twoRooms(), "kitchen", "C");
    CHECK(test::plateOutline(clear, "k6").pen.type == drawing::LineType::Continuous);
}

TEST_CASE("a plate on a headboard is on the sheet of the wall behind it, at its place along that wall") {
    const auto sheet = test::sheetOf(test::twoRooms(), "loft", "A");
    // The headboard is 2400 wide about x 6700, the wall begins at x 5000: its left edge is at u 500. Its
    // front is seen from the room, so 2050 from its left edge is u 2550.
    const auto centre = test::centreOf(test::plateOutline(sheet, "l2"));
    CHECK(centre.x - originX(sheet) == Approx(2550.0 / 20).margin(0.001));
    CHECK(centre.y - originY(sheet) == Approx(720.0 / 20).margin(0.001));
    CHECK(test::hasText(sheet, "on headboard"));
}

TEST_CASE("floor boxes are on no elevation") {
    for (const auto& sheet : test::sheetsOf(test::twoRooms()).sheets)
        CHECK_FALSE(test::hasText(sheet, "L-04"));
}

TEST_CASE("the first row is at least 10 from the floor, and its origin circle is 3 across") {
    // Section 6, 29 and 32; the outline ends at the slab, 75 / 20 below FFL.
    const auto sheet = test::sheetOf(test::twoRooms(), "kitchen", "A");
    const auto rows = test::dimensionsOf(sheet, Dimension::Kind::Running);
    REQUIRE_FALSE(rows.empty());
    REQUIRE_FALSE(rows.front().arcs.empty());
    CHECK(rows.front().arcs.front().radius_mm == Approx(1.5));
    CHECK(originY(sheet) - rows.front().arcs.front().centre.y >= 10 + 75.0 / 20 - 0.001);
}

TEST_CASE("values of rows are read from the right, turned by 90 degrees and never otherwise") {
    // Section 6, 30.
    for (const auto& sheet : test::sheetsOf(test::twoRooms()).sheets)
        for (const auto& text : test::textsOf(sheet))
            CHECK((text.turn_deg == 0 || text.turn_deg == 90));
}

TEST_CASE("a door shows its swing with the apex at the hinge side") {
    // Hinged left as seen from the kitchen: wall B, opening 1700 to 2600, frame 35.
    const auto sheet = test::sheetOf(test::twoRooms(), "kitchen", "B");
    const double hinge_x = originX(sheet) + (1700 + 35) / 20.0;
    int meeting = 0;
    for (const auto& item : sheet.items)
        if (const auto* line = std::get_if<drawing::Line>(&item.primitive))
            if (item.id == "k-door" && line->pen.type == drawing::LineType::Dashed)
                meeting +=
                    std::abs(line->from.x - hinge_x) < 0.01 || std::abs(line->to.x - hinge_x) < 0.01 ? 1 : 0;
    CHECK(meeting == 2);
    CHECK(test::hasText(sheet, "(900 × 2100)"));
    CHECK(test::hasText(sheet, "head 2100"));
}

TEST_CASE("both neighbours' letters stand at the ends") {
    const auto sheet = test::sheetOf(test::twoRooms(), "kitchen", "A");
    double left = 0;
    double right = 0;
    for (const auto& item : sheet.items)
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive)) {
            if (item.layer != "text") continue;
            if (text->text == "D") left = text->at.x;
            if (text->text == "B") right = text->at.x;
        }
    CHECK(left < originX(sheet));
    CHECK(right > originX(sheet) + 4200 / 20.0);
}

TEST_CASE("a sloped ceiling is given at each corner of the wall") {
    plan::Plan plan = test::twoRooms();
    for (plan::Plate& plate : plan.plates)
        if (plate.id == "l3") plate.host.wall = plan.rooms[1].walls[1].id;
    const auto sheet = test::sheetOf(plan, "loft", "B");
    CHECK(test::hasText(sheet, "+2400"));
    CHECK(test::hasText(sheet, "+1200"));
}
