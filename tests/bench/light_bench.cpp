// Light over 10,000 points from 100 luminaires with shadows, beside the bare cost of the same rays (budget: 2
// times), and the light of all rooms of a house against its size.
#include "support/generated_house.hpp"

#include "lighting/light_grid.hpp"

#include <benchmark/benchmark.h>

#include <embree3/rtcore.h>

namespace {
using namespace gangway;

constexpr int kPoints = 100; ///< each way
constexpr int kLamps = 10;   ///< each way

/// A storey of 20 rooms with 120 pieces of furniture, all its walls standing.
const plan::Plan& house() {
    static const plan::Plan plan = testing::generatedHouse(20);
    return plan;
}

struct Task {
    geometry::HouseIndex index{house()};
    lighting::RayWorld world{index, "ground", {}};
    std::vector<lighting::Emitter> emitters;
    std::vector<plan::Vec3> points;

    explicit Task(const lighting::Distribution& shape) {
        const auto shared = std::make_shared<const lighting::Distribution>(shape);
        // Four rooms' worth of floor, so that rays pass furniture and meet walls.
        for (int i = 0; i < kPoints * kPoints; ++i)
            points.push_back({20.0 + 84 * (i % kPoints), 20.0 + 35.5 * (i / kPoints), 750});
        for (int i = 0; i < kLamps * kLamps; ++i) {
            lighting::Emitter lamp;
            lamp.at_mm = {400.0 + 840 * (i % kLamps), 150.0 + 355 * (i / kLamps), 2300};
            lamp.aim = {0, 0, -1};
            lamp.ahead = {1, 0, 0};
            lamp.distribution = shared;
            emitters.push_back(lamp);
        }
    }
};

lighting::IesFile table() {
    std::string text = "TILT=NONE\n1 -1 1 19 13 1 2 0 0 0 1 1 10\n";
    for (int v = 0; v <= 90; v += 5)
        text += std::to_string(v) + " ";
    for (int h = 0; h <= 360; h += 30)
        text += std::to_string(h) + " ";
    for (int i = 0; i < 19 * 13; ++i)
        text += "\n" + std::to_string(500 - i % 19 * 10);
    return *lighting::parseIes(text, "bench.ies");
}

void illuminate(benchmark::State& state, const lighting::Distribution& shape) {
    const Task task(shape);
    for (auto _ : state) {
        double sum = 0;
        for (const plan::Vec3& point : task.points)
            sum += lighting::illuminance(task.emitters, {point}, &task.world);
        benchmark::DoNotOptimize(sum);
    }
    state.counters["rays"] = static_cast<double>(task.points.size() * task.emitters.size());
}

void lightCosine(benchmark::State& state) {
    illuminate(state, lighting::Distribution::cosine(800));
}
void lightBeam(benchmark::State& state) {
    illuminate(state, lighting::Distribution::beam(800, 60));
}
void lightIes(benchmark::State& state) {
    illuminate(state, lighting::Distribution::fromIes(table(), 800));
}

/// Embree's own call on the same scene made here again, and rays that were made before.
void bareRays(benchmark::State& state) {
    const Task task(lighting::Distribution::cosine(800));
    const RTCScene scene = task.world.embreeScene();
    const plan::Vec3 middle = task.world.middle_mm();
    std::vector<RTCRay> rays;
    for (const plan::Vec3& point : task.points)
        for (const auto& lamp : task.emitters) {
            const plan::Vec3 from = point - middle;
            const plan::Vec3 way = lamp.at_mm - point;
            const float clear = static_cast<float>(1 / length(way));
            RTCRay ray{};
            ray.org_x = static_cast<float>(from.x), ray.org_y = static_cast<float>(from.y);
            ray.org_z = static_cast<float>(from.z);
            ray.dir_x = static_cast<float>(way.x), ray.dir_y = static_cast<float>(way.y);
            ray.dir_z = static_cast<float>(way.z);
            ray.tnear = clear, ray.tfar = 1 - clear, ray.mask = ~0u;
            rays.push_back(ray);
        }
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    for (auto _ : state) {
        int blocked = 0;
        for (const RTCRay& made : rays) {
            RTCRay ray = made;
            rtcOccluded1(scene, &context, &ray);
            blocked += ray.tfar < 0;
        }
        benchmark::DoNotOptimize(blocked);
        state.counters["blocked"] = blocked;
    }
    state.counters["rays"] = static_cast<double>(rays.size());
}

void lightOfHouse(benchmark::State& state) {
    auto plan = testing::generatedHouse(static_cast<int>(state.range(0)));
    for (const plan::Room& room : plan.rooms) {
        plan::Luminaire lamp;
        lamp.id = room.id + "-lamp";
        lamp.room = room.id;
        lamp.host = {plan::Host::Kind::Ceiling, "", "", "", 2100, 1800};
        lamp.lumens = 1200;
        plan.luminaires.push_back(lamp);
    }
    const geometry::HouseIndex index(plan);
    catalogue::CountryPack pack;
    pack.work_plane_mm.value = 750;
    for (auto _ : state) {
        const lighting::LitStorey storey(index, "ground", {});
        for (const plan::Room& room : plan.rooms)
            benchmark::DoNotOptimize(lighting::roomLight(storey, pack, room.id));
    }
    state.SetComplexityN(state.range(0));
}
} // namespace

BENCHMARK(bareRays)->Unit(benchmark::kMillisecond);
BENCHMARK(lightCosine)->Unit(benchmark::kMillisecond);
BENCHMARK(lightBeam)->Unit(benchmark::kMillisecond);
BENCHMARK(lightIes)->Unit(benchmark::kMillisecond);
BENCHMARK(lightOfHouse)->Arg(8)->Arg(32)->Arg(128)->Unit(benchmark::kMillisecond)->Complexity();
