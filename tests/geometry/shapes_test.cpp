#include "closed_mesh.hpp"

#include "geometry/shapes.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

TEST_CASE("every shape is closed, faces outwards and has unit normals that agree with its triangles") {
    const std::vector<Vec2> profile = {{0, 0}, {50, 0}, {80, 40}, {60, 120}, {0, 120}};
    const std::vector<Vec2> ring = {{0, 0}, {100, 0}, {100, 60}, {0, 60}};
    const std::vector<Loop> bowl = {{roundedRectangle({0, 0}, 300, 200, 20), 0},
                                    {roundedRectangle({0, 0}, 400, 300, 20), 150},
                                    {roundedRectangle({0, 0}, 340, 240, 20), 150},
                                    {roundedRectangle({0, 0}, 200, 100, 20), 30}};
    struct Case {
        const char* name;
        meshes::Mesh mesh;
        double volume; ///< 0: only its sign is checked
    };
    const std::vector<Case> cases = {
        {"box", box({0, 0, 0}, {100, 200, 300}), 6e6},
        {"bevelled box", bevelledBox({0, 0, 0}, {100, 200, 300}, 5), 0},
        {"bevelled board", bevelledBox({0, 0, 0}, {1000, 500, 2}, 5), 0},
        {"cushion", cushion({0, 0, 0}, {400, 300, 120}, 40), 0},
        {"cushion, fully round", cushion({0, 0, 0}, {400, 300, 120}, 500, 3), 0},
        {"cylinder", cylinder({0, 0, 0}, {10, 20, 300}, 30), 0},
        {"level cylinder", cylinder({0, 0, 0}, {300, 0, 0}, 30), 0},
        {"cone", cylinder({0, 0, 0}, {0, 0, 100}, 30, 24, 60), 0},
        {"extrusion", extrude(ring, 10, 30), 100 * 60 * 20},
        {"extrusion with a hole", extrude(ring, 10, 30, {{{20, 20}, {40, 20}, {40, 40}, {20, 40}}}),
         (6000 - 400) * 20},
        {"turned body", lathe(profile, {0, 0, 0}), 0},
        {"oval turned body", lathe(profile, {0, 0, 0}, 24, {1.5, 0.7}), 0},
        {"bowl", lofted(bowl), 0},
    };
    for (const Case& c : cases) {
        INFO(c.name);
        CHECK(openEdges(c.mesh) == 0);
        CHECK(volume(c.mesh) > 0);
        if (c.volume > 0) CHECK(volume(c.mesh) == Approx(c.volume));
        CHECK(worstNormal(c.mesh) > 0.3);
    }
}

TEST_CASE("a cylinder's volume nears pi r2 h as its sides grow") {
    // Inscribed polygon of n sides: n/2 sin(2 pi / n) r2.
    const int n = 64;
    const double polygon = n / 2.0 * std::sin(2 * std::numbers::pi / n) * 30 * 30;
    CHECK(volume(cylinder({0, 0, 0}, {0, 0, 200}, 30, n)) == Approx(polygon * 200));
}

TEST_CASE("a bowl is hollow: its volume is that of the body less the hollow") {
    // Prism 400 x 300 x 100 with a pit of 200 x 200 x 60 (corner radius nearly none).
    const std::vector<Loop> pit = {{roundedRectangle({0, 0}, 400, 300, 0.001), 0},
                                   {roundedRectangle({0, 0}, 400, 300, 0.001), 100},
                                   {roundedRectangle({0, 0}, 200, 200, 0.001), 100},
                                   {roundedRectangle({0, 0}, 200, 200, 0.001), 40}};
    CHECK(volume(lofted(pit)) == Approx(400.0 * 300 * 100 - 200.0 * 200 * 60).epsilon(1e-4));
}
