// A real window, a real mouse: the evening with the homeowner, from opening the plan to the saved file.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <cmath>
#include <thread>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
/// A plate that the stage shows right now, by its mark.
std::string plateInSight(const Json& report) {
    for (const auto& [name, rect] : report["places"].items())
        if (name.starts_with("plate:")) return name;
    return {};
}
} // namespace

TEST_CASE("window: a plate is chosen by clicking it on the stage, agreed, the furniture hidden, saved, and "
          "the file says so") {
    const fs::path folder = freshFolder("window-evening");
    const fs::path plan = copyOf(kOneRoom, folder);
    Window window(folder, plan);
    // Square to the walls until one shows a plate.
    std::string place;
    for (const std::string wall : {"A", "B", "C", "D"}) {
        window.click("wall:" + wall);
        place = plateInSight(window.look());
        if (!place.empty()) break;
    }
    REQUIRE_FALSE(place.empty());
    window.click(place);
    const std::string id = place.substr(6);
    CHECK(window.waitFor("selected", id));
    window.picture("selected");
    window.click("agree");
    CHECK(window.waitFor("agreed", 1));
    window.click("rail:Layers");
    window.click("layer:furniture:Hidden");
    CHECK(window.waitFor("changed", true));
    window.picture("agreed");
    window.key("ctrl+s");
    CHECK(window.waitFor("changed", false));

    const Json saved = Json::parse(slurp(plan));
    REQUIRE(saved["agreements"].size() == 1);
    CHECK(saved["agreements"][0]["plate"] == id);
    CHECK(saved["agreements"][0]["answer"] == "agree");
    CHECK(saved["agreements"][0]["by"] == "R. Fern");
    bool hidden = false;
    for (const auto& layer : saved["layers"])
        if (layer["id"] == "furniture") hidden = layer.value("visibility", "") == "hidden";
    CHECK(hidden);
}

TEST_CASE("window: a plate chosen on the strip is queried with a note, and moving it by number afterwards "
          "reopens it") {
    const fs::path folder = freshFolder("window-query");
    const fs::path plan = copyOf(kOneRoom, folder);
    Window window(folder, plan);
    std::string id;
    const Json report = window.look();
    for (const auto& [name, rect] : report["places"].items())
        if (name.starts_with("strip:")) {
            id = name.substr(6);
            break;
        }
    REQUIRE_FALSE(id.empty());
    window.click("strip:" + id);
    CHECK(window.waitFor("selected", id));
    window.click("query");
    window.click("note");
    window.type("a little lower");
    window.click("save-query");
    CHECK(window.waitFor("queried", 1));
    window.click("##height");
    window.key("ctrl+a");
    window.type("400+71/2");
    window.key("Return");
    CHECK(window.waitFor("queried", 0));
    window.key("ctrl+s");
    CHECK(window.waitFor("changed", false));
    const Json saved = Json::parse(slurp(plan));
    CHECK(saved["agreements"][0]["note"] == "a little lower");
    for (const auto& plate : saved["plates"])
        if (plate["id"] == id) CHECK(plate["height"] == 435.5);
}

TEST_CASE("window: at rest no frame is drawn, and looking round uploads nothing") {
    const fs::path folder = freshFolder("window-rest");
    Window window(folder, copyOf(kOneRoom, folder), Window::Quality::Fine);
    const Json before = window.look();
    std::this_thread::sleep_for(std::chrono::seconds(2));
    const Json after = window.look();
    CHECK(after["frames"] == before["frames"]);
    window.keyDown("Right");
    std::this_thread::sleep_for(std::chrono::milliseconds(700));
    window.keyUp("Right");
    const Json turned = window.look();
    CHECK(turned["yaw"] != before["yaw"]);
    CHECK(turned["frames"].get<int>() > before["frames"].get<int>());
    CHECK(turned["uploads"] == before["uploads"]);
}

TEST_CASE("window: one walks with the keys and does not leave the house") {
    const fs::path folder = freshFolder("window-walk");
    const fs::path plan = copyOf(kOneRoom, folder);
    Window window(folder, plan);
    const Json before = window.look();
    window.keyDown("w");
    std::this_thread::sleep_for(std::chrono::seconds(6));
    window.keyUp("w");
    const Json after = window.look();
    const auto eye = [](const Json& report, int axis) {
        return report["eye"][static_cast<std::size_t>(axis)].get<double>();
    };
    const double walked = std::hypot(eye(after, 0) - eye(before, 0), eye(after, 2) - eye(before, 2));
    CHECK(walked > 0.3);
    double low_x = 1e9, high_x = -1e9, low_y = 1e9, high_y = -1e9;
    const Json file = Json::parse(slurp(plan));
    for (const auto& corner : file["rooms"][0]["outline"]) {
        low_x = std::min(low_x, corner[0].get<double>());
        high_x = std::max(high_x, corner[0].get<double>());
        low_y = std::min(low_y, corner[1].get<double>());
        high_y = std::max(high_y, corner[1].get<double>());
    }
    // A body of radius 250 stays that far from the walls (one 50 mm cell of the walking grid as slack).
    CHECK(eye(after, 0) * 1000 > low_x + 200);
    CHECK(eye(after, 0) * 1000 < high_x - 200);
    CHECK(-eye(after, 2) * 1000 > low_y + 200);
    CHECK(-eye(after, 2) * 1000 < high_y - 200);
}

TEST_CASE("window: closing with unsaved changes asks first, and staying keeps everything") {
    const fs::path folder = freshFolder("window-unsaved");
    const fs::path plan = copyOf(kOneRoom, folder);
    const std::string untouched = slurp(plan);
    Window window(folder, plan);
    window.click("rail:Layers");
    window.click("layer:furniture:See-through");
    CHECK(window.waitFor("changed", true));
    window.closeByManager();
    CHECK(window.waitFor("asking", "unsaved"));
    window.picture("asking");
    window.click("unsaved-stay");
    CHECK(window.waitFor("asking", ""));
    CHECK(window.running());
    CHECK(slurp(plan) == untouched);
    window.key("ctrl+q");
    CHECK(window.waitFor("asking", "unsaved"));
    window.click("unsaved-save");
    for (int i = 0; i < 40 && window.running(); ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(100));
    CHECK_FALSE(window.running());
    CHECK(slurp(plan) != untouched);
}

TEST_CASE("window: a bad file opened from the window is answered in a box, and the open plan stays alive") {
    const fs::path folder = freshFolder("window-bad");
    const fs::path plan = copyOf(kOneRoom, folder);
    std::ofstream(folder / "broken.plan.json") << "{\"gangway\": 1, \"rooms\": 5}";
    Window window(folder, plan);
    // With unsaved changes too: nobody is asked about them for the sake of a file that can't be opened.
    window.click("rail:Layers");
    window.click("layer:furniture:See-through");
    CHECK(window.waitFor("changed", true));
    window.key("ctrl+o");
    window.click("browse-path");
    window.key("ctrl+a");
    window.type((folder / "broken.plan.json").string());
    window.key("Return");
    CHECK(window.waitFor("message", "This plan could not be opened"));
    CHECK(window.look()["asking"] == "");
    window.picture("message");
    window.click("message-close");
    CHECK(window.waitFor("message", ""));
    CHECK(window.look()["file"] == plan.string());
    CHECK(window.running());
}

TEST_CASE("window: a note stays with the plate it was typed for, and Enter saves it") {
    const fs::path folder = freshFolder("window-notes");
    const fs::path plan = copyOf(kOneRoom, folder);
    Window window(folder, plan);
    window.click("strip:room-02");
    CHECK(window.waitFor("selected", "room-02"));
    window.click("query");
    window.type("lower");
    // Another plate: the question is over, and its own note is empty, so there is nothing to save.
    window.click("row:room-04");
    CHECK(window.waitFor("selected", "room-04"));
    CHECK(window.look()["places"].contains("agree"));
    window.click("query");
    window.click("save-query");
    CHECK(window.look()["queried"] == 0);
    window.click("note");
    window.type("more");
    window.key("ctrl+Return");
    CHECK(window.waitFor("queried", 1));
    // Back at the first one what was typed is still there; the homeowner's one line is saved by Enter.
    window.click("row:room-02");
    CHECK(window.waitFor("selected", "room-02"));
    window.click("seat");
    CHECK(window.waitFor("seat", "homeowner"));
    window.click("query");
    window.picture("homeowner");
    window.key("End");
    window.type(" please");
    window.key("Return");
    CHECK(window.waitFor("queried", 2));
    window.key("ctrl+s");
    CHECK(window.waitFor("changed", false));
    const Json saved = Json::parse(slurp(plan));
    REQUIRE(saved["agreements"].size() == 2);
    for (const auto& answer : saved["agreements"])
        CHECK(answer["note"] == (answer["plate"] == "room-02" ? "lower please" : "more"));
}

TEST_CASE("window: seeing past the wardrobe keeps the docket's rows where they are") {
    const fs::path folder = freshFolder("window-past");
    Window window(folder, copyOf(kOneRoom, folder));
    const Json before = window.look();
    REQUIRE(before["places"].contains("show:room-03"));
    window.click("show:room-03");
    CHECK(window.waitFor("selected", "room-03"));
    const Json after = window.look();
    CHECK(after["places"].contains("put-back:room-03"));
    CHECK(after["places"]["row:room-04"] == before["places"]["row:room-04"]);
    window.click("put-back:room-03");
    CHECK(window.look()["places"].contains("show:room-03"));
}

TEST_CASE(
    "window: a click on a stair climbs it, and from above a double-click steps into the room under it") {
    const fs::path folder = freshFolder("window-stair");
    // With the pieces that lie beside the plan.
    fs::copy(std::string(GANGWAY_ASSETS_DIR) + "/demo", folder / "demo", fs::copy_options::recursive);
    Window window(folder, folder / "demo" / "terrace.plan.json");
    window.click("rail:Rooms");
    window.click("room:hall");
    CHECK(window.waitFor("room", "hall"));
    window.key("Escape");
    window.click("stair:hall-stair");
    CHECK(window.waitFor("storey", "upper", 60));
    // The eye of someone standing 1600 above the upper floor, which is 2800 up: 4.4 m.
    CHECK(window.look()["eye"][1].get<double>() == Approx(4.4).margin(0.01));
    window.key("3");
    CHECK(window.waitFor("stance", "lid-off"));
    const Json above = window.look();
    // Between two plates on walls of the bathroom that face each other.
    REQUIRE(above["places"].contains("plate:bathroom-01"));
    REQUIRE(above["places"].contains("plate:bathroom-05"));
    const auto one = above["places"]["plate:bathroom-01"].get<std::vector<double>>();
    const auto other = above["places"]["plate:bathroom-05"].get<std::vector<double>>();
    // A slow machine draws too few frames to see both clicks of a fast hand: then again.
    for (int i = 0; i < 5 && window.look()["stance"] != "walk"; ++i)
        window.doubleClick((one[0] + other[0]) / 2, (one[1] + other[1]) / 2);
    CHECK(window.waitFor("stance", "walk"));
    const Json inside = window.look();
    CHECK(inside["storey"] == "upper");
    CHECK(inside["room"] == "bathroom");
    window.picture("inside");
}

TEST_CASE(
    "window: back from the plan one stands in the room chosen there, though it lies over the one before") {
    const fs::path folder = freshFolder("window-over");
    const fs::path demo = fs::path(GANGWAY_ASSETS_DIR) / "demo";
    fs::copy_file(demo / "vase.glb", folder / "vase.glb");
    Window window(folder, copyOf(demo / "terrace.plan.json", folder));
    // Before the hob one stands under the en-suite.
    window.click("docket-findings");
    window.click("finding:hob-gap:kitchen-05");
    const double below = window.look()["eye"][1];
    window.key("4");
    window.look();
    window.click("plan:storey:upper");
    window.look();
    window.click("plan:room:ensuite");
    REQUIRE(window.waitFor("room", "ensuite"));
    window.key("1");
    REQUIRE(window.waitFor("stance", "walk"));
    // Upper floor: more than a room's height further up, metres.
    CHECK(window.look()["eye"][1].get<double>() > below + 2.4);
}
