#include "house.hpp"

#include "scene/colour.hpp"

using namespace gangway;
using Catch::Matchers::WithinAbs;

TEST_CASE("east is x, up is y and north is minus z on the stage, in metres") {
    const glm::vec3 p = scene::toScene({1000, 2000, 300}, 2800);
    CHECK(p.x == Approx(1));
    CHECK(p.y == Approx(3.1));
    CHECK(p.z == Approx(-2));
}

TEST_CASE("a point goes to the stage and comes back to a thousandth of a millimetre") {
    for (const plan::Vec3 house_mm :
         {plan::Vec3{0, 0, 0}, {3141.5, -2718.25, 1050}, {-9000.125, 8000, 2399.5}}) {
        const plan::Vec3 back = scene::toHouse(scene::toScene(house_mm));
        CHECK_THAT(back.x, WithinAbs(house_mm.x, 1e-3));
        CHECK_THAT(back.y, WithinAbs(house_mm.y, 1e-3));
        CHECK_THAT(back.z, WithinAbs(house_mm.z, 1e-3));
    }
}

TEST_CASE("sRGB goes to linear light as IEC 61966-2-1 says") {
    CHECK(scene::linearFromHex("#000000").x == Approx(0).margin(1e-6));
    CHECK(scene::linearFromHex("#FFFFFF").x == Approx(1));
    // 128/255: ((0.50196 + 0.055) / 1.055)^2.4 = 0.21586, by hand from the standard's formula.
    CHECK(scene::linearFromHex("#808080").y == Approx(0.21586).epsilon(1e-4));
    CHECK(scene::linearFromHex("#0a0A0A").z == Approx(10 / 255.0 / 12.92).epsilon(1e-4));
    CHECK(scene::linearFromHex("clay", glm::vec3(0.25f)).x == Approx(0.25));
}

TEST_CASE("a black body of 2856 K has the chromaticity of CIE illuminant A") {
    // CIE 15: illuminant A, x = 0.44758, y = 0.40745.
    const plan::Vec2 xy = scene::planckianChromaticity(2856);
    CHECK_THAT(xy.x, WithinAbs(0.44758, 5e-4));
    CHECK_THAT(xy.y, WithinAbs(0.40745, 5e-4));
}

TEST_CASE("the lower a lamp's colour temperature, the redder its light") {
    const glm::vec3 warm = scene::lightColour(2200);
    const glm::vec3 usual = scene::lightColour(2700);
    const glm::vec3 cool = scene::lightColour(6500);
    CHECK(warm.r == Approx(1));
    CHECK(warm.b < usual.b);
    CHECK(usual.b < usual.g);
    CHECK(cool.b == Approx(1));
    CHECK(cool.r < cool.b);
    CHECK(scene::lightColour(4000).g == Approx(1));
}
