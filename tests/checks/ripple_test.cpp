// What a change breaks and mends, and margins: small plans worked out by hand.
#include "checks/ripple.hpp"

#include "checks/checks.hpp"
#include "checks/margins.hpp"

#include "../switching/small_switching.hpp"

#include <catch2/catch.hpp>

using namespace gangway;
using checks::Ripple;

namespace {
/// A wardrobe of 600 x 600 against wall A of the room (4000 x 3000), its left side at `left_mm`; sockets at
/// u 500, 1500 and 2500. Plates are 81 wide; 20 wanted beside furniture, 50 beside something tall (C2,
/// assumptions of the pack).
plan::Plan wardrobeAt(double left_mm) {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    addRoom(plan, "room", 0, 4000);
    for (const double u : {500.0, 1500.0, 2500.0}) {
        plan::Plate& plate =
            addPlate(plan, "s" + std::to_string(plan.plates.size() + 1), "room", "A", u, {"socket-f"});
        plate.host.v_mm = 300;
    }
    plan::Furniture piece;
    piece.id = "wardrobe";
    piece.kind = "wardrobe";
    piece.room = "room";
    piece.layer = plan::kLayerFurniture;
    piece.size = {600, 600, 2200};
    piece.at_mm = {left_mm + 300, 3000 - 300};
    plan.furniture.push_back(piece);
    return plan;
}

std::vector<plan::Finding> check(const plan::Plan& plan) {
    return checks::check(geometry::HouseIndex(plan), shipped(), packOf("international"));
}

std::vector<std::pair<Ripple::Change, std::string>> rippled(const plan::Plan& before,
                                                            const plan::Plan& after) {
    std::vector<std::pair<Ripple::Change, std::string>> said;
    for (const Ripple& ripple : checks::compare(check(before), check(after)))
        if (ripple.finding.rule == "covered-plate")
            said.emplace_back(ripple.change, ripple.finding.objects.front());
    return said;
}
} // namespace

TEST_CASE("a moved wardrobe: what it hides now fails, what it hid before passes") {
    CHECK(rippled(wardrobeAt(200), wardrobeAt(1200)) ==
          std::vector<std::pair<Ripple::Change, std::string>>{{Ripple::Change::NewlyFails, "s2"},
                                                              {Ripple::Change::NewlyPasses, "s1"}});
    CHECK(rippled(wardrobeAt(200), wardrobeAt(200)).empty());
}

TEST_CASE("a wardrobe that hides more of a plate than before makes it worse, less makes it better") {
    // s1 reaches from u 459.5 to 540.5: a side at 500 hides 40.5 of it, at 480 60.5.
    CHECK(rippled(wardrobeAt(500), wardrobeAt(480)) ==
          std::vector<std::pair<Ripple::Change, std::string>>{{Ripple::Change::Worse, "s1"}});
    CHECK(rippled(wardrobeAt(480), wardrobeAt(500)) ==
          std::vector<std::pair<Ripple::Change, std::string>>{{Ripple::Change::Better, "s1"}});
}

TEST_CASE("a margin is what is left to the first check that fails, and less than 0 when one does") {
    // The wardrobe stands from 1000 to 1600: s1 ends at 540.5, 459.5 away from it, 50 of which it keeps.
    // Left of s1 459.5 to the corner; up and down more: the wall's end comes first at 459.5, then 409.5.
    const plan::Plan plan = wardrobeAt(1000);
    const geometry::HouseIndex house(plan);
    const auto pack = packOf("international");
    const checks::Facts facts(house, shipped(), pack);
    const auto margins = checks::margins(facts);
    REQUIRE(margins.size() == 3);
    CHECK(margins[0].plate == "s1");
    // Lower edge 259.5 above the floor comes first.
    CHECK(margins[0].mm == Approx(259.5).margin(1e-6));
    CHECK(margins[1].mm < 0); // s2 is behind it
    CHECK(margins[1].object == "wardrobe");

    const checks::WallScene scene = checks::sceneOf(facts, plan.rooms.front(), 0);
    const checks::Point& point = facts.points().front();
    const auto picture = checks::marginPicture(facts, scene, point, 50);
    CHECK(picture.columns == 80);
    CHECK(picture.rows == 48);
    // The cell round u 525, v 325 and the one round u 1325, behind the wardrobe.
    CHECK(picture.at(10, 6) == Approx(325 - 40.5).margin(1e-3));
    CHECK(picture.at(26, 6) < 0);
}
