// All checks of a house, for their growth, and against testing every pair of a plate and a piece of furniture
// with FCL.
#include "support/fcl_reference.hpp"
#include "support/generated_house.hpp"

#include "checks/checks.hpp"
#include "plan/paths.hpp"

#include <benchmark/benchmark.h>

namespace {
using namespace gangway;

void checkHouse(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    const auto catalogue = *catalogue::load(plan::assetsFolder() / "catalogue");
    const auto packs = *catalogue::loadPacks(plan::assetsFolder() / "packs");
    std::size_t found = 0;
    for (auto _ : state) {
        const geometry::HouseIndex house(plan);
        found = checks::check(house, catalogue, *packs.pack("international")).size();
    }
    state.SetComplexityN(state.range(0));
    state.counters["plates"] = static_cast<double>(plan.plates.size());
    state.counters["furniture"] = static_cast<double>(plan.furniture.size());
    state.counters["findings"] = static_cast<double>(found);
}
BENCHMARK(checkHouse)
    ->Arg(5)
    ->Arg(20)
    ->Arg(50)
    ->Arg(500)
    ->Complexity(benchmark::oN)
    ->Unit(benchmark::kMillisecond);

void allPairsFcl(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    const auto catalogue = *catalogue::load(plan::assetsFolder() / "catalogue");
    const geometry::HouseIndex house(plan);
    std::vector<std::vector<testing::FclSolid>> solids;
    for (const auto& piece : plan.furniture)
        solids.push_back(testing::fclSolids(piece));
    for (auto _ : state) {
        int hits = 0;
        for (const plan::Plate& plate : plan.plates) {
            const auto made = catalogue::compose(catalogue, plate);
            const auto frame = geometry::hostFrame(house, plate.room, plate.host);
            const auto box = testing::boxBefore(*frame, {plate.host.u_mm, plate.host.v_mm},
                                                {made.width_mm / 2, made.height_mm / 2}, -20, 300);
            for (const auto& piece : solids)
                hits += testing::collides(box, *frame, piece) ? 1 : 0;
        }
        benchmark::DoNotOptimize(hits);
    }
    state.counters["pairs"] = static_cast<double>(plan.plates.size() * plan.furniture.size());
}
BENCHMARK(allPairsFcl)->Arg(5)->Arg(20)->Arg(50)->Unit(benchmark::kMillisecond)->Iterations(1);
} // namespace
