// gangway schedule, and sheets --only.
#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {

std::set<std::string> filesIn(const fs::path& folder) {
    std::set<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder))
        names.insert(entry.path().filename().string());
    return names;
}

std::string quoted(const fs::path& file) {
    return "'" + file.string() + "'";
}

} // namespace

TEST_CASE("schedule writes what the file's ending says, and names the files") {
    const fs::path folder = freshFolder("cli-schedule");
    const std::string plan = "schedule '" + kOneRoom + "' -o ";
    CHECK(call(plan + quoted(folder / "s.xlsx")).out == (folder / "s.xlsx").string() + "\n");
    CHECK(call(plan + quoted(folder / "S.JSON")).code == 0);
    const Ran csv = call(plan + quoted(folder / "c.csv"));
    CHECK(csv.code == 0);
    CHECK(std::ranges::count(csv.out, '\n') == 8);
    CHECK(filesIn(folder) == std::set<std::string>{"S.JSON", "c-boxes.csv", "c-circuits.csv", "c-frames.csv",
                                                   "c-lamps.csv", "c-legs.csv", "c-luminaires.csv",
                                                   "c-modules.csv", "c.csv", "s.xlsx"});
    CHECK(Json::parse(slurp(folder / "S.JSON"))["tables"].size() == 8);
}

TEST_CASE("schedule gives one table, or one room's") {
    const fs::path folder = freshFolder("cli-schedule-part");
    REQUIRE(call("schedule '" + kDemo + "' -o " + quoted(folder / "boxes.csv") + " --table boxes").code == 0);
    CHECK(filesIn(folder) == std::set<std::string>{"boxes.csv"});
    CHECK(has(slurp(folder / "boxes.csv"), "\"box, mm\",\"depth, mm\",count\r\n"));
    REQUIRE(
        call("schedule '" + kDemo + "' -o " + quoted(folder / "k.json") + " --table plates --room kitchen")
            .code == 0);
    const Json report = Json::parse(slurp(folder / "k.json"));
    REQUIRE(report["tables"].size() == 1);
    const Json plan = Json::parse(slurp(kDemo));
    const auto in_kitchen =
        std::ranges::count_if(plan["plates"], [](const Json& plate) { return plate["room"] == "kitchen"; });
    CHECK(report["tables"][0]["rows"].size() == std::size_t(in_kitchen));
    CHECK(report["room"] == report["tables"][0]["rows"][0]["room"]);
}

TEST_CASE("schedule answers a wrong ending, table or room with what there is, and writes nothing") {
    struct Slip {
        std::string words, says;
    };
    const fs::path folder = freshFolder("cli-schedule-bad");
    for (const Slip& slip :
         {Slip{"s.xls", "must end in .csv, .xlsx or .json, not '" + folder.string() +
                            "/s.xls'; did you mean '.xlsx'?"},
          Slip{"s", "must end in .csv, .xlsx or .json"},
          Slip{"s.csv --table boxs", "no table 'boxs'; did you mean 'boxes'? There are: plates"},
          Slip{"s.csv --table xyzzy", "no table 'xyzzy'. There are: plates, luminaires"},
          Slip{"s.csv --room kitchn", "no room 'kitchn'; did you mean 'kitchen'?"},
          Slip{"s.csv --tabel boxes", "did you mean --table?"},
          Slip{"none/s.xlsx", "No such file or directory"},
          Slip{"none/s.csv", "No such file or directory"}}) {
        INFO(slip.words);
        const Ran ran = call("schedule '" + kDemo + "' -o " + folder.string() + "/" + slip.words);
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        INFO(ran.err);
        CHECK(has(ran.err, slip.says));
        // One sentence of ours, none of a library's.
        CHECK(ran.err.starts_with("gangway: "));
        CHECK_FALSE(has(ran.err, "[ERROR]"));
    }
    CHECK(filesIn(folder).empty());
    CHECK(call("schedule nowhere.plan.json -o " + folder.string() + "/s.csv").code == 2);
}

TEST_CASE("sheets --only chooses the kinds of sheet, each in a file of its own") {
    const fs::path folder = freshFolder("cli-only");
    const std::string sheets = "sheets '" + kBungalow + "' -o " + quoted(folder);
    REQUIRE(call(sheets + " --only switching,schedule").code == 0);
    CHECK(filesIn(folder) == std::set<std::string>{"bungalow-schedule.pdf", "bungalow-switching.pdf"});
    REQUIRE(call(sheets + " --only lighting").code == 0);
    CHECK(filesIn(folder).contains("bungalow-lighting.pdf"));
    // pdftotext (poppler) reads what is printed.
    const Ran text = run("pdftotext -layout " + quoted(folder / "bungalow-schedule.pdf") + " -");
    for (const auto& plate : Json::parse(slurp(kBungalow))["plates"])
        CHECK(has(text.out, plate["tag"].get<std::string>()));
    CHECK(has(text.out, "Modules to order"));
}

TEST_CASE("sheets --only answers an unknown kind with the nearest, and draws no part of the rest") {
    const fs::path folder = freshFolder("cli-only-bad");
    const Ran ran = call("sheets '" + kBungalow + "' -o " + quoted(folder) + " --only switching,schedul");
    CHECK(ran.code == 2);
    CHECK(has(ran.err, "'schedul' is not known; did you mean 'schedule'?"));
    CHECK(has(ran.err, "switching, lighting, schedule"));
    CHECK(filesIn(folder).empty());
}

TEST_CASE("sheets --only findings prints what check finds; --zones chooses what is drawn on elevations") {
    const fs::path folder = freshFolder("cli-findings");
    const std::string terrace = std::string(GANGWAY_ASSETS_DIR) + "/demo/terrace.plan.json";
    const std::string sheets = "sheets '" + terrace + "' --room ensuite -o " + quoted(folder);
    const auto words = [&](const std::string& kind) {
        return run("pdftotext -layout " + quoted(folder / ("terrace-" + kind + ".pdf")) + " -").out;
    };
    REQUIRE(call(sheets + " --only findings").code == 0);
    for (const char* part : {"E-02", "1565.2", "2500", "What was not checked"})
        CHECK(has(words("findings"), part));
    REQUIRE(call(sheets + " --only elevations").code == 0);
    CHECK(has(words("elevations"), "zone 2"));
    CHECK_FALSE(has(words("elevations"), "zones for cables"));
    REQUIRE(call(sheets + " --only elevations --zones none").code == 0);
    CHECK_FALSE(has(words("elevations"), "zone 2"));
    REQUIRE(call(sheets + " --only elevations --zones wet,cable").code == 0);
    CHECK(has(words("elevations"), "zone 2"));
    CHECK(has(words("elevations"), "zones for cables"));
    const Ran ran = call(sheets + " --zones wte");
    CHECK(ran.code == 2);
    CHECK(has(ran.err, "did you mean 'wet'?"));
}
