// Plugs, power blocks and free outlets as bodies on the stage.
#include "app/finding_parts.hpp"
#include "app/inventory.hpp"
#include "app/panels.hpp"
#include "scene/plug_bodies.hpp"
#include "scene/scene_patch.hpp"

#include <algorithm>

namespace gangway::app {

namespace {
/// Rooms whose bodies are not on the stage as they are now.
std::set<std::string> roomsDue(const State& state) {
    std::set<std::string> due;
    for (const plan::Room& room : state.plan().rooms)
        if (!state.inventory.drawn.contains(room.id)) due.insert(room.id);
    return due;
}

bool holdsAny(const RoomInventory& room, const std::set<std::string>& plates) {
    return std::ranges::any_of(room.places.outlets, [&](const catalogue::OutletPlace& outlet) {
        return plates.contains(outlet.plate);
    });
}
} // namespace

void drawPlugsAnew(State& state, render::Renderer& renderer) {
    Inventory& inventory = state.inventory;
    const auto* pack = findingPack(state);
    if (!state.overlays.plugs || pack == nullptr || !state.derived.house) return;
    forgetTouched(state);
    const auto due = roomsDue(state);
    if (due.empty() && inventory.redraw.empty()) return;
    fillInventory(state);
    std::set<std::string> plates = std::exchange(inventory.redraw, {});
    for (const std::string& id : due) {
        const auto room = inventory.rooms.find(id);
        if (room == inventory.rooms.end()) continue;
        inventory.drawn.insert(id);
        for (const catalogue::OutletPlace& outlet : room->second.places.outlets)
            plates.insert(outlet.plate);
    }
    if (plates.empty()) return;
    const scene::Change change{{plates.begin(), plates.end()}, {}, {}};
    scene::ScenePatch patch =
        scene::patchFor(*state.derived.house, state.catalogue, change, state.document.file().parent_path());
    for (const auto& [id, room] : inventory.rooms)
        if (holdsAny(room, plates))
            scene::addPlugBodies(patch.drawn, *state.derived.house, state.catalogue, *pack, room.places,
                                 &plates);
    renderer.update(patch);
    state.stage_key.clear();
}

} // namespace gangway::app
