// Boxes and lamps against studs, joists, masonry and walls that part homes or hold fire back: each just
// inside and just outside its limit.
#include "checks/checks.hpp"

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

/// The room's wall D and the hall's wall B are one wall of 140: u on B is 3000 less u on D.
plan::Plan twoRooms(plan::WallDuty duty) {
    plan::Plan plan = bareRoom();
    addRoom(plan, "hall", -2140, -140);
    plan.rooms[1].walls[1].duty = duty; // said on one face, true of both
    return plan;
}

void back(plan::Plan& plan, const std::string& format, const std::string& type, double here, double there) {
    addPlate(plan, "s1", "room", "D", here, {type}).format = format;
    addPlate(plan, "s2", "hall", "B", 3000 - there, {type}).format = format;
}

std::vector<plan::Finding> found(const plan::Plan& plan, const std::string& rule,
                                 const std::string& pack = "international") {
    const geometry::HouseIndex house(plan);
    return ofRule(checks::check(house, catalogue::withOwn(shipped(), plan), packOf(pack)), rule);
}

/// A box of 4 in x 4 in: 16 in2.
plan::OwnFormat steelBox() {
    plan::OwnFormat format;
    format.id = "steel";
    format.name = "steel box";
    format.module_width_mm = 50;
    format.module_height_mm = 50;
    format.plate_width_mm = 110;
    format.plate_height_mm = 110;
    format.pitch_mm = 110;
    format.box_width_mm = 101.6;
    format.box_height_mm = 101.6;
    format.box_depth_mm = 38;
    return format;
}
} // namespace

TEST_CASE("stud-gap: 5 beside a stud is enough for a box, 4 is not") {
    // C21: 5 and half the box; an assumption of ours. A stud of 45 at 600, a box of 68: 600 + 22.5 + 5 + 34.
    const auto at = [](double u) {
        plan::Plan plan = bareRoom();
        plan.rooms[0].walls[0].studs = plan::Framing{};
        addPlate(plan, "s1", "room", "A", u, {"socket-f"});
        return found(plan, "stud-gap");
    };
    CHECK(at(661.5).empty());
    const auto hit = at(660.5);
    REQUIRE(hit.size() == 1);
    CHECK(hit[0].severity == Severity::Warn);
    CHECK(*hit[0].value_mm == Approx(4));
    CHECK(hit[0].remedy == "Move it 1 mm to the right.");
    CHECK(at(1138.5).empty()); // before the stud at 1200
    CHECK(at(1139.5).at(0).remedy == "Move it 1 mm to the left.");
    CHECK(*at(1200).at(0).value_mm == Approx(-56.5));
}

TEST_CASE("stud-gap: each box of a plate counts, and the way out clears them all") {
    // Triple, boxes at -71, 0 and 71: the right one meets the stud at 600, the nearest bay is to the left.
    plan::Plan plan = bareRoom();
    plan.rooms[0].walls[0].studs = plan::Framing{};
    addPlate(plan, "s1", "room", "A", 500, {"socket-f", "socket-f", "socket-f"});
    const auto hit = found(plan, "stud-gap");
    REQUIRE(hit.size() == 1);
    CHECK(hit[0].remedy == "Move it 32.5 mm to the left."); // 600 - 22.5 - 5 - 34 - 71 = 467.5
    plan.plates[0].host.u_mm = 467.5;
    CHECK(found(plan, "stud-gap").empty());
    plan.rooms[0].walls[0].studs->spacing_mm = 260; // a bay of 215, the boxes take 210 and want 10
    CHECK(found(plan, "stud-gap").at(0).remedy.starts_with("Its boxes fit between no two studs"));
}

TEST_CASE("joist-gap: a recessed lamp keeps 5 from joists, whichever way they run") {
    // C21. Joists of 45 at 400, 800 ...; a lamp of 80: 400 + 22.5 + 5 + 40 = 467.5.
    const auto at = [](double direction, double u, double v) {
        plan::Plan plan = bareRoom();
        plan.rooms[0].ceiling.joists = plan::Framing{400, 400, 45, direction, {}};
        plan::Luminaire& lamp = addLamp(plan, "l1", "room");
        lamp.kind = plan::Luminaire::Kind::Recessed;
        lamp.size_mm = 80;
        lamp.host.u_mm = u;
        lamp.host.v_mm = v;
        return found(plan, "joist-gap");
    };
    CHECK(at(0, 400, 467.5).empty()); // running east
    CHECK(at(0, 467.5, 466.5).size() == 1);
    CHECK(at(90, 467.5, 400).empty()); // running north
    const auto hit = at(90, 466.5, 467.5);
    REQUIRE(hit.size() == 1);
    CHECK(*hit[0].value_mm == Approx(4));
    CHECK(hit[0].remedy.starts_with("Move it 1 mm to the east"));
}

TEST_CASE("chase-depth: a box takes a third of masonry at most, behind its plaster") {
    // Check value 49, Approved Document A 2C30: a leaf of 100 gives 33.3, a wall of 215 gives 71.7; 13 of
    // plaster are cut first.
    const auto cut = [](double wall, double box) {
        plan::Plan plan = bareRoom();
        plan.rooms[0].walls[0].thickness_mm = wall;
        plan.rooms[0].walls[0].structure = plan::WallStructure::Masonry;
        plan.rooms[0].walls[0].build_up = {{"plaster", 13, {}}};
        addPlate(plan, "s1", "room", "A", 2000, {"socket-g"}).box_depth_mm = box;
        return found(plan, "chase-depth", "gb");
    };
    CHECK(cut(100, 35).empty()); // 22
    CHECK(cut(100, 46).empty()); // 33
    const auto hit = cut(100, 47);
    REQUIRE(hit.size() == 1);
    CHECK(hit[0].severity == Severity::Warn);
    CHECK(*hit[0].value_mm == Approx(34));
    CHECK(*hit[0].limit_mm == Approx(33.3).margin(0.05));
    CHECK(cut(215, 13 + 71).empty());
    CHECK(*cut(215, 13 + 72).at(0).limit_mm == Approx(71.7).margin(0.05));
}

TEST_CASE("chase-along: a level feed through masonry is told its sixth, an upright one is not") {
    // Check value 49: 16.7 of 100, 35.8 of 215.
    plan::Plan plan = bareRoom();
    plan::Wall& wall = plan.rooms[0].walls[0];
    wall.structure = plan::WallStructure::Masonry;
    plan::Plate& plate = addPlate(plan, "s1", "room", "A", 2000, {"socket-g"});
    plate.feed = plan::Feed::Left;
    CHECK(*found(plan, "chase-along", "gb").at(0).limit_mm == Approx(16.7).margin(0.05));
    wall.thickness_mm = 215;
    CHECK(*found(plan, "chase-along", "gb").at(0).limit_mm == Approx(35.8).margin(0.05));
    CHECK(found(plan, "chase-along").empty()); // nothing is asked for in the international pack
    plate.feed = plan::Feed::Above;
    CHECK(found(plan, "chase-along", "gb").empty());
    plate.feed = plan::Feed::Left;
    wall.structure = plan::WallStructure::Stud;
    CHECK(found(plan, "chase-along", "gb").empty());
}

TEST_CASE("a wall that parts two homes wants 150 between the plates of both sides, as a warning") {
    // Check value 59: two plates of 86, centres 235 or 236 apart, leave 149 or 150. Guidance on Approved
    // Document E.
    const auto apart = [](double distance, plan::WallDuty duty) {
        plan::Plan plan = twoRooms(duty);
        back(plan, "rect-86", "socket-g", 1000, 1000 + distance);
        return found(plan, "back-to-back", "gb");
    };
    CHECK(apart(236, plan::WallDuty::Separating).empty());
    const auto hit = apart(235, plan::WallDuty::Separating);
    REQUIRE(hit.size() == 1);
    CHECK(hit[0].severity == Severity::Warn);
    CHECK(*hit[0].value_mm == Approx(149));
    // Another wall: by the boxes, and a hint.
    CHECK(apart(235, plan::WallDuty::None).empty());
    CHECK(apart(200, plan::WallDuty::None).at(0).severity == Severity::Hint);
}

TEST_CASE("US: boxes on both sides of a wall that holds fire back are 24 in apart along it") {
    // Check value 58: 600 fails, 610 passes (24 in = 609.6). IRC R302.4.2.
    const auto apart = [](double gap) {
        plan::Plan plan = twoRooms(plan::WallDuty::Fire);
        plan.formats.push_back(steelBox());
        back(plan, "steel", "socket-b", 1000, 1000 + 101.6 + gap);
        return found(plan, "back-to-back", "us");
    };
    const auto hit = apart(600);
    REQUIRE(hit.size() == 1);
    CHECK(hit[0].severity == Severity::Warn);
    CHECK(*hit[0].value_mm == Approx(600));
    CHECK(apart(610).empty());
}

TEST_CASE("US: the boxes of a wall that holds fire back take 100 in2 of 100 ft2 at most") {
    // Check value 58: 6 boxes of 16 in2 are 96, 7 are 112. The wall is 12.5 ft x 8 ft.
    const auto boxes = [](int count, plan::WallDuty duty) {
        plan::Plan plan = bareRoom();
        plan.formats.push_back(steelBox());
        plan::Room& room = plan.rooms[0];
        room.outline = {{0, 3000}, {3810, 3000}, {3810, 0}, {0, 0}};
        room.ceiling.heights_mm = {2438.4};
        room.walls[0].duty = duty;
        for (int i = 0; i < count; ++i)
            addPlate(plan, "s" + std::to_string(i), "room", "A", 300 + 400 * i, {"socket-b"}).format =
                "steel";
        return found(plan, "fire-boxes", "us");
    };
    CHECK(boxes(6, plan::WallDuty::Fire).empty());
    const auto hit = boxes(7, plan::WallDuty::Fire);
    REQUIRE(hit.size() == 1);
    CHECK(hit[0].objects.size() == 7);
    CHECK(boxes(7, plan::WallDuty::Separating).empty());
}
