// One plate of 1,000 dragged along its wall: what a picture costs against one of a house that stands still.
#include "support/generated_house.hpp"

#include "catalogue/catalogue.hpp"
#include "plan/paths.hpp"
#include "render/renderer.hpp"
#include "scene/scene_patch.hpp"

#include <benchmark/benchmark.h>

#include <optional>

namespace {
using namespace gangway;

constexpr int kRooms = 84; // of 12 plates each: 1,008

const catalogue::Catalogue& shipped() {
    static const catalogue::Catalogue loaded = *catalogue::load(plan::assetsFolder() / "catalogue");
    return loaded;
}

enum Looking { Inside, FromAbove };

/// A house on the stage, with a view of it that is drawn whole each time.
struct Stage {
    plan::Plan plan = testing::generatedHouse(kRooms);
    std::optional<render::OffscreenContext> context;
    std::optional<render::Renderer> renderer;
    render::View view;

    bool open(benchmark::State& state) {
        auto made = render::OffscreenContext::create();
        if (!made) return state.SkipWithError(made.error().c_str()), false;
        context.emplace(std::move(*made));
        auto drawing = render::Renderer::create(plan::shadersFolder());
        if (!drawing) return state.SkipWithError(drawing.error().c_str()), false;
        renderer.emplace(std::move(*drawing));
        renderer->setScene(scene::build(plan, shipped()));
        view.width = 960;
        view.height = 600;
        view.quality = render::Quality::Moving;
        const float aspect = 1.6F;
        view.lid_off = state.range(0) == FromAbove;
        view.camera = view.lid_off ? scene::lidOffView(plan, "ground", aspect)
                                   : scene::faceWall(plan, plan.rooms[30], 0, aspect);
        renderer->read(view); // shadow maps and shaders are ready from here on
        return true;
    }
};

void standingStill(benchmark::State& state) {
    Stage stage;
    if (!stage.open(state)) return;
    for (auto _ : state)
        benchmark::DoNotOptimize(stage.renderer->read(stage.view));
}

void draggingOnePlate(benchmark::State& state) {
    Stage stage;
    if (!stage.open(state)) return;
    const auto start = stage.renderer->statistics();
    plan::Plan before = stage.plan;
    const std::size_t dragged = 30 * 12; // a plate on the wall that is faced
    double step_mm = 1;
    for (auto _ : state) {
        plan::Plate& plate = stage.plan.plates[dragged];
        if (plate.host.u_mm > 3000 || plate.host.u_mm < 400) step_mm = -step_mm;
        plate.host.u_mm += step_mm;
        const auto change = scene::changeBetween(before, stage.plan);
        stage.renderer->update(scene::patchFor(stage.plan, shipped(), *change));
        benchmark::DoNotOptimize(stage.renderer->read(stage.view));
        before.plates[dragged].host = plate.host;
    }
    const auto now = stage.renderer->statistics();
    state.counters["bytes a frame"] =
        static_cast<double>(now.bytes - start.bytes) / static_cast<double>(now.patches - start.patches);
    state.counters["whole upload"] = static_cast<double>(start.bytes);
    state.counters["uploads"] = static_cast<double>(now.uploads);
    state.counters["shadow maps drawn"] = static_cast<double>(now.shadow_maps - start.shadow_maps);
}

/// The part of a dragged frame that is not drawing.
void patchingOnePlate(benchmark::State& state) {
    plan::Plan plan = testing::generatedHouse(kRooms);
    plan::Plan before = plan;
    for (auto _ : state) {
        plan.plates[360].host.u_mm += 0.1;
        const auto change = scene::changeBetween(before, plan);
        benchmark::DoNotOptimize(scene::patchFor(plan, shipped(), *change));
        before.plates[360].host = plan.plates[360].host;
    }
}
} // namespace

BENCHMARK(standingStill)
    ->Arg(Inside)
    ->Arg(FromAbove)
    ->Unit(benchmark::kMillisecond)
    ->Iterations(20)
    ->UseRealTime();
BENCHMARK(draggingOnePlate)
    ->Arg(Inside)
    ->Arg(FromAbove)
    ->Unit(benchmark::kMillisecond)
    ->Iterations(20)
    ->UseRealTime();
BENCHMARK(patchingOnePlate)->Unit(benchmark::kMicrosecond);
