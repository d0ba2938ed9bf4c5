// Interval arithmetic of bars and free stretches, by hand-worked figures.
#include "checks/stretches.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace gangway;
using namespace gangway::checks;

namespace {
Bar rectangleBar(double left, double right, double low, double high, double keep = 0) {
    Bar bar;
    bar.area_mm = rectangle(left, right, low, high);
    bar.keep = keepAround(keep);
    return bar;
}
} // namespace

TEST_CASE("a bar keeps a plate's centre away by half the plate and the free space") {
    // 500 to 600 wide; a plate 80 wide with 20 kept free: 500 - 20 - 40 to 600 + 20 + 40.
    const Bar bar = rectangleBar(500, 600, 900, 1000, 20);
    CHECK(barredAlong(bar, {40, 40}, 950) == Interval{440, 660});
    CHECK(barredUp(bar, {40, 40}, 550) == Interval{840, 1060});
    // Just touching the kept space from below: 900 - 20 - 40.
    CHECK_FALSE(barredAlong(bar, {40, 40}, 840));
    CHECK(barredAlong(bar, {40, 40}, 840.1) == Interval{440, 660});
    CHECK(gapTo(bar, {40, 40}, {660, 950}) == Approx(20));
    CHECK(gapTo(bar, {40, 40}, {630, 950}) == Approx(-10));
    CHECK(overlapAlong(bar, {40, 40}, {630, 950}) == Approx(10));
}

TEST_CASE("under a slope a bar takes what the plate's corner meets") {
    // A ceiling that falls from 2000 at u 0 to 1000 at u 1000; the plate's upper right corner meets it at
    // v + 40 = 2000 - (u + 40).
    Bar bar;
    bar.area_mm = {{0, 2000}, {1000, 1000}, {1000, 5000}, {0, 5000}};
    const auto barred = barredAlong(bar, {40, 40}, 1460);
    REQUIRE(barred);
    CHECK(barred->from_mm == Approx(460));
}

TEST_CASE("free stretches are what no bar takes, with what closes each") {
    std::vector<Bar> bars{rectangleBar(200, 300, 0, 2000), rectangleBar(600, 700, 0, 2000),
                          rectangleBar(380, 420, 0, 500)};
    const auto free = freeStretches(bars, {50, 50}, 1000, {50, 950});
    REQUIRE(free.size() == 3);
    CHECK(free[0].u == Interval{50, 150});
    CHECK(free[0].left == nullptr);
    CHECK(free[0].right == &bars[0]);
    CHECK(free[1].u == Interval{350, 550});
    CHECK(free[1].left == &bars[0]);
    CHECK(free[2].u == Interval{750, 950});
    CHECK(nearestFree(free, 250) == 150);
    CHECK(nearestFree(free, 260) == 350);
    // Lower, the third bar takes most of the middle stretch: 420 + 50 to 600 - 50.
    const auto low = freeStretches(bars, {50, 50}, 400, {50, 950});
    REQUIRE(low.size() == 3);
    CHECK(low[1].u == Interval{470, 550});
}

TEST_CASE("a gap that fits exactly is a free stretch of one point") {
    const std::vector<Bar> bars{rectangleBar(0, 100, 0, 10), rectangleBar(200, 300, 0, 10)};
    const auto free = freeStretches(bars, {50, 5}, 5, {-1000, 1000});
    REQUIRE(free.size() == 3);
    CHECK(free[1].u == Interval{150, 150});
}

TEST_CASE("a margin is the least way to where a bar begins") {
    const std::vector<Bar> bars{rectangleBar(500, 600, 0, 900), rectangleBar(0, 1000, 1200, 1300)};
    CHECK(marginOf(bars, {40, 40}, {450, 1000}, {40, 960}).mm == Approx(60)); // 60 down and 10 right at once
    CHECK(marginOf(bars, {40, 40}, {450, 850}, {40, 960}).mm == Approx(10));  // right to 460
    CHECK(marginOf(bars, {40, 40}, {450, 1155}, {40, 960}).mm == Approx(5));  // up to 1160
    CHECK(marginOf(bars, {40, 40}, {45, 700}, {40, 960}).mm == Approx(5));    // the wall's end
    CHECK(marginOf(bars, {40, 40}, {480, 700}, {40, 960}).mm == 0);
}

TEST_CASE("a place is barred exactly when the plate overlaps an area grown by its free space") {
    std::mt19937 random(20261126);
    std::uniform_real_distribution<double> at(0, 1000);
    for (int i = 0; i < 2000; ++i) {
        const double left = at(random);
        const double low = at(random);
        const Bar bar = rectangleBar(left, left + at(random) + 1, low, low + at(random) + 1, at(random) / 10);
        const plan::Vec2 half{at(random) / 10 + 1, at(random) / 10 + 1};
        const plan::Vec2 centre{at(random) * 2, at(random) * 2};
        // By the definition of overlapping rectangles.
        const double k = bar.keep.left_mm;
        const bool overlaps =
            centre.x + half.x > bar.area_mm[0].x - k && centre.x - half.x < bar.area_mm[1].x + k &&
            centre.y + half.y > bar.area_mm[0].y - k && centre.y - half.y < bar.area_mm[2].y + k;
        const auto along = barredAlong(bar, half, centre.y);
        CHECK(overlaps == (along && centre.x > along->from_mm && centre.x < along->to_mm));
        CHECK(overlaps == (playOf(bar, half, centre) < 0));
        const auto up = barredUp(bar, half, centre.x);
        CHECK(overlaps == (up && centre.y > up->from_mm && centre.y < up->to_mm));
    }
}

TEST_CASE("the play beside a slope closes along its normal") {
    // The slope v = 2000 - u; the plate's corner at (140, 1140): 2000 - 1280 = 720 in u + v, half of it each
    // way.
    Bar bar;
    bar.area_mm = {{0, 2000}, {1000, 1000}, {1000, 5000}, {0, 5000}};
    CHECK(playOf(bar, {40, 40}, {100, 1100}) == Approx(360));
}
