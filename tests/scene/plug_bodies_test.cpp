// What is plugged in, as bodies before the plates. How far out they stand is the pack's (C5 of the project's
// practice checks: flat 25, straight 55, power block 80; common practice, no source); widths of plugs are
// from memory, that of a block is common practice without a source (src/catalogue/plug_shapes.cpp).
#include "house.hpp"

#include "catalogue/pack.hpp"
#include "geometry/frames.hpp"
#include "scene/live_scene.hpp"
#include "scene/plug_bodies.hpp"
#include "support/plain_room.hpp"

#include <algorithm>
#include <map>
#include <set>

using namespace gangway;
using Catch::Matchers::WithinAbs;
using plan::Vec3;
using Kind = plan::Device::Plug;
using State = catalogue::OutletPlace::State;

namespace {
constexpr double kFacetMm = 0.4; ///< round things are drawn with flat sides

const catalogue::CountryPack& international() {
    static const auto packs = catalogue::loadPacks(std::string(GANGWAY_ASSETS_DIR) + "/packs");
    REQUIRE(packs);
    return *packs->pack("international");
}

const plan::Plan& demo() {
    static const auto read = plan::readFile(std::string(GANGWAY_ASSETS_DIR) + "/demo/terrace.plan.json");
    REQUIRE(read);
    return read->plan;
}

/// Plates go on wall A, its north wall, at 1000 above the floor.
plan::Plan room() {
    return testing::plainRoom("room");
}

plan::Plate& addPlate(plan::Plan& plan, const std::string& id, double u, const std::string& format,
                      const std::vector<std::string>& modules) {
    plan::Plate& plate = plan.plates.emplace_back();
    plate.id = id;
    plate.room = "room";
    plate.host.wall = "A";
    plate.host.u_mm = u;
    plate.host.v_mm = 1000;
    plate.format = format;
    for (const std::string& type : modules)
        plate.modules.emplace_back().type = type;
    return plate;
}

catalogue::PlugPlaces placesOf(const plan::Plan& plan, const std::vector<catalogue::PluggedIn>& plugged) {
    return catalogue::plugPlaces(plan, house::catalogue(), plugged);
}

/// What the plan says is plugged in where.
std::vector<catalogue::PluggedIn> decided(const plan::Plan& plan) {
    std::vector<catalogue::PluggedIn> plugged;
    for (const plan::Device& device : plan.devices)
        if (!device.plate.empty())
            plugged.push_back({device.plate, device.id, device.plug, device.plug_type});
    return plugged;
}

scene::Scene bodies(const plan::Plan& plan, const catalogue::PlugPlaces& places) {
    scene::Scene scene;
    scene::addPlugBodies(scene, geometry::HouseIndex(plan), house::catalogue(), international(), places);
    return scene;
}

const catalogue::OutletPlace& outlet(const catalogue::PlugPlaces& places, const std::string& plate,
                                     int number) {
    for (const auto& place : places.outlets)
        if (place.plate == plate && place.number == number) return place;
    FAIL("no outlet " << number << " of " << plate);
    return places.outlets.front();
}

/// Bounds of what is drawn in one material of a plate's plugs, in (u, v, w) of its wall.
struct Extent {
    Vec3 low{1e30, 1e30, 1e30};
    Vec3 high{-1e30, -1e30, -1e30};
};
enum class Colour { Pale, Dark, Green, Red };
Colour colourOf(const scene::Material& material) {
    const glm::vec3 c = material.colour;
    if (c.r > 0.5f) return Colour::Pale;
    if (c.g > 2 * c.r) return Colour::Green;
    return c.r > 3 * c.g ? Colour::Red : Colour::Dark;
}
std::optional<Extent> extentOf(const plan::Plan& plan, const scene::Scene& scene, const std::string& plate_id,
                               Colour colour) {
    const plan::Plate* plate = plan::findPlate(plan, plate_id);
    REQUIRE(plate != nullptr);
    const auto frame = geometry::hostFrame(plan, plate->room, plate->host);
    REQUIRE(frame);
    const double elevation = plan::findStorey(plan, house::room(plan, plate->room).storey)->elevation_mm;
    std::optional<Extent> extent;
    for (const scene::Part& part : scene.parts) {
        if (part.object != plate_id || colourOf(part.material) != colour) continue;
        if (!extent) extent.emplace();
        for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; ++i) {
            Vec3 at = scene::toHouse(scene.vertices[scene.indices[i]].position);
            at.z -= elevation;
            const Vec3 p = geometry::toFrame(*frame, at);
            extent->low = {std::min(extent->low.x, p.x), std::min(extent->low.y, p.y),
                           std::min(extent->low.z, p.z)};
            extent->high = {std::max(extent->high.x, p.x), std::max(extent->high.y, p.y),
                            std::max(extent->high.z, p.z)};
        }
    }
    return extent;
}
} // namespace

TEST_CASE("a power block on a double plate of the demo hides the outlet beside it") {
    // K-21 stands at 3250 / 450; its outlets are 30.15 beside the middle (trade facts, value 45: box screws
    // of one gang, where the plate's two faces have their middles), 60.3 apart. A block of 75 and a plug of
    // 48 need 37.5 + 24 = 61.5.
    const auto places = placesOf(demo(), decided(demo()));
    const auto& left = outlet(places, "kitchen-21", 1);
    const auto& right = outlet(places, "kitchen-21", 2);
    CHECK_THAT(left.centre_mm.x, WithinAbs(-30.15, 0.01));
    CHECK_THAT(right.centre_mm.x, WithinAbs(30.15, 0.01));
    // Earth 22.2 above the others (BS 1363, from memory): the pins reach from 13.6 down to -15.4.
    CHECK_THAT(left.centre_mm.y, WithinAbs(-0.9, 0.01));
    CHECK(left.state == State::Taken);
    CHECK(left.plugged.device == "radio");
    CHECK(right.state == State::Blocked);
    CHECK(right.blocked_by == "radio");

    const auto scene = bodies(demo(), places);
    const auto block = extentOf(demo(), scene, "kitchen-21", Colour::Dark);
    REQUIRE(block);
    CHECK_THAT(block->low.x, WithinAbs(3250 - 30.15 - 37.5, kFacetMm));
    CHECK_THAT(block->high.x, WithinAbs(3250 - 30.15 + 37.5, kFacetMm));
    CHECK_THAT(block->high.y, WithinAbs(450 - 0.9 + 45, kFacetMm));
    CHECK_THAT(block->low.y, WithinAbs(450 - 0.9 - 45 - 60, kFacetMm)); // with 60 of cord
    CHECK_THAT(block->high.z, WithinAbs(80, kFacetMm));
    CHECK(extentOf(demo(), scene, "kitchen-21", Colour::Red));
    CHECK_FALSE(extentOf(demo(), scene, "kitchen-21", Colour::Green));
}

TEST_CASE("two plugs of the demo's kettle and toaster stand side by side, 55 out of the wall") {
    const auto places = placesOf(demo(), decided(demo()));
    CHECK(outlet(places, "kitchen-06", 1).plugged.device == "kettle");
    CHECK(outlet(places, "kitchen-06", 2).plugged.device == "toaster");
    const auto plugs = extentOf(demo(), bodies(demo(), places), "kitchen-06", Colour::Pale);
    REQUIRE(plugs);
    CHECK_THAT(plugs->low.x, WithinAbs(760 - 30.15 - 24, kFacetMm));
    CHECK_THAT(plugs->high.x, WithinAbs(760 + 30.15 + 24, kFacetMm));
    CHECK_THAT(plugs->low.y, WithinAbs(1075 - 0.9 - 23 - 60, kFacetMm));
}

TEST_CASE("in a frame of pitch 71 a block leaves the next outlet free") {
    // DIN 49073 pitch 71 (trade facts 1.3); 37.5 + 19.5 = 57.
    const auto places = placesOf(demo(), decided(demo()));
    CHECK(outlet(places, "study-02", 1).state == State::Taken);
    CHECK(outlet(places, "study-02", 1).plugged.plug == Kind::PowerBlock);
    CHECK(outlet(places, "study-02", 2).state == State::Free);
    const auto scene = bodies(demo(), places);
    const auto frame = extentOf(demo(), scene, "study-02", Colour::Green);
    REQUIRE(frame);
    CHECK_THAT(frame->high.x - frame->low.x, WithinAbs(39, kFacetMm));
    // The hair dryer's plug fills the recess of 38.8 (CEE 7, from memory) and its cord bends within the 55.
    const auto plug = extentOf(demo(), scene, "bedroom-07", Colour::Pale);
    REQUIRE(plug);
    CHECK_THAT(plug->high.x - plug->low.x, WithinAbs(39, kFacetMm));
    CHECK_THAT(plug->high.z, WithinAbs(55, kFacetMm));
    CHECK_THAT(plug->low.y, WithinAbs(900 - 19.5 - 60, kFacetMm));
}

TEST_CASE("each kind stands out as far as the pack says, and no further") {
    const std::map<Kind, double> depths{{Kind::Flat, 25}, {Kind::Straight, 55}, {Kind::PowerBlock, 80}};
    for (const char* type : {"b", "e", "f", "g", "i", "j", "l"})
        for (const auto& [kind, depth] : depths) {
            plan::Plan plan = room();
            addPlate(plan, "p", 1000, "round-71", {std::string("socket-") + type});
            const auto places = placesOf(plan, {{"p", "lamp", kind, ""}});
            INFO("type " << type << ", depth " << depth);
            const auto colour = kind == Kind::PowerBlock ? Colour::Dark : Colour::Pale;
            const auto extent = extentOf(plan, bodies(plan, places), "p", colour);
            REQUIRE(extent);
            CHECK_THAT(extent->high.z, WithinAbs(depth, kFacetMm));
            CHECK_THAT((extent->low.x + extent->high.x) / 2,
                       WithinAbs(1000 + outlet(places, "p", 1).centre_mm.x, kFacetMm));
        }
}

TEST_CASE(
    "a duplex has two outlets 1.5 in apart; a block hides the other one, and its mark stands before it") {
    // NEMA duplex, 38.1 between the outlets (from memory).
    plan::Plan plan = room();
    addPlate(plan, "p", 1000, "us-device", {"socket-b"});
    const auto places = placesOf(plan, {{"p", "charger", Kind::PowerBlock, "B"}});
    CHECK_THAT(outlet(places, "p", 1).centre_mm.y - outlet(places, "p", 2).centre_mm.y,
               WithinAbs(38.1, 0.01));
    CHECK(outlet(places, "p", 1).state == State::Taken);
    CHECK(outlet(places, "p", 2).state == State::Blocked);
    const auto mark = extentOf(plan, bodies(plan, places), "p", Colour::Red);
    REQUIRE(mark);
    CHECK(mark->low.z >= 80 - 0.01);
}

TEST_CASE("plugs go where they hide least: a block to the far end of a row of seven") {
    // Type L on modules of 22.5 (trade facts 1.20): 37.5 + 8.5 = 46 reaches two outlets to each side.
    plan::Plan plan = room();
    addPlate(plan, "row", 1000, "module-7", std::vector<std::string>(7, "socket-l"));
    const auto places =
        placesOf(plan, {{"row", "block", Kind::PowerBlock, ""}, {"row", "lamp", Kind::Straight, "L"}});
    REQUIRE(places.outlets.size() == 7);
    std::vector<std::string> states;
    for (const auto& place : places.outlets)
        states.push_back(place.state == State::Taken  ? place.plugged.device
                         : place.state == State::Free ? "free"
                                                      : "blocked");
    CHECK(states == std::vector<std::string>{"block", "blocked", "blocked", "lamp", "free", "free", "free"});
}

TEST_CASE("a block reaches over the plate beside its own: 61 and 62 from middle to middle") {
    // 37.5 + 24 = 61.5, whatever plates they are.
    for (const double apart : {61.0, 62.0}) {
        plan::Plan plan = room();
        addPlate(plan, "left", 1000, "rect-86", {"socket-g-plain"});
        addPlate(plan, "right", 1000 + apart, "rect-86", {"socket-g-plain"});
        const auto places = placesOf(plan, {{"left", "block", Kind::PowerBlock, ""}});
        INFO(apart);
        CHECK((outlet(places, "right", 1).state == State::Blocked) == (apart < 61.5));
        plan.plates.back().host.wall = "B";
        CHECK(outlet(placesOf(plan, {{"left", "block", Kind::PowerBlock, ""}}), "right", 1).state ==
              State::Free);
    }
}

TEST_CASE("more plugs than outlets are left over, plug and plate named; a cord outlet takes no plug") {
    plan::Plan plan = room();
    addPlate(plan, "p", 1000, "round-71", {"socket-f"});
    addPlate(plan, "cord", 2000, "round-71", {"cord-outlet"});
    const auto places = placesOf(plan, {{"p", "one", Kind::Straight, "F"},
                                        {"p", "two", Kind::Straight, "F"},
                                        {"cord", "boiler", Kind::Straight, "F"},
                                        {"gone", "three", Kind::Straight, "F"}});
    CHECK(outlet(places, "p", 1).plugged.device == "one");
    REQUIRE(places.left_over.size() == 2);
    CHECK(places.left_over[0].device == "two");
    CHECK(places.left_over[1].device == "three");
    CHECK(outlet(places, "cord", 1).fixed);
    // Its cord of 8 comes out of the plate's middle.
    const auto cord = extentOf(plan, bodies(plan, places), "cord", Colour::Pale);
    REQUIRE(cord);
    CHECK(cord->high.x - cord->low.x < 15);
    CHECK_THAT(cord->low.y, WithinAbs(1000 - 60, kFacetMm));
}

TEST_CASE("plugs are a kind and a layer of their own, and face outwards") {
    const auto scene = bodies(demo(), placesOf(demo(), decided(demo())));
    REQUIRE_FALSE(scene.parts.empty());
    int wrong = 0;
    for (const scene::Part& part : scene.parts) {
        CHECK(part.kind == scene::PartKind::Plug);
        CHECK(part.layer == scene::kLayerPlugs);
        for (std::uint32_t i = part.first_index; i < part.first_index + part.index_count; i += 3) {
            const auto vertex = [&](std::uint32_t k) { return scene.vertices[scene.indices[i + k]]; };
            const glm::vec3 normal =
                glm::cross(vertex(1).position - vertex(0).position, vertex(2).position - vertex(0).position);
            if (glm::length(normal) > 1e-9f && glm::dot(normal, vertex(0).normal) <= 0) ++wrong;
        }
    }
    CHECK(wrong == 0);
}

TEST_CASE("plugs of a plate move with it in a patch, and the others stay") {
    plan::Plan plan = room();
    addPlate(plan, "a", 1000, "round-71", {"socket-f"});
    addPlate(plan, "b", 2000, "round-71", {"socket-f"});
    const std::vector<catalogue::PluggedIn> plugged{{"a", "one", Kind::Straight, "F"},
                                                    {"b", "two", Kind::Straight, "F"}};
    const auto whole = [&] {
        scene::Scene scene = scene::build(plan, house::catalogue());
        scene::addPlugBodies(scene, geometry::HouseIndex(plan), house::catalogue(), international(),
                             placesOf(plan, plugged));
        return scene;
    };
    scene::LiveScene live(whole());
    plan.plates.front().host.u_mm = 1400;
    auto patch = scene::patchFor(plan, house::catalogue(), {{"a"}, {}, {}});
    const std::set<std::string> moved{"a"};
    scene::addPlugBodies(patch.drawn, geometry::HouseIndex(plan), house::catalogue(), international(),
                         placesOf(plan, plugged), &moved);
    live.apply(patch);
    const scene::Scene built = whole();
    for (const char* plate : {"a", "b"}) {
        const auto now = extentOf(plan, live.scene(), plate, Colour::Pale);
        const auto wanted = extentOf(plan, built, plate, Colour::Pale);
        REQUIRE((now && wanted));
        CHECK_THAT(now->low.x, WithinAbs(wanted->low.x, 0.01));
        CHECK_THAT(now->high.x, WithinAbs(wanted->high.x, 0.01));
    }
}
