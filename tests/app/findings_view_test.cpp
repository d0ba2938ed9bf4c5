// From where a finding is shown: inside its room, with the plate and what was measured in the picture and
// nothing solid before them. Every finding of the demo is looked at, and two places worked by hand.
#include "app/finding_view.hpp"

#include "checks/accepted.hpp"
#include "checks/checks.hpp"
#include "geometry/coverage.hpp"
#include "plan/io.hpp"
#include "plan/paths.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gangway;

namespace {
constexpr float kAspect = 1.7F;

struct Demo {
    plan::Plan plan;
    catalogue::Catalogue catalogue;
    std::vector<plan::Finding> findings;
};

const Demo& demo() {
    static const Demo made = [] {
        Demo demo;
        auto read = plan::readFile(plan::assetsFolder() / "demo" / "terrace.plan.json");
        REQUIRE(read);
        demo.plan = read->plan;
        auto catalogue = catalogue::load(plan::assetsFolder() / "catalogue");
        REQUIRE(catalogue);
        demo.catalogue = catalogue::withOwn(*catalogue, demo.plan);
        const auto packs = catalogue::loadPacks(plan::assetsFolder() / "packs");
        REQUIRE(packs);
        demo.findings = checks::check(geometry::HouseIndex(demo.plan), demo.catalogue,
                                      *packs->pack("international"), plan::assetsFolder() / "demo");
        return demo;
    }();
    return made;
}

const plan::Finding& findingOf(const std::string& id) {
    for (const auto& finding : demo().findings)
        if (checks::findingId(finding).starts_with(id)) return finding;
    FAIL("no finding " << id);
    return demo().findings.front();
}

plan::Vec3 eyeOf(const app::FindingView& view, const plan::Room& room) {
    plan::Vec3 eye = scene::toHouse(view.camera.eye);
    eye.z -= plan::findStorey(demo().plan, room.storey)->elevation_mm;
    return eye;
}

/// Part of the half picture at which a point is seen, across and up: within -1 to 1 it is in the picture.
plan::Vec2 inPicture(const scene::Camera& camera, plan::Vec3 eye, plan::Vec3 point) {
    const double yaw = static_cast<double>(camera.yaw);
    const double pitch = static_cast<double>(camera.pitch);
    const plan::Vec3 ahead{std::sin(yaw) * std::cos(pitch), std::cos(yaw) * std::cos(pitch), std::sin(pitch)};
    const plan::Vec3 right{std::cos(yaw), -std::sin(yaw), 0};
    const plan::Vec3 up = plan::cross(right, ahead);
    const plan::Vec3 to = point - eye;
    const double depth = plan::dot(to, ahead);
    if (depth <= 0) return {9, 9};
    const double half = std::tan(static_cast<double>(camera.vertical_fov) / 2);
    return {plan::dot(to, right) / depth / half / static_cast<double>(kAspect),
            plan::dot(to, up) / depth / half};
}

/// Furniture of the room that a look meets before its end; empty: none.
std::string meets(const geometry::HouseIndex& house, const std::string& room, plan::Vec3 eye,
                  plan::Vec3 point, const std::set<std::string>& see_through, const std::string& except) {
    const plan::Vec3 way = point - eye;
    const double far = plan::length(way);
    for (const auto* piece : house.furnitureIn(room)) {
        if (see_through.contains(piece->id) || piece->id == except) continue;
        for (const auto& solid : geometry::furnitureSolids(*piece, plan::assetsFolder() / "demo").solids) {
            const auto hit = geometry::rayHit(solid.mesh, eye, way * (1 / far));
            if (hit && *hit < far - 20) return piece->id;
        }
    }
    return {};
}
} // namespace

TEST_CASE("every finding of a room in the demo is seen from inside the room, unhidden, in the picture") {
    const geometry::HouseIndex house(demo().plan);
    int looked_at = 0;
    for (const auto& finding : demo().findings) {
        const auto place = app::placeOf(house, demo().catalogue, finding);
        if (place.of_plan || place.room.empty()) continue;
        INFO(checks::findingId(finding) << ": " << finding.message);
        const auto view = app::findingView(house, place, {kAspect, {}, plan::assetsFolder() / "demo"});
        CHECK(view.found);
        if (!view.found) continue;
        const plan::Room& room = *house.room(place.room);
        const plan::Vec3 eye = eyeOf(view, room);
        CHECK(geometry::insideRoom(room, {eye.x, eye.y}));
        CHECK(eye.z < geometry::ceilingHeightAt(room, {eye.x, eye.y}));
        CHECK(eye.z >= 1000);
        const auto* plate = plan::findPlate(demo().plan, finding.objects.front());
        if (plate == nullptr) continue;
        const auto at = geometry::hostPoint(house, plate->room, plate->host);
        REQUIRE(at);
        const plan::Vec2 seen = inPicture(view.camera, eye, *at);
        CHECK(std::abs(seen.x) < 1);
        CHECK(std::abs(seen.y) < 1);
        CHECK(meets(house, place.room, eye, *at, view.before, plate->host.furniture) == "");
        if (place.gap)
            for (const plan::Vec3 end : {place.gap->from_mm, place.gap->to_mm}) {
                const plan::Vec2 drawn = inPicture(view.camera, eye, end);
                CHECK(std::abs(drawn.x) < 1);
                CHECK(std::abs(drawn.y) < 1);
            }
        ++looked_at;
    }
    CHECK(looked_at > 15);
}

TEST_CASE("what is measured along the wall is looked at square, within 40 degrees") {
    const geometry::HouseIndex house(demo().plan);
    const auto place = app::placeOf(house, demo().catalogue, findingOf("hob-gap:kitchen-05"));
    const auto view = app::findingView(house, place, {kAspect, {}, plan::assetsFolder() / "demo"});
    REQUIRE(view.found);
    // Wall A of the kitchen is its north wall: yaw 0 looks at it square.
    CHECK(std::abs(static_cast<double>(view.camera.yaw)) < 40 * 3.14159 / 180);
}

TEST_CASE("the gap of a plate over a hob's edge is where the two overlap") {
    // Seed 1-2 of assets/demo/README.md: the plate's left edge at x 1777, the hob's right one at 1790.
    const geometry::HouseIndex house(demo().plan);
    const auto place = app::placeOf(house, demo().catalogue, findingOf("hob-gap:kitchen-05"));
    REQUIRE(place.gap);
    const auto [low, high] = std::minmax(place.gap->from_mm.x, place.gap->to_mm.x);
    CHECK(low == Approx(1777).margin(0.5));
    CHECK(high == Approx(1790).margin(0.5));
}

TEST_CASE("what hides the plate is made see-through, the piece it is on is not") {
    const geometry::HouseIndex house(demo().plan);
    // Seed 1-8: behind the radiator.
    const auto behind = app::placeOf(house, demo().catalogue, findingOf("radiator:kitchen-09"));
    const auto view = app::findingView(house, behind, {kAspect, {}, plan::assetsFolder() / "demo"});
    CHECK(view.before.contains("kitchen-radiator"));
    const auto on = app::placeOf(house, demo().catalogue, findingOf("floor-box:kitchen-10"));
    const auto floor = app::findingView(house, on, {kAspect, {}, plan::assetsFolder() / "demo"});
    REQUIRE(floor.found);
    // A floor box is looked down at.
    CHECK(floor.camera.pitch < -0.4F);
}

TEST_CASE("a wider view also holds the place a remedy would put the plate") {
    const geometry::HouseIndex house(demo().plan);
    const auto& finding = findingOf("hob-gap:kitchen-05");
    REQUIRE(finding.move);
    const auto* plate = plan::findPlate(demo().plan, finding.move->plate);
    plan::Host there = plate->host;
    there.u_mm = finding.move->u_mm;
    there.v_mm = finding.move->v_mm;
    const auto at = geometry::hostPoint(house, plate->room, there);
    REQUIRE(at);
    const auto place = app::placeOf(house, demo().catalogue, finding);
    const auto view = app::findingView(house, place, {kAspect, {*at}, plan::assetsFolder() / "demo"});
    REQUIRE(view.found);
    const plan::Vec3 eye = eyeOf(view, *house.room("kitchen"));
    for (const plan::Vec3 point : {*at, *geometry::hostPoint(house, plate->room, plate->host)}) {
        const plan::Vec2 seen = inPicture(view.camera, eye, point);
        CHECK(std::abs(seen.x) < 1);
        CHECK(std::abs(seen.y) < 1);
    }
}

TEST_CASE("a finding about a leg is of the plan, one about a plate is of its room") {
    plan::Finding finding;
    finding.objects = {demo().plan.legs.front().id};
    const geometry::HouseIndex house(demo().plan);
    CHECK(app::placeOf(house, demo().catalogue, finding).of_plan);
    finding.objects = {"kitchen-05", demo().plan.legs.front().id};
    const auto place = app::placeOf(house, demo().catalogue, finding);
    CHECK_FALSE(place.of_plan);
    CHECK(place.room == "kitchen");
}

TEST_CASE("a column before the plate is looked past, not through") {
    // 4000 x 3000, 2400 high; the column 400 x 400 stands 400 before the plate, straight in front of it.
    auto read = plan::read(R"({ "gangway": 1,
  "storeys": [ { "id": "ground", "name": "Ground floor", "plateFormat": "round-71" } ],
  "rooms": [ { "id": "room", "letter": "R", "name": "Room", "storey": "ground",
               "outline": [[0, 3000], [4000, 3000], [4000, 0], [0, 0]],
               "columns": [ [[1800, 2200], [2200, 2200], [2200, 2600], [1800, 2600]] ] } ],
  "plates": [ { "id": "r1", "tag": "R-01", "room": "room", "wall": "A", "setOut": 2000, "height": 1100,
                "modules": ["socket-f"] } ] })");
    if (!read) FAIL(plan::toLine("plan", read.error().front()));
    const geometry::HouseIndex house(read->plan);
    plan::Finding finding;
    finding.objects = {"r1"};
    const auto place = app::placeOf(house, demo().catalogue, finding);
    const auto view = app::findingView(house, place, {kAspect, {}, {}});
    REQUIRE(view.found);
    const plan::Vec3 eye = scene::toHouse(view.camera.eye);
    const plan::Vec2 plate{2000, 3000};
    const plan::Vec2 from{eye.x, eye.y};
    for (double part = 0; part < 0.95; part += 0.01)
        CHECK(geometry::insideRoom(read->plan.rooms.front(), from + (plate - from) * part));
}
