// Cable zones by country, what lies in them, and what is screwed into them. The numbers beside check values
// are those of the trade facts; they stand there with their standards.
#include "checks/cable_zones.hpp"
#include "checks/checks.hpp"
#include "checks/point.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <algorithm>

using namespace gangway;
using checks::CableRun;
using plan::Feed;
using plan::Severity;

namespace {
/// 4000 x 3000, ceiling as given; wall A is 4000 long and runs from the north-west corner eastwards.
plan::Plan bareRoom(double ceiling_mm = 2400, plan::RoomUse use = plan::RoomUse::Living) {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    plan::Room& room = addRoom(plan, "room", 0, 4000);
    room.ceiling.heights_mm = {ceiling_mm};
    room.use = use;
    return plan;
}

plan::Opening& openingAt(plan::Plan& plan, plan::Opening::Kind kind, double left, double width, double sill,
                         double height) {
    plan::Opening opening;
    opening.id = "opening" + std::to_string(plan.openings.size());
    opening.kind = kind;
    opening.room = "room";
    opening.wall = "A";
    opening.left_mm = left;
    opening.width_mm = width;
    opening.sill_mm = sill;
    opening.height_mm = height;
    plan.openings.push_back(opening);
    return plan.openings.back();
}

plan::Plate& gbSocket(plan::Plan& plan, double u_mm, double v_mm, const std::string& id = "s1") {
    plan::Plate& plate = addPlate(plan, id, "room", "A", u_mm, {"socket-g"});
    plate.format = "rect-86"; // 86 x 86
    plate.host.v_mm = v_mm;
    return plate;
}

plan::Furniture& pieceAt(plan::Plan& plan, const std::string& kind, double left_mm, plan::Size3 size,
                         double bottom_mm = 0) {
    plan::Furniture piece;
    piece.id = kind + std::to_string(plan.furniture.size());
    piece.kind = kind;
    piece.room = "room";
    piece.layer = plan::kLayerFurniture;
    piece.size = size;
    piece.at_mm = {left_mm + size.width_mm / 2, 3000 - size.depth_mm / 2};
    piece.bottom_mm = bottom_mm;
    plan.furniture.push_back(piece);
    return plan.furniture.back();
}

std::vector<checks::ZoneArea> areasOf(const plan::Plan& plan, const std::string& pack, std::size_t wall = 0) {
    const geometry::HouseIndex house(plan);
    return checks::zoneAreas(house, shipped(), packOf(pack), *house.room("room"), wall);
}

bool runs(const plan::Plan& plan, const std::string& pack, const CableRun& run, std::size_t wall = 0) {
    return checks::runInZones(areasOf(plan, pack, wall), packOf(pack), run);
}

CableRun level(double v_mm, double depth_mm = 0) {
    return {{400, v_mm}, {3600, v_mm}, depth_mm};
}

std::vector<plan::Finding> found(const plan::Plan& plan, const std::string& pack, const std::string& rule) {
    return ofRule(checks::check(geometry::HouseIndex(plan), shipped(), packOf(pack)), rule);
}
} // namespace

TEST_CASE("DE: the upper level zone lies 150 to 450 under the ceiling") {
    // Check value 39: ceiling 2500, zone 2050 to 2350; 2200 passes, 2400 fails. DIN 18015-3:2016, 5.2.
    const plan::Plan plan = bareRoom(2500);
    CHECK(runs(plan, "de", level(2200)));
    CHECK_FALSE(runs(plan, "de", level(2400)));
    CHECK(runs(plan, "de", level(2050)));
    CHECK_FALSE(runs(plan, "de", level(2049)));
    CHECK(runs(plan, "de", level(2350)));
    CHECK_FALSE(runs(plan, "de", level(2351)));
}

TEST_CASE("DE: the middle level zone is that of the pack's edition, in rooms with worktops") {
    // Check value 40: 1000 to 1300 since 2016, 900 to 1200 in 2007.
    const plan::Plan kitchen = bareRoom(2500, plan::RoomUse::Kitchen);
    for (const auto& [v, now, before] : {std::tuple{950.0, false, true}, std::tuple{1000.0, true, true},
                                         std::tuple{1250.0, true, false}, std::tuple{1300.0, true, false}}) {
        INFO(v);
        CHECK(runs(kitchen, "de", level(v)) == now);
        CHECK(runs(kitchen, "de-2007", level(v)) == before);
    }
    CHECK_FALSE(runs(bareRoom(2500), "de", level(1150)));
}

TEST_CASE("DE: beside a door the zone stands 100 to 300 from the structural edge, on the latch side") {
    // Check value 41, DIN 18015-3:2016, 5.2: edge at 1000, zone 1100 to 1300.
    plan::Plan plan = bareRoom();
    openingAt(plan, plan::Opening::Kind::HingedDoor, 500, 500, 0, 2100).hinge = plan::Side::Left;
    const auto upright = [](double u) { return CableRun{{u, 600}, {u, 1800}, 0}; };
    CHECK_FALSE(runs(plan, "de", upright(1099)));
    CHECK(runs(plan, "de", upright(1100)));
    CHECK(runs(plan, "de", upright(1300)));
    CHECK_FALSE(runs(plan, "de", upright(1301)));
    CHECK_FALSE(runs(plan, "de", upright(350))); // hinge side; the corner's zone ends at 300
    plan.openings[0].hinge = plan::Side::Right;
    CHECK(runs(plan, "de", upright(350)));
    CHECK_FALSE(runs(plan, "de", upright(1200)));
    plan.openings[0].leaves = 2;
    CHECK(runs(plan, "de", upright(350)));
    CHECK(runs(plan, "de", upright(1200)));
    plan.openings[0].kind = plan::Opening::Kind::Window;
    CHECK(runs(plan, "de", upright(350)));
    CHECK(runs(plan, "de", upright(1200)));
    plan.openings[0].kind = plan::Opening::Kind::PocketDoor; // its leaf is in the wall on the left
    plan.openings[0].parks = plan::Side::Left;
    CHECK_FALSE(runs(plan, "de", upright(350)));
    CHECK(runs(plan, "de", upright(1200)));
}

TEST_CASE("DE: seen from the other room a door's latch is on the other hand") {
    plan::Plan plan = bareRoom();
    addRoom(plan, "hall", -2100, -100);
    plan::Opening& door = openingAt(plan, plan::Opening::Kind::HingedDoor, 1000, 900, 0, 2100);
    door.room = "hall";
    door.wall = "B"; // from north to south: its latch at 1900 is at y 1100, the room's u on wall D
    door.hinge = plan::Side::Left;
    CHECK(runs(plan, "de", {{1000, 600}, {1000, 1800}, 0}, 3));
    CHECK_FALSE(runs(plan, "de", {{1001, 600}, {1001, 1800}, 0}, 3));
    CHECK_FALSE(runs(plan, "de", {{2200, 600}, {2200, 1800}, 0}, 3));
}

TEST_CASE("DE: a corner's zone counts from the other wall's structure") {
    // 100 to 300 from the unplastered corner (5.7): with 15 of plaster there, 85 to 285 from the finished
    // one.
    plan::Plan plan = bareRoom();
    plan.rooms[0].walls[3].build_up = {{"plaster", 15, {}}};
    const auto upright = [](double u) { return CableRun{{u, 600}, {u, 1800}, 0}; };
    CHECK_FALSE(runs(plan, "de", upright(84)));
    CHECK(runs(plan, "de", upright(85)));
    CHECK(runs(plan, "de", upright(285)));
    CHECK_FALSE(runs(plan, "de", upright(286)));
    plan.rooms[0].walls[3].structure = plan::WallStructure::None; // no wall, no corner
    CHECK_FALSE(runs(plan, "de", upright(200)));
}

TEST_CASE("DE: a triple plate at the preferred line has one device outside the zone") {
    // Check value 41: centred at 1150 its devices are at 1079, 1150 and 1221; at 1200 all are in.
    const auto strays = [](double u) {
        plan::Plan plan = bareRoom();
        openingAt(plan, plan::Opening::Kind::HingedDoor, 500, 500, 0, 2100);
        addPlate(plan, "s1", "room", "A", u, {"switch-1way", "switch-1way", "switch-1way"});
        return found(plan, "de", "feed-zone");
    };
    const auto out = strays(1150);
    REQUIRE(out.size() == 1);
    CHECK(out[0].severity == Severity::Hint);
    CHECK(*out[0].value_mm == Approx(21));
    CHECK(out[0].remedy == "Move the plate 21 mm to the right.");
    CHECK(strays(1200).empty());
    CHECK(strays(1171).empty());
    CHECK(strays(1170).size() == 1);
    CHECK(strays(1230).size() == 1); // 1301
    CHECK(strays(1229).empty());
}

TEST_CASE("DE: a plate outside the zones is fed straight from the nearest level one") {
    // 5.9, from memory: a hint, with the way. Lower zone's top 450, upper zone's foot 1950.
    plan::Plan plan = bareRoom();
    addPlate(plan, "s1", "room", "A", 2000, {"switch-1way"}).host.v_mm = 1050;
    const auto out = found(plan, "de", "feed-zone");
    REQUIRE(out.size() == 1);
    CHECK(out[0].severity == Severity::Hint);
    CHECK(*out[0].value_mm == Approx(600));
    CHECK(runs(plan, "de", {{2000, 1050}, {2000, 450}, 0}));
    CHECK_FALSE(runs(plan, "de", {{2000, 1050}, {2000, 1950}, 0}));
    plan.plates[0].host.v_mm = 450;
    CHECK(found(plan, "de", "feed-zone").empty());
    plan.plates[0].host.v_mm = 451;
    CHECK(found(plan, "de", "feed-zone").size() == 1);
}

TEST_CASE("DE: a stated feed through bare wall is a warning that names a way in the zones") {
    plan::Plan plan = bareRoom();
    plan::Plate& plate = addPlate(plan, "s1", "room", "A", 2000, {"socket-f"});
    plate.host.v_mm = 300;
    for (const Feed side : {Feed::Unstated, Feed::Below, Feed::Left, Feed::Right}) {
        plate.feed = side;
        CHECK(found(plan, "de", "feed-zone").empty());
    }
    plate.feed = Feed::Above;
    const auto out = found(plan, "de", "feed-zone");
    REQUIRE(out.size() == 1);
    CHECK(out[0].severity == Severity::Warn);
    CHECK(*out[0].value_mm == Approx(1650)); // 300 to the upper zone's foot at 1950
    CHECK(out[0].remedy.starts_with("Feed it from below"));
    plate.host.u_mm = 200; // in the corner's upright zone
    CHECK(found(plan, "de", "feed-zone").empty());
}

TEST_CASE("GB: a shallow cable keeps to 150 under the ceiling, a deep one is free") {
    // Check value 46, BS 7671 522.6.202.
    const plan::Plan plan = bareRoom();
    CHECK(runs(plan, "gb", level(2400 - 100, 40)));
    CHECK_FALSE(runs(plan, "gb", level(2400 - 200, 40)));
    CHECK(runs(plan, "gb", level(2400 - 200, 50)));
    CHECK_FALSE(runs(plan, "gb", level(2400 - 200, 49.9)));
    CHECK(runs(plan, "gb", {{150, 100}, {150, 2300}, 40}));
    CHECK_FALSE(runs(plan, "gb", {{151, 100}, {151, 2300}, 40}));
}

TEST_CASE("GB: there is no zone along the floor, and no slanting run") {
    // Check value 47; 5.11.
    plan::Plan plan = bareRoom();
    CHECK_FALSE(runs(plan, "gb", level(30, 40)));
    CHECK_FALSE(runs(plan, "gb", {{400, 2390}, {3600, 2260}, 40}));
    gbSocket(plan, 2000, 43);
    CHECK(runs(plan, "gb", level(30, 40))); // beside a point at that height
}

TEST_CASE("GB: straight from a point a zone is as wide as its plate") {
    plan::Plan plan = bareRoom();
    gbSocket(plan, 2000, 450);
    for (const auto& [off, in] : {std::pair{43.0, true}, std::pair{44.0, false}}) {
        CHECK(runs(plan, "gb", {{2000 + off, 450}, {2000 + off, 2400}, 40}) == in);
        CHECK(runs(plan, "gb", {{2000 - off, 450}, {2000 - off, 0}, 40}) == in);
        CHECK(runs(plan, "gb", {{0, 450 + off}, {2000, 450 + off}, 40}) == in);
    }
    // A window above it ends the zone at its sill.
    openingAt(plan, plan::Opening::Kind::Window, 1500, 1000, 900, 1200);
    CHECK(runs(plan, "gb", {{2000, 450}, {2000, 900}, 40}));
    CHECK_FALSE(runs(plan, "gb", {{2000, 450}, {2000, 901}, 40}));
    CHECK_FALSE(runs(plan, "gb", {{2000, 2150}, {2000, 2240}, 40}));
}

TEST_CASE("GB: a wall of 100 takes the zones of its far side, one of 101 does not") {
    // Check value 48, BS 7671 522.6.202. The hall's wall B and the room's wall D are one wall.
    for (const auto& [thick, in] : {std::pair{100.0, true}, std::pair{101.0, false}}) {
        plan::Plan plan = bareRoom();
        addRoom(plan, "hall", -2000 - thick, -thick);
        plan::Plate& plate = gbSocket(plan, 1000, 450);
        plate.room = "hall";
        plate.host.wall = "B"; // from north to south: y 2000, the room's u on wall D
        INFO(thick);
        CHECK(runs(plan, "gb", {{2000, 450}, {2000, 2400}, 40}, 3) == in);
        CHECK_FALSE(runs(plan, "gb", {{1000, 450}, {1000, 2400}, 40}, 3));
    }
}

TEST_CASE("GB: a socket behind a base unit has no zone until something is seen straight above it") {
    plan::Plan plan = bareRoom();
    gbSocket(plan, 1300, 400);
    pieceAt(plan, "base-unit", 1000, {600, 600, 880});
    CHECK(areasOf(plan, "gb").size() == 3); // ceiling and both corners
    const auto out = found(plan, "gb", "feed-zone");
    REQUIRE(out.size() == 1);
    CHECK(out[0].severity == Severity::Hint);
    gbSocket(plan, 1343, 1100, "s2"); // its plate ends at 1300
    CHECK(found(plan, "gb", "feed-zone").empty());
    plan.plates[1].host.u_mm = 1344;
    CHECK(found(plan, "gb", "feed-zone").size() == 1);
}

TEST_CASE("GB: a feed that is stated to come through a window is a warning") {
    plan::Plan plan = bareRoom();
    plan::Plate& plate = gbSocket(plan, 2000, 450);
    plate.feed = Feed::Above;
    CHECK(found(plan, "gb", "feed-zone").empty());
    openingAt(plan, plan::Opening::Kind::Window, 1500, 1000, 900, 1200);
    const auto out = found(plan, "gb", "feed-zone");
    REQUIRE(out.size() == 1);
    CHECK(out[0].severity == Severity::Warn);
    plate.feed = Feed::Below;
    CHECK(found(plan, "gb", "feed-zone").empty());
}

TEST_CASE("bands follow a sloping ceiling and are cut by openings") {
    plan::Plan plan = bareRoom();
    plan.rooms[0].ceiling.heights_mm = {2000, 2400, 2400, 2000};
    CHECK(runs(plan, "gb", {{0, 1900}, {4000, 2300}, 40}));
    CHECK_FALSE(runs(plan, "gb", {{0, 1800}, {4000, 2200}, 40}));
    CHECK_FALSE(runs(plan, "gb", level(1900, 40)));
    plan = bareRoom();
    openingAt(plan, plan::Opening::Kind::HingedDoor, 1500, 900, 0, 2100);
    CHECK_FALSE(runs(plan, "de", level(300)));
    CHECK(runs(plan, "de", {{400, 300}, {1500, 300}, 0}));
    for (const auto& area : areasOf(plan, "de"))
        for (const auto& corner : area.area_mm)
            CHECK((corner.x <= 1500 || corner.x >= 2400 || corner.y >= 2100));
}

TEST_CASE("a preferred line lies in its band") {
    const auto areas = areasOf(bareRoom(2500), "de");
    const auto upper = std::ranges::find(areas, "upper", &checks::ZoneArea::zone);
    REQUIRE(upper != areas.end());
    REQUIRE(upper->preferred_mm);
    // 300 under the ceiling, from memory (5.8 M).
    CHECK((*upper->preferred_mm)[0] == plan::Vec2{0, 2200});
    CHECK((*upper->preferred_mm)[1] == plan::Vec2{4000, 2200});
}

TEST_CASE("facts and the plan alone give the same areas") {
    plan::Plan plan = bareRoom();
    gbSocket(plan, 2000, 450);
    plan::Luminaire lamp;
    lamp.id = "lamp";
    lamp.kind = plan::Luminaire::Kind::Wall;
    lamp.room = "room";
    lamp.host.wall = "A";
    lamp.host.u_mm = 3000;
    lamp.host.v_mm = 1800;
    lamp.size_mm = 120;
    plan.luminaires.push_back(lamp);
    const geometry::HouseIndex house(plan);
    const auto pack = packOf("gb");
    const checks::Facts facts(house, shipped(), pack);
    const auto ours = checks::zoneAreas(facts, *house.room("room"), 0);
    const auto theirs = areasOf(plan, "gb");
    REQUIRE(ours.size() == 3 + 4 + 4);
    REQUIRE(ours.size() == theirs.size());
    for (std::size_t i = 0; i < ours.size(); ++i) {
        CHECK(ours[i].area_mm == theirs[i].area_mm);
        CHECK(ours[i].point == theirs[i].point);
    }
}

TEST_CASE("fixing-in-zone: a mirror's hook straight above a socket is found, one 1 mm beside it is not") {
    // A mirror hangs from screws 100 from its sides and 100 below its top: common practice, no source. The
    // zone is as wide as the plate, 957 to 1043.
    const auto hung = [](double screw_u, Feed feed = Feed::Unstated, const std::string& pack = "gb") {
        plan::Plan plan = bareRoom();
        gbSocket(plan, 1000, 450).feed = feed;
        pieceAt(plan, "mirror", screw_u - 100, {600, 25, 900}, 1100);
        return found(plan, pack, "fixing-in-zone");
    };
    const auto hit = hung(1042);
    REQUIRE(hit.size() == 1);
    CHECK(hit[0].severity == Severity::Warn);
    CHECK(hit[0].objects == std::vector<std::string>{"mirror0", "s1"});
    CHECK(*hit[0].value_mm == Approx(1));
    CHECK(hit[0].remedy.find("1 mm to the right") != std::string::npos);
    CHECK(hung(1044).empty());
    CHECK(hung(1042, Feed::Above).size() == 1);
    CHECK(hung(1042, Feed::Below).empty()); // its cable comes from below
    // Straight strips of the international pack are a habit: a hint.
    const auto hint = hung(1042, Feed::Unstated, "international");
    REQUIRE(hint.size() == 1);
    CHECK(hint[0].severity == Severity::Hint);
}

TEST_CASE("fixing-in-zone: beside a plate a cable is only likely when it is stated") {
    plan::Plan plan = bareRoom();
    plan::Plate& plate = gbSocket(plan, 1000, 1900);
    pieceAt(plan, "mirror", 2000, {600, 25, 900}, 1100); // screws at 1900, 2100 and 2500 along
    CHECK(found(plan, "gb", "fixing-in-zone").at(0).severity == Severity::Hint);
    plate.feed = Feed::Right;
    CHECK(found(plan, "gb", "fixing-in-zone").at(0).severity == Severity::Warn);
    plate.feed = Feed::Left;
    CHECK(found(plan, "gb", "fixing-in-zone").empty());
}

TEST_CASE("fixing-in-zone: a row of wall units in one zone is one finding") {
    // Rail 40 below the top: common practice, no source. Upper zone 1950 to 2250 with a ceiling of 2400.
    const auto row = [](double top) {
        plan::Plan plan = bareRoom();
        for (const double left : {1000.0, 1600.0, 2200.0})
            pieceAt(plan, "wall-unit", left, {600, 330, 720}, top - 720);
        return found(plan, "de", "fixing-in-zone");
    };
    const auto hit = row(1991);
    REQUIRE(hit.size() == 1);
    CHECK(hit[0].objects.size() == 3);
    CHECK(hit[0].severity == Severity::Warn);
    CHECK(row(1989).empty());
}

TEST_CASE(
    "fixing-in-zone: a piece that stands 61 off the wall or turns its side to it is not screwed there") {
    plan::Plan plan = bareRoom();
    gbSocket(plan, 1000, 450);
    plan::Furniture& mirror = pieceAt(plan, "mirror", 900, {600, 25, 900}, 1100);
    mirror.at_mm.y -= 60;
    CHECK(found(plan, "gb", "fixing-in-zone").size() == 1);
    mirror.at_mm.y -= 1;
    CHECK(found(plan, "gb", "fixing-in-zone").empty());
    mirror.at_mm.y += 61;
    mirror.turn_deg = 180;
    CHECK(found(plan, "gb", "fixing-in-zone").empty());
}

TEST_CASE("without zones in the pack nothing is said of cables") {
    plan::Plan plan = bareRoom();
    gbSocket(plan, 1000, 450).feed = Feed::Left;
    pieceAt(plan, "mirror", 900, {600, 25, 900}, 1100);
    CHECK(packOf("us").zones.empty());
    CHECK(areasOf(plan, "us").empty());
    CHECK(found(plan, "us", "feed-zone").empty());
    CHECK(found(plan, "us", "fixing-in-zone").empty());
}
