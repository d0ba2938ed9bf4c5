#include "drawing/bounds.hpp"
#include "drawing/dimensions.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

using namespace gangway::drawing;

namespace {

const Dimension& dimensionOf(const Item& item) {
    return std::get<Dimension>(item.primitive);
}

// Marks of a wall at 1:20 whose floor line is at y = 100 and whose left corner is at x = 60.
std::vector<RunningMark> marksAt(const std::vector<double>& values_mm) {
    std::vector<RunningMark> marks;
    for (std::size_t i = 0; i < values_mm.size(); ++i) {
        const double x = 60 + values_mm[i] / 20;
        std::string id = "p";
        id += std::to_string(i);
        marks.push_back({{x, 115}, x, values_mm[i], std::move(id)});
    }
    return marks;
}

std::vector<RunningMark> heightsAt(const std::vector<double>& values_mm) {
    std::vector<RunningMark> marks;
    for (const double value : values_mm)
        marks.push_back({{60, 100 + value / 20}, 100 + value / 20, value, "h"});
    return marks;
}

Sheet sheetOf(std::vector<Item> items) {
    Sheet sheet;
    sheet.items = std::move(items);
    return sheet;
}

std::vector<std::string> valuesOf(const std::vector<Item>& items) {
    std::vector<std::string> values;
    for (const Item& item : items)
        for (const Text& text : dimensionOf(item).texts)
            values.push_back(text.text);
    return values;
}

bool oblique(const Line& line) {
    const double dx = line.to.x - line.from.x;
    const double dy = line.to.y - line.from.y;
    return line.pen.width_mm == 0.35 && std::abs(std::hypot(dx, dy) - 3.5) < 1e-9;
}

// How far the first line of a dimension that crosses y reaches below it.
double lowest(const Dimension& dimension) {
    double low = 1e9;
    for (const Line& line : dimension.lines)
        if (!oblique(line)) low = std::min({low, line.from.y, line.to.y});
    return low;
}

} // namespace

// ISO 129-1 through the project's drawing standards: extension 2.0 +-0.1 past (check 28), vertical text +90
// (check 30), origin circle 3.0 in diameter (check 32).
TEST_CASE("a running row starts at an open circle of 3 mm with 0") {
    const auto items = runningRow(60, 88, marksAt({1073, 2400}), {}, "dimensions");
    const Dimension& base = dimensionOf(items.front());
    REQUIRE(base.arcs.size() == 1);
    CHECK(base.arcs[0].radius_mm * 2 == Approx(3.0));
    CHECK(base.arcs[0].centre == Pt{60, 88});
    REQUIRE(base.texts.size() == 1);
    CHECK(base.texts[0].text == "0");
    CHECK(items.size() == 3);
    for (const Item& item : items)
        CHECK(item.layer == "dimensions");
}

TEST_CASE("values of a running row stand at +90 in line with their extension lines, below the row") {
    const auto items = runningRow(60, 88, marksAt({1073, 2400}), {}, "dimensions");
    for (const Item& item : items) {
        const Text& text = dimensionOf(item).texts.at(0);
        CHECK(text.turn_deg == 90);
        const auto corners = textCorners(text);
        const double middle = (corners[0].x + corners[2].x) / 2;
        CHECK(middle == Approx(dimensionOf(item).to.x).margin(0.1));
        for (const Pt& corner : corners)
            CHECK(corner.y < 88 - 1.9);
    }
    CHECK(lowest(dimensionOf(items[1])) == Approx(86).margin(0.1));
}

TEST_CASE("a running dimension keeps what it measures and whose it is") {
    const auto items = runningRow(60, 88, marksAt({2400, 1073}), {}, "dimensions");
    CHECK(dimensionOf(items[1]).measured_mm == 1073);
    CHECK(items[1].id == "p1");
    CHECK(dimensionOf(items[1]).kind == Dimension::Kind::Running);
    CHECK(dimensionOf(items[2]).measured_mm == 2400);
    CHECK(items[2].id == "p0");
}

TEST_CASE("crowded values are spread, keep their order and do not touch") {
    double bottom = 0;
    const auto items = runningRow(60, 88, marksAt({60, 120, 191, 262, 1073, 1073.5, 1100, 1144, 1215, 1286}),
                                  {}, "dimensions", &bottom);
    CHECK(touchingTexts(sheetOf(items), 0.5).empty());
    double before = -1e9;
    double low = 1e9;
    for (const Item& item : items) {
        const Text& text = dimensionOf(item).texts.at(0);
        CHECK(text.at.x >= before + 4.5 - 1e-9);
        before = text.at.x;
        low = std::min(low, bounds(item.primitive).low.y);
    }
    CHECK(bottom == Approx(low).margin(0.2));
}

TEST_CASE("the extension line still crosses the row at the true place when its value was moved") {
    const auto items = runningRow(60, 88, marksAt({1073, 1083, 1093}), {}, "dimensions");
    for (std::size_t i = 1; i < items.size(); ++i) {
        const Dimension& dimension = dimensionOf(items[i]);
        const double x = 60 + dimension.measured_mm / 20;
        CHECK(dimension.lines[0].from == Pt{x, 115});
        CHECK(dimension.lines[0].to.x == Approx(x));
        const auto stroke = std::find_if(dimension.lines.begin(), dimension.lines.end(), oblique);
        REQUIRE(stroke != dimension.lines.end());
        CHECK((stroke->from.x + stroke->to.x) / 2 == Approx(x));
        CHECK((stroke->from.y + stroke->to.y) / 2 == Approx(88));
        CHECK((stroke->to.y - stroke->from.y) / (stroke->to.x - stroke->from.x) ==
              Approx(1)); // 45 degrees, rising
        // Its last line ends in line with the value.
        const Line& last = dimension.lines.back();
        CHECK(last.to.x == Approx(dimension.texts[0].at.x - 1.75));
    }
}

TEST_CASE("extension lines of crowded values never cross") {
    const auto items =
        runningRow(60, 88, marksAt({500, 510, 520, 530, 540, 700, 705, 710}), {}, "dimensions");
    for (std::size_t i = 2; i < items.size(); ++i) {
        const Line& left = dimensionOf(items[i - 1]).lines.back();
        const Line& right = dimensionOf(items[i]).lines.back();
        CHECK(left.from.x < right.from.x);
        CHECK(left.to.x < right.to.x);
    }
}

TEST_CASE("one place with one value is dimensioned once, from the farthest feature") {
    std::vector<RunningMark> marks = marksAt({1073, 1073, 2000});
    marks[1].from.y = 155;
    const auto items = runningRow(60, 88, marks, {}, "dimensions");
    REQUIRE(items.size() == 3);
    CHECK(items[1].id == "p0 p1");
    CHECK(dimensionOf(items[1]).lines[0].from == Pt{60 + 1073 / 20.0, 155});
}

TEST_CASE("a mark at the origin gives the origin its extension line, not a second 0") {
    const auto items = runningRow(60, 88, marksAt({0, 1073}), {}, "dimensions");
    CHECK(valuesOf(items) == std::vector<std::string>{"0", "1073"});
    CHECK(items[0].id == "p0");
    CHECK(dimensionOf(items[0]).lines[0].from == Pt{60, 115});
}

TEST_CASE("values left of the origin stay left of the 0") {
    const auto items = runningRow(60, 88, marksAt({-40, -20, 30, 60}), {}, "dimensions");
    CHECK(touchingTexts(sheetOf(items), 0.5).empty());
    CHECK(dimensionOf(items[0]).texts[0].at.x == Approx(60 + 1.75));
    const auto values = valuesOf(items);
    CHECK(values == std::vector<std::string>{"0", "-40", "-20", "30", "60"});
    CHECK(dimensionOf(items[2]).texts[0].at.x < 60);
    CHECK(dimensionOf(items[3]).texts[0].at.x > 60);
}

TEST_CASE("the same marks in another order give the same row") {
    std::vector<RunningMark> marks = marksAt({60, 120, 191, 262, 1073, 1073, 1144});
    const std::string expected = dump(sheetOf(runningRow(60, 88, marks, {}, "dimensions")));
    std::mt19937 random(7);
    for (int i = 0; i < 20; ++i) {
        std::shuffle(marks.begin(), marks.end(), random);
        CHECK(dump(sheetOf(runningRow(60, 88, marks, {}, "dimensions"))) == expected);
    }
}

TEST_CASE("any row of values comes out without touching texts") {
    std::mt19937 random(11);
    for (int round = 0; round < 200; ++round) {
        std::vector<double> values;
        const int count = 1 + static_cast<int>(random() % 20);
        for (int i = 0; i < count; ++i)
            values.push_back(static_cast<double>(random() % 4000));
        const auto items = runningRow(60, 88, marksAt(values), {}, "dimensions");
        CHECK(touchingTexts(sheetOf(items)).empty());
        const std::set<double> different(values.begin(), values.end());
        CHECK(items.size() == different.size() + (different.contains(0) ? 0 : 1));
    }
}

TEST_CASE("an empty row is its origin alone") {
    const auto items = runningRow(60, 88, {}, {}, "dimensions");
    REQUIRE(items.size() == 1);
    CHECK(valuesOf(items) == std::vector<std::string>{"0"});
}

TEST_CASE("a row above its features writes above") {
    std::vector<RunningMark> marks = marksAt({1073});
    const auto items = runningRow(60, 130, marks, {}, "dimensions");
    for (const Pt& corner : textCorners(dimensionOf(items[1]).texts[0]))
        CHECK(corner.y > 131.9);
}

TEST_CASE("heights are horizontal at the left of their column and do not touch") {
    double left = 0;
    const auto items =
        runningColumn(48, 100, heightsAt({300, 1050, 1100, 1180, 2400}), {}, "dimensions", &left);
    CHECK(touchingTexts(sheetOf(items), 0.5).empty());
    for (const Item& item : items) {
        const Text& text = dimensionOf(item).texts.at(0);
        CHECK(text.turn_deg == 0);
        for (const Pt& corner : textCorners(text))
            CHECK(corner.x < 46.1);
        CHECK(dimensionOf(item).kind == Dimension::Kind::Height);
    }
    CHECK(left == Approx(textCorners(dimensionOf(items.back()).texts[0])[0].x));
}

TEST_CASE("heights at the right of a drawing write to the right") {
    std::vector<RunningMark> marks = heightsAt({900, 2100});
    const auto items = runningColumn(72, 100, marks, {}, "dimensions");
    for (const Pt& corner : textCorners(dimensionOf(items[1]).texts[0]))
        CHECK(corner.x > 73.9);
}

TEST_CASE("a row can print feet and inches") {
    RunningStyle style;
    style.units = Units::FeetInches;
    const auto items = runningRow(60, 88, marksAt({1200}), style, "dimensions");
    CHECK(valuesOf(items) == std::vector<std::string>{"0\"", "3'-11 1/4\""});
}

TEST_CASE("a linear dimension lies on the left of its direction and reads from the bottom") {
    const Dimension dimension = linear({60, 220}, {360, 220}, 10, 6000, 3.5, "wall");
    REQUIRE(dimension.texts.size() == 1);
    const Text& text = dimension.texts[0];
    CHECK(text.text == "6000");
    CHECK(text.turn_deg == 0);
    CHECK(text.at.x == Approx(210));
    CHECK(text.at.y == Approx(231)); // 1 above the line (check values, section on dimensioning)
    CHECK(std::count_if(dimension.lines.begin(), dimension.lines.end(), oblique) == 2);
    double top = 0;
    for (const Line& line : dimension.lines)
        if (!oblique(line)) top = std::max({top, line.from.y, line.to.y});
    CHECK(top == Approx(232).margin(0.1)); // 2 past the dimension line (check 28)
}

TEST_CASE("linear dimensions read from the bottom or the right, whatever their direction") {
    for (int deg = 0; deg < 360; deg += 5) {
        const double angle = deg * 3.14159265358979 / 180;
        const Dimension dimension =
            linear({100, 100}, {100 + 40 * std::cos(angle), 100 + 40 * std::sin(angle)}, 8, 800, 3.5, "x");
        INFO(deg);
        CHECK(dimension.texts[0].turn_deg > -90);
        CHECK(dimension.texts[0].turn_deg <= 90 + 1e-6);
    }
    CHECK(linear({0, 0}, {0, 40}, 8, 800, 3.5, "up").texts[0].turn_deg == Approx(90));
    CHECK(linear({0, 40}, {0, 0}, 8, 800, 3.5, "down").texts[0].turn_deg == Approx(90));
}

// Check value 31: a gap under 10 has its text outside.
TEST_CASE("a gap under 10 mm has its value beyond the end, over the lengthened line") {
    const Dimension narrow = linear({100, 180}, {103.55, 180}, 10, 71, 3.5, "pitch");
    const auto corners = textCorners(narrow.texts[0]);
    CHECK(corners[0].x > 103.55 + 1.24); // clear of the stroke
    double line_end = 0;
    for (const Line& line : narrow.lines)
        if (line.from.y == line.to.y) line_end = std::max(line_end, line.to.x);
    CHECK(line_end == Approx(corners[1].x));
    const Dimension wide = linear({100, 180}, {110.1, 180}, 10, 202, 3.5, "pitch");
    CHECK(wide.texts[0].at.x == Approx(105.05));
    // A long value does not fit between lines that are 10 apart.
    const Dimension full = linear({100, 180}, {111, 180}, 10, 12345.5, 3.5, "pitch");
    CHECK(full.texts[0].at.x > 111);
}

TEST_CASE("a check dimension stands in brackets") {
    CHECK(linear({0, 0}, {60, 0}, 10, 1200, 3.5, "w", true).texts[0].text == "(1200)");
    CHECK(linear({0, 0}, {60, 0}, 10, 1200, 3.5, "w", false, Units::FeetInches).texts[0].text ==
          "3'-11 1/4\"");
}

// Check value 21: only widths of the ISO 128-2 series.
TEST_CASE("dimensions use widths of the series and one terminator") {
    const std::set<double> series{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0};
    auto items = runningRow(60, 88, marksAt({60, 120, 1073}), {}, "dimensions");
    items.push_back({"dimensions", "", linear({0, 0}, {60, 0}, 10, 1200, 3.5, "w")});
    for (const Item& item : items)
        for (const Line& line : dimensionOf(item).lines)
            CHECK(series.contains(line.pen.width_mm));
}

TEST_CASE("a linear dimension of no length is drawn without a fault") {
    const Dimension dimension = linear({5, 5}, {5, 5}, 10, 0, 3.5, "nothing");
    CHECK(dimension.texts[0].text == "0");
    for (const Line& line : dimension.lines)
        CHECK((std::isfinite(line.from.x) && std::isfinite(line.to.y)));
}
