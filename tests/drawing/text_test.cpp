#include "drawing/bounds.hpp"
#include "drawing/dimensions.hpp"
#include "drawing/face.hpp"

#include <catch2/catch.hpp>

#include <filesystem>

using namespace gangway::drawing;

namespace {

Item textItem(Pt at, const std::string& words, double turn_deg = 0, Align align = Align::Left) {
    return {"text", "", Text{at, words, 3.5, align, turn_deg, kBlack, false}};
}

using Pairs = std::vector<std::pair<std::size_t, std::size_t>>;

} // namespace

TEST_CASE("the drawing face is there") {
    REQUIRE(std::filesystem::exists(drawingFacePath()));
    REQUIRE(std::filesystem::exists(screenFacePath()));
    REQUIRE(Face::drawingFace().loaded());
}

// ISO 3098-1 type B, check value 23: the outline of a capital H in 3.5 lettering is 3.5 +-0.05 high.
TEST_CASE("height means the height of a capital H, not the em") {
    for (const double height_mm : {2.5, 3.5, 5.0, 7.0}) {
        const Glyph& capital = Face::drawingFace().glyph(U'H');
        const double unit_mm = emSize(height_mm) / Face::drawingFace().unitsPerEm();
        double low = 1e9;
        double high = -1e9;
        for (const OutlineStep& step : capital.outline) {
            if (step.kind == OutlineStep::Kind::Close) continue;
            low = std::min(low, step.to.y * unit_mm);
            high = std::max(high, step.to.y * unit_mm);
        }
        CHECK(high - low == Approx(height_mm).margin(0.05));
        CHECK(measure("H", height_mm).ascent_mm == Approx(height_mm).margin(0.05));
    }
    CHECK(emSize(3.5) > 3.5);
}

TEST_CASE("digits stand as high as capitals and do not go below the baseline") {
    const TextBox box = measure("0123456789", 3.5);
    CHECK(box.ascent_mm == Approx(3.5).margin(0.1));
    CHECK(box.descent_mm == Approx(0).margin(0.1));
}

TEST_CASE("width grows with height and adds up by letter") {
    const double one = measure("1073", 3.5).width_mm;
    CHECK(measure("1073", 7).width_mm == Approx(2 * one));
    CHECK(measure("10731073", 3.5).width_mm == Approx(2 * one));
    CHECK(measure("", 3.5).width_mm == 0);
}

TEST_CASE("text that is not UTF-8 is replaced, byte by byte, and never breaks anything") {
    CHECK(codePoints("\xC3\xBC") == U"\u00FC");
    CHECK(codePoints("\xF0\x9F\x92\xA1") == U"\U0001F4A1");
    CHECK(codePoints("a\xFFz") == U"a\uFFFDz");
    CHECK(codePoints("\xC3") == U"\uFFFD");
    CHECK(codePoints("\xC0\x80") == U"\uFFFD\uFFFD");           // overlong
    CHECK(codePoints("\xED\xA0\x80") == U"\uFFFD\uFFFD\uFFFD"); // half a surrogate pair
    CHECK(cleanUtf8("a\nb\x01") == "a b ");
    std::string back;
    for (const char32_t code : codePoints("K\xC3\xBC \xE2\x82\xAC \xF0\x9F\x92\xA1"))
        appendUtf8(back, code);
    CHECK(back == "K\xC3\xBC \xE2\x82\xAC \xF0\x9F\x92\xA1");
}

TEST_CASE("corners follow alignment and turning") {
    const double width = measure("12", 3.5).width_mm;
    const auto right = textCorners({{100, 50}, "12", 3.5, Align::Right, 0, kBlack, false});
    CHECK(right[0].x == Approx(100 - width));
    CHECK(right[1].x == Approx(100));
    // Turned by +90 the baseline runs upwards and the letters stand towards -x.
    const auto turned = textCorners({{100, 50}, "12", 3.5, Align::Left, 90, kBlack, false});
    CHECK(turned[1].y == Approx(50 + width));
    CHECK(turned[2].x == Approx(100 - 3.5).margin(0.1));
}

TEST_CASE("texts that overlap are found, whichever way they stand") {
    Sheet sheet;
    sheet.items = {textItem({10, 10}, "1073"), textItem({12, 11}, "1144"), textItem({10, 20}, "1073"),
                   textItem({13, 16}, "45", 90)};
    CHECK(touchingTexts(sheet) == Pairs{{0, 1}, {2, 3}});
}

TEST_CASE("turned boxes that pass each other diagonally do not touch") {
    Sheet sheet;
    sheet.items = {textItem({10, 10}, "MMMMMM", 45), textItem({18, 10}, "MMMMMM", 45)};
    CHECK(touchingTexts(sheet).empty());
    sheet.items[1] = textItem({12, 10}, "MMMMMM", 45);
    CHECK(touchingTexts(sheet) == Pairs{{0, 1}});
}

TEST_CASE("texts that meet within the margin count only with the margin") {
    Sheet sheet;
    const double width = measure("12", 3.5).width_mm;
    sheet.items = {textItem({10, 10}, "12"), textItem({10 + width + 0.4, 10}, "12")};
    CHECK(touchingTexts(sheet).empty());
    CHECK(touchingTexts(sheet, 0.5) == Pairs{{0, 1}});
}

TEST_CASE("texts inside dimensions count") {
    Sheet sheet;
    sheet.items = {{"dimensions", "", linear({0, 0}, {40, 0}, 10, 800, 3.5, "a")},
                   textItem({18, 11}, "lamp")};
    CHECK(touchingTexts(sheet) == Pairs{{0, 1}});
}

TEST_CASE("bounds hold the ink") {
    const Bounds line = bounds(Line{{10, 10}, {20, 10}, {0.5, LineType::Continuous, kBlack}});
    CHECK(line.low.y == Approx(9.75));
    CHECK(line.high.x == Approx(20.25));
    const Bounds dimension = bounds(linear({0, 0}, {40, 0}, 10, 800, 3.5, "a"));
    CHECK(dimension.high.y >= 11 + 3.5);
    CHECK_FALSE(bounds(Text{}).overlaps(line));
    CHECK(line.contains({15, 10}));
}
