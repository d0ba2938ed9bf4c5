// What is to be kept hidden and is seen: rays against real pieces, worked out by hand.
#include "small_room.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using plan::Severity;

namespace {
/// 4000 x 3000 with a socket on wall A at (2000, 3000, 300) that is to be kept hidden.
plan::Plan hiddenSocket() {
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
    socketOn(plan, "A", 2000).sight = plan::Sight::KeepHidden;
    return plan;
}

/// An armchair in the middle of wall C that looks at wall A: the eye is at (2000, 540, 1200), 180 / 2 before
/// the middle of a seat 900 deep.
void addSeat(plan::Plan& plan) {
    plan::Furniture& seat = pieceAt(plan, "armchair", 1550, {900, 900, 800});
    seat.at_mm.y = 450;
    seat.turn_deg = 180;
}

/// A wall to wall bar from y 2000 to 2100.
void addBar(plan::Plan& plan, double height_mm) {
    pieceAt(plan, "box", 0, {4000, 100, height_mm}).at_mm.y = 2050;
}

void addDoor(plan::Plan& plan) {
    plan::Opening& door = plan.openings.emplace_back();
    door.id = "doorway";
    door.kind = plan::Opening::Kind::Plain;
    door.room = "room";
    door.wall = "C";
    door.left_mm = 1550;
    door.width_mm = 900;
    door.height_mm = 2100;
}
} // namespace

TEST_CASE("in-sight: a socket to be kept hidden is seen from a seat, with the way from the eye to it") {
    plan::Plan plan = hiddenSocket();
    CHECK(found(plan, "international", "in-sight").empty()); // nobody looks
    addSeat(plan);
    const auto seen = found(plan, "international", "in-sight");
    REQUIRE(seen.size() == 1);
    CHECK(seen[0].severity == Severity::Warn);
    CHECK(seen[0].message.find("100 %") != std::string::npos);
    REQUIRE(seen[0].gap);
    CHECK(seen[0].gap->from_mm.y == Approx(540));
    CHECK(seen[0].gap->from_mm.z == Approx(1200));
    CHECK(seen[0].gap->to_mm.y == Approx(3000));
    CHECK(*seen[0].value_mm == Approx(std::hypot(2460, 900)).margin(0.1));
    plan.plates.front().sight = plan::Sight::Any;
    CHECK(found(plan, "international", "in-sight").empty());
}

TEST_CASE("in-sight: the line of sight over a bar decides") {
    // From (540, 1200) to the socket's lowest sample (3000, 264) the line is 606 high at y 2100, to its
    // highest (336) 687 at y 2000.
    const auto with = [](double height) {
        plan::Plan plan = hiddenSocket();
        addSeat(plan);
        addBar(plan, height);
        return found(plan, "international", "in-sight");
    };
    REQUIRE(with(600).size() == 1);
    CHECK(with(600)[0].message.find("100 %") != std::string::npos);
    REQUIRE(with(640).size() == 1); // some of it
    CHECK(with(640)[0].message.find("100 %") == std::string::npos);
    CHECK(with(690).empty());
}

TEST_CASE("in-sight: from an entrance it is a hint, from a bed more") {
    plan::Plan plan = hiddenSocket();
    addDoor(plan);
    const auto entering = found(plan, "international", "in-sight");
    REQUIRE(entering.size() == 1);
    CHECK(entering[0].severity == Severity::Hint);
    CHECK(entering[0].gap->from_mm.z == Approx(1600)); // the pack's standing eye
    plan::Furniture& bed = pieceAt(plan, "bed", 0, {900, 2000, 550});
    bed.turn_deg = 180;
    bed.at_mm = {450, 1000};
    const auto lying = found(plan, "international", "in-sight");
    REQUIRE(lying.size() == 1);
    CHECK(lying[0].severity == Severity::Warn);
    CHECK(lying[0].gap->from_mm.x == Approx(450)); // 430 from the wall at the head, 700 high
    CHECK(lying[0].gap->from_mm.y == Approx(430));
    CHECK(lying[0].gap->from_mm.z == Approx(700));
}

TEST_CASE("in-sight: glass hides nothing, a wall between does") {
    plan::Plan plan = hiddenSocket();
    addSeat(plan);
    pieceAt(plan, "shower-screen", 0, {4000, 10, 2300}).at_mm.y = 2000;
    CHECK(found(plan, "international", "in-sight").size() == 1);
    plan.furniture.back().kind = "box";
    CHECK(found(plan, "international", "in-sight").empty());
    plan::Plan other = hiddenSocket();
    addSeat(other);
    other.furniture.front().room = "hall"; // in another room
    addRoom(other, "hall", -4100, -100);
    CHECK(found(other, "international", "in-sight").empty());
}
