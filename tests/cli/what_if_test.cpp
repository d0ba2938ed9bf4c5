// gangway what-if and gangway free over the demo house: numbers of assets/demo/README.md.
#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>

using namespace gangway::testing;
using Json = nlohmann::json;

namespace {
std::vector<std::string> ids(const Json& report, const std::string& change) {
    std::vector<std::string> found;
    for (const Json& one : report["changes"])
        if (one["change"] == change) found.push_back(one["id"]);
    return found;
}

bool holds(const std::vector<std::string>& list, const std::string& id) {
    return std::ranges::find(list, id) != list.end();
}

std::filesystem::path scratch(const char* name) {
    return std::filesystem::temp_directory_path() / name;
}
} // namespace

TEST_CASE("what-if: the bedroom door hung at its other side leaves the switch on its hinge side") {
    // Seed 2-2: B-01 stands between casing and wardrobe, right of the door; hung there, its hinge is beside
    // it.
    const Ran ran = call("what-if '" + kDemo + "' --rehang bedroom-door --json");
    CHECK(ran.code == 0); // no new fault
    CHECK(holds(ids(Json::parse(ran.out), "newly fails"), "switch-hinge-side:bedroom-01:bedroom-door"));
}

TEST_CASE("what-if: the island moved 200 west has its pendants further off, its floor box inside") {
    const std::string before = slurp(kDemo);
    const Ran ran = call("what-if '" + kDemo + "' --move kitchen-island=-200,0 --json");
    const Json report = Json::parse(ran.out);
    // 1-9: 300 off its middle before, 500 then.
    CHECK(holds(ids(report, "worse"),
                "off-centre:kitchen-lamp-11:kitchen-lamp-12:kitchen-lamp-13:kitchen-island"));
    // 1-10: the box 100 outside the island is 100 inside it then.
    CHECK(holds(ids(report, "newly passes"), "floor-box:kitchen-10:kitchen-island"));
    CHECK(slurp(kDemo) == before);
}

TEST_CASE("what-if writes the changed plan where it is told to") {
    const std::filesystem::path out = scratch("gangway-what-if.plan.json");
    std::filesystem::remove(out);
    const Ran ran =
        call("what-if '" + kDemo + "' --size hall-shoe-cabinet=500x350x1100 -o '" + out.string() + "'");
    CHECK(ran.code != 2);
    const Json written = Json::parse(slurp(out.string()));
    for (const Json& piece : written["furniture"])
        if (piece["id"] == "hall-shoe-cabinet") CHECK(piece["size"][0] == 500);
    std::filesystem::remove(out);
}

TEST_CASE("what-if says what can't be read or done") {
    CHECK(call("what-if '" + kDemo + "' --move sofa").code == 2);
    const Ran near = call("what-if '" + kDemo + "' --move kitchen-iland=1,2");
    CHECK(near.code == 2);
    CHECK(has(near.err, "did you mean 'kitchen-island'"));
    CHECK(call("what-if '" + kDemo + "' --size kitchen-island=100x200").code == 2);
    CHECK(call("what-if '" + kDemo + "' --rehang nowhere").code == 2);
}

TEST_CASE("free says the two free stretches of seed 1-2 and what closes them") {
    // A double at z 1073 is free over the worktop of wall A only at 723-837 and 3423-4077. The other plates
    // there are taken away first.
    Json house = Json::parse(slurp(kDemo));
    std::set<std::string> gone;
    for (const Json& one : house["plates"])
        if (one["room"] == "kitchen" && one.value("wall", "") == "A" && one["id"] != "kitchen-05")
            gone.insert(one["id"]);
    const auto keep = [&](const char* list, const char* key) {
        Json kept = Json::array();
        for (const Json& one : house[list])
            if (!gone.contains(one.value(key, ""))) kept.push_back(one);
        house[list] = kept;
    };
    keep("plates", "id");
    keep("devices", "plate");
    for (const char* list : {"legs", "scenes", "accepted"})
        house.erase(list);
    const std::filesystem::path file = scratch("gangway-free.plan.json");
    std::ofstream(file) << house.dump();
    const Ran ran = call("free '" + file.string() + "' --like K-05 --json");
    std::filesystem::remove(file);
    INFO(ran.err);
    REQUIRE(ran.code == 0);
    const Json free = Json::parse(ran.out)["free"];
    REQUIRE(free.size() >= 2);
    CHECK(free[0]["from"].get<double>() == Approx(723).margin(0.5));
    CHECK(free[0]["to"].get<double>() == Approx(837).margin(0.5));
    CHECK(free[0]["closedRight"]["rule"] == "hob-gap");
    CHECK(free[1]["from"].get<double>() == Approx(3423).margin(0.5));
    CHECK(free[1]["to"].get<double>() == Approx(4077).margin(0.5));
}

TEST_CASE("free says that there is no place, and what a plate or wall is not there") {
    // Seed 2-2: the slot between casing and wardrobe takes no triple.
    const Ran ran = call("free '" + kDemo + "' --like B-01");
    CHECK(ran.code == 1);
    CHECK(has(ran.out, "There is no place"));
    CHECK(call("free '" + kDemo + "' --like B-99").code == 2);
    CHECK(call("free '" + kDemo + "' --room kitchen --wall Z").code == 2);
    CHECK(call("free '" + kDemo + "'").code == 2);
}
