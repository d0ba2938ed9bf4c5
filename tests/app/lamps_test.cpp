// A real window, a real mouse: lamps worked by the rockers of their switches, as seen in the stage's picture.
#include "app/window.hpp"

#include "support/image_compare.hpp"
#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <fstream>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
constexpr double kLampSpacing_mm = 1000;

Json wallPlate(const std::string& id, const std::string& tag, double set_out_mm, const std::string& module) {
    return {{"id", id},       {"tag", tag},         {"room", "room"}, {"wall", "B"}, {"setOut", set_out_mm},
            {"height", 1050}, {"modules", {module}}};
}

/// The room with three lamps, 0.5, 1.5 and 2.5 m from the left corner of its bare wall B (3 m), and on the
/// same wall, under them, the plates that are given; one leg a lamp, worked as given.
fs::path roomOf(const fs::path& folder, const Json& plates, const std::vector<Json>& controls) {
    const fs::path plan = copyOf(kOneRoom, folder);
    Json json = Json::parse(slurp(plan));
    json["plates"] = plates;
    json["furniture"] = Json::array();
    json["openings"] = Json::array(); // a door's leaf would stand before the third lamp
    json["luminaires"] = Json::array();
    json["legs"] = Json::array();
    for (std::size_t i = 0; i < 3; ++i) {
        const std::string number = std::to_string(i + 1);
        json["luminaires"].push_back({{"id", "lamp-" + number},
                                      {"tag", "R-L0" + number},
                                      {"kind", "wall"},
                                      {"room", "room"},
                                      {"wall", "B"},
                                      {"setOut", 500 + kLampSpacing_mm * static_cast<double>(i)},
                                      {"height", 1700},
                                      {"watts", 6},
                                      {"lumens", 500},
                                      {"dimmable", true}});
        if (i < controls.size())
            json["legs"].push_back(
                {{"id", "leg-" + number}, {"controls", controls[i]}, {"luminaires", {"lamp-" + number}}});
    }
    std::ofstream(plan) << json.dump(1);
    return plan;
}

Json threeCircuits() {
    return {wallPlate("switches", "R-01", 1500, "switch-3circuit")};
}
const std::vector<Json> kThreeWays{
    {{{"plate", "switches"}}}, {{{"plate", "switches"}, {"way", 2}}}, {{{"plate", "switches"}, {"way", 3}}}};

struct Spot {
    double x = 0;
    double y = 0;
};

/// In the docket under its last row, where nothing is worked.
constexpr Spot kBare_px{1250, 780};

/// The room's wall B squarely before the eye, in the evening, in one of its views.
class EveningWall {
public:
    EveningWall(const fs::path& folder, const fs::path& plan) : window(folder, plan), folder_(folder) {
        window.click("wall:B");
        window.look();
        window.key("e");
        REQUIRE(window.waitFor("evening", true));
        window.look();
    }
    Spot spot(const std::string& place) {
        const Json rect = window.look()["places"].value(place, Json());
        INFO(place);
        REQUIRE(rect.is_array());
        return {rect[0].get<double>() + rect[2].get<double>() / 2,
                rect[1].get<double>() + rect[3].get<double>() / 2};
    }
    /// The stage as it is now, with the pointer away from it and nothing chosen.
    gangway::test::Image picture(const std::string& name) {
        window.click(kBare_px.x, kBare_px.y);
        window.key("Escape");
        window.key("Escape");
        window.look();
        window.picture(name);
        const auto image = gangway::test::readPng(folder_ / (name + ".png"));
        REQUIRE(image);
        return *image;
    }
    Json lights() { return window.look()["lights"]; }

    Window window;

private:
    fs::path folder_;
};

constexpr int kTop_px = 100;    ///< in a picture of the display, below the bar of buttons
constexpr double kLeft_px = 11; ///< of the window on its display: where the tests put it, and its frame

/// Mean brightness of a column's pixels down to a row, 0 to 255.
double brightness(const gangway::test::Image& image, int x, int to_y) {
    double sum = 0;
    for (int y = kTop_px; y < to_y; ++y)
        for (int c = 0; c < 3; ++c)
            sum += image.rgba[static_cast<std::size_t>(4 * (y * image.width + x) + c)];
    return sum / (3 * (to_y - kTop_px));
}

/// How much brighter one picture is than another, as the mean over a band of columns.
double brighter(const gangway::test::Image& lit, const gangway::test::Image& dark, double x, double half,
                double to_y) {
    double sum = 0;
    int count = 0;
    const int from = static_cast<int>(kLeft_px + x - half);
    for (int column = from; column < from + static_cast<int>(2 * half); ++column, ++count) {
        REQUIRE(column >= 0);
        REQUIRE(column < lit.width);
        sum += brightness(lit, column, static_cast<int>(to_y)) -
               brightness(dark, column, static_cast<int>(to_y));
    }
    return sum / count;
}
/// The stage's rows above a height, where no message covers the picture.
gangway::test::Image above(const gangway::test::Image& image, double y) {
    gangway::test::Image part{image.width, static_cast<int>(y) - kTop_px, {}};
    const auto row = static_cast<std::ptrdiff_t>(4) * image.width;
    part.rgba.assign(image.rgba.begin() + kTop_px * row, image.rgba.begin() + (kTop_px + part.height) * row);
    return part;
}
} // namespace

TEST_CASE("window: three legs are flipped one by one by their rockers, and each lights its lamp's place") {
    const fs::path folder = freshFolder("window-lamps");
    EveningWall wall(folder, roomOf(folder, threeCircuits(), kThreeWays));
    CHECK(wall.lights().size() == 3); // new legs are on
    const Spot middle = wall.spot("rocker R-01/2");
    const Spot left = wall.spot("rocker R-01/1");
    const Spot right = wall.spot("rocker R-01/3");
    REQUIRE(left.x < middle.x);
    REQUIRE(middle.x < right.x);
    // Pixels a mm: the outer rockers of the front are 2 x 17.3 mm apart (assets/catalogue, rockers-wide-3).
    const double spacing_px = kLampSpacing_mm * (right.x - left.x) / 34.6;
    const auto all = wall.picture("all");
    const std::vector<Spot> rockers{left, middle, right};
    for (std::size_t i = 0; i < 3; ++i) {
        INFO("leg " << i + 1);
        wall.window.click(rockers[i].x, rockers[i].y);
        Json lights = wall.lights();
        CHECK(lights.size() == 2);
        CHECK_FALSE(lights.contains("leg-" + std::to_string(i + 1)));
        CHECK(wall.window.look()["chosen"] == Json({"switches"})); // and its card, as any plate's
        const auto without = wall.picture("without-" + std::to_string(i + 1));
        std::vector<double> changes;
        for (int lamp = -1; lamp <= 1; ++lamp)
            changes.push_back(brighter(all, without, middle.x + lamp * spacing_px, 40, middle.y - 40));
        CHECK(changes[i] > 8); // of 255: well seen
        CHECK(std::ranges::max_element(changes) - changes.begin() == static_cast<std::ptrdiff_t>(i));
        wall.window.click(rockers[i].x, rockers[i].y);
        CHECK(wall.lights().size() == 3);
        const auto again =
            gangway::test::compareImages(above(all, middle.y), above(wall.picture("again"), middle.y));
        REQUIRE(again);
        CHECK(again->mean < 0.2);
    }
}

TEST_CASE("window: a two-way group is worked from both of its positions") {
    const fs::path folder = freshFolder("window-two-way");
    const Json plates = {wallPlate("left", "R-01", 1000, "switch-2way"),
                         wallPlate("right", "R-02", 2000, "switch-2way")};
    EveningWall wall(folder, roomOf(folder, plates, {{{{"plate", "left"}}, {{"plate", "right"}}}}));
    const Spot left = wall.spot("rocker R-01/1");
    const Spot right = wall.spot("rocker R-02/1");
    // On; each change of either position turns the lamp over.
    CHECK(wall.lights().contains("leg-1"));
    for (const auto& [rocker, on] : std::vector<std::pair<Spot, bool>>{
             {left, false}, {right, true}, {right, false}, {left, true}, {right, false}}) {
        wall.window.click(rocker.x, rocker.y);
        CHECK(wall.lights().contains("leg-1") == on);
        wall.window.key("Escape");
    }
}

TEST_CASE("window: a dimmer's knob is dragged down, and the lamp is between off and full") {
    const fs::path folder = freshFolder("window-dimmer");
    const Json plates = {wallPlate("dimmer", "R-01", 1500, "dimmer-rotary")};
    const Json one = {{{"plate", "dimmer"}}};
    const fs::path plan = roomOf(folder, plates, {Json::array(), one});
    EveningWall wall(folder, plan);
    const Spot knob = wall.spot("rocker R-01/1");
    const auto full = wall.picture("full");
    wall.window.drag(knob.x, knob.y, knob.x, knob.y + 120);
    const double percent = wall.lights().value("leg-2", 0.0);
    CHECK(percent > 5);
    CHECK(percent < 80);
    const auto dimmed = wall.picture("dimmed");
    // The plate stayed where it was.
    CHECK(wall.window.look()["changed"] == false);
    // A tap turns it off, and on again at the level it had.
    wall.window.click(knob.x, knob.y);
    CHECK_FALSE(wall.lights().contains("leg-2"));
    const auto off = wall.picture("off");
    CHECK(brighter(full, dimmed, knob.x, 40, knob.y - 40) > 3);
    CHECK(brighter(dimmed, off, knob.x, 40, knob.y - 40) > 3);
    wall.window.click(knob.x, knob.y);
    CHECK(wall.lights().value("leg-2", 0.0) == percent);
}

TEST_CASE("window: a scene is kept, shown again after all is off, and undo takes it away") {
    const fs::path folder = freshFolder("window-scene");
    const fs::path plan = roomOf(folder, threeCircuits(), kThreeWays);
    EveningWall wall(folder, plan);
    const Spot middle = wall.spot("rocker R-01/2");
    wall.window.click(middle.x, middle.y);
    wall.window.key("Escape");
    const Json kept = wall.lights();
    REQUIRE(kept.size() == 2);
    wall.window.click("lamps-bar");
    wall.window.click("scene-name");
    wall.window.type("Supper");
    wall.window.click("scene-keep");
    REQUIRE(wall.window.waitFor("changed", true));
    const Json file = saved(wall.window, plan);
    REQUIRE(file["scenes"].size() == 1);
    CHECK(file["scenes"][0]["name"] == "Supper");
    CHECK(file["scenes"][0]["levels"].size() == 2);
    const std::string id = file["scenes"][0]["id"];
    wall.window.click("lights:off");
    CHECK(wall.lights().empty());
    wall.window.click("scene:" + id);
    CHECK(wall.lights() == kept);
    CHECK(wall.window.look()["scene"] == id);
    wall.window.key("ctrl+z");
    CHECK_FALSE(wall.window.look()["places"].contains("scene:" + id));
    CHECK(saved(wall.window, plan).value("scenes", Json::array()).empty());
}

TEST_CASE("window: keys step through scenes, turn all on and off, and change day for evening") {
    const fs::path folder = freshFolder("window-lamp-keys");
    const fs::path plan = roomOf(folder, threeCircuits(), kThreeWays);
    Json json = Json::parse(slurp(plan));
    json["scenes"] = {{{"id", "one"}, {"name", "One"}, {"levels", {{{"leg", "leg-1"}}}}},
                      {{"id", "two"}, {"name", "Two"}, {"levels", {{{"leg", "leg-2"}, {"percent", 30}}}}}};
    std::ofstream(plan) << json.dump(1);
    EveningWall wall(folder, plan);
    CHECK(wall.window.look()["evening"] == true);
    wall.window.key("e");
    CHECK(wall.window.look()["evening"] == false);
    wall.window.key("g");
    CHECK(wall.lights() == Json({{"leg-1", 100.0}}));
    wall.window.key("g");
    CHECK(wall.lights() == Json({{"leg-2", 100.0}})); // a rocker knows on and off only
    wall.window.key("g");
    CHECK(wall.window.look()["scene"] == "one");
    wall.window.key("o");
    CHECK(wall.lights().empty());
    wall.window.key("o");
    CHECK(wall.lights().size() == 3);
    // What is on is no change of the plan.
    CHECK(wall.window.look()["changed"] == false);
}

TEST_CASE("window: a homeowner works lamps and shows scenes, and keeps none") {
    const fs::path folder = freshFolder("window-lamps-homeowner");
    EveningWall wall(folder, roomOf(folder, threeCircuits(), kThreeWays));
    wall.window.key("h");
    REQUIRE(wall.window.waitFor("seat", "homeowner"));
    wall.window.click("wall:B");
    const Spot right = wall.spot("rocker R-01/3");
    wall.window.click(right.x, right.y);
    CHECK_FALSE(wall.lights().contains("leg-3"));
    CHECK(wall.lights().size() == 2);
    wall.window.click("lights:off");
    CHECK(wall.lights().empty());
    CHECK_FALSE(wall.window.look()["places"].contains("scene-keep"));
}
