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

std::vector<Vec2> rectangle(Vec2 low, Vec2 high) {
    return {low, {high.x, low.y}, high, {low.x, high.y}};
}

/// The triangles have the area that is left, none is turned over, and none has its middle in a hole.
void checkFilled(const std::vector<Vec2>& outline, const std::vector<std::vector<Vec2>>& holes,
                 double expected) {
    std::vector<Vec2> points = outline;
    for (const auto& hole : holes)
        points.insert(points.end(), hole.begin(), hole.end());
    double sum = 0;
    for (const auto& t : triangulate(outline, holes)) {
        const double part = cross(points[t[1]] - points[t[0]], points[t[2]] - points[t[0]]) / 2;
        REQUIRE(part > -1e-6);
        sum += part;
        if (part < 1e-3) continue; // a sliver's middle may lie on the edge of a hole
        const Vec2 middle = (points[t[0]] + points[t[1]] + points[t[2]]) * (1.0 / 3);
        CHECK(insidePolygon(outline, middle));
        for (const auto& hole : holes)
            REQUIRE_FALSE(insidePolygon(hole, middle));
    }
    CHECK(sum == Approx(expected).epsilon(1e-6)); // far away, corners carry 1e-10 of rounding
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

TEST_CASE("three boxes in a row are cut out of a plate's frame") {
    // 223 x 81 less three squares of 54.9 at a pitch of 71.
    std::vector<std::vector<Vec2>> holes;
    for (const double x : {-71.0, 0.0, 71.0})
        holes.push_back(rectangle({x - 27.45, -27.45}, {x + 27.45, 27.45}));
    checkFilled(rectangle({-111.5, -40.5}, {111.5, 40.5}), holes, 223 * 81 - 3 * 54.9 * 54.9);
}

TEST_CASE("rows and columns of aligned holes are cut out, however many and wherever they stand") {
    std::mt19937 random(11); // fixed seed
    for (int round = 0; round < 1200; ++round) {
        const Move& move = kMoves[static_cast<std::size_t>(round) % kMoves.size()];
        const int columns = 1 + static_cast<int>(random() % 5);
        const int rows = 1 + static_cast<int>(random() % 4);
        const double side = 10 + static_cast<double>(random() % 60);
        const double pitch = side + 1 + static_cast<double>(random() % 30);
        std::vector<Vec2> outline = rectangle({0, 0}, {pitch * columns + 7, pitch * rows + 5});
        double expected = area(outline);
        std::vector<std::vector<Vec2>> holes;
        for (int i = 0; i < columns; ++i) {
            for (int j = 0; j < rows; ++j) {
                if (random() % 5 == 0) continue; // some are missing, so that rows are seen past gaps
                const Vec2 low{pitch * i + 4, pitch * j + 3};
                holes.push_back(rectangle(low, low + Vec2{side, side}));
                if (random() % 2 == 0) std::ranges::reverse(holes.back());
                expected -= side * side;
            }
        }
        std::ranges::shuffle(holes, random);
        for (Vec2& p : outline)
            p = move(p);
        for (auto& hole : holes)
            for (Vec2& p : hole)
                p = move(p);
        INFO("round " << round << ", " << move.name << ", " << columns << " x " << rows);
        checkFilled(outline, holes, expected);
    }
}

TEST_CASE("a polygon without area has no triangles") {
    CHECK(triangulate({}).empty());
    CHECK(triangulate({{0, 0}, {10, 0}}).empty());
    CHECK(triangulate({{0, 0}, {10, 0}, {20, 0}}).empty());
}
