// Single objects of a scene drawn anew, against scenes sent whole.
#include "render/offscreen.hpp"

#include "scene/live_scene.hpp"

#include <random>

using namespace gangway;
using test::BoxScene;
using test::Offscreen;

namespace {

struct Block {
    std::string id;
    glm::vec3 low{0};
    glm::vec3 size{0};
};

void addBlock(BoxScene& box, scene::PartKind kind, const Block& block) {
    auto& part = box.begin(kind, block.id, kind == scene::PartKind::Plate ? "plates" : "furniture",
                           {0.9f, 0.88f, 0.85f});
    if (kind == scene::PartKind::Plate) {
        part.wall = std::string("A");
        part.facing = {0, 0, 1};
    }
    box.box(block.low, block.low + block.size);
    box.end();
}

/// Plates in rows on the north wall.
std::vector<Block> plates(int count) {
    std::vector<Block> blocks;
    for (int i = 0; i < count; ++i)
        blocks.push_back(
            {"p" + std::to_string(i),
             {0.05f + 0.078f * static_cast<float>(i % 50), 0.1f + 0.11f * static_cast<float>(i / 50), -3},
             {0.05f, 0.05f, 0.01f}});
    return blocks;
}

scene::Scene whole(const std::vector<Block>& plates) {
    BoxScene box;
    for (const Block& plate : plates)
        addBlock(box, scene::PartKind::Plate, plate);
    return box.scene;
}

/// The patch for one plate; nullptr: it went.
scene::ScenePatch patchOf(const std::string& id, const Block* plate) {
    BoxScene box;
    box.scene = {};
    if (plate != nullptr) addBlock(box, scene::PartKind::Plate, *plate);
    return {{{scene::ScenePatch::Kind::Plate, id}}, box.scene};
}

render::View movingView() {
    auto view = BoxScene::view(240, 150);
    view.quality = render::Quality::Moving;
    return view;
}

} // namespace

TEST_CASE("moving one plate of 1000 sends less than a hundredth, and draws no shadow map again", "[gl]") {
    auto blocks = plates(1000);
    auto off = Offscreen::make(whole(blocks));
    off.renderer.drawToTexture(movingView());
    const auto before = off.renderer.statistics();
    CHECK(before.uploads == 1);
    CHECK(before.patches == 0);
    blocks[517].low += glm::vec3(0.013f, 0.02f, 0);
    off.renderer.update(patchOf("p517", &blocks[517]));
    off.renderer.drawToTexture(movingView());
    const auto after = off.renderer.statistics();
    CHECK(after.uploads == 1);
    CHECK(after.patches == 1);
    CHECK(after.draws == before.draws + 1); // the kept texture did not pass for the new picture
    CHECK(after.bytes > before.bytes);
    CHECK((after.bytes - before.bytes) * 100 < before.bytes);
    CHECK(after.shadow_maps == before.shadow_maps);
    const auto patched = off.renderer.read(movingView());
    off.renderer.setScene(whole(blocks));
    CHECK(patched.rgba == off.renderer.read(movingView()).rgba);
}

TEST_CASE("after any run of plates moved, added and taken away the picture is that of the whole scene",
          "[gl]") {
    std::mt19937 random(7);
    const auto upTo = [&](std::size_t n) {
        return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
    };
    auto blocks = plates(60);
    auto off = Offscreen::make(whole(blocks));
    const auto view = BoxScene::view(240, 150);
    auto ghosted = view;
    ghosted.ghosted_objects = {"wardrobe"};
    for (int i = 0; i < 200; ++i) {
        const auto at = upTo(blocks.size());
        const auto what = upTo(4);
        if (what == 0 && blocks.size() > 10) {
            off.renderer.update(patchOf(blocks[at].id, nullptr));
            blocks.erase(blocks.begin() + static_cast<std::ptrdiff_t>(at));
        } else if (what == 1) {
            // Rows above those of the first plates, so that no two lie in one place.
            blocks.push_back({"new" + std::to_string(i),
                              {0.05f + 0.018f * static_cast<float>(i), 1.9f, -3},
                              {0.012f, 0.06f, 0.01f}});
            off.renderer.update(patchOf(blocks.back().id, &blocks.back()));
        } else {
            blocks[at].low.y += 0.004f;
            off.renderer.update(patchOf(blocks[at].id, &blocks[at]));
        }
    }
    const auto patched = off.renderer.read(view);
    const auto patched_ghosted = off.renderer.read(ghosted);
    CHECK(off.renderer.statistics().uploads == 1);
    off.renderer.setScene(whole(blocks));
    CHECK(patched.rgba == off.renderer.read(view).rgba);
    CHECK(patched_ghosted.rgba == off.renderer.read(ghosted).rgba);
}

TEST_CASE("a moved piece of furniture takes its shadow along", "[gl]") {
    auto off = Offscreen::make();
    const auto view = movingView();
    off.renderer.drawToTexture(view);
    const auto maps = off.renderer.statistics().shadow_maps;
    BoxScene moved;
    moved.scene = {};
    addBlock(moved, scene::PartKind::Furniture, {"wardrobe", {0.4f, 0, -1.6f}, {1.0f, 2.0f, 0.6f}});
    off.renderer.update({{{scene::ScenePatch::Kind::Furniture, "wardrobe"}}, moved.scene});
    const auto patched = off.renderer.read(view);
    CHECK(off.renderer.statistics().shadow_maps > maps);
    scene::Scene again = off.renderer.scene(); // the same parts, sent whole
    off.renderer.setScene(std::move(again));
    CHECK(patched.rgba == off.renderer.read(view).rgba);
}

TEST_CASE("plates are in no shadow map: hiding them draws none again", "[gl]") {
    auto off = Offscreen::make(whole(plates(3)));
    auto view = movingView();
    off.renderer.drawToTexture(view);
    const auto maps = off.renderer.statistics().shadow_maps;
    view.hidden_layers = {"plates"};
    off.renderer.drawToTexture(view);
    CHECK(off.renderer.statistics().shadow_maps == maps);
}

TEST_CASE("what a patch took away can't be picked, what it brought can", "[gl]") {
    auto blocks = plates(20);
    auto off = Offscreen::make(whole(blocks));
    const auto view = BoxScene::view(240, 150);
    Block high{"high", {1.9f, 1.8f, -3}, {0.2f, 0.2f, 0.01f}};
    const auto at = render::project(view, {2.0f, 1.9f, -2.99f});
    REQUIRE(at);
    const auto pick = [&] {
        return off.renderer.pick(view, static_cast<int>(at->x), static_cast<int>(at->y));
    };
    CHECK(pick().object == "room");
    CHECK(glm::length(pick().normal - glm::vec3(0, 0, 1)) < 1e-4f); // wall A looks into the room, south
    off.renderer.update(patchOf("high", &high));
    CHECK(pick().object == "high");
    CHECK(pick().wall == "A");
    off.renderer.update(patchOf("high", nullptr));
    CHECK(pick().object == "room");
}
