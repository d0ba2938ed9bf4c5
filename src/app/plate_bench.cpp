#include "app/plate_bench_parts.hpp"

#include <fmt/format.h>

#include <GLFW/glfw3.h>

#include <algorithm>

namespace gangway::app {

namespace bench {
void heading(const State& state, const char* words) {
    ImGui::PushFont(state.fonts.strong);
    ImGui::TextUnformatted(words);
    ImGui::PopFont();
}

bool choiceButton(const State& state, const char* label, bool chosen, ImVec2 size) {
    const Tokens& t = *state.tokens;
    ImGui::PushStyleColor(ImGuiCol_Button, colour(chosen ? t.accent : t.raised));
    ImGui::PushStyleColor(ImGuiCol_ButtonHovered, colour(chosen ? t.accent : t.quiet, chosen ? 1.0F : 0.5F));
    ImGui::PushStyleColor(ImGuiCol_Text, colour(chosen ? t.on_accent : t.ink));
    const bool clicked = ImGui::Button(label, size);
    ImGui::PopStyleColor(3);
    return clicked;
}

void hint(const char* words) {
    const float line = ImGui::GetFontSize();
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {line * 0.6F, line * 0.4F});
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(ImGui::GetFontSize() * 22);
    ImGui::TextUnformatted(words);
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
    ImGui::PopStyleVar();
}
} // namespace bench

namespace {
using namespace bench;

std::string firstFormat(const State& state) {
    const auto* storey = plan::findStorey(state.plan(), state.storey);
    if (storey != nullptr && state.catalogue.format(storey->plate_format) != nullptr)
        return storey->plate_format;
    const auto* pack = state.packs.pack(state.plan().pack);
    if (pack != nullptr && state.catalogue.format(pack->plate_format) != nullptr) return pack->plate_format;
    return state.catalogue.formats.empty() ? "" : state.catalogue.formats.front().id;
}

void begin(State& state, BenchPurpose purpose, std::vector<plan::OwnFormat> formats) {
    PlateBench& bench = state.bench;
    bench.open = true;
    bench.appearing = true;
    bench.purpose = purpose;
    bench.formats = std::move(formats);
    bench.view = PlateBench::View::Front;
    bench.gang = 0;
    bench.search.clear();
    bench.focus.clear();
    bench.typed.clear();
    bench.mistakes.clear();
    bench.title.clear();
    bench.name.clear();
    bench.category.clear();
    bench.library_id.clear();
    bench.yaw = 0.5F;
    bench.pitch = 0.3F;
    state.panel = Panel::None;
}

/// The plate's format as the plan means it: where it has none, its storey's.
void settleFormat(State& state) {
    PlateBench& bench = state.bench;
    if (bench.plate.format.empty()) bench.plate.format = firstFormat(state);
    recompose(state);
    // A count that was left to the modules is said from now on, so that emptying a gang keeps it.
    if (bench.plate.gangs == 0) bench.plate.gangs = bench.composed.gang_count;
    recompose(state);
}

std::string titleWords(const PlateBench& bench) {
    switch (bench.purpose) {
    case BenchPurpose::New:
        return "a new plate";
    case BenchPurpose::Change:
        return "changing " + bench.title;
    case BenchPurpose::Library:
        return "'" + bench.title + "' of the library";
    }
    return {};
}

void header(State& state) {
    const float s = state.scale;
    ImGui::PushFont(state.fonts.large);
    ImGui::TextUnformatted("Plate bench");
    const float line = ImGui::GetTextLineHeight();
    ImGui::PopFont();
    ImGui::SameLine(0, 12 * s);
    ImGui::SetCursorPosY(ImGui::GetCursorPosY() + line - ImGui::GetTextLineHeight() - 2 * s);
    ImGui::TextDisabled("%s", titleWords(state.bench).c_str());
    const float width = 116 * s;
    ImGui::SameLine(ImGui::GetWindowWidth() - width - 16 * s);
    ImGui::SetCursorPosY(12 * s);
    if (choiceButton(state, "Close  Esc", false, {width, 0})) closeBench(state);
    place(state, "bench:close");
    if (ImGui::IsItemHovered()) hint("Close without changing anything");
}

struct ViewWords {
    PlateBench::View view;
    const char* label;
    const char* place;
    const char* what;
};
constexpr ViewWords kViews[] = {
    {PlateBench::View::Front, "Front", "bench:tab:front", "As seen from the room (F)"},
    {PlateBench::View::Side, "Side", "bench:tab:side", "Cut through wall, box and plate (S)"},
    {PlateBench::View::Box, "Box", "bench:tab:box", "What is cut and drilled, seen from the room (B)"}};

void viewTabs(State& state) {
    const float s = state.scale;
    for (const auto& row : kViews) {
        if (row.view != PlateBench::View::Front) ImGui::SameLine(0, 4 * s);
        if (choiceButton(state, row.label, state.bench.view == row.view, {88 * s, 0}))
            state.bench.view = row.view;
        place(state, row.place);
        if (ImGui::IsItemHovered()) hint(row.what);
    }
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    constexpr const char* kUnits[] = {"sizes in mm", "sizes in cm", "sizes in m", "sizes in feet and inches"};
    ImGui::TextDisabled("%s", kUnits[static_cast<std::size_t>(state.plan().units)]);
}

void middle(State& state, ImVec2 size) {
    const float s = state.scale;
    const bool own = ownFormat(state) != nullptr;
    const float sizes = own ? sizesHeight(state) : 0;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float tabs = ImGui::GetFrameHeight();
    const ImVec2 high{low.x + size.x, low.y + std::max(150 * s, size.y - tabs - 8 * s - sizes)};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(low, high, packed(state.tokens->raised), 8 * s);
    list.AddRect(low, high, packed(state.tokens->quiet), 8 * s);
    place(state, "bench:drawing");
    state.places["bench:drawing"] = {low.x, low.y, high.x - low.x, high.y - low.y};
    ImGui::PushClipRect(low, high, true);
    switch (state.bench.view) {
    case PlateBench::View::Front:
        drawFrontView(state, low, high);
        break;
    case PlateBench::View::Side:
        drawSideView(state, low, high);
        break;
    case PlateBench::View::Box:
        drawBoxView(state, low, high);
        break;
    }
    ImGui::PopClipRect();
    ImGui::SetCursorScreenPos({low.x, high.y + 8 * s});
    viewTabs(state);
    if (own && ownFormat(state) != nullptr) drawSizes(state);
}

/// Three columns over the foot.
void body(State& state) {
    const float s = state.scale;
    const float width = ImGui::GetContentRegionAvail().x;
    const float foot = (ImGui::GetContentRegionAvail().y < 560 * s ? 98 : 116) * s;
    const float height = ImGui::GetContentRegionAvail().y - foot - 24 * s;
    const float left = 256 * s;
    const float right = std::clamp(width * 0.26F, 284 * s, 360 * s);
    const float gap = 16 * s;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::BeginChild("bench-left", {left, height});
    drawFormatColumn(state, height);
    ImGui::EndChild();
    ImGui::SameLine(0, gap);
    ImGui::BeginChild("bench-middle", {width - left - right - 2 * gap, height});
    middle(state, ImGui::GetContentRegionAvail());
    ImGui::EndChild();
    ImGui::SameLine(0, gap);
    ImGui::BeginChild("bench-right", {right, height});
    drawModuleColumn(state, height);
    ImGui::EndChild();
    const float line = corner.y + height + 12 * s;
    ImGui::GetWindowDrawList()->AddLine({corner.x, line}, {corner.x + width, line},
                                        packed(state.tokens->quiet));
    ImGui::SetCursorScreenPos({corner.x, corner.y + height + 24 * s});
    ImGui::BeginChild("bench-foot", {0, foot});
    drawFoot(state, foot);
    ImGui::EndChild();
}

/// Along reading order, round at the ends.
void moveBy(PlateBench& bench, int step) {
    const auto count = static_cast<int>(bench.composed.gangs.size());
    if (count == 0) return;
    bench.gang = static_cast<std::size_t>((static_cast<int>(bench.gang) + step + count) % count);
}

void moveRow(State& state, int rows) {
    const Lattice lattice = latticeOf(state);
    PlateBench& bench = state.bench;
    const int to = static_cast<int>(bench.gang) + rows * lattice.columns;
    if (to >= 0 && to < static_cast<int>(bench.composed.gangs.size()))
        bench.gang = static_cast<std::size_t>(to);
}

bool pressed(int key) {
    return ImGui::IsKeyPressed(key, false);
}

void gangKeys(State& state) {
    PlateBench& bench = state.bench;
    if (pressed(GLFW_KEY_TAB)) moveBy(bench, ImGui::GetIO().KeyShift ? -1 : 1);
    if (pressed(GLFW_KEY_RIGHT)) moveBy(bench, 1);
    if (pressed(GLFW_KEY_LEFT)) moveBy(bench, -1);
    if (pressed(GLFW_KEY_DOWN)) moveRow(state, 1);
    if (pressed(GLFW_KEY_UP)) moveRow(state, -1);
    if (pressed(GLFW_KEY_DELETE) || pressed(GLFW_KEY_BACKSPACE)) emptyGang(state);
    if (pressed(GLFW_KEY_EQUAL) || pressed(GLFW_KEY_KP_ADD)) stepGangs(state, 1);
    if (pressed(GLFW_KEY_MINUS) || pressed(GLFW_KEY_KP_SUBTRACT)) stepGangs(state, -1);
    if (pressed(GLFW_KEY_F)) bench.view = PlateBench::View::Front;
    if (pressed(GLFW_KEY_S)) bench.view = PlateBench::View::Side;
    if (pressed(GLFW_KEY_B)) bench.view = PlateBench::View::Box;
    if (pressed(GLFW_KEY_A)) fillAll(state);
}

void formatKeys(State& state) {
    const auto& formats = state.bench.catalogue.formats;
    const auto now = std::ranges::find(formats, state.bench.plate.format, &catalogue::PlateFormat::id);
    if (now == formats.end()) return;
    std::string wanted;
    if (pressed(GLFW_KEY_PAGE_DOWN) && now + 1 != formats.end()) wanted = (now + 1)->id;
    if (pressed(GLFW_KEY_PAGE_UP) && now != formats.begin()) wanted = (now - 1)->id;
    if (!wanted.empty()) chooseFormat(state, wanted);
    if (pressed(GLFW_KEY_V) && state.bench.composed.format->vertical) {
        const bool upright = state.bench.plate.direction == plan::Direction::Vertical;
        state.bench.plate.direction = upright ? plan::Direction::Horizontal : plan::Direction::Vertical;
        recompose(state);
    }
}
} // namespace

void openBench(State& state, const plan::Plate& plate, BenchPurpose purpose) {
    begin(state, purpose, state.plan().formats);
    state.bench.plate = plate;
    state.bench.title = plate.tag.empty() ? plate.id : plate.tag;
    if (purpose == BenchPurpose::New) state.bench.plate.id = "bench";
    settleFormat(state);
}

void openBench(State& state, const plan::LibraryPlate& stored, const std::vector<plan::OwnFormat>& formats) {
    begin(state, stored.id.empty() ? BenchPurpose::New : BenchPurpose::Library, formats);
    PlateBench& bench = state.bench;
    bench.plate = catalogue::fromLibrary(stored);
    bench.plate.id = "bench";
    bench.title = stored.name;
    bench.name = stored.name;
    bench.category = stored.category;
    bench.library_id = stored.id;
    settleFormat(state);
}

void closeBench(State& state) {
    state.bench.open = false;
    state.frames_wanted = std::max(state.frames_wanted, 2);
}

void endBench(State& state) {
    state.bench.renderer.reset();
}

void drawPlateBench(State& state, float width, float height) {
    if (!state.bench.open) return;
    const float s = state.scale;
    const float margin = 12 * s;
    // The docket and the strip have nothing to say to a plate that is nowhere yet.
    ImGui::SetNextWindowPos({state.stage.x + margin, state.stage.y + margin});
    ImGui::SetNextWindowSize({width - state.stage.x - 2 * margin, height - state.stage.y - 2 * margin});
    if (std::exchange(state.bench.appearing, false)) ImGui::SetNextWindowFocus();
    ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 10 * s);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1);
    ImGui::Begin("plate-bench", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoScrollWithMouse);
    header(state);
    ImGui::SetCursorPosY(56 * s);
    body(state);
    ImGui::End();
    ImGui::PopStyleVar(2);
}

void benchKeys(State& state) {
    const ImGuiIO& io = ImGui::GetIO();
    if (state.message || state.ask_unsaved || state.ask_recover) return;
    if (pressed(GLFW_KEY_ESCAPE)) {
        // The first Esc ends what is being typed, as everywhere.
        if (!io.WantTextInput) closeBench(state);
        return;
    }
    if (io.KeyCtrl) {
        if (pressed(GLFW_KEY_ENTER) || pressed(GLFW_KEY_KP_ENTER)) finishBench(state);
        if (pressed(GLFW_KEY_S)) saveToLibrary(state);
        if (pressed(GLFW_KEY_F)) state.bench.search_focus = true;
        return;
    }
    if (io.WantTextInput) return;
    gangKeys(state);
    formatKeys(state);
}

} // namespace gangway::app
