// A real window, a real mouse: findings are listed, stepped through and gone to, mended by their remedies,
// taken back, and accepted with a reason.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
const std::string kHob = "finding:hob-gap:kitchen-05";
const std::string kHobId = "hob-gap:kitchen-05:";

bool opened(const Json& report, const std::string& id) {
    return report["finding"].get<std::string>().starts_with(id);
}

bool anyPlace(const Json& report, const std::string& begin) {
    for (const auto& [name, rect] : report["places"].items())
        if (name.starts_with(begin)) return true;
    return false;
}

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

TEST_CASE("window: a finding's remedy is previewed, moves its plate, and undo moves it back") {
    const fs::path folder = freshFolder("window-finding");
    const fs::path plan = demoIn(folder);
    Window window(folder, plan);
    window.click("docket-findings");
    window.click(kHob);
    const Json gone_to = window.look();
    CHECK(opened(gone_to, kHobId));
    CHECK(gone_to["places"].contains("finding-measure"));
    CHECK(gone_to["places"].contains("finding-body:kitchen-05"));
    window.click("finding-preview");
    const Json previewed = window.look();
    CHECK(previewed["places"].contains("finding-ghost"));
    CHECK(previewed["changed"] == false);
    window.picture("preview");
    window.click("remedy:hob-gap:kitchen-05");
    REQUIRE(window.waitFor("changed", true));
    const Json next = window.look();
    CHECK_FALSE(next["places"].contains(kHob));
    // The next one is open by itself.
    CHECK_FALSE(next["finding"].get<std::string>().empty());
    CHECK_FALSE(opened(next, kHobId));
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
    window.click("docket-findings");
    window.click(kHob);
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
    window.key("k"); // the next one was open
    CHECK(opened(window.look(), kHobId));
    window.picture("accepted");
    window.click("finding-reopen");
    window.look();
    CHECK_FALSE(saved(window, plan).contains("accepted"));
}

TEST_CASE("window: keys step through the findings, and Esc puts back what was see-through") {
    const fs::path folder = freshFolder("window-finding-keys");
    Window window(folder, demoIn(folder));
    const Json before = window.look();
    window.key("j");
    const Json first = window.look();
    REQUIRE_FALSE(first["finding"].get<std::string>().empty());
    CHECK(first["eye"] != before["eye"]);
    CHECK(anyPlace(first, "finding-body:"));
    window.key("j");
    const Json second = window.look();
    CHECK(second["finding"] != first["finding"]);
    window.key("k");
    CHECK(window.look()["finding"] == first["finding"]);
    // Filtered off, none of its rows is there and no step goes to one.
    window.click("finding-filter:Fault");
    CHECK_FALSE(window.look()["places"].contains(kHob));
    window.click("finding-filter:Fault");
    CHECK(window.look()["places"].contains(kHob));
    window.key("Escape");
    const Json closed = window.look();
    CHECK(closed["finding"] == "");
    CHECK(closed["faded"].empty());
}

TEST_CASE("window: a badge on strip and plan opens its finding; the homeowner sees none of it") {
    const fs::path folder = freshFolder("window-finding-badge");
    Window window(folder, demoIn(folder));
    window.click("badge:strip:kitchen-05");
    CHECK(window.look()["finding"].get<std::string>().find("kitchen-05") != std::string::npos);
    window.key("Escape");
    window.key("4");
    window.look();
    window.click("badge:plan:kitchen-05");
    const Json on_plan = window.look();
    CHECK(on_plan["finding"].get<std::string>().find("kitchen-05") != std::string::npos);
    CHECK(on_plan["stance"] == "plan");
    window.key("h");
    const Json homeowner = window.look();
    CHECK(homeowner["finding"] == "");
    CHECK_FALSE(anyPlace(homeowner, "badge:"));
    window.key("j");
    CHECK(window.look()["finding"] == "");
}

TEST_CASE("window: what a moved wardrobe breaks and mends is listed, and is taken back with one click") {
    const fs::path folder = freshFolder("window-ripple");
    const fs::path plan = copyOf(kOneRoom, folder);
    Window window(folder, plan);
    window.click("docket-findings");
    CHECK_FALSE(window.look()["places"].contains("ripple"));
    window.key("4");
    window.look();
    window.click("plan:furniture:wardrobe");
    // 1500 wide (plan/furniture_kinds.cpp), so that it ends at 1520 and R-03, at 2000, is free.
    typeInto(window, "thing:left", "20");
    REQUIRE(window.waitFor("changed", true));
    const Json moved = window.look();
    CHECK(moved["places"].contains("ripple"));
    const auto covers = [](const Json& report) {
        for (const Json& id : report["findings"])
            if (id.get<std::string>().starts_with("covered-plate:room-03")) return true;
        return false;
    };
    CHECK_FALSE(covers(moved));
    window.picture("moved");
    window.click("ripple-back");
    REQUIRE(window.waitFor("changed", false));
    const Json back = window.look();
    CHECK_FALSE(back["places"].contains("ripple"));
    CHECK(covers(back));
}

TEST_CASE("window: free stretches stand under the strip while a plate is chosen, and are gone with it") {
    const fs::path folder = freshFolder("window-free");
    Window window(folder, demoIn(folder));
    CHECK_FALSE(anyPlace(window.look(), "free:"));
    window.click("row:kitchen-05");
    const Json chosen = window.look();
    // For the double K-05 wall A is free from 3423 to 4077 (demo-house.md, 1-2) and beside the tall oven,
    // where it is wider; what is drawn has their lengths.
    REQUIRE(chosen["places"].contains("free:1"));
    CHECK_FALSE(chosen["places"].contains("free:2"));
    const auto wide = [&](const char* name) { return chosen["places"][name][2].get<double>(); };
    CHECK(wide("free:0") > 5);
    CHECK(wide("free:1") > wide("free:0"));
    window.key("Escape");
    CHECK_FALSE(anyPlace(window.look(), "free:"));
    // The homeowner is not asked where sockets may sit.
    window.key("h");
    window.look();
    CHECK_FALSE(anyPlace(window.look(), "free:"));
}

TEST_CASE("window: zones are laid over the walls from the panel, and the findings are written as sheets") {
    const fs::path folder = freshFolder("window-zones");
    Window window(folder, demoIn(folder));
    window.click("rail:Layers");
    CHECK_FALSE(anyPlace(window.look(), "overlaid:"));
    window.click("overlay:cables");
    window.click("overlay:wet");
    // Wall A has sockets with feeds; no bath is in the kitchen.
    const Json laid = window.look();
    CHECK(laid["places"].contains("overlaid:cables:A"));
    CHECK_FALSE(anyPlace(laid, "overlaid:wet:"));
    window.click("overlay:cables");
    CHECK_FALSE(anyPlace(window.look(), "overlaid:"));
    window.click("rail:Sheets");
    window.click("sheets:export");
    window.click("sheets:elevations");
    window.click("sheets:findings");
    window.click("write-sheets");
    window.look();
    CHECK(fs::exists(folder / "sheets" / "house-findings.pdf"));
    CHECK_FALSE(fs::exists(folder / "sheets" / "house-elevations.pdf"));
}
