// The card of a piece of furniture.
#include "app/panels.hpp"
#include "app/thing_cards.hpp"
#include "app/thing_place.hpp"
#include "edit/furniture_edits.hpp"
#include "edit/number_shown.hpp"
#include "geometry/frames.hpp"
#include "plan/furniture_kinds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <numbers>

namespace gangway::app::form {

namespace {
using plan::Vec2;

std::string pieceName(const plan::Furniture& piece) {
    return piece.name.empty() ? kindName(piece) : piece.name;
}

Refusable moved(const State& state, const plan::Furniture& piece, Vec2 by) {
    return edit::moveFurniture(state.plan(), piece.id, {piece.at_mm + by, piece.turn_deg});
}

/// A piece is made larger about its middle; where an edge touches a wall, that edge stays there instead.
Refusable resized(const State& state, const plan::Furniture& piece, plan::Size3 size) {
    constexpr double kTouches_mm = 5;
    auto command = edit::resizeFurniture(state.plan(), piece.id, size);
    const plan::Room* room = plan::findRoom(state.plan(), piece.room);
    const auto wall = room == nullptr ? std::nullopt : atWall(*room, piece);
    if (!command || !wall) return command;
    const double wider = (size.width_mm - piece.size.width_mm) / 2;
    Vec2 by = wall->out * ((size.depth_mm - piece.size.depth_mm) / 2);
    if (std::abs(wall->left_mm) <= kTouches_mm)
        by = by + wall->along * wider;
    else if (std::abs(wall->right_mm) <= kTouches_mm)
        by = by - wall->along * wider;
    command->apply = [apply = command->apply, id = piece.id, by](edit::Draft& draft) {
        apply(draft);
        if (plan::Furniture* changed = draft.change<plan::Furniture>(id))
            changed->at_mm = changed->at_mm + by;
    };
    return command;
}

void sizes(State& state, const plan::Furniture& piece) {
    const auto with = [&state, piece](double plan::Size3::* part) {
        return [&state, piece, part](double value) {
            plan::Size3 size = piece.size;
            size.*part = value;
            return resized(state, piece, size);
        };
    };
    boxes(state, {lengthBox(state, "width", "Width", piece.size.width_mm, with(&plan::Size3::width_mm)),
                  lengthBox(state, "depth", "Depth", piece.size.depth_mm, with(&plan::Size3::depth_mm)),
                  lengthBox(state, "height", "Height", piece.size.height_mm, with(&plan::Size3::height_mm))});
}

void placeAtWall(State& state, const plan::Furniture& piece, const AtWall& wall) {
    note(state, fmt::format("Its edges, from the corners of wall {}", wall.wall));
    const auto by = [&state, piece](Vec2 way, double from) {
        return [&state, piece, way, from](double value) { return moved(state, piece, way * (value - from)); };
    };
    boxes(state, {lengthBox(state, "left", "Left", wall.left_mm, by(wall.along, wall.left_mm)),
                  lengthBox(state, "right", "Right", wall.right_mm, by(wall.along * -1, wall.right_mm)),
                  lengthBox(state, "gap", "Behind", wall.gap_mm, by(wall.out, wall.gap_mm),
                            "Between its back and the wall's finished face")});
}

void placeInRoom(State& state, const plan::Furniture& piece, const plan::Room& room) {
    const auto around = distancesAround(room, piece.at_mm, halfAround(piece));
    std::vector<Box> row;
    for (std::size_t side = 0; side < around.size(); ++side) {
        if (!around[side]) continue;
        const Vec2 way = towards(static_cast<Compass>(side));
        const double from = *around[side];
        row.push_back(lengthBox(
            state, fmt::format("to-{}", kCompassWords[side]), kCompassWords[side], from,
            [&state, piece, way, from](double value) { return moved(state, piece, way * (from - value)); }));
    }
    note(state, "From its edges to the walls around it");
    boxes(state, row, 2);
}

void turning(State& state, const plan::Furniture& piece) {
    const auto turned = [&state, piece](double value) {
        return edit::turnFurniture(state.plan(), piece.id, value);
    };
    const auto lifted = [&state, piece](double value) {
        plan::Furniture changed = piece;
        changed.bottom_mm = value;
        return edit::changeFurniture(state.plan(), changed,
                                     fmt::format("Set {} {} above the floor", pieceName(piece),
                                                 edit::lengthInWords(value, state.plan().units)));
    };
    boxes(state, {numberBox("turn", "Turn, degrees", piece.turn_deg, turned,
                            "Counter-clockwise seen from above; at 0 its back is to the north"),
                  lengthBox(state, "bottom", "Underside above floor", piece.bottom_mm, lifted)});
    const float half = (ImGui::GetContentRegionAvail().x - 8 * state.scale) / 2;
    if (button(state, "turn-left", "Turn left", half)) ask(state, "turn", turned(piece.turn_deg + 90));
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("90 degrees counter-clockwise");
    ImGui::SameLine();
    if (button(state, "turn-right", "Turn right", half)) ask(state, "turn", turned(piece.turn_deg - 90));
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("90 degrees clockwise");
}

/// "headboardHeight" as "Headboard height".
std::string keyInWords(std::string_view key) {
    std::string words;
    for (const char c : key) {
        const auto letter = static_cast<unsigned char>(c);
        if (std::isupper(letter) != 0) words += ' ';
        words += static_cast<char>(words.empty() ? std::toupper(letter) : std::tolower(letter));
    }
    return words;
}

/// Values that may pass 60 are lengths; the others are counts, parts and yes or no (furniture_kinds.cpp).
Box valueBox(const State& state, const plan::Furniture& piece, const plan::FurnitureValue& value) {
    constexpr double kMostCounted = 60;
    const std::string key(value.key);
    const double now = plan::furnitureValue(piece, value.key);
    const auto set = [&state, id = piece.id, key](double number) {
        return edit::setFurnitureValue(state.plan(), id, key, number);
    };
    const std::string help(value.meaning);
    if (value.max > kMostCounted)
        return lengthBox(state, "with-" + key, keyInWords(value.key), now, set, help);
    return numberBox("with-" + key, keyInWords(value.key), now, set, help);
}

void ownValues(State& state, const plan::Furniture& piece) {
    const auto* kind = plan::findFurnitureKind(piece.kind);
    if (kind == nullptr || kind->values.empty()) return;
    std::vector<Box> row;
    for (const auto& value : kind->values)
        row.push_back(valueBox(state, piece, value));
    caption(state, fmt::format("Of this {}", kind->name));
    boxes(state, row, 2);
}

void layer(State& state, const plan::Furniture& piece) {
    std::vector<std::string> words;
    std::vector<std::string> ids;
    std::size_t chosen = 0;
    for (const auto& one : state.plan().layers) {
        if (one.id == piece.layer) chosen = ids.size();
        ids.push_back(one.id);
        words.push_back(one.name.empty() ? one.id : one.name);
    }
    list(state, "layer", "Layer", words, chosen, [&state, piece, ids, words](std::size_t i) {
        plan::Furniture changed = piece;
        changed.layer = ids[i];
        return edit::changeFurniture(state.plan(), changed,
                                     fmt::format("Move {} to layer '{}'", pieceName(piece), words[i]));
    });
}

/// A copy beside it, on the side where there is room.
Refusable copyBeside(const State& state, const plan::Furniture& piece) {
    constexpr double kBetween_mm = 50;
    const double turn = piece.turn_deg * std::numbers::pi / 180;
    const Vec2 right = Vec2{std::cos(turn), std::sin(turn)} * (piece.size.width_mm + kBetween_mm);
    const plan::Room* room = plan::findRoom(state.plan(), piece.room);
    const bool fits = room == nullptr || geometry::insideRoom(*room, piece.at_mm + right * 1.4);
    return edit::duplicateFurniture(state.plan(), {piece.id}, fits ? right : right * -1);
}
} // namespace

std::string kindName(const plan::Furniture& piece) {
    const auto* kind = plan::findFurnitureKind(piece.kind);
    return kind == nullptr ? (piece.kind == "gltf" ? "glTF model" : piece.kind) : std::string(kind->name);
}

void furnitureCard(State& state, const plan::Furniture& piece) {
    note(state, fmt::format("{}, {}", kindName(piece), roomTitle(state.plan(), piece.room)));
    boxes(state, {textBox("name", "Name", piece.name, [&state, piece](const std::string& text) {
              plan::Furniture changed = piece;
              changed.name = text;
              return edit::changeFurniture(state.plan(), changed, fmt::format("Rename {}", pieceName(piece)));
          })});
    sizes(state, piece);
    if (const plan::Room* room = plan::findRoom(state.plan(), piece.room)) {
        if (const auto wall = atWall(*room, piece))
            placeAtWall(state, piece, *wall);
        else
            placeInRoom(state, piece, *room);
    }
    turning(state, piece);
    ownValues(state, piece);
    layer(state, piece);
    colourRow(state, "colour", "Colour", piece.colour, [&state, piece](const std::string& hex) {
        plan::Furniture changed = piece;
        changed.colour = hex;
        return edit::changeFurniture(state.plan(), changed, fmt::format("Colour {}", pieceName(piece)));
    });
    ImGui::Dummy({0, 2 * state.scale});
    if (button(state, "duplicate", "Duplicate", ImGui::GetContentRegionAvail().x))
        ask(state, "duplicate", copyBeside(state, piece), [](State& s) {
            chooseThing(s, {sheets::PlanThing::Furniture, s.plan().furniture.back().id, {}});
        });
    mistake(state, "duplicate");
    removeButton(state, edit::removeFurniture(state.plan(), {piece.id}));
}

} // namespace gangway::app::form
