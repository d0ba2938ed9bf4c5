// The preview from the keyboard.
#include "app/panels.hpp"
#include "app/sheet_preview.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>

namespace gangway::app {

namespace {

bool pressed(int key, bool repeat = false) {
    return ImGui::IsKeyPressed(key, repeat);
}

/// Esc goes back one thing at a time.
void goBack(State& state) {
    SheetPreview& preview = *state.preview;
    if (!preview.chosen.empty())
        preview.chosen.clear();
    else if (preview.output_open)
        preview.output_open = false;
    else
        closeSheets(state);
}

/// To the next or the previous object on the page, round at the ends.
void chooseNext(SheetPreview& preview, bool back) {
    const auto& ids = preview.objects.in_order;
    if (ids.empty()) return;
    const auto count = static_cast<std::ptrdiff_t>(ids.size());
    const auto found = std::ranges::find(ids, preview.chosen);
    std::ptrdiff_t at = back ? count - 1 : 0;
    if (found != ids.end()) at = (found - ids.begin() + (back ? count - 1 : 1)) % count;
    preview.chosen = ids[static_cast<std::size_t>(at)];
}

void pageKeys(State& state) {
    const bool shift = ImGui::GetIO().KeyShift;
    if (pressed(GLFW_KEY_PAGE_DOWN, true) || (!shift && pressed(GLFW_KEY_DOWN, true)))
        stepPage(state, Step::Next);
    if (pressed(GLFW_KEY_PAGE_UP, true) || (!shift && pressed(GLFW_KEY_UP, true)))
        stepPage(state, Step::Before);
    if (pressed(GLFW_KEY_HOME)) stepPage(state, Step::First);
    if (pressed(GLFW_KEY_END)) stepPage(state, Step::Last);
}

void viewKeys(State& state) {
    SheetPreview& preview = *state.preview;
    PageView& view = preview.view;
    const double zoom =
        (pressed(GLFW_KEY_EQUAL, true) || pressed(GLFW_KEY_KP_ADD, true) ? kZoomStep : 1) /
        (pressed(GLFW_KEY_MINUS, true) || pressed(GLFW_KEY_KP_SUBTRACT, true) ? kZoomStep : 1);
    if (zoom != 1) {
        // About the middle of the table: the point that is there stays.
        view.fit = PageFit::Free;
        view.px_per_mm = std::clamp(view.px_per_mm * zoom, kLeastPxPerMm, kMostPxPerMm);
    }
    if (pressed(GLFW_KEY_0)) view.fit = PageFit::Page;
    if (pressed(GLFW_KEY_W)) view.fit = PageFit::Width;
    if (pressed(GLFW_KEY_1)) {
        view.fit = PageFit::Free;
        view.px_per_mm = trueZoom(state);
    }
    if (!ImGui::GetIO().KeyShift) return;
    constexpr double kPan_px = 60;
    const double across = pressed(GLFW_KEY_LEFT, true) - pressed(GLFW_KEY_RIGHT, true);
    const double down = pressed(GLFW_KEY_UP, true) - pressed(GLFW_KEY_DOWN, true);
    if (across != 0 || down != 0) panBy(view, across * kPan_px, down * kPan_px);
}

void lookKeys(State& state) {
    SheetPreview& preview = *state.preview;
    if (pressed(GLFW_KEY_B)) preview.copier = !preview.copier;
    if (pressed(GLFW_KEY_A)) preview.on_a4 = !preview.on_a4;
    if (pressed(GLFW_KEY_E)) preview.output_open = !preview.output_open;
    if (pressed(GLFW_KEY_P)) startPrint(state, ImGui::GetIO().KeyShift ? PrintWhat::Kind : PrintWhat::Sheet);
    if (pressed(GLFW_KEY_T)) otherTheme(state);
}

} // namespace

void previewKeys(State& state) {
    const ImGuiIO& io = ImGui::GetIO();
    if (pressed(GLFW_KEY_ESCAPE)) {
        // The first Esc ends what is being typed, as everywhere.
        if (!io.WantTextInput) goBack(state);
        return;
    }
    if (io.WantTextInput || io.KeyCtrl) return;
    SheetPreview& preview = *state.preview;
    pageKeys(state);
    viewKeys(state);
    lookKeys(state);
    if (pressed(GLFW_KEY_TAB, true)) chooseNext(preview, io.KeyShift);
    if (!preview.chosen.empty() && (pressed(GLFW_KEY_ENTER) || pressed(GLFW_KEY_KP_ENTER)))
        goToObject(state, std::string(preview.chosen));
}

void addSheetActions(std::vector<Action>& list, const State& state) {
    const SheetPreview& preview = *state.preview;
    const auto kinds = sheets::sheetKinds();
    for (std::size_t i = 0; i < kinds.size(); ++i)
        list.push_back({"Sheets: " + shortName(kinds[i]), "", [i](State& s) { showKind(s, i); }});
    list.push_back({"Export sheets as PDF, SVG, DXF or PNG", "", [](State& s) {
                        openSheets(s);
                        s.preview->output_open = true;
                    }});
    if (state.panel != Panel::Sheets) return;
    const auto look = [&list](const char* name, const char* key, void (*run)(State&)) {
        list.push_back({name, key, run});
    };
    look("Print this sheet", "", [](State& s) { startPrint(s, PrintWhat::Sheet); });
    look("Print all sheets of this kind", "", [](State& s) { startPrint(s, PrintWhat::Kind); });
    look("Sheet in black and white", "", [](State& s) { s.preview->copier = !s.preview->copier; });
    look("Sheet as A3 printed on A4", "", [](State& s) { s.preview->on_a4 = !s.preview->on_a4; });
    look("Fit the whole page", "", [](State& s) { s.preview->view.fit = PageFit::Page; });
    look("Fit the page's width", "", [](State& s) { s.preview->view.fit = PageFit::Width; });
    for (std::size_t kind = 0; kind < preview.kinds.size(); ++kind) {
        if (!preview.kinds[kind].drawing) continue;
        const auto& sheets = preview.kinds[kind].drawing->sheets;
        for (std::size_t i = 0; i < sheets.size(); ++i)
            list.push_back({"Sheet " + sheets[i].number + " " + sheets[i].title, "",
                            [kind, i](State& s) { showPage(s, kind, i); }});
    }
}

} // namespace gangway::app
