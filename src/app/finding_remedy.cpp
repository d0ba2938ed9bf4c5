// What can be done about the open finding: its remedy, looked at before it is done; or taking it as it is.
#include "app/edit_actions.hpp"
#include "app/finding_parts.hpp"
#include "checks/accepted.hpp"
#include "edit/finding_edits.hpp"
#include "edit/number_shown.hpp"
#include "edit/plate_edits.hpp"
#include "geometry/frames.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace gangway::app {

namespace {
using plan::Finding;

std::string tagOf(const plan::Plan& plan, const std::string& plate_id) {
    const auto* plate = plan::findPlate(plan, plate_id);
    return plate == nullptr || plate->tag.empty() ? plate_id : plate->tag;
}

/// Along and up, whichever of the two changes.
std::string moveWords(const State& state, const plan::PlateMove& move) {
    const auto* plate = plan::findPlate(state.plan(), move.plate);
    const auto words = [&](double length_mm) { return edit::lengthInWords(length_mm, state.plan().units); };
    constexpr double kSame_mm = 0.05;
    if (plate == nullptr || std::abs(plate->host.v_mm - move.v_mm) < kSame_mm)
        return fmt::format("Move it to {}", words(move.u_mm));
    if (std::abs(plate->host.u_mm - move.u_mm) < kSame_mm)
        return fmt::format("Move it to height {}", words(move.v_mm));
    return fmt::format("Move it to {}, height {}", words(move.u_mm), words(move.v_mm));
}

struct Remedy {
    std::string label;
    std::string object; ///< for the report
    RemedyPreview preview;
};

std::optional<Remedy> remedyOf(const State& state, const Finding& finding) {
    if (finding.accepted) return std::nullopt;
    if (finding.move)
        return Remedy{moveWords(state, *finding.move), finding.move->plate, {finding.move, {}, {}}};
    if (finding.plug)
        return Remedy{fmt::format("Plug it into {}", tagOf(state.plan(), finding.plug->plate)),
                      finding.plug->device,
                      {{}, finding.plug, {}}};
    if (!finding.rehang.empty())
        return Remedy{"Hang the door at its other side", finding.rehang, {{}, {}, finding.rehang}};
    return std::nullopt;
}

/// The rows after this one as the docket lists them, then those before it.
std::vector<std::string> othersAfter(const State& state, const std::string& id) {
    std::vector<std::string> order;
    for (const auto& group : findingGroups(state, listedRoom(state)))
        for (const std::size_t i : group.rows)
            order.push_back(state.findings.ids[i]);
    const auto here = std::ranges::find(order, id);
    if (here == order.end()) return order;
    std::rotate(order.begin(), here, order.end());
    order.erase(order.begin());
    return order;
}

void carryOut(State& state, const Finding& finding) {
    state.findings.previewing = false;
    state.findings.then = othersAfter(state, checks::findingId(finding));
    if (state.findings.then.empty()) state.findings.then = {checks::findingId(finding)};
    if (finding.move)
        runArranged(state, edit::movePlate(state.plan(), finding.move->plate, finding.move->u_mm,
                                           finding.move->v_mm));
    else if (finding.plug)
        runArranged(state, edit::plugDevice(state.plan(), finding.plug->device, finding.plug->plate));
    else
        runArranged(state, edit::rehangDoor(state.plan(), finding.rehang));
}

void remedyButtons(State& state, const Finding& finding, const Remedy& remedy) {
    const float s = state.scale;
    const float width = ImGui::GetContentRegionAvail().x - 8 * s;
    if (largeButton(state, remedy.label.c_str(), state.tokens->accent, {width, 32 * s}, true))
        carryOut(state, finding);
    const bool over = ImGui::IsItemHovered();
    place(state, fmt::format("remedy:{}:{}", finding.rule, remedy.object));
    if (over || state.findings.previewing) state.findings.preview = remedy.preview;
}

/// Looking at it again after walking off, and at what the remedy would do.
void views(State& state, bool remedy) {
    const float s = state.scale;
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {10 * s, 4 * s});
    if (ImGui::Button("Look again")) lookAtFinding(state);
    place(state, "finding-look");
    if (remedy) {
        ImGui::SameLine(0, 6 * s);
        if (ImGui::Button(state.findings.previewing ? "End preview" : "Preview")) {
            state.findings.previewing = !state.findings.previewing;
            lookAtFinding(state);
        }
        place(state, "finding-preview");
    }
    ImGui::PopStyleVar();
}

/// A reason and a button that takes the finding as it is; or the one that takes that back.
void acceptance(State& state, const Finding& finding) {
    const float s = state.scale;
    const std::string id = checks::findingId(finding);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {10 * s, 4 * s});
    if (finding.accepted) {
        const bool back = ImGui::Button("No longer accept it");
        place(state, "finding-reopen");
        ImGui::PopStyleVar();
        if (back) runArranged(state, edit::withdrawAcceptance(id));
        return;
    }
    const float button = ImGui::CalcTextSize("Accept").x + 20 * s;
    ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - button - 14 * s);
    const bool entered = ImGui::InputTextWithHint("##why", "why it stays so", &state.findings.why,
                                                  ImGuiInputTextFlags_EnterReturnsTrue);
    place(state, "finding-why");
    ImGui::SameLine(0, 6 * s);
    ImGui::BeginDisabled(state.findings.why.empty());
    const bool accept = ImGui::Button("Accept") || entered;
    place(state, "finding-accept");
    ImGui::EndDisabled();
    ImGui::PopStyleVar();
    if (!accept || state.findings.why.empty()) return;
    state.findings.then = othersAfter(state, id);
    runArranged(
        state,
        edit::acceptFinding(
            {id, checks::factsOf(finding), state.plan().project.designer, nowUtc(), state.findings.why, {}}));
    state.findings.why.clear();
}
} // namespace

std::vector<plan::Vec3> movedCorners(const State& state, const plan::PlateMove& move) {
    const auto* plate = plan::findPlate(state.plan(), move.plate);
    if (plate == nullptr || !state.derived.house) return {};
    plan::Plate there = *plate;
    there.host.u_mm = move.u_mm;
    there.host.v_mm = move.v_mm;
    return plateCorners(*state.derived.house, state.catalogue, there);
}

void findingDeeds(State& state, const Finding& finding) {
    const float s = state.scale;
    ImGui::Indent(30 * s);
    ImGui::PushTextWrapPos(ImGui::GetWindowContentRegionMax().x - 8 * s);
    ImGui::PushFont(state.fonts.small);
    if (const std::string measured = measureWords(state, finding); !measured.empty()) {
        ImGui::PushStyleColor(ImGuiCol_Text, colour(severityInk(*state.tokens, finding.severity)));
        ImGui::TextUnformatted(fmt::format("{}: {}", severityWord(finding.severity), measured).c_str());
        ImGui::PopStyleColor();
    }
    ImGui::TextUnformatted(finding.remedy.c_str());
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    ImGui::TextUnformatted(finding.source.c_str());
    ImGui::PopStyleColor();
    ImGui::PopFont();
    ImGui::PopTextWrapPos();
    const auto remedy = remedyOf(state, finding);
    if (remedy) remedyButtons(state, finding, *remedy);
    views(state, remedy.has_value());
    acceptance(state, finding);
    ImGui::Unindent(30 * s);
    ImGui::Dummy({0, 6 * s});
}

} // namespace gangway::app
