// What the last change of furniture or of a door broke and mended, before one goes on.
#include "app/finding_parts.hpp"

#include "checks/accepted.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {
using checks::Ripple;
constexpr std::size_t kMostRows = 6;

unsigned inkOf(const State& state, Ripple::Change change) {
    const bool worse = change == Ripple::Change::NewlyFails || change == Ripple::Change::Worse;
    return worse ? state.tokens->fault : state.tokens->agreed;
}

/// A bar that falls or rises: worse and better are told apart without colour.
void arrow(ImDrawList& list, ImVec2 at, float r, bool worse, ImU32 ink) {
    const float up = worse ? 1.0F : -1.0F;
    list.AddTriangleFilled({at.x - r, at.y - up * r * 0.6F}, {at.x + r, at.y - up * r * 0.6F},
                           {at.x, at.y + up * r}, ink);
}

void rippleRow(State& state, const Ripple& ripple) {
    const float s = state.scale;
    const ImFont& small = *state.fonts.small;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const auto lines = linesWithin(
        small, fmt::format("{}: {}", checks::word(ripple.change), ripple.finding.message), width - 30 * s, 2);
    const float step = small.FontSize + 3 * s;
    const std::string id = checks::findingId(ripple.finding);
    ImGui::PushID(id.c_str());
    if (ImGui::Selectable("##ripple", false, 0, {width, static_cast<float>(lines.size()) * step + 4 * s}) &&
        ripple.change != Ripple::Change::NewlyPasses)
        openFinding(state, id);
    ImGui::PopID();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(inkOf(state, ripple.change));
    const bool worse = ripple.change == Ripple::Change::NewlyFails || ripple.change == Ripple::Change::Worse;
    arrow(list, {corner.x + 12 * s, corner.y + 2 * s + step / 2}, 5 * s, worse, ink);
    for (std::size_t i = 0; i < lines.size(); ++i)
        list.AddText(&small, small.FontSize,
                     {corner.x + 26 * s, corner.y + 2 * s + static_cast<float>(i) * step},
                     packed(state.tokens->ink), lines[i].c_str());
}
} // namespace

void rippleRows(State& state) {
    Findings& kept = state.findings;
    if (kept.ripples.empty() || state.seat != Seat::Designer) return;
    const float s = state.scale;
    const auto fails = std::ranges::count_if(kept.ripples, [](const Ripple& one) {
        return one.change == Ripple::Change::NewlyFails || one.change == Ripple::Change::Worse;
    });
    const auto better = static_cast<std::ptrdiff_t>(kept.ripples.size()) - fails;
    ImGui::PushFont(state.fonts.strong);
    wrapped(fmt::format("{}: {} worse, {} better", kept.step, fails, better));
    ImGui::PopFont();
    place(state, "ripple");
    const std::vector<Ripple> shown(
        kept.ripples.begin(),
        kept.ripples.begin() + static_cast<std::ptrdiff_t>(std::min(kMostRows, kept.ripples.size())));
    for (const Ripple& ripple : shown)
        rippleRow(state, ripple);
    if (kept.ripples.size() > kMostRows) ImGui::TextDisabled("and %zu more", kept.ripples.size() - kMostRows);
    const bool keep = ImGui::Button("Keep it");
    place(state, "ripple-keep");
    ImGui::SameLine(0, 6 * s);
    ImGui::BeginDisabled(!state.document.canUndo() || state.document.undoName() != kept.step);
    const bool back = ImGui::Button("Take it back");
    place(state, "ripple-back");
    ImGui::EndDisabled();
    if (back) state.document.undo();
    if (keep || back) {
        kept.ripples.clear();
        kept.step.clear();
    }
    ImGui::Dummy({0, 6 * s});
}

} // namespace gangway::app
