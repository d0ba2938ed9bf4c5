#include "plan/furniture_kinds.hpp"
#include "plan/io.hpp"
#include "plan/text_files.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gangway::plan;
using namespace gangway::plan::testing;

namespace {
Plan cottage() {
    auto result = readFile(fixtures() / "fixtures" / "cottage.plan.json");
    REQUIRE(result);
    CHECK(result->warnings.empty());
    return std::move(result->plan);
}
} // namespace

TEST_CASE("the fixture is read into every field") {
    const Plan plan = cottage();
    CHECK(plan.project.approved_by == "Nobody");
    CHECK(plan.project.notes == "Every key of the format occurs here.\nThis house is invented.");
    CHECK(plan.pack == "uk");
    CHECK(plan.units == DisplayUnits::FeetInches);
    CHECK(plan.layers[1].visibility == Visibility::Ghosted);
    CHECK(plan.storeys[0].site_line_mm == 1000.0);
    CHECK(plan.storeys[1].elevation_mm == 2750);
    const Room& kitchen = plan.rooms[0];
    CHECK(kitchen.name == "K\xC3\xBC"
                          "che");
    CHECK(kitchen.walls[0].structure == WallStructure::Masonry);
    CHECK(kitchen.walls[0].build_up[1].thickness_mm == 9.5);
    CHECK(kitchen.walls[0].lines[1].tile_width_mm == 200);
    CHECK(kitchen.walls[0].lines[1].start_v_mm == 920);
    CHECK(kitchen.walls[0].lines[1].to_mm == std::nullopt);
    CHECK(kitchen.walls[0].studs->first_mm == 300);
    CHECK(kitchen.columns[0][2] == Vec2{2300, 1300});
    CHECK(kitchen.ceiling.heights_mm == std::vector<double>{2500});
    CHECK(kitchen.floor_build_up[0].material == "screed");
    const Ceiling& slope = plan.rooms[1].ceiling;
    CHECK(slope.heights_mm.size() == 6);
    CHECK(slope.creases[0] == std::pair(1, 4));
    CHECK(slope.joists->direction_deg == 90);
    const Opening& door = plan.openings[0];
    CHECK(door.kind == Opening::Kind::HingedDoor);
    CHECK(door.hinge == Side::Right);
    CHECK(door.swing == Swing::Out);
    CHECK(door.leaf_mm == 826.0);
    CHECK(door.stop_deg == 110);
    CHECK(plan.openings[1].cavity_mm == 850);
    CHECK(plan.openings[2].reveal_mm == 120);
    CHECK(plan.furniture[0].with == std::vector<std::pair<std::string, double>>{{"doors", 2}});
    CHECK(plan.furniture[0].turn_deg == -90);
    CHECK(plan.furniture[2].file == "statue.glb");
    const Plate& plate = plan.plates[0];
    CHECK(plate.host == Host{Host::Kind::Wall, "north", "", "", 1200.5, 1073});
    CHECK(plate.direction == Direction::Vertical);
    CHECK(plate.modules[0].type == "socket-g");
    CHECK(plate.modules[1].label == "hob");
    CHECK(plate.tolerance == SiteTolerance{20, 5});
    CHECK(plate.box_depth_mm == 47.0);
    CHECK(plan.plates[1].host == Host{Host::Kind::Floor, "", "", "", 1000, 500});
    CHECK(plan.plates[2].host == Host{Host::Kind::Furniture, "", "dresser", "back", 600, 300});
    CHECK(plan.plates[3].host == Host{Host::Kind::Furniture, "", "dresser", "top", 600, 200});
    CHECK(plan.plates[4].host.kind == Host::Kind::Ceiling);
    CHECK(plan.devices[0].lead_exit_mm == Vec3{2900, 2800, 950});
    CHECK(plan.devices[0].plug == Device::Plug::Flat);
    CHECK(plan.luminaires[0].dimmable);
    CHECK(plan.luminaires[0].watts == 9.5);
    CHECK(plan.legs[0].controls[1] == WayRef{"kitchen-01", 2, 2});
    CHECK(plan.agreements[1].answer == Agreement::Answer::Agree);
}

TEST_CASE("what is left out is taken from the furniture kind, the storey and the format's defaults") {
    const Plan plan = cottage();
    const FurnitureKind* bed = findFurnitureKind("bed");
    REQUIRE(bed != nullptr);
    CHECK(plan.furniture[1].name == bed->name);
    CHECK(plan.furniture[1].layer == bed->layer);
    CHECK(plan.furniture[1].size.width_mm == bed->size.width_mm);
    CHECK(plan.plates[0].format == "rect-86");
    CHECK(plan.plates[1].format == "round-71");
    CHECK(plan.plates[4].format.empty()); // the loft states none
    CHECK(plan.luminaires[1].kelvin == 2700);
}

TEST_CASE("the five layers stand in front of the designer's own when they are missing") {
    const auto result =
        read(R"({"gangway": 1, "layers": [{"id": "art", "name": "Art"}, {"id": "soft", "name": "S"}]})");
    REQUIRE(result);
    std::vector<std::string> ids;
    for (const Layer& layer : result->plan.layers)
        ids.push_back(layer.id);
    CHECK(ids == std::vector<std::string>{"building", "furniture", "lamps", "plates", "art", "soft"});
}

TEST_CASE("the order of keys in the file does not matter") {
    const auto result = read(R"({"plates": [{"room": "r", "height": 1, "setOut": 2, "wall": "A", "id": "p"}],
        "rooms": [{"outline": [[0,1000],[1000,1000],[1000,0],[0,0]], "storey": "g", "name": "R", "id": "r"}],
        "storeys": [{"plateFormat": "round-71", "name": "G", "id": "g"}], "gangway": 1})");
    REQUIRE(result);
    CHECK(result->plan.plates[0].format == "round-71");
}

TEST_CASE("what reading found wrong is not reported again by the checks of meaning") {
    // The room has an unreadable corner, so nothing can be said about the plate on its wall.
    const auto result = read(R"({"gangway": 1, "storeys": [{"id": "g", "name": "G"}],
        "rooms": [{"id": "r", "name": "R", "storey": "g", "outline": [[0,"x"],[1000,1000],[1000,0],[0,0]]}],
        "plates": [{"id": "p", "room": "r", "wall": "Z", "setOut": 9000, "height": 1}]})");
    REQUIRE_FALSE(result);
    REQUIRE(result.error().size() == 1);
    CHECK(result.error()[0].pointer == "/rooms/0/outline/0/1");
}

TEST_CASE("problems come in the order of the file, whoever found them") {
    const auto result = readFile(fixtures() / "broken" / "several-at-once.plan.json");
    REQUIRE_FALSE(result);
    CHECK(std::ranges::is_sorted(result.error(), {}, &Diagnostic::line));
    CHECK(result.error().size() == 3);
}
