#include "app/overlays.hpp"

#include "app/finding_parts.hpp"
#include "app/overlay_parts.hpp"
#include "app/panels.hpp"
#include "geometry/walls.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gangway::app {

namespace {
// On the picture and not on the screen's paper: both themes draw them alike.
constexpr const Tokens& kOn = kLight;
constexpr double kReachStepMm = 50;
constexpr double kMarginCellMm = 50;

/// A tint of its own for each kind, told apart by its hatch as well.
constexpr unsigned kCable = 0x7A5C1E;
constexpr unsigned kArm = 0x4B4F8C;

checks::Facts factsOf(const State& state, const std::set<std::string>* rooms) {
    return {*state.derived.house, state.catalogue, *findingPack(state), state.document.file().parent_path(),
            rooms};
}

const catalogue::Body* bodyOf(const State& state) {
    const auto& bodies = findingPack(state)->bodies;
    const auto found = std::ranges::find(bodies, state.overlays.body, &catalogue::Body::id);
    return found == bodies.end() ? nullptr : &*found;
}

/// What is asked for of the room's walls, made again when the plan, the room or the choice changed.
void refresh(State& state, const plan::Room& room) {
    Overlays& overlays = state.overlays;
    const std::string key = fmt::format("{} {} {} {} {} {}", state.document.version(), room.id, overlays.wet,
                                        overlays.cables, overlays.body, findingPack(state)->id);
    if (overlays.key == key) return;
    overlays.key = key;
    overlays.walls.assign(room.walls.size(), {});
    const std::set<std::string> only = {room.id};
    const checks::Facts facts = factsOf(state, &only);
    const catalogue::Body* body = bodyOf(state);
    for (std::size_t wall = 0; wall < room.walls.size(); ++wall) {
        WallOverlay& overlay = overlays.walls[wall];
        if (overlays.cables) overlay.cables = checks::zoneAreas(facts, room, wall);
        if (overlays.wet)
            overlay.wet = checks::wallZoneAreas(*state.derived.house, *findingPack(state), room, wall);
        if (body != nullptr) overlay.reach = checks::reachShell(facts, room, wall, *body, kReachStepMm);
    }
}

std::vector<ImVec2> onScreen(const std::vector<plan::Vec2>& area, const Projector& project) {
    std::vector<ImVec2> points;
    for (const plan::Vec2 at : area)
        if (const auto point = project(at.x, at.y)) points.push_back(*point);
    return points.size() == area.size() ? points : std::vector<ImVec2>{};
}

} // namespace

void hatched(ImDrawList& list, const std::vector<plan::Vec2>& area, const Projector& project, unsigned ink,
             bool rising, float s) {
    const auto points = onScreen(area, project);
    if (points.size() < 3) return;
    for (const auto& triangle : geometry::triangulate(area))
        list.AddTriangleFilled(points[triangle[0]], points[triangle[1]], points[triangle[2]],
                               packed(ink, 0.13F));
    list.AddPolyline(points.data(), static_cast<int>(points.size()), packed(ink, 0.75F), ImDrawFlags_Closed,
                     1.2F * s);
    // Lines of the wall's own plane, so that they lie on it in perspective too: v = +-u + c.
    double low = 1e300;
    double high = -1e300;
    const double slope = rising ? 1 : -1;
    for (const plan::Vec2 at : area) {
        low = std::min(low, at.y - slope * at.x);
        high = std::max(high, at.y - slope * at.x);
    }
    constexpr double kEveryMm = 90;
    for (double c = std::ceil(low / kEveryMm) * kEveryMm; c < high; c += kEveryMm) {
        std::vector<plan::Vec2> cuts;
        for (std::size_t i = 0; i < area.size(); ++i) {
            const plan::Vec2 a = area[i];
            const plan::Vec2 b = area[(i + 1) % area.size()];
            const double fa = a.y - slope * a.x - c;
            const double fb = b.y - slope * b.x - c;
            if ((fa < 0) != (fb < 0)) cuts.push_back(a + (b - a) * (fa / (fa - fb)));
        }
        std::ranges::sort(cuts, {}, &plan::Vec2::x);
        for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) {
            const auto from = project(cuts[i].x, cuts[i].y);
            const auto to = project(cuts[i + 1].x, cuts[i + 1].y);
            if (from && to) list.AddLine(*from, *to, packed(ink, 0.45F), s);
        }
    }
}

void areaName(const State& state, const std::vector<plan::Vec2>& area, const Projector& project,
              const std::string& words, unsigned ink) {
    const auto points = onScreen(area, project);
    if (points.size() < 3) return;
    ImVec2 low = points.front();
    ImVec2 high = low;
    for (const ImVec2 at : points) {
        low = {std::min(low.x, at.x), std::min(low.y, at.y)};
        high = {std::max(high.x, at.x), std::max(high.y, at.y)};
    }
    const ImFont& small = *state.fonts.small;
    const ImVec2 extent = small.CalcTextSizeA(small.FontSize, 1e4F, 0, words.c_str());
    const float s = state.scale;
    if (high.x - low.x < extent.x + 12 * s || high.y - low.y < extent.y + 6 * s) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 at{low.x + 6 * s, low.y + 4 * s};
    list.AddRectFilled({at.x - 3 * s, at.y - s}, {at.x + extent.x + 3 * s, at.y + extent.y + s},
                       packed(kOn.paper, 0.88F), 3 * s);
    list.AddText(&small, small.FontSize, at, packed(ink), words.c_str());
}

namespace {
void drawReach(const State& state, const WallOverlay& overlay, const Projector& project) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (const checks::ReachColumn& column : overlay.reach) {
        if (column.high_mm <= column.low_mm) continue;
        const auto points = onScreen({{column.from_mm, column.low_mm},
                                      {column.to_mm, column.low_mm},
                                      {column.to_mm, column.high_mm},
                                      {column.from_mm, column.high_mm}},
                                     project);
        if (points.size() != 4) continue;
        list.AddQuadFilled(points[0], points[1], points[2], points[3], packed(kArm, 0.16F));
        list.AddLine(points[0], points[1], packed(kArm, 0.8F), 1.4F * state.scale);
        list.AddLine(points[3], points[2], packed(kArm, 0.8F), 1.4F * state.scale);
    }
}

/// Good, good enough, fragile, wrong: what is good stands out, what is wrong keeps the drawing legible.
struct MarginLook {
    float from_mm;
    unsigned ink;
    float alpha;
};
constexpr auto kMargins = std::to_array<MarginLook>(
    {{50, 0x0B6E5F, 0.42F}, {15, 0x0B6E5F, 0.24F}, {0, 0xC98A1B, 0.42F}, {-1e9F, 0x9E1B32, 0.09F}});

std::size_t lookOf(float mm) {
    std::size_t look = 0;
    while (mm < kMargins[look].from_mm)
        ++look;
    return look;
}

void drawMargins(State& state, const Leeway& leeway, const plan::Room& room, const Projector& project) {
    Overlays& overlays = state.overlays;
    if (overlays.margin_key != leeway.key) {
        overlays.margin_key = leeway.key;
        const std::set<std::string> only = {room.id};
        const checks::Facts facts = factsOf(state, &only);
        const checks::WallScene scene = checks::sceneOf(facts, room, leeway.wall);
        overlays.margin = checks::marginPicture(
            facts, scene, checks::pointOf(state.catalogue, *findingPack(state), leeway.plate), kMarginCellMm);
    }
    const checks::MarginPicture& picture = overlays.margin;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const double length = geometry::wallFrame(room, leeway.wall).length_mm;
    for (int row = 0; row < picture.rows; ++row)
        for (int column = 0; column < picture.columns;) {
            const std::size_t look = lookOf(picture.at(column, row));
            int end = column + 1;
            while (end < picture.columns && lookOf(picture.at(end, row)) == look)
                ++end;
            const double left = column * picture.cell_mm;
            const double right = std::min(end * picture.cell_mm, length);
            const double low = row * picture.cell_mm;
            const auto points = onScreen(
                {{left, low}, {right, low}, {right, low + picture.cell_mm}, {left, low + picture.cell_mm}},
                project);
            if (points.size() == 4)
                list.AddQuadFilled(points[0], points[1], points[2], points[3],
                                   packed(kMargins[look].ink, kMargins[look].alpha));
            column = end;
        }
}

void legend(const State& state) {
    static constexpr std::array<const char*, 4> kWords = {"50 mm and more", "15 to 50 mm", "less than 15 mm",
                                                          "a check fails"};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    for (std::size_t i = 0; i < kMargins.size(); ++i) {
        const ImVec2 at = ImGui::GetCursorScreenPos();
        list.AddRectFilled({at.x + 24 * s, at.y + 3 * s}, {at.x + 42 * s, at.y + 15 * s}, packed(kOn.paper));
        list.AddRectFilled({at.x + 24 * s, at.y + 3 * s}, {at.x + 42 * s, at.y + 15 * s},
                           packed(kMargins[i].ink, kMargins[i].alpha * 1.6F));
        ImGui::SetCursorScreenPos({at.x + 50 * s, at.y});
        ImGui::TextUnformatted(kWords[i]);
    }
}
/// For the report: that it is drawn.
void told(State& state, const std::string& name) {
    state.places["overlaid:" + name] = {state.stage.x, state.stage.y, 1, 1};
}
} // namespace

void overlayRows(State& state) {
    Overlays& overlays = state.overlays;
    const float s = state.scale;
    ImGui::Dummy({0, 6 * s});
    ImGui::PushFont(state.fonts.strong);
    ImGui::TextUnformatted("Laid over the house");
    ImGui::PopFont();
    const auto choice = [&](const char* label, bool& chosen, const char* key) {
        ImGui::Checkbox(label, &chosen);
        place(state, key);
    };
    choice("Zones of baths and showers", overlays.wet, "overlay:wet");
    choice("Cable zones", overlays.cables, "overlay:cables");
    choice("Margins of the chosen plate", overlays.margins, "overlay:margins");
    choice("What is plugged in, and outlets left", overlays.plugs, "overlay:plugs");
    choice("Ways at night, on the plan", overlays.night, "overlay:night");
    ImGui::PushFont(state.fonts.small);
    if (overlays.margins) legend(state);
    if (overlays.cables && findingPack(state)->zones.empty())
        wrapped("This country pack says nothing of cable zones.");
    if (overlays.cables || overlays.wet)
        wrapped(
            "Zones show where cables and water are meant to be. Detect before drilling; the country's own "
            "edition and a licensed person decide.");
    ImGui::PopFont();
    ImGui::TextUnformatted("Reach of");
    ImGui::SameLine(0, 8 * s);
    const catalogue::Body* body = bodyOf(state);
    ImGui::SetNextItemWidth(200 * s);
    if (ImGui::BeginCombo("##body", body == nullptr ? "nobody" : body->name.c_str())) {
        if (ImGui::Selectable("nobody", body == nullptr)) overlays.body.clear();
        for (const catalogue::Body& one : findingPack(state)->bodies) {
            if (ImGui::Selectable(one.name.c_str(), overlays.body == one.id)) overlays.body = one.id;
            place(state, "overlay:body:" + one.id);
        }
        ImGui::EndCombo();
    }
    place(state, "overlay:body");
    ImGui::Dummy({0, 6 * s});
}

void drawOverlays(State& state, const plan::Room& room, std::size_t wall, const Projector& project,
                  Place place) {
    const Overlays& overlays = state.overlays;
    if (state.seat != Seat::Designer || !state.derived.house || findingPack(state) == nullptr) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const HardEdges hard(list);
    const Leeway& leeway = state.leeway;
    if (overlays.margins && place == Place::Strip && !leeway.key.empty() && leeway.room == room.id &&
        leeway.wall == wall)
        drawMargins(state, leeway, room, project);
    if (!overlays.wet && !overlays.cables && overlays.body.empty()) return;
    refresh(state, room);
    if (wall >= overlays.walls.size()) return;
    const WallOverlay& overlay = overlays.walls[wall];
    drawReach(state, overlay, project);
    for (const checks::ZoneArea& area : overlay.cables)
        hatched(list, area.area_mm, project, kCable, true, state.scale);
    for (const checks::WetWallArea& area : overlay.wet)
        hatched(list, area.outline_mm, project, kWater, false, state.scale);
    if (place == Place::Strip && !overlay.cables.empty()) told(state, "cables:" + room.walls[wall].id);
    if (place == Place::Strip && !overlay.wet.empty()) told(state, "wet:" + room.walls[wall].id);
    for (const checks::ZoneArea& area : overlay.cables)
        if (area.point.empty()) areaName(state, area.area_mm, project, area.name, kCable);
    for (const checks::WetWallArea& area : overlay.wet)
        areaName(state, area.outline_mm, project, fmt::format("zone {}", area.number), kWater);
}

std::vector<checks::WetVolume> wetVolumesOf(const State& state) {
    std::vector<checks::WetVolume> volumes;
    if (!state.derived.house || findingPack(state) == nullptr) return volumes;
    for (const plan::Room& room : state.plan().rooms)
        std::ranges::move(checks::wetVolumes(*state.derived.house, *findingPack(state), room.id),
                          std::back_inserter(volumes));
    return volumes;
}

} // namespace gangway::app
