// Storey plans of the demo house and the bungalow as paper: what is tagged, and markers that tell the truth.
#include "drawing/dimensions.hpp"
#include "geometry/frames.hpp"
#include "paper_rules.hpp"
#include "sheets/storey_plan_sheets.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <set>

using namespace gangway;
using plan::Vec2;

namespace {

drawing::Drawing plansOf(const plan::Plan& plan, const sheets::Options& options = {}) {
    auto drawing = sheets::storeyPlanSheets(plan, test::shippedCatalogue(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

/// A marker as it is seen: its circle, which way its pointer shows, and the letter in it, in the house.
struct Seen {
    Vec2 at_mm;
    Vec2 way;
    std::string letter;
    std::string sheet;
};

std::vector<Seen> markersOn(const drawing::Sheet& sheet) {
    struct Parts {
        std::optional<drawing::Pt> centre; ///< of the circle, or of the capsule around a longer name
        const drawing::Fill* pointer = nullptr;
        std::vector<const drawing::Text*> texts;
        std::size_t view = 0;
    };
    std::map<std::string, Parts> found;
    for (const auto& item : sheet.items) {
        if (!item.id.starts_with("sheet:") || item.view == 0) continue;
        Parts& parts = found[item.id];
        parts.view = item.view;
        if (const auto* arc = std::get_if<drawing::Arc>(&item.primitive)) parts.centre = arc->centre;
        if (const auto* capsule = std::get_if<drawing::Polyline>(&item.primitive))
            parts.centre = test::centreOf(*capsule);
        if (const auto* fill = std::get_if<drawing::Fill>(&item.primitive))
            if (fill->outline.size() == 3) parts.pointer = fill;
        if (const auto* text = std::get_if<drawing::Text>(&item.primitive)) parts.texts.push_back(text);
    }
    std::vector<Seen> markers;
    for (const auto& [id, parts] : found) {
        INFO(sheet.number << " " << id);
        REQUIRE((parts.centre && parts.pointer != nullptr && parts.texts.size() == 2));
        const drawing::View& view = sheet.views.at(parts.view - 1);
        const drawing::Pt centre = *parts.centre;
        // The pointer's tip is its corner that is farthest from the circle.
        const drawing::Pt tip = *std::ranges::max_element(parts.pointer->outline, {}, [&](drawing::Pt p) {
            return std::hypot(p.x - centre.x, p.y - centre.y);
        });
        Seen seen;
        seen.at_mm = {(centre.x - view.origin.x) * view.scale, (centre.y - view.origin.y) * view.scale};
        seen.way = {tip.x - centre.x, tip.y - centre.y};
        for (const drawing::Text* text : parts.texts)
            (std::hypot(text->at.x - centre.x, text->at.y - centre.y) < 3 ? seen.letter : seen.sheet) =
                text->text;
        CHECK(id == "sheet:" + seen.sheet);
        markers.push_back(seen);
    }
    return markers;
}

/// The wall of a room that one walks into from a point.
std::size_t wallAhead(const plan::Room& room, Vec2 from_mm, Vec2 way) {
    double nearest = 1e300;
    std::size_t ahead = room.walls.size();
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        const auto edge = geometry::wallEdge(room, wall);
        const Vec2 along = edge.to_mm - edge.from_mm;
        const double turn = way.x * along.y - way.y * along.x;
        if (std::abs(turn) < 1e-9) continue;
        const Vec2 to = edge.from_mm - from_mm;
        const double distance = (to.x * along.y - to.y * along.x) / turn;
        const double part = (to.x * way.y - to.y * way.x) / turn;
        if (distance <= 0 || part < 0 || part > 1 || distance >= nearest) continue;
        nearest = distance;
        ahead = wall;
    }
    return ahead;
}

} // namespace

TEST_CASE("no text of a storey plan touches another, leaves the frame or is too small, on any paper") {
    for (const plan::Plan* plan : test::allPlans())
        for (const char* paper : {"A4", "A3", "A2", "A1"}) {
            sheets::Options options;
            options.paper = paper;
            for (const auto& sheet : plansOf(*plan, options).sheets) {
                INFO(plan->project.name << " " << paper << " " << sheet.file_stem);
                CHECK(test::brokenRules(sheet) == "");
            }
        }
}

TEST_CASE(
    "every wall with an elevation has a marker before it that points at it and names a sheet there is") {
    for (const plan::Plan* plan : test::allPlans()) {
        std::map<std::string, std::string> elevations; // title by number
        for (const auto& sheet : test::sheetsOf(*plan).sheets)
            elevations.emplace(sheet.number, sheet.title);
        std::set<std::string> marked;
        for (const auto& sheet : plansOf(*plan).sheets)
            for (const Seen& marker : markersOn(sheet)) {
                INFO(plan->project.name << " " << sheet.number << " " << marker.sheet);
                marked.insert(marker.sheet);
                REQUIRE(elevations.contains(marker.sheet));
                const plan::Room* room = nullptr;
                for (const plan::Room& candidate : plan->rooms)
                    if (elevations.at(marker.sheet).starts_with(candidate.name + ", wall " + marker.letter))
                        room = &candidate;
                REQUIRE(room != nullptr);
                CHECK(geometry::insideRoom(*room, marker.at_mm));
                const std::size_t ahead = wallAhead(*room, marker.at_mm, marker.way);
                REQUIRE(ahead < room->walls.size());
                CHECK(room->walls[ahead].id == marker.letter);
            }
        for (const auto& [number, title] : elevations) {
            if (number.size() > 4) continue; // a wall's further sheets
            INFO(plan->project.name << " " << number << " " << title);
            CHECK(marked.contains(number));
        }
    }
}

TEST_CASE("every plate stands on its storey's plan with its tag and its height above FFL") {
    for (const plan::Plan* plan : test::allPlans()) {
        const auto drawing = plansOf(*plan);
        for (const auto& plate : plan->plates) {
            std::vector<std::string> words;
            for (const auto& sheet : drawing.sheets)
                for (const auto& item : sheet.items)
                    if (const auto* text = std::get_if<drawing::Text>(&item.primitive))
                        if (item.layer == "text" && item.id == plate.id) words.push_back(text->text);
            const auto at = geometry::hostPoint(*plan, plate.room, plate.host);
            REQUIRE(at.has_value());
            INFO(plan->project.name << " " << plate.id);
            // Once, or again on the larger plan of a crowded room.
            REQUIRE((words.size() == 2 || words.size() == 4));
            for (std::size_t i = 0; i < words.size(); i += 2) {
                CHECK(words[i] == (plate.tag.empty() ? plate.id : plate.tag));
                CHECK(words[i + 1] == drawing::number(at->z));
            }
        }
    }
}

TEST_CASE("a storey plan says how it is seen, what heights count from, and carries the cautions") {
    for (const plan::Plan* plan : test::allPlans())
        for (const auto& sheet : plansOf(*plan).sheets) {
            INFO(sheet.file_stem);
            for (const char* words :
                 {"Do not scale", "prove dead", "licensed electrician", "local code prevails"})
                CHECK(test::hasWords(sheet, words));
            if (sheet.title.ends_with("(continued)")) continue;
            CHECK(test::hasWords(sheet, "nothing mirrored"));
            CHECK(test::hasWords(sheet, "above finished floor level (FFL), in mm"));
            CHECK(test::hasText(sheet, "N"));
        }
}

TEST_CASE("a room too crowded for its tags is drawn larger on a sheet that the storey's names") {
    sheets::Options options;
    options.paper = "A4";
    const auto drawing = plansOf(*test::shippedPlans().front(), options);
    const auto kitchen = std::ranges::find_if(
        drawing.sheets, [](const auto& sheet) { return sheet.title == "Kitchen-diner, plan"; });
    REQUIRE(kitchen != drawing.sheets.end());
    CHECK(kitchen->scale < drawing.sheets.front().scale);
    bool named = false;
    for (const auto& sheet : drawing.sheets)
        if (sheet.number.starts_with("P-01")) named = named || test::hasWords(sheet, kitchen->number);
    CHECK(named);
}

TEST_CASE("a room's storey plan has the number that it has in the whole set") {
    const plan::Plan& plan = *test::shippedPlans().front();
    sheets::Options options;
    options.room = "study";
    const auto some = plansOf(plan, options);
    REQUIRE_FALSE(some.sheets.empty());
    CHECK(some.sheets.front().title == "Upper floor, plan");
    const auto whole = plansOf(plan);
    for (const auto& sheet : some.sheets) {
        const auto same = std::ranges::find(whole.sheets, sheet.number, &drawing::Sheet::number);
        REQUIRE(same != whole.sheets.end());
        CHECK(drawing::dump(sheet) == drawing::dump(*same));
        CHECK_FALSE(sheet.title.starts_with("Ground floor"));
    }
}

TEST_CASE("storey plans of an unknown paper, room or scale are refused in a sentence") {
    const auto said = [](const sheets::Options& options) {
        return sheets::storeyPlanSheets(*test::shippedPlans().front(), test::shippedCatalogue(), options)
            .error();
    };
    sheets::Options options;
    options.paper = "A9";
    CHECK(said(options) == "there is no paper 'A9'; give one of A4, A3, A2, A1");
    options = {};
    options.room = "cellar";
    CHECK(said(options) == "there is no room 'cellar'");
    options = {};
    options.scale = 33;
    CHECK(said(options) == "1:33 is not a scale of storey plans; give 10, 20, 25, 50, 100 or 200");
    options.scale = 10;
    CHECK(said(options).ends_with("take a smaller scale or larger paper"));
}
