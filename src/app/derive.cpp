// Everything the screen needs of the plan that costs time, redone only when the plan changed.
#include "app/panels.hpp"

#include "geometry/house_index.hpp"

namespace gangway::app {

namespace {
/// Covered less than this part of the plate is seen well enough to need no line in the docket.
constexpr double kWorthSaying = 0.1;

std::filesystem::path baseOf(const State& state) {
    return state.document.file().parent_path();
}
} // namespace

review::State stateOf(const State& state, const plan::Plate& plate) {
    const auto index = static_cast<std::size_t>(&plate - state.plan().plates.data());
    // An answer given earlier in this frame is derived in the next one.
    return index < state.derived.states.size() ? state.derived.states[index] : review::State::Open;
}

void derive(State& state, render::Renderer& renderer) {
    Derived& derived = state.derived;
    if (derived.version == state.document.version()) return;
    derived = {};
    derived.version = state.document.version();
    state.stage_key.clear();
    const plan::Plan& plan = state.plan();
    derived.states = review::states(plan);
    derived.count = review::count(plan);
    for (const auto& storey : plan.storeys)
        derived.walk_maps.emplace(storey.id, scene::WalkMap(plan, storey.id, baseOf(state)));
    derived.stairs = scene::stairLinks(plan);
    const geometry::HouseIndex house(plan);
    for (const auto& plate : plan.plates) {
        auto composed = catalogue::compose(state.catalogue, plate);
        derived.covers[plate.id] = geometry::coversOf(house, plate.room, plate.host, composed.width_mm,
                                                      composed.height_mm, 900, baseOf(state));
        derived.plates[plate.id] = std::move(composed);
    }
    scene::Scene scene = scene::build(plan, state.catalogue, baseOf(state));
    if (!scene.problems.empty() && !state.message)
        state.message = Message{"Something of the plan can't be shown", scene.problems};
    renderer.setScene(std::move(scene));
}

std::vector<geometry::Cover> solidCovers(const State& state, const std::string& plate_id) {
    std::vector<geometry::Cover> solid;
    const auto found = state.derived.covers.find(plate_id);
    if (found == state.derived.covers.end()) return solid;
    for (const auto& cover : found->second) {
        const auto* layer = plan::findLayer(state.plan(), cover.layer);
        const bool shown = layer == nullptr || layer->visibility == plan::Visibility::Shown;
        if (shown && cover.covered_part > kWorthSaying && !state.faded.contains(cover.id))
            solid.push_back(cover);
    }
    return solid;
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
    return view;
}

} // namespace gangway::app
