// Over the drawn plan: its storeys, and what is written into it.
#include "app/panels.hpp"

namespace gangway::app {

void storeyTabs(State& state) {
    const float s = state.scale;
    ImGui::SetCursorScreenPos({state.stage.x + 16 * s, state.stage.y + 12 * s});
    for (const auto& storey : state.plan().storeys) {
        const bool chosen = storey.id == state.storey;
        ImGui::PushStyleColor(ImGuiCol_Button, colour(chosen ? state.tokens->accent : state.tokens->raised));
        ImGui::PushStyleColor(ImGuiCol_ButtonHovered,
                              colour(chosen ? state.tokens->accent : state.tokens->quiet));
        ImGui::PushStyleColor(ImGuiCol_Text, colour(chosen ? state.tokens->on_accent : state.tokens->ink));
        if (ImGui::Button(storey.name.c_str()) && !chosen) {
            state.storey = storey.id;
            for (const auto& room : state.plan().rooms)
                if (room.storey == storey.id) {
                    state.room = room.id;
                    break;
                }
        }
        place(state, "plan:storey:" + storey.id);
        ImGui::PopStyleColor(3);
        ImGui::SameLine(0, 4 * s);
    }
    ImGui::SameLine(0, 20 * s);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 extent{ImGui::CalcTextSize("HeightsLegs").x + 2 * ImGui::GetFrameHeight() + 48 * s,
                        ImGui::GetFrameHeight()};
    ImGui::GetWindowDrawList()->AddRectFilled({at.x - 6 * s, at.y}, {at.x + extent.x, at.y + extent.y},
                                              packed(state.tokens->paper, 0.92F), 6 * s);
    ImGui::Checkbox("Heights", &state.plan_picture.heights);
    place(state, "plan:heights");
    ImGui::SameLine(0, 16 * s);
    ImGui::Checkbox("Legs", &state.legs_on_plan);
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("What works which lamp. Shows control, not cable route");
    place(state, "plan:legs");
}

} // namespace gangway::app
