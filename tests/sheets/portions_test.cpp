// Walls that one picture can't hold: parts between match lines, details apart. All of it is drawn for real.
#include "drawing/dimensions.hpp"
#include "sheet_reading.hpp"
#include "sheets/paper.hpp"
#include "sheets/portions.hpp"
#include "sheets/view_scale.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

#include <fmt/format.h>

using namespace gangway;

namespace {

/// A wall of the two rooms' kitchen, C (4000 long), with plates of one kind at these places.
plan::Plan crowdedKitchen(const std::vector<plan::Vec2>& places) {
    plan::Plan plan = test::twoRooms();
    const plan::Plate pattern = *plan::findPlate(plan, "k6");
    std::erase_if(plan.plates, [](const plan::Plate& plate) { return plate.host.wall == "C"; });
    int number = 0;
    for (const plan::Vec2 at : places) {
        plan::Plate plate = pattern;
        plate.id = fmt::format("many-{}", ++number);
        plate.tag = fmt::format("K-{}", 100 + number);
        plate.host.u_mm = at.x;
        plate.host.v_mm = at.y;
        plan.plates.push_back(plate);
    }
    return plan;
}

sheets::WallView lookAt(const sheets::House& house, const std::string& room, const std::string& wall) {
    const plan::Room& found = *plan::findRoom(house.plan(), room);
    const auto index =
        static_cast<std::size_t>(std::ranges::find(found.walls, wall, &plan::Wall::id) - found.walls.begin());
    return sheets::lookAt(house, found, index, sheets::mountedByWall(house, found)[index]);
}

} // namespace

TEST_CASE("parts of a wall have every plate once, whole, and follow each other without a gap") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        const sheets::House house(*plan, test::shippedCatalogue(), {});
        for (const plan::Room& room : plan->rooms)
            for (const plan::Wall& wall : room.walls) {
                const auto view = lookAt(house, room.id, wall.id);
                for (const std::size_t count : {2U, 3U}) {
                    const auto parts = sheets::parted(view, count);
                    REQUIRE(parts.size() == count);
                    std::multiset<std::string> ids;
                    double end = 0;
                    for (const auto& part : parts) {
                        CHECK(part.portion->left_mm == end);
                        CHECK(part.portion->right_mm > end);
                        end = part.portion->right_mm;
                        for (const auto& item : part.mounted)
                            ids.insert(item.id);
                    }
                    CHECK(end == view.length_mm());
                    CHECK(ids.size() == view.mounted.size());
                    CHECK(std::set<std::string>(ids.begin(), ids.end()).size() == ids.size());
                }
            }
    }
}

TEST_CASE("no cut goes through a plate where the wall has room beside it") {
    const auto plan = crowdedKitchen({{1960, 450}, {2040, 1200}, {3000, 450}});
    const sheets::House house(plan, test::shippedCatalogue(), {});
    const auto view = lookAt(house, "kitchen", "C");
    const auto parts = sheets::parted(view, 2);
    const double cut = parts[0].portion->right_mm;
    for (const auto& item : view.mounted)
        CHECK(std::abs(item.at_mm.x - cut) > item.width_mm / 2 + 50);
}

TEST_CASE(
    "a wall too long for the scale asked for goes on past a match line, its numbers from its own corner") {
    sheets::Options options;
    options.room = "kitchen";
    options.wall = "A"; // 6200 long
    options.scale = 20;
    const auto drawing = test::sheetsOf(*test::shippedPlans().front(), options);
    REQUIRE(drawing.sheets.size() >= 2);
    CHECK(drawing.sheets.front().title.find("part 1 of 2") != std::string::npos);
    CHECK(test::hasText(drawing.sheets.front(), "match line, part 2"));
    const auto second = std::ranges::find_if(drawing.sheets, [](const drawing::Sheet& sheet) {
        return sheet.title.find("part 2 of 2") != std::string::npos;
    });
    REQUIRE(second != drawing.sheets.end());
    CHECK(test::hasText(*second, "match line, part 1"));
    // The last plates are set out from the left corner, which is on another sheet (ISO 129-1: one datum).
    CHECK(test::hasText(*second, "5100"));
    std::set<std::string> numbers;
    for (const auto& sheet : drawing.sheets) {
        CHECK(numbers.insert(sheet.number).second);
        CHECK(drawing::touchingTexts(sheet, 0.3).empty());
    }
}

TEST_CASE(
    "plates that crowd each other are drawn apart at a larger scale on the same sheet, all numbers there") {
    std::vector<plan::Vec2> places;
    for (int i = 0; i < 12; ++i)
        places.push_back({2500, 200 + 90.0 * i});
    places.push_back({500, 450});
    sheets::Options options;
    options.room = "kitchen";
    options.wall = "C";
    options.scale = 50;
    auto plan = crowdedKitchen(places);
    for (plan::Plate& plate : plan.plates)
        if (plate.host.wall == "C") plate.modules.resize(1);
    const auto drawing = test::sheetsOf(plan, options);
    const auto& sheet = drawing.sheets.front();
    CHECK(test::hasText(sheet, "detail 1"));
    CHECK(test::hasText(sheet, "Detail 1, 1:20"));
    for (int i = 1; i <= 13; ++i)
        CHECK(test::hasText(sheet, fmt::format("K-{}", 100 + i)));
    // Every set-out and height stands in a dimension, whether in the view or in the detail.
    std::set<std::string> values;
    for (const auto& item : sheet.items)
        if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
            for (const auto& text : dimension->texts)
                values.insert(text.text);
    for (const auto& at : places) {
        CHECK(values.contains(drawing::number(at.x)));
        CHECK(values.contains(drawing::number(at.y)));
    }
    CHECK(drawing::touchingTexts(sheet, 0.3).empty());
}

TEST_CASE("a wall with room for everything is one picture without details") {
    const sheets::House house(test::twoRooms(), test::shippedCatalogue(), {});
    const auto shown =
        sheets::picturesOf(lookAt(house, "kitchen", "A"), *sheets::findPaper("A3"), std::nullopt);
    REQUIRE(shown.has_value());
    REQUIRE(shown->size() == 1);
    CHECK(shown->front().view.details.empty());
    CHECK_FALSE(shown->front().view.portion.has_value());
}
