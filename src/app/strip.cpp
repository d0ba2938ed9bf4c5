// The wall strip: the room one stands in, unrolled, drawn by the same code as the printed sheets.
#include "app/panels.hpp"
#include "app/picture_upload.hpp"

#include "export/export.hpp"
#include "geometry/frames.hpp"
#include "review/review.hpp"

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {
constexpr double kStripScale = 40; ///< leaves tags and numbers readable at the strip's usual height
constexpr int kLargestTexture = 8192;

void upload(StripPicture& picture, const exporting::Bitmap& bitmap) {
    uploadPicture(picture.texture, bitmap);
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
    drawing::Pt toPaper(ImVec2 at) const {
        return {static_cast<double>((at.x - corner.x) / px_per_mm),
                height_mm - static_cast<double>((at.y - corner.y) / px_per_mm)};
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

/// The wall whose stretch of the strip a screen point is over, and the place on it; nullopt between walls.
std::optional<Spot> spotOnStrip(const State& state, const plan::Room& room, const Mapping& map, ImVec2 at) {
    const drawing::Pt paper = map.toPaper(at);
    for (const auto& wall : state.strip.strip.walls) {
        const auto frame = geometry::wallFrame(room, wall.wall);
        const double u = (paper.x - wall.origin.x) * kStripScale;
        if (u < 0 || u > frame.length_mm) continue;
        Spot spot{room.id, {plan::Host::Kind::Wall, room.walls[wall.wall].id, "", "", u, 0}};
        spot.host.v_mm = (paper.y - wall.origin.y) * kStripScale;
        return spot;
    }
    return std::nullopt;
}

Projector stripProjector(const State& state, const plan::Room& room, const Mapping& map,
                         const plan::Host& host) {
    for (const auto& wall : state.strip.strip.walls)
        if (host.kind == plan::Host::Kind::Wall && room.walls[wall.wall].id == host.wall)
            return [map, origin = wall.origin](double u_mm, double v_mm) {
                return std::optional(
                    map.toScreen({origin.x + u_mm / kStripScale, origin.y + v_mm / kStripScale}));
            };
    return [](double, double) { return std::optional<ImVec2>(); };
}

Projector wallProjector(const State& state, const plan::Room& room, const Mapping& map, std::size_t wall) {
    plan::Host host;
    host.wall = room.walls[wall].id;
    return stripProjector(state, room, map, host);
}

/// Outlines and states over the drawn plates; the plate under the pointer, empty for none.
std::string platesOnStrip(State& state, const plan::Room& room, const Mapping& map, bool over) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    constexpr float kGrow = 5; // a finger's worth round small plates
    std::string hit;
    bool on_badge = false;
    const auto chosen = chosenPlates(state);
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
            const bool is_chosen = std::ranges::find(chosen, plate.id) != chosen.end();
            if (is_chosen || plate.id == state.hovered || under)
                list.AddRect({reach.x, reach.y}, {reach.x + reach.width, reach.y + reach.height},
                             packed(kLight.accent), 3, 0, is_chosen ? 2.5F : 1.5F);
            if (now != review::State::Open)
                stateShape(state, list, {reach.x + reach.width, reach.y}, 5 * state.scale, now);
            on_badge =
                findingBadge(state, plate.id, {reach.x, reach.y + reach.height}, over, "strip") || on_badge;
        }
    }
    return on_badge ? std::string() : hit;
}

/// The open finding on the wall of its plate.
void findingOnStrip(State& state, const plan::Room& room, const Mapping& map) {
    const auto* plate = plan::findPlate(state.plan(), findingPlate(state));
    if (plate == nullptr || plate->room != room.id || plate->host.kind != plan::Host::Kind::Wall) return;
    for (const auto& wall : state.strip.strip.walls) {
        if (room.walls[wall.wall].id != plate->host.wall) continue;
        const auto frame = geometry::wallFrame(room, wall.wall);
        drawFindingMarks(
            state,
            [&](plan::Vec3 point) {
                const plan::Vec3 at = geometry::toFrame(frame, point);
                return std::optional(
                    map.toScreen({wall.origin.x + at.x / kStripScale, wall.origin.y + at.y / kStripScale}));
            },
            Place::Strip);
        return;
    }
}

DragKeys keysFor(const Mapping& map) {
    constexpr double kSnap_px = 8;
    const ImGuiIO& io = ImGui::GetIO();
    return {io.KeyAlt, io.KeyShift, kSnap_px * kStripScale / static_cast<double>(map.px_per_mm)};
}

/// True while a plate is dragged along the strip, and on the release that ends it.
bool dragOnStrip(State& state, const plan::Room& room, const Mapping& map, const std::string& hit,
                 bool on_number) {
    const ImGuiIO& io = ImGui::GetIO();
    const auto pointer = spotOnStrip(state, room, map, io.MousePos);
    if (!hit.empty() && !on_number && ImGui::IsMouseClicked(ImGuiMouseButton_Left) && pointer)
        beginDrag(state, hit, *pointer, Place::Strip);
    if (state.drag.plate.empty() || state.drag.place != Place::Strip) return false;
    if (!ImGui::IsMouseDown(ImGuiMouseButton_Left)) {
        const bool moved = state.drag.moving;
        endDrag(state);
        return moved;
    }
    state.drag.moving = state.drag.moving || ImGui::IsMouseDragging(ImGuiMouseButton_Left, 5);
    if (state.drag.moving && pointer && (io.MouseDelta.x != 0 || io.MouseDelta.y != 0))
        dragTo(state, *pointer, keysFor(map));
    return true;
}

/// A box drawn over the strip chooses the plates in it.
bool boxOnStrip(State& state, const plan::Room& room, const Mapping& map, bool active) {
    const ImGuiIO& io = ImGui::GetIO();
    if (active && io.KeyCtrl && !state.box && ImGui::IsMouseDragging(ImGuiMouseButton_Left, 5))
        state.box = Rect{io.MouseClickedPos[0].x, io.MouseClickedPos[0].y, 0, 0};
    if (!state.box) return false;
    const Rect box{std::min(state.box->x, io.MousePos.x), std::min(state.box->y, io.MousePos.y),
                   std::abs(io.MousePos.x - state.box->x), std::abs(io.MousePos.y - state.box->y)};
    ImGui::GetWindowDrawList()->AddRectFilled({box.x, box.y}, {box.x + box.width, box.y + box.height},
                                              packed(kLight.accent, 0.12F));
    ImGui::GetWindowDrawList()->AddRect({box.x, box.y}, {box.x + box.width, box.y + box.height},
                                        packed(kLight.accent));
    if (ImGui::IsMouseDown(ImGuiMouseButton_Left)) return true;
    choosePlate(state, {}, false);
    for (const auto& wall : state.strip.strip.walls)
        for (const auto& plate : state.plan().plates) {
            if (plate.room != room.id || plate.host.wall != room.walls[wall.wall].id) continue;
            const Rect rect = plateRect(state, map, wall, plate);
            if (box.holds(rect.x + rect.width / 2, rect.y + rect.height / 2))
                choosePlate(state, plate.id, true);
        }
    state.box.reset();
    return true;
}

/// The new plate over the strip.
void placeOnStrip(State& state, const plan::Room& room, const Mapping& map, bool over) {
    if (!state.placing || !over) return;
    const ImGuiIO& io = ImGui::GetIO();
    hoverPlacing(state, spotOnStrip(state, room, map, io.MousePos), keysFor(map));
    if (!state.placing->spot) return;
    drawPlacing(state, *state.placing->spot, stripProjector(state, room, map, state.placing->spot->host));
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left)) putDown(state, io.KeyShift);
}

bool measuresOnStrip(State& state, const plan::Room& room, const Mapping& map) {
    const plan::Plate* plate = plan::findPlate(state.plan(), state.selected);
    if (plate == nullptr || plate->room != room.id) return false;
    return drawMeasures(state, *plate, stripProjector(state, room, map, plate->host), Place::Strip);
}

void clickOnStrip(State& state, const std::string& hit) {
    if (ImGui::GetIO().KeyCtrl) {
        choosePlate(state, hit, true);
    } else if (state.stance == Stance::Walk) {
        // Chosen here, seen there: the stage turns to it.
        choosePlate(state, hit, false);
        showPlate(state, hit);
    } else {
        choosePlate(state, hit, false);
    }
}
} // namespace

namespace {
/// Brings a newly chosen plate's stretch of wall into view.
void showChosen(State& state, const plan::Room& room, float extent_px) {
    StripPicture& picture = state.strip;
    const std::string chosen = state.selected.empty() ? findingPlate(state) : state.selected;
    if (picture.shown_plate == chosen || !state.drag.plate.empty()) return;
    picture.shown_plate = chosen;
    const plan::Plate* plate = plan::findPlate(state.plan(), chosen);
    if (plate == nullptr || plate->room != room.id || plate->host.kind != plan::Host::Kind::Wall) return;
    for (const auto& wall : picture.strip.walls) {
        if (room.walls[wall.wall].id != plate->host.wall) continue;
        const auto at =
            static_cast<float>(wall.origin.x + plate->host.u_mm / kStripScale) * picture.px_per_mm;
        constexpr float kMargin_px = 80;
        const float on_screen = at + picture.pan_px;
        if (on_screen < kMargin_px || on_screen > extent_px - kMargin_px) picture.pan_px = extent_px / 2 - at;
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
    const bool over = ImGui::IsItemHovered();
    const bool active = ImGui::IsItemActive();
    if (active && ImGui::IsMouseDragging(0, 5) && state.drag.plate.empty() && !state.box &&
        !ImGui::GetIO().KeyCtrl && !state.placing)
        picture.pan_px += ImGui::GetIO().MouseDelta.x;
    if (ImGui::IsItemHovered() && ImGui::GetIO().MouseWheel != 0) {
        const float before = picture.zoom;
        picture.zoom = std::clamp(picture.zoom * std::pow(1.12F, ImGui::GetIO().MouseWheel), 1.0F, 6.0F);
        const float under = ImGui::GetIO().MousePos.x - origin.x - picture.pan_px;
        picture.pan_px -= under * (picture.zoom / before - 1);
        state.frames_wanted = std::max(state.frames_wanted, 2);
    }
    showChosen(state, *room, extent.x);
    const float slack = extent.x - width;
    picture.pan_px = slack > 0 ? slack / 2 : std::clamp(picture.pan_px, slack, 0.0F);
    Mapping map{{origin.x + picture.pan_px, origin.y + (extent.y - height) / 2},
                picture.px_per_mm,
                picture.strip.sheet.height_mm};
    list.PushClipRect(origin, {origin.x + extent.x, origin.y + extent.y}, true);
    list.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(picture.texture)), map.corner,
                  {map.corner.x + width, map.corner.y + height});
    for (const auto& wall : picture.strip.walls)
        drawOverlays(state, *room, wall.wall, wallProjector(state, *room, map, wall.wall), Place::Strip);
    const std::string hit = platesOnStrip(state, *room, map, over);
    if (!hit.empty()) state.hovered = hit;
    findingOnStrip(state, *room, map);
    const bool on_number = measuresOnStrip(state, *room, map);
    const bool dragged = dragOnStrip(state, *room, map, over ? hit : std::string(), on_number) ||
                         boxOnStrip(state, *room, map, active);
    placeOnStrip(state, *room, map, over);
    for (const auto& wall : picture.strip.walls)
        drawLeeway(state, *room, wall.wall, wallProjector(state, *room, map, wall.wall));
    const bool clicked = over && ImGui::IsMouseReleased(ImGuiMouseButton_Left) &&
                         std::abs(ImGui::GetMouseDragDelta(0, 0).x) < 5;
    if (clicked && !dragged && !on_number && !state.placing && !hit.empty()) clickOnStrip(state, hit);
    list.PopClipRect();
    list.AddLine({origin.x - 16 * s, origin.y - 8 * s}, {origin.x + extent.x + 16 * s, origin.y - 8 * s},
                 packed(state.tokens->quiet));
}

} // namespace gangway::app
