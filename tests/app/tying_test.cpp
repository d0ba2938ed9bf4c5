// A real window, a real mouse: ways tied to lamps, from the list, from the plan and by a box; proposals.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <fstream>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
/// The room with three lamps in a row on its ceiling and a switch for three circuits that works nothing.
fs::path roomWithLamps(const fs::path& folder) {
    const fs::path plan = copyOf(kOneRoom, folder);
    Json json = Json::parse(slurp(plan));
    for (auto& plate : json["plates"])
        if (plate["id"] == "room-01") plate["modules"] = {"switch-3circuit"};
    json["legs"] = Json::array();
    json["luminaires"] = Json::array();
    for (int i = 1; i <= 3; ++i)
        json["luminaires"].push_back({{"id", "lamp-" + std::to_string(i)},
                                      {"tag", "P-L0" + std::to_string(i)},
                                      {"kind", "ceiling"},
                                      {"room", "room"},
                                      {"ceiling", true},
                                      {"east", 1000 * i},
                                      {"north", 2000},
                                      {"watts", 8},
                                      {"lumens", 700}});
    std::ofstream(plan) << json.dump(1);
    return plan;
}

/// The lamps of the leg that a way of plate room-01 works; empty when it works none.
Json lampsOfWay(const Json& plan, int way) {
    if (!plan.contains("legs")) return Json::array();
    for (const auto& leg : plan["legs"])
        for (const auto& control : leg["controls"])
            if (control["plate"] == "room-01" && control.value("way", 1) == way)
                return leg.value("luminaires", Json::array());
    return Json::array();
}

std::string wayOf(Window& window, int number) {
    const Json places = window.look()["places"];
    for (const auto& [name, rect] : places.items())
        if (name.starts_with("way:") && name.ends_with("/" + std::to_string(number))) return name;
    FAIL("no way " << number << " in the panel");
    return {};
}
} // namespace

TEST_CASE("window: three ways are tied, from the list, in the plan and by lamps picked first") {
    const fs::path folder = freshFolder("window-tying");
    const fs::path plan = roomWithLamps(folder);
    Window window(folder, plan);
    window.click("rail:Switch");
    window.click(wayOf(window, 1));
    window.click("lamp:lamp-1");
    REQUIRE(window.waitFor("changed", true));
    // In the plan, with another way picked.
    window.key("4");
    window.click(wayOf(window, 2));
    window.click("plan:luminaire:lamp-2");
    window.key("Escape");
    // The lamp first, then the way.
    window.click("lamp:lamp-3");
    window.click(wayOf(window, 3));
    window.picture("tied");
    const Json tied = saved(window, plan);
    CHECK(lampsOfWay(tied, 1) == Json({"lamp-1"}));
    CHECK(lampsOfWay(tied, 2) == Json({"lamp-2"}));
    CHECK(lampsOfWay(tied, 3) == Json({"lamp-3"}));

    SECTION("a second click unties, and undo ties again") {
        window.click("lamp:lamp-3");
        CHECK(lampsOfWay(saved(window, plan), 3).empty());
        window.key("ctrl+z");
        window.look();
        CHECK(lampsOfWay(saved(window, plan), 3) == Json({"lamp-3"}));
    }
    SECTION("a box in the plan takes all the lamps in it, off the legs they hung on") {
        const auto middle = [&](const std::string& lamp) {
            const Json rect = window.look()["places"]["plan:luminaire:" + lamp];
            return std::pair{rect[0].get<double>() + rect[2].get<double>() / 2,
                             rect[1].get<double>() + rect[3].get<double>() / 2};
        };
        const auto [x1, y1] = middle("lamp-2");
        const auto [x2, y2] = middle("lamp-3");
        window.keyDown("ctrl");
        window.drag(x1 - 40, y1 - 40, x2 + 40, y2 + 40);
        window.keyUp("ctrl");
        const Json boxed = saved(window, plan);
        CHECK(lampsOfWay(boxed, 3).size() == 2);
        CHECK(lampsOfWay(boxed, 2).empty());
    }
}

TEST_CASE("window: a proposal is shown with its reason and taken only when accepted") {
    const fs::path folder = freshFolder("window-proposal");
    const fs::path plan = roomWithLamps(folder);
    Window window(folder, plan);
    window.click("rail:Switch");
    window.click("thing:propose");
    REQUIRE(window.look()["places"].contains("thing:accept:1"));
    window.picture("proposed");
    CHECK(window.look()["changed"] == false);
    window.click("thing:accept:1");
    REQUIRE(window.waitFor("changed", true));
    const Json accepted = saved(window, plan);
    REQUIRE(accepted["legs"].size() == 1);
    CHECK(accepted["legs"][0]["luminaires"].size() == 3);
    CHECK(accepted["legs"][0]["controls"].size() == 1);
}
