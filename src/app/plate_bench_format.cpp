// The bench's left column: which format, how many gangs, which way, which box, which frame.
#include "app/plate_bench_parts.hpp"

#include "app/plate_front.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gangway::app::bench {

namespace {
struct FamilyWords {
    const char* family;
    const char* words;
};
/// Headings over the formats of a family; a family without a row stands under its own id.
constexpr std::array kFamilies{FamilyWords{"round", "Round boxes"},
                               FamilyWords{"british", "British"},
                               FamilyWords{"grid-gb", "British grid"},
                               FamilyWords{"modular", "Italian modules"},
                               FamilyWords{"au", "Australia and New Zealand"},
                               FamilyWords{"us", "United States"},
                               FamilyWords{"", "My own"}};

std::string familyHeading(const std::string& family) {
    const auto* const found =
        std::ranges::find_if(kFamilies, [&](const FamilyWords& row) { return family == row.family; });
    return found == kFamilies.end() ? family : found->words;
}

void smallOutline(const State& state, const catalogue::PlateFormat& format, ImVec2 centre, float side) {
    plan::Plate plate;
    plate.format = format.id;
    const auto composed = catalogue::compose(state.bench.catalogue, plate);
    const auto longest = static_cast<float>(std::max({composed.width_mm, composed.height_mm, 1.0}));
    // One scale for all that fit in, so that sizes can be compared; longer ones are made smaller.
    const float px = std::min(side / 150.0F, side / longest);
    const float w = static_cast<float>(composed.width_mm) / 2 * px;
    const float h = static_cast<float>(composed.height_mm) / 2 * px;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(state.tokens->ink);
    const float round = static_cast<float>(composed.corner_mm) * px;
    list.AddRectFilled({centre.x - w, centre.y - h}, {centre.x + w, centre.y + h},
                       packed(state.tokens->raised), round);
    list.AddRect({centre.x - w, centre.y - h}, {centre.x + w, centre.y + h}, ink, round, 0, 1.2F);
    for (const auto& gang : composed.gangs) {
        const ImVec2 c{centre.x + static_cast<float>(gang.centre_mm.x) * px,
                       centre.y - static_cast<float>(gang.centre_mm.y) * px};
        const float gw = static_cast<float>(gang.width_mm) / 2 * px;
        const float gh = static_cast<float>(gang.height_mm) / 2 * px;
        list.AddRect({c.x - gw, c.y - gh}, {c.x + gw, c.y + gh}, packed(state.tokens->soft_ink));
    }
}

void formatRow(State& state, const catalogue::PlateFormat& format) {
    const float s = state.scale;
    const bool chosen = state.bench.plate.format == format.id;
    const float width = ImGui::GetContentRegionAvail().x;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const auto lines = linesWithin(*state.fonts.small, format.name, width - 60 * s, 2);
    const float height = 36 * s;
    ImGui::PushID(format.id.c_str());
    const bool clicked = ImGui::Selectable("##format", chosen, 0, {width, height});
    place(state, "bench:format:" + format.id);
    ImGui::PopID();
    if (ImGui::IsItemHovered())
        hint(fmt::format("{}: pitch {}, plate {} x {}, up to {} gangs", format.name,
                         shown(state, format.pitch_mm), shown(state, format.single_width_mm),
                         shown(state, format.single_height_mm), format.max_gangs)
                 .c_str());
    smallOutline(state, format, {corner.x + 26 * s, corner.y + height / 2}, 34 * s);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float line = state.fonts.small->FontSize + 1 * s;
    const float top = corner.y + (height - line * static_cast<float>(lines.size())) / 2;
    for (std::size_t i = 0; i < lines.size(); ++i)
        list.AddText(state.fonts.small, state.fonts.small->FontSize,
                     {corner.x + 54 * s, top + line * static_cast<float>(i)},
                     packed(chosen ? state.tokens->accent : state.tokens->ink), lines[i].c_str());
    if (clicked) chooseFormat(state, format.id);
}

void formats(State& state, float height) {
    heading(state, "Format");
    ImGui::BeginChild("formats", {0, height - 72 * state.scale});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 2 * state.scale});
    std::optional<std::string> family;
    // Choosing one composes anew and with it replaces the list that is walked through.
    const auto list = state.bench.catalogue.formats;
    for (const auto& format : list) {
        if (family != format.family) {
            ImGui::PushFont(state.fonts.small);
            ImGui::TextDisabled("%s", familyHeading(format.family).c_str());
            ImGui::PopFont();
        }
        family = format.family;
        formatRow(state, format);
    }
    ImGui::PopStyleVar();
    ImGui::EndChild();
    if (choiceButton(state, "New format of my own", false, {ImGui::GetContentRegionAvail().x, 0}))
        newOwnFormat(state);
    place(state, "bench:own");
    if (ImGui::IsItemHovered()) hint("Every size can be typed; it starts with those of this format");
}

void gangs(State& state) {
    const float s = state.scale;
    const float side = ImGui::GetFrameHeight();
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted("Gangs");
    ImGui::SameLine(96 * s);
    if (choiceButton(state, "-##gangs", false, {side, side})) stepGangs(state, -1);
    place(state, "bench:gangs-");
    if (ImGui::IsItemHovered()) hint("One fewer (-)");
    ImGui::SameLine(0, 0);
    const std::string count = std::to_string(state.bench.composed.gang_count);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::Dummy({40 * s, side});
    ImGui::PushFont(state.fonts.strong);
    const ImVec2 extent = ImGui::CalcTextSize(count.c_str());
    ImGui::GetWindowDrawList()->AddText({at.x + (40 * s - extent.x) / 2, at.y + (side - extent.y) / 2},
                                        packed(state.tokens->ink), count.c_str());
    ImGui::PopFont();
    ImGui::SameLine(0, 0);
    if (choiceButton(state, "+##gangs", false, {side, side})) stepGangs(state, 1);
    place(state, "bench:gangs+");
    if (ImGui::IsItemHovered()) hint("One more (+)");
}

void direction(State& state) {
    const float s = state.scale;
    PlateBench& bench = state.bench;
    const bool can = bench.composed.format != nullptr && bench.composed.format->vertical;
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted("Direction");
    ImGui::SameLine(96 * s);
    const bool upright = bench.plate.direction == plan::Direction::Vertical;
    const float width = (ImGui::GetContentRegionAvail().x - 4 * s) / 2;
    const auto choose = [&state](plan::Direction wanted) {
        state.bench.plate.direction = wanted;
        recompose(state);
    };
    if (choiceButton(state, "Level", !upright, {width, 0})) choose(plan::Direction::Horizontal);
    place(state, "bench:level");
    ImGui::SameLine(0, 4 * s);
    ImGui::BeginDisabled(!can);
    if (choiceButton(state, "Upright", upright, {width, 0})) choose(plan::Direction::Vertical);
    place(state, "bench:upright");
    ImGui::EndDisabled();
    if (!can && ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled))
        hint("Plates of this format are not set upright");
}

void depthButtons(State& state, const std::vector<double>& depths, double usual_mm) {
    PlateBench& bench = state.bench;
    const float s = state.scale;
    const double now = bench.plate.box_depth_mm.value_or(usual_mm);
    const auto count = static_cast<float>(std::max<std::size_t>(1, depths.size()));
    const float width = (ImGui::GetContentRegionAvail().x - 4 * s * (count - 1)) / count;
    for (std::size_t i = 0; i < depths.size(); ++i) {
        if (i > 0) ImGui::SameLine(0, 4 * s);
        const std::string label = shown(state, depths[i]);
        ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {2 * s, ImGui::GetStyle().FramePadding.y});
        if (choiceButton(state, label.c_str(), std::abs(depths[i] - now) < 0.05, {width, 0})) {
            bench.plate.box_depth_mm =
                std::abs(depths[i] - usual_mm) < 0.05 ? std::nullopt : std::optional(depths[i]);
            recompose(state);
        }
        ImGui::PopStyleVar();
        place(state, fmt::format("bench:depth:{:g}", depths[i]));
        if (ImGui::IsItemHovered()) hint("Depth of the box");
    }
}

void boxDepth(State& state) {
    const auto* format = state.bench.composed.format;
    const double usual = format == nullptr || format->boxes.empty() ? 0 : format->boxes.front().depth_mm;
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted("Box depth");
    ImGui::SameLine(96 * state.scale);
    const auto depths = format == nullptr ? std::vector<double>() : format->depths_mm;
    if (depths.size() > 1)
        depthButtons(state, depths, usual);
    else
        ImGui::TextDisabled("%s", shown(state, state.bench.plate.box_depth_mm.value_or(usual)).c_str());
}

void swatches(State& state, int in_row) {
    const float s = state.scale;
    PlateBench& bench = state.bench;
    const auto* now = bench.catalogue.finish(bench.composed.finish);
    ImGui::TextUnformatted("Frame");
    ImGui::SameLine(96 * s);
    ImGui::TextDisabled("%s", now == nullptr ? "" : now->name.c_str());
    const float gap = 6 * s;
    const float edge = 3 * s; // of the ring round the chosen one
    ImGui::Indent(edge);
    const float side =
        std::floor((ImGui::GetContentRegionAvail().x - edge - gap * static_cast<float>(in_row - 1)) /
                   static_cast<float>(in_row));
    ImDrawList& list = *ImGui::GetWindowDrawList();
    std::string wanted;
    for (std::size_t i = 0; i < bench.catalogue.finishes.size(); ++i) {
        const auto& finish = bench.catalogue.finishes[i];
        if (static_cast<int>(i) % in_row != 0) ImGui::SameLine(0, gap);
        const ImVec2 a = ImGui::GetCursorScreenPos();
        ImGui::PushID(finish.id.c_str());
        if (ImGui::InvisibleButton("finish", {side, side})) wanted = finish.id;
        ImGui::PopID();
        place(state, "bench:finish:" + finish.id);
        if (ImGui::IsItemHovered()) hint(finish.name.c_str());
        const ImVec2 b{a.x + side, a.y + side};
        const unsigned rgb = finishColour(bench.catalogue, finish.id);
        list.AddRectFilled(a, b, packed(rgb), 5 * s);
        list.AddRect(a, b, packed(onSurface(rgb, 0.72F)), 5 * s);
        if (finish.id == bench.composed.finish)
            list.AddRect({a.x - 2 * s, a.y - 2 * s}, {b.x + 2 * s, b.y + 2 * s}, packed(state.tokens->accent),
                         6 * s, 0, 2 * s);
    }
    ImGui::Unindent(edge);
    if (wanted.empty()) return;
    bench.plate.finish = wanted;
    recompose(state);
}
} // namespace

void drawFormatColumn(State& state, float height) {
    const float s = state.scale;
    const float row = ImGui::GetFrameHeightWithSpacing();
    // A low window has smaller swatches, so that some formats are in sight.
    const bool low = height < 460 * s;
    const float below = 3 * row + 40 * s + (low ? 2 * 26 : 3 * 32) * s;
    formats(state, std::max(130 * s, height - below));
    ImGui::Dummy({0, 2 * s});
    gangs(state);
    direction(state);
    boxDepth(state);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * s, 6 * s});
    swatches(state, low ? 11 : 8);
    ImGui::PopStyleVar();
}

} // namespace gangway::app::bench
