// A room of 4000 x 3000 with one door, a switch on its latch side and a ceiling lamp: nothing to find. Tests
// break one thing at a time. Beside it, west of its wall D, a hall of 2000 x 3000.
#pragma once

#include "catalogue/pack.hpp"
#include "plan/paths.hpp"
#include "switching/prove.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace gangway {

inline const catalogue::Catalogue& shipped() {
    static const catalogue::Catalogue loaded = *catalogue::load(plan::assetsFolder() / "catalogue");
    return loaded;
}

inline catalogue::CountryPack packOf(const std::string& id) {
    return *catalogue::loadPacks(plan::assetsFolder() / "packs")->pack(id);
}

inline plan::Room& addRoom(plan::Plan& plan, const std::string& id, double x0, double x1,
                           const std::string& storey = "ground") {
    plan::Room room;
    room.id = id;
    room.letter = id.substr(0, 1);
    room.name = id;
    room.storey = storey;
    room.outline = {{x0, 3000}, {x1, 3000}, {x1, 0}, {x0, 0}};
    for (const char* wall : {"A", "B", "C", "D"})
        room.walls.emplace_back().id = wall;
    plan.rooms.push_back(room);
    return plan.rooms.back();
}

inline plan::Plate& addPlate(plan::Plan& plan, const std::string& id, const std::string& room,
                             const std::string& wall, double u_mm, const std::vector<std::string>& types) {
    plan::Plate plate;
    plate.id = id;
    plate.room = room;
    plate.host.wall = wall;
    plate.host.u_mm = u_mm;
    plate.host.v_mm = 1050;
    plate.format = "round-71";
    for (const std::string& type : types)
        plate.modules.emplace_back().type = type;
    plan.plates.push_back(plate);
    return plan.plates.back();
}

inline plan::Luminaire& addLamp(plan::Plan& plan, const std::string& id, const std::string& room,
                                double watts = 6) {
    plan::Luminaire lamp;
    lamp.id = id;
    lamp.room = room;
    lamp.host.kind = plan::Host::Kind::Ceiling;
    lamp.host.u_mm = 1000;
    lamp.host.v_mm = 1500;
    lamp.watts = watts;
    lamp.lumens = 90 * watts;
    lamp.dimmable = true;
    plan.luminaires.push_back(lamp);
    return plan.luminaires.back();
}

inline plan::SwitchLeg& addLeg(plan::Plan& plan, const std::string& id, const std::vector<plan::WayRef>& ways,
                               const std::vector<std::string>& lamps) {
    plan::SwitchLeg leg;
    leg.id = id;
    leg.controls = ways;
    leg.luminaires = lamps;
    plan.legs.push_back(leg);
    return plan.legs.back();
}

/// Door in wall D of the room, 1000 to 1900 from its left corner, hinged at its left, opening in: latch at
/// u 1900. Wall D runs from the south-west corner northwards, so u is y.
inline plan::Plan smallSwitching() {
    plan::Plan plan;
    plan.storeys.push_back({"ground", "Ground floor", 0, "round-71", 1000, {}});
    addRoom(plan, "room", 0, 4000);
    plan::Opening door;
    door.id = "door";
    door.kind = plan::Opening::Kind::HingedDoor;
    door.room = "room";
    door.wall = "D";
    door.left_mm = 1000;
    door.width_mm = 900;
    door.height_mm = 2100;
    door.casing_mm = 60;
    plan.openings.push_back(door);
    addPlate(plan, "s1", "room", "D", 2110, {"switch-1way"});
    addLamp(plan, "l1", "room");
    addLeg(plan, "L1", {{"s1", 1, 1}}, {"l1"});
    return plan;
}

/// The room's lamp worked from several switches of the given modules, side by side on the latch side.
inline plan::Plan worked(const std::vector<std::string>& types) {
    plan::Plan plan = smallSwitching();
    plan.plates.clear();
    plan.legs[0].controls.clear();
    for (std::size_t i = 0; i < types.size(); ++i) {
        const std::string id = "s" + std::to_string(i + 1);
        addPlate(plan, id, "room", "D", 2110 + 100.0 * static_cast<double>(i), {types[i]});
        plan.legs[0].controls.push_back({id, 1, 1});
    }
    return plan;
}

inline std::vector<plan::Finding> proved(const plan::Plan& plan, const std::string& pack = "international") {
    return switching::prove(geometry::HouseIndex(plan), shipped(), packOf(pack));
}

inline std::vector<plan::Finding> ofRule(const std::vector<plan::Finding>& all, const std::string& rule) {
    std::vector<plan::Finding> some;
    std::ranges::copy_if(all, std::back_inserter(some), [&](const auto& f) { return f.rule == rule; });
    return some;
}

inline std::vector<std::string> rulesOf(const std::vector<plan::Finding>& findings) {
    std::vector<std::string> rules;
    for (const auto& finding : findings)
        rules.push_back(finding.rule);
    return rules;
}

} // namespace gangway
