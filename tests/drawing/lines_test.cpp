#include "drawing/lines.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gangway::drawing;

namespace {

Pen pen(double width_mm, LineType type) {
    return {width_mm, type, kBlack};
}

// Walks the pattern along a line of that length; returns how much dash the line ends on.
double lastDash(const std::vector<double>& pattern, double length_mm) {
    double at = 0;
    for (std::size_t i = 0;; i = (i + 1) % pattern.size()) {
        if (at + pattern[i] >= length_mm - 1e-9) return i % 2 == 0 ? length_mm - at : 0;
        at += pattern[i];
    }
}

} // namespace

// Check value 66: L 50, d 0.25 gives 14 dashes of 2.875 and 13 gaps of 0.75 (arithmetic).
TEST_CASE("a dashed line of 50 mm is stretched to fourteen whole dashes") {
    const auto pattern = dashPattern(pen(0.25, LineType::Dashed), 50);
    REQUIRE(pattern.size() == 2);
    CHECK(pattern[0] == Approx(2.875));
    CHECK(pattern[1] == Approx(0.75));
    CHECK(14 * pattern[0] + 13 * pattern[1] == Approx(50));
}

// Check values 17 and 18: dash 12 d, gap 3 d, where the length is a whole number of repeats.
TEST_CASE("a dashed line that fits keeps twelve widths of dash and three of gap") {
    for (const double d : {0.18, 0.25, 0.35, 0.5}) {
        const auto pattern = dashPattern(pen(d, LineType::Dashed), 12 * d + 10 * 15 * d);
        REQUIRE(pattern.size() == 2);
        CHECK(pattern[0] == Approx(12 * d));
        CHECK(pattern[1] == Approx(3 * d));
    }
}

// Check values 19 and 20: 24 d, 3 d, dot of at most 0.5 d, 3 d.
TEST_CASE("a centre line that fits keeps its long dash, gap and dot") {
    for (const double d : {0.18, 0.25}) {
        const auto pattern = dashPattern(pen(d, LineType::LongDashDot), 24 * d + 5 * 30.5 * d);
        REQUIRE(pattern.size() == 4);
        CHECK(pattern[0] == Approx(24 * d));
        CHECK(pattern[1] == Approx(3 * d));
        CHECK(pattern[2] <= 0.5 * d + 1e-12);
        CHECK(pattern[3] == Approx(3 * d));
    }
}

TEST_CASE("every broken line begins and ends on a dash, at any length") {
    for (const LineType type :
         {LineType::Dashed, LineType::DashedSpaced, LineType::LongDashDot, LineType::LongDashDoubleDot,
          LineType::Dotted, LineType::DashDot, LineType::DashDoubleDot}) {
        for (double length_mm = 1; length_mm < 130; length_mm += 0.37) {
            const auto pattern = dashPattern(pen(0.25, type), length_mm);
            INFO(static_cast<int>(type) << " at " << length_mm);
            if (pattern.empty()) continue;
            CHECK(lastDash(pattern, length_mm) == Approx(pattern[0]).margin(1e-6));
            for (const double part : pattern)
                CHECK(part > 0);
        }
    }
}

// ISO 128-2 table 3 as drawing-standards section 1.1 gives it: 12 d, 3 d, dot, 3 d for line type 10.
TEST_CASE("a dashed dotted line comes again sooner than a centre line of its width") {
    CHECK(repeat(pen(0.5, LineType::DashDot)) == Approx(0.5 * (12 + 3 + 0.5 + 3)));
    CHECK(repeat(pen(0.5, LineType::LongDashDot)) == Approx(0.5 * (24 + 3 + 0.5 + 3)));
    CHECK(repeat(pen(0.25, LineType::Dashed)) == Approx(3.75));
    CHECK(repeat(pen(0.25, LineType::Continuous)) == 0);
}

// 86 mm at 1:20 is 4.3 mm (check value 15): such a side must still read as dashed.
TEST_CASE("the side of a hidden plate at 1:20 still carries two dashes") {
    const auto pattern = dashPattern(pen(0.25, LineType::Dashed), 4.3);
    REQUIRE(pattern.size() == 2);
    CHECK(2 * pattern[0] + pattern[1] == Approx(4.3));
}

TEST_CASE("continuous lines and lines without length have no pattern") {
    CHECK(dashPattern(pen(0.25, LineType::Continuous), 50).empty());
    CHECK(dashPattern(pen(0.25, LineType::Dashed), 0).empty());
    CHECK(dashPattern(pen(0.25, LineType::Dashed), NAN).empty());
    CHECK(dashRuns({{1, 1}}, false, pen(0.25, LineType::Dashed)).empty());
}

TEST_CASE("a dashed rectangle is laid side by side, so that corners are inked") {
    const auto runs = dashRuns({{0, 0}, {40, 0}, {40, 25}, {0, 25}}, true, pen(0.25, LineType::Dashed));
    REQUIRE(runs.size() == 4);
    double sum = 0;
    for (const DashRun& run : runs) {
        CHECK_FALSE(run.closed);
        REQUIRE(run.points.size() == 2);
        CHECK(lastDash(run.pattern_mm, length(run.points, false)) == Approx(run.pattern_mm[0]).margin(1e-9));
        sum += length(run.points, false);
    }
    CHECK(sum == Approx(130));
}

TEST_CASE("a dashed curve of short steps keeps one pattern along its length") {
    std::vector<Pt> curve;
    for (int i = 0; i <= 40; ++i)
        curve.push_back({20 * std::cos(i * 0.04), 20 * std::sin(i * 0.04)});
    const auto runs = dashRuns(curve, false, pen(0.25, LineType::Dashed));
    REQUIRE(runs.size() == 1);
    CHECK(runs[0].points.size() == curve.size());
    CHECK(runs[0].pattern_mm.size() == 2);
}

TEST_CASE("a dashed circle closes on a whole number of repeats") {
    const double around = 2 * 3.14159265358979 * 5;
    const auto pattern = dashPatternAround(pen(0.25, LineType::Dashed), around);
    REQUIRE(pattern.size() == 2);
    const double repeats = around / (pattern[0] + pattern[1]);
    CHECK(repeats == Approx(std::round(repeats)).margin(1e-9));
}
