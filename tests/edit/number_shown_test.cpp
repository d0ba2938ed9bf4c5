#include "edit/number_shown.hpp"

#include "drawing/dimensions.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace gangway;
using edit::lengthInWords;
using edit::parseLengthIn;
using edit::shownLength;
using plan::DisplayUnits;

namespace {

struct Shown {
    double mm;
    const char* text;
};
struct Typed {
    const char* text;
    double mm;
};

constexpr DisplayUnits kUnits[] = {DisplayUnits::Millimetres, DisplayUnits::Centimetres, DisplayUnits::Metres,
                                   DisplayUnits::FeetInches};
constexpr drawing::Units kSheetUnits[] = {drawing::Units::Millimetres, drawing::Units::Centimetres,
                                          drawing::Units::Metres, drawing::Units::FeetInches};

} // namespace

// Worked by hand: inches = mm / 25.4 exactly (international inch), sixteenths = inches x 16, rounded once; 16
// of them carry to an inch and 12 inches to a foot. So 1050 / 25.4 x 16 = 661.4, that is 41 5/16 in.
TEST_CASE("feet and inches are shown to a sixteenth and carry") {
    for (const Shown& shown : {Shown{1066.8, "3'-6\""},   // 42 in
                               {1079.5, "3'-6 1/2\""},    // 42.5 in
                               {304.8, "1'-0\""},         // 12 in
                               {304.79, "1'-0\""},        // 191.99 sixteenths
                               {304.0, "11 15/16\""},     // 191.50: 191.496 stays 191
                               {-304.79, "-1'-0\""},      // the sign stands in front
                               {-1066.8, "-3'-6\""},      //
                               {0, "0\""},                //
                               {-0.5, "0\""},             // 0.31 sixteenths: no minus nought
                               {0.79, "0\""},             // 0.498 sixteenths
                               {0.79375, "1/16\""},       // half a sixteenth rounds up
                               {25.4, "1\""},             //
                               {24.7, "1\""},             // 15.56 sixteenths
                               {24.6, "15/16\""},         // 15.496 sixteenths
                               {12.7, "1/2\""},           //
                               {6.35, "1/4\""},           //
                               {3.175, "1/8\""},          //
                               {19.05, "3/4\""},          //
                               {317.5, "1'-0 1/2\""},     // 12.5 in: the nought is written
                               {306.3875, "1'-0 1/16\""}, // 12.0625 in
                               {609.2, "2'-0\""},         // 383.75 sixteenths of 384
                               {608.8, "1'-11 15/16\""},  // 383.50: 383.496 stays 383
                               {1050, "3'-5 5/16\""},     // 661.4 sixteenths
                               {450, "1'-5 11/16\""},     // 283.46 sixteenths
                               {2438.4, "8'-0\""},        // 96 in
                               {100'000, "328'-1\""}}) {  // 62992.1 = 328 x 192 + 16 sixteenths
        INFO(shown.mm);
        CHECK(shownLength(shown.mm, DisplayUnits::FeetInches) == shown.text);
    }
}

// To the nearest half millimetre, as the sheets print (drawing/dimensions.hpp).
TEST_CASE("metric lengths are shown to half a millimetre in the house's unit") {
    for (const Shown& shown :
         {Shown{1073, "1073"}, {801.25, "801.5"}, {801.2, "801"}, {-0.2, "0"}, {-1200, "-1200"}, {0, "0"}}) {
        INFO(shown.mm);
        CHECK(shownLength(shown.mm, DisplayUnits::Millimetres) == shown.text);
    }
    CHECK(shownLength(1073, DisplayUnits::Centimetres) == "107.3");
    CHECK(shownLength(801.5, DisplayUnits::Centimetres) == "80.15");
    CHECK(shownLength(1200, DisplayUnits::Centimetres) == "120");
    CHECK(shownLength(1200, DisplayUnits::Metres) == "1.200");
    CHECK(shownLength(801.5, DisplayUnits::Metres) == "0.8015");
    CHECK(lengthInWords(1050, DisplayUnits::Millimetres) == "1050 mm");
    CHECK(lengthInWords(1050, DisplayUnits::Centimetres) == "105 cm");
    CHECK(lengthInWords(1050, DisplayUnits::Metres) == "1.050 m");
    CHECK(lengthInWords(1050, DisplayUnits::FeetInches) == "3'-5 5/16\"");
}

// One number on screen and on paper (design.md 8): the two folders may not use each other, so they are
// compared.
TEST_CASE("a length reads on the screen as it is printed on the sheet") {
    for (std::size_t unit = 0; unit < std::size(kUnits); ++unit)
        for (int i = -500; i < 4000; ++i) {
            const double mm = i * 1.171875; // meets halves of a millimetre and of a sixteenth
            INFO(mm);
            REQUIRE(shownLength(mm, kUnits[unit]) == drawing::number(mm, kSheetUnits[unit]));
        }
}

// Half a step is 0.25 mm, or 1/32 in = 0.79375 mm.
TEST_CASE("what is shown is read back to within half its step") {
    for (const DisplayUnits units : kUnits) {
        const double half_step = units == DisplayUnits::FeetInches ? 25.4 / 32 : 0.25;
        double worst = 0;
        for (int i = -6000; i <= 14000; ++i) {
            const double mm = i * 0.4373;
            const auto read = parseLengthIn(shownLength(mm, units), units);
            INFO(shownLength(mm, units));
            REQUIRE(read);
            worst = std::max(worst, std::abs(*read - mm));
        }
        CHECK(worst <= half_step + 1e-6);
        CHECK(worst > half_step * 0.9); // a reader that kept the number itself would not be tested
    }
}

TEST_CASE("a bare number counts the house's unit, and a unit counts as it says") {
    for (const Typed& typed : {Typed{"105", 1050},
                               {"105+71/2", 1405},
                               {"1050mm", 1050},
                               {"2*7.1", 142},
                               {"(10+2)*3", 360},
                               {"10 + 5mm", 105},
                               {"3'", 914.4}}) {
        INFO(typed.text);
        const auto read = parseLengthIn(typed.text, DisplayUnits::Centimetres);
        REQUIRE(read);
        CHECK(*read == Approx(typed.mm).margin(1e-9));
    }
    CHECK(*parseLengthIn("1.05", DisplayUnits::Metres) == Approx(1050));
    CHECK(*parseLengthIn("1.05+2cm", DisplayUnits::Metres) == Approx(1070));
    CHECK(*parseLengthIn("1050", DisplayUnits::Millimetres) == Approx(1050));
    CHECK(*parseLengthIn("3'-6", DisplayUnits::Millimetres) == Approx(908.4)); // there it is a difference
}

// 42 in = 1066.8 mm, 42.5 in = 1079.5 mm.
TEST_CASE("in a house of feet and inches a bare number is inches and marks may be left out") {
    for (const Typed& typed :
         {Typed{"42", 1066.8},  {"3'-6\"", 1066.8},   {"3'-6", 1066.8},       {"3' 6", 1066.8},
          {"3'6", 1066.8},      {"3'-6 1/2", 1079.5}, {"3' 6 1/2\"", 1079.5}, {"42 1/2", 1079.5},
          {"42.5", 1079.5},     {"1/2", 12.7},        {"3'-1/2", 927.1}, // 36.5 in
          {"3' - 6", 762},      // 30 in: a minus with spaces round it takes away
          {"3'-6 + 2", 1117.6}, // 44 in
          {"3'-6*2", 2133.6},   // 84 in
          {"(3'+6)/2", 533.4},  // 21 in
          {"48/2", 609.6},      // 24 in
          {"-1'-2", -355.6},    // 14 in
          {"3'-6mm", 908.4},    // 914.4 less 6
          {"1050 mm", 1050},    {"105cm", 1050}}) {
        INFO(typed.text);
        const auto read = parseLengthIn(typed.text, DisplayUnits::FeetInches);
        REQUIRE(read);
        CHECK(*read == Approx(typed.mm).margin(1e-9));
    }
}

TEST_CASE("a product of lengths and half a length are refused in words") {
    CHECK(parseLengthIn("3' * 2'", DisplayUnits::FeetInches).error() ==
          "can't multiply a length by a length");
    CHECK(parseLengthIn("6/2cm", DisplayUnits::Millimetres).error() == "can't divide by a length");
    CHECK(parseLengthIn("6/0", DisplayUnits::FeetInches).error() == "can't divide by 0");
    CHECK(parseLengthIn("3'-", DisplayUnits::FeetInches).error() == "the length breaks off at its end");
    CHECK(parseLengthIn("6 1/0", DisplayUnits::FeetInches).error() == "did not expect '1/0'");
}
