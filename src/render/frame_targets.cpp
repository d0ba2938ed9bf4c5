#include "render/frame_targets.hpp"

#include <vector>

namespace gangway::render {

namespace {

struct Layout {
    GLenum format;
    GLenum type;
    bool filtered;
};

Layout layoutOf(GLenum internal_format) {
    switch (internal_format) {
    case GL_RG32UI:
        return {GL_RG_INTEGER, GL_UNSIGNED_INT, false};
    case GL_R16UI:
        return {GL_RED_INTEGER, GL_UNSIGNED_SHORT, false};
    case GL_DEPTH_COMPONENT32F:
        return {GL_DEPTH_COMPONENT, GL_FLOAT, false};
    case GL_R8:
        return {GL_RED, GL_UNSIGNED_BYTE, true};
    case GL_RG16F:
        return {GL_RG, GL_HALF_FLOAT, true};
    case GL_RGBA16F:
        return {GL_RGBA, GL_HALF_FLOAT, true};
    default:
        return {GL_RGBA, GL_UNSIGNED_BYTE, true};
    }
}

} // namespace

Texture makeTexture(GLenum format, int width, int height) {
    Texture texture = Texture::make();
    const Layout layout = layoutOf(format);
    glBindTexture(GL_TEXTURE_2D, texture.name());
    glTexImage2D(GL_TEXTURE_2D, 0, static_cast<GLint>(format), width, height, 0, layout.format, layout.type,
                 nullptr);
    const GLint filter = layout.filtered ? GL_LINEAR : GL_NEAREST;
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, filter);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, filter);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAX_LEVEL, 0);
    return texture;
}

Framebuffer makeFramebuffer(std::initializer_list<GLuint> colours, GLuint depth) {
    Framebuffer frame = Framebuffer::make();
    glBindFramebuffer(GL_FRAMEBUFFER, frame.name());
    std::vector<GLenum> buffers;
    for (const GLuint colour : colours) {
        const auto attachment = static_cast<GLenum>(GL_COLOR_ATTACHMENT0 + buffers.size());
        glFramebufferTexture2D(GL_FRAMEBUFFER, attachment, GL_TEXTURE_2D, colour, 0);
        buffers.push_back(attachment);
    }
    if (depth != 0) glFramebufferTexture2D(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_TEXTURE_2D, depth, 0);
    if (buffers.empty()) {
        glDrawBuffer(GL_NONE);
        glReadBuffer(GL_NONE);
    } else {
        glDrawBuffers(static_cast<GLsizei>(buffers.size()), buffers.data());
    }
    return frame;
}

LightTargets::LightTargets(int picture_width, int picture_height, int pixels)
    : scale(pixels), width((picture_width + pixels - 1) / pixels),
      height((picture_height + pixels - 1) / pixels), occlusion(makeTexture(GL_RG16F, width, height)),
      calm(makeTexture(GL_RG16F, width, height)), light(makeTexture(GL_RGBA16F, width, height)),
      occlusion_frame(makeFramebuffer({occlusion.name()})), calm_frame(makeFramebuffer({calm.name()})),
      light_frame(makeFramebuffer({light.name()})) {}

FrameTargets::FrameTargets(int width_px, int height_px)
    : width(width_px), height(height_px), colour(makeTexture(GL_RGBA8, width, height)),
      surface(makeTexture(GL_RG32UI, width, height)),
      depth(makeTexture(GL_DEPTH_COMPONENT32F, width, height)), picture(makeTexture(GL_RGBA8, width, height)),
      mask(makeTexture(GL_R8, width, height)), sum(makeTexture(GL_RGBA16F, width, height)),
      output(makeTexture(GL_RGBA8, width, height)),
      surface_frame(makeFramebuffer({colour.name(), surface.name()}, depth.name())),
      picture_frame(makeFramebuffer({picture.name()})),
      through_frame(makeFramebuffer({picture.name()}, depth.name())),
      mask_frame(makeFramebuffer({mask.name()})), sum_frame(makeFramebuffer({sum.name()})),
      output_frame(makeFramebuffer({output.name()})),
      rooms(makeTexture(GL_R16UI, (width + kRoomStep - 1) / kRoomStep, (height + kRoomStep - 1) / kRoomStep)),
      rooms_frame(makeFramebuffer({rooms.name()})), coarse(width, height, 3), fine(width, height, 2) {}

} // namespace gangway::render
