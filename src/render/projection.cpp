// Between pixels and the scene: where a point is seen, and which ray a pixel is.
#include "render/renderer.hpp"

#include <algorithm>

namespace gangway::render {

namespace {

glm::mat4 viewProjection(const View& view) {
    const float aspect = static_cast<float>(view.width) / static_cast<float>(std::max(view.height, 1));
    return scene::projectionMatrix(view.camera, aspect) * scene::viewMatrix(view.camera);
}

} // namespace

std::optional<glm::vec2> project(const View& view, glm::vec3 point_m) {
    const glm::vec4 clip = viewProjection(view) * glm::vec4(point_m, 1);
    if (clip.w <= 1e-4f) return std::nullopt;
    const glm::vec2 ndc = glm::vec2(clip) / clip.w;
    return glm::vec2((ndc.x * 0.5f + 0.5f) * static_cast<float>(view.width),
                     (0.5f - ndc.y * 0.5f) * static_cast<float>(view.height));
}

Ray pixelRay(const View& view, int x, int y) {
    const float aspect = static_cast<float>(view.width) / static_cast<float>(std::max(view.height, 1));
    const glm::mat4 lens = scene::projectionMatrix(view.camera, aspect);
    const glm::mat4 to_world = glm::inverse(scene::viewMatrix(view.camera));
    const glm::vec2 ndc(2 * (static_cast<float>(x) + 0.5f) / static_cast<float>(view.width) - 1,
                        1 - 2 * (static_cast<float>(y) + 0.5f) / static_cast<float>(view.height));
    if (view.camera.orthographic) {
        const glm::vec3 place((ndc.x - lens[3][0]) / lens[0][0], (ndc.y - lens[3][1]) / lens[1][1], 0);
        return {glm::vec3(to_world * glm::vec4(place, 1)), -glm::normalize(glm::vec3(to_world[2]))};
    }
    const glm::vec3 place((ndc.x + lens[2][0]) / lens[0][0], (ndc.y + lens[2][1]) / lens[1][1], -1);
    return {glm::vec3(to_world[3]), glm::normalize(glm::mat3(to_world) * place)};
}

} // namespace gangway::render
