// The side panel "Sheets": which drawings are written, in which formats, and where to.
#include "app/panels.hpp"
#include "export/export.hpp"
#include "export/tables.hpp"
#include "sheets/lighting_plan.hpp"
#include "sheets/schedule_sheets.hpp"
#include "sheets/schedules.hpp"
#include "sheets/switching_sheets.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app {

namespace {
using Drawn = std::expected<drawing::Drawing, std::string>;

sheets::Options optionsOf(const State& state) {
    sheets::Options options;
    options.base = state.document.file().parent_path();
    return options;
}

Drawn elevations(const State& state) {
    return sheets::elevationSheets(state.plan(), state.catalogue, optionsOf(state));
}

Drawn switching(const State& state) {
    sheets::SwitchingOptions options;
    options.base = state.document.file().parent_path();
    return sheets::switchingSheets(state.plan(), state.catalogue, options);
}

Drawn lighting(const State& state) {
    const auto* pack = state.packs.pack(state.plan().pack);
    if (pack == nullptr) return std::unexpected(fmt::format("no country pack '{}'", state.plan().pack));
    return sheets::lightingSheets(state.plan(), state.catalogue, *pack, optionsOf(state));
}

Drawn schedule(const State& state) {
    const auto* pack = state.packs.pack(state.plan().pack);
    if (pack == nullptr) return std::unexpected(fmt::format("no country pack '{}'", state.plan().pack));
    return sheets::scheduleSheets(state.plan(), state.catalogue, *pack, optionsOf(state));
}

constexpr std::string_view kSchedule = "schedule"; ///< the kind that has a workbook beside its sheets

struct Kind {
    const char* name;  ///< of the file: "-switching.pdf"
    const char* label; ///< beside its box
    Drawn (*draw)(const State& state);
};
constexpr Kind kKinds[] = {
    {"elevations", "Wall elevations, dimensioned", elevations},
    {"switching", "Switching plans: what works which lamp", switching},
    {"lighting", "Light: an estimate, direct light only", lighting},
    {kSchedule.data(), "Schedules: what is where and what to order, with a workbook (.xlsx)", schedule},
};

/// The same tables for a spreadsheet; what went wrong in words, or empty.
std::string writeWorkbook(const State& state, const std::filesystem::path& file) {
    const plan::Plan& plan = state.plan();
    const auto tables = sheets::schedules(plan, state.catalogue, *state.packs.pack(plan.pack));
    const exporting::TablesAbout about{
        plan.project.name,        plan.project.number, plan.project.designer, plan.project.date, "",
        sheets::scheduleCaution()};
    const auto done = exporting::writeXlsx(tables, about, file);
    return done ? std::string() : done.error();
}

/// Writes one kind; what went wrong in words, or empty. Counts its sheets.
std::string write(const State& state, const Kind& kind, const std::filesystem::path& folder,
                  std::size_t& sheets_written) {
    const auto drawing = kind.draw(state);
    if (!drawing) return fmt::format("{}: {}", kind.name, drawing.error());
    const std::string stem = state.document.file().filename().stem().stem().string();
    if (state.sheets_pdf)
        if (const auto done =
                exporting::writePdf(*drawing, folder / fmt::format("{}-{}.pdf", stem, kind.name));
            !done)
            return done.error();
    if (state.sheets_svg)
        if (const auto done = exporting::writeSvgs(*drawing, folder); !done) return done.error();
    constexpr double kDpi = 150;
    if (state.sheets_png)
        if (const auto done = exporting::writePngs(*drawing, folder, kDpi); !done) return done.error();
    sheets_written += drawing->sheets.size();
    if (kind.name != kSchedule) return {};
    return writeWorkbook(state, folder / fmt::format("{}-{}.xlsx", stem, kind.name));
}

void writeSheets(State& state) {
    const std::filesystem::path folder = state.sheets_folder;
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    std::vector<std::string> problems;
    if (error) problems.push_back(fmt::format("cannot make that folder: {}", error.message()));
    std::size_t count = 0;
    for (const Kind& kind : kKinds) {
        if (!problems.empty() || !state.sheet_kinds.contains(kind.name)) continue;
        if (const std::string problem = write(state, kind, folder, count); !problem.empty())
            problems.push_back(problem);
    }
    if (!problems.empty()) {
        state.message = Message{"The sheets were not written", problems};
        return;
    }
    say(state, fmt::format("{} sheets written to {}", count, folder.string()));
    state.panel = Panel::None;
}
} // namespace

void sheetsPanel(State& state) {
    if (state.sheets_folder.empty())
        state.sheets_folder =
            (std::filesystem::absolute(state.document.file()).parent_path() / "sheets").string();
    wrapped("Drawings on A3, each at the largest standard scale that fits.");
    for (const Kind& kind : kKinds) {
        bool wanted = state.sheet_kinds.contains(kind.name);
        if (ImGui::Checkbox(kind.label, &wanted)) {
            if (wanted)
                state.sheet_kinds.insert(kind.name);
            else
                state.sheet_kinds.erase(kind.name);
        }
        place(state, fmt::format("sheets:{}", kind.name));
    }
    ImGui::Separator();
    ImGui::Checkbox("PDF, all sheets of a kind in one file", &state.sheets_pdf);
    ImGui::Checkbox("SVG, one file a sheet", &state.sheets_svg);
    ImGui::Checkbox("PNG, one file a sheet", &state.sheets_png);
    ImGui::TextDisabled("Folder");
    ImGui::SetNextItemWidth(-1);
    ImGui::InputText("##folder", &state.sheets_folder);
    place(state, "sheets-folder");
    ImGui::BeginDisabled((!state.sheets_pdf && !state.sheets_svg && !state.sheets_png) ||
                         state.sheet_kinds.empty());
    if (largeButton(state, "Write the sheets", state.tokens->accent, {-1, 44 * state.scale}, true))
        writeSheets(state);
    place(state, "write-sheets");
    ImGui::EndDisabled();
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped("A placing proposal, not an electrical design. Isolate the supply and prove dead; a licensed "
            "person and the local code decide.");
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

} // namespace gangway::app
