#include "plan/io.hpp"
#include "plan/wall_names.hpp"

#include <catch2/catch.hpp>

using namespace gangway::plan;

namespace {
std::vector<std::string> namesOf(std::vector<Vec2> outline, std::vector<std::string> given = {},
                                 std::vector<std::vector<Vec2>> columns = {}) {
    Room room;
    room.outline = std::move(outline);
    room.columns = std::move(columns);
    for (const std::string& name : given) {
        room.walls.emplace_back();
        room.walls.back().id = name;
    }
    nameWalls(room);
    std::vector<std::string> names;
    for (const Wall& wall : room.walls)
        names.push_back(wall.id);
    return names;
}
using Names = std::vector<std::string>;
const std::vector<Vec2> kFromNorth{{0, 3000}, {4000, 3000}, {4000, 0}, {0, 0}};
const std::vector<Vec2> kFromEast{{4000, 3000}, {4000, 0}, {0, 0}, {0, 3000}};
} // namespace

TEST_CASE("walls are lettered clockwise from the north-most, whichever corner is listed first") {
    CHECK(namesOf(kFromNorth) == Names{"A", "B", "C", "D"});
    CHECK(namesOf(kFromEast) == Names{"B", "C", "D", "A"});
}

TEST_CASE("of two equally northern walls the left one is A") {
    const std::vector<Vec2> u_shape{{0, 3000},    {1000, 3000}, {1000, 1000}, {2000, 1000},
                                    {2000, 3000}, {3000, 3000}, {3000, 0},    {0, 0}};
    CHECK(namesOf(u_shape) == Names{"A", "B", "C", "D", "E", "F", "G", "H"});
    std::vector<Vec2> from_right(u_shape.begin() + 4, u_shape.end());
    from_right.insert(from_right.end(), u_shape.begin(), u_shape.begin() + 4);
    CHECK(namesOf(from_right) == Names{"E", "F", "G", "H", "A", "B", "C", "D"});
}

TEST_CASE("names given by the designer stay, and no letter is given twice") {
    CHECK(namesOf(kFromNorth, {"north"}) == Names{"north", "B", "C", "D"});
    CHECK(namesOf(kFromNorth, {"B"}) == Names{"B", "E", "C", "D"});
}

TEST_CASE("the sides of a column carry on with the next letters") {
    CHECK(namesOf(kFromEast, {}, {{{1, 1}, {2, 1}, {2, 2}}}) == Names{"B", "C", "D", "A", "E", "F", "G"});
}

TEST_CASE("after Z come AA and AB") {
    CHECK(letterName(25) == "Z");
    CHECK(letterName(26) == "AA");
    CHECK(letterName(27) == "AB");
    CHECK(letterName(701) == "ZZ");
    CHECK(letterName(702) == "AAA");
}

TEST_CASE("the reader completes the walls of every room") {
    const auto result = read(R"({"gangway": 1, "storeys": [{"id": "g", "name": "G"}],
        "rooms": [{"id": "r", "name": "R", "storey": "g", "outline": [[4000,3000],[4000,0],[0,0],[0,3000]]}]})");
    REQUIRE(result);
    REQUIRE(result->plan.rooms[0].walls.size() == 4);
    CHECK(wallIndex(result->plan.rooms[0], "A") == 3U);
    CHECK(result->plan.rooms[0].walls[0].thickness_mm == 100);
}
