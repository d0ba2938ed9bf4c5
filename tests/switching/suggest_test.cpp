#include "small_switching.hpp"

#include "switching/suggest.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {

std::vector<switching::Suggestion> suggested(const plan::Plan& plan, const std::string& room = "room") {
    return switching::suggest(geometry::HouseIndex(plan), shipped(), packOf("international"), room);
}

/// The plan with a proposal taken up as it stands.
plan::Plan accepted(plan::Plan plan, const switching::Suggestion& suggestion) {
    for (const auto& plate : suggestion.plates)
        plan.plates.push_back(plate);
    for (const auto& change : suggestion.changes)
        std::ranges::find(plan.plates, change.plate, &plan::Plate::id)
            ->modules[static_cast<std::size_t>(change.module) - 1]
            .type = change.type;
    if (suggestion.new_leg)
        plan.legs.push_back(suggestion.leg);
    else
        *std::ranges::find(plan.legs, suggestion.leg.id, &plan::SwitchLeg::id) = suggestion.leg;
    return plan;
}

plan::Plan unwired() {
    plan::Plan plan = smallSwitching();
    plan.plates.clear();
    plan.legs.clear();
    return plan;
}

} // namespace

TEST_CASE("a room with one door gets a one-way switch on the latch side at the pack's height") {
    const auto proposals = suggested(unwired());
    REQUIRE(proposals.size() == 1);
    REQUIRE(proposals[0].plates.size() == 1);
    const plan::Plate& plate = proposals[0].plates[0];
    CHECK(plate.host.wall == "D");
    CHECK(plate.host.u_mm == 1900 + 60 + 150); // latch edge, casing, 150 to 200 (trade facts 2.35)
    CHECK(plate.host.v_mm == 1050);
    CHECK(plate.modules[0].type == "switch-1way");
    CHECK(proposals[0].leg.luminaires == std::vector<std::string>{"l1"});
    CHECK(proposals[0].new_leg);
    CHECK(proved(accepted(unwired(), proposals[0])).empty());
}

TEST_CASE("two doors get two-way switches, and the proof is content with them") {
    plan::Plan plan = unwired();
    plan::Opening second = plan.openings[0];
    second.id = "second";
    second.wall = "B";
    plan.openings.push_back(second);
    const auto proposals = suggested(plan);
    REQUIRE(proposals.size() == 1);
    REQUIRE(proposals[0].plates.size() == 2);
    for (const auto& plate : proposals[0].plates)
        CHECK(plate.modules[0].type == "switch-2way");
    CHECK(proposals[0].plates[0].id != proposals[0].plates[1].id);
    CHECK(proved(accepted(plan, proposals[0])).empty());
}

TEST_CASE("a bed gets positions at both sides besides the door's, with an intermediate between") {
    plan::Plan plan = unwired();
    plan::Furniture bed;
    bed.id = "bed";
    bed.kind = "bed";
    bed.room = "room";
    bed.at_mm = {2500, 1950}; // head to the north, against wall A
    bed.size = {1600, 2100, 600};
    plan.furniture.push_back(bed);
    const auto proposals = suggested(plan);
    REQUIRE(proposals.size() == 1);
    REQUIRE(proposals[0].plates.size() == 3);
    CHECK(proposals[0].plates[1].modules[0].type == "switch-intermediate");
    CHECK(proposals[0].plates[1].host.wall == "A");
    CHECK(proposals[0].plates[1].host.u_mm == 2500 - 800 - 150);
    CHECK(proposals[0].plates[2].host.u_mm == 2500 + 800 + 150);
    CHECK(proved(accepted(plan, proposals[0])).empty());
}

TEST_CASE("a switch that stands free beside the door is used before a new plate") {
    plan::Plan plan = smallSwitching();
    plan.legs.clear();
    const auto proposals = suggested(plan);
    REQUIRE(proposals.size() == 1);
    CHECK(proposals[0].plates.empty());
    CHECK(proposals[0].leg.controls == std::vector<plan::WayRef>{{"s1", 1, 1}});
}

TEST_CASE("a place that is taken is passed over") {
    plan::Plan plan = unwired();
    addPlate(plan, "socket", "room", "D", 2110, {"socket-f"});
    const auto proposals = suggested(plan);
    REQUIRE(proposals.size() == 1);
    CHECK(proposals[0].plates[0].host.u_mm > 2110 + 81);
    plan.plates[0].host.v_mm = 300; // below it there is room
    CHECK(suggested(plan)[0].plates[0].host.u_mm == 2110);
}

TEST_CASE("legs whose switches don't suit are proposed with those that do") {
    const plan::Plan plan = worked({"switch-2way", "switch-2way", "switch-2way"});
    const auto proposals = suggested(plan);
    REQUIRE(proposals.size() == 1);
    REQUIRE(proposals[0].changes.size() == 1);
    CHECK(proposals[0].changes[0].plate == "s2");
    CHECK(proposals[0].changes[0].type == "switch-intermediate");
    CHECK_FALSE(proposals[0].new_leg);
    CHECK(proved(accepted(plan, proposals[0])).empty());
    CHECK(suggested(accepted(plan, proposals[0])).empty());
}

TEST_CASE("a room that is in order gets no proposal") {
    CHECK(suggested(smallSwitching()).empty());
    CHECK(suggested(smallSwitching(), "nowhere").empty());
}

TEST_CASE("what would change nothing is not proposed") {
    // A way of a module of three can't be exchanged for a one-way switch alone, and works its lamps as it is.
    plan::Plan plan = smallSwitching();
    plan.plates[0].modules[0].type = "switch-3circuit-2way";
    CHECK(suggested(plan).empty());
}
