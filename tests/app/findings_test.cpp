// A real window, a real mouse: a finding is gone to, mended by its remedy, taken back, and accepted with a
// reason.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
const std::string kHob = "finding:hob-gap:kitchen-05";

/// The demo with the glTF piece that it names.
fs::path demoIn(const fs::path& folder) {
    const fs::path demo = fs::path(GANGWAY_ASSETS_DIR) / "demo";
    fs::copy_file(demo / "vase.glb", folder / "vase.glb");
    return copyOf(demo / "terrace.plan.json", folder);
}

Json plateOf(const Json& plan, const std::string& id) {
    for (const Json& plate : plan["plates"])
        if (plate["id"] == id) return plate;
    FAIL("no plate " << id);
    return {};
}
} // namespace

TEST_CASE("window: a finding's remedy moves its plate, and undo moves it back") {
    const fs::path folder = freshFolder("window-finding");
    const fs::path plan = demoIn(folder);
    Window window(folder, plan);
    window.click(kHob);
    window.look();
    window.click("remedy:hob-gap:kitchen-05");
    REQUIRE(window.waitFor("changed", true));
    CHECK_FALSE(window.look()["places"].contains(kHob));
    // Clear of hob, sink, window and the other plates: within the free stretch 3423 to 4077 (demo-house.md,
    // 1-2).
    const double moved = plateOf(saved(window, plan), "kitchen-05")["setOut"];
    CHECK((moved >= 3423 && moved <= 4077));
    window.key("ctrl+z");
    window.look();
    CHECK(plateOf(saved(window, plan), "kitchen-05")["setOut"] == 1850);
    CHECK(window.look()["places"].contains(kHob));
}

TEST_CASE(
    "window: an accepted finding goes from the list, is kept with its reason, and comes back when asked") {
    const fs::path folder = freshFolder("window-accept");
    const fs::path plan = demoIn(folder);
    Window window(folder, plan);
    window.click(kHob);
    window.look();
    window.click("finding-why");
    window.look();
    window.type("client wants it so");
    window.look();
    window.click("finding-accept");
    REQUIRE(window.waitFor("changed", true));
    CHECK_FALSE(window.look()["places"].contains(kHob));
    const Json kept = saved(window, plan);
    REQUIRE(kept["accepted"].size() == 1);
    CHECK(kept["accepted"][0]["note"] == "client wants it so");
    window.click("findings-accepted");
    CHECK(window.look()["places"].contains(kHob));
    window.picture("accepted");
    window.click("finding-reopen");
    window.look();
    CHECK_FALSE(saved(window, plan).contains("accepted"));
}
