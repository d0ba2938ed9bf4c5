// The lumen method against the worked examples of trade-facts ("Check values").
#include "lighting/lumen_method.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gangway::lighting;

TEST_CASE("the worked examples of the lumen method come out") {
    // 11: 500 lx, 50 m2, 3500 lm, UF 0.6, MF 0.8: 14.88 -> 15, achieved 504 lx.
    const double lamps = lumensFor(500, 0.6, 0.8, 50) / 3500;
    CHECK(lamps == Approx(14.88).epsilon(0.001));
    CHECK(lumenMethod(std::ceil(lamps) * 3500, 0.6, 0.8, 50) == Approx(504));
    // 12: 50 fc, 40 x 60 ft, 4000 lm, 0.65, 0.80: 57.69 -> 58, 50.27 fc. In feet the sums are the same.
    CHECK(lumensFor(50, 0.65, 0.80, 40 * 60) / 4000 == Approx(57.69).epsilon(0.001));
    CHECK(lumenMethod(58 * 4000, 0.65, 0.80, 40 * 60) == Approx(50.27).epsilon(0.001));
    // The same in metres: 50.27 fc x 10.764.
    const double square_m = 40 * 0.3048 * 60 * 0.3048;
    CHECK(lumenMethod(58 * 4000, 0.65, 0.80, square_m) == Approx(50.27 * kLuxPerFootcandle).epsilon(0.001));
    // 13: 15 x 9 m, 200 lx, UF 0.9, MF 0.8: 37,500 lm.
    CHECK(lumensFor(200, 0.9, 0.8, 15 * 9) == Approx(37500));
    CHECK(lumenMethod(1000, 0.5, 0.8, 0) == 0);
}

TEST_CASE("the room index of the worked example is 1.434, and a turned outline has the same") {
    // 14: room 5 x 4 x 2.4, plane 0.85, ceiling lamps.
    CHECK(roomIndex(5 * 4, 2 * (5 + 4), 2.4 - 0.85) == Approx(1.434).epsilon(0.001));
    CHECK(roomIndex(20, 18, 0) == 0);
}
