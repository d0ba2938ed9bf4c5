// The wall strip: the room one stands in, unrolled, drawn by the same code as the printed sheets.
#include "app/panels.hpp"

#include "export/export.hpp"
#include "review/review.hpp"

#include <epoxy/gl.h>

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {
constexpr double kStripScale = 40; ///< leaves tags and numbers readable at the strip's usual height
constexpr int kLargestTexture = 8192;

void upload(StripPicture& picture, const exporting::Bitmap& bitmap) {
    if (picture.texture == 0) glGenTextures(1, &picture.texture);
    glBindTexture(GL_TEXTURE_2D, picture.texture);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, bitmap.width, bitmap.height, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 bitmap.rgba.data());
    picture.texture_width = bitmap.width;
    picture.texture_height = bitmap.height;
}

/// Draws the strip again when the room, the plan or the zoom changed.
void refresh(State& state, const plan::Room& room, float height_px) {
    StripPicture& picture = state.strip;
    if (picture.room != room.id || picture.version != state.document.version()) {
        picture.strip = sheets::wallStrip(state.plan(), state.catalogue, room, kStripScale,
                                          state.document.file().parent_path());
        if (picture.room != room.id) {
            picture.pan_px = 0;
            picture.zoom = 1;
        }
        picture.room = room.id;
        picture.version = state.document.version();
        picture.drawn_px_per_mm = 0;
    }
    const drawing::Sheet& sheet = picture.strip.sheet;
    const float fit = height_px / static_cast<float>(std::max(1.0, sheet.height_mm));
    const float limit =
        static_cast<float>(kLargestTexture / std::max({1.0, sheet.width_mm, sheet.height_mm}));
    picture.px_per_mm = std::min(fit * picture.zoom, limit);
    if (std::abs(picture.px_per_mm - picture.drawn_px_per_mm) < 1e-3F) return;
    const unsigned rgb = state.tokens->paper;
    // Ink on paper in both themes: the strip is the sheet one will print.
    const drawing::Colour paper =
        state.tokens == &kLight
            ? drawing::Colour{static_cast<std::uint8_t>(rgb >> 16U), static_cast<std::uint8_t>(rgb >> 8U),
                              static_cast<std::uint8_t>(rgb)}
            : drawing::Colour{0xE6, 0xE1, 0xD6};
    upload(picture,
           exporting::rasterise(sheet, {0, 0}, sheet.width_mm, sheet.height_mm, picture.px_per_mm, paper));
    picture.drawn_px_per_mm = picture.px_per_mm;
}

struct Mapping {
    ImVec2 corner; ///< of the strip's picture on screen, top left
    float px_per_mm = 1;
    double height_mm = 0;
    ImVec2 toScreen(drawing::Pt at) const {
        return {corner.x + static_cast<float>(at.x) * px_per_mm,
                corner.y + static_cast<float>(height_mm - at.y) * px_per_mm};
    }
};

Rect plateRect(const State& state, const Mapping& map, const sheets::StripWall& wall,
               const plan::Plate& plate) {
    const auto found = state.derived.plates.find(plate.id);
    const double w = found == state.derived.plates.end() ? 80 : found->second.width_mm;
    const double h = found == state.derived.plates.end() ? 80 : found->second.height_mm;
    const auto corner = map.toScreen({wall.origin.x + (plate.host.u_mm - w / 2) / kStripScale,
                                      wall.origin.y + (plate.host.v_mm + h / 2) / kStripScale});
    return {corner.x, corner.y, static_cast<float>(w / kStripScale) * map.px_per_mm,
            static_cast<float>(h / kStripScale) * map.px_per_mm};
}

void platesOnStrip(State& state, const plan::Room& room, const Mapping& map) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const bool over = ImGui::IsItemHovered();
    const bool clicked = over && ImGui::IsMouseReleased(ImGuiMouseButton_Left) &&
                         std::abs(ImGui::GetMouseDragDelta(0, 0).x) < 5;
    constexpr float kGrow = 5; // a finger's worth round small plates
    std::string hit;
    for (const auto& wall : state.strip.strip.walls) {
        for (const auto& plate : state.plan().plates) {
            if (plate.room != room.id || plate.host.kind != plan::Host::Kind::Wall ||
                plate.host.wall != room.walls[wall.wall].id)
                continue;
            const Rect rect = plateRect(state, map, wall, plate);
            state.places["strip:" + plate.id] = {rect.x + rect.width / 2, rect.y + rect.height / 2, 0, 0};
            const Rect reach{rect.x - kGrow, rect.y - kGrow, rect.width + 2 * kGrow, rect.height + 2 * kGrow};
            const bool under = over && reach.holds(mouse.x, mouse.y);
            if (under) hit = plate.id;
            const auto now = stateOf(state, plate);
            if (plate.id == state.selected || plate.id == state.hovered || under)
                list.AddRect({reach.x, reach.y}, {reach.x + reach.width, reach.y + reach.height},
                             packed(state.tokens == &kLight ? state.tokens->accent : kLight.accent), 3, 0,
                             plate.id == state.selected ? 2.5F : 1.5F);
            if (now != review::State::Open)
                stateShape(state, list, {reach.x + reach.width, reach.y}, 5 * state.scale, now);
        }
    }
    if (!hit.empty()) state.hovered = hit;
    if (clicked && !hit.empty()) {
        state.asking_note = false;
        // Chosen here, seen there: the stage turns to it.
        if (state.stance == Stance::Walk)
            showPlate(state, hit);
        else
            state.selected = hit;
    }
}
} // namespace

void drawStrip(State& state) {
    const plan::Room* room = standingRoom(state);
    const float s = state.scale;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 origin = ImGui::GetCursorScreenPos();
    const ImVec2 extent = ImGui::GetContentRegionAvail();
    if (room == nullptr) {
        ImGui::TextDisabled("Stand in a room to see its walls here.");
        return;
    }
    refresh(state, *room, extent.y);
    StripPicture& picture = state.strip;
    const float width = static_cast<float>(picture.strip.sheet.width_mm) * picture.px_per_mm;
    const float height = static_cast<float>(picture.strip.sheet.height_mm) * picture.px_per_mm;
    ImGui::InvisibleButton("strip-mouse", extent);
    if (ImGui::IsItemActive() && ImGui::IsMouseDragging(0, 5)) picture.pan_px += ImGui::GetIO().MouseDelta.x;
    if (ImGui::IsItemHovered() && ImGui::GetIO().MouseWheel != 0) {
        const float before = picture.zoom;
        picture.zoom = std::clamp(picture.zoom * std::pow(1.12F, ImGui::GetIO().MouseWheel), 1.0F, 6.0F);
        const float under = ImGui::GetIO().MousePos.x - origin.x - picture.pan_px;
        picture.pan_px -= under * (picture.zoom / before - 1);
        state.frames_wanted = std::max(state.frames_wanted, 2);
    }
    const float slack = extent.x - width;
    picture.pan_px = slack > 0 ? slack / 2 : std::clamp(picture.pan_px, slack, 0.0F);
    Mapping map{{origin.x + picture.pan_px, origin.y + (extent.y - height) / 2},
                picture.px_per_mm,
                picture.strip.sheet.height_mm};
    list.PushClipRect(origin, {origin.x + extent.x, origin.y + extent.y}, true);
    list.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(picture.texture)), map.corner,
                  {map.corner.x + width, map.corner.y + height});
    platesOnStrip(state, *room, map);
    list.PopClipRect();
    list.AddLine({origin.x - 16 * s, origin.y - 8 * s}, {origin.x + extent.x + 16 * s, origin.y - 8 * s},
                 packed(state.tokens->quiet));
}

} // namespace gangway::app
