// The preview's table: the page as it will print, moved, made larger, pointed at; over it what it is, under
// it how it is looked at.
#include "app/panels.hpp"
#include "app/plate_bench_parts.hpp"
#include "app/plate_front.hpp"
#include "app/sheet_preview.hpp"

#include "drawing/pick.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gangway::app {

namespace {

constexpr float kClickSlack_px = 5; ///< a press that moves less is a click
constexpr float kReach_px = 6;      ///< as near as this to a plate's ink is on it
constexpr float kNotch = 1.15F;     ///< of the wheel

PageSize sizeOf(const PageOf& page) {
    return page.drawing ? PageSize{page.get().width_mm, page.get().height_mm} : PageSize{};
}

ImVec2 px(ScreenPoint at) {
    return {static_cast<float>(at.x), static_cast<float>(at.y)};
}

/// The page, mapped to the screen for this frame.
struct Laid {
    const SheetPreview& preview;
    TableArea table;
    PageSize size;
    ImVec2 at(drawing::Pt on_page) const { return px(toScreen(preview.view, size, table, on_page)); }
    ImVec2 low() const { return at({0, size.height_mm}); }
    ImVec2 high() const { return at({size.width_mm, 0}); }
    drawing::Pt under(ImVec2 pointer) const {
        return toPage(preview.view, size, table,
                      {static_cast<double>(pointer.x), static_cast<double>(pointer.y)});
    }
    void frame(ImDrawList& list, const drawing::Bounds& box, float grow, ImU32 ink, float thick) const {
        const ImVec2 a = at({box.low.x, box.high.y});
        const ImVec2 b = at({box.high.x, box.low.y});
        list.AddRect({a.x - grow, a.y - grow}, {b.x + grow, b.y + grow}, ink, 4, 0, thick);
    }
};

/// A soft edge, as paper has on a table.
void shadow(ImDrawList& list, ImVec2 low, ImVec2 high, float s) {
    constexpr int kSteps = 7;
    for (int i = kSteps; i > 0; --i) {
        const float grow = static_cast<float>(i) * 1.4F * s;
        list.AddRectFilled({low.x - grow, low.y - grow + 2 * s}, {high.x + grow, high.y + grow + 3 * s},
                           packed(0x1A1408, 0.022F), 2 * s + grow);
    }
}

void pictures(State& state, ImDrawList& list, const Laid& laid) {
    const auto scale = laid.preview.view.pagePxPerMm();
    const ImVec2 corner = laid.low();
    for (const PagePicture* picture : picturesOf(state)) {
        const auto k = static_cast<float>(scale / picture->part.px_per_mm);
        const PagePart& part = picture->part;
        const ImVec2 low{corner.x + static_cast<float>(part.left_px) * k,
                         corner.y + static_cast<float>(part.top_px) * k};
        list.AddImage(
            reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(picture->texture)), low,
            {low.x + static_cast<float>(part.width_px) * k, low.y + static_cast<float>(part.height_px) * k});
    }
}

/// Texts too small on A4, as one would go over them with a highlighter.
void smallOnA4(ImDrawList& list, const Laid& laid) {
    if (!laid.preview.on_a4) return;
    for (const drawing::Bounds& box : laid.preview.objects.on_a4.boxes)
        list.AddRectFilled(laid.at({box.low.x - 0.3, box.high.y + 0.3}),
                           laid.at({box.high.x + 0.3, box.low.y - 0.3}), packed(kLight.query, 0.25F));
}

/// What becomes of the page on A4, in words.
std::string onA4Words(const PageOf& page, const SmallTexts& small) {
    if (!isA3(page.get()))
        return fmt::format("This page is {}: it is printed as it is", paperName(page.get()));
    if (small.boxes.empty()) return "Every text stays at 2.5 mm or more";
    return fmt::format("{} {} under 2.5 mm, the smallest {:.1f} mm: marked", small.boxes.size(),
                       small.boxes.size() == 1 ? "text" : "texts", small.smallest_mm);
}

/// On the table under the page.
void noteOnA4(const State& state, ImDrawList& list, const Laid& laid) {
    const PageOf page = pageOf(state);
    if (!laid.preview.on_a4 || !page.drawing) return;
    const float s = state.scale;
    const SmallTexts& small = laid.preview.objects.on_a4;
    const std::string note = onA4Words(page, small);
    const ImVec2 size = ImGui::CalcTextSize(note.c_str());
    const auto middle = static_cast<float>(laid.table.x + laid.table.width / 2);
    const auto bottom = static_cast<float>(laid.table.y + laid.table.height);
    const ImVec2 low{middle - size.x / 2 - 14 * s, bottom - size.y - 26 * s};
    const ImVec2 high{middle + size.x / 2 + 14 * s, bottom - 10 * s};
    list.AddRectFilled(low, high, packed(state.tokens->paper), 8 * s);
    list.AddRect(low, high, packed(state.tokens->quiet), 8 * s);
    list.AddText({low.x + 14 * s, low.y + 8 * s},
                 packed(small.boxes.empty() ? state.tokens->soft_ink : state.tokens->query), note.c_str());
}

void objectFrames(ImDrawList& list, const Laid& laid, float s) {
    const SheetPreview& preview = laid.preview;
    if (!preview.objects.page.drawing) return;
    const auto& sheet = preview.objects.page.get();
    const auto frames = [&](const std::string& id, float thick, float alpha) {
        if (id.empty()) return;
        for (const drawing::Bounds& box : outlinesOf(sheet, id))
            laid.frame(list, box, 5 * s, packed(kLight.accent, alpha), thick * s);
    };
    frames(preview.chosen, 3, 1);
    if (preview.pointed != preview.chosen) frames(preview.pointed, 2, 0.85F);
}

void words(const State& state, ImDrawList& list, ImVec2 low, ImVec2 high, const std::string& text) {
    constexpr float kWrap = 420;
    const float wrap = std::min(kWrap * state.scale, high.x - low.x - 32 * state.scale);
    const ImVec2 size = ImGui::CalcTextSize(text.c_str(), nullptr, false, wrap);
    list.AddText(ImGui::GetFont(), ImGui::GetFontSize(),
                 {(low.x + high.x - size.x) / 2, (low.y + high.y - size.y) / 2}, packed(kLight.soft_ink),
                 text.c_str(), nullptr, wrap);
}

/// On the empty page, when there is none to show.
std::string insteadOfPage(const State& state) {
    const KindPages& pages = state.preview->kinds[state.preview->kind];
    if (!pages.problem.empty()) return "This could not be drawn: " + pages.problem + ".";
    const bool drawn = pages.version == state.document.version();
    if (drawn) return "No page: " + std::string(pages.kind->nothing) + ".";
    return "Being drawn ...";
}

void tellOf(const State& state, const std::string& id) {
    const float s = state.scale;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {12 * s, 9 * s});
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(ImGui::GetFontSize() * 24);
    if (const auto* plate = plan::findPlate(state.plan(), id)) {
        ImGui::TextUnformatted(plateTitle(state, *plate).c_str());
        ImGui::PushFont(state.fonts.small);
        ImGui::TextDisabled("%s", hostSentence(state, *plate).c_str());
        ImGui::TextUnformatted("Click: stand in front of it");
        ImGui::PopFont();
    } else {
        const auto& lamps = state.plan().luminaires;
        const auto lamp = std::ranges::find(lamps, id, &plan::Luminaire::id);
        if (lamp != lamps.end()) {
            const std::string tag = lamp->tag.empty() ? lamp->id : lamp->tag;
            ImGui::TextUnformatted((tag + "  " + lamp->name).c_str());
            ImGui::PushFont(state.fonts.small);
            ImGui::TextUnformatted("Click: go to its room");
            ImGui::PopFont();
        }
    }
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
    ImGui::PopStyleVar();
}

/// The plate or luminaire under the pointer; empty when there is none.
std::string objectUnder(const Laid& laid, float s) {
    const PageObjects& objects = laid.preview.objects;
    if (!objects.page.drawing) return {};
    const double reach_mm = static_cast<double>(kReach_px * s) / laid.preview.view.pagePxPerMm();
    const auto item = drawing::itemAt(
        objects.page.get(), laid.under(ImGui::GetIO().MousePos), reach_mm, [&](const drawing::Item& one) {
            return objects.plates.contains(one.id) || objects.luminaires.contains(one.id);
        });
    return item ? objects.page.get().items[*item].id : std::string();
}

bool dragged() {
    for (const auto button : {ImGuiMouseButton_Left, ImGuiMouseButton_Right, ImGuiMouseButton_Middle})
        if (ImGui::IsMouseDragging(button, kClickSlack_px)) return true;
    return false;
}

void mouse(State& state, const Laid& laid, bool over, bool active) {
    SheetPreview& preview = *state.preview;
    const ImGuiIO& io = ImGui::GetIO();
    preview.pointed = over && !dragged() ? objectUnder(laid, state.scale) : std::string();
    if (!preview.pointed.empty()) {
        ImGui::SetMouseCursor(ImGuiMouseCursor_Hand);
        tellOf(state, preview.pointed);
    }
    const ScreenPoint pointer{static_cast<double>(io.MousePos.x), static_cast<double>(io.MousePos.y)};
    if (over && io.MouseWheel != 0) {
        zoomAbout(preview.view, laid.size, laid.table, pointer,
                  static_cast<double>(std::pow(kNotch, io.MouseWheel)));
        state.frames_wanted = std::max(state.frames_wanted, 2);
    }
    if (active && dragged() && (io.MouseDelta.x != 0 || io.MouseDelta.y != 0)) {
        panBy(preview.view, static_cast<double>(io.MouseDelta.x), static_cast<double>(io.MouseDelta.y));
        ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeAll);
    }
    const ImVec2 moved = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0);
    const bool still = std::hypot(moved.x, moved.y) < kClickSlack_px;
    if (over && still && ImGui::IsMouseReleased(ImGuiMouseButton_Left) && !preview.pointed.empty())
        goToObject(state, std::string(preview.pointed));
    else if (over && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left) && preview.pointed.empty()) {
        constexpr double kCloser = 2.5;
        if (preview.view.fit == PageFit::Page)
            zoomAbout(preview.view, laid.size, laid.table, pointer, kCloser);
        else
            preview.view.fit = PageFit::Page;
    }
}

/// For the report: the page, and what can be clicked on it.
void rememberPlaces(State& state, const Laid& laid) {
    const ImVec2 low = laid.low();
    const ImVec2 high = laid.high();
    state.places["sheet:page"] = {low.x, low.y, high.x - low.x, high.y - low.y};
    if (state.options.report.empty() || !state.preview->objects.page.drawing) return;
    for (const std::string& id : state.preview->objects.in_order)
        for (const auto& box : outlinesOf(state.preview->objects.page.get(), id)) {
            const ImVec2 a = laid.at({box.low.x, box.high.y});
            const ImVec2 b = laid.at({box.high.x, box.low.y});
            state.places.try_emplace("sheet:object:" + id, Rect{a.x, a.y, b.x - a.x, b.y - a.y});
        }
}

} // namespace

void previewTable(State& state, const TableArea& table) {
    SheetPreview& preview = *state.preview;
    const float s = state.scale;
    const PageOf page = pageOf(state);
    const Laid laid{preview, table, sizeOf(page)};
    const bool smaller = preview.on_a4 && page.drawing && isA3(page.get());
    preview.view.shrink = smaller ? kA3OnA4 : 1;
    settle(preview.view, laid.size, table, static_cast<double>(kTableMargin * s));
    ImGui::InvisibleButton("table", {static_cast<float>(table.width), static_cast<float>(table.height)},
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                               ImGuiButtonFlags_MouseButtonMiddle);
    place(state, "sheet:table");
    mouse(state, laid, ImGui::IsItemHovered(), ImGui::IsItemActive());
    settle(preview.view, laid.size, table, static_cast<double>(kTableMargin * s));
    tendPictures(state, table);

    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 low = laid.low();
    const ImVec2 high = laid.high();
    shadow(list, low, high, s);
    list.AddRectFilled(low, high, packed(0xFFFFFF));
    pictures(state, list, laid);
    if (!page.drawing) {
        words(state, list, low, high, insteadOfPage(state));
        return;
    }
    smallOnA4(list, laid);
    objectFrames(list, laid, s);
    noteOnA4(state, list, laid);
    rememberPlaces(state, laid);
}

} // namespace gangway::app
