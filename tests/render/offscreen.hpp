// One offscreen context and one renderer for a test, and look-ups in its pictures.
#pragma once

#include "render/box_scene.hpp"
#include "render/renderer.hpp"
#include "support/image_compare.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>

namespace gangway::test {

inline std::filesystem::path shaderFolder() {
    return std::filesystem::path(GANGWAY_TESTS_DIR).parent_path() / "shaders";
}

struct Offscreen {
    render::OffscreenContext context;
    render::Renderer renderer;

    static Offscreen make(scene::Scene scene = BoxScene().scene) {
        auto context = render::OffscreenContext::create();
        if (!context) FAIL(context.error());
        auto renderer = render::Renderer::create(shaderFolder());
        if (!renderer) FAIL(renderer.error());
        renderer->setScene(std::move(scene));
        return {std::move(*context), std::move(*renderer)};
    }
};

inline Image imageOf(const render::Picture& picture) {
    return {picture.width, picture.height, picture.rgba};
}

/// Mean colour, 0 to 255, of a square round the place where a point of the scene is seen.
inline glm::vec3 colourAt(const render::Picture& picture, const render::View& view, glm::vec3 point_m,
                          int half = 1) {
    const auto at = render::project(view, point_m);
    REQUIRE(at);
    glm::vec3 sum{0};
    int count = 0;
    for (int dy = -half; dy <= half; ++dy)
        for (int dx = -half; dx <= half; ++dx) {
            const int x = static_cast<int>(std::floor(at->x)) + dx;
            const int y = static_cast<int>(std::floor(at->y)) + dy;
            REQUIRE(x >= 0);
            REQUIRE(x < picture.width);
            REQUIRE(y >= 0);
            REQUIRE(y < picture.height);
            const auto i = static_cast<std::size_t>(4 * (y * picture.width + x));
            sum += glm::vec3(picture.rgba[i], picture.rgba[i + 1], picture.rgba[i + 2]);
            ++count;
        }
    return sum / static_cast<float>(count);
}

} // namespace gangway::test
