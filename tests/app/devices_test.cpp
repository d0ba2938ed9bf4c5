// A real window, a real mouse: what is plugged in where, in the docket, on cards, on the stage; what is laid
// over the drawn plan; and what is said where a wall has no place for a plate.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
fs::path demoIn(const fs::path& folder) {
    const fs::path demo = fs::path(GANGWAY_ASSETS_DIR) / "demo";
    fs::copy_file(demo / "vase.glb", folder / "vase.glb");
    return copyOf(demo / "terrace.plan.json", folder);
}

bool anyPlace(const Json& report, const std::string& begin) {
    const auto& places = report["places"].items();
    return std::any_of(places.begin(), places.end(),
                       [&](const auto& place) { return place.key().starts_with(begin); });
}

/// Where a device of the saved plan is plugged in.
std::string plateOf(const Json& plan, const std::string& device) {
    for (const Json& one : plan["devices"])
        if (one["id"] == device) return one.value("plate", "");
    FAIL("no device " << device);
    return {};
}

/// Pixels in which two pictures of the window differ.
long differing(const fs::path& folder, const std::string& a, const std::string& b) {
    const Ran ran = run("compare -metric AE '" + (folder / (a + ".png")).string() + "' '" +
                        (folder / (b + ".png")).string() + "' null:");
    INFO(ran.err);
    REQUIRE((ran.code == 0 || ran.code == 1)); // 1: they differ
    return std::stol(ran.err);
}
} // namespace

TEST_CASE("window: a device is unplugged in the docket and plugged in again where it is proposed") {
    const fs::path folder = freshFolder("window-devices");
    const fs::path plan = demoIn(folder);
    Window window(folder, plan);
    window.click("docket-devices");
    const Json listed = window.look();
    CHECK(listed["places"].contains("device:kettle"));
    CHECK_FALSE(listed["places"].contains("device:laptop")); // in another room
    window.click("unplug:toaster");
    REQUIRE(window.waitFor("changed", true));
    CHECK(plateOf(saved(window, plan), "toaster").empty());
    window.click("plug:toaster");
    REQUIRE(window.waitFor("changed", true));
    CHECK_FALSE(plateOf(saved(window, plan), "toaster").empty());
    CHECK(window.look()["places"].contains("unplug:toaster"));
    window.key("ctrl+z");
    window.key("ctrl+z");
    window.look();
    CHECK(plateOf(saved(window, plan), "toaster") == "kitchen-06");
    window.click("docket-house");
    window.look();
    window.picture("house");
    CHECK(window.look()["places"].contains("device:laptop"));
}

TEST_CASE("window: for a device without an outlet a socket is placed from the docket") {
    const fs::path folder = freshFolder("window-device-socket");
    const fs::path plan = demoIn(folder);
    const auto before = Json::parse(slurp(plan))["plates"].size();
    Window window(folder, plan);
    window.key("4");
    window.look();
    window.click("plan:room:hall"); // the router wants one
    window.click("docket-devices");
    window.click("device-socket:router");
    window.look();
    window.picture("placing");
    // Put down on the strip, beside a plate of the hall.
    const Json facing = window.look();
    CHECK(facing["room"] == "hall");
    std::string beside;
    for (const auto& [name, rect] : facing["places"].items())
        if (name.starts_with("strip:hall-")) beside = name;
    REQUIRE_FALSE(beside.empty());
    const auto rect = facing["places"][beside].get<std::vector<double>>();
    window.click(rect[0] + rect[2] / 2 + 30, rect[1] + rect[3] / 2);
    REQUIRE(window.waitFor("changed", true));
    window.key("Escape");
    const Json kept = saved(window, plan);
    REQUIRE(kept["plates"].size() == before + 1);
    CHECK(kept["plates"].back()["room"] == "hall");
    CHECK(kept["plates"].back()["for"] == "router");
}

TEST_CASE("window: an outlet's row leads to its plate, and the card says what is in each outlet") {
    const fs::path folder = freshFolder("window-outlets");
    Window window(folder, demoIn(folder));
    window.click("docket-devices");
    CHECK_FALSE(window.look()["places"].contains("outlet-lines"));
    window.click("device:kettle"); // in K-06 with the toaster
    CHECK(window.waitFor("selected", "kitchen-06"));
    window.picture("card");
    CHECK(window.look()["places"].contains("outlet-lines"));
    window.key("h");
    window.look();
    CHECK_FALSE(window.look()["places"].contains("outlet-lines"));
}

TEST_CASE("window: what is plugged in is laid over the stage as bodies, and gone again") {
    const fs::path folder = freshFolder("window-plugs");
    Window window(folder, demoIn(folder));
    window.click("wall:A");
    window.look();
    const auto choose = [&window] {
        window.click("rail:Layers");
        window.click("overlay:plugs");
        window.click("rail:Layers");
        window.look();
    };
    choose();
    window.picture("plugs");
    choose();
    window.picture("none");
    choose();
    window.picture("again");
    CHECK(differing(folder, "plugs", "none") > 200);
    CHECK(differing(folder, "plugs", "again") < 20);
}

TEST_CASE("window: zones and ways at night lie over the drawn plan of the storey they are on") {
    const fs::path folder = freshFolder("window-night");
    Window window(folder, demoIn(folder));
    window.key("4");
    window.click("rail:Layers");
    window.click("overlay:night");
    window.click("overlay:wet");
    const Json ground = window.look();
    CHECK(anyPlace(ground, "plan:dark:"));
    CHECK_FALSE(anyPlace(ground, "plan:zone:")); // baths are upstairs
    window.picture("ground");
    window.click("plan:storey:upper");
    const Json upper = window.look();
    CHECK(anyPlace(upper, "plan:zone:"));
    window.picture("upper");
    window.click("overlay:night");
    window.click("overlay:wet");
    const Json none = window.look();
    CHECK_FALSE(anyPlace(none, "plan:dark:"));
    CHECK_FALSE(anyPlace(none, "plan:zone:"));
}

TEST_CASE("window: on a wall without room for a plate it is said, with the nearest compromise") {
    const fs::path folder = freshFolder("window-no-place");
    const fs::path plan = copyOf(kOneRoom, folder);
    // A wardrobe before the whole of wall A, up to 2000: no place for R-02 there, and above it all is free.
    Json house = Json::parse(slurp(plan));
    house["furniture"].push_back(Json{{"id", "long-wardrobe"},
                                      {"kind", "wardrobe"},
                                      {"room", "room"},
                                      {"at", {2000, 2850}},
                                      {"size", {4000, 300, 2000}}});
    std::ofstream(plan) << house.dump(1);
    Window window(folder, plan);
    window.click("strip:room-04");
    CHECK(window.look()["places"].contains("leeway:margin"));
    window.click("strip:room-02");
    const Json chosen = window.look();
    CHECK(chosen["places"].contains("leeway:none"));
    CHECK_FALSE(anyPlace(chosen, "free:"));
    window.picture("none");
    typeInto(window, "##height", "2200");
    window.look();
    CHECK(window.look()["places"].contains("leeway:margin"));
}
