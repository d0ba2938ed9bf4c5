#include "shipped_catalogue.hpp"

#include <algorithm>

using namespace gangway;
using catalogue::compose;

namespace {

bool mentions(const std::vector<std::string>& problems, const std::string& text) {
    return std::ranges::any_of(
        problems, [&](const std::string& problem) { return problem.find(text) != std::string::npos; });
}

} // namespace

TEST_CASE("one or two switches share a single plate, three or four a double one") {
    // A four-gang switch fits the two-gang box: trade page.
    const double widths_mm[] = {86, 86, 146, 146};
    for (std::size_t switches = 1; switches <= 4; ++switches) {
        const auto plate = compose(shippedCatalogue(),
                                   plateOf("rect-86", std::vector<std::string>(switches, "switch-1way")));
        CHECK(plate.width_mm == widths_mm[switches - 1]);
        CHECK(plate.problems.empty());
        REQUIRE(plate.gangs.size() == switches);
        for (std::size_t i = 0; i < switches; ++i) {
            const auto& gang = plate.gangs[i];
            CHECK(gang.module_number == static_cast<int>(i) + 1);
            // Symmetric about the middle, side by side, within the plate.
            CHECK(gang.centre_mm.x == Approx(-plate.gangs[switches - 1 - i].centre_mm.x).margin(1e-9));
            if (i > 0) CHECK(gang.centre_mm.x - plate.gangs[i - 1].centre_mm.x >= gang.width_mm - 1e-9);
            CHECK(std::abs(gang.centre_mm.x) + gang.width_mm / 2 < plate.width_mm / 2);
        }
    }
}

TEST_CASE("five switches are more than a rectangular plate has") {
    const auto plate =
        compose(shippedCatalogue(), plateOf("rect-86", std::vector<std::string>(5, "switch-1way")));
    CHECK(mentions(plate.problems, "3 gangs are more than a plate of format 'rect-86' has; at most 2"));
    CHECK(plate.gangs.size() == 5);
}

TEST_CASE("a socket and two switches share a double plate without overlapping") {
    for (const auto& modules : {std::vector<std::string>{"socket-g", "switch-1way", "switch-2way"},
                                std::vector<std::string>{"switch-1way", "switch-2way", "socket-g"}}) {
        const auto plate = compose(shippedCatalogue(), plateOf("rect-86", modules));
        CHECK(plate.width_mm == 146);
        CHECK(plate.problems.empty());
        REQUIRE(plate.gangs.size() == 3);
        for (std::size_t i = 1; i < 3; ++i) {
            const auto& left = plate.gangs[i - 1];
            const auto& right = plate.gangs[i];
            CHECK(left.centre_mm.x + left.width_mm / 2 <= right.centre_mm.x - right.width_mm / 2 + 1e-9);
        }
    }
}

TEST_CASE("a double module spans its gangs") {
    const auto plate = compose(shippedCatalogue(), plateOf("round-71", {"socket-g-double", "switch-1way"}));
    REQUIRE(plate.gangs.size() == 2);
    CHECK(plate.width_mm == 223);
    CHECK(plate.gangs[0].centre_mm.x == Approx(-35.5));
    CHECK(plate.gangs[0].width_mm == Approx(55 + 71));
    CHECK(plate.gangs[1].centre_mm.x == Approx(71));
    CHECK(plate.boxes.size() == 3);
}

TEST_CASE("gangs without a module are blanks, and a plate without modules has one") {
    const auto plate = compose(shippedCatalogue(), plateOf("round-71", {"socket-f"}, 3));
    REQUIRE(plate.gangs.size() == 3);
    CHECK(plate.gangs[0].module_number == 1);
    CHECK(plate.gangs[2].module == nullptr);
    CHECK(plate.gangs[2].module_number == 0);
    CHECK(plate.gangs[2].centre_mm.x == Approx(71));
    CHECK(plate.problems.empty());
    CHECK(compose(shippedCatalogue(), plateOf("round-71", {})).gangs.size() == 1);
}

TEST_CASE("fewer gangs than the modules take is said") {
    const auto plate =
        compose(shippedCatalogue(), plateOf("round-71", {"socket-f", "socket-f", "socket-f"}, 1));
    CHECK(plate.width_mm == 223);
    CHECK(plate.problems == std::vector<std::string>{"the plate has 1 gang but its modules take 3"});
}

TEST_CASE("unknown words name the nearest known one") {
    auto plate = plateOf("round-17", {"sockt-f"});
    plate.finish = "whitee";
    const auto composed = compose(shippedCatalogue(), plate);
    CHECK(mentions(composed.problems,
                   "plate format 'round-17' is not in the catalogue; the nearest is 'round-71'"));
    CHECK(mentions(composed.problems, "module 'sockt-f' is not in the catalogue; the nearest is 'socket-f'"));
    CHECK(mentions(composed.problems, "finish 'whitee' is not in the catalogue; the nearest is 'white'"));
    CHECK(composed.width_mm == 81);
    CHECK(composed.finish == "white");
    REQUIRE(composed.gangs.size() == 1);
    CHECK(composed.gangs[0].module == nullptr);
    CHECK(composed.gangs[0].module_number == 1);
    CHECK(composed.gangs[0].unknown);
    CHECK(composed.gangs[0].label == "sockt-f");
}

TEST_CASE("an unknown module keeps its place and its text among the others") {
    auto plate = plateOf("round-71", {"socket-f", "socket-from-tomorrow", "switch-1way"});
    plate.modules[1].label = "kettle";
    const auto composed = compose(shippedCatalogue(), plate);
    REQUIRE(composed.gangs.size() == 3);
    CHECK_FALSE(composed.gangs[0].unknown);
    CHECK(composed.gangs[1].unknown);
    CHECK(composed.gangs[1].module_number == 2);
    CHECK(composed.gangs[1].label == "socket-from-tomorrow");
    CHECK(composed.gangs[1].centre_mm == plan::Vec2{0, 0});
    CHECK(composed.width_mm == 223);
    const auto blank = compose(shippedCatalogue(), plateOf("round-71", {"socket-f"}, 2));
    CHECK_FALSE(blank.gangs[1].unknown); // a gang left empty is not unknown
}

TEST_CASE("a plate without a format is drawn and said") {
    const auto composed = compose(shippedCatalogue(), plateOf("", {"socket-f"}));
    CHECK(mentions(composed.problems, "no plate format is chosen"));
    CHECK(composed.format->id == "round-71");
    CHECK(composed.width_mm == 81);
    CHECK(compose(catalogue::Catalogue{}, plateOf("", {})).gangs.size() == 1);
}

TEST_CASE("a dimmer wants a deep round box") {
    // 40 to 47 is standard, 61 to 68 deep for dimmers and electronics: trade page.
    auto plate = plateOf("round-71", {"dimmer-rotary"});
    CHECK(mentions(compose(shippedCatalogue(), plate).problems, "needs a box 61 mm deep; this one is 47 mm"));
    plate.box_depth_mm = 61;
    const auto deep = compose(shippedCatalogue(), plate);
    CHECK(deep.problems.empty());
    CHECK(deep.boxes[0].spec.depth_mm == 61);
    // 35 is what rectangular boxes for dimmers have: trade body's page.
    CHECK(compose(shippedCatalogue(), plateOf("rect-86", {"dimmer-rotary"})).problems.empty());
}

TEST_CASE("data and mains in one shared box is said, in boxes of their own it is not") {
    CHECK(mentions(compose(shippedCatalogue(), plateOf("rect-86", {"socket-g", "data-rj45"})).problems,
                   "share one box without a barrier"));
    CHECK(compose(shippedCatalogue(), plateOf("round-71", {"socket-f", "data-rj45"})).problems.empty());
    CHECK(compose(shippedCatalogue(), plateOf("rect-86", {"data-rj45", "tv"})).problems.empty());
    CHECK(compose(shippedCatalogue(), plateOf("rect-86", {"blank", "tv"})).problems.empty());
}

TEST_CASE("plates that are not made to stack say so, square ones need not") {
    auto plate = plateOf("rect-86", {"socket-g-double"});
    plate.direction = plan::Direction::Vertical;
    const auto composed = compose(shippedCatalogue(), plate);
    CHECK(mentions(composed.problems, "do not stack upwards"));
    CHECK(composed.width_mm == 146);
    auto single = plateOf("rect-86", {"socket-g"});
    single.direction = plan::Direction::Vertical;
    CHECK(compose(shippedCatalogue(), single).problems.empty());
}

TEST_CASE("a module's own finish wins over the plate's, and labels are kept") {
    auto plate = plateOf("round-71", {"socket-f", "switch-1way"});
    plate.finish = "graphite";
    plate.modules[1].finish = "brass";
    plate.modules[1].label = "landing";
    const auto composed = compose(shippedCatalogue(), plate);
    CHECK(composed.finish == "graphite");
    CHECK(composed.gangs[0].finish == "graphite");
    CHECK(composed.gangs[1].finish == "brass");
    CHECK(composed.gangs[1].label == "landing");
}

TEST_CASE("no plate of any format and any module puts a gang outside its outline") {
    const auto& all = shippedCatalogue();
    for (const auto& format : all.formats)
        for (const auto& module : all.modules)
            for (int count = 1; count <= format.max_gangs; ++count) {
                const auto plate = compose(
                    all,
                    plateOf(format.id, std::vector<std::string>(static_cast<std::size_t>(count), module.id)));
                const int taken = catalogue::moduleFor(module, format).gangs * count;
                if (taken > format.max_gangs) continue;
                INFO(format.id << " with " << count << " x " << module.id);
                for (const auto& gang : plate.gangs) {
                    CHECK(std::abs(gang.centre_mm.x) + gang.width_mm / 2 <= plate.width_mm / 2);
                    CHECK(std::abs(gang.centre_mm.y) + gang.height_mm / 2 <= plate.height_mm / 2);
                }
            }
}
