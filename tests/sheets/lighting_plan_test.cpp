// Lighting sheets of the shipped plans: what is printed agrees with the estimate, and it can be read.
#include "drawing/bounds.hpp"
#include "lighting/light_grid.hpp"
#include "sheet_reading.hpp"
#include "sheets/light_view.hpp"
#include "sheets/lighting_plan.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <set>

#include <fmt/format.h>

using namespace gangway;

namespace {

const catalogue::CountryPack& pack() {
    static const catalogue::CountryPacks packs = [] {
        auto loaded = catalogue::loadPacks(std::string(GANGWAY_ASSETS_DIR) + "/packs");
        if (!loaded) throw std::runtime_error(loaded.error());
        return *loaded;
    }();
    return *packs.pack("international");
}

drawing::Drawing lightOf(const plan::Plan& plan, const sheets::Options& options = {}) {
    auto drawing = sheets::lightingSheets(plan, test::shippedCatalogue(), pack(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

std::string allTexts(const drawing::Drawing& drawing) {
    std::string all;
    for (const auto& sheet : drawing.sheets)
        for (const auto& item : sheet.items)
            if (const auto* text = std::get_if<drawing::Text>(&item.primitive)) all += text->text + "\n";
    return all;
}

bool prints(const drawing::Drawing& drawing, const std::string& words) {
    return allTexts(drawing).find(words) != std::string::npos;
}

const plan::Plan& terrace() {
    return *test::shippedPlans().front();
}

} // namespace

TEST_CASE("no two texts of a lighting sheet touch, on any paper, and every note stays in the frame") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const char* paper : {"A4", "A3", "A2"}) {
            sheets::Options options;
            options.paper = paper;
            for (const auto& sheet : lightOf(*plan, options).sheets) {
                INFO(paper << " " << sheet.number);
                CHECK(drawing::touchingTexts(sheet).empty());
                for (const auto& item : sheet.items) {
                    const auto ink = drawing::bounds(item.primitive);
                    CHECK((ink.low.x >= 0 && ink.low.y >= 0));
                    CHECK((ink.high.x <= sheet.width_mm && ink.high.y <= sheet.height_mm));
                    // Notes keep within the frame: 20 at the left, 10 elsewhere (ISO 5457).
                    const bool note = item.layer == "notes";
                    CHECK((!note || (ink.low.x > 20 && ink.high.x < sheet.width_mm - 10 && ink.low.y > 10)));
                }
            }
        }
}

TEST_CASE("a storey with luminaires has a sheet, numbered LX-01 on, that says what it is not") {
    std::set<std::string> numbers;
    const auto drawing = lightOf(terrace());
    for (const auto& sheet : drawing.sheets) {
        numbers.insert(sheet.number);
        drawing::Drawing one;
        one.sheets.push_back(sheet);
        CHECK(prints(one, "direct light only"));
        CHECK(prints(one, "not an electrical design"));
    }
    CHECK(numbers.contains("LX-01"));
    CHECK(numbers.contains("LX-03"));
    const std::string all = allTexts(drawing);
    for (const char* word : {"compliant", "safe", "Safe"})
        CHECK(all.find(word) == std::string::npos);
}

TEST_CASE("every room of a lit storey has its row with the estimate's own numbers and what is usual") {
    const auto drawing = lightOf(terrace());
    const geometry::HouseIndex house(terrace());
    for (const plan::Room& room : terrace().rooms) {
        const auto light = lighting::roomLight(house, pack(), room.id);
        REQUIRE(light.has_value());
        std::set<std::string> row;
        for (const auto& sheet : drawing.sheets)
            for (const auto& item : sheet.items)
                if (item.id == room.id && item.layer == "notes")
                    if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
                        row.insert(text->text);
        INFO(room.id);
        CHECK(row.contains(fmt::format("{:.1f}", light->area_m2)));
        if (light->levels.maximum_lx > 0) CHECK(row.contains(sheets::luxText(light->levels.average_lx)));
        if (light->lumens > 0) CHECK(row.contains(sheets::luxText(light->lumen_method_lx)));
    }
}

TEST_CASE("a broken IES file is said on the sheet with its line") {
    const std::string folder = std::string(GANGWAY_OUT_DIR) + "/light-sheets";
    std::filesystem::create_directories(folder);
    std::ofstream(folder + "/cut.ies") << "IESNA91\nTILT=NONE\n1 -1 1";
    plan::Plan plan = terrace();
    plan.luminaires.front().ies = "cut.ies";
    sheets::Options options;
    options.base = folder;
    options.room = plan.luminaires.front().room;
    CHECK(prints(lightOf(plan, options), "cut.ies:3: the file ends where"));
}

TEST_CASE("options that can't be followed are said in a sentence") {
    const auto error = [](sheets::Options options) {
        return sheets::lightingSheets(terrace(), test::shippedCatalogue(), pack(), options).error();
    };
    sheets::Options options;
    options.room = "attic-bath";
    CHECK(error(options) == "there is no room 'attic-bath'");
    options = {};
    options.paper = "A9";
    CHECK(error(options) == "there is no paper 'A9'; give one of A4, A3, A2, A1");
    options = {};
    options.scale = 20;
    options.paper = "A4";
    CHECK(error(options) == "storey 'Ground floor' does not fit on A4 at 1:20");
}
