// The demo house's mistakes in switching (assets/demo/README.md) are found, and their stated fixes pass.
#include "small_switching.hpp"

#include "plan/io.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {

plan::Plan demo() {
    return std::move(plan::readFile(plan::assetsFolder() / "demo" / "terrace.plan.json")->plan);
}

plan::Plate& plateOf(plan::Plan& plan, const std::string& id) {
    return *std::ranges::find(plan.plates, id, &plan::Plate::id);
}

bool about(const std::vector<plan::Finding>& findings, const std::string& rule, const std::string& object) {
    return std::ranges::any_of(findings, [&](const plan::Finding& finding) {
        return finding.rule == rule && std::ranges::find(finding.objects, object) != finding.objects.end();
    });
}

} // namespace

TEST_CASE("the demo's mistakes in switching are found") {
    const plan::Plan plan = demo();
    const auto found = proved(plan);
    CHECK(about(found, "switch-behind-leaf", "kitchen-01"));         // 1-7
    CHECK(about(found, "dimmer-under-minimum", "kitchen-02"));       // 1-12
    CHECK(about(found, "switch-behind-leaf", "hall-01"));            // 1-14
    CHECK(about(found, "group-intermediate-missing", "hall-02"));    // 1-16
    CHECK(about(found, "group-intermediate-missing", "bedroom-02")); // 2-7
    CHECK_FALSE(about(found, "stairs-two-way", "hall-stair"));
    CHECK_FALSE(about(found, "stairs-two-way", "study-stair"));
    CHECK_FALSE(about(found, "switch-behind-leaf", "gallery-01"));
    for (const char* rule : {"lamp-without-control", "way-missing", "way-twice", "switch-hinge-side"}) {
        INFO(rule);
        CHECK(ofRule(found, rule).empty());
    }
}

TEST_CASE("the demo's stated fixes pass, and set off nothing else at these plates") {
    plan::Plan plan = demo();
    auto& kitchen = plateOf(plan, "kitchen-01"); // 1-7: wall D, y 1320
    kitchen.host.wall = "D";
    kitchen.host.u_mm = 1320;
    plateOf(plan, "kitchen-02").host.u_mm = 1500;
    plateOf(plan, "kitchen-02").modules[0].min_load_w = 10; // 1-12: another dimmer
    auto& hall = plateOf(plan, "hall-01");                  // 1-14: wall C, u 1313
    hall.host.wall = "C";
    hall.host.u_mm = 1313;
    plateOf(plan, "hall-02").modules[0].type = "switch-intermediate"; // 1-16
    plateOf(plan, "hall-02").host.u_mm = 2713;                        // 1-15: B y 2713
    const auto found = proved(plan);
    CHECK_FALSE(about(found, "switch-behind-leaf", "kitchen-01"));
    CHECK_FALSE(about(found, "switch-hinge-side", "kitchen-01"));
    CHECK_FALSE(about(found, "dimmer-under-minimum", "kitchen-02"));
    CHECK_FALSE(about(found, "switch-behind-leaf", "hall-01"));
    CHECK_FALSE(about(found, "switch-hinge-side", "hall-01"));
    CHECK_FALSE(about(found, "dark-entrance", "front-door"));
    CHECK_FALSE(about(found, "group-intermediate-missing", "L5"));
    CHECK_FALSE(about(found, "stairs-two-way", "hall-stair"));
}
