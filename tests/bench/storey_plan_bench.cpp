// The drawn plan of a storey: its symbols alone, as while a plate is dragged, with the separation of symbols
// by itself (budget: a few ms for 1,000 plates).
#include "support/generated_house.hpp"

#include "catalogue/catalogue.hpp"
#include "drawing/symbol_separation.hpp"
#include "plan/paths.hpp"
#include "sheets/storey_plan.hpp"

#include <benchmark/benchmark.h>

#include <random>
#include <string>

namespace {
using namespace gangway;

const catalogue::Catalogue& shippedForPlan() {
    static const catalogue::Catalogue loaded = *catalogue::load(plan::assetsFolder() / "catalogue");
    return loaded;
}

void separateSymbolsOfAStorey(benchmark::State& state) {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> along(0, static_cast<double>(state.range(0)) * 6);
    std::vector<drawing::SymbolBox> boxes;
    for (int i = 0; i < state.range(0); ++i) {
        drawing::SymbolBox box;
        box.id = std::to_string(i);
        box.anchor = {along(random), 0};
        box.from_mm = -2;
        box.to_mm = 2;
        box.depth_mm = 5;
        boxes.push_back(box);
    }
    for (auto _ : state)
        benchmark::DoNotOptimize(drawing::separateSymbols(boxes));
    state.SetComplexityN(state.range(0));
}

void storeyBaseOfRooms(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(sheets::storeyBase(plan, "ground"));
    state.SetComplexityN(state.range(0));
}

/// 84 rooms carry 1,008 plates.
void storeySymbolsOfRooms(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    const auto base = sheets::storeyBase(plan, "ground");
    for (auto _ : state)
        benchmark::DoNotOptimize(sheets::storeySymbols(plan, shippedForPlan(), base));
    state.counters["plates"] = static_cast<double>(plan.plates.size());
    state.SetComplexityN(state.range(0));
}
} // namespace

BENCHMARK(separateSymbolsOfAStorey)
    ->Arg(100)
    ->Arg(1000)
    ->Arg(10000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity();
BENCHMARK(storeyBaseOfRooms)->Arg(8)->Arg(84)->Unit(benchmark::kMillisecond);
BENCHMARK(storeySymbolsOfRooms)->Arg(8)->Arg(84)->Arg(840)->Unit(benchmark::kMillisecond)->Complexity();
