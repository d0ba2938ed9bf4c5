#include "render/scene_buffers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <unordered_map>

namespace gangway::render {

namespace {

/// Cut walls are filled with ink as on a drawn plan: #3B454B, linear.
constexpr glm::vec3 kCutInk{0.044f, 0.060f, 0.071f};

struct GpuVertex {
    glm::vec3 position;
    std::uint32_t normal; ///< three signed 10 bit numbers
    std::uint32_t part;
};
static_assert(sizeof(GpuVertex) == 20);

std::uint32_t packNormal(glm::vec3 normal) {
    const auto ten = [](float value) {
        const int whole = static_cast<int>(std::lround(std::clamp(value, -1.0f, 1.0f) * 511.0f));
        return static_cast<std::uint32_t>(whole) & 0x3ffu;
    };
    return ten(normal.x) | (ten(normal.y) << 10) | (ten(normal.z) << 20);
}

struct Geometry {
    std::vector<GpuVertex> vertices;
    std::vector<std::uint32_t> indices;
};

/// Vertices copied part by part, so that each can carry its part's number. Index ranges stay where
/// they are in the scene.
Geometry splitByPart(const scene::Scene& scene) {
    Geometry result;
    result.vertices.reserve(scene.vertices.size());
    result.indices.assign(scene.indices.size(), 0);
    std::unordered_map<std::uint32_t, std::uint32_t> moved;
    for (std::size_t p = 0; p < scene.parts.size(); ++p) {
        const auto& part = scene.parts[p];
        moved.clear();
        for (std::size_t i = part.first_index; i < std::size_t{part.first_index} + part.index_count; ++i) {
            const std::uint32_t from = scene.indices[i];
            const auto [entry, fresh] =
                moved.emplace(from, static_cast<std::uint32_t>(result.vertices.size()));
            if (fresh)
                result.vertices.push_back({scene.vertices[from].position,
                                           packNormal(scene.vertices[from].normal),
                                           static_cast<std::uint32_t>(p)});
            result.indices[i] = entry->second;
        }
    }
    return result;
}

template <class T>
GLsizeiptr byteSize(const std::vector<T>& values) {
    return static_cast<GLsizeiptr>(values.size() * sizeof(T));
}

/// How much nearer than it is a part is taken to be where two lie in one plane, per kind.
float depthRank(scene::PartKind kind) {
    switch (kind) {
    case scene::PartKind::Plate:
        return 3;
    case scene::PartKind::Lamp:
        return 2;
    case scene::PartKind::Opening:
    case scene::PartKind::Furniture:
    case scene::PartKind::Soft:
        return 1;
    default:
        return 0;
    }
}

} // namespace

void DrawList::add(std::uint32_t first_index, std::uint32_t count) {
    if (count == 0) return;
    if (!counts_.empty() && end_ == first_index) {
        counts_.back() += static_cast<GLsizei>(count);
    } else {
        counts_.push_back(static_cast<GLsizei>(count));
        offsets_.push_back(reinterpret_cast<const void*>(std::size_t{first_index} * sizeof(std::uint32_t)));
    }
    end_ = first_index + count;
}

void DrawList::clear() {
    counts_.clear();
    offsets_.clear();
    end_ = 0;
}

SceneBuffers::SceneBuffers(const scene::Scene& scene, const PartIndex& index)
    : array_(VertexArray::make()), vertices_(Buffer::make()), indices_(Buffer::make()),
      part_buffer_(Buffer::make()), parts_(Texture::make()) {
    const Geometry geometry = splitByPart(scene);
    glBindVertexArray(array_.name());
    glBindBuffer(GL_ARRAY_BUFFER, vertices_.name());
    glBufferData(GL_ARRAY_BUFFER, byteSize(geometry.vertices), geometry.vertices.data(), GL_STATIC_DRAW);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_.name());
    glBufferData(GL_ELEMENT_ARRAY_BUFFER, byteSize(geometry.indices), geometry.indices.data(),
                 GL_STATIC_DRAW);
    constexpr GLsizei stride = sizeof(GpuVertex);
    glEnableVertexAttribArray(0);
    glVertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, stride, nullptr);
    glEnableVertexAttribArray(1);
    glVertexAttribPointer(1, 4, GL_INT_2_10_10_10_REV, GL_TRUE, stride,
                          reinterpret_cast<const void*>(offsetof(GpuVertex, normal)));
    glEnableVertexAttribArray(2);
    glVertexAttribIPointer(2, 1, GL_UNSIGNED_INT, stride,
                           reinterpret_cast<const void*>(offsetof(GpuVertex, part)));
    glBindVertexArray(0);
    sendParts(scene, index, std::vector<char>(scene.parts.size(), 1));
}

void SceneBuffers::sendParts(const scene::Scene& scene, const PartIndex& index,
                             const std::vector<char>& lit) {
    std::vector<std::array<glm::vec4, 6>> table;
    table.reserve(scene.parts.size() + 1);
    for (std::size_t i = 0; i < scene.parts.size(); ++i) {
        const auto& material = scene.parts[i].material;
        const auto& info = index.parts[i];
        const float emission = lit[i] ? material.emission : 0.0f;
        const auto& room = index.room_infos[static_cast<std::size_t>(info.room)];
        const glm::vec3 colour = info.kind == scene::PartKind::WallCut ? kCutInk : material.colour;
        table.push_back({glm::vec4(colour, material.opacity),
                         glm::vec4(material.pattern_size_m, material.roughness, material.metalness),
                         glm::vec4(emission, static_cast<float>(info.object),
                                   static_cast<float>(info.room + 1), depthRank(info.kind)),
                         glm::vec4(room.floor_y, material.joint_m, 0, 0),
                         glm::vec4(material.pattern_origin, 0), glm::vec4(material.pattern_along, 0)});
    }
    table.resize(std::max<std::size_t>(table.size(), 1));
    glBindBuffer(GL_TEXTURE_BUFFER, part_buffer_.name());
    glBufferData(GL_TEXTURE_BUFFER, byteSize(table), table.data(), GL_DYNAMIC_DRAW);
    glBindTexture(GL_TEXTURE_BUFFER, parts_.name());
    glTexBuffer(GL_TEXTURE_BUFFER, GL_RGBA32F, part_buffer_.name());
}

void SceneBuffers::setLit(const scene::Scene& scene, const PartIndex& index, const std::vector<char>& lit) {
    sendParts(scene, index, lit);
}

void SceneBuffers::draw(const DrawList& list) const {
    if (list.empty() || !array_) return;
    glBindVertexArray(array_.name());
    glMultiDrawElements(GL_TRIANGLES, list.counts().data(), GL_UNSIGNED_INT, list.offsets().data(),
                        static_cast<GLsizei>(list.counts().size()));
}

void SceneBuffers::bindParts(int unit) const {
    glActiveTexture(static_cast<GLenum>(GL_TEXTURE0 + unit));
    glBindTexture(GL_TEXTURE_BUFFER, parts_.name());
}

} // namespace gangway::render
