// Sheets as a set: which there are, what stands on each, and the rules of lettering and lines.
#include "sheet_reading.hpp"
#include "two_rooms.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace gangway;

TEST_CASE("each wall with something on it has a sheet, in room and wall order") {
    const auto drawing = test::sheetsOf(test::twoRooms());
    std::vector<std::string> stems;
    std::vector<std::string> titles;
    for (const auto& sheet : drawing.sheets) {
        if (sheet.title.ends_with("(continued)")) continue;
        stems.push_back(sheet.file_stem);
        titles.push_back(sheet.title);
    }
    CHECK(stems == std::vector<std::string>{"E-01-kitchen-A", "E-02-kitchen-B", "E-03-kitchen-C",
                                            "E-04-kitchen-D", "E-05-loft-bedroom-A", "E-06-loft-bedroom-E"});
    CHECK(titles.front() == "Kitchen, wall A");
    CHECK(drawing.date == "2026-01-15");
}

TEST_CASE("no two texts touch on any sheet") {
    for (const auto& sheet : test::sheetsOf(test::twoRooms()).sheets) {
        const auto touching = drawing::touchingTexts(sheet, 0.3);
        INFO(sheet.file_stem);
        CHECK(touching.empty());
    }
}

TEST_CASE("no text is under 2.5 high, and every number of a dimension is 3.5") {
    // ISO 3098-1 and drawing standards section 6, 23.
    for (const auto& sheet : test::sheetsOf(test::twoRooms()).sheets) {
        for (const auto& text : test::textsOf(sheet)) {
            INFO(sheet.file_stem << ": " << text.text);
            CHECK(text.height_mm >= 2.5);
        }
        for (const auto& item : sheet.items)
            if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
                for (const auto& text : dimension->texts)
                    CHECK(text.height_mm == 3.5);
    }
}

TEST_CASE("every line width is of the ISO 128-2 series") {
    // Section 6, 21.
    const std::set<double> series{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0};
    for (const auto& sheet : test::sheetsOf(test::twoRooms()).sheets)
        for (const auto& pen : test::pensOf(sheet)) {
            INFO(sheet.file_stem << " width " << pen.width_mm);
            CHECK(series.contains(pen.width_mm));
        }
}

TEST_CASE("all ink lies on the paper, and all but the grid inside the frame") {
    for (const auto& sheet : test::sheetsOf(test::twoRooms()).sheets)
        for (const auto& text : test::textsOf(sheet))
            for (const auto corner : drawing::textCorners(text)) {
                INFO(sheet.file_stem << ": " << text.text);
                CHECK(corner.x > 14);
                CHECK(corner.x < 416);
                CHECK(corner.y > 4);
                CHECK(corner.y < 293);
            }
}

TEST_CASE("each sheet says how to measure and what to beware of") {
    for (const auto& sheet : test::sheetsOf(test::twoRooms()).sheets) {
        INFO(sheet.file_stem);
        CHECK(test::hasWords(
            sheet, "Do not scale. Use written dimensions. Check on site before drilling. Dimensions in mm."));
        for (const auto& text : test::textsOf(sheet)) {
            CHECK(text.text.find("compliant") == std::string::npos);
            CHECK(text.text.find(" safe") == std::string::npos);
        }
        if (sheet.title.ends_with("(continued)")) continue;
        for (const char* words :
             {"above finished floor level (FFL)", "from the finished left corner", "to finished faces",
              "prove dead", "placing proposal, not an electrical design", "licensed electrician",
              "local code prevails", "Detect pipes and cables before drilling", "FFL +0", "1:20"}) {
            INFO(words);
            CHECK(test::hasWords(sheet, words));
        }
    }
}

TEST_CASE("the title block holds the project's fields and the sheet's number") {
    const auto sheet = test::sheetOf(test::twoRooms(), "kitchen", "B");
    std::size_t page = 1;
    const auto all = test::sheetsOf(test::twoRooms());
    while (all.sheets[page - 1].number != sheet.number)
        ++page;
    CHECK(test::hasText(sheet, std::to_string(page) + " / " + std::to_string(all.sheets.size())));
    for (const char* value :
         {"TR-01-E-02", "Two rooms for the sheet tests", "Invented client", "1 Nowhere Lane",
          "A. Draughtsman", "Invented studio", "site desk, 000 000", "B. Checker", "2026-01-15",
          "for agreement", "A3", "wall elevation, plate set-out"}) {
        INFO(value);
        CHECK(test::hasText(sheet, value));
    }
}

TEST_CASE("build-ups are told: add 13 from the bare corner, slab 75 under FFL") {
    const auto sheet = test::sheetOf(test::twoRooms(), "kitchen", "A");
    CHECK(test::hasText(sheet, "slab -75"));
    CHECK(test::hasText(sheet, "site +1000"));
    CHECK(test::hasWords(sheet, "plaster 13, tile 10 = 23"));
    CHECK(test::hasWords(sheet, "1075 above the slab"));
    CHECK(test::hasWords(sheet, "From the bare face of wall D add 13."));
}

TEST_CASE("a schedule too long for the sheet goes on on the next, lettering unchanged") {
    plan::Plan plan = test::twoRooms();
    const plan::Plate pattern = *plan::findPlate(plan, "k6");
    for (int i = 0; i < 14; ++i) {
        plan::Plate plate = pattern;
        plate.id = "extra-" + std::to_string(i);
        plate.tag = "K-" + std::to_string(50 + i);
        plate.host.u_mm = 500 + 220 * (i % 6);
        plate.host.v_mm = 400 + 500 * (i / 6);
        plan.plates.push_back(plate);
    }
    sheets::Options options = test::oneWall("kitchen", "C");
    const auto drawing = test::sheetsOf(plan, options);
    REQUIRE(drawing.sheets.size() == 2);
    CHECK(drawing.sheets[1].number == "E-03-2");
    CHECK(drawing.sheets[1].title == "Kitchen, wall C (continued)");
    CHECK(drawing.sheets[1].file_stem == "E-03-2-kitchen-C");
    int rows = 0;
    for (const auto& sheet : drawing.sheets) {
        CHECK(drawing::touchingTexts(sheet, 0.3).empty());
        for (const auto& text : test::textsOf(sheet))
            rows += text.text == "K-63" ? 1 : 0;
    }
    CHECK(rows == 2); // its tag on the view and its row
}

TEST_CASE("the same plan gives the same sheets") {
    const auto first = test::sheetsOf(test::twoRooms());
    const auto second = test::sheetsOf(test::twoRooms());
    REQUIRE(first.sheets.size() == second.sheets.size());
    for (std::size_t i = 0; i < first.sheets.size(); ++i)
        CHECK(drawing::dump(first.sheets[i]) == drawing::dump(second.sheets[i]));
}
