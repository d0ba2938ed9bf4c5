// The bench's front view: the plate in true proportion with its outside sizes and pitch; a gang is chosen by
// clicking it.
#include "app/plate_bench_parts.hpp"

#include "app/plate_front.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app::bench {

namespace {
constexpr float kMostPxPerMm = 4.2F; ///< a single plate needs no more

Sheet sheetFor(const State& state, ImVec2 low, ImVec2 high) {
    const auto& plate = state.bench.composed;
    const float s = state.scale;
    // Room for dimensions: at the left one row, at the right one, below two.
    const bool tight = high.y - low.y < kTight * s;
    const float wide = high.x - low.x - 168 * s;
    const float tall = high.y - low.y - (tight ? 86 : 128) * s;
    const float px = std::min({wide / static_cast<float>(std::max(1.0, plate.width_mm)),
                               tall / static_cast<float>(std::max(1.0, plate.height_mm)), kMostPxPerMm * s});
    return {state,
            *ImGui::GetWindowDrawList(),
            {(low.x + high.x) / 2, low.y + (tight ? 14 : 36) * s + tall / 2},
            std::max(px, 0.2F)};
}

/// A number of the drawing that can be typed takes the cursor to its box.
void typeHere(State& state, const Sheet& sheet, double x_mm, double y_mm, float dx, float dy,
              const char* field) {
    if (ownFormat(state) == nullptr) return;
    const ImVec2 at = sheet.at(x_mm, y_mm);
    const float s = state.scale;
    ImGui::SetCursorScreenPos({at.x + dx - 24 * s, at.y + dy - 10 * s});
    ImGui::PushID(field);
    if (ImGui::InvisibleButton("type", {48 * s, 20 * s})) state.bench.focus = field;
    ImGui::PopID();
    if (ImGui::IsItemHovered()) hint("Click to type it");
}

void dimensions(State& state, const Sheet& sheet) {
    const auto& plate = state.bench.composed;
    const float s = state.scale;
    const double w = plate.width_mm / 2;
    const double h = plate.height_mm / 2;
    const float below = sheet.at(0, -h).y;
    const Lattice lattice = latticeOf(state);
    const float overall = below + (lattice.columns > 1 ? 56 : 32) * s;
    dimensionAcross(sheet, -w, w, -h, overall);
    typeHere(state, sheet, 0, -h, 0, overall - below, "plate width");
    const float left = sheet.at(-w, 0).x - 32 * s;
    dimensionUp(sheet, -h, h, -w, left, Beside::Left);
    typeHere(state, sheet, -w, 0, -58 * s, 0, "plate height");
    for (int i = 0; i + 1 < lattice.columns; ++i) {
        const double x = lattice.pitch_mm.x * (i - (lattice.columns - 1) / 2.0);
        dimensionAcross(sheet, x, x + lattice.pitch_mm.x, -h, below + 26 * s);
    }
    for (int i = 0; i + 1 < lattice.rows; ++i) {
        const double y = lattice.pitch_mm.y * (i - (lattice.rows - 1) / 2.0);
        dimensionUp(sheet, y, y + lattice.pitch_mm.y, w, sheet.at(w, 0).x + 28 * s, Beside::Right);
    }
}

void chosenOutline(const State& state, const Sheet& sheet, const catalogue::Gang& gang) {
    const ImVec2 a = sheet.at(gang.centre_mm.x - gang.width_mm / 2, gang.centre_mm.y + gang.height_mm / 2);
    const ImVec2 b = sheet.at(gang.centre_mm.x + gang.width_mm / 2, gang.centre_mm.y - gang.height_mm / 2);
    const float s = state.scale;
    const ImU32 accent = packed(state.tokens->accent);
    sheet.list.AddRect({a.x - 3 * s, a.y - 3 * s}, {b.x + 3 * s, b.y + 3 * s}, packed(state.tokens->raised),
                       5 * s, 0, 5 * s);
    sheet.list.AddRect({a.x - 3 * s, a.y - 3 * s}, {b.x + 3 * s, b.y + 3 * s}, accent, 5 * s, 0, 2.5F * s);
}

/// An empty gang asks to be filled.
void emptySign(const State& state, const Sheet& sheet, const catalogue::Gang& gang) {
    const ImVec2 c = sheet.at(gang.centre_mm.x, gang.centre_mm.y);
    const float r = std::min(9 * state.scale, static_cast<float>(gang.width_mm) * sheet.px_per_mm * 0.3F);
    const unsigned face = finishColour(state.bench.catalogue, gang.finish);
    const ImU32 ink = packed(onSurface(face, 0.45F));
    sheet.list.AddLine({c.x - r, c.y}, {c.x + r, c.y}, ink, 1.6F * state.scale);
    sheet.list.AddLine({c.x, c.y - r}, {c.x, c.y + r}, ink, 1.6F * state.scale);
}

void gangButton(State& state, const Sheet& sheet, std::size_t index) {
    const auto& gang = state.bench.composed.gangs[index];
    const ImVec2 a = sheet.at(gang.centre_mm.x - gang.width_mm / 2, gang.centre_mm.y + gang.height_mm / 2);
    const ImVec2 b = sheet.at(gang.centre_mm.x + gang.width_mm / 2, gang.centre_mm.y - gang.height_mm / 2);
    ImGui::SetCursorScreenPos(a);
    ImGui::PushID(static_cast<int>(index));
    const bool clicked =
        ImGui::InvisibleButton("gang", {std::max(4.0F, b.x - a.x), std::max(4.0F, b.y - a.y)});
    place(state, fmt::format("bench:gang:{}", index + 1));
    ImGui::PopID();
    if (clicked) state.bench.gang = index;
    if (!ImGui::IsItemHovered()) return;
    sheet.list.AddRect(a, b, packed(state.tokens->accent, 0.6F), 3, 0, 1.5F);
    std::string name = "empty: choose a module at the right";
    if (gang.module != nullptr) name = gang.module->name;
    if (gang.unknown) name = gang.label + ", which the catalogue does not have";
    hint(name.c_str());
}
} // namespace

void drawFrontView(State& state, ImVec2 low, ImVec2 high) {
    const Sheet sheet = sheetFor(state, low, high);
    const auto& plate = state.bench.composed;
    dimensions(state, sheet);
    drawFront(sheet.list, *state.tokens, state.bench.catalogue, plate, sheet.origin, sheet.px_per_mm);
    for (std::size_t i = 0; i < plate.gangs.size(); ++i) {
        if (plate.gangs[i].module_number == 0) emptySign(state, sheet, plate.gangs[i]);
        gangButton(state, sheet, i);
    }
    if (state.bench.gang < plate.gangs.size()) chosenOutline(state, sheet, plate.gangs[state.bench.gang]);
}

} // namespace gangway::app::bench
