// The docket: what needs a decision, room by room.
#include "app/finding_parts.hpp"
#include "app/panels.hpp"

#include "review/review.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {
std::string coverWords(const geometry::Cover& first, bool past) {
    const std::string by =
        first.by == geometry::Cover::By::DoorLeaf ? "the open " + first.name : "the " + first.name;
    if (past) return "Seen past " + by;
    const int percent = static_cast<int>(first.covered_part * 100 + 0.5);
    return percent >= 95 ? "Covered by " + by : fmt::format("{} % covered by {}", percent, by);
}

/// Under a row: what stands in front of the plate, and the way to see past it. The line stays when it is seen
/// past, so that the rows below keep their places.
void coverLine(State& state, const plan::Plate& plate, const std::vector<geometry::Cover>& covers,
               float left) {
    const float s = state.scale;
    const bool past = seenPast(state, covers);
    const auto solid = solidCovers(state, plate.id);
    ImGui::PushFont(state.fonts.small);
    ImGui::SetCursorScreenPos({left, ImGui::GetCursorScreenPos().y - 2 * s});
    const float button =
        std::max(ImGui::CalcTextSize("Show it").x, ImGui::CalcTextSize("Put back").x) + 16 * s;
    ImGui::PushStyleColor(ImGuiCol_Text, colour(past ? state.tokens->soft_ink : state.tokens->query));
    ImGui::PushTextWrapPos(ImGui::GetWindowWidth() - button - 20 * s);
    ImGui::TextUnformatted(coverWords(past ? covers.front() : solid.front(), past).c_str());
    ImGui::PopTextWrapPos();
    ImGui::PopStyleColor();
    ImGui::SameLine(ImGui::GetWindowWidth() - button - 14 * s);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {8 * s, 3 * s});
    if (ImGui::Button(past ? "Put back" : "Show it", {button, 0})) {
        seePast(state, covers, !past);
        if (!past) showPlate(state, plate.id);
    }
    ImGui::PopStyleVar();
    place(state, (past ? "put-back:" : "show:") + plate.id);
    ImGui::PopFont();
    ImGui::Dummy({0, 4 * s});
}

void row(State& state, const plan::Plate& plate) {
    const auto now = stateOf(state, plate);
    const auto covers = frontCovers(state, plate.id);
    const float s = state.scale;
    const bool chosen = state.selected == plate.id;
    ImGui::PushID(plate.id.c_str());
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float left = corner.x + 34 * s;
    const ImFont& small = *state.fonts.small;
    const auto what =
        linesWithin(small, plate.purpose.empty() ? modulesSentence(state, plate) : plate.purpose,
                    corner.x + width - 4 * s - left, 2);
    const float height = 32 * s + static_cast<float>(what.size()) * (small.FontSize + 3 * s);
    if (ImGui::Selectable("##row", chosen, ImGuiSelectableFlags_AllowItemOverlap, {width, height})) {
        state.selected = plate.id;
        showPlate(state, plate.id);
    }
    place(state, "row:" + plate.id);
    if (ImGui::IsItemHovered()) state.hovered = plate.id;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    stateShape(state, list, {corner.x + 14 * s, corner.y + height / 2}, 8 * s, now);
    const std::string tag = plate.tag.empty() ? plate.id : plate.tag;
    list.PushClipRect({left, corner.y}, {corner.x + width - 4 * s, corner.y + height}, true);
    list.AddText(state.fonts.strong, state.fonts.strong->FontSize, {left, corner.y + 4 * s},
                 packed(state.tokens->ink), tag.c_str());
    const float word_x =
        left + state.fonts.strong->CalcTextSizeA(state.fonts.strong->FontSize, 1e4F, 0, tag.c_str()).x +
        8 * s;
    list.AddText(state.fonts.body, state.fonts.body->FontSize, {word_x, corner.y + 4 * s},
                 packed(stateColour(state, now)), std::string(review::word(now)).c_str());
    for (std::size_t i = 0; i < what.size(); ++i)
        list.AddText(&small, small.FontSize,
                     {left, corner.y + 27 * s + static_cast<float>(i) * (small.FontSize + 3 * s)},
                     packed(state.tokens->soft_ink), what[i].c_str());
    list.PopClipRect();
    if (!covers.empty()) coverLine(state, plate, covers, left);
    ImGui::PopID();
}

void roomRows(State& state, const plan::Room& room, bool heading) {
    bool said = !heading;
    for (const auto& plate : state.plan().plates) {
        if (plate.room != room.id) continue;
        const auto now = stateOf(state, plate);
        if (state.open_only && now == review::State::Agreed) continue;
        if (!said) {
            ImGui::Dummy({0, 4 * state.scale});
            ImGui::PushFont(state.fonts.strong);
            ImGui::TextUnformatted(room.name.c_str());
            ImGui::PopFont();
            said = true;
        }
        row(state, plate);
    }
}

/// What is composed wrongly, plate by plate; a click goes there.
void faultRow(State& state, const plan::Plate& plate, const std::string& problem, std::size_t number) {
    const float s = state.scale;
    const ImFont& small = *state.fonts.small;
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float left = corner.x + 34 * s;
    const auto lines = linesWithin(small, problem, corner.x + width - 4 * s - left, 4);
    const float line = small.FontSize + 3 * s;
    const float height = 30 * s + static_cast<float>(lines.size()) * line;
    ImGui::PushID(fmt::format("{} {}", plate.id, number).c_str());
    if (ImGui::Selectable("##fault", false, 0, {width, height})) {
        state.selected = plate.id;
        showPlate(state, plate.id);
    }
    ImGui::PopID();
    place(state, number == 0 ? "fault:" + plate.id : fmt::format("fault:{}:{}", plate.id, number + 1));
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(state.tokens->fault);
    const ImVec2 c{corner.x + 14 * s, corner.y + height / 2};
    list.AddTriangle({c.x - 8 * s, c.y + 7 * s}, {c.x + 8 * s, c.y + 7 * s}, {c.x, c.y - 8 * s}, ink, 2 * s);
    list.AddLine({c.x, c.y - 2 * s}, {c.x, c.y + 3 * s}, ink, 2 * s);
    const std::string tag = plate.tag.empty() ? plate.id : plate.tag;
    list.AddText(state.fonts.strong, state.fonts.strong->FontSize, {left, corner.y + 3 * s},
                 packed(state.tokens->ink), tag.c_str());
    for (std::size_t i = 0; i < lines.size(); ++i)
        list.AddText(&small, small.FontSize, {left, corner.y + 25 * s + static_cast<float>(i) * line}, ink,
                     lines[i].c_str());
}

/// Those of one room, or of the whole house when `room` is empty.
void toPutRight(State& state, const std::string& room) {
    bool said = false;
    for (const auto& plate : state.plan().plates) {
        if (!room.empty() && plate.room != room) continue;
        const auto composed = state.derived.plates.find(plate.id);
        if (composed == state.derived.plates.end() || composed->second.problems.empty()) continue;
        if (!said) {
            ImGui::PushFont(state.fonts.strong);
            ImGui::TextUnformatted("To put right");
            ImGui::PopFont();
            said = true;
        }
        const auto problems = composed->second.problems;
        for (std::size_t i = 0; i < problems.size(); ++i)
            faultRow(state, plate, problems[i], i);
    }
    if (said) ImGui::Dummy({0, 6 * state.scale});
}

bool tab(const State& state, const char* label, bool chosen) {
    ImGui::PushStyleColor(ImGuiCol_Text, colour(chosen ? state.tokens->accent : state.tokens->soft_ink));
    ImGui::PushStyleColor(ImGuiCol_Button, colour(state.tokens->paper, 0));
    ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {4 * state.scale, 4 * state.scale});
    const bool clicked = ImGui::Button(label);
    if (chosen) {
        const ImVec2 low = ImGui::GetItemRectMin();
        const ImVec2 high = ImGui::GetItemRectMax();
        ImGui::GetWindowDrawList()->AddLine({low.x + 4, high.y}, {high.x - 4, high.y},
                                            packed(state.tokens->accent), 2);
    }
    ImGui::PopStyleVar(2);
    ImGui::PopStyleColor(2);
    return clicked;
}
} // namespace

namespace {
/// How far the evening has come, in words and at a glance.
void agreedSoFar(const State& state) {
    const review::Count count = state.derived.count;
    const int total = count.open + count.agreed + count.queried + count.reopened;
    wrapped(fmt::format("{} of {} plates agreed, {} to talk about{}", count.agreed, total, count.queried,
                        count.reopened > 0 ? fmt::format(", {} reopened", count.reopened) : ""));
    const ImVec2 bar = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float high = 6 * state.scale;
    list.AddRectFilled(bar, {bar.x + width, bar.y + high}, packed(state.tokens->quiet), 3);
    float x = bar.x;
    for (const auto& [number, rgb] : {std::pair{count.agreed, state.tokens->agreed},
                                      {count.queried, state.tokens->query},
                                      {count.reopened, state.tokens->fault}}) {
        const float part = total == 0 ? 0 : width * static_cast<float>(number) / static_cast<float>(total);
        if (part > 0) list.AddRectFilled({x, bar.y}, {x + part, bar.y + high}, packed(rgb), 3);
        x += part;
    }
    ImGui::Dummy({0, high});
}

/// What the docket is of: the plates and their answers, what the checks found, or what is plugged in.
void contents(State& state) {
    ImGui::PushFont(state.fonts.strong);
    const auto choose = [&](const std::string& label, DocketTab which, const char* name) {
        if (tab(state, label.c_str(), state.docket == which)) state.docket = which;
        place(state, name);
    };
    choose("Plates", DocketTab::Plates, "docket-plates");
    ImGui::SameLine(0, 8 * state.scale);
    const auto counts = findingCounts(state, {});
    choose(fmt::format("Findings {}###findings", counts[0] + counts[1] + counts[2]), DocketTab::Findings,
           "docket-findings");
    ImGui::SameLine(0, 8 * state.scale);
    choose("Devices", DocketTab::Devices, "docket-devices");
    ImGui::PopFont();
}

void plateRows(State& state) {
    ImGui::BeginChild("rows", {0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * state.scale, 2 * state.scale});
    if (state.this_room_only) {
        if (const auto* room = standingRoom(state)) toPutRight(state, room->id);
        if (const auto* room = standingRoom(state)) roomRows(state, *room, false);
    } else {
        toPutRight(state, {});
        for (const auto& room : state.plan().rooms)
            roomRows(state, room, true);
    }
    ImGui::PopStyleVar();
    ImGui::EndChild();
}
} // namespace

void drawDocket(State& state) {
    state.findings.preview = {};
    contents(state);
    if (state.docket == DocketTab::Plates) agreedSoFar(state);
    if (tab(state, "This room", state.this_room_only)) state.this_room_only = true;
    place(state, "docket-room");
    ImGui::SameLine();
    if (tab(state, "Whole house", !state.this_room_only)) state.this_room_only = false;
    place(state, "docket-house");
    if (state.docket == DocketTab::Findings) {
        findingRows(state, listedRoom(state));
        return;
    }
    if (state.docket == DocketTab::Devices) {
        deviceRows(state, listedRoom(state));
        return;
    }
    ImGui::SameLine();
    if (tab(state, state.open_only ? "Undecided only" : "All answers", state.open_only))
        state.open_only = !state.open_only;
    plateRows(state);
}

} // namespace gangway::app
