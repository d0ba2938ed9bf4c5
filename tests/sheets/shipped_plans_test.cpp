// The demo house and the bungalow, sheet by sheet.
#include "shipped_plans.hpp"

#include "drawing/symbols.hpp"
#include "sheet_reading.hpp"

#include <catch2/catch.hpp>

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

TEST_CASE("every module of the shipped catalogue has a plan symbol") {
    for (const auto& module : test::shippedCatalogue().modules) {
        INFO(module.id << " wants " << module.symbol);
        CHECK_FALSE(drawing::symbol(module.symbol, {0, 0}, 0, 2.5, "legend").empty());
        for (const auto& variant : module.variants)
            CHECK_FALSE(drawing::symbol(variant.symbol, {0, 0}, 0, 2.5, "legend").empty());
    }
}
