#include "houses.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using namespace gangway::geometry;
using namespace gangway::test;

namespace {

/// The kitchen of the narrow terrace with its hall door in wall D.
plan::Plan kitchen() {
    plan::Plan plan =
        planOf({boxRoom("kitchen", 0, 0, 6200, 4200), boxRoom("hall", -2050, -1400, 1950, 5600)});
    plan::Opening door =
        opening("kitchen-door", plan::Opening::Kind::HingedDoor, "kitchen", "D", 250, 900, 0, 2100);
    door.frame_mm = 37;
    door.casing_mm = 70;
    door.hinge = plan::Side::Left;
    door.swing = plan::Swing::In;
    door.stop_deg = 90;
    plan.openings.push_back(door);
    return plan;
}

bool near(Vec2 a, Vec2 b) {
    return length(a - b) < 1e-6;
}

} // namespace

TEST_CASE("a leaf hangs at the structural edge plus the frame and is as wide as they leave") {
    const plan::Plan plan = kitchen();
    const auto leaves = doorLeaves(plan, plan.openings[0]);
    REQUIRE(leaves.size() == 1);
    // Demo house: leaf 826, hinge at y 287, opens in, covers x 0 to 826.
    CHECK(leaves[0].width_mm == 826);
    CHECK(near(leaves[0].hinge_mm, {0, 287}));
    CHECK(near(leaves[0].closed_mm, {0, 1113}));
    CHECK(near(leaves[0].open_mm, {826, 287}));
    CHECK(leaves[0].swings_into == "kitchen");
    CHECK(leaves[0].top_mm == 2063);
}

TEST_CASE("hinge side, swing and stop say where a leaf stands") {
    struct Case {
        plan::Side hinge;
        plan::Swing swing;
        double stop;
        Vec2 hinge_at, open_at;
        const char* into;
    };
    const double s = 826 * std::sqrt(0.5);
    const std::vector<Case> cases = {
        {plan::Side::Left, plan::Swing::In, 90, {0, 287}, {826, 287}, "kitchen"},
        {plan::Side::Right, plan::Swing::In, 90, {0, 1113}, {826, 1113}, "kitchen"},
        {plan::Side::Left, plan::Swing::Out, 90, {-100, 287}, {-926, 287}, "hall"},
        {plan::Side::Right, plan::Swing::Out, 90, {-100, 1113}, {-926, 1113}, "hall"},
        {plan::Side::Left, plan::Swing::In, 135, {0, 287}, {s, 287 - s}, "kitchen"},
        {plan::Side::Left, plan::Swing::In, 45, {0, 287}, {s, 287 + s}, "kitchen"},
    };
    for (const Case& c : cases) {
        plan::Plan plan = kitchen();
        plan.openings[0].hinge = c.hinge;
        plan.openings[0].swing = c.swing;
        plan.openings[0].stop_deg = c.stop;
        const Leaf leaf = doorLeaves(plan, plan.openings[0]).front();
        INFO("opens to " << leaf.open_mm.x << ", " << leaf.open_mm.y);
        CHECK(near(leaf.hinge_mm, c.hinge_at));
        CHECK(near(leaf.open_mm, c.open_at));
        CHECK(leaf.swings_into == c.into);
        CHECK(length(leaf.open_mm - leaf.hinge_mm) == Approx(826));
        CHECK(signedArea(leaf.standing_mm) == Approx(-826 * 44));
    }
}

TEST_CASE("double leaves hang at both sides and share the opening") {
    plan::Plan plan = kitchen();
    plan.openings[0].leaves = 2;
    const auto leaves = doorLeaves(plan, plan.openings[0]);
    REQUIRE(leaves.size() == 2);
    CHECK(leaves[0].width_mm == 413);
    CHECK(near(leaves[0].closed_mm, leaves[1].closed_mm));
    CHECK(near(leaves[1].hinge_mm, {0, 1113}));
}

TEST_CASE("a barn door parks before the wall beside its opening, a pocket door in it") {
    plan::Plan plan = kitchen();
    plan.openings[0].kind = plan::Opening::Kind::BarnDoor;
    plan.openings[0].leaf_mm = 950;
    plan.openings[0].parks = plan::Side::Right;
    const Leaf barn = doorLeaves(plan, plan.openings[0]).front();
    CHECK(near(barn.hinge_mm, {42, 1150}));
    CHECK(near(barn.open_mm, {42, 2100}));
    CHECK(barn.swings_into == "kitchen");
    plan.openings[0].kind = plan::Opening::Kind::PocketDoor;
    const Leaf pocket = doorLeaves(plan, plan.openings[0]).front();
    CHECK(near(pocket.open_mm, {-50, 2100}));
}

TEST_CASE("windows, hatches and plain openings have no leaf") {
    plan::Plan plan = kitchen();
    for (const auto kind :
         {plan::Opening::Kind::Window, plan::Opening::Kind::Plain, plan::Opening::Kind::Hatch}) {
        plan.openings[0].kind = kind;
        CHECK(doorLeaves(plan, plan.openings[0]).empty());
    }
}
