#include "review/review.hpp"
#include "small_house.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using Answer = plan::Agreement::Answer;
using review::State;

namespace {

void give(plan::Plan& plan, std::size_t plate, Answer answer, const std::string& note = "") {
    plan.agreements.push_back(
        review::answer(plan, plan.plates[plate], answer, "Ada", "2026-03-01T19:30:00Z", note));
}

} // namespace

TEST_CASE("a plate is open until it is answered") {
    plan::Plan plan = smallHouse();
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Open);
    give(plan, 0, Answer::Agree);
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Agreed);
    CHECK(review::stateOf(plan, plan.plates[1]) == State::Open);
}

TEST_CASE("an answer keeps who, when, what was said and what was answered") {
    const plan::Plan plan = smallHouse();
    const auto agreement =
        review::answer(plan, plan.plates[0], Answer::Query, "Ada", "2026-03-01T19:30:00Z", "lower?");
    CHECK(agreement.plate == "k4");
    CHECK(agreement.answer == Answer::Query);
    CHECK(agreement.by == "Ada");
    CHECK(agreement.at == "2026-03-01T19:30:00Z");
    CHECK(agreement.note == "lower?");
    CHECK(agreement.fingerprint == review::fingerprint(plan, plan.plates[0]));
    CHECK(agreement.fingerprint.size() == 16);
}

TEST_CASE("the latest answer counts") {
    plan::Plan plan = smallHouse();
    give(plan, 0, Answer::Agree);
    give(plan, 0, Answer::Query, "higher?");
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Queried);
    give(plan, 0, Answer::Agree);
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Agreed);
}

TEST_CASE("moving an agreed plate reopens it, moving it back makes it agreed again") {
    // Moved back it is again what was agreed: its fingerprint matches again, so the answer counts again.
    plan::Plan plan = smallHouse();
    give(plan, 0, Answer::Agree);
    plan.plates[0].host.u_mm = 1600;
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Reopened);
    plan.plates[0].host.u_mm = 1500;
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Agreed);
}

TEST_CASE("a queried plate that moves is reopened too") {
    plan::Plan plan = smallHouse();
    give(plan, 0, Answer::Query, "too low");
    plan.plates[0].host.v_mm = 1200;
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Reopened);
}

TEST_CASE("moving an unrelated plate leaves an agreement alone") {
    plan::Plan plan = smallHouse();
    give(plan, 0, Answer::Agree);
    plan.plates[1].host.u_mm = 700;
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Agreed);
}

TEST_CASE("changing the note of an answer changes nothing about it") {
    plan::Plan plan = smallHouse();
    give(plan, 0, Answer::Agree, "fine");
    plan.agreements[0].note = "fine, said both";
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Agreed);
}

TEST_CASE("re-hanging a door reopens the plates in its wall and no others") {
    plan::Plan plan = smallHouse();
    give(plan, 0, Answer::Agree);
    give(plan, 1, Answer::Agree);
    plan.openings[0].hinge = plan::Side::Right; // door-1, in wall A as plate k4
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Reopened);
    CHECK(review::stateOf(plan, plan.plates[1]) == State::Agreed);
}

TEST_CASE("a door of the next room in the same wall counts as in the wall") {
    plan::Plan plan = smallHouse();
    plan::Room hall = plan.rooms[0];
    hall.id = "hall";
    hall.letter = "H";
    hall.outline = {
        {0, 6000}, {6200, 6000}, {6200, 4326}, {0, 4326}}; // 100 of wall and 13 of plaster each side
    plan.rooms.push_back(hall);
    plan::Opening door = plan.openings[0];
    door.id = "hall-door";
    door.room = "hall";
    door.wall = "C";
    door.left_mm = 5000; // of 6200: 300 to 1200 along the kitchen's wall A
    door.joins = "kitchen";
    plan.openings.push_back(door);
    give(plan, 0, Answer::Agree);
    CHECK(review::fingerprintText(plan, plan.plates[0]).find("door.hall-door.in=hall/C\n") !=
          std::string::npos);
    plan.openings.back().swing = plan::Swing::Out;
    CHECK(review::stateOf(plan, plan.plates[0]) == State::Reopened);
}

TEST_CASE("states and fingerprints in one go are those one by one, and states are counted") {
    plan::Plan plan = smallHouse();
    plan.plates.push_back(plan.plates[1]);
    plan.plates.back().id = "k6";
    plan.plates.push_back(plan.plates[1]);
    plan.plates.back().id = "k7";
    give(plan, 0, Answer::Query);
    give(plan, 0, Answer::Agree);
    give(plan, 1, Answer::Query);
    give(plan, 2, Answer::Agree);
    plan.plates[2].host.v_mm += 5;
    plan.agreements.push_back({"no-such-plate", Answer::Agree, "", "", "", "", {}});

    const auto states = review::states(plan);
    const auto prints = review::fingerprints(plan);
    REQUIRE(states.size() == 4);
    REQUIRE(prints.size() == 4);
    for (std::size_t i = 0; i < states.size(); ++i) {
        CHECK(states[i] == review::stateOf(plan, plan.plates[i]));
        CHECK(prints[i] == review::fingerprint(plan, plan.plates[i]));
    }
    const auto count = review::count(plan);
    CHECK(count.open == 1);
    CHECK(count.agreed == 1);
    CHECK(count.queried == 1);
    CHECK(count.reopened == 1);
}

TEST_CASE("each state has its word") {
    CHECK(review::word(State::Open) == "open");
    CHECK(review::word(State::Agreed) == "agreed");
    CHECK(review::word(State::Queried) == "queried");
    CHECK(review::word(State::Reopened) == "reopened");
}
