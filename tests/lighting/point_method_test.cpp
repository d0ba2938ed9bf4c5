// The point method against the worked examples of trade-facts ("Check values"), to 0.5 % as stated there, and
// the shapes of light against their closed forms.
#include "geometry/shapes.hpp"
#include "lighting/illuminance.hpp"
#include "lighting/light_grid.hpp"
#include "lighting/lumen_method.hpp"
#include "support/plain_room.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace gangway;
using lighting::Distribution;
using lighting::Emitter;
using plan::Vec3;

namespace {

constexpr double kPi = std::numbers::pi;

Emitter lampAt(Vec3 at_m, Distribution distribution) {
    Emitter lamp;
    lamp.at_mm = at_m * 1000;
    lamp.aim = {0, 0, -1};
    lamp.ahead = {1, 0, 0};
    lamp.distribution = std::make_shared<const Distribution>(std::move(distribution));
    return lamp;
}

/// Alike in all directions.
Emitter candelas(double cd, Vec3 at_m) {
    return lampAt(at_m, Distribution::uniform(cd * 4 * kPi));
}

double luxAt(const std::vector<Emitter>& lamps, Vec3 at_m, Vec3 facing = {0, 0, 1}) {
    return lighting::illuminance(lamps, {at_m * 1000, facing}, nullptr);
}

/// Lumens by adding up intensity over the sphere in small bands.
double gathered(const Distribution& distribution) {
    constexpr int kBands = 20000;
    double sum = 0;
    for (int i = 0; i < kBands; ++i) {
        const double t = (i + 0.5) / kBands * kPi;
        sum += distribution.intensity(std::cos(t)) * 2 * kPi * std::sin(t) * kPi / kBands;
    }
    return sum;
}

Approx near(double value) {
    return Approx(value).epsilon(0.005);
}

} // namespace

TEST_CASE("the textbook examples of the point method come out") {
    // Numbers of the check values in trade-facts.
    CHECK(luxAt({candelas(1000, {0, 0, 2})}, {}) == near(250));                               // 1
    CHECK(luxAt({candelas(2000, {0, 0, 4})}, {}) == near(125));                               // 2
    CHECK(luxAt({candelas(2000, {0, 0, 4})}, {3, 0, 0}) == near(64));                         // 3
    CHECK(luxAt({candelas(4800, {0, 0, 4})}, {}) == near(300));                               // 4
    CHECK(luxAt({candelas(5.4, {0, 0, 0.6})}, {}) == near(15));                               // 5
    CHECK(luxAt({candelas(5.4, {0, 0, 0.6})}, {0.8, 0, 0}) == near(3.24));                    // 5
    CHECK(luxAt({lampAt({0, 0, 8}, Distribution::uniform(1200))}, {0, 6, 0}) == near(0.764)); // 6
    const std::vector<Emitter> ten{candelas(1000, {0, 0, 10})};
    CHECK(luxAt(ten, {19.08, 0, 0}) == near(luxAt(ten, {}) / 10)); // 7
    std::vector<Emitter> row;
    for (double x : {0.0, 10.0, 20.0, 30.0})
        row.push_back(candelas(200, {x, 0, 5}));
    CHECK(luxAt(row, {15, 0, 0}) == near(6.16)); // 8
    const std::vector<Emitter> pair{candelas(2400, {0, 0, 6}), candelas(2400, {20, 0, 6})};
    CHECK(luxAt(pair, {}) == near(68.25));         // 9
    CHECK(luxAt(pair, {10, 0, 0}) == near(18.16)); // 9
    CHECK(luxAt(pair, {4, 0, 0}) == near(41.29));  // 9
    const std::vector<Emitter> cosine_trap{candelas(550, {0, 0, 4})};
    CHECK(luxAt(cosine_trap, {}) == near(34.38));        // 10
    CHECK(luxAt(cosine_trap, {2, 0, 0}) == near(24.60)); // 10; 27.5 has forgotten the cosine
    CHECK(luxAt(cosine_trap, {4, 0, 0}) == near(12.15)); // 10
}

TEST_CASE("E = I h / (h2 + r2)^1.5 on the level, and the same law on a wall") {
    const double h = 2.3;
    for (double r = 0; r < 6; r += 0.7) {
        const double expected = 700 * h / std::pow(h * h + r * r, 1.5); // 8.4
        CHECK(luxAt({candelas(700, {0, 0, h})}, {r * 0.6, r * 0.8, 0}) == Approx(expected));
        // A wall at distance h, r aside.
        CHECK(luxAt({candelas(700, {h, 0, 0})}, {0, r, 0}, {1, 0, 0}) == Approx(expected));
    }
    CHECK(luxAt({candelas(700, {0, 0, -1})}, {}) == 0); // from below nothing falls on a face that looks up
}

TEST_CASE("a footcandle is 10.764 lx") {
    // 8.8: 1 cd at 1 ft gives 1 fc, and 1 ft is 0.3048 m.
    CHECK(luxAt({candelas(1, {0, 0, 0.3048})}, {}) == Approx(lighting::kLuxPerFootcandle).epsilon(1e-4));
}

TEST_CASE("every shape of light adds up to its lumens, with the intensity its formula says") {
    CHECK(Distribution::uniform(1000).intensity(-0.3) == Approx(1000 / (4 * kPi))); // 8.5
    CHECK(Distribution::cosine(1000).intensity(0.5) == Approx(1000 / kPi * 0.5));   // 8.5
    CHECK(Distribution::cosine(1000).intensity(-0.5) == 0);
    for (const auto& shape :
         {Distribution::uniform(800), Distribution::cosine(800), Distribution::halfSpace(800),
          Distribution::beam(800, 15), Distribution::beam(800, 60), Distribution::beam(800, 120)})
        CHECK(gathered(shape) == Approx(800).epsilon(1e-4));
}

TEST_CASE("a beam has half of its middle's intensity at its edge, near the mean over a sharp cone") {
    for (double beam : {15.0, 36.0, 60.0}) {
        const auto shape = Distribution::beam(800, beam);
        const double edge = std::cos(beam / 2 * kPi / 180);
        CHECK(shape.intensity(edge) == Approx(shape.intensity(1) / 2));
        // 8.6: mean I = flux / (2 pi (1 - cos(b / 2))). Half of a small round hill's light lies within its
        // half height, where the mean is 1 / (2 ln 2) = 0.72 of the top: so the top is 0.69 of the sharp
        // cone's mean.
        const double sharp = 800 / (2 * kPi * (1 - edge));
        CHECK(shape.intensity(1) == Approx(sharp * std::numbers::ln2).epsilon(0.05));
    }
}

TEST_CASE("a slab between lamp and point gives dark, without half shadow, and light beside it") {
    // Slab 1 m square half way up: its shadow on the floor is 2 m square.
    const lighting::RayWorld world({geometry::box({-500, -500, 990}, {500, 500, 1000})});
    const std::vector<Emitter> lamps{candelas(1000, {0, 0, 2})};
    const auto lit = [&](double x) { return lighting::illuminance(lamps, {{x, 0, 0}}, &world); };
    CHECK(lit(0) == 0);
    CHECK(lit(985) == 0);
    // The lower edge at 990 throws the outline to 500 * 2000 / 1010 = 990, the upper to 1000.
    CHECK(lit(1005) == Approx(lighting::illuminance(lamps, {{1005, 0, 0}}, nullptr)));
    CHECK(lit(1005) == near(178.3)); // 1000 x 2 / (4 + 1.01)^1.5
    CHECK_FALSE(world.blocked({0, 0, 1001}, {0, 0, 2000}));
}

TEST_CASE("shadows hold far from the origin and when turned") {
    for (double far : {0.0, 50000.0, -200000.0}) {
        const Vec3 move{far, -far, 0};
        const lighting::RayWorld world(
            {geometry::box(Vec3{-500, -500, 990} + move, Vec3{500, 500, 1000} + move)});
        CHECK(world.blocked(move, move + Vec3{0, 0, 2000}));
        CHECK_FALSE(world.blocked(move + Vec3{1100, 0, 0}, move + Vec3{0, 0, 2000}));
        CHECK_FALSE(world.blocked(move + Vec3{0, 1100, 0}, move + Vec3{0, 0, 2000}));
    }
}

TEST_CASE("the walls' average of a room is that of all cells of its walls") {
    // By hand from the faces one by one: the same cells, counted the same.
    const plan::Plan plan = [] {
        plan::Plan house = testing::plainRoom("room");
        plan::Luminaire lamp;
        lamp.id = "lamp";
        lamp.room = "room";
        lamp.host.kind = plan::Host::Kind::Ceiling;
        lamp.host.u_mm = 1000;
        lamp.host.v_mm = 1500;
        lamp.lumens = 1000;
        house.luminaires.push_back(lamp);
        return house;
    }();
    const geometry::HouseIndex house(plan);
    const lighting::LitStorey lit(house, "ground", {});
    double sum = 0;
    double cells = 0;
    for (std::size_t wall = 0; wall < 4; ++wall) {
        const auto light = lighting::verticalLight(lit, "room", wall);
        REQUIRE(light);
        for (const double lux : light->grid.lux)
            if (!std::isnan(lux)) {
                sum += lux;
                ++cells;
            }
    }
    CHECK(lighting::wallsAverage(lit, plan.rooms.front()) == Approx(sum / cells));
    CHECK(sum / cells > 1);
}
