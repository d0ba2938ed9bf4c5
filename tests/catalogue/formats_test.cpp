// Outlines and boxes against published numbers, each with its source.
#include "shipped_catalogue.hpp"

#include <algorithm>
#include <set>
#include <tuple>

using namespace gangway;
using catalogue::compose;

namespace {

std::vector<std::string> blanks(int gangs) {
    return std::vector<std::string>(static_cast<std::size_t>(gangs), "blank");
}

} // namespace

TEST_CASE("round boxes give plates of 81 + 71 (n - 1)") {
    // DIN 49073: pitch 71 both ways. Outer frame 81: common practice, no source.
    const double expected_mm[] = {81, 152, 223, 294, 365};
    for (int gangs = 1; gangs <= 5; ++gangs) {
        auto plate = plateOf("round-71", blanks(gangs));
        const auto lying = compose(shippedCatalogue(), plate);
        CHECK(lying.width_mm == Approx(expected_mm[gangs - 1]).margin(1e-9));
        CHECK(lying.height_mm == 81);
        plate.direction = plan::Direction::Vertical;
        const auto standing = compose(shippedCatalogue(), plate);
        CHECK(standing.height_mm == Approx(expected_mm[gangs - 1]).margin(1e-9));
        CHECK(standing.width_mm == 81);
        CHECK(lying.problems.empty());
        CHECK(standing.problems.empty());
    }
}

TEST_CASE("rectangular plates are 86 and 146 wide and do not follow a pitch") {
    // From memory of usual UK plates; no standard fixes the outline.
    CHECK(compose(shippedCatalogue(), plateOf("rect-86", {"socket-g"})).width_mm == 86);
    const auto twice = compose(shippedCatalogue(), plateOf("rect-86", {"socket-g-double"}));
    CHECK(twice.width_mm == 146);
    CHECK(twice.height_mm == 86);
}

TEST_CASE("US plates follow 2.75 + 1.8125 (n - 1) inches") {
    // ANSI/NEMA WD 6: widths 2.75, 4.5625, 6.375, 8.1875 in, height 4.5 in; 1 in = 25.4 mm exactly.
    for (int gangs = 1; gangs <= 4; ++gangs) {
        const auto plate = compose(shippedCatalogue(), plateOf("us-device", blanks(gangs)));
        CHECK(plate.width_mm == Approx((2.75 + 1.8125 * (gangs - 1)) * 25.4).margin(1e-9));
        CHECK(plate.height_mm == Approx(114.3).margin(1e-9));
        CHECK(plate.problems.empty());
    }
    // The same numbers as printed in mm, to a tenth.
    CHECK(compose(shippedCatalogue(), plateOf("us-device", blanks(3))).width_mm ==
          Approx(161.9).margin(0.05));
}

TEST_CASE("round boxes stand 71 apart about the plate's centre, with a 68 cutter") {
    // DIN 49073: hole 68, pitch 71, screws 60.
    auto plate = plateOf("round-71", blanks(3));
    const auto lying = compose(shippedCatalogue(), plate);
    REQUIRE(lying.boxes.size() == 3);
    const double expected_mm[] = {-71, 0, 71};
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(lying.boxes[i].centre_mm == plan::Vec2{expected_mm[i], 0});
        CHECK(lying.boxes[i].centre_mm == lying.gangs[i].centre_mm);
        CHECK(lying.boxes[i].spec.drill_mm == 68);
        CHECK(lying.boxes[i].spec.fixing_mm == 60);
    }
    plate.direction = plan::Direction::Vertical;
    const auto standing = compose(shippedCatalogue(), plate);
    REQUIRE(standing.boxes.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) // first module on top
        CHECK(standing.boxes[i].centre_mm == plan::Vec2{0, -expected_mm[i]});
}

TEST_CASE("a rectangular plate has one box in its middle, never drilled") {
    // BS 4662: fixing centres 60.3 for one gang, 120.6 for two.
    const auto single = compose(shippedCatalogue(), plateOf("rect-86", {"socket-g"}));
    const auto twice = compose(shippedCatalogue(), plateOf("rect-86", {"socket-g-double"}));
    REQUIRE(single.boxes.size() == 1);
    REQUIRE(twice.boxes.size() == 1);
    CHECK(single.boxes[0].spec.fixing_mm == 60.3);
    CHECK(twice.boxes[0].spec.fixing_mm == 120.6);
    CHECK(twice.boxes[0].centre_mm == plan::Vec2{0, 0});
    CHECK(twice.boxes[0].spec.drill_mm == 0);
    CHECK(twice.boxes[0].spec.width_mm < twice.width_mm);
}

TEST_CASE("US boxes grow by the gang pitch and the device screws are 3.281 in apart") {
    // UL 514: opening 2 x 3 in. Screw centres from memory of WD 6.
    const auto plate = compose(shippedCatalogue(), plateOf("us-device", blanks(2)));
    REQUIRE(plate.boxes.size() == 1);
    CHECK(plate.boxes[0].spec.width_mm == Approx(3.8125 * 25.4).margin(1e-9));
    CHECK(plate.boxes[0].spec.height_mm == Approx(76.2).margin(1e-9));
    CHECK(plate.boxes[0].spec.fixing_mm == Approx(83.3).margin(0.05));
}

TEST_CASE("the three-module plate is always whole") {
    const auto plate = compose(shippedCatalogue(), plateOf("module-3", {"socket-l"}));
    CHECK(plate.width_mm == 120);
    REQUIRE(plate.gangs.size() == 3);
    CHECK(plate.gangs[0].centre_mm.x == -22.5);
    CHECK(plate.gangs[1].module == nullptr);
    CHECK(plate.problems.empty());
}

TEST_CASE("Italian plates of four and seven modules are one row of 22.5 each") {
    // From memory: the three-module plate 120 and 22.5 for each further module.
    for (const auto& [id, modules, width_mm] :
         {std::tuple{"module-4", 4, 142.5}, std::tuple{"module-7", 7, 210.0}}) {
        const auto plate = compose(shippedCatalogue(), plateOf(id, {"socket-l", "switch-1way"}));
        CHECK(plate.width_mm == width_mm);
        CHECK(plate.height_mm == 80);
        REQUIRE(plate.gangs.size() == static_cast<std::size_t>(modules));
        for (std::size_t i = 1; i < plate.gangs.size(); ++i)
            CHECK(plate.gangs[i].centre_mm.x - plate.gangs[i - 1].centre_mm.x == Approx(22.5));
        CHECK(plate.problems.empty());
    }
}

TEST_CASE("French round boxes are drilled 67, 40 deep, 71 apart") {
    // Hole saw 67 or 68, depth 40 usual: secondary page on French boxes; pitch 71 from memory.
    const auto plate = compose(shippedCatalogue(), plateOf("round-fr", {"socket-e", "socket-e"}));
    REQUIRE(plate.boxes.size() == 2);
    CHECK(plate.boxes[1].centre_mm.x - plate.boxes[0].centre_mm.x == 71);
    CHECK(plate.boxes[0].spec.drill_mm == 67);
    CHECK(plate.boxes[0].spec.depth_mm == 40);
    CHECK(plate.problems.empty());
}

TEST_CASE("the fixing screws lie where the box's standard has them") {
    const auto fixings = [](const std::string& format, const std::vector<std::string>& modules) {
        return compose(shippedCatalogue(), plateOf(format, modules)).fixings_mm;
    };
    // BS 4662: 60.3 and 120.6 between centres: 30.15 and 60.3 each side.
    CHECK(fixings("rect-86", {"socket-g"}) == std::vector<plan::Vec2>{{-30.15, 0}, {30.15, 0}});
    CHECK(fixings("rect-86", {"socket-g-double"}) == std::vector<plan::Vec2>{{-60.3, 0}, {60.3, 0}});
    // DIN 49073 / EN 60670: 60 in each box, boxes 71 apart: 35.5 - 30 and 35.5 + 30.
    CHECK(fixings("round-71", {"socket-f", "socket-f"}) ==
          std::vector<plan::Vec2>{{-65.5, 0}, {-5.5, 0}, {5.5, 0}, {65.5, 0}});
    // NEMA WD 6: 3.281 in upright at each gang (from memory), gangs 1.8125 in apart.
    const auto us = fixings("us-device", {"socket-b", "socket-b"});
    REQUIRE(us.size() == 4);
    CHECK(us[0].x == Approx(-0.90625 * 25.4));
    CHECK(us[0].y - us[1].y == Approx(83.3).margin(0.05));
    CHECK(us[2].x - us[0].x == Approx(46.04).margin(0.005));
    // AS/NZS: 84, from memory.
    CHECK(fixings("plate-115", {"socket-i"}) == std::vector<plan::Vec2>{{-42, 0}, {42, 0}});
}

TEST_CASE("a height refers to the top device of an upright stack of round boxes, of four to the second") {
    // Worked example of the trade facts: top 1050 gives 1050, 979, 908; of four the second is at 1050:
    // 1121, 1050, 979, 908. Secondary page on DIN 18015-3.
    auto plate = plateOf("round-71", blanks(3));
    CHECK(compose(shippedCatalogue(), plate).reference_mm == plan::Vec2{0, 0});
    plate.direction = plan::Direction::Vertical;
    for (const auto& [gangs, expected_mm] : {std::pair{3, std::vector<double>{1050, 979, 908}},
                                             std::pair{4, std::vector<double>{1121, 1050, 979, 908}}}) {
        plate.modules = plateOf("round-71", blanks(gangs)).modules;
        const auto composed = compose(shippedCatalogue(), plate);
        const double centre_mm =
            1050 - composed.reference_mm.y; // the plate's centre when the habit's point is at 1050
        for (std::size_t i = 0; i < expected_mm.size(); ++i)
            CHECK(centre_mm + composed.boxes[i].centre_mm.y == Approx(expected_mm[i]));
    }
    auto british = plateOf("rect-86", {"socket-g-double"});
    CHECK(compose(shippedCatalogue(), british).reference_mm == plan::Vec2{0, 0}); // AD M: centre line
}

TEST_CASE("round boxes in rows stand 71 apart both ways and fill row by row") {
    // DIN 49073: 71 in both directions; outlines 81 + 71 (n - 1).
    const auto four = compose(shippedCatalogue(), plateOf("round-71-grid", blanks(4)));
    CHECK(four.width_mm == 152);
    CHECK(four.height_mm == 152);
    const std::vector<plan::Vec2> expected = {{-35.5, 35.5}, {35.5, 35.5}, {-35.5, -35.5}, {35.5, -35.5}};
    REQUIRE(four.boxes.size() == 4);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(four.boxes[i].centre_mm == expected[i]);
        CHECK(four.gangs[i].centre_mm == expected[i]);
    }
    const auto five = compose(shippedCatalogue(), plateOf("round-71-grid", blanks(5)));
    CHECK(five.width_mm == 223);
    CHECK(five.gang_count == 6); // the sixth is a blank
    CHECK(five.gangs.size() == 6);
    CHECK(five.problems.empty());
    CHECK_FALSE(compose(shippedCatalogue(), plateOf("round-71-grid", blanks(7))).problems.empty());
}

TEST_CASE("British grid plates grow by rows of four, with a box of their own for each size") {
    // Outlines from memory; fixing centres BS 4662: 60.3 and 120.6.
    struct Size {
        int modules;
        double width_mm, height_mm, fixing_mm;
    };
    for (const Size& size : {Size{2, 86, 86, 60.3}, Size{3, 146, 86, 120.6}, Size{6, 146, 146, 120.6},
                             Size{9, 146, 206, 120.6}}) {
        const auto plate =
            compose(shippedCatalogue(),
                    plateOf("grid-gb",
                            std::vector<std::string>(static_cast<std::size_t>(size.modules), "switch-1way")));
        INFO(size.modules);
        CHECK(plate.width_mm == size.width_mm);
        CHECK(plate.height_mm == size.height_mm);
        REQUIRE(plate.boxes.size() == 1);
        CHECK(plate.boxes[0].spec.fixing_mm == size.fixing_mm);
        CHECK(plate.boxes[0].spec.height_mm < size.height_mm);
        CHECK(plate.problems.empty());
    }
}

TEST_CASE("a module of two gangs does not go over the end of a row") {
    // A double in a grid of two columns after a single one: it starts the second row.
    const auto plate =
        compose(shippedCatalogue(), plateOf("round-71-grid", {"switch-1way", "socket-g-double"}));
    CHECK(plate.gang_count == 4);
    CHECK(plate.gangs[1].centre_mm == plan::Vec2{0, -35.5});
    CHECK(plate.gangs[1].width_mm == 126);
    REQUIRE(plate.gangs.size() == 3);
    CHECK(plate.gangs[2].module == nullptr);
    CHECK(plate.gangs[2].centre_mm == plan::Vec2{35.5, 35.5});
}

TEST_CASE("a format of the designer's own composes as it was typed") {
    // Trade practice, no source: 60 mm modules in an 82 mm frame at a pitch of 75; by hand 82 + 2 x 75 = 232.
    plan::OwnFormat own;
    own.id = "hall-60";
    own.name = "frames for the hall";
    own.module_width_mm = own.module_height_mm = 60;
    own.plate_width_mm = own.plate_height_mm = 82;
    own.pitch_mm = 75;
    own.corner_mm = 2;
    own.relief_mm = 7;
    own.box_width_mm = 65;
    own.box_depth_mm = 50;
    own.drill_mm = 65;
    plan::Plan plan;
    plan.formats = {own};
    const auto with = catalogue::withOwn(shippedCatalogue(), plan);
    auto plate = plateOf("hall-60", {"socket-f", "switch-1way", "data-rj45"});
    const auto lying = compose(with, plate);
    CHECK(lying.width_mm == 232);
    CHECK(lying.height_mm == 82);
    CHECK(lying.corner_mm == 2);
    CHECK(lying.relief_mm == 7);
    CHECK(lying.problems == std::vector<std::string>{});
    REQUIRE(lying.boxes.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(lying.boxes[i].centre_mm == plan::Vec2{-75 + 75.0 * static_cast<double>(i), 0});
        CHECK(lying.boxes[i].spec.shape == catalogue::BoxSpec::Shape::Round);
        CHECK(lying.boxes[i].spec.drill_mm == 65);
        CHECK(lying.gangs[i].width_mm == 60);
    }
    CHECK(lying.fixings_mm.empty());
    plate.direction = plan::Direction::Vertical;
    CHECK(compose(with, plate).height_mm == 232);
    plate.modules.resize(2);
    plate.modules.resize(6, plate.modules[0]);
    CHECK_FALSE(
        compose(with, plate).problems.empty()); // at most five gangs, unless the designer says otherwise
}

TEST_CASE("a plan's own format wins over one of the catalogue by the same id") {
    plan::OwnFormat own;
    own.id = "round-71";
    own.plate_width_mm = own.plate_height_mm = 90;
    own.module_width_mm = own.module_height_mm = 55;
    own.pitch_mm = 71;
    plan::Plan plan;
    plan.formats = {own};
    const auto with = catalogue::withOwn(shippedCatalogue(), plan);
    CHECK(compose(with, plateOf("round-71", {"socket-f"})).width_mm == 90);
    CHECK(with.formats.size() == shippedCatalogue().formats.size());
    CHECK(compose(shippedCatalogue(), plateOf("round-71", {"socket-f"})).width_mm == 81);
}

TEST_CASE("every id that plans are written with is in the catalogue") {
    const char* modules[] = {"socket-f",
                             "socket-e",
                             "socket-g",
                             "socket-g-double",
                             "socket-b",
                             "socket-l",
                             "socket-j",
                             "socket-i",
                             "socket-f-usb",
                             "usb",
                             "shaver",
                             "data-rj45",
                             "data-rj45-2",
                             "tv",
                             "telephone",
                             "blank",
                             "cord-outlet",
                             "switch-1way",
                             "switch-2way",
                             "switch-intermediate",
                             "switch-double-pole",
                             "switch-2circuit",
                             "switch-3circuit",
                             "push-button",
                             "pull-cord",
                             "blind-switch",
                             "dimmer-rotary",
                             "dimmer-push",
                             "sensor-motion",
                             "thermostat",
                             "timer"};
    for (const char* id : modules)
        CHECK(shippedCatalogue().module(id));
    for (const char* id : {"round-71", "rect-86", "us-device", "module-3"})
        CHECK(shippedCatalogue().format(id));
    for (const char* id :
         {"white", "soft-white", "ivory", "graphite", "black", "steel", "brass", "glass-white"})
        CHECK(shippedCatalogue().finish(id));
}

TEST_CASE("codes of modules are told apart in a schedule") {
    std::set<std::string> codes;
    for (const auto& module : shippedCatalogue().modules) {
        INFO(module.id);
        CHECK(codes.insert(module.code).second);
        CHECK_FALSE(module.source.empty());
    }
}

TEST_CASE("ways and outlets follow the trade's count") {
    // A double socket is two outlets, a two-circuit switch two ways; intermediate has one (the leg it works).
    const auto& all = shippedCatalogue();
    CHECK(all.module("socket-g-double")->outlets == 2);
    CHECK(all.module("socket-b")->outlets == 1); // two faces where it is made for American plates
    CHECK(compose(shippedCatalogue(), plateOf("us-device", {"socket-b"})).gangs.front().module->outlets == 2);
    CHECK(all.module("switch-2circuit")->ways == 2);
    CHECK(all.module("switch-3circuit")->ways == 3);
    CHECK(all.module("switch-intermediate")->ways == 1);
    CHECK(all.module("blank")->ways == 0);
}
