// Lining up a dragged plate: what each movement of the mouse costs in a large house.
#include "support/generated_house.hpp"

#include "catalogue/catalogue.hpp"
#include "edit/snapping.hpp"
#include "plan/paths.hpp"

#include <benchmark/benchmark.h>

namespace {
using namespace gangway;

/// Guides and snap on a wall with plates and a bed, in a storey of 12 plates a room; with the index ready, as
/// the window has it. The target is 1 ms with 1,000 plates.
void guidesAndSnap(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    const auto catalogue = *catalogue::load(plan::assetsFolder() / "catalogue");
    const geometry::HouseIndex house(plan);
    const edit::UsualPlaces usual{{{"sockets", 300, "common practice, no source", {}}}, 150};
    const plan::Plate& dragged = plan.plates[plan.plates.size() / 24 * 12];
    plan::Host host = dragged.host;
    for (auto _ : state) {
        host.u_mm = host.u_mm > 3000 ? 400 : host.u_mm + 7;
        const auto found = edit::guides(house, catalogue, dragged.room, host, {dragged.id}, usual);
        benchmark::DoNotOptimize(edit::snap(found, host.u_mm, host.v_mm, {81, 81}, 15));
    }
    state.counters["plates"] = static_cast<double>(plan.plates.size());
}
} // namespace

BENCHMARK(guidesAndSnap)->Arg(1)->Arg(84)->Unit(benchmark::kMicrosecond);
