#include "review/review.hpp"
#include "small_house.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>

using namespace gangway;

namespace {

struct Change {
    const char* what;
    std::function<void(plan::Plan&)> make;
};

/// Whether a change gives plate k4 another fingerprint.
bool reopens(const Change& change) {
    plan::Plan plan = smallHouse();
    const std::string before = review::fingerprint(plan, *plan::findPlate(plan, "k4"));
    change.make(plan);
    return review::fingerprint(plan, *plan::findPlate(plan, "k4")) != before;
}

} // namespace

TEST_CASE("a fingerprint changes with everything that was agreed and relied on") {
    using plan::Plan;
    const Change changes[] = {
        {"set-out by 0.1 mm", [](Plan& p) { p.plates[0].host.u_mm += 0.1; }},
        {"height", [](Plan& p) { p.plates[0].host.v_mm += 1; }},
        {"wall", [](Plan& p) { p.plates[0].host.wall = "B"; }},
        {"host", [](Plan& p) { p.plates[0].host = {plan::Host::Kind::Floor, "", "", "", 1500, 1150}; }},
        {"room", [](Plan& p) { p.plates[0].room = "hall"; }},
        {"direction", [](Plan& p) { p.plates[0].direction = plan::Direction::Vertical; }},
        {"format", [](Plan& p) { p.plates[0].format = "rect-86"; }},
        {"gangs", [](Plan& p) { p.plates[0].gangs = 3; }},
        {"a module", [](Plan& p) { p.plates[0].modules[0].type = "usb"; }},
        {"a module more", [](Plan& p) { p.plates[0].modules.push_back({"blank", "", "", {}}); }},
        {"order of modules", [](Plan& p) { std::swap(p.plates[0].modules[0], p.plates[0].modules[1]); }},
        {"a module's finish", [](Plan& p) { p.plates[0].modules[0].finish = "brass"; }},
        {"engraving", [](Plan& p) { p.plates[0].modules[0].label = "hob"; }},
        {"the plate's finish", [](Plan& p) { p.plates[0].finish = "brass"; }},
        {"purpose", [](Plan& p) { p.plates[0].purpose = "toaster"; }},
        {"what the switch feeds", [](Plan& p) { p.legs[0].luminaires.push_back("wall-light"); }},
        {"which module works the leg", [](Plan& p) { p.legs[0].controls[0].module = 1; }},
        {"the leg is gone", [](Plan& p) { p.legs.clear(); }},
        {"the anchor's place", [](Plan& p) { p.furniture[0].at_mm.x += 50; }},
        {"the anchor's size", [](Plan& p) { p.furniture[0].size.height_mm = 900; }},
        {"the anchor's kind", [](Plan& p) { p.furniture[0].kind = "tall-unit"; }},
        {"another anchor", [](Plan& p) { p.plates[0].anchor = "table"; }},
        {"hinge side of the door in its wall", [](Plan& p) { p.openings[0].hinge = plan::Side::Right; }},
        {"swing of the door in its wall", [](Plan& p) { p.openings[0].swing = plan::Swing::Out; }},
        {"place of the door in its wall", [](Plan& p) { p.openings[0].left_mm -= 100; }},
        {"build-up of its wall", [](Plan& p) { p.rooms[0].walls[0].build_up.push_back({"tiles", 10, {}}); }},
    };
    for (const Change& change : changes) {
        INFO(change.what);
        CHECK(reopens(change));
    }
}

TEST_CASE("a fingerprint does not change with what nobody agreed to") {
    using plan::Plan;
    const Change changes[] = {
        {"another plate moved", [](Plan& p) { p.plates[1].host.u_mm = 900; }},
        {"tag", [](Plan& p) { p.plates[0].tag = "K-40"; }},
        {"note", [](Plan& p) { p.plates[0].note = "ask the plasterer"; }},
        {"circuit", [](Plan& p) { p.plates[0].circuit = "C2"; }},
        {"less than 0.05 mm", [](Plan& p) { p.plates[0].host.u_mm += 0.04; }},
        {"a door in another wall", [](Plan& p) { p.openings[1].hinge = plan::Side::Right; }},
        {"furniture it does not belong to", [](Plan& p) { p.furniture[1].at_mm.x += 500; }},
        {"build-up of another wall", [](Plan& p) { p.rooms[0].walls[1].build_up.clear(); }},
        {"order of lists",
         [](Plan& p) { std::ranges::reverse(p.openings), std::ranges::reverse(p.furniture); }},
        {"a layer hidden",
         [](Plan& p) { p.layers.push_back({"furniture", "Furniture", plan::Visibility::Hidden, {}}); }},
        {"the plate's finish said again on a module",
         [](Plan& p) { p.plates[0].modules[0].finish = "white"; }},
        {"an answer",
         [](Plan& p) {
             p.agreements.push_back(
                 review::answer(p, p.plates[0], plan::Agreement::Answer::Agree, "", "", ""));
         }},
    };
    for (const Change& change : changes) {
        INFO(change.what);
        CHECK_FALSE(reopens(change));
    }
}

TEST_CASE("a plate on furniture relies on the piece that carries it") {
    plan::Plan plan = smallHouse();
    plan::Plate& plate = plan.plates[1];
    plate.host = {plan::Host::Kind::Furniture, "", "table", "front", 100, 50};
    const std::string before = review::fingerprint(plan, plate);
    plan.furniture[1].at_mm.y += 10;
    CHECK(review::fingerprint(plan, plate) != before);
}

TEST_CASE("a plate may belong to a device, whose lead it relies on") {
    plan::Plan plan = smallHouse();
    plan::Device kettle;
    kettle.id = "kettle";
    kettle.lead_mm = 750;
    plan.devices.push_back(kettle);
    plan.plates[1].anchor = "kettle";
    const std::string before = review::fingerprint(plan, plan.plates[1]);
    plan.devices[0].lead_mm = 1000;
    CHECK(review::fingerprint(plan, plan.plates[1]) != before);
}

TEST_CASE("the canonical text of a plate stays as it is, or every agreement ever given would be lost") {
    const plan::Plan plan = smallHouse();
    CHECK(review::fingerprintText(plan, plan.plates[0]) == "fingerprint=1\n"
                                                           "plate=k4\n"
                                                           "room=kitchen\n"
                                                           "wall=A\n"
                                                           "u=1500.0\n"
                                                           "v=1150.0\n"
                                                           "format=round-71\n"
                                                           "direction=horizontal\n"
                                                           "gangs=0\n"
                                                           "finish=white\n"
                                                           "module.1=socket-f\n"
                                                           "module.1.finish=white\n"
                                                           "module.1.label=\n"
                                                           "module.2=switch-2way\n"
                                                           "module.2.finish=white\n"
                                                           "module.2.label=\n"
                                                           "for=kettle\n"
                                                           "leg.leg-a=module 2 way 1\n"
                                                           "leg.leg-a.feeds=pendant\n"
                                                           "anchor=cupboard\n"
                                                           "anchor.kind=base-unit\n"
                                                           "anchor.x=1500.0\n"
                                                           "anchor.y=3900.0\n"
                                                           "anchor.bottom=0.0\n"
                                                           "anchor.turn=0.0\n"
                                                           "anchor.width=600.0\n"
                                                           "anchor.depth=600.0\n"
                                                           "anchor.height=920.0\n"
                                                           "door.door-1.in=kitchen/A\n"
                                                           "door.door-1.left=5000.0\n"
                                                           "door.door-1.width=900.0\n"
                                                           "door.door-1.leaves=1\n"
                                                           "door.door-1.hinge=left\n"
                                                           "door.door-1.swing=in\n"
                                                           "course.1=plaster\n"
                                                           "course.1.thickness=13.0\n");
    CHECK(review::fingerprint(plan, plan.plates[0]) ==
          review::sha256(review::fingerprintText(plan, plan.plates[0])).substr(0, 16));
}

TEST_CASE("no value can pass for another line") {
    plan::Plan plan = smallHouse();
    plan.plates[0].purpose = "kettle\nanchor=table";
    const std::string text = review::fingerprintText(plan, plan.plates[0]);
    CHECK(text.find("\nfor=kettle\\nanchor=table\n") != std::string::npos);
    CHECK(text.find("\nanchor=table\n") == std::string::npos);
}

TEST_CASE("a set-out of minus nothing is nothing") {
    plan::Plan plan = smallHouse();
    plan.plates[0].host.u_mm = 0.0;
    const std::string zero = review::fingerprint(plan, plan.plates[0]);
    plan.plates[0].host.u_mm = -0.01;
    CHECK(review::fingerprint(plan, plan.plates[0]) == zero);
}
