// Switching plans of the demo house and the bungalow, as they are printed.
#include "shipped_plans.hpp"

#include "export/export.hpp"
#include "sheet_reading.hpp"
#include "sheets/switching_legend.hpp"
#include "sheets/switching_sheets.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cstdio>
#include <filesystem>
#include <sstream>

using namespace gangway;

namespace {

drawing::Drawing switchingOf(const plan::Plan& plan, const sheets::SwitchingOptions& options = {}) {
    auto drawing = sheets::switchingSheets(plan, test::shippedCatalogue(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

/// Words with single spaces between.
std::string squeezed(const std::string& text) {
    std::istringstream words(text);
    std::string all;
    for (std::string word; words >> word;)
        all += (all.empty() ? "" : " ") + word;
    return all;
}

std::string output(const std::string& command) {
    std::string text;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return text;
    std::array<char, 4096> part{};
    for (std::size_t size = 0; (size = fread(part.data(), 1, part.size(), pipe)) > 0;)
        text.append(part.data(), size);
    pclose(pipe);
    return text;
}

} // namespace

TEST_CASE("no two texts touch on any switching plan") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const char* paper : {"A3", "A2"}) {
            sheets::SwitchingOptions options;
            options.paper = paper;
            for (const auto& sheet : switchingOf(*plan, options).sheets) {
                INFO(plan->project.name << " " << sheet.file_stem);
                CHECK(test::touchingWords(sheet, 0) == "");
            }
        }
}

TEST_CASE("every switching plan says what its lines are, and carries the cautions") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& sheet : switchingOf(*plan).sheets) {
            INFO(sheet.file_stem);
            for (const char* words :
                 {"Do not scale", "prove dead", "licensed electrician", "local code prevails"})
                CHECK(test::hasWords(sheet, words));
            if (!sheet.title.ends_with("(continued)"))
                CHECK(test::hasWords(sheet, "Lines show control, not cable route."));
        }
}

TEST_CASE("every way of every switch has its line in the PDF") {
    // Read back by pdftotext, which nobody here wrote.
    for (const plan::Plan* plan : test::shippedPlans()) {
        const auto file = std::filesystem::path(GANGWAY_OUT_DIR) / "switching.pdf";
        std::filesystem::create_directories(file.parent_path());
        REQUIRE(exporting::writePdf(switchingOf(*plan), file).has_value());
        const std::string text = squeezed(output("pdftotext -raw '" + file.string() + "' -"));
        const switching::Net net(*plan, test::shippedCatalogue());
        REQUIRE_FALSE(net.ways().empty());
        for (const auto& way : net.ways()) {
            const auto number = static_cast<std::size_t>(&way - net.waysOf(way.ref.plate).data()) + 1;
            const std::string line = sheets::wayLine(net, way, number);
            INFO(line);
            CHECK(text.find(squeezed(line)) != std::string::npos);
        }
    }
}

TEST_CASE("a way's line names what it feeds, how, and what else works it") {
    const plan::Plan& plan = *test::shippedPlans().front();
    const switching::Net net(plan, test::shippedCatalogue());
    const auto* way = net.way({"kitchen-01", 1, 1});
    REQUIRE(way != nullptr);
    const std::string line = sheets::wayLine(net, *way, 1);
    INFO(line);
    for (const char* part : {"1 ", "L1 kitchen downlights", "10 luminaires", "two-way with", "K-03"})
        CHECK(line.find(part) != std::string::npos);
}

TEST_CASE("storeys are drawn at 1:50 on A3, and a room larger on a sheet of its own") {
    const plan::Plan& plan = *test::shippedPlans().front();
    for (const auto& sheet : switchingOf(plan).sheets)
        CHECK(sheet.scale == 50);
    sheets::SwitchingOptions options;
    options.room = "study";
    const auto room = switchingOf(plan, options);
    REQUIRE_FALSE(room.sheets.empty());
    CHECK(room.sheets.front().number == "S-01");
    CHECK(room.sheets.front().scale < 50);
    for (const char* tag : {"D-01", "D-L01", "D-03"})
        CHECK(test::hasText(room.sheets.front(), tag));
    CHECK_FALSE(test::hasText(room.sheets.front(), "S-L01")); // the snug's lamp
    CHECK(test::touchingWords(room.sheets.front(), 0) == "");
}

TEST_CASE("a storey's crowded room gets a larger sheet, which the storey's sheet names") {
    sheets::SwitchingOptions options;
    options.paper = "A4"; // the ground floor fits at 1:100, where its kitchen is crowded
    const auto drawing = switchingOf(*test::shippedPlans().front(), options);
    CHECK(drawing.sheets.front().scale == 100);
    const auto kitchen = std::ranges::find_if(
        drawing.sheets, [](const auto& sheet) { return sheet.title == "Kitchen-diner, switching"; });
    REQUIRE(kitchen != drawing.sheets.end());
    CHECK(kitchen->scale < 100);
    bool named = false;
    for (const auto& sheet : drawing.sheets)
        if (sheet.number.starts_with("S-01")) named = named || test::hasWords(sheet, kitchen->number);
    CHECK(named);
}

TEST_CASE("the same plan gives the same switching plans") {
    const plan::Plan& plan = *test::shippedPlans().front();
    const auto first = switchingOf(plan);
    const auto second = switchingOf(plan);
    REQUIRE(first.sheets.size() == second.sheets.size());
    for (std::size_t i = 0; i < first.sheets.size(); ++i)
        CHECK(drawing::dump(first.sheets[i]) == drawing::dump(second.sheets[i]));
}

TEST_CASE("switching plans of an unknown paper, room or scale are refused in a sentence") {
    const plan::Plan& plan = *test::shippedPlans().front();
    const auto said = [&](const sheets::SwitchingOptions& options) {
        const auto drawing = sheets::switchingSheets(plan, test::shippedCatalogue(), options);
        return drawing ? std::string() : drawing.error();
    };
    sheets::SwitchingOptions paper;
    paper.paper = "A9";
    CHECK(said(paper).starts_with("there is no paper 'A9'"));
    sheets::SwitchingOptions room;
    room.room = "cellar";
    CHECK(said(room) == "there is no room 'cellar'");
    sheets::SwitchingOptions scale;
    scale.scale = 10;
    CHECK(said(scale).find("take a smaller scale or larger paper") != std::string::npos);
}
