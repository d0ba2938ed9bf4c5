#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
/// The program with a configuration folder of this test's own.
Ran callIn(const fs::path& config, const std::string& arguments) {
    return run("XDG_CONFIG_HOME='" + config.string() + "' '" + kProgram + "' " + arguments);
}
} // namespace

TEST_CASE("pack list names every pack with its edition and how well its values are sourced") {
    const fs::path config = freshFolder("cli-pack-list");
    const Ran text = callIn(config, "pack list");
    CHECK(text.code == 0);
    CHECK(text.err.empty());
    for (const char* words : {"gb-sct", "United Kingdom: Scotland (starts from 'gb')", "NFPA 70 (NEC) 2023",
                              "official, ", "from memory"})
        CHECK(has(text.out, words));
    const Ran data = callIn(config, "pack list --json");
    REQUIRE(data.code == 0);
    const Json packs = Json::parse(data.out)["packs"];
    CHECK(packs.size() >= 9);
    for (const auto& pack : packs) {
        INFO(pack["id"]);
        CHECK_FALSE(pack["edition"].get<std::string>().empty());
        int values = 0;
        for (const auto& [grade, number] : pack["values"].items())
            values += number.get<int>();
        CHECK(values > 60);
    }
}

TEST_CASE("pack copy writes a pack of one's own that every command then knows") {
    const fs::path config = freshFolder("cli-pack-copy");
    const fs::path file = config / "gangway" / "packs" / "gb-ours.json";
    const Ran ran = callIn(config, "pack copy gb gb-ours --name 'Our habits'");
    INFO(ran.err);
    REQUIRE(ran.code == 0);
    CHECK(ran.out == file.string() + "\n");
    Json pack = Json::parse(slurp(file));
    CHECK(pack["extends"] == "gb");
    CHECK(pack["limits"]["reachLow"]["value"] == 450);
    // Changed, it counts: 450 passes no more where 460 is asked.
    pack["limits"]["reachLow"]["value"] = 460;
    std::ofstream(file) << pack.dump(1);
    CHECK(has(callIn(config, "pack list").out, "Our habits (starts from 'gb')"));
    const std::string check = "check '" + kDemo + "' --json --pack ";
    const auto reached = [&](const std::string& id) {
        int count = 0;
        const Json report = Json::parse(callIn(config, check + id).out);
        for (const auto& finding : report["findings"])
            count += finding["rule"] == "reach" && finding.value("limit", 0.0) == 460;
        return count;
    };
    CHECK(reached("gb") == 0);
    CHECK(reached("gb-ours") > 0);
    const Ran again = callIn(config, "pack copy gb gb-ours");
    CHECK(again.code == 2);
    CHECK(has(again.err, "already"));
}

TEST_CASE("a pack beside the plan is found, and a broken one is said with file, line and what to do") {
    const fs::path config = freshFolder("cli-pack-beside");
    fs::create_directories(config / "house" / "packs");
    const fs::path plan = config / "house" / "empty.plan.json";
    std::ofstream(plan) << R"({"gangway": 1, "project": {"name": "Nothing yet"}, "pack": "town"})";
    const std::string check = "check '" + plan.string() + "'";
    CHECK(callIn(config, check).code == 2);
    CHECK(has(callIn(config, check).err, (config / "house" / "packs").string()));
    const fs::path file = config / "house" / "packs" / "town.json";
    CHECK(callIn(config, "pack copy us town -o '" + file.string() + "'").code == 0);
    CHECK(callIn(config, check).code == 0);
    CHECK(has(callIn(config, "pack list '" + plan.string() + "'").out, "town"));
    CHECK_FALSE(has(callIn(config, "pack list").out, "town"));
    std::ofstream(file) << "{\n  \"extends\": \"us\",\n  \"id\": \"town\",\n  \"name\": \"Town\",\n"
                           "  \"limits\": {\"sinkGap\": 300}\n}\n";
    const Ran broken = callIn(config, check);
    CHECK(broken.code == 2);
    CHECK(has(broken.err, file.string() + ":5:"));
    CHECK(has(broken.err, "/limits/sinkGap"));
    CHECK(has(broken.err, "mend it"));
}

TEST_CASE("pack refuses what it can't do and writes nothing") {
    const fs::path config = freshFolder("cli-pack-refused");
    struct Slip {
        std::string arguments, says;
    };
    for (const Slip& slip :
         {Slip{"pack", "--help"}, Slip{"pack copy gbb ours", "did you mean 'gb"},
          Slip{"pack copy gb us", "already"}, Slip{"pack copy gb 'Our Pack'", "small letters"},
          Slip{"pack copy gb", "NEW-ID"}}) {
        INFO(slip.arguments);
        const Ran ran = callIn(config, slip.arguments);
        CHECK(ran.code == 2);
        INFO(ran.err);
        CHECK(has(ran.err, slip.says));
    }
    CHECK_FALSE(fs::exists(config / "gangway"));
    CHECK(has(call("pack --help").out, "Examples:"));
}
