// The bench's picture of the plate on a piece of wall, as it will be on the stage; a drag turns it.
#include "app/plate_bench_parts.hpp"

#include "scene/plate_preview.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app::bench {

namespace {
constexpr float kTurnPerPixel = 0.008F;
constexpr float kMostTurn = 1.2F;

glm::vec3 asShown(unsigned rgb) {
    return {static_cast<float>((rgb >> 16U) & 255U) / 255.0F, static_cast<float>((rgb >> 8U) & 255U) / 255.0F,
            static_cast<float>(rgb & 255U) / 255.0F};
}

bool haveRenderer(State& state) {
    PlateBench& bench = state.bench;
    if (bench.renderer) return true;
    if (!bench.renderer_problem.empty()) return false;
    auto made = render::Renderer::create(state.options.shaders);
    if (!made)
        bench.renderer_problem = made.error();
    else
        bench.renderer.emplace(std::move(*made));
    return made.has_value();
}

render::View viewFor(const State& state, ImVec2 size) {
    const PlateBench& bench = state.bench;
    render::View view;
    view.width = std::max(16, static_cast<int>(size.x));
    view.height = std::max(16, static_cast<int>(size.y));
    view.camera = scene::plateCamera(bench.composed.width_mm, bench.composed.height_mm, bench.yaw,
                                     bench.pitch, size.x / std::max(1.0F, size.y));
    view.background = asShown(state.tokens->stage);
    return view;
}

/// Draws only what changed, and makes the picture finer while nothing does.
void bringUpToDate(State& state, const render::View& view) {
    PlateBench& bench = state.bench;
    if (bench.drawn_revision != bench.revision) {
        bench.renderer->setScene(scene::platePreview(bench.catalogue, bench.plate));
        bench.drawn_revision = bench.revision;
        bench.drawn_key.clear();
    }
    const std::string key = fmt::format("{} {} {} {} {}", view.width, view.height, bench.yaw, bench.pitch,
                                        state.tokens == &kLight);
    if (key != bench.drawn_key) {
        bench.texture = bench.renderer->drawToTexture(view);
        bench.drawn_key = key;
        bench.refining = !state.options.plain;
    } else if (bench.refining && state.frames_wanted <= 0 && !ImGui::IsAnyMouseDown()) {
        bench.refining = bench.renderer->refine(view);
    }
    if (bench.refining) state.frames_wanted = std::max(state.frames_wanted, 1);
}
} // namespace

void drawTurnView(State& state, ImVec2 size) {
    PlateBench& bench = state.bench;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const ImVec2 high{low.x + size.x, low.y + size.y};
    ImGui::InvisibleButton("turn", size);
    place(state, "bench:turn");
    if (ImGui::IsItemActive()) {
        const ImVec2 moved = ImGui::GetIO().MouseDelta;
        bench.yaw = std::clamp(bench.yaw - moved.x * kTurnPerPixel, -kMostTurn, kMostTurn);
        bench.pitch = std::clamp(bench.pitch + moved.y * kTurnPerPixel, -kMostTurn, kMostTurn);
    } else if (ImGui::IsItemHovered()) {
        hint("Drag to turn it");
    }
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float round = 8 * state.scale;
    if (!haveRenderer(state)) {
        list.AddRectFilled(low, high, packed(state.tokens->stage), round);
        list.AddText({low.x + 12, low.y + 12}, packed(state.tokens->fault), bench.renderer_problem.c_str());
        return;
    }
    bringUpToDate(state, viewFor(state, size));
    list.AddImageRounded(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(bench.texture)), low, high,
                         {0, 1}, {1, 0}, IM_COL32_WHITE, round);
    list.AddRect(low, high, packed(state.tokens->quiet), round);
}

} // namespace gangway::app::bench
