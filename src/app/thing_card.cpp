// The card of what is chosen beside plates: a room, wall, piece of furniture, opening or luminaire.
#include "app/panels.hpp"
#include "app/thing_cards.hpp"
#include "app/thing_place.hpp"

#include <fmt/format.h>

namespace gangway::app {

namespace {
using sheets::PlanRef;
using sheets::PlanThing;

bool isThere(const plan::Plan& plan, const PlanRef& thing) {
    switch (thing.kind) {
    case PlanThing::Room:
        return plan::findRoom(plan, thing.id) != nullptr;
    case PlanThing::Wall: {
        const plan::Room* room = plan::findRoom(plan, thing.room);
        return room != nullptr && plan::wallIndex(*room, thing.id).has_value();
    }
    case PlanThing::Furniture:
        return plan::findFurniture(plan, thing.id) != nullptr;
    case PlanThing::Opening:
        return findOpening(plan, thing.id) != nullptr;
    case PlanThing::Luminaire:
        return plan::findLuminaire(plan, thing.id) != nullptr;
    case PlanThing::Plate:
        break;
    }
    return false;
}

void contents(State& state, const PlanRef& thing) {
    const plan::Plan& plan = state.plan();
    switch (thing.kind) {
    case PlanThing::Room:
        form::roomCard(state, plan::Room(*plan::findRoom(plan, thing.id)));
        return;
    case PlanThing::Wall: {
        const plan::Room room = *plan::findRoom(plan, thing.room);
        form::wallCard(state, room, *plan::wallIndex(room, thing.id));
        return;
    }
    case PlanThing::Furniture:
        form::furnitureCard(state, plan::Furniture(*plan::findFurniture(plan, thing.id)));
        return;
    case PlanThing::Opening:
        form::openingCard(state, plan::Opening(*findOpening(plan, thing.id)));
        return;
    case PlanThing::Luminaire:
        form::luminaireCard(state, plan::Luminaire(*plan::findLuminaire(plan, thing.id)));
        return;
    case PlanThing::Plate:
        return;
    }
}

/// What was typed belongs to one thing; what was refused, to the plan it was refused for.
void keepFormWithItsThing(State& state) {
    ThingForm& form = state.furnish.form;
    if (form.thing != *state.thing) {
        const auto stays = form.stays;
        const bool both = form.both_sides;
        form = {};
        form.thing = *state.thing;
        form.stays = stays;
        form.both_sides = both;
    }
    if (form.version != state.document.version()) {
        std::erase_if(form.mistakes, [&](const auto& entry) { return !form.typed.contains(entry.first); });
        form.version = state.document.version();
    }
}

/// A wall keeps being chosen when it is given another name.
void followWall(State& state, std::size_t wall) {
    if (!state.thing || state.thing->kind != PlanThing::Wall) return;
    const plan::Room* room = plan::findRoom(state.plan(), state.thing->room);
    if (room == nullptr || plan::wallIndex(*room, state.thing->id) || wall >= room->walls.size()) return;
    state.thing->id = state.furnish.form.thing.id = room->walls[wall].id;
}

void runWhatWasAsked(State& state) {
    ThingForm& form = state.furnish.form;
    if (!form.todo) return;
    const edit::Command command = std::move(*form.todo);
    const auto then = std::move(form.then);
    form.todo.reset();
    form.then = {};
    std::size_t wall = 0;
    if (state.thing->kind == PlanThing::Wall)
        wall = *plan::wallIndex(*plan::findRoom(state.plan(), state.thing->room), state.thing->id);
    state.document.closeStep();
    state.document.run(command);
    state.document.closeStep();
    say(state, state.document.undoName());
    if (then)
        then(state);
    else
        followWall(state, wall);
}

void cardWindow(const State& state) {
    const float s = state.scale;
    const float width = kCardWidth * s;
    ImGui::SetNextWindowPos({state.stage.x + state.stage.width - width - 16 * s, state.stage.y + 16 * s});
    ImGui::SetNextWindowSize({width, 0});
    ImGui::SetNextWindowSizeConstraints({width, 0}, {width, state.stage.height - 32 * s});
    ImGui::Begin("thing-card", nullptr,
                 ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoCollapse |
                     ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoFocusOnAppearing);
}

void heading(const State& state, const PlanRef& thing) {
    ImGui::PushFont(state.fonts.large);
    const float width = ImGui::GetContentRegionAvail().x;
    const std::string name = thingName(state.plan(), thing);
    ImGui::TextUnformatted(linesWithin(*ImGui::GetFont(), name, width, 1).front().c_str());
    ImGui::PopFont();
}
} // namespace

std::string thingName(const plan::Plan& plan, const PlanRef& thing) {
    switch (thing.kind) {
    case PlanThing::Wall:
        return fmt::format("Wall {}", thing.id);
    case PlanThing::Furniture: {
        const auto* piece = plan::findFurniture(plan, thing.id);
        if (piece == nullptr) return thing.id;
        return piece->name.empty() ? form::kindName(*piece) : piece->name;
    }
    case PlanThing::Opening: {
        const auto* opening = findOpening(plan, thing.id);
        if (opening == nullptr) return thing.id;
        return opening->name.empty() ? form::kindName(opening->kind) : opening->name;
    }
    case PlanThing::Luminaire: {
        const auto* lamp = plan::findLuminaire(plan, thing.id);
        if (lamp == nullptr) return thing.id;
        const std::string name = lamp->name.empty() ? form::kindName(lamp->kind) : lamp->name;
        return lamp->tag.empty() ? name : fmt::format("{}  {}", lamp->tag, name);
    }
    case PlanThing::Room:
    case PlanThing::Plate:
        break;
    }
    return form::roomTitle(plan, thing.id);
}

void chooseThing(State& state, const PlanRef& thing) {
    state.thing = thing;
    state.selected.clear();
    state.also.clear();
}

void drawThingCard(State& state) {
    if (!state.thing || !state.selected.empty() || state.seat != Seat::Designer) return;
    if (!isThere(state.plan(), *state.thing)) {
        state.thing.reset();
        return;
    }
    keepFormWithItsThing(state);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 10 * state.scale);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 5 * state.scale});
    cardWindow(state);
    state.places["thing-card"] = {ImGui::GetWindowPos().x, ImGui::GetWindowPos().y, ImGui::GetWindowSize().x,
                                  ImGui::GetWindowSize().y};
    // Each thing's boxes are its own: what is being typed for one must not end up in the next.
    ImGui::PushID(state.thing->room.c_str());
    ImGui::PushID(state.thing->id.c_str());
    heading(state, *state.thing);
    contents(state, *state.thing);
    ImGui::PopID();
    ImGui::PopID();
    ImGui::End();
    ImGui::PopStyleVar(3);
    runWhatWasAsked(state);
}

} // namespace gangway::app
