// Random rooms: what stands before a plate by the checks' own geometry is what FCL finds by testing every
// pair of a plate and a piece of furniture, and nothing else.
#include "checks/bars.hpp"
#include "geometry/obstacles.hpp"

#include "../switching/small_switching.hpp"
#include "support/fcl_reference.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <random>

using namespace gangway;

namespace {
constexpr double kReachMm = 300;
constexpr double kBehindMm = 20; // as obstaclesBefore takes what is let into the wall

/// Kinds whose solids are convex, so that hulls are the solids themselves.
constexpr std::array kKinds = {"box", "chest", "desk", "wardrobe", "bookcase", "base-unit", "shelf", "bench"};

plan::Plan randomRoom(std::mt19937& random) {
    plan::Plan plan;
    plan.storeys.emplace_back().id = "ground";
    addRoom(plan, "room", 0, 4000);
    std::uniform_real_distribution<double> part(0, 1);
    for (int i = 0; i < 8; ++i) {
        plan::Furniture piece;
        piece.id = "f" + std::to_string(i);
        piece.kind = kKinds[static_cast<std::size_t>(part(random) * kKinds.size())];
        piece.room = "room";
        piece.size = {300 + 900 * part(random), 200 + 400 * part(random), 200 + 1500 * part(random)};
        piece.turn_deg = part(random) < 0.5 ? 90 * std::floor(4 * part(random)) : 360 * part(random);
        piece.at_mm = {4000 * part(random), 3000 * part(random)};
        piece.bottom_mm = part(random) < 0.3 ? 1000 * part(random) : 0;
        plan.furniture.push_back(piece);
    }
    return plan;
}
} // namespace

TEST_CASE("what hides a plate is what FCL finds pair by pair, and no other") {
    std::mt19937 random(20261126);
    std::uniform_real_distribution<double> part(0, 1);
    int hidden = 0;
    int clear = 0;
    for (int scene = 0; scene < 40; ++scene) {
        const plan::Plan plan = randomRoom(random);
        const geometry::HouseIndex house(plan);
        std::vector<std::vector<testing::FclSolid>> solids;
        for (const auto& piece : plan.furniture)
            solids.push_back(testing::fclSolids(piece));
        for (std::size_t wall = 0; wall < 4; ++wall) {
            const geometry::Frame frame = geometry::wallFrame(plan.rooms.front(), wall);
            const auto obstacles = geometry::obstaclesBefore(house, "room", frame, kReachMm);
            for (int k = 0; k < 12; ++k) {
                const plan::Vec2 centre{frame.length_mm * part(random), 100 + 1500 * part(random)};
                const plan::Vec2 half{40 + 100 * part(random), 40};
                const auto box = testing::boxBefore(frame, centre, half, -kBehindMm, kReachMm);
                for (std::size_t i = 0; i < plan.furniture.size(); ++i) {
                    double gap = 1e9;
                    for (const auto& obstacle : obstacles) {
                        if (obstacle.piece != &plan.furniture[i]) continue;
                        checks::Bar bar;
                        bar.area_mm = obstacle.outline_mm;
                        gap = std::min(gap, checks::gapTo(bar, half, centre));
                    }
                    if (std::abs(gap) < 0.01) continue; // touching, where rounding decides
                    INFO(scene << " wall " << wall << " plate " << centre.x << "," << centre.y << " "
                               << plan.furniture[i].kind << " gap " << gap);
                    CHECK((gap < 0) == testing::collides(box, frame, solids[i]));
                    ++(gap < 0 ? hidden : clear);
                }
            }
        }
    }
    CHECK(hidden > 200);
    CHECK(clear > 3000);
}
