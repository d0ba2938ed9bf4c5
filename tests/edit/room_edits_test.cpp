#include "edit/room_edits.hpp"

#include "geometry/walls.hpp"
#include "small_rooms.hpp"

using namespace gangway;
using edit::Angles;
using edit::Beyond;
using edit::End;
using plan::Vec2;

namespace {

const plan::Room& kitchen(const edit::Document& document) {
    return *plan::findRoom(document.plan(), "kitchen");
}
std::vector<std::string> wallIds(const plan::Room& room) {
    std::vector<std::string> ids;
    for (const plan::Wall& wall : room.walls)
        ids.push_back(wall.id);
    return ids;
}
const plan::Host& hostOf(const edit::Document& document, const std::string& plate) {
    return plan::findPlate(document.plan(), plate)->host;
}

} // namespace

TEST_CASE("a new room gets a free id and letter and one named wall for each edge") {
    edit::Document document(twoRooms());
    plan::Room room;
    room.id = "kitchen";
    room.letter = "K";
    room.name = "Kiosk";
    room.outline = edit::rectangleOutline({6000, 0}, {8000, 2500});
    std::ranges::reverse(room.outline);
    run(document, edit::addRoom(document.plan(), room));
    const plan::Room& added = document.plan().rooms.back();
    CHECK(document.undoName() == "Add the kiosk");
    CHECK(added.id == "kitchen-2");
    CHECK(added.letter == "I"); // the next letter of its name that no room has
    CHECK(added.storey == "ground");
    CHECK(geometry::signedArea(added.outline) == -2000.0 * 2500);
    CHECK(wallIds(added).size() == 4);
    checkReadable(document.plan());
}

TEST_CASE("a room that crosses itself is refused with a sentence") {
    plan::Room room;
    room.name = "Bow tie";
    room.outline = {{0, 0}, {1000, 1000}, {1000, 0}, {0, 1000}};
    const auto refused = edit::addRoom(twoRooms(), room);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().find("crosses or touches itself") != std::string::npos);
}

TEST_CASE("removing a room takes everything in it and counts it in the name") {
    edit::Document document(twoRooms());
    const std::string before = plan::write(document.plan());
    run(document, edit::removeRooms(document.plan(), {"kitchen"}));
    CHECK(document.undoName() ==
          "Remove the kitchen with 2 openings, 1 piece of furniture, 3 plates, 1 lamp and 1 device");
    CHECK(document.plan().plates.empty());
    CHECK(document.plan().openings.empty());
    CHECK(document.plan().devices.empty());
    checkReadable(document.plan());
    document.undo();
    CHECK(plan::write(document.plan()) == before);
}

TEST_CASE("a wall of a rectangle is lengthened and the parallel one with it") {
    edit::Document document(twoRooms());
    SECTION("from its left end") {
        run(document, edit::setWallLength(document.plan(), "kitchen", 0, 4500, End::Left));
        CHECK(kitchen(document).outline == std::vector<Vec2>{{0, 3000}, {4500, 3000}, {4500, 0}, {0, 0}});
        CHECK(document.undoName() == "Lengthen wall A of the kitchen to 4500 mm");
        CHECK(hostOf(document, "k1").u_mm == 3800);
        CHECK(document.plan().luminaires.front().host.u_mm == 3600);
    }
    SECTION("from its right end: what is on the ceiling stays where it is in the house") {
        run(document, edit::setWallLength(document.plan(), "kitchen", 0, 3500, End::Right));
        CHECK(kitchen(document).outline == std::vector<Vec2>{{500, 3000}, {4000, 3000}, {4000, 0}, {500, 0}});
        CHECK(document.undoName() == "Shorten wall A of the kitchen to 3500 mm");
        CHECK(hostOf(document, "k1").u_mm ==
              3500); // kept at 3800 from the left corner it would be off the wall
        CHECK(document.plan().luminaires.front().host.u_mm == 3100);
    }
    SECTION("an opening stays on its wall") {
        run(document, edit::setWallLength(document.plan(), "kitchen", 0, 2000, End::Left));
        CHECK(document.plan().openings[1].left_mm == 800); // 1200 wide, at 1400 it would reach to 2600
        CHECK(document.plan().luminaires.front().host.u_mm == 2000); // nearest place in the room
    }
    checkReadable(document.plan());
}

TEST_CASE("a wall shorter than its window is refused") {
    const auto refused = edit::setWallLength(twoRooms(), "kitchen", 0, 1000, End::Left);
    REQUIRE_FALSE(refused);
    CHECK(refused.error() == "window 'window' is 1200 mm wide and does not fit wall A of the kitchen, which "
                             "would be 1000 mm long");
}

// Worked by hand: only the run up to the next parallel wall moves.
TEST_CASE("lengthening a wall of an L-shape moves only the run needed") {
    edit::Document document(cornerRoom());
    SECTION("A from the left: B moves, C is shorter by as much") {
        run(document, edit::setWallLength(document.plan(), "kitchen", 0, 3500, End::Left));
        CHECK(kitchen(document).outline ==
              std::vector<Vec2>{{0, 4000}, {3500, 4000}, {3500, 2000}, {5000, 2000}, {5000, 0}, {0, 0}});
    }
    SECTION("A from the right: F moves, E is longer by as much") {
        run(document, edit::setWallLength(document.plan(), "kitchen", 0, 3500, End::Right));
        CHECK(
            kitchen(document).outline ==
            std::vector<Vec2>{{-500, 4000}, {3000, 4000}, {3000, 2000}, {5000, 2000}, {5000, 0}, {-500, 0}});
    }
    SECTION("past the end of C the outline would cross itself or C would turn round") {
        const auto refused = edit::setWallLength(document.plan(), "kitchen", 0, 5000, End::Left);
        REQUIRE_FALSE(refused);
        CHECK(refused.error() == "wall C of the kitchen would have no length left");
    }
}

TEST_CASE("a corner moves both its walls and right angles stay") {
    edit::Document document(twoRooms());
    run(document, edit::moveCorner(document.plan(), "kitchen", 1, {4200, 3300}));
    CHECK(kitchen(document).outline == std::vector<Vec2>{{0, 3300}, {4200, 3300}, {4200, 0}, {0, 0}});
    run(document, edit::moveCorner(document.plan(), "kitchen", 1, {4100, 3100}));
    document.undo(); // both moves are one step
    CHECK(kitchen(document).outline == twoRooms().rooms.front().outline);
    run(document, edit::moveCorner(document.plan(), "kitchen", 1, {4200, 3300}, Angles::Free));
    CHECK(kitchen(document).outline == std::vector<Vec2>{{0, 3000}, {4200, 3300}, {4000, 0}, {0, 0}});
    const auto refused = edit::moveCorner(twoRooms(), "kitchen", 1, {-500, -500}, Angles::Free);
    REQUIRE_FALSE(refused);
    CHECK(refused.error() == "the outline of the kitchen would cross itself");
}

TEST_CASE("a wall moved together with the face behind it keeps its thickness") {
    edit::Document document(twoRooms());
    const auto thickness = [&] {
        const auto pairs = geometry::pairedFaces(document.plan(), {"kitchen", 3});
        REQUIRE(pairs.size() == 1);
        return pairs.front().thickness_mm;
    };
    REQUIRE(thickness() == 100);
    run(document, edit::moveWall(document.plan(), "kitchen", 3, 120, Beyond::Together));
    CHECK(document.undoName() == "Move wall D of the kitchen by 120 mm");
    CHECK(thickness() == 100);
    CHECK(kitchen(document).outline[0] == Vec2{-120, 3000});
    CHECK(plan::findRoom(document.plan(), "hall")->outline[1] == Vec2{-220, 3000});
    run(document, edit::moveWall(document.plan(), "kitchen", 3, -20, Beyond::Together));
    CHECK(document.undoName() == "Move wall D of the kitchen by 100 mm"); // the whole way of the drag
    document.undo();
    run(document, edit::moveWall(document.plan(), "kitchen", 3, -40));
    CHECK(thickness() == 140); // alone, the wall becomes thicker
    checkReadable(document.plan());
}

TEST_CASE("a wall is split, its right part pulled out, and what hangs there stays in its place") {
    edit::Document document(twoRooms());
    run(document, edit::splitWall(document.plan(), "kitchen", 0, 3000));
    CHECK(document.undoName() == "Split wall A of the kitchen");
    CHECK(wallIds(kitchen(document)) == std::vector<std::string>{"A", "E", "B", "C", "D"});
    CHECK(hostOf(document, "k1").wall == "E");
    CHECK(hostOf(document, "k1").u_mm == 800);
    run(document, edit::moveWall(document.plan(), "kitchen", 1, 600));
    CHECK(kitchen(document).outline ==
          std::vector<Vec2>{{0, 3000}, {3000, 3000}, {3000, 3600}, {4000, 3600}, {4000, 0}, {0, 0}});
    CHECK(wallIds(kitchen(document)) == std::vector<std::string>{"A", "F", "E", "B", "C", "D"});
    checkReadable(document.plan());
    const auto refused = edit::splitWall(twoRooms(), "kitchen", 0, 2000);
    REQUIRE_FALSE(refused);
    CHECK(refused.error() == "window 'window' is there; split the wall beside it");
}

TEST_CASE("a part of any wall can be pulled out; the rest of the room and the names stay") {
    plan::Plan plan = twoRooms();
    plan.openings.clear();
    plan.rooms.resize(1);
    plan.rooms.front().name = "Room";
    for (std::size_t wall = 0; wall < 4; ++wall)
        for (const std::size_t part : {0, 1, 2}) {
            CAPTURE(wall, part);
            edit::Document document(plan);
            run(document, edit::splitWall(document.plan(), "kitchen", wall, 2000));
            run(document, edit::splitWall(document.plan(), "kitchen", wall, 1000));
            const plan::Room before = kitchen(document);
            const auto frame = geometry::wallFrame(before, wall + part);
            run(document, edit::moveWall(document.plan(), "kitchen", wall + part, 600));
            const plan::Room& after = kitchen(document);
            CHECK(geometry::signedArea(after.outline) ==
                  geometry::signedArea(before.outline) - frame.length_mm * 600);
            for (std::size_t other = 0; other < before.walls.size(); ++other) {
                const auto found = plan::wallIndex(after, before.walls[other].id);
                REQUIRE(found);
                const auto was = geometry::wallFrame(before, other);
                const auto is = geometry::wallFrame(after, *found);
                CHECK(plan::dot(was.u, is.u) == Approx(1));
                CHECK(plan::dot(is.origin_mm - was.origin_mm, was.w) ==
                      Approx(other == wall + part ? -600 : 0).margin(1e-9));
            }
            checkReadable(document.plan());
        }
}

TEST_CASE("a room turned by 30 degrees keeps its angles when a wall is lengthened") {
    plan::Plan plan = cornerRoom();
    plan.luminaires.clear();
    for (Vec2& p : plan.rooms.front().outline)
        p = {p.x * std::sqrt(0.75) - p.y * 0.5, p.x * 0.5 + p.y * std::sqrt(0.75)};
    edit::Document document(plan);
    run(document, edit::setWallLength(document.plan(), "kitchen", 0, 3500, End::Left));
    const double lengths[] = {3500, 2000, 1500, 2000, 5000, 4000};
    for (std::size_t wall = 0; wall < 6; ++wall) {
        const auto frame = geometry::wallFrame(kitchen(document), wall);
        CHECK(frame.length_mm == Approx(lengths[wall]));
        CHECK(plan::dot(frame.u, geometry::wallFrame(plan.rooms.front(), wall).u) == Approx(1));
    }
}

TEST_CASE("a plate kept from the right corner stays where it is when its wall is split") {
    plan::Plan plan = twoRooms();
    plan.plates[0].host.u_mm = 600;
    plan.plates[0].kept_along = plan::KeptDistance{plan::KeptDistance::From::RightCorner, "", {}, -3400, {}};
    edit::Document document(plan);
    run(document, edit::splitWall(document.plan(), "kitchen", 0, 1000));
    CHECK(hostOf(document, "k1").u_mm == 600);
    CHECK(document.plan().plates[0].kept_along->distance_mm == -400);
}

TEST_CASE("removing a corner gives the wall before it what hung on the other") {
    edit::Document document(twoRooms());
    const std::string before = plan::write(document.plan());
    run(document, edit::splitWall(document.plan(), "kitchen", 0, 3000));
    run(document, edit::removeCorner(document.plan(), "kitchen", 1));
    CHECK(hostOf(document, "k1").wall == "A");
    CHECK(hostOf(document, "k1").u_mm == 3800);
    CHECK(plan::write(document.plan()) == before);
}

TEST_CASE("a ceiling below a window's head is refused, a lower one brings plates down") {
    edit::Document document(twoRooms());
    const auto refused = edit::setCeilingHeight(document.plan(), "kitchen", 2000);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().find("lies above the ceiling") != std::string::npos);
    run(document, edit::removeRooms(document.plan(), {"hall"}));
    run(document, edit::setCeilingHeight(document.plan(), "kitchen", 2200));
    CHECK(document.undoName() == "Set the ceiling of the kitchen to 2200 mm");
    CHECK(kitchen(document).ceiling.heights_mm == std::vector<double>{2200});
}

TEST_CASE("a wall takes another name with everything on it") {
    edit::Document document(twoRooms());
    plan::Wall wall = kitchen(document).walls[0];
    wall.id = "north";
    run(document, edit::changeWall(document.plan(), "kitchen", 0, wall, "Rename wall A"));
    CHECK(hostOf(document, "k1").wall == "north");
    CHECK(document.plan().openings[1].wall == "north");
    checkReadable(document.plan());
    wall.id = "B";
    CHECK_FALSE(edit::changeWall(document.plan(), "kitchen", 0, wall, "Rename wall A"));
}

TEST_CASE("what is said of a room is changed under a name that says so") {
    edit::Document document(twoRooms());
    run(document, edit::renameRoom(document.plan(), "kitchen", "Scullery"));
    CHECK(document.undoName() == "Rename the kitchen to 'Scullery'");
    run(document, edit::setWallThickness(document.plan(), "kitchen", 1, 215));
    CHECK(document.undoName() == "Make wall B of the scullery 215 mm thick");
    run(document, edit::setRoomStorey(document.plan(), "hall", "upper"));
    CHECK(document.undoName() == "Put the hall on storey 'Upper floor'");
    CHECK_FALSE(edit::setRoomLetter(document.plan(), "hall", "K"));
    CHECK_FALSE(edit::setWallThickness(document.plan(), "kitchen", 1, -5));
    CHECK_FALSE(edit::setFloorFinish(document.plan(), "kitchen", "lino of some sort"));
}
