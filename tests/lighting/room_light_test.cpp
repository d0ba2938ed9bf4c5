// Light in whole rooms: what walls, doors and furniture let through, and the numbers of a room.
#include "lighting/light_grid.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gangway;
using lighting::LightOptions;

namespace {

plan::Room roomOf(const std::string& id, double x0, double width, double depth = 3000) {
    plan::Room room;
    room.id = id;
    room.name = id;
    room.storey = "ground";
    room.outline = {{x0, depth}, {x0 + width, depth}, {x0 + width, 0}, {x0, 0}};
    for (const char* wall : {"A", "B", "C", "D"}) {
        plan::Wall one;
        one.id = wall;
        room.walls.push_back(one);
    }
    return room;
}

plan::Luminaire ceilingLamp(const std::string& room, double east, double north) {
    plan::Luminaire lamp;
    lamp.id = room + "-lamp";
    lamp.kind = plan::Luminaire::Kind::Recessed;
    lamp.room = room;
    lamp.host.kind = plan::Host::Kind::Ceiling;
    lamp.host.u_mm = east;
    lamp.host.v_mm = north;
    lamp.lumens = 1000;
    return lamp;
}

/// Two rooms of 4 x 3 m side by side, a wall of 100 between, a lamp in the middle of the left one.
plan::Plan twoRooms() {
    plan::Plan plan;
    plan.storeys.push_back({"ground", "Ground floor", 0, "", {}, {}});
    plan.rooms = {roomOf("left", 0, 4000), roomOf("right", 4100, 4000)};
    plan.luminaires = {ceilingLamp("left", 2000, 1500)};
    return plan;
}

catalogue::CountryPack packWith(double utilisation, double maintenance) {
    catalogue::CountryPack pack;
    pack.utilisation.value = utilisation;
    pack.maintenance.value = maintenance;
    pack.work_plane_mm.value = 750;
    return pack;
}

lighting::RoomLight lightOf(const plan::Plan& plan, const std::string& room,
                            const LightOptions& options = {}) {
    const geometry::HouseIndex house(plan);
    auto light = lighting::roomLight(house, packWith(0.5, 0.8), room, options);
    if (!light) throw std::runtime_error(light.error());
    return *light;
}

double luxNear(const lighting::RoomLight& light, plan::Vec2 at) {
    const auto& grid = light.grid;
    return grid.at(static_cast<int>((at.x - grid.origin_mm.x) / grid.cell_mm),
                   static_cast<int>((at.y - grid.origin_mm.y) / grid.cell_mm));
}

} // namespace

TEST_CASE("a wall without opening lets nothing into the next room, an open door does") {
    plan::Plan plan = twoRooms();
    CHECK(lightOf(plan, "left").levels.average_lx > 20);
    CHECK(lightOf(plan, "right").levels.maximum_lx == 0);
    plan::Opening door;
    door.id = "door";
    door.kind = plan::Opening::Kind::Plain;
    door.room = "left";
    door.wall = "B"; // the right-hand wall of the left room
    door.left_mm = 1000;
    door.width_mm = 1000;
    door.height_mm = 2100;
    door.joins = "right";
    plan.openings.push_back(door);
    const auto through = lightOf(plan, "right");
    CHECK(through.levels.maximum_lx > 1);
    CHECK(through.levels.minimum_lx == 0); // beside the door it stays dark
    // Straight behind the door there is light, in the corner beside it none.
    CHECK(luxNear(through, {4300, 1500}) > 0);
    CHECK(luxNear(through, {4300, 200}) == 0);
    LightOptions bare;
    bare.shadows = false;
    CHECK(lightOf(plan, "right", bare).levels.minimum_lx > 0);
}

TEST_CASE("the light under a lone lamp is what the law says, and a room's numbers follow from its cells") {
    const plan::Plan plan = twoRooms();
    LightOptions options;
    options.cell_mm = 100;
    const auto light = lightOf(plan, "left", options);
    // A recessed lamp of 110 degrees, 12 under the ceiling at 2400, plane 750: h = 1.638 m. The cell nearest
    // to the lamp has its middle 70.7 aside.
    const auto shape = lighting::Distribution::beam(1000, 110);
    const double h = 1.638;
    const double r = 0.0707;
    const double slant = std::sqrt(h * h + r * r);
    CHECK(light.levels.maximum_lx ==
          Approx(shape.intensity(h / slant) * h / std::pow(slant, 3)).epsilon(1e-3));
    // The strip along the walls: 15 % of 3000 = 450, so 32 x 22 cells count, from the middle 450 to 3550 and
    // 2550.
    CHECK(light.margin_mm == Approx(450));
    CHECK(light.grid.lux.size() == 40 * 30);
    double sum = 0;
    double least = 1e9;
    for (int row = 4; row < 26; ++row)
        for (int column = 4; column < 36; ++column) {
            sum += light.grid.at(column, row);
            least = std::min(least, light.grid.at(column, row));
        }
    CHECK(light.levels.average_lx == Approx(sum / 704));
    CHECK(light.levels.minimum_lx == Approx(least));
    CHECK(light.levels.uniformity == Approx(least / (sum / 704)));
    // 8.1 by hand: 1000 lm x 0.5 x 0.8 / 12 m2 = 33.3 lx. 8.2: k = 4 x 3 / ((4 + 3) 1.638) = 1.047.
    CHECK(light.area_m2 == Approx(12));
    CHECK(light.lumen_method_lx == Approx(33.33).epsilon(1e-3));
    CHECK(light.room_index == Approx(12 / (7 * 1.638)).epsilon(1e-3));
    // No more light falls on the plane than leaves the lamp.
    double all = 0;
    for (double lux : light.grid.lux)
        all += lux * 0.01;
    CHECK(all < 1000);
    CHECK(all > 500);
}

TEST_CASE("dimming is in proportion and a lamp that is off gives nothing") {
    const plan::Plan plan = twoRooms();
    LightOptions options;
    options.levels["left-lamp"] = 0.25f;
    const double full = lightOf(plan, "left").levels.average_lx;
    CHECK(lightOf(plan, "left", options).levels.average_lx == Approx(full / 4));
    CHECK(lightOf(plan, "left", options).lumens == Approx(250));
    options.levels["left-lamp"] = 0;
    CHECK(lightOf(plan, "left", options).levels.maximum_lx == 0);
}

TEST_CASE("turning and moving a house changes no light") {
    const plan::Plan plan = twoRooms();
    plan::Plan moved = plan;
    // A quarter turn counter-clockwise and 60 m away; the lamp sits in the middle, so its place stays.
    for (plan::Room& room : moved.rooms)
        for (plan::Vec2& p : room.outline)
            p = {60000 - p.y, p.x - 40000};
    moved.luminaires[0].host.u_mm = 1500;
    moved.luminaires[0].host.v_mm = 2000;
    const auto a = lightOf(plan, "left").levels;
    const auto b = lightOf(moved, "left").levels;
    CHECK(b.average_lx == Approx(a.average_lx).epsilon(1e-6));
    CHECK(b.minimum_lx == Approx(a.minimum_lx).epsilon(1e-6));
}

TEST_CASE("a worktop carries the plane, a wardrobe has no value, a shelf throws its shadow") {
    plan::Plan plan = twoRooms();
    plan.luminaires[0].kind = plan::Luminaire::Kind::Ceiling;
    plan::Furniture table;
    table.id = "table";
    table.kind = "dining-table";
    table.room = "left";
    table.layer = "furniture";
    table.at_mm = {2000, 1500};
    table.size = {1200, 800, 900};
    plan::Furniture wardrobe = table;
    wardrobe.id = "wardrobe";
    wardrobe.kind = "wardrobe";
    wardrobe.at_mm = {600, 2700};
    wardrobe.size = {1200, 600, 2200};
    plan.furniture = {table, wardrobe};
    const auto light = lightOf(plan, "left");
    // On the table at 905, under a cosine lamp at 2310: E = 1000 / pi cos^4 / h2, about 160 lx; the plane at
    // 750 would get about 130.
    const double aside = length(light.grid.middleOf(8, 6) - plan::Vec2{2000, 1500}) / 1000;
    const double h = (2310 - 905) / 1000.0;
    const double expected = 1000 / 3.14159265 * h * h / std::pow(h * h + aside * aside, 2);
    CHECK(luxNear(light, light.grid.middleOf(8, 6)) == Approx(expected).epsilon(0.01));
    CHECK(std::isnan(luxNear(light, {600, 2700})));
    CHECK_FALSE(std::isnan(luxNear(light, {600, 300})));
}

TEST_CASE("light on a wall follows the cosine law and leaves out its holes") {
    plan::Plan plan = twoRooms();
    plan.luminaires[0].kind = plan::Luminaire::Kind::Ceiling;
    plan::Opening window;
    window.id = "window";
    window.kind = plan::Opening::Kind::Window;
    window.room = "left";
    window.wall = "A";
    window.left_mm = 500;
    window.width_mm = 1000;
    window.sill_mm = 900;
    window.height_mm = 1200;
    plan.openings.push_back(window);
    const geometry::HouseIndex house(plan);
    const lighting::LitStorey storey(house, "ground", {});
    const auto light = lighting::verticalLight(storey, "left", 0);
    REQUIRE(light.has_value());
    CHECK(light->wall == "A");
    const auto& grid = light->grid;
    const auto valueAt = [&](double u, double v) {
        return grid.at(static_cast<int>((u - grid.origin_mm.x) / grid.cell_mm),
                       static_cast<int>((v - grid.origin_mm.y) / grid.cell_mm));
    };
    CHECK(std::isnan(valueAt(1000, 1500)));
    // Lamp 1.5 m before the wall at u = 2000, 2310 high, a flat emitter looking down: cos at the lamp is drop
    // / d, cos at the wall 1.498 / d.
    const int column = static_cast<int>((2100 - grid.origin_mm.x) / grid.cell_mm);
    const int row = static_cast<int>((1000 - grid.origin_mm.y) / grid.cell_mm);
    const plan::Vec2 at = grid.middleOf(column, row);
    const double drop = (2310 - at.y) / 1000;
    const double aside = (at.x - 2000) / 1000;
    const double square = 1.498 * 1.498 + drop * drop + aside * aside;
    CHECK(grid.at(column, row) == Approx(1000 / 3.14159265 * drop * 1.498 / (square * square)).epsilon(1e-3));
    CHECK_FALSE(lighting::verticalLight(storey, "left", 9).has_value());
}

TEST_CASE("long lamps are spread over their length and have the lamp's lumens") {
    plan::Plan plan = twoRooms();
    plan.luminaires[0].kind = plan::Luminaire::Kind::Linear;
    plan.luminaires[0].size_mm = 1200;
    const geometry::HouseIndex house(plan);
    const auto emitters = lighting::emittersOf(house, {&plan.luminaires[0]}, {}).points;
    REQUIRE(emitters.size() == 8);
    CHECK(emitters.front().at_mm.x == Approx(1475)); // 2000 - 600 + 75
    CHECK(emitters.back().at_mm.x == Approx(2525));
    double lumens = 0;
    for (const auto& emitter : emitters)
        lumens += emitter.part * emitter.distribution->lumens();
    CHECK(lumens == Approx(1000));
}

TEST_CASE("pendants hang by their drop, wall lights stand out, lamps under units shine down") {
    plan::Plan plan = twoRooms();
    auto& lamp = plan.luminaires[0];
    const geometry::HouseIndex house(plan);
    const auto only = [&] { return lighting::emittersOf(house, {&lamp}, {}).points.at(0); };
    lamp.kind = plan::Luminaire::Kind::Pendant;
    lamp.drop_mm = 900;
    CHECK(only().at_mm.z == Approx(2400 - 910));
    CHECK(only().aim == plan::Vec3{0, 0, -1});
    lamp.kind = plan::Luminaire::Kind::Wall;
    lamp.host = {plan::Host::Kind::Wall, "A", "", "", 1000, 1600};
    CHECK(only().at_mm.z == Approx(1600));
    CHECK(only().at_mm.y < 3000 - 90);
    CHECK(only().aim.y == Approx(-1)); // wall A is to the north: it shines south
    lamp.host.wall = "Z";
    const auto missing = lighting::emittersOf(house, {&lamp}, {});
    CHECK(missing.points.empty());
    CHECK(missing.problems.size() == 1);
}

TEST_CASE("a huge hall has a bounded number of cells, an unknown room is said") {
    plan::Plan plan;
    plan.storeys.push_back({"ground", "Ground floor", 0, "", {}, {}});
    plan.rooms = {roomOf("hall", 0, 900000, 400000)};
    const auto light = lightOf(plan, "hall");
    CHECK(light.grid.lux.size() <= 40000);
    const geometry::HouseIndex house(plan);
    CHECK(lighting::roomLight(house, packWith(0.5, 0.8), "attic").error() == "there is no room 'attic'");
}
