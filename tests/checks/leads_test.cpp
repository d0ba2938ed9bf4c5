// Ways of leads, worked out by hand. The room of small_switching.hpp: 4000 x 3000, wall A along y = 3000 from
// the west, B along x = 4000 from the north, C along y = 0 from the east, D along x = 0 from the south.
// Slack: 150 (C22), common practice, no source.
#include "checks/checks.hpp"
#include "checks/lead_path.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using plan::Severity;

namespace {
plan::Plan bareRoom() {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    addRoom(plan, "room", 0, 4000);
    return plan;
}

plan::Plate& socketAt(plan::Plan& plan, const std::string& wall, double u_mm, double v_mm = 300) {
    plan::Plate& plate =
        addPlate(plan, "s" + std::to_string(plan.plates.size() + 1), "room", wall, u_mm, {"socket-f"});
    plate.host.v_mm = v_mm;
    return plate;
}

plan::Device deviceAt(plan::Vec3 exit_mm, double lead_mm, const std::string& plate = "s1") {
    plan::Device device;
    device.id = "lamp";
    device.room = "room";
    device.lead_exit_mm = exit_mm;
    device.lead_mm = lead_mm;
    device.plate = plate;
    return device;
}

plan::Opening& doorIn(plan::Plan& plan, const std::string& wall, double left_mm) {
    plan::Opening& door = plan.openings.emplace_back();
    door.id = "door-" + wall;
    door.kind = plan::Opening::Kind::Plain;
    door.room = "room";
    door.wall = wall;
    door.left_mm = left_mm;
    door.width_mm = 900;
    door.height_mm = 2100;
    return door;
}

plan::Furniture& pieceAt(plan::Plan& plan, const std::string& kind, plan::Vec2 low, plan::Vec2 high,
                         double bottom_mm, double height_mm) {
    plan::Furniture& piece = plan.furniture.emplace_back();
    piece.id = kind;
    piece.kind = kind;
    piece.room = "room";
    piece.layer = plan::kLayerFurniture;
    piece.at_mm = (low + high) * 0.5;
    piece.size = {high.x - low.x, high.y - low.y, height_mm};
    piece.bottom_mm = bottom_mm;
    return piece;
}

checks::LeadWay wayOf(const plan::Plan& plan, const plan::Device& device) {
    const geometry::HouseIndex house(plan);
    const auto pack = packOf("international");
    const checks::Facts facts(house, shipped(), pack);
    return checks::LeadRoom(facts, plan.rooms.front()).way(device, plan.plates.front());
}

double lengthOf(const checks::LeadWay& way) {
    double total = 0;
    for (std::size_t i = 1; i < way.points_mm.size(); ++i) {
        const plan::Vec3 along = way.points_mm[i] - way.points_mm[i - 1];
        total += std::abs(along.x) + std::abs(along.y) + std::abs(along.z);
    }
    return total;
}

std::vector<plan::Finding> check(const plan::Plan& plan) {
    return checks::check(geometry::HouseIndex(plan), shipped(), packOf("international"));
}
} // namespace

TEST_CASE("on one wall a lead measures along, up and out") {
    plan::Plan plan = bareRoom();
    socketAt(plan, "A", 1000);
    // 400 along, 200 down, 100 out: 700.
    const auto way = wayOf(plan, deviceAt({1400, 2900, 500}, 1000));
    CHECK(way.length_mm == Approx(700));
    CHECK(way.crossings.empty());
    CHECK(lengthOf(way) == Approx(700));
    CHECK(way.points_mm.back() == plan::Vec3{1000, 3000, 300});
}

TEST_CASE("a lead goes round the corners of the room by the shorter side") {
    plan::Plan plan = bareRoom();
    socketAt(plan, "B", 500); // at x 4000, y 2500
    // 100 out to wall A at x 3200, 800 to the corner, 500 along B, 200 down: 1600.
    const auto way = wayOf(plan, deviceAt({3200, 2900, 500}, 2000));
    CHECK(way.length_mm == Approx(1600));
    CHECK(lengthOf(way) == Approx(1600));
    // The other way round: the outlet on C, 100 from its right end in the south-west corner.
    plan.plates.front().host = {};
    plan.plates.front().host.wall = "C";
    plan.plates.front().host.u_mm = 3900; // x 100, y 0
    plan.plates.front().host.v_mm = 300;
    // 50 out to D at y 700, 700 to the corner, 100 along C: 850.
    CHECK(wayOf(plan, deviceAt({50, 700, 300}, 2000)).length_mm == Approx(850));
}

TEST_CASE("a lead goes under a window, or over it when that is shorter") {
    plan::Plan plan = bareRoom();
    socketAt(plan, "A", 1000, 1000);
    plan::Opening& window = doorIn(plan, "A", 1500);
    window.kind = plan::Opening::Kind::Window;
    window.sill_mm = 900;
    window.height_mm = 1200; // 900 to 2100
    // 1600 along, 100 down to the sill and 100 up again, 0 out: 1800.
    CHECK(wayOf(plan, deviceAt({2600, 3000, 1000}, 3000)).length_mm == Approx(1800));
    // From 2000 to 2000: 100 up to the head and down again.
    plan.plates.front().host.v_mm = 2000;
    CHECK(wayOf(plan, deviceAt({2600, 3000, 2000}, 3000)).length_mm == Approx(1800));
}

TEST_CASE("a device in the middle of the room lets its lead down to the floor") {
    plan::Plan plan = bareRoom();
    socketAt(plan, "A", 1000);
    // 750 down, 1000 west and 1500 north, 300 up: 3550; straight at its height it would be 2950.
    const auto way = wayOf(plan, deviceAt({2000, 1500, 750}, 5000));
    CHECK(way.length_mm == Approx(3550));
    CHECK(lengthOf(way) == Approx(3550));
    // 650 from a wall, a worktop's depth, it goes straight to it; common practice, no source.
    CHECK(wayOf(plan, deviceAt({1000, 2350, 750}, 5000)).length_mm == Approx(650 + 450));
    CHECK(wayOf(plan, deviceAt({1000, 2349, 750}, 5000)).length_mm == Approx(750 + 651 + 300));
}

TEST_CASE("on the floor a lead goes round what is fixed there, and along the wall behind it") {
    plan::Plan plan = bareRoom();
    socketAt(plan, "A", 2000, 0);
    const auto device = deviceAt({2000, 1000, 0}, 9000);
    CHECK(wayOf(plan, device).length_mm == Approx(2000));
    // An island between, 1500 to 2900, grown by 1 on each side: 501 west and back again.
    pieceAt(plan, "island", {1500, 1500}, {2900, 2000}, 0, 900);
    CHECK(wayOf(plan, device).length_mm == Approx(2000 + 2 * 501));
    // Base units against the wall from 1500 to 2900: beside them to the wall, then behind them.
    plan.furniture.front().kind = "base-unit";
    plan.furniture.front().at_mm.y = 2750;
    CHECK(wayOf(plan, device).length_mm == Approx(2000 + 2 * 501));
    // A chest is moved by two; a lead lies under it.
    plan.furniture.front().kind = "chest";
    CHECK(wayOf(plan, device).length_mm == Approx(2000));
}

TEST_CASE(
    "lead-crosses: across a doorway is said, the way round without one is taken where the lead allows") {
    plan::Plan plan = bareRoom();
    socketAt(plan, "A", 1000);
    doorIn(plan, "A", 1500);
    // 2000 along; to cross the doorway 300 down and 300 up again: 2600. Past it on the floor, along the wall
    // opposite, 300 + 3000 + 2000 + 3000 + 300: 8600.
    plan.devices.push_back(deviceAt({3000, 3000, 300}, 3000));
    const auto way = wayOf(plan, plan.devices.front());
    CHECK(way.length_mm == Approx(2600));
    REQUIRE(way.crossings.size() == 1);
    CHECK(way.crossings.front().id == "door-A");
    const auto found = ofRule(check(plan), "lead-crosses");
    REQUIRE(found.size() == 1);
    CHECK(*found.front().value_mm == Approx(2600));
    CHECK(found.front().severity == Severity::Warn);
    // A lead of 8750 reaches past it with 150 of slack, one of 8749 does not.
    CHECK(wayOf(plan, deviceAt({3000, 3000, 300}, 8750)).length_mm == Approx(8600));
    CHECK(wayOf(plan, deviceAt({3000, 3000, 300}, 8750)).crossings.empty());
    CHECK(wayOf(plan, deviceAt({3000, 3000, 300}, 8749)).length_mm == Approx(2600));
    // On the floor close before the doorway is across it as well.
    pieceAt(plan, "wardrobe", {2700, 2500}, {2900, 2700}, 0, 2000);
    CHECK(wayOf(plan, deviceAt({3000, 3000, 300}, 8750)).length_mm == Approx(8600));
}

TEST_CASE("lead-crosses: behind a hob and over a sink, not below them") {
    for (const std::string kind : {"hob", "sink"}) {
        plan::Plan plan = bareRoom();
        // 1700 to 2300 along wall A; the hob lies on 900, the sink's rim is at 900 and its bowl 400 wide.
        auto& piece = kind == "hob" ? pieceAt(plan, kind, {1700, 2450}, {2300, 2950}, 900, 50)
                                    : pieceAt(plan, kind, {1700, 2400}, {2300, 3000}, 0, 900);
        if (kind == "sink") piece.with = {{"bowlWidth", 400}};
        socketAt(plan, "A", 1500, 1000);
        const double edge = kind == "hob" ? 1700 : 1800;
        CHECK(wayOf(plan, deviceAt({edge + 100, 2900, 1000}, 2000)).crossings.size() == 1);
        CHECK(wayOf(plan, deviceAt({edge - 1, 2900, 1000}, 2000)).crossings.empty());
        plan.plates.front().host.v_mm = 600;
        CHECK(wayOf(plan, deviceAt({edge + 100, 2900, 600}, 2000)).crossings.empty());
    }
}

TEST_CASE("lead-crosses: over the way between two doors, 900 wide") {
    // laneWidth 900: common practice, no source (C15). Doors opposite each other at y 1050 to 1950: the way
    // between them lies along y 1500, 450 to each side.
    plan::Plan plan = bareRoom();
    doorIn(plan, "B", 1050); // y 3000 - 1050 - 900 = 1050 to 1950
    doorIn(plan, "D", 1050);
    socketAt(plan, "A", 2000);
    const auto crossed = wayOf(plan, deviceAt({2000, 1000, 0}, 4000));
    REQUIRE(crossed.crossings.size() == 1);
    CHECK(crossed.crossings.front().what == checks::Crossing::What::Lane);
    CHECK(crossed.length_mm == Approx(2000 + 300));
    CHECK(wayOf(plan, deviceAt({2000, 1951, 0}, 4000)).crossings.empty());
    CHECK_FALSE(wayOf(plan, deviceAt({2000, 1949, 0}, 4000)).crossings.empty());
}

TEST_CASE("lead-short: with 150 of slack, and what is nearer is proposed") {
    plan::Plan plan = bareRoom();
    socketAt(plan, "A", 1000);
    plan.devices.push_back(deviceAt({2000, 2900, 300}, 1250)); // 1000 + 100 + 150
    CHECK(ofRule(check(plan), "lead-short").empty());
    plan.devices.front().lead_mm = 1249;
    auto found = ofRule(check(plan), "lead-short");
    REQUIRE(found.size() == 1);
    CHECK(found.front().severity == Severity::Warn);
    REQUIRE(found.front().move);
    CHECK(found.front().move->u_mm == Approx(2000)); // where the lead comes out
    CHECK_FALSE(found.front().plug);
    plan.devices.front().lead_mm = 1099;
    CHECK(ofRule(check(plan), "lead-short").front().severity == Severity::Fault);
    // Another socket in reach is the cheaper remedy; one that is taken is none.
    socketAt(plan, "A", 2300);
    found = ofRule(check(plan), "lead-short");
    REQUIRE(found.size() == 1);
    REQUIRE(found.front().plug);
    CHECK(found.front().plug->plate == "s2");
    CHECK_FALSE(found.front().move);
    plan.devices.push_back(deviceAt({2300, 2900, 300}, 1000, "s2"));
    plan.devices.back().id = "radio";
    found = ofRule(check(plan), "lead-short");
    REQUIRE(found.size() == 1);
    CHECK(found.front().move);
}
