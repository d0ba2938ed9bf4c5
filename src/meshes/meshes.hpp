// Triangle meshes and glTF files: the only folder that knows tinygltf.
#pragma once

#include "plan/vec.hpp"

#include <array>
#include <cstdint>
#include <expected>
#include <filesystem>
#include <string>
#include <vector>

namespace gangway::meshes {

/// Triangles in mm, counter-clockwise seen from outside. Normals are per vertex and of unit length.
struct Mesh {
    std::vector<plan::Vec3> positions_mm;
    std::vector<plan::Vec3> normals;
    std::vector<std::array<std::uint32_t, 3>> triangles;
    bool empty() const { return triangles.empty(); }
};

/// One part of a loaded file with its base colour ("#RRGGBB").
struct Part {
    std::string name;
    std::string colour;
    Mesh mesh;
};

/// Reads .gltf or .glb: all meshes of the default scene with their node transforms, turned from glTF's
/// metres, y up, into mm, z up (x right, y to the back). The error names the file and what to do.
[[nodiscard]] std::expected<std::vector<Part>, std::string> readGltf(const std::filesystem::path& file);

/// Writes parts as .glb in metres, y up. Deterministic bytes.
[[nodiscard]] std::expected<void, std::string> writeGlb(const std::vector<Part>& parts,
                                                        const std::filesystem::path& file);

/// Joins b to a, leaving its colour aside.
void append(Mesh& a, const Mesh& b);

} // namespace gangway::meshes
