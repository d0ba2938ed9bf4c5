// A real window, a real mouse: furniture put down and sized by number, a door moved by number.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <fstream>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
/// The room with the light switch kept from the door: the door's right structural edge is at 100 + 900, its
/// casing ends 60 further on, and the switch is at 1155, so 95 from there.
fs::path roomWithKeptSwitch(const fs::path& folder) {
    const fs::path plan = copyOf(kOneRoom, folder);
    Json json = Json::parse(slurp(plan));
    for (auto& plate : json["plates"])
        if (plate["id"] == "room-01")
            plate["keptAlong"] = {{"from", "opening"}, {"id", "door"}, {"edge", "right"}, {"distance", 95}};
    std::ofstream(plan) << json.dump(1);
    return plan;
}

const Json* byId(const Json& list, const std::string& id) {
    for (const auto& entry : list)
        if (entry["id"] == id) return &entry;
    return nullptr;
}
} // namespace

TEST_CASE("window: a desk from the palette is put into the room, sized by number, and undone step by step") {
    const fs::path folder = freshFolder("window-furnish");
    const fs::path plan = copyOf(kOneRoom, folder);
    Window window(folder, plan);
    window.click("rail:Furnish");
    window.click("furnish:search");
    window.type("desk");
    window.click("furnish:kind:desk");
    window.picture("on-pointer");
    window.click("furnish:middle");
    REQUIRE(window.waitFor("changed", true));
    // The room is 4000 x 3000 with a corner at (0, 0); a desk is usually 1400 x 700
    // (plan/furniture_kinds.cpp).
    const Json put = saved(window, plan);
    const Json* desk = byId(put["furniture"], "room-desk-1");
    REQUIRE(desk != nullptr);
    CHECK((*desk)["at"] == Json({2000, 1500}));
    CHECK_FALSE(desk->contains("size"));

    typeInto(window, "thing:width", "12 cows");
    CHECK(window.look()["places"].contains("thing-mistake:width"));
    CHECK(window.look()["changed"] == false);
    typeInto(window, "thing:width", "180cm");
    REQUIRE(window.waitFor("changed", true));
    window.picture("sized");
    const Json sized = saved(window, plan);
    desk = byId(sized["furniture"], "room-desk-1");
    REQUIRE(desk != nullptr);
    CHECK((*desk)["size"][0] == 1800);

    window.key("ctrl+z");
    REQUIRE(window.waitFor("changed", true));
    CHECK(window.look()["places"].contains("thing-card"));
    window.key("ctrl+z");
    window.look();
    CHECK_FALSE(window.look()["places"].contains("thing-card"));
    const Json without = saved(window, plan);
    CHECK(byId(without["furniture"], "room-desk-1") == nullptr);
    CHECK(without["furniture"].size() == 3);
}

TEST_CASE("window: a door is moved by number, and the switch kept from its casing goes along") {
    const fs::path folder = freshFolder("window-door");
    const fs::path plan = roomWithKeptSwitch(folder);
    Window window(folder, plan);
    window.click("rail:Furnish");
    window.click("furnish:page:Here");
    window.click("furnish:here:opening:door");
    typeInto(window, "thing:left", "3500");
    // 3500 + 900 is past the wall's 4000: refused, and nothing moved.
    CHECK(window.look()["places"].contains("thing-mistake:left"));
    typeInto(window, "thing:left", "400");
    REQUIRE(window.waitFor("changed", true));
    window.picture("door");
    const Json now = saved(window, plan);
    CHECK((*byId(now["openings"], "door"))["left"] == 400);
    CHECK((*byId(now["plates"], "room-01"))["setOut"] == 400 + 900 + 60 + 95);
}
