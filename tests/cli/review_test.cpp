#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
std::string stateOf(const std::string& plan, const std::string& id) {
    const Json list = Json::parse(call("review '" + plan + "' --json").out);
    for (const auto& plate : list["plates"])
        if (plate["id"] == id) return plate["state"];
    return "none";
}
} // namespace

TEST_CASE(
    "an agreed plate stays agreed until it is moved, then it is reopened; moved back it is agreed again") {
    const fs::path folder = freshFolder("cli-review");
    const std::string plan = (folder / "house.plan.json").string();
    fs::copy_file(kOneRoom, plan);
    Json file = Json::parse(slurp(plan));
    const std::string id = file["plates"][0]["id"];
    CHECK(stateOf(plan, id) == "open");
    CHECK(call("review '" + plan + "' --agree " + id + " --by 'R. Fern'").code == 0);
    CHECK(stateOf(plan, id) == "agreed");

    auto moved = nlohmann::ordered_json::parse(slurp(plan));
    const double before = moved["plates"][0]["setOut"];
    moved["plates"][0]["setOut"] = before + 10;
    std::ofstream(plan) << moved.dump(2);
    CHECK(stateOf(plan, id) == "reopened");
    moved["plates"][0]["setOut"] = before;
    std::ofstream(plan) << moved.dump(2);
    CHECK(stateOf(plan, id) == "agreed");
}

TEST_CASE("a query keeps its words, who and when, in the plan file") {
    const fs::path folder = freshFolder("cli-query");
    const std::string plan = (folder / "house.plan.json").string();
    fs::copy_file(kOneRoom, plan);
    const std::string id = Json::parse(slurp(plan))["plates"][1]["id"];
    REQUIRE(call("review '" + plan + "' --query " + id + " --by 'R. Fern' --note 'lower, please'").code == 0);
    const Json file = Json::parse(slurp(plan));
    REQUIRE(file["agreements"].size() == 1);
    CHECK(file["agreements"][0]["answer"] == "query");
    CHECK(file["agreements"][0]["by"] == "R. Fern");
    CHECK(file["agreements"][0]["note"] == "lower, please");
    CHECK(file["agreements"][0]["at"].get<std::string>().size() == 20);
    CHECK(stateOf(plan, id) == "queried");
}

TEST_CASE("the sign-off booklet is a PDF that names every plate") {
    const fs::path folder = freshFolder("cli-booklet");
    const auto ran = call("review '" + kDemo + "' -o '" + (folder / "out").string() + "'");
    REQUIRE(ran.code == 0);
    const fs::path file = folder / "out" / "terrace-agreements.pdf";
    CHECK(has(ran.out, file.string()));
    REQUIRE(fs::exists(file));
    // Outside check: poppler reads what was printed.
    const std::string words = run("pdftotext -layout '" + file.string() + "' -").out;
    const Json plan = Json::parse(slurp(kDemo));
    for (const auto& plate : plan["plates"]) {
        const std::string tag = plate["tag"];
        INFO(tag);
        CHECK(has(words, tag));
    }
    CHECK(has(words, "What signing means"));
}

TEST_CASE("an answer and the booklet at once are refused, and nothing is written") {
    const fs::path folder = freshFolder("cli-booklet-refused");
    const std::string plan = (folder / "house.plan.json").string();
    fs::copy_file(kOneRoom, plan);
    const std::string before = slurp(plan);
    const std::string id = Json::parse(before)["plates"][0]["id"];
    const fs::path out = folder / "out";
    CHECK(call("review '" + plan + "' --agree " + id + " --by 'R. Fern' -o '" + out.string() + "'").code ==
          2);
    CHECK(call("review '" + (folder / "none.plan.json").string() + "' -o '" + out.string() + "'").code == 2);
    CHECK(slurp(plan) == before);
    CHECK_FALSE(fs::exists(out));
}
