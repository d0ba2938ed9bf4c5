// A view's matrices, with near and far fitted to the scene and the terms the passes need to go back
// from depth to place.
#pragma once

#include "render/renderer.hpp"
#include "render/shader_program.hpp"

namespace gangway::render {

struct Lens {
    glm::mat4 world_to_view{1};
    glm::mat4 projection{1};
    glm::mat4 view_projection{1};
    glm::mat4 view_to_world{1};
    glm::vec4 eye{0}; ///< w 1: the eye; w 0: the direction towards it
    bool orthographic = false;
    float near_m = 0.05f;
    float pixels_a_metre = 1; ///< at distance 1 m; anywhere when orthographic

    /// `shift` moves the picture by parts of a pixel (x right, y up).
    Lens(const View& view, glm::vec3 scene_low, glm::vec3 scene_high, glm::vec2 shift_px = {0, 0});
    /// Sets the uniforms of frame.glsl; the program must be in use.
    void give(ShaderProgram& program) const;
    /// Size in pixels that a length at a point has at most.
    float pixels(float length_m, glm::vec3 at) const;
    /// Rectangle in pixels (x, y, width, height; y up) that holds a box, clipped to the picture.
    glm::ivec4 rectangle(glm::vec3 low, glm::vec3 high, int width, int height, int margin = 0) const;
};

} // namespace gangway::render
