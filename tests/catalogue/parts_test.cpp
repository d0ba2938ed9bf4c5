#include "shipped_catalogue.hpp"

#include "catalogue/parts.hpp"

using namespace gangway;
using catalogue::Part;

namespace {

std::vector<Part> partsOf(const plan::Plate& plate) {
    return catalogue::parts(shippedCatalogue(), plate, catalogue::compose(shippedCatalogue(), plate));
}

} // namespace

TEST_CASE("parts of a plate are its frame, modules, blanks and boxes, counted") {
    auto plate = plateOf("round-71", {"socket-f", "switch-1way", "socket-f"}, 4);
    plate.finish = "graphite";
    plate.modules[1].finish = "brass";
    CHECK(partsOf(plate) ==
          std::vector<Part>{{Part::Kind::Frame, "", "frame, round boxes, pitch 71, 4 gangs", "graphite", 1},
                            {Part::Kind::Module, "SO-F", "socket outlet, type F", "graphite", 2},
                            {Part::Kind::Module, "SW1", "switch, one-way", "brass", 1},
                            {Part::Kind::Blank, "", "blank", "graphite", 1},
                            {Part::Kind::Box, "", "box, 68 dia, 47 deep", "", 4}});
}

TEST_CASE("a barrier and a box of another depth are parts too") {
    auto plate = plateOf("rect-86", {"socket-g", "data-rj45"});
    plate.barrier = true;
    plate.box_depth_mm = 47;
    const auto list = partsOf(plate);
    REQUIRE(list.size() == 5);
    CHECK(list[0].name == "frame, rectangular boxes, plates 86 and 146 x 86, 2 gangs");
    CHECK(list[3].name == "box, 133 x 72, 47 deep");
    CHECK(list[4].kind == Part::Kind::Barrier);
}

TEST_CASE("boxes are as deep as stated, else as usual, else the next made depth that the modules need") {
    const auto depthOf = [](const plan::Plate& plate) {
        return catalogue::boxDepth(plate, catalogue::compose(shippedCatalogue(), plate));
    };
    // formats-de.json: 47 is usual; a socket with a charger needs 61.
    auto plate = plateOf("round-71", {"socket-f"});
    CHECK(depthOf(plate) == 47);
    plate.box_depth_mm = 40;
    CHECK(depthOf(plate) == 40);
    const auto deep = plateOf("round-71", {"socket-f-usb"});
    CHECK(depthOf(deep) == 61);
    CHECK(partsOf(deep).back().name == "box, 68 dia, 61 deep");
    // formats-fr.json: 30, 40, 50 and 60 are made and 40 is usual; a key card switch needs 47.
    CHECK(depthOf(plateOf("round-fr", {"key-card"})) == 50);
}

TEST_CASE("an unknown module is listed by what the plan calls it") {
    const auto list = partsOf(plateOf("round-71", {"socket-from-tomorrow"}));
    REQUIRE(list.size() == 3);
    CHECK(list[1] == Part{Part::Kind::Unknown, "socket-from-tomorrow", "unknown module", "white", 1});
}

TEST_CASE("parts of several plates add up") {
    const auto one = partsOf(plateOf("round-71", {"socket-f", "switch-1way"}));
    const auto two = partsOf(plateOf("round-71", {"socket-f", "socket-f"}));
    const auto all = catalogue::together({one, two});
    REQUIRE(all.size() == 4);
    CHECK(all[0].count == 2); // frames of two gangs
    CHECK(all[1].code == "SO-F");
    CHECK(all[1].count == 3);
    CHECK(all[2].count == 1);
    CHECK(all[3].kind == Part::Kind::Box);
    CHECK(all[3].count == 4);
}
