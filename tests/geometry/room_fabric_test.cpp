#include "closed_mesh.hpp"
#include "houses.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;
using Role = FabricPart::Role;

namespace {

/// A room with a door and a window in wall A and an L-shaped neighbour round its south-east corner.
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
    plan.openings = {opening("door", plan::Opening::Kind::HingedDoor, "room", "A", 300, 900, 0, 2100),
                     opening("window", plan::Opening::Kind::Window, "room", "A", 2000, 1200, 900, 1200)};
    plan.openings[0].frame_mm = 37;
    plan.openings[0].casing_mm = 60;
    return plan;
}

double areaOf(const std::vector<FabricPart>& parts, Role role, const std::string& wall) {
    double sum = 0;
    for (const FabricPart& part : parts)
        if (part.role == role && part.wall == wall) sum += meshArea(part.mesh);
    return sum;
}

const FabricPart* find(const std::vector<FabricPart>& parts, Role role, const std::string& id = {}) {
    const auto found = std::ranges::find_if(parts, [&](const FabricPart& part) {
        return part.role == role && (id.empty() || part.wall == id || part.opening == id);
    });
    return found == parts.end() ? nullptr : &*found;
}

/// Whether some upward face of the walls' cut tops covers a point on plan.
bool topCovers(const std::vector<FabricPart>& parts, Vec2 at) {
    for (const FabricPart& part : parts) {
        if (part.role != Role::WallCut) continue;
        for (const auto& t : part.mesh.triangles) {
            const auto flat = [&](std::size_t k) {
                return Vec2{part.mesh.positions_mm[t[k]].x, part.mesh.positions_mm[t[k]].y};
            };
            const Vec2 a = flat(0), b = flat(1), c = flat(2);
            if (cross(b - a, c - a) < 1) continue; // upright or facing down
            const double slack = -1e-3;
            if (cross(b - a, at - a) >= slack && cross(c - b, at - b) >= slack &&
                cross(a - c, at - c) >= slack)
                return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("a wall's face has the wall's area less its openings, wherever the house stands") {
    for (const Move& move : kMoves) {
        INFO(move.name);
        const plan::Plan plan = moved(house(), move);
        const auto parts = roomFabric(plan, plan.rooms[0]);
        CHECK(areaOf(parts, Role::Wall, "A") == Approx(4000 * 2500.0 - 900 * 2100.0 - 1200 * 1200.0));
        CHECK(areaOf(parts, Role::Wall, "B") == Approx(3000 * 2500.0));
        CHECK(meshArea(find(parts, Role::Floor)->mesh) == Approx(4000 * 3000.0));
        CHECK(meshArea(find(parts, Role::Ceiling)->mesh) == Approx(4000 * 3000.0));
    }
}

TEST_CASE("wall faces look into the room, floors up and ceilings down") {
    const plan::Plan plan = house();
    for (const FabricPart& part : roomFabric(plan, plan.rooms[0])) {
        if (part.mesh.empty()) continue;
        const auto index = plan::wallIndex(plan.rooms[0], part.wall);
        Vec3 expected;
        if (part.role == Role::Wall)
            expected = wallFrame(plan.rooms[0], index.value()).w;
        else if (part.role == Role::Floor)
            expected = {0, 0, 1};
        else if (part.role == Role::Ceiling)
            expected = {0, 0, -1};
        else
            continue;
        CHECK(worstNormal(part.mesh) == Approx(1));
        CHECK(dot(part.mesh.normals.front(), expected) == Approx(1));
    }
}

TEST_CASE("openings that overlap are cut once") {
    plan::Plan plan = house();
    plan.openings = {opening("a", plan::Opening::Kind::Plain, "room", "C", 500, 1000, 0, 2000),
                     opening("b", plan::Opening::Kind::Plain, "room", "C", 1000, 1000, 500, 2000)};
    const auto parts = roomFabric(plan, plan.rooms[0]);
    CHECK(areaOf(parts, Role::Wall, "C") ==
          Approx(4000 * 2500.0 - (1000 * 2000.0 + 1000 * 2000.0 - 500 * 1500.0)));
}

TEST_CASE("a hole under a slope is cut from the trapezium") {
    plan::Plan plan = house();
    plan.rooms[0].ceiling.heights_mm = {1500, 3500, 3500, 1500};
    const auto parts = roomFabric(plan, plan.rooms[0]);
    // Wall A rises from 1500 to 3500 over 4000. The slope (v = 1500 + u / 2) cuts the door's hole, 300 to
    // 1200 wide and 2100 high, on its whole width below 2100: area under the slope = 900 x (1650 + 2100) / 2.
    const double door = 900 * (1650 + 2100) / 2.0;
    CHECK(areaOf(parts, Role::Wall, "A") == Approx(4000 * 2500.0 - door - 1200 * 1200.0));
}

TEST_CASE("with the lid off no gap shows in the thickness of the walls") {
    for (const Move& move : kMoves) {
        INFO(move.name);
        const plan::Plan plan = moved(house(), move);
        std::vector<FabricPart> parts;
        for (const plan::Room& room : plan.rooms)
            for (FabricPart& part : roomFabric(plan, room))
                parts.push_back(std::move(part));
        // Everything within 300 of the outer faces and in no room, sampled off any edge.
        const std::vector<Vec2> outer = {{-300, 3300}, {6300, 3300}, {6300, -2300}, {-300, -2300}};
        int tested = 0;
        for (double x = -295.3; x < 6300; x += 47.9) {
            for (double y = -2295.7; y < 3300; y += 43.1) {
                const bool in_room = (x > 0 && x < 4000 && y > 0 && y < 3000) ||
                                     (x > 4100 && x < 6000 && y > -2000 && y < 3000) ||
                                     (x > 0 && x < 6000 && y > -2000 && y < -100);
                if (in_room) continue;
                ++tested;
                INFO(x << ", " << y);
                REQUIRE(topCovers(parts, move({x, y})));
            }
        }
        CHECK(tested > 1000);
    }
}

TEST_CASE("each side of an inner wall takes half of it, an outer wall all of it") {
    const plan::Plan plan = house();
    const auto parts = roomFabric(plan, plan.rooms[0]);
    const auto deepest = [&](const std::string& wall) {
        const Frame frame = wallFrame(plan.rooms[0], plan::wallIndex(plan.rooms[0], wall).value());
        double least = 0;
        for (const Vec3 p : find(parts, Role::WallCut, wall)->mesh.positions_mm)
            least = std::min(least, toFrame(frame, p).z);
        return -least;
    };
    CHECK(deepest("A") == Approx(300));
    CHECK(deepest("B") == Approx(50));
    CHECK(deepest("C") == Approx(50));
}

TEST_CASE("frames, leaves, casings, glass and skirting are closed bodies") {
    plan::Plan plan = house();
    plan::WallLine skirting;
    skirting.height_mm = 120;
    skirting.depth_mm = 18;
    plan.rooms[0].walls[0].lines.push_back(skirting);
    plan.openings[1].reveal_mm = 100;
    plan.openings[1].sill_board_mm = 120;
    for (const Role role :
         {Role::Frame, Role::Leaf, Role::Casing, Role::Glass, Role::Skirting, Role::SillBoard}) {
        INFO("role " << static_cast<int>(role));
        bool found = false;
        for (const FabricPart& part : roomFabric(plan, plan.rooms[0])) {
            if (part.role != role) continue;
            found = true;
            CHECK(openEdges(part.mesh) == 0);
            CHECK(volume(part.mesh) > 0);
        }
        CHECK(found);
    }
}

TEST_CASE("skirting stops at the architrave of a door and runs on under a window") {
    plan::Plan plan = house();
    plan::WallLine skirting;
    skirting.height_mm = 120;
    skirting.depth_mm = 18;
    plan.rooms[0].walls[0].lines.push_back(skirting);
    const auto parts = roomFabric(plan, plan.rooms[0]);
    const FabricPart* part = find(parts, Role::Skirting, "A");
    REQUIRE(part);
    // Volume of two bars, 0 to 240 and 1260 to 4000 (door 300 to 1200, casing 60), less a little for bevels.
    CHECK(volume(part->mesh) == Approx((240 + 2740) * 120.0 * 18).epsilon(0.02));
}

TEST_CASE("tiles leave the openings free") {
    plan::Plan plan = house();
    plan::WallLine tiles;
    tiles.kind = plan::WallLine::Kind::Tiles;
    tiles.height_mm = 1200;
    tiles.depth_mm = 8;
    plan.rooms[0].walls[0].lines.push_back(tiles);
    const auto parts = roomFabric(plan, plan.rooms[0]);
    const FabricPart* part = find(parts, Role::Tiles);
    REQUIRE(part);
    const double face = 4000 * 1200.0 - 900 * 1200.0 - 1200 * 300.0;
    CHECK(meshArea(part->mesh) == Approx(face + 2 * (4000 + 1200) * 8.0)); // and its four thin edges
}

TEST_CASE("a column is cut out of the floor and shows a top with the lid off") {
    plan::Plan plan = house();
    plan.rooms[0].columns = {{{1000, 1000}, {1400, 1000}, {1400, 1300}, {1000, 1300}}};
    plan.rooms[0].walls.clear();
    addWalls(plan.rooms[0]);
    const auto parts = roomFabric(plan, plan.rooms[0]);
    CHECK(meshArea(find(parts, Role::Floor)->mesh) == Approx(4000 * 3000.0 - 400 * 300.0));
    CHECK(areaOf(parts, Role::Wall, "E") == Approx(400 * 2500.0));
    CHECK(topCovers(parts, {1200, 1150}));
    CHECK_FALSE(topCovers(parts, {900, 1150}));
}

TEST_CASE("a boundary that is no wall builds nothing") {
    plan::Plan plan = house();
    plan.rooms[0].walls[2].structure = plan::WallStructure::None;
    CHECK(find(roomFabric(plan, plan.rooms[0]), Role::Wall, "C") == nullptr);
}
