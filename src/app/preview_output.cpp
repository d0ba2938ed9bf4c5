// The preview's right column: which sheets are written, in which formats and where to, how far it is; and
// printing through the system's viewer.
#include "app/panels.hpp"
#include "app/sheet_preview.hpp"
#include "app/viewer.hpp"
#include "export/export.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace gangway::app {

namespace {

void keepFolder(State& state) {
    if (state.preview->folder.empty())
        state.preview->folder =
            (std::filesystem::absolute(state.document.file()).parent_path() / "sheets").string();
}

std::string stemOf(const State& state) {
    return state.document.file().filename().stem().stem().string();
}

void smallSoft(const State& state, const std::string& text) {
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped(text);
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

void kindBoxes(State& state) {
    std::set<std::string>& wanted = state.preview->wanted;
    for (const KindPages& pages : state.preview->kinds) {
        const std::string word(pages.kind->word);
        bool ticked = wanted.contains(word);
        if (ImGui::Checkbox(shortName(*pages.kind).c_str(), &ticked)) {
            if (ticked)
                wanted.insert(word);
            else
                wanted.erase(word);
        }
        place(state, "sheets:" + word);
        if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", std::string(pages.kind->name).c_str());
    }
}

struct FormatBox {
    const char* label;
    bool ExportFormats::* wanted;
    const char* what;
};
constexpr FormatBox kFormatBoxes[] = {
    {"PDF", &ExportFormats::pdf, "One file a kind; under a cover one for all, and one of templates"},
    {"SVG", &ExportFormats::svg, "One file a sheet, in mm"},
    {"DXF", &ExportFormats::dxf, "One file a sheet: walls and plans at true size in model space"},
    {"PNG", &ExportFormats::png, "One file a sheet, 150 dots an inch"},
};

void formatBoxes(State& state) {
    ExportFormats& formats = state.preview->formats;
    const float column = ImGui::GetContentRegionAvail().x / 2;
    const float left = ImGui::GetCursorPosX();
    for (std::size_t i = 0; i < std::size(kFormatBoxes); ++i) {
        if (i % 2 == 1) ImGui::SameLine(left + column);
        ImGui::Checkbox(kFormatBoxes[i].label, &(formats.*kFormatBoxes[i].wanted));
        place(state, std::string("sheets:format:") + kFormatBoxes[i].label);
        if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", kFormatBoxes[i].what);
    }
    if (!state.preview->wanted.contains("schedule")) return;
    ImGui::Checkbox("Workbook of schedules (XLSX)", &formats.xlsx);
    place(state, "sheets:format:XLSX");
}

void progressBar(const State& state, float part) {
    const float s = state.scale;
    const Tokens& t = *state.tokens;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float high = 8 * s;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(low, {low.x + width, low.y + high}, packed(t.quiet, 0.6F), high / 2);
    const float done = std::max(high, width * part);
    list.AddRectFilled(low, {low.x + done, low.y + high}, packed(t.accent), high / 2);
    ImGui::Dummy({width, high + 4 * s});
}

void whileWriting(State& state) {
    SheetPreview& preview = *state.preview;
    const auto [words, part] = preview.progress->now();
    progressBar(state, part);
    const auto lines = linesWithin(*state.fonts.small, words, ImGui::GetContentRegionAvail().x, 2);
    ImGui::PushFont(state.fonts.small);
    // Always two lines, so that the button below keeps its place.
    for (std::size_t i = 0; i < 2; ++i)
        ImGui::TextUnformatted(i < lines.size() ? lines[i].c_str() : " ");
    ImGui::PopFont();
    const bool asked = preview.cancelling;
    ImGui::BeginDisabled(asked);
    if (largeButton(state, asked ? "Ending ..." : "Cancel", state.tokens->fault, {-1, 44 * state.scale},
                    false)) {
        preview.writing.askToStop();
        preview.cancelling = true;
    }
    place(state, "cancel-sheets");
    ImGui::EndDisabled();
}

void toWrite(State& state) {
    SheetPreview& preview = *state.preview;
    ImGui::BeginDisabled(!preview.formats.any() || preview.wanted.empty());
    if (largeButton(state, "Write the sheets", state.tokens->accent, {-1, 44 * state.scale}, true))
        startExport(state);
    place(state, "write-sheets");
    ImGui::EndDisabled();
    if (!preview.outcome.empty()) wrapped(preview.outcome.front());
}

void choices(State& state) {
    SheetPreview& preview = *state.preview;
    const float s = state.scale;
    ImGui::BeginDisabled(preview.writing.busy());
    // Small boxes, so that all kinds are seen at once.
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {4 * s, 3 * s});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * s, 6 * s});
    kindBoxes(state);
    ImGui::Dummy({0, 2 * s});
    ImGui::Separator();
    ImGui::Dummy({0, 2 * s});
    formatBoxes(state);
    ImGui::PopStyleVar(2);
    ImGui::Dummy({0, 2 * s});
    ImGui::TextDisabled("Folder");
    ImGui::SetNextItemWidth(-1);
    ImGui::InputText("##folder", &preview.folder);
    place(state, "sheets-folder");
    ImGui::EndDisabled();
    for (std::size_t i = 1; i < preview.outcome.size(); ++i)
        smallSoft(state, preview.outcome[i]);
    ImGui::Dummy({0, 4 * s});
    smallSoft(state,
              "A placing proposal, not an electrical design. Isolate the supply and prove dead; a licensed "
              "person and the local code decide.");
}

void takeExported(State& state, const Exported& done) {
    SheetPreview& preview = *state.preview;
    preview.cancelling = false;
    preview.outcome.clear();
    if (done.cancelled) {
        preview.outcome = {"Cancelled: nothing was written."};
        say(state, "Cancelled: nothing was written");
        return;
    }
    if (!done.problem.empty()) {
        state.message = Message{"The sheets were not written", {done.problem}};
        return;
    }
    const std::string what =
        fmt::format("{} {} written, {} {}", done.sheets, done.sheets == 1 ? "sheet" : "sheets",
                    done.files.size(), done.files.size() == 1 ? "file" : "files");
    preview.outcome.push_back(what + ".");
    for (const std::string& kind : done.left_out)
        preview.outcome.push_back(kind + ".");
    say(state, what);
}

void takePrinted(State& state, const Printed& done) {
    if (done.problem.empty()) {
        say(state, "Opened in the PDF viewer: print it from there, at actual size");
        return;
    }
    Message message{done.written ? "No viewer opened for printing"
                                 : "The sheets were not written for printing",
                    {done.problem + "."}};
    if (done.written) message.lines.push_back("The PDF is written: " + done.file.string());
    state.message = message;
}

} // namespace

void startExport(State& state) {
    SheetPreview& preview = *state.preview;
    if (preview.writing.busy() || preview.wanted.empty() || !preview.formats.any()) return;
    keepFolder(state);
    ExportOrder order;
    order.source = sheetSource(state);
    order.formats = preview.formats;
    order.folder = preview.folder;
    order.stem = stemOf(state);
    for (const KindPages& pages : preview.kinds) {
        const std::string word(pages.kind->word);
        if (!preview.wanted.contains(word)) continue;
        order.kinds.push_back(word);
        if (pages.drawing && pages.version == state.document.version()) order.drawn[word] = pages.drawing;
    }
    preview.outcome.clear();
    preview.progress = std::make_shared<ExportProgress>(state.wake);
    preview.writing.start([order = std::move(order), progress = preview.progress](
                              const std::stop_token& stop) { return exportSheets(order, *progress, stop); },
                          state.wake);
}

void startPrint(State& state, PrintWhat what) {
    SheetPreview& preview = *state.preview;
    const PageOf page = pageOf(state);
    if (!page.drawing || preview.printing.busy()) return;
    keepFolder(state);
    const std::string word(preview.kinds[preview.kind].kind->word);
    const std::string name = what == PrintWhat::Sheet ? page.get().file_stem : stemOf(state) + "-" + word;
    const std::filesystem::path file = std::filesystem::path(preview.folder) / (name + ".pdf");
    preview.printing.start(
        [page, file, what](const std::stop_token&) {
            drawing::Drawing printed = *page.drawing;
            if (what == PrintWhat::Sheet) printed.sheets.assign(1, page.get());
            std::error_code error;
            std::filesystem::create_directories(file.parent_path(), error);
            if (const auto written = exporting::writePdf(printed, file); !written)
                return Printed{file, written.error(), false};
            const auto opened = openInViewer(file);
            return Printed{file, opened ? std::string() : opened.error(), true};
        },
        state.wake);
}

void tendOutput(State& state) {
    if (const auto done = state.preview->writing.take()) takeExported(state, *done);
    if (const auto done = state.preview->printing.take()) takePrinted(state, *done);
}

void outputColumn(State& state) {
    const float s = state.scale;
    keepFolder(state);
    ImGui::PushFont(state.fonts.large);
    ImGui::TextUnformatted("Export");
    ImGui::PopFont();
    ImGui::Dummy({0, 2 * s});
    // What is chosen scrolls in a low window; what is done about it stays in sight.
    constexpr float kActionHeight = 132;
    ImGui::BeginChild("choices", {0, std::max(80 * s, ImGui::GetContentRegionAvail().y - kActionHeight * s)});
    choices(state);
    ImGui::EndChild();
    ImGui::Dummy({0, 4 * s});
    if (state.preview->writing.busy())
        whileWriting(state);
    else
        toWrite(state);
}

} // namespace gangway::app
