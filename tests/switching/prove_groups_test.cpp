// Ways and groups: each rule once with a plan that fails it, and once with one that doesn't. Positions n: two
// two-way and n - 2 intermediates (trade facts 6.2).
#include "small_switching.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using Types = std::vector<std::string>;

TEST_CASE("a switch beside the latch of the only door, with its lamp, gives no finding") {
    CHECK(rulesOf(proved(smallSwitching())).empty());
}

TEST_CASE("arrangements that can work give no finding") {
    const Types good[] = {
        {"switch-2way", "switch-2way"},
        {"switch-2way", "switch-intermediate", "switch-2way"},
        {"switch-2way", "switch-intermediate", "switch-intermediate", "switch-intermediate", "switch-2way"},
        {"sensor-motion"},
        {"dimmer-rotary"},
    };
    for (const Types& types : good) {
        plan::Plan plan = worked(types);
        plan.luminaires[0].watts = 40;
        plan.luminaires[0].lumens = 3600;
        INFO(types.front() << " and " << types.size() - 1);
        CHECK(rulesOf(proved(plan)).empty());
    }
}

TEST_CASE("each arrangement that can't work is found by its own rule") {
    struct Case {
        Types types;
        const char* rule;
        const char* plate; ///< that is named first
    };
    const Case cases[] = {
        {{"switch-2way"}, "group-one-member", "s1"},
        {{"switch-intermediate"}, "group-one-member", "s1"},
        {{"switch-2way", "switch-1way"}, "group-one-way-member", "s2"},
        {{"switch-2way", "switch-intermediate", "dimmer-rotary", "switch-2way"},
         "group-one-way-member",
         "s3"},
        {{"switch-2way", "switch-2way", "switch-2way"}, "group-intermediate-missing", "s2"},
        {{"switch-2way", "switch-intermediate"}, "group-ends-missing", "s2"},
        {{"switch-1way", "thermostat"}, "group-mixed", "s2"},
        {{"push-button"}, "push-without-relay", "s1"},
    };
    for (const Case& one : cases) {
        plan::Plan plan = worked(one.types);
        plan.luminaires[0].watts = 30;
        INFO(one.rule);
        const auto found = proved(plan);
        CHECK(rulesOf(found) == std::vector<std::string>{one.rule});
        REQUIRE_FALSE(found.empty());
        CHECK(found[0].objects.front() == one.plate);
        CHECK_FALSE(found[0].source.empty());
        CHECK_FALSE(found[0].remedy.empty());
        CHECK(found[0].place_mm.has_value());
    }
}

TEST_CASE("a lone way of a two-way module is let be when another way of it is in a group") {
    plan::Plan plan = worked({"switch-2circuit-2way", "switch-2way"});
    addLamp(plan, "l2", "room");
    addLeg(plan, "L2", {{"s1", 1, 2}}, {"l2"});
    CHECK(rulesOf(proved(plan)).empty());
    plan.legs[0].controls.pop_back();
    plan.plates[1].modules[0].type = "blank";
    CHECK(rulesOf(proved(plan)) == std::vector<std::string>{"group-one-member", "group-one-member"});
}

TEST_CASE("the missing intermediate is named, and the remedy names it") {
    const auto found = proved(worked({"switch-2way", "switch-2way", "switch-2way"}));
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == plan::Severity::Fault);
    CHECK(found[0].message ==
          "L1 has 3 positions (s1, s2, s3), which need 2 two-way and 1 intermediate; s2 is "
          "a two-way switch.");
    CHECK(found[0].remedy == "Make s2 in room an intermediate switch.");
}

TEST_CASE("a relay wants push-buttons, and with them is content") {
    plan::Plan plan = worked({"push-button", "push-button", "push-button"});
    plan.legs[0].relay = true;
    CHECK(rulesOf(proved(plan)).empty());
    plan.plates[1].modules[0].type = "switch-1way";
    CHECK(rulesOf(proved(plan)) == std::vector<std::string>{"relay-without-push"});
}

TEST_CASE("a way that feeds nothing is found; of heating controls it is not asked") {
    plan::Plan plan = smallSwitching();
    addPlate(plan, "t1", "room", "A", 500, {"thermostat"});
    CHECK(rulesOf(proved(plan)).empty());
    addPlate(plan, "s2", "room", "A", 800, {"switch-1way"});
    addPlate(plan, "m1", "room", "A", 1200, {"blind-switch"});
    const auto found = ofRule(proved(plan), "way-feeds-nothing");
    REQUIRE(found.size() == 3); // one switch, and both ways of the blind's
    CHECK(found[0].objects.front() == "s2");
    CHECK(found[1].objects.front() == "m1");
}

TEST_CASE("a luminaire without control is found unless it has its own switch") {
    plan::Plan plan = smallSwitching();
    addLamp(plan, "l2", "room");
    const auto found = proved(plan);
    REQUIRE(rulesOf(found) == std::vector<std::string>{"lamp-without-control"});
    CHECK(found[0].objects.front() == "l2");
    plan.luminaires[1].own_switch = true;
    CHECK(proved(plan).empty());
    plan.luminaires[1].own_switch = false;
    plan.luminaires[1].kind = plan::Luminaire::Kind::Floor;
    CHECK(proved(plan).empty());
}

TEST_CASE("a leg that no switch works leaves its lamp without control") {
    plan::Plan plan = smallSwitching();
    addLamp(plan, "l2", "room");
    addLeg(plan, "L2", {}, {"l2"});
    CHECK(rulesOf(proved(plan)) == std::vector<std::string>{"lamp-without-control"});
}

TEST_CASE("a way on two legs, listed twice, or that its module does not have, is found") {
    plan::Plan plan = smallSwitching();
    addLamp(plan, "l2", "room");
    addLeg(plan, "L2", {{"s1", 1, 1}}, {"l2"});
    CHECK(rulesOf(proved(plan)) == std::vector<std::string>{"way-twice"});
    plan = smallSwitching();
    plan.legs[0].controls.push_back({"s1", 1, 1});
    CHECK(rulesOf(proved(plan)) == std::vector<std::string>{"way-twice"});
    plan = smallSwitching();
    plan.legs[0].controls.push_back({"s1", 1, 2});
    CHECK(rulesOf(proved(plan)) == std::vector<std::string>{"way-missing"});
}

TEST_CASE("every finding's rule is listed, and rules are listed once") {
    std::vector<std::string> ids;
    for (const auto& rule : switching::rules()) {
        CHECK_FALSE(rule.what.empty());
        ids.emplace_back(rule.id);
    }
    std::ranges::sort(ids);
    CHECK(std::ranges::adjacent_find(ids) == ids.end());
    for (const auto& finding : proved(worked({"switch-2way", "switch-1way", "push-button"})))
        CHECK(std::ranges::binary_search(ids, finding.rule));
}

TEST_CASE("an intermediate beside a sensor still wants its two-way switches") {
    CHECK(rulesOf(proved(worked({"switch-intermediate", "sensor-motion"}))) ==
          std::vector<std::string>{"group-ends-missing"});
}
