// Reach by country, where seated and short people live, and over counters. "Check value n" is a line of the
// project's trade facts; each limit has a case just inside and just outside.
#include "small_room.hpp"

#include <catch2/catch.hpp>

#include <functional>

using namespace gangway;
using plan::RoomUse;
using plan::Severity;

namespace {
struct Where {
    double u = 1000;
    double v = 300;
    std::vector<std::string> modules = {"socket-f"};
};

plan::Plan withPlate(const Where& where, bool accessible = false) {
    plan::Plan plan = roomOf(4000, 3000, RoomUse::Unstated);
    plan.accessible = accessible;
    socketOn(plan, "A", where.u, where.v, where.modules);
    return plan;
}

bool speaks(const plan::Plan& plan, const std::string& pack, const std::string& rule = "reach") {
    return !found(plan, pack, rule).empty();
}
/// What is said of a socket at 300 in England.
plan::Finding lowSocket(const std::function<void(plan::Plan&)>& prepare) {
    plan::Plan plan = withPlate({1000, 300});
    prepare(plan);
    const auto findings = found(plan, "gb", "reach");
    REQUIRE_FALSE(findings.empty());
    return findings[0];
}
} // namespace

TEST_CASE("reach in England is 450 to 1200 to the centre, whatever the plate's edge") {
    // Check values 30 and 32, Approved Document M vol. 1, 1.18: a plate of 81 at 450 begins at 409.5.
    for (const auto& [v, out] : {std::pair{449.0, true}, std::pair{450.0, false}, std::pair{1200.0, false},
                                 std::pair{1201.0, true}}) {
        INFO(v);
        CHECK(speaks(withPlate({1000, v}), "gb") == out);
        CHECK_FALSE(speaks(withPlate({1000, v}), "international"));
    }
    CHECK(found(withPlate({1000, 449}), "gb", "reach")[0].severity == Severity::Hint);
}

TEST_CASE("a corner counts in England where seated people live, in Scotland always, elsewhere not") {
    // Check value 31: M4(2) 2.30: 299 fails, 300 passes; M4(1): nothing; Scotland 4.8.5: 350, both fail.
    for (const auto& [u, out] : {std::pair{299.0, true}, std::pair{300.0, false}}) {
        INFO(u);
        CHECK(speaks(withPlate({u, 450}, true), "gb", "corner-gap") == out);
        CHECK_FALSE(speaks(withPlate({u, 450}), "gb", "corner-gap"));
        CHECK(speaks(withPlate({u, 450}), "gb-sct", "corner-gap"));
        CHECK(found(withPlate({u, 450}, true), "gb-sct", "corner-gap").size() == 1);
        CHECK_FALSE(speaks(withPlate({u, 450}), "international", "corner-gap"));
    }
    CHECK(speaks(withPlate({349, 450}), "gb-sct", "corner-gap"));
    CHECK_FALSE(speaks(withPlate({350, 450}), "gb-sct", "corner-gap"));
    const auto right = found(withPlate({4000 - 299, 450}, true), "gb", "corner-gap");
    REQUIRE(right.size() == 1);
    CHECK(right[0].severity == Severity::Warn);
    REQUIRE(right[0].move);
    CHECK(right[0].move->u_mm == Approx(4000 - 300));
}

TEST_CASE("reach in the United States is 15 to 48 inches exactly, where accessible") {
    // Check value 16, ADA 2010, 308.2.1: 375 fails, 385 passes, 1215 passes, 1225 fails.
    for (const auto& [v, out] : {std::pair{375.0, true}, std::pair{380.9, true}, std::pair{381.0, false},
                                 std::pair{385.0, false}, std::pair{1215.0, false}, std::pair{1219.2, false},
                                 std::pair{1219.3, true}, std::pair{1225.0, true}}) {
        INFO(v);
        CHECK(speaks(withPlate({1000, v}, true), "us") == out);
        CHECK_FALSE(speaks(withPlate({1000, v}), "us"));
    }
    CHECK(found(withPlate({1000, 375}, true), "us", "reach")[0].severity == Severity::Warn);
}

TEST_CASE("over a counter the reach is shorter the deeper it is") {
    // Check value 15, ADA 2010, 308.2.2: to 20 in 48 in, to 25 in 44 in = 1117.6, beyond that nothing.
    const auto over = [](double depth, double v) {
        plan::Plan plan = withPlate({1000, v}, true);
        if (depth > 0) pieceAt(plan, "worktop", 500, {1000, depth, 40}, 800);
        return found(plan, "us", "reach");
    };
    CHECK(over(0, 1215).empty());
    CHECK(over(508, 1215).empty());
    REQUIRE(over(550, 1215).size() == 1);
    CHECK(*over(550, 1215)[0].limit_mm == Approx(1117.6));
    REQUIRE(over(550, 1215)[0].move);
    CHECK(over(550, 1215)[0].move->v_mm == 1117);
    CHECK(over(550, 1117.6).empty());
    CHECK(over(550, 1117.7).size() == 1);
    CHECK(over(635, 1115).empty());
    REQUIRE(over(640, 1115).size() == 1);
    CHECK(*over(640, 1115)[0].value_mm == Approx(640));
}

TEST_CASE("without a country the reach of seated and short people is 400 to 1200, and said once") {
    // C31; assumption of ours, no source.
    CHECK(speaks(withPlate({1000, 399}, true), "international"));
    CHECK_FALSE(speaks(withPlate({1000, 400}, true), "international"));
    CHECK_FALSE(speaks(withPlate({1000, 1200}, true), "international"));
    CHECK(speaks(withPlate({1000, 1201}, true), "international"));
    CHECK_FALSE(speaks(withPlate({1000, 399}), "international"));
    CHECK(found(withPlate({1000, 449}, true), "gb", "reach").size() == 1);
}

TEST_CASE("in France controls lie between 900 and 1300, sockets between 50 and 1300") {
    // Check value 36, NF C 15-100 10.1.3.8 and title 10.
    for (const auto& [v, out] : {std::pair{899.0, true}, std::pair{900.0, false}, std::pair{1300.0, false},
                                 std::pair{1301.0, true}}) {
        INFO(v);
        CHECK(speaks(withPlate({1000, v, {"switch-1way"}}), "fr") == out);
    }
    CHECK(speaks(withPlate({1000, 49}), "fr", "socket-low"));
    CHECK_FALSE(speaks(withPlate({1000, 50}), "fr", "socket-low"));
    CHECK_FALSE(speaks(withPlate({1000, 899}), "fr"));
    CHECK_FALSE(speaks(withPlate({1000, 1300}), "fr"));
    CHECK(speaks(withPlate({1000, 1301}), "fr"));
}

TEST_CASE("in France a socket's axis is 80 to 250 above a worktop, in Scotland 150 or more") {
    // Check value 37, NF C 15-100; Technical Handbook 4.8.5, from memory: the top is at 900.
    const auto over = [](double v, const char* pack, const char* rule = "reach") {
        plan::Plan plan = withPlate({1000, v});
        pieceAt(plan, "worktop", 500, {1000, 600, 40}, 860);
        return speaks(plan, pack, rule);
    };
    CHECK_FALSE(over(1150, "fr", "worktop-high"));
    CHECK(over(1160, "fr", "worktop-high"));
    CHECK(over(970, "fr"));
    CHECK(over(979, "fr"));
    CHECK_FALSE(over(980, "fr"));
    CHECK(over(1049, "gb-sct"));
    CHECK_FALSE(over(1050, "gb-sct"));
    CHECK_FALSE(over(970, "gb"));
}

TEST_CASE("in Italy a socket's axis is at 175 or more, in Scotland a light switch at 900 to 1100") {
    // Check value 38, CEI 64-8; Technical Handbook 4.8.5, from memory.
    CHECK(speaks(withPlate({1000, 174}), "it", "socket-low"));
    CHECK_FALSE(speaks(withPlate({1000, 175}), "it", "socket-low"));
    for (const auto& [v, out] :
         {std::pair{899.0, true}, std::pair{900.0, false}, std::pair{1100.0, false}, std::pair{1101.0, true}})
        CHECK(speaks(withPlate({1000, v, {"switch-1way"}}), "gb-sct") == out);
}

TEST_CASE("reach: the remedy is an edit where the new height breaks nothing") {
    const plan::Finding free = lowSocket([](plan::Plan&) {});
    REQUIRE(free.move);
    CHECK(free.move->v_mm == 450);
    CHECK(free.move->u_mm == 1000);
    CHECK_THAT(free.remedy, Catch::StartsWith("Raise it by 150 mm, to 450"));
    // A shelf at 450; 30 above a top, where 100 are usual; another plate; a neighbour whose row it would miss
    // by 10.
    const plan::Finding shelf =
        lowSocket([](plan::Plan& p) { pieceAt(p, "shelf", 500, {1000, 250, 25}, 440); });
    CHECK_FALSE(shelf.move);
    CHECK_FALSE(lowSocket([](plan::Plan& p) { pieceAt(p, "worktop", 500, {1000, 600, 40}, 340); }).move);
    CHECK_FALSE(lowSocket([](plan::Plan& p) { socketOn(p, "A", 1000, 450); }).move);
    CHECK_FALSE(lowSocket([](plan::Plan& p) { socketOn(p, "A", 1500, 460); }).move);
    CHECK(lowSocket([](plan::Plan& p) { socketOn(p, "A", 1500, 450); }).move);
}

TEST_CASE("reach is not asked of what is put away or touched once") {
    plan::Plan hidden = withPlate({1000, 100}, true);
    hidden.plates[0].sight = plan::Sight::KeepHidden;
    CHECK_FALSE(speaks(hidden, "gb"));
    plan::Plan once = withPlate({1000, 100}, true);
    once.plates[0].use = plan::UseRate::Once;
    CHECK_FALSE(speaks(once, "gb"));
}
