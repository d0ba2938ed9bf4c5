// The designer's daily work with a real mouse: plates dragged, typed, nudged, put in order, taken back.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
Json plateOf(const Json& plan, const std::string& id) {
    for (const auto& plate : plan["plates"])
        if (plate["id"] == id) return plate;
    FAIL("no plate " << id);
    return {};
}

std::pair<double, double> placeOf(Window& window, const std::string& name) {
    const Json report = window.look();
    INFO("place " << name << " in " << report["places"].dump());
    REQUIRE(report["places"].contains(name));
    const auto rect = report["places"][name].get<std::vector<double>>();
    return {rect[0] + rect[2] / 2, rect[1] + rect[3] / 2};
}
} // namespace

TEST_CASE(
    "window: a plate is dragged on the strip, typed, nudged, lined up with another, all taken back, all "
    "done again, saved and found in the reopened file") {
    const fs::path folder = freshFolder("window-placing");
    const fs::path plan = copyOf(kOneRoom, folder);
    const Json before = Json::parse(slurp(plan));
    Window window(folder, plan);

    const auto [x, y] = placeOf(window, "strip:room-02");
    window.drag(x, y, x + 40, y - 20);
    CHECK(window.look()["undo"].get<std::string>().starts_with("Move "));
    window.click("strip:room-02");
    CHECK(window.waitFor("selected", "room-02"));
    typeInto(window, "##set-out", "60 cm + 71/2");
    typeInto(window, "##height", "450");
    const std::string typed = window.look()["undo"];
    window.key("Right");
    window.key("shift+Up");
    CHECK(window.look()["undo"] != typed);
    window.picture("nudged");

    // No other plate is on this wall: line up in height with one of wall B.
    const auto [other_x, other_y] = placeOf(window, "strip:room-04");
    window.keyDown("ctrl");
    window.click(other_x, other_y);
    window.keyUp("ctrl");
    CHECK(window.waitFor("chosen", Json::array({"room-02", "room-04"})));
    window.click("arrange:Same height as the first");
    CHECK(window.waitFor("undo", "Align 2 plates at 460 mm"));
    window.picture("aligned");

    const Json after = saved(window, plan);
    CHECK(plateOf(after, "room-02")["setOut"] == Approx(636.5)); // 600 + 35.5, and 1 by the arrow key
    CHECK(plateOf(after, "room-02")["height"] == Approx(460));
    CHECK(plateOf(after, "room-04")["height"] == Approx(460)); // the first one chosen is the measure
    while (window.look()["undo"] != "")
        window.key("ctrl+z");
    CHECK(plateOf(saved(window, plan), "room-02") == plateOf(before, "room-02"));
    while (window.look()["redo"] != "")
        window.key("ctrl+y");
    CHECK(saved(window, plan) == after);
}

TEST_CASE("window: a plate kept from a door's casing follows the door that is moved by number") {
    const fs::path folder = freshFolder("window-kept");
    const fs::path plan = copyOf(kOneRoom, folder);
    Window window(folder, plan);
    window.click("strip:room-01");
    CHECK(window.waitFor("selected", "room-01"));
    window.click("from-along");
    const Json listed = window.look()["places"];
    std::string edge;
    for (const auto& [name, rect] : listed.items())
        if (name.starts_with("from:") && name.find("right edge") != std::string::npos &&
            name.find("oor") != std::string::npos)
            edge = name;
    INFO(listed.dump());
    REQUIRE_FALSE(edge.empty());
    window.click(edge);
    window.click("link-along");
    CHECK(window.look()["undo"].get<std::string>().starts_with("Keep "));
    const double kept = plateOf(saved(window, plan), "room-01")["keptAlong"]["distance"];

    window.key("4");
    CHECK(window.waitFor("stance", "plan"));
    window.key("Escape"); // the plate's numbers lie over the door
    window.click("plan:opening:door");
    window.picture("door");
    typeInto(window, "thing:left", "250");
    const Json moved = saved(window, plan);
    const double shift = 250 - 100; // the fixture's door stands 100 from the left corner
    CHECK(moved["openings"][0]["left"] == Approx(250));
    CHECK(plateOf(moved, "room-01")["setOut"] == Approx(1155 + shift));
    CHECK(plateOf(moved, "room-01")["keptAlong"]["distance"] == Approx(kept));
}

TEST_CASE("window: a plate dragged on the stage moves on its wall, and slides along it on the plan") {
    const fs::path folder = freshFolder("window-stage-drag");
    const fs::path plan = copyOf(kOneRoom, folder);
    Window window(folder, plan);
    window.click("wall:B");
    const auto [x, y] = placeOf(window, "plate:room-04");
    window.drag(x, y, x + 60, y - 50);
    CHECK(window.look()["undo"].get<std::string>().starts_with("Move "));
    const Json once = plateOf(saved(window, plan), "room-04");
    CHECK(once["wall"] == "B");
    CHECK(once["setOut"] > 1520);
    CHECK(once["height"] > 340);
    window.picture("dragged");

    window.key("4");
    const auto [px, py] = placeOf(window, "plan:plate:room-04");
    window.drag(px, py, px, py - 60); // wall B runs south on plan
    window.picture("slid");
    const Json twice = plateOf(saved(window, plan), "room-04");
    CHECK(std::abs(twice["setOut"].get<double>() - once["setOut"].get<double>()) > 50);
    CHECK(twice["height"] == once["height"]);
}

TEST_CASE("window: after a kill the next start brings back every finished edit") {
    const fs::path folder = freshFolder("window-killed");
    const fs::path plan = copyOf(kOneRoom, folder);
    const std::string file_before = slurp(plan);
    Window window(folder, plan);
    window.click("strip:room-02");
    CHECK(window.waitFor("selected", "room-02"));
    typeInto(window, "##set-out", "700");
    CHECK(window.waitFor("changed", true));
    window.look();
    window.key("Right");
    CHECK(window.waitFor("undo", "Move R-02 by 1 mm"));
    window.look();
    window.killProgram();
    CHECK(slurp(plan) == file_before); // the user's file is not written behind his back
    window.startAgain(plan);
    CHECK(window.waitFor("asking", "recover"));
    window.click("recover-yes");
    CHECK(window.waitFor("changed", true));
    CHECK(plateOf(saved(window, plan), "room-02")["setOut"] == Approx(701));
}
