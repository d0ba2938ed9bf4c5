// What is under a pixel.
#include "render/offscreen.hpp"

using namespace gangway;
using test::BoxScene;
using test::Offscreen;

namespace {

render::Pick pickAt(const render::Renderer& renderer, const render::View& view, glm::vec3 point_m) {
    const auto at = render::project(view, point_m);
    REQUIRE(at);
    return renderer.pick(view, static_cast<int>(std::floor(at->x)), static_cast<int>(std::floor(at->y)));
}

const glm::vec3 kCovered{1.0f, 1.1f, -2.99f};
const glm::vec3 kOpen{2.476f, 1.0405f, -2.99f};

} // namespace

TEST_CASE("the object under a pixel is found, with its place in metres", "[gl]") {
    auto off = Offscreen::make();
    const auto view = BoxScene::view(640, 400);
    const auto pick = pickAt(off.renderer, view, kOpen);
    CHECK(pick.object == "open");
    CHECK(pick.kind == scene::PartKind::Plate);
    CHECK(pick.room == "room");
    CHECK(pick.wall == "A");
    CHECK(glm::length(pick.point - kOpen) < 0.01f); // half a pixel at 2.8 m
}

TEST_CASE("a wardrobe before a plate is picked until it is hidden or seen through", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(640, 400);
    CHECK(pickAt(off.renderer, view, kCovered).object == "wardrobe");
    SECTION("hidden layer") {
        view.hidden_layers = {"furniture"};
    }
    SECTION("ghosted layer") {
        view.ghosted_layers = {"furniture"};
    }
    SECTION("ghosted object") {
        view.ghosted_objects = {"wardrobe"};
    }
    CHECK(pickAt(off.renderer, view, kCovered).object == "covered");
}

TEST_CASE("a ghosted plate is picked before the wall behind it", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(640, 400);
    view.ghosted_layers = {"plates"};
    CHECK(pickAt(off.renderer, view, kOpen).object == "open");
}

TEST_CASE("something seen through is picked when nothing else is there", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(640, 400);
    view.ghosted_layers = {"furniture"};
    view.hidden_layers = {"building", "plates"};
    CHECK(pickAt(off.renderer, view, kCovered).object == "wardrobe");
}

TEST_CASE("beside everything there is nothing to pick", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(640, 400);
    view.hidden_rooms = {"room"};
    CHECK(off.renderer.pick(view, 320, 200).object.empty());
}

TEST_CASE("a place projected and picked again is the same place", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(800, 500);
    SECTION("perspective") {}
    SECTION("turned") {
        view.camera.yaw = 0.3f;
        view.camera.pitch = -0.2f;
    }
    SECTION("parallel") {
        view.camera.orthographic = true;
        view.camera.ortho_height = 3;
        view.camera.pitch = 0;
    }
    for (const glm::vec3 point :
         {glm::vec3(2.2f, 1.9f, -3), glm::vec3(1.9f, 1.2f, -3), glm::vec3(3.0f, 1.5f, -3)}) {
        const auto pick = pickAt(off.renderer, view, point);
        CHECK(pick.object == "room");
        CHECK(glm::length(pick.point - point) < 0.01f);
    }
}

TEST_CASE("what is drawn at a pixel is what is picked there", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(320, 200);
    view.hidden_layers = {"furniture"};
    const auto picture = off.renderer.read(view);
    for (int y = 0; y < view.height; y += 7)
        for (int x = 0; x < view.width; x += 7) {
            const auto i = static_cast<std::size_t>(4 * (y * picture.width + x));
            const bool red = picture.rgba[i] > 2.2 * picture.rgba[i + 1] && picture.rgba[i] > 120;
            if (red) CHECK(off.renderer.pick(view, x, y).object == "covered");
        }
}

TEST_CASE("a plate is visible unless something solid stands before it", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view();
    CHECK(off.renderer.visible(view, "open", kOpen));
    CHECK_FALSE(off.renderer.visible(view, "covered", kCovered));
    view.ghosted_objects = {"wardrobe"};
    CHECK(off.renderer.visible(view, "covered", kCovered));
}

TEST_CASE("a point behind the eye has no place in the picture") {
    const auto view = BoxScene::view();
    CHECK_FALSE(render::project(view, {2, 1.5f, 5}));
    const auto ahead = render::project(view, view.camera.eye + glm::vec3(0, -std::tan(0.08f), -1));
    REQUIRE(ahead);
    CHECK(ahead->x == Approx(view.width / 2.0).margin(0.01));
    CHECK(ahead->y == Approx(view.height / 2.0).margin(0.05));
}
