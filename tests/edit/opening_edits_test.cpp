#include "edit/opening_edits.hpp"

#include "small_rooms.hpp"

using namespace gangway;
using Kind = plan::Opening::Kind;

namespace {

const plan::Opening& opening(const edit::Document& document, const std::string& id) {
    return *std::ranges::find(document.plan().openings, id, &plan::Opening::id);
}

} // namespace

TEST_CASE("every kind of opening can be added in its usual size and read again") {
    edit::Document document(twoRooms());
    document.run({"clear", "", [](edit::Draft& draft) { draft.remove<plan::Opening>("window"); }});
    for (const Kind kind : {Kind::HingedDoor, Kind::PocketDoor, Kind::SlidingDoor, Kind::BarnDoor,
                            Kind::Window, Kind::Plain, Kind::Hatch}) {
        plan::Opening added = edit::usualOpening(kind);
        added.room = "kitchen";
        added.wall = "A";
        added.left_mm = 1000;
        run(document, edit::addOpening(document.plan(), added));
        checkReadable(document.plan());
        document.undo();
    }
}

TEST_CASE("a new door goes beside the window that is there and knows the room behind") {
    edit::Document document(twoRooms());
    plan::Opening door = edit::usualOpening(Kind::HingedDoor);
    door.room = "kitchen";
    door.wall = "A";
    door.left_mm = 1700; // the window reaches from 1400 to 2600: 500 is nearer to 1700 than 2600 is
    run(document, edit::addOpening(document.plan(), door));
    CHECK(document.plan().openings.back().left_mm == 2600);
    CHECK(document.plan().openings.back().joins.empty());
    CHECK(document.undoName() == "Add door to wall A of the kitchen");
    door.wall = "B";
    door.room = "hall"; // the kitchen's door is in that wall from the other side, 1600 to 2500 from this end
    run(document, edit::addOpening(document.plan(), door));
    CHECK(document.plan().openings.back().left_mm == 700);
    CHECK(document.plan().openings.back().joins == "kitchen");
    door.width_mm = 2000;
    const auto refused = edit::addOpening(document.plan(), door);
    REQUIRE_FALSE(refused);
    CHECK(refused.error() == "no gap of wall B of the hall is 2000 mm wide");
}

TEST_CASE("dragging a door is one step named by the whole way, and it stays on its wall") {
    edit::Document document(twoRooms());
    run(document, edit::moveOpening(document.plan(), "door", 560));
    run(document, edit::moveOpening(document.plan(), "door", 620));
    CHECK(document.undoName() == "Move door 'hall' by 120 mm");
    run(document, edit::moveOpening(document.plan(), "door", 9000));
    CHECK(opening(document, "door").left_mm == 2100); // 3000 less 900
    document.undo();
    CHECK(opening(document, "door").left_mm == 500);
}

TEST_CASE("a leaf takes up the change of a door's width") {
    edit::Document document(twoRooms());
    run(document, edit::resizeOpening(document.plan(), "door", {500, 800, 0, 2000}));
    CHECK(opening(document, "door").leaf_mm == 726);
    CHECK(document.undoName() == "Resize door 'hall' to 800 mm x 2000 mm");
    CHECK(sentence(edit::resizeOpening(document.plan(), "door", {2500, 800, 0, 2000})) ==
          "door 'hall' would reach past wall D of the kitchen, which is 3000 mm long");
    CHECK(sentence(edit::resizeOpening(document.plan(), "door", {500, 70, 0, 2000})) ==
          "door 'hall' would have no clear width left");
    CHECK_FALSE(edit::resizeOpening(document.plan(), "door", {500, 800, 0, 2500}));
}

TEST_CASE("a door is hung and swung the other way, and made another kind") {
    edit::Document document(twoRooms());
    run(document, edit::swapHinge(document.plan(), "door"));
    CHECK(document.undoName() == "Hinge door 'hall' on the right");
    run(document, edit::swapSwing(document.plan(), "door"));
    CHECK(document.undoName() == "Open door 'hall' out of the kitchen");
    for (const Kind kind : {Kind::PocketDoor, Kind::SlidingDoor, Kind::Plain, Kind::HingedDoor}) {
        run(document, edit::changeOpeningKind(document.plan(), "door", kind));
        checkReadable(document.plan());
    }
    CHECK(document.undoName() == "Make opening 'hall' a hinged door");
    CHECK_FALSE(edit::swapHinge(document.plan(), "window"));
    run(document, edit::removeOpenings(document.plan(), {"door"}));
    CHECK(document.undoName() == "Remove door 'hall'");
}
