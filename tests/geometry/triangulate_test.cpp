#include "houses.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

namespace {

struct Shape {
    const char* name;
    std::vector<Vec2> outline;
    std::vector<std::vector<Vec2>> holes;
};

const std::vector<Shape> kShapes = {
    {"square", {{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {}},
    {"square with points along its sides",
     {{0, 0}, {5, 0}, {10, 0}, {10, 3}, {10, 10}, {4, 10}, {0, 10}, {0, 5}},
     {}},
    {"L", {{0, 0}, {20, 0}, {20, 8}, {9, 8}, {9, 20}, {0, 20}}, {}},
    {"comb",
     {{0, 0},
      {50, 0},
      {50, 30},
      {40, 30},
      {40, 5},
      {30, 5},
      {30, 30},
      {20, 30},
      {20, 5},
      {10, 5},
      {10, 30},
      {0, 30}},
     {}},
    {"one column", {{0, 0}, {30, 0}, {30, 30}, {0, 30}}, {{{10, 10}, {20, 10}, {20, 20}, {10, 20}}}},
    {"two columns in a row",
     {{0, 0}, {50, 0}, {50, 30}, {0, 30}},
     {{{10, 10}, {20, 10}, {20, 20}, {10, 20}}, {{30, 10}, {40, 10}, {40, 20}, {30, 20}}}},
    {"four columns",
     {{0, 0}, {50, 0}, {50, 50}, {0, 50}},
     {{{10, 10}, {20, 10}, {20, 20}, {10, 20}},
      {{30, 10}, {40, 10}, {40, 20}, {30, 20}},
      {{10, 30}, {20, 30}, {20, 40}, {10, 40}},
      {{30, 30}, {40, 30}, {40, 40}, {30, 40}}}},
    {"spiral",
     {{0, 0},
      {60, 0},
      {60, 60},
      {10, 60},
      {10, 20},
      {40, 20},
      {40, 40},
      {30, 40},
      {30, 30},
      {20, 30},
      {20, 50},
      {50, 50},
      {50, 10},
      {0, 10}},
     {}},
};

double area(const std::vector<Vec2>& ring) {
    return std::abs(signedArea(ring));
}

} // namespace

TEST_CASE("triangles fill a polygon exactly, whatever its winding, turn and place") {
    for (const Shape& shape : kShapes) {
        double expected = area(shape.outline);
        for (const auto& hole : shape.holes)
            expected -= area(hole);
        for (const Move& move : kMoves) {
            for (const bool reversed : {false, true}) {
                INFO(shape.name << ", " << move.name << (reversed ? ", reversed" : ""));
                auto outline = shape.outline;
                auto holes = shape.holes;
                for (Vec2& p : outline)
                    p = move(p);
                for (auto& hole : holes)
                    for (Vec2& p : hole)
                        p = move(p);
                if (reversed) std::ranges::reverse(outline);
                if (reversed && !holes.empty()) std::ranges::reverse(holes.front());
                std::vector<Vec2> points = outline;
                for (const auto& hole : holes)
                    points.insert(points.end(), hole.begin(), hole.end());
                double sum = 0;
                for (const auto& t : triangulate(outline, holes)) {
                    const double part = cross(points[t[1]] - points[t[0]], points[t[2]] - points[t[0]]) / 2;
                    REQUIRE(part > -1e-6); // corners in a line may be off it by rounding
                    sum += part;
                }
                CHECK(sum == Approx(expected).epsilon(1e-6)); // far away, corners carry 1e-10 of rounding
            }
        }
    }
}

TEST_CASE("random star-shaped rooms with a column are filled") {
    std::mt19937 random(7); // fixed seed
    std::uniform_real_distribution<double> radius(1500, 5000);
    for (int i = 0; i < 200; ++i) {
        std::vector<Vec2> outline;
        const int corners = 5 + i % 40;
        for (int k = 0; k < corners; ++k) {
            const double a = 2 * std::numbers::pi * k / corners;
            const double r = radius(random);
            outline.push_back({r * std::cos(a), r * std::sin(a)});
        }
        const std::vector<std::vector<Vec2>> holes = {{{-200, -200}, {-200, 200}, {200, 200}, {200, -200}}};
        std::vector<Vec2> points = outline;
        points.insert(points.end(), holes[0].begin(), holes[0].end());
        double sum = 0;
        for (const auto& t : triangulate(outline, holes))
            sum += cross(points[t[1]] - points[t[0]], points[t[2]] - points[t[0]]) / 2;
        REQUIRE(sum == Approx(area(outline) - 160000).epsilon(1e-9));
    }
}

TEST_CASE("a polygon without area has no triangles") {
    CHECK(triangulate({}).empty());
    CHECK(triangulate({{0, 0}, {10, 0}}).empty());
    CHECK(triangulate({{0, 0}, {10, 0}, {20, 0}}).empty());
}
