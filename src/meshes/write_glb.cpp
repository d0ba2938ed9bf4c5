// Parts to a binary glTF file: one node, mesh, material and a slice of one buffer for each part.
#include "meshes/meshes.hpp"
#include "meshes/tinygltf.hpp"
#include "plan/io.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>

namespace gangway::meshes {
namespace {

/// House axes in mm to glTF's: metres, y up, the back of a piece towards -z.
std::array<float, 3> toGltf(plan::Vec3 p, double scale) {
    return {static_cast<float>(p.x * scale), static_cast<float>(p.z * scale),
            static_cast<float>(-p.y * scale)};
}

/// "#RRGGBB" as linear factors (IEC 61966-2-1); mid grey when the text is none.
std::vector<double> linearColour(const std::string& hex) {
    std::vector<double> factors;
    for (std::size_t k = 0; k < 3; ++k) {
        unsigned value = 0xB0;
        if (hex.size() == 7) std::from_chars(hex.data() + 1 + 2 * k, hex.data() + 3 + 2 * k, value, 16);
        const double s = value / 255.0;
        factors.push_back(s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4));
    }
    factors.push_back(1);
    return factors;
}

class GlbBuilder {
public:
    void add(const Part& part) {
        if (part.mesh.empty()) return;
        tinygltf::Primitive primitive;
        primitive.mode = TINYGLTF_MODE_TRIANGLES;
        primitive.attributes["POSITION"] = vectors(part.mesh.positions_mm, 0.001, true);
        primitive.attributes["NORMAL"] = vectors(part.mesh.normals, 1, false);
        primitive.indices = indices(part.mesh);
        primitive.material = static_cast<int>(model_.materials.size());

        tinygltf::Material material;
        material.name = part.colour;
        material.pbrMetallicRoughness.baseColorFactor = linearColour(part.colour);
        material.pbrMetallicRoughness.metallicFactor = 0;
        material.pbrMetallicRoughness.roughnessFactor = 0.8;
        model_.materials.push_back(material);

        tinygltf::Mesh mesh;
        mesh.name = part.name;
        mesh.primitives.push_back(primitive);
        tinygltf::Node node;
        node.name = part.name;
        node.mesh = static_cast<int>(model_.meshes.size());
        scene_.nodes.push_back(static_cast<int>(model_.nodes.size()));
        model_.meshes.push_back(mesh);
        model_.nodes.push_back(node);
    }

    tinygltf::Model finish() {
        model_.asset.version = "2.0";
        model_.asset.generator = "Gangway";
        if (!buffer_.data.empty()) model_.buffers.push_back(buffer_);
        model_.scenes.push_back(scene_);
        model_.defaultScene = 0;
        return model_;
    }

private:
    int vectors(const std::vector<plan::Vec3>& values, double scale, bool bounds) {
        tinygltf::Accessor accessor;
        accessor.type = TINYGLTF_TYPE_VEC3;
        accessor.componentType = TINYGLTF_COMPONENT_TYPE_FLOAT;
        accessor.count = values.size();
        std::array<float, 3> low{INFINITY, INFINITY, INFINITY};
        std::array<float, 3> high{-INFINITY, -INFINITY, -INFINITY};
        accessor.bufferView = view(values.size() * 12, TINYGLTF_TARGET_ARRAY_BUFFER);
        for (const plan::Vec3& value : values) {
            const auto point = toGltf(value, scale);
            push(point.data(), sizeof point);
            for (std::size_t k = 0; k < 3; ++k) {
                low[k] = std::min(low[k], point[k]);
                high[k] = std::max(high[k], point[k]);
            }
        }
        if (bounds) { // the standard asks for them on POSITION (glTF 2.0, 3.6.2.5)
            accessor.minValues.assign(low.begin(), low.end());
            accessor.maxValues.assign(high.begin(), high.end());
        }
        model_.accessors.push_back(accessor);
        return static_cast<int>(model_.accessors.size()) - 1;
    }

    int indices(const Mesh& mesh) {
        tinygltf::Accessor accessor;
        accessor.type = TINYGLTF_TYPE_SCALAR;
        accessor.componentType = TINYGLTF_COMPONENT_TYPE_UNSIGNED_INT;
        accessor.count = mesh.triangles.size() * 3;
        accessor.bufferView = view(accessor.count * 4, TINYGLTF_TARGET_ELEMENT_ARRAY_BUFFER);
        for (const auto& triangle : mesh.triangles)
            push(triangle.data(), sizeof triangle);
        model_.accessors.push_back(accessor);
        return static_cast<int>(model_.accessors.size()) - 1;
    }

    int view(std::size_t bytes, int target) {
        tinygltf::BufferView made;
        made.buffer = 0;
        made.byteOffset = buffer_.data.size();
        made.byteLength = bytes;
        made.target = target;
        model_.bufferViews.push_back(made);
        return static_cast<int>(model_.bufferViews.size()) - 1;
    }

    void push(const void* bytes, std::size_t count) {
        const auto* first = static_cast<const unsigned char*>(bytes);
        buffer_.data.insert(buffer_.data.end(), first, first + count);
    }

    tinygltf::Model model_;
    tinygltf::Scene scene_;
    tinygltf::Buffer buffer_;
};

} // namespace

std::expected<void, std::string> writeGlb(const std::vector<Part>& parts, const std::filesystem::path& file) {
    GlbBuilder builder;
    for (const Part& part : parts)
        builder.add(part);
    tinygltf::Model model = builder.finish();
    tinygltf::TinyGLTF writer;
    std::ostringstream bytes(std::ios::binary);
    if (!writer.WriteGltfSceneToStream(&model, bytes, false, true))
        return std::unexpected(fmt::format("'{}' could not be written as glTF", file.string()));
    return plan::writeBytesAtomically(bytes.str(), file);
}

} // namespace gangway::meshes
