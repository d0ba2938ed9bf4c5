// The preview's layout, and its two bars: what the page is and what can be done with it, and how it is looked
// at.
#include "app/panels.hpp"
#include "app/plate_bench_parts.hpp"
#include "app/plate_front.hpp"
#include "app/sheet_preview.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gangway::app {

namespace {

using bench::choiceButton;
using bench::hint;

constexpr double kPxPerInch = 96; ///< of a screen at scale 1, as window systems count
constexpr double kMillimetresPerInch = 25.4;

TableArea tableOf(float x, float y, float width, float height) {
    return {static_cast<double>(x), static_cast<double>(y), static_cast<double>(width),
            static_cast<double>(height)};
}

std::string pageWords(const PageOf& page) {
    const drawing::Sheet& sheet = page.get();
    const std::string scale = scaleWords(sheet);
    return fmt::format("{}{}{}     page {} of {}", paperName(sheet), scale.empty() ? "" : ", ", scale,
                       page.sheet + 1, page.drawing->sheets.size());
}

/// A button at the head's right end; `right` is where it ends, and becomes where the next one does.
bool headButton(State& state, float& right, const char* label, const char* name, bool chosen,
                const char* what) {
    const float width = ImGui::CalcTextSize(label).x + 28 * state.scale;
    right -= width;
    ImGui::SameLine(right);
    const bool clicked = choiceButton(state, label, chosen, {width, 0});
    place(state, name);
    if (ImGui::IsItemHovered()) hint(what);
    right -= 8 * state.scale;
    return clicked;
}

void printChoices(State& state) {
    if (!ImGui::BeginPopup("print-choices")) return;
    const PageOf page = pageOf(state);
    if (page.drawing) {
        const std::string one = fmt::format("This sheet, {}", page.get().number);
        const std::string all = fmt::format("All {} of this kind", page.drawing->sheets.size());
        ImGui::TextDisabled("Opens in the system's PDF viewer, which prints it");
        if (ImGui::Selectable(one.c_str())) startPrint(state, PrintWhat::Sheet);
        place(state, "sheets:print:one");
        if (ImGui::Selectable(all.c_str())) startPrint(state, PrintWhat::Kind);
        place(state, "sheets:print:all");
    }
    ImGui::EndPopup();
}

void head(State& state) {
    const float s = state.scale;
    SheetPreview& preview = *state.preview;
    const PageOf page = pageOf(state);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    float right = ImGui::GetWindowWidth() - 16 * s;
    ImGui::Dummy({0, 0});
    if (headButton(state, right, "Close  Esc", "sheets:close", false, "Back to where you were (Esc)"))
        closeSheets(state);
    if (headButton(state, right, preview.writing.busy() ? "Exporting ..." : "Export", "sheets:export",
                   preview.output_open, "Write sheets as files: PDF, SVG, DXF, PNG (E)"))
        preview.output_open = !preview.output_open;
    ImGui::BeginDisabled(!page.drawing || preview.printing.busy());
    if (headButton(state, right, "Print", "sheets:print", false, "Open in the system's PDF viewer (P)"))
        ImGui::OpenPopup("print-choices");
    ImGui::EndDisabled();
    printChoices(state);
    if (!page.drawing) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float room = right - 32 * s;
    const std::string title = page.get().number + "   " + page.get().title;
    const auto line = linesWithin(*state.fonts.strong, title, room, 1).front();
    list.AddText(state.fonts.strong, state.fonts.strong->FontSize, {at.x, at.y - 3 * s},
                 packed(state.tokens->ink), line.c_str());
    list.AddText(state.fonts.small, state.fonts.small->FontSize, {at.x, at.y + 17 * s},
                 packed(state.tokens->soft_ink), pageWords(page).c_str());
}

void zoomButtons(State& state, const TableArea& table) {
    const float s = state.scale;
    PageView& view = state.preview->view;
    const PageOf page = pageOf(state);
    const PageSize size = page.drawing ? PageSize{page.get().width_mm, page.get().height_mm} : PageSize{};
    const ScreenPoint middle{table.x + table.width / 2, table.y + table.height / 2};
    const float side = ImGui::GetFrameHeight();
    if (choiceButton(state, "\u2212", false, {side, 0})) zoomAbout(view, size, table, middle, 1 / kZoomStep);
    place(state, "sheets:smaller");
    if (ImGui::IsItemHovered()) hint("Smaller (-)");
    ImGui::SameLine(0, 4 * s);
    const std::string percent = fmt::format("{} %", std::lround(view.px_per_mm / trueZoom(state) * 100));
    if (choiceButton(state, percent.c_str(), false, {72 * s, 0}))
        zoomAbout(view, size, table, middle, trueZoom(state) / view.px_per_mm);
    place(state, "sheets:true-size");
    if (ImGui::IsItemHovered()) hint("As large as on paper (1)");
    ImGui::SameLine(0, 4 * s);
    if (choiceButton(state, "+", false, {side, 0})) zoomAbout(view, size, table, middle, kZoomStep);
    place(state, "sheets:larger");
    if (ImGui::IsItemHovered()) hint("Larger (+)");
    ImGui::SameLine(0, 16 * s);
    if (choiceButton(state, "Fit page", view.fit == PageFit::Page, {0, 0})) view.fit = PageFit::Page;
    place(state, "sheets:fit-page");
    if (ImGui::IsItemHovered()) hint("The whole page (0)");
    ImGui::SameLine(0, 4 * s);
    if (choiceButton(state, "Fit width", view.fit == PageFit::Width, {0, 0})) view.fit = PageFit::Width;
    place(state, "sheets:fit-width");
    if (ImGui::IsItemHovered()) hint("As wide as the table (W)");
}

void lookButtons(State& state) {
    const float s = state.scale;
    SheetPreview& preview = *state.preview;
    ImGui::SameLine(0, 16 * s);
    if (choiceButton(state, "Black and white", preview.copier, {0, 0})) preview.copier = !preview.copier;
    place(state, "sheets:copier");
    if (ImGui::IsItemHovered()) hint("As a copier gives it: greys only, light tints lost (B)");
    ImGui::SameLine(0, 4 * s);
    if (choiceButton(state, "A3 on A4", preview.on_a4, {0, 0})) preview.on_a4 = !preview.on_a4;
    place(state, "sheets:on-a4");
    if (ImGui::IsItemHovered()) hint("At 0.71 of its size, as an A3 comes out on A4 paper (A)");
}

/// The ground pages lie on: warmer and darker than what is round it.
unsigned tableTone(const State& state) {
    return state.tokens == &kLight ? shade(state.tokens->stage, 0.94F) : shade(state.tokens->stage, 0.72F);
}

void edge(const State& state, ImVec2 from, ImVec2 to) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.PushClipRectFullScreen(); // a band's own clip leaves its padding out
    list.AddLine(from, to, packed(state.tokens->quiet));
    list.PopClipRect();
}

} // namespace

double trueZoom(const State& state) {
    return kPxPerInch / kMillimetresPerInch * static_cast<double>(state.scale);
}

void drawSheetPreview(State& state, float width, float height) {
    const float s = state.scale;
    const float left = state.stage.x;
    const float top = state.stage.y;
    const float list = 288 * s;
    const float output = state.preview->output_open ? 320 * s : 0;
    const float bar = 56 * s;
    const Rect middle{left + list, top + bar, width - left - list - output, height - top - 2 * bar};
    const TableArea table = tableOf(middle.x, middle.y, middle.width, middle.height);

    ImGui::PushStyleColor(ImGuiCol_WindowBg, colour(tableTone(state)));
    beginBand("sheets-table", middle, {0, 0});
    ImGui::PopStyleColor();
    previewTable(state, table);
    drawToast(state, middle);
    endBand();
    beginBand("sheets-list", {left, top, list, height - top}, {14 * s, 14 * s});
    pageList(state);
    edge(state, {left, top}, {left, height});
    edge(state, {left + list - 1, top}, {left + list - 1, height});
    edge(state, {left, top}, {left + list, top});
    endBand();
    beginBand("sheets-head", {middle.x, top, width - middle.x, bar}, {20 * s, 12 * s});
    head(state);
    edge(state, {middle.x, top}, {width, top});
    edge(state, {middle.x, top + bar - 1}, {width, top + bar - 1});
    endBand();
    beginBand("sheets-foot", {middle.x, height - bar, width - middle.x, bar}, {20 * s, 11 * s});
    zoomButtons(state, table);
    lookButtons(state);
    edge(state, {middle.x, height - bar}, {width, height - bar});
    endBand();
    if (output <= 0) return;
    beginBand("sheets-output", {width - output, top + bar, output, middle.height}, {20 * s, 16 * s});
    outputColumn(state);
    edge(state, {width - output, top + bar}, {width - output, height - bar});
    endBand();
}

} // namespace gangway::app
