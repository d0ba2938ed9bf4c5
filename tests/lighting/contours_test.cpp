// Lines of equal light against circles of known radius.
#include "lighting/contours.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace gangway;
using lighting::LightGrid;

namespace {

LightGrid gridOf(int columns, int rows, double cell_mm, plan::Vec2 origin, auto value) {
    LightGrid grid{cell_mm, origin, columns, rows, {}};
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < columns; ++column)
            grid.lux.push_back(value(grid.middleOf(column, row)));
    return grid;
}

double signedArea(const std::vector<plan::Vec2>& points) {
    double sum = 0;
    for (std::size_t i = 0; i < points.size(); ++i)
        sum += cross(points[i], points[(i + 1) % points.size()]) / 2;
    return sum;
}

} // namespace

TEST_CASE("levels go in steps of 1, 2 and 5") {
    CHECK(lighting::contourLevels(5, 600) == std::vector<double>{5, 10, 20, 50, 100, 200, 500});
    CHECK(lighting::contourLevels(7, 12) == std::vector<double>{10});
    CHECK(lighting::contourLevels(100, 100) == std::vector<double>{100});
    CHECK(lighting::contourLevels(0, 100).empty());
    CHECK(lighting::contourLevels(60, 90).empty());
}

TEST_CASE("under one lamp the lines are circles of the radius the law gives") {
    // E = I h / (h2 + r2)^1.5 (trade-facts 8.4), so r = sqrt((I h / E)^(2/3) - h2). 1000 cd, 1.8 m.
    constexpr double kIntensity = 1000;
    constexpr double kHeight = 1.8;
    const plan::Vec2 middle{12345, -6789};
    const auto grid = gridOf(160, 140, 50, middle - plan::Vec2{4010, 3490}, [&](plan::Vec2 at) {
        const double r = length(at - middle) / 1000;
        return kIntensity * kHeight / std::pow(kHeight * kHeight + r * r, 1.5);
    });
    const auto lines = lighting::contours(grid, {50, 100, 200, 500});
    REQUIRE(lines.size() == 3); // 500 lx is nowhere: below the lamp it is 308.6
    for (const auto& line : lines) {
        const double radius =
            1000 * std::sqrt(std::pow(kIntensity * kHeight / line.level_lx, 2.0 / 3) - kHeight * kHeight);
        CHECK(line.closed);
        CHECK(signedArea(line.points_mm) > 0); // the higher side, inside, is on the left
        for (plan::Vec2 p : line.points_mm)
            CHECK(length(p - middle) == Approx(radius).margin(1.0));
    }
}

TEST_CASE("a slope has one straight line across, open at both ends, and none where there is no value") {
    auto grid = gridOf(11, 6, 100, {0, 0}, [](plan::Vec2 at) { return at.x; });
    auto lines = lighting::contours(grid, {333});
    REQUIRE(lines.size() == 1);
    CHECK_FALSE(lines[0].closed);
    CHECK(lines[0].points_mm.size() == 6);
    for (plan::Vec2 p : lines[0].points_mm)
        CHECK(p.x == Approx(333));
    // A value missing in its way parts the line in two.
    grid.lux[2 * 11 + 3] = std::numeric_limits<double>::quiet_NaN();
    lines = lighting::contours(grid, {333});
    CHECK(lines.size() == 2);
}

TEST_CASE("at a saddle the mean of the four corners says which corners are joined") {
    const auto linesAt = [](double other) {
        // High at two opposite corners (100), `other` at the two others; the level between.
        LightGrid grid{100, {0, 0}, 2, 2, {100, other, other, 100}};
        return lighting::contours(grid, {50});
    };
    // Mean 45: the high corners stand apart, each with the line round it; mean 65: the low ones do.
    const auto apart = linesAt(-10);
    REQUIRE(apart.size() == 2);
    const auto joined = linesAt(30);
    REQUIRE(joined.size() == 2);
    const auto middleOf = [](const lighting::Contour& line) {
        return (line.points_mm.front() + line.points_mm.back()) * 0.5;
    };
    // A line round the lower left corner (50, 50) has its middle near that corner or its opposite.
    for (const auto& line : apart)
        CHECK(std::abs(middleOf(line).x - middleOf(line).y) < 1e-6);
    for (const auto& line : joined)
        CHECK(std::abs(middleOf(line).x + middleOf(line).y - 200) < 1e-6);
}
