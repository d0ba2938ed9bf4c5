// The bench's foot: what the plate is made of, what does not add up, and where it goes.
#include "app/plate_bench_parts.hpp"

#include "catalogue/parts.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app::bench {

namespace {
using Part = catalogue::Part;

bool liesInWall(const Part& part) {
    return part.kind == Part::Kind::Box || part.kind == Part::Kind::Barrier;
}

void partLine(const State& state, const Part& part) {
    const float s = state.scale;
    const float width = ImGui::GetContentRegionAvail().x;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const ImFont& font = *state.fonts.small;
    std::string words = part.name;
    if (!part.finish.empty()) words += ", " + part.finish;
    const bool unknown = part.kind == Part::Kind::Unknown;
    if (unknown) words = fmt::format("'{}', not in the catalogue", part.code);
    const auto line = linesWithin(font, words, width - 34 * s, 1).front();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::string count = fmt::format("{}", part.count);
    const float number = font.CalcTextSizeA(font.FontSize, FLT_MAX, 0, count.c_str()).x;
    list.AddText(&font, font.FontSize, {corner.x + 20 * s - number, corner.y}, packed(state.tokens->ink),
                 count.c_str());
    list.AddText(&font, font.FontSize, {corner.x + 32 * s, corner.y},
                 packed(unknown ? state.tokens->fault : state.tokens->ink), line.c_str());
    ImGui::Dummy({width, font.FontSize});
    if (ImGui::IsItemHovered() && line != words) hint(words.c_str());
}

void partsList(State& state, const std::vector<Part>& parts, ImVec2 size) {
    ImGui::BeginGroup();
    heading(state, "Parts");
    ImGui::BeginChild("bench-parts", size);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 4 * state.scale});
    for (const auto& part : parts)
        if (!liesInWall(part)) partLine(state, part);
    ImGui::PopStyleVar();
    ImGui::EndChild();
    ImGui::EndGroup();
}

void boxList(State& state, const std::vector<Part>& parts, ImVec2 size) {
    const float s = state.scale;
    ImGui::BeginGroup();
    heading(state, "Boxes");
    ImGui::BeginChild("bench-boxes", size);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * s, 4 * s});
    for (const auto& part : parts)
        if (liesInWall(part)) partLine(state, part);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {2 * s, 2 * s});
    ImGui::PushFont(state.fonts.small);
    if (ImGui::Checkbox("barrier", &state.bench.plate.barrier)) recompose(state);
    ImGui::PopFont();
    ImGui::PopStyleVar(2);
    place(state, "bench:barrier");
    if (ImGui::IsItemHovered()) hint("A partition that keeps mains and extra-low voltage apart in one box");
    ImGui::EndChild();
    ImGui::EndGroup();
}

/// A triangle with a mark before each line: shape and word, colour only helps.
void problemLine(const State& state, const std::string& words) {
    const float s = state.scale;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float r = 6 * s;
    const float y = corner.y + state.fonts.small->FontSize / 2;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(state.tokens->fault);
    list.AddTriangle({corner.x, y + r * 0.8F}, {corner.x + 2 * r, y + r * 0.8F}, {corner.x + r, y - r}, ink,
                     1.5F * s);
    list.AddLine({corner.x + r, y - r * 0.4F}, {corner.x + r, y + r * 0.4F}, ink, 1.5F * s);
    ImGui::SetCursorScreenPos({corner.x + 2 * r + 8 * s, corner.y});
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->fault));
    wrapped(words);
    ImGui::PopStyleColor();
}

void problems(State& state, ImVec2 size) {
    const auto& list = state.bench.composed.problems;
    ImGui::BeginGroup();
    heading(state, list.empty() ? "Nothing to put right" : "To put right");
    ImGui::BeginChild("bench-problems", size);
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 4 * state.scale});
    for (const auto& words : list)
        problemLine(state, words);
    ImGui::PopStyleVar();
    ImGui::PopFont();
    ImGui::EndChild();
    ImGui::EndGroup();
}

void handOver(State& state, float width) {
    const float s = state.scale;
    PlateBench& bench = state.bench;
    ImGui::BeginGroup();
    const float half = (width - 8 * s) / 2;
    ImGui::SetNextItemWidth(half);
    ImGui::InputTextWithHint("##bench-name", "name in the library", &bench.name);
    place(state, "bench:name");
    ImGui::SameLine();
    ImGui::SetNextItemWidth(half);
    ImGui::InputTextWithHint("##bench-category", "category", &bench.category);
    place(state, "bench:category");
    const ImVec2 size{half, 44 * s};
    const bool library = bench.purpose == BenchPurpose::Library;
    bool save = false;
    if (!library) {
        save = largeButton(state, "Save to library", state.tokens->ink, size, false);
        place(state, "bench:save");
        if (ImGui::IsItemHovered()) hint("Keep it under its name (Ctrl+S)");
        ImGui::SameLine();
    }
    const bool done = largeButton(state, finishWords(bench.purpose), state.tokens->accent,
                                  {library ? width : half, size.y}, true);
    place(state,
          library ? "bench:save" : (bench.purpose == BenchPurpose::New ? "bench:place" : "bench:apply"));
    if (ImGui::IsItemHovered()) hint("Ctrl+Enter");
    ImGui::EndGroup();
    if (save) saveToLibrary(state);
    if (done) finishBench(state);
}
} // namespace

void drawFoot(State& state, float height) {
    const float s = state.scale;
    const auto parts = catalogue::parts(state.bench.catalogue, state.bench.plate, state.bench.composed);
    const float width = ImGui::GetContentRegionAvail().x;
    const float gap = 24 * s;
    const float hand = std::clamp(width * 0.28F, 310 * s, 380 * s);
    const float rest = width - hand - 3 * gap;
    const float inner = height - 26 * s;
    partsList(state, parts, {rest * 0.4F, inner});
    ImGui::SameLine(0, gap);
    boxList(state, parts, {rest * 0.26F, inner});
    ImGui::SameLine(0, gap);
    problems(state, {rest * 0.34F, inner});
    ImGui::SameLine(0, gap);
    handOver(state, hand);
}

} // namespace gangway::app::bench
