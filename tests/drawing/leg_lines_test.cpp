#include "drawing/leg_lines.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace gangway::drawing;

namespace {
LegEnd roundEnd(Pt at, double radius) {
    return {{at.x - radius, at.y - radius, at.x + radius, at.y + radius}, true};
}
} // namespace

TEST_CASE("an arc sags by its part of the chord in the middle, to the left") {
    // Arithmetic: chord 100, part 0.15.
    const auto points = arcPoints({0, 0}, {100, 0}, 0.15);
    const Pt middle = points[points.size() / 2];
    CHECK(middle.x == Approx(50));
    CHECK(middle.y == Approx(15));
    CHECK(arcPoints({0, 0}, {100, 0}, -0.15)[points.size() / 2].y == Approx(-15));
}

TEST_CASE("a leg line starts at the edge of its symbol and is aimed at the middle of it") {
    const auto line = legLine(LegShape::Arc, roundEnd({0, 0}, 2), roundEnd({60, 0}, 2), {});
    REQUIRE(line.points.size() > 2);
    const Pt first = line.points.front();
    CHECK(std::hypot(first.x, first.y) == Approx(2.4).margin(0.01)); // radius and 0.4 of paper
    // Radially: the line's own direction there is away from the middle, within the bend of 2.4 mm of arc.
    const Pt next = line.points[1];
    const double out = std::atan2(first.y, first.x);
    const double way = std::atan2(next.y - first.y, next.x - first.x);
    CHECK(std::abs(out - way) < 3 * std::numbers::pi / 180);
}

TEST_CASE("an arc takes the other side when a text is in its way") {
    const PaperBox text{25, 3, 35, 12}; // where an arc with sag 0.15 of 60 mm passes
    const auto line = legLine(LegShape::Arc, roundEnd({0, 0}, 2), roundEnd({60, 0}, 2), std::vector{text});
    CHECK(line.covered_mm == 0);
    CHECK(lengthInside(arcPoints({0, 0}, {60, 0}, kLegSag), text) > 5);
    CHECK(line.points[line.points.size() / 2].y < 0);
}

TEST_CASE("an arc keeps to the side that is wanted") {
    const auto line = legLine(LegShape::Arc, roundEnd({0, 0}, 2), roundEnd({60, 0}, 2), {},
                              [](Pt p) { return p.y <= 0.01; });
    CHECK(line.points[line.points.size() / 2].y < 0);
}

TEST_CASE("square runs have right angles only, rounded ones are shorter") {
    const auto square = roundedRuns({{0, 0}, {20, 0}, {20, 30}}, 0);
    CHECK(square == std::vector<Pt>{{0, 0}, {20, 0}, {20, 30}});
    const auto rounded = roundedRuns({{0, 0}, {20, 0}, {20, 30}}, 2.5);
    double length = 0;
    for (std::size_t i = 1; i < rounded.size(); ++i)
        length += std::hypot(rounded[i].x - rounded[i - 1].x, rounded[i].y - rounded[i - 1].y);
    // 50 less two legs of 2.5, and a quarter circle of that radius (chords of 15 degrees are 0.3 % short).
    CHECK(length == Approx(50 - 5 + std::numbers::pi * 2.5 / 2).margin(0.02));
}

TEST_CASE("the length of a line in a box is that of the part within") {
    CHECK(lengthInside(std::vector<Pt>{{-10, 1}, {10, 1}}, {-2, 0, 3, 2}) == Approx(5));
    CHECK(lengthInside(std::vector<Pt>{{-10, 5}, {10, 5}}, {-2, 0, 3, 2}) == 0);
    CHECK(lengthInside(std::vector<Pt>{{0, 0}, {3, 4}}, {-1, -1, 9, 9}) == Approx(5));
}

TEST_CASE("symbols that touch are not joined by a line") {
    CHECK(legLine(LegShape::Straight, roundEnd({0, 0}, 2), roundEnd({3, 0}, 2), {}).points.empty());
}
