#include "checks/accepted.hpp"
#include "checks/checks.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

#include <utility>

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

TEST_CASE("an accepted finding counts as accepted until its facts change") {
    plan::Plan plan = worked({"switch-2way", "switch-2way", "switch-2way"});
    const auto check = [&] {
        return checks::check(geometry::HouseIndex(plan), shipped(), packOf("international"));
    };
    const auto first = check();
    REQUIRE(first.size() == 1);
    REQUIRE_FALSE(first[0].accepted);
    plan.accepted.push_back({checks::findingId(first[0]),
                             checks::factsOf(first[0]),
                             "Ann",
                             "2026-11-26T10:00:00Z",
                             "client wants it so",
                             {}});
    REQUIRE(check().size() == 1);
    CHECK(check()[0].accepted == "client wants it so");
    // The same finding elsewhere, and one whose words changed, stand again.
    plan::Plan elsewhere = plan;
    for (plan::Plate& plate : elsewhere.plates)
        plate.host.u_mm += 50;
    std::swap(plan, elsewhere);
    CHECK_FALSE(check()[0].accepted);
    std::swap(plan, elsewhere);
    const std::string name = std::exchange(plan.legs.front().name, "reading light");
    CHECK_FALSE(check()[0].accepted);
    plan.legs.front().name = name;
    CHECK(check()[0].accepted);
}
