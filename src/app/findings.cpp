#include "app/findings.hpp"

#include "app/edit_actions.hpp"
#include "app/panels.hpp"
#include "checks/accepted.hpp"
#include "checks/checks.hpp"
#include "edit/finding_edits.hpp"
#include "edit/number_shown.hpp"
#include "edit/plate_edits.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app {

namespace {
using plan::Finding;
using plan::Severity;

const char* word(Severity severity) {
    switch (severity) {
    case Severity::Fault:
        return "Fault";
    case Severity::Warn:
        return "Warning";
    case Severity::Hint:
        break;
    }
    return "Hint";
}

unsigned ink(const State& state, Severity severity) {
    switch (severity) {
    case Severity::Fault:
        return state.tokens->fault;
    case Severity::Warn:
        return state.tokens->query;
    case Severity::Hint:
        break;
    }
    return state.tokens->soft_ink;
}

/// Faults a triangle, warnings a lozenge, hints a ring: the shape tells them apart without colour.
void shape(ImDrawList& list, Severity severity, ImVec2 c, float r, ImU32 colour, float thick) {
    if (severity == Severity::Fault)
        list.AddTriangle({c.x - r, c.y + r * 0.85F}, {c.x + r, c.y + r * 0.85F}, {c.x, c.y - r}, colour,
                         thick);
    else if (severity == Severity::Warn)
        list.AddQuad({c.x, c.y - r}, {c.x + r, c.y}, {c.x, c.y + r}, {c.x - r, c.y}, colour, thick);
    else
        list.AddCircle(c, r * 0.8F, colour, 20, thick);
}

std::string roomOf(const plan::Plan& plan, const Finding& finding) {
    for (const std::string& id : finding.objects) {
        if (const auto* plate = plan::findPlate(plan, id)) return plate->room;
        if (const auto* lamp = plan::findLuminaire(plan, id)) return lamp->room;
        if (const auto* room = plan::findRoom(plan, id)) return room->id;
    }
    return {};
}

void goTo(State& state, const Finding& finding) {
    for (const std::string& id : finding.objects) {
        if (plan::findPlate(state.plan(), id) != nullptr) {
            state.selected = id;
            showPlate(state, id);
            return;
        }
        if (const auto* lamp = plan::findLuminaire(state.plan(), id)) {
            enterRoom(state, lamp->room);
            state.selected.clear();
            state.thing = sheets::PlanRef{sheets::PlanThing::Luminaire, id, ""};
            return;
        }
    }
    if (const std::string room = roomOf(state.plan(), finding); !room.empty()) enterRoom(state, room);
}

/// What the pointer over a row is told: what settles it, and who says so.
void explain(const State& state, const Finding& finding) {
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(360 * state.scale);
    ImGui::TextUnformatted(finding.remedy.c_str());
    ImGui::TextDisabled("%s", finding.source.c_str());
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
}

void remedyButton(State& state, const Finding& finding) {
    const std::string label =
        fmt::format("Move it to {}", edit::lengthInWords(finding.move->u_mm, state.plan().units));
    const bool clicked = ImGui::Button(label.c_str());
    place(state, fmt::format("remedy:{}:{}", finding.rule, finding.move->plate));
    if (!clicked) return;
    const plan::PlateMove move = *finding.move;
    runArranged(state, edit::movePlate(state.plan(), move.plate, move.u_mm, move.v_mm));
    state.selected = move.plate;
    showPlate(state, move.plate);
}

/// A reason and a button that takes the finding as it is; or the one that takes that back.
void acceptance(State& state, const Finding& finding) {
    const std::string id = checks::findingId(finding);
    if (finding.accepted) {
        const bool back = ImGui::Button("No longer accept it");
        place(state, "finding-reopen");
        if (back) runArranged(state, edit::withdrawAcceptance(id));
        return;
    }
    ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - 92 * state.scale);
    const bool entered = ImGui::InputTextWithHint("##why", "why it stays so", &state.findings.why,
                                                  ImGuiInputTextFlags_EnterReturnsTrue);
    place(state, "finding-why");
    ImGui::SameLine(0, 6 * state.scale);
    ImGui::BeginDisabled(state.findings.why.empty());
    const bool accept = ImGui::Button("Accept") || entered;
    place(state, "finding-accept");
    ImGui::EndDisabled();
    if (!accept || state.findings.why.empty()) return;
    runArranged(
        state,
        edit::acceptFinding(
            {id, checks::factsOf(finding), state.plan().project.designer, nowUtc(), state.findings.why, {}}));
    state.findings.why.clear();
}

bool isOpen(const State& state, const Finding& finding) {
    return state.seat == Seat::Designer && state.findings.open == checks::findingId(finding);
}

/// What settles the finding whose row was clicked, who says so, and what can be done here; undo takes it
/// back.
void deeds(State& state, const Finding& finding) {
    if (!isOpen(state, finding)) return;
    ImGui::Indent(34 * state.scale);
    ImGui::PushFont(state.fonts.small);
    wrapped(finding.remedy);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped(finding.source);
    ImGui::PopStyleColor();
    ImGui::PopFont();
    if (finding.move && !finding.accepted) remedyButton(state, finding);
    acceptance(state, finding);
    ImGui::Unindent(34 * state.scale);
    ImGui::Dummy({0, 4 * state.scale});
}

void row(State& state, const Finding& finding, std::size_t number) {
    const float s = state.scale;
    const ImFont& small = *state.fonts.small;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float left = corner.x + 34 * s;
    const std::string said = finding.accepted
                                 ? fmt::format("{} Accepted: {}", finding.message, *finding.accepted)
                                 : finding.message;
    const auto lines = linesWithin(small, said, corner.x + width - 4 * s - left, 6);
    const float step = small.FontSize + 3 * s;
    const float height = 28 * s + static_cast<float>(lines.size()) * step;
    ImGui::PushID(static_cast<int>(number));
    if (ImGui::Selectable("##finding", false, 0, {width, height})) {
        state.findings.open = checks::findingId(finding);
        state.findings.why.clear();
        goTo(state, finding);
    }
    place(state, fmt::format("finding:{}:{}", finding.rule,
                             finding.objects.empty() ? std::string() : finding.objects.front()));
    if (ImGui::IsItemHovered() && !isOpen(state, finding)) explain(state, finding);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 colour = packed(ink(state, finding.severity));
    shape(list, finding.severity, {corner.x + 14 * s, corner.y + height / 2}, 8 * s, colour, 2 * s);
    list.AddText(state.fonts.strong, state.fonts.strong->FontSize, {left, corner.y + 3 * s}, colour,
                 finding.accepted ? fmt::format("{}, accepted", word(finding.severity)).c_str()
                                  : word(finding.severity));
    for (std::size_t i = 0; i < lines.size(); ++i)
        list.AddText(&small, small.FontSize, {left, corner.y + 23 * s + static_cast<float>(i) * step},
                     packed(state.tokens->ink), lines[i].c_str());
    deeds(state, finding);
    ImGui::PopID();
}
} // namespace

const std::vector<Finding>& findingsOf(State& state) {
    Findings& kept = state.findings;
    const auto* pack = state.packs.pack(state.plan().pack);
    if (pack == nullptr) pack = state.packs.pack("international");
    if (kept.version == state.document.version() || state.document.stepOpen() || !state.derived.house ||
        pack == nullptr)
        return kept.list;
    kept.list =
        checks::check(*state.derived.house, state.catalogue, *pack, state.document.file().parent_path());
    kept.version = state.document.version();
    return kept.list;
}

void findingRows(State& state, const std::string& room) {
    std::vector<Finding> here;
    for (const Finding& finding : findingsOf(state))
        if (room.empty() || roomOf(state.plan(), finding) == room) here.push_back(finding);
    if (here.empty()) return;
    ImGui::PushFont(state.fonts.strong);
    ImGui::TextUnformatted("Findings");
    ImGui::PopFont();
    if (const auto accepted =
            std::ranges::count_if(here, [](const Finding& one) { return one.accepted.has_value(); })) {
        ImGui::Checkbox(fmt::format("Show {} accepted", accepted).c_str(), &state.findings.show_accepted);
        place(state, "findings-accepted");
    }
    for (std::size_t i = 0; i < here.size(); ++i)
        if (!here[i].accepted || state.findings.show_accepted) row(state, here[i], i + 1);
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    wrapped("Cable zones, numbers of outlets and sight are not checked yet. Isolate the supply; a licensed "
            "person "
            "and the local code decide.");
    ImGui::PopStyleColor();
    ImGui::PopFont();
    ImGui::Dummy({0, 6 * state.scale});
}

} // namespace gangway::app
