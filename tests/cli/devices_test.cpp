#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gangway::testing;
using Json = nlohmann::json;

namespace {
const Json& byId(const Json& list, const std::string& id) {
    return *std::find_if(list.begin(), list.end(), [&](const Json& one) { return one["id"] == id; });
}
} // namespace

TEST_CASE("devices lists each device with its outlet and the way of its lead") {
    const Ran ran = call("devices '" + kDemo + "' --json");
    REQUIRE(ran.code == 0);
    const Json model = Json::parse(ran.out);
    const Json file = Json::parse(slurp(kDemo));
    CHECK(model["devices"].size() == file["devices"].size());
    // The demo's README: the fridge's way is 2330, the router and the WC seat have none.
    CHECK(byId(model["devices"], "fridge")["way"] == 2330);
    CHECK(byId(model["devices"], "fridge")["plate"] == "kitchen-07");
    for (const char* id : {"router", "wc-seat"}) {
        CHECK(byId(model["devices"], id)["plate"] == "");
        CHECK_FALSE(byId(model["devices"], id)["why"].get<std::string>().empty());
    }
    // Kettle 2600 and toaster 900 on the double K-06, which has no outlet left.
    CHECK(byId(model["plates"], "kitchen-06")["watts"] == 3500);
    CHECK(byId(model["plates"], "kitchen-06")["free"] == 0);
    // Washer 2200 and dryer 2400 on 20 A at 230 V.
    CHECK(byId(model["circuits"], "laundry")["plugged"] == 4600);
    CHECK(byId(model["circuits"], "laundry")["carries"] == 4600);
}

TEST_CASE("devices says in words what has no outlet and what is often forgotten") {
    const Ran ran = call("devices '" + kDemo + "'");
    REQUIRE(ran.code == 0);
    CHECK(has(ran.out, "none: the nearest socket"));
    CHECK(has(ran.out, "Often forgotten"));
    CHECK(has(ran.out, "gas ignition"));
    CHECK_FALSE(has(ran.out, "cooker hood\n")); // it is there
    CHECK(call("devices no-such-file.json").code == 2);
}
