#include "house.hpp"

#include "geometry/frames.hpp"
#include "geometry/walls.hpp"

#include <map>
#include <set>

using namespace gangway;
using Catch::Matchers::WithinAbs;
using scene::PartKind;

namespace {
/// Of walls as the room sees them, 0.92, and of their outside, 0.95: what tells them apart on the stage.
constexpr float kOuterRoughness = 0.94f;
} // namespace

TEST_CASE("every object of the plan is on the stage, on its own layer") {
    const plan::Plan plan = house::read();
    const scene::Scene scene = scene::build(plan, house::catalogue());
    CHECK(scene.problems.empty());
    std::map<std::string, std::set<std::string>> objects;
    for (const scene::Part& part : scene.parts)
        objects[part.layer].insert(part.object);
    CHECK(objects["building"].size() == plan.rooms.size() + plan.openings.size());
    CHECK(objects["plates"].size() == plan.plates.size());
    CHECK(objects["lamps"].size() == plan.luminaires.size());
    CHECK(objects["soft"] == std::set<std::string>{"rug"});
    CHECK(objects["furniture"] == std::set<std::string>{"bed", "cabinet", "sofa", "stair", "wardrobe"});
}

TEST_CASE("a part is one run of triangles with true bounds and unit normals") {
    const scene::Scene scene = house::scene();
    std::uint32_t next = 0;
    for (const scene::Part& part : scene.parts) {
        INFO(part.object << " in " << part.room);
        CHECK(part.first_index == next);
        REQUIRE(part.index_count % 3 == 0);
        REQUIRE(part.index_count > 0);
        next += part.index_count;
        REQUIRE(next <= scene.indices.size());
        bool in_bounds = true;
        bool unit = true;
        for (std::uint32_t i = part.first_index; i < next; ++i) {
            const scene::Vertex& vertex = scene.vertices.at(scene.indices[i]);
            in_bounds &= glm::all(glm::lessThanEqual(part.low, vertex.position)) &&
                         glm::all(glm::lessThanEqual(vertex.position, part.high));
            unit &= std::abs(glm::length(vertex.normal) - 1) < 0.02f;
        }
        CHECK(in_bounds);
        CHECK(unit);
        CHECK_FALSE(part.storey.empty());
    }
    CHECK(next == scene.indices.size());
}

TEST_CASE("triangles face the way their normals say, also on the ceiling") {
    const scene::Scene scene = house::scene();
    for (const scene::Part& part : scene.parts) {
        if (part.kind != PartKind::Plate && part.kind != PartKind::Lamp) continue;
        int against = 0;
        for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; i += 3) {
            const scene::Vertex& a = scene.vertices[scene.indices[i]];
            const scene::Vertex& b = scene.vertices[scene.indices[i + 1]];
            const scene::Vertex& c = scene.vertices[scene.indices[i + 2]];
            const glm::vec3 across = glm::cross(b.position - a.position, c.position - a.position);
            if (glm::dot(across, a.normal + b.normal + c.normal) < -1e-9f) ++against;
        }
        INFO(part.object);
        CHECK(against == 0);
    }
}

TEST_CASE("a plan is built the same twice") {
    const scene::Scene a = house::scene();
    const scene::Scene b = house::scene();
    REQUIRE(a.vertices.size() == b.vertices.size());
    CHECK(a.indices == b.indices);
    bool equal = true;
    for (std::size_t i = 0; i < a.vertices.size(); ++i) {
        equal &=
            a.vertices[i].position == b.vertices[i].position && a.vertices[i].normal == b.vertices[i].normal;
    }
    CHECK(equal);
    CHECK(a.parts.size() == b.parts.size());
}

TEST_CASE("a wall faces into its room") {
    const plan::Plan plan = house::read();
    const scene::Scene scene = scene::build(plan, house::catalogue());
    int walls = 0;
    for (const scene::Part& part : scene.parts) {
        if (part.kind != PartKind::Wall) continue;
        ++walls;
        const plan::Room& room = house::room(plan, part.room);
        CHECK(glm::length(part.facing) == Approx(1));
        const auto wall = plan::wallIndex(room, part.wall);
        REQUIRE(wall);
        const geometry::WallEdge edge = geometry::wallEdge(room, *wall);
        const plan::Vec3 into = scene::toHouse(part.facing);
        const plan::Vec2 middle = (edge.from_mm + edge.to_mm) * 0.5;
        CHECK(geometry::insideRoom(room, middle + plan::Vec2{into.x, into.y} * 0.01));
    }
    CHECK(walls >= 14);
}

TEST_CASE("each wall is one part a material, so that it can be cut away alone") {
    const scene::Scene scene = house::scene();
    std::map<std::string, int> plain;
    std::map<std::string, int> outer;
    for (const scene::Part& part : scene.parts) {
        if (part.kind == PartKind::Wall && part.room == "bedroom" && part.material.roughness > 0.9f)
            ++(part.material.roughness > kOuterRoughness ? outer : plain)[part.wall];
    }
    CHECK(outer == plain); // the skin that is seen from outside, darker
    CHECK(plain == std::map<std::string, int>{{"east", 1}, {"north", 1}, {"south", 1}, {"west", 1}});
}

TEST_CASE("a wall's outer skin stands behind its face and is cut away with it") {
    const scene::Scene scene = house::scene();
    const auto find = [&](bool skin) {
        const auto found = std::ranges::find_if(scene.parts, [&](const scene::Part& part) {
            return part.kind == PartKind::Wall && part.room == "attic" && part.wall == "north" &&
                   part.material.roughness > 0.9f && (part.material.roughness > kOuterRoughness) == skin;
        });
        REQUIRE(found != scene.parts.end());
        return *found;
    };
    const scene::Part face = find(false);
    const scene::Part skin = find(true);
    CHECK(skin.material.colour.r < face.material.colour.r);
    CHECK(skin.facing == face.facing); // what cuts a wall away goes by its room's side
    CHECK(skin.high.z == Approx(face.low.z - 0.1));
    CHECK(skin.low.x == Approx(face.low.x - 0.1));
    CHECK(skin.high.x == Approx(face.high.x + 0.1));
}

TEST_CASE("one looks down a stair through the floor above it") {
    const plan::Plan plan = house::read();
    const scene::Scene scene = house::scene();
    const auto areaOf = [&](PartKind kind, const std::string& room) {
        double sum = 0;
        for (const scene::Part& part : scene.parts) {
            if (part.kind != kind || part.room != room) continue;
            for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; i += 3) {
                const auto at = [&](std::uint32_t k) {
                    return scene.vertices[scene.indices[i + k]].position;
                };
                sum += std::abs(glm::cross(at(1) - at(0), at(2) - at(0)).y) / 2;
            }
        }
        return sum;
    };
    CHECK(areaOf(PartKind::Floor, "attic") == Approx(7.6 * 5 - 0.9 * 3).epsilon(1e-4));
    CHECK(areaOf(PartKind::Ceiling, "living") == Approx(3.5 * 5 + 2.5 * 2.5 - 0.9 * 3).epsilon(1e-4));
}

TEST_CASE("the upper storey stands at its elevation") {
    const scene::Scene scene = house::scene();
    for (const scene::Part& part : scene.parts) {
        if (part.kind == PartKind::Floor && part.room == "attic") CHECK(part.high.y == Approx(2.8));
        if (part.kind == PartKind::Floor && part.room == "living")
            CHECK(part.high.y == Approx(0).margin(1e-6));
    }
}

TEST_CASE("tiles on the stage start where the plan starts them") {
    const scene::Scene scene = house::scene();
    bool found = false;
    for (const scene::Part& part : scene.parts) {
        if (part.kind != PartKind::Wall || part.material.pattern != 2) continue;
        found = true;
        // North wall of the living room: u = x, so the tile field starts at x 3500, z 920.
        CHECK(part.material.pattern_origin.x == Approx(3.5));
        CHECK(part.material.pattern_origin.y == Approx(0.92));
        CHECK(part.material.pattern_origin.z == Approx(-5));
        CHECK(part.material.pattern_size_m.x == Approx(0.203));
        CHECK(part.material.pattern_size_m.y == Approx(0.103));
        CHECK(part.material.pattern_along.x == Approx(1));
    }
    CHECK(found);
}

TEST_CASE("a lamp shines from just outside its body, into the room") {
    const plan::Plan plan = house::read();
    const scene::Scene scene = scene::build(plan, house::catalogue());
    REQUIRE(scene.lights.size() == plan.luminaires.size());
    for (const scene::Light& light : scene.lights) {
        INFO(light.luminaire);
        const plan::Luminaire* luminaire = plan::findLuminaire(plan, light.luminaire);
        REQUIRE(luminaire != nullptr);
        const plan::Room& room = house::room(plan, light.room);
        const plan::Vec3 at = scene::toHouse(light.position);
        CHECK(geometry::insideRoom(room, {at.x, at.y}));
        const double storey = room.storey == "upper" ? 2800 : 0;
        CHECK(at.z > storey);
        CHECK(at.z < storey + geometry::ceilingHeightAt(room, {at.x, at.y}));
        CHECK(light.flux_lm == Approx(luminaire->lumens));
    }
}

TEST_CASE("a pendant hangs by its drop") {
    const scene::Scene scene = house::scene();
    const house::Bounds pendant = house::boundsOf(scene, "pendant");
    CHECK(pendant.high.y == Approx(2.5).margin(1e-4));
    CHECK(pendant.low.y == Approx(1.6).margin(0.003)); // ceiling 2500 less 900; the rim has some thickness
    CHECK(pendant.middle().x == Approx(1.75).margin(1e-3));
    for (const scene::Light& light : scene.lights) {
        if (light.luminaire == "pendant") CHECK(light.position.y < pendant.low.y);
        if (light.luminaire == "spot") CHECK(light.beam_rad == Approx(60 * 3.14159265 / 180));
    }
}

TEST_CASE("a lamp with no host is told and left out") {
    plan::Plan plan = house::read();
    plan.luminaires.front().host.kind = plan::Host::Kind::Furniture;
    plan.luminaires.front().host.furniture = "no such piece";
    const scene::Scene scene = scene::build(plan, house::catalogue());
    CHECK(scene.problems.size() == 1);
    CHECK(scene.lights.size() == plan.luminaires.size() - 1);
}

TEST_CASE("an empty plan gives an empty scene") {
    const scene::Scene scene = scene::build(plan::Plan{}, house::catalogue());
    CHECK(scene.parts.empty());
    CHECK(scene.vertices.empty());
}
