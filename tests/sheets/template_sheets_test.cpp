// Drilling templates: true size, every box once, proof bars, and parts that join without an error.
#include "../support/run_command.hpp"
#include "drawing/bounds.hpp"
#include "export/export.hpp"
#include "sheet_reading.hpp"
#include "sheets/canvas.hpp"
#include "sheets/template_pieces.hpp"
#include "sheets/template_sheets.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include <fmt/format.h>

using namespace gangway;
using drawing::Pt;

namespace {

drawing::Drawing templatesOf(const plan::Plan& plan, const std::string& paper = "A4",
                             const std::string& room = {}) {
    sheets::Options options;
    options.paper = paper;
    options.room = room;
    auto drawing = sheets::templateSheets(plan, test::shippedCatalogue(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

double distance(Pt a, Pt b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

/// Centres of the crosses of a plate in a view of a sheet: where two broad lines cross in their middles.
std::vector<Pt> crossesOf(const drawing::Sheet& sheet, const std::string& id, std::size_t view) {
    std::vector<Pt> middles;
    for (const auto& item : sheet.items)
        if (const auto* line = std::get_if<drawing::Line>(&item.primitive))
            if (item.id == id && item.view == view && item.layer == "plates" && line->pen.width_mm == 0.5)
                middles.push_back({(line->from.x + line->to.x) / 2, (line->from.y + line->to.y) / 2});
    std::vector<Pt> centres;
    for (std::size_t i = 0; i < middles.size(); ++i)
        for (std::size_t k = i + 1; k < middles.size(); ++k)
            if (distance(middles[i], middles[k]) < 1e-6) centres.push_back(middles[i]);
    return centres;
}

/// The parts of a plate's template, each a view of some sheet.
struct Part {
    const drawing::Sheet* sheet = nullptr;
    std::size_t view = 0;
    std::vector<Pt> crosses;
};
std::vector<Part> partsOf(const drawing::Drawing& drawing, const plan::Plate& plate) {
    std::vector<Part> parts;
    for (const auto& sheet : drawing.sheets)
        for (std::size_t view = 1; view <= sheet.views.size(); ++view) {
            const std::string& name = sheet.views[view - 1].name;
            if (name == plate.tag || name.starts_with(plate.tag + ", part "))
                parts.push_back({&sheet, view, crossesOf(sheet, plate.id, view)});
        }
    return parts;
}

/// Straight lines of a proof bar: the bar itself is the only one of 100 mm.
std::vector<drawing::Line> proofLines(const drawing::Sheet& sheet) {
    std::vector<drawing::Line> lines;
    for (const auto& item : sheet.items)
        if (item.id == "proof-bar")
            if (const auto* line = std::get_if<drawing::Line>(&item.primitive)) lines.push_back(*line);
    return lines;
}

/// Cutting lines of a page.
std::vector<sheets::Rect> cellsOf(const drawing::Sheet& sheet) {
    std::vector<sheets::Rect> cells;
    for (const auto& item : sheet.items)
        if (item.layer == "notes" && item.view == 0 && !item.id.empty())
            if (std::holds_alternative<drawing::Polyline>(item.primitive))
                cells.push_back(sheets::extentOf(item.primitive));
    return cells;
}

plan::Plan rowOf(int gangs, plan::Direction direction = plan::Direction::Horizontal) {
    plan::Plan plan = test::twoRooms();
    std::erase_if(plan.plates, [](const plan::Plate& plate) { return plate.id != "k4"; });
    plan::Plate& plate = plan.plates.front();
    plate.modules.assign(static_cast<std::size_t>(gangs), plan::Module{"socket-f", "", ""});
    plate.direction = direction;
    plate.host.u_mm = 2000;
    plate.host.v_mm = 1050;
    return plan;
}

} // namespace

TEST_CASE("every box is in one template, at its true distance from the others") {
    for (const plan::Plan* plan : test::allPlans()) {
        const auto drawing = templatesOf(*plan);
        for (const plan::Plate& plate : plan->plates) {
            INFO(plan->project.name << " " << plate.tag);
            const auto face = catalogue::compose(test::shippedCatalogue(), plate);
            const auto parts = partsOf(drawing, plate);
            REQUIRE_FALSE(parts.empty());
            std::size_t crosses = 0;
            std::size_t box = 0;
            for (const Part& part : parts) {
                crosses += part.crosses.size();
                // Boxes run from left to right and from top to bottom, and so do the parts.
                for (std::size_t i = 1; i < part.crosses.size() && box + i < face.boxes.size(); ++i) {
                    const auto real = face.boxes[box + i].centre_mm - face.boxes[box].centre_mm;
                    CHECK(distance(part.crosses[0], part.crosses[i]) ==
                          Approx(std::hypot(real.x, real.y)).margin(0.01));
                }
                box += part.crosses.size();
            }
            CHECK(crosses == face.boxes.size());
            CHECK(parts.front().sheet->scale == 1);
            CHECK(parts.front().sheet->views[parts.front().view - 1].scale == 1);
        }
    }
}

TEST_CASE("round boxes are circles of the hole, square ones outlines of the box, at true size") {
    const auto drawing = templatesOf(test::twoRooms());
    const auto circlesOf = [&](const std::string& id) {
        std::vector<double> radii;
        for (const auto& sheet : drawing.sheets)
            for (const auto& item : sheet.items)
                if (const auto* arc = std::get_if<drawing::Arc>(&item.primitive))
                    if (item.id == id && item.layer == "plates") radii.push_back(arc->radius_mm);
        return radii;
    };
    // The hole of a DIN 49073 box is 68 (trade facts 1.1); openings of BS 4662 boxes are about 133 x 72
    // (1.11).
    CHECK(circlesOf("k1") == std::vector<double>{34, 34, 34});
    CHECK(circlesOf("k3").empty());
    for (const auto& sheet : drawing.sheets) {
        const auto outlines = test::outlinesOf(sheet, "plates", "k3");
        if (outlines.empty()) continue;
        // A two-gang plate is 146 x 86 (trade facts 1.12).
        REQUIRE(outlines.size() == 2);
        CHECK(test::widthOf(outlines[0]) == Approx(146));
        CHECK(test::heightOf(outlines[0]) == Approx(86));
        CHECK(test::widthOf(outlines[1]) == Approx(133));
        CHECK(test::heightOf(outlines[1]) == Approx(72));
        CHECK(test::hasText(sheet, "133 × 72"));
    }
}

TEST_CASE("a template says what it is for, how high, from where and which way up") {
    const auto drawing = templatesOf(test::twoRooms(), "A4", "kitchen");
    const auto wordsOf = [&](const std::string& id) {
        std::string words;
        for (const auto& sheet : drawing.sheets)
            for (const auto& item : sheet.items)
                if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
                    if (item.id == id) words += text->text + " ";
        return words;
    };
    const std::string switch_words = wordsOf("k7");
    // The fixture's wall B: 1450 from its corner with wall A, whose finish is plaster 13 and tile 10.
    for (const char* words :
         {"K-07", "Kitchen, wall B", "u 1450", "level", "1050", "above FFL", "UP", "Ø68", "47 deep",
          "from the finished left corner (wall A), from its bare face add 23", "Bare face 13 behind",
          "Level +50 from the site level line, which is 1000 above FFL"}) {
        INFO(words << " in " << switch_words);
        CHECK(switch_words.find(words) != std::string::npos);
    }
    const std::string three = wordsOf("k1");
    // Centres 71 apart (DIN 49073, trade facts 1.3) around 801.5.
    for (const char* words : {"3 boxes", "pitch 2 × 71", "u 730.5", "u 801.5", "u 872.5"}) {
        INFO(words << " in " << three);
        CHECK(three.find(words) != std::string::npos);
    }
    const std::string stack = wordsOf("k2");
    for (const char* words : {"1185.5", "1114.5", "Upper line +185.5"}) {
        INFO(words << " in " << stack);
        CHECK(stack.find(words) != std::string::npos);
    }
    for (const auto& sheet : drawing.sheets)
        CHECK(test::hasWords(sheet, "FFL, the finished floor level of: Ground floor (75 above the slab)"));
}

TEST_CASE("a level line runs right across a template, through the centres of its boxes") {
    for (const auto& sheet : templatesOf(test::twoRooms()).sheets) {
        std::size_t seen = 0;
        for (const auto& item : sheet.items) {
            const auto* line = std::get_if<drawing::Line>(&item.primitive);
            if (line == nullptr || item.layer != "dimensions") continue;
            ++seen;
            const auto crosses = crossesOf(sheet, item.id, item.view);
            CHECK(std::ranges::any_of(crosses, [&](Pt c) {
                return std::abs((line->to.x - line->from.x) * (c.y - line->from.y) -
                                (line->to.y - line->from.y) * (c.x - line->from.x)) < 1e-6;
            }));
            const auto cells = cellsOf(sheet);
            const auto ends = [&](Pt p) {
                return std::ranges::any_of(cells, [&](const sheets::Rect& cell) {
                    return std::min({std::abs(p.x - cell.left), std::abs(p.x - cell.right),
                                     std::abs(p.y - cell.bottom), std::abs(p.y - cell.top)}) < 1e-6;
                });
            };
            CHECK((ends(line->from) && ends(line->to)));
        }
        CHECK(seen >= cellsOf(sheet).size());
    }
}

TEST_CASE("every page has two bars of 100 mm, one each way, and says what to do when they are not") {
    for (const plan::Plan* plan : test::allPlans())
        for (const auto& sheet : templatesOf(*plan).sheets) {
            INFO(sheet.number);
            int level = 0;
            int upright = 0;
            const auto lines = proofLines(sheet);
            for (const auto& bar : lines) {
                if (distance(bar.from, bar.to) < 50) continue;
                level +=
                    std::abs(bar.to.x - bar.from.x) == Approx(100.0).margin(1e-9) && bar.from.y == bar.to.y
                        ? 1
                        : 0;
                upright +=
                    std::abs(bar.to.y - bar.from.y) == Approx(100.0).margin(1e-9) && bar.from.x == bar.to.x
                        ? 1
                        : 0;
                // End ticks stand on the ends, and are the longest.
                int ends = 0;
                for (const auto& tick : lines)
                    if (distance(tick.from, tick.to) == Approx(4.0) &&
                        (distance(tick.from, bar.from) < 1e-9 || distance(tick.from, bar.to) < 1e-9))
                        ++ends;
                CHECK(ends == 2);
            }
            CHECK(level == 1);
            CHECK(upright == 1);
            CHECK(test::hasWords(sheet, "Measure this: 100 mm."));
            CHECK(test::hasWords(sheet, "print again at actual size (100 %)"));
        }
}

TEST_CASE("on every paper templates keep to the margins, off each other, and no words touch") {
    for (const char* paper : {"A4", "A3", "A2", "A1"})
        for (const plan::Plan* plan : test::allPlans())
            for (const auto& sheet : templatesOf(*plan, paper).sheets) {
                INFO(paper << " " << plan->project.name << " " << sheet.number << " " << sheet.title);
                CHECK(test::touchingWords(sheet, 0.2) == "");
                for (const auto& item : sheet.items) {
                    const auto ink = drawing::bounds(item.primitive);
                    CHECK((ink.low.x >= 10 && ink.low.y >= 10));
                    CHECK((ink.high.x <= sheet.width_mm - 10 && ink.high.y <= sheet.height_mm - 10));
                }
                for (const auto& text : test::textsOf(sheet))
                    CHECK(text.height_mm >= 2.5); // design.md section 7
                for (const char* words : {"prove dead", "Detect pipes and cables before drilling",
                                          "licensed electrician", "local code prevails"})
                    CHECK(test::hasWords(sheet, words));
                const auto cells = cellsOf(sheet);
                for (std::size_t a = 0; a < cells.size(); ++a)
                    for (std::size_t b = a + 1; b < cells.size(); ++b)
                        CHECK_FALSE(sheets::overlaps(cells[a], cells[b]));
                for (const auto& item : sheet.items)
                    if (item.view > 0)
                        CHECK(std::ranges::any_of(cells, [&](const sheets::Rect& cell) {
                            return sheets::inside(sheets::extentOf(item.primitive), cell.grown(1e-6));
                        }));
            }
}

TEST_CASE("templates share pages, so that a house does not take a hundred") {
    const plan::Plan& demo = *test::shippedPlans().front();
    CHECK(demo.plates.size() > 90);
    CHECK(templatesOf(demo).sheets.size() <= 50);
}

TEST_CASE("a plate of three fits on A4 in one piece, turned") {
    const plan::Plan plan = rowOf(3);
    const auto drawing = templatesOf(plan);
    const auto parts = partsOf(drawing, plan.plates.front());
    REQUIRE(parts.size() == 1);
    REQUIRE(parts[0].crosses.size() == 3);
    CHECK(std::abs(parts[0].crosses[0].y - parts[0].crosses[2].y) == Approx(142).margin(0.01));
}

TEST_CASE("parts of a long plate overlap by 15, and join at their marks without an error") {
    for (const auto direction : {plan::Direction::Horizontal, plan::Direction::Vertical}) {
        const plan::Plan plan = rowOf(5, direction);
        const auto drawing = templatesOf(plan);
        const auto parts = partsOf(drawing, plan.plates.front());
        REQUIRE(parts.size() == 2);
        // Register marks are the small circles.
        const auto marksOf = [](const Part& part) {
            std::vector<Pt> marks;
            for (const auto& item : part.sheet->items)
                if (const auto* arc = std::get_if<drawing::Arc>(&item.primitive))
                    if (item.view == part.view && arc->radius_mm < 5) marks.push_back(arc->centre);
            return marks;
        };
        const auto first = marksOf(parts[0]);
        const auto second = marksOf(parts[1]);
        REQUIRE(first.size() == 2);
        REQUIRE(second.size() == 2);
        // Both parts lie the same way round, so laying a mark on a mark is a shift; the other mark agrees.
        const Pt shift{first[0].x - second[0].x, first[0].y - second[0].y};
        CHECK(distance(first[1], {second[1].x + shift.x, second[1].y + shift.y}) < 0.01);
        std::vector<Pt> crosses = parts[0].crosses;
        for (Pt c : parts[1].crosses)
            crosses.push_back({c.x + shift.x, c.y + shift.y});
        REQUIRE(crosses.size() == 5);
        for (std::size_t i = 1; i < crosses.size(); ++i)
            CHECK(distance(crosses[0], crosses[i]) == Approx(71.0 * static_cast<double>(i)).margin(0.01));
        for (const Part& part : parts)
            CHECK(test::hasText(*part.sheet, "of 2, join at the mark A"));
    }
}

TEST_CASE("the words of a box stand on one part only, the one that has its cross") {
    for (const auto direction : {plan::Direction::Horizontal, plan::Direction::Vertical}) {
        const plan::Plan plan = rowOf(5, direction);
        const auto drawing = templatesOf(plan);
        for (const Part& part : partsOf(drawing, plan.plates.front())) {
            std::size_t numbers = 0;
            for (const auto& item : part.sheet->items)
                if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
                    if (item.view == part.view && text->text.starts_with("u ")) ++numbers;
            CHECK(numbers == part.crosses.size());
        }
    }
}

TEST_CASE("joins lie midway between boxes, and no part is longer than the paper") {
    // A plate of five is 365 long (trade facts, check value 43): boxes at -142, -71, 0, 71 and 142.
    const auto joins = sheets::joinsOf(-184.5, 184.5, 240, {-142, -71, 0, 71, 142});
    CHECK(joins == std::vector<double>{35.5});
    CHECK(sheets::joinsOf(-45, 45, 90, {0}).empty());
    // A single box wider than the paper: the join keeps off the words at its centre.
    const auto wide = sheets::joinsOf(-150, 150, 200, {0});
    REQUIRE(wide.size() == 1);
    CHECK(std::abs(wide[0]) >= 18.5);
    for (const auto& many :
         {sheets::joinsOf(0, 2000, 180, {}), sheets::joinsOf(0, 2000, 180, {10, 20, 30})}) {
        double from = 0;
        for (const double join : many) {
            CHECK(join + 7.5 - from <= 180);
            CHECK(join - 7.5 > from);
            from = join - 7.5;
        }
        CHECK(2000 - from <= 180);
    }
}

TEST_CASE("a plate of the designer's own that is larger than the paper both ways is cut both ways") {
    plan::Plan plan = rowOf(1);
    plan::OwnFormat own;
    own.id = "panel";
    own.name = "panel";
    own.module_width_mm = own.module_height_mm = 100;
    own.plate_width_mm = own.plate_height_mm = 400;
    own.pitch_mm = 400;
    own.box_width_mm = own.box_height_mm = 380;
    own.box_depth_mm = 60;
    plan.formats.push_back(own);
    plan.plates.front().format = "panel";
    const auto catalogue = catalogue::withOwn(test::shippedCatalogue(), plan);
    sheets::Options options;
    options.paper = "A4";
    const auto drawing = sheets::templateSheets(plan, catalogue, options);
    REQUIRE(drawing);
    const auto parts = partsOf(*drawing, plan.plates.front());
    CHECK(parts.size() >= 6); // 404 x 404 on at most 182 x 235
    std::size_t crosses = 0;
    for (const Part& part : parts)
        crosses += part.crosses.size();
    CHECK(crosses == 1);
    for (const auto& sheet : drawing->sheets) {
        CHECK(test::touchingWords(sheet, 0.2) == "");
        CHECK(test::hasText(sheet, "join at the marks"));
    }
}

TEST_CASE("a plate on the ceiling is drawn as seen from below, so that east is at the left") {
    plan::Plan plan = rowOf(2);
    plan::Plate& plate = plan.plates.front();
    plate.host = {};
    plate.host.kind = plan::Host::Kind::Ceiling;
    plate.host.u_mm = 1000;
    plate.host.v_mm = 800;
    const auto drawing = templatesOf(plan);
    REQUIRE(drawing.sheets.size() == 1);
    std::vector<drawing::Text> labels;
    for (const auto& text : test::textsOf(drawing.sheets[0]))
        if (text.text.starts_with("u 9") || text.text.starts_with("u 10")) labels.push_back(text);
    REQUIRE(labels.size() == 2);
    // 1000 - 35.5 is the more westerly one.
    CHECK(labels[0].text == "u 964.5");
    CHECK(labels[0].at.x > labels[1].at.x);
    CHECK(test::hasText(drawing.sheets[0], "NORTH"));
}

TEST_CASE("templates of a plan in feet and inches give mm and feet and inches in brackets") {
    plan::Plan plan = rowOf(2);
    plan.units = plan::DisplayUnits::FeetInches;
    const auto drawing = templatesOf(plan);
    // 1050 / 25.4 = 41.3386; 1964.5 / 25.4 = 77.3425; to the nearest 1/16 (arithmetic).
    for (const char* words : {"1050", "(3'-5 5/16\")", "u 1964.5", "(6'-5 5/16\")"}) {
        INFO(words);
        CHECK(test::hasText(drawing.sheets.at(0), words));
    }
    CHECK(test::touchingWords(drawing.sheets.at(0), 0.2) == "");
}

TEST_CASE("a room's templates have the numbers of the whole set, and come out the same twice") {
    const auto all = templatesOf(test::twoRooms());
    const auto again = templatesOf(test::twoRooms());
    const auto loft = templatesOf(test::twoRooms(), "A4", "loft");
    REQUIRE(all.sheets.size() == again.sheets.size());
    for (std::size_t i = 0; i < all.sheets.size(); ++i) {
        CHECK(all.sheets[i].number == fmt::format("T-{:02}", i + 1));
        CHECK(test::hasText(all.sheets[i], fmt::format("{} / {}", i + 1, all.sheets.size())));
        CHECK(drawing::dump(all.sheets[i]) == drawing::dump(again.sheets[i]));
    }
    REQUIRE_FALSE(loft.sheets.empty());
    for (const auto& sheet : loft.sheets)
        CHECK(std::ranges::count_if(all.sheets, [&](const auto& other) {
                  return drawing::dump(other) == drawing::dump(sheet);
              }) == 1);
    sheets::Options options;
    options.paper = "A5";
    CHECK_FALSE(sheets::templateSheets(test::twoRooms(), test::shippedCatalogue(), options));
    options.paper = "A4";
    options.room = "cellar";
    CHECK_FALSE(sheets::templateSheets(test::twoRooms(), test::shippedCatalogue(), options));
}

TEST_CASE("the PDF of templates is A4, asks for actual size, and its bars measure 100 mm in poppler's eyes") {
    const auto folder = testing::freshFolder("template-sheets");
    const auto file = folder / "templates.pdf";
    const auto drawing = templatesOf(test::twoRooms());
    REQUIRE(exporting::writePdf(drawing, file));
    const auto info = testing::run("pdfinfo -f 1 -l 99 '" + file.string() + "'");
    // 210 x 297 mm (ISO 216) in points of 1/72 inch.
    for (std::size_t page = 1; page <= drawing.sheets.size(); ++page)
        CHECK(info.out.find(fmt::format("Page {:4} size:  595.276 x 841.89 pts (A4)", page)) !=
              std::string::npos);
    const auto body = testing::run("qpdf --qdf --object-streams=disable '" + file.string() + "' -");
    CHECK(body.out.find("/PrintScaling /None") != std::string::npos);
    testing::run("pdftocairo -svg -noshrink -nocenter -paperw 700 -paperh 900 -f 1 -l 1 '" + file.string() +
                 "' '" + (folder / "page.svg").string() + "'");
    const std::string page = testing::slurp(folder / "page.svg");
    // Lines 0.35 mm = 0.992126 pt wide and 100 mm = 283.4646 pt long (drawing standards, check value 51).
    int bars = 0;
    for (std::size_t at = page.find("stroke-width:0.992126"); at != std::string::npos;
         at = page.find("stroke-width:0.992126", at + 1)) {
        double x1 = 0, y1 = 0, x2 = 0, y2 = 0;
        const std::size_t data = page.find(" d=", at);
        if (data == std::string::npos) break;
        if (std::sscanf(page.c_str() + data, R"( d="M %lf %lf L %lf %lf )", &x1, &y1, &x2, &y2) != 4)
            continue;
        bars += std::abs(std::hypot(x2 - x1, y2 - y1) - 283.4646) < 0.03 ? 1 : 0;
    }
    CHECK(bars == 2);
}
