// Beds, banks of switches, motors and lamps, each just inside and just outside its limit. Limits are the
// international pack's; where a number comes from stands beside it there and is named again here.
#include "small_room.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using plan::Severity;

namespace {
std::vector<plan::Finding> with(const plan::Plan& plan, const std::string& rule) {
    return found(plan, "international", rule);
}

/// A bed for one, 900 wide with its head at wall A and its middle at x 2000, and a bedside table from 2450.
plan::Plan withBed() {
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Bedroom);
    pieceAt(plan, "bed", 1550, {900, 2000, 550}).with = {{"headboardHeight", 0.0}};
    pieceAt(plan, "bedside-table", 2450, {400, 400, 550});
    return plan;
}

/// What is meant for the table's side of the bed.
plan::Plate& bedside(plan::Plan& plan, double u_mm, double v_mm = 700,
                     const std::vector<std::string>& types = {"switch-1way"}, std::size_t table = 1) {
    plan::Plate& plate = socketOn(plan, "A", u_mm, v_mm, types);
    plate.anchor = plan.furniture[table].id;
    return plate;
}

plan::Luminaire& lampAt(plan::Plan& plan, const std::string& id, double x, double y,
                        plan::Luminaire::Kind kind = plan::Luminaire::Kind::Ceiling) {
    plan::Luminaire& lamp = addLamp(plan, id, "room");
    lamp.kind = kind;
    lamp.host.u_mm = x;
    lamp.host.v_mm = y;
    return lamp;
}
} // namespace

TEST_CASE("bed-reach: 700 from the pillow is in reach, 701 is not") {
    // C35, an assumption of ours. The pillow is 430 from the wall and 700 high: sqrt(700^2 - 430^2) = 552.4.
    const auto at = [](double off, double v) {
        plan::Plan plan = withBed();
        bedside(plan, 2000 + off, v);
        return with(plan, "bed-reach");
    };
    CHECK(at(552, 700).empty());
    REQUIRE(at(553, 700).size() == 1);
    CHECK(at(553, 700)[0].severity == Severity::Warn);
    CHECK(*at(553, 700)[0].value_mm == Approx(700.5).margin(0.05));
    CHECK(at(553, 700)[0].gap);
    CHECK(at(400, 1080).empty()); // 400^2 + 430^2 + 380^2 = 699^2
    CHECK(at(400, 1083).size() == 1);
}

TEST_CASE("bed-reach: a bed without a switch in reach is a hint, and of two sides each is asked for") {
    plan::Plan plan = withBed();
    REQUIRE(with(plan, "bed-reach").size() == 1);
    CHECK(with(plan, "bed-reach")[0].severity == Severity::Hint);
    bedside(plan, 2550).anchor.clear(); // what is in reach counts, whatever it is for
    CHECK(with(plan, "bed-reach").empty());
    plan.furniture.front().size.width_mm = 1860; // mattress 1800: pillows at 1550 and 2450
    const auto one = with(plan, "bed-reach");
    REQUIRE(one.size() == 1);
    CHECK(one[0].message.find("left pillow") != std::string::npos);
}

TEST_CASE("bunk-reach: one switch serves both only where both reach it") {
    // Pillows at 400 + 150 and 1350 + 150, 430 from the wall: 552.4 up or down are in reach.
    const auto at = [](double v) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Child);
        pieceAt(plan, "bunk-bed", 1500, {1000, 2090, 1650});
        socketOn(plan, "A", 2000, v, {"switch-1way"}).anchor = plan.furniture.front().id;
        return with(plan, "bunk-reach");
    };
    CHECK(at(948).empty());
    CHECK(at(1102).empty());
    REQUIRE(at(947).size() == 1);
    CHECK(at(947)[0].message.find("upper pillow") != std::string::npos);
    REQUIRE(at(1103).size() == 1);
    CHECK(at(1103)[0].message.find("lower pillow") != std::string::npos);
}

TEST_CASE("bedside-clear: 100 over the table's top") {
    // C35, an assumption of ours: the top is at 550, a plate's lower edge 40.5 below its centre.
    const auto at = [](double v) {
        plan::Plan plan = withBed();
        bedside(plan, 2550, v);
        return with(plan, "bedside-clear");
    };
    CHECK(at(650 + 40.5).empty());
    REQUIRE(at(649 + 40.5).size() == 1);
    CHECK(*at(649 + 40.5)[0].value_mm == Approx(99));
}

TEST_CASE("covered-plate: pillows hide what is less than 150 over a mattress") {
    // Common practice, no source: the mattress reaches from 1580 to 2420 and to 550.
    const auto at = [](double u, double v) {
        plan::Plan plan = withBed();
        socketOn(plan, "A", u, v, {"switch-1way"});
        return with(plan, "covered-plate").size();
    };
    CHECK(at(2000, 700 + 40.5 + 1) == 0);
    CHECK(at(2000, 700 + 40.5 - 1) == 1);
    CHECK(at(1580 - 40.5 - 1, 680) == 0);
    CHECK(at(1580 - 40.5 + 1, 680) == 1);
}

TEST_CASE("bedside-lamp: 1200 to 1600 beside a bed, 200 over a headboard") {
    // C35, an assumption of ours.
    const auto at = [](double v, double headboard = 0) {
        plan::Plan plan = withBed();
        plan.furniture.front().with = {{"headboardHeight", headboard}, {"headboardWidth", 2400}};
        plan::Luminaire& lamp = addLamp(plan, "l1", "room");
        lamp.kind = plan::Luminaire::Kind::Wall;
        lamp.host = {};
        lamp.host.wall = "A";
        lamp.host.u_mm = 2650;
        lamp.host.v_mm = v;
        lamp.size_mm = 100;
        return with(plan, "bedside-lamp").size();
    };
    CHECK(at(1199) == 1);
    CHECK(at(1200) == 0);
    CHECK(at(1600) == 0);
    CHECK(at(1601) == 1);
    CHECK(at(1400, 1150) == 0); // its lower edge at 1350
    CHECK(at(1400, 1151) == 1);
}

TEST_CASE("sofa-reach: a standard lamp 700 from a shoulder") {
    // An assumption of ours; the shoulder is 200 beside the middle of the seat.
    const auto at = [](double off) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        pieceAt(plan, "armchair", 1550, {900, 900, 800});
        plan::Luminaire& lamp = lampAt(plan, "l1", 2000 + off, 3000 - 450 - 90, plan::Luminaire::Kind::Floor);
        lamp.host.kind = plan::Host::Kind::Floor;
        return with(plan, "sofa-reach");
    };
    CHECK(at(900).empty());
    REQUIRE(at(901).size() == 1);
    CHECK(*at(901)[0].value_mm == Approx(701));
    CHECK(at(1300).empty()); // not read by
}

TEST_CASE("bank-order: near to far, or left to right; 300 is as far") {
    // C26; common practice, no source. The switch is at (2000, 3000), its lamps straight before it.
    const auto at = [](double first, double second, double first_x = 2000, double second_x = 2000) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        addPlate(plan, "s1", "room", "A", 2000, {"switch-1way", "switch-1way"});
        lampAt(plan, "l1", first_x, 3000 - first);
        lampAt(plan, "l2", second_x, 3000 - second);
        addLeg(plan, "one", {{"s1", 1, 1}}, {"l1"});
        addLeg(plan, "two", {{"s1", 2, 1}}, {"l2"});
        return with(plan, "bank-order").size();
    };
    CHECK(at(1000, 2500) == 0);
    CHECK(at(1300, 1000) == 0);
    CHECK(at(1301, 1000) == 1);
    CHECK(at(2500, 500, 1000, 3000) == 0); // left to right
    CHECK(at(2500, 500, 3000, 1000) == 1);
}

TEST_CASE("bank-order: a repeat in another order is found") {
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
    addPlate(plan, "s1", "room", "A", 2000, {"switch-2way", "switch-2way"});
    addPlate(plan, "s2", "room", "C", 2000, {"switch-2way", "switch-2way"});
    lampAt(plan, "l1", 2000, 1500);
    lampAt(plan, "l2", 2000, 1500);
    addLeg(plan, "one", {{"s1", 1, 1}, {"s2", 1, 1}}, {"l1"});
    addLeg(plan, "two", {{"s1", 2, 1}, {"s2", 2, 1}}, {"l2"});
    CHECK(with(plan, "bank-order").empty());
    std::swap(plan.legs[0].controls[1].module, plan.legs[1].controls[1].module);
    REQUIRE(with(plan, "bank-order").size() == 1);
    CHECK(with(plan, "bank-order")[0].objects == std::vector<std::string>{"s2", "s1"});
}

TEST_CASE("bank-order: the banks of a bed's sides are mirrored, not copied") {
    const auto sides = [](const std::vector<std::string>& right) {
        plan::Plan plan = withBed();
        plan.furniture.front().size.width_mm = 1860;
        plan.furniture.front().at_mm.x = 2000;
        plan.furniture[1].at_mm.x = 3200;
        pieceAt(plan, "bedside-table", 600, {400, 400, 550});
        bedside(plan, 900, 800, {"switch-1way", "switch-2way", "socket-f"}, 2);
        bedside(plan, 3100, 800, right);
        return with(plan, "bank-order");
    };
    REQUIRE(sides({"switch-1way", "switch-2way", "socket-f"}).size() == 1);
    CHECK(sides({"switch-1way", "switch-2way", "socket-f"})[0].severity == Severity::Warn);
    CHECK(sides({"switch-1way", "switch-2way", "socket-f"})[0].message.find("copy") != std::string::npos);
    CHECK(sides({"socket-f", "switch-2way", "switch-1way"}).empty());
    CHECK(sides({"switch-2way", "switch-1way", "socket-f"}).size() == 1);
    CHECK(sides({"switch-1way"}).empty()); // another bank altogether
}

TEST_CASE("bank-size: four in a bank, not five") {
    // C26; common practice, no source.
    const auto of = [](std::size_t count) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        addPlate(plan, "s1", "room", "A", 2000, std::vector<std::string>(count, "switch-1way"));
        return with(plan, "bank-size").size();
    };
    CHECK(of(4) == 0);
    CHECK(of(5) == 1);
}

TEST_CASE("motor-side: the outlet is in the motor's half of the rail") {
    // C12; common practice, no source. The rail's middle is at 2000, seen from the room.
    const auto at = [](double u, double motor) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        pieceAt(plan, "curtain", 1000, {2000, 120, 2300}).with = {{"motor", motor}};
        socketOn(plan, "A", u, 2350, {"cord-outlet"}).anchor = plan.furniture.front().id;
        return with(plan, "motor-side").size();
    };
    CHECK(at(1999, 2) == 1);
    CHECK(at(2001, 2) == 0);
    CHECK(at(1999, 1) == 0);
    CHECK(at(2001, 1) == 1);
    CHECK(at(1999, 0) == 0);
}

TEST_CASE("cooker-switch: 2 m from the hob, not more") {
    // On-Site Guide, from memory (2.33 M): the hob's right edge is at 1580, 90 before the wall.
    const auto at = [](double u) {
        plan::Plan plan = roomOf(6000, 3000, plan::RoomUse::Kitchen);
        pieceAt(plan, "hob", 1000, {580, 510, 8}, 920);
        socketOn(plan, "A", u, 1100, {"switch-double-pole"}).anchor = plan.furniture.front().id;
        return with(plan, "cooker-switch").size();
    };
    CHECK(at(3580) == 0);
    CHECK(at(3581) == 1);
}

TEST_CASE("worktop-high: 500 above the worktop") {
    // C36; common practice, no source. The top is at 920.
    const auto at = [](double v, plan::Sight sight = plan::Sight::Any) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Kitchen);
        pieceAt(plan, "worktop", 1000, {2000, 600, 40}, 880);
        socketOn(plan, "A", 2000, v).sight = sight;
        return with(plan, "worktop-high").size();
    };
    CHECK(at(1420) == 0);
    CHECK(at(1421) == 1);
    CHECK(at(2200, plan::Sight::KeepHidden) == 0); // a machine's own
}

TEST_CASE("robot-dock: 450 wide inside, its socket within 1500") {
    // C38; common practice, no source. A tall unit has two sides of 18.
    const auto of = [](double width, double along) {
        plan::Plan plan = roomOf(6000, 3000, plan::RoomUse::Utility);
        pieceAt(plan, "tall-unit", 1000, {width, 600, 2150});
        socketOn(plan, "A", 1200 + along, 300);
        plan::Device& dock = plan.devices.emplace_back();
        dock.id = "dock";
        dock.name = "Robot vacuum";
        dock.room = "room";
        dock.furniture = plan.furniture.front().id;
        dock.lead_exit_mm = {1200, 3000, 300};
        dock.plate = plan.plates.front().id;
        return with(plan, "robot-dock").size();
    };
    CHECK(of(486, 0) == 0);
    CHECK(of(485, 0) == 1);
    CHECK(of(600, 1500) == 0);
    CHECK(of(600, 1501) == 1);
}

TEST_CASE("lamp-spacing: rows differ by 5 at most; what differs much is meant so") {
    // C16, an assumption of ours; 150 is the most that is taken for a mistake (common practice, no source).
    const auto with_third = [](double x) {
        plan::Plan plan = roomOf(6000, 3000, plan::RoomUse::Living);
        lampAt(plan, "l1", 1000, 1500);
        lampAt(plan, "l2", 2000, 1500);
        lampAt(plan, "l3", x, 1500);
        return with(plan, "lamp-spacing");
    };
    CHECK(with_third(3005).empty());
    REQUIRE(with_third(3006).size() == 1);
    CHECK(*with_third(3006)[0].value_mm == Approx(6));
    CHECK(with_third(3150).size() == 1);
    CHECK(with_third(3151).empty());
}

TEST_CASE("unit-lamp: a downlight 300 to 450 before a wall unit") {
    // C37; common practice, no source. The unit's front is at y 2670.
    const auto before = [](double away) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Kitchen);
        pieceAt(plan, "wall-unit", 1000, {600, 330, 720}, 1420);
        lampAt(plan, "l1", 1300, 2670 - away, plan::Luminaire::Kind::Recessed);
        return with(plan, "unit-lamp").size();
    };
    CHECK(before(299) == 1);
    CHECK(before(300) == 0);
    CHECK(before(450) == 0);
    CHECK(before(451) == 1);
    CHECK(before(701) == 0); // lights the room
    CHECK(before(-100) == 1);
}
