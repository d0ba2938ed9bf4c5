// Symbols pulled apart. The claims are properties of the result; the single numbers are worked by hand.
#include "drawing/symbol_separation.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <random>
#include <set>

using namespace gangway::drawing;

namespace {

constexpr double kGap = 0.8;

SymbolBox onWall(std::string id, double x, double rank = 0) {
    SymbolBox box;
    box.id = std::move(id);
    box.anchor = {x, 0};
    box.from_mm = -2;
    box.to_mm = 2;
    box.depth_mm = 5;
    box.rank = rank;
    return box;
}

/// Gap between two convex polygons along the best axis of their sides; negative when they overlap.
double gapBetween(const std::vector<Pt>& a, const std::vector<Pt>& b) {
    double best = -1e300;
    for (const auto* polygon : {&a, &b})
        for (std::size_t i = 0; i < polygon->size(); ++i) {
            const Pt p = (*polygon)[i];
            const Pt q = (*polygon)[(i + 1) % polygon->size()];
            const double size = std::hypot(q.x - p.x, q.y - p.y);
            const Pt axis{(q.y - p.y) / size, -(q.x - p.x) / size};
            const auto reach = [&](const std::vector<Pt>& points) {
                double low = 1e300;
                double high = -1e300;
                for (const Pt c : points) {
                    low = std::min(low, c.x * axis.x + c.y * axis.y);
                    high = std::max(high, c.x * axis.x + c.y * axis.y);
                }
                return std::pair(low, high);
            };
            const auto [a_low, a_high] = reach(a);
            const auto [b_low, b_high] = reach(b);
            best = std::max({best, b_low - a_high, a_low - b_high});
        }
    return best;
}

double leastGap(const std::vector<SymbolBox>& boxes, const std::vector<SymbolSpot>& spots) {
    double least = 1e300;
    for (std::size_t i = 0; i < boxes.size(); ++i)
        for (std::size_t j = i + 1; j < boxes.size(); ++j)
            least = std::min(least, gapBetween(cornersOf(boxes[i], spots[i]), cornersOf(boxes[j], spots[j])));
    return least;
}

/// Symbols along walls of any direction, crowded enough that many collide.
std::vector<SymbolBox> randomBoxes(std::mt19937& random, int count, bool any_direction) {
    std::uniform_real_distribution<double> place(0, count * 4.0);
    std::uniform_real_distribution<double> size(0.5, 5);
    std::uniform_real_distribution<double> angle(0, 2 * std::numbers::pi);
    std::vector<SymbolBox> boxes;
    for (int i = 0; i < count; ++i) {
        auto box = onWall("plate-" + std::to_string(i), place(random), i % 3);
        box.from_mm = -size(random);
        box.to_mm = size(random);
        box.depth_mm = size(random);
        if (any_direction) {
            const double a = angle(random);
            box.normal = {std::cos(a), std::sin(a)};
            box.anchor.y = place(random) / 8;
        }
        boxes.push_back(box);
    }
    return boxes;
}

std::map<std::string, Pt> shiftsById(const std::vector<SymbolBox>& boxes) {
    const auto spots = separateSymbols(boxes, kGap);
    std::map<std::string, Pt> shifts;
    for (std::size_t i = 0; i < boxes.size(); ++i)
        shifts[boxes[i].id] = spots[i].shift;
    return shifts;
}

} // namespace

TEST_CASE("a switch above a socket is pulled out along the wall's normal, with a leader; the socket stays") {
    const auto spots = separateSymbols({onWall("switch", 10, 1050), onWall("socket", 10.5, 300)}, kGap);
    CHECK(spots[1].shift == Pt{0, 0});
    CHECK_FALSE(spots[1].leader);
    CHECK(spots[0].shift.x == 0);
    CHECK(spots[0].shift.y == Approx(5 + kGap)); // the socket's depth and the gap
    CHECK(spots[0].leader);
}

TEST_CASE("symbols that collide with none stay at the wall") {
    const auto spots = separateSymbols({onWall("a", 0), onWall("b", 4.9), onWall("c", 100)}, kGap);
    for (const auto& spot : spots) {
        CHECK(spot.shift == Pt{0, 0});
        CHECK_FALSE(spot.leader);
    }
}

TEST_CASE("a dragged symbol stays where it was dragged and the others keep clear of it") {
    auto dragged = onWall("a-dragged", 30, 5);
    dragged.drag = Pt{-20, 0.5}; // onto b, which stands at 10
    const std::vector<SymbolBox> boxes = {dragged, onWall("b", 10), onWall("c", 60)};
    const auto spots = separateSymbols(boxes, kGap);
    CHECK(spots[0].shift == Pt{-20, 0.5});
    CHECK(spots[0].leader);
    CHECK(spots[1].shift.y == Approx(0.5 + 5 + kGap));
    CHECK(spots[2].shift == Pt{0, 0});
    CHECK(leastGap(boxes, spots) > kGap - 1e-5);
}

TEST_CASE(
    "nothing overlaps afterwards, everything goes along its own normal, whatever the walls' directions") {
    std::mt19937 random(11);
    for (int round = 0; round < 60; ++round) {
        const auto boxes = randomBoxes(random, 40, round % 2 == 1);
        const auto spots = separateSymbols(boxes, kGap);
        REQUIRE(leastGap(boxes, spots) > kGap - 1e-5);
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            const Pt n = boxes[i].normal;
            const Pt s = spots[i].shift;
            CHECK(s.x * n.y - s.y * n.x == Approx(0).margin(1e-9));
            CHECK(s.x * n.x + s.y * n.y >= 0);
        }
    }
}

TEST_CASE("the order of the input does not matter") {
    std::mt19937 random(12);
    for (int round = 0; round < 20; ++round) {
        auto boxes = randomBoxes(random, 30, true);
        const auto before = shiftsById(boxes);
        std::shuffle(boxes.begin(), boxes.end(), random);
        CHECK(shiftsById(boxes) == before);
    }
}

TEST_CASE(
    "a symbol that is moved changes only those it collides with, before or after, or by way of others") {
    std::mt19937 random(13);
    int changed_count = 0;
    for (int round = 0; round < 60; ++round) {
        auto boxes = randomBoxes(random, 40, false);
        const auto before = shiftsById(boxes);
        const auto was = boxes;
        boxes[7].anchor.x += 30;
        const auto after = shiftsById(boxes);
        // On one wall only symbols whose stretches of it overlap can meet. Those joined to the moved one so,
        // at its old or new place, may change.
        auto all = boxes;
        all.push_back(was[7]);
        std::set<std::size_t> reached = {7, all.size() - 1};
        for (bool grew = true; grew;) {
            grew = false;
            for (std::size_t i = 0; i < all.size(); ++i)
                for (const std::size_t j : std::set(reached))
                    if (all[i].anchor.x + all[i].from_mm < all[j].anchor.x + all[j].to_mm + kGap &&
                        all[j].anchor.x + all[j].from_mm < all[i].anchor.x + all[i].to_mm + kGap)
                        grew = reached.insert(i).second || grew;
        }
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            if (before.at(boxes[i].id) == after.at(boxes[i].id)) continue;
            ++changed_count;
            CHECK(reached.contains(i));
        }
    }
    CHECK(changed_count > 0);
}

TEST_CASE("no symbols give no spots, and two alike at one place are pulled apart") {
    CHECK(separateSymbols({}).empty());
    const std::vector<SymbolBox> twins = {onWall("same", 3), onWall("same", 3)};
    CHECK(leastGap(twins, separateSymbols(twins, kGap)) > kGap - 1e-5);
}
