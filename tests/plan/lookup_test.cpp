#include "plan/io.hpp"
#include "plan/sample_plans.hpp"

#include <catch2/catch.hpp>

using namespace gangway::plan;

TEST_CASE("things are found by id, and nothing by an id that is not there") {
    const Plan plan = samples::house(2);
    CHECK(findStorey(plan, "ground") == &plan.storeys[0]);
    CHECK(findRoom(plan, "room-2") == &plan.rooms[1]);
    CHECK(findFurniture(plan, "room-1-piece-3") == &plan.furniture[2]);
    CHECK(findPlate(plan, "room-2-plate-1") == &plan.plates[12]);
    CHECK(findLuminaire(plan, "room-1-lamp-2") == &plan.luminaires[1]);
    CHECK(findLayer(plan, kLayerSoft) == &plan.layers[2]);
    CHECK(findRoom(plan, "room-3") == nullptr);
    CHECK(findPlate(plan, "") == nullptr);
    CHECK(wallIndex(plan.rooms[0], "C") == 2U);
    CHECK(wallIndex(plan.rooms[0], "E") == std::nullopt);
}

TEST_CASE("a plate is found by the tag that is printed") {
    Plan plan = samples::house(1);
    CHECK(findPlateByName(plan, "room-1-3") == &plan.plates[2]);
    CHECK(findPlateByName(plan, "room-1-plate-3") == &plan.plates[2]);
    plan.plates[0].tag.clear();
    CHECK(findPlateByName(plan, "") == nullptr);
}

TEST_CASE("the last answer about a plate counts") {
    Plan plan = samples::house(1);
    const std::string plate = plan.plates[0].id;
    CHECK(latestAgreement(plan, plate) == nullptr);
    plan.agreements = {{plate, Agreement::Answer::Query, "Ann", "2026-01-02T00:00:00Z", "", "1", {}},
                       {"other", Agreement::Answer::Query, "Ann", "2026-01-03T00:00:00Z", "", "2", {}},
                       {plate, Agreement::Answer::Agree, "Ann", "2026-01-01T00:00:00Z", "", "3", {}}};
    CHECK(latestAgreement(plan, plate) == &plan.agreements[2]);
}

TEST_CASE("a diagnostic is printed as compilers do") {
    CHECK(toLine("a.plan.json", {Level::Error, 4, 7, "/plates/0", "what; do"}) ==
          "a.plan.json:4:7: error: /plates/0: what; do");
    CHECK(toLine("a.plan.json", {Level::Warning, 0, 0, "", "what"}) == "a.plan.json: warning: what");
}
