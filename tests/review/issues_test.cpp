// Issues: what is frozen, when it is refused, what the plan was, and the letters of revisions.
#include "review/issues.hpp"

#include "plan/io.hpp"
#include "review/changes.hpp"
#include "review/review.hpp"
#include "small_house.hpp"

#include <catch2/catch.hpp>

using namespace gangway;

namespace {
review::Particulars particulars(const std::string& date = "2026-05-02") {
    review::Particulars made;
    made.date = date;
    made.by = "R. Fern";
    made.note = "for first fix";
    made.sheets = {{"E-01", "0a1b2c3d4e5f", {}}, {"E-02", "aaaaaaaaaaaa", {}}};
    return made;
}

plan::Plan stated() {
    plan::Plan plan = smallHouse();
    plan.rooms[0].name = "Kitchen";
    plan.rooms[0].floor_build_up = {{"screed", 65, {}}, {"tile", 10, {}}};
    return plan;
}

/// The plan after it was issued, as the command leaves it.
plan::Plan issued(plan::Plan plan, const review::Particulars& with) {
    auto issue = review::freeze(plan, with);
    if (!issue) throw std::runtime_error(issue.error());
    plan.project.revision = issue->letter;
    plan.project.date = issue->date;
    plan.issues.push_back(std::move(*issue));
    return plan;
}
using Words = std::vector<std::string>;
} // namespace

TEST_CASE("revision letters come in the order in which they can't be mistaken") {
    // drawing-standards 6, row 64.
    std::string letter;
    std::string all;
    for (int i = 0; i < 20; ++i) {
        letter = review::letterAfter(letter);
        all += letter + " ";
    }
    CHECK(all == "A B C D E F G H J K L M N P R T U V W Y ");
    CHECK(review::letterAfter("Y") == "AA"); // ISO 7200 has room for two characters
    CHECK(review::letterAfter("AA") == "AB");
    CHECK(review::letterAfter("AY") == "BA");
    CHECK(review::letterAfter("I") == "A");
}

TEST_CASE("the first issue keeps the letter that the project bears, the next gets the one after") {
    plan::Plan plan = stated();
    CHECK(review::nextLetter(plan) == "A");
    plan.project.revision = "C";
    CHECK(review::nextLetter(plan) == "C");
    plan = issued(plan, particulars());
    CHECK(plan.issues.back().letter == "C");
    CHECK(review::nextLetter(plan) == "D");
}

TEST_CASE("no set is issued while a floor that boxes are set out from has no build-up") {
    plan::Plan plan = stated();
    plan.rooms[0].floor_build_up.clear();
    plan::Room empty = plan.rooms[0];
    empty.id = "void";
    empty.name = "Void";
    plan.rooms.push_back(empty); // nothing in it: its floor need not be known
    const auto refused = review::freeze(plan, particulars());
    REQUIRE_FALSE(refused);
    CHECK(refused.error() == "the floor build-up of Kitchen is not stated, and at first fix heights are "
                             "counted from the slab; give "
                             "its \"floorBuildUp\", then issue the set");
    // A wall lamp has a box too.
    plan.rooms[0].floor_build_up = {{"screed", 65, {}}};
    plan.luminaires[0].room = "void";
    CHECK(review::freeze(plan, particulars()));
    plan.luminaires[0].host.kind = plan::Host::Kind::Wall;
    plan.luminaires[0].host.wall = "A";
    CHECK(review::roomsWithoutFloor(plan) == Words{"Void"});
}

TEST_CASE("an issue needs a date that is one, not before the last, and a name") {
    for (const char* date : {"", "2026-5-2", "2026-02-30", "02.05.2026", "2026-13-01", "2026-05-02 "}) {
        INFO(date);
        const auto refused = review::freeze(stated(), particulars(date));
        REQUIRE_FALSE(refused);
        CHECK(refused.error() ==
              "'" + std::string(date) +
                  "' is no date; give the date of issue as YYYY-MM-DD, such as 2026-05-02");
    }
    CHECK(review::freeze(stated(), particulars("2028-02-29")));
    plan::Plan plan = issued(stated(), particulars());
    plan.plates[0].host.u_mm += 10;
    const auto early = review::freeze(plan, particulars("2026-05-01"));
    REQUIRE_FALSE(early);
    CHECK(early.error() == "issue A is of 2026-05-02, so the next can't be of 2026-05-01; give a later date");
    auto nobody = particulars();
    nobody.by.clear();
    CHECK_FALSE(review::freeze(stated(), nobody));
}

TEST_CASE("nothing is issued twice, and an answer is no change") {
    plan::Plan plan = issued(stated(), particulars());
    const auto again = review::freeze(plan, particulars());
    REQUIRE_FALSE(again);
    CHECK(again.error() == "nothing has changed since issue A of 2026-05-02: its sheets still hold");
    plan.agreements.push_back(review::answer(plan, plan.plates[0], plan::Agreement::Answer::Agree, "R. Fern",
                                             "2026-05-03T10:00:00Z", ""));
    CHECK_FALSE(review::freeze(plan, particulars()));
    // From another datum all numbers are others.
    auto from_slab = particulars();
    from_slab.level = plan::Issue::Level::Slab;
    CHECK(review::freeze(plan, from_slab));
    plan.openings[0].left_mm += 50;
    CHECK(review::freeze(plan, particulars()));
}

TEST_CASE("what a plan was at an issue is told apart from what it is now, box by box") {
    const plan::Plan first = issued(stated(), particulars());
    plan::Plan now = first;
    CHECK(review::changesInWords(review::stateAt(now, now.issues[0]), now).empty());
    now.plates[0].host.u_mm += 120;
    now.plates[0].host.v_mm += 50;
    now.plates.erase(now.plates.begin() + 1);
    now.luminaires[0].host.u_mm += 40;
    now.rooms[0].floor_build_up[0].thickness_mm = 80;
    const plan::Plan before = review::stateAt(now, now.issues[0]);
    CHECK(before.project.revision == "A");
    CHECK(before.project.date == "2026-05-02");
    CHECK(review::changesInWords(before, now) ==
          Words{"Kitchen: floor build-up 75 -> 90: heights above the slab change by +15",
                "K-04 moved 120 right, 50 up", "K-05 is gone from wall C of Kitchen: no box there",
                "pendant moved 40 east"});
}

TEST_CASE("what is frozen comes back through the file as it was") {
    plan::Plan plan = stated();
    plan.plates[0].tolerance = {100, 0, {}};
    plan.plates[1].format = "rect-86"; // not what most plates of the room have
    plan.plates[1].barrier = true;
    plan.plates[1].box_depth_mm = 61;
    plan.plates[1].feed = plan::Feed::Above;
    plan = issued(plan, particulars());
    const auto again = plan::read(plan::write(plan));
    REQUIRE(again);
    CHECK(again->warnings.empty());
    CHECK(review::fingerprint(again->plan.issues[0]) == review::fingerprint(plan.issues[0]));
    const plan::Plan before = review::stateAt(again->plan, again->plan.issues[0]);
    CHECK(review::platesChanged(before, plan).empty());
    CHECK(review::issuedAs(again->plan) == &again->plan.issues[0]);
}

TEST_CASE("a fingerprint changes with whatever an issue holds") {
    const plan::Issue issue = *review::freeze(stated(), particulars());
    const std::string print = review::fingerprint(issue);
    CHECK(print.size() == 16);
    CHECK(review::fingerprint(issue) == print);
    plan::Issue other = issue;
    other.rooms[0].plates[0].plate.host.u_mm += 1;
    CHECK(review::fingerprint(other) != print);
    other = issue;
    other.sheets[1].print = "bbbbbbbbbbbb";
    CHECK(review::fingerprint(other) != print);
    other = issue;
    other.date = "2026-05-03";
    CHECK(review::fingerprint(other) != print);
}

TEST_CASE("sheets are compared with the last issue, or with the one before when nothing has changed since") {
    plan::Plan plan = stated();
    CHECK(review::comparedWith(plan) == nullptr);
    plan = issued(plan, particulars());
    CHECK(review::comparedWith(plan) == nullptr);
    CHECK(review::stamped(plan).project.revision == "A");
    plan.plates[0].host.u_mm += 120;
    CHECK(review::comparedWith(plan)->letter == "A");
    CHECK(review::stamped(plan).project.revision == "after A");
    CHECK(review::stamped(plan).project.date.empty());
    CHECK(review::markLetter(review::stamped(plan)) == "B");
    plan = issued(plan, particulars("2026-06-01"));
    CHECK(review::comparedWith(plan)->letter == "A");
    CHECK(review::markLetter(plan) == "B");
    CHECK(review::findIssue(plan, "B") == &plan.issues[1]);
    CHECK(review::findIssue(plan, "C") == nullptr);
}

TEST_CASE("a sheet bears the letter of the issue in which it last changed") {
    plan::Plan plan;
    const auto add = [&](const char* letter, const char* first, const char* second) {
        plan::Issue issue;
        issue.letter = letter;
        issue.sheets = {{"E-01", first, {}}, {"E-02", second, {}}};
        plan.issues.push_back(issue);
    };
    add("A", "one", "two");
    add("B", "one", "2");
    add("C", "one", "2");
    CHECK(review::sheetRevision(plan, "E-01", "one") == "A");
    CHECK(review::sheetRevision(plan, "E-02", "2") == "B");
    CHECK(review::sheetRevision(plan, "E-02", "two") == ""); // not what the last issue shows
    CHECK(review::sheetRevision(plan, "E-03", "one") == "");
}
