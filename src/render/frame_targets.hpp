// Textures and framebuffers of one picture size.
#pragma once

#include "render/gl_handles.hpp"

#include <initializer_list>

namespace gangway::render {

/// A texture without mipmaps, filtered linearly where its format allows, clamped to its edge.
Texture makeTexture(GLenum format, int width, int height);
/// A framebuffer of colour textures and, when not 0, a depth texture.
Framebuffer makeFramebuffer(std::initializer_list<GLuint> colours, GLuint depth = 0);

/// Occlusion and lamp light, for one in `scale` x `scale` pixels.
struct LightTargets {
    int scale = 1;
    int width = 0;
    int height = 0;
    Texture occlusion, calm, light;
    Framebuffer occlusion_frame, calm_frame, light_frame;

    LightTargets() = default;
    LightTargets(int picture_width, int picture_height, int pixels);
};

struct FrameTargets {
    int width = 0;
    int height = 0;
    Texture colour, surface, depth; ///< what is seen first: colour and finish, normal and label
    Texture picture;                ///< finished, as the screen wants it
    Texture mask;                   ///< selected or hovered object
    Texture sum;                    ///< samples added up
    Texture output;                 ///< what drawToTexture hands out
    Framebuffer surface_frame,
        picture_frame, ///< without the depth, which its passes read
        through_frame, ///< picture and depth, for what is blended over
        mask_frame, sum_frame, output_frame;
    Texture rooms; ///< which room is seen, for one pixel in kRoomStep
    Framebuffer rooms_frame;
    LightTargets coarse; ///< for Quality::Moving
    LightTargets fine;   ///< for Quality::Still
    static constexpr int kRoomStep = 8;

    FrameTargets() = default;
    FrameTargets(int width_px, int height_px);
};

} // namespace gangway::render
