// Which device uses which outlet, against brute force and by hand; plugs, watts and what is forgotten.
#include "checks/checks.hpp"
#include "checks/forgotten.hpp"
#include "checks/least_cost.hpp"
#include "checks/outlet_assignment.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace gangway;
using plan::Severity;

namespace {
plan::Plan bareRoom() {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    addRoom(plan, "room", 0, 4000);
    return plan;
}

plan::Plate& socketAt(plan::Plan& plan, double u_mm, const std::vector<std::string>& modules = {"socket-f"}) {
    plan::Plate& plate =
        addPlate(plan, "s" + std::to_string(plan.plates.size() + 1), "room", "A", u_mm, modules);
    plate.host.v_mm = 300;
    return plate;
}

plan::Device& deviceAt(plan::Plan& plan, double u_mm, double lead_mm, const std::string& plate = {}) {
    plan::Device& device = plan.devices.emplace_back();
    device.id = "d" + std::to_string(plan.devices.size());
    device.room = "room";
    device.lead_exit_mm = {u_mm, 3000, 300};
    device.lead_mm = lead_mm;
    device.plate = plate;
    return device;
}

std::vector<plan::Finding> check(const plan::Plan& plan, const std::string& pack = "international") {
    return checks::check(geometry::HouseIndex(plan), shipped(), packOf(pack));
}

/// "s1", "-": the plate of each device.
std::vector<std::string> outletsOf(const plan::Plan& plan) {
    const geometry::HouseIndex house(plan);
    const auto pack = packOf("international");
    const checks::Facts facts(house, shipped(), pack);
    checks::LeadRooms rooms(facts);
    std::vector<std::string> plates;
    for (const auto& outlet : checks::assignOutlets(facts, rooms).devices)
        plates.push_back(outlet.plate == nullptr ? "-" : outlet.plate->id);
    return plates;
}

using Plates = std::vector<std::string>;

/// How many have a place, and what that costs in tenths.
struct Score {
    int placed = 0;
    long cost = 0;
    bool operator==(const Score&) const = default;
    bool betterThan(const Score& other) const {
        return placed > other.placed || (placed == other.placed && cost < other.cost);
    }
};

/// Tries every place for each in turn.
Score bruteForce(std::size_t who, std::vector<int> room, const std::vector<checks::Choice>& choices,
                 std::size_t count, Score so_far = {}) {
    if (who == count) return so_far;
    Score best = bruteForce(who + 1, room, choices, count, so_far);
    for (const auto& choice : choices) {
        if (choice.who != who || room[choice.where] <= 0) continue;
        --room[choice.where];
        const Score with = bruteForce(who + 1, room, choices, count,
                                      {so_far.placed + 1, so_far.cost + std::lround(choice.cost * 10)});
        ++room[choice.where];
        if (with.betterThan(best)) best = with;
    }
    return best;
}
} // namespace

TEST_CASE("the flow places as many and as cheaply as trying everything") {
    std::mt19937 random(20261126);
    const auto below = [&](unsigned most) { return random() % most; };
    for (int trial = 0; trial < 300; ++trial) {
        const std::size_t count = 1 + below(5);
        std::vector<int> room(1 + below(4));
        for (int& each : room)
            each = static_cast<int>(below(3));
        std::vector<checks::Choice> choices;
        for (std::size_t who = 0; who < count; ++who)
            for (std::size_t where = 0; where < room.size(); ++where)
                if (below(3) > 0) choices.push_back({who, where, static_cast<double>(below(30)) / 10});
        const auto places = checks::leastCost(count, room, choices);
        REQUIRE(places.size() == count);
        Score score;
        auto left = room;
        for (std::size_t who = 0; who < count; ++who) {
            if (!places[who]) continue;
            const auto choice = std::ranges::find_if(choices, [&](const checks::Choice& one) {
                return one.who == who && one.where == *places[who];
            });
            REQUIRE(choice != choices.end());
            CHECK(--left[*places[who]] >= 0);
            ++score.placed;
            score.cost += std::lround(choice->cost * 10);
        }
        INFO("trial " << trial);
        CHECK(score == bruteForce(0, room, choices, count));
    }
}

TEST_CASE("an outlet goes to whom it is the only one for, not to the nearest") {
    plan::Plan plan = bareRoom();
    socketAt(plan, 1000);
    socketAt(plan, 2000);
    // d1 is 100 from s1 and 900 from s2 and reaches both; d2 is 300 from s1 and reaches it alone. First come,
    // first served would leave d2 without.
    deviceAt(plan, 1100, 1500);
    deviceAt(plan, 700, 450);
    CHECK(outletsOf(plan) == Plates{"s2", "s1"});
    // 300 + 150 of slack is just reached; with a lead of 449 d2 has none and d1 the nearest.
    plan.devices.back().lead_mm = 449;
    CHECK(outletsOf(plan) == Plates{"s1", "-"});
}

TEST_CASE("the ways together are shortest") {
    plan::Plan plan = bareRoom();
    socketAt(plan, 1000);
    socketAt(plan, 2000);
    // d1 at 1450: 450 or 550; d2 at 1100: 100 or 900. 450 + 900 loses to 550 + 100, though s1 is nearest to
    // both.
    deviceAt(plan, 1450, 3000);
    deviceAt(plan, 1100, 3000);
    CHECK(outletsOf(plan) == Plates{"s2", "s1"});
}

TEST_CASE("decided plugs take their outlets first; a double takes two") {
    plan::Plan plan = bareRoom();
    socketAt(plan, 1000);
    socketAt(plan, 2000, {"socket-f", "socket-f"});
    deviceAt(plan, 1000, 3000, "s1");
    deviceAt(plan, 1000, 3000);
    deviceAt(plan, 1000, 3000);
    deviceAt(plan, 1000, 3000);
    const Plates plates = outletsOf(plan);
    CHECK(plates[0] == "s1");
    CHECK(std::ranges::count(plates, "s2") == 2);
    CHECK(std::ranges::count(plates, "-") == 1);
    const auto without = ofRule(check(plan), "device-without-outlet");
    REQUIRE(without.size() == 1);
    CHECK(without.front().message.find("taken") != std::string::npos);
    const auto unassigned = ofRule(check(plan), "device-unassigned");
    REQUIRE(unassigned.size() == 2);
    CHECK(unassigned.front().severity == Severity::Hint);
    REQUIRE(unassigned.front().plug);
    CHECK(unassigned.front().plug->plate == "s2");
    CHECK(*unassigned.front().value_mm == Approx(1000));
}

TEST_CASE("a device that wants data gets a socket only with a data outlet in reach") {
    plan::Plan plan = bareRoom();
    socketAt(plan, 1000);
    deviceAt(plan, 1100, 700).data = true;
    CHECK(outletsOf(plan) == Plates{"-"});
    CHECK(ofRule(check(plan), "device-without-outlet").front().message.find("data") != std::string::npos);
    auto& data = socketAt(plan, 1650, {"data-rj45"}); // 550 + 150 of slack
    CHECK(outletsOf(plan) == Plates{"s1"});
    data.host.u_mm = 1651;
    CHECK(outletsOf(plan) == Plates{"-"});
}

TEST_CASE("outlets of another room, and across a doorway, are none") {
    plan::Plan plan = bareRoom();
    addRoom(plan, "hall", -2100, -100);
    addPlate(plan, "s1", "hall", "A", 1900, {"socket-f"});
    deviceAt(plan, 100, 3000);
    CHECK(outletsOf(plan) == Plates{"-"});
    socketAt(plan, 2000);
    CHECK(outletsOf(plan) == Plates{"s2"});
    plan::Opening& door = plan.openings.emplace_back();
    door.id = "door";
    door.kind = plan::Opening::Kind::Plain;
    door.room = "room";
    door.wall = "A";
    door.left_mm = 500;
    door.width_mm = 900;
    door.height_mm = 2100;
    CHECK(outletsOf(plan) == Plates{"-"});
}

TEST_CASE("outlets-overfull: more plugs than outlets, and plugs in each other's way") {
    using Plug = plan::Device::Plug;
    plan::Plan plan = bareRoom();
    const auto overfull = [&] { return ofRule(check(plan), "outlets-overfull"); };
    socketAt(plan, 1000, {"socket-f", "socket-f"});
    deviceAt(plan, 1000, 3000, "s1");
    deviceAt(plan, 1000, 3000, "s1");
    CHECK(overfull().empty());
    // A block of 75 (common practice, no source) and a plug of 39 (CEE 7, from memory) need 57 from middle to
    // middle: the pitch of 71 leaves them room (trade facts 1.3). Two blocks need 75.
    plan.devices.front().plug = Plug::PowerBlock;
    CHECK(overfull().empty());
    plan.devices.back().plug = Plug::PowerBlock;
    REQUIRE(overfull().size() == 1);
    CHECK(overfull().front().severity == Severity::Warn);
    INFO(overfull().front().message);
    CHECK(overfull().front().message.find("are in each other's way") != std::string::npos);
    // Three outlets take them at both ends and a plug between them, but no third block.
    plan.plates.front().modules.emplace_back().type = "socket-f";
    CHECK(overfull().empty());
    deviceAt(plan, 1000, 3000, "s1");
    CHECK(overfull().empty());
    plan.devices.back().plug = Plug::PowerBlock;
    CHECK(overfull().size() == 1);
    deviceAt(plan, 1000, 3000, "s1");
    REQUIRE(overfull().size() == 1);
    CHECK(overfull().front().severity == Severity::Fault);
}

TEST_CASE("outlets-overfull: on a double of pitch 60.3 a block leaves no room for a plug") {
    // 60.3 from middle to middle (trade facts, check value 45); a block of 75 (common practice, no source)
    // and a plug of 48 (BS 1363-1, from memory) need 61.5.
    plan::Plan plan = bareRoom();
    socketAt(plan, 1000, {"socket-g-double"}).format = "rect-86";
    deviceAt(plan, 1000, 3000, "s1").plug_type = "G";
    deviceAt(plan, 1000, 3000, "s1").plug_type = "G";
    CHECK(ofRule(check(plan), "outlets-overfull").empty());
    plan.devices.front().plug = plan::Device::Plug::PowerBlock;
    CHECK(ofRule(check(plan), "outlets-overfull").size() == 1);
    plan.devices.pop_back(); // the outlet that it hides is let be
    CHECK(ofRule(check(plan), "outlets-overfull").empty());
}

TEST_CASE("circuit-watts: what a rating carries, by the country's volts and part") {
    struct Case {
        const char* pack;
        double rated_a, carries_w;
    };
    // Check values 28 and 29 of the trade facts: 15 A and 20 A at 120 V with 80 % carry 1440 and 1920 W
    // (clause 210.19 and 210.20); 6, 10 and 32 A at 230 V carry 1380, 2300 and 7360 W.
    for (const Case& one : {Case{"us", 15, 1440}, Case{"us", 20, 1920}, Case{"gb", 6, 1380},
                            Case{"gb", 10, 2300}, Case{"gb", 32, 7360}}) {
        plan::Plan plan = bareRoom();
        plan::Circuit& circuit = plan.circuits.emplace_back();
        circuit.id = "ring";
        circuit.rated_a = one.rated_a;
        for (const double u : {1000.0, 2000.0}) {
            socketAt(plan, u).circuit = "ring";
            deviceAt(plan, u, 3000, plan.plates.back().id).watts = one.carries_w / 2;
        }
        INFO(one.pack << " " << one.rated_a);
        CHECK(ofRule(check(plan, one.pack), "circuit-watts").empty());
        plan.devices.back().watts += 1;
        const auto found = ofRule(check(plan, one.pack), "circuit-watts");
        REQUIRE(found.size() == 1);
        CHECK(found.front().severity == Severity::Warn);
        CHECK(found.front().objects.back() == "ring");
    }
}

TEST_CASE("plate-watts: 16 A at 230 V is 3680 W an outlet") {
    plan::Plan plan = bareRoom();
    socketAt(plan, 1000);
    deviceAt(plan, 1000, 3000, "s1").watts = 3680;
    CHECK(ofRule(check(plan), "plate-watts").empty());
    plan.devices.back().watts = 3681;
    CHECK(ofRule(check(plan), "plate-watts").size() == 1);
    plan.plates.front().modules.emplace_back().type = "socket-f";
    CHECK(ofRule(check(plan), "plate-watts").empty());
}

TEST_CASE("what nothing in the room speaks of is offered") {
    plan::Plan plan = bareRoom();
    plan.rooms.front().use = plan::RoomUse::Living;
    catalogue::CountryPack pack = packOf("international");
    pack.things.clear();
    for (const auto& [name, words] :
         {std::pair{"television", "television|tv"}, std::pair{"lamp", "reading"}}) {
        auto& thing = pack.things.emplace_back();
        thing.use = plan::RoomUse::Living;
        thing.name = name;
        thing.words = words;
    }
    pack.things.emplace_back(pack.things.front()).use = plan::RoomUse::Kitchen;
    const auto offered = [&] {
        const geometry::HouseIndex house(plan);
        std::string names;
        for (const auto& one : checks::forgottenThings(checks::Facts(house, shipped(), pack)))
            names += one.thing->name + " ";
        return names;
    };
    CHECK(offered() == "television lamp ");
    deviceAt(plan, 1000, 1000).name = "TV in the corner";
    CHECK(offered() == "lamp ");
    plan.devices.front().name = "chestv"; // only the beginnings of words count
    CHECK(offered() == "television lamp ");
    socketAt(plan, 1000).purpose = "Reading chair";
    CHECK(offered() == "television ");
    plan.furniture.emplace_back().kind = "tv-wall";
    plan.furniture.back().room = "room";
    CHECK(offered() == "");
    // What a house has once is offered in the first room of its use, and nowhere when any room has it.
    pack.things = {pack.things.front()};
    pack.things.front().name = "router";
    pack.things.front().words = "router";
    addRoom(plan, "second", 5000, 9000).use = plan.rooms.front().use;
    CHECK(offered() == "router router ");
    pack.things.front().once = true;
    CHECK(offered() == "router ");
    plan.furniture.emplace_back().name = "shelf for the router";
    plan.furniture.back().room = "second";
    CHECK(offered() == "");
}
