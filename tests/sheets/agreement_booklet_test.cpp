// The sign-off booklet: every plate with its answer, and what is signed.
#include "review/review.hpp"
#include "sheet_reading.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {

drawing::Drawing bookletOf(const plan::Plan& plan) {
    return sheets::agreementBooklet(plan, test::shippedCatalogue());
}

int timesPrinted(const drawing::Drawing& drawing, const std::string& words) {
    int times = 0;
    for (const auto& sheet : drawing.sheets)
        for (const auto& text : test::textsOf(sheet))
            times += text.text == words ? 1 : 0;
    return times;
}

/// Two rooms with one plate agreed, one queried, one agreed and then moved.
plan::Plan answered() {
    plan::Plan plan = test::twoRooms();
    using Answer = plan::Agreement::Answer;
    const auto give = [&](const char* id, Answer answer, const char* note) {
        plan.agreements.push_back(review::answer(plan, *plan::findPlate(plan, id), answer, "R. Fern",
                                                 "2026-01-20T18:30:00Z", note));
    };
    give("k1", Answer::Agree, "");
    give("k3", Answer::Query, "lower, please");
    give("k5", Answer::Agree, "");
    for (plan::Plate& plate : plan.plates)
        if (plate.id == "k5") plate.host.u_mm -= 10;
    return plan;
}

} // namespace

TEST_CASE("the booklet lists every plate of the house once, on upright A4 pages numbered n of N") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        const auto booklet = bookletOf(*plan);
        for (const plan::Plate& plate : plan->plates) {
            INFO(plan->project.name << " " << plate.tag);
            CHECK(timesPrinted(booklet, plate.tag) == 1);
        }
        for (std::size_t i = 0; i < booklet.sheets.size(); ++i) {
            CHECK(booklet.sheets[i].width_mm == 210);
            CHECK(booklet.sheets[i].height_mm == 297);
            CHECK(test::hasText(booklet.sheets[i],
                                std::to_string(i + 1) + " / " + std::to_string(booklet.sheets.size())));
        }
    }
}

TEST_CASE("the booklet says what was answered, by whom and when, and what was moved since") {
    const plan::Plan plan = answered();
    const auto booklet = bookletOf(plan);
    // Each word once in the head of the counts on the first page, once a row.
    CHECK(timesPrinted(booklet, "agreed") == 2);
    CHECK(timesPrinted(booklet, "queried") == 2);
    CHECK(timesPrinted(booklet, "reopened") == 2);
    CHECK(timesPrinted(booklet, "R. Fern, 2026-01-20") == 3);
    CHECK(timesPrinted(booklet, "lower, please") == 1);
    for (const plan::Plate& plate : plan.plates)
        CHECK(timesPrinted(booklet, review::fingerprint(plan, plate)) == 1);
    const auto number = [](std::size_t n) { return std::to_string(n); };
    CHECK(test::hasWords(booklet.sheets.front(), "1 1 1 " + number(plan.plates.size())));
}

TEST_CASE("the first page says what signing means and has room to sign, with the cautions") {
    const auto booklet = bookletOf(test::twoRooms());
    for (const char* words :
         {"Agreement of plates", "Two rooms for the sheet tests", "What signing means", "reopened by itself",
          "priced and signed before work", "Accepted warnings", "None recorded.", "Homeowner", "Designer",
          "signature", "For talking about", "prove dead", "not an electrical design"}) {
        INFO(words);
        CHECK(test::hasWords(booklet.sheets.front(), words));
    }
}

TEST_CASE("where a plate is stands in words and numbers, for walls, floors and furniture") {
    const auto booklet = bookletOf(test::twoRooms());
    std::string all;
    for (const auto& sheet : booklet.sheets)
        for (const auto& text : test::textsOf(sheet))
            all += text.text + " ";
    CHECK(all.find("wall C, 4050 from its left corner, 300 above FFL") != std::string::npos);
    CHECK(all.find("headboard (front), 2050 from its left edge, 720 above FFL") != std::string::npos);
    CHECK(all.find("floor, ") != std::string::npos);
}

TEST_CASE(
    "no two texts of the booklet touch, none is under 2.5 high, and the same plan gives the same pages") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        const auto booklet = bookletOf(*plan);
        const auto again = bookletOf(*plan);
        REQUIRE(booklet.sheets.size() == again.sheets.size());
        for (std::size_t i = 0; i < booklet.sheets.size(); ++i) {
            INFO(plan->project.name << " page " << i + 1);
            CHECK(test::touchingWords(booklet.sheets[i], 0.3) == "");
            CHECK(drawing::dump(booklet.sheets[i]) == drawing::dump(again.sheets[i]));
            for (const auto& text : test::textsOf(booklet.sheets[i]))
                CHECK(text.height_mm >= 2.5);
        }
    }
}

TEST_CASE("what is signed is one page with the cautions, for a house of a dozen rooms") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        const auto booklet = bookletOf(*plan);
        CHECK(test::hasWords(booklet.sheets.front(), "local code prevails"));
        CHECK_FALSE(booklet.sheets.at(1).title.ends_with("continued"));
    }
}
