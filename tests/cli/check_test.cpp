#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

#include <cmath>

using namespace gangway::testing;
using Json = nlohmann::json;

namespace {
const std::string kTerrace = std::string("'") + GANGWAY_ASSETS_DIR + "/demo/terrace.plan.json'";
}

TEST_CASE("check lists the demo's mistakes by room, with severity, source, scope and caution") {
    const Ran ran = call("check " + kTerrace);
    CHECK(ran.code == 1);
    CHECK(ran.out.find("\nHall\n") != std::string::npos);
    CHECK(ran.out.find("  fault group-intermediate-missing: ") != std::string::npos);
    CHECK(ran.out.find("trade facts 6.2") != std::string::npos);
    CHECK(ran.out.find("Not checked: ") != std::string::npos);
    CHECK(ran.out.find("Isolate the supply") != std::string::npos);
    for (const char* word : {"compliant", " safe"})
        CHECK(ran.out.find(word) == std::string::npos);
}

TEST_CASE("check --json gives the same findings as data, faults first") {
    const Ran ran = call("check " + kTerrace + " --json --pack gb");
    CHECK(ran.code == 1);
    const Json report = Json::parse(ran.out);
    CHECK(report["pack"] == "gb");
    REQUIRE_FALSE(report["findings"].empty());
    CHECK(report["findings"].front()["severity"] == "fault");
    for (const auto& finding : report["findings"])
        for (const char* key : {"rule", "message", "remedy", "source"})
            CHECK_FALSE(finding[key].get<std::string>().empty());
}

TEST_CASE("check --margins lists every plate on a wall, the most fragile first") {
    // By hand: a room of 4000 x 2400 without furniture. An 81 plate (DIN 49073 frame, trade facts value 43)
    // whose middle is 150 from the wall's left end and one 1500 from it: the wall's ends are 150 - 40.5 =
    // 109.5 and more than 1000 away from their edges, their own corners' and heights' limits aside.
    const auto file = freshFolder("cli-check-margins") / "room.plan.json";
    std::ofstream(file) << R"({"gangway": 1,
      "storeys": [{"id": "ground", "name": "Ground", "plateFormat": "round-71"}],
      "rooms": [{"id": "room", "letter": "R", "name": "Room", "storey": "ground",
                 "outline": [[0, 3000], [4000, 3000], [4000, 0], [0, 0]]}],
      "plates": [
        {"id": "wide", "tag": "R-01", "room": "room", "wall": "A", "setOut": 1500, "height": 450,
         "modules": ["socket-f"]},
        {"id": "near", "tag": "R-02", "room": "room", "wall": "A", "setOut": 150, "height": 450,
         "modules": ["socket-f"]}]})";
    const Ran text = call("check '" + file.string() + "' --margins");
    INFO(text.err);
    REQUIRE(text.out.find("Margins: ") != std::string::npos);
    CHECK(text.out.find("  R-02 ") < text.out.find("  R-01 "));
    const Json margins = Json::parse(call("check '" + file.string() + "' --margins --json").out)["margins"];
    REQUIRE(margins.size() == 2);
    CHECK(margins[0]["plate"] == "near");
    CHECK(margins[0]["room"] == "room");
    CHECK(margins[0]["wall"] == "A");
    CHECK(margins[0]["margin"].get<double>() <= 109.5);
    CHECK(margins[1]["margin"].get<double>() > margins[0]["margin"].get<double>());
    CHECK_FALSE(Json::parse(call("check '" + file.string() + "' --json").out).contains("margins"));
    CHECK(call("check '" + file.string() + "' --margins --sarif").code == 2);
}

TEST_CASE("check --margins of the demo: sorted, and what is wrong as it stands comes first") {
    const Json report = Json::parse(call("check " + kTerrace + " --margins --json").out);
    const Json& margins = report["margins"];
    REQUIRE(margins.size() > 40);
    for (std::size_t i = 1; i < margins.size(); ++i)
        CHECK(margins[i - 1]["margin"].get<double>() <= margins[i]["margin"].get<double>());
    CHECK(margins.front()["margin"].get<double>() <= 0);
    CHECK(margins.back()["margin"].get<double>() > 0);
    // A fault about a plate's place leaves it no margin.
    int covered = 0;
    for (const Json& finding : report["findings"]) {
        if (finding["rule"] != "covered-plate" || finding["severity"] == "hint") continue;
        for (const Json& margin : margins)
            if (margin["plate"] == finding["objects"][0]) {
                ++covered;
                CHECK(margin["margin"].get<double>() <= 0);
            }
    }
    CHECK(covered > 0);
}

TEST_CASE("check of a plan without a fault exits 0, of one that can't be read 2") {
    CHECK(call("check '" + freshFolder("cli-check").string() + "/none.plan.json'").code == 2);
    const auto empty = freshFolder("cli-check") / "empty.plan.json";
    std::ofstream(empty) << R"({"gangway": 1, "project": {"name": "Nothing yet"}})";
    CHECK(call("check '" + empty.string() + "'").code == 0);
}

TEST_CASE("an unknown country pack is refused with the nearest") {
    const Ran ran = call("check " + kTerrace + " --pack internationl");
    CHECK(ran.code == 2);
    CHECK(ran.err.find("did you mean 'international'?") != std::string::npos);
}

TEST_CASE("check --sarif gives a run whose results point at the plan's lines") {
    // Names and levels of SARIF 2.1.0, 3.19 to 3.27 (from memory).
    const Ran ran = call("check " + kTerrace + " --sarif");
    CHECK(ran.code == 1);
    const Json report = Json::parse(ran.out);
    CHECK(report["version"] == "2.1.0");
    REQUIRE(report["runs"].size() == 1);
    const Json& run = report["runs"][0];
    const Json& rules = run["tool"]["driver"]["rules"];
    std::vector<std::string> lines;
    std::ifstream file(std::string(GANGWAY_ASSETS_DIR) + "/demo/terrace.plan.json");
    for (std::string line; std::getline(file, line);)
        lines.push_back(line);
    REQUIRE(run["results"].size() > 40);
    for (const Json& result : run["results"]) {
        CHECK(rules[result["ruleIndex"].get<std::size_t>()]["id"] == result["ruleId"]);
        const std::string level = result["level"];
        CHECK((level == "error" || level == "warning" || level == "note"));
        const Json& place = result["locations"][0];
        const auto line = place["physicalLocation"]["region"]["startLine"].get<std::size_t>();
        REQUIRE((line >= 1 && line <= lines.size()));
        INFO(result["message"]["text"]);
        CHECK(lines[line - 1].find(place["logicalLocations"][0]["name"].get<std::string>()) !=
              std::string::npos);
    }
    CHECK(run["invocations"][0]["toolExecutionNotifications"][0]["message"]["text"].get<std::string>().find(
              "Not checked: ") != std::string::npos);
    CHECK(call("check " + kTerrace + " --sarif --json").code == 2);
}

TEST_CASE("an accepted fault is listed with its reason and no longer counts") {
    const auto folder = freshFolder("cli-check-accepted");
    const auto file = folder / "house.plan.json";
    Json plan = Json::parse(slurp(std::string(GANGWAY_ASSETS_DIR) + "/demo/terrace.plan.json"));
    const Json before = Json::parse(call("check " + kTerrace + " --json").out);
    long faults = 0;
    for (const Json& finding : before["findings"]) {
        if (finding["severity"] != "fault") continue;
        ++faults;
        std::string facts = finding["message"];
        if (finding.contains("at"))
            facts += " At " + std::to_string(std::lround(finding["at"][0].get<double>())) + ", " +
                     std::to_string(std::lround(finding["at"][1].get<double>())) + ", " +
                     std::to_string(std::lround(finding["at"][2].get<double>())) + ".";
        plan["accepted"].push_back({{"id", finding["id"]},
                                    {"facts", facts},
                                    {"by", "Ann"},
                                    {"at", "2026-11-26T10:00:00Z"},
                                    {"note", "client wants it so"}});
    }
    REQUIRE(faults > 10);
    std::ofstream(file) << plan.dump(1);
    const Ran ran = call("check '" + file.string() + "'");
    CHECK(ran.code == 0);
    CHECK(ran.out.find("Accepted as it is\n") != std::string::npos);
    CHECK(ran.out.find("Accepted: client wants it so") != std::string::npos);
    CHECK(ran.out.find("\n0 fault, ") != std::string::npos);
    const Json report = Json::parse(call("check '" + file.string() + "' --sarif").out);
    for (const Json& result : report["runs"][0]["results"])
        if (result["level"] == "error")
            CHECK(result["suppressions"][0]["justification"] == "client wants it so");
}
