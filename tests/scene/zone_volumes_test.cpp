// Wet zones as bodies over a room, from the pack's sizes to triangles, against corner points worked by hand
// from IEC 60364-7-701, 701.30 (trade facts 4.1 to 4.5, check values 51 and 53). Bodies lie 6 mm inside what
// they show, so that neither flickers through the other (ours).
#include "house.hpp"

#include "catalogue/pack.hpp"
#include "checks/wet_zones.hpp"
#include "geometry/house_index.hpp"
#include "scene/zone_volumes.hpp"
#include "support/plain_room.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace gangway;
using Catch::Matchers::WithinAbs;
using plan::Vec3;

namespace {
constexpr double kInsetMm = 6;
constexpr double kFloatMm = 0.01; ///< metres in 32 bits

catalogue::CountryPack international() {
    const auto packs = catalogue::loadPacks(std::string(GANGWAY_ASSETS_DIR) + "/packs");
    REQUIRE(packs);
    return *packs->pack("international");
}

/// A room of 4000 x 3000 with its south-west corner at (0, 0) and a shower 900 x 900 there.
plan::Plan withShower(double tray_height_mm, double elevation_mm = 0) {
    plan::Plan plan = testing::plainRoom("bath");
    plan.storeys.back().elevation_mm = elevation_mm;
    plan::Furniture shower;
    shower.id = "shower";
    shower.kind = "shower";
    shower.room = "bath";
    shower.size = {900, 900, 2000};
    shower.at_mm = {450, 450};
    shower.with.emplace_back("trayHeight", tray_height_mm);
    plan.furniture.push_back(shower);
    return plan;
}

std::vector<scene::ZoneVolume> volumesOf(const plan::Plan& plan) {
    std::vector<scene::ZoneVolume> volumes;
    const geometry::HouseIndex house(plan);
    for (const auto& volume : checks::wetVolumes(house, international(), "bath"))
        volumes.push_back({"bath", volume.outline_mm, volume.bottom_mm, volume.top_mm, volume.number});
    return volumes;
}

/// All zones of the plan and the parts that show them, in the same order.
struct Shown {
    std::vector<scene::ZoneVolume> volumes;
    scene::Scene scene;
    std::size_t part(int number) const {
        for (std::size_t i = 0; i < volumes.size(); ++i)
            if (volumes[i].number == number) return i;
        FAIL("no zone " << number);
        return 0;
    }
    bool has(int number) const { return std::ranges::count(volumes, number, &scene::ZoneVolume::number) > 0; }
    std::vector<Vec3> corners(int number) const {
        std::vector<Vec3> points;
        const scene::Part& of = scene.parts.at(part(number));
        for (std::uint32_t i = of.first_index; i < of.first_index + of.index_count; ++i)
            points.push_back(scene::toHouse(scene.vertices[scene.indices[i]].position));
        return points;
    }
};

Shown shown(const plan::Plan& plan) {
    Shown result{volumesOf(plan), {}};
    scene::addZoneVolumes(result.scene, plan, result.volumes);
    REQUIRE(result.scene.parts.size() == result.volumes.size());
    return result;
}

bool holds(const std::vector<Vec3>& corners, Vec3 wanted) {
    return std::ranges::any_of(corners, [&](Vec3 corner) { return length(corner - wanted) < 2 * kInsetMm; });
}

double furthestFrom(const std::vector<Vec3>& corners, plan::Vec2 middle) {
    double furthest = 0;
    for (const Vec3 corner : corners)
        furthest = std::max(furthest, length(plan::Vec2{corner.x, corner.y} - middle));
    return furthest;
}

void checkBounds(const Shown& shown, int number, Vec3 low, Vec3 high) {
    INFO("zone " << number);
    const scene::Part& part = shown.scene.parts.at(shown.part(number));
    const Vec3 a = scene::toHouse(part.low);
    const Vec3 b = scene::toHouse(part.high);
    // North is -z in the scene: y's bounds change places.
    CHECK_THAT(a.x, WithinAbs(low.x + kInsetMm, kFloatMm));
    CHECK_THAT(b.y, WithinAbs(low.y + kInsetMm, kFloatMm));
    CHECK_THAT(a.z, WithinAbs(low.z + kInsetMm, kFloatMm));
    CHECK_THAT(b.x, WithinAbs(high.x - kInsetMm, kFloatMm));
    CHECK_THAT(a.y, WithinAbs(high.y - kInsetMm, kFloatMm));
    CHECK_THAT(b.z, WithinAbs(high.z - kInsetMm, kFloatMm));
}
} // namespace

TEST_CASE("a tray's zone 1 stands over it to 2250, zone 2 600 beyond it with a round corner") {
    // Value 51: tray 900 x 900 in the corner (0, 0); 4.3: 2250; 4.5: 600.
    const Shown zones = shown(withShower(40));
    checkBounds(zones, 1, {0, 0, 0}, {900, 900, 2250});
    checkBounds(zones, 2, {0, 0, 0}, {1500, 1500, 2250});
    for (const double z : {0.0, 2250.0})
        for (const plan::Vec2 at : {plan::Vec2{0, 0}, {900, 0}, {900, 900}, {0, 900}}) {
            INFO(at.x << ", " << at.y << ", " << z);
            CHECK(holds(zones.corners(1), {at.x, at.y, z}));
        }
    const auto beyond = zones.corners(2);
    for (const plan::Vec2 at : {plan::Vec2{0, 0}, {1500, 0}, {1500, 900}, {900, 1500}, {0, 1500}}) {
        INFO(at.x << ", " << at.y);
        CHECK(holds(beyond, {at.x, at.y, 2250}));
    }
    // Across the tray's corner it is 600 as well: 900 + 600 / sqrt 2 = 1324.3 on either axis.
    const double across = 900 + 600 / std::numbers::sqrt2;
    CHECK(holds(beyond, {across, across, 2250}));
    CHECK_FALSE(holds(beyond, {1500, 1500, 2250}));
    // 4.1: zone 0 is inside the tray, between its floor and its rim of 40.
    REQUIRE(zones.has(0));
    for (const Vec3 corner : zones.corners(0)) {
        CHECK((corner.x > 0 && corner.x < 900 && corner.y > 0 && corner.y < 900));
        CHECK((corner.z > 0 && corner.z < 40));
    }
}

TEST_CASE("a shower head fixed at 2300 takes the bodies up to it") {
    plan::Plan plan = withShower(40);
    plan.furniture.front().with.emplace_back("headHeight", 2300);
    const Shown zones = shown(plan);
    checkBounds(zones, 1, {0, 0, 0}, {900, 900, 2300});
    checkBounds(zones, 2, {0, 0, 0}, {1500, 1500, 2300});
}

TEST_CASE("a shower without a basin: one body to 1200 round its outlet, cut by the walls, no zone 2") {
    // 4.2, 4.5, value 53. The piece's middle (450, 450) stands for the outlet.
    const Shown zones = shown(withShower(0));
    CHECK_FALSE(zones.has(2));
    checkBounds(zones, 1, {0, 0, 0}, {1650, 1650, 2250});
    const auto round = zones.corners(1);
    const double furthest = furthestFrom(round, {450, 450});
    CHECK(furthest <= 1200);
    CHECK(furthest >= 1200 - 2 * kInsetMm);
    // Where the circle meets the wall y = 0: x = 450 + sqrt(1200^2 - 450^2) = 1562.4.
    const double along = 450 + std::sqrt(1200.0 * 1200 - 450 * 450);
    double furthest_along = 0;
    for (const Vec3 corner : round)
        if (corner.y < 2 * kInsetMm) furthest_along = std::max(furthest_along, corner.x);
    CHECK_THAT(furthest_along, WithinAbs(along, 2 * kInsetMm));
    // 4.1: without a tray zone 0 is the slab of 100 over the same plan.
    checkBounds(zones, 0, {0, 0, 0}, {1650, 1650, 100});
}

TEST_CASE("zones stand on their storey's floor, see-through, on a layer of their own") {
    const Shown below = shown(withShower(40));
    const Shown above = shown(withShower(40, 2700));
    for (std::size_t i = 0; i < below.scene.parts.size(); ++i) {
        const scene::Part& part = above.scene.parts[i];
        CHECK_THAT(part.low.y - below.scene.parts[i].low.y, WithinAbs(2.7, 1e-5));
        CHECK(part.kind == scene::PartKind::Zone);
        CHECK(part.layer == scene::kLayerZones);
        CHECK(part.room == "bath");
        CHECK(part.storey == "ground");
        CHECK(part.object.empty());
        CHECK(part.material.opacity < 0.5f);
        CHECK(part.material.opacity > 0.1f);
    }
    const auto colour = [&](int number) { return below.scene.parts.at(below.part(number)).material.colour; };
    CHECK(colour(0) != colour(1));
    CHECK(colour(1) != colour(2));
}

TEST_CASE("sides and top of a zone face outwards") {
    // The flux of (x, y, z) through a closed surface is three times its volume (divergence theorem); the
    // floor that is left out lies at z = 6, and adds 6 times its area.
    const Shown zones = shown(withShower(40));
    const scene::Part& part = zones.scene.parts.at(zones.part(1));
    double flux = 0;
    for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; i += 3) {
        Vec3 p[3];
        for (std::uint32_t k = 0; k < 3; ++k)
            p[k] = scene::toHouse(zones.scene.vertices[zones.scene.indices[i + k]].position);
        const Vec3 normal = cross(p[1] - p[0], p[2] - p[0]);
        flux += dot(p[0], normal) / 2;
        const glm::vec3 lit = zones.scene.vertices[zones.scene.indices[i]].normal;
        CHECK(dot(normal, Vec3{lit.x, -lit.z, lit.y}) > 0);
    }
    const double side = 900 - 2 * kInsetMm;
    const double area = side * side;
    const double floor_flux = -kInsetMm * area;
    CHECK_THAT((flux + floor_flux) / 3, WithinAbs(area * (2250 - 2 * kInsetMm), 1e-4 * area * 2250));
}

TEST_CASE("a zone of no room, or without an area, is left out") {
    const plan::Plan plan = withShower(40);
    scene::Scene scene;
    const std::vector<plan::Vec2> square{{0, 0}, {900, 0}, {900, 900}, {0, 900}};
    const std::vector<scene::ZoneVolume> volumes{{"attic", square, 0, 2250, 1},
                                                 {"bath", {{0, 0}, {900, 0}}, 0, 2250, 1}};
    scene::addZoneVolumes(scene, plan, volumes);
    CHECK(scene.parts.empty());
}
