// The scene on the GPU: one vertex buffer, one index buffer, and a table of part properties read by
// the vertex shader. Everything has the place that it has in the arrays of the scene.
#pragma once

#include "render/gl_handles.hpp"
#include "render/part_index.hpp"
#include "scene/live_scene.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace gangway::render {

/// Ranges of the index buffer for one glMultiDrawElements call.
class DrawList {
public:
    void add(std::uint32_t first_index, std::uint32_t count);
    void clear();
    bool empty() const { return counts_.empty(); }
    std::span<const GLsizei> counts() const { return counts_; }
    std::span<const void* const> offsets() const { return offsets_; }

private:
    std::vector<GLsizei> counts_;
    std::vector<const void*> offsets_;
    std::uint32_t end_ = 0; ///< one past the last range, to join ranges that follow each other
};

/// A buffer of equal elements with room to spare; it moves, on the GPU, when the room is used up.
class GrowingBuffer {
public:
    explicit GrowingBuffer(std::size_t element_bytes) : element_(element_bytes) {}
    /// Makes room for `count` elements in all; true when the buffer has another name from now on.
    bool reserve(std::size_t count);
    void write(std::size_t first, std::size_t count, const void* data);
    GLuint name() const { return buffer_.name(); }
    std::uint64_t sent() const { return sent_; } ///< bytes written so far

private:
    Buffer buffer_;
    std::size_t element_;
    std::size_t capacity_ = 0; ///< elements
    std::uint64_t sent_ = 0;
};

class SceneBuffers {
public:
    SceneBuffers();
    /// Sends geometry and part table whole. `lit` holds the part of its glow that each part shows, 0 to 1.
    void send(const scene::LiveScene& live, const PartIndex& index, const std::vector<float>& lit);
    /// Sends what was written to single places of the scene.
    void update(const scene::LiveScene& live, const PartIndex& index, const std::vector<float>& lit,
                const std::vector<std::uint32_t>& places);
    /// Sends the rows of the part table whose glow is another `now` than before.
    void setLit(const scene::Scene& scene, const PartIndex& index, const std::vector<float>& before,
                const std::vector<float>& now);
    void draw(const DrawList& list) const;
    /// Binds the part table to a texture unit.
    void bindParts(int unit) const;
    /// Bytes sent to the GPU so far.
    std::uint64_t sent() const { return vertices_.sent() + indices_.sent() + rows_.sent(); }

private:
    void makeRoom(const scene::Scene& scene);
    void bindAttributes();

    VertexArray array_;
    GrowingBuffer vertices_, indices_, rows_;
    Texture parts_;
};

} // namespace gangway::render
