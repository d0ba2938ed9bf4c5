// A real window, a real mouse: composing a plate and keeping it in the user's library.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
/// The user's data folder for one test; the program inherits it.
class DataHome {
public:
    explicit DataHome(const fs::path& folder) : folder_(fs::absolute(folder)) {
        const char* before = std::getenv("XDG_DATA_HOME");
        if (before != nullptr) before_ = before;
        ::setenv("XDG_DATA_HOME", folder_.c_str(), 1);
    }
    DataHome(const DataHome&) = delete;
    DataHome& operator=(const DataHome&) = delete;
    ~DataHome() {
        if (before_.empty())
            ::unsetenv("XDG_DATA_HOME");
        else
            ::setenv("XDG_DATA_HOME", before_.c_str(), 1);
    }
    /// Where the XDG Base Directory Specification 0.8 puts it.
    fs::path library() const { return folder_ / "gangway" / "library.json"; }

private:
    fs::path folder_;
    std::string before_;
};

void choose(Window& window, const std::string& gang, const std::string& words, const std::string& module) {
    window.click("bench:gang:" + gang);
    window.click("bench:module-search");
    window.type(words);
    window.click("bench:module:" + module);
}

std::string typeOf(const Json& module) {
    return module.is_string() ? module.get<std::string>() : module["type"].get<std::string>();
}
} // namespace

TEST_CASE("window: a mixed plate of four gangs is composed, kept under a name, found in the user's file and "
          "listed when the library is opened again") {
    const fs::path folder = freshFolder("window-bench");
    const DataHome data(folder / "data");
    Window window(folder, copyOf(kOneRoom, folder));
    window.click("rail:Plates");
    window.click("library:new");
    window.click("bench:format:round-71");
    for (int gang = 1; gang < 4; ++gang)
        window.click("bench:gangs+");
    choose(window, "1", "type F", "socket-f");
    choose(window, "2", "type F", "socket-f");
    choose(window, "3", "one RJ45", "data-rj45");
    choose(window, "4", "two-way", "switch-2way");
    window.picture("composed");
    window.click("bench:tab:side");
    window.picture("side");
    window.click("bench:tab:box");
    window.picture("box");
    window.click("bench:name");
    window.type("Desk left");
    window.click("bench:category");
    window.type("desk");
    window.click("bench:save");
    window.look();

    REQUIRE(fs::exists(data.library()));
    const Json kept = Json::parse(slurp(data.library()));
    REQUIRE(kept["library"].size() == 1);
    const Json& plate = kept["library"][0];
    CHECK(plate["name"] == "Desk left");
    CHECK(plate["category"] == "desk");
    CHECK(plate["format"] == "round-71");
    REQUIRE(plate["modules"].size() == 4);
    CHECK(typeOf(plate["modules"][0]) == "socket-f");
    CHECK(typeOf(plate["modules"][1]) == "socket-f");
    CHECK(typeOf(plate["modules"][2]) == "data-rj45");
    CHECK(typeOf(plate["modules"][3]) == "switch-2way");

    // Nothing of the plan was touched by composing.
    window.click("bench:close");
    CHECK_FALSE(window.look()["changed"].get<bool>());
    window.click("rail:Plates");
    CHECK(window.look()["places"].contains("library:" + plate["id"].get<std::string>()));
    window.picture("library");

    // Placing it takes it into the plan, so that the plan opens anywhere.
    window.click("library:place:" + plate["id"].get<std::string>());
    CHECK(window.waitFor("changed", true));
    window.key("ctrl+s");
    CHECK(window.waitFor("changed", false));
    const Json saved = Json::parse(slurp(folder / "house.plan.json"));
    REQUIRE(saved["library"].size() == 1);
    CHECK(saved["library"][0] == plate);
}

TEST_CASE("window: an empty gang between two modules is kept as a blank, and Esc leaves the bench without "
          "changing the plan") {
    const fs::path folder = freshFolder("window-bench-keys");
    const DataHome data(folder / "data");
    Window window(folder, copyOf(kOneRoom, folder));
    // One key after the other is seen: on a slow machine two could fall into one frame.
    const auto press = [&window](const std::string& key) {
        window.key(key);
        window.look();
    };
    press("p");
    window.click("bench:format:round-71");
    press("plus");
    press("plus");
    // From the first gang on by keys: what is found first goes in, and the next gang is chosen.
    press("ctrl+f");
    window.type("type F");
    press("Return");
    press("Escape");
    press("Right");
    press("ctrl+f");
    window.type("two-way");
    press("Return");
    press("Escape");
    window.click("bench:name");
    window.type("Gap");
    window.key("ctrl+s");
    window.look();
    REQUIRE(fs::exists(data.library()));
    const Json kept = Json::parse(slurp(data.library()));
    REQUIRE(kept["library"].size() == 1);
    REQUIRE(kept["library"][0]["modules"].size() == 3);
    CHECK(typeOf(kept["library"][0]["modules"][0]) == "socket-f");
    CHECK(typeOf(kept["library"][0]["modules"][1]) == "blank");
    CHECK(typeOf(kept["library"][0]["modules"][2]) == "switch-2way");
    window.key("Escape");
    window.key("Escape");
    const Json report = window.look();
    CHECK_FALSE(report["places"].contains("bench:close"));
    CHECK_FALSE(report["changed"].get<bool>());
}

TEST_CASE("window: a module that the catalogue does not have is listed in the docket, and saving keeps it") {
    const fs::path folder = freshFolder("window-unknown-module");
    const fs::path plan = copyOf(kOneRoom, folder);
    Json written = Json::parse(slurp(plan));
    written["plates"][0]["modules"] = Json::array({"hologram"});
    const std::string id = written["plates"][0]["id"];
    std::ofstream(plan) << written.dump(1);
    Window window(folder, plan);
    CHECK(window.look()["places"].contains("fault:" + id));
    window.picture("unknown");
    window.click("fault:" + id);
    CHECK(window.waitFor("selected", id));
    window.click("rail:Layers");
    window.click("layer:furniture:Hidden");
    CHECK(window.waitFor("changed", true));
    window.key("ctrl+s");
    CHECK(window.waitFor("changed", false));
    const Json saved = Json::parse(slurp(plan));
    CHECK(saved["plates"][0]["modules"] == Json::array({"hologram"}));
}

TEST_CASE("window: a broken catalogue file is said once at the start, and the rest of the catalogue works") {
    const fs::path folder = freshFolder("window-broken-catalogue");
    const fs::path assets = folder / "assets";
    fs::copy(GANGWAY_ASSETS_DIR, assets, fs::copy_options::recursive);
    std::ofstream(assets / "catalogue" / "modules-of-mine.json") << "{ \"modules\": [ { \"id\": 7 } ] }";
    const std::string before = std::getenv("GANGWAY_ASSETS") == nullptr ? "" : std::getenv("GANGWAY_ASSETS");
    ::setenv("GANGWAY_ASSETS", fs::absolute(assets).c_str(), 1);
    Window window(folder, copyOf(kOneRoom, folder));
    if (before.empty())
        ::unsetenv("GANGWAY_ASSETS");
    else
        ::setenv("GANGWAY_ASSETS", before.c_str(), 1);
    CHECK(window.look()["message"] == "Files of the catalogue were left out");
    window.picture("left-out");
    window.click("message-close");
    CHECK(window.waitFor("message", ""));
    window.click("rail:Plates");
    window.click("library:new");
    CHECK(window.look()["places"].contains("bench:module:socket-f"));
}
