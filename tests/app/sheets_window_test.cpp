// The sheets in a real window: from a page to the plate on it and back, and an export that is called off.
#include "app/window.hpp"

#include "support/run_command.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <thread>

using namespace gangway::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {
/// The first object that can be clicked on the page: its id; empty when there is none.
std::string objectOnPage(const Json& report) {
    constexpr std::string_view kPlace = "sheet:object:";
    for (const auto& [name, rect] : report["places"].items())
        if (name.starts_with(kPlace)) return name.substr(kPlace.size());
    return {};
}

/// The report as it is, at rest or not.
Json reportNow(const fs::path& folder) {
    return Json::parse(slurp(folder / "report.json"), nullptr, false);
}

/// Where a place is, once it is there, without waiting for rest; fails the test when it never is.
std::pair<double, double> middleOf(const fs::path& folder, const std::string& place) {
    for (int i = 0; i < 200; ++i) {
        const Json report = reportNow(folder);
        if (!report.is_discarded() && report["places"].contains(place)) {
            const auto rect = report["places"][place].get<std::vector<double>>();
            return {rect[0] + rect[2] / 2, rect[1] + rect[3] / 2};
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
    }
    FAIL("never on screen: " << place);
    return {};
}
} // namespace

TEST_CASE("window: from a page of the sheets one goes to a plate on it, and back to the same page") {
    const fs::path folder = freshFolder("window-sheets");
    Window window(folder, copyOf(kOneRoom, folder));
    window.click("rail:Sheets");
    const Json first = window.look();
    const std::string first_page = first["page"];
    REQUIRE_FALSE(first_page.empty());
    window.key("Down");
    const Json second = window.look();
    const std::string page = second["page"];
    CHECK(page != first_page);
    window.picture("page");

    // Larger, to the width, as A3 on A4 (ISO 216: 1 / sqrt 2), and whole again.
    const double fitted = second["zoom"];
    window.key("plus");
    CHECK(window.look()["zoom"].get<double>() == Approx(fitted * 1.25));
    window.key("0");
    window.key("a");
    CHECK(window.look()["zoom"].get<double>() == Approx(fitted * 0.70711));
    window.picture("a3-on-a4");
    window.key("a");
    window.key("b");
    const Json again = window.look();
    CHECK(again["zoom"].get<double>() == Approx(fitted));
    window.picture("black-and-white");

    const std::string id = objectOnPage(again);
    REQUIRE_FALSE(id.empty());
    window.click("sheet:object:" + id);
    const Json stage = window.look();
    CHECK(stage["selected"] == id);
    CHECK(stage["stance"] == "walk");
    CHECK(stage["page"] == "");
    window.picture("in-front-of-it");
    window.key("ctrl+p");
    CHECK(window.look()["page"] == page);
    window.key("Escape");
    CHECK(window.look()["page"] == "");
}

TEST_CASE("window: while sheets are written pages can be turned; called off, nothing is left") {
    const fs::path folder = freshFolder("window-sheets-export");
    const fs::path demo = fs::path(GANGWAY_ASSETS_DIR) / "demo";
    const fs::path plan = copyOf(demo / "terrace.plan.json", folder);
    fs::copy_file(demo / "vase.glb", folder / "vase.glb");
    Window window(folder, plan);
    window.key("ctrl+p");
    const std::string page = window.look()["page"];
    window.click("sheets:export");
    window.click("sheets:format:PNG");
    window.click("write-sheets");
    const auto [x, y] = middleOf(folder, "cancel-sheets");
    window.key("Down");
    CHECK_FALSE(window.waitFor("page", page, 1));
    CHECK_FALSE(reportNow(folder).value("resting", true)); // still being written
    CHECK(fs::exists(folder / "sheets"));
    window.click(x, y);
    const Json ended = window.look();
    CHECK_FALSE(ended["places"].contains("cancel-sheets"));
    CHECK_FALSE(fs::exists(folder / "sheets"));
    // The same once more, to its end.
    window.click("sheets:format:PNG");
    window.click("write-sheets");
    window.look();
    CHECK(fs::exists(folder / "sheets" / "house-elevations.pdf"));
    window.picture("written");
    // Esc closes the column first and the sheets next.
    window.key("Escape");
    CHECK(window.look()["page"] != "");
    window.key("Escape");
    CHECK(window.look()["page"] == "");
}
