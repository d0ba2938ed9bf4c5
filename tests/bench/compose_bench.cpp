// Composing a plate (budget: 50 microseconds) and reading the catalogue.
#include "catalogue/catalogue.hpp"
#include "plan/paths.hpp"

#include <benchmark/benchmark.h>

namespace {
using namespace gangway;

const catalogue::Catalogue& shipped() {
    static const catalogue::Catalogue loaded = *catalogue::load(plan::assetsFolder() / "catalogue");
    return loaded;
}

plan::Plate plateOf(const std::string& format, const std::vector<std::string>& modules) {
    plan::Plate plate;
    plate.format = format;
    for (const std::string& type : modules)
        plate.modules.push_back({type, "", "", {}});
    return plate;
}

void composePlate(benchmark::State& state, const plan::Plate& plate) {
    for (auto _ : state)
        benchmark::DoNotOptimize(catalogue::compose(shipped(), plate));
}

void loadCatalogue(benchmark::State& state) {
    for (auto _ : state)
        benchmark::DoNotOptimize(catalogue::load(plan::assetsFolder() / "catalogue"));
}
} // namespace

BENCHMARK_CAPTURE(composePlate, one_socket, plateOf("round-71", {"socket-f"}));
BENCHMARK_CAPTURE(composePlate, five_gangs,
                  plateOf("round-71",
                          {"socket-f", "socket-f", "data-rj45", "tv-satellite", "dimmer-rotary"}));
BENCHMARK_CAPTURE(composePlate, grid_of_twelve,
                  plateOf("grid-gb", std::vector<std::string>(12, "switch-2way")));
// Wrong in every way: each problem is worded and the nearest words are looked for.
BENCHMARK_CAPTURE(composePlate, all_wrong,
                  plateOf("rund-71", {"sockt-f", "swich-1way", "data-rj54", "dimer"}));
BENCHMARK(loadCatalogue)->Unit(benchmark::kMillisecond);
