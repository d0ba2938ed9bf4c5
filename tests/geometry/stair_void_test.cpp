#include "closed_mesh.hpp"
#include "houses.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;
using Role = FabricPart::Role;

namespace {

/// A hall with a stair along its west wall, and over it a landing that is as large.
plan::Plan house() {
    plan::Room landing = boxRoom("landing", 0, 0, 3000, 5000, 2400);
    landing.storey = "upper";
    plan::Plan plan = planOf({boxRoom("hall", 0, 0, 3000, 5000), landing});
    plan.storeys.push_back({"upper", "Upper floor", 2800, "", std::nullopt, {}});
    plan.furniture = {pieceIn("stair", "hall", {0, 900}, {1000, 4300}, {0, 2800})};
    return plan;
}

double areaOf(const plan::Plan& plan, std::size_t room, Role role, double z) {
    double sum = 0;
    for (const FabricPart& part : roomFabric(plan, plan.rooms[room])) {
        if (part.role != role || !part.opening.empty()) continue;
        for (const auto& t : part.mesh.triangles) {
            const auto& p = part.mesh.positions_mm;
            if (p[t[0]].z != z || p[t[1]].z != z || p[t[2]].z != z) continue;
            sum += length(cross(p[t[1]] - p[t[0]], p[t[2]] - p[t[0]])) / 2;
        }
    }
    return sum;
}

/// Whether a vertical line at a point on plan meets a part of this role.
bool covered(const plan::Plan& plan, std::size_t room, Role role, Vec2 at) {
    const auto parts = roomFabric(plan, plan.rooms[room]);
    return std::ranges::any_of(parts, [&](const FabricPart& part) {
        return part.role == role && rayHit(part.mesh, {at.x, at.y, -10}, {0, 0, 1}).has_value();
    });
}

} // namespace

TEST_CASE("a stair cuts its footprint out of the ceiling over it and the floor it leads to") {
    for (const Move& move : kMoves) {
        INFO(move.name);
        const plan::Plan plan = moved(house(), move);
        CHECK(areaOf(plan, 0, Role::Ceiling, 2500) == Approx(3000 * 5000.0 - 900 * 3300.0));
        CHECK(areaOf(plan, 1, Role::Floor, 0) == Approx(3000 * 5000.0 - 900 * 3300.0));
        CHECK(areaOf(plan, 0, Role::Floor, 0) == Approx(3000 * 5000.0));
        CHECK(areaOf(plan, 1, Role::Ceiling, 2400) == Approx(3000 * 5000.0));
        for (const Vec2 open : {Vec2{450, 1100}, Vec2{100, 4200}, Vec2{800, 2600}}) {
            CHECK_FALSE(covered(plan, 0, Role::Ceiling, move(open)));
            CHECK_FALSE(covered(plan, 1, Role::Floor, move(open)));
        }
        for (const Vec2 shut : {Vec2{1000, 2600}, Vec2{450, 900}, Vec2{450, 4400}, Vec2{2900, 4900}}) {
            CHECK(covered(plan, 0, Role::Ceiling, move(shut)));
            CHECK(covered(plan, 1, Role::Floor, move(shut)));
        }
    }
}

TEST_CASE("the pieces round a stair's void keep looking down and up") {
    const plan::Plan plan = house();
    for (std::size_t room = 0; room < 2; ++room)
        for (const FabricPart& part : roomFabric(plan, plan.rooms[room]))
            if (part.role == Role::Floor || part.role == Role::Ceiling)
                CHECK(worstNormal(part.mesh) == Approx(1));
}

TEST_CASE("between the ceiling and the floor above, the void is lined and looks inwards") {
    const plan::Plan plan = house();
    const auto parts = roomFabric(plan, plan.rooms[0]);
    const Vec3 middle{450, 2650, 2650};
    for (const Vec3 way : {Vec3{1, 0, 0}, Vec3{-1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, -1, 0}}) {
        bool met = false;
        for (const FabricPart& part : parts) {
            if (part.role != Role::Ceiling) continue;
            const auto hit = rayHit(part.mesh, middle, way);
            if (!hit) continue;
            met = true;
            CHECK(*hit == Approx(way.x != 0 ? 450 : 1650).margin(2)); // at most 2 inside the void's edge
        }
        CHECK(met);
    }
    double lined = 0;
    for (const FabricPart& part : parts)
        if (part.role == Role::Ceiling) lined += meshArea(part.mesh);
    lined -= 3000 * 5000.0 - 900 * 3300.0;
    CHECK(lined == Approx(2 * (900 + 3300) * 300.0).epsilon(0.002)); // 300 from ceiling to floor
}

TEST_CASE("the floor above is cut only where it covers the stair") {
    plan::Plan plan = house();
    // The landing ends over the middle of the stair: half of the footprint lies beside it.
    plan.rooms[1].outline = {{450, 5000}, {3000, 5000}, {3000, 0}, {450, 0}};
    CHECK(areaOf(plan, 1, Role::Floor, 0) == Approx(2550 * 5000.0 - 450 * 3300.0));
    plan.rooms[1].outline = {{1000, 5000}, {3000, 5000}, {3000, 0}, {1000, 0}};
    CHECK(areaOf(plan, 1, Role::Floor, 0) == Approx(2000 * 5000.0));
}

TEST_CASE("a column in the floor above and a slope over the stair are cut as well") {
    plan::Plan plan = house();
    plan.rooms[1].columns = {{{800, 2000}, {1000, 2000}, {1000, 2200}, {800, 2200}}};
    plan.rooms[1].walls.clear();
    addWalls(plan.rooms[1]);
    // Half of the column's 200 x 200 stands in the void.
    CHECK(areaOf(plan, 1, Role::Floor, 0) == Approx(3000 * 5000.0 - 900 * 3300.0 - 100 * 200.0));
    plan.rooms[0].ceiling.heights_mm = {2000, 2600, 2600, 2000}; // rises by 600 over 3000 to the east
    CHECK_FALSE(covered(plan, 0, Role::Ceiling, {450, 2000}));
    CHECK(covered(plan, 0, Role::Ceiling, {1500, 2000}));
}

TEST_CASE("a few steps within a room cut nothing, and a stair to no storey only the ceiling it meets") {
    plan::Plan plan = house();
    plan.furniture[0].size.height_mm = 540;
    CHECK(areaOf(plan, 0, Role::Ceiling, 2500) == Approx(3000 * 5000.0));
    CHECK(areaOf(plan, 1, Role::Floor, 0) == Approx(3000 * 5000.0));
    plan.furniture[0].size.height_mm = 2800;
    plan.storeys[1].elevation_mm = 6000;
    CHECK(areaOf(plan, 0, Role::Ceiling, 2500) == Approx(3000 * 5000.0 - 900 * 3300.0));
    CHECK(areaOf(plan, 1, Role::Floor, 0) == Approx(3000 * 5000.0));
}
