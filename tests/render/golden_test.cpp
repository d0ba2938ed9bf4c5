// Whole pictures against golden ones. Renew with GANGWAY_UPDATE_GOLDEN=1, look at them, say why.
#include "render/offscreen.hpp"

using namespace gangway;
using test::BoxScene;
using test::Offscreen;

namespace {

// llvmpipe of Mesa 22.3 repeats itself exactly; other versions and drivers round edges of triangles and
// shadow lookups differently, which shows as single pixels far off (an edge) while the mean hardly moves.
constexpr int kWorst = 90;
constexpr double kMean = 1.2;

void check(Offscreen& off, const render::View& view, const std::string& name) {
    const auto golden = std::filesystem::path(GANGWAY_TESTS_DIR) / "golden" / "render" / (name + ".png");
    const auto picture = test::imageOf(off.renderer.read(view));
    CHECK(test::compareWithGolden(picture, golden, kWorst, kMean,
                                  std::filesystem::path(GANGWAY_OUT_DIR) / "render") == "");
}

} // namespace

TEST_CASE("the test room looks as it did", "[gl]") {
    auto off = Offscreen::make();
    auto view = BoxScene::view(480, 300);
    SECTION("by day") {
        check(off, view, "room-day");
    }
    SECTION("wardrobe seen through, plate selected") {
        view.ghosted_objects = {"wardrobe"};
        view.selected = "covered";
        check(off, view, "room-ghost");
    }
    SECTION("lamps off") {
        view.all_lights_on = false;
        check(off, view, "room-lamps-off");
    }
    SECTION("in motion") {
        view.quality = render::Quality::Moving;
        check(off, view, "room-moving");
    }
    SECTION("lid off") {
        view.camera.eye = {2, 5.6f, 2.6f};
        view.camera.pitch = -0.95f;
        view.camera.vertical_fov = 0.8f;
        view.lid_off = true;
        check(off, view, "room-lid-off");
    }
}

TEST_CASE("a golden picture of another size or content is told apart") {
    const test::Image white{2, 1, {255, 255, 255, 255, 255, 255, 255, 255}};
    test::Image other = white;
    other.rgba[5] = 55;
    const auto difference = test::compareImages(white, other);
    REQUIRE(difference);
    CHECK(difference->worst == 200);
    CHECK(difference->mean == Approx(200.0 / 6));
    CHECK(difference->worst_x == 1);
    CHECK_FALSE(test::compareImages(white, {1, 1, {0, 0, 0, 255}}));
}
