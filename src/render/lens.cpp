#include "render/lens.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::render {

Lens::Lens(const View& view, glm::vec3 scene_low, glm::vec3 scene_high, glm::vec2 shift_px) {
    const float aspect = static_cast<float>(view.width) / static_cast<float>(std::max(view.height, 1));
    orthographic = view.camera.orthographic;
    world_to_view = scene::viewMatrix(view.camera);
    projection = scene::projectionMatrix(view.camera, aspect);
    // A plate stands 10 mm off its wall: near and far lie as tight as the scene allows.
    const glm::vec3 away =
        glm::max(glm::abs(scene_low - view.camera.eye), glm::abs(scene_high - view.camera.eye));
    const float far_m = std::max(glm::length(away) + 1.0f, 10.0f);
    near_m = orthographic ? 0.02f : 0.05f; // a parallel view shows what lies before the eye
    const glm::vec2 shift = 2.0f * shift_px / glm::vec2(view.width, view.height);
    if (orthographic) {
        projection[2][2] = -2 / (far_m - near_m);
        projection[3][2] = -(far_m + near_m) / (far_m - near_m);
        projection[3][0] += shift.x;
        projection[3][1] += shift.y;
    } else {
        projection[2][2] = -(far_m + near_m) / (far_m - near_m);
        projection[3][2] = -2 * far_m * near_m / (far_m - near_m);
        projection[2][0] -= shift.x;
        projection[2][1] -= shift.y;
    }
    view_projection = projection * world_to_view;
    view_to_world = glm::inverse(world_to_view);
    eye = orthographic ? glm::vec4(glm::vec3(view_to_world[2]), 0) : glm::vec4(view.camera.eye, 1);
    pixels_a_metre = 0.5f * static_cast<float>(view.height) * projection[1][1];
}

void Lens::give(ShaderProgram& program) const {
    const auto& p = projection;
    program.set("depth_terms",
                orthographic ? glm::vec4(1, -p[3][2], 0, p[2][2]) : glm::vec4(0, -p[3][2], 1, p[2][2]));
    program.set("view_scale", glm::vec2(1 / p[0][0], 1 / p[1][1]));
    program.set("view_shift", orthographic ? glm::vec2(-p[3][0], -p[3][1]) : glm::vec2(p[2][0], p[2][1]));
    program.set("parallel", orthographic ? 1.0f : 0.0f);
    program.set("view_to_world", view_to_world);
    program.set("eye", eye);
}

float Lens::pixels(float length_m, glm::vec3 at) const {
    if (orthographic) return length_m * pixels_a_metre;
    return length_m * pixels_a_metre / std::max(glm::length(at - glm::vec3(eye)), 0.05f);
}

glm::ivec4 Lens::rectangle(glm::vec3 low, glm::vec3 high, int width, int height, int margin) const {
    glm::vec2 from(1e9f);
    glm::vec2 to(-1e9f);
    for (int corner = 0; corner < 8; ++corner) {
        const glm::vec3 at(corner & 1 ? high.x : low.x, corner & 2 ? high.y : low.y,
                           corner & 4 ? high.z : low.z);
        const glm::vec4 clip = view_projection * glm::vec4(at, 1);
        if (clip.w <= 0.02f) return {0, 0, width, height}; // reaches behind the eye
        const glm::vec2 place = glm::vec2(clip) / clip.w;
        from = glm::min(from, place);
        to = glm::max(to, place);
    }
    const auto pixel = [](float ndc, int size) {
        return std::clamp((ndc * 0.5f + 0.5f) * static_cast<float>(size), -1e6f, 1e6f);
    };
    const int left = std::clamp(static_cast<int>(std::floor(pixel(from.x, width))) - margin, 0, width);
    const int right = std::clamp(static_cast<int>(std::ceil(pixel(to.x, width))) + margin, 0, width);
    const int bottom = std::clamp(static_cast<int>(std::floor(pixel(from.y, height))) - margin, 0, height);
    const int top = std::clamp(static_cast<int>(std::ceil(pixel(to.y, height))) + margin, 0, height);
    return {left, bottom, std::max(right - left, 0), std::max(top - bottom, 0)};
}

} // namespace gangway::render
