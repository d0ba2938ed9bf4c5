#include "geometry/host_at.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gangway;
using geometry::furnitureHostAt;
using geometry::hostAt;
using plan::Host;
using plan::Vec3;

namespace {

constexpr double kLooseMm = 1e-6; // what toHouse and toFrame promise

/// An L-shaped room, turned and far from the origin, with a column and a slope; a headboard and an island.
plan::Plan housePlan(double turn_deg, plan::Vec2 offset) {
    const double a = turn_deg * 3.14159265358979323846 / 180;
    const auto place = [&](double x, double y) {
        return plan::Vec2{offset.x + x * std::cos(a) - y * std::sin(a),
                          offset.y + x * std::sin(a) + y * std::cos(a)};
    };
    plan::Plan plan;
    plan.storeys.push_back({"ground", "Ground", 0, "round-71", {}, {}});
    plan::Room room;
    room.id = "living";
    room.storey = "ground";
    room.outline = {place(0, 4000),    place(5000, 4000), place(5000, 1500),
                    place(3000, 1500), place(3000, 0),    place(0, 0)};
    room.columns = {{place(1000, 2000), place(1300, 2000), place(1300, 2300), place(1000, 2300)}};
    for (int i = 0; i < 10; ++i) {
        plan::Wall wall;
        wall.id = std::string(1, static_cast<char>('A' + i));
        room.walls.push_back(wall);
    }
    plan.rooms.push_back(room);
    const auto piece = [&](const char* id, const char* kind, plan::Vec2 at, plan::Size3 size, double bottom) {
        plan::Furniture furniture;
        furniture.id = id;
        furniture.kind = kind;
        furniture.room = "living";
        furniture.at_mm = at;
        furniture.size = size;
        furniture.bottom_mm = bottom;
        furniture.turn_deg = turn_deg + 30;
        plan.furniture.push_back(furniture);
    };
    piece("headboard", "headboard", place(2000, 3800), {1800, 80, 1100}, 0);
    piece("island", "kitchen-island", place(3800, 2600), {1800, 900, 900}, 0);
    piece("shelf", "shelf", place(600, 600), {800, 250, 300}, 1400);
    return plan;
}

Vec3 pointOf(const geometry::HouseIndex& house, const Host& host) {
    const auto point = geometry::hostPoint(house, "living", host);
    REQUIRE(point);
    return *point;
}

} // namespace

TEST_CASE("a host found at a place is a host at that place, for every surface of a room") {
    for (const double turn : {0.0, 17.0, 90.0, -135.0}) {
        const plan::Plan plan = housePlan(turn, {120000, -45000});
        const geometry::HouseIndex house(plan);
        const auto& room = plan.rooms.front();
        for (std::size_t i = 0; i < room.walls.size(); ++i) {
            INFO("turned " << turn << ", wall " << room.walls[i].id);
            const geometry::Frame frame = geometry::wallFrame(room, i);
            for (const double along : {0.02, 0.5, 0.97}) {
                const Vec3 p = geometry::toHouse(frame, {along * frame.length_mm, 1050, 0});
                const auto host = hostAt(house, "living", p, frame.w);
                REQUIRE(host);
                CHECK(host->kind == Host::Kind::Wall);
                CHECK(host->wall == room.walls[i].id);
                CHECK(plan::length(pointOf(house, *host) - p) < kLooseMm);
            }
        }
        const Vec3 inside = geometry::toHouse(geometry::wallFrame(room, 0), {900, 0, 700});
        for (const double z : {0.0, 2400.0}) {
            const Vec3 p{inside.x, inside.y, z};
            const auto host = hostAt(house, "living", p, {0, 0, z > 0 ? -1.0 : 1.0});
            REQUIRE(host);
            CHECK(host->kind == (z > 0 ? Host::Kind::Ceiling : Host::Kind::Floor));
            CHECK(plan::length(pointOf(house, *host) - p) < kLooseMm);
        }
    }
}

TEST_CASE("a place on a headboard, an island's end or a hung shelf gives that face back") {
    for (const double turn : {0.0, 17.0, 90.0, -135.0}) {
        const plan::Plan plan = housePlan(turn, {-3000, 88000});
        const geometry::HouseIndex house(plan);
        for (const plan::Furniture& piece : plan.furniture) {
            for (const char* face : {"front", "back", "left", "right", "top", "bottom"}) {
                INFO("turned " << turn << ", " << piece.id << " " << face);
                const auto frame = geometry::furnitureFaceFrame(piece, face);
                REQUIRE(frame);
                const double low = frame->v.z != 0 ? piece.bottom_mm : 0;
                const Vec3 p = geometry::toHouse(
                    *frame, {0.3 * frame->length_mm, low + 0.8 * (frame->height_mm - low), 0});
                const auto host = furnitureHostAt(piece, p, frame->w);
                REQUIRE(host);
                CHECK(host->kind == Host::Kind::Furniture);
                CHECK(host->furniture == piece.id);
                CHECK(host->face == face);
                CHECK(plan::length(pointOf(house, *host) - p) < kLooseMm);
            }
        }
    }
}

TEST_CASE("the surface's direction decides at a corner, and a place off every surface has no host") {
    const plan::Plan plan = housePlan(0, {0, 0});
    const geometry::HouseIndex house(plan);
    // 10 mm from the corner of walls A (north, looks south) and F (west, looks east).
    const Vec3 corner{10, 3990, 1000};
    CHECK(hostAt(house, "living", corner, {0, -1, 0})->wall == "A");
    CHECK(hostAt(house, "living", corner, {1, 0, 0})->wall == "F");
    // On tiles that stand 12 mm out of wall A: u and v are those of the wall behind.
    const auto on_tiles = hostAt(house, "living", {700, 3988, 300}, {0, -1, 0});
    REQUIRE(on_tiles);
    CHECK(on_tiles->u_mm == Approx(700));
    CHECK(on_tiles->v_mm == Approx(300));
    CHECK_FALSE(hostAt(house, "living", {700, 3900, 300}, {0, -1, 0}));  // 100 mm in front of it
    CHECK_FALSE(hostAt(house, "living", {700, 4000, 2500}, {0, -1, 0})); // above the ceiling
    CHECK_FALSE(hostAt(house, "living", {700, 4000, 300}, {0, 1, 0}));   // from behind
    CHECK_FALSE(hostAt(house, "living", {4000, 700, 0}, {0, 0, 1}));     // floor outside the L
    CHECK_FALSE(hostAt(house, "attic", {700, 4000, 300}, {0, -1, 0}));
    // The knee space 300 mm behind an island's front is no face.
    plan::Furniture island = plan.furniture[1];
    island.turn_deg = 0;
    const Vec3 front{island.at_mm.x, island.at_mm.y - 450, 400};
    CHECK(furnitureHostAt(island, front, {0, -1, 0})->face == "front");
    CHECK_FALSE(furnitureHostAt(island, front + Vec3{0, 300, 0}, {0, -1, 0}));
}

TEST_CASE("under a slope the ceiling is where the slope is") {
    plan::Plan plan = housePlan(0, {0, 0});
    plan::Room& room = plan.rooms.front();
    room.outline = {{0, 4000}, {5000, 4000}, {5000, 0}, {0, 0}};
    room.columns.clear();
    room.walls.resize(4);
    room.ceiling.heights_mm = {2000, 2000, 4000, 4000}; // falls 500 a metre to the north
    const geometry::HouseIndex house(plan);
    const Vec3 p{1000, 1000, 3500};
    const auto host = hostAt(house, "living", p, {0, -0.447, -0.894});
    REQUIRE(host);
    CHECK(host->kind == Host::Kind::Ceiling);
    CHECK(plan::length(pointOf(house, *host) - p) < kLooseMm);
    CHECK_FALSE(hostAt(house, "living", {1000, 1000, 2400}, {0, 0, -1}));
}
