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

/// Room kept behind what is used, so that new objects seldom make a buffer move.
std::size_t withSlack(std::size_t count) {
    return count + count / 8 + 4096;
}

GLsizeiptr bytes(std::size_t count, std::size_t size) {
    return static_cast<GLsizeiptr>(count * size);
}

/// How much nearer than it is a part is taken to be where two lie in one plane, per kind.
float depthRank(scene::PartKind kind) {
    switch (kind) {
    case scene::PartKind::Plate:
    case scene::PartKind::Plug:
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

void GrowingBuffer::write(std::size_t first, std::size_t count, const void* data) {
    if (count == 0) return;
    glBindBuffer(GL_COPY_WRITE_BUFFER, buffer_.name());
    glBufferSubData(GL_COPY_WRITE_BUFFER, bytes(first, element_), bytes(count, element_), data);
    sent_ += count * element_;
}

bool GrowingBuffer::reserve(std::size_t count) {
    if (buffer_ && count <= capacity_) return false;
    const std::size_t before = capacity_;
    Buffer larger = Buffer::make();
    capacity_ = withSlack(count);
    glBindBuffer(GL_COPY_WRITE_BUFFER, larger.name());
    glBufferData(GL_COPY_WRITE_BUFFER, bytes(capacity_, element_), nullptr, GL_DYNAMIC_DRAW);
    if (buffer_) {
        glBindBuffer(GL_COPY_READ_BUFFER, buffer_.name());
        glCopyBufferSubData(GL_COPY_READ_BUFFER, GL_COPY_WRITE_BUFFER, 0, 0, bytes(before, element_));
    }
    buffer_ = std::move(larger);
    return true;
}

namespace {

std::vector<GpuVertex> packedVertices(const scene::LiveScene& live, std::size_t part) {
    const auto range = live.verticesOf(part);
    std::vector<GpuVertex> result;
    result.reserve(range.count);
    for (std::uint32_t i = range.first; i < range.end(); ++i) {
        const scene::Vertex& vertex = live.scene().vertices[i];
        result.push_back({vertex.position, packNormal(vertex.normal), static_cast<std::uint32_t>(part)});
    }
    return result;
}

using PartRow = std::array<glm::vec4, 6>;

PartRow partRow(const scene::Part& part, const PartInfo& info, const PartIndex& index, float lit) {
    if (part.index_count == 0) return {};
    const auto& material = part.material;
    const auto& room = index.room_infos[static_cast<std::size_t>(info.room)];
    const glm::vec3 colour = info.kind == scene::PartKind::WallCut ? kCutInk : material.colour;
    return {glm::vec4(colour, material.opacity),
            glm::vec4(material.pattern_size_m, material.roughness, material.metalness),
            glm::vec4(lit * material.emission, static_cast<float>(info.object),
                      static_cast<float>(info.room + 1), depthRank(info.kind)),
            glm::vec4(room.floor_y, material.joint_m, 0, 0),
            glm::vec4(material.pattern_origin, 0),
            glm::vec4(material.pattern_along, 0)};
}

} // namespace

SceneBuffers::SceneBuffers()
    : vertices_(sizeof(GpuVertex)), indices_(sizeof(std::uint32_t)), rows_(sizeof(PartRow)) {}

void SceneBuffers::makeRoom(const scene::Scene& scene) {
    const bool vertices = vertices_.reserve(scene.vertices.size());
    const bool indices = indices_.reserve(scene.indices.size());
    if (vertices || indices || !array_) bindAttributes();
    if (!rows_.reserve(scene.parts.size()) && parts_) return;
    if (!parts_) parts_ = Texture::make();
    glBindTexture(GL_TEXTURE_BUFFER, parts_.name());
    glTexBuffer(GL_TEXTURE_BUFFER, GL_RGBA32F, rows_.name());
}

void SceneBuffers::bindAttributes() {
    if (!array_) array_ = VertexArray::make();
    glBindVertexArray(array_.name());
    glBindBuffer(GL_ARRAY_BUFFER, vertices_.name());
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_.name());
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
}

void SceneBuffers::send(const scene::LiveScene& live, const PartIndex& index, const std::vector<float>& lit) {
    const scene::Scene& scene = live.scene();
    makeRoom(scene);
    std::vector<GpuVertex> vertices(scene.vertices.size());
    for (std::size_t p = 0; p < scene.parts.size(); ++p)
        std::ranges::copy(packedVertices(live, p), vertices.begin() + live.verticesOf(p).first);
    vertices_.write(0, vertices.size(), vertices.data());
    indices_.write(0, scene.indices.size(), scene.indices.data());
    std::vector<PartRow> table;
    table.reserve(scene.parts.size());
    for (std::size_t i = 0; i < scene.parts.size(); ++i)
        table.push_back(partRow(scene.parts[i], index.parts[i], index, lit[i]));
    rows_.write(0, table.size(), table.data());
}

void SceneBuffers::update(const scene::LiveScene& live, const PartIndex& index, const std::vector<float>& lit,
                          const std::vector<std::uint32_t>& places) {
    const scene::Scene& scene = live.scene();
    makeRoom(scene);
    for (const std::uint32_t place : places) {
        const scene::Part& part = scene.parts[place];
        const std::vector<GpuVertex> vertices = packedVertices(live, place);
        vertices_.write(live.verticesOf(place).first, vertices.size(), vertices.data());
        indices_.write(part.first_index, part.index_count, scene.indices.data() + part.first_index);
        const PartRow row = partRow(part, index.parts[place], index, lit[place]);
        rows_.write(place, 1, row.data());
    }
}

void SceneBuffers::setLit(const scene::Scene& scene, const PartIndex& index, const std::vector<float>& before,
                          const std::vector<float>& now) {
    for (std::size_t i = 0; i < scene.parts.size(); ++i) {
        if (before[i] == now[i]) continue;
        const PartRow row = partRow(scene.parts[i], index.parts[i], index, now[i]);
        rows_.write(i, 1, row.data());
    }
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
