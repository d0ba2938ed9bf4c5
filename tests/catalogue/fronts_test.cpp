// Fronts are drawn from remembered geometry of the plug standards; the checks compare with those numbers.
#include "shipped_catalogue.hpp"

#include <algorithm>

using namespace gangway;
using catalogue::FrontShape;
using Role = FrontShape::Role;

namespace {

std::vector<FrontShape> ofRole(const std::string& module, Role role) {
    std::vector<FrontShape> shapes;
    for (const FrontShape& shape : shippedCatalogue().module(module)->front)
        if (shape.role == role) shapes.push_back(shape);
    return shapes;
}

} // namespace

TEST_CASE("a type F socket has a round well with two pins 19 apart and earth clips above and below") {
    // CEE 7/3 geometry, from memory.
    const auto wells = ofRole("socket-f", Role::Well);
    REQUIRE(wells.size() == 1);
    CHECK(wells[0].kind == FrontShape::Kind::Circle);
    CHECK(wells[0].width_mm == 38.8);
    CHECK(wells[0].relief_mm == -17);
    const auto pins = ofRole("socket-f", Role::Pin);
    REQUIRE(pins.size() == 2);
    CHECK(pins[1].centre_mm.x - pins[0].centre_mm.x == 19);
    CHECK(pins[0].width_mm == 4.8);
    const auto clips = ofRole("socket-f", Role::Contact);
    REQUIRE(clips.size() == 2);
    CHECK(clips[0].centre_mm.y == -clips[1].centre_mm.y);
}

TEST_CASE("a type E socket has its earth pin standing in the well, above the holes") {
    const auto pins = ofRole("socket-e", Role::Pin);
    const auto earth = ofRole("socket-e", Role::Contact);
    REQUIRE(pins.size() == 2);
    REQUIRE(earth.size() == 1);
    CHECK(earth[0].centre_mm.y - pins[0].centre_mm.y == 10);                       // from memory
    CHECK(earth[0].relief_mm - ofRole("socket-e", Role::Well)[0].relief_mm == 14); // from memory
}

TEST_CASE("a type G socket has an upright earth slot above two lying ones, and a rocker") {
    // BS 1363 geometry, from memory: 22.2 between line and neutral, 22.2 from their line to the earth.
    const auto slots = ofRole("socket-g", Role::Pin);
    REQUIRE(slots.size() == 3);
    CHECK(slots[0].height_mm > slots[0].width_mm);
    CHECK(slots[1].width_mm > slots[1].height_mm);
    CHECK(slots[2].centre_mm.x - slots[1].centre_mm.x == Approx(22.2));
    CHECK(slots[0].centre_mm.y - slots[1].centre_mm.y == Approx(22.2));
    CHECK(ofRole("socket-g", Role::Rocker).size() == 1);
    CHECK(ofRole("socket-g-double", Role::Pin).size() == 6);
    CHECK(ofRole("socket-g-double", Role::Rocker).size() == 2);
}

TEST_CASE("a type L socket has three holes in line") {
    const auto holes = ofRole("socket-l", Role::Pin);
    REQUIRE(holes.size() == 3);
    for (const auto& hole : holes)
        CHECK(hole.centre_mm.x == 0);
    CHECK(holes[0].centre_mm.y - holes[2].centre_mm.y == 19); // 10 A plug, from memory
}

TEST_CASE("a type I socket has two slots turned 30 degrees and an upright one") {
    const auto slots = ofRole("socket-i", Role::Pin);
    REQUIRE(slots.size() == 3);
    CHECK(slots[0].turn_deg == -slots[1].turn_deg);
    CHECK(std::abs(slots[0].turn_deg) == 30);
    CHECK(slots[2].turn_deg == 0);
}

TEST_CASE("a switch has as many rockers as circuits") {
    for (const auto& format : shippedCatalogue().formats) {
        INFO(format.id);
        const auto rockers = [&](const std::string& id) {
            const auto& module = catalogue::moduleFor(*shippedCatalogue().module(id), format);
            return std::ranges::count(module.front, Role::Rocker, &FrontShape::role);
        };
        CHECK(rockers("switch-1way") == 1);
        CHECK(rockers("switch-2circuit") == 2);
        CHECK(rockers("switch-3circuit") == 3);
        CHECK(rockers("switch-2way") == 1);
    }
}

TEST_CASE("every front stays within its opening in every format the module is made for") {
    for (const auto& format : shippedCatalogue().formats)
        for (const auto& module : shippedCatalogue().modules) {
            if (!catalogue::isMadeFor(module, format)) continue;
            auto plate = plateOf(format.id, {module.id});
            plate.box_depth_mm = 80;
            const auto composed = catalogue::compose(shippedCatalogue(), plate);
            INFO(format.id << " " << module.id);
            CHECK(composed.problems == std::vector<std::string>{});
        }
}

TEST_CASE("whatever has a plug, a switch or a jack shows something on its face") {
    for (const auto& module : shippedCatalogue().modules) {
        INFO(module.id);
        CHECK(module.front.empty() == (module.id == "blank"));
        for (const auto& shape : module.front)
            CHECK((shape.kind == FrontShape::Kind::Polyline) == (shape.points_mm.size() >= 2));
    }
}

TEST_CASE("two-way and intermediate switches carry marks, a one-way none") {
    CHECK(ofRole("switch-1way", Role::Mark).empty());
    CHECK_FALSE(ofRole("switch-2way", Role::Mark).empty());
    CHECK_FALSE(ofRole("switch-intermediate", Role::Mark).empty());
}
