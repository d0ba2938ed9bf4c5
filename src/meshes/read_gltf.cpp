// glTF 2.0 files to triangles in mm: every mesh of the default scene where its node puts it.
#include "meshes/meshes.hpp"
#include "meshes/tinygltf.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <fstream>
#include <optional>

namespace gangway::meshes {
namespace {

using plan::Vec3;

constexpr std::size_t kMaxTriangles = 5'000'000;
constexpr std::size_t kMaxDepth = 64;
constexpr std::uintmax_t kMaxBytes = 512ULL << 20;
/// glTF is in metres; a piece larger than the model's own limit was made in another unit.
constexpr double kMaxExtentMm = 1e6;

/// Column-major 4 x 4 matrix, as glTF writes it.
using Matrix = std::array<double, 16>;
constexpr Matrix kIdentity = {1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1};

Matrix product(const Matrix& a, const Matrix& b) {
    Matrix c{};
    for (std::size_t column = 0; column < 4; ++column)
        for (std::size_t row = 0; row < 4; ++row)
            for (std::size_t k = 0; k < 4; ++k)
                c[column * 4 + row] += a[k * 4 + row] * b[column * 4 + k];
    return c;
}

/// Translation * rotation (unit quaternion x, y, z, w) * scale: glTF 2.0, 3.5.3.
Matrix nodeMatrix(const tinygltf::Node& node) {
    if (node.matrix.size() == 16) {
        Matrix m{};
        std::ranges::copy(node.matrix, m.begin());
        return m;
    }
    const auto part = [](const std::vector<double>& given, std::size_t k, double otherwise) {
        return k < given.size() ? given[k] : otherwise;
    };
    const double x = part(node.rotation, 0, 0), y = part(node.rotation, 1, 0), z = part(node.rotation, 2, 0),
                 w = part(node.rotation, 3, 1);
    const Matrix rotation = {1 - 2 * (y * y + z * z),
                             2 * (x * y + z * w),
                             2 * (x * z - y * w),
                             0,
                             2 * (x * y - z * w),
                             1 - 2 * (x * x + z * z),
                             2 * (y * z + x * w),
                             0,
                             2 * (x * z + y * w),
                             2 * (y * z - x * w),
                             1 - 2 * (x * x + y * y),
                             0,
                             0,
                             0,
                             0,
                             1};
    Matrix m = rotation;
    for (std::size_t column = 0; column < 3; ++column)
        for (std::size_t row = 0; row < 3; ++row)
            m[column * 4 + row] *= part(node.scale, column, 1);
    for (std::size_t row = 0; row < 3; ++row)
        m[12 + row] = part(node.translation, row, 0);
    return m;
}

double determinant(const Matrix& m) {
    return m[0] * (m[5] * m[10] - m[9] * m[6]) - m[4] * (m[1] * m[10] - m[9] * m[2]) +
           m[8] * (m[1] * m[6] - m[5] * m[2]);
}

Vec3 transformed(const Matrix& m, Vec3 p) {
    return {m[0] * p.x + m[4] * p.y + m[8] * p.z + m[12], m[1] * p.x + m[5] * p.y + m[9] * p.z + m[13],
            m[2] * p.x + m[6] * p.y + m[10] * p.z + m[14]};
}

/// Normals go by the inverse transpose, which is the matrix of cofactors up to a factor.
Vec3 transformedNormal(const Matrix& m, Vec3 n) {
    const Vec3 a{m[0], m[1], m[2]}, b{m[4], m[5], m[6]}, c{m[8], m[9], m[10]};
    const double sign = determinant(m) < 0 ? -1 : 1;
    return (cross(b, c) * n.x + cross(c, a) * n.y + cross(a, b) * n.z) * sign;
}

/// glTF metres, y up, to mm, z up, with the back of a piece (y) away from glTF's front (+z).
Vec3 toHouseAxes(Vec3 p, double scale) {
    return {p.x * scale, -p.z * scale, p.y * scale};
}

std::string colourOf(const tinygltf::Model& model, int material) {
    if (material < 0 || material >= static_cast<int>(model.materials.size())) return "#B0B0B0";
    const auto& factors =
        model.materials[static_cast<std::size_t>(material)].pbrMetallicRoughness.baseColorFactor;
    std::array<int, 3> bytes{255, 255, 255};
    for (std::size_t k = 0; k < 3 && k < factors.size(); ++k) {
        const double f = std::clamp(factors[k], 0.0, 1.0);
        const double s = f <= 0.0031308 ? f * 12.92 : 1.055 * std::pow(f, 1 / 2.4) - 0.055;
        bytes[k] = static_cast<int>(std::lround(s * 255));
    }
    return fmt::format("#{:02X}{:02X}{:02X}", bytes[0], bytes[1], bytes[2]);
}

/// Reads the elements of one accessor after checking that they lie inside their buffer.
class AccessorReader {
public:
    static std::expected<AccessorReader, std::string> open(const tinygltf::Model& model, int index,
                                                           int type) {
        if (index < 0 || index >= static_cast<int>(model.accessors.size()))
            return std::unexpected(fmt::format("it refers to accessor {}, which it does not have", index));
        const auto& accessor = model.accessors[static_cast<std::size_t>(index)];
        if (accessor.type != type || accessor.sparse.isSparse)
            return std::unexpected(
                fmt::format("accessor {} has a form that is not read (sparse, or not {})", index,
                            type == TINYGLTF_TYPE_VEC3 ? "three numbers each" : "single numbers"));
        if (accessor.bufferView < 0 || accessor.bufferView >= static_cast<int>(model.bufferViews.size()))
            return std::unexpected(fmt::format("accessor {} has no data", index));
        const auto& view = model.bufferViews[static_cast<std::size_t>(accessor.bufferView)];
        if (view.buffer < 0 || view.buffer >= static_cast<int>(model.buffers.size()))
            return std::unexpected(fmt::format("accessor {} has no buffer", index));
        const auto& bytes = model.buffers[static_cast<std::size_t>(view.buffer)].data;
        const int stride = accessor.ByteStride(view);
        const int component =
            tinygltf::GetComponentSizeInBytes(static_cast<std::uint32_t>(accessor.componentType));
        const int parts = type == TINYGLTF_TYPE_VEC3 ? 3 : 1;
        if (stride <= 0 || component <= 0)
            return std::unexpected(fmt::format("accessor {} has a bad layout", index));
        AccessorReader reader;
        reader.count_ = accessor.count;
        reader.stride_ = static_cast<std::size_t>(stride);
        reader.component_ = accessor.componentType;
        const std::size_t element = static_cast<std::size_t>(component) * static_cast<std::size_t>(parts);
        if (reader.count_ > bytes.size() || view.byteOffset > bytes.size() ||
            accessor.byteOffset > bytes.size() ||
            (reader.count_ > 0 &&
             view.byteOffset + accessor.byteOffset + (reader.count_ - 1) * reader.stride_ + element >
                 bytes.size()))
            return std::unexpected(fmt::format("accessor {} reaches past the end of its buffer", index));
        reader.data_ = bytes.data() + view.byteOffset + accessor.byteOffset;
        return reader;
    }

    std::size_t count() const { return count_; }
    int component() const { return component_; }

    Vec3 vector(std::size_t i) const {
        std::array<float, 3> v{};
        std::memcpy(v.data(), data_ + i * stride_, sizeof v);
        return {v[0], v[1], v[2]};
    }

    std::uint32_t index(std::size_t i) const {
        const unsigned char* at = data_ + i * stride_;
        if (component_ == TINYGLTF_COMPONENT_TYPE_UNSIGNED_BYTE) return *at;
        if (component_ == TINYGLTF_COMPONENT_TYPE_UNSIGNED_SHORT) {
            std::uint16_t value = 0;
            std::memcpy(&value, at, sizeof value);
            return value;
        }
        std::uint32_t value = 0;
        std::memcpy(&value, at, sizeof value);
        return value;
    }

private:
    const unsigned char* data_ = nullptr;
    std::size_t count_ = 0;
    std::size_t stride_ = 0;
    int component_ = 0;
};

/// Flat normals, each triangle with its own corners, for files that give none.
void makeFlat(Mesh& mesh) {
    Mesh flat;
    for (const auto& t : mesh.triangles) {
        const Vec3 a = mesh.positions_mm[t[0]], b = mesh.positions_mm[t[1]], c = mesh.positions_mm[t[2]];
        Vec3 n = cross(b - a, c - a);
        const double size = length(n);
        n = size > 0 ? n * (1 / size) : Vec3{0, 0, 1};
        const auto first = static_cast<std::uint32_t>(flat.positions_mm.size());
        flat.positions_mm.insert(flat.positions_mm.end(), {a, b, c});
        flat.normals.insert(flat.normals.end(), {n, n, n});
        flat.triangles.push_back({first, first + 1, first + 2});
    }
    mesh = std::move(flat);
}

class SceneReader {
public:
    explicit SceneReader(const tinygltf::Model& model) : model_(model) {}

    std::expected<std::vector<Part>, std::string> read() {
        const int scene = model_.defaultScene >= 0 ? model_.defaultScene : 0;
        if (scene >= static_cast<int>(model_.scenes.size())) return std::unexpected("it holds no scene");
        for (const int node : model_.scenes[static_cast<std::size_t>(scene)].nodes)
            if (auto done = readNode(node, kIdentity, 0); !done) return std::unexpected(done.error());
        if (parts_.empty()) return std::unexpected("its scene holds no triangles");
        return std::move(parts_);
    }

private:
    std::expected<void, std::string> readNode(int index, const Matrix& above, std::size_t depth) {
        if (index < 0 || index >= static_cast<int>(model_.nodes.size()))
            return std::unexpected(fmt::format("it refers to node {}, which it does not have", index));
        if (depth > kMaxDepth)
            return std::unexpected(fmt::format("its nodes are nested deeper than {}", kMaxDepth));
        if (++visited_ > 100'000)
            return std::unexpected("it has more than 100000 nodes, or nodes in a circle");
        const auto& node = model_.nodes[static_cast<std::size_t>(index)];
        const Matrix matrix = product(above, nodeMatrix(node));
        if (node.mesh >= 0) {
            if (node.mesh >= static_cast<int>(model_.meshes.size()))
                return std::unexpected(
                    fmt::format("it refers to mesh {}, which it does not have", node.mesh));
            const auto& mesh = model_.meshes[static_cast<std::size_t>(node.mesh)];
            for (const auto& primitive : mesh.primitives)
                if (auto done = readPrimitive(primitive, node.name.empty() ? mesh.name : node.name, matrix);
                    !done)
                    return done;
        }
        for (const int child : node.children)
            if (auto done = readNode(child, matrix, depth + 1); !done) return done;
        return {};
    }

    std::expected<void, std::string> readPrimitive(const tinygltf::Primitive& primitive,
                                                   const std::string& name, const Matrix& matrix) {
        const bool triangles = primitive.mode == TINYGLTF_MODE_TRIANGLES || primitive.mode == -1;
        const auto position = primitive.attributes.find("POSITION");
        if (!triangles || position == primitive.attributes.end()) return {}; // points and lines cover nothing
        auto mesh = readVertices(primitive, position->second, matrix);
        if (!mesh) return std::unexpected(mesh.error());
        if (auto done = readTriangles(primitive, *mesh, determinant(matrix) < 0); !done) return done;
        if (mesh->empty()) return {};
        if (mesh->normals.empty()) makeFlat(*mesh);
        parts_.push_back({name, colourOf(model_, primitive.material), std::move(*mesh)});
        return {};
    }

    std::expected<Mesh, std::string> readVertices(const tinygltf::Primitive& primitive, int position,
                                                  const Matrix& matrix) const {
        const auto points = AccessorReader::open(model_, position, TINYGLTF_TYPE_VEC3);
        if (!points) return std::unexpected(points.error());
        if (points->component() != TINYGLTF_COMPONENT_TYPE_FLOAT)
            return std::unexpected("its positions are not floating-point numbers");
        Mesh mesh;
        for (std::size_t i = 0; i < points->count(); ++i) {
            const Vec3 p = toHouseAxes(transformed(matrix, points->vector(i)), 1000);
            if (!(std::abs(p.x) <= kMaxExtentMm && std::abs(p.y) <= kMaxExtentMm &&
                  std::abs(p.z) <= kMaxExtentMm))
                return std::unexpected("it reaches further than 1000 m: save it in metres, near the origin");
            mesh.positions_mm.push_back(p);
        }
        const auto given = primitive.attributes.find("NORMAL");
        if (given == primitive.attributes.end()) return mesh;
        const auto normals = AccessorReader::open(model_, given->second, TINYGLTF_TYPE_VEC3);
        if (!normals) return std::unexpected(normals.error());
        if (normals->component() != TINYGLTF_COMPONENT_TYPE_FLOAT || normals->count() != points->count())
            return mesh;
        for (std::size_t i = 0; i < normals->count(); ++i) {
            const Vec3 n = toHouseAxes(transformedNormal(matrix, normals->vector(i)), 1);
            const double size = length(n);
            mesh.normals.push_back(size > 0 && std::isfinite(size) ? n * (1 / size) : Vec3{0, 0, 1});
        }
        return mesh;
    }

    std::expected<void, std::string> readTriangles(const tinygltf::Primitive& primitive, Mesh& mesh,
                                                   bool mirrored) {
        std::optional<AccessorReader> list;
        std::size_t count = mesh.positions_mm.size();
        if (primitive.indices >= 0) {
            auto opened = AccessorReader::open(model_, primitive.indices, TINYGLTF_TYPE_SCALAR);
            if (!opened) return std::unexpected(opened.error());
            list = *opened;
            count = list->count();
        }
        triangles_ += count / 3;
        if (triangles_ > kMaxTriangles)
            return std::unexpected(
                fmt::format("it has more than {} triangles: give a simpler model", kMaxTriangles));
        for (std::size_t i = 0; i + 2 < count; i += 3) {
            std::array<std::uint32_t, 3> t{};
            for (std::size_t k = 0; k < 3; ++k)
                t[k] = list ? list->index(i + k) : static_cast<std::uint32_t>(i + k);
            if (std::ranges::max(t) >= mesh.positions_mm.size())
                return std::unexpected("a triangle refers to a point that is not there");
            if (mirrored) std::swap(t[1], t[2]);
            mesh.triangles.push_back(t);
        }
        return {};
    }

    const tinygltf::Model& model_;
    std::vector<Part> parts_;
    std::size_t triangles_ = 0;
    std::size_t visited_ = 0;
};

/// Textures are left aside, so an image that is missing or broken is no fault.
bool ignoreImage(tinygltf::Image*, const int, std::string*, std::string*, int, int, const unsigned char*, int,
                 void*) {
    return true;
}

std::string firstLine(const std::string& text) {
    return text.substr(0, text.find('\n'));
}

std::expected<tinygltf::Model, std::string> load(const std::filesystem::path& file) {
    std::error_code failed;
    if (!std::filesystem::is_regular_file(file, failed)) return std::unexpected("there is no such file");
    const auto size = std::filesystem::file_size(file, failed);
    if (failed || size > kMaxBytes) return std::unexpected("it is larger than 512 MiB: give a simpler model");
    std::array<char, 4> magic{};
    std::ifstream(file, std::ios::binary).read(magic.data(), magic.size());
    const bool binary = std::string_view(magic.data(), 4) == "glTF";

    tinygltf::TinyGLTF loader;
    loader.SetImageLoader(ignoreImage, nullptr);
    tinygltf::Model model;
    std::string error;
    std::string warning;
    const bool read = binary ? loader.LoadBinaryFromFile(&model, &error, &warning, file.string())
                             : loader.LoadASCIIFromFile(&model, &error, &warning, file.string());
    if (!read)
        return std::unexpected(
            fmt::format("it is not a glTF 2.0 file that can be read ({}); save it again as .glb",
                        error.empty() ? "no reason given" : firstLine(error)));
    return model;
}

} // namespace

std::expected<std::vector<Part>, std::string> readGltf(const std::filesystem::path& file) {
    const auto model = load(file);
    if (!model) return std::unexpected(fmt::format("'{}': {}", file.string(), model.error()));
    auto parts = SceneReader(*model).read();
    if (!parts) return std::unexpected(fmt::format("'{}': {}", file.string(), parts.error()));
    return parts;
}

} // namespace gangway::meshes
