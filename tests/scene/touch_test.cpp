#include "house.hpp"

#include "scene/touch.hpp"

using namespace gangway;
using Catch::Matchers::WithinAbs;

TEST_CASE("pointing at where a plate is on the stage gives back where the plan has it") {
    const plan::Plan plan = house::read();
    const geometry::HouseIndex index(plan);
    int walls = 0;
    int pieces = 0;
    for (const plan::Plate& plate : plan.plates) {
        INFO(plate.id);
        const auto frame = geometry::hostFrame(index, plate.room, plate.host);
        REQUIRE(frame);
        const double elevation = plan::findStorey(plan, house::room(plan, plate.room).storey)->elevation_mm;
        const bool on_piece = plate.host.kind == plan::Host::Kind::Furniture;
        scene::Touch touch{plate.room, on_piece ? plate.host.furniture : "", {}, {}};
        touch.point = scene::toScene(*geometry::hostPoint(index, plate.room, plate.host), elevation);
        touch.normal = scene::toScene(frame->w);
        const auto host = scene::hostAt(index, touch);
        REQUIRE(host);
        CHECK(host->kind == plate.host.kind);
        CHECK(host->wall == plate.host.wall);
        CHECK(host->furniture == plate.host.furniture);
        CHECK(host->face == plate.host.face);
        CHECK_THAT(host->u_mm, WithinAbs(plate.host.u_mm, 0.01)); // scene points are float metres
        CHECK_THAT(host->v_mm, WithinAbs(plate.host.v_mm, 0.01));
        (on_piece ? pieces : walls)++;
    }
    CHECK(walls > 0);
    CHECK(pieces > 0);
    CHECK_FALSE(scene::hostAt(index, {"bedroom", "no-such-piece", {0, 0, 0}, {0, 1, 0}}));
    CHECK_FALSE(scene::hostAt(index, {"no-such-room", "", {0, 0, 0}, {0, 1, 0}}));
}
