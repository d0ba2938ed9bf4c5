// The panel's pages beside furniture: openings, luminaires and grids of them, a new room, what is here.
#include "app/furnish_parts.hpp"
#include "app/panels.hpp"
#include "app/thing_cards.hpp"
#include "app/thing_place.hpp"
#include "edit/number_shown.hpp"
#include "edit/opening_edits.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <array>

namespace gangway::app::form {

namespace {
using sheets::PlanThing;
using Opening = plan::Opening::Kind;
using Lamp = plan::Luminaire::Kind;

constexpr std::array kOpenings{Opening::HingedDoor, Opening::PocketDoor, Opening::SlidingDoor,
                               Opening::BarnDoor,   Opening::Window,     Opening::Plain,
                               Opening::Hatch};
constexpr std::array kLamps{Lamp::Ceiling, Lamp::Pendant,   Lamp::Recessed, Lamp::Linear,
                            Lamp::Wall,    Lamp::UnderUnit, Lamp::Floor,    Lamp::Table};
constexpr std::array kGridLamps{Lamp::Recessed, Lamp::Ceiling, Lamp::Pendant, Lamp::Linear};

constexpr double kBesideHouse_mm = 100; ///< the usual thickness of a wall, so that the rooms share one

struct UsualLamp {
    Lamp kind;
    double size_mm, drop_mm, watts, lumens, kelvin, beam_deg;
};
/// Common practice, no source.
constexpr std::array kUsualLamps{UsualLamp{Lamp::Ceiling, 350, 0, 18, 1800, 2700, 0},
                                 UsualLamp{Lamp::Wall, 150, 0, 8, 700, 2700, 0},
                                 UsualLamp{Lamp::Pendant, 400, 900, 12, 1100, 2700, 0},
                                 UsualLamp{Lamp::Recessed, 85, 0, 7, 600, 2700, 60},
                                 UsualLamp{Lamp::Linear, 1200, 0, 24, 2800, 3000, 0},
                                 UsualLamp{Lamp::UnderUnit, 500, 0, 8, 700, 3000, 0},
                                 UsualLamp{Lamp::Floor, 400, 0, 12, 1000, 2700, 0},
                                 UsualLamp{Lamp::Table, 250, 0, 7, 500, 2700, 0}};

void heading(const State& state, const char* words) {
    ImGui::PushFont(state.fonts.strong);
    ImGui::TextUnformatted(words);
    ImGui::PopFont();
}

/// Runs what a page asks for; false when it was refused, and why is shown.
bool done(State& state, const Refusable& command) {
    state.furnish.put_problem = command ? "" : command.error();
    if (!command) return false;
    state.document.closeStep();
    state.document.run(*command);
    state.document.closeStep();
    say(state, state.document.undoName());
    return true;
}

void countRow(State& state, const char* label, const char* key, int& count) {
    constexpr int kMost = 20;
    const float s = state.scale;
    ImGui::PushID(key);
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(label);
    ImGui::SameLine(kPanelWidth * s * 0.45F);
    if (ImGui::Button("-", {36 * s, 0})) count = std::max(1, count - 1);
    place(state, fmt::format("furnish:{}:less", key));
    ImGui::SameLine(0, 4 * s);
    const std::string number = std::to_string(count);
    const float at = ImGui::GetCursorPosX();
    ImGui::SetCursorPosX(at + (32 * s - ImGui::CalcTextSize(number.c_str()).x) / 2);
    ImGui::TextUnformatted(number.c_str());
    ImGui::SameLine();
    ImGui::SetCursorPosX(at + 36 * s);
    if (ImGui::Button("+", {36 * s, 0})) count = std::min(kMost, count + 1);
    place(state, fmt::format("furnish:{}:more", key));
    ImGui::PopID();
}

std::string pieceTitle(const plan::Furniture& piece) {
    return piece.name.empty() ? kindName(piece) : piece.name;
}

void gridOver(State& state) {
    const auto* chosen = plan::findFurniture(state.plan(), state.furnish.grid_over);
    if (chosen == nullptr || chosen->room != state.room) state.furnish.grid_over.clear();
    const std::string shown = state.furnish.grid_over.empty() ? "the whole room" : pieceTitle(*chosen);
    caption(state, "Over");
    ImGui::SetNextItemWidth(kPanelWidth * state.scale);
    const bool open = ImGui::BeginCombo("##over", shown.c_str());
    place(state, "furnish:grid-over");
    if (!open) return;
    if (ImGui::Selectable("the whole room", state.furnish.grid_over.empty())) state.furnish.grid_over.clear();
    for (const auto& piece : state.plan().furniture) {
        if (piece.room != state.room) continue;
        ImGui::PushID(piece.id.c_str());
        if (ImGui::Selectable(pieceTitle(piece).c_str(), state.furnish.grid_over == piece.id))
            state.furnish.grid_over = piece.id;
        place(state, fmt::format("furnish:grid-over:{}", piece.id));
        ImGui::PopID();
    }
    ImGui::EndCombo();
}

void grid(State& state) {
    Furnish& furnish = state.furnish;
    heading(state, "A grid of them");
    caption(state, "Of what");
    ImGui::SetNextItemWidth(kPanelWidth * state.scale);
    if (ImGui::BeginCombo("##grid-kind", kindName(furnish.grid_kind))) {
        for (const Lamp kind : kGridLamps)
            if (ImGui::Selectable(kindName(kind), kind == furnish.grid_kind)) furnish.grid_kind = kind;
        ImGui::EndCombo();
    }
    countRow(state, "Rows, counted to the north", "rows", furnish.rows);
    countRow(state, "In each row", "columns", furnish.columns);
    gridOver(state);
    const plan::Room* room = standingRoom(state);
    ImGui::BeginDisabled(room == nullptr);
    const std::string words =
        fmt::format("Put {} into {}", furnish.rows * furnish.columns, roomTitle(state.plan(), state.room));
    if (largeButton(state, words.c_str(), state.tokens->accent, {kPanelWidth * state.scale, 38 * state.scale},
                    true)) {
        edit::LampGrid lamps;
        lamps.room = state.room;
        lamps.rows = furnish.rows;
        lamps.columns = furnish.columns;
        lamps.like = usualLuminaire(furnish.grid_kind);
        if (!furnish.grid_over.empty()) lamps.over = furnish.grid_over;
        done(state, edit::gridLuminaires(state.plan(), lamps));
    }
    place(state, "furnish:grid");
    ImGui::EndDisabled();
}

/// Where a new room of a storey begins: a wall's thickness to the east of it, on its most southern line.
plan::Vec2 besideHouse(const plan::Plan& plan, const std::string& storey) {
    std::optional<plan::Vec2> corner;
    for (const auto& room : plan.rooms) {
        if (room.storey != storey) continue;
        for (const plan::Vec2 p : room.outline)
            corner = corner ? plan::Vec2{std::max(corner->x, p.x), std::min(corner->y, p.y)} : p;
    }
    return corner ? *corner + plan::Vec2{kBesideHouse_mm, 0} : plan::Vec2{};
}

void addRoom(State& state) {
    Furnish& furnish = state.furnish;
    const auto units = state.plan().units;
    const auto width = edit::parseLengthIn(furnish.room_width, units);
    const auto depth = edit::parseLengthIn(furnish.room_depth, units);
    furnish.put_problem = !width   ? fmt::format("Width: {}", width.error())
                          : !depth ? fmt::format("Depth: {}", depth.error())
                                   : "";
    if (!width || !depth) return;
    const plan::Vec2 corner = besideHouse(state.plan(), furnish.room_storey);
    plan::Room room;
    room.name = furnish.room_name.empty() ? "Room" : furnish.room_name;
    room.storey = furnish.room_storey;
    room.outline = edit::rectangleOutline(corner, corner + plan::Vec2{*width, *depth});
    if (!done(state, edit::addRoom(state.plan(), room))) return;
    const std::string id = state.plan().rooms.back().id;
    enterRoom(state, id);
    chooseThing(state, {PlanThing::Room, id, {}});
    furnish.room_name.clear();
}

void labelled(State& state, const char* label, const char* key, std::string& text, float width) {
    ImGui::BeginGroup();
    caption(state, label);
    ImGui::SetNextItemWidth(width);
    ImGui::InputText(fmt::format("##{}", key).c_str(), &text, ImGuiInputTextFlags_AutoSelectAll);
    place(state, fmt::format("furnish:{}", key));
    ImGui::EndGroup();
}

void thingLine(State& state, const sheets::PlanRef& thing, const char* kind) {
    ImGui::PushID(kind);
    ImGui::PushID(thing.id.c_str());
    const bool chosen = state.thing && *state.thing == thing;
    if (ImGui::Selectable(thingName(state.plan(), thing).c_str(), chosen, 0,
                          {0, ImGui::GetFrameHeight() * 0.8F}))
        chooseThing(state, thing);
    if (ImGui::IsItemVisible()) place(state, fmt::format("furnish:here:{}:{}", kind, thing.id));
    ImGui::PopID();
    ImGui::PopID();
}

template <class T>
void thingLines(State& state, const char* title, const std::vector<T>& things, PlanThing thing,
                const char* kind) {
    bool any = false;
    for (const T& one : things) {
        if (one.room != state.room) continue;
        if (!any) caption(state, title);
        any = true;
        thingLine(state, {thing, one.id, {}}, kind);
    }
    if (any) ImGui::Dummy({0, 4 * state.scale});
}
} // namespace

plan::Luminaire usualLuminaire(Lamp kind) {
    const UsualLamp& usual = *std::ranges::find(kUsualLamps, kind, &UsualLamp::kind);
    plan::Luminaire lamp;
    lamp.kind = kind;
    lamp.name = kindName(kind);
    lamp.size_mm = usual.size_mm;
    lamp.drop_mm = usual.drop_mm;
    lamp.watts = usual.watts;
    lamp.lumens = usual.lumens;
    lamp.kelvin = usual.kelvin;
    lamp.beam_deg = usual.beam_deg;
    return lamp;
}

void openingsPage(State& state) {
    const auto* now = state.thing_placing ? std::get_if<plan::Opening>(&state.thing_placing->thing) : nullptr;
    for (std::size_t i = 0; i < kOpenings.size(); ++i) {
        nextTile(state, i);
        const plan::Opening opening = edit::usualOpening(kOpenings[i]);
        const auto units = state.plan().units;
        const std::string help = fmt::format("{}: usually {} wide, {} high", kindName(opening.kind),
                                             edit::lengthInWords(opening.width_mm, units),
                                             edit::lengthInWords(opening.height_mm, units));
        if (tile(state, fmt::format("furnish:opening:{}", kindName(opening.kind)), kindName(opening.kind),
                 help, now != nullptr && now->kind == opening.kind,
                 [&](ImDrawList& list, ImVec2 centre, float half) {
                     openingPicture(state, list, opening.kind, centre, half);
                 }))
            startThing(state, opening);
    }
}

void luminairesPage(State& state) {
    const auto* now =
        state.thing_placing ? std::get_if<plan::Luminaire>(&state.thing_placing->thing) : nullptr;
    for (std::size_t i = 0; i < kLamps.size(); ++i) {
        nextTile(state, i);
        const plan::Luminaire lamp = usualLuminaire(kLamps[i]);
        const std::string help = fmt::format("{}: usually {:.6g} W, {:.6g} lm, {:.6g} K", kindName(lamp.kind),
                                             lamp.watts, lamp.lumens, lamp.kelvin);
        std::string name = kindName(lamp.kind);
        if (const std::size_t cut = name.find(" luminaire"); cut != std::string::npos) name.erase(cut);
        if (tile(state, fmt::format("furnish:lamp:{}", kindName(lamp.kind)), name, help,
                 now != nullptr && now->kind == lamp.kind, [&](ImDrawList& list, ImVec2 centre, float half) {
                     lampPicture(state, list, lamp.kind, centre, half);
                 }))
            startThing(state, lamp);
    }
    ImGui::Dummy({0, 4 * state.scale});
    if (!state.thing_placing) grid(state);
}

void roomPage(State& state) {
    Furnish& furnish = state.furnish;
    const float s = state.scale;
    const auto units = state.plan().units;
    constexpr double kUsual_mm[] = {4000, 3000}; // to start from
    if (furnish.room_width.empty()) furnish.room_width = edit::shownLength(kUsual_mm[0], units);
    if (furnish.room_depth.empty()) furnish.room_depth = edit::shownLength(kUsual_mm[1], units);
    if (plan::findStorey(state.plan(), furnish.room_storey) == nullptr) furnish.room_storey = state.storey;
    labelled(state, "Name", "room-name", furnish.room_name, kPanelWidth * s);
    caption(state, "Storey");
    ImGui::SetNextItemWidth(kPanelWidth * s);
    const auto* storey = plan::findStorey(state.plan(), furnish.room_storey);
    if (ImGui::BeginCombo("##room-storey", storey == nullptr ? "" : storey->name.c_str())) {
        for (const auto& one : state.plan().storeys)
            if (ImGui::Selectable(one.name.c_str(), one.id == furnish.room_storey))
                furnish.room_storey = one.id;
        ImGui::EndCombo();
    }
    const float half = (kPanelWidth * s - 8 * s) / 2;
    labelled(state, "Width, west to east", "room-width", furnish.room_width, half);
    ImGui::SameLine();
    labelled(state, "Depth, south to north", "room-depth", furnish.room_depth, half);
    if (largeButton(state, "Add the room beside the house", state.tokens->accent, {kPanelWidth * s, 40 * s},
                    true))
        addRoom(state);
    place(state, "furnish:add-room");
    note(state, "It stands a wall's thickness to the east. Walls and corners are moved on the plan.");
}

void herePage(State& state) {
    const plan::Room* room = standingRoom(state);
    if (room == nullptr) {
        note(state, "Go into a room first.");
        return;
    }
    ImGui::BeginChild("here", {kPanelWidth * state.scale,
                               std::max(200 * state.scale, state.stage.height - 212 * state.scale)});
    caption(state, "Room and walls");
    thingLine(state, {PlanThing::Room, room->id, {}}, "room");
    for (const auto& wall : room->walls)
        thingLine(state, {PlanThing::Wall, wall.id, room->id}, "wall");
    ImGui::Dummy({0, 4 * state.scale});
    thingLines(state, "Doors, windows, openings", state.plan().openings, PlanThing::Opening, "opening");
    thingLines(state, "Furniture", state.plan().furniture, PlanThing::Furniture, "furniture");
    thingLines(state, "Luminaires", state.plan().luminaires, PlanThing::Luminaire, "luminaire");
    ImGui::EndChild();
}

} // namespace gangway::app::form
