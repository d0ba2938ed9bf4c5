// What must pass: legal houses. (What must not is in broken/.)
#include "plan/io.hpp"
#include "plan/polygon_checks.hpp"
#include "plan/sample_plans.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace gangway::plan;

namespace {

/// A valid house of one room to change.
Plan oneRoom() {
    return samples::house(1);
}

std::string problemsOf(const Plan& plan) {
    std::string text;
    for (const Diagnostic& d : validate(plan))
        text += toLine("plan", d) + '\n';
    return text;
}

std::vector<Vec2> turned(std::vector<Vec2> polygon, double angle_rad, Vec2 shift) {
    for (Vec2& p : polygon)
        p = Vec2{p.x * std::cos(angle_rad) - p.y * std::sin(angle_rad),
                 p.x * std::sin(angle_rad) + p.y * std::cos(angle_rad)} +
            shift;
    return polygon;
}

} // namespace

TEST_CASE("the generated houses are valid") {
    CHECK(problemsOf(samples::house(5)).empty());
    CHECK(problemsOf(Plan{}).empty());
}

TEST_CASE("a room is valid however it is turned and wherever it stands") {
    const std::vector<Vec2> ell{{0, 4400}, {4900, 4400}, {4900, 3000}, {3000, 3000}, {3000, 0}, {0, 0}};
    for (int degrees = 0; degrees < 360; degrees += 15)
        for (const Vec2 shift : {Vec2{0, 0}, Vec2{-7734.8, 4408.6}, Vec2{900'000, -900'000}}) {
            Plan plan;
            plan.storeys = {{"ground", "Ground", 0, "", {}, {}}};
            Room room;
            room.id = "r";
            room.storey = "ground";
            room.outline = turned(ell, degrees * std::numbers::pi / 180, shift);
            room.walls.resize(6);
            for (std::size_t i = 0; i < 6; ++i)
                room.walls[i].id = std::string(1, static_cast<char>('a' + i));
            plan.rooms.push_back(room);
            INFO(degrees << " degrees at " << shift.x);
            CHECK(problemsOf(plan).empty());
            std::reverse(plan.rooms[0].outline.begin(), plan.rooms[0].outline.end());
            CHECK(problemsOf(plan).find("anti-clockwise") != std::string::npos);
        }
}

TEST_CASE("a corner in the middle of a straight wall is allowed") {
    Plan plan = oneRoom();
    plan.plates.clear();
    plan.openings.clear();
    plan.legs.clear();
    auto& room = plan.rooms[0];
    room.outline.insert(room.outline.begin() + 1, {2000, 4400});
    room.walls.emplace_back().id = "E";
    CHECK(problemsOf(plan).empty());
}

TEST_CASE("a window from wall to wall and from floor to ceiling is allowed") {
    Plan plan = oneRoom();
    Opening glass;
    glass.id = "glass";
    glass.kind = Opening::Kind::Window;
    glass.room = "room-1";
    glass.wall = "A";
    glass.left_mm = 0;
    glass.width_mm = 4900;
    glass.height_mm = 2500;
    plan.openings.push_back(glass);
    CHECK(problemsOf(plan).empty());
}

TEST_CASE("openings side by side, and a hatch over a door, do not overlap") {
    Plan plan = oneRoom();
    Opening next = plan.openings[0];
    next.id = "next";
    next.left_mm = 1200;
    Opening above = plan.openings[0];
    above.id = "above";
    above.kind = Opening::Kind::Hatch;
    above.sill_mm = 2100;
    above.height_mm = 300;
    plan.openings.insert(plan.openings.end(), {next, above});
    CHECK(problemsOf(plan).empty());
    plan.openings.back().sill_mm = 2000;
    CHECK(problemsOf(plan) ==
          "plan: error: /openings/2: opening 'above': it overlaps opening 'room-1-door' on wall 'C', "
          "which reaches from 300 to 1200; move one of them\n");
}

TEST_CASE("every pair of overlapping openings is found, also across a third") {
    Plan plan = oneRoom();
    plan.openings.clear();
    const auto add = [&](const char* id, double left, double width, double sill) {
        Opening o;
        o.id = id;
        o.room = "room-1";
        o.wall = "A";
        o.left_mm = left;
        o.width_mm = width;
        o.sill_mm = sill;
        o.height_mm = 500;
        plan.openings.push_back(o);
    };
    add("long low", 0, 4000, 0);
    add("high", 500, 500, 1500);
    add("low", 3000, 500, 400);
    const auto problems = validate(plan);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].pointer == "/openings/2");
}

TEST_CASE("a gabled ceiling is plane in each half, and a door under its slope is held against the slope") {
    Plan plan = oneRoom();
    plan.plates.clear();
    plan.legs.clear();
    auto& room = plan.rooms[0];
    room.outline = {{0, 4400}, {2450, 4400}, {4900, 4400}, {4900, 0}, {2450, 0}, {0, 0}};
    room.walls.resize(6);
    for (std::size_t i = 0; i < 6; ++i)
        room.walls[i].id = std::string(1, static_cast<char>('A' + i));
    room.ceiling.heights_mm = {1200, 2600, 1200, 1200, 2600, 1200};
    room.ceiling.creases = {{1, 4}};
    plan.openings[0].wall = "D"; // from 1200 high to 2600 high, 2450 long
    plan.openings[0].left_mm = 1550;
    plan.openings[0].height_mm = 2085; // 1200 + 1400 * 1550 / 2450 = 2085.7
    CHECK(problemsOf(plan).empty());
    plan.openings[0].height_mm = 2087;
    CHECK(problemsOf(plan).find("its head at 2087 lies above the ceiling, which is 2085.7 high there") !=
          std::string::npos);
    room.ceiling.creases.clear();
    CHECK(problemsOf(plan).find("the ceiling is not plane") != std::string::npos);
}

TEST_CASE("one plane may slope both ways") {
    Plan plan = oneRoom();
    plan.rooms[0].ceiling.heights_mm = {2600, 2800, 2700, 2500};
    CHECK(problemsOf(plan).empty());
}

TEST_CASE("plates at both ends of their wall, on the floor line and at the ceiling are allowed") {
    Plan plan = oneRoom();
    plan.plates[0].host = {Host::Kind::Wall, "A", "", "", 0, 0};
    plan.plates[1].host = {Host::Kind::Wall, "B", "", "", 4400, 2500};
    CHECK(problemsOf(plan).empty());
}

TEST_CASE("a switch in a headboard wider than its bed is allowed, one far past it is warned of") {
    Plan plan = oneRoom();
    Furniture& bed = plan.furniture[1];
    bed.with = {{"headboardWidth", bed.size.width_mm + 600}};
    plan.plates[0].host = {Host::Kind::Furniture, "", bed.id, "front", -250, 700};
    CHECK(problemsOf(plan).empty());
    plan.plates[0].host.u_mm = -400;
    const auto problems = validate(plan);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].level == Level::Warning);
}

TEST_CASE("an answer about a plate that is gone is kept with a warning") {
    Plan plan = oneRoom();
    plan.agreements = {{"gone", Agreement::Answer::Agree, "Ann", "2026-11-25T12:00:00Z", "", "0", {}}};
    CHECK(problemsOf(plan) == "plan: warning: /agreements/0/plate: agreement: plate 'gone' is no longer "
                              "there; the answer is kept\n");
}

TEST_CASE("a hinged door made by an edit must state its leaf too") {
    Plan plan = oneRoom();
    plan.openings[0].leaf_mm.reset();
    CHECK(problemsOf(plan) ==
          "plan: error: /openings/0: opening 'room-1-door': a hinged door states its leaf; add "
          "'leaf', the width of one leaf in mm\n");
}

TEST_CASE("areas and crossings of polygons agree with arithmetic done by hand") {
    const std::vector<Vec2> square{{0, 1}, {1, 1}, {1, 0}, {0, 0}};
    CHECK(signedAreaOf(square) == -1);
    CHECK_FALSE(crossingEdges(square));
    CHECK(crossingEdges({{0, 0}, {2, 2}, {2, 0}, {0, 2}}) == std::pair<std::size_t, std::size_t>{0, 2});
    // A bow that only touches: the corner (1, 1) lies on the edge from (0, 0) to (2, 2).
    CHECK(crossingEdges({{0, 0}, {2, 2}, {4, 0}, {1, 1}}).has_value());
    CHECK(insideOrOn(square, {0.5, 0.5}, 0));
    CHECK(insideOrOn(square, {0.5, 1.0}, 0));
    CHECK_FALSE(insideOrOn(square, {0.5, 1.2}, 0.1));
}

TEST_CASE("the outline of two thousand corners is judged without delay") {
    std::vector<Vec2> round;
    for (int i = 0; i < 2000; ++i)
        round.push_back({20'000 * std::cos(-i * std::numbers::pi / 1000),
                         20'000 * std::sin(-i * std::numbers::pi / 1000)});
    CHECK_FALSE(crossingEdges(round));
    std::swap(round[500], round[501]);
    CHECK(crossingEdges(round).has_value());
}

TEST_CASE("numbers in messages are given to a tenth, unless rounding would make a wrong one look right") {
    Plan plan = oneRoom();
    plan.openings[0].left_mm = 3462.5000000000005 * 3;
    plan.plates[0].host.v_mm = 3462.5000000000005;
    const std::string problems = problemsOf(plan);
    CHECK(problems.find("10387.5") != std::string::npos);
    CHECK(problems.find("3462.5 ") != std::string::npos);
    CHECK(problems.find("0000000") == std::string::npos);

    const auto messageFor = [](const std::string& thickness) {
        const auto result = read(R"({"gangway": 1, "rooms": [{"id": "r", "name": "r", "storey": "g",
            "outline": [[0, 3000], [4000, 3000], [4000, 0], [0, 0]],
            "walls": [{"id": "A", "thickness": )" +
                                 thickness + "}]}]}");
        return result ? std::string() : result.error().front().message;
    };
    CHECK(messageFor("-3462.5000000000005").find("'thickness' is -3462.5; give") != std::string::npos);
    CHECK(messageFor("-0.0004").find("'thickness' is -0.0004; give") != std::string::npos);
    CHECK(messageFor("1000000.01").find("'thickness' is 1000000.01; give") != std::string::npos);
    CHECK(messageFor("1e308").find("'thickness' is 1000") != std::string::npos);
    const auto result = read(R"({"gangway": 1, "pack": 3462.5000000000005})");
    REQUIRE_FALSE(result);
    CHECK(result.error().front().message.find("the number 3462.5, but a text") != std::string::npos);
}
