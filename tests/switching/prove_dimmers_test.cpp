#include "small_switching.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {

/// `count` lamps of `watts` each on one dimmer of the given greatest load.
plan::Plan dimmed(int count, double watts, double max_w, double lumens_per_watt = 90) {
    plan::Plan plan = worked({"dimmer-rotary"});
    plan.plates[0].modules[0].max_load_w = max_w;
    plan.luminaires.clear();
    plan.legs[0].luminaires.clear();
    for (int i = 1; i <= count; ++i) {
        const std::string id = "l" + std::to_string(i);
        addLamp(plan, id, "room", watts).lumens = watts * lumens_per_watt;
        plan.legs[0].luminaires.push_back(id);
    }
    return plan;
}

} // namespace

// Trade facts check 61: 6 x 6 W LED, 10 % habit: a rating of 360 W, so a 400 W unit; a 250 W unit carries 25.
TEST_CASE("six LED lamps of 6 W take a dimmer of 360 W: 400 W carries them, 250 W doesn't") {
    CHECK(proved(dimmed(6, 6, 400)).empty());
    CHECK(proved(dimmed(6, 6, 360)).empty());
    const auto over = proved(dimmed(6, 6, 250));
    REQUIRE(rulesOf(over) == std::vector<std::string>{"dimmer-over-load"});
    CHECK(over[0].message.find("360 W") != std::string::npos);
    CHECK(over[0].message.find("250 W") != std::string::npos);
    CHECK(proved(dimmed(5, 5, 250)).empty()); // 25 W
    CHECK_FALSE(proved(dimmed(2, 13, 250)).empty());
}

TEST_CASE("filament lamps count by their watts") {
    CHECK(proved(dimmed(6, 60, 400, 12)).empty());                                                  // 360 W
    CHECK(rulesOf(proved(dimmed(7, 60, 400, 12))) == std::vector<std::string>{"dimmer-over-load"}); // 420 W
}

// The demo's seed 1-12: 3 x 4 W is 12 W, less than the 20 W that the dimmer needs.
TEST_CASE("a dimmer under its least load is found, at the load it is content") {
    plan::Plan plan = dimmed(3, 4, 400);
    plan.plates[0].modules[0].min_load_w = 20;
    const auto under = proved(plan);
    REQUIRE(rulesOf(under) == std::vector<std::string>{"dimmer-under-minimum"});
    CHECK(under[0].message.find("12 W") != std::string::npos);
    CHECK(under[0].message.find("20 W") != std::string::npos);
    plan.plates[0].modules[0].min_load_w = 12;
    CHECK(proved(plan).empty());
}

TEST_CASE("lamps that can't be dimmed are named") {
    plan::Plan plan = dimmed(3, 6, 400);
    plan.luminaires[1].dimmable = false;
    const auto found = proved(plan);
    REQUIRE(rulesOf(found) == std::vector<std::string>{"dimmer-not-dimmable"});
    CHECK(found[0].objects == std::vector<std::string>{"s1", "L1", "l2"});
}

TEST_CASE("a lamp that states no watts leaves the least load open") {
    plan::Plan plan = dimmed(3, 4, 400);
    plan.plates[0].modules[0].min_load_w = 20;
    plan.luminaires[1].watts = 0;
    CHECK(ofRule(proved(plan), "dimmer-under-minimum").empty());
}
