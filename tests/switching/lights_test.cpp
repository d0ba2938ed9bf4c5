#include "small_switching.hpp"

#include "switching/lights.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using switching::Lights;
using switching::Net;

TEST_CASE("working any switch of a two-way group turns its lamp over") {
    const plan::Plan plan = worked({"switch-2way", "switch-2way"});
    const Net net(plan, shipped());
    Lights lights;
    CHECK(lights.luminaires(net).at("l1") == 0.f);
    lights.flip(net, {"s1", 1, 1});
    CHECK(lights.luminaires(net).at("l1") == 1.f);
    CHECK(lights.over({"s1", 1, 1}));
    lights.flip(net, {"s2", 1, 1});
    CHECK(lights.luminaires(net).at("l1") == 0.f);
    CHECK(lights.over({"s1", 1, 1}));
    CHECK(lights.over({"s2", 1, 1}));
}

TEST_CASE("a dimmer is held to 1 to 100 %, and off keeps its level") {
    const plan::Plan plan = worked({"dimmer-rotary"});
    const Net net(plan, shipped());
    Lights lights;
    lights.dim(net, {"s1", 1, 1}, 0.2);
    CHECK(lights.percent("L1") == 1);
    lights.dim(net, {"s1", 1, 1}, 140);
    CHECK(lights.percent("L1") == 100);
    lights.dim(net, {"s1", 1, 1}, 40);
    lights.dim(net, {"s1", 1, 1}, 0);
    CHECK(lights.percent("L1") == 0);
    CHECK(lights.dimmedTo(net, {"s1", 1, 1}) == 40);
    lights.flip(net, {"s1", 1, 1});
    CHECK(lights.percent("L1") == 40);
}

TEST_CASE("a switch that is no dimmer dims nothing") {
    const plan::Plan plan = worked({"switch-1way"});
    const Net net(plan, shipped());
    Lights lights;
    lights.dim(net, {"s1", 1, 1}, 50);
    CHECK(lights.percent("L1") == 0);
    lights.set(net, "L1", 50);
    CHECK(lights.percent("L1") == 100);
}

TEST_CASE("a scene turns on what it lists and everything else off") {
    plan::Plan plan = worked({"dimmer-rotary"});
    addPlate(plan, "t1", "room", "A", 500, {"switch-1way"});
    addLamp(plan, "l2", "room");
    addLeg(plan, "L2", {{"t1", 1, 1}}, {"l2"});
    const Net net(plan, shipped());
    Lights lights;
    lights.setAll(net, true);
    plan::LightScene evening;
    evening.levels.emplace_back().leg = "L1";
    evening.levels.back().percent = 30;
    lights.show(net, evening);
    CHECK(lights.percent("L1") == 30);
    CHECK(lights.percent("L2") == 0);
    CHECK(lights.levels(net) == evening.levels);
}

TEST_CASE("motor and heating controls light nothing, push-buttons don't lie over") {
    for (const char* type : {"blind-switch", "thermostat"}) {
        const plan::Plan plan = worked({type});
        const Net net(plan, shipped());
        Lights lights;
        lights.flip(net, {"s1", 1, 1});
        CHECK(lights.percent("L1") == 0);
    }
    plan::Plan plan = worked({"push-button"});
    plan.legs[0].relay = true;
    const Net net(plan, shipped());
    Lights lights;
    lights.flip(net, {"s1", 1, 1});
    CHECK(lights.percent("L1") == 100);
    CHECK_FALSE(lights.over({"s1", 1, 1}));
}
