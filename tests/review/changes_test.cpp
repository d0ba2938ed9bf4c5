// What changed between two states of a plan, in words an electrician sets out by.
#include "review/changes.hpp"

#include "small_house.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using Kind = review::PlateChange::Kind;

namespace {
std::vector<std::string> wordsOf(const plan::Plan& before, const plan::Plan& after) {
    std::vector<std::string> words;
    for (const auto& change : review::platesChanged(before, after))
        words.push_back(change.words);
    return words;
}
using Words = std::vector<std::string>;
} // namespace

TEST_CASE("a plate moved along its wall is told by right and left, up and down") {
    const plan::Plan before = smallHouse();
    plan::Plan after = before;
    CHECK(wordsOf(before, after).empty());
    after.plates[0].host.u_mm += 120;
    after.plates[0].host.v_mm += 50;
    CHECK(wordsOf(before, after) == Words{"K-04 moved 120 right, 50 up"});
    CHECK(wordsOf(after, before) == Words{"K-04 moved 120 left, 50 down"});
    CHECK(review::platesChanged(before, after).front().moved);
    // Less than is printed is no move; half a millimetre is printed.
    after.plates[0] = before.plates[0];
    after.plates[0].host.u_mm += 0.2;
    CHECK(wordsOf(before, after).empty());
    after.plates[0].host.u_mm += 0.3;
    CHECK(wordsOf(before, after) == Words{"K-04 moved 0.5 right"});
}

TEST_CASE("a plate moved to another wall is told by where it is now") {
    const plan::Plan before = smallHouse();
    plan::Plan after = before;
    after.plates[0].host.wall = "B";
    after.plates[0].host.u_mm = 300;
    CHECK(wordsOf(before, after) == Words{"K-04 moved to wall B of kitchen, at 300, 1150"});
    after.plates[0].host.kind = plan::Host::Kind::Floor;
    plan::Plan further = after;
    further.plates[0].host.v_mm -= 40;
    CHECK(wordsOf(after, further) == Words{"K-04 moved 40 south"});
}

TEST_CASE("new plates and those that are gone are told, the gone ones last") {
    const plan::Plan before = smallHouse();
    plan::Plan after = before;
    after.plates.erase(after.plates.begin());
    plan::Plate& added = after.plates.emplace_back(before.plates[1]);
    added.id = "k6";
    added.tag = "K-06";
    const auto changes = review::platesChanged(before, after);
    REQUIRE(changes.size() == 2);
    CHECK(changes[0].kind == Kind::Added);
    CHECK(changes[0].words == "K-06 is new on wall C of kitchen");
    CHECK(changes[0].before == nullptr);
    CHECK(changes[1].kind == Kind::Removed);
    CHECK(changes[1].words == "K-04 is gone from wall A of kitchen: no box there");
    CHECK(changes[1].after == nullptr);
}

TEST_CASE("what a plate is made of is told; notes, answers and symbols are not") {
    const plan::Plan before = smallHouse();
    plan::Plan after = before;
    plan::Plate& plate = after.plates[0];
    plate.note = "ask";
    plate.symbol_offset_mm = plan::Vec2{100, 100};
    after.agreements.emplace_back().plate = plate.id;
    CHECK(wordsOf(before, after).empty());
    plate.direction = plan::Direction::Vertical;
    plate.finish = "brass";
    plate.box_depth_mm = 61;
    plate.modules.pop_back();
    CHECK(wordsOf(before, after) == Words{"K-04 modules socket-f (were socket-f, switch-2way); now upright; "
                                          "finish now brass; box 61 deep"});
    CHECK_FALSE(review::platesChanged(before, after).front().moved);
}
