// The seeded mistakes of the demo house (assets/demo/README.md): found with the numbers stated there, gone
// with the fixes stated there. The numbers were worked out by hand from the house's drawings.
#include "checks/checks.hpp"
#include "checks/point.hpp"
#include "checks/stretches.hpp"

#include "../switching/small_switching.hpp"
#include "plan/io.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <cmath>
#include <set>

using namespace gangway;
using plan::Severity;

namespace {
plan::Plan demo() {
    auto read = plan::readFile(plan::assetsFolder() / "demo" / "terrace.plan.json");
    if (!read) throw std::runtime_error("demo");
    return read->plan;
}

std::vector<plan::Finding> check(const plan::Plan& plan) {
    return checks::check(geometry::HouseIndex(plan), catalogue::withOwn(shipped(), plan),
                         packOf("international"), plan::assetsFolder() / "demo");
}

const std::vector<plan::Finding>& ofDemo() {
    static const std::vector<plan::Finding> findings = check(demo());
    return findings;
}

bool names(const plan::Finding& finding, const std::string& id) {
    return std::ranges::find(finding.objects, id) != finding.objects.end();
}

const plan::Finding* findingOf(const std::vector<plan::Finding>& findings, const std::string& rule,
                               const std::string& id) {
    for (const auto& finding : findings)
        if (finding.rule == rule && names(finding, id)) return &finding;
    return nullptr;
}

std::string rulesAbout(const std::vector<plan::Finding>& findings, const std::string& id,
                       Severity least = Severity::Warn) {
    std::string rules;
    for (const auto& finding : findings)
        if (finding.objects.front() == id && finding.severity >= least) rules += finding.rule + " ";
    return rules;
}

plan::Plate& plateOf(plan::Plan& plan, const std::string& id) {
    return *std::ranges::find(plan.plates, id, &plan::Plate::id);
}

/// On a wall of its room by the room's own x or y, as the seeds are stated.
void put(plan::Plan& plan, const std::string& id, const std::string& wall, double u_mm, double v_mm) {
    plan::Plate& plate = plateOf(plan, id);
    plate.host = {};
    plate.host.wall = wall;
    plate.host.u_mm = u_mm;
    plate.host.v_mm = v_mm;
    plate.kept_along.reset();
    plate.kept_height.reset();
}
} // namespace

TEST_CASE("the seeded mistakes are found with their numbers") {
    struct Seed {
        const char *seed, *rule, *id;
        Severity least;
        double value;
    };
    for (const Seed& seed : {
             Seed{"1-1", "appliance-bay", "kitchen-04", Severity::Fault, 86},
             Seed{"1-2", "hob-gap", "kitchen-05", Severity::Fault, -13},
             Seed{"1-3", "tile-joint", "kitchen-06", Severity::Hint, 41.5},
             Seed{"1-3", "row-height", "kitchen-06", Severity::Warn, 2},
             Seed{"1-4", "lead-short", "fridge", Severity::Fault, 2330},
             Seed{"1-5", "in-duct", "kitchen-08", Severity::Fault, 86},
             Seed{"1-6", "curtain-stack", "kitchen-03", Severity::Fault, 86},
             Seed{"1-7", "switch-behind-leaf", "kitchen-01", Severity::Fault, 243},
             Seed{"1-8", "radiator", "kitchen-09", Severity::Fault, 146},
             Seed{"1-9", "off-centre", "kitchen-lamp-11", Severity::Warn, 300},
             Seed{"1-10", "floor-box", "kitchen-10", Severity::Fault, -100},
             Seed{"1-11", "appliance-bay", "kitchen-11", Severity::Fault, 86},
             Seed{"1-13", "worktop-spacing", "kitchen-06", Severity::Warn, 2586},
             Seed{"1-14", "switch-behind-leaf", "hall-01", Severity::Fault, 212},
             Seed{"1-15", "covered-plate", "hall-02", Severity::Fault, 75},
             Seed{"1-17", "device-without-outlet", "router", Severity::Warn, -1},
             Seed{"1-18", "plug-depth", "utility-01", Severity::Warn, 40},
             Seed{"2-1", "covered-plate", "bedroom-02", Severity::Fault, 136.5},
             Seed{"2-1", "covered-plate", "bedroom-03", Severity::Fault, 136.5},
             Seed{"2-2", "opening-gap", "bedroom-01", Severity::Fault, -41.5},
             Seed{"2-3", "off-centre", "bedroom-lamp-02", Severity::Warn, 100},
             Seed{"2-3", "off-centre", "bedroom-lamp-03", Severity::Warn, 100},
             Seed{"2-4", "curtain-stack", "bedroom-04", Severity::Warn, 78},
             Seed{"2-4", "motor-side", "bedroom-04", Severity::Warn, 1837.5},
             Seed{"2-5", "curtain-stack", "bedroom-05", Severity::Warn, 81},
             Seed{"2-6", "no-access", "bedroom-06", Severity::Warn, 81},
             Seed{"2-7", "bank-order", "bedroom-03", Severity::Warn, -1},
             Seed{"2-8", "mirror-supply", "ensuite-01", Severity::Warn, 40},
             Seed{"2-9", "wet-appliance", "ensuite-cabinet", Severity::Warn, 500},
             Seed{"2-10", "wet-socket", "ensuite-02", Severity::Fault, 1565},
             Seed{"2-11", "lamp-overlap", "ensuite-lamp-03", Severity::Warn, 10},
             Seed{"2-11", "lamp-overlap", "ensuite-lamp-04", Severity::Warn, 10},
             Seed{"2-12", "device-without-outlet", "wc-seat", Severity::Warn, -1},
             Seed{"2-13", "board-edge", "bunkroom-02", Severity::Fault, -40.5},
             Seed{"2-14", "fan-tip", "bunkroom-bunk", Severity::Warn, 340},
             Seed{"2-15", "fan-tip", "bunkroom-lamp-01", Severity::Warn, 340},
             Seed{"2-15", "fan-tip", "bunkroom-lamp-02", Severity::Warn, 440},
             Seed{"2-15", "fan-tip", "bunkroom-lamp-03", Severity::Warn, 240},
             Seed{"2-16", "bunk-reach", "bunkroom-03", Severity::Warn, 860.8},
         }) {
        INFO(seed.seed << " " << seed.rule << " " << seed.id);
        const plan::Finding* finding = findingOf(ofDemo(), seed.rule, seed.id);
        REQUIRE(finding != nullptr);
        CHECK(finding->severity >= seed.least);
        if (seed.value > -500 && seed.value != -1)
            CHECK(finding->value_mm.value_or(1e9) == Approx(seed.value).margin(0.5));
        CHECK_FALSE(finding->source.empty());
        CHECK_FALSE(finding->remedy.empty());
        CHECK(finding->place_mm);
    }
}

TEST_CASE("every finding's rule is in the list, once, with what it looks at") {
    std::set<std::string> ids;
    for (const auto& rule : checks::rules()) {
        CHECK(ids.emplace(rule.id).second);
        CHECK_FALSE(rule.what.empty());
    }
    for (const auto& finding : ofDemo())
        CHECK(ids.contains(finding.rule));
}

TEST_CASE("nothing else in the demo is flagged as a fault") {
    const std::set<std::string> seeded{"kitchen-01", "kitchen-03", "kitchen-04", "kitchen-05",
                                       "kitchen-08", "kitchen-09", "kitchen-10", "kitchen-11",
                                       "fridge",     "hall-01",    "hall-02",    "bedroom-01",
                                       "bedroom-02", "bedroom-03", "ensuite-02", "bunkroom-02"};
    for (const auto& finding : ofDemo()) {
        if (finding.severity != Severity::Fault) continue;
        INFO(finding.message);
        CHECK(std::ranges::any_of(finding.objects, [&](const auto& id) { return seeded.contains(id); }));
    }
}

TEST_CASE("the stated fixes pass") {
    plan::Plan plan = demo();
    put(plan, "kitchen-04", "A", 3800, 500);      // 1-1
    put(plan, "kitchen-06", "A", 801.5, 1073);    // 1-3
    put(plan, "kitchen-07", "A", 750, 120);       // 1-4: a hint remains
    put(plan, "kitchen-08", "A", 1870, 1900);     // 1-5
    put(plan, "kitchen-03", "B", 560, 1050);      // 1-6: a margin of 14.5 remains
    put(plan, "kitchen-01", "D", 1320, 1050);     // 1-7
    put(plan, "kitchen-09", "C", 3400, 450);      // 1-8: C x 2800
    put(plan, "hall-01", "C", 1313, 1050);        // 1-14
    put(plan, "utility-01", "D", 1360, 600);      // 1-18
    put(plan, "bedroom-04", "B", 2800, 2300);     // 2-4
    put(plan, "bedroom-05", "B", 600, 300);       // 2-5
    put(plan, "ensuite-01", "A", 1400, 1550);     // 2-8
    put(plan, "bunkroom-02", "A", 2400, 960);     // 2-13
    plateOf(plan, "kitchen-10").host.u_mm = 1650; // 1-10
    for (auto& lamp : plan.luminaires) {
        if (lamp.id == "kitchen-lamp-11") lamp.host.u_mm = 1800; // 1-9
        if (lamp.id == "kitchen-lamp-12") lamp.host.u_mm = 2400;
        if (lamp.id == "kitchen-lamp-13") lamp.host.u_mm = 3000;
        if (lamp.id == "bedroom-lamp-02") lamp.host.u_mm = 925; // 2-3
        if (lamp.id == "bedroom-lamp-03") lamp.host.u_mm = 3275;
        if (lamp.id == "ensuite-lamp-04") lamp.host.u_mm = 1880; // 2-11
    }
    for (auto& piece : plan.furniture) // 2-14: 760 across at x 2000
        if (piece.id == "bunkroom-fan") {
            piece.size = {760, 760, piece.size.height_mm};
            piece.at_mm.x += 100;
        }
    const auto found = check(plan);
    for (const char* id :
         {"kitchen-04", "kitchen-06", "kitchen-07", "kitchen-08", "kitchen-01", "kitchen-09", "kitchen-10",
          "hall-01", "utility-01", "bedroom-04", "bedroom-05", "ensuite-01", "bunkroom-02", "kitchen-lamp-11",
          "bedroom-lamp-02", "bedroom-lamp-03", "ensuite-lamp-04", "bunkroom-bunk", "bunkroom-lamp-02"}) {
        INFO(id << ": " << rulesAbout(found, id));
        // 1-13: its fix is none, it is to be accepted.
        CHECK(rulesAbout(found, id) == (id == std::string("kitchen-06") ? "worktop-spacing " : ""));
    }
    CHECK(findingOf(found, "lead-short", "fridge") == nullptr); // path 250 + 150 of 1400
    // 1-6: 34.5 beside the stack, 20 of them kept clear.
    const auto* fragile = findingOf(found, "fragile-place", "kitchen-03");
    REQUIRE(fragile != nullptr);
    CHECK(*fragile->value_mm == Approx(14.5).margin(0.05));
    // 1-4: 120 above the floor is a hint.
    CHECK(findingOf(found, "socket-low", "kitchen-07") != nullptr);
    // 1-18: near the stack is a hint. 27 to its box; the washer's body stands 22 behind its front.
    const auto* beside = findingOf(found, "side-gap", "utility-01");
    REQUIRE(beside != nullptr);
    CHECK(beside->severity == Severity::Hint);
    INFO(beside->message);
    CHECK(*beside->value_mm == Approx(27 + 22).margin(0.05));
    // 2-15: with the smaller fan 525.5 and 320 are left, worked by hand from the places in the room.
    CHECK(*findingOf(found, "fan-tip", "bunkroom-lamp-01")->value_mm == Approx(525.5).margin(0.1));
    CHECK(*findingOf(found, "fan-tip", "bunkroom-lamp-03")->value_mm == Approx(320).margin(0.1));
}

TEST_CASE("on the kitchen's worktop wall a double is free in two stretches and nowhere between") {
    // demo-house.md, seed 1-2: 723 to 837 and 3423 to 4077 at 1073, with no other plate there.
    plan::Plan plan = demo();
    std::erase_if(plan.plates, [](const plan::Plate& plate) {
        return plate.room == "kitchen" && plate.host.wall == "A" && plate.id != "kitchen-05";
    });
    const geometry::HouseIndex house(plan);
    const auto catalogue = catalogue::withOwn(shipped(), plan);
    const auto pack = packOf("international");
    const checks::Facts facts(house, catalogue, pack);
    const plan::Room& kitchen = *house.room("kitchen");
    const auto scene = checks::sceneOf(facts, kitchen, *plan::wallIndex(kitchen, "A"));
    const checks::Point& point = *scene.points.front();
    const auto bars = checks::barsFor(facts, scene, point);
    const auto free = checks::freeStretches(bars, point.half_mm, 1073, checks::wholeWall(scene, point));
    std::string said;
    for (const auto& stretch : free)
        if (stretch.u.from_mm < 4200)
            said += fmt::format("{:.1f}-{:.1f} ", stretch.u.from_mm, stretch.u.to_mm);
    CHECK(said == "723.0-837.0 3423.0-4077.0 ");
}

TEST_CASE("a proposed move leaves the plate with no finding as bad as before") {
    const plan::Plan plan = demo();
    int tried = 0;
    for (const auto& finding : ofDemo()) {
        if (!finding.move || finding.severity < Severity::Warn) continue;
        plan::Plan moved = plan;
        plan::Plate& plate = plateOf(moved, finding.move->plate);
        plate.host.u_mm = finding.move->u_mm;
        plate.host.v_mm = finding.move->v_mm;
        INFO(finding.message << " -> " << finding.move->u_mm << ", " << finding.move->v_mm);
        for (const auto& after : check(moved)) {
            if (after.objects.front() != plate.id || after.severity < finding.severity) continue;
            const bool was_there =
                findingOf(ofDemo(), after.rule, plate.id) != nullptr && after.rule != finding.rule;
            INFO(after.rule << ": " << after.message);
            CHECK(was_there);
        }
        ++tried;
    }
    CHECK(tried > 8);
}

TEST_CASE("no finding proposes the place where its plate is already") {
    plan::Plan plan = demo();
    // 49.5 of the 50 wanted beside the mirror, and nothing better near it (assets/demo keeps 51.5).
    put(plan, "bathroom-01", "A", 1290, 1200);
    const auto findings = check(plan);
    REQUIRE(findingOf(findings, "side-gap", "bathroom-01") != nullptr);
    for (const auto& finding : findings) {
        if (!finding.move) continue;
        INFO(finding.rule << ": " << finding.message << ' ' << finding.remedy);
        const plan::Host& host = plateOf(plan, finding.move->plate).host;
        CHECK(std::hypot(finding.move->u_mm - host.u_mm, finding.move->v_mm - host.v_mm) > 0.05);
    }
}
