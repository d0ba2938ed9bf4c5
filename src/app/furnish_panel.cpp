// The side panel "Furnish": the palette of furniture, what is on the pointer, and the way to the other pages.
#include "app/furnish_parts.hpp"
#include "app/panels.hpp"
#include "app/thing_cards.hpp"
#include "edit/furniture_edits.hpp"
#include "edit/number_shown.hpp"
#include "geometry/furniture.hpp"
#include "meshes/meshes.hpp"
#include "plan/furniture_kinds.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <limits>

namespace gangway::app {

namespace {
using plan::Vec2;

struct Page {
    FurnishPage page;
    const char* name;
};
constexpr std::array kPages{Page{FurnishPage::Furniture, "Furniture"},
                            Page{FurnishPage::Openings, "Openings"}, Page{FurnishPage::Luminaires, "Lights"},
                            Page{FurnishPage::Room, "Room"}, Page{FurnishPage::Here, "Here"}};

void pages(State& state) {
    const float s = state.scale;
    for (const Page& page : kPages) {
        if (page.page != FurnishPage::Furniture) ImGui::SameLine(0, 4 * s);
        if (form::chooseButton(state, page.name, state.furnish.page == page.page)) {
            state.furnish.page = page.page;
            state.furnish.put_problem.clear();
        }
        place(state, fmt::format("furnish:page:{}", page.name));
    }
}

std::string nameOnPointer(const ThingPlacing& placing) {
    if (const auto* piece = std::get_if<plan::Furniture>(&placing.thing))
        return piece->name.empty() ? form::kindName(*piece) : piece->name;
    if (const auto* opening = std::get_if<plan::Opening>(&placing.thing))
        return form::kindName(opening->kind);
    return form::kindName(std::get<plan::Luminaire>(placing.thing).kind);
}

bool goesOnWall(const ThingPlacing& placing) {
    const auto* lamp = std::get_if<plan::Luminaire>(&placing.thing);
    return std::holds_alternative<plan::Opening>(placing.thing) ||
           (lamp != nullptr && lamp->kind == plan::Luminaire::Kind::Wall);
}

bool canTurn(const ThingPlacing& placing) {
    const auto* lamp = std::get_if<plan::Luminaire>(&placing.thing);
    return std::holds_alternative<plan::Furniture>(placing.thing) ||
           (lamp != nullptr && lamp->kind == plan::Luminaire::Kind::Linear);
}

/// The walls of the room one is in, as buttons.
void putOnWall(State& state, const plan::Room& room) {
    form::note(state,
               fmt::format("Or into the middle of a wall of {}:", room.name.empty() ? room.id : room.name));
    std::string chosen;
    const float s = state.scale;
    float left = 0;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const float width = ImGui::CalcTextSize(room.walls[i].id.c_str()).x + 26 * s;
        if (i > 0 && left > width + 4 * s) ImGui::SameLine(0, 4 * s);
        if (i == 0 || left <= width + 4 * s) left = form::kPanelWidth * s;
        left -= width + 4 * s;
        ImGui::PushID(static_cast<int>(i));
        if (form::chooseButton(state, room.walls[i].id.c_str(), false, width)) chosen = room.walls[i].id;
        ImGui::PopID();
        place(state, fmt::format("furnish:wall:{}", room.walls[i].id));
    }
    if (!chosen.empty()) putThingInto(state, std::string(room.id), chosen);
}

void onPointer(State& state) {
    if (!state.thing_placing) return;
    const float s = state.scale;
    ImGui::PushFont(state.fonts.strong);
    wrapped(fmt::format("On the pointer: {}", nameOnPointer(*state.thing_placing)));
    ImGui::PopFont();
    const bool turns = canTurn(*state.thing_placing);
    form::note(state,
               turns ? "Click where it goes, in the plan or on the stage. R turns it, Shift puts down more "
                       "than one, Alt leaves the walls alone."
                     : "Click where it goes, in the plan or on the stage. Shift puts down more than one.");
    const plan::Room* room = standingRoom(state);
    const float half = (form::kPanelWidth * s - 8 * s) / 2;
    if (room != nullptr && goesOnWall(*state.thing_placing)) {
        putOnWall(state, *room);
    } else {
        ImGui::BeginDisabled(room == nullptr);
        if (largeButton(state, "Put it in the middle of this room", state.tokens->accent,
                        {form::kPanelWidth * s, 36 * s}, true))
            putThingInto(state, state.room);
        place(state, "furnish:middle");
        ImGui::EndDisabled();
    }
    if (!state.thing_placing) return;
    if (turns) {
        if (ImGui::Button("Turn it", {half, 0})) turnThing(state);
        place(state, "furnish:turn");
        ImGui::SameLine();
    }
    if (ImGui::Button("Not after all", {turns ? half : form::kPanelWidth * s, 0}))
        state.thing_placing.reset();
    place(state, "furnish:cancel");
    ImGui::Separator();
}

bool matches(std::string_view name, std::string_view search) {
    const auto same = [](char a, char b) {
        return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
    };
    return std::search(name.begin(), name.end(), search.begin(), search.end(), same) != name.end();
}

/// The size of what a glTF file holds.
std::expected<plan::Size3, std::string> sizeOfFile(const std::filesystem::path& file) {
    const auto parts = meshes::readGltf(file);
    if (!parts) return std::unexpected(parts.error());
    constexpr double kFar = std::numeric_limits<double>::max();
    plan::Vec3 low{kFar, kFar, kFar};
    plan::Vec3 high{-kFar, -kFar, -kFar};
    for (const auto& part : *parts)
        for (const plan::Vec3 p : part.mesh.positions_mm) {
            low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
            high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
        }
    if (low.x >= high.x || low.y >= high.y || low.z >= high.z)
        return std::unexpected(fmt::format("'{}' holds nothing with a size", file.string()));
    return plan::Size3{high.x - low.x, high.y - low.y, high.z - low.z};
}

void placeFile(State& state) {
    const std::filesystem::path folder = std::filesystem::absolute(state.document.file()).parent_path();
    const std::filesystem::path file = folder / state.furnish.gltf_file;
    const auto size = sizeOfFile(file);
    state.furnish.put_problem = size ? "" : size.error();
    if (!size) return;
    startThing(state, edit::pieceFromFile(file.lexically_proximate(folder).generic_string(), *size));
}

void fileRow(State& state) {
    const float s = state.scale;
    ImGui::SetNextItemWidth(form::kPanelWidth * s - 96 * s);
    const bool entered = ImGui::InputTextWithHint(
        "##gltf", "glTF file, by its path", &state.furnish.gltf_file, ImGuiInputTextFlags_EnterReturnsTrue);
    place(state, "furnish:gltf");
    ImGui::SameLine();
    ImGui::BeginDisabled(state.furnish.gltf_file.empty());
    if (ImGui::Button("Place it", {88 * s, 0}) || entered) placeFile(state);
    place(state, "furnish:gltf-place");
    ImGui::EndDisabled();
}

std::string sizeInWords(const State& state, const plan::FurnitureKind& kind) {
    const auto units = state.plan().units;
    return fmt::format(
        "{}: usually {} wide, {} deep, {} high", kind.name, edit::lengthInWords(kind.size.width_mm, units),
        edit::lengthInWords(kind.size.depth_mm, units), edit::lengthInWords(kind.size.height_mm, units));
}

void furniturePage(State& state) {
    const float s = state.scale;
    ImGui::SetNextItemWidth(form::kPanelWidth * s);
    ImGui::InputTextWithHint("##kinds", "Find a kind: bed, tall unit, rug", &state.furnish.search);
    place(state, "furnish:search");
    const auto* on_pointer =
        state.thing_placing ? std::get_if<plan::Furniture>(&state.thing_placing->thing) : nullptr;
    const std::string now = on_pointer == nullptr ? "" : on_pointer->kind;
    const float above = state.thing_placing ? 330 * s : 220 * s;
    ImGui::BeginChild("kinds",
                      {form::kPanelWidth * s, std::max(200 * s, state.stage.height - 84 * s - above)});
    std::size_t shown = 0;
    for (const auto& kind : plan::furnitureKinds()) {
        const std::string key(kind.key);
        if (!matches(kind.name, state.furnish.search) && !matches(kind.key, state.furnish.search)) continue;
        form::nextTile(state, shown++);
        const bool clicked =
            form::tile(state, "furnish:kind:" + key, std::string(kind.name), sizeInWords(state, kind),
                       key == now, [&](ImDrawList& list, ImVec2 centre, float half) {
                           form::piecePicture(state, list, key, centre, half);
                       });
        if (clicked)
            if (const auto piece = edit::usualPiece(key)) startThing(state, *piece);
    }
    if (shown == 0) form::note(state, "No kind is called that.");
    ImGui::EndChild();
    fileRow(state);
}
} // namespace

void form::panelProblem(const State& state) {
    if (state.furnish.put_problem.empty()) return;
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->fault));
    ImGui::PushTextWrapPos(ImGui::GetCursorPosX() + kPanelWidth * state.scale);
    ImGui::TextUnformatted(state.furnish.put_problem.c_str());
    ImGui::PopTextWrapPos();
    ImGui::PopStyleColor();
}

void furnishPanel(State& state) {
    pages(state);
    ImGui::Dummy({form::kPanelWidth * state.scale, 2 * state.scale});
    onPointer(state);
    form::panelProblem(state);
    switch (state.furnish.page) {
    case FurnishPage::Furniture:
        furniturePage(state);
        break;
    case FurnishPage::Openings:
        form::openingsPage(state);
        break;
    case FurnishPage::Luminaires:
        form::luminairesPage(state);
        break;
    case FurnishPage::Room:
        form::roomPage(state);
        break;
    case FurnishPage::Here:
        form::herePage(state);
        break;
    }
}

} // namespace gangway::app
