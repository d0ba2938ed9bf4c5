// Undo of one step, and one step of a drag, in houses of 10 to 10,000 plates; what the drawn plan and the
// wall strip cost while a plate is dragged.
#include "support/generated_house.hpp"

#include "catalogue/catalogue.hpp"
#include "edit/plate_edits.hpp"
#include "export/export.hpp"
#include "plan/paths.hpp"
#include "sheets/storey_plan.hpp"
#include "sheets/wall_strip.hpp"

#include <benchmark/benchmark.h>

namespace {
using namespace gangway;

const catalogue::Catalogue& shippedForEdits() {
    static const catalogue::Catalogue loaded = *catalogue::load(plan::assetsFolder() / "catalogue");
    return loaded;
}

plan::Plan houseOf(std::int64_t plates) {
    auto plan = testing::generatedHouse(static_cast<int>((plates + 11) / 12));
    plan.plates.resize(static_cast<std::size_t>(plates));
    return plan;
}

void undoAndRedoOneMove(benchmark::State& state) {
    edit::Document document(houseOf(state.range(0)));
    const auto& plate = document.plan().plates.back();
    document.run(edit::movePlate(document.plan(), plate.id, plate.host.u_mm + 71, plate.host.v_mm));
    for (auto _ : state) {
        document.undo();
        document.redo();
    }
}

void oneStepOfADrag(benchmark::State& state) {
    edit::Document document(houseOf(state.range(0)));
    const std::string id = document.plan().plates.back().id;
    const plan::Host host = document.plan().plates.back().host;
    double along = 0;
    for (auto _ : state) {
        along = along > 50 ? 0 : along + 1;
        document.run(edit::movePlate(document.plan(), id, host.u_mm + along, host.v_mm));
    }
}

/// As the window does it for each step: the symbols of 1,008 plates anew, in pixels of a stage.
void planWhileDragging(benchmark::State& state) {
    const auto plan = testing::generatedHouse(84);
    const auto base = sheets::storeyBase(plan, "ground");
    drawing::Sheet sheet;
    sheet.width_mm = base.width_mm;
    sheet.height_mm = base.height_mm;
    for (auto _ : state) {
        sheet.items = sheets::storeySymbols(plan, shippedForEdits(), base).items;
        benchmark::DoNotOptimize(exporting::rasterise(sheet, {0, 0}, base.width_mm, base.height_mm,
                                                      1000 / base.width_mm, std::nullopt));
    }
}

void stripWhileDragging(benchmark::State& state) {
    const auto plan = testing::generatedHouse(84);
    for (auto _ : state) {
        const auto strip = sheets::wallStrip(plan, shippedForEdits(), plan.rooms.front(), 40, {});
        benchmark::DoNotOptimize(exporting::rasterise(strip.sheet, {0, 0}, strip.sheet.width_mm,
                                                      strip.sheet.height_mm, 200 / strip.sheet.height_mm));
    }
}
} // namespace

BENCHMARK(undoAndRedoOneMove)->Arg(10)->Arg(100)->Arg(1000)->Arg(10000);
BENCHMARK(oneStepOfADrag)->Arg(10)->Arg(1000)->Arg(10000)->Unit(benchmark::kMicrosecond);
BENCHMARK(planWhileDragging)->Unit(benchmark::kMillisecond);
BENCHMARK(stripWhileDragging)->Unit(benchmark::kMillisecond);
