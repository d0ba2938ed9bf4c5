#include "edit/luminaire_edits.hpp"

#include "small_rooms.hpp"

using namespace gangway;
using plan::Vec2;

namespace {

plan::Luminaire downlight() {
    plan::Luminaire lamp;
    lamp.kind = plan::Luminaire::Kind::Recessed;
    lamp.host.kind = plan::Host::Kind::Ceiling;
    lamp.lumens = 500;
    return lamp;
}

} // namespace

// Worked by hand, half a spacing at the walls (common practice, no source): 3600 / 3 = 1200, 2400 / 2 = 1200.
TEST_CASE("3 x 2 luminaires over 3600 x 2400 stand at 600, 1800, 3000 and 600, 1800") {
    CHECK(edit::gridPoints({{0, 0}, {3600, 2400}}, 2, 3) ==
          std::vector<Vec2>{{600, 600}, {1800, 600}, {3000, 600}, {600, 1800}, {1800, 1800}, {3000, 1800}});
}

TEST_CASE("a grid over a room is one step, with tags of the room") {
    edit::Document document(twoRooms());
    run(document, edit::gridLuminaires(document.plan(), {"kitchen", 2, 4, downlight(), {}}));
    CHECK(document.undoName() == "Add 8 luminaires to the kitchen");
    REQUIRE(document.plan().luminaires.size() == 9);
    CHECK(document.plan().luminaires[1].tag == "K-L02");
    CHECK(document.plan().luminaires[1].host.u_mm == 500);
    CHECK(document.plan().luminaires[1].host.v_mm == 750);
    CHECK(document.plan().luminaires[8].host.u_mm == 3500);
    CHECK(document.plan().luminaires[8].host.v_mm == 2250);
    checkReadable(document.plan());
    document.undo();
    CHECK(document.plan().luminaires.size() == 1);
    CHECK_FALSE(edit::gridLuminaires(document.plan(), {"kitchen", 0, 4, downlight(), {}}));
}

// The L-shape is 5000 x 2000 in the south with 3000 x 2000 on top of its west: 3000 x 4000 is the larger
// part.
TEST_CASE("a grid in an L-shape fills its largest rectangle") {
    const auto rectangle = edit::gridRectangle(cornerRoom().rooms.front());
    CHECK(rectangle.low_mm == Vec2{0, 0});
    CHECK(rectangle.high_mm == Vec2{3000, 4000});
}

TEST_CASE("a grid over a worktop follows its turn, over a rectangle it leaves out what lies outside") {
    edit::Document document(twoRooms());
    document.run({"turn", "", [](edit::Draft& draft) {
                      plan::Furniture& piece = draft.change<plan::Furniture>(0);
                      piece.at_mm = {3650, 1500};
                      piece.turn_deg = 270; // 1400 along the east wall
                  }});
    run(document, edit::gridLuminaires(document.plan(), {"kitchen", 1, 2, downlight(), std::string("desk")}));
    CHECK(document.plan().luminaires[1].host.u_mm == 3650);
    CHECK(document.plan().luminaires[1].host.v_mm == 1850);
    CHECK(document.plan().luminaires[2].host.v_mm == 1150);
    run(document, edit::gridLuminaires(document.plan(), {"kitchen", 1, 2, downlight(),
                                                         edit::PlanRectangle{{2000, 0}, {6000, 1000}}}));
    CHECK(document.undoName() == "Add 1 luminaire to the kitchen"); // the other would be at 5000
}

TEST_CASE("luminaires are added, moved, changed and removed") {
    edit::Document document(twoRooms());
    plan::Luminaire lamp = downlight();
    lamp.room = "kitchen";
    lamp.host = {plan::Host::Kind::Wall, "A", "", "", 5000, 1800};
    run(document, edit::addLuminaire(document.plan(), lamp));
    CHECK(document.plan().luminaires.back().host.u_mm == 4000); // held to the wall
    CHECK(document.undoName() == "Add K-L02");
    plan::Host host{plan::Host::Kind::Ceiling, "", "", "", 100, 200};
    run(document, edit::moveLuminaires(document.plan(), {{"lamp", host, ""}}));
    host.u_mm = 300;
    run(document, edit::moveLuminaires(document.plan(), {{"lamp", host, ""}}));
    CHECK(document.undoName() == "Move K-L01");
    document.undo();
    CHECK(document.plan().luminaires.front().host.u_mm == 3600);
    host.u_mm = 5000;
    CHECK_FALSE(edit::moveLuminaires(document.plan(), {{"lamp", host, ""}}));
    plan::Luminaire changed = document.plan().luminaires.front();
    changed.kelvin = 100;
    CHECK_FALSE(edit::changeLuminaire(document.plan(), changed, "Warmer K-L01"));
    run(document, edit::removeLuminaires(document.plan(), {"lamp"}));
    CHECK(document.undoName() == "Remove K-L01");
}
