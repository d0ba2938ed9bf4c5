#include "edit/furniture_edits.hpp"

#include "edit/head_edits.hpp"
#include "plan/furniture_kinds.hpp"
#include "small_rooms.hpp"

using namespace gangway;

namespace {

const plan::Furniture& desk(const edit::Document& document) {
    return *plan::findFurniture(document.plan(), "desk");
}

} // namespace

TEST_CASE("every kind of furniture can be added, given all its values' limits, and read again") {
    edit::Document document(twoRooms());
    for (const plan::FurnitureKind& kind : plan::furnitureKinds()) {
        plan::Furniture piece = *edit::usualPiece(std::string(kind.key));
        piece.at_mm = {1000, 1000};
        run(document, edit::addFurniture(document.plan(), piece));
        const std::string id = document.plan().furniture.back().id;
        CHECK(document.plan().furniture.back().room == "kitchen");
        for (const plan::FurnitureValue& value : kind.values) {
            run(document, edit::setFurnitureValue(document.plan(), id, std::string(value.key), value.max));
            CHECK_FALSE(edit::setFurnitureValue(document.plan(), id, std::string(value.key), value.max + 1));
            run(document,
                edit::setFurnitureValue(document.plan(), id, std::string(value.key), value.default_value));
        }
        CHECK(document.plan().furniture.back().with.empty());
    }
    checkReadable(document.plan());
    CHECK_FALSE(edit::usualPiece("throne"));
    plan::Furniture outside = edit::pieceFromFile("models/vase.glb", {200, 200, 400});
    CHECK(outside.name == "vase");
    outside.at_mm = {9000, 9000};
    const auto refused = edit::addFurniture(document.plan(), outside);
    REQUIRE_FALSE(refused);
    CHECK(refused.error() == "there is no room; put it inside one");
}

TEST_CASE("a desk takes its plate and its computer along into the next room") {
    edit::Document document(twoRooms());
    run(document, edit::moveFurniture(document.plan(), "desk", {{1000, 1500}, 0}));
    run(document, edit::moveFurniture(document.plan(), "desk", {{-1000, 1500}, 90}));
    CHECK(document.undoName() == "Move desk by 3000 mm");
    CHECK(desk(document).room == "hall");
    CHECK(plan::findPlate(document.plan(), "k3")->room == "hall");
    CHECK(document.plan().devices.front().room == "hall");
    // 100 right of and 200 behind the desk's middle; turned a quarter left, right is north and behind is
    // west.
    CHECK(document.plan().devices.front().lead_exit_mm == plan::Vec3{-1200, 1600, 200});
    checkReadable(document.plan());
    document.undo();
    CHECK(desk(document).at_mm == plan::Vec2{2000, 1500});
    CHECK(document.plan().devices.front().lead_exit_mm == plan::Vec3{2100, 1700, 200});
}

TEST_CASE("turning, resizing and removing furniture say what they did") {
    edit::Document document(twoRooms());
    run(document, edit::turnFurniture(document.plan(), "desk", -90));
    CHECK(desk(document).turn_deg == 270);
    CHECK(document.undoName() == "Turn desk to 270 degrees");
    run(document, edit::resizeFurniture(document.plan(), "desk", {150, 600, 740}));
    CHECK(document.undoName() == "Resize desk to 150 x 600 x 740 mm");
    CHECK(plan::findPlate(document.plan(), "k3")->host.u_mm == 150); // was 200 from the left end
    CHECK_FALSE(edit::resizeFurniture(document.plan(), "desk", {0, 600, 740}));
    run(document, edit::removeFurniture(document.plan(), {"desk"}));
    CHECK(document.undoName() == "Remove desk with 1 plate");
    CHECK(plan::findPlate(document.plan(), "k3") == nullptr);
    checkReadable(document.plan());
    document.undo();
    run(document, edit::duplicateFurniture(document.plan(), {"desk"}, {300, 0}));
    CHECK(document.plan().furniture.back().id == "desk-2");
    CHECK(document.plan().furniture.back().at_mm == plan::Vec2{2300, 1500});
}

// A desk of 1400 x 700 stands 350 from the wall behind it.
TEST_CASE("a piece near a wall turns its back to it") {
    const plan::Plan plan = twoRooms();
    plan::Furniture piece = plan.furniture.front();
    struct Case {
        plan::Vec2 at;
        double turn;
        std::optional<edit::Stand> stand;
    };
    const Case cases[] = {
        {{2000, 2550}, 0, edit::Stand{{2000, 2650}, 0}},     // back 100 before the north wall
        {{2000, 2550}, 180, edit::Stand{{2000, 2650}, 0}},   // its front was there
        {{3600, 1500}, 270, edit::Stand{{3650, 1500}, 270}}, // east wall: back to the east
        {{2000, 400}, 0, edit::Stand{{2000, 350}, 180}},
        {{350, 1500}, 90, edit::Stand{{350, 1500}, 90}}, // already there
        {{300, 2600}, 0, edit::Stand{{700, 2650}, 0}},   // held beside the wall's left end
        {{2000, 1500}, 0, std::nullopt},
        {{2000, 2499}, 0, std::nullopt}, // 151 mm away
    };
    for (const Case& c : cases) {
        piece.at_mm = c.at;
        piece.turn_deg = c.turn;
        CAPTURE(c.at.x, c.at.y, c.turn);
        CHECK(edit::snapToWall(plan, piece) == c.stand);
    }
}

TEST_CASE("the head of a plan is changed and put back") {
    edit::Document document(twoRooms());
    const std::string before = plan::write(document.plan());
    document.run(edit::setUnits(plan::DisplayUnits::FeetInches));
    CHECK(document.undoName() == "Show lengths in feet and inches");
    plan::Project project = document.plan().project;
    project.client = "A. Householder";
    run(document, edit::changeProject(project, "client"));
    project.notes.assign(20000, 'x'); // a plan file takes texts of 10000 bytes
    CHECK_FALSE(edit::changeProject(project));
    run(document, edit::addStorey(document.plan(), {"ground", "Cellar", -2400, "", {}, {}}));
    CHECK(document.plan().storeys.back().id == "ground-2");
    CHECK(sentence(edit::removeStorey(document.plan(), "ground")) ==
          "storey 'Ground floor' has 2 rooms; remove them or put them on another first");
    checkReadable(document.plan());
    while (document.canUndo())
        document.undo();
    CHECK(plan::write(document.plan()) == before);
}
