// Schedules as tables and on sheets: they agree with the plan, can be read, and lose nothing between sheets.
#include "drawing/bounds.hpp"
#include "sheet_reading.hpp"
#include "sheets/schedule_sheets.hpp"
#include "sheets/schedules.hpp"
#include "shipped_plans.hpp"
#include "switching/net.hpp"

#include <catch2/catch.hpp>

#include <fmt/format.h>

#include <map>
#include <set>

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

drawing::Drawing schedulesOf(const plan::Plan& plan, const sheets::Options& options = {}) {
    auto drawing = sheets::scheduleSheets(plan, test::shippedCatalogue(), pack(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

std::map<std::string, sheets::Table> tablesOf(const plan::Plan& plan, const std::string& room = {}) {
    std::map<std::string, sheets::Table> tables;
    for (auto& table : sheets::schedules(plan, test::shippedCatalogue(), pack(), room))
        tables.emplace(table.key, std::move(table));
    return tables;
}

std::size_t columnOf(const sheets::Table& table, const std::string& key) {
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        if (table.columns[i].key == key) return i;
    throw std::runtime_error("no column " + key);
}

double sumOf(const sheets::Table& table, const std::string& key) {
    double sum = 0;
    for (const auto& row : table.rows)
        if (const auto* value = std::get_if<double>(&row[columnOf(table, key)])) sum += *value;
    return sum;
}

const plan::Plan& terrace() {
    return *test::shippedPlans().front();
}

/// A plan of one room with this many plates on one wall.
plan::Plan rowOfPlates(int count, const std::string& note) {
    plan::Plan plan = test::twoRooms();
    const plan::Plate first = plan.plates.front();
    plan.plates.clear();
    plan.luminaires.clear();
    plan.legs.clear();
    for (int i = 0; i < count; ++i) {
        plan::Plate plate = first;
        plate.id = fmt::format("p{}", i);
        plate.tag = fmt::format("T-{:03}", i);
        plate.note = note;
        plan.plates.push_back(plate);
    }
    return plan;
}

} // namespace

TEST_CASE("every plate and luminaire is one row, with the numbers that the plan holds") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        const auto tables = tablesOf(*plan);
        const sheets::Table& table = tables.at("plates");
        REQUIRE(table.rows.size() == plan->plates.size());
        std::map<std::string, const sheets::Row*> rows;
        for (const auto& row : table.rows)
            rows[std::get<std::string>(row[columnOf(table, "tag")])] = &row;
        for (const plan::Plate& plate : plan->plates) {
            INFO(plate.id);
            const auto at = rows.find(plate.tag.empty() ? plate.id : plate.tag);
            REQUIRE(at != rows.end());
            // Only what stands upright has a height; a ceiling's second number must not pass for one.
            const bool upright = plate.host.kind == plan::Host::Kind::Wall ||
                                 (plate.host.kind == plan::Host::Kind::Furniture &&
                                  plate.host.face != "top" && plate.host.face != "bottom");
            const auto cell = [&](const char* key) { return (*at->second)[columnOf(table, key)]; };
            CHECK(cell(upright ? "setOut" : "east") == sheets::Cell(plate.host.u_mm));
            CHECK(cell(upright ? "height" : "north") == sheets::Cell(plate.host.v_mm));
            CHECK(cell(upright ? "north" : "height") == sheets::Cell());
        }
        CHECK(tables.at("luminaires").rows.size() == plan->luminaires.size());
        CHECK(sumOf(tables.at("lamps"), "count") == double(plan->luminaires.size()));
        CHECK(sumOf(tables.at("frames"), "count") == double(plan->plates.size()));
        CHECK(sumOf(tables.at("boxes"), "count") == sumOf(table, "boxes"));
    }
}

TEST_CASE("what rooms order adds up to what the house orders") {
    const auto house = tablesOf(terrace());
    for (const std::string key : {"modules", "frames", "boxes", "lamps"}) {
        double rooms = 0;
        for (const plan::Room& room : terrace().rooms)
            rooms += sumOf(tablesOf(terrace(), room.id).at(key), "count");
        INFO(key);
        CHECK(rooms == sumOf(house.at(key), "count"));
    }
}

TEST_CASE("numbers show no more decimals than they need, halves away from zero") {
    CHECK(sheets::decimalsOf(5780, 1) == 0);
    CHECK(sheets::decimalsOf(3643.5, 1) == 1);
    CHECK(sheets::decimalsOf(0.25, 1) == 1);
    CHECK(sheets::decimalsOf(2.9999, 2) == 0);
    CHECK(sheets::decimalsOf(-0.001, 2) == 0);
    CHECK(sheets::cellText(sheets::Cell(0.25), 1) == "0.3");
    CHECK(sheets::cellText(sheets::Cell(-0.001), 2) == "0.00");
    CHECK(sheets::cellText(sheets::Cell(), 1).empty());
}

TEST_CASE("no two texts of a schedule sheet touch, none is small or cut, and all stay in the frame") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const char* paper : {"A4", "A3", "A2", "A1"}) {
            sheets::Options options;
            options.paper = paper;
            for (const auto& sheet : schedulesOf(*plan, options).sheets) {
                INFO(plan->project.name << " " << paper << " " << sheet.file_stem);
                CHECK(test::touchingWords(sheet, 0.2) == "");
                for (const auto& text : test::textsOf(sheet)) {
                    INFO(text.text);
                    CHECK(text.height_mm >= 2.5); // design.md section 7
                    CHECK_FALSE(text.text.ends_with("..."));
                }
                for (const auto& item : sheet.items) {
                    if (item.layer != "notes" && item.layer != "text") continue;
                    // 20 at the left, 10 elsewhere (ISO 5457).
                    const auto ink = drawing::bounds(item.primitive);
                    CHECK((ink.low.x > 20 && ink.low.y > 10));
                    CHECK((ink.high.x < sheet.width_mm - 10 && ink.high.y < sheet.height_mm - 10));
                }
            }
        }
}

TEST_CASE("every plate and luminaire is on some schedule sheet, and every sheet carries the cautions") {
    for (const plan::Plan* plan : test::shippedPlans())
        for (const char* paper : {"A4", "A3"}) {
            sheets::Options options;
            options.paper = paper;
            std::multiset<std::string> texts;
            const auto drawing = schedulesOf(*plan, options);
            for (std::size_t i = 0; i < drawing.sheets.size(); ++i) {
                const auto& sheet = drawing.sheets[i];
                CHECK(sheet.number == fmt::format("Q-{:02}", i + 1));
                CHECK(test::hasText(sheet, fmt::format("{} / {}", i + 1, drawing.sheets.size())));
                CHECK(test::hasWords(sheet, "A placing proposal, not an electrical design"));
                CHECK(test::hasWords(sheet, "prove dead"));
                for (const auto& text : test::textsOf(sheet))
                    if (text.height_mm == 3.5) texts.insert(text.text);
            }
            for (const plan::Plate& plate : plan->plates) {
                INFO(paper << " " << plate.id);
                CHECK(texts.count(plate.tag.empty() ? plate.id : plate.tag) == 1);
            }
            for (const plan::Luminaire& lamp : plan->luminaires) {
                INFO(paper << " " << lamp.id);
                CHECK(texts.count(lamp.tag.empty() ? lamp.id : lamp.tag) == 1);
            }
        }
}

TEST_CASE("a table that goes on says so, with its heads, and no heading stands without a row") {
    for (const int count : {18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33, 60}) {
        const plan::Plan plan = rowOfPlates(count, "");
        std::size_t seen = 0;
        const auto drawing = schedulesOf(plan);
        for (const auto& sheet : drawing.sheets) {
            if (!test::hasText(sheet, "Plates by room")) continue;
            INFO(count << " plates, " << sheet.number);
            std::size_t here = 0;
            for (const auto& text : test::textsOf(sheet))
                here += text.text.starts_with("T-") ? 1U : 0U;
            CHECK(here >= 2);
            CHECK(test::hasText(sheet, "set-out"));
            CHECK(test::hasText(sheet, "(continued)") == (seen > 0));
            seen += here;
            // The sums stand under the last row.
            if (seen < std::size_t(count)) CHECK_FALSE(test::hasText(sheet, "together"));
        }
        CHECK(seen == std::size_t(count));
    }
}

TEST_CASE("a note longer than a sheet goes on over several") {
    std::string note;
    for (int i = 0; i < 3000; ++i)
        note += fmt::format("word{} ", i);
    for (const char* paper : {"A4", "A3"}) {
        sheets::Options options;
        options.paper = paper;
        const auto drawing = schedulesOf(rowOfPlates(2, note), options);
        std::string all;
        for (const auto& sheet : drawing.sheets) {
            CHECK(test::touchingWords(sheet, 0.2) == "");
            for (const auto& item : sheet.items) {
                const auto* text = std::get_if<drawing::Text>(&item.primitive);
                if (text == nullptr) continue;
                all += text->text + " ";
                if (item.layer != "frame") CHECK(text->at.y > 10); // the frame has letters in its margin
            }
        }
        for (const int i : {0, 1500, 2999})
            CHECK(all.find(fmt::format("word{} ", i)) != std::string::npos);
    }
}

TEST_CASE("what all plates of a room agree in is said once, in the room's heading") {
    plan::Plan plan = rowOfPlates(5, "");
    const auto count = [](const drawing::Drawing& drawing, const std::string& words) {
        std::size_t found = 0;
        for (const auto& sheet : drawing.sheets)
            for (const auto& text : test::textsOf(sheet))
                found += text.text.find(words) != std::string::npos ? 1U : 0U;
        return found;
    };
    const std::string name = test::shippedCatalogue().format(plan.plates.front().format)->name;
    // Once in the heading, once in the list of frames.
    CHECK(count(schedulesOf(plan), "format: " + name) == 1);
    CHECK(count(schedulesOf(plan), name) == 2);
    const auto& formats = test::shippedCatalogue().formats;
    const auto other = std::ranges::find_if(formats, [&](const auto& format) { return format.name != name; });
    REQUIRE(other != formats.end());
    plan.plates.back().format = other->id;
    CHECK(count(schedulesOf(plan), "format: " + name) == 0);
    CHECK(count(schedulesOf(plan), "format: ") == 0);
}

TEST_CASE("a leg without a letter has the same mark in the schedules as on the plan") {
    plan::Plan plan = terrace();
    for (plan::SwitchLeg& leg : plan.legs)
        leg.letter.clear();
    const auto marks = switching::legMarks(plan);
    const auto tables = tablesOf(plan);
    const sheets::Table& legs = tables.at("legs");
    REQUIRE(legs.rows.size() == plan.legs.size());
    for (std::size_t i = 0; i < plan.legs.size(); ++i)
        CHECK(legs.rows[i][columnOf(legs, "mark")] == sheets::Cell(marks.at(plan.legs[i].id)));
}

TEST_CASE("a room's schedule has that room's plates alone; an unknown room or paper is refused") {
    sheets::Options options;
    options.room = terrace().rooms.front().id;
    for (const auto& sheet : schedulesOf(terrace(), options).sheets)
        for (const plan::Plate& plate : terrace().plates)
            if (plate.room != options.room && test::hasText(sheet, "Plates by room")) {
                const auto texts = test::textsOf(sheet);
                CHECK(std::ranges::none_of(texts, [&](const auto& text) {
                    return text.text == plate.tag && text.height_mm == 3.5;
                }));
            }
    options.room = "cellar";
    CHECK_FALSE(sheets::scheduleSheets(terrace(), test::shippedCatalogue(), pack(), options));
    options = {};
    options.paper = "A9";
    CHECK_FALSE(sheets::scheduleSheets(terrace(), test::shippedCatalogue(), pack(), options));
    CHECK(schedulesOf(plan::Plan{}).sheets.empty());
}

TEST_CASE("the same plan gives the same schedule sheets") {
    const auto first = schedulesOf(terrace());
    const auto second = schedulesOf(terrace());
    REQUIRE(first.sheets.size() == second.sheets.size());
    for (std::size_t i = 0; i < first.sheets.size(); ++i)
        CHECK(drawing::dump(first.sheets[i]) == drawing::dump(second.sheets[i]));
}
