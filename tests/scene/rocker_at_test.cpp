#include "house.hpp"

#include "scene/rocker_at.hpp"

#include <algorithm>
#include <set>

using namespace gangway;
using Catch::Matchers::WithinAbs;

namespace {
plan::Plate plateOf(const std::string& format, const std::vector<std::string>& modules) {
    plan::Plate plate;
    plate.id = std::string("switches");
    plate.format = format;
    for (const std::string& type : modules)
        plate.modules.emplace_back().type = type;
    return plate;
}
} // namespace

TEST_CASE("the middle of each rocker works a way of its own, and every way can be worked, in every format") {
    int checked = 0;
    for (const catalogue::PlateFormat& format : house::catalogue().formats) {
        for (const catalogue::ModuleType& module : house::catalogue().modules) {
            if (!catalogue::isMadeFor(module, format)) continue;
            const int ways = catalogue::moduleFor(module, format).ways;
            const plan::Plate plate = plateOf(format.id, {module.id});
            INFO(module.id << " in " << format.id << " with " << ways << " ways");
            const auto rockers = scene::rockersOf(house::catalogue(), plate);
            std::set<int> worked;
            for (const scene::Rocker& rocker : rockers) {
                const auto way = scene::rockerAt(house::catalogue(), plate, rocker.centre_mm);
                REQUIRE(way);
                CHECK(*way == rocker.way);
                worked.insert(way->way);
            }
            CHECK(worked.size() == static_cast<std::size_t>(ways));
            if (ways > 0) CHECK((*worked.begin() == 1 && *worked.rbegin() == ways));
            checked += ways > 1 ? 1 : 0;
        }
    }
    CHECK(checked > 4);
}

TEST_CASE("rockers count from the left, module by module, and the frame beside them works nothing") {
    const plan::Plate plate = plateOf("round-71", {"switch-2circuit", "socket-f", "switch-1way"});
    const auto rockers = scene::rockersOf(house::catalogue(), plate);
    REQUIRE(rockers.size() == 3);
    CHECK(std::ranges::is_sorted(rockers, {}, [](const auto& rocker) { return rocker.centre_mm.x; }));
    CHECK(rockers[0].way == plan::WayRef{"switches", 1, 1});
    CHECK(rockers[1].way == plan::WayRef{"switches", 1, 2});
    CHECK(rockers[2].way == plan::WayRef{"switches", 3, 1});
    // Three gangs at a pitch of 71 (trade rule of DIN 49073 boxes): the first module's middle is 71 left of the
    // plate's, the last one's 71 right.
    CHECK_THAT((rockers[0].centre_mm.x + rockers[1].centre_mm.x) / 2, WithinAbs(-71, 0.01));
    CHECK_THAT(rockers[2].centre_mm.x, WithinAbs(71, 0.01));
    CHECK_FALSE(scene::rockerAt(house::catalogue(), plate, {0, 0})); // the socket outlet
    // The frame is 81 + 2 x 71 = 223 wide and 81 high; 2 mm inside its edge no rocker reaches.
    CHECK_FALSE(scene::rockerAt(house::catalogue(), plate, {109.5, 0}));
    CHECK_FALSE(scene::rockerAt(house::catalogue(), plate, {71, 38.5}));
}

TEST_CASE("a point of the stage on a wall's plate finds the same rocker as on its front") {
    plan::Plan plan = house::read();
    for (plan::Plate& plate : plan.plates)
        if (plate.host.kind == plan::Host::Kind::Wall) {
            plate.direction = plan::Direction::Horizontal;
            plate.gangs = 0;
            plate.modules.assign(1, {});
            plate.modules.front().type = std::string("switch-2circuit");
        }
    const geometry::HouseIndex house(plan);
    int found = 0;
    for (const plan::Plate& plate : plan.plates) {
        if (plate.host.kind != plan::Host::Kind::Wall) continue;
        INFO(plate.id);
        for (const scene::Rocker& rocker : scene::rockersOf(house::catalogue(), plate)) {
            const auto point = scene::onPlate(house, plate, rocker.centre_mm);
            REQUIRE(point);
            const auto way = scene::rockerAt(house, house::catalogue(), plate, *point);
            REQUIRE(way);
            CHECK(*way == rocker.way);
            ++found;
        }
        // Left as seen from inside the room is left on the stage too: the second rocker lies along the
        // wall's u from the first.
        const auto rockers = scene::rockersOf(house::catalogue(), plate);
        REQUIRE(rockers.size() == 2);
        const auto frame = geometry::hostFrame(house, plate.room, plate.host);
        REQUIRE(frame);
        const plan::Vec3 apart = scene::toHouse(*scene::onPlate(house, plate, rockers[1].centre_mm) -
                                                *scene::onPlate(house, plate, rockers[0].centre_mm));
        CHECK(plan::dot(apart, frame->u) > 5);
    }
    CHECK(found >= 4);
}
