// Owners of GL names: move-only, deleted with the object, so that no name leaks or is freed twice.
#pragma once

#include <epoxy/gl.h>

#include <utility>

namespace gangway::render {

enum class GlKind { Texture, Buffer, Framebuffer, VertexArray, Program };

template <GlKind kind>
class GlHandle {
public:
    GlHandle() = default;
    explicit GlHandle(GLuint name) : name_(name) {}
    GlHandle(GlHandle&& other) noexcept : name_(std::exchange(other.name_, 0)) {}
    GlHandle& operator=(GlHandle&& other) noexcept {
        std::swap(name_, other.name_);
        return *this;
    }
    GlHandle(const GlHandle&) = delete;
    GlHandle& operator=(const GlHandle&) = delete;
    ~GlHandle() {
        if (name_ == 0) return;
        if constexpr (kind == GlKind::Texture) glDeleteTextures(1, &name_);
        if constexpr (kind == GlKind::Buffer) glDeleteBuffers(1, &name_);
        if constexpr (kind == GlKind::Framebuffer) glDeleteFramebuffers(1, &name_);
        if constexpr (kind == GlKind::VertexArray) glDeleteVertexArrays(1, &name_);
        if constexpr (kind == GlKind::Program) glDeleteProgram(name_);
    }
    /// A new name of this kind from the current context.
    static GlHandle make() {
        GLuint name = 0;
        if constexpr (kind == GlKind::Texture) glGenTextures(1, &name);
        if constexpr (kind == GlKind::Buffer) glGenBuffers(1, &name);
        if constexpr (kind == GlKind::Framebuffer) glGenFramebuffers(1, &name);
        if constexpr (kind == GlKind::VertexArray) glGenVertexArrays(1, &name);
        if constexpr (kind == GlKind::Program) name = glCreateProgram();
        return GlHandle(name);
    }
    GLuint name() const { return name_; }
    explicit operator bool() const { return name_ != 0; }

private:
    GLuint name_ = 0;
};

using Texture = GlHandle<GlKind::Texture>;
using Buffer = GlHandle<GlKind::Buffer>;
using Framebuffer = GlHandle<GlKind::Framebuffer>;
using VertexArray = GlHandle<GlKind::VertexArray>;
using ProgramName = GlHandle<GlKind::Program>;

} // namespace gangway::render
