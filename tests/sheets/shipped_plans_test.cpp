// The demo house and the bungalow, sheet by sheet.
#include "shipped_plans.hpp"

#include "drawing/symbols.hpp"
#include "sheet_reading.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <string>

using namespace gangway;

TEST_CASE("no two texts touch on any sheet of the demo house and the bungalow") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& sheet : test::sheetsOfShipped(*plan).sheets) {
            INFO(plan->project.name << " " << sheet.file_stem);
            CHECK(test::touchingWords(sheet, 0.3) == "");
        }
}

TEST_CASE("every sheet of the demo house and the bungalow carries the cautions") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& sheet : test::sheetsOfShipped(*plan).sheets)
            for (const char* words :
                 {"Do not scale. Use written dimensions.", "prove dead",
                  "Detect pipes and cables before drilling", "A placing proposal, not an electrical design",
                  "licensed electrician", "local code prevails"}) {
                INFO(plan->project.name << " " << sheet.file_stem << ": " << words);
                CHECK(test::hasWords(sheet, words));
            }
}

TEST_CASE("no field of a title block of the demo house is cut off") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const auto& sheet : test::sheetsOfShipped(*plan).sheets)
            for (const auto& text : test::textsOf(sheet)) {
                INFO(sheet.file_stem << ": " << text.text);
                CHECK_FALSE(text.text.ends_with("..."));
            }
}

TEST_CASE("sheets are numbered in one series with their continuations, as pages of a document are") {
    // ISO 7200: sheet number and number of sheets.
    for (const plan::Plan* plan : test::shippedPlans()) {
        const auto& sheets = test::sheetsOfShipped(*plan).sheets;
        for (std::size_t i = 0; i < sheets.size(); ++i) {
            INFO(plan->project.name << " " << sheets[i].file_stem);
            const auto texts = test::textsOf(sheets[i]);
            const std::string number = std::to_string(i + 1) + " / " + std::to_string(sheets.size());
            CHECK(std::count_if(texts.begin(), texts.end(),
                                [&](const auto& text) { return text.text == number; }) == 1);
        }
    }
}

TEST_CASE("no sheet of the demo house is there for a single row of a schedule begun on another") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        std::size_t on_first = 0;
        for (const auto& sheet : test::sheetsOfShipped(*plan).sheets) {
            INFO(plan->project.name << " " << sheet.file_stem);
            std::set<std::string> rows;
            for (const auto& item : sheet.items)
                if (item.layer == "text" && !item.id.empty()) rows.insert(item.id);
            if (!sheet.title.ends_with("(continued)"))
                on_first = test::hasText(sheet, "Set-out schedule") ? rows.size() : 0;
            else if (on_first > 0)
                CHECK(rows.size() > 1);
        }
    }
}

TEST_CASE("a legend stands in one piece where some part of the sheet holds it whole") {
    // The utility room's wall A has two modules and a wide free place under its schedule.
    for (const auto& sheet : test::sheetsOfShipped(*test::shippedPlans().front()).sheets)
        if (sheet.title == "Utility, wall A") CHECK_FALSE(test::hasText(sheet, "Legend, continued"));
}

TEST_CASE("a wall is drawn at 1:25 and not at 1:50 where that takes no further sheet") {
    for (const auto& sheet : test::sheetsOfShipped(*test::shippedPlans().front()).sheets)
        if (sheet.title == "Book gallery, wall C") CHECK(sheet.scale == 25);
}

TEST_CASE("every module of the shipped catalogue has a plan symbol") {
    for (const auto& module : test::shippedCatalogue().modules) {
        INFO(module.id << " wants " << module.symbol);
        CHECK_FALSE(drawing::symbol(module.symbol, {0, 0}, 0, 2.5, "legend").empty());
        for (const auto& variant : module.variants)
            CHECK_FALSE(drawing::symbol(variant.symbol, {0, 0}, 0, 2.5, "legend").empty());
    }
}
