// Where switches stand: beside doors, behind leaves, at entrances and stairs. Reach 1000 mm and latch side:
// common practice (trade facts 2.35); two-way at each stair level: 3.14.
#include "small_switching.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {

bool has(const std::vector<plan::Finding>& findings, const std::string& rule) {
    return !ofRule(findings, rule).empty();
}

/// A hall west of the room, behind the door's wall, with its own light worked beside the door.
plan::Plan withHall() {
    plan::Plan plan = smallSwitching();
    addRoom(plan, "hall", -2100, -100);
    plan.openings[0].joins = "hall";
    return plan;
}

} // namespace

TEST_CASE("a switch on the hinge side of its door is found on both faces of the wall") {
    plan::Plan plan = smallSwitching();
    plan.plates[0].host.u_mm = 800; // hinge edge at 1000
    const auto found = ofRule(proved(plan), "switch-hinge-side");
    REQUIRE(found.size() == 1);
    CHECK(found[0].objects == std::vector<std::string>{"s1", "door"});
    CHECK(found[0].value_mm == Approx(200));

    plan = withHall();
    addLamp(plan, "l2", "hall");
    addLeg(plan, "L2", {{"s2", 1, 1}}, {"l2"});
    // The hall's wall B runs from north to south: u = 3000 - y, so the latch edge y 1900 is at u 1100 and the
    // hinge edge y 1000 at u 2000.
    addPlate(plan, "s2", "hall", "B", 900, {"switch-1way"});
    CHECK_FALSE(has(proved(plan), "switch-hinge-side"));
    plan.plates[1].host.u_mm = 2200;
    CHECK(has(proved(plan), "switch-hinge-side"));
    plan.plates[1].host.u_mm = 2950; // 950 from the hinge
    plan.openings[0].left_mm = 1100; // 1050
    CHECK_FALSE(has(proved(plan), "switch-hinge-side"));
}

TEST_CASE("a switch behind an open leaf is found, on the latch side it is not") {
    plan::Plan plan = smallSwitching();
    CHECK_FALSE(has(proved(plan), "switch-behind-leaf"));
    // The leaf opens 90 degrees at y 1000 and stands along x from the wall: turned back it lies on the wall.
    plan.openings[0].stop_deg = 170;
    plan.plates[0].host.u_mm = 600;
    const auto found = ofRule(proved(plan), "switch-behind-leaf");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == plan::Severity::Fault);
    CHECK(found[0].objects == std::vector<std::string>{"s1", "door"});
}

TEST_CASE("a switch half behind an open leaf is a fault, less of it a warning, beside it nothing") {
    // A leaf of 900 and 40 thick that turns about (0, 1000) ends at y 1000 + 900 cos 170 - 40 sin 170 = 106.7
    // (DIN plate of 81); half: common practice, no source.
    const auto at = [](double u_mm) -> std::string {
        plan::Plan plan = smallSwitching();
        plan.openings[0].stop_deg = 170;
        plan.plates[0].host.u_mm = u_mm;
        const auto found = ofRule(proved(plan), "switch-behind-leaf");
        if (found.empty()) return "none";
        return found[0].severity == plan::Severity::Fault ? "fault" : "warn";
    };
    CHECK(at(106.7 + 1) == "fault");
    CHECK(at(106.7 - 3.4) == "warn");
    CHECK(at(106.7 - 40.5 + 3.4) == "warn");
    CHECK(at(106.7 - 40.5 - 1) == "none");
}

TEST_CASE("a switch up to 1000 from the hinge side is the one of that door, further it is another's") {
    // Common practice, no source: the pack's switchDoor.
    plan::Plan plan = smallSwitching();
    plan.openings[0].left_mm = 1900; // hinge edge
    plan.plates[0].host.u_mm = 900;
    CHECK(has(proved(plan), "switch-hinge-side"));
    plan.plates[0].host.u_mm = 899;
    CHECK_FALSE(has(proved(plan), "switch-hinge-side"));
}

TEST_CASE("a leaf across a narrow room hides nothing on the latch side's wall") {
    plan::Plan plan = smallSwitching();
    // The leaf stands along x at y 1000; wall C is behind it, wall A beyond the doorway. 700 of room to each.
    for (auto& corner : plan.rooms[0].outline)
        corner.y = corner.y > 0 ? 2600 : 300;
    plan.openings[0].left_mm = 700;
    plan.plates[0].host.wall = "C";
    plan.plates[0].host.u_mm = 3600; // x 400
    CHECK(has(proved(plan), "switch-behind-leaf"));
    plan.openings[0].hinge = plan::Side::Right; // leaf at y 1900, 700 from wall A, 1600 from C
    CHECK_FALSE(has(proved(plan), "switch-behind-leaf"));
    plan.openings[0].left_mm = 0; // leaf at y 1200, 900 from wall C, which is on the latch side
    plan.openings[0].width_mm = 800;
    CHECK_FALSE(has(proved(plan), "switch-behind-leaf"));
}

TEST_CASE("an entrance out of reach of every switch of the room is dark") {
    plan::Plan plan = smallSwitching();
    plan.plates[0].host.u_mm = 2890; // 990 from the latch
    CHECK_FALSE(has(proved(plan), "dark-entrance"));
    plan.plates[0].host.u_mm = 2910;
    const auto found = ofRule(proved(plan), "dark-entrance");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == plan::Severity::Fault);
    CHECK(found[0].value_mm == Approx(1010));
    CHECK(found[0].limit_mm == Approx(1000));
}

TEST_CASE("a switch just outside the door counts for the room") {
    plan::Plan plan = withHall();
    plan.plates[0].room = "hall";
    plan.plates[0].host.wall = "B";
    plan.plates[0].host.u_mm = 900;
    CHECK_FALSE(has(proved(plan), "dark-entrance"));
}

TEST_CASE("a second door without switch is dark, unless it leads from a room behind this one") {
    plan::Plan plan = smallSwitching();
    plan::Opening second = plan.openings[0];
    second.id = "second";
    second.wall = "B";
    plan.openings.push_back(second);
    auto found = ofRule(proved(plan), "dark-entrance");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == plan::Severity::Warn);
    addRoom(plan, "store", 4100, 5000);
    plan.openings[1].joins = "store";
    found = ofRule(proved(plan), "dark-entrance");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == plan::Severity::Hint);
}

TEST_CASE("a sensor in the room leaves no entrance dark") {
    plan::Plan plan = worked({"sensor-motion"});
    plan.plates[0].host.wall = "B";
    CHECK_FALSE(has(proved(plan), "dark-entrance"));
}

TEST_CASE("a further position on the hinge side is let be where the same leg is worked at the latch") {
    plan::Plan plan = worked({"switch-2way", "switch-2way"});
    plan.plates[1].host.u_mm = 300; // 700 from the hinge edge, as beside a bed; s1 stays at the latch
    CHECK_FALSE(has(proved(plan), "switch-hinge-side"));
    plan.plates[0].host.wall = "B"; // no longer at the latch
    CHECK(has(proved(plan), "switch-hinge-side"));
}

TEST_CASE("a room lit only by lamps with their own switches is entered in the dark") {
    plan::Plan plan = smallSwitching();
    plan.legs.clear();
    plan.plates.clear();
    plan.luminaires[0].kind = plan::Luminaire::Kind::Floor;
    plan.luminaires[0].host.kind = plan::Host::Kind::Floor;
    plan.luminaires[0].host.u_mm = 3000; // x, far from the door in the west wall
    plan.luminaires[0].host.v_mm = 1500;
    const auto found = ofRule(proved(plan), "dark-entrance");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == plan::Severity::Fault);
    CHECK(found[0].objects == std::vector<std::string>{"door", "room"});
    plan.luminaires[0].host.u_mm = 500; // beside the door: 500 and 400 from the latch edge at (0, 1900)
    CHECK_FALSE(has(proved(plan), "dark-entrance"));
    plan.luminaires[0].host.u_mm = 3000;
    addPlate(plan, "p1", "room", "A", 800, {"socket-f"});
    addPlate(plan, "s1", "room", "D", 2110, {"switch-1way"});
    addLeg(plan, "L1", {{"s1", 1, 1}}, {}).plates = {"p1"}; // a switched socket outlet for it
    CHECK_FALSE(has(proved(plan), "dark-entrance"));
}

TEST_CASE("a stair wants one leg that is worked from its foot and from its head") {
    plan::Plan plan = worked({"switch-2way", "switch-2way"});
    plan.storeys.push_back({"upper", "Upper floor", 2600, "round-71", 1000, {}});
    addRoom(plan, "landing", 0, 4000, "upper");
    plan::Furniture stair;
    stair.id = "stair";
    stair.kind = "stair";
    stair.room = "room";
    stair.at_mm = {1500, 1500}; // foot at y 500, head at y 2500
    stair.size = {900, 2000, 2600};
    plan.furniture.push_back(stair);
    const auto found = ofRule(proved(plan), "stairs-two-way");
    REQUIRE(found.size() == 1);
    CHECK(found[0].severity == plan::Severity::Fault);
    CHECK(found[0].message.find("from the head") != std::string::npos);
    plan.plates[1].room = "landing";
    plan.plates[1].host.wall = "A";
    plan.plates[1].host.u_mm = 1500;
    plan.plates[0].host.wall = "C"; // south, from x 4000 westwards: beside the foot
    plan.plates[0].host.u_mm = 2500;
    CHECK_FALSE(has(proved(plan), "stairs-two-way"));
    // The foot is at (1500, 500): on wall C 2000 from it are 1936.5 along; common practice, no source.
    plan.plates[0].host.u_mm = 4000 - (1500 + 1936);
    CHECK_FALSE(has(proved(plan), "stairs-two-way"));
    plan.plates[0].host.u_mm = 4000 - (1500 + 1937);
    CHECK(has(proved(plan), "stairs-two-way"));
    plan.plates[0].host.u_mm = 2500;
    // A stair that no lamp lights is dark too; before anything is tied that goes without saying.
    plan.luminaires[0].host.u_mm = 3990;
    plan.furniture[0].at_mm = {600, 1500};
    const auto unlit = ofRule(proved(plan), "stairs-two-way");
    REQUIRE(unlit.size() == 1);
    CHECK(unlit[0].objects == std::vector<std::string>{"stair"});
    plan.legs.clear();
    CHECK_FALSE(has(proved(plan), "stairs-two-way"));
}
