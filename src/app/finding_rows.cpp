// The docket's list of findings: filters, headings, rows.
#include "app/finding_parts.hpp"
#include "checks/scope.hpp"
#include "edit/number_shown.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {
using plan::Finding;
using plan::Severity;

constexpr std::array kWorstFirst{Severity::Fault, Severity::Warn, Severity::Hint};
constexpr std::size_t kLinesClosed = 2;
constexpr std::size_t kLinesOpen = 12;

std::size_t number(Severity severity) {
    return static_cast<std::size_t>(severity);
}

/// A button as flat as paper, in the accent colour while it is chosen.
bool word(const State& state, const char* label, bool chosen) {
    ImGui::PushStyleColor(ImGuiCol_Text, colour(chosen ? state.tokens->accent : state.tokens->soft_ink));
    ImGui::PushStyleColor(ImGuiCol_Button, colour(state.tokens->paper, 0));
    ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {2 * state.scale, 3 * state.scale});
    const bool clicked = ImGui::Button(label);
    ImGui::PopStyleVar(2);
    ImGui::PopStyleColor(2);
    return clicked;
}

/// Shape and count of one severity; a click shows or hides its rows.
void chip(State& state, Severity severity, int count) {
    const float s = state.scale;
    bool& shown = state.findings.shown[number(severity)];
    const std::string text = std::to_string(count);
    const ImVec2 size{44 * s + ImGui::CalcTextSize(text.c_str()).x, 28 * s};
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::PushID(severityWord(severity));
    if (ImGui::InvisibleButton("chip", size)) shown = !shown;
    ImGui::PopID();
    place(state, std::string("finding-filter:") + severityWord(severity));
    const bool over = ImGui::IsItemHovered();
    if (over)
        ImGui::SetTooltip("%ss are %s. Click to %s them", severityWord(severity), shown ? "shown" : "hidden",
                          shown ? "hide" : "show");
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 end{corner.x + size.x, corner.y + size.y};
    const unsigned ink = severityInk(*state.tokens, severity);
    if (shown) list.AddRectFilled(corner, end, packed(ink, over ? 0.2F : 0.12F), 14 * s);
    list.AddRect(corner, end, packed(shown ? ink : state.tokens->quiet, over ? 1.0F : 0.8F), 14 * s, 0,
                 1.2F * s);
    const ImU32 drawn = packed(shown ? ink : state.tokens->soft_ink, shown ? 1.0F : 0.6F);
    severityShape(list, severity, {corner.x + 17 * s, corner.y + size.y / 2}, 6 * s, drawn, 1.8F * s);
    list.AddText({corner.x + 30 * s, corner.y + (size.y - ImGui::GetFontSize()) / 2},
                 packed(shown ? state.tokens->ink : state.tokens->soft_ink), text.c_str());
}

void filters(State& state, const std::string& room) {
    const auto counts = findingCounts(state, room);
    for (const Severity severity : kWorstFirst) {
        if (severity != kWorstFirst.front()) ImGui::SameLine(0, 6 * state.scale);
        chip(state, severity, counts[number(severity)]);
    }
    Findings& kept = state.findings;
    std::size_t accepted = 0;
    for (std::size_t i = 0; i < kept.list.size(); ++i)
        accepted += kept.list[i].accepted && (room.empty() || kept.rooms[i] == room) ? 1U : 0U;
    if (accepted == 0) return;
    ImGui::Checkbox(fmt::format("Show {} accepted", accepted).c_str(), &kept.show_accepted);
    place(state, "findings-accepted");
}

/// How the list is cut; of one room there is nothing to choose.
void grouping(State& state, const std::string& room_id) {
    Findings& kept = state.findings;
    if (const auto* room = plan::findRoom(state.plan(), room_id)) {
        ImGui::AlignTextToFramePadding();
        ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
        ImGui::TextUnformatted(room->name.c_str());
        ImGui::PopStyleColor();
        return;
    }
    if (word(state, "By room", kept.groups == FindingGroups::Room)) kept.groups = FindingGroups::Room;
    place(state, "findings-by-room");
    ImGui::SameLine(0, 8 * state.scale);
    if (word(state, "By severity", kept.groups == FindingGroups::Severity))
        kept.groups = FindingGroups::Severity;
    place(state, "findings-by-severity");
}

/// The way through the list, at the right of the same line.
void wayThrough(State& state, const std::vector<FindingGroup>& groups) {
    const float s = state.scale;
    const Findings& kept = state.findings;
    std::size_t at = 0;
    std::size_t all = 0;
    const auto open = findingAt(state, kept.open);
    for (const auto& group : groups)
        for (const std::size_t i : group.rows) {
            ++all;
            if (open && *open == i) at = all;
        }
    const std::string text = at > 0 ? fmt::format("{} / {}", at, all) : fmt::format("{}", all);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {6 * s, 5 * s});
    const float button = ImGui::GetFrameHeight();
    const float words = ImGui::CalcTextSize(text.c_str()).x;
    ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - 2 * button - words - 12 * s);
    if (ImGui::ArrowButton("##before", ImGuiDir_Left)) stepFinding(state, -1);
    place(state, "finding-before");
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("The finding before (K)");
    ImGui::SameLine(0, 6 * s);
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(text.c_str());
    ImGui::SameLine(0, 6 * s);
    if (ImGui::ArrowButton("##next", ImGuiDir_Right)) stepFinding(state, 1);
    place(state, "finding-next");
    if (ImGui::IsItemHovered()) ImGui::SetTooltip("The next finding (J)");
    ImGui::PopStyleVar();
}

/// Name, a count for each severity with its shape, and whether its rows are shown.
void heading(State& state, const FindingGroup& group) {
    const float s = state.scale;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float high = 28 * s;
    const bool folded = state.findings.folded.contains(group.key);
    ImGui::PushID(group.key.c_str());
    if (ImGui::Selectable("##heading", false, 0, {width, high})) {
        if (folded)
            state.findings.folded.erase(group.key);
        else
            state.findings.folded.insert(group.key);
    }
    ImGui::PopID();
    place(state, "finding-group:" + group.key);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(state.tokens->ink);
    const ImVec2 c{corner.x + 8 * s, corner.y + high / 2};
    if (folded)
        list.AddTriangleFilled({c.x - 3 * s, c.y - 5 * s}, {c.x + 4 * s, c.y}, {c.x - 3 * s, c.y + 5 * s},
                               ink);
    else
        list.AddTriangleFilled({c.x - 5 * s, c.y - 3 * s}, {c.x + 5 * s, c.y - 3 * s}, {c.x, c.y + 4 * s},
                               ink);
    const ImFont& strong = *state.fonts.strong;
    const float text_y = corner.y + (high - strong.FontSize) / 2;
    float right = corner.x + width - 6 * s;
    for (auto severity = kWorstFirst.rbegin(); severity != kWorstFirst.rend(); ++severity) {
        const auto count = std::ranges::count_if(
            group.rows, [&](std::size_t i) { return state.findings.list[i].severity == *severity; });
        if (count == 0) continue;
        const std::string text = std::to_string(count);
        right -= strong.CalcTextSizeA(strong.FontSize, 1e4F, 0, text.c_str()).x;
        list.AddText(&strong, strong.FontSize, {right, text_y}, packed(state.tokens->soft_ink), text.c_str());
        right -= 12 * s;
        severityShape(list, *severity, {right, corner.y + high / 2}, 5 * s,
                      packed(severityInk(*state.tokens, *severity)), 1.6F * s);
        right -= 14 * s;
    }
    list.PushClipRect(corner, {right, corner.y + high}, true);
    list.AddText(&strong, strong.FontSize, {corner.x + 22 * s, text_y}, ink, group.name.c_str());
    list.PopClipRect();
    list.AddLine({corner.x, corner.y + high}, {corner.x + width, corner.y + high},
                 packed(state.tokens->quiet));
    ImGui::Dummy({0, 2 * s});
}

/// What the pointer over a closed row is told: all of it, what settles it, and who says so.
void explain(const State& state, const Finding& finding) {
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(360 * state.scale);
    ImGui::TextUnformatted(finding.message.c_str());
    ImGui::TextUnformatted(finding.remedy.c_str());
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    ImGui::TextUnformatted(finding.source.c_str());
    ImGui::PopStyleColor();
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
}

/// A strip at the left and a lighter ground tell the open row from the others.
struct OpenGround {
    ImDrawList& list;
    ImVec2 corner;
    explicit OpenGround(ImDrawList& drawn) : list(drawn), corner(ImGui::GetCursorScreenPos()) {
        list.ChannelsSplit(2);
        list.ChannelsSetCurrent(1);
    }
    void draw(const State& state, float width, unsigned ink) {
        const float s = state.scale;
        list.ChannelsSetCurrent(0);
        const ImVec2 end{corner.x + width, ImGui::GetCursorScreenPos().y};
        list.AddRectFilled(corner, end, packed(state.tokens->raised), 6 * s);
        list.AddRect(corner, end, packed(state.tokens->quiet), 6 * s);
        list.AddRectFilled(corner, {corner.x + 3 * s, end.y}, packed(ink), 2 * s);
        list.ChannelsMerge();
    }
};

std::string saidOf(const Finding& finding) {
    return finding.accepted ? fmt::format("{} Accepted: {}", finding.message, *finding.accepted)
                            : finding.message;
}

void row(State& state, std::size_t i) {
    const Finding finding = state.findings.list[i]; // a deed may end the list while the row is drawn
    const std::string id = state.findings.ids[i];
    const float s = state.scale;
    const bool open = state.findings.open == id;
    const ImFont& small = *state.fonts.small;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float left = corner.x + 30 * s;
    const auto lines = linesWithin(small, saidOf(finding), corner.x + width - 8 * s - left,
                                   open ? kLinesOpen : kLinesClosed);
    const float step = small.FontSize + 3 * s;
    const float height = 10 * s + static_cast<float>(lines.size()) * step;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    std::optional<OpenGround> ground;
    if (open) ground.emplace(list);
    ImGui::PushID(id.c_str());
    if (ImGui::Selectable("##finding", false, 0, {width, height})) {
        if (open)
            closeFinding(state);
        else
            openFinding(state, id);
    }
    place(state, fmt::format("finding:{}:{}", finding.rule,
                             finding.objects.empty() ? std::string() : finding.objects.front()));
    if (ImGui::IsItemHovered() && !open) explain(state, finding);
    const unsigned ink =
        finding.accepted ? state.tokens->soft_ink : severityInk(*state.tokens, finding.severity);
    severityShape(list, finding.severity, {corner.x + 15 * s, corner.y + 5 * s + step / 2}, 6.5F * s,
                  packed(ink), 1.8F * s);
    for (std::size_t line = 0; line < lines.size(); ++line)
        list.AddText(&small, small.FontSize, {left, corner.y + 5 * s + static_cast<float>(line) * step},
                     packed(finding.accepted ? state.tokens->soft_ink : state.tokens->ink),
                     lines[line].c_str());
    if (open && state.findings.open == id) {
        if (std::exchange(state.findings.scroll, false)) ImGui::SetScrollHereY(0.15F);
        findingDeeds(state, finding);
    }
    if (ground) ground->draw(state, width, ink);
    ImGui::PopID();
}

/// What the checks look at and what they do not, and who decides.
void foot(const State& state) {
    ImGui::Dummy({0, 6 * state.scale});
    ImGui::PushFont(state.fonts.small);
    ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->soft_ink));
    if (const auto* pack = findingPack(state)) wrapped(checks::scopeText(*pack));
    ImGui::Dummy({0, 4 * state.scale});
    wrapped(checks::cautionText());
    ImGui::PopStyleColor();
    ImGui::PopFont();
}
} // namespace

void findingRows(State& state, const std::string& room) {
    findingsOf(state);
    filters(state, room);
    const auto groups = findingGroups(state, room);
    grouping(state, room);
    wayThrough(state, groups);
    ImGui::BeginChild("findings", {0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 3 * state.scale});
    rippleRows(state);
    if (groups.empty())
        wrapped(state.findings.list.empty() ? "The checks found nothing to talk about."
                                            : "Nothing of what is shown here. The house may have more.");
    for (const auto& group : groups) {
        heading(state, group);
        if (state.findings.folded.contains(group.key)) continue;
        for (const std::size_t i : group.rows)
            if (i < state.findings.list.size()) row(state, i);
        ImGui::Dummy({0, 6 * state.scale});
    }
    foot(state);
    ImGui::PopStyleVar();
    ImGui::EndChild();
}

} // namespace gangway::app
