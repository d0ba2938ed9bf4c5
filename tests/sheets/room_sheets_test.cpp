// Room sheets as an electrician reads them: every box of a room marked again from that room's sheet alone.
#include "drawing/dimensions.hpp"
#include "geometry/frames.hpp"
#include "paper_rules.hpp"
#include "sheets/room_sheets.hpp"
#include "sheets/wall_view.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <regex>
#include <set>

using namespace gangway;

namespace {

drawing::Drawing roomsOf(const plan::Plan& plan, const sheets::Options& options = {}) {
    auto drawing = sheets::roomSheets(plan, test::shippedCatalogue(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

/// A number pair of the table under its heading: "Wall A, E-07", "Ceiling and floor", "island (right)".
struct Entry {
    std::string heading;
    double u = 0;
    double v = 0;
};

/// All entries of a room's sheets by what is printed as their tag. Lines hold one entry or two.
std::map<std::string, Entry> entriesOf(const drawing::Drawing& drawing, const std::string& room_name) {
    static const std::regex kHeading(
        "(Wall \\S+, E-\\d+|Ceiling and floor|.* \\((front|back|left|right|top|bottom)\\))");
    std::map<std::string, Entry> entries;
    for (const auto& sheet : drawing.sheets) {
        if (!sheet.title.starts_with(room_name + ", room")) continue;
        for (const auto& line : test::tableLines(
                 sheet, 86, [&](const std::string& words) { return std::regex_match(words, kHeading); }))
            for (std::size_t i = 0; i + 2 < line.cells.size(); i += 3)
                entries[line.cells[i]] = {line.heading, std::stod(line.cells[i + 1]),
                                          std::stod(line.cells[i + 2])};
    }
    return entries;
}

std::set<std::string> numbersAt(const drawing::Drawing& drawing, const std::string& id,
                                drawing::Dimension::Kind kind) {
    std::set<std::string> values;
    for (const auto& sheet : drawing.sheets)
        for (const auto& dimension : test::dimensionsOf(sheet, kind))
            if ((" " + dimension.id + " ").find(" " + id + " ") != std::string::npos)
                for (const auto& text : dimension.texts)
                    values.insert(text.text);
    return values;
}

} // namespace

TEST_CASE("no text of a room sheet touches another, leaves the frame or is too small, on any paper") {
    for (const plan::Plan* plan : test::allPlans())
        for (const char* paper : {"A4", "A3", "A2"}) {
            sheets::Options options;
            options.paper = paper;
            for (const auto& sheet : roomsOf(*plan, options).sheets) {
                INFO(plan->project.name << " " << paper << " " << sheet.file_stem);
                CHECK(test::brokenRules(sheet) == "");
            }
        }
}

TEST_CASE("every box of a room is marked again from the table of its own sheet") {
    for (const plan::Plan* plan : test::allPlans()) {
        const auto drawing = roomsOf(*plan);
        const sheets::House house(*plan, test::shippedCatalogue(), {});
        std::size_t boxes = 0;
        for (const plan::Room& room : plan->rooms) {
            const auto entries = entriesOf(drawing, room.name);
            for (const auto& plate : plan->plates) {
                if (plate.room != room.id) continue;
                const auto composed = catalogue::compose(test::shippedCatalogue(), plate);
                for (std::size_t i = 0; i < composed.boxes.size(); ++i) {
                    const std::string tag =
                        plate.tag + (composed.boxes.size() > 1
                                         ? fmt::format(" {}/{}", i + 1, composed.boxes.size())
                                         : "");
                    INFO(plan->project.name << " " << tag);
                    REQUIRE(entries.contains(tag));
                    const Entry& entry = entries.at(tag);
                    plan::Host host = plate.host;
                    host.u_mm += composed.boxes[i].centre_mm.x;
                    host.v_mm += composed.boxes[i].centre_mm.y;
                    if (host.kind == plan::Host::Kind::Floor || host.kind == plan::Host::Kind::Ceiling) {
                        CHECK(entry.heading == "Ceiling and floor");
                    } else if (entry.heading.starts_with("Wall ")) {
                        // The point that the two numbers mark on that wall, square before which the box is.
                        const std::string wall = entry.heading.substr(5, entry.heading.find(',') - 5);
                        const auto frame = geometry::wallFrame(room, *plan::wallIndex(room, wall));
                        const auto at = geometry::hostPoint(*plan, room.id, host);
                        REQUIRE(at.has_value());
                        const auto uvw = geometry::toFrame(frame, *at);
                        CHECK(entry.u == Approx(uvw.x).margin(0.3));
                        CHECK(entry.v == Approx(uvw.y).margin(0.3));
                    } else {
                        CHECK(entry.u == Approx(host.u_mm).margin(0.3));
                        CHECK(entry.v == Approx(host.v_mm).margin(0.3));
                    }
                    ++boxes;
                }
            }
        }
        CHECK(boxes >= 10);
    }
}

TEST_CASE("the numbers of the table stand in the rows at the elevations too") {
    for (const plan::Plan* plan : test::allPlans()) {
        const auto drawing = roomsOf(*plan);
        for (const plan::Room& room : plan->rooms)
            for (const auto& plate : plan->plates) {
                if (plate.room != room.id || plate.host.kind != plan::Host::Kind::Wall) continue;
                const auto composed = catalogue::compose(test::shippedCatalogue(), plate);
                const auto us = numbersAt(drawing, plate.id, drawing::Dimension::Kind::Running);
                INFO(plan->project.name << " " << plate.tag);
                for (const auto& box : composed.boxes)
                    CHECK(us.contains(drawing::number(plate.host.u_mm + box.centre_mm.x)));
            }
    }
}

TEST_CASE("a room sheet has the plan and every wall with an elevation, keyed by letter and sheet") {
    for (const plan::Plan* plan : test::allPlans()) {
        std::set<std::string> elevations;
        for (const auto& sheet : test::sheetsOf(*plan).sheets)
            if (sheet.number.size() == 4) elevations.insert(sheet.number);
        std::set<std::string> keyed;
        for (const auto& sheet : roomsOf(*plan).sheets)
            for (const auto& view : sheet.views)
                if (const auto at = view.name.find("E-"); at != std::string::npos)
                    keyed.insert(view.name.substr(at));
        INFO(plan->project.name);
        CHECK(keyed == elevations);
    }
}

TEST_CASE("pictures of a room sheet stand apart from each other, all at one scale") {
    for (const plan::Plan* plan : test::allPlans())
        for (const auto& sheet : roomsOf(*plan).sheets) {
            std::vector<drawing::Bounds> pictures(sheet.views.size(), {{1e9, 1e9}, {-1e9, -1e9}});
            for (const auto& item : sheet.items) {
                const auto ink = drawing::bounds(item.primitive);
                if (item.view == 0 || ink.low.x > ink.high.x) continue;
                auto& box = pictures[item.view - 1];
                box = {{std::min(box.low.x, ink.low.x), std::min(box.low.y, ink.low.y)},
                       {std::max(box.high.x, ink.high.x), std::max(box.high.y, ink.high.y)}};
            }
            INFO(plan->project.name << " " << sheet.number);
            for (std::size_t i = 0; i < pictures.size(); ++i) {
                CHECK(sheet.views[i].scale == sheet.scale);
                for (std::size_t j = i + 1; j < pictures.size(); ++j)
                    CHECK_FALSE(pictures[i].overlaps(pictures[j]));
            }
        }
}

TEST_CASE("a room sheet counts from the datum that is asked for, or says what the plan does not state") {
    sheets::Options options;
    options.datum = {sheets::Face::Structural, sheets::Level::Slab};
    const plan::Plan& plan = *test::shippedPlans().front();
    options.room = "study";
    const auto drawing = roomsOf(plan, options);
    REQUIRE_FALSE(drawing.sheets.empty());
    CHECK(
        test::hasWords(drawing.sheets.front(), "u from the BARE face at the left corner, v above the slab"));
    // No build-ups are stated in the bungalow's source.
    options.room.clear();
    const auto bungalow = sheets::roomSheets(*test::shippedPlans().back(), test::shippedCatalogue(), options);
    CHECK_FALSE(bungalow.has_value());
}

TEST_CASE("a room has the number that it has in the whole set, and the cautions") {
    const plan::Plan& plan = *test::shippedPlans().front();
    sheets::Options options;
    options.room = "study";
    const auto some = roomsOf(plan, options);
    const auto whole = roomsOf(plan);
    REQUIRE_FALSE(some.sheets.empty());
    for (const auto& sheet : some.sheets) {
        const auto same = std::ranges::find(whole.sheets, sheet.number, &drawing::Sheet::number);
        REQUIRE(same != whole.sheets.end());
        CHECK(drawing::dump(sheet) == drawing::dump(*same));
    }
    for (const auto& sheet : whole.sheets) {
        INFO(sheet.file_stem);
        for (const char* words : {"Do not scale", "prove dead", "licensed electrician"})
            CHECK(test::hasWords(sheet, words));
    }
}

TEST_CASE("room sheets of an unknown paper, room or scale are refused in a sentence") {
    const auto said = [](const sheets::Options& options) {
        return sheets::roomSheets(*test::shippedPlans().front(), test::shippedCatalogue(), options).error();
    };
    sheets::Options options;
    options.paper = "A9";
    CHECK(said(options) == "there is no paper 'A9'; give one of A4, A3, A2, A1");
    options = {};
    options.room = "cellar";
    CHECK(said(options) == "there is no room 'cellar'");
    options = {};
    options.scale = 10;
    CHECK(said(options).ends_with("take a smaller scale or larger paper"));
}
