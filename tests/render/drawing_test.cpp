// What the pictures show: colours, hiding, ghosts, lamps, outlines, the lid-off cut.
#include "render/offscreen.hpp"

#include <glm/gtc/constants.hpp>

using namespace gangway;
using test::BoxScene;
using test::colourAt;
using test::Offscreen;

namespace {

const glm::vec3 kCovered{1.0f, 1.1f, -2.99f};  ///< middle of the red plate behind the wardrobe
const glm::vec3 kWardrobe{1.0f, 1.1f, -2.35f}; ///< on the wardrobe's front, before that plate
const glm::vec3 kBareWall{3.6f, 1.9f, -3.0f};

bool reddish(glm::vec3 c) {
    return c.r > 1.5f * c.g && c.r > 1.5f * c.b && c.r > 90;
}
bool greenish(glm::vec3 c) {
    return c.g > c.r + 4 && c.g > c.b + 10;
}
float brightness(glm::vec3 c) {
    return (c.r + c.g + c.b) / 3;
}

} // namespace

TEST_CASE("the background is drawn as the very colour asked for", "[gl]") {
    auto off = Offscreen::make(scene::Scene{});
    auto view = BoxScene::view(64, 40);
    view.background = {0.2f, 0.4f, 0.6f};
    for (const auto quality : {render::Quality::Moving, render::Quality::Still}) {
        view.quality = quality;
        const auto picture = off.renderer.read(view);
        REQUIRE(picture.width == 64);
        REQUIRE(picture.height == 40);
        REQUIRE(picture.rgba.size() == 64u * 40u * 4u);
        for (std::size_t i = 0; i < picture.rgba.size(); i += 4) {
            // 0.2, 0.4 and 0.6 of 255; half floats hold the sum of 12 samples to a part in 2048.
            REQUIRE(std::abs(picture.rgba[i] - 51) <= 1);
            REQUIRE(std::abs(picture.rgba[i + 1] - 102) <= 1);
            REQUIRE(std::abs(picture.rgba[i + 2] - 153) <= 1);
        }
    }
}

TEST_CASE("things keep the hue of their material", "[gl]") {
    auto off = Offscreen::make();
    const auto view = BoxScene::view();
    const auto picture = off.renderer.read(view);
    CHECK(greenish(colourAt(picture, view, kWardrobe)));
    const auto wall = colourAt(picture, view, kBareWall);
    CHECK(wall.r > wall.b); // warm paint in warm light
    CHECK(brightness(wall) > 110);
    CHECK(brightness(wall) < 250);
}

TEST_CASE("a hidden layer shows what is behind it", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view();
    CHECK_FALSE(reddish(colourAt(off.renderer.read(view), view, kWardrobe)));
    view.hidden_layers = {"furniture"};
    CHECK(reddish(colourAt(off.renderer.read(view), view, kCovered)));
    view.hidden_rooms = {"room"};
    const auto empty = colourAt(off.renderer.read(view), view, kCovered);
    CHECK(empty.r == Approx(255 * view.background.r).margin(1.5));
}

TEST_CASE("a ghosted layer and a ghosted object show what is behind them at its true place", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view();
    SECTION("layer") {
        view.ghosted_layers = {"furniture"};
    }
    SECTION("object") {
        view.ghosted_objects = {"wardrobe"};
    }
    const auto ghosted = off.renderer.read(view);
    CHECK(reddish(colourAt(ghosted, view, kCovered)));
    view.ghosted_layers.clear();
    view.ghosted_objects.clear();
    view.hidden_layers = {"furniture"};
    const auto hidden = off.renderer.read(view);
    // The ghost is still there: the wall behind it looks different from a wall with nothing before it.
    const glm::vec3 wall_behind{0.6f, 1.6f, -3.0f};
    const auto apart = colourAt(ghosted, view, wall_behind) - colourAt(hidden, view, wall_behind);
    CHECK(glm::length(apart) > 4);
}

TEST_CASE("a selected object is outlined in clay, also through what stands before it", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(640, 400);
    view.selected = "covered";
    const auto picture = off.renderer.read(view);
    const auto corner = render::project(view, {0.7f, 1.3f, -2.99f});
    REQUIRE(corner);
    const glm::vec3 clay{0xB0, 0x50, 0x29};
    float nearest = 1e9f;
    for (int dy = -4; dy <= 1; ++dy)
        for (int dx = 5; dx <= 20; ++dx) {
            const auto x = static_cast<int>(corner->x) + dx;
            const auto y = static_cast<int>(corner->y) + dy;
            const auto i = static_cast<std::size_t>(4 * (y * picture.width + x));
            nearest = std::min(
                nearest,
                glm::length(glm::vec3(picture.rgba[i], picture.rgba[i + 1], picture.rgba[i + 2]) - clay));
        }
    CHECK(nearest < 12);
}

TEST_CASE("the outline leaves nothing behind of where the object stood in the picture before", "[gl]") {
    const auto clayPixels = [](const render::Picture& picture) {
        int count = 0;
        for (std::size_t i = 0; i < picture.rgba.size(); i += 4) {
            const glm::vec3 colour(picture.rgba[i], picture.rgba[i + 1], picture.rgba[i + 2]);
            if (glm::length(colour - glm::vec3{0xB0, 0x50, 0x29}) < 30) ++count;
        }
        return count;
    };
    auto off = Offscreen::make();
    auto view = BoxScene::view(640, 400);
    view.quality = render::Quality::Moving;
    view.selected = "covered";
    const int alone = clayPixels(off.renderer.read(view));
    REQUIRE(alone > 0);
    for (const float turned : {0.02f, 0.04f, 0.06f, 0.08f, -0.02f, -0.04f, -0.06f, -0.08f}) {
        auto before = view;
        before.camera.yaw += turned;
        static_cast<void>(off.renderer.read(before));
        CHECK(clayPixels(off.renderer.read(view)) == alone);
    }
}

TEST_CASE("a hovered object is lighter", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view();
    const auto before = brightness(colourAt(off.renderer.read(view), view, kWardrobe));
    view.hovered = "wardrobe";
    CHECK(brightness(colourAt(off.renderer.read(view), view, kWardrobe)) > before + 10);
}

TEST_CASE("a lamp lights what faces it and not what it cannot see", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view();
    view.camera.eye = {3.6f, 2.1f, -0.3f};
    view.camera.yaw = -0.35f;
    view.camera.pitch = -0.7f;
    const glm::vec3 table_top{3.2f, 0.74f, -1.2f};
    // Straight lines from the lamp (2.9, 1.66, -1.5): to a floor point 0.35 m west of the table top's edge as
    // the lamp throws it (x = 2.9 - 0.6 * 1.66 / 0.92 = 1.82), and to one inside that shadow.
    const glm::vec3 lit_floor{1.45f, 0, -1.5f};
    const glm::vec3 shaded_floor{2.1f, 0, -1.25f};
    const auto on = off.renderer.read(view);
    view.light_levels = {{"pendant", 0.0f}};
    const auto dark = off.renderer.read(view);
    const auto gain = [&](glm::vec3 at) {
        return brightness(colourAt(on, view, at)) - brightness(colourAt(dark, view, at));
    };
    CHECK(gain(table_top) > 3);
    CHECK(gain(lit_floor) > 0.9f);
    CHECK(std::abs(gain(shaded_floor)) < 0.4f);
    view.light_levels.clear();
    view.all_lights_on = false;
    const auto all_off = off.renderer.read(view);
    CHECK(all_off.rgba == dark.rgba);
}

TEST_CASE("the lid-off view looks in from above and cuts the wall nearest the eye", "[gl]") {
    auto off = Offscreen::make();
    render::View view = BoxScene::view();
    view.camera.eye = {2, 6, 4};
    view.camera.pitch = -0.85f;
    view.camera.vertical_fov = 0.9f;
    const glm::vec3 floor{3.6f, 0, -0.3f}; // close behind the south wall
    const auto closed = colourAt(off.renderer.read(view), view, floor);
    view.lid_off = true;
    const auto open = colourAt(off.renderer.read(view), view, floor);
    CHECK(glm::length(open - closed) > 20);
    CHECK(open.r > open.b + 15); // floor boards
}

TEST_CASE("only the chosen storey is drawn", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(64, 40);
    view.storey = "upper";
    const auto picture = off.renderer.read(view);
    CHECK(picture.rgba[0] == Approx(255 * view.background.r).margin(1.5));
}

TEST_CASE("a parallel view shows a plate at the place the projection says", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(400, 250);
    view.camera.orthographic = true;
    view.camera.ortho_height = 2.6f;
    view.camera.pitch = 0;
    view.camera.eye = {2, 1.25f, -1.0f};
    view.hidden_layers = {"furniture"};
    // 2.6 m over 250 px: the plate's centre lies 1 m left and 0.15 m below the middle.
    const auto at = render::project(view, kCovered);
    REQUIRE(at);
    CHECK(at->x == Approx(200 - 1.0 * 250 / 2.6).margin(0.01));
    CHECK(at->y == Approx(125 + 0.15 * 250 / 2.6).margin(0.01));
    CHECK(reddish(colourAt(off.renderer.read(view), view, kCovered)));
}
