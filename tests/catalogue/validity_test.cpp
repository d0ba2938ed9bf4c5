// What does not add up about a plate is said, and nothing else is.
#include "shipped_catalogue.hpp"

using namespace gangway;
using catalogue::compose;
using Problems = std::vector<std::string>;

namespace {

Problems problemsOf(const plan::Plate& plate) {
    return compose(shippedCatalogue(), plate).problems;
}

} // namespace

TEST_CASE("a module that is not made for a format is said once, by number and name") {
    CHECK(problemsOf(plateOf("us-device", {"socket-b", "socket-f"})) ==
          Problems{"module 2 (socket outlet, type F) is not made for format 'us-device'"});
    CHECK(problemsOf(plateOf("round-71", {"socket-b-gfci"})) ==
          Problems{"module 1 (socket outlet, type B, duplex, GFCI) is not made for format 'round-71'"});
    CHECK(problemsOf(plateOf("grid-gb", {"thermostat"})) ==
          Problems{"module 1 (room thermostat) is not made for format 'grid-gb'"});
}

TEST_CASE("in a format of the designer's own whatever fits is right, and what is too large is said") {
    plan::OwnFormat own;
    own.id = "slim";
    own.module_width_mm = own.module_height_mm = 45;
    own.plate_width_mm = own.plate_height_mm = 60;
    own.pitch_mm = 50;
    own.box_width_mm = 45;
    own.box_depth_mm = 60;
    plan::Plan plan;
    plan.formats = {own};
    const auto with = catalogue::withOwn(shippedCatalogue(), plan);
    CHECK(compose(with, plateOf("slim", {"socket-f"})).problems.empty()); // well 38.8 in 45
    CHECK(compose(with, plateOf("slim", {"switch-1way"})).problems ==     // rocker 51 in 45
          Problems{"module 1 (switch, one-way) does not fit the opening of format 'slim'"});
}

TEST_CASE("mains and extra-low voltage in one box want a barrier") {
    auto plate = plateOf("rect-86", {"socket-g", "data-rj45"});
    CHECK(problemsOf(plate) ==
          Problems{"data outlet, one RJ45 (extra-low voltage) and socket outlet, type G, switched "
                   "(mains) share one box without a barrier; give each its own plate or fit a "
                   "barrier"});
    plate.barrier = true;
    CHECK(problemsOf(plate).empty());
    // Round boxes are a box for each gang: nothing is shared.
    CHECK(problemsOf(plateOf("round-71", {"socket-f", "satellite"})).empty());
}

TEST_CASE("a box too shallow is said with both depths, to the millimetre") {
    auto plate = plateOf("rect-86", {"socket-g-double-usb"});
    CHECK(problemsOf(plate).empty()); // 35 for USB: trade body's page
    plate.box_depth_mm = 34;
    CHECK(problemsOf(plate) ==
          Problems{"module 1 (socket outlet, type G, switched, double, with USB charger) needs a box 35 "
                   "mm deep; this one is 34 mm"});
    plate.box_depth_mm = 35;
    CHECK(problemsOf(plate).empty());
}

TEST_CASE("gangs that do not add up are said") {
    CHECK(problemsOf(plateOf("round-71", {"socket-f", "socket-f"}, 1)) ==
          Problems{"the plate has 1 gang but its modules take 2"});
    CHECK(problemsOf(plateOf("round-71", {"socket-f"}, 6)) ==
          Problems{"6 gangs are more than a plate of format 'round-71' has; at most 5"});
    CHECK(problemsOf(plateOf("module-3", {"socket-f", "socket-f"})) == // two modules of 22.5 each: four
          Problems{"4 gangs are more than a plate of format 'module-3' has; at most 3"});
    CHECK(problemsOf(plateOf("module-4", {"socket-f", "socket-f"})).empty());
    CHECK(problemsOf(plateOf("grid-gb", std::vector<std::string>(13, "switch-1way"))) ==
          Problems{"13 gangs are more than a plate of format 'grid-gb' has; at most 12"});
}
