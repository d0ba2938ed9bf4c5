// Outlines and boxes against published numbers, each with its source.
#include "shipped_catalogue.hpp"

#include <algorithm>
#include <set>

using namespace gangway;
using catalogue::compose;

namespace {

std::vector<std::string> blanks(int gangs) {
    return std::vector<std::string>(static_cast<std::size_t>(gangs), "blank");
}

} // namespace

TEST_CASE("round boxes give plates of 81 + 71 (n - 1)") {
    // DIN 49073: pitch 71 both ways. Outer frame 81: common practice, no source.
    const double expected_mm[] = {81, 152, 223, 294, 365};
    for (int gangs = 1; gangs <= 5; ++gangs) {
        auto plate = plateOf("round-71", blanks(gangs));
        const auto lying = compose(shippedCatalogue(), plate);
        CHECK(lying.width_mm == Approx(expected_mm[gangs - 1]).margin(1e-9));
        CHECK(lying.height_mm == 81);
        plate.direction = plan::Direction::Vertical;
        const auto standing = compose(shippedCatalogue(), plate);
        CHECK(standing.height_mm == Approx(expected_mm[gangs - 1]).margin(1e-9));
        CHECK(standing.width_mm == 81);
        CHECK(lying.problems.empty());
        CHECK(standing.problems.empty());
    }
}

TEST_CASE("rectangular plates are 86 and 146 wide and do not follow a pitch") {
    // From memory of usual UK plates; no standard fixes the outline.
    CHECK(compose(shippedCatalogue(), plateOf("rect-86", {"socket-g"})).width_mm == 86);
    const auto twice = compose(shippedCatalogue(), plateOf("rect-86", {"socket-g-double"}));
    CHECK(twice.width_mm == 146);
    CHECK(twice.height_mm == 86);
}

TEST_CASE("US plates follow 2.75 + 1.8125 (n - 1) inches") {
    // ANSI/NEMA WD 6: widths 2.75, 4.5625, 6.375, 8.1875 in, height 4.5 in; 1 in = 25.4 mm exactly.
    for (int gangs = 1; gangs <= 4; ++gangs) {
        const auto plate = compose(shippedCatalogue(), plateOf("us-device", blanks(gangs)));
        CHECK(plate.width_mm == Approx((2.75 + 1.8125 * (gangs - 1)) * 25.4).margin(1e-9));
        CHECK(plate.height_mm == Approx(114.3).margin(1e-9));
        CHECK(plate.problems.empty());
    }
    // The same numbers as printed in mm, to a tenth.
    CHECK(compose(shippedCatalogue(), plateOf("us-device", blanks(3))).width_mm ==
          Approx(161.9).margin(0.05));
}

TEST_CASE("round boxes stand 71 apart about the plate's centre, with a 68 cutter") {
    // DIN 49073: hole 68, pitch 71, screws 60.
    auto plate = plateOf("round-71", blanks(3));
    const auto lying = compose(shippedCatalogue(), plate);
    REQUIRE(lying.boxes.size() == 3);
    const double expected_mm[] = {-71, 0, 71};
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(lying.boxes[i].centre_mm == plan::Vec2{expected_mm[i], 0});
        CHECK(lying.boxes[i].centre_mm == lying.gangs[i].centre_mm);
        CHECK(lying.boxes[i].spec.drill_mm == 68);
        CHECK(lying.boxes[i].spec.fixing_mm == 60);
    }
    plate.direction = plan::Direction::Vertical;
    const auto standing = compose(shippedCatalogue(), plate);
    REQUIRE(standing.boxes.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) // first module on top
        CHECK(standing.boxes[i].centre_mm == plan::Vec2{0, -expected_mm[i]});
}

TEST_CASE("a rectangular plate has one box in its middle, never drilled") {
    // BS 4662: fixing centres 60.3 for one gang, 120.6 for two.
    const auto single = compose(shippedCatalogue(), plateOf("rect-86", {"socket-g"}));
    const auto twice = compose(shippedCatalogue(), plateOf("rect-86", {"socket-g-double"}));
    REQUIRE(single.boxes.size() == 1);
    REQUIRE(twice.boxes.size() == 1);
    CHECK(single.boxes[0].spec.fixing_mm == 60.3);
    CHECK(twice.boxes[0].spec.fixing_mm == 120.6);
    CHECK(twice.boxes[0].centre_mm == plan::Vec2{0, 0});
    CHECK(twice.boxes[0].spec.drill_mm == 0);
    CHECK(twice.boxes[0].spec.width_mm < twice.width_mm);
}

TEST_CASE("US boxes grow by the gang pitch and the device screws are 3.281 in apart") {
    // UL 514: opening 2 x 3 in. Screw centres from memory of WD 6.
    const auto plate = compose(shippedCatalogue(), plateOf("us-device", blanks(2)));
    REQUIRE(plate.boxes.size() == 1);
    CHECK(plate.boxes[0].spec.width_mm == Approx(3.8125 * 25.4).margin(1e-9));
    CHECK(plate.boxes[0].spec.height_mm == Approx(76.2).margin(1e-9));
    CHECK(plate.boxes[0].spec.fixing_mm == Approx(83.3).margin(0.05));
}

TEST_CASE("the three-module plate is always whole") {
    const auto plate = compose(shippedCatalogue(), plateOf("module-3", {"socket-l"}));
    CHECK(plate.width_mm == 120);
    REQUIRE(plate.gangs.size() == 3);
    CHECK(plate.gangs[0].centre_mm.x == -22.5);
    CHECK(plate.gangs[1].module == nullptr);
    CHECK(plate.problems.empty());
}

TEST_CASE("every id that plans are written with is in the catalogue") {
    const char* modules[] = {"socket-f",
                             "socket-e",
                             "socket-g",
                             "socket-g-double",
                             "socket-b",
                             "socket-l",
                             "socket-j",
                             "socket-i",
                             "socket-f-usb",
                             "usb",
                             "shaver",
                             "data-rj45",
                             "data-rj45-2",
                             "tv",
                             "telephone",
                             "blank",
                             "cord-outlet",
                             "switch-1way",
                             "switch-2way",
                             "switch-intermediate",
                             "switch-double-pole",
                             "switch-2circuit",
                             "switch-3circuit",
                             "push-button",
                             "pull-cord",
                             "blind-switch",
                             "dimmer-rotary",
                             "dimmer-push",
                             "sensor-motion",
                             "thermostat",
                             "timer"};
    for (const char* id : modules)
        CHECK(shippedCatalogue().module(id));
    for (const char* id : {"round-71", "rect-86", "us-device", "module-3"})
        CHECK(shippedCatalogue().format(id));
    for (const char* id :
         {"white", "soft-white", "ivory", "graphite", "black", "steel", "brass", "glass-white"})
        CHECK(shippedCatalogue().finish(id));
}

TEST_CASE("codes of modules are told apart in a schedule") {
    std::set<std::string> codes;
    for (const auto& module : shippedCatalogue().modules) {
        INFO(module.id);
        CHECK(codes.insert(module.code).second);
        CHECK_FALSE(module.source.empty());
    }
}

TEST_CASE("ways and outlets follow the trade's count") {
    // A double socket is two outlets, a two-circuit switch two ways; intermediate has one (the leg it works).
    const auto& all = shippedCatalogue();
    CHECK(all.module("socket-g-double")->outlets == 2);
    CHECK(all.module("socket-b")->outlets == 2);
    CHECK(all.module("switch-2circuit")->ways == 2);
    CHECK(all.module("switch-3circuit")->ways == 3);
    CHECK(all.module("switch-intermediate")->ways == 1);
    CHECK(all.module("blank")->ways == 0);
}
