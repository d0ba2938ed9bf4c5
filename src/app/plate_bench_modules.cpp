// The bench's right column: the plate to be turned, and what stands in the chosen gang.
#include "app/plate_bench_parts.hpp"

#include "app/plate_front.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <GLFW/glfw3.h>

#include <algorithm>

namespace gangway::app::bench {

namespace {
const char* kindWords(catalogue::ModuleKind kind) {
    using Kind = catalogue::ModuleKind;
    switch (kind) {
    case Kind::Socket:
        return "Socket outlets";
    case Kind::Switch:
        return "Switches";
    case Kind::Dimmer:
        return "Dimmers";
    case Kind::Data:
        return "Data";
    case Kind::Tv:
        return "Aerial";
    case Kind::Telephone:
        return "Telephone";
    case Kind::Usb:
        return "USB";
    case Kind::Blank:
        return "Blanks";
    case Kind::CordOutlet:
        return "Cord outlets";
    case Kind::Sensor:
        return "Sensors";
    case Kind::Control:
        return "Controls";
    }
    return "";
}

/// One finish in a line: a swatch and its name.
bool finishLine(State& state, const char* name, const std::string& id, bool chosen) {
    const float s = state.scale;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float high = ImGui::GetTextLineHeight() + 6 * s;
    const bool clicked = ImGui::Selectable(fmt::format("##{}", name).c_str(), chosen, 0, {0, high});
    place(state, "bench:gang-finish:" + id);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const unsigned rgb = finishColour(state.bench.catalogue, id.empty() ? state.bench.composed.finish : id);
    list.AddRectFilled({corner.x + 2 * s, corner.y + 2 * s}, {corner.x + 26 * s, corner.y + high - 2 * s},
                       packed(rgb), 4 * s);
    list.AddRect({corner.x + 2 * s, corner.y + 2 * s}, {corner.x + 26 * s, corner.y + high - 2 * s},
                 packed(onSurface(rgb, 0.7F)), 4 * s);
    list.AddText({corner.x + 34 * s, corner.y + 3 * s}, packed(state.tokens->ink), name);
    return clicked;
}

void gangFinish(State& state, plan::Module& module) {
    const auto* now = state.bench.catalogue.finish(module.finish);
    ImGui::SetNextItemWidth(-1);
    const bool opened =
        ImGui::BeginCombo("##gang-finish", now == nullptr ? "as the frame" : now->name.c_str());
    place(state, "bench:gang-finish");
    if (!opened) return;
    std::optional<std::string> wanted;
    if (finishLine(state, "as the frame", "", module.finish.empty())) wanted = "";
    for (const auto& finish : state.bench.catalogue.finishes)
        if (finishLine(state, finish.name.c_str(), finish.id, module.finish == finish.id)) wanted = finish.id;
    ImGui::EndCombo();
    if (!wanted) return;
    module.finish = *wanted;
    recompose(state);
}

void gangHead(State& state) {
    const PlateBench& bench = state.bench;
    const auto& gangs = bench.composed.gangs;
    std::string what = "empty";
    if (bench.gang < gangs.size() && gangs[bench.gang].module != nullptr)
        what = gangs[bench.gang].module->name;
    if (bench.gang < gangs.size() && gangs[bench.gang].unknown)
        what = gangs[bench.gang].label + " (not in the catalogue)";
    heading(state, fmt::format("Gang {} of {}", bench.gang + 1, gangs.size()).c_str());
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::TextDisabled("%s", linesWithin(*state.fonts.body, what, width, 1).front().c_str());
}

void gangButtons(State& state) {
    const float s = state.scale;
    const bool share = canShare(state);
    const float count = share ? 3 : 2;
    const float width = (ImGui::GetContentRegionAvail().x - 8 * s * (count - 1)) / count;
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {4 * s, ImGui::GetStyle().FramePadding.y});
    const bool fill = choiceButton(state, "Fill all", false, {width, 0});
    place(state, "bench:fill");
    if (ImGui::IsItemHovered()) hint("This module in every gang");
    ImGui::SameLine();
    const bool clear = choiceButton(state, "Empty", false, {width, 0});
    place(state, "bench:empty");
    if (ImGui::IsItemHovered()) hint("Take the module out (Delete)");
    bool beside = false;
    if (share) {
        ImGui::SameLine();
        beside = choiceButton(state, "Add beside", false, {width, 0});
        place(state, "bench:beside");
        if (ImGui::IsItemHovered()) hint("Another switch in the same gang");
    }
    ImGui::PopStyleVar();
    if (fill) fillAll(state);
    if (clear) emptyGang(state);
    if (beside) addBeside(state);
}

/// Label, finish and what can be done with the chosen gang.
void gangPart(State& state) {
    gangHead(state);
    plan::Module* module = chosenModule(state);
    // Each gang's boxes are its own: what is being typed for one must not end up in the next.
    ImGui::PushID(static_cast<int>(state.bench.gang));
    ImGui::BeginDisabled(module == nullptr);
    plan::Module none;
    plan::Module& shown_module = module == nullptr ? none : *module;
    ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x * 0.44F);
    if (ImGui::InputTextWithHint("##label", "label", &shown_module.label)) recompose(state);
    place(state, "bench:label");
    ImGui::SameLine();
    gangFinish(state, shown_module);
    gangButtons(state);
    ImGui::EndDisabled();
    ImGui::PopID();
}

void smallFront(const State& state, const catalogue::ModuleType& module, ImVec2 low, float side) {
    const PlateBench& bench = state.bench;
    const auto& format = *bench.composed.format;
    const double wide = format.aperture_width_mm + (module.gangs - 1) * format.pitch_mm;
    const double tall = format.aperture_height_mm;
    const float px = side / static_cast<float>(std::max(wide, tall));
    drawModule(*ImGui::GetWindowDrawList(), &module, {low.x + side / 2, low.y + side / 2}, wide, tall, px,
               finishColour(bench.catalogue, bench.composed.finish));
}

bool moduleRow(State& state, const catalogue::ModuleType& type) {
    const float s = state.scale;
    const auto& module = catalogue::moduleFor(type, *state.bench.composed.format);
    const plan::Module* chosen = chosenModule(state);
    const bool is_in = chosen != nullptr && chosen->type == type.id;
    const float height = 44 * s;
    const float width = ImGui::GetContentRegionAvail().x;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::PushID(type.id.c_str());
    const bool clicked = ImGui::Selectable("##module", is_in, 0, {width, height});
    place(state, "bench:module:" + type.id);
    ImGui::PopID();
    if (ImGui::IsItemHovered())
        hint(module.depth_mm > 0
                 ? fmt::format("{}: {} deep", type.name, shown(state, module.depth_mm)).c_str()
                 : type.name.c_str());
    smallFront(state, module, {corner.x + 6 * s, corner.y + 4 * s}, 36 * s);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto lines = linesWithin(*state.fonts.small, type.name, width - 58 * s, 2);
    const float line = state.fonts.small->FontSize + 1 * s;
    const float top = corner.y + (height - line * static_cast<float>(lines.size())) / 2;
    for (std::size_t i = 0; i < lines.size(); ++i)
        list.AddText(state.fonts.small, state.fonts.small->FontSize,
                     {corner.x + 52 * s, top + line * static_cast<float>(i)},
                     packed(is_in ? state.tokens->accent : state.tokens->ink), lines[i].c_str());
    return clicked;
}

/// The first module found goes in when Enter is pressed, and the next gang is chosen.
void searchBox(State& state) {
    PlateBench& bench = state.bench;
    ImGui::SetNextItemWidth(-1);
    if (bench.search_focus) ImGui::SetKeyboardFocusHere();
    bench.search_focus = false;
    const bool entered =
        ImGui::InputTextWithHint("##module-search", "Find a module (Ctrl+F)", &bench.search,
                                 ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    place(state, "bench:module-search");
    if (!entered) return;
    const auto found = modulesToChoose(state);
    if (found.empty()) return;
    putModule(state, std::string(found.front()->id));
    if (bench.gang + 1 < bench.composed.gangs.size()) ++bench.gang;
    bench.search_focus = true;
}

void palette(State& state) {
    searchBox(state);
    ImGui::BeginChild("modules", {0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 2 * state.scale});
    const auto found = modulesToChoose(state);
    std::optional<catalogue::ModuleKind> kind;
    std::string wanted;
    for (const auto* module : found) {
        if (kind != module->kind) {
            ImGui::PushFont(state.fonts.small);
            ImGui::TextDisabled("%s", kindWords(module->kind));
            ImGui::PopFont();
        }
        kind = module->kind;
        if (moduleRow(state, *module)) wanted = module->id;
    }
    if (found.empty()) {
        ImGui::PushFont(state.fonts.small);
        wrapped("No module of this format is called that.");
        ImGui::PopFont();
    }
    ImGui::PopStyleVar();
    ImGui::EndChild();
    if (!wanted.empty()) putModule(state, wanted);
}
} // namespace

void drawModuleColumn(State& state, float height) {
    const float s = state.scale;
    const float width = ImGui::GetContentRegionAvail().x;
    drawTurnView(state, {width, std::clamp(height * 0.36F, 120 * s, 300 * s)});
    ImGui::Dummy({0, 2 * s});
    gangPart(state);
    palette(state);
}

} // namespace gangway::app::bench
