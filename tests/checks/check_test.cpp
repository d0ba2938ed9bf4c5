#include "checks/checks.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

TEST_CASE("findings come faults first, then warnings, then hints, each in the plan's order of rooms") {
    plan::Plan plan = worked({"switch-2way", "switch-2way", "switch-2way"}); // a fault in "room"
    addRoom(plan, "hall", -2100, -100);
    addLamp(plan, "l9", "hall");                                           // a fault in "hall"
    addPlate(plan, "s9", "hall", "A", 500, {"switch-1way"});               // a warning there
    addPlate(plan, "p9", "hall", "C", 500, {"socket-f"}).circuit = "ring"; // a hint
    const auto found = checks::check(geometry::HouseIndex(plan), shipped(), packOf("international"));
    REQUIRE(found.size() == 4);
    CHECK(rulesOf(found) == std::vector<std::string>{"group-intermediate-missing", "lamp-without-control",
                                                     "way-feeds-nothing", "circuit-unknown"});
    CHECK(found[0].severity == plan::Severity::Fault);
    CHECK(found[3].severity == plan::Severity::Hint);
}
