// Plates on furniture, behind screens and pictures, in panels and in the floor, each just inside and just
// outside its limit. Limits are the international pack's; where a number comes from stands beside it there
// and is named again here.
#include "small_room.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using plan::Severity;

namespace {
std::vector<plan::Finding> with(const plan::Plan& plan, const std::string& rule) {
    return found(plan, "international", rule);
}

std::vector<plan::Finding> withLimit(const plan::Plan& plan, const std::string& limit, double value,
                                     const std::string& rule) {
    catalogue::CountryPack pack = packOf("international");
    pack.limits[limit].value = value;
    return ofRule(checks::check(geometry::HouseIndex(plan), shipped(), pack), rule);
}
} // namespace

TEST_CASE("line-gap: 20 inside a panel's moulding, or the middle of a panel too small for that") {
    // C9, an assumption of ours. A moulding is 20 wide; the plate is 81.
    const auto in = [](double panel, double off) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        plan::WallLine& line = plan.rooms.front().walls.front().lines.emplace_back();
        line.kind = plan::WallLine::Kind::Panel;
        line.bottom_mm = 100;
        line.height_mm = 800;
        line.depth_mm = 15;
        line.from_mm = 1000;
        line.to_mm = 1000 + panel;
        socketOn(plan, "A", 1000 + panel / 2 + off, 500);
        return with(plan, "line-gap").size();
    };
    CHECK(in(600, -(300 - 20 - 20 - 40.5)) == 0);
    CHECK(in(600, -(300 - 20 - 19 - 40.5)) == 1);
    CHECK(in(131, 0) == 0); // 5 each side
    CHECK(in(131, 1) == 1);
}

TEST_CASE("screen-inside: 20 within the outline of the screen that it feeds") {
    // C13, an assumption of ours. The screen reaches from 1000 to 2230 and from 900 to 1610.
    const auto at = [](double u, double v) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        pieceAt(plan, "tv-wall", 1000, {1230, 110, 710}, 900);
        socketOn(plan, "A", u, v).anchor = plan.furniture.front().id;
        return with(plan, "screen-inside").size();
    };
    CHECK(at(1020 + 40.5, 1400) == 0);
    CHECK(at(1019 + 40.5, 1400) == 1);
    CHECK(at(1300, 1590 - 40.5) == 0);
    CHECK(at(1300, 1591 - 40.5) == 1);
    CHECK(at(1000, 1400) == 1); // astride the edge
}

TEST_CASE("picture-place: a plate where a picture hangs is found, one beside it is not") {
    // C30; common practice, no source.
    const auto at = [](double u) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        pieceAt(plan, "picture", 1000, {800, 25, 600}, 1100);
        addPlate(plan, "s1", "room", "A", u, {"switch-1way"}).host.v_mm = 1400;
        return with(plan, "picture-place").size();
    };
    CHECK(at(1000 - 40.5 + 1) == 1);
    CHECK(at(1000 - 40.5 - 1) == 0);
}

TEST_CASE("no-access: what a cupboard hides is got at up to 2.2 m") {
    // C28; common practice, no source.
    const auto at = [](double v) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Bedroom);
        plan.rooms.front().ceiling.heights_mm = {2600};
        pieceAt(plan, "wardrobe", 1000, {1500, 600, 2500});
        plan::Plate& plate = socketOn(plan, "A", 1500, v, {"cord-outlet"});
        plate.use = plan::UseRate::Once;
        plate.sight = plan::Sight::KeepHidden;
        return with(plan, "no-access").size();
    };
    CHECK(at(2200) == 0);
    CHECK(at(2201) == 1);
}

TEST_CASE("fragile-place is a fault where the pack says how little is too little") {
    // C39 speaks of 5; common practice, no source, and off in the packs. The chest begins at 1000.
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
    pieceAt(plan, "chest", 1000, {900, 450, 850});
    const auto at = [&](double gap, double limit) {
        plan.plates.clear();
        socketOn(plan, "A", 1000 - 40.5 - gap);
        catalogue::CountryPack pack = packOf("international");
        pack.limits["sideGap"].value = pack.limits["tallGap"].value = 0;
        pack.limits["marginFault"].value = limit;
        const auto fragile =
            ofRule(checks::check(geometry::HouseIndex(plan), shipped(), pack), "fragile-place");
        return fragile.empty() ? "none" : fragile.front().severity == Severity::Fault ? "fault" : "warn";
    };
    CHECK(at(16, 5) == std::string("none")); // 15: an assumption of ours
    CHECK(at(14, 5) == std::string("warn"));
    CHECK(at(6, 5) == std::string("warn"));
    CHECK(at(4, 5) == std::string("fault"));
    CHECK(at(4, 0) == std::string("warn"));
}

TEST_CASE("cord-room: asked for where the pack asks") {
    // C10 speaks of 100; common practice, no source, and off in the packs. The chest's top is at 850.
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
    pieceAt(plan, "chest", 1000, {900, 450, 850});
    const auto at = [&](double v, double limit) {
        plan.plates.clear();
        socketOn(plan, "A", 1450, v);
        return withLimit(plan, "cordBelow", limit, "cord-room").size();
    };
    CHECK(at(950 + 40.5, 100) == 0);
    CHECK(at(949 + 40.5, 100) == 1);
    CHECK(at(949 + 40.5, 0) == 0);
}

TEST_CASE("a plate on a piece's side: whole on it, and with room for its plug") {
    const auto at = [](double u, double gap) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        pieceAt(plan, "box", 1000, {600, 600, 900}).id = "host";
        pieceAt(plan, "box", 1600 + gap, {600, 600, 900});
        plan::Plate& plate = socketOn(plan, "A", 0);
        plate.host = {};
        plate.host.kind = plan::Host::Kind::Furniture;
        plate.host.furniture = "host";
        plate.host.face = "right";
        plate.host.u_mm = u;
        plate.host.v_mm = 500;
        plate.use = plan::UseRate::LeftPlugged;
        return checks::check(geometry::HouseIndex(plan), shipped(), packOf("international"));
    };
    CHECK(ofRule(at(300, 54), "plug-depth").size() == 1); // C5: 55, an assumption of ours
    CHECK(ofRule(at(300, 55), "plug-depth").empty());
    CHECK(ofRule(at(40.5, 2000), "off-face").empty());
    REQUIRE(ofRule(at(39.5, 2000), "off-face").size() == 1);
    CHECK(ofRule(at(39.5, 2000), "off-face")[0].severity == Severity::Fault);
}

TEST_CASE("floor-leg: a floor box under a table's leg is found, one beside it is not") {
    // C15; common practice, no source. The front left leg stands from 25 to 85 in from the corner.
    const auto at = [](double x) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Dining);
        pieceAt(plan, "table", 1000, {1600, 900, 750}).at_mm.y = 1500;
        plan::Plate& plate = socketOn(plan, "A", 0);
        plate.host = {};
        plate.host.kind = plan::Host::Kind::Floor;
        plate.host.u_mm = x;
        plate.host.v_mm = 1105;
        plate.anchor = plan.furniture.front().id;
        return with(plan, "floor-leg").size();
    };
    CHECK(at(1085 + 40.5 - 6) == 1); // the leg's foot is bevelled
    CHECK(at(1085 + 40.5 + 1) == 0);
}

TEST_CASE("floor-lane: an open floor box keeps half a lane from the way between two doors") {
    // C15: a lane of 900; an assumption of ours. Doors in the middles of walls B and D: the way is y 1500, on
    // a grid of 150 true to half a cell.
    const auto at = [](double y, bool covered = false) {
        plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
        for (const char* wall : {"B", "D"}) {
            plan::Opening& door = plan.openings.emplace_back();
            door.id = wall;
            door.kind = plan::Opening::Kind::Plain;
            door.room = "room";
            door.wall = wall;
            door.left_mm = 1050;
            door.width_mm = 900;
            door.height_mm = 2100;
        }
        plan::Plate& plate = socketOn(plan, "A", 0);
        plate.host = {};
        plate.host.kind = plan::Host::Kind::Floor;
        plate.host.u_mm = 2000;
        plate.host.v_mm = y;
        if (covered) pieceAt(plan, "table", 1500, {1000, 500, 750}).at_mm.y = y;
        return with(plan, "floor-lane").size();
    };
    CHECK(at(1500 + 374) == 1);
    CHECK(at(1500 + 526) == 0);
    CHECK(at(1500 + 374, true) == 0);
}
