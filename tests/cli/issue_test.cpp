// gangway issue, and what gangway sheets makes of issues.
#include "cli/program.hpp"

#include <nlohmann/json.hpp>

#include <catch2/catch.hpp>

using namespace gangway::testing;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {
std::string quoted(const fs::path& file) {
    return "'" + file.string() + "'";
}

/// The demo house in a folder of its own.
fs::path demoIn(const std::string& name) {
    const fs::path file = freshFolder(name) / "house.plan.json";
    fs::copy_file(kDemo, file);
    return file;
}

void movePlate(const fs::path& file, const std::string& tag, double right, double up) {
    Json plan = Json::parse(slurp(file));
    for (auto& plate : plan["plates"])
        if (plate["tag"] == tag) {
            plate["setOut"] = plate["setOut"].get<double>() + right;
            plate["height"] = plate["height"].get<double>() + up;
        }
    std::ofstream(file) << plan.dump(2);
}

std::string pagesOf(const fs::path& pdf) {
    return run("pdftotext -layout " + quoted(pdf) + " -").out;
}
} // namespace

TEST_CASE("a set is issued, a box is moved, and the next issue says which sheets and boxes changed") {
    const fs::path plan = demoIn("cli-issue");
    const fs::path out = plan.parent_path() / "out";
    const Ran first =
        call("issue " + quoted(plan) + " --date 2026-05-02 --by 'R. Fern' --note 'for first fix'");
    INFO(first.err);
    REQUIRE(first.code == 0);
    CHECK(has(first.out, "issue A of 2026-05-02, by R. Fern: for first fix\nfingerprint "));
    CHECK(has(first.out, "the first issue"));
    const Json issued = Json::parse(slurp(plan));
    CHECK(issued["project"]["revision"] == "A");
    CHECK(issued["project"]["date"] == "2026-05-02");
    CHECK(issued["issues"][0]["sheets"].size() > 20);
    // 98 plates, their lamps and the prints of all sheets.
    CHECK(slurp(plan).size() - slurp(kDemo).size() < 40000);

    CHECK(call("issue " + quoted(plan) + " --date 2026-05-03 --by 'R. Fern'").code == 2);
    movePlate(plan, "K-04", 120, 50);
    const Ran marked = call("sheets " + quoted(plan) + " -o " + quoted(out));
    INFO(marked.err);
    REQUIRE(marked.code == 0);
    CHECK(has(marked.err, "changed: K-04 moved 120 right, 50 up\n"));
    const std::string pages = pagesOf(out / "house-elevations.pdf");
    CHECK(has(pages, "Since revision A of 2026-05-02"));
    CHECK(has(pages, "after A"));

    const fs::path next = plan.parent_path() / "house-B.plan.json";
    const std::string before = slurp(plan);
    const Ran second = call("issue " + quoted(plan) + " --date 2026-06-09 --by 'R. Fern' -o " + quoted(next));
    INFO(second.err);
    REQUIRE(second.code == 0);
    CHECK(slurp(plan) == before);
    CHECK(has(second.out, "issue B of 2026-06-09"));
    CHECK(has(second.out, "unchanged since A"));
    CHECK(has(second.out, "changed: K-04 moved 120 right, 50 up\n"));

    // Exactly as issued: marked against the issue before, and compared with it by its letter just the same.
    const Ran as_issued = call("sheets " + quoted(next) + " -o " + quoted(out) + " --room kitchen --wall A");
    CHECK(has(as_issued.err, "changed: K-04 moved 120 right, 50 up\n"));
    const std::string unnamed = slurp(out / "house-B-elevations.pdf");
    REQUIRE(
        call("sheets " + quoted(next) + " -o " + quoted(out) + " --room kitchen --wall A --since A").code ==
        0);
    CHECK(slurp(out / "house-B-elevations.pdf") == unnamed);
    const Ran itself = call("sheets " + quoted(next) + " -o " + quoted(out) + " --room kitchen --since B");
    CHECK(has(itself.err, "no plate has changed"));
    const Ran unknown = call("sheets " + quoted(next) + " -o " + quoted(out) + " --since D");
    CHECK(unknown.code == 2);
    CHECK(has(unknown.err, "no issue 'D'"));
}

TEST_CASE("a plan whose floors are not stated is not issued, and nothing is written") {
    const fs::path plan = freshFolder("cli-issue-bungalow") / "bungalow.plan.json";
    fs::copy_file(kBungalow, plan);
    const Ran refused = call("issue " + quoted(plan) + " --date 2026-05-02 --by 'R. Fern'");
    CHECK(refused.code == 2);
    CHECK(has(refused.err, "the floor build-up of Living room, Bedroom and Entrance hall is not stated"));
    CHECK(slurp(plan) == slurp(kBungalow));
}

TEST_CASE("a floor that got thicker is said at the next issue, as heights above the slab") {
    const fs::path plan = demoIn("cli-issue-floor");
    REQUIRE(call("issue " + quoted(plan) + " --date 2026-05-02 --by 'R. Fern'").code == 0);
    Json changed = Json::parse(slurp(plan));
    changed["rooms"][0]["floorBuildUp"][1]["thickness"] = 60;
    std::ofstream(plan) << changed.dump(2);
    const Ran ran = call("issue " + quoted(plan) + " --date 2026-05-09 --by 'R. Fern'");
    CHECK(has(ran.out,
              "changed: Kitchen-diner: floor build-up 75 -> 90: heights above the slab change by +15\n"));
}
