#include "edit/kept_distances.hpp"
#include "edit/plate_edits.hpp"
#include "geometry/frames.hpp"
#include "plan/io.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using edit::Along;
using From = plan::KeptDistance::From;
using Edge = plan::KeptDistance::Edge;

namespace {

/// A room of 6200 x 4200 with a door of 900 and casings of 60 in wall C, a wardrobe against wall C and two
/// plates. Wall C is the south wall: seen from inside its left corner is the east one.
const char* const kRoom = R"({
  "gangway": 1,
  "storeys": [ { "id": "ground", "name": "Ground floor", "plateFormat": "round-71" } ],
  "rooms": [ { "id": "den", "letter": "D", "name": "Den", "storey": "ground",
               "outline": [[0, 4200], [6200, 4200], [6200, 0], [0, 0]] } ],
  "openings": [ { "id": "door", "name": "door to the hall", "kind": "hinged-door", "room": "den", "wall": "C",
                  "left": 1000, "width": 900, "height": 2100, "casing": 60, "hinge": "left", "leaf": 826, "stop": 90, "swing": "in" } ],
  "furniture": [ { "id": "robe", "kind": "wardrobe", "name": "wardrobe", "room": "den", "at": [1000, 300],
                   "turn": 180, "size": [1200, 600, 2200] } ],
  "plates": [ { "id": "d1", "tag": "D-01", "room": "den", "wall": "C", "setOut": 2110, "height": 1050,
                "modules": ["switch-1way"] },
              { "id": "d2", "tag": "D-02", "room": "den", "wall": "C", "setOut": 2110, "height": 300,
                "modules": ["socket-f"] } ]
})";

edit::Document den() {
    auto result = plan::read(kRoom);
    if (!result)
        for (const auto& problem : result.error())
            FAIL(plan::toLine("den", problem));
    return edit::Document(std::move(result->plan));
}

void keep(edit::Document& document, const std::string& plate, const plan::KeptDistance& kept, Along along) {
    const auto command = edit::keepDistance(document.plan(), plate, kept, along);
    REQUIRE(command);
    document.run(*command);
}

const plan::Host& hostOf(const edit::Document& document, const std::string& plate) {
    return plan::findPlate(document.plan(), plate)->host;
}

void moveDoor(edit::Document& document, double left_mm) {
    document.run({"Move door", "",
                  [left_mm](edit::Draft& draft) { draft.change<plan::Opening>("door")->left_mm = left_mm; }});
}

} // namespace

TEST_CASE("a switch kept from a door's casing follows the moved door, and undo brings both back") {
    edit::Document document = den();
    // Structural edge 1000 + 900, casing 60: its outer edge is at 1960 (design.md 9); 150 beyond is 2110.
    keep(document, "d1", {From::Opening, "door", Edge::Right, 150, {}}, Along::U);
    CHECK(hostOf(document, "d1").u_mm == Approx(2110));
    moveDoor(document, 1300);
    CHECK(hostOf(document, "d1").u_mm == Approx(2410));
    CHECK(hostOf(document, "d2").u_mm == Approx(2110));
    document.undo();
    CHECK(hostOf(document, "d1").u_mm == Approx(2110));
    document.redo();
    CHECK(hostOf(document, "d1").u_mm == Approx(2410));
}

TEST_CASE("what hangs on a plate follows it, and follows what that one follows") {
    edit::Document document = den();
    keep(document, "d1", {From::Opening, "door", Edge::Right, 150, {}}, Along::U);
    keep(document, "d2", {From::Plate, "d1", Edge::Centre, 0, {}}, Along::U);
    moveDoor(document, 1100);
    CHECK(hostOf(document, "d1").u_mm == Approx(2210));
    CHECK(hostOf(document, "d2").u_mm == Approx(2210));
    document.run(edit::movePlate(document.plan(), "d1", 2300, 1050));
    CHECK(hostOf(document, "d2").u_mm == Approx(2300));
}

TEST_CASE("a moved plate keeps its link with the new distance") {
    edit::Document document = den();
    keep(document, "d1", {From::Opening, "door", Edge::Right, 150, {}}, Along::U);
    document.run(edit::movePlate(document.plan(), "d1", 2200, 1050));
    CHECK(plan::findPlate(document.plan(), "d1")->kept_along->distance_mm == Approx(240));
    moveDoor(document, 900);
    CHECK(hostOf(document, "d1").u_mm == Approx(2100));
}

TEST_CASE("moving two plates that hang on each other moves each by the same") {
    edit::Document document = den();
    keep(document, "d2", {From::Plate, "d1", Edge::Centre, 0, {}}, Along::U);
    for (const auto& order : {std::vector<std::string>{"d1", "d2"}, std::vector<std::string>{"d2", "d1"}}) {
        const double before = hostOf(document, "d1").u_mm;
        document.run(edit::nudgePlates(document.plan(), order, 71, 0));
        CHECK(hostOf(document, "d1").u_mm == Approx(before + 71));
        CHECK(hostOf(document, "d2").u_mm == Approx(before + 71));
    }
}

TEST_CASE("a plate kept from the right corner stays there when the wall grows") {
    edit::Document document = den();
    keep(document, "d2", {From::RightCorner, "", Edge::Left, -300, {}}, Along::U);
    CHECK(hostOf(document, "d2").u_mm == Approx(5900));
    document.run({"Longer", "", [](edit::Draft& draft) {
                      auto& outline = draft.change<plan::Room>("den")->outline;
                      outline[1].x = outline[2].x = 7000;
                  }});
    CHECK(hostOf(document, "d2").u_mm == Approx(6700));
}

TEST_CASE("a plate kept above a piece of furniture rises with it, and beside it moves with it") {
    edit::Document document = den();
    keep(document, "d2", {From::Furniture, "robe", Edge::Top, 120, {}}, Along::V);
    CHECK(hostOf(document, "d2").v_mm == Approx(2320));
    // The wardrobe spans x 400 to 1600; on wall C u is 6200 - x, so its left edge is at 4600.
    keep(document, "d2", {From::Furniture, "robe", Edge::Left, -100, {}}, Along::U);
    CHECK(hostOf(document, "d2").u_mm == Approx(4500));
    document.run({"Move", "", [](edit::Draft& draft) {
                      auto& piece = *draft.change<plan::Furniture>("robe");
                      piece.at_mm.x += 200;
                      piece.size.height_mm = 2000;
                  }});
    CHECK(hostOf(document, "d2").u_mm == Approx(4300));
    CHECK(hostOf(document, "d2").v_mm == Approx(2120));
}

TEST_CASE("a link that would lead back to the plate is refused") {
    edit::Document document = den();
    keep(document, "d2", {From::Plate, "d1", Edge::Centre, 0, {}}, Along::U);
    const auto back =
        edit::keepDistance(document.plan(), "d1", {From::Plate, "d2", Edge::Centre, 0, {}}, Along::U);
    REQUIRE_FALSE(back);
    CHECK(back.error() == "D-02 already follows D-01; cut that link first");
    CHECK_FALSE(
        edit::keepDistance(document.plan(), "d1", {From::Plate, "d1", Edge::Centre, 0, {}}, Along::U));
    CHECK_FALSE(
        edit::keepDistance(document.plan(), "d1", {From::Opening, "gone", Edge::Left, 0, {}}, Along::U));
}

TEST_CASE("a cut link no longer pulls, and the link to a removed door is cut") {
    edit::Document document = den();
    keep(document, "d1", {From::Opening, "door", Edge::Right, 150, {}}, Along::U);
    document.run(edit::cutLink(document.plan(), "d1", Along::U));
    moveDoor(document, 1300);
    CHECK(hostOf(document, "d1").u_mm == Approx(2110));
    keep(document, "d1", {From::Opening, "door", Edge::Right, 150, {}}, Along::U);
    document.run({"Remove door", "", [](edit::Draft& draft) { draft.remove<plan::Opening>("door"); }});
    CHECK_FALSE(plan::findPlate(document.plan(), "d1")->kept_along);
    CHECK(hostOf(document, "d1").u_mm == Approx(2410));
}

TEST_CASE("choices to keep from name corners, door, furniture and plates with the present distance") {
    const edit::Document document = den();
    const auto& plate = *plan::findPlate(document.plan(), "d1");
    const auto choices = edit::keepChoices(document.plan(), plate, Along::U);
    const auto distance = [&](const std::string& name) {
        for (const auto& choice : choices)
            if (choice.name == name) return choice.kept.distance_mm;
        return -1e9;
    };
    CHECK(distance("the left corner") == Approx(2110));
    CHECK(distance("the right corner") == Approx(-4090));
    CHECK(distance("door to the hall, right edge") == Approx(150));
    CHECK(distance("door to the hall, left edge") == Approx(2110 - 940));
    CHECK(distance("wardrobe, left edge") == Approx(2110 - 4600));
    CHECK(distance("D-02") == Approx(0));
    const auto& first = choices.front();
    CHECK(first.name == "D-02"); // nearest first
}
