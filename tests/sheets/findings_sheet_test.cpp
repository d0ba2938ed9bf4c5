// Findings on sheets: each once with its sign, place, numbers, source and remedy; nothing touches, nothing is
// lost between sheets, and the PDF carries them.
#include "../support/run_command.hpp"
#include "checks/checks.hpp"
#include "checks/scope.hpp"
#include "drawing/bounds.hpp"
#include "export/export.hpp"
#include "sheet_reading.hpp"
#include "sheets/findings_sheet.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <fmt/format.h>

using namespace gangway;
using plan::Severity;

namespace {

const catalogue::CountryPack& pack() {
    static const catalogue::CountryPacks packs = [] {
        auto loaded = catalogue::loadPacks(std::string(GANGWAY_ASSETS_DIR) + "/packs");
        if (!loaded) throw std::runtime_error(loaded.error());
        return *loaded;
    }();
    return *packs.pack("international");
}

drawing::Drawing drawn(const plan::Plan& plan, const std::vector<plan::Finding>& findings,
                       const sheets::Options& options = {}) {
    auto drawing = sheets::findingsSheets(plan, test::shippedCatalogue(), pack(), findings, options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

const plan::Plan& terrace() {
    return *test::shippedPlans().front();
}

const std::vector<plan::Finding>& ofTerrace() {
    static const auto found =
        checks::check(geometry::HouseIndex(terrace()), test::shippedCatalogue(), pack());
    return found;
}

plan::Finding finding(const std::string& object, Severity severity, const std::string& message) {
    plan::Finding one;
    one.rule = "covered-plate";
    one.severity = severity;
    one.objects = {object};
    one.value_mm = 136.5;
    one.limit_mm = 223;
    one.message = message;
    one.source = "common practice, no source";
    one.remedy = "Another place.";
    return one;
}

std::string allWords(const drawing::Drawing& drawing) {
    std::string all;
    for (const auto& sheet : drawing.sheets)
        for (const auto& text : test::textsOf(sheet))
            all += text.text + " ";
    return all;
}

std::size_t timesIn(const std::string& all, const std::string& words) {
    std::size_t times = 0;
    for (std::size_t at = all.find(words); at != std::string::npos; at = all.find(words, at + 1))
        ++times;
    return times;
}

/// Fills, lozenges and rings on the layer of signs that belong to an object.
struct Signs {
    int triangles = 0, lozenges = 0, rings = 0;
};
Signs signsOf(const drawing::Drawing& drawing, const std::string& id) {
    Signs signs;
    for (const auto& sheet : drawing.sheets)
        for (const auto& item : sheet.items) {
            if (item.layer != "symbols" || item.id != id) continue;
            signs.triangles += std::holds_alternative<drawing::Fill>(item.primitive) ? 1 : 0;
            signs.lozenges += std::holds_alternative<drawing::Polyline>(item.primitive) ? 1 : 0;
            signs.rings += std::holds_alternative<drawing::Arc>(item.primitive) ? 1 : 0;
        }
    return signs;
}

} // namespace

TEST_CASE("every finding of the demo is on the sheets once, on any paper, and no texts touch") {
    for (const char* paper : {"A4", "A3", "A2", "A1"}) {
        sheets::Options options;
        options.paper = paper;
        const auto drawing = drawn(terrace(), ofTerrace(), options);
        std::size_t numbers = 0;
        for (const auto& sheet : drawing.sheets) {
            INFO(paper << " " << sheet.number << " " << sheet.title);
            CHECK(test::touchingWords(sheet, 0.2) == "");
            CHECK(test::hasWords(sheet, "prove dead"));
            for (const auto& item : sheet.items) {
                if (item.layer != "notes" && item.layer != "text") continue;
                // 20 at the left, 10 elsewhere (ISO 5457).
                const auto ink = drawing::bounds(item.primitive);
                CHECK((ink.low.x > 20 && ink.low.y > 10));
                CHECK((ink.high.x < sheet.width_mm - 10 && ink.high.y < sheet.height_mm - 10));
            }
            for (const auto& text : test::textsOf(sheet)) {
                CHECK(text.height_mm >= 2.5); // design.md section 7
                numbers += text.text == "fault" || text.text == "warning" || text.text == "hint" ? 1 : 0;
            }
        }
        CHECK(numbers == ofTerrace().size());
        CHECK(test::hasText(drawing.sheets.back(), fmt::format("{0} / {0}", drawing.sheets.size())));
    }
}

TEST_CASE("a finding is told with its plate's place, its numbers, why, the remedy and the source") {
    const std::string plate = test::twoRooms().plates.front().id;
    const auto one = finding(plate, Severity::Fault, "It stands behind a wardrobe.");
    const auto drawing = drawn(test::twoRooms(), {one});
    REQUIRE(drawing.sheets.size() == 1);
    for (const char* words : {"It stands behind a wardrobe.", "136.5", "223", "Another place.",
                              "common practice, no source", "from the left"})
        CHECK(test::hasWords(drawing.sheets.front(), words));
    CHECK(test::hasText(drawing.sheets.front(), "F-01"));
}

TEST_CASE("severities are told apart by the shape of their sign") {
    const auto& plates = test::twoRooms().plates;
    REQUIRE(plates.size() >= 3);
    const auto drawing = drawn(test::twoRooms(), {finding(plates[0].id, Severity::Fault, "a"),
                                                  finding(plates[1].id, Severity::Warn, "b"),
                                                  finding(plates[2].id, Severity::Hint, "c")});
    CHECK(signsOf(drawing, plates[0].id).triangles == 1);
    CHECK(signsOf(drawing, plates[1].id).lozenges == 1);
    CHECK(signsOf(drawing, plates[2].id).rings == 1);
    CHECK(signsOf(drawing, plates[2].id).triangles == 0);
}

TEST_CASE("accepted findings stand apart, with why, by whom and when") {
    plan::Plan plan = test::twoRooms();
    auto open = finding(plan.plates[0].id, Severity::Warn, "Still open.");
    auto taken = finding(plan.plates[1].id, Severity::Warn, "Taken as it is.");
    taken.accepted = "the client wants it so";
    plan.accepted.push_back({"covered-plate:" + plan.plates[1].id,
                             "",
                             "A. Designer",
                             "2026-03-04T10:00:00Z",
                             "the client wants it so",
                             {}});
    const auto drawing = drawn(plan, {open, taken});
    const std::string all = allWords(drawing);
    for (const char* words : {"Accepted as it is", "the client wants it so", "A. Designer", "2026-03-04"})
        CHECK(timesIn(all, words) == 1);
    CHECK(all.find("Still open.") < all.find("Accepted as it is"));
    CHECK(all.find("Taken as it is.") > all.find("Accepted as it is"));
    CHECK(all.find("likely to be regretted; 1 open") != std::string::npos);
}

TEST_CASE("what was checked, what was not, and the cautions are on the first sheet, also without findings") {
    for (const bool some : {false, true}) {
        const auto drawing =
            drawn(some ? terrace() : test::twoRooms(), some ? ofTerrace() : std::vector<plan::Finding>{});
        const drawing::Sheet& sheet = drawing.sheets.front();
        CHECK(test::hasWords(sheet, "What was checked"));
        CHECK(test::hasWords(sheet, "What was not checked"));
        CHECK(test::hasWords(sheet, checks::scopeOf(pack()).not_checked.front()));
        CHECK(test::hasWords(sheet, "Isolate the supply, lock it off, prove dead."));
        if (!some) CHECK(test::hasWords(sheet, "found nothing that is open"));
    }
}

TEST_CASE("a finding with more words than a sheet holds goes on to the next, and nothing is lost") {
    std::string note;
    for (int i = 0; i < 3000; ++i)
        note += fmt::format("w{} ", i);
    auto long_one = finding(test::twoRooms().plates[0].id, Severity::Hint, note);
    for (const char* paper : {"A3", "A4"}) {
        sheets::Options options;
        options.paper = paper;
        const auto drawing = drawn(test::twoRooms(), {long_one}, options);
        CHECK(drawing.sheets.size() > 1);
        const std::string all = allWords(drawing);
        for (const int i : {0, 1500, 2999})
            CHECK(timesIn(all, fmt::format("w{} ", i)) == 1);
        CHECK(test::hasWords(drawing.sheets[1], "(continued)"));
        for (const auto& sheet : drawing.sheets)
            CHECK(test::touchingWords(sheet, 0.1) == "");
    }
}

TEST_CASE("one room's findings only, and unknown papers and rooms are said") {
    sheets::Options options;
    options.room = "ensuite";
    const auto drawing = drawn(terrace(), ofTerrace(), options);
    const std::string all = allWords(drawing);
    CHECK(all.find("En-suite") != std::string::npos);
    CHECK(all.find("Kitchen") == std::string::npos);
    options.room = "nowhere";
    CHECK_FALSE(sheets::findingsSheets(terrace(), test::shippedCatalogue(), pack(), {}, options));
    options = {};
    options.paper = "B5";
    CHECK_FALSE(sheets::findingsSheets(terrace(), test::shippedCatalogue(), pack(), {}, options));
}

TEST_CASE("the PDF has a page and a bookmark for each sheet, and its words can be searched") {
    const auto drawing = drawn(terrace(), ofTerrace());
    const auto folder = testing::freshFolder("findings-sheets");
    const auto file = folder / "findings.pdf";
    REQUIRE(exporting::writePdf(drawing, file));
    const auto info = testing::run("pdfinfo " + file.string());
    CHECK(info.out.find(fmt::format("Pages:           {}", drawing.sheets.size())) != std::string::npos);
    CHECK(info.out.find("1190.55 x 841.89 pts (A3)") != std::string::npos);
    const auto text = testing::run("pdftotext -layout " + file.string() + " -");
    for (const char* words : {"E-02 in En-suite", "1565", "What was not checked"})
        CHECK(text.out.find(words) != std::string::npos);
    const auto marks = testing::run("qpdf --json --json-key=outlines " + file.string());
    for (const auto& sheet : drawing.sheets)
        CHECK(marks.out.find(sheet.title) != std::string::npos);
}
