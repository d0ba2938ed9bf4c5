// Lamps, floor boxes, tiles and mirror cabinets, each just inside and just outside its limit. Limits are the
// international pack's; where a number comes from stands beside it there and is named again here.
#include "small_room.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using plan::Severity;

namespace {
std::vector<plan::Finding> with(const plan::Plan& plan, const std::string& rule) {
    return found(plan, "international", rule);
}

plan::Luminaire& pendantAt(plan::Plan& plan, double x, double y) {
    plan::Luminaire& lamp = addLamp(plan, "l" + std::to_string(plan.luminaires.size() + 1), "room");
    lamp.kind = plan::Luminaire::Kind::Pendant;
    lamp.host.u_mm = x;
    lamp.host.v_mm = y;
    return lamp;
}

plan::Luminaire& wallLampAt(plan::Plan& plan, double u, double v, double size) {
    plan::Luminaire& lamp = addLamp(plan, "l1", "room");
    lamp.kind = plan::Luminaire::Kind::Wall;
    lamp.host = {};
    lamp.host.wall = "A";
    lamp.host.u_mm = u;
    lamp.host.v_mm = v;
    lamp.size_mm = size;
    return lamp;
}
} // namespace

TEST_CASE("off-centre: a pendant 20 off the middle of its table is over it, 21 is not") {
    // C16, an assumption of ours. The table's middle is at (2000, 1500).
    const auto off = [](double along, double across = 0) {
        plan::Plan plan = roomOf(5000, 3000, plan::RoomUse::Dining);
        pieceAt(plan, "table", 1600, {800, 600, 750}).at_mm.y = 1500;
        pendantAt(plan, 2000 + along, 1500 + across);
        return with(plan, "off-centre");
    };
    CHECK(off(20).empty());
    REQUIRE(off(21).size() == 1);
    CHECK(off(21)[0].severity == Severity::Warn);
    CHECK(*off(21)[0].value_mm == Approx(21));
    CHECK(off(12, 16).empty()); // 20 at a slant
    CHECK(off(12, 17).size() == 1);
    // Meant for it as long as it hangs over it, or within 350 of its middle (common practice, no source).
    CHECK(off(399).size() == 1);
    CHECK(off(401).empty());
    CHECK(off(0, 350).size() == 1);
    CHECK(off(0, 351).empty());
}

TEST_CASE("off-centre: of a row the middle counts") {
    const auto row = [](double off) {
        plan::Plan plan = roomOf(5000, 3000, plan::RoomUse::Kitchen);
        pieceAt(plan, "island", 1000, {2000, 900, 900}).at_mm.y = 1500;
        std::vector<std::string> ids;
        for (const double x : {-600.0, 0.0, 600.0})
            ids.push_back(pendantAt(plan, 2000 + off + x, 1500).id);
        addPlate(plan, "s1", "room", "C", 1000, {"switch-1way"});
        addLeg(plan, "L1", {{"s1", 1, 1}}, ids);
        return with(plan, "off-centre");
    };
    CHECK(row(20).empty());
    REQUIRE(row(21).size() == 1);
    CHECK(row(21)[0].objects == std::vector<std::string>{"l1", "l2", "l3", "island1"});
}

TEST_CASE("off-centre: a wall lamp 20 off the middle of its bedside table") {
    // C16, an assumption of ours; further than 350 it is not meant for it (common practice, no source).
    const auto off = [](double mm) {
        plan::Plan plan = roomOf(5000, 3000, plan::RoomUse::Bedroom);
        pieceAt(plan, "bedside-table", 1800, {400, 400, 550});
        wallLampAt(plan, 2000 + mm, 1400, 100);
        return with(plan, "off-centre").size();
    };
    CHECK(off(20) == 0);
    CHECK(off(-21) == 1);
    CHECK(off(350) == 1);
    CHECK(off(351) == 0);
}

TEST_CASE("lamp-overlap: a wall lamp may touch a mirror, not reach over it") {
    // Geometry: half of 120 is 60. What stands out 120 is as far as a lamp does (common practice, no source).
    const auto at = [](double u, double depth = 20) {
        plan::Plan plan = roomOf(5000, 3000, plan::RoomUse::Bathroom);
        pieceAt(plan, "mirror", 1000, {800, depth, 600}, 1200);
        wallLampAt(plan, u, 1500, 120);
        return with(plan, "lamp-overlap");
    };
    CHECK(at(1000 - 60).empty());
    REQUIRE(at(1000 - 59).size() == 1);
    CHECK(*at(1000 - 59)[0].value_mm == Approx(1));
    CHECK(at(1800 + 60).empty());
    CHECK(at(1800 + 59).size() == 1);
}

TEST_CASE("fan-tip: 600 from the blades' tips to a lamp and to a bunk") {
    // C32; common practice, no source. The fan is at (2000, 1500) and 1000 across.
    const auto fan = [](plan::Plan& plan) {
        pieceAt(plan, "fan", 1500, {1000, 1000, 300}, 2100).at_mm.y = 1500;
    };
    const auto lamp = [&](double gap) {
        plan::Plan plan = roomOf(6000, 3000, plan::RoomUse::Child);
        fan(plan);
        pendantAt(plan, 2500 + gap, 1500).kind = plan::Luminaire::Kind::Recessed;
        return with(plan, "fan-tip");
    };
    CHECK(lamp(600).empty());
    REQUIRE(lamp(599).size() == 1);
    CHECK(*lamp(599)[0].value_mm == Approx(599));
    const auto bunk = [&](double gap) {
        plan::Plan plan = roomOf(6000, 3000, plan::RoomUse::Child);
        fan(plan);
        pieceAt(plan, "bunk-bed", 2500 + gap, {1000, 2000, 1650}).at_mm.y = 1500;
        return with(plan, "fan-tip").size();
    };
    CHECK(bunk(600) == 0);
    CHECK(bunk(599) == 1);
}

TEST_CASE("floor-box: 100 inside the footprint of what it feeds") {
    // C15, an assumption of ours. The table reaches from 1000 to 2600 and from 1050 to 1950.
    const auto at = [](double x, double y) {
        plan::Plan plan = roomOf(5000, 3000, plan::RoomUse::Dining);
        pieceAt(plan, "table", 1000, {1600, 900, 750}).at_mm.y = 1500;
        plan::Plate& plate = socketOn(plan, "A", 0);
        plate.host = {};
        plate.host.kind = plan::Host::Kind::Floor;
        plate.host.u_mm = x;
        plate.host.v_mm = y;
        plate.anchor = plan.furniture.front().id;
        return with(plan, "floor-box");
    };
    CHECK(at(1100, 1500).empty());
    REQUIRE(at(1099, 1500).size() == 1);
    CHECK(at(1099, 1500)[0].severity == Severity::Warn);
    CHECK(at(1001, 1500)[0].severity == Severity::Warn);
    CHECK(at(999, 1500)[0].severity == Severity::Fault);
    CHECK(*at(999, 1500)[0].value_mm == Approx(-1));
    CHECK(at(1800, 1850).empty());
    CHECK(at(1800, 1851).size() == 1);
}

TEST_CASE("tile-joint: 3 off a joint or the middle of a tile, along and up") {
    // C11, an assumption of ours. Tiles of 200 x 100 with joints of 4 from (0, 0): middles at 100 + 204 n and
    // 50 + 104 n, joints at 202 + 204 n and 102 + 104 n.
    const auto at = [](double u, double v) {
        plan::Plan plan = roomOf(5000, 3000, plan::RoomUse::Kitchen);
        plan::WallLine& tiles = plan.rooms.front().walls.front().lines.emplace_back();
        tiles.kind = plan::WallLine::Kind::Tiles;
        tiles.height_mm = 2000;
        tiles.tile_width_mm = 200;
        tiles.tile_height_mm = 100;
        tiles.joint_mm = 4;
        socketOn(plan, "A", u, v);
        return with(plan, "tile-joint");
    };
    const double middle_u = 100 + 204 * 5, joint_u = 202 + 204 * 5;
    const double middle_v = 50 + 104 * 10, joint_v = 102 + 104 * 10;
    CHECK(at(middle_u + 3, middle_v).empty());
    REQUIRE(at(middle_u + 4, middle_v).size() == 1);
    CHECK(*at(middle_u + 4, middle_v)[0].value_mm == Approx(4));
    CHECK(at(joint_u - 3, joint_v + 3).empty());
    CHECK(at(joint_u - 4, joint_v).size() == 1);
    CHECK(at(joint_u, joint_v - 4).size() == 1);
    CHECK(at(middle_u, middle_v + 4).size() == 1);
    CHECK(at(middle_u + 50, 2001).empty()); // over the tiles
}

TEST_CASE("mirror-supply: within 1500 to 1600 for the cabinet that it feeds") {
    // C17, an assumption of ours.
    const auto at = [](double v, bool feeds = true) {
        plan::Plan plan = roomOf(5000, 3000, plan::RoomUse::Bathroom);
        pieceAt(plan, "mirror-cabinet", 1000, {800, 150, 700}, 1250);
        plan::Plate& plate = socketOn(plan, "A", 1400, v, {"cord-outlet"});
        plate.use = plan::UseRate::Once;
        if (feeds) plate.anchor = plan.furniture.front().id;
        return with(plan, "mirror-supply");
    };
    CHECK(at(1500).empty());
    CHECK(at(1600).empty());
    REQUIRE(at(1499).size() == 1);
    CHECK(at(1499)[0].severity == Severity::Warn);
    CHECK(*at(1499)[0].value_mm == Approx(1));
    CHECK(at(1601).size() == 1);
    CHECK(at(1601, false).empty());
}

TEST_CASE("wet-appliance: a mirror cabinet beside a shower's zone 2 is not in it, one that reaches in is") {
    // IEC 60364-7-701, from memory: zone 2 is 0.60 m beyond the tray, up to 2.25 m; here to 900 + 600.
    const auto at = [](double left, double bottom = 1250) {
        plan::Plan plan = roomOf(5000, 3000, plan::RoomUse::Bathroom);
        pieceAt(plan, "shower", 0, {900, 900, 2000}).with.emplace_back("trayHeight", 40);
        pieceAt(plan, "mirror-cabinet", left, {800, 150, 700}, bottom);
        return with(plan, "wet-appliance");
    };
    CHECK(at(1502).empty());
    REQUIRE(at(1498).size() == 1);
    CHECK(*at(1498)[0].value_mm == Approx(2).margin(1)); // sampled each 2 mm
    CHECK(*at(1100)[0].value_mm == Approx(400).margin(1));
    CHECK(at(1100, 2249).size() == 1);
    CHECK(at(1100, 2251).empty());
}
