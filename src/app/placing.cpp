// Dragging and putting down: from a place under the pointer to a command.
#include "app/placing.hpp"

#include "app/panels.hpp"
#include "edit/plate_edits.hpp"
#include "geometry/frames.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {
bool sameSurface(const plan::Host& a, const plan::Host& b) {
    return a.kind == b.kind && a.wall == b.wall && a.furniture == b.furniture && a.face == b.face;
}

edit::UsualPlaces usualPlaces(const State& state) {
    edit::UsualPlaces usual;
    const auto* pack = state.packs.pack(state.plan().pack);
    if (pack == nullptr) return usual;
    for (const auto& height : pack->heights)
        usual.heights.push_back({height.name, height.height_mm, height.source,
                                 height.from == catalogue::MountingHeight::From::Floor
                                     ? edit::UsualHeight::From::Floor
                                     : edit::UsualHeight::From::Worktop});
    return usual;
}

/// The place a plate goes to: on its guides, or free.
edit::Snapped settleOn(const State& state, const Spot& spot, const plan::Plate& plate,
                       const std::vector<std::string>& except, const DragKeys& keys) {
    edit::Snapped snapped{spot.host.u_mm, spot.host.v_mm, std::nullopt, std::nullopt};
    if (keys.free || !state.derived.house) return snapped;
    const auto guides =
        edit::guides(*state.derived.house, state.catalogue, spot.room, spot.host, except, usualPlaces(state));
    return edit::snap(guides, spot.host.u_mm, spot.host.v_mm, plateSize(state, plate), keys.tolerance_mm);
}

/// Centres stay on the host: a plate is dragged to a wall's end and not beyond it.
plan::Host within(const State& state, const std::string& room, plan::Host host) {
    const auto frame = geometry::hostFrame(state.plan(), room, host);
    if (!frame) return host;
    host.u_mm = std::clamp(host.u_mm, 0.0, frame->length_mm);
    host.v_mm = std::clamp(host.v_mm, 0.0, frame->height_mm);
    return host;
}
} // namespace

plan::Vec2 plateSize(const State& state, const plan::Plate& plate) {
    const auto found = state.derived.plates.find(plate.id);
    if (found != state.derived.plates.end()) return {found->second.width_mm, found->second.height_mm};
    const auto composed = catalogue::compose(state.catalogue, plate);
    return {composed.width_mm, composed.height_mm};
}

std::vector<std::string> chosenPlates(const State& state) {
    std::vector<std::string> chosen;
    if (!state.selected.empty()) chosen.push_back(state.selected);
    for (const auto& id : state.also)
        if (id != state.selected && plan::findPlate(state.plan(), id) != nullptr) chosen.push_back(id);
    return chosen;
}

void choosePlate(State& state, const std::string& plate_id, bool add) {
    state.thing.reset();
    if (!add || state.selected.empty()) {
        state.also.clear();
        state.selected = plate_id;
    } else if (plate_id == state.selected) {
        state.selected.clear();
        if (!state.also.empty()) state.selected = state.also.extract(state.also.begin()).value();
    } else if (state.also.erase(plate_id) == 0) {
        state.also.insert(plate_id); // the first one clicked stays the first
    }
}

void beginDrag(State& state, const std::string& plate_id, const Spot& pointer, Place place) {
    const plan::Plate* plate = plan::findPlate(state.plan(), plate_id);
    if (plate == nullptr || state.seat != Seat::Designer) return;
    Drag drag;
    drag.plate = plate_id;
    drag.place = place;
    drag.start = {plate->room, plate->host};
    if (sameSurface(plate->host, pointer.host))
        drag.grab_mm = {plate->host.u_mm - pointer.host.u_mm, plate->host.v_mm - pointer.host.v_mm};
    auto chosen = chosenPlates(state);
    const bool is_chosen = std::ranges::find(chosen, plate_id) != chosen.end();
    // What is taken hold of is what the numbers are about.
    if (!is_chosen && !ImGui::GetIO().KeyCtrl) choosePlate(state, plate_id, false);
    if (is_chosen)
        for (const auto& id : chosen)
            if (id != plate_id) drag.others.emplace(id, plan::findPlate(state.plan(), id)->host);
    state.drag = std::move(drag);
}

void dragTo(State& state, const Spot& pointer, const DragKeys& keys) {
    const plan::Plate* plate = plan::findPlate(state.plan(), state.drag.plate);
    if (plate == nullptr) return;
    Spot spot = pointer;
    spot.host.u_mm += state.drag.grab_mm.x;
    spot.host.v_mm = keys.keep_height ? state.drag.start.host.v_mm : spot.host.v_mm + state.drag.grab_mm.y;
    spot.host = within(state, spot.room, spot.host);
    std::vector<std::string> except{plate->id};
    for (const auto& [id, host] : state.drag.others)
        except.push_back(id);
    const edit::Snapped snapped = settleOn(state, spot, *plate, except, keys);
    // Whole millimetres where nothing asks for less.
    spot.host.u_mm = snapped.along ? snapped.u_mm : std::round(snapped.u_mm);
    if (!keys.keep_height) spot.host.v_mm = snapped.height ? snapped.v_mm : std::round(snapped.v_mm);
    state.drag.along = snapped.along;
    state.drag.height = keys.keep_height ? std::nullopt : snapped.height;
    std::vector<edit::PlateMove> moves{{plate->id, spot.host, spot.room}};
    if (sameSurface(spot.host, state.drag.start.host) && spot.room == state.drag.start.room) {
        for (const auto& [id, host] : state.drag.others) {
            plan::Host moved = host;
            moved.u_mm += spot.host.u_mm - state.drag.start.host.u_mm;
            moved.v_mm += spot.host.v_mm - state.drag.start.host.v_mm;
            moves.push_back({id, moved, {}});
        }
    }
    state.document.run(edit::movePlates(state.plan(), moves));
}

void endDrag(State& state) {
    state.document.closeStep();
    if (state.drag.moving) say(state, state.document.undoName());
    state.drag = {};
}

double usualHeight(const State& state, const plan::Plate& plate) {
    constexpr double kSocket_mm = 300; ///< common practice, no source: where no pack says otherwise
    const auto* pack = state.packs.pack(state.plan().pack);
    const auto* module = plate.modules.empty() ? nullptr : state.catalogue.module(plate.modules.front().type);
    const auto* usual = pack && module ? pack->usualHeight(module->kind) : nullptr;
    return usual == nullptr ? kSocket_mm : usual->height_mm;
}

void startPlacing(State& state, plan::Plate plate) {
    state.placing = Placing{std::move(plate), std::nullopt, std::nullopt, std::nullopt};
    state.selected.clear();
    state.also.clear();
    state.thing.reset();
    state.panel = Panel::None;
    say(state, "Click a wall to put the plate there. Shift: more than one. Esc: none.");
}

void hoverPlacing(State& state, const std::optional<Spot>& pointer, const DragKeys& keys) {
    Placing& placing = *state.placing;
    placing.spot = pointer;
    placing.along.reset();
    placing.height.reset();
    if (!pointer) return;
    placing.spot->host = within(state, pointer->room, pointer->host);
    const edit::Snapped snapped = settleOn(state, *placing.spot, placing.plate, {}, keys);
    placing.spot->host.u_mm = snapped.u_mm;
    placing.spot->host.v_mm = snapped.v_mm;
    placing.along = snapped.along;
    placing.height = snapped.height;
}

void putDown(State& state, bool again) {
    if (!state.placing || !state.placing->spot) return;
    plan::Plate plate = state.placing->plate;
    plate.room = state.placing->spot->room;
    plate.host = state.placing->spot->host;
    plate.host.u_mm = std::round(plate.host.u_mm * 10) / 10;
    plate.host.v_mm = std::round(plate.host.v_mm * 10) / 10;
    state.document.run(edit::addPlate(state.plan(), plate));
    state.document.closeStep();
    state.room = plate.room;
    say(state, state.document.undoName());
    if (again) return; // its card would lie over the next place
    state.placing.reset();
    choosePlate(state, state.plan().plates.back().id, false);
}

} // namespace gangway::app
