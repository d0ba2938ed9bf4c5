#include "two_rooms.hpp"

#include <catch2/catch.hpp>

#include <utility>

using namespace gangway;

namespace {

std::string errorOf(const sheets::Options& options) {
    const auto drawing = sheets::elevationSheets(test::twoRooms(), test::shippedCatalogue(), options);
    return drawing ? "" : drawing.error();
}

sheets::Options with(const std::string& room, const std::string& wall, const std::string& paper = "A3") {
    sheets::Options options = test::oneWall(room, wall);
    options.paper = paper;
    return options;
}

} // namespace

TEST_CASE("an unknown paper, room, wall or scale is named with what there is") {
    CHECK(errorOf(with("", "", "A5")) == "there is no paper 'A5'; give one of A4, A3, A2, A1");
    CHECK(errorOf(with("cellar", "")) == "there is no room 'cellar'; the plan has 'kitchen', 'loft'");
    CHECK(errorOf(with("kitchen", "F")) ==
          "there is no wall 'F' in room 'kitchen'; there are 'A', 'B', 'C', 'D'");
    CHECK(errorOf(with("", "Z")) == "there is no wall 'Z'; there are 'A', 'B', 'C', 'D', 'E', 'F'");
    sheets::Options options;
    options.scale = 33;
    CHECK(errorOf(options) == "1:33 is not a scale of these sheets; give 10, 20, 25 or 50");
}

TEST_CASE("a wall without anything on it has no sheet, and asking for it says so") {
    CHECK(errorOf(with("loft", "F")) ==
          "nothing is mounted on wall 'F' of room 'loft', so there is no elevation to draw");
}

TEST_CASE("a scale at which a wall does not fit is refused with the sizes") {
    sheets::Options options = with("kitchen", "A");
    options.scale = 10;
    const std::string error = errorOf(options);
    CHECK(error.starts_with("wall 'A' of room 'kitchen' is 4200 long: at 1:10 its elevation takes "));
    CHECK(error.ends_with("take a smaller scale or larger paper"));
}

TEST_CASE("the scale asked for is used, and 1:20 is taken when it fits") {
    CHECK(test::sheetOf(test::twoRooms(), "kitchen", "A").scale == 20);
    sheets::Options options = with("kitchen", "A");
    options.scale = 50;
    CHECK(test::sheetsOf(test::twoRooms(), options).sheets.front().scale == 50);
}

TEST_CASE(
    "a long wall goes to 1:25 where that takes no further sheet, else to 1:50 unless boxes crowd there") {
    plan::Plan plan = test::twoRooms();
    // 7000 long: 350 of paper at 1:20 and 280 at 1:25, with some 80 for levels and heights, on 390.
    plan.rooms[0].outline = {{0, 3000}, {7000, 3000}, {7000, 0}, {0, 0}};
    std::erase_if(plan.plates, [](const plan::Plate& plate) { return plate.id != "k4"; });
    const auto openings = std::exchange(plan.openings, {});
    CHECK(test::sheetOf(plan, "kitchen", "A").scale == 25);
    // 9000 long: 360 at 1:25 leaves no room for levels and heights.
    plan.rooms[0].outline = {{0, 3000}, {9000, 3000}, {9000, 0}, {0, 0}};
    CHECK(test::sheetOf(plan, "kitchen", "A").scale == 50);
    // Six rows under a view over the whole width at 1:25 would need a sheet of their own.
    plan.rooms[0].outline = {{0, 3000}, {7000, 3000}, {7000, 0}, {0, 0}};
    const plan::Plate pattern = plan.plates.front();
    for (int i = 1; i < 6; ++i) {
        plan.plates.push_back(pattern);
        plan.plates.back().id = "more-" + std::to_string(i);
        plan.plates.back().host.u_mm = pattern.host.u_mm + 900 * i;
    }
    CHECK(test::sheetOf(plan, "kitchen", "A").scale == 50);
    // Two boxes at pitch 71 are 1.42 apart at 1:50.
    plan.plates[0].modules.push_back(plan.plates[0].modules[0]);
    CHECK(test::sheetOf(plan, "kitchen", "A").scale == 25);
    // So does a window 1000 wide: its size in 3.5 lettering is wider than the 20 it has at 1:50.
    plan.plates[0].modules.pop_back();
    plan.openings = openings;
    CHECK(test::sheetOf(plan, "kitchen", "A").scale == 25);
}

TEST_CASE("sheets of one room keep the numbers they have in the whole set") {
    const auto all = test::sheetsOf(test::twoRooms());
    const auto loft = test::sheetsOf(test::twoRooms(), with("loft", ""));
    for (const auto& sheet : loft.sheets) {
        const auto same = std::find_if(all.sheets.begin(), all.sheets.end(),
                                       [&](const auto& other) { return other.number == sheet.number; });
        REQUIRE(same != all.sheets.end());
        CHECK(drawing::dump(*same) == drawing::dump(sheet));
    }
}

TEST_CASE("every paper carries every wall") {
    for (const char* paper : {"A4", "A3", "A2", "A1"}) {
        INFO(paper);
        const auto drawing = test::sheetsOf(test::twoRooms(), with("", "", paper));
        CHECK(drawing.sheets.size() >= 6);
        for (const auto& sheet : drawing.sheets) {
            INFO(sheet.file_stem);
            CHECK(drawing::touchingTexts(sheet).empty());
        }
    }
}
