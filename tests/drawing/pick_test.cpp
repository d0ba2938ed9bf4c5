// Picking by a point. The expected distances are worked out by hand from plane geometry; which of two items
// wins is our own rule, no source.
#include "drawing/pick.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gangway::drawing;

namespace {
Polyline box(double left, double bottom, double width, double height) {
    return {
        {{left, bottom}, {left + width, bottom}, {left + width, bottom + height}, {left, bottom + height}},
        true,
        {0.25, LineType::Continuous, kBlack}};
}
Item item(const std::string& id, Primitive primitive) {
    return {"plates", id, std::move(primitive)};
}
} // namespace

TEST_CASE("the distance to a stroke counts from its edge and ends at its ends") {
    const Line line{{10, 10}, {30, 10}, {0.5, LineType::Continuous, kBlack}};
    CHECK(distanceTo(line, {20, 10.2}) == 0);
    CHECK(distanceTo(line, {20, 13}) == Approx(2.75));
    CHECK(distanceTo(line, {34, 13}) == Approx(5 - 0.25)); // 3, 4, 5
}

TEST_CASE("a point inside of a closed outline, a circle, a fill or a text's box is on it") {
    CHECK(distanceTo(box(0, 0, 20, 10), {10, 5}) == 0);
    CHECK(distanceTo(Arc{{50, 50}, 5, 0, 360, {}}, {51, 52}) == 0);
    CHECK(distanceTo(Fill{{{0, 0}, {20, 0}, {20, 10}, {0, 10}}, {}, kBlack}, {10, 5}) == 0);
    const Text text{{100, 100}, "K-04"};
    CHECK(distanceTo(text, {100 + measure("K-04", 3.5).width_mm / 2, 101.5}) == 0);
    CHECK(distanceTo(text, {90, 100}) == Approx(10).margin(0.6));
}

TEST_CASE("a hole of a fill is not on it, and an open line has no inside") {
    const Fill ring{{{0, 0}, {30, 0}, {30, 30}, {0, 30}}, {{{10, 10}, {20, 10}, {20, 20}, {10, 20}}}, kBlack};
    CHECK(distanceTo(ring, {15, 14}) == Approx(4));
    Polyline open = box(0, 0, 20, 10);
    open.closed = false;
    CHECK(distanceTo(open, {5, 5}) == Approx(5 - 0.125)); // its fourth side, x = 0, is not drawn
}

TEST_CASE("an arc is as far as the part of it that is drawn") {
    const Arc quarter{{0, 0}, 10, 0, 90, {0.25, LineType::Continuous, kBlack}};
    CHECK(distanceTo(quarter, {10 / std::sqrt(2), 10 / std::sqrt(2)}) == 0);
    CHECK(distanceTo(quarter, {0, 0}) == Approx(10 - 0.125));
    CHECK(distanceTo(quarter, {-10, 0}) == Approx(std::hypot(10, 10) - 0.125));
    const Arc over_east{{0, 0}, 10, 270, 450, {0.25, LineType::Continuous, kBlack}};
    CHECK(distanceTo(over_east, {12, 0}) == Approx(2 - 0.125));
    CHECK(distanceTo(over_east, {-12, 0}) == Approx(std::hypot(12, 10) - 0.125));
}

TEST_CASE("a plate is picked through the wardrobe it is drawn in") {
    Sheet sheet;
    sheet.items = {item("wardrobe", box(0, 0, 100, 60)), item("plate", box(40, 20, 8, 8)),
                   item("room", box(-50, -50, 300, 200))};
    CHECK(itemAt(sheet, {44, 24}, 1) == 1);
    CHECK(itemAt(sheet, {10, 10}, 1) == 0);
    CHECK(itemAt(sheet, {150, 100}, 1) == 2);
    CHECK_FALSE(itemAt(sheet, {300, 300}, 1).has_value());
}

TEST_CASE("only what is wanted is picked, within reach, and of equal items the one drawn last") {
    Sheet sheet;
    sheet.items = {item("a", box(40, 20, 8, 8)), item("", Text{{40, 40}, "no object"}),
                   item("b", box(40, 20, 8, 8))};
    const auto with_object = [](const Item& one) { return !one.id.empty(); };
    CHECK(itemAt(sheet, {44, 24}, 1) == 2);
    CHECK(itemAt(sheet, {42, 41}, 1) == 1);
    CHECK_FALSE(itemAt(sheet, {42, 41}, 1, with_object).has_value());
    CHECK(itemAt(sheet, {50, 24}, 3, with_object) == 2);
    CHECK_FALSE(itemAt(sheet, {52, 24}, 3, with_object).has_value());
}

TEST_CASE("a dimension is picked by its line and by its number") {
    Dimension dimension;
    dimension.lines = {{{0, 50}, {80, 50}, {0.18, LineType::Continuous, kBlack}}};
    dimension.texts = {{{40, 51}, "1200", 3.5, Align::Centre}};
    Sheet sheet;
    sheet.items = {item("k-04", dimension)};
    CHECK(itemAt(sheet, {10, 50}, 0.5) == 0);
    CHECK(itemAt(sheet, {40, 53}, 0.5) == 0);
    CHECK_FALSE(itemAt(sheet, {10, 53}, 0.5).has_value());
}

TEST_CASE("what has nothing to draw is never picked") {
    Sheet sheet;
    sheet.items = {item("a", Text{{0, 0}, ""}), item("b", Polyline{}), item("c", Fill{})};
    CHECK_FALSE(itemAt(sheet, {0, 0}, 5).has_value());
}
