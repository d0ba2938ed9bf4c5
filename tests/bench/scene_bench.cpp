// From a plan to triangles, to the GPU, and to the first picture.
#include "support/generated_house.hpp"

#include "catalogue/catalogue.hpp"
#include "plan/io.hpp"
#include "plan/paths.hpp"
#include "render/renderer.hpp"
#include "scene/scene.hpp"

#include <benchmark/benchmark.h>

namespace {
using namespace gangway;

const catalogue::Catalogue& shipped() {
    static const catalogue::Catalogue loaded = *catalogue::load(plan::assetsFolder() / "catalogue");
    return loaded;
}

void buildScene(benchmark::State& state) {
    const auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    double triangles = 0;
    for (auto _ : state) {
        const auto scene = scene::build(plan, shipped());
        triangles = static_cast<double>(scene.indices.size()) / 3;
    }
    state.counters["triangles"] = triangles;
    state.SetComplexityN(state.range(0));
}

/// Everything from the file's bytes to the pixels of the demo's first room, without the window.
void firstPictureOfTheDemo(benchmark::State& state) {
    auto context = render::OffscreenContext::create();
    if (!context) return state.SkipWithError(context.error().c_str());
    for (auto _ : state) {
        auto read = plan::readFile(plan::assetsFolder() / "demo" / "terrace.plan.json");
        auto renderer = render::Renderer::create(plan::shadersFolder());
        if (!read || !renderer) return state.SkipWithError("the demo or the shaders could not be read");
        renderer->setScene(scene::build(read->plan, shipped()));
        render::View view;
        view.camera = scene::roomView(read->plan, read->plan.rooms.front());
        view.quality = render::Quality::Moving; // what the window shows first; it grows finer at rest
        benchmark::DoNotOptimize(renderer->read(view));
    }
}

void nextPictureOfTheDemo(benchmark::State& state) {
    auto context = render::OffscreenContext::create();
    auto read = plan::readFile(plan::assetsFolder() / "demo" / "terrace.plan.json");
    auto renderer = render::Renderer::create(plan::shadersFolder());
    if (!context || !read || !renderer) return state.SkipWithError("no context, demo or shaders");
    renderer->setScene(scene::build(read->plan, shipped()));
    render::View view;
    view.camera = scene::roomView(read->plan, read->plan.rooms.front());
    view.quality = render::Quality::Moving;
    for (auto _ : state) {
        view.camera.yaw += 0.01F;
        benchmark::DoNotOptimize(renderer->read(view));
    }
    state.counters["uploads"] = static_cast<double>(renderer->statistics().uploads);
}
} // namespace

BENCHMARK(buildScene)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond)->Complexity(benchmark::oN);
BENCHMARK(firstPictureOfTheDemo)->Unit(benchmark::kMillisecond);
BENCHMARK(nextPictureOfTheDemo)->Unit(benchmark::kMillisecond)->Iterations(20);
