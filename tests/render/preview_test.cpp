// The plate bench's picture: every front of the catalogue must be told from a blank, and an unknown one too.
#include "render/offscreen.hpp"

#include "catalogue/catalogue.hpp"
#include "scene/plate_preview.hpp"

#include <string>

using namespace gangway;
using test::Offscreen;

namespace {

const catalogue::Catalogue& shipped() {
    static const auto loaded = catalogue::load(std::string(GANGWAY_ASSETS_DIR) + "/catalogue");
    if (!loaded) FAIL(loaded.error());
    return *loaded;
}

plan::Plate plateOf(const std::string& format, const std::vector<std::string>& modules,
                    const std::string& finish = "white") {
    plan::Plate plate;
    plate.id = std::string("preview");
    plate.format = format;
    plate.finish = finish;
    for (const std::string& type : modules)
        plate.modules.push_back({type, "", "", {}});
    return plate;
}

render::View viewOf(const plan::Plate& plate, int width, int height, float yaw = 0, float pitch = 0) {
    const auto composed = catalogue::compose(shipped(), plate);
    render::View view;
    view.width = width;
    view.height = height;
    view.camera = scene::plateCamera(composed.width_mm, composed.height_mm, yaw, pitch,
                                     static_cast<float>(width) / static_cast<float>(height));
    return view;
}

/// Share of the pixels of the first gang's front that differ clearly; both seen square on.
double shareUnlike(const render::Picture& a, const render::Picture& b, const plan::Plate& plate) {
    REQUIRE(a.rgba.size() == b.rgba.size());
    const catalogue::Gang gang = catalogue::compose(shipped(), plate).gangs.front();
    const auto corner = [&](double side) {
        const plan::Vec2 mm = gang.centre_mm + plan::Vec2{side * gang.width_mm, -side * gang.height_mm} * 0.5;
        const auto at = render::project(viewOf(plate, a.width, a.height),
                                        glm::vec3(mm.x, mm.y, 0) * (scene::kPreviewScale / 1000));
        REQUIRE(at);
        return glm::ivec2(*at);
    };
    const glm::ivec2 from = corner(-1);
    const glm::ivec2 to = corner(1);
    int unlike = 0;
    int all = 0;
    for (int y = from.y; y < to.y; ++y)
        for (int x = from.x; x < to.x; ++x) {
            const auto i = static_cast<std::size_t>(4 * (y * a.width + x));
            const int apart = std::abs(a.rgba[i] - b.rgba[i]) + std::abs(a.rgba[i + 1] - b.rgba[i + 1]) +
                              std::abs(a.rgba[i + 2] - b.rgba[i + 2]);
            unlike += apart > 18 ? 1 : 0;
            ++all;
        }
    REQUIRE(all > 100);
    return static_cast<double>(unlike) / all;
}

std::filesystem::path outFile(const std::string& name) {
    return std::filesystem::path(GANGWAY_OUT_DIR) / "render" / (name + ".png");
}

} // namespace

TEST_CASE("each module's front reads as something else than a blank, in every format it is made for",
          "[gl]") {
    auto off = Offscreen::make();
    for (const catalogue::PlateFormat& format : shipped().formats) {
        const plan::Plate blank = plateOf(format.id, {"blank"});
        off.renderer.setScene(scene::platePreview(shipped(), blank));
        const auto nothing = off.renderer.read(viewOf(blank, 160, 160));
        for (const catalogue::ModuleType& module : shipped().modules) {
            if (module.id == "blank" || module.gangs != 1 || !catalogue::isMadeFor(module, format)) continue;
            plan::Plate plate = plateOf(format.id, {module.id});
            if (!catalogue::compose(shipped(), plate).problems.empty()) continue; // does not fit there
            off.renderer.setScene(scene::platePreview(shipped(), plate));
            const auto picture = off.renderer.read(viewOf(plate, 160, 160));
            INFO(format.id << ", " << module.id);
            CHECK(shareUnlike(nothing, picture, plate) > 0.015);
        }
    }
}

TEST_CASE("an unknown module is no blank: a box with a question mark stands out of the plate", "[gl]") {
    auto off = Offscreen::make();
    for (const char* format : {"round-71", "module-3"}) {
        INFO(format);
        const plan::Plate blank = plateOf(format, {"blank", "blank"}, "graphite");
        const plan::Plate unknown = plateOf(format, {"no-such-module", "blank"}, "graphite");
        REQUIRE(catalogue::compose(shipped(), unknown).gangs.front().unknown);
        off.renderer.setScene(scene::platePreview(shipped(), blank));
        const auto nothing = off.renderer.read(viewOf(blank, 240, 160));
        off.renderer.setScene(scene::platePreview(shipped(), unknown));
        const auto picture = off.renderer.read(viewOf(unknown, 240, 160));
        CHECK(shareUnlike(nothing, picture, unknown) > 0.1);
        test::writePng(outFile(std::string("preview-unknown-") + format), test::imageOf(picture));
        float out_m = 0;
        for (const scene::Part& part : off.renderer.scene().parts)
            if (part.object == "preview") out_m = std::max(out_m, part.high.z);
        // Higher than the frame: box 3 and mark 4.2 mm, ours.
        const double relief = shipped().format(format)->relief_mm;
        CHECK(scene::toPlate({0, 0, out_m}).z == Approx(relief + 4.2).margin(0.2));
    }
}

TEST_CASE("the preview's plate is under the pixel where its camera and scale say it is", "[gl]") {
    auto off = Offscreen::make();
    const plan::Plate plate = plateOf("round-71", {"socket-f", "switch-1way", "blank"});
    off.renderer.setScene(scene::platePreview(shipped(), plate));
    for (const auto& [yaw, pitch] : {std::pair{0.0f, 0.0f}, {0.6f, 0.3f}, {-0.8f, -0.4f}}) {
        const auto view = viewOf(plate, 600, 400, yaw, pitch);
        // The face of the blank at the right: one pitch of 71 mm (format round-71) from the plate's centre.
        const auto at = render::project(view, {0.71f, 0, 0.105f});
        REQUIRE(at);
        const auto pick = off.renderer.pick(view, static_cast<int>(at->x), static_cast<int>(at->y));
        CHECK(pick.object == "preview");
        const plan::Vec3 mm = scene::toPlate(pick.point);
        CHECK(mm.x == Approx(71).margin(0.8));
        CHECK(mm.y == Approx(0).margin(0.8));
        CHECK(mm.z == Approx(10.5).margin(0.2)); // relief 10, and the blank half a millimetre more
        // All of the plate is in the picture, whichever way it is turned.
        for (const float x : {-1.115f, 1.115f})
            for (const float y : {-0.405f, 0.405f}) {
                const auto corner = render::project(view, {x, y, 0.1f});
                REQUIRE(corner);
                CHECK(corner->x > 0);
                CHECK(corner->x < 600);
                CHECK(corner->y > 0);
                CHECK(corner->y < 400);
            }
    }
    const auto beside = off.renderer.pick(viewOf(plate, 600, 400), 300, 4);
    CHECK(beside.object == "wall");
}
