// State marks over the plates on the stage: a shape for each state, and the word when there is room.
#include "app/panels.hpp"

#include "geometry/frames.hpp"
#include "review/review.hpp"

#include <algorithm>
#include <optional>
#include <tuple>

namespace gangway::app {

namespace {
constexpr float kMarkReach_m = 7; ///< farther plates of the room are too small to need a mark

struct Placed {
    const plan::Plate* plate = nullptr;
    ImVec2 at;
    float distance = 0;
};

/// True when nothing solid stands between the eye and the plate, looked at by what a pixel shows.
bool seen(const render::Renderer& renderer, const render::View& view, const Placed& placed,
          const State& state) {
    const auto hit = renderer.pick(view, static_cast<int>(placed.at.x - state.stage.x),
                                   static_cast<int>(placed.at.y - state.stage.y));
    return hit.object == placed.plate->id;
}

std::vector<Placed> placedPlates(const State& state, const render::View& view) {
    std::vector<Placed> list;
    for (const auto& plate : state.plan().plates) {
        const plan::Room* room = plan::findRoom(state.plan(), plate.room);
        if (room == nullptr || room->storey != state.storey || view.hidden_rooms.contains(room->id)) continue;
        if (state.stance == Stance::Walk && plate.room != state.room) continue;
        const auto point = geometry::hostPoint(state.plan(), plate.room, plate.host);
        if (!point) continue;
        const auto* storey = plan::findStorey(state.plan(), room->storey);
        const glm::vec3 at_m = scene::toScene(*point, storey == nullptr ? 0 : storey->elevation_mm);
        const auto pixel = render::project(view, at_m);
        if (!pixel) continue;
        const ImVec2 at{state.stage.x + pixel->x, state.stage.y + pixel->y};
        if (!state.stage.holds(at.x, at.y)) continue;
        list.push_back({&plate, at, glm::distance(at_m, view.camera.eye)});
    }
    return list;
}

struct Mark {
    const plan::Plate* plate = nullptr;
    ImVec2 centre;
    float radius = 0;
    bool chosen = false;
    float distance = 0;
};

bool overlap(const Rect& a, const Rect& b) {
    return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/// Where the word fits beside its mark without lying on another mark or word; nullopt where it fits nowhere.
std::optional<Rect> wordPlace(const Mark& mark, ImVec2 size, const std::vector<Rect>& taken) {
    const float gap = mark.radius + 6;
    const ImVec2 c = mark.centre;
    for (const ImVec2 corner :
         {ImVec2{c.x + gap, c.y - size.y / 2}, ImVec2{c.x - gap - size.x, c.y - size.y / 2},
          ImVec2{c.x - size.x / 2, c.y - gap - size.y}}) {
        const Rect rect{corner.x - 4, corner.y - 2, size.x + 9, size.y + 4};
        const bool free =
            std::none_of(taken.begin(), taken.end(), [&](const Rect& other) { return overlap(rect, other); });
        if (free) return rect;
    }
    return std::nullopt;
}

std::vector<Mark> visibleMarks(State& state, const render::Renderer& renderer, const render::View& view) {
    std::vector<Mark> marks;
    for (const auto& placed : placedPlates(state, view)) {
        if (state.stance == Stance::Walk && placed.distance > kMarkReach_m) continue;
        if (!seen(renderer, view, placed, state)) continue;
        state.places["plate:" + placed.plate->id] = {placed.at.x, placed.at.y, 0, 0};
        const bool chosen = placed.plate->id == state.selected || placed.plate->id == state.hovered;
        // Above the plate, so that the plate itself stays in sight.
        const float lift = state.stance == Stance::Walk
                               ? std::clamp(60.0F / std::max(0.5F, placed.distance), 14.0F, 70.0F)
                               : 14.0F;
        marks.push_back({placed.plate,
                         {placed.at.x, placed.at.y - lift * state.scale},
                         (chosen ? 9.0F : 7.0F) * state.scale,
                         chosen,
                         placed.distance});
        ImGui::GetWindowDrawList()->AddLine(
            {placed.at.x, placed.at.y - lift * state.scale + marks.back().radius}, placed.at,
            packed(stateColour(state, stateOf(state, *placed.plate)), 0.6F), 1.2F);
    }
    // The chosen one's word first, then the nearest ones'.
    std::sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) {
        return std::tuple(!a.chosen, a.distance, a.plate->id) <
               std::tuple(!b.chosen, b.distance, b.plate->id);
    });
    return marks;
}

/// Where a stair of this room shows on the stage, for the report.
void stairPlaces(State& state, const render::Renderer& renderer, const render::View& view) {
    for (const auto& stair : state.derived.stairs) {
        const auto* piece = plan::findFurniture(state.plan(), stair.furniture);
        const auto* room = piece == nullptr ? nullptr : plan::findRoom(state.plan(), piece->room);
        if (room == nullptr || room->id != state.room) continue;
        for (const double part : {0.1, 0.3, 0.5, 0.7}) {
            const plan::Vec2 at = stair.lower_mm + (stair.upper_mm - stair.lower_mm) * part;
            const auto pixel =
                render::project(view, scene::toScene({at.x, at.y, part * piece->size.height_mm},
                                                     elevationOf(state, room->storey)));
            if (!pixel ||
                renderer.pick(view, static_cast<int>(pixel->x), static_cast<int>(pixel->y)).object !=
                    piece->id)
                continue;
            state.places["stair:" + piece->id] = {state.stage.x + pixel->x, state.stage.y + pixel->y, 0, 0};
            break;
        }
    }
}
} // namespace

void drawMarks(State& state, const render::Renderer& renderer, const render::View& view) {
    if (state.stance == Stance::Walk) stairPlaces(state, renderer, view);
    if (view.hidden_layers.contains(plan::kLayerPlates)) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto marks = visibleMarks(state, renderer, view);
    std::vector<Rect> taken;
    for (const auto& mark : marks) {
        stateShape(state, list, mark.centre, mark.radius, stateOf(state, *mark.plate));
        taken.push_back(
            {mark.centre.x - mark.radius, mark.centre.y - mark.radius, 2 * mark.radius, 2 * mark.radius});
    }
    ImGui::PushFont(state.fonts.small);
    for (const auto& mark : marks) {
        if (!mark.chosen && state.stance != Stance::Walk) continue;
        const std::string tag = mark.plate->tag.empty() ? mark.plate->id : mark.plate->tag;
        const std::string text = tag + "  " + std::string(review::word(stateOf(state, *mark.plate)));
        const auto rect = wordPlace(mark, ImGui::CalcTextSize(text.c_str()), taken);
        if (!rect) continue;
        taken.push_back(*rect);
        list.AddRectFilled({rect->x, rect->y}, {rect->x + rect->width, rect->y + rect->height},
                           packed(state.tokens->paper, 0.92F), 4 * state.scale);
        list.AddText({rect->x + 4, rect->y + 2}, packed(state.tokens->ink), text.c_str());
    }
    ImGui::PopFont();
}

} // namespace gangway::app
