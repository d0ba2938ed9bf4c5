#include "closed_mesh.hpp"
#include "houses.hpp"

#include "plan/furniture_kinds.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

namespace {

plan::Furniture usual(const plan::FurnitureKind& kind) {
    plan::Furniture piece;
    piece.id = std::string(kind.key);
    piece.kind = std::string(kind.key);
    piece.size = kind.size;
    return piece;
}

struct Box3 {
    Vec3 low{1e9, 1e9, 1e9};
    Vec3 high{-1e9, -1e9, -1e9};
};

/// Bounds in the piece's own coordinates.
Box3 localBounds(const plan::Furniture& piece) {
    Box3 b;
    for (const Solid& solid : furnitureSolids(piece).solids) {
        for (const Vec3 house : solid.mesh.positions_mm) {
            const Vec3 p = toLocal(piece, house);
            b.low = {std::min(b.low.x, p.x), std::min(b.low.y, p.y), std::min(b.low.z, p.z)};
            b.high = {std::max(b.high.x, p.x), std::max(b.high.y, p.y), std::max(b.high.z, p.z)};
        }
    }
    return b;
}

/// Whether a point of the piece's own coordinates lies in one of its solids: a ray leaves a body once more
/// than it enters.
bool filled(const plan::Furniture& piece, Vec3 local) {
    const Vec3 from = fromLocal(piece, local);
    const Vec3 direction = Vec3{0.36, 0.48, 0.8};
    return std::ranges::any_of(furnitureSolids(piece).solids, [&](const Solid& solid) {
        int crossings = 0;
        Vec3 at = from;
        while (const auto hit = rayHit(solid.mesh, at, direction)) {
            ++crossings;
            at = at + direction * (*hit + 1e-6);
        }
        return crossings % 2 == 1;
    });
}

} // namespace

TEST_CASE("every kind is made of closed solids that face outwards and carry names and colours") {
    for (const plan::FurnitureKind& kind : plan::furnitureKinds()) {
        INFO(kind.key);
        const auto made = furnitureSolids(usual(kind));
        CHECK(made.problem.empty());
        REQUIRE_FALSE(made.solids.empty());
        for (const Solid& solid : made.solids) {
            INFO(solid.name);
            CHECK_FALSE(solid.name.empty());
            CHECK(solid.colour.size() == 7);
            CHECK(openEdges(solid.mesh) == 0);
            CHECK(volume(solid.mesh) > 0);
            CHECK(worstNormal(solid.mesh) > -0.1);
        }
    }
}

TEST_CASE("every kind fits the size the plan gives it") {
    // A blind's pull, a boiler's pipes and a valve hang out below; taps and cushions stand a little above.
    for (const plan::FurnitureKind& kind : plan::furnitureKinds()) {
        for (const double scale : {0.85, 1.0, 1.3}) {
            INFO(kind.key << " x " << scale);
            plan::Furniture piece = usual(kind);
            piece.size = {kind.size.width_mm * scale, kind.size.depth_mm * scale,
                          kind.size.height_mm * scale};
            const Box3 b = localBounds(piece);
            const double slack = 40;
            CHECK(b.low.x >= -piece.size.width_mm / 2 - slack);
            CHECK(b.high.x <= piece.size.width_mm / 2 + slack);
            CHECK(b.low.y >= -piece.size.depth_mm / 2 - slack);
            CHECK(b.high.y <= piece.size.depth_mm / 2 + slack);
            CHECK(b.low.z >= -150);
            CHECK(b.high.x - b.low.x >= piece.size.width_mm * 0.8);
        }
    }
}

TEST_CASE("every kind is made without harm at odd sizes and with its least and greatest values") {
    for (const plan::FurnitureKind& kind : plan::furnitureKinds()) {
        for (const double size : {1.0, 30.0, 250.0, 4000.0}) {
            for (const bool least : {true, false}) {
                INFO(kind.key << " of " << size << (least ? ", least values" : ", greatest values"));
                plan::Furniture piece = usual(kind);
                piece.size = {size, size, size};
                for (const plan::FurnitureValue& value : kind.values)
                    piece.with.emplace_back(std::string(value.key), least ? value.min : value.max);
                for (const Solid& solid : furnitureSolids(piece).solids)
                    for (const Vec3 p : solid.mesh.positions_mm)
                        REQUIRE((std::isfinite(p.x) && std::isfinite(p.y) && std::isfinite(p.z)));
            }
        }
    }
}

TEST_CASE("pieces have the voids that plates and plugs need") {
    struct Case {
        const char* kind;
        const char* what;
        Vec3 at; ///< in the piece's own coordinates
        bool solid;
    };
    const std::vector<Case> cases = {
        {"desk", "knee space", {0, 0, 400}, false},
        {"desk", "top", {0, 0, 730}, true},
        {"base-unit", "toe space", {3, -260, 60}, false},
        {"base-unit", "plinth", {3, -220, 60}, true},
        {"base-unit", "worktop", {3, 3, 900}, true},
        {"base-unit", "inside", {3, 3, 300}, false},
        {"wardrobe", "inside", {200, 30, 700}, false},
        {"wardrobe", "back", {3, 298, 700}, true},
        {"bookcase", "between shelves", {250, 100, 330}, false},
        {"table", "under the top", {0, 0, 300}, false},
        {"bed", "under the mattress", {0, 0, 100}, false},
        {"bed", "mattress", {0, 0, 450}, true},
        {"bed", "headboard", {700, 1035, 800}, true},
        {"bath", "bowl", {0, 0, 400}, false},
        {"basin", "bowl", {0, -40, 800}, false},
        {"wc", "bowl", {0, -180, 380}, false},
        {"sink", "bowl", {0, 0, 150}, false},
        {"stair", "beneath", {0, 1200, 500}, false},
        {"shower", "above the tray", {0, 0, 1000}, false},
    };
    for (const Case& c : cases) {
        INFO(c.kind << ": " << c.what);
        CHECK(filled(usual(*plan::findFurnitureKind(c.kind)), c.at) == c.solid);
    }
}

TEST_CASE("a value in the plan changes the piece") {
    plan::Furniture bed = usual(*plan::findFurnitureKind("bed"));
    bed.with = {{"headboardWidth", 2400}, {"headboardHeight", 1150}, {"headboardDepth", 80}};
    const Box3 b = localBounds(bed);
    CHECK(b.high.x - b.low.x == Approx(2400));
    CHECK(b.high.z == Approx(1150));
    CHECK(b.high.y == Approx(bed.size.depth_mm / 2));
}

TEST_CASE("a drawn-back pair of curtains stands over the ends of its rail only") {
    // Demo house: rail 637.5 to 3262.5 over a door 900 to 3000: stacks of 262.5 each.
    plan::Furniture curtain = usual(*plan::findFurnitureKind("curtain"));
    curtain.size = {2625, 120, 2300};
    for (const Solid& solid : furnitureSolids(curtain).solids) {
        if (!solid.name.starts_with("curtain")) continue;
        for (const Vec3 p : solid.mesh.positions_mm)
            REQUIRE(std::abs(p.x) >= 1312.5 - 262.5 - 1e-6);
    }
}

TEST_CASE("local coordinates and house coordinates go there and back") {
    plan::Furniture piece = usual(*plan::findFurnitureKind("chair"));
    piece.at_mm = {123456, -654321};
    piece.bottom_mm = 20;
    for (const double turn : {0.0, 45.0, 90.0, 200.1, -30.0}) {
        piece.turn_deg = turn;
        CHECK(length(toLocal(piece, fromLocal(piece, {10, 20, 30})) - Vec3{10, 20, 30}) < 1e-6);
    }
    piece.turn_deg = 90; // back to the west
    CHECK(fromLocal(piece, {0, 100, 0}) == Vec3{123356, -654321, 20});
    CHECK(signedArea(footprint(piece)) == Approx(-450 * 500));
}

TEST_CASE("a glTF piece stands on the middle of its footprint, and one that can't be read becomes a box with "
          "a reason") {
    const std::filesystem::path folder = std::filesystem::path(GANGWAY_OUT_DIR) / "geometry";
    std::filesystem::create_directories(folder);
    meshes::Part part{"lamp", "#336699",
                      furnitureSolids(usual(*plan::findFurnitureKind("box"))).solids[0].mesh};
    for (Vec3& p : part.mesh.positions_mm)
        p = p + Vec3{5000, 7000, 300}; // modelled away from its origin
    REQUIRE(meshes::writeGlb({part}, folder / "lamp.glb").has_value());
    plan::Furniture piece;
    piece.kind = "gltf";
    piece.file = "lamp.glb";
    piece.at_mm = {1000, 2000};
    piece.size = {500, 500, 500};
    const auto read = furnitureSolids(piece, folder);
    CHECK(read.problem.empty());
    const Box3 b = localBounds(piece);
    REQUIRE(read.solids.size() == 1);
    CHECK(read.solids[0].colour == "#336699");
    Vec3 low{1e9, 1e9, 1e9};
    for (const Vec3 p : read.solids[0].mesh.positions_mm)
        low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
    CHECK(length(low - Vec3{750, 1750, 0}) < 0.01);
    CHECK(b.high.x == Approx(250)); // without a folder there is no file: a plain box
    piece.file = "not-there.glb";
    const auto missing = furnitureSolids(piece, folder);
    CHECK_THAT(missing.problem, Catch::Matchers::Contains("not-there.glb"));
    CHECK(missing.solids.size() == 1);
}
