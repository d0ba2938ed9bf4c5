// Wall check sheets: every box once, to be ticked three times, with its numbers; counts a wall and a room.
#include "drawing/bounds.hpp"
#include "drawing/dimensions.hpp"
#include "sheet_reading.hpp"
#include "sheets/wall_check_sheets.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <map>

#include <fmt/format.h>

using namespace gangway;

namespace {

drawing::Drawing checksOf(const plan::Plan& plan, const std::string& paper = "A4",
                          const std::string& room = {}) {
    sheets::Options options;
    options.paper = paper;
    options.room = room;
    auto drawing = sheets::wallCheckSheets(plan, test::shippedCatalogue(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

/// A row as it is read: what stands at one height, of one object.
struct Row {
    std::string id;
    double y = 0;
    std::vector<drawing::Text> texts;
    bool has(const std::string& words) const {
        return std::ranges::any_of(texts, [&](const auto& text) { return text.text == words; });
    }
};

/// Rows of all sheets: each has three squares to tick beside each other, and what stands as high as they do.
std::vector<Row> rowsOf(const drawing::Drawing& drawing) {
    std::vector<Row> rows;
    for (const auto& sheet : drawing.sheets) {
        std::map<std::pair<std::string, long>, int> squares;
        for (const auto& item : sheet.items)
            if (const auto* square = std::get_if<drawing::Polyline>(&item.primitive))
                if (square->closed && item.layer == "notes" && !item.id.empty())
                    ++squares[{item.id, std::lround(test::centreOf(*square).y * 100)}];
        for (const auto& [key, count] : squares) {
            CHECK(count == 3);
            Row row{key.first, static_cast<double>(key.second) / 100, {}};
            for (const auto& item : sheet.items)
                if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
                    if (item.id == row.id && std::abs(text->at.y + text->height_mm / 2 - row.y) < 3.5)
                        row.texts.push_back(*text);
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

bool isPlugged(const plan::Luminaire& lamp) {
    return lamp.kind == plan::Luminaire::Kind::Floor || lamp.kind == plan::Luminaire::Kind::Table;
}

} // namespace

TEST_CASE("every box stands on one row of the wall check, with its tag, number, u and v") {
    for (const plan::Plan* plan : test::allPlans()) {
        const auto rows = rowsOf(checksOf(*plan));
        std::size_t boxes = 0;
        for (const plan::Plate& plate : plan->plates) {
            const auto face = catalogue::compose(test::shippedCatalogue(), plate);
            REQUIRE_FALSE(face.boxes.empty());
            for (std::size_t i = 0; i < face.boxes.size(); ++i) {
                ++boxes;
                const auto u = drawing::number(plate.host.u_mm + face.boxes[i].centre_mm.x);
                const auto v = drawing::number(plate.host.v_mm + face.boxes[i].centre_mm.y);
                const std::string number = fmt::format("{}/{}", i + 1, face.boxes.size());
                INFO(plan->project.name << " " << plate.tag << " " << number << " " << u << " " << v);
                CHECK(std::ranges::count_if(rows, [&](const Row& row) {
                          return row.id == plate.id && row.has(plate.tag) && row.has(u) && row.has(v) &&
                                 (face.boxes.size() == 1 || row.has(number));
                      }) == 1);
            }
        }
        const auto points = static_cast<std::size_t>(
            std::ranges::count_if(plan->luminaires, [](const auto& lamp) { return !isPlugged(lamp); }));
        CHECK(rows.size() == boxes + points);
    }
}

TEST_CASE("a luminaire on a ceiling, wall or unit is one lamp point; one with a plug is none") {
    const plan::Plan& demo = *test::shippedPlans().front();
    const auto rows = rowsOf(checksOf(demo));
    for (const plan::Luminaire& lamp : demo.luminaires) {
        INFO(lamp.id);
        CHECK(std::ranges::count_if(rows, [&](const Row& row) {
                  return row.id == lamp.id && row.has(lamp.tag);
              }) == (isPlugged(lamp) ? 0 : 1));
    }
}

TEST_CASE("each wall says how many boxes are on it, and each room how many there are together") {
    for (const plan::Plan* plan : test::allPlans())
        for (const plan::Room& room : plan->rooms) {
            std::map<std::string, int> on_wall;
            int boxes = 0;
            for (const plan::Plate& plate : plan->plates) {
                if (plate.room != room.id) continue;
                const auto face = catalogue::compose(test::shippedCatalogue(), plate);
                const int count = static_cast<int>(face.boxes.size());
                boxes += count;
                if (plate.host.kind == plan::Host::Kind::Wall) on_wall[plate.host.wall] += count;
            }
            const auto drawing = checksOf(*plan, "A4", room.id);
            const auto says = [&](const std::string& words) {
                return std::ranges::any_of(drawing.sheets,
                                           [&](const auto& sheet) { return test::hasText(sheet, words); });
            };
            for (const auto& [wall, count] : on_wall) {
                const auto words = fmt::format("Wall {}: {} {}", wall, count, count == 1 ? "box" : "boxes");
                INFO(room.name << ", " << words);
                CHECK(says(words));
            }
            if (drawing.sheets.empty()) continue;
            INFO(room.name);
            CHECK(says(fmt::format("{} together: {} box", room.name, boxes)));
        }
}

TEST_CASE("a wall has one photo slot, also where it goes on on the next sheet") {
    for (const plan::Plan* plan : test::allPlans()) {
        std::size_t slots = 0;
        std::size_t surfaces = 0;
        for (const auto& sheet : checksOf(*plan).sheets)
            for (const auto& text : test::textsOf(sheet)) {
                slots += text.text == "photo no." ? 1 : 0;
                const bool heading = text.text.find(": ") != std::string::npos &&
                                     (text.text.find(" box") != std::string::npos) &&
                                     text.text.find("together") == std::string::npos &&
                                     text.text.find("continued") == std::string::npos &&
                                     text.text.find("Box walk") == std::string::npos;
                surfaces += heading ? 1 : 0;
            }
        CHECK(slots > 0);
        CHECK(slots == surfaces);
    }
}

TEST_CASE(
    "no wall begins with fewer than three of its rows at a sheet's foot, and no sheet is without a row") {
    for (const plan::Plan* plan : test::allPlans()) {
        const auto drawing = checksOf(*plan);
        for (const auto& sheet : drawing.sheets) {
            INFO(plan->project.name << " " << sheet.number << " " << sheet.title);
            drawing::Drawing one;
            one.sheets.push_back(sheet);
            auto rows = rowsOf(one);
            REQUIRE_FALSE(rows.empty());
            std::ranges::sort(rows, std::greater{}, &Row::y);
            double lowest = 1e9; // heading
            bool counts = false;
            std::string words;
            for (const auto& text : test::textsOf(sheet)) {
                counts = counts || text.text.find(" together: ") != std::string::npos;
                if (text.text.find(": ") == std::string::npos ||
                    text.text.find(" box") == std::string::npos ||
                    text.text.find("together") != std::string::npos || text.at.y > lowest ||
                    text.text.find("Box walk") != std::string::npos)
                    continue;
                lowest = text.at.y;
                words = text.text;
            }
            if (counts || words.empty()) continue;
            INFO(words);
            const auto under = std::ranges::count_if(rows, [&](const Row& row) { return row.y < lowest; });
            // "Wall C: 2 boxes, 1 lamp point": all of them where there are fewer.
            int boxes = 0;
            int points = 0;
            std::sscanf(words.c_str() + words.find(": "), ": %d box%*[es], %d", &boxes, &points);
            std::sscanf(words.c_str() + words.find(": "), ": %d box, %d", &boxes, &points);
            CHECK(under >= std::min(3, boxes + points));
        }
    }
}

TEST_CASE("rows are made for thick fingers and bad light: 7 high at least, numbers 3.5") {
    for (const plan::Plan* plan : test::allPlans())
        for (const auto& sheet : checksOf(*plan).sheets) {
            std::vector<drawing::Pt> squares;
            for (const auto& item : sheet.items)
                if (const auto* square = std::get_if<drawing::Polyline>(&item.primitive))
                    if (square->closed && item.layer == "notes" && !item.id.empty())
                        squares.push_back(test::centreOf(*square));
            for (std::size_t a = 0; a < squares.size(); ++a)
                for (std::size_t b = a + 1; b < squares.size(); ++b)
                    if (std::abs(squares[a].x - squares[b].x) < 0.01)
                        CHECK(std::abs(squares[a].y - squares[b].y) >= 7);
            for (const auto& item : sheet.items)
                if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
                    if (item.layer == "text" && text->align == drawing::Align::Right)
                        CHECK(text->height_mm == 3.5);
        }
}

TEST_CASE("on every paper nothing touches, nothing is outside the frame, and the cautions are there") {
    for (const char* paper : {"A4", "A3", "A2", "A1"})
        for (const plan::Plan* plan : test::allPlans())
            for (const auto& sheet : checksOf(*plan, paper).sheets) {
                INFO(paper << " " << plan->project.name << " " << sheet.number << " " << sheet.title);
                CHECK(test::touchingWords(sheet, 0.2) == "");
                for (const char* words : {"prove dead", "Detect pipes and cables before drilling",
                                          "licensed electrician", "local code prevails"})
                    CHECK(test::hasWords(sheet, words));
                for (const auto& item : sheet.items) {
                    if (item.layer == "frame") continue;
                    // 20 at the left, 10 elsewhere (ISO 5457, from memory).
                    const auto ink = drawing::bounds(item.primitive);
                    CHECK((ink.low.x > 20 && ink.low.y > 10));
                    CHECK((ink.high.x < sheet.width_mm - 10 && ink.high.y < sheet.height_mm - 10));
                }
                for (const auto& text : test::textsOf(sheet))
                    CHECK(text.height_mm >= 2.5); // design.md section 7
            }
}

TEST_CASE("a room's wall check has the numbers that it has in the whole set, and comes out the same twice") {
    const auto all = checksOf(test::twoRooms());
    const auto again = checksOf(test::twoRooms());
    const auto loft = checksOf(test::twoRooms(), "A4", "loft");
    REQUIRE(all.sheets.size() == again.sheets.size());
    for (std::size_t i = 0; i < all.sheets.size(); ++i) {
        CHECK(all.sheets[i].number == fmt::format("W-{:02}", i + 1));
        CHECK(test::hasText(all.sheets[i], fmt::format("{} / {}", i + 1, all.sheets.size())));
        CHECK(drawing::dump(all.sheets[i]) == drawing::dump(again.sheets[i]));
    }
    REQUIRE_FALSE(loft.sheets.empty());
    for (const auto& sheet : loft.sheets) {
        CHECK(sheet.title.starts_with("Loft bedroom"));
        CHECK(std::ranges::count_if(all.sheets, [&](const auto& other) {
                  return drawing::dump(other) == drawing::dump(sheet);
              }) == 1);
    }
}

TEST_CASE("a plan in feet and inches has mm with feet and inches in brackets") {
    plan::Plan plan = test::twoRooms();
    plan.units = plan::DisplayUnits::FeetInches;
    const auto rows = rowsOf(checksOf(plan));
    const auto row = std::ranges::find(rows, "k7", &Row::id);
    REQUIRE(row != rows.end());
    // 1450 / 25.4 = 57.0866 and 1050 / 25.4 = 41.3386, to the nearest 1/16 (arithmetic).
    for (const char* words : {"1450", "(4'-9 1/16\")", "1050", "(3'-5 5/16\")"}) {
        INFO(words);
        CHECK(row->has(words));
    }
    for (const auto& sheet : checksOf(plan).sheets)
        CHECK(test::touchingWords(sheet, 0.2) == "");
}

TEST_CASE("a wall check of an unknown paper or room is refused, and a room with nothing has no sheet") {
    sheets::Options options;
    options.paper = "A5";
    const auto paper = sheets::wallCheckSheets(test::twoRooms(), test::shippedCatalogue(), options);
    REQUIRE_FALSE(paper);
    CHECK(paper.error() == "there is no paper 'A5'; give one of A4, A3, A2, A1");
    options.paper = "A4";
    options.room = "cellar";
    const auto room = sheets::wallCheckSheets(test::twoRooms(), test::shippedCatalogue(), options);
    REQUIRE_FALSE(room);
    CHECK(room.error() == "there is no room 'cellar'");
    plan::Plan bare = test::twoRooms();
    bare.plates.clear();
    bare.luminaires.clear();
    CHECK(checksOf(bare).sheets.empty());
}
