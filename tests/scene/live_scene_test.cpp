// Patches of the scene against scenes built whole: the same parts, to the last bit, in whatever places.
#include "house.hpp"

#include "scene/live_scene.hpp"

#include <algorithm>
#include <array>
#include <random>
#include <tuple>

using namespace gangway;

namespace {

using Triangle = std::array<std::array<float, 6>, 3>;

/// A part with its triangles written out, so that it compares without its place in the arrays.
struct Drawn {
    std::string object, room, storey, layer, wall;
    scene::PartKind kind{};
    std::array<float, 10> look{};
    std::vector<Triangle> triangles;
    auto key() const { return std::tie(object, kind, room, storey, layer, wall, look, triangles); }
    bool operator<(const Drawn& other) const { return key() < other.key(); }
    bool operator==(const Drawn& other) const { return key() == other.key(); }
};

Drawn drawn(const scene::Scene& scene, const scene::Part& part) {
    Drawn result{part.object, part.room, part.storey, part.layer, part.wall, part.kind, {}, {}};
    const auto& m = part.material;
    result.look = {m.colour.r, m.colour.g, m.colour.b,  m.roughness, part.low.x,
                   part.low.y, part.low.z, part.high.x, part.high.y, part.high.z};
    for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; i += 3) {
        Triangle triangle;
        for (std::uint32_t k = 0; k < 3; ++k) {
            const scene::Vertex& v = scene.vertices.at(scene.indices.at(i + k));
            triangle[k] = {v.position.x, v.position.y, v.position.z, v.normal.x, v.normal.y, v.normal.z};
        }
        result.triangles.push_back(triangle);
    }
    return result;
}

std::vector<Drawn> allDrawn(const scene::Scene& scene) {
    std::vector<Drawn> all;
    for (const scene::Part& part : scene.parts)
        if (part.index_count > 0) all.push_back(drawn(scene, part));
    std::sort(all.begin(), all.end());
    return all;
}

auto lightKeys(const scene::Scene& scene) {
    std::vector<std::tuple<std::string, float, float, float, float>> keys;
    for (const scene::Light& l : scene.lights)
        keys.emplace_back(l.luminaire, l.position.x, l.position.y, l.position.z, l.flux_lm);
    std::sort(keys.begin(), keys.end());
    return keys;
}

void checkSame(const scene::Scene& patched, const scene::Scene& whole) {
    CHECK(allDrawn(patched) == allDrawn(whole));
    CHECK(lightKeys(patched) == lightKeys(whole));
    CHECK(patched.low == whole.low);
    CHECK(patched.high == whole.high);
}

/// No two parts may have an index or a vertex in common.
void checkApart(const scene::LiveScene& live) {
    std::vector<int> vertices(live.scene().vertices.size(), 0);
    std::vector<int> indices(live.scene().indices.size(), 0);
    for (std::size_t p = 0; p < live.scene().parts.size(); ++p) {
        const scene::Part& part = live.scene().parts[p];
        const auto run = live.verticesOf(p);
        for (std::uint32_t i = run.first; i < run.end(); ++i)
            ++vertices.at(i);
        for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; ++i) {
            ++indices.at(i);
            const bool own = live.scene().indices[i] >= run.first && live.scene().indices[i] < run.end();
            if (!own) FAIL("a triangle of part " << p << " uses another part's vertex");
        }
    }
    CHECK(std::ranges::all_of(vertices, [](int n) { return n <= 1; }));
    CHECK(std::ranges::all_of(indices, [](int n) { return n <= 1; }));
}

/// Applies what differs between two plans; returns what was written.
scene::LiveScene::Written step(scene::LiveScene& live, const plan::Plan& before, const plan::Plan& after) {
    const auto change = scene::changeBetween(before, after);
    REQUIRE(change);
    return live.apply(scene::patchFor(after, house::catalogue(), *change));
}

} // namespace

TEST_CASE("any run of plate edits, patched in, draws what a whole build draws") {
    std::mt19937 random(20260101);
    const auto upTo = [&](std::size_t n) {
        return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
    };
    const std::array<std::string, 4> types{"socket-f", "switch-1way", "dimmer-rotary", "usb"};
    plan::Plan plan = house::read();
    scene::LiveScene live(scene::build(plan, house::catalogue()));
    int added = 0;
    for (int i = 0; i < 120; ++i) {
        const plan::Plan before = plan;
        const auto what = plan.plates.empty() ? 1 : upTo(5);
        if (what == 0) {
            plan.plates.erase(plan.plates.begin() + static_cast<std::ptrdiff_t>(upTo(plan.plates.size())));
        } else if (what == 1) {
            plan::Plate plate = before.plates.empty() ? house::read().plates.front()
                                                      : before.plates[upTo(before.plates.size())];
            plate.id = "new-" + std::to_string(++added);
            plate.host.u_mm += 40;
            plan.plates.push_back(plate);
        } else if (what == 2) {
            plan::Plate& plate = plan.plates[upTo(plan.plates.size())];
            plate.modules.resize(upTo(4) + 1);
            for (plan::Module& module : plate.modules)
                module.type = types[upTo(types.size())];
        } else {
            plan::Plate& plate = plan.plates[upTo(plan.plates.size())];
            plate.host.u_mm += static_cast<double>(upTo(60)) - 30;
            plate.host.v_mm += static_cast<double>(upTo(60)) - 30;
        }
        const auto written = step(live, before, plan);
        CHECK_FALSE(written.shadows);
        CHECK_FALSE(written.lights);
        if (i % 10 == 9) checkSame(live.scene(), scene::build(plan, house::catalogue()));
    }
    REQUIRE(added > 5);
    checkApart(live);
}

TEST_CASE("a plate that only moves keeps its places, so that nothing else has to be sent") {
    const plan::Plan before = house::read();
    plan::Plan after = before;
    after.plates.front().host.u_mm += 12.5;
    scene::LiveScene live(scene::build(before, house::catalogue()));
    const auto parts = live.scene().parts.size();
    const auto vertices = live.scene().vertices.size();
    const auto written = step(live, before, after);
    CHECK(live.scene().parts.size() == parts);
    CHECK(live.scene().vertices.size() == vertices);
    REQUIRE_FALSE(written.parts.empty());
    for (const auto place : written.parts)
        CHECK(live.scene().parts[place].object == before.plates.front().id);
    checkSame(live.scene(), scene::build(after, house::catalogue()));
}

TEST_CASE("furniture takes along what hangs on it, and a moved lamp its light") {
    const plan::Plan before = house::read();
    plan::Plan after = before;
    const auto wardrobe = std::ranges::find(after.furniture, "wardrobe", &plan::Furniture::id);
    REQUIRE(wardrobe != after.furniture.end());
    wardrobe->at_mm.x += 35;
    after.luminaires.back().host.u_mm += 20;
    scene::LiveScene live(scene::build(before, house::catalogue()));
    const auto change = scene::changeBetween(before, after);
    REQUIRE(change);
    CHECK(change->furniture == std::vector<std::string>{"wardrobe"});
    CHECK(std::ranges::find(change->plates, "in-side") != change->plates.end());
    const auto written = step(live, before, after);
    CHECK(written.shadows);
    CHECK(written.lights);
    checkSame(live.scene(), scene::build(after, house::catalogue()));
    // And all away again.
    plan::Plan none = after;
    std::erase_if(none.furniture, [](const plan::Furniture& piece) { return piece.kind != "stair"; });
    none.plates.clear();
    none.luminaires.clear();
    step(live, after, none);
    checkSame(live.scene(), scene::build(none, house::catalogue()));
    step(live, none, before);
    checkSame(live.scene(), scene::build(before, house::catalogue()));
    checkApart(live);
}

TEST_CASE("only what is seen counts as a change; rooms, openings and stairs want a whole build") {
    const plan::Plan before = house::read();
    plan::Plan after = before;
    after.plates.front().purpose = "something else";
    after.plates.front().note = "noted";
    CHECK(scene::changeBetween(before, after) == scene::Change{});
    after = before;
    after.rooms.front().walls.front().colour = "#336699";
    CHECK_FALSE(scene::changeBetween(before, after));
    after = before;
    REQUIRE_FALSE(after.openings.empty());
    after.openings.front().left_mm += 1;
    CHECK_FALSE(scene::changeBetween(before, after));
    after = before;
    after.storeys.back().elevation_mm += 1;
    CHECK_FALSE(scene::changeBetween(before, after));
    after = before;
    const auto stair = std::ranges::find(after.furniture, "stair", &plan::Furniture::kind);
    REQUIRE(stair != after.furniture.end());
    stair->at_mm.x += 1;
    CHECK_FALSE(scene::changeBetween(before, after));
}

TEST_CASE("a scene much of which went is packed anew") {
    plan::Plan before = house::read();
    const plan::Plate model = before.plates.front();
    for (int i = 0; i < 600; ++i) {
        before.plates.push_back(model);
        before.plates.back().id = "many-" + std::to_string(i);
    }
    plan::Plan after = before;
    after.plates.resize(2);
    scene::LiveScene live(scene::build(before, house::catalogue()));
    const auto written = step(live, before, after);
    CHECK(written.moved);
    const scene::Scene whole = scene::build(after, house::catalogue());
    CHECK(live.scene().vertices.size() == whole.vertices.size());
    CHECK(live.scene().indices.size() == whole.indices.size());
    checkSame(live.scene(), whole);
    checkApart(live);
    step(live, after, before);
    checkSame(live.scene(), scene::build(before, house::catalogue()));
}

TEST_CASE("parts that share vertices are taken apart without changing what they draw") {
    scene::Scene shared;
    for (const float x : {0.0f, 1.0f, 2.0f, 3.0f})
        shared.vertices.push_back({{x, x * x, 0}, {0, 0, 1}});
    shared.indices = {0, 1, 2, 1, 2, 3, 0, 2, 3};
    for (std::uint32_t i = 0; i < 3; ++i) {
        scene::Part part;
        part.object = "part-" + std::to_string(i);
        part.first_index = 3 * i;
        part.index_count = 3;
        shared.parts.push_back(part);
    }
    const scene::LiveScene live(shared);
    CHECK(live.scene().vertices.size() == 9);
    CHECK(allDrawn(live.scene()) == allDrawn(shared));
    checkApart(live);
}

TEST_CASE("runs of a pool never overlap, and freed neighbours grow together") {
    scene::detail::RangePool pool(10);
    const auto a = pool.take(4);
    const auto b = pool.take(6);
    CHECK(a == scene::detail::Range{10, 4});
    CHECK(b == scene::detail::Range{14, 6});
    pool.release(a);
    pool.release({2, 3});
    CHECK(pool.free() == 7);
    CHECK(pool.take(3) == scene::detail::Range{2, 3}); // the smallest that fits
    pool.release(b);
    CHECK(pool.take(10) == scene::detail::Range{10, 10});
    CHECK(pool.free() == 0);
    CHECK(pool.end() == 20);
    CHECK(pool.take(0).count == 0);
}
