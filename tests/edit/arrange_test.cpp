#include "arranging.hpp"
#include "edit/arrange.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace gangway;
using namespace gangway::test;
using edit::Arranged;

namespace {

/// 4000 x 3000 with four plates on wall A, one on wall B and one in the floor.
plan::Plan room() {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.rooms[0].letter = "R";
    plan.plates = {
        plateOn("a", "room", onWall("A", 500, 300)),   plateOn("b", "room", onWall("A", 900, 350)),
        plateOn("c", "room", onWall("A", 2900, 1050)), plateOn("d", "room", onWall("A", 1000, 300)),
        plateOn("e", "room", onWall("B", 700, 300)),   plateOn("f", "room", {})};
    plan.plates[5].host.kind = plan::Host::Kind::Floor;
    plan.plates[5].host.u_mm = plan.plates[5].host.v_mm = 1000;
    return plan;
}

edit::Document done(const plan::Plan& plan, const Arranged& arranged) {
    if (!arranged) FAIL(arranged.error());
    edit::Document document(plan);
    document.run(*arranged);
    return document;
}

const plan::Host& hostOf(const edit::Document& document, const std::string& plate) {
    const plan::Plate* found = plan::findPlate(document.plan(), plate);
    if (found == nullptr) FAIL("no plate " + plate);
    return found->host;
}

std::vector<double> placesOn(const plan::Plan& plan, const std::string& wall) {
    std::vector<double> places;
    for (const plan::Plate& plate : plan.plates)
        if (plate.host.wall == wall) places.push_back(plate.host.u_mm);
    std::ranges::sort(places);
    return places;
}

plan::Host onFace(const std::string& piece, const std::string& face, double u, double v) {
    plan::Host host;
    host.kind = plan::Host::Kind::Furniture;
    host.furniture = piece;
    host.face = face;
    host.u_mm = u;
    host.v_mm = v;
    return host;
}

/// A bed 1600 wide in the middle of wall A.
plan::Plan bedroom() {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.rooms[0].letter = "B";
    plan.furniture = {pieceIn("bed", "room", {1200, 2800}, {900, 3000}, {0, 550})};
    plan.furniture[0].name = "bed";
    plan.plates = {plateOn("left", "room", onWall("A", 1000, 650), {"socket", "switch"})};
    plan.plates[0].tag = "B-01";
    plan.plates[0].purpose = "bedside left, leftover";
    plan.plates[0].anchor = "bed";
    return plan;
}

} // namespace

TEST_CASE("plates are put at one height, in one step that names it and is undone whole") {
    const plan::Plan plan = room();
    edit::Document document = done(plan, edit::alignHeights(plan, plainCatalogue(), {"a", "b", "e"}, 1050));
    CHECK(document.undoName() == "Align 3 plates at 1050 mm");
    for (const char* id : {"a", "b", "e"})
        CHECK(hostOf(document, id).v_mm == 1050);
    CHECK(hostOf(document, "a").u_mm == 500);
    document.undo();
    CHECK(hostOf(document, "b").v_mm == 350);
    CHECK_FALSE(document.canUndo());
    const auto with = done(plan, edit::alignHeightsWith(plan, plainCatalogue(), {"a", "d"}, "c"));
    CHECK(hostOf(with, "a").v_mm == 1050);
    CHECK(hostOf(with, "d").v_mm == 1050);
}

// The ceiling is at 2500 and half a plate is 40.5: at 2480 its top would be at 2520.5.
TEST_CASE("a height that takes a plate past the ceiling or that a plate can't have is refused") {
    const plan::Plan plan = room();
    CHECK(edit::alignHeights(plan, plainCatalogue(), {"a"}, 2480).error() ==
          "a would stand 20.5 mm past the top of wall A of room");
    CHECK(edit::alignHeights(plan, plainCatalogue(), {"a"}, 2459.5));
    CHECK(edit::alignHeights(plan, plainCatalogue(), {"a"}, 30).error() ==
          "a would stand 10.5 mm past the foot of wall A of room");
    CHECK(edit::alignHeights(plan, plainCatalogue(), {"a", "f"}, 1050).error() ==
          "f lies flat and has no height");
    CHECK(edit::alignHeights(plan, plainCatalogue(), {"a", "zz"}, 1050).error() == "there is no plate 'zz'");
    CHECK(edit::alignHeights(plan, plainCatalogue(), {}, 1050).error() == "choose at least 1 plate");
    CHECK_FALSE(edit::alignHeightsWith(plan, plainCatalogue(), {"a"}, "f"));
}

// A slope from 2500 on the left of wall A to 1500 on its right: 2000 in the middle; half a plate to the right
// of 2000 it is 1000 / 4000 x 40.5 = 10.125 lower.
TEST_CASE("under a slope the lower corner of a plate counts") {
    plan::Plan plan = room();
    plan.rooms[0].ceiling.heights_mm = {2500, 1500, 1500, 2500};
    plan.plates[0].host.u_mm = 2000;
    const double highest = 2000 - 10.125 - 40.5;
    CHECK(edit::alignHeights(plan, plainCatalogue(), {"a"}, highest - 0.01));
    CHECK_FALSE(edit::alignHeights(plan, plainCatalogue(), {"a"}, highest + 0.01));
}

TEST_CASE("plates of one wall are put one above the other") {
    const plan::Plan plan = room();
    const auto document = done(plan, edit::alignCentresWith(plan, plainCatalogue(), {"a", "b"}, "c"));
    CHECK(document.undoName() == "Line up 2 plates with c");
    CHECK(hostOf(document, "a").u_mm == 2900);
    CHECK(hostOf(document, "b").u_mm == 2900);
    CHECK(hostOf(document, "b").v_mm == 350);
    CHECK(edit::alignCentresWith(plan, plainCatalogue(), {"a", "e"}, "c").error() ==
          "c and e are not on one wall or face");
    CHECK(edit::alignCentresWith(plan, plainCatalogue(), {"c"}, "c").error() == "choose at least 2 plates");
}

// 500 and 2900 stay; two between them: spaces of 2400 / 3 = 800.
TEST_CASE("plates are spaced evenly between the outermost two") {
    const plan::Plan plan = room();
    const auto document = done(plan, edit::distributeEvenly(plan, plainCatalogue(), {"c", "d", "a", "b"}));
    CHECK(document.undoName() == "Space 4 plates evenly");
    CHECK(hostOf(document, "a").u_mm == 500);
    CHECK(hostOf(document, "b").u_mm == Approx(1300));
    CHECK(hostOf(document, "d").u_mm == Approx(2100));
    CHECK(hostOf(document, "c").u_mm == 2900);
    // In height 300, 350, 1050: the middle one goes to 675.
    const auto upwards =
        done(plan, edit::distributeEvenly(plan, plainCatalogue(), {"a", "b", "c"}, edit::Along::V));
    CHECK(hostOf(upwards, "b").v_mm == Approx(675));
    CHECK_FALSE(edit::distributeEvenly(plan, plainCatalogue(), {"a", "b"}));
    CHECK_FALSE(edit::distributeEvenly(plan, plainCatalogue(), {"a", "b", "e"}));
}

// Wall A is 4000 long here and 3000 there: 2900 is 1100 from the right end, so it goes to 1900.
TEST_CASE("plates are copied to another room as far from the nearer end, with tags of that room") {
    plan::Plan plan = room();
    plan.rooms.push_back(boxRoom("bath", 4100, 0, 3000, 3000));
    plan.rooms[1].letter = "T";
    plan.plates[0].tag = "R-01";
    plan.plates[0].kept_along = plan::KeptDistance{plan::KeptDistance::From::Plate, "d", {}, -500, {}};
    const auto document =
        done(plan, edit::copyToRoom(plan, plainCatalogue(), {"a", "c", "e"}, "bath", {{"B", "D"}}));
    CHECK(document.undoName() == "Copy 3 plates to bath");
    const auto& plates = document.plan().plates;
    REQUIRE(plates.size() == 9);
    CHECK(plates[0].host.u_mm == 500);
    const std::vector<double> places = {plates[6].host.u_mm, plates[7].host.u_mm, plates[8].host.u_mm};
    CHECK(places == std::vector<double>{500, 1900, 700});
    CHECK(plates[7].host.v_mm == 1050);
    CHECK(plates[8].host.wall == "D");
    for (std::size_t i = 6; i < 9; ++i) {
        CHECK(plates[i].room == "bath");
        CHECK(plates[i].tag == "T-0" + std::to_string(i - 5));
        CHECK(std::ranges::count(plates, plates[i].id, &plan::Plate::id) == 1);
        CHECK_FALSE(plates[i].kept_along);
    }
    CHECK(edit::copyToRoom(plan, plainCatalogue(), {"a"}, "attic").error() == "there is no room 'attic'");
    CHECK(edit::copyToRoom(plan, plainCatalogue(), {"a"}, "bath", {{"A", "Z"}}).error() ==
          "room 'bath' has no wall 'Z'");
    plan.rooms.push_back(boxRoom("niche", 8000, 0, 600, 600, 1000));
    CHECK_FALSE(edit::copyToRoom(plan, plainCatalogue(), {"c"}, "niche")); // 1050 is above its ceiling
}

// The bed's middle is at 2000: 1000 goes to 3000.
TEST_CASE("a bedside plate is mirrored to the bed's other side and keeps what mirrors with it") {
    plan::Plan plan = bedroom();
    using From = plan::KeptDistance::From;
    using Edge = plan::KeptDistance::Edge;
    plan.plates[0].kept_along = plan::KeptDistance{From::Furniture, "bed", Edge::Left, -200, {}};
    auto document = done(plan, edit::mirrorToOtherSide(plan, plainCatalogue(), {"left"}, "bed"));
    CHECK(document.undoName() == "Mirror B-01 to the other side of the bed");
    REQUIRE(document.plan().plates.size() == 2);
    const plan::Plate& made = document.plan().plates[1];
    CHECK(made.host.u_mm == Approx(3000).margin(1e-6));
    CHECK(made.host.v_mm == 650);
    CHECK(made.tag == "B-02");
    CHECK(made.purpose == "bedside right, leftover");
    CHECK(made.anchor == "bed");
    CHECK(made.modules[0].type == "socket");
    CHECK(made.kept_along == plan::KeptDistance{From::Furniture, "bed", Edge::Right, 200, {}});
    document.undo();
    CHECK(document.plan().plates.size() == 1);
    const auto reversed = done(plan, edit::mirrorToOtherSide(plan, plainCatalogue(), {"left"}, "bed",
                                                             {"", edit::Mirroring::Modules::Reverse}));
    CHECK(reversed.plan().plates[1].modules[0].type == "switch");
}

TEST_CASE("a partner is moved to the mirrored place, and none is made") {
    plan::Plan plan = bedroom();
    plan.plates.push_back(plateOn("right", "room", onWall("A", 3200, 300)));
    const auto document =
        done(plan, edit::mirrorToOtherSide(plan, plainCatalogue(), {"left"}, "bed", {"right", {}}));
    CHECK(document.plan().plates.size() == 2);
    CHECK(hostOf(document, "right").u_mm == Approx(3000).margin(1e-6));
    CHECK(hostOf(document, "right").v_mm == 650);
    CHECK(plan::findPlate(document.plan(), "right")->modules.size() == 1);
    CHECK_FALSE(edit::mirrorToOtherSide(plan, plainCatalogue(), {"left"}, "bed", {"left", {}}));
    CHECK_FALSE(edit::mirrorToOtherSide(plan, plainCatalogue(), {"left", "right"}, "bed", {"right", {}}));
}

// Symmetry is taken in the bed's own coordinates, which the command's caller never sees: x (or y, for a bed
// with its side to the wall) changes its sign and all else stays.
TEST_CASE("a mirrored pair is symmetric about the bed, however bed and house are turned") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> part(0, 1);
    for (const Move& move : kMoves)
        for (const double turn : {0.0, 90.0, 180.0, 270.0})
            for (const char* host : {"wall", "front", "back", "top", "floor", "left", "right"}) {
                INFO(move.name << ", bed turned " << turn << ", on " << host);
                plan::Plan plan = bedroom();
                plan.furniture[0].turn_deg = turn;
                plan.furniture[0].with = {{"headboardHeight", 1000}, {"headboardWidth", 2000}};
                const std::string word = host;
                plan::Host at = plan.plates[0].host;
                if (word == "floor") {
                    at.kind = plan::Host::Kind::Floor;
                    at.u_mm = 1900 + 100 * part(random);
                    at.v_mm = 1500 + 300 * part(random);
                } else if (word != "wall") {
                    const double width = word == "left" || word == "right" ? 2100 : 1600;
                    at = onFace("bed", word, 100 + (width - 200) * part(random), 200 + 250 * part(random));
                } else {
                    at.u_mm = 300 + 1500 * part(random);
                }
                plan.plates[0].host = at;
                // A floor's u and v keep to the house's axes, so there only the bed is turned.
                if (word != "floor") plan = moved(plan, move);
                const plan::Furniture& bed = plan.furniture[0];
                const auto arranged = edit::mirrorToOtherSide(plan, plainCatalogue(), {"left"}, "bed");
                const auto document = done(plan, arranged);
                REQUIRE(document.plan().plates.size() == 2);
                const plan::Plate& made = document.plan().plates[1];
                const auto one = geometry::toLocal(bed, *geometry::hostPoint(plan, "room", at));
                const auto other =
                    geometry::toLocal(bed, *geometry::hostPoint(document.plan(), "room", made.host));
                const bool sideways = word == "wall" && (turn == 90 || turn == 270);
                CHECK(other.x == Approx(sideways ? one.x : -one.x).margin(1e-6));
                CHECK(other.y == Approx(sideways ? -one.y : one.y).margin(1e-6));
                CHECK(other.z == Approx(one.z).margin(1e-6));
                if (word == "left" || word == "right") CHECK(made.host.face != at.face);
            }
}

TEST_CASE("what has no other side is refused") {
    plan::Plan plan = bedroom();
    plan.furniture[0].turn_deg = 20;
    CHECK(edit::mirrorToOtherSide(plan, plainCatalogue(), {"left"}, "bed").error() ==
          "the bed stands askew to the wall of B-01, so that has no other side");
    plan.furniture[0].turn_deg = 0;
    plan.furniture[0].at_mm.x = 2600; // 1000 would go to 4200 of 4000, and its plate is 152 wide
    CHECK(edit::mirrorToOtherSide(plan, plainCatalogue(), {"left"}, "bed").error() ==
          "B-01 would stand 276 mm past the right end of wall A of room");
    CHECK(edit::mirrorToOtherSide(plan, plainCatalogue(), {"left"}, "sofa").error() ==
          "there is no furniture 'sofa'");
}

TEST_CASE("a row of plates is equally spaced, with half spaces or plates at its ends") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.plates = {plateOn("p", "room", onWall("A", 1400, 1100))};
    const auto half = done(plan, edit::arrayAlong(plan, plainCatalogue(), "p", 4, 0, 4000));
    CHECK(half.undoName() == "Make a row of 4 like p");
    CHECK(placesOn(half.plan(), "A") == std::vector<double>{500, 1500, 2500, 3500});
    CHECK(hostOf(half, "p").u_mm == 1500); // the nearest place
    CHECK(half.plan().plates[3].host.v_mm == 1100);
    const auto ends =
        done(plan, edit::arrayAlong(plan, plainCatalogue(), "p", 4, 3700, 100, edit::RowEnds::Included));
    CHECK(placesOn(ends.plan(), "A") == std::vector<double>{100, 1300, 2500, 3700});
    const auto one =
        done(plan, edit::arrayAlong(plan, plainCatalogue(), "p", 1, 0, 4000, edit::RowEnds::Included));
    CHECK(placesOn(one.plan(), "A") == std::vector<double>{2000});
    CHECK(edit::arrayAlong(plan, plainCatalogue(), "p", 0, 0, 4000).error() == "a row has 1 to 100 plates");
    CHECK(edit::arrayAlong(plan, plainCatalogue(), "p", 2, 0, 4000, edit::RowEnds::Included).error() ==
          "p would stand 40.5 mm past the left end of wall A of room");
}

// The worktop shows from 800 to 3200 on wall A: three with half spaces of 400.
TEST_CASE("a row over a worktop takes the worktop's width") {
    plan::Plan plan = planOf({boxRoom("room", 0, 0, 4000, 3000)});
    plan.furniture = {pieceIn("worktop", "room", {800, 3200}, {2400, 3000}, {880, 920})};
    plan.furniture[0].id = "top";
    plan.furniture[0].name = "worktop";
    plan.plates = {plateOn("p", "room", onWall("A", 1100, 1100)),
                   plateOn("q", "room", onWall("C", 1100, 1100))};
    const auto row = done(plan, edit::arrayOnFurniture(plan, plainCatalogue(), "p", "top", 3));
    CHECK(placesOn(row.plan(), "A") == std::vector<double>{1200, 2000, 2800});
    CHECK(edit::arrayOnFurniture(plan, plainCatalogue(), "q", "top", 3).error() ==
          "the worktop does not stand at the wall of q");
}

// Wall B of the west room runs south from y = 3000, wall D of the east room north from y = -500: u = 1500 is
// at y = 1500 and there at 2000. The east room ends at y = 2000, so that behind u = 500 (y = 2500) lies no
// room.
TEST_CASE("a plate goes to the other side of its wall, and back") {
    plan::Plan plan = planOf({boxRoom("west", 0, 0, 4000, 3000), boxRoom("east", 4100, -500, 2000, 2500)});
    plan.plates = {plateOn("p", "west", onWall("B", 1500, 1050)),
                   plateOn("q", "west", onWall("B", 500, 1050))};
    const auto document = done(plan, edit::flipToOtherFace(plan, plainCatalogue(), "p"));
    CHECK(document.undoName() == "Move p to the other side, east");
    CHECK(plan::findPlate(document.plan(), "p")->room == "east");
    CHECK(hostOf(document, "p").wall == "D");
    CHECK(hostOf(document, "p").u_mm == Approx(2000));
    CHECK(hostOf(document, "p").v_mm == 1050);
    const auto back = done(document.plan(), edit::flipToOtherFace(document.plan(), plainCatalogue(), "p"));
    CHECK(hostOf(back, "p").u_mm == Approx(1500).margin(1e-6));
    CHECK(plan::findPlate(back.plan(), "p")->room == "west");
    CHECK(edit::flipToOtherFace(plan, plainCatalogue(), "q").error() == "no room lies behind wall B at q");
}
