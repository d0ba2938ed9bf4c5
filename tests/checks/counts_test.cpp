// Outlets counted by room, and those of halls and basins. "Check value n" is a line of the project's trade
// facts; each rule has a case just inside and just outside its limit.
#include "small_room.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using plan::RoomUse;
using plan::Severity;

TEST_CASE("basin-reach: 36 inches from a basin's edge is near enough, 37 is not") {
    // Check value 26, NEC 210.52(D).
    const auto with = [](double inches) {
        plan::Plan plan = roomOf(4000, 3000, RoomUse::Bathroom);
        pieceAt(plan, "basin", 500, {600, 450, 850});
        if (inches > 0) socketOn(plan, "A", 1100 + inches * kInch, 1100);
        return found(plan, "us", "basin-reach");
    };
    CHECK(with(36).empty());
    REQUIRE(with(37).size() == 1);
    CHECK(*with(37)[0].value_mm == Approx(37 * kInch));
    CHECK(with(0).size() == 1);
}

TEST_CASE("hall-outlet: a hall of 10 feet wants a socket, one of an inch less does not") {
    // 3.10, NEC 210.52(H).
    const auto in = [](double feet) { return roomOf(feet * kFoot, 1200, RoomUse::Hall); };
    CHECK(found(in(10), "us", "hall-outlet").size() == 1);
    CHECK(found(in(10 - 1.0 / 12), "us", "hall-outlet").empty());
    plan::Plan with = in(10);
    socketOn(with, "A", 1000);
    CHECK(found(with, "us", "hall-outlet").empty());
}

TEST_CASE("outlet-count: the numbers of a warranty in England") {
    // Check value 33, NHBC 8.1, table 6: doubles are two.
    plan::Plan living = roomOf(5000, 4000, RoomUse::Living);
    addLamp(living, "l1", "room");
    for (int i = 0; i < 3; ++i)
        socketOn(living, "A", 500 + 400 * i, 450, {"socket-f", "socket-f"});
    for (int i = 0; i < 2; ++i)
        socketOn(living, "B", 500 + 400 * i, 450);
    CHECK(found(living, "gb", "outlet-count").empty());
    living.plates.pop_back();
    REQUIRE(found(living, "gb", "outlet-count").size() == 1);
    CHECK_THAT(found(living, "gb", "outlet-count")[0].message, Catch::Contains("7 outlets, at least 8"));
    CHECK(found(living, "gb", "outlet-count")[0].severity == Severity::Warn);

    plan::Plan bedroom = roomOf(4000, 3000, RoomUse::Bedroom);
    addLamp(bedroom, "l1", "room");
    for (int i = 0; i < 2; ++i)
        socketOn(bedroom, "A", 500 + 400 * i, 450, {"socket-f", "socket-f"});
    CHECK(found(bedroom, "gb", "outlet-count").empty());
    bedroom.rooms[0].main = true;
    CHECK(found(bedroom, "gb", "outlet-count").size() == 1);
}

TEST_CASE("outlet-count: lights by area, and a kitchen by whether the house has a utility room") {
    // NHBC 8.1 (3.13, 3.14): over 25 m2 two lights; kitchen and utility 8, or 4 and 4.
    plan::Plan plan = roomOf(5000, 5000, RoomUse::Kitchen);
    addLamp(plan, "l1", "room");
    for (int i = 0; i < 4; ++i)
        socketOn(plan, "A", 500 + 400 * i, 1150);
    CHECK(found(plan, "gb", "outlet-count").size() == 1);
    addRoom(plan, "utility", 6000, 8000).use = RoomUse::Utility;
    addLamp(plan, "l2", "utility");
    const auto rooms = [&] {
        std::vector<std::string> ids;
        for (const auto& finding : found(plan, "gb", "outlet-count"))
            ids.push_back(finding.objects.front());
        return ids;
    };
    CHECK(rooms() == std::vector<std::string>{"utility"});
    plan.rooms[0].outline[0].y = plan.rooms[0].outline[1].y = 5001;
    CHECK(rooms() == std::vector<std::string>{"room", "utility"});
}

TEST_CASE("outlet-count: in Scotland three of a kitchen's six are over the worktop, beyond the machines'") {
    // Check value 34, Technical Handbook 4.6.4: three doubles, one of them over the worktop.
    plan::Plan plan = roomOf(5000, 4000, RoomUse::Kitchen);
    pieceAt(plan, "worktop", 1000, {2000, 600, 40}, 880);
    socketOn(plan, "A", 2000, 1150, {"socket-f", "socket-f"});
    for (int i = 0; i < 2; ++i)
        socketOn(plan, "C", 1000 + 400 * i, 450, {"socket-f", "socket-f"});
    REQUIRE(found(plan, "gb-sct", "outlet-count").size() == 1);
    CHECK_THAT(found(plan, "gb-sct", "outlet-count")[0].message,
               Catch::Contains("2 outlets over the worktop, at least 3") && !Catch::Contains("at least 6"));
    socketOn(plan, "A", 2400, 1150);
    CHECK(found(plan, "gb-sct", "outlet-count").empty());
    // A machine's own sockets are no longer free.
    for (plan::Plate& plate : plan.plates)
        if (plate.host.wall == "C") {
            plate.use = plan::UseRate::LeftPlugged;
            plate.sight = plan::Sight::KeepHidden;
        }
    CHECK_THAT(found(plan, "gb-sct", "outlet-count")[0].message, Catch::Contains("3 outlets, at least 6"));
}

TEST_CASE("outlet-count: in France a living room has one for each 4 m2, at least 5, over 28 m2 at least 7") {
    // Check value 35, NF C 15-100 title 10 (2015): 18 / 24 / 28 / 29 m2 want 5 / 6 / 7 / 7.
    for (const auto& [metres2, least] :
         {std::pair{18, 5}, std::pair{24, 6}, std::pair{28, 7}, std::pair{29, 7}}) {
        INFO(metres2);
        plan::Plan plan = roomOf(metres2 * 1000, 1000, RoomUse::Living);
        for (int i = 0; i + 1 < least; ++i)
            socketOn(plan, "A", 500 + 400 * i);
        REQUIRE(found(plan, "fr", "outlet-count").size() == 1);
        CHECK_THAT(found(plan, "fr", "outlet-count")[0].message,
                   Catch::Contains("at least " + std::to_string(least)));
        socketOn(plan, "C", 500);
        CHECK(found(plan, "fr", "outlet-count").empty());
    }
}
