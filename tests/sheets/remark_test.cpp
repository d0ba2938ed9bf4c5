// A script that sees printed text alone marks every box again: rows of the schedule by tag, and each of its
// numbers found again in the running row and the column of heights.
#include "catalogue/catalogue.hpp"
#include "geometry/frames.hpp"
#include "sheet_reading.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <set>

using namespace gangway;

namespace {

struct Mark {
    double u = 0;
    double v = 0;
};

/// Texts of the schedule with one baseline, left to right.
using Line = std::map<double, std::string>;

/// Lines of text under the schedule's heading, top to bottom, in the columns of tag, u and v as the heads
/// say.
std::map<std::string, std::vector<Mark>> readSchedule(const drawing::Sheet& sheet) {
    double head_y = 0;
    std::map<std::string, double> heads;
    for (const auto& text : test::textsOf(sheet)) {
        if (text.text == "set-out") head_y = text.at.y;
        for (const char* head : {"tag", "box", "u", "v", "above", "set-out"})
            if (text.text == head && !heads.contains(head)) heads[head] = text.at.x;
    }
    if (!heads.contains("set-out")) return {}; // a sheet without a schedule
    std::map<double, Line, std::greater<>> lines;
    for (const auto& text : test::textsOf(sheet)) {
        if (text.at.y >= head_y || text.turn_deg != 0 || text.height_mm != 3.5) continue;
        const double width = drawing::measure(text.text, text.height_mm).width_mm;
        const double left = text.align == drawing::Align::Right ? text.at.x - width : text.at.x;
        if (left < heads["tag"] - 0.1 || left > heads["above"]) continue;
        lines[std::round(text.at.y * 100) / 100][left] = text.text;
    }
    std::map<std::string, std::vector<Mark>> marks;
    std::string tag;
    for (const auto& [y, line] : lines) {
        std::vector<double> numbers;
        for (const auto& [x, words] : line) {
            if (std::abs(x - heads["tag"]) < 1)
                tag = words;
            else if (x >= heads["u"] - 0.1)
                numbers.push_back(std::stod(words));
        }
        if (numbers.size() >= 2) marks[tag].push_back({numbers[0], numbers[1]});
    }
    return marks;
}

std::set<std::string> printedValues(const drawing::Sheet& sheet, drawing::Dimension::Kind kind) {
    std::set<std::string> values;
    for (const auto& dimension : test::dimensionsOf(sheet, kind))
        for (const auto& text : dimension.texts)
            values.insert(text.text);
    return values;
}

std::string printed(double value_mm) {
    const double half = std::round(value_mm * 2) / 2;
    return half == std::round(half) ? std::to_string(static_cast<long>(half))
                                    : std::to_string(static_cast<long>(std::floor(half))) + ".5";
}

/// What a plan's sheets print of every box, by tag; each number is checked to be in the rows of its sheet
/// too.
std::map<std::string, std::vector<Mark>> marksOf(const drawing::Drawing& drawing) {
    std::map<std::string, std::vector<Mark>> marks;
    std::set<std::string> rows;
    std::set<std::string> heights;
    for (const auto& sheet : drawing.sheets) {
        // A continuation carries more of the schedule; the rows are on the sheet before it.
        if (!sheet.title.ends_with("(continued)")) {
            rows = printedValues(sheet, drawing::Dimension::Kind::Running);
            heights = printedValues(sheet, drawing::Dimension::Kind::Height);
        }
        for (const auto& [tag, boxes] : readSchedule(sheet)) {
            marks[tag] = boxes;
            for (const Mark& box : boxes) {
                INFO(sheet.file_stem << " " << tag << " " << box.u << " " << box.v);
                CHECK(rows.contains(printed(box.u)));
                CHECK(heights.contains(printed(box.v)));
            }
        }
    }
    return marks;
}

} // namespace

TEST_CASE("every box of every plate can be marked again from the printed numbers alone") {
    const plan::Plan& plan = test::twoRooms();
    auto marks = marksOf(test::sheetsOf(plan));
    int boxes = 0;
    for (const auto& plate : plan.plates) {
        if (plate.host.kind == plan::Host::Kind::Floor) continue;
        // Where the box is in the house, worked out without the sheets.
        const auto composed = catalogue::compose(test::shippedCatalogue(), plate);
        INFO(plate.tag);
        REQUIRE(marks[plate.tag].size() == composed.boxes.size());
        for (std::size_t i = 0; i < composed.boxes.size(); ++i) {
            plan::Host host = plate.host;
            host.u_mm += composed.boxes[i].centre_mm.x;
            host.v_mm += composed.boxes[i].centre_mm.y;
            double u = host.u_mm;
            // The headboard's left edge is 500 from the left corner of its wall.
            if (host.kind == plan::Host::Kind::Furniture) u += 500;
            CHECK(marks[plate.tag][i].u == Approx(u).margin(0.26));
            CHECK(marks[plate.tag][i].v == Approx(host.v_mm).margin(0.26));
            ++boxes;
        }
    }
    CHECK(boxes >= 15);
}

TEST_CASE("every box of the demo house and the bungalow can be marked again from the printed numbers alone") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        auto marks = marksOf(test::sheetsOfShipped(*plan));
        int boxes = 0;
        for (const auto& plate : plan->plates) {
            // Plates on walls: elsewhere u is not measured along the wall the sheet shows.
            if (plate.host.kind != plan::Host::Kind::Wall) continue;
            const auto composed = catalogue::compose(test::shippedCatalogue(), plate);
            INFO(plan->project.name << " " << plate.tag);
            REQUIRE(marks[plate.tag].size() == composed.boxes.size());
            for (std::size_t i = 0; i < composed.boxes.size(); ++i) {
                CHECK(marks[plate.tag][i].u ==
                      Approx(plate.host.u_mm + composed.boxes[i].centre_mm.x).margin(0.26));
                CHECK(marks[plate.tag][i].v ==
                      Approx(plate.host.v_mm + composed.boxes[i].centre_mm.y).margin(0.26));
                ++boxes;
            }
        }
        CHECK(boxes >= 25);
    }
}

TEST_CASE("a set-out that two boxes share is printed once in the row") {
    const auto sheet = test::sheetOf(test::twoRooms(), "kitchen", "A");
    int times = 0;
    for (const auto& dimension : test::dimensionsOf(sheet, drawing::Dimension::Kind::Running))
        for (const auto& text : dimension.texts)
            times += text.text == "3400" ? 1 : 0;
    CHECK(times == 1); // two boxes one over the other
}
