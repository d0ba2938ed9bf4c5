// What opens before a plate. A plate of one gang is 81 x 81 and its straight plug stands 55 out (C5, an
// assumption of ours); the places are worked out by hand.
#include "small_room.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using plan::Severity;

namespace {
/// 4000 x 3000 with a door in wall D (u runs northwards) from `left_mm`, 900 wide, hinged at its left,
/// opening in: it turns about (0, left) from north to east.
plan::Plan withDoor(double left_mm) {
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
    plan::Opening& door = plan.openings.emplace_back();
    door.id = "door";
    door.kind = plan::Opening::Kind::HingedDoor;
    door.room = "room";
    door.wall = "D";
    door.left_mm = left_mm;
    door.width_mm = 900;
    door.height_mm = 2100;
    return plan;
}

/// A piece at wall A, `gap_mm` from wall D, and a socket on wall D at (0, y, v).
std::vector<plan::Finding> beside(const std::string& kind, plan::Size3 size, double gap_mm, double y,
                                  double v_mm, const std::string& rule) {
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
    pieceAt(plan, kind, gap_mm, size);
    if (kind == "wardrobe") plan.furniture.back().with = {{"doors", 2.0}};
    socketOn(plan, "D", y, v_mm);
    return found(plan, "international", rule);
}
} // namespace

TEST_CASE("in-sweep: a plug in a floor box is in a door's way within its radius") {
    // On the diagonal the plate's near corner is 900 from the hinge where its centre is 900 / sqrt 2 + 40.5 =
    // 676.9 along both ways.
    const auto with = [](double along) {
        plan::Plan plan = withDoor(1000);
        plan::Plate& plate = socketOn(plan, "A", 0);
        plate.host = {};
        plate.host.kind = plan::Host::Kind::Floor;
        plate.host.u_mm = along;
        plate.host.v_mm = 1000 + along;
        return found(plan, "international", "in-sweep");
    };
    REQUIRE(with(676).size() == 1);
    CHECK(with(676)[0].severity == Severity::Warn);
    CHECK(with(676)[0].objects == std::vector<std::string>{"s1", "door"});
    CHECK(with(678).empty());
}

TEST_CASE("in-sweep: a plug on the wall that an open leaf stands before") {
    // The leaf stands open along y = left, 44 thick towards wall C: its near side is at left - 44.
    const auto with = [](double left) {
        plan::Plan plan = withDoor(left);
        socketOn(plan, "C", 4000 - 500);
        return found(plan, "international", "in-sweep");
    };
    REQUIRE(with(98).size() == 1);
    CHECK(*with(98)[0].value_mm == Approx(1).margin(0.01)); // 55 out, 54 free
    CHECK(with(99).empty());
}

TEST_CASE("in-sweep: a handle meets the front of a switch") {
    // 44 of leaf and 60 of handle (C6) at the last fifth of the leaf; the frame stands 10 out of the wall.
    const auto with = [](double left, double x) {
        plan::Plan plan = withDoor(left);
        addPlate(plan, "s1", "room", "C", 4000 - x, {"switch-1way"});
        return found(plan, "international", "in-sweep");
    };
    REQUIRE(with(113, 800).size() == 1);
    CHECK(with(113, 800)[0].severity == Severity::Hint);
    CHECK(with(114, 800).empty());
    CHECK(with(113, 400).empty()); // nearer to the hinge there is no handle
}

TEST_CASE("in-sweep: a plug beside a wardrobe's door, a drawer, a dishwasher's door") {
    // Fronts leave 1.5 free at each side: a plug 55 out is in the way of one that begins less than 53.5 from
    // the wall, by more than the 0.5 of play.
    const plan::Size3 wardrobe{1000, 600, 2100}, chest{900, 450, 850}, dishwasher{600, 600, 880};
    CHECK(beside("wardrobe", wardrobe, 52, 2100, 300, "in-sweep").size() == 1);
    CHECK(beside("wardrobe", wardrobe, 54, 2100, 300, "in-sweep").empty());
    CHECK(beside("chest", chest, 52, 2400, 300, "in-sweep").size() == 1);
    CHECK(beside("chest", chest, 54, 2400, 300, "in-sweep").empty());
    CHECK(beside("dishwasher", dishwasher, 52, 2300, 300, "in-sweep").size() == 1);
    CHECK(beside("dishwasher", dishwasher, 54, 2300, 300, "in-sweep").empty());
    CHECK(beside("wardrobe", wardrobe, 52, 1700, 300, "in-sweep").empty()); // beyond the open door
}

TEST_CASE("in-sweep: sliding doors open along their piece, and a piece's own socket is none of its own") {
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Bedroom);
    pieceAt(plan, "wardrobe", 20, {1000, 600, 2100}).with = {{"doors", 2.0}};
    socketOn(plan, "D", 2100);
    REQUIRE(found(plan, "international", "in-sweep").size() == 1);
    plan.furniture.back().with.emplace_back("sliding", 1.0);
    CHECK(found(plan, "international", "in-sweep").empty());
    plan.furniture.back().with.pop_back();
    plan.plates.front().host = {};
    plan.plates.front().host.kind = plan::Host::Kind::Furniture;
    plan.plates.front().host.furniture = plan.furniture.back().id;
    plan.plates.front().host.face = "front";
    plan.plates.front().host.u_mm = 300;
    plan.plates.front().host.v_mm = 1000;
    CHECK(found(plan, "international", "in-sweep").empty());
}

TEST_CASE(
    "behind-front: a wardrobe's open door 300 off the wall hides what is behind it, one 301 off does not") {
    // Common practice, no source. The door turns about an edge 1.5 inside the piece.
    const plan::Size3 wardrobe{1000, 600, 2100};
    REQUIRE(beside("wardrobe", wardrobe, 298.4, 2100, 1050, "behind-front").size() == 1);
    CHECK(beside("wardrobe", wardrobe, 298.4, 2100, 1050, "behind-front")[0].severity == Severity::Hint);
    CHECK(beside("wardrobe", wardrobe, 298.6, 2100, 1050, "behind-front").empty());
    CHECK(beside("wardrobe", wardrobe, 200, 1800, 1050, "behind-front").empty()); // beyond its free end
}

TEST_CASE("behind-leaf: a barn door that stands open covers the wall beside its opening") {
    // C6b: the leaf of 900 parks from 1900 to 2800; common practice, no source.
    const auto with = [](double u) {
        plan::Plan plan = withDoor(1000);
        plan.openings.front().kind = plan::Opening::Kind::BarnDoor;
        plan.openings.front().parks = plan::Side::Right;
        socketOn(plan, "D", u);
        return found(plan, "international", "behind-leaf");
    };
    CHECK(with(2800 + 39.5).size() == 1);
    CHECK(with(2800 + 41.5).empty());
}
