#include "meshes/meshes.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace {

using namespace gangway;
using Catch::Matchers::Contains;
using plan::Vec3;

std::filesystem::path outFile(const std::string& name) {
    const std::filesystem::path folder = std::filesystem::path(GANGWAY_OUT_DIR) / "meshes";
    std::filesystem::create_directories(folder);
    return folder / name;
}

std::string writeText(const std::filesystem::path& file, const std::string& text) {
    std::ofstream(file, std::ios::binary) << text;
    return file.string();
}

std::string bytesOf(const std::filesystem::path& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

/// A wedge, so that every axis and the winding can be told apart.
meshes::Part wedge() {
    meshes::Part part{"wedge", "#B05029", {}};
    part.mesh.positions_mm = {{0, 0, 0}, {1200, 0, 0}, {0, 345.5, 0}, {0, 0, 67}};
    part.mesh.normals.assign(4, {0, 0, 1});
    part.mesh.triangles = {{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}};
    return part;
}

double signedVolume(const meshes::Mesh& mesh) {
    double sum = 0;
    for (const auto& t : mesh.triangles)
        sum += dot(mesh.positions_mm[t[0]], cross(mesh.positions_mm[t[1]], mesh.positions_mm[t[2]])) / 6;
    return sum;
}

/// A triangle with its buffer inside the file: (0,0,0), (1,0,0), (0,1,0) in metres; `node` is put into the
/// node.
std::string triangleGltf(const std::string& node, const std::string& accessor_count = "3") {
    return R"({"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{"mesh":0)" + node +
           R"(}],"meshes":[{"primitives":[{"attributes":{"POSITION":0}}]}],
"buffers":[{"byteLength":36,"uri":"data:application/octet-stream;base64,AAAAAAAAAAAAAAAAAACAPwAAAAAAAAAAAAAAAAAAgD8AAAAA"}],
"bufferViews":[{"buffer":0,"byteLength":36}],
"accessors":[{"bufferView":0,"componentType":5126,"count":)" +
           accessor_count + R"(,"type":"VEC3","min":[0,0,0],"max":[1,1,0]}]})";
}

} // namespace

TEST_CASE("a mesh written as glb comes back with the same triangles in mm") {
    const auto file = outFile("wedge.glb");
    REQUIRE(meshes::writeGlb({wedge()}, file).has_value());
    const auto parts = meshes::readGltf(file);
    REQUIRE(parts.has_value());
    REQUIRE(parts->size() == 1);
    const meshes::Part& part = parts->front();
    const meshes::Part given = wedge();
    CHECK(part.name == "wedge");
    CHECK(part.colour == "#B05029");
    CHECK(part.mesh.triangles == given.mesh.triangles);
    for (std::size_t i = 0; i < 4; ++i)
        CHECK(length(part.mesh.positions_mm[i] - given.mesh.positions_mm[i]) < 1e-3); // float metres
    CHECK(signedVolume(part.mesh) == Approx(1200 * 345.5 * 67 / 6));
}

TEST_CASE("writing a glb twice gives the same bytes") {
    const auto first = outFile("first.glb");
    const auto second = outFile("second.glb");
    REQUIRE(meshes::writeGlb({wedge(), wedge()}, first).has_value());
    REQUIRE(meshes::writeGlb({wedge(), wedge()}, second).has_value());
    CHECK(bytesOf(first) == bytesOf(second));
    CHECK(bytesOf(first).substr(0, 4) == "glTF"); // Khronos glTF 2.0, 4.4.2: magic
}

TEST_CASE("glTF's y up becomes z up and its front (+z) becomes our front (-y)") {
    // Khronos glTF 2.0, 3.4: +Y up, +Z forward, metres.
    writeText(outFile("axes.gltf"), triangleGltf(R"(,"translation":[1,2,3])"));
    const auto parts = meshes::readGltf(outFile("axes.gltf"));
    REQUIRE(parts.has_value());
    const auto& points = parts->front().mesh.positions_mm;
    CHECK(points[0] == Vec3{1000, -3000, 2000});
    CHECK(points[1] == Vec3{2000, -3000, 2000});
    CHECK(points[2] == Vec3{1000, -3000, 3000});
}

TEST_CASE("node turns and scales are applied and missing normals made") {
    // A quarter turn about y: x goes to -z (right-hand rule), that is our +y.
    writeText(outFile("turned.gltf"),
              triangleGltf(R"(,"rotation":[0,0.7071067811865476,0,0.7071067811865476],"scale":[2,3,1])"));
    const auto parts = meshes::readGltf(outFile("turned.gltf"));
    REQUIRE(parts.has_value());
    const meshes::Mesh& mesh = parts->front().mesh;
    CHECK(length(mesh.positions_mm[1] - Vec3{0, 2000, 0}) < 1e-3);
    CHECK(length(mesh.positions_mm[2] - Vec3{0, 0, 3000}) < 1e-3);
    REQUIRE(mesh.normals.size() == 3);
    CHECK(length(mesh.normals[0] - Vec3{1, 0, 0}) < 1e-6);
}

TEST_CASE("a mirrored node keeps its triangles facing outwards") {
    writeText(outFile("mirrored.gltf"), triangleGltf(R"(,"scale":[-1,1,1])"));
    const auto parts = meshes::readGltf(outFile("mirrored.gltf"));
    REQUIRE(parts.has_value());
    // Seen from the front (-y) the triangle still faces the front.
    CHECK(parts->front().mesh.normals[0].y == Approx(-1));
}

TEST_CASE("files that are no glTF are refused in a sentence that names them") {
    struct Case {
        std::string name;
        std::string text;
        std::string says;
    };
    const std::vector<Case> cases = {
        {"empty.gltf", "", "not a glTF 2.0 file"},
        {"binary.gltf", std::string("\0\1\2\3\xff\xfe", 6), "not a glTF 2.0 file"},
        {"truncated.glb", "glTF\2\0\0", "not a glTF 2.0 file"},
        {"list.gltf", "[1, 2, 3]", "not a glTF 2.0 file"},
        {"nothing.gltf", R"({"asset":{"version":"2.0"}})", ""},
        {"past-end.gltf", triangleGltf("", "300"), "reaches past the end of its buffer"},
        {"circle.gltf", triangleGltf(R"(,"children":[0])"), "nested deeper"},
        {"no-buffer.gltf",
         R"({"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{"mesh":0}],"meshes":[{"primitives":[{"attributes":{"POSITION":0}}]}],"buffers":[{"byteLength":36,"uri":"not-there.bin"}],"bufferViews":[{"buffer":0,"byteLength":36}],"accessors":[{"bufferView":0,"componentType":5126,"count":3,"type":"VEC3"}]})",
         "not a glTF 2.0 file"},
        {"far.gltf", triangleGltf(R"(,"scale":[2000,2000,2000])"), "save it in metres"},
    };
    for (const Case& c : cases) {
        INFO(c.name);
        writeText(outFile(c.name), c.text);
        const auto read = meshes::readGltf(outFile(c.name));
        REQUIRE_FALSE(read.has_value());
        CHECK_THAT(read.error(), Contains(c.name) && Contains(c.says));
    }
}

TEST_CASE("a missing file and a folder are refused") {
    const auto missing = meshes::readGltf(outFile("is-not-there.glb"));
    REQUIRE_FALSE(missing.has_value());
    CHECK_THAT(missing.error(), Contains("is-not-there.glb") && Contains("no such file"));
    CHECK_FALSE(meshes::readGltf(GANGWAY_OUT_DIR).has_value());
}

TEST_CASE("a glb is not written into a folder that does not exist") {
    const auto written =
        meshes::writeGlb({wedge()}, outFile("").parent_path() / "no" / "such" / "folder.glb");
    REQUIRE_FALSE(written.has_value());
    CHECK_THAT(written.error(), Contains("folder.glb"));
}

TEST_CASE("joined meshes keep their triangles") {
    meshes::Mesh joined = wedge().mesh;
    append(joined, wedge().mesh);
    CHECK(joined.positions_mm.size() == 8);
    CHECK(joined.triangles[4] == std::array<std::uint32_t, 3>{4, 6, 5});
    CHECK(signedVolume(joined) == Approx(2 * signedVolume(wedge().mesh)));
}
