// Everything the screen needs of the plan that costs time, redone only when the plan changed.
#include "app/lamps.hpp"
#include "app/panels.hpp"

#include "app/placing.hpp"
#include "geometry/house_index.hpp"
#include "scene/plug_bodies.hpp"
#include "scene/scene_patch.hpp"
#include "scene/zone_volumes.hpp"

#include <algorithm>

namespace gangway::app {

namespace {
/// Covered less than this part of the plate is seen well enough to need no line in the docket.
constexpr double kWorthSaying = 0.1;

std::filesystem::path baseOf(const State& state) {
    return state.document.file().parent_path();
}
} // namespace

namespace {
/// A stair cuts floors and ceilings, a bath or shower has zones round it: the building is drawn anew with it.
/// One that is gone counts too.
constexpr std::string_view kCuts[] = {"stair", "bath", "shower", "shower-screen"};
bool touchesFabric(const State& state, const edit::Touched& touched) {
    return std::ranges::any_of(touched.furniture, [&](const std::string& id) {
        const auto* piece = plan::findFurniture(state.plan(), id);
        return piece == nullptr || std::ranges::find(kCuts, piece->kind) != std::end(kCuts);
    });
}
} // namespace

review::State stateOf(const State& state, const plan::Plate& plate) {
    const auto index = static_cast<std::size_t>(&plate - state.plan().plates.data());
    // An answer given earlier in this frame is derived in the next one.
    return index < state.derived.states.size() ? state.derived.states[index] : review::State::Open;
}

namespace {
void derivePlate(State& state, const plan::Plate& plate) {
    Derived& derived = state.derived;
    auto composed = catalogue::compose(state.catalogue, plate);
    derived.covers[plate.id] = geometry::coversOf(*derived.house, plate.room, plate.host, composed.width_mm,
                                                  composed.height_mm, 900, baseOf(state));
    derived.plates[plate.id] = std::move(composed);
}

void countStates(Derived& derived) {
    derived.count = {};
    for (const auto state : derived.states) {
        auto& count = state == review::State::Agreed     ? derived.count.agreed
                      : state == review::State::Queried  ? derived.count.queried
                      : state == review::State::Reopened ? derived.count.reopened
                                                         : derived.count.open;
        ++count;
    }
}

/// States of all plates: when plates came or went their places in the list changed.
void deriveStates(State& state) {
    state.derived.states = review::states(state.plan());
    countStates(state.derived);
}

void deriveWays(State& state) {
    Derived& derived = state.derived;
    const plan::Plan& plan = state.plan();
    derived.walk_maps.clear();
    for (const auto& storey : plan.storeys)
        derived.walk_maps.emplace(storey.id, scene::WalkMap(plan, storey.id, baseOf(state)));
    derived.stairs = scene::stairLinks(plan);
    derived.walk_due = false;
}

void deriveAll(State& state, render::Renderer& renderer) {
    const plan::Plan& plan = state.plan();
    state.catalogue = catalogue::withOwn(state.shipped, plan);
    state.lamps.net.reset(); // its ways point into the old catalogue
    state.derived = {};
    state.derived.house.emplace(plan);
    deriveStates(state);
    deriveWays(state);
    for (const auto& plate : plan.plates)
        derivePlate(state, plate);
    scene::Scene scene = scene::build(plan, state.catalogue, baseOf(state));
    std::vector<scene::ZoneVolume> volumes;
    for (const checks::WetVolume& volume : wetVolumesOf(state))
        volumes.push_back(
            {volume.piece->room, volume.outline_mm, volume.bottom_mm, volume.top_mm, volume.number});
    scene::addZoneVolumes(scene, plan, volumes);
    if (!scene.problems.empty() && !state.message)
        state.message = Message{"Something of the plan can't be shown", scene.problems};
    renderer.setScene(std::move(scene));
    state.inventory.drawn.clear(); // plugs are drawn over the new scene
}

/// Plates only: a drag costs what the dragged plates cost.
void derivePlates(State& state, const std::set<std::string>& touched) {
    Derived& derived = state.derived;
    const plan::Plan& plan = state.plan();
    if (derived.states.size() != plan.plates.size()) deriveStates(state);
    std::size_t found = 0;
    for (std::size_t i = 0; i < plan.plates.size() && found < touched.size(); ++i) {
        if (!touched.contains(plan.plates[i].id)) continue;
        ++found;
        derivePlate(state, plan.plates[i]);
        derived.states[i] = review::stateOf(plan, plan.plates[i]);
    }
    countStates(derived);
    for (const auto& id : touched) {
        if (found == touched.size()) break;
        if (plan::findPlate(plan, id) != nullptr) continue;
        derived.plates.erase(id);
        derived.covers.erase(id);
    }
}

/// Covers, ways and states after furniture has come to rest.
void deriveResting(State& state) {
    deriveWays(state);
    deriveStates(state);
    for (const auto& plate : state.plan().plates)
        derivePlate(state, plate);
}

void deriveTouched(State& state, render::Renderer& renderer, const edit::Touched& touched) {
    Derived& derived = state.derived;
    if (!touched.furniture.empty()) {
        derived.house.emplace(state.plan());
        derived.walk_due = true;
    }
    if (touched.answers || !touched.legs.empty() || derived.states.size() != state.plan().plates.size())
        deriveStates(state);
    derivePlates(state, touched.plates);
    const scene::Change change{{touched.plates.begin(), touched.plates.end()},
                               {touched.luminaires.begin(), touched.luminaires.end()},
                               {touched.furniture.begin(), touched.furniture.end()}};
    state.inventory.redraw.insert(touched.plates.begin(), touched.plates.end());
    if (!change.empty())
        renderer.update(scene::patchFor(*derived.house, state.catalogue, change, baseOf(state)));
}
} // namespace

void derive(State& state, render::Renderer& renderer) {
    Derived& derived = state.derived;
    const bool resting = !state.document.stepOpen() || state.drag.plate.empty();
    if (derived.walk_due && resting) deriveResting(state);
    if (derived.version == state.document.version()) return;
    if (derived.version == 0) { // another document, whose versions begin anew
        state.plan_picture.storey.clear();
        state.plan_picture.base_version = state.plan_picture.symbols_version = 0;
        state.strip.room.clear();
        state.inventory = {};
        forgetSheets(state);
    }
    const auto touched = derived.version == 0 ? std::nullopt : state.document.touchedSince(derived.version);
    if (touched && !touched->others && !touchesFabric(state, *touched))
        deriveTouched(state, renderer, *touched);
    else
        deriveAll(state, renderer);
    derived.version = state.document.version();
    state.stage_key.clear();
    for (const auto& id : chosenPlates(state))
        if (plan::findPlate(state.plan(), id) == nullptr) choosePlate(state, {}, false);
}

std::vector<geometry::Cover> frontCovers(const State& state, const std::string& plate_id) {
    std::vector<geometry::Cover> front;
    const auto found = state.derived.covers.find(plate_id);
    if (found == state.derived.covers.end()) return front;
    for (const auto& cover : found->second) {
        const auto* layer = plan::findLayer(state.plan(), cover.layer);
        const bool shown = layer == nullptr || layer->visibility == plan::Visibility::Shown;
        if (shown && cover.covered_part > kWorthSaying) front.push_back(cover);
    }
    return front;
}

std::vector<geometry::Cover> solidCovers(const State& state, const std::string& plate_id) {
    auto solid = frontCovers(state, plate_id);
    std::erase_if(solid, [&state](const geometry::Cover& cover) { return state.faded.contains(cover.id); });
    return solid;
}

bool seenPast(const State& state, const std::vector<geometry::Cover>& covers) {
    return std::ranges::all_of(
        covers, [&state](const geometry::Cover& cover) { return state.faded.contains(cover.id); });
}

void seePast(State& state, const std::vector<geometry::Cover>& covers, bool past) {
    for (const auto& cover : covers) {
        if (past)
            state.faded.insert(cover.id);
        else
            state.faded.erase(cover.id);
    }
}

render::View viewOf(const State& state) {
    render::View view;
    view.camera = state.camera;
    view.width = std::max(16, static_cast<int>(state.stage.width));
    view.height = std::max(16, static_cast<int>(state.stage.height));
    for (const auto& layer : state.plan().layers) {
        if (layer.visibility == plan::Visibility::Hidden) view.hidden_layers.insert(layer.id);
        if (layer.visibility == plan::Visibility::Ghosted) view.ghosted_layers.insert(layer.id);
    }
    if (!state.overlays.wet) view.hidden_layers.insert(scene::kLayerZones);
    if (!state.overlays.plugs) view.hidden_layers.insert(scene::kLayerPlugs);
    view.hidden_rooms = state.hidden_rooms;
    view.ghosted_objects = state.faded;
    view.lid_off = state.stance == Stance::LidOff;
    // Walking one sees up the stairs; from outside only one storey makes sense.
    if (state.stance != Stance::Walk) view.storey = state.storey;
    view.selected = state.selected;
    view.hovered = state.hovered;
    const unsigned rgb = state.tokens->stage;
    view.background = {static_cast<float>((rgb >> 16U) & 255U) / 255.0F,
                       static_cast<float>((rgb >> 8U) & 255U) / 255.0F,
                       static_cast<float>(rgb & 255U) / 255.0F};
    lightView(state, view);
    return view;
}

} // namespace gangway::app
