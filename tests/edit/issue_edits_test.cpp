// Issuing as an edit: one step, which can be undone.
#include "edit/issue_edits.hpp"

#include "small_rooms.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {
review::Particulars particulars() {
    review::Particulars made;
    made.date = "2026-05-02";
    made.by = "R. Fern";
    made.sheets = {{"E-01", "0a1b2c3d4e5f", {}}};
    return made;
}
} // namespace

TEST_CASE("issuing a set is one step that gives the project its letter and date, and can be undone") {
    plan::Plan plan = twoRooms();
    for (plan::Room& room : plan.rooms)
        room.floor_build_up = {{"screed", 65, {}}};
    const std::string before = plan::write(plan);
    edit::Document document(plan);
    const auto command = edit::issueSet(document.plan(), particulars());
    REQUIRE(command);
    document.run(*command);
    CHECK(document.undoName() == "Issue set A");
    REQUIRE(document.plan().issues.size() == 1);
    CHECK(document.plan().project.revision == "A");
    CHECK(document.plan().project.date == "2026-05-02");
    CHECK(review::issuedAs(document.plan()) == &document.plan().issues[0]);
    checkReadable(document.plan());
    const std::string issued = plan::write(document.plan());
    document.undo();
    CHECK(plan::write(document.plan()) == before);
    document.redo();
    CHECK(plan::write(document.plan()) == issued);
}

TEST_CASE("a set that can't be issued leaves the document as it was, with the reason") {
    const edit::Document document(twoRooms());
    const auto command = edit::issueSet(document.plan(), particulars());
    REQUIRE_FALSE(command);
    CHECK(command.error().starts_with("the floor build-up of Kitchen is not stated"));
}
