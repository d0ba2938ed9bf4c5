// Lighting set-out as an electrician reads it: every centre marked again from the printed table alone, and
// the rows of numbers at the drawing agreeing with it.
#include "drawing/dimensions.hpp"
#include "geometry/frames.hpp"
#include "paper_rules.hpp"
#include "sheets/ceiling_points.hpp"
#include "sheets/lighting_set_out.hpp"
#include "shipped_plans.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <regex>
#include <set>

using namespace gangway;
using plan::Vec2;

namespace {

drawing::Drawing setOutOf(const plan::Plan& plan, const sheets::Options& options = {}) {
    auto drawing = sheets::lightingSetOutSheets(plan, test::shippedCatalogue(), options);
    if (!drawing) throw std::runtime_error(drawing.error());
    return *drawing;
}

const plan::Room* roomCalled(const plan::Plan& plan, const std::string& name) {
    for (const plan::Room& room : plan.rooms)
        if (name == room.name || name == room.name + ", continued") return &room;
    return nullptr;
}

/// The point that is so far from two walls' faces, square to each: the corner of two lines.
Vec2 marked(const plan::Room& room, const std::string& wall_x, double x, const std::string& wall_y,
            double y) {
    const auto line = [&](const std::string& id, double away) {
        const auto edge = geometry::wallEdge(room, *plan::wallIndex(room, id));
        const Vec2 along = (edge.to_mm - edge.from_mm) * (1 / plan::length(edge.to_mm - edge.from_mm));
        // A room lies to the right of its walls as they run clockwise.
        return std::pair(edge.from_mm + Vec2{along.y, -along.x} * away, along);
    };
    const auto [a, u] = line(wall_x, x);
    const auto [b, v] = line(wall_y, y);
    const Vec2 between = b - a;
    return a + u * ((between.x * v.y - between.y * v.x) / (u.x * v.y - u.y * v.x));
}

struct Mark {
    Vec2 at_mm;
    double height_mm = 0;
};

/// Every centre by its tag, as the tables of a drawing give it.
std::map<std::string, Mark> ceilingMarks(const plan::Plan& plan, const drawing::Drawing& drawing) {
    static const std::regex kFrom("x from wall (\\S+), y from wall (\\S+), .*");
    std::map<std::string, Mark> marks;
    std::map<std::string, std::pair<std::string, std::string>> walls; // by room name
    for (const auto& sheet : drawing.sheets) {
        const auto texts = test::tableTexts(sheet);
        const auto isRoom = [&](const std::string& words) { return roomCalled(plan, words) != nullptr; };
        for (const auto& from : texts) {
            std::smatch found;
            if (!std::regex_match(from.words, found, kFrom)) continue;
            const test::TableText* room = nullptr;
            for (const auto& above : texts)
                if (above.y > from.y && std::abs(above.left - from.left) < 1 && isRoom(above.words) &&
                    (room == nullptr || above.y < room->y))
                    room = &above;
            REQUIRE(room != nullptr);
            walls[roomCalled(plan, room->words)->id] = {found[1], found[2]};
        }
        for (const auto& line : test::tableLines(sheet, 86, isRoom)) {
            if (line.cells.size() < 4 || !std::isdigit(static_cast<unsigned char>(line.cells[3].front())))
                continue;
            const plan::Room& room = *roomCalled(plan, line.heading);
            REQUIRE(walls.contains(room.id));
            const auto& [wall_x, wall_y] = walls.at(room.id);
            marks[line.cells[0]] = {
                marked(room, wall_x, std::stod(line.cells[1]), wall_y, std::stod(line.cells[2])),
                std::stod(line.cells[3])};
        }
    }
    return marks;
}

} // namespace

TEST_CASE("no text of a lighting set-out touches another, leaves the frame or is too small, on any paper") {
    for (const plan::Plan* plan : test::allPlans())
        for (const char* paper : {"A4", "A3", "A2", "A1"}) {
            sheets::Options options;
            options.paper = paper;
            for (const auto& sheet : setOutOf(*plan, options).sheets) {
                INFO(plan->project.name << " " << paper << " " << sheet.file_stem);
                CHECK(test::brokenRules(sheet) == "");
            }
        }
}

TEST_CASE("every luminaire on a ceiling and every box in a ceiling or floor is marked again from the table") {
    for (const plan::Plan* plan : test::allPlans()) {
        auto marks = ceilingMarks(*plan, setOutOf(*plan));
        const auto check = [&](const std::string& room, const plan::Host& host, const std::string& tag) {
            const auto at = geometry::hostPoint(*plan, room, host);
            INFO(plan->project.name << " " << tag);
            REQUIRE(at.has_value());
            REQUIRE(marks.contains(tag));
            CHECK(marks[tag].at_mm.x == Approx(at->x).margin(0.4));
            CHECK(marks[tag].at_mm.y == Approx(at->y).margin(0.4));
            CHECK(marks[tag].height_mm == Approx(at->z).margin(0.3));
        };
        std::size_t count = 0;
        for (const auto& lamp : plan->luminaires) {
            if (lamp.host.kind != plan::Host::Kind::Ceiling) continue;
            check(lamp.room, lamp.host, lamp.tag.empty() ? lamp.id : lamp.tag);
            ++count;
        }
        for (const auto& plate : plan->plates) {
            if (plate.host.kind != plan::Host::Kind::Ceiling && plate.host.kind != plan::Host::Kind::Floor)
                continue;
            const auto composed = catalogue::compose(test::shippedCatalogue(), plate);
            for (std::size_t i = 0; i < std::max<std::size_t>(1, composed.boxes.size()); ++i) {
                plan::Host host = plate.host;
                if (!composed.boxes.empty()) {
                    host.u_mm += composed.boxes[i].centre_mm.x;
                    host.v_mm += composed.boxes[i].centre_mm.y;
                }
                const std::string part =
                    composed.boxes.size() < 2 ? "" : fmt::format(" {}/{}", i + 1, composed.boxes.size());
                check(plate.room, host, plate.tag + part);
                ++count;
            }
        }
        CHECK(count > 0);
    }
}

TEST_CASE("every centre's numbers stand in the rows at the drawing too, where they are drawn") {
    for (const plan::Plan* plan : test::allPlans())
        for (const auto& sheet : setOutOf(*plan).sheets) {
            for (const auto& item : sheet.items) {
                const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive);
                if (dimension == nullptr || dimension->texts.empty()) continue;
                REQUIRE(item.view > 0);
                const double scale = sheet.views.at(item.view - 1).scale;
                const double drawn = dimension->kind == drawing::Dimension::Kind::Running
                                         ? dimension->to.x - dimension->from.x
                                         : dimension->to.y - dimension->from.y;
                INFO(plan->project.name << " " << sheet.number << " " << item.id);
                CHECK(drawn * scale == Approx(dimension->measured_mm).margin(0.5));
                CHECK(dimension->texts.front().text == drawing::number(dimension->measured_mm));
            }
            for (const auto& object : sheet.placed) {
                const bool rooms = test::hasText(sheet, "x from wall");
                int numbers = 0;
                for (const auto& item : sheet.items)
                    if (const auto* dimension = std::get_if<drawing::Dimension>(&item.primitive))
                        numbers +=
                            (" " + dimension->id + " ").find(" " + object.id + " ") != std::string::npos;
                const auto* lamp = plan::findLuminaire(*plan, object.id);
                if (!rooms || lamp == nullptr || lamp->host.kind != plan::Host::Kind::Ceiling) continue;
                INFO(plan->project.name << " " << sheet.number << " " << object.id);
                CHECK(numbers == 2); // one x, one y
            }
        }
}

TEST_CASE("luminaires on walls and furniture are on the set-out too, with their own two numbers") {
    for (const plan::Plan* plan : test::shippedPlans()) {
        const auto drawing = setOutOf(*plan);
        for (const auto& lamp : plan->luminaires) {
            using Kind = plan::Luminaire::Kind;
            if (lamp.host.kind == plan::Host::Kind::Ceiling || lamp.kind == Kind::Floor ||
                lamp.kind == Kind::Table)
                continue;
            bool found = false;
            for (const auto& sheet : drawing.sheets)
                for (const auto& line : test::tableLines(sheet, 86, [&](const std::string& words) {
                         return roomCalled(*plan, words) != nullptr;
                     })) {
                    if (line.cells.size() < 4 || line.cells[0] != lamp.tag) continue;
                    found = found || (line.cells[1] == drawing::number(lamp.host.u_mm) &&
                                      line.cells[2] == drawing::number(lamp.host.v_mm) &&
                                      roomCalled(*plan, line.heading)->id == lamp.room);
                }
            INFO(plan->project.name << " " << lamp.tag);
            CHECK(found);
        }
    }
}

TEST_CASE("lamps at equal distances are said to be, in brackets") {
    // The kitchen's first line: 800, 2000, 3200, 4400, 5600.
    bool said = false;
    for (const auto& sheet : setOutOf(*test::shippedPlans().front()).sheets)
        said = said || test::hasWords(sheet, "(4 × 1200 = 4800)");
    CHECK(said);
}

TEST_CASE("a wall to measure from has no point behind it, in a room with a niche at its left") {
    // An L of two parts: the niche's left wall is the outermost.
    plan::Plan plan = test::twoRooms();
    plan::Room& room = plan.rooms.back();
    plan::Luminaire lamp;
    lamp.id = "in-the-corner";
    lamp.room = room.id;
    lamp.kind = plan::Luminaire::Kind::Recessed;
    lamp.host.kind = plan::Host::Kind::Ceiling;
    lamp.host.u_mm = 300;
    lamp.host.v_mm = 300;
    plan.luminaires.push_back(lamp);
    const sheets::House house(plan, test::shippedCatalogue(), {});
    const auto points = sheets::pointsOf(house, room, sheets::ElevationNumbers(house));
    REQUIRE_FALSE(points.points.empty());
    for (const auto& point : points.points) {
        CHECK(point.x_mm >= 0);
        CHECK(point.y_mm >= 0);
    }
}

TEST_CASE("where walls are turned to the sheet the table alone gives the numbers, and they mark the point") {
    plan::Plan plan = test::twoRooms();
    const double turn = 0.3;
    for (plan::Room& room : plan.rooms)
        for (Vec2& p : room.outline)
            p = {p.x * std::cos(turn) - p.y * std::sin(turn), p.x * std::sin(turn) + p.y * std::cos(turn)};
    plan::Luminaire lamp;
    lamp.id = lamp.tag = "K-L01";
    lamp.room = plan.rooms.front().id;
    lamp.kind = plan::Luminaire::Kind::Recessed;
    lamp.host.kind = plan::Host::Kind::Ceiling;
    lamp.host.u_mm = 2300;
    lamp.host.v_mm = 2200;
    plan.luminaires.push_back(lamp);
    auto marks = ceilingMarks(plan, setOutOf(plan));
    const auto at = geometry::hostPoint(plan, lamp.room, lamp.host);
    REQUIRE(marks.contains("K-L01"));
    CHECK(marks["K-L01"].at_mm.x == Approx(at->x).margin(0.5));
    CHECK(marks["K-L01"].at_mm.y == Approx(at->y).margin(0.5));
}

TEST_CASE("a lighting set-out says that nothing is mirrored, from which faces it counts, and the cautions") {
    for (const plan::Plan* plan : test::allPlans()) {
        const auto drawing = setOutOf(*plan);
        for (const auto& sheet : drawing.sheets) {
            INFO(sheet.file_stem);
            for (const char* words : {"Do not scale", "prove dead", "licensed electrician"})
                CHECK(test::hasWords(sheet, words));
            if (sheet.title.ends_with("(continued)")) continue;
            CHECK(test::hasWords(sheet, "nothing mirrored"));
            if (!test::hasText(sheet, "x from wall")) continue;
            CHECK(test::hasWords(sheet, "finished faces"));
            // In full on the sheet or on the one that carries it on.
            bool said = false;
            for (const auto& other : drawing.sheets)
                if (other.number.starts_with(sheet.number))
                    said = said || (test::hasWords(other, "from the FINISHED faces of the two walls") &&
                                    test::hasWords(other, "they are measured level, as on the floor"));
            CHECK(said);
        }
    }
}

TEST_CASE("a room's set-out is on the sheets that show it, numbered as in the whole set") {
    const plan::Plan& plan = *test::shippedPlans().front();
    sheets::Options options;
    options.room = "attic";
    const auto some = setOutOf(plan, options);
    const auto whole = setOutOf(plan);
    REQUIRE_FALSE(some.sheets.empty());
    CHECK(some.sheets.size() < whole.sheets.size());
    for (const auto& sheet : some.sheets) {
        const auto same = std::ranges::find(whole.sheets, sheet.number, &drawing::Sheet::number);
        REQUIRE(same != whole.sheets.end());
        CHECK(drawing::dump(sheet) == drawing::dump(*same));
    }
    CHECK(test::hasText(some.sheets.front(), "Attic"));
}
