// Walks at night, worked out by hand. Limits: 2000 in the dark, a switch within 1000 (C25); common practice,
// no source.
#include "checks/checks.hpp"
#include "checks/dark_walk.hpp"
#include "checks/floor_grid.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {
/// The room of small_switching.hpp with its door in wall D at y 1000 to 1900 and the switch at y 2110, and a
/// bed 1600 wide with its head at wall B: along x 2000 to 4000, middle at `y_mm`.
plan::Plan bedroom(double y_mm = 1500) {
    plan::Plan plan = smallSwitching();
    plan.plates.front().modules.front().type = "switch-2way";
    plan::Furniture& bed = plan.furniture.emplace_back();
    bed.id = "bed";
    bed.kind = "bed";
    bed.room = "room";
    bed.layer = plan::kLayerFurniture;
    bed.at_mm = {3000, y_mm};
    bed.turn_deg = 270; // its back to the east
    bed.size = {1600, 2000, 500};
    return plan;
}

std::vector<checks::Walk> walks(const plan::Plan& plan) {
    return checks::nightWalks(geometry::HouseIndex(plan), shipped(), packOf("international"));
}

std::vector<plan::Finding> darkOf(const plan::Plan& plan) {
    return ofRule(checks::check(geometry::HouseIndex(plan), shipped(), packOf("international")), "dark-walk");
}

const checks::Walk* walkOf(const std::vector<checks::Walk>& all, const std::string& from,
                           const std::string& to) {
    for (const auto& walk : all)
        if (walk.from.name.starts_with(from) && walk.to.id == to) return &walk;
    return nullptr;
}
} // namespace

TEST_CASE("a way on the floor is straight where nothing stands, and round a piece where one does") {
    plan::Plan plan = smallSwitching();
    const geometry::HouseIndex house(plan);
    const checks::FloorGrid empty(house, plan.rooms.front());
    CHECK(checks::lengthOf(empty.way({500, 500}, {3500, 2500})) == Approx(std::hypot(3000, 2000)));
    plan::Furniture& piece = plan.furniture.emplace_back();
    piece.id = "chest";
    piece.kind = "chest";
    piece.room = "room";
    piece.at_mm = {2000, 1000};
    piece.size = {400, 2000, 900}; // from the south wall to y 2000
    const geometry::HouseIndex furnished(plan);
    const checks::FloorGrid grid(furnished, plan.rooms.front());
    CHECK_FALSE(grid.isFree({2000, 1000}));
    // Round both corners at y 2000 with the body's 200: at least by the corners themselves, at most by
    // corners 200 + 2 cells off.
    const double by_corners = 2 * std::hypot(1300, 1500) + 400;
    const double way = checks::lengthOf(grid.way({500, 500}, {3500, 500}));
    CHECK(way > by_corners);
    CHECK(way < 2 * std::hypot(1300, 2000) + 400);
}

TEST_CASE("a way goes round a flight of stairs, and over a rug") {
    // Nobody crosses a flight from its side: it rises from 0 to its height.
    plan::Plan plan = smallSwitching();
    plan::Furniture& flight = plan.furniture.emplace_back();
    flight.id = "flight";
    flight.kind = "stair";
    flight.room = "room";
    flight.at_mm = {2000, 1000};
    flight.size = {900, 2000, 2600}; // from the south wall to y 2000
    const auto way = [&plan] {
        const geometry::HouseIndex house(plan);
        return checks::lengthOf(checks::FloorGrid(house, plan.rooms.front()).way({500, 500}, {3500, 500}));
    };
    // At least by its two corners at (1550, 2000) and (2450, 2000).
    CHECK(way() > std::hypot(1050, 1500) * 2 + 900);
    plan.furniture.back().kind = "rug";
    CHECK(way() == Approx(3000));
}

TEST_CASE("from a bed to the door it is dark until the switch there is in reach") {
    const plan::Plan plan = bedroom();
    const auto all = walks(plan);
    // The left side as one faces it from its foot, eastwards, is the north: y 1500 + 800 + 300 = 2600, at the
    // pillow x 4000 - 430 = 3570. To the door's middle on plan: (-50, 1450), since the wall is 100 thick.
    const auto* north = walkOf(all, "bed, left side", "door");
    const auto* south = walkOf(all, "bed, right side", "door");
    REQUIRE(north != nullptr);
    REQUIRE(south != nullptr);
    CHECK(north->from.at_mm.x == Approx(3570));
    CHECK(north->from.at_mm.y == Approx(2600));
    CHECK(south->from.at_mm.y == Approx(400));
    for (const auto* walk : {north, south}) {
        INFO(walk->from.name << " " << walk->dark_mm << " of " << walk->length_mm);
        CHECK(walk->dark_from_start);
        CHECK(walk->leg == "L1");
        CHECK(walk->dark_mm < walk->length_mm);
        // It ends where the switch at (0, 2110) is 1000 away, or at the door whose edge is nearer than that.
        const double away = plan::length(walk->dark_to_mm - plan::Vec2{0, 2110});
        CHECK((away == Approx(1000).margin(0.01) || walk->dark_to_mm == walk->to.at_mm));
    }
    const auto found = darkOf(plan);
    REQUIRE(found.size() == 1);
    CHECK(*found.front().value_mm == Approx(std::max(north->dark_mm, south->dark_mm)).margin(0.01));
    CHECK(*found.front().limit_mm == 2000);
    CHECK(found.front().objects.front() == "bed");
    CHECK(found.front().remedy.find("beside bed") != std::string::npos);
}

TEST_CASE("dark-walk: a straight way, just under and just over the limit") {
    // A narrow bed beside wall C, 750 from it: one gets out to the north at y 750 + 450 + 300 = 1500 and
    // walks west along that line to the door, whose middle is there too. The pillow is at x + 500 - 430. The
    // switch is on wall D at y 2000, 500 off the line: in reach from x = sqrt(1000^2 - 500^2) = 866.03 on.
    for (const double beyond : {-10.0, 10.0}) {
        plan::Plan plan = bedroom();
        plan.openings.front().left_mm = 1050;
        plan.plates.front().host.u_mm = 2000;
        plan.furniture.front().size = {900, 1000, 500};
        plan.furniture.front().at_mm = {3000, 750};
        const double shift = 2000 - (3070 - std::sqrt(1000.0 * 1000 - 500 * 500)) + beyond;
        plan.furniture.front().at_mm.x += shift;
        const auto all = walks(plan);
        const auto* walk = walkOf(all, "bed, left side", "door");
        REQUIRE(walk != nullptr);
        INFO(walk->from.at_mm.x << " " << walk->from.at_mm.y);
        CHECK(walk->dark_mm == Approx(2000 + beyond).margin(0.01));
        // The other side of so narrow a bed at the wall has no room to stand: 750 - 450 - 300 = 0.
        CHECK(walkOf(all, "bed, right side", "door") == nullptr);
        CHECK(darkOf(plan).size() == (beyond > 0 ? 1 : 0));
    }
}

TEST_CASE("a switch in reach of the bed ends it, and a lamp with its own switch does too") {
    plan::Plan plan = bedroom();
    // Head at wall B; u runs south from y 3000: a switch at y 1900 is 403 from the right pillow's x 3570.
    addPlate(plan, "s2", "room", "B", 1100, {"switch-2way"});
    REQUIRE(darkOf(plan).size() == 1);
    plan.legs.front().controls.push_back({"s2", 1, 1});
    CHECK(darkOf(plan).empty());
    plan.legs.front().controls.pop_back();
    plan::Luminaire& lamp = addLamp(plan, "l2", "room");
    lamp.kind = plan::Luminaire::Kind::Table;
    lamp.host = {};
    lamp.host.wall = "B";
    lamp.host.u_mm = 1100;
    lamp.host.v_mm = 700;
    CHECK(darkOf(plan).empty());
    lamp.host.wall = "D"; // at the far end
    CHECK(darkOf(plan).size() == 1);
}

TEST_CASE("a sensor lights the room of whoever sets out in it") {
    plan::Plan plan = bedroom();
    plan.plates.front().modules.front().type = "sensor-motion";
    CHECK(darkOf(plan).empty());
    CHECK(walkOf(walks(plan), "bed", "door")->dark_mm == 0);
}

TEST_CASE("the way to the WC goes through doors, and the dark adds up over rooms") {
    plan::Plan plan = bedroom();
    addRoom(plan, "hall", -2100, -100);
    plan.openings.front().joins = "hall";
    plan::Furniture& wc = plan.furniture.emplace_back();
    wc.id = "wc";
    wc.kind = "wc";
    wc.room = "hall";
    wc.at_mm = {-1700, 400};
    wc.size = {360, 680, 800};
    const auto all = walks(plan);
    const auto* lit = walkOf(all, "bed, left side", "wc");
    REQUIRE(lit != nullptr);
    const auto* to_door = walkOf(all, "bed, left side", "door");
    CHECK(lit->dark_mm == Approx(to_door->dark_mm)); // the hall has no lamps: nothing is said of it
    // With a lamp in the hall and its switch far from the door, and none for the bedroom but in the hall, one
    // is in the dark all the way to where the hall's is in reach.
    addLamp(plan, "l2", "hall");
    addPlate(plan, "s2", "hall", "D", 100, {"switch-1way"}); // at (-2100, 100)
    addLeg(plan, "L2", {{"s2", 1, 1}}, {"l2"});
    plan.plates.front().host.wall = "B"; // in the corner: out of reach from the north side
    plan.plates.front().host.u_mm = 2900;
    const auto dark = walks(plan);
    const auto* walk = walkOf(dark, "bed, left side", "wc");
    REQUIRE(walk != nullptr);
    INFO(walk->dark_mm << " of " << walk->length_mm);
    CHECK(walk->dark_from_start);
    CHECK(walk->dark_mm > walkOf(dark, "bed, left side", "door")->dark_mm);
    CHECK(walk->dark_mm < walk->length_mm);
    CHECK(plan::length(walk->dark_to_mm - plan::Vec2{-2100, 100}) == Approx(1000).margin(0.01));
}

TEST_CASE("what the switching says of doors and of lamps that nothing works is not said again") {
    plan::Plan plan = smallSwitching();
    plan.plates.front().host.wall = "B"; // far from the door
    CHECK(darkOf(plan).empty());
    const auto proven = proved(plan);
    CHECK(ofRule(proven, "dark-entrance").size() == 1);
    plan = bedroom();
    plan.legs.front().controls.clear();
    CHECK(darkOf(plan).empty());
}
