// State marks over the plates on the stage: a shape for each state, and the word when there is room.
#include "app/panels.hpp"

#include "geometry/frames.hpp"
#include "review/review.hpp"

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
} // namespace

void drawMarks(State& state, const render::Renderer& renderer, const render::View& view) {
    if (view.hidden_layers.contains(plan::kLayerPlates)) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    for (const auto& placed : placedPlates(state, view)) {
        state.places["plate:" + placed.plate->id] = {placed.at.x, placed.at.y, 0, 0};
        if (state.stance == Stance::Walk && placed.distance > kMarkReach_m) continue;
        if (!seen(renderer, view, placed, state)) {
            state.places.erase("plate:" + placed.plate->id);
            continue;
        }
        const auto now = stateOf(state, *placed.plate);
        const bool chosen = placed.plate->id == state.selected || placed.plate->id == state.hovered;
        const float radius = (chosen ? 9.0F : 7.0F) * state.scale;
        // Above the plate, so that the plate itself stays in sight.
        const float lift = state.stance == Stance::Walk
                               ? std::clamp(60.0F / std::max(0.5F, placed.distance), 14.0F, 70.0F)
                               : 14.0F;
        const ImVec2 centre{placed.at.x, placed.at.y - lift * state.scale};
        list.AddLine({centre.x, centre.y + radius}, placed.at, packed(stateColour(state, now), 0.6F), 1.2F);
        stateShape(state, list, centre, radius, now);
        const bool word = chosen || (state.stance == Stance::Walk && placed.distance < 3.2F);
        if (!word) continue;
        const std::string tag = placed.plate->tag.empty() ? placed.plate->id : placed.plate->tag;
        const std::string text = tag + "  " + std::string(review::word(now));
        ImGui::PushFont(state.fonts.small);
        const ImVec2 size = ImGui::CalcTextSize(text.c_str());
        const ImVec2 corner{centre.x + radius + 5 * state.scale, centre.y - size.y / 2};
        list.AddRectFilled({corner.x - 4, corner.y - 2}, {corner.x + size.x + 5, corner.y + size.y + 2},
                           packed(state.tokens->paper, 0.92F), 4 * state.scale);
        list.AddText(corner, packed(state.tokens->ink), text.c_str());
        ImGui::PopFont();
    }
}

} // namespace gangway::app
