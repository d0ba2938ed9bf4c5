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
    // Three gangs at a pitch of 71 (trade rule of DIN 49073 boxes): the first module's middle is 71 left of
    // the plate's, the last one's 71 right.
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

namespace {
/// The catalogue with one more module, made for the round formats, whose front is as given.
catalogue::Catalogue withModule(int ways, catalogue::WayAction action, std::vector<plan::Vec2> rockers,
                                plan::Vec2 size_mm) {
    catalogue::Catalogue catalogue = house::catalogue();
    catalogue::ModuleType& module = catalogue.modules.emplace_back();
    module.id = std::string("own-switch");
    module.kind = catalogue::ModuleKind::Switch;
    module.ways = ways;
    module.action = action;
    module.families = {"round"};
    for (const plan::Vec2 centre : rockers) {
        catalogue::FrontShape& shape = module.front.emplace_back();
        shape.role = catalogue::FrontShape::Role::Rocker;
        shape.centre_mm = centre;
        shape.width_mm = size_mm.x;
        shape.height_mm = size_mm.y;
    }
    return catalogue;
}

int wayAt(const catalogue::Catalogue& catalogue, plan::Vec2 at) {
    const auto way = scene::rockerAt(catalogue, plateOf("round-71", {"own-switch"}), at);
    return way ? way->way : 0;
}
} // namespace

TEST_CASE("rockers one above the other count from the top; keys in pairs work a way a pair") {
    using catalogue::WayAction;
    const auto three = withModule(3, WayAction::OneWay, {{0, -17}, {0, 17}, {0, 0}}, {50, 16});
    CHECK(wayAt(three, {20, 17}) == 1);
    CHECK(wayAt(three, {-20, 0}) == 2);
    CHECK(wayAt(three, {20, -17}) == 3);
    const auto pairs = withModule(2, WayAction::Push, {{-12, 12}, {12, 12}, {-12, -12}, {12, -12}}, {22, 22});
    CHECK(wayAt(pairs, {-12, 12}) == 1);
    CHECK(wayAt(pairs, {-12, -12}) == 1);
    CHECK(wayAt(pairs, {12, 12}) == 2);
    CHECK(wayAt(pairs, {12, -12}) == 2);
}

TEST_CASE("a front with another number of rockers is shared out as they lie") {
    using catalogue::WayAction;
    // Two shapes for three ways, one above the other: three rows of the box round them, 48 high.
    const auto rows = withModule(3, WayAction::OneWay, {{0, 13}, {0, -13}}, {50, 22});
    CHECK(wayAt(rows, {-20, 20}) == 1);
    CHECK(wayAt(rows, {20, 0}) == 2);
    CHECK(wayAt(rows, {0, -20}) == 3);
    // Side by side: three columns.
    const auto columns = withModule(3, WayAction::OneWay, {{-13, 0}, {13, 0}}, {22, 50});
    CHECK(wayAt(columns, {-20, 20}) == 1);
    CHECK(wayAt(columns, {0, -20}) == 2);
    CHECK(wayAt(columns, {20, 0}) == 3);
    // One rocker for up and down: up is way 1 (catalogue.hpp, WayAction::Motor).
    const auto blind = withModule(2, WayAction::Motor, {{0, 0}}, {50, 50});
    CHECK(wayAt(blind, {0, 15}) == 1);
    CHECK(wayAt(blind, {0, -15}) == 2);
    const auto pair = withModule(2, WayAction::OneWay, {{0, 0}}, {50, 50});
    CHECK(wayAt(pair, {-15, 10}) == 1);
    CHECK(wayAt(pair, {15, 10}) == 2);
}
