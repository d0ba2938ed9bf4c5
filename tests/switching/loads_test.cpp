#include "small_switching.hpp"

#include "switching/loads.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using switching::Net;

TEST_CASE("a leg's load counts each luminaire once") {
    plan::Plan plan = smallSwitching();
    addLamp(plan, "l2", "room", 9);
    plan.legs[0].luminaires = {"l1", "l2", "l1", "gone"};
    const Net net(plan, shipped());
    const auto load = legLoad(net, plan.legs[0]);
    CHECK(load.luminaires == 2);
    CHECK(load.watts == 15);         // 6 + 9, by hand
    CHECK(load.lumens == 90 * 15.0); // 90 lm/W in this plan
}

namespace {

plan::Plan onCircuit(double rated_a, double volts, double watts) {
    plan::Plan plan = smallSwitching();
    plan.luminaires[0].watts = watts;
    plan.plates[0].circuit = "lighting";
    plan::Circuit circuit;
    circuit.id = "lighting";
    circuit.kind = plan::Circuit::Kind::Lighting;
    circuit.rated_a = rated_a;
    circuit.volts = volts;
    plan.circuits.push_back(circuit);
    return plan;
}

switching::CircuitLoad loadOf(const plan::Plan& plan, const std::string& pack) {
    const Net net(plan, shipped());
    return circuitLoads(net, packOf(pack)).front();
}

} // namespace

// Trade facts 6.9 and check 29: 6 A at 230 V is 1380 W. 6.12 and check 28: 0.8 x 15 A x 120 V is 1440 W.
TEST_CASE("a circuit's limit is volts times amperes times the country's part") {
    const auto gb = loadOf(onCircuit(6, 230, 60), "gb");
    CHECK(gb.limit_w == Approx(1380));
    CHECK(gb.lighting_w == 60);
    CHECK(gb.lighting_a == Approx(60.0 / 230));
    const auto us = loadOf(onCircuit(15, 0, 60), "us");
    CHECK(us.volts == 120);
    CHECK(us.limit_w == Approx(1440));
}

TEST_CASE("lighting over its circuit's limit is a fault, at the limit it is none") {
    CHECK(ofRule(proved(onCircuit(6, 230, 1380)), "circuit-over-load").empty());
    const auto over = ofRule(proved(onCircuit(6, 230, 1381)), "circuit-over-load");
    REQUIRE(over.size() == 1);
    CHECK(over[0].severity == plan::Severity::Fault);
    CHECK(over[0].message.find("1381 W") != std::string::npos);
    CHECK(over[0].message.find("1380 W") != std::string::npos);
}

TEST_CASE("circuits that are only named follow the described ones, by name") {
    plan::Plan plan = onCircuit(6, 230, 60);
    addPlate(plan, "p1", "room", "A", 800, {"socket-f", "socket-f"}).circuit = "ring";
    addPlate(plan, "p2", "room", "A", 1600, {"socket-f"}).circuit = "oven";
    plan::Device oven;
    oven.id = "oven";
    oven.plate = "p2";
    oven.watts = 3000;
    plan.devices.push_back(oven);
    const Net net(plan, shipped());
    const auto loads = circuitLoads(net, packOf("international"));
    REQUIRE(loads.size() == 3);
    CHECK(loads[0].id == "lighting");
    CHECK(loads[1].id == "oven");
    CHECK(loads[1].circuit == nullptr);
    CHECK(loads[1].appliances_w == 3000);
    CHECK(loads[2].id == "ring");
    CHECK(loads[2].outlets == 2);
    addPlate(plan, "p3", "room", "A", 2400, {"data-rj45"}).circuit = "data"; // no mains
    CHECK(ofRule(proved(plan), "circuit-unknown").size() == 2);
}

// 200 x 6.9 W is 1380 W, what 6 A at 230 V carry (trade facts 6.9); added up as numbers a little more.
TEST_CASE("the rounding of a sum puts no circuit over its limit") {
    plan::Plan plan = onCircuit(6, 230, 6.9);
    for (int i = 2; i <= 200; ++i) {
        const std::string id = "l" + std::to_string(i);
        addLamp(plan, id, "room", 6.9);
        plan.legs[0].luminaires.push_back(id);
    }
    CHECK(ofRule(proved(plan), "circuit-over-load").empty());
    plan.luminaires[0].watts = 7;
    CHECK_FALSE(ofRule(proved(plan), "circuit-over-load").empty());
}
