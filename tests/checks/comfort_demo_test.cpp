// The demo house's seeds about beds, banks and motors (assets/demo/README.md), and the fixes stated there.
// The numbers were worked out by hand from the house's drawings.
#include "checks/checks.hpp"

#include "../switching/small_switching.hpp"
#include "plan/io.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using plan::Severity;

namespace {
plan::Plan demo() {
    auto read = plan::readFile(plan::assetsFolder() / "demo" / "terrace.plan.json");
    if (!read) throw std::runtime_error("demo");
    return read->plan;
}

plan::Plate& plateOf(plan::Plan& plan, const std::string& id) {
    return *std::ranges::find(plan.plates, id, &plan::Plate::id);
}

/// The finding of a rule whose first object is `id`.
const plan::Finding* about(const std::vector<plan::Finding>& findings, const std::string& rule,
                           const std::string& id) {
    for (const auto& finding : findings)
        if (finding.rule == rule && finding.objects.front() == id) return &finding;
    return nullptr;
}

std::vector<plan::Finding> check(const plan::Plan& plan) {
    return checks::check(geometry::HouseIndex(plan), catalogue::withOwn(shipped(), plan),
                         packOf("international"), plan::assetsFolder() / "demo");
}
} // namespace

TEST_CASE("seed 2-1: beside the headboard is out of reach by 272, in the headboard it is not") {
    plan::Plan plan = demo();
    plan::Plate& left = plateOf(plan, "bedroom-02");
    left.host.u_mm = 778.5;
    left.kept_along.reset();
    const auto beside = check(plan);
    CHECK(about(beside, "covered-plate", "bedroom-02") == nullptr);
    REQUIRE(about(beside, "bed-reach", "bedroom-02") != nullptr);
    CHECK(about(beside, "bed-reach", "bedroom-02")->severity == Severity::Warn);
    CHECK(*about(beside, "bed-reach", "bedroom-02")->value_mm == Approx(971.8).margin(0.1)); // 972

    // The headboard's front: its left edge is 900 from the room's corner.
    plan::Plate& right = plateOf(plan, "bedroom-03");
    for (auto* plate : {&left, &right}) {
        plate->host = {};
        plate->host.kind = plan::Host::Kind::Furniture;
        plate->host.furniture = "bedroom-headboard";
        plate->host.face = "front";
        plate->host.v_mm = 720;
        plate->kept_along.reset();
        plate->kept_height.reset();
    }
    left.host.u_mm = 1080 - 900;
    right.host.u_mm = 3120 - 900;
    const auto within = check(plan);
    for (const char* id : {"bedroom-02", "bedroom-03"}) {
        INFO(id);
        CHECK(about(within, "bed-reach", id) == nullptr); // 669
        CHECK(about(within, "covered-plate", id) == nullptr);
        const auto* fragile = about(within, "fragile-place", id);
        REQUIRE(fragile != nullptr);
        CHECK(fragile->severity == Severity::Warn);
        CHECK(*fragile->value_mm == Approx(8.5).margin(0.05));
    }
    catalogue::CountryPack strict = packOf("international"); // 669 is what is measured
    strict.limits["bedReach"].value = 669;
    const auto measured = checks::check(geometry::HouseIndex(plan), catalogue::withOwn(shipped(), plan),
                                        strict, plan::assetsFolder() / "demo");
    REQUIRE(about(measured, "bed-reach", "bedroom-02") != nullptr);
    CHECK(*about(measured, "bed-reach", "bedroom-02")->value_mm == Approx(669.2).margin(0.1));
}

TEST_CASE("seed 2-4: the curtain's motor is at the right end") {
    plan::Plan plan = demo();
    const auto seeded = check(plan);
    const auto* wrong = about(seeded, "motor-side", "bedroom-04");
    REQUIRE(wrong != nullptr);
    CHECK(*wrong->value_mm == Approx(2737.5 - 900)); // from the rail's right end
    plateOf(plan, "bedroom-04").host.u_mm = 2800;
    CHECK(about(check(plan), "motor-side", "bedroom-04") == nullptr);
}

TEST_CASE("seed 2-7: the right bank is a copy; turned round it is right") {
    plan::Plan plan = demo();
    const auto seeded = check(plan);
    REQUIRE(about(seeded, "bank-order", "bedroom-03") != nullptr);
    CHECK(about(seeded, "bank-order", "bedroom-03")->severity == Severity::Warn);
    std::ranges::reverse(plateOf(plan, "bedroom-03").modules);
    for (auto& leg : plan.legs)
        for (auto& control : leg.controls)
            if (control.plate == "bedroom-03") control.module = 4 - control.module;
    CHECK(about(check(plan), "bank-order", "bedroom-03") == nullptr);
}

TEST_CASE("seed 2-16: the bunks' one switch is out of reach from the upper one") {
    plan::Plan plan = demo();
    const auto seeded = check(plan);
    const auto* far = about(seeded, "bunk-reach", "bunkroom-03");
    REQUIRE(far != nullptr);
    CHECK(far->message.find("upper") != std::string::npos);
    // Pillow (500, 2170, 1500), switch (0, 2200, 800).
    CHECK(*far->value_mm == Approx(860.8).margin(0.1));
    // Both reach it from 1011 to 1039: sqrt(700^2 - 500^2 - 30^2) = 489 from 1500 and from 550.
    plateOf(plan, "bunkroom-03").host.v_mm = 1010;
    CHECK(about(check(plan), "bunk-reach", "bunkroom-03") != nullptr);
    plateOf(plan, "bunkroom-03").host.v_mm = 1025;
    CHECK(about(check(plan), "bunk-reach", "bunkroom-03") == nullptr);
    plateOf(plan, "bunkroom-03").host.v_mm = 1040;
    CHECK(about(check(plan), "bunk-reach", "bunkroom-03") != nullptr);
}
