#include "small_switching.hpp"

#include "switching/group.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using switching::Arrangement;

namespace {

std::vector<bool> bits(unsigned state, std::size_t count) {
    std::vector<bool> thrown;
    for (std::size_t i = 0; i < count; ++i)
        thrown.push_back((state >> i & 1u) != 0);
    return thrown;
}

Arrangement ofPositions(std::size_t count) {
    return count == 2 ? Arrangement::TwoWay : Arrangement::Intermediate;
}

switching::GroupWiring wiringOf(const plan::Plan& plan, catalogue::WiringConvention convention) {
    const switching::Net net(plan, shipped());
    return groupWiring(net, groupOf(net, plan.legs[0]), {convention, "test", catalogue::Grade::Practice});
}

std::vector<int> between(const switching::GroupWiring& wiring, switching::Run::Between what) {
    std::vector<int> counts;
    for (const auto& run : wiring.runs)
        if (run.between == what) counts.push_back(run.conductors);
    return counts;
}

} // namespace

// Textbook result: a group of changeovers and crossovers is on for an odd number of thrown switches (parity).
TEST_CASE("the traced contacts of 2 to 6 positions give the textbook truth table") {
    for (std::size_t count = 2; count <= 6; ++count)
        for (unsigned state = 0; state < 1u << count; ++state) {
            INFO(count << " positions, state " << state);
            CHECK(passes(ofPositions(count), bits(state, count)) == (__builtin_popcount(state) % 2 == 1));
        }
}

TEST_CASE("throwing any one position of any state turns the lamp over") {
    for (std::size_t count = 2; count <= 6; ++count)
        for (unsigned state = 0; state < 1u << count; ++state)
            for (std::size_t i = 0; i < count; ++i)
                CHECK(passes(ofPositions(count), bits(state, count)) !=
                      passes(ofPositions(count), bits(state ^ 1u << i, count)));
}

TEST_CASE("one-way follows its one switch, and what is no group passes nothing") {
    CHECK_FALSE(passes(Arrangement::OneWay, {false}));
    CHECK(passes(Arrangement::OneWay, {true}));
    CHECK_FALSE(passes(Arrangement::TwoWay, {true}));
    CHECK_FALSE(passes(Arrangement::Mixed, {true, false}));
    CHECK_FALSE(passes(Arrangement::None, {}));
}

TEST_CASE("arrangements are named by the switches they are made of") {
    struct Case {
        std::vector<std::string> types;
        Arrangement arrangement;
        const char* name;
    };
    const Case cases[] = {
        {{}, Arrangement::None, "no switch"},
        {{"switch-1way"}, Arrangement::OneWay, "one-way"},
        {{"dimmer-rotary"}, Arrangement::OneWay, "dimmer"},
        {{"switch-2way", "switch-2way"}, Arrangement::TwoWay, "two-way"},
        // Trade facts check 60: 5 positions are 2 two-way and 3 intermediate.
        {{"switch-2way", "switch-intermediate", "switch-intermediate", "switch-intermediate", "switch-2way"},
         Arrangement::Intermediate,
         "two-way with 3 intermediate"},
        {{"switch-2way", "switch-2way", "switch-2way"}, Arrangement::Mixed, "positions that don't match"},
        {{"sensor-motion"}, Arrangement::Sensor, "sensor"},
        {{"timer"}, Arrangement::Sensor, "timer"},
        {{"thermostat"}, Arrangement::Heating, "heating"},
        {{"blind-switch"}, Arrangement::Motor, "motor"},
        {{"push-button", "push-button"}, Arrangement::Mixed, "positions that don't match"},
    };
    for (const Case& one : cases) {
        const plan::Plan plan = worked(one.types);
        const switching::Net net(plan, shipped());
        const auto group = groupOf(net, plan.legs[0]);
        INFO(one.name);
        CHECK(group.arrangement == one.arrangement);
        CHECK(arrangementName(group) == one.name);
    }
    plan::Plan plan = worked({"push-button", "push-button"});
    plan.legs[0].relay = true;
    const switching::Net net(plan, shipped());
    CHECK(arrangementName(groupOf(net, plan.legs[0])) == "relay with 2 push-buttons");
}

// Trade facts 6.4: rose to first switch 2; between switches 3; an intermediate passes 3 and cuts 2.
TEST_CASE("loop-in wiring takes 2 conductors to the first switch and 3 between switches") {
    using enum switching::Run::Between;
    const auto loop = catalogue::WiringConvention::LoopInAtLamp;
    const auto one = wiringOf(worked({"switch-1way"}), loop);
    CHECK(between(one, SwitchToLamp) == std::vector{2});
    CHECK(between(one, SwitchToSwitch).empty());
    const auto three = wiringOf(worked({"switch-2way", "switch-intermediate", "switch-2way"}), loop);
    CHECK(between(three, SwitchToLamp) == std::vector{2});
    CHECK(between(three, SwitchToSwitch) == std::vector{3, 3});
    CHECK_FALSE(three.convention.empty());
    CHECK_FALSE(three.source.empty());
}

// Trade facts 6.4: 3-wire between switches with the neutral at the switch box (NEC 404.2(C), from memory).
TEST_CASE("with a neutral at the switch 2 come in, 3 run between and 2 go out") {
    using enum switching::Run::Between;
    const auto runs =
        wiringOf(worked({"switch-2way", "switch-2way"}), catalogue::WiringConvention::NeutralAtSwitch);
    CHECK(between(runs, SupplyToSwitch) == std::vector{2});
    CHECK(between(runs, SwitchToSwitch) == std::vector{3});
    CHECK(between(runs, SwitchToLamp) == std::vector{2});
}

// Terminals, trade facts 6.3: one-way 2, two-way 3, intermediate 4; each goes to the box.
TEST_CASE("to a joint box each switch runs as many conductors as it has terminals") {
    using enum switching::Run::Between;
    const auto box = catalogue::WiringConvention::JunctionBox;
    CHECK(between(wiringOf(worked({"switch-1way"}), box), SwitchToBox) == std::vector{2});
    CHECK(between(wiringOf(worked({"switch-2way", "switch-intermediate", "switch-2way"}), box),
                  SwitchToBox) == std::vector{3, 4, 3});
}

TEST_CASE("a two-way switch listed in the middle is wired at the end of the run") {
    const auto wiring = wiringOf(worked({"switch-2way", "switch-2way", "switch-intermediate"}),
                                 catalogue::WiringConvention::LoopInAtLamp);
    REQUIRE(wiring.runs.size() == 3);
    CHECK(wiring.runs[0].from == "s1");
    CHECK(wiring.runs[0].to == "s3");
    CHECK(wiring.runs[1].to == "s2");
}

TEST_CASE("positions that don't match are not counted, and say so") {
    const auto wiring =
        wiringOf(worked({"switch-2way", "switch-1way"}), catalogue::WiringConvention::JunctionBox);
    CHECK(wiring.runs.empty());
    CHECK(wiring.convention.find("findings") != std::string::npos);
}

// A sensor needs its neutral (common practice, no source); a group of changeovers beside it has 3 between its
// switches (trade facts 6.4).
TEST_CASE("a sensor gets its neutral wherever it is listed, with switches in parallel behind it") {
    using enum switching::Run::Between;
    const auto loop = catalogue::WiringConvention::LoopInAtLamp;
    const auto pair = wiringOf(worked({"switch-1way", "sensor-motion"}), loop);
    REQUIRE(pair.runs.size() == 2);
    CHECK(pair.runs[0].from == "s2"); // the sensor: to it, not to the switch, runs the neutral
    CHECK(pair.runs[0].to == "s1");
    CHECK(between(pair, SwitchToSwitch) == std::vector{2});
    CHECK(between(pair, SwitchToLamp) == std::vector{3});
    CHECK(pair.convention.find("without neutral") == std::string::npos);
    const auto sensors = wiringOf(worked({"sensor-motion", "switch-1way", "sensor-motion"}), loop);
    CHECK(between(sensors, SwitchToSwitch) == std::vector{3, 2});
    const auto group = wiringOf(worked({"switch-2way", "switch-2way", "sensor-motion"}), loop);
    CHECK(between(group, SwitchToSwitch) == std::vector{2, 3});
}
