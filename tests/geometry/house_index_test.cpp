#include "geometry/house_index.hpp"
#include "houses.hpp"
#include "support/generated_house.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

namespace {

/// Rooms of many sizes and some turned, overlapping and apart, on two storeys.
plan::Plan randomHouse(std::uint32_t seed) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> place(0, 30000);
    std::uniform_real_distribution<double> size(800, 6000);
    plan::Plan plan = planOf({});
    for (int i = 0; i < 60; ++i) {
        // Edges on a grid of 500, so that many walls come to lie back to back.
        const auto snap = [](double mm) { return std::round(mm / 500) * 500; };
        plan::Room room = boxRoom("r" + std::to_string(i), snap(place(random)), snap(place(random)),
                                  snap(size(random)) + 400, snap(size(random)) + 400);
        for (plan::Wall& wall : room.walls)
            wall.thickness_mm = 60 + static_cast<double>(random() % 300);
        room.walls[random() % 4].build_up = {{"board", static_cast<double>(random() % 200), {}}};
        if (random() % 4 == 0) room.storey = "upper";
        plan.rooms.push_back(std::move(room));
    }
    return plan;
}

/// What pairedFaces promises, tried on every face of the plan, for rooms whose walls run along the axes.
std::vector<FaceRef> pairsByRule(const plan::Plan& plan, const plan::Room& room, std::size_t wall) {
    const auto thick = [](const plan::Wall& w) {
        return w.build_up.empty() ? 0 : w.build_up.front().thickness_mm;
    };
    const Frame frame = wallFrame(room, wall);
    std::vector<FaceRef> pairs;
    for (const plan::Room& other : plan.rooms) {
        if (other.storey != room.storey) continue;
        for (std::size_t i = 0; i < other.walls.size(); ++i) {
            const Frame across = wallFrame(other, i);
            if (&other == &room || dot(frame.u, across.u) > -0.9999) continue;
            const Vec3 start = toFrame(frame, across.origin_mm);
            const double from = std::max(0.0, start.x - across.length_mm);
            const double to = std::min(frame.length_mm, start.x);
            const double most = std::max(room.walls[wall].thickness_mm, other.walls[i].thickness_mm) +
                                thick(room.walls[wall]) + thick(other.walls[i]) + 60;
            if (to - from > 50 && -start.z >= -1 && -start.z <= most) pairs.push_back({other.id, i});
        }
    }
    return pairs;
}

std::vector<std::string> ids(const std::vector<Cover>& covers) {
    std::vector<std::string> list;
    for (const Cover& cover : covers)
        list.push_back(cover.id);
    return list;
}

} // namespace

TEST_CASE("an index finds the pairs that looking at every face finds") {
    for (std::uint32_t seed = 1; seed <= 20; ++seed) {
        const plan::Plan plan = randomHouse(seed);
        const HouseIndex house(plan);
        std::size_t found = 0;
        for (const plan::Room& room : plan.rooms) {
            for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
                INFO("seed " << seed << ", " << room.id << ", wall " << wall);
                const auto expected = pairsByRule(plan, room, wall);
                const auto pairs = pairedFaces(house, {room.id, wall});
                const auto alone = pairedFaces(plan, {room.id, wall});
                REQUIRE(pairs.size() == expected.size());
                REQUIRE(alone.size() == expected.size());
                for (std::size_t i = 0; i < pairs.size(); ++i) {
                    CHECK(std::ranges::count(expected, pairs[i].other) == 1);
                    CHECK(pairs[i].other == alone[i].other);
                    CHECK(pairs[i].from_mm == alone[i].from_mm);
                }
                found += pairs.size();
            }
        }
        CHECK(found > 0);
    }
}

TEST_CASE("an index knows rooms and furniture by id and what is in a room, in the plan's order") {
    const plan::Plan plan = testing::generatedHouse(30);
    const HouseIndex house(plan);
    CHECK(house.room("room-7") == &plan.rooms[6]);
    CHECK(house.room("nowhere") == nullptr);
    CHECK(house.furniture("room-7-f2") == plan::findFurniture(plan, "room-7-f2"));
    CHECK(house.furniture("nothing") == nullptr);
    const auto pieces = house.furnitureIn("room-7");
    REQUIRE(pieces.size() == 6);
    for (std::size_t i = 0; i < pieces.size(); ++i)
        CHECK(pieces[i] == &plan.furniture[6 * 6 + i]);
    CHECK(house.furnitureIn("nowhere").empty());
    for (const plan::Room& room : plan.rooms) {
        const Vec2 middle = (room.outline[0] + room.outline[2]) * 0.5;
        CHECK(roomAt(house, "ground", middle) == &room);
        CHECK(roomAt(house, "upper", middle) == nullptr);
    }
    CHECK(roomAt(house, "ground", {-500, -500}) == nullptr);
}

TEST_CASE("what covers a plate is the same with and without an index") {
    plan::Plan plan = testing::generatedHouse(45);
    // Doors between neighbours in a row: into the next room, and out of it without saying where to.
    for (int i = 0; i < 20; ++i) {
        plan::Opening door = opening("door-" + std::to_string(i), plan::Opening::Kind::HingedDoor,
                                     "room-" + std::to_string(i + 1), "B", 900, 900, 0, 2100);
        door.swing = i % 2 == 0 ? plan::Swing::In : plan::Swing::Out;
        if (i % 3 == 0) door.joins = "room-" + std::to_string(i + 2);
        plan.openings.push_back(door);
    }
    const HouseIndex house(plan);
    int leaves = 0;
    for (const plan::Plate& plate : plan.plates) {
        const auto with = coversOf(house, plate.room, plate.host, 81, 81);
        const auto without = coversOf(plan, plate.room, plate.host, 81, 81);
        INFO(plate.id);
        CHECK(ids(with) == ids(without));
        leaves += static_cast<int>(
            std::ranges::count(with, Cover::By::DoorLeaf, [](const Cover& cover) { return cover.by; }));
    }
    CHECK(leaves > 5);
}

TEST_CASE("how many rooms an index looks at does not grow with the house") {
    for (const int rooms : {50, 500}) {
        const plan::Plan plan = testing::generatedHouse(rooms);
        const HouseIndex house(plan);
        for (const plan::Room& room : plan.rooms)
            CHECK(house.roomsNear("ground", room.outline[3], room.outline[1]).size() <= 9);
    }
}

TEST_CASE("rooms that are far larger than the rest, or far away, are found too") {
    plan::Plan plan = testing::generatedHouse(100);
    plan.rooms.push_back(boxRoom("field", -900'000, -900'000, 899'900, 1'800'000));
    plan.rooms.push_back(boxRoom("shed", 990'000, 990'000, 9000, 9000));
    const HouseIndex house(plan);
    CHECK(roomAt(house, "ground", {-500'000, 3}) == &plan.rooms[100]);
    CHECK(roomAt(house, "ground", {995'000, 995'000}) == &plan.rooms[101]);
    const auto pairs = pairedFaces(house, {"field", 1});
    CHECK(pairs.size() == 5); // the west walls of the five rows of rooms begin 100 behind its east wall
    CHECK(house.roomsNear("ground", {-1e6, -1e6}, {1e6, 1e6}).size() == plan.rooms.size());
}
