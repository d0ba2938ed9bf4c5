#include "sheets/tag_placement.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using sheets::Rect;

namespace {

std::vector<Rect> placesOf(const std::vector<drawing::Item>& items) {
    std::vector<Rect> places;
    for (const auto& item : items)
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
            places.push_back(sheets::extentOf(*text));
    return places;
}

} // namespace

TEST_CASE("a tag stands above its plate when that is clear") {
    std::vector<drawing::Item> items;
    sheets::Occupancy occupancy;
    const Rect plate{50, 50, 54, 54};
    sheets::placeTags(items, occupancy, {{"K-01", "", "k1", plate}}, {0, 0, 200, 120});
    const auto places = placesOf(items);
    REQUIRE(places.size() == 1);
    CHECK(places[0].bottom > plate.top);
    CHECK(places[0].centre().x == Approx(52).margin(1));
}

TEST_CASE("tags of plates close together never touch each other or another plate") {
    std::vector<drawing::Item> items;
    sheets::Occupancy occupancy;
    std::vector<sheets::Tag> tags;
    for (int i = 0; i < 12; ++i) {
        const double x = 60 + 5.0 * (i % 6);
        const double y = 50 + 8.0 * (i / 6);
        tags.push_back({"K-" + std::to_string(10 + i),
                        i % 3 == 0 ? "behind wardrobe" : "",
                        std::to_string(i),
                        {x, y, x + 4, y + 4}});
    }
    sheets::placeTags(items, occupancy, tags, {0, 0, 200, 120});
    const auto places = placesOf(items);
    for (std::size_t i = 0; i < places.size(); ++i) {
        for (std::size_t k = i + 1; k < places.size(); ++k)
            CHECK_FALSE(sheets::overlaps(places[i], places[k]));
        for (const auto& tag : tags)
            CHECK_FALSE(sheets::overlaps(places[i], tag.target));
    }
}

TEST_CASE("a name with no room is left out, one that must stand is moved") {
    sheets::Occupancy occupancy;
    occupancy.take({0, 0, 20, 20});
    sheets::Label label;
    label.lines = {"drawer unit"};
    label.within = {0, 0, 20, 20};
    label.layer = "text";
    std::vector<drawing::Item> items;
    sheets::placeLabels(items, occupancy, {label});
    CHECK(items.empty());
    label.need = sheets::Label::Need::Always;
    sheets::placeLabels(items, occupancy, {label});
    REQUIRE(placesOf(items).size() == 1);
    CHECK(items.size() == 2); // with a leader to where it belongs
    CHECK_FALSE(sheets::overlaps(placesOf(items)[0], {0, 0, 20, 20}));
}

TEST_CASE("a line of text breaks at spaces and inside words that are too long") {
    const double width = drawing::measure("switch, one", 2.5).width_mm + 0.1;
    const auto lines = sheets::wrapped("switch, one way", 2.5, width);
    CHECK(lines == std::vector<std::string>{"switch, one", "way"});
    for (const auto& line : sheets::wrapped("Donaudampfschifffahrtsgesellschaft", 2.5, 20))
        CHECK(drawing::measure(line, 2.5).width_mm <= 20);
    CHECK(sheets::wrapped("", 2.5, 20).empty());
}
