// The proof of a house's switching, up to 5,000 ways and 10,000 luminaires, for its growth.
#include "support/generated_house.hpp"

#include "catalogue/pack.hpp"
#include "plan/paths.hpp"
#include "switching/prove.hpp"

#include <benchmark/benchmark.h>

namespace {
using namespace gangway;

/// Rooms of 4 switch plates with 6 ways in all, a door and 12 luminaires, 2 to each way.
plan::Plan wiredHouse(std::int64_t ways) {
    constexpr int kWaysPerRoom = 6;
    auto plan = testing::generatedHouse(static_cast<int>((ways + kWaysPerRoom - 1) / kWaysPerRoom));
    for (const plan::Room& room : plan.rooms) {
        plan::Opening door;
        door.id = room.id + "-door";
        door.kind = plan::Opening::Kind::HingedDoor;
        door.room = room.id;
        door.wall = "C";
        door.left_mm = 2000;
        door.width_mm = 900;
        door.height_mm = 2100;
        plan.openings.push_back(door);
    }
    const std::size_t plates = plan.plates.size();
    for (std::size_t p = 0; p < plates; ++p)
        for (std::size_t m = 0; m < plan.plates[p].modules.size(); ++m) {
            if (plan.plates[p].modules[m].type != "switch-1way") continue;
            plan::SwitchLeg leg;
            leg.id = "L" + std::to_string(plan.legs.size() + 1);
            leg.controls = {{plan.plates[p].id, static_cast<int>(m) + 1, 1}};
            for (int i = 1; i <= 2; ++i) {
                plan::Luminaire lamp;
                lamp.id = leg.id + "-" + std::to_string(i);
                lamp.room = plan.plates[p].room;
                lamp.host.kind = plan::Host::Kind::Ceiling;
                lamp.host.u_mm = 1000.0 * i;
                lamp.host.v_mm = 1800;
                lamp.watts = 6;
                leg.luminaires.push_back(lamp.id);
                plan.luminaires.push_back(lamp);
            }
            plan.legs.push_back(leg);
        }
    return plan;
}

void proveHouse(benchmark::State& state) {
    const auto plan = wiredHouse(state.range(0));
    const auto catalogue = *catalogue::load(plan::assetsFolder() / "catalogue");
    const auto packs = *catalogue::loadPacks(plan::assetsFolder() / "packs");
    const geometry::HouseIndex house(plan);
    for (auto _ : state)
        benchmark::DoNotOptimize(switching::prove(house, catalogue, *packs.pack("international")));
    state.SetComplexityN(state.range(0));
    state.counters["luminaires"] = static_cast<double>(plan.luminaires.size());
}

BENCHMARK(proveHouse)
    ->Arg(50)
    ->Arg(500)
    ->Arg(1000)
    ->Arg(2500)
    ->Arg(5000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

} // namespace
