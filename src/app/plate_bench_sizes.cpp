// The sizes of a format of the designer's own, each typed with or without its unit.
#include "app/plate_bench_parts.hpp"

#include "edit/number_shown.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <array>

namespace gangway::app::bench {

namespace {
struct Field {
    const char* name;
    double plan::OwnFormat::* value;
    double least_mm;
    double most_mm; ///< a plate is a thing of the hand; more is a slip of the key
    const char* what;
};
constexpr std::array kFields{
    Field{"module width", &plan::OwnFormat::module_width_mm, 5, 500, "Visible part of one module"},
    Field{"module height", &plan::OwnFormat::module_height_mm, 5, 500, "Visible part of one module"},
    Field{"plate width", &plan::OwnFormat::plate_width_mm, 10, 1000, "Outline of a plate with one gang"},
    Field{"plate height", &plan::OwnFormat::plate_height_mm, 10, 1000, "Outline of a plate with one gang"},
    Field{"pitch", &plan::OwnFormat::pitch_mm, 5, 1000, "Centre to centre of neighbouring gangs"},
    Field{"corner", &plan::OwnFormat::corner_mm, 0, 200, "Radius of the plate's corners"},
    Field{"relief", &plan::OwnFormat::relief_mm, 0.5, 100, "How far the frame stands out of the wall"},
    Field{"box width", &plan::OwnFormat::box_width_mm, 5, 500, "Of the box; its diameter when it is round"},
    Field{"box height", &plan::OwnFormat::box_height_mm, 5, 500, "Of a box with corners"},
    Field{"box depth", &plan::OwnFormat::box_depth_mm, 5, 300, "From the wall's face"},
    Field{"drill", &plan::OwnFormat::drill_mm, 0, 500, "Diameter of the cutter; 0 when it is not drilled"}};

constexpr int kColumns = 4;
constexpr int kMostGangs = 20;
// Pixels at scale 1.
constexpr float kLabel = 17;  ///< height of a label with what is under it
constexpr float kGap = 5;     ///< between rows
constexpr float kPadding = 4; ///< of a box, above and below its number

bool isShown(const Field& field, const plan::OwnFormat& own) {
    return field.value != &plan::OwnFormat::box_height_mm || own.box_height_mm > 0;
}

const char* labelOf(const Field& field, const plan::OwnFormat& own) {
    const bool diameter = field.value == &plan::OwnFormat::box_width_mm && own.box_height_mm <= 0;
    return diameter ? "box diameter" : field.name;
}

/// Takes over what was typed, or says why it can't.
void take(State& state, const Field& field) {
    PlateBench& bench = state.bench;
    plan::OwnFormat& own = *ownFormat(state);
    const auto typed = edit::parseLengthIn(bench.typed[field.name], state.plan().units);
    if (!typed) {
        bench.mistakes[field.name] = typed.error();
        return;
    }
    if (*typed < field.least_mm || *typed > field.most_mm) {
        bench.mistakes[field.name] =
            fmt::format("give {} to {}", shown(state, field.least_mm), shown(state, field.most_mm));
        return;
    }
    bench.mistakes.erase(field.name);
    bench.typed.erase(field.name);
    if (own.*(field.value) == *typed) return;
    own.*(field.value) = *typed;
    recompose(state);
}

/// The label over a box; the cursor is where the cell begins, and afterwards under the label.
void cellLabel(const State& state, const char* words, bool wrong) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImFont& font = *state.fonts.small;
    ImGui::GetWindowDrawList()->AddText(&font, font.FontSize, at,
                                        packed(wrong ? state.tokens->fault : state.tokens->soft_ink), words);
    ImGui::SetCursorScreenPos({at.x, at.y + kLabel * state.scale});
}

void numberBox(State& state, const Field& field, float width) {
    PlateBench& bench = state.bench;
    const plan::OwnFormat& own = *ownFormat(state);
    const bool wrong = bench.mistakes.contains(field.name);
    cellLabel(state, labelOf(field, own), wrong);
    std::string text =
        bench.typed.contains(field.name) ? bench.typed[field.name] : shown(state, own.*(field.value));
    ImGui::SetNextItemWidth(width);
    if (bench.focus == field.name) {
        ImGui::SetKeyboardFocusHere();
        bench.focus.clear();
    }
    if (wrong) ImGui::PushStyleColor(ImGuiCol_Border, colour(state.tokens->fault));
    ImGui::PushID(field.name);
    const bool entered = ImGui::InputText(
        "##size", &text, ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    ImGui::PopID();
    place(state, std::string("bench:size:") + field.name);
    if (wrong) ImGui::PopStyleColor();
    if (ImGui::IsItemHovered()) hint(wrong ? bench.mistakes[field.name].c_str() : field.what);
    if (ImGui::IsItemEdited() || ImGui::IsItemActive()) bench.typed[field.name] = text;
    if (entered || ImGui::IsItemDeactivatedAfterEdit())
        take(state, field);
    else if (ImGui::IsItemDeactivated() && !wrong)
        bench.typed.erase(field.name);
}

void mostGangs(State& state, float width) {
    plan::OwnFormat& own = *ownFormat(state);
    const float side = ImGui::GetFrameHeight();
    cellLabel(state, "gangs at most", false);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    int step = 0;
    if (choiceButton(state, "-##most", false, {side, side})) step = -1;
    place(state, "bench:most-");
    const std::string count = std::to_string(own.max_gangs);
    const ImVec2 extent = ImGui::CalcTextSize(count.c_str());
    ImGui::GetWindowDrawList()->AddText({at.x + (width - extent.x) / 2, at.y + (side - extent.y) / 2},
                                        packed(state.tokens->ink), count.c_str());
    ImGui::SetCursorScreenPos({at.x + width - side, at.y});
    if (choiceButton(state, "+##most", false, {side, side})) step = 1;
    place(state, "bench:most+");
    if (step == 0 || own.max_gangs + step < 1 || own.max_gangs + step > kMostGangs) return;
    own.max_gangs += step;
    recompose(state);
}

void boxShape(State& state) {
    plan::OwnFormat& own = *ownFormat(state);
    const bool round = own.box_height_mm <= 0;
    const float s = state.scale;
    if (choiceButton(state, "Round box", round)) {
        own.box_height_mm = 0;
        recompose(state);
    }
    place(state, "bench:round-box");
    ImGui::SameLine(0, 4 * s);
    if (choiceButton(state, "Box with corners", !round) && round) {
        own.box_height_mm = own.box_width_mm;
        recompose(state);
    }
    place(state, "bench:square-box");
}

/// Who else the sizes concern.
std::size_t othersWith(const State& state, const std::string& format) {
    return static_cast<std::size_t>(std::ranges::count_if(state.plan().plates, [&](const plan::Plate& plate) {
        return plate.format == format && plate.id != state.bench.plate.id;
    }));
}

void nameAndShape(State& state) {
    plan::OwnFormat& own = *ownFormat(state);
    const float s = state.scale;
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted("Name");
    ImGui::SameLine();
    ImGui::SetNextItemWidth(std::min(200 * s, ImGui::GetContentRegionAvail().x * 0.36F));
    if (ImGui::InputText("##format-name", &own.name)) recompose(state);
    place(state, "bench:format-name");
    ImGui::SameLine(0, 12 * s);
    boxShape(state);
}

std::string remark(const State& state) {
    const PlateBench& bench = state.bench;
    for (const auto& field : kFields)
        if (const auto wrong = bench.mistakes.find(field.name); wrong != bench.mistakes.end())
            return fmt::format("{}: {}", field.name, wrong->second);
    if (bench.purpose != BenchPurpose::Change) return {};
    const auto others = othersWith(state, bench.plate.format);
    if (others == 0) return {};
    return fmt::format("{} other plate{} of the plan use{} this format and change{} with it.", others,
                       others == 1 ? "" : "s", others == 1 ? "s" : "", others == 1 ? "s" : "");
}
} // namespace

float sizesHeight(const State& state) {
    const float s = state.scale;
    const float row = ImGui::GetFontSize() + 2 * kPadding * s;
    return 4 * row + (3 * (kLabel + kGap) + 16 + 20) * s;
}

void drawSizes(State& state) {
    const float s = state.scale;
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {8 * s, kPadding * s});
    nameAndShape(state);
    const float gap = 8 * s;
    const float width = (ImGui::GetContentRegionAvail().x - gap * (kColumns - 1)) / kColumns;
    const float height = ImGui::GetFrameHeight() + (kLabel + kGap) * s;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    int cell = 0;
    const auto nextCell = [&] {
        const auto column = static_cast<float>(cell % kColumns);
        const auto row = static_cast<float>(cell / kColumns);
        ImGui::SetCursorScreenPos({corner.x + column * (width + gap), corner.y + row * height});
        ++cell;
    };
    for (const auto& field : kFields) {
        if (!isShown(field, *ownFormat(state))) continue;
        nextCell();
        numberBox(state, field, width);
    }
    nextCell();
    mostGangs(state, width);
    ImGui::PopStyleVar();
    ImGui::SetCursorScreenPos({corner.x, corner.y + 3 * height});
    const std::string words = remark(state);
    if (words.empty()) return;
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(
        ImGuiCol_Text, colour(state.bench.mistakes.empty() ? state.tokens->soft_ink : state.tokens->fault));
    wrapped(words);
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

} // namespace gangway::app::bench
