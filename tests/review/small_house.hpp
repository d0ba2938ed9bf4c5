// A house of one kitchen with two plates, a switch leg, furniture and two doors, for the review tests.
#pragma once

#include "plan/plan.hpp"

inline gangway::plan::Plan smallHouse() {
    using namespace gangway::plan;
    Plan plan;
    plan.storeys.push_back({"ground", "Ground floor", 0, "round-71", std::nullopt, {}});

    Room kitchen;
    kitchen.id = "kitchen";
    kitchen.letter = "K";
    kitchen.storey = "ground";
    kitchen.outline = {{0, 4200}, {6200, 4200}, {6200, 0}, {0, 0}};
    for (const char* id : {"A", "B", "C", "D"}) {
        Wall wall;
        wall.id = id;
        wall.build_up = {{"plaster", 13, {}}};
        kitchen.walls.push_back(wall);
    }
    plan.rooms.push_back(kitchen);

    Opening door;
    door.id = "door-1";
    door.kind = Opening::Kind::HingedDoor;
    door.room = "kitchen";
    door.wall = "A";
    door.left_mm = 5000;
    door.width_mm = 900;
    door.height_mm = 2100;
    plan.openings.push_back(door);
    door.id = "door-2";
    door.wall = "C";
    plan.openings.push_back(door);

    Furniture cupboard;
    cupboard.id = "cupboard";
    cupboard.kind = "base-unit";
    cupboard.room = "kitchen";
    cupboard.at_mm = {1500, 3900};
    cupboard.size = {600, 600, 920};
    plan.furniture.push_back(cupboard);
    cupboard.id = "table";
    cupboard.at_mm = {4800, 950};
    plan.furniture.push_back(cupboard);

    Plate plate;
    plate.id = "k4";
    plate.tag = "K-04";
    plate.room = "kitchen";
    plate.host.wall = "A";
    plate.host.u_mm = 1500;
    plate.host.v_mm = 1150;
    plate.format = "round-71";
    plate.modules = {{"socket-f", "", "", {}}, {"switch-2way", "", "", {}}};
    plate.finish = "white";
    plate.purpose = "kettle";
    plate.anchor = "cupboard";
    plan.plates.push_back(plate);
    plate.id = "k5";
    plate.tag = "K-05";
    plate.host.wall = "C";
    plate.anchor.clear();
    plan.plates.push_back(plate);

    Luminaire pendant;
    pendant.id = "pendant";
    pendant.room = "kitchen";
    pendant.host.kind = Host::Kind::Ceiling;
    plan.luminaires.push_back(pendant);

    SwitchLeg leg;
    leg.id = "leg-a";
    leg.controls = {{"k4", 2, 1}};
    leg.luminaires = {"pendant"};
    plan.legs.push_back(leg);
    return plan;
}
