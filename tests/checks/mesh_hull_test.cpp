// Pieces from files that are no sound bodies: said with the file's name and what is wrong, and judged all the
// same.
#include "small_room.hpp"

#include "meshes/meshes.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

using namespace gangway;
using plan::Vec3;

namespace {
std::filesystem::path folder() {
    const auto path = std::filesystem::path(GANGWAY_OUT_DIR) / "mesh-hull";
    std::filesystem::create_directories(path);
    return path;
}

/// A box on its floor, without its lid when `open`.
meshes::Part boxPart(Vec3 size, bool open = false) {
    meshes::Part part{"box", "#B05029", {}};
    for (int i = 0; i < 8; ++i)
        part.mesh.positions_mm.push_back({i % 2 * size.x, i / 2 % 2 * size.y, i / 4 * size.z});
    part.mesh.normals.assign(8, {0, 0, 1});
    part.mesh.triangles = {{0, 2, 1}, {1, 2, 3}, {0, 1, 5}, {0, 5, 4}, {1, 3, 7}, {1, 7, 5},
                           {3, 2, 6}, {3, 6, 7}, {2, 0, 4}, {2, 4, 6}, {4, 5, 7}, {4, 7, 6}};
    if (open) part.mesh.triangles.resize(10);
    return part;
}

/// A body whose top's corner is pulled down through its own floor.
meshes::Part crossing() {
    meshes::Part part = boxPart({600, 400, 500});
    part.mesh.positions_mm[7] = {200, 150, -300};
    return part;
}

/// A chest-sized piece of that file before a socket of wall A.
std::vector<plan::Finding> judged(const std::string& file) {
    plan::Plan plan = roomOf(4000, 3000, plan::RoomUse::Living);
    pieceAt(plan, "gltf", 1700, {600, 400, 500}).file = file;
    socketOn(plan, "A", 2000);
    return checks::check(geometry::HouseIndex(plan), shipped(), packOf("international"), folder());
}

std::string said(const std::vector<plan::Finding>& findings) {
    const auto hull = ofRule(findings, "mesh-hull");
    return hull.empty() ? "" : hull.front().message;
}
} // namespace

TEST_CASE("mesh-hull: a closed body is judged without a word") {
    REQUIRE(meshes::writeGlb({boxPart({600, 400, 500})}, folder() / "closed.glb"));
    const auto findings = judged("closed.glb");
    CHECK(said(findings).empty());
    CHECK(ofRule(findings, "covered-plate").size() == 1);
}

TEST_CASE("mesh-hull: open, crossing and huge files are named with what is wrong, and still hide a plate") {
    REQUIRE(meshes::writeGlb({boxPart({600, 400, 500}, true)}, folder() / "open.glb"));
    REQUIRE(meshes::writeGlb({crossing()}, folder() / "crossing.glb"));
    REQUIRE(meshes::writeGlb({boxPart({20001, 400, 500})}, folder() / "huge.glb"));
    REQUIRE(meshes::writeGlb({boxPart({19999, 400, 500})}, folder() / "large.glb"));
    CHECK(said(judged("open.glb")).find("'open.glb' is open: 4 edges") != std::string::npos);
    CHECK(said(judged("crossing.glb")).find("'crossing.glb' crosses itself") != std::string::npos);
    CHECK(said(judged("huge.glb")).find("'huge.glb' is 20.0 m large") != std::string::npos);
    CHECK(said(judged("large.glb")).empty());
    for (const char* file : {"open.glb", "crossing.glb", "huge.glb"}) {
        INFO(file);
        CHECK(ofRule(judged(file), "covered-plate").size() == 1);
    }
}

TEST_CASE("mesh-hull: bodies that are pushed into each other are usual") {
    meshes::Part other = boxPart({300, 300, 300});
    for (Vec3& p : other.mesh.positions_mm)
        p = p + Vec3{100, 50, 400};
    REQUIRE(meshes::writeGlb({boxPart({600, 400, 500}), other}, folder() / "two.glb"));
    CHECK(said(judged("two.glb")).empty());
}

TEST_CASE("mesh-hull: files that can't be read are boxes of the stated size") {
    std::ofstream(folder() / "empty.gltf")
        << R"({"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[]}]})";
    std::ofstream(folder() / "broken.glb") << "not a model";
    for (const char* file : {"empty.gltf", "broken.glb", "missing.glb"}) {
        INFO(file);
        const auto findings = judged(file);
        CHECK(said(findings).find(file) != std::string::npos);
        CHECK(ofRule(findings, "covered-plate").size() == 1);
    }
}

TEST_CASE("mesh-hull: more triangles than are looked through are said, and still hide a plate") {
    // A closed box with its triangles given again and again: 12 each time.
    const auto times = [](int count) {
        meshes::Part part = boxPart({600, 400, 500});
        const auto once = part.mesh.triangles;
        for (int i = 1; i < count; ++i)
            part.mesh.triangles.insert(part.mesh.triangles.end(), once.begin(), once.end());
        return part;
    };
    REQUIRE(meshes::writeGlb({times(1666)}, folder() / "many.glb"));    // 19992
    REQUIRE(meshes::writeGlb({times(1667)}, folder() / "toomany.glb")); // 20004
    CHECK(said(judged("many.glb")).empty());
    CHECK(said(judged("toomany.glb")).find("'toomany.glb' has 20004 triangles") != std::string::npos);
    CHECK(said(judged("toomany.glb")).find("judged by its hull") != std::string::npos);
    CHECK(ofRule(judged("many.glb"), "covered-plate").size() == 1);
    CHECK(ofRule(judged("toomany.glb"), "covered-plate").size() == 1);
}

TEST_CASE(
    "mesh-hull: an open shell that has nothing near the wall but its floor hides a plate as its hull does") {
    // A floor, and a front further off than what hides a plate is looked for.
    meshes::Part part = boxPart({600, 400, 500});
    part.mesh.triangles = {{0, 2, 1}, {1, 2, 3}, {0, 1, 5}, {0, 5, 4}};
    part.mesh.positions_mm.resize(6);
    part.mesh.normals.resize(6);
    REQUIRE(meshes::writeGlb({part}, folder() / "shell.glb"));
    const auto findings = judged("shell.glb");
    CHECK_FALSE(said(findings).empty());
    CHECK(ofRule(findings, "covered-plate").size() == 1);
    // The same with its front in many triangles: the hull is found from its outermost points.
    constexpr int kSteps = 40;
    meshes::Part fine = part;
    fine.mesh.triangles.resize(2);
    const auto first = static_cast<std::uint32_t>(fine.mesh.positions_mm.size());
    for (int row = 0; row <= kSteps; ++row)
        for (int column = 0; column <= kSteps; ++column)
            fine.mesh.positions_mm.push_back({600.0 * column / kSteps, 0, 500.0 * row / kSteps});
    fine.mesh.normals.assign(fine.mesh.positions_mm.size(), {0, 0, 1});
    for (std::uint32_t row = 0; row < kSteps; ++row)
        for (std::uint32_t column = 0; column < kSteps; ++column) {
            const std::uint32_t at = first + row * (kSteps + 1) + column;
            fine.mesh.triangles.push_back({at, at + 1, at + kSteps + 2});
            fine.mesh.triangles.push_back({at, at + kSteps + 2, at + kSteps + 1});
        }
    REQUIRE(meshes::writeGlb({fine}, folder() / "fine-shell.glb"));
    CHECK(ofRule(judged("fine-shell.glb"), "covered-plate").size() == 1);
}
