#include "plan_on_disk.hpp"
#include "review/review.hpp"

using namespace gangway;
using review::State;

namespace {

const char* const kNow = "2026-03-01T19:30:00Z";

State stateOf(const edit::Document& document, const std::string& plate) {
    return review::stateOf(document.plan(), *plan::findPlate(document.plan(), plate));
}

} // namespace

TEST_CASE("agreeing and querying a plate is saved with name and time, and undone") {
    const Workplace here("agree");
    edit::Document document = openDocument(here.file);
    document.run(edit::agreePlate(document.plan(), "k4", "Ada", kNow));
    CHECK(document.undoName() == "Agree K-04");
    CHECK(stateOf(document, "k4") == State::Agreed);
    document.run(edit::queryPlate(document.plan(), "k5", "Ada", kNow, "lower?"));
    CHECK(document.undoName() == "Query K-05");
    CHECK(stateOf(document, "k5") == State::Queried);
    REQUIRE(document.save());

    const plan::Plan saved = readPlan(here.file);
    REQUIRE(saved.agreements.size() == 2);
    CHECK(saved.agreements[0].by == "Ada");
    CHECK(saved.agreements[0].at == kNow);
    CHECK(saved.agreements[1].note == "lower?");
    CHECK(review::stateOf(saved, *plan::findPlate(saved, "k4")) == State::Agreed);
    CHECK(review::stateOf(saved, *plan::findPlate(saved, "k5")) == State::Queried);

    document.undo();
    CHECK(stateOf(document, "k5") == State::Open);
}

TEST_CASE("a plate without a tag is called by its id") {
    const Workplace here("tagless");
    const plan::Plan plan = readPlan(here.file);
    CHECK(edit::agreePlate(plan, "k6", "Ada", kNow).name == "Agree k6");
}

TEST_CASE("moving an agreed plate reopens it, undoing the move makes it agreed again") {
    const Workplace here("move");
    edit::Document document = openDocument(here.file);
    document.run(edit::agreePlate(document.plan(), "k4", "Ada", kNow));
    document.run(edit::agreePlate(document.plan(), "k5", "Ada", kNow));
    document.run(edit::movePlate(document.plan(), "k4", 1600, 1100));
    CHECK(document.undoName() == "Move K-04 by 100 mm and 50 mm down");
    CHECK(plan::findPlate(document.plan(), "k4")->host.u_mm == 1600);
    CHECK(plan::findPlate(document.plan(), "k4")->host.v_mm == 1100);
    CHECK(stateOf(document, "k4") == State::Reopened);
    CHECK(stateOf(document, "k5") == State::Agreed);
    document.undo();
    CHECK(stateOf(document, "k4") == State::Agreed);
}

TEST_CASE("a drag of one plate is one step, of two plates two") {
    const Workplace here("drag");
    edit::Document document = openDocument(here.file);
    for (double u = 1510; u <= 1600; u += 10)
        document.run(edit::movePlate(document.plan(), "k4", u, 1150));
    document.run(edit::movePlate(document.plan(), "k5", 1000, 300));
    document.undo();
    CHECK(plan::findPlate(document.plan(), "k5")->host.u_mm == 900);
    document.undo();
    CHECK(plan::findPlate(document.plan(), "k4")->host.u_mm == 1500);
    CHECK_FALSE(document.canUndo());
}

TEST_CASE("an answer is about the plan it is applied to, not the one it was made from") {
    const Workplace here("applied");
    edit::Document document = openDocument(here.file);
    const edit::Command agree = edit::agreePlate(document.plan(), "k4", "Ada", kNow);
    document.run(edit::movePlate(document.plan(), "k4", 1700, 1150));
    document.run(agree);
    CHECK(stateOf(document, "k4") == State::Agreed);
}

TEST_CASE("layers are shown, ghosted and hidden by a sentence") {
    const Workplace here("layers");
    edit::Document document = openDocument(here.file);
    document.run(edit::setLayerVisibility("furniture", plan::Visibility::Hidden));
    CHECK(document.undoName() == "Hide layer 'furniture'");
    CHECK(plan::findLayer(document.plan(), "furniture")->visibility == plan::Visibility::Hidden);
    CHECK(edit::setLayerVisibility("soft", plan::Visibility::Ghosted).name == "Ghost layer 'soft'");
    CHECK(edit::setLayerVisibility("soft", plan::Visibility::Shown).name == "Show layer 'soft'");
    REQUIRE(document.save());
    CHECK(plan::findLayer(readPlan(here.file), "furniture")->visibility == plan::Visibility::Hidden);
    document.undo();
    CHECK(plan::findLayer(document.plan(), "furniture")->visibility == plan::Visibility::Shown);
}

TEST_CASE("a layer that the plan lacks is added when its visibility is set") {
    edit::Document document;
    document.run(edit::setLayerVisibility("furniture", plan::Visibility::Hidden));
    REQUIRE(plan::findLayer(document.plan(), "furniture"));
}

TEST_CASE("commands about a plate that is not there change nothing") {
    const Workplace here("nobody");
    edit::Document document = openDocument(here.file);
    const std::string before = plan::write(document.plan());
    document.run(edit::agreePlate(document.plan(), "nobody", "Ada", kNow));
    document.run(edit::queryPlate(document.plan(), "nobody", "Ada", kNow, ""));
    document.run(edit::movePlate(document.plan(), "nobody", 1, 1));
    CHECK(plan::write(document.plan()) == before);
}
