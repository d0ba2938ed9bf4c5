// All checks of a house, for their growth, and against testing every pair of a plate and a piece of furniture
// with FCL.
#include "support/fcl_reference.hpp"
#include "support/generated_house.hpp"

#include "checks/checker.hpp"
#include "plan/paths.hpp"

#include <benchmark/benchmark.h>

#include <algorithm>

namespace {
using namespace gangway;

/// A grid of rooms with a door each, six lamps on two-way legs between bed and door, four devices with leads.
plan::Plan livedIn(int rooms) {
    auto plan = testing::generatedHouse(rooms);
    for (std::size_t r = 0; r < plan.rooms.size(); ++r) {
        const plan::Room& room = plan.rooms[r];
        plan::Opening door;
        door.id = room.id + "-door";
        door.kind = plan::Opening::Kind::HingedDoor;
        door.room = room.id;
        door.wall = "C";
        door.left_mm = 2000;
        door.width_mm = 900;
        door.height_mm = 2100;
        plan.openings.push_back(door);
        for (int l = 1; l <= 3; ++l) {
            plan::SwitchLeg leg;
            leg.id = room.id + "-L" + std::to_string(l);
            leg.controls = {{room.id + "-p" + std::to_string(3 * l - 2), 1, 1}, {room.id + "-p10", 1, 1}};
            for (int i = 1; i <= 2; ++i) {
                plan::Luminaire lamp;
                lamp.id = leg.id + "-" + std::to_string(i);
                lamp.room = room.id;
                lamp.host.kind = plan::Host::Kind::Ceiling;
                lamp.host.u_mm = 900.0 * l;
                lamp.host.v_mm = 1200.0 * i;
                lamp.watts = 6;
                leg.luminaires.push_back(lamp.id);
                plan.luminaires.push_back(lamp);
            }
            plan.legs.push_back(leg);
        }
        for (int d = 1; d <= 4; ++d) {
            plan::Device device;
            device.id = room.id + "-d" + std::to_string(d);
            device.name = "device";
            device.room = room.id;
            device.lead_exit_mm = {room.outline[3].x + 900.0 * d, room.outline[3].y + 300, 200};
            device.lead_mm = 1500;
            device.watts = 60;
            plan.devices.push_back(device);
        }
    }
    return plan;
}

void checkHouse(benchmark::State& state) {
    const auto plan = livedIn(static_cast<int>(state.range(0)));
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

/// One object in the middle of the house goes to and fro, as in a drag; a device is plugged in and out.
enum class Edit { Socket, Switch, Furniture, Lamp, Device };

checks::Edited step(plan::Plan& plan, Edit edit, double by_mm) {
    checks::Edited edited;
    const std::string room = plan.rooms[plan.rooms.size() / 2].id;
    const auto plate = [&](const char* which) {
        plan::Plate& moved = *std::ranges::find(plan.plates, room + which, &plan::Plate::id);
        moved.host.u_mm += by_mm;
        edited.plates = {moved.id};
    };
    if (edit == Edit::Socket) plate("-p2");
    if (edit == Edit::Switch) plate("-p10"); // of three legs
    if (edit == Edit::Furniture) {
        plan::Furniture& piece = plan.furniture[plan.furniture.size() / 2];
        piece.at_mm.x += by_mm;
        edited.furniture = {piece.id};
    }
    if (edit == Edit::Lamp) {
        plan::Luminaire& lamp = plan.luminaires[plan.luminaires.size() / 2];
        lamp.host.u_mm += by_mm;
        edited.luminaires = {lamp.id};
    }
    if (edit == Edit::Device) {
        plan::Device& device = plan.devices[plan.devices.size() / 2];
        device.plate = by_mm > 0 ? device.room + "-p2" : "";
        edited.devices = {device.id};
    }
    return edited;
}

void recheck(benchmark::State& state, Edit edit) {
    auto plan = livedIn(static_cast<int>(state.range(0)));
    const auto catalogue = *catalogue::load(plan::assetsFolder() / "catalogue");
    const auto packs = *catalogue::loadPacks(plan::assetsFolder() / "packs");
    geometry::HouseIndex house(plan);
    checks::Checker checker(catalogue, *packs.pack("international"));
    checker.all(house);
    double by_mm = 10;
    for (auto _ : state) {
        const checks::Edited edited = step(plan, edit, by_mm);
        if (edit == Edit::Furniture) house = geometry::HouseIndex(plan); // as the window does
        by_mm = -by_mm;
        benchmark::DoNotOptimize(checker.again(house, edited).size());
    }
}
BENCHMARK_CAPTURE(recheck, Plate, Edit::Socket)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(recheck, Switch, Edit::Switch)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(recheck, Furniture, Edit::Furniture)
    ->Arg(5)
    ->Arg(50)
    ->Arg(500)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(recheck, Lamp, Edit::Lamp)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(recheck, Device, Edit::Device)->Arg(5)->Arg(50)->Arg(500)->Unit(benchmark::kMillisecond);

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
