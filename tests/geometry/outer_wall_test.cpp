#include "closed_mesh.hpp"
#include "houses.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;
using Role = FabricPart::Role;

namespace {

/// A room in the crook of an L-shaped one, all outside walls 300 thick, the walls between them 100.
plan::Plan house() {
    plan::Room bend;
    bend.id = "bend";
    bend.storey = "ground";
    bend.outline = {{4100, 3000}, {6000, 3000}, {6000, -2000}, {0, -2000}, {0, -100}, {4100, -100}};
    bend.ceiling.heights_mm = {2500};
    addWalls(bend, 300);
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000), bend});
    for (plan::Wall& wall : plan.rooms[0].walls)
        wall.thickness_mm = 300;
    return plan;
}

std::vector<FabricPart> fabricOf(const plan::Plan& plan) {
    std::vector<FabricPart> parts;
    for (const plan::Room& room : plan.rooms)
        for (FabricPart& part : roomFabric(plan, room))
            if (part.role != Role::WallCut) parts.push_back(std::move(part)); // not shown with the lid on
    return parts;
}

struct Hit {
    const FabricPart* part = nullptr;
    double distance_mm = 1e300;
};
Hit firstHit(const std::vector<FabricPart>& parts, Vec3 from, Vec3 way) {
    Hit first;
    for (const FabricPart& part : parts) {
        const auto hit = rayHit(part.mesh, from, way);
        if (hit && *hit < first.distance_mm) first = {&part, *hit};
    }
    return first;
}

double outerArea(const std::vector<FabricPart>& parts, const std::string& wall) {
    double sum = 0;
    for (const FabricPart& part : parts)
        if (part.role == Role::OuterWall && part.wall == wall) sum += meshArea(part.mesh);
    return sum;
}

} // namespace

TEST_CASE("from outside every level look at a house ends on an outer wall") {
    for (const Move& move : kMoves) {
        INFO(move.name);
        const auto parts = fabricOf(moved(house(), move));
        // The outside of the house is the rectangle from (-300, -2300) to (6300, 3300).
        const auto look = [&](Vec2 from, Vec2 way, double expected) {
            const Vec2 a = move(from);
            const Vec2 b = move(from + way);
            const Hit hit = firstHit(parts, {a.x, a.y, 1234.5}, {b.x - a.x, b.y - a.y, 0});
            INFO(from.x << ", " << from.y);
            REQUIRE(hit.part != nullptr);
            CHECK(hit.part->role == Role::OuterWall);
            CHECK(hit.distance_mm == Approx(expected));
        };
        for (double x = -295.3; x < 6300; x += 97.9) {
            look({x, 5000}, {0, -1}, 1700);
            look({x, -5000}, {0, 1}, 2700);
        }
        for (double y = -2295.7; y < 3300; y += 93.1) {
            look({-3000, y}, {1, 0}, 2700);
            look({9000, y}, {-1, 0}, 2700);
        }
    }
}

TEST_CASE("an outer wall looks away from the room and reaches to the mitres") {
    const plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    const auto parts = roomFabric(plan, plan.rooms[0]);
    for (std::size_t i = 0; i < 4; ++i) {
        const plan::Wall& wall = plan.rooms[0].walls[i];
        const double length_mm = i % 2 == 0 ? 4000 : 3000;
        CHECK(outerArea(parts, wall.id) == Approx((length_mm + 2 * 100) * 2500.0));
        for (const FabricPart& part : parts) {
            if (part.role != Role::OuterWall || part.wall != wall.id) continue;
            CHECK(worstNormal(part.mesh) == Approx(1));
            CHECK(dot(part.mesh.normals.front(), wallFrame(plan.rooms[0], i).w) == Approx(-1));
        }
    }
}

TEST_CASE("the build-up behind the face is part of the outer wall's depth") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.rooms[0].walls[0].build_up = {{"board", 25, {}}, {"plaster", 13, {}}};
    const Hit hit = firstHit(fabricOf(plan), {2000, 5000, 1000}, {0, -1, 0});
    CHECK(hit.distance_mm == Approx(2000 - 100 - 38));
}

TEST_CASE("openings go through the outer wall, with reveals all the way") {
    plan::Plan plan = house();
    plan.openings = {opening("gap", plan::Opening::Kind::Plain, "room", "A", 500, 900, 0, 2100),
                     opening("window", plan::Opening::Kind::Window, "room", "A", 2000, 1200, 900, 1200)};
    const auto parts = fabricOf(plan);
    const double whole = (4000 + 300 + 50) * 2500.0; // to the corner, and to the middle of the inner wall
    const double gone = 900 * 2100.0 + 1200 * 1200.0;
    double area = 0;
    for (const FabricPart& part : parts)
        if (part.role == Role::OuterWall && part.room == "room" && part.wall == "A")
            area += meshArea(part.mesh);
    CHECK(area == Approx(whole - gone));
    const Hit into = firstHit(parts, {950, 5000, 1000}, {0, -1, 0});
    CHECK(into.distance_mm > 4000); // through the gap and right across the room
    for (const FabricPart& part : parts) {
        if (part.role != Role::Reveal) continue;
        double deepest = 0;
        for (const Vec3 p : part.mesh.positions_mm)
            deepest = std::max(deepest, p.y);
        CHECK(deepest == Approx(3300));
    }
}

TEST_CASE("where rooms share only part of a wall the outer wall covers the rest and the step to it") {
    // The east wall of `long` is 3000; `short` stands behind its northern 1000, its outside walls 100 thick.
    plan::Plan plan = planOf({boxRoom("long", 0, 0, 4000, 3000), boxRoom("short", 4300, 2000, 2000, 1000)});
    for (plan::Wall& wall : plan.rooms[0].walls)
        wall.thickness_mm = 100;
    plan.rooms[0].walls[1].thickness_mm = 300;
    const auto parts = fabricOf(plan);
    double area = 0;
    for (const FabricPart& part : parts)
        if (part.role == Role::OuterWall && part.room == "long" && part.wall == "B")
            area += meshArea(part.mesh);
    // 2000 of the wall and the mitre with the south wall, and the step from half of 300 to all of it.
    CHECK(area == Approx((2000 + 100 + 150) * 2500.0));
    for (double y = -95; y < 1895; y += 50) {
        const Hit hit = firstHit(parts, {9000, y, 1000}, {-1, 0, 0});
        REQUIRE(hit.part != nullptr);
        CHECK(hit.part->role == Role::OuterWall);
        CHECK(hit.distance_mm == Approx(9000 - 4300));
    }
    // Looking north along the wall one sees the outside of `short`, never between the two.
    for (double x = 4005; x < 6395; x += 40) {
        const Hit hit = firstHit(parts, {x, -3000, 1000}, {0, 1, 0});
        REQUIRE(hit.part != nullptr);
        CHECK(hit.part->role == Role::OuterWall);
    }
}

TEST_CASE("the outside of a notch is closed in its inner corner and not built twice") {
    // An L alone: its inner corner at (2000, 1500) is a corner of the outside too.
    plan::Room ell;
    ell.id = "ell";
    ell.storey = "ground";
    ell.outline = {{0, 3000}, {2000, 3000}, {2000, 1500}, {5000, 1500}, {5000, 0}, {0, 0}};
    ell.ceiling.heights_mm = {2400};
    addWalls(ell, 200);
    const plan::Plan plan = planOf({ell});
    const auto parts = fabricOf(plan);
    CHECK(outerArea(parts, "B") == Approx((1500 + 200 - 200) * 2400.0)); // lengthened above, shortened below
    CHECK(outerArea(parts, "C") == Approx((3000 - 200 + 200) * 2400.0));
    for (double at = 2205; at < 5190; at += 55) {
        const Hit hit = firstHit(parts, {at, 9000, 700}, {0, -1, 0});
        REQUIRE(hit.part != nullptr);
        CHECK(hit.part->role == Role::OuterWall);
        CHECK(hit.distance_mm == Approx(9000 - 1700));
    }
}

TEST_CASE("walls of different thickness that run straight on have the step between them closed") {
    plan::Room room = boxRoom("room", 0, 0, 4000, 3000);
    room.outline.insert(room.outline.begin() + 1, Vec2{1500, 3000}); // a joint in the north wall
    room.walls.clear();
    addWalls(room, 100);
    room.walls[1].thickness_mm = 350;
    const auto parts = fabricOf(planOf({room}));
    const Hit hit = firstHit(parts, {-2000, 3200, 1000}, {1, 0, 0});
    REQUIRE(hit.part != nullptr);
    CHECK(hit.part->role == Role::OuterWall);
    CHECK(hit.distance_mm == Approx(3500));
}

TEST_CASE("a boundary that is no wall, and a wall between two rooms, have no outside") {
    plan::Plan plan = planOf({boxRoom("west", 0, 0, 4000, 3000), boxRoom("east", 4100, 0, 2000, 3000)});
    plan.rooms[0].walls[2].structure = plan::WallStructure::None;
    const auto parts = roomFabric(plan, plan.rooms[0]);
    CHECK(outerArea(parts, "B") == 0);
    CHECK(outerArea(parts, "C") == 0);
    CHECK(outerArea(parts, "A") == Approx((4000 + 100 + 50) * 2500.0));
}

TEST_CASE("a wall whose neighbours are cut away is closed at both mitred ends") {
    const plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    std::vector<FabricPart> north;
    for (FabricPart& part : roomFabric(plan, plan.rooms[0]))
        if (part.wall == "A") north.push_back(std::move(part));
    // Half way through the wall of 100 the mitres are 50 beyond the corners.
    CHECK(firstHit(north, {9000, 3050, 1000}, {-1, 0, 0}).distance_mm == Approx(9000 - 4050));
    CHECK(firstHit(north, {-5000, 3050, 1000}, {1, 0, 0}).distance_mm == Approx(5000 - 50));
    for (const Vec2 on_top : {Vec2{4030, 3080}, Vec2{-30, 3080}, Vec2{2000, 3050}})
        CHECK(firstHit(north, {on_top.x, on_top.y, 9000}, {0, 0, -1}).distance_mm == Approx(9000 - 2500));
    for (const Vec2 beside : {Vec2{4080, 3030}, Vec2{-80, 3030}})
        CHECK(firstHit(north, {beside.x, beside.y, 9000}, {0, 0, -1}).part == nullptr);
}
