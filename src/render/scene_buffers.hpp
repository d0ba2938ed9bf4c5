// The scene on the GPU: one vertex buffer, one index buffer, and a table of part properties read by
// the vertex shader. Filled once per scene.
#pragma once

#include "render/gl_handles.hpp"
#include "render/part_index.hpp"

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

class SceneBuffers {
public:
    SceneBuffers() = default;
    /// Sends geometry and part table. A vertex that two parts share is sent once for each.
    SceneBuffers(const scene::Scene& scene, const PartIndex& index);
    /// Changes what lamps that are off look like; `lit` holds one flag a part.
    void setLit(const scene::Scene& scene, const PartIndex& index, const std::vector<char>& lit);
    void draw(const DrawList& list) const;
    /// Binds the part table to a texture unit.
    void bindParts(int unit) const;

private:
    void sendParts(const scene::Scene& scene, const PartIndex& index, const std::vector<char>& lit);

    VertexArray array_;
    Buffer vertices_;
    Buffer indices_;
    Buffer part_buffer_;
    Texture parts_;
};

} // namespace gangway::render
