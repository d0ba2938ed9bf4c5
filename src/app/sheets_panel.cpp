// The side panel "Sheets": which drawings are written, in which formats, and where to.
#include "app/panels.hpp"
#include "export/export.hpp"
#include "export/tables.hpp"
#include "sheets/findings_sheet.hpp"
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

/// The plan's own, nothing in its place: what is printed must not go by another country's numbers unsaid.
const catalogue::CountryPack* packOf(const State& state) {
    return state.packs.pack(state.plan().pack);
}

sheets::Options optionsOf(const State& state) {
    sheets::Options options;
    options.base = state.document.file().parent_path();
    options.pack = packOf(state);
    return options;
}

/// Of what goes by a country pack.
std::unexpected<std::string> noPack(const State& state) {
    return std::unexpected(fmt::format("no country pack '{}'", state.plan().pack));
}

Drawn elevations(State& state) {
    return sheets::elevationSheets(state.plan(), state.catalogue, optionsOf(state));
}

Drawn switching(State& state) {
    sheets::SwitchingOptions options;
    options.base = state.document.file().parent_path();
    return sheets::switchingSheets(state.plan(), state.catalogue, options);
}

Drawn lighting(State& state) {
    const auto* pack = packOf(state);
    if (pack == nullptr) return noPack(state);
    return sheets::lightingSheets(state.plan(), state.catalogue, *pack, optionsOf(state));
}

Drawn schedule(State& state) {
    const auto* pack = packOf(state);
    if (pack == nullptr) return noPack(state);
    return sheets::scheduleSheets(state.plan(), state.catalogue, *pack, optionsOf(state));
}

Drawn findings(State& state) {
    const auto* pack = packOf(state);
    if (pack == nullptr) return noPack(state);
    return sheets::findingsSheets(state.plan(), state.catalogue, *pack, findingsOf(state), optionsOf(state));
}

constexpr std::string_view kSchedule = "schedule"; ///< the kind that has a workbook beside its sheets

struct Kind {
    const char* name;  ///< of the file: "-switching.pdf"
    const char* label; ///< beside its box
    Drawn (*draw)(State& state);
};
constexpr Kind kKinds[] = {
    {"elevations", "Wall elevations, dimensioned", elevations},
    {"switching", "Switching plans: what works which lamp", switching},
    {"lighting", "Light: an estimate, direct light only", lighting},
    {kSchedule.data(), "Schedules, with a workbook (.xlsx)", schedule},
    {"findings", "Findings, and what was accepted", findings},
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
std::string write(State& state, const Kind& kind, const std::filesystem::path& folder,
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
    const auto format = [](const char* name, bool& wanted, const char* files) {
        ImGui::Checkbox(name, &wanted);
        if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s", files);
    };
    format("PDF", state.sheets_pdf, "All sheets of a kind in one file");
    ImGui::SameLine(0, 24 * state.scale);
    format("SVG", state.sheets_svg, "One file a sheet");
    ImGui::SameLine(0, 24 * state.scale);
    format("PNG", state.sheets_png, "One file a sheet");
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
