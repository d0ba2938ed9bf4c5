// The list of pages at the preview's left: kinds, and the sheets of those that are open.
#include "app/panels.hpp"
#include "app/sheet_preview.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {

/// Points down when open, to the right when not.
void foldArrow(ImDrawList& list, ImVec2 c, float r, bool open, ImU32 ink) {
    if (open)
        list.AddTriangleFilled({c.x - r, c.y - r * 0.6F}, {c.x + r, c.y - r * 0.6F}, {c.x, c.y + r * 0.8F},
                               ink);
    else
        list.AddTriangleFilled({c.x - r * 0.6F, c.y - r}, {c.x + r * 0.8F, c.y}, {c.x - r * 0.6F, c.y + r},
                               ink);
}

/// How many pages, or what is the matter.
std::string countWords(const State& state, const KindPages& pages) {
    const bool drawn = pages.version == state.document.version();
    if (!drawn && pages.open) return "being drawn";
    if (pages.version == 0) return {};
    if (!pages.problem.empty()) return "not drawn";
    const std::size_t count = pages.drawing->sheets.size();
    return count == 0 ? "none" : std::to_string(count);
}

bool heading(State& state, const KindPages& pages) {
    const float s = state.scale;
    const Tokens& t = *state.tokens;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const ImVec2 size{ImGui::GetContentRegionAvail().x, 34 * s};
    const bool clicked = ImGui::InvisibleButton("kind", size);
    place(state, "sheets:kind:" + std::string(pages.kind->word));
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (ImGui::IsItemHovered()) {
        list.AddRectFilled(corner, {corner.x + size.x, corner.y + size.y}, packed(t.quiet, 0.35F), 6 * s);
        ImGui::SetTooltip("%s", std::string(pages.kind->name).c_str());
    }
    foldArrow(list, {corner.x + 10 * s, corner.y + size.y / 2}, 4.5F * s, pages.open, packed(t.soft_ink));
    const ImFont& small = *state.fonts.small;
    const std::string count = countWords(state, pages);
    const float wide = small.CalcTextSizeA(small.FontSize, FLT_MAX, 0, count.c_str()).x;
    const auto name =
        linesWithin(*state.fonts.strong, shortName(*pages.kind), size.x - wide - 44 * s, 1).front();
    list.AddText(state.fonts.strong, state.fonts.strong->FontSize,
                 {corner.x + 24 * s, corner.y + (size.y - state.fonts.strong->FontSize) / 2}, packed(t.ink),
                 name.c_str());
    list.AddText(state.fonts.small, small.FontSize,
                 {corner.x + size.x - wide - 10 * s, corner.y + (size.y - small.FontSize) / 2},
                 packed(t.soft_ink), count.c_str());
    return clicked;
}

/// A triangle, as on the sheet: something on it is marked as changed.
void changeMark(const State& state, ImDrawList& list, ImVec2 c, float r) {
    list.AddTriangle({c.x, c.y - r}, {c.x + r, c.y + 0.75F * r}, {c.x - r, c.y + 0.75F * r},
                     packed(state.tokens->accent), 1.8F * state.scale);
}

bool row(State& state, const drawing::Sheet& sheet, bool chosen, bool changed) {
    const float s = state.scale;
    const Tokens& t = *state.tokens;
    const ImFont& body = *state.fonts.body;
    const float number = 66 * s;
    const float left = 24 * s;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float mark = changed ? 22 * s : 0;
    const auto lines = linesWithin(body, sheet.title, width - left - number - mark - 8 * s, 2);
    const float line = body.FontSize;
    const ImVec2 size{width, static_cast<float>(lines.size()) * line + 14 * s};
    const bool clicked = ImGui::InvisibleButton("page", size);
    place(state, "sheets:page:" + sheet.number);
    if (chosen && state.preview->show_row) {
        if (!ImGui::IsItemVisible()) ImGui::SetScrollHereY(0.5F);
        state.preview->show_row = false;
    }
    if (!ImGui::IsItemVisible()) return clicked;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const bool hovered = ImGui::IsItemHovered();
    if (chosen || hovered)
        list.AddRectFilled({corner.x + 4 * s, corner.y}, {corner.x + size.x, corner.y + size.y},
                           packed(chosen ? t.accent : t.quiet, chosen ? 0.16F : 0.35F), 6 * s);
    if (hovered && changed) ImGui::SetTooltip("Something on this sheet is marked as changed");
    const float y = corner.y + 7 * s;
    list.AddText(state.fonts.body, line, {corner.x + left, y}, packed(chosen ? t.accent : t.soft_ink),
                 sheet.number.c_str());
    for (std::size_t i = 0; i < lines.size(); ++i)
        list.AddText(state.fonts.body, line, {corner.x + left + number, y + static_cast<float>(i) * line},
                     packed(t.ink), lines[i].c_str());
    if (changed) changeMark(state, list, {corner.x + width - 14 * s, y + line / 2}, 6 * s);
    return clicked;
}

/// Where there are no pages, why.
void whyNone(const State& state, const KindPages& pages) {
    if (pages.version == 0) return;
    const bool failed = !pages.problem.empty();
    if (!failed && !pages.drawing->sheets.empty()) return;
    ImGui::Indent(24 * state.scale);
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(failed ? state.tokens->fault : state.tokens->soft_ink));
    wrapped(failed ? pages.problem : std::string(pages.kind->nothing));
    ImGui::PopStyleColor();
    ImGui::PopFont();
    ImGui::Unindent(24 * state.scale);
}

void pagesOf(State& state, std::size_t index) {
    const KindPages& pages = state.preview->kinds[index];
    whyNone(state, pages);
    if (!pages.drawing) return;
    const SharedDrawing drawing = pages.drawing;
    for (std::size_t i = 0; i < drawing->sheets.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        const bool chosen = index == state.preview->kind && i == state.preview->sheet;
        if (row(state, drawing->sheets[i], chosen, pages.changed[i])) showPage(state, index, i);
        ImGui::PopID();
    }
}

} // namespace

void pageList(State& state) {
    SheetPreview& preview = *state.preview;
    ImGui::PushFont(state.fonts.large);
    ImGui::TextUnformatted("Sheets");
    ImGui::PopFont();
    ImGui::Dummy({0, 2 * state.scale});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0, 2 * state.scale});
    ImGui::BeginChild("pages", {0, 0});
    for (std::size_t i = 0; i < preview.kinds.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        KindPages& pages = preview.kinds[i];
        if (heading(state, pages)) {
            pages.open = !pages.open;
            // A kind that is opened is what one wants to see; one that is closed leaves the page alone.
            if (pages.open) showKind(state, i);
        }
        if (pages.open) pagesOf(state, i);
        ImGui::Dummy({0, 4 * state.scale});
        ImGui::PopID();
    }
    ImGui::EndChild();
    ImGui::PopStyleVar();
}

} // namespace gangway::app
