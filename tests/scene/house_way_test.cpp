#include "scene/house_way.hpp"

#include "plan/io.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {
struct Demo {
    plan::Plan plan;
    std::map<std::string, scene::WalkMap> maps;
    std::vector<scene::StairLink> stairs;

    Demo() {
        auto read = plan::readFile(std::string(GANGWAY_ASSETS_DIR) + "/demo/terrace.plan.json");
        REQUIRE(read);
        plan = std::move(read->plan);
        for (const auto& storey : plan.storeys)
            maps.emplace(storey.id, scene::WalkMap(plan, storey.id));
        stairs = scene::stairLinks(plan);
    }
    plan::Vec2 middleOf(const std::string& room_id) const {
        const plan::Room* room = plan::findRoom(plan, room_id);
        REQUIRE(room != nullptr);
        plan::Vec2 sum;
        for (const auto& corner : room->outline)
            sum = sum + corner * (1.0 / static_cast<double>(room->outline.size()));
        return sum;
    }
};

int storeyChanges(const std::vector<scene::WayPoint>& way, std::string storey) {
    int changes = 0;
    for (const auto& point : way)
        if (point.storey != storey) {
            storey = point.storey;
            ++changes;
        }
    return changes;
}
} // namespace

TEST_CASE("one walks from the kitchen up both stairs to the attic, and down again") {
    const Demo demo;
    const scene::WayPoint kitchen{demo.maps.at("ground").nearestFree(demo.middleOf("kitchen")), "ground"};
    const scene::WayPoint attic{demo.maps.at("attic").nearestFree(demo.middleOf("attic")), "attic"};
    const auto up = scene::wayThroughHouse(demo.maps, demo.stairs, kitchen, attic);
    REQUIRE_FALSE(up.empty());
    CHECK(up.back().storey == "attic");
    CHECK(storeyChanges(up, "ground") == 2);
    for (const auto& point : up)
        CHECK(demo.maps.at(point.storey).free(point.at_mm));
    const auto down = scene::wayThroughHouse(demo.maps, demo.stairs, attic, kitchen);
    REQUIRE_FALSE(down.empty());
    CHECK(down.back().storey == "ground");
    CHECK(storeyChanges(down, "attic") == 2);
}

TEST_CASE("to the far end of a stair, where one would stand anyway, there is a way") {
    const Demo demo;
    REQUIRE_FALSE(demo.stairs.empty());
    const auto& stair = demo.stairs.front();
    const auto up = scene::wayThroughHouse(demo.maps, demo.stairs, {stair.lower_mm, stair.lower_storey},
                                           {stair.upper_mm, stair.upper_storey});
    REQUIRE_FALSE(up.empty());
    CHECK(up.back().storey == stair.upper_storey);
    CHECK(up.back().at_mm == stair.upper_mm);
}

TEST_CASE("without stairs there is no way to another storey") {
    const Demo demo;
    const scene::WayPoint kitchen{demo.maps.at("ground").nearestFree(demo.middleOf("kitchen")), "ground"};
    CHECK(scene::wayThroughHouse(demo.maps, {}, kitchen, {demo.middleOf("attic"), "attic"}).empty());
    CHECK(scene::wayThroughHouse(demo.maps, demo.stairs, kitchen, {{0, 0}, "cellar"}).empty());
}
