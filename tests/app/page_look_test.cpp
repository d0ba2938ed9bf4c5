// What becomes of a page on a copier and on smaller paper.
#include "app/page_look.hpp"

#include "export/export.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using namespace gangway::app;
using drawing::Colour;

namespace {
drawing::Item item(const std::string& layer, const std::string& id, drawing::Primitive primitive,
                   std::size_t view = 1) {
    return {layer, id, std::move(primitive), view};
}
drawing::Polyline square(double left, double bottom, double side) {
    return {{{left, bottom}, {left + side, bottom}, {left + side, bottom + side}, {left, bottom + side}},
            true,
            {}};
}
drawing::Text words(const std::string& text, double height_mm, drawing::Pt at = {0, 0}) {
    return {at, text, height_mm};
}
} // namespace

TEST_CASE("a copier keeps black and white, loses light tints and makes every colour a grey") {
    // Common practice, no source: a copier set to text.
    CHECK(copied(drawing::kBlack) == 0);
    CHECK(copied(drawing::kWhite) == 255);
    CHECK(copied(Colour{0xF6, 0xF2, 0xEA}) == 255); // our own paper's tint
    CHECK(copied(drawing::kGhost) < 0x76);          // what is light but meant to be read comes out darker
    CHECK(copied(drawing::kGhost) > 0);
    CHECK(copied(Colour{0x1E, 0x2A, 0x32}) == 0); // ink
    // A yellow is much lighter to a copier than a blue of the same numbers.
    CHECK(copied(Colour{200, 200, 0}) > copied(Colour{0, 0, 200}));
}

TEST_CASE("a copied sheet has no colour left in any stroke, fill, text or dimension") {
    const Colour clay{0xB0, 0x50, 0x29};
    const drawing::Pen pen{0.7, drawing::LineType::Continuous, clay};
    drawing::Dimension dimension;
    dimension.lines = {{{0, 0}, {30, 0}, pen}};
    dimension.arcs = {{{5, 5}, 2, 0, 360, pen}};
    dimension.texts = {words("1200", 3.5, {10, 1})};
    dimension.texts[0].colour = clay;
    drawing::Text tag = words("K-04", 3.5, {2, 20});
    tag.colour = clay;
    drawing::Sheet sheet;
    sheet.items = {item("plates", "", drawing::Fill{{{0, 10}, {20, 10}, {20, 18}}, {}, clay}),
                   item("plates", "", drawing::Line{{0, 25}, {20, 25}, pen}),
                   item("plates", "", drawing::Polyline{{{0, 26}, {20, 28}}, false, pen}),
                   item("plates", "", drawing::Arc{{25, 25}, 3, 0, 90, pen}),
                   item("text", "", tag),
                   item("dimensions", "", dimension)};
    const auto coloured = [](const exporting::Bitmap& picture) {
        std::size_t pixels = 0;
        for (std::size_t i = 0; i < picture.rgba.size(); i += 4)
            pixels += picture.rgba[i] != picture.rgba[i + 1] || picture.rgba[i] != picture.rgba[i + 2];
        return pixels;
    };
    const drawing::Sheet grey = copied(sheet);
    for (std::size_t i = 0; i < sheet.items.size(); ++i) {
        INFO("item " << i);
        drawing::Sheet one;
        one.items = {sheet.items[i]};
        CHECK(coloured(exporting::rasterise(one, {-1, -3}, 35, 35, 4)) > 10);
        one.items = {grey.items[i]};
        CHECK(coloured(exporting::rasterise(one, {-1, -3}, 35, 35, 4)) == 0);
    }
}

TEST_CASE("A3 printed on A4: numbers of 3.5 mm pass, texts of 2.5 mm are said") {
    // drawing-standards.md: 3.5 -> 2.475 (check 65), 2.5 -> 1.77 poor; nothing under 2.5.
    drawing::Sheet sheet;
    drawing::Dimension dimension;
    dimension.texts = {words("1200", 3.5), words("(45)", 2.5, {50, 50})};
    sheet.items = {item("dimensions", "k-04", dimension), item("notes", "", words("note", 2.5, {10, 80})),
                   item("text", "", words("Kitchen", 5)), item("text", "", words("", 1))};
    const SmallTexts on_a4 = smallTexts(sheet, kA3OnA4);
    REQUIRE(on_a4.boxes.size() == 2);
    CHECK(on_a4.smallest_mm == Approx(1.77).margin(0.005));
    CHECK(on_a4.boxes[0].contains({51, 51}));
    CHECK(on_a4.boxes[1].contains({11, 81}));
    CHECK(smallTexts(sheet, 1).boxes.empty());
    CHECK(smallTexts(sheet, 1).smallest_mm == 0);
    CHECK(smallTexts(sheet, 0.5).boxes.size() == 3); // 3.5 too; the 5 stays 2.5
}

TEST_CASE("A3 is known by its size, lying or upright") {
    // ISO 216.
    drawing::Sheet sheet;
    CHECK(isA3(sheet));
    std::swap(sheet.width_mm, sheet.height_mm);
    CHECK(isA3(sheet));
    sheet.width_mm = 210;
    sheet.height_mm = 297;
    CHECK_FALSE(isA3(sheet));
}

TEST_CASE("objects of a sheet are named once, in reading order, and only those that are wanted") {
    drawing::Sheet sheet;
    sheet.items = {item("plates", "low-right", square(200, 20, 8)),
                   item("plates", "low-left", square(50, 21, 8)),
                   item("plates", "high", square(120, 150, 8)),
                   item("furniture", "desk", square(40, 10, 90)),
                   item("plates", "high", square(122, 152, 4)),
                   item("text", "tag-only", words("K-09", 2.5)),
                   item("frame", "", square(0, 0, 290))};
    const auto plates = objectsOn(sheet, [](const std::string& id) { return id != "desk"; });
    CHECK(plates == std::vector<std::string>{"high", "low-left", "low-right"});
}

TEST_CASE("an object is outlined once in each view, without its tag and dimensions") {
    drawing::Sheet sheet;
    drawing::Dimension dimension;
    dimension.lines = {{{0, 0}, {300, 0}, {}}};
    sheet.items = {item("plates", "k", square(50, 50, 8)), item("plates", "k", square(60, 50, 8)),
                   item("plates", "k", square(250, 90, 4), 2),
                   item("text", "k", words("K-04", 2.5, {50, 120})), item("dimensions", "k", dimension)};
    const auto outlines = outlinesOf(sheet, "k");
    REQUIRE(outlines.size() == 2);
    CHECK(outlines[0].low.x == Approx(50).margin(0.3));
    CHECK(outlines[0].high.x == Approx(68).margin(0.3));
    CHECK(outlines[0].high.y == Approx(58).margin(0.3));
    CHECK(outlines[1].low.x == Approx(250).margin(0.3));
    CHECK(outlinesOf(sheet, "unknown").empty());
}

TEST_CASE("a sheet with revision marks is one that changed") {
    drawing::Sheet sheet;
    sheet.items = {item("plates", "k", square(50, 50, 8))};
    CHECK_FALSE(marksChange(sheet));
    sheet.items.push_back(item("revision", "", square(48, 48, 12)));
    CHECK(marksChange(sheet));
}
