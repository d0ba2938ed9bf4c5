// The renderer as an object: what it sends, keeps, refuses.
#include "render/offscreen.hpp"

#include <fstream>

using namespace gangway;
using test::BoxScene;
using test::Offscreen;

TEST_CASE("nothing is sent again while the scene stays", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(160, 100);
    view.quality = render::Quality::Moving;
    for (int i = 0; i < 12; ++i) {
        view.camera.yaw = 0.05f * static_cast<float>(i);
        view.hidden_layers.clear();
        if (i % 3 == 0) view.hidden_layers.insert("furniture");
        off.renderer.drawToTexture(view);
    }
    CHECK(off.renderer.statistics().uploads == 1);
    CHECK(off.renderer.statistics().draws == 12);
    off.renderer.setScene(BoxScene().scene);
    CHECK(off.renderer.statistics().uploads == 2);
}

TEST_CASE("shadows are drawn once while what casts them stays", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(160, 100);
    off.renderer.drawToTexture(view);
    const auto maps = off.renderer.statistics().shadow_maps;
    CHECK(maps == 2); // the sun and the pendant
    for (int i = 1; i < 5; ++i) {
        view.camera.yaw = 0.02f * static_cast<float>(i);
        off.renderer.drawToTexture(view);
    }
    CHECK(off.renderer.statistics().shadow_maps == maps);
    view.hidden_layers = {"furniture"};
    off.renderer.drawToTexture(view);
    CHECK(off.renderer.statistics().shadow_maps > maps);
}

TEST_CASE("the texture of an unchanged view is kept, and refined until enough samples are in", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(160, 100);
    const unsigned texture = off.renderer.drawToTexture(view);
    CHECK(texture != 0);
    CHECK(off.renderer.drawToTexture(view) == texture);
    CHECK(off.renderer.statistics().draws == 1);
    CHECK(off.renderer.statistics().kept == 1);
    int calls = 1;
    while (off.renderer.refine(view))
        ++calls;
    CHECK(calls == render::kStillSamples);
    CHECK_FALSE(off.renderer.refine(view));
    auto other = view;
    other.camera.yaw = 0.3f;
    CHECK_FALSE(off.renderer.refine(other));
}

TEST_CASE("two pictures of one view are the same to the last bit", "[gl]") {
    auto off = Offscreen::make();
    const auto view = BoxScene::view(160, 100);
    CHECK(off.renderer.read(view).rgba == off.renderer.read(view).rgba);
}

TEST_CASE("a picture takes any size, one pixel too", "[gl]") {
    auto off = Offscreen::make();
    for (const auto& [width, height] : {std::pair{320, 200}, {201, 77}, {1, 1}, {64, 480}}) {
        const auto picture = off.renderer.read(BoxScene::view(width, height));
        CHECK(picture.width == width);
        CHECK(picture.height == height);
        CHECK(picture.rgba.size() == static_cast<std::size_t>(width * height) * 4);
    }
}

TEST_CASE("a missing shader folder is named", "[gl]") {
    auto context = render::OffscreenContext::create();
    REQUIRE(context);
    const auto renderer = render::Renderer::create("/nowhere/shaders");
    REQUIRE_FALSE(renderer);
    CHECK(renderer.error().find("/nowhere/shaders") != std::string::npos);
}

TEST_CASE("a shader that does not compile is named with the compiler's words", "[gl]") {
    auto context = render::OffscreenContext::create();
    REQUIRE(context);
    const std::filesystem::path folder = std::filesystem::path(GANGWAY_OUT_DIR) / "broken-shaders";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder.parent_path());
    std::filesystem::copy(test::shaderFolder(), folder);
    std::ofstream(folder / "compose.frag") << "#version 410 core\nvoid main() { undeclared_thing = 1.0; }\n";
    const auto renderer = render::Renderer::create(folder);
    REQUIRE_FALSE(renderer);
    CHECK(renderer.error().find("compose.frag") != std::string::npos);
    CHECK(renderer.error().find("undeclared_thing") != std::string::npos);
}

TEST_CASE("a shader that is missing is named", "[gl]") {
    auto context = render::OffscreenContext::create();
    REQUIRE(context);
    const std::filesystem::path folder = std::filesystem::path(GANGWAY_OUT_DIR) / "missing-shader";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder.parent_path());
    std::filesystem::copy(test::shaderFolder(), folder);
    std::filesystem::remove(folder / "frame.glsl");
    const auto renderer = render::Renderer::create(folder);
    REQUIRE_FALSE(renderer);
    CHECK(renderer.error().find("frame.glsl") != std::string::npos);
}

TEST_CASE("an offscreen context says what draws", "[gl]") {
    auto context = render::OffscreenContext::create();
    REQUIRE(context);
    CHECK(context->description().find("OpenGL 4") != std::string::npos);
}
