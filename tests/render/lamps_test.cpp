// Lamps at levels, the evening, and lines over the picture.
#include "render/offscreen.hpp"

#include <algorithm>

using namespace gangway;
using test::BoxScene;
using test::colourAt;
using test::Offscreen;

namespace {
/// Looking down at the floor beside the table, which the pendant lights.
render::View downView() {
    auto view = BoxScene::view();
    view.camera.eye = {3.6f, 2.1f, -0.3f};
    view.camera.yaw = -0.35f;
    view.camera.pitch = -0.7f;
    return view;
}
const glm::vec3 kTableTop{3.2f, 0.74f, -1.2f};

/// Light on a grey surface as the picture shows it, back to linear: the curve of IEC 61966-2-1. The picture's
/// tone curve is linear below its knee (shaders/tone.glsl), so this is exact for dim light.
double linear(double shown_255) {
    const double c = shown_255 / 255;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

/// Pixels that look like a colour (sRGB values).
int pixelsLike(const render::Picture& picture, glm::vec3 colour, int slack = 6) {
    int count = 0;
    for (std::size_t i = 0; i < picture.rgba.size(); i += 4) {
        const auto near = [&](std::size_t channel, float wanted) {
            return std::abs(static_cast<float>(picture.rgba[i + channel]) - 255 * wanted) <=
                   static_cast<float>(slack);
        };
        count += near(0, colour.r) && near(1, colour.g) && near(2, colour.b) ? 1 : 0;
    }
    return count;
}
} // namespace

TEST_CASE("a lamp at half its level gives half the light", "[gl]") {
    auto off = Offscreen::make();
    auto view = downView();
    view.daylight = 0;
    const auto lightAt = [&](float level) {
        view.light_levels = {{"pendant", level}};
        const glm::vec3 shown = colourAt(off.renderer.read(view), view, kTableTop, 2);
        return glm::dvec3(linear(shown.r), linear(shown.g), linear(shown.b));
    };
    const glm::dvec3 none = lightAt(0);
    const glm::dvec3 quarter = lightAt(0.25f);
    const glm::dvec3 half = lightAt(0.5f);
    const glm::dvec3 all = lightAt(1);
    // Red is the strongest channel of the warm lamp on the brown table. A step of 1 in 255 at the level of
    // these pixels is about 4 % of their light.
    REQUIRE(all.r < 0.62);
    REQUIRE(all.r - none.r > 0.02);
    CHECK((half.r - none.r) / (all.r - none.r) == Approx(0.5).margin(0.04));
    CHECK((quarter.r - none.r) / (all.r - none.r) == Approx(0.25).margin(0.04));
}

TEST_CASE("what is not listed shines, and levels beyond 0 to 1 are held to it", "[gl]") {
    auto off = Offscreen::make();
    auto view = downView();
    const auto all = off.renderer.read(view);
    view.light_levels = {{"pendant", 3.0f}};
    CHECK(off.renderer.read(view).rgba == all.rgba);
    view.light_levels = {{"another", 0.0f}};
    CHECK(off.renderer.read(view).rgba == all.rgba);
}

TEST_CASE("switching a lamp draws no shadow map again and sends no geometry", "[gl]") {
    auto off = Offscreen::make();
    auto view = downView();
    off.renderer.drawToTexture(view);
    const auto before = off.renderer.statistics();
    for (const float level : {0.0f, 0.3f, 1.0f, 0.0f}) {
        view.light_levels = {{"pendant", level}};
        off.renderer.drawToTexture(view);
    }
    render::setEvening(view);
    off.renderer.drawToTexture(view);
    const auto after = off.renderer.statistics();
    CHECK(after.draws == before.draws + 5);
    CHECK(after.shadow_maps == before.shadow_maps);
    CHECK(after.uploads == before.uploads);
    CHECK(after.patches == before.patches);
    // The lamp's glow is one value a part: far less than the room.
    CHECK(after.bytes - before.bytes < before.bytes);
}

TEST_CASE("in the evening an unlit room is dark and can still be made out; its lamp lights it", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view();
    const glm::vec3 wall{3.6f, 1.9f, -3.0f};
    const glm::vec3 wardrobe{1.0f, 1.1f, -2.35f};
    const auto shownAt = [&](glm::vec3 at) {
        const glm::vec3 c = colourAt(off.renderer.read(view), view, at);
        return (c.r + c.g + c.b) / 3;
    };
    const float day = shownAt(wall);
    render::setEvening(view);
    const float lit = shownAt(wall);
    view.light_levels = {{"pendant", 0.0f}};
    const float dark = shownAt(wall);
    CHECK(dark < day / 2);
    CHECK(dark > shownAt(wardrobe) + 12); // wall and wardrobe part
    CHECK(lit > dark + 40);
    CHECK(lit < 250);
}

TEST_CASE("a line of a route is drawn in its colour where it runs", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view();
    // A colour that nothing in the room has.
    const glm::vec3 colour{0.1f, 0.2f, 0.9f};
    REQUIRE(pixelsLike(off.renderer.read(view), colour) == 0);
    render::Line line;
    line.colour = colour;
    line.points_m = {{2.0f, 1.8f, -2.98f}, {3.6f, 1.8f, -2.98f}};
    view.lines = {line};
    const auto drawn = off.renderer.read(view);
    const auto from = render::project(view, line.points_m.front());
    const auto to = render::project(view, line.points_m.back());
    REQUIRE((from && to));
    const int length_px = static_cast<int>(to->x - from->x);
    CHECK(pixelsLike(drawn, colour) > length_px);
    CHECK(pixelsLike(drawn, colour) < 5 * length_px); // 3 pixels wide, and its round ends
    const glm::vec3 middle = colourAt(drawn, view, {2.8f, 1.8f, -2.98f}, 0);
    CHECK(middle.b == Approx(255 * 0.9f).margin(6));

    SECTION("dashes leave a third of it free") {
        view.lines[0].dash_m = 0.2f; // and gaps of 0.1, which the dashes' round ends make a little shorter
        const auto dashed = off.renderer.read(view);
        const double part = static_cast<double>(pixelsLike(dashed, colour)) / pixelsLike(drawn, colour);
        CHECK(part > 0.6);
        CHECK(part < 0.9);
    }
    SECTION("behind a wardrobe it is fainter") {
        view.lines[0].points_m = {{0.5f, 1.1f, -2.98f}, {1.5f, 1.1f, -2.98f}};
        const auto hidden = off.renderer.read(view);
        const glm::vec3 at = colourAt(hidden, view, {1.0f, 1.1f, -2.98f}, 0);
        view.lines.clear();
        const glm::vec3 bare = colourAt(off.renderer.read(view), view, {1.0f, 1.1f, -2.98f}, 0);
        CHECK(at.b > bare.b + 20);
        CHECK(at.b < 255 * 0.9f - 30);
    }
    SECTION("what lies behind the eye draws nothing") {
        view.lines[0].points_m = {{2, 1, 3}, {3, 1, 3}};
        CHECK(pixelsLike(off.renderer.read(view), colour) == 0);
        // One end behind: cut at the eye, not thrown across the picture.
        view.lines[0].points_m = {{2.0f, 1.2f, 1.0f}, {2.0f, 1.2f, -2.9f}};
        const auto cut = off.renderer.read(view);
        CHECK(pixelsLike(cut, colour) > 5);
    }
}
