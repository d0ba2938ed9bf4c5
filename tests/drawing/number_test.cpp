#include "drawing/dimensions.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <string>
#include <vector>

using namespace gangway::drawing;

namespace {

struct Case {
    double value_mm;
    std::string text;
};

} // namespace

// Expected values: arithmetic with 1 in = 25.4 mm and the notation rules of the feet-inches section of the
// project's drawing standards (check values 33 to 41).
TEST_CASE("feet and inches round once to sixteenths and carry") {
    const std::vector<Case> cases{
        {1687.5, "5'-6 7/16\""},
        {1200, "3'-11 1/4\""},
        {450, "1'-5 11/16\""},
        {300, "11 13/16\""},
        {2400, "7'-10 1/2\""},
        {3657.6, "12'-0\""},
        {304.8, "1'-0\""},
        {25.4, "1\""},
        {304.5, "1'-0\""},
        {609.5, "2'-0\""},
        {304.0, "11 15/16\""},
        {0, "0\""},
        {0.7, "0\""},
        {0.79375, "1/16\""},
        {1, "1/16\""},
        {6.35, "1/4\""},
        {-355.6, "-1'-2\""},
        {1050, "3'-5 5/16\""},
        {71, "2 13/16\""},
        {60.3, "2 3/8\""},
        {47, "1 7/8\""},
        {3000, "9'-10 1/8\""},
        {1830, "6'-0 1/16\""},
        {1143, "3'-9\""},
        {-0.5, "0\""},
    };
    for (const Case& c : cases) {
        INFO(c.value_mm);
        CHECK(number(c.value_mm, Units::FeetInches) == c.text);
    }
}

// Check value 42: 66 7/16 in = 66.4375 x 25.4 = 1687.5125 mm.
TEST_CASE("feet and inches are read as people write them") {
    for (const char* text : {"5' 6 7/16\"", "5'-6 7/16\"", "66 7/16\""}) {
        INFO(text);
        const auto read = parseNumber(text);
        REQUIRE(read.has_value());
        CHECK(*read == Approx(1687.5125).margin(1e-9));
    }
    CHECK(*parseNumber("12'") == Approx(3657.6));
    CHECK(*parseNumber("-1'-2\"") == Approx(-355.6));
    CHECK(*parseNumber("7/16\"") == Approx(11.1125));
    CHECK(*parseNumber("66 7/16", Units::FeetInches) == Approx(1687.5125));
}

TEST_CASE("metric numbers are read in the unit that is meant") {
    CHECK(*parseNumber("1073") == Approx(1073));
    CHECK(*parseNumber(" 801.5 ") == Approx(801.5));
    CHECK(*parseNumber("107.3", Units::Centimetres) == Approx(1073));
    CHECK(*parseNumber("1.073", Units::Metres) == Approx(1073));
}

TEST_CASE("what is no length is refused in a sentence") {
    for (const char* text : {"", "abc", "5''", "6 7/0\"", "1e9", "12 34", "nan", "inf", "'6\"", "7/", "\""}) {
        INFO(text);
        CHECK_FALSE(parseNumber(text).has_value());
    }
    CHECK(parseNumber("abc").error() ==
          "'abc' is not a length; write for example 1073, 801.5 or 5'-6 7/16\"");
}

// Check value 43: half of 1/16 in = 0.79375 mm.
TEST_CASE("a length printed in feet and inches and read again is off by at most 0.79375 mm") {
    double worst = 0;
    for (int i = 0; i <= 40000; ++i) {
        const double value_mm = i * 0.173;
        const auto read = parseNumber(number(value_mm, Units::FeetInches));
        REQUIRE(read.has_value());
        worst = std::max(worst, std::abs(*read - value_mm));
    }
    CHECK(worst <= 0.79375 + 1e-6);
}

TEST_CASE("millimetres print to the nearest half without a trailing zero") {
    const std::vector<Case> cases{{1073, "1073"}, {801.5, "801.5"}, {801.4, "801.5"}, {801.2, "801"},
                                  {0.25, "0.5"},  {-0.25, "-0.5"},  {-0.2, "0"},      {0, "0"},
                                  {100, "100"},   {12345, "12345"}, {-1200, "-1200"}, {70.99, "71"}};
    for (const Case& c : cases) {
        INFO(c.value_mm);
        CHECK(number(c.value_mm) == c.text);
    }
}

TEST_CASE("centimetres and metres print the same step") {
    CHECK(number(1073, Units::Centimetres) == "107.3");
    CHECK(number(1200, Units::Centimetres) == "120");
    CHECK(number(801.5, Units::Centimetres) == "80.15");
    CHECK(number(1073, Units::Metres) == "1.073");
    CHECK(number(1200, Units::Metres) == "1.200");
    CHECK(number(801.5, Units::Metres) == "0.8015");
}
