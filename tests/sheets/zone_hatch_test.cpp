// Wet zones and cable zones drawn: where the frames lie on paper, that walls bound them without a frame, and
// that numbers keep clear of everything else.
#include "drawing/bounds.hpp"
#include "sheet_reading.hpp"
#include "sheets/storey_plan.hpp"
#include "sheets/switching_sheets.hpp"
#include "sheets/zone_hatch.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gangway;
using drawing::Pt;

namespace {

const catalogue::CountryPack& pack(const std::string& id = "international") {
    static const catalogue::CountryPacks packs = [] {
        auto loaded = catalogue::loadPacks(std::string(GANGWAY_ASSETS_DIR) + "/packs");
        if (!loaded) throw std::runtime_error(loaded.error());
        return *loaded;
    }();
    return *packs.pack(id);
}

const plan::Plan& terrace() {
    return *test::shippedPlans().front();
}

sheets::Options ensuite(const std::string& wall, bool cable = false) {
    sheets::Options options = test::oneWall("ensuite", wall);
    options.pack = &pack(cable ? "gb" : "international");
    options.cable_zones = cable;
    return options;
}

/// Open lines of zone frames.
std::vector<drawing::Polyline> framesOf(const std::vector<drawing::Item>& items, drawing::LineType type) {
    std::vector<drawing::Polyline> frames;
    for (const auto& item : items)
        if (const auto* line = std::get_if<drawing::Polyline>(&item.primitive))
            if (item.layer == "notes" && line->pen.type == type) frames.push_back(*line);
    return frames;
}

constexpr auto kWet = drawing::LineType::LongDashDoubleDot;

} // namespace

TEST_CASE("drawZone: strokes only along free edges, none reaches further in than it should") {
    std::vector<drawing::Item> items;
    sheets::Ink ink(items, "notes");
    // 100 x 60, free at its right and top.
    const std::vector<Pt> outline{{0, 0}, {100, 0}, {100, 60}, {0, 60}};
    sheets::drawZone(ink, outline, {{0.18, kWet, drawing::kBlack}, 3, 2.5},
                     [](Pt at) { return at.x > 99 || at.y > 59; });
    const auto frames = framesOf(items, kWet);
    REQUIRE(frames.size() == 1);
    CHECK(frames.front().points == std::vector<Pt>{{100, 0}, {100, 60}, {0, 60}});
    int strokes = 0;
    for (const auto& item : items)
        if (const auto* line = std::get_if<drawing::Line>(&item.primitive)) {
            ++strokes;
            CHECK(std::max(line->from.x, line->to.x) <= 100 + 1e-9);
            CHECK(std::max(line->from.y, line->to.y) <= 60 + 1e-9);
            const bool right = std::min(line->from.x, line->to.x) >= 97.5 - 1e-9;
            const bool top = std::min(line->from.y, line->to.y) >= 57.5 - 1e-9;
            CHECK((right || top));
        }
    // One each 3 square to them: 160 along the free edges over 3 times the root of 2.
    CHECK(strokes == Approx(160 / (3 * std::sqrt(2.0))).margin(2));
}

TEST_CASE("drawZone: an area without walls has a closed frame") {
    std::vector<drawing::Item> items;
    sheets::Ink ink(items, "notes");
    sheets::drawZone(ink, {{0, 0}, {4, 0}, {4, 4}, {0, 4}}, {{0.18, kWet, drawing::kBlack}, 1, 3},
                     [](Pt) { return true; });
    REQUIRE(framesOf(items, kWet).size() == 1);
    CHECK(framesOf(items, kWet).front().closed);
}

TEST_CASE("the en-suite's wall A: zone 1 to 900 and zone 2 to 1500, both to 2250") {
    const auto drawing = test::sheetsOf(terrace(), ensuite("A"));
    const auto& sheet = drawing.sheets.front();
    const auto frames = framesOf(sheet.items, kWet);
    REQUIRE(frames.size() == 2);
    const auto across = [&](const drawing::Polyline& frame) { return test::widthOf(frame) * sheet.scale; };
    CHECK(across(frames[0]) == Approx(900).margin(0.5));
    CHECK(across(frames[1]) == Approx(600).margin(0.5));
    for (const auto& frame : frames)
        CHECK(test::heightOf(frame) * sheet.scale == Approx(2250).margin(0.5));
    CHECK(test::hasText(sheet, "zone 1"));
    CHECK(test::hasText(sheet, "zone 2"));
    CHECK(test::hasWords(sheet, "zones of baths and showers"));
    // Tray 900 wide from the wall's left corner; 701.30 (4.3, 4.5): 600 beyond it, both to 2250.
    CHECK(test::hasWords(sheet, "zone 1 from 0 to 900, up to 2250; zone 2 from 900 to 1500, up to 2250"));
}

TEST_CASE("walls without a zone, and sheets without a pack, have none; nor those that ask for none") {
    CHECK(framesOf(test::sheetsOf(terrace(), ensuite("B")).sheets.front().items, kWet).empty());
    auto options = ensuite("A");
    options.wet_zones = false;
    CHECK(framesOf(test::sheetsOf(terrace(), options).sheets.front().items, kWet).empty());
    CHECK(framesOf(test::sheetOf(terrace(), "ensuite", "A").items, kWet).empty());
}

TEST_CASE("zones crowd no elevation: no texts touch, and no wall takes more sheets than without") {
    sheets::Options options;
    const auto without = test::sheetsOf(terrace(), options);
    for (const char* id : {"gb", "international"})
        for (const bool cable : {false, true}) {
            options.pack = &pack(id);
            options.cable_zones = cable;
            const auto with = test::sheetsOf(terrace(), options);
            for (const auto& sheet : with.sheets) {
                INFO(sheet.title);
                CHECK(test::touchingWords(sheet, 0) == "");
            }
            INFO(id << (cable ? ", cable zones too" : ""));
            CHECK(with.sheets.size() == without.sheets.size());
        }
}

TEST_CASE("cable zones are drawn on request, with their names") {
    const auto drawing = test::sheetsOf(terrace(), ensuite("A", true));
    const auto& sheet = drawing.sheets.front();
    CHECK_FALSE(framesOf(sheet.items, drawing::LineType::Dotted).empty());
    CHECK(test::hasWords(sheet, "zones for cables"));
    CHECK(framesOf(test::sheetsOf(terrace(), ensuite("A")).sheets.front().items, drawing::LineType::Dotted)
              .empty());
}

TEST_CASE("the plan of a storey shows the zones as large as they are, with numbers clear of all texts") {
    sheets::StoreyPlanOptions options;
    options.wet_zones = &pack();
    const auto plan = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "upper", options);
    std::vector<drawing::Polyline> of_shower;
    for (const auto& item : plan.sheet.items)
        if (const auto* line = std::get_if<drawing::Polyline>(&item.primitive))
            if (item.id == "ensuite-shower" && line->pen.type == kWet) of_shower.push_back(*line);
    REQUIRE(of_shower.size() == 2);
    // The tray in the room's corner is 900 x 900, zone 2 reaches 600 further.
    CHECK(test::widthOf(of_shower[0]) * 50 == Approx(900).margin(0.5));
    CHECK(test::widthOf(of_shower[1]) * 50 == Approx(1500).margin(0.5));
    CHECK(test::heightOf(of_shower[1]) * 50 == Approx(1500).margin(0.5));
    CHECK(test::touchingWords(plan.sheet, 0) == "");
    CHECK(test::hasText(plan.sheet, "zone 2"));
    options.wet_zones = nullptr;
    const auto without = sheets::storeyPlan(terrace(), test::shippedCatalogue(), "upper", options);
    CHECK_FALSE(test::hasText(without.sheet, "zone"));
}

TEST_CASE("switching plans carry the zones when asked, and no texts touch") {
    sheets::SwitchingOptions options;
    options.wet_zones = &pack();
    const auto drawing = sheets::switchingSheets(terrace(), test::shippedCatalogue(), options);
    REQUIRE(drawing);
    bool any = false;
    for (const auto& sheet : drawing->sheets) {
        INFO(sheet.title);
        CHECK(test::touchingWords(sheet, 0) == "");
        any = any || !framesOf(sheet.items, kWet).empty();
    }
    CHECK(any);
}
