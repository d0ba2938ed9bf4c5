// Reading a plan, against the JSON library alone on the same bytes (budget: 3 times).
#include "support/generated_house.hpp"

#include "plan/io.hpp"

#include <nlohmann/json.hpp>

#include <benchmark/benchmark.h>

namespace {
std::string textOf(const benchmark::State& state) {
    return gangway::plan::write(gangway::testing::generatedHouse(static_cast<int>(state.range(0))));
}

void libraryAlone(benchmark::State& state) {
    const std::string text = textOf(state);
    for (auto _ : state)
        benchmark::DoNotOptimize(nlohmann::json::parse(text));
    state.SetBytesProcessed(static_cast<std::int64_t>(text.size()) * state.iterations());
    state.SetComplexityN(state.range(0));
}

void readPlan(benchmark::State& state) {
    const std::string text = textOf(state);
    for (auto _ : state)
        benchmark::DoNotOptimize(gangway::plan::read(text));
    state.SetBytesProcessed(static_cast<std::int64_t>(text.size()) * state.iterations());
    state.SetComplexityN(state.range(0));
}

void writePlan(benchmark::State& state) {
    const auto plan = gangway::testing::generatedHouse(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(gangway::plan::write(plan));
    state.SetComplexityN(state.range(0));
}
} // namespace

BENCHMARK(libraryAlone)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);
BENCHMARK(readPlan)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);
BENCHMARK(writePlan)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);
