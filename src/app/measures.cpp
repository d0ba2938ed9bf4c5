// Live distances beside a plate: lines and numbers that can be clicked and typed, guides while it is dragged.
#include "app/panels.hpp"
#include "app/placing.hpp"
#include "edit/number_shown.hpp"
#include "edit/plate_edits.hpp"
#include "geometry/frames.hpp"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {
using edit::Along;
using From = plan::KeptDistance::From;

bool same(const plan::KeptDistance& a, const plan::KeptDistance& b) {
    return a.from == b.from && a.id == b.id && a.edge == b.edge;
}

const std::optional<plan::KeptDistance>& keptOf(const plan::Plate& plate, Along along) {
    return along == Along::U ? plate.kept_along : plate.kept_height;
}

/// A small chain link, drawn in strokes, beside a number that is kept.
void linkGlyph(ImDrawList& list, ImVec2 centre, float s, ImU32 ink) {
    for (const float side : {-1.0F, 1.0F})
        list.AddRect({centre.x + side * 3 * s - 4 * s, centre.y - 2.5F * s},
                     {centre.x + side * 3 * s + 4 * s, centre.y + 2.5F * s}, ink, 2.5F * s, 0, 1.3F * s);
}

struct Label {
    ImVec2 middle;
    std::string text;
    bool kept = false;
};

/// Where a number of this size can stand near the middle of its line without lying on another one.
ImVec2 freeMiddle(ImVec2 middle, ImVec2 half, std::vector<Rect>& taken) {
    constexpr int kTries = 5;
    const auto on = [&](ImVec2 at) { return Rect{at.x - half.x, at.y - half.y, 2 * half.x, 2 * half.y}; };
    const auto overlaps = [](const Rect& a, const Rect& b) {
        return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
    };
    ImVec2 at = middle;
    for (int step = 0; step <= 2 * kTries; ++step) {
        const float way = static_cast<float>((step + 1) / 2) * (step % 2 == 0 ? -1.0F : 1.0F);
        at = {middle.x, middle.y + way * (2 * half.y + 2)};
        if (std::ranges::none_of(taken, [&](const Rect& other) { return overlaps(on(at), other); })) break;
    }
    taken.push_back(on(at));
    return at;
}

/// A number on paper over its line; true when the pointer is on it.
bool drawLabel(State& state, Label label, const std::string& name, std::vector<Rect>& taken) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    ImGui::PushFont(state.fonts.small);
    const ImVec2 extent = ImGui::CalcTextSize(label.text.c_str());
    const float link = label.kept ? 20 * s : 0;
    label.middle = freeMiddle(label.middle, {(extent.x + link) / 2 + 5 * s, extent.y / 2 + 2 * s}, taken);
    const ImVec2 low{label.middle.x - (extent.x + link) / 2 - 5 * s, label.middle.y - extent.y / 2 - 2 * s};
    const ImVec2 high{label.middle.x + (extent.x + link) / 2 + 5 * s, label.middle.y + extent.y / 2 + 2 * s};
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const bool over = Rect{low.x, low.y, high.x - low.x, high.y - low.y}.holds(mouse.x, mouse.y);
    list.AddRectFilled(low, high, packed(over ? kLight.accent : kLight.paper, 0.94F), 4 * s);
    list.AddRect(low, high, packed(kLight.accent, 0.7F), 4 * s);
    const ImU32 ink = packed(over ? kLight.on_accent : kLight.ink);
    list.AddText({low.x + 5 * s, low.y + 2 * s}, ink, label.text.c_str());
    if (label.kept) linkGlyph(list, {high.x - 12 * s, label.middle.y}, s * 0.9F, ink);
    ImGui::PopFont();
    state.places[name] = {low.x, low.y, high.x - low.x, high.y - low.y};
    return over;
}

void measureLine(ImDrawList& list, ImVec2 a, ImVec2 b, float s) {
    const ImU32 ink = packed(kLight.accent);
    list.AddLine(a, b, packed(kLight.paper, 0.7F), 3.2F * s);
    list.AddLine(a, b, ink, 1.3F * s);
    const float length = std::max(1.0F, std::hypot(b.x - a.x, b.y - a.y));
    const ImVec2 across{-(b.y - a.y) / length * 4 * s, (b.x - a.x) / length * 4 * s};
    for (const ImVec2 end : {a, b}) // a short stroke across each end
        list.AddLine({end.x - across.x, end.y - across.y}, {end.x + across.x, end.y + across.y}, ink,
                     1.3F * s);
}

/// The middle of a line as far as it lies in the view, so that a number stays readable when an end is out of
/// sight.
std::optional<ImVec2> shownMiddle(ImVec2 a, ImVec2 b) {
    const ImVec2 low = ImGui::GetWindowDrawList()->GetClipRectMin();
    const ImVec2 high = ImGui::GetWindowDrawList()->GetClipRectMax();
    constexpr int kSteps = 24;
    ImVec2 sum{0, 0};
    int inside = 0;
    for (int i = 0; i <= kSteps; ++i) {
        const float t = static_cast<float>(i) / kSteps;
        const ImVec2 at{a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
        if (at.x < low.x + 24 || at.x > high.x - 24 || at.y < low.y + 12 || at.y > high.y - 12) continue;
        sum.x += at.x;
        sum.y += at.y;
        ++inside;
    }
    if (inside == 0) return std::nullopt;
    return ImVec2{sum.x / static_cast<float>(inside), sum.y / static_cast<float>(inside)};
}

std::string placeName(Place place, const plan::KeptDistance& from) {
    const char* view = place == Place::Stage ? "stage" : place == Place::Strip ? "strip" : "plan";
    const char* what = from.from == From::LeftCorner    ? "left"
                       : from.from == From::RightCorner ? "right"
                       : from.from == From::Floor       ? "floor"
                                                        : "other";
    return fmt::format("measure:{}:{}", view, what);
}

void guideLine(ImDrawList& list, const edit::Guide& guide, const Projector& projector, float s) {
    const auto a = projector(guide.from_mm.x, guide.from_mm.y);
    const auto b = projector(guide.to_mm.x, guide.to_mm.y);
    if (!a || !b) return;
    constexpr float kDash = 6;
    const float length = std::hypot(b->x - a->x, b->y - a->y);
    const ImU32 ink = packed(kLight.agreed);
    for (float at = 0; at < length; at += 2 * kDash * s) {
        const float t0 = at / length;
        const float t1 = std::min(1.0F, (at + kDash * s) / length);
        list.AddLine({a->x + (b->x - a->x) * t0, a->y + (b->y - a->y) * t0},
                     {a->x + (b->x - a->x) * t1, a->y + (b->y - a->y) * t1}, ink, 1.6F * s);
    }
}

/// What the plate lies on, in words beside the pointer.
void guideWords(const State& state, const std::optional<edit::Guide>& along,
                const std::optional<edit::Guide>& height) {
    std::string words;
    for (const auto* guide : {&along, &height})
        if (*guide) words += (words.empty() ? "" : "\n") + (*guide)->reason;
    if (words.empty()) return;
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    const float s = state.scale;
    ImGui::PushFont(state.fonts.small);
    const ImVec2 extent = ImGui::CalcTextSize(words.c_str());
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const ImVec2 corner{mouse.x + 18 * s, mouse.y + 18 * s};
    list.AddRectFilled(corner, {corner.x + extent.x + 12 * s, corner.y + extent.y + 8 * s},
                       packed(kLight.agreed, 0.95F), 4 * s);
    list.AddText({corner.x + 6 * s, corner.y + 4 * s}, packed(kLight.on_accent), words.c_str());
    ImGui::PopFont();
}

struct Measure {
    Along along = Along::U;
    edit::KeepChoice choice;
};

std::vector<Measure> measuresOf(const State& state, const plan::Plate& plate) {
    std::vector<Measure> measures;
    for (const Along along : {Along::U, Along::V})
        for (auto& choice : shownChoices(state, plate, along))
            measures.push_back({along, std::move(choice)});
    return measures;
}

/// Lines to one side of the plate would lie on each other: the second is drawn a little lower.
double lift(const Measure& measure, const plan::Vec2& size) {
    const bool end = measure.choice.kept.from == From::LeftCorner ||
                     measure.choice.kept.from == From::RightCorner || measure.choice.kept.from == From::Floor;
    return end ? 0 : (measure.along == Along::U ? -(size.y / 2 + 60) : size.x / 2 + 60);
}
} // namespace

std::vector<edit::KeepChoice> shownChoices(const State& state, const plan::Plate& plate, Along along) {
    std::vector<edit::KeepChoice> shown;
    const auto& kept = keptOf(plate, along);
    const edit::KeepChoice* other = nullptr;
    const auto choices = edit::keepChoices(state.plan(), plate, along);
    for (const auto& choice : choices) {
        const From from = choice.kept.from;
        if (from == From::LeftCorner || from == From::RightCorner || from == From::Floor)
            shown.push_back(choice);
        else if (kept && same(*kept, choice.kept))
            other = &choice;
        else if (other == nullptr && std::abs(choice.kept.distance_mm) > 0.05)
            other = &choice;
    }
    if (other != nullptr) shown.push_back(*other);
    return shown;
}

bool drawMeasures(State& state, const plan::Plate& plate, const Projector& projector, Place place) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    const plan::Vec2 size = plateSize(state, plate);
    const double u = plate.host.u_mm;
    const double v = plate.host.v_mm;
    bool over = false;
    std::vector<Rect> taken; // by numbers, and by the plate itself
    if (const auto middle = projector(u, v)) {
        constexpr float kPlate_px = 14;
        taken.push_back({middle->x - kPlate_px, middle->y - kPlate_px, 2 * kPlate_px, 2 * kPlate_px});
    }
    for (const Measure& measure : measuresOf(state, plate)) {
        const plan::KeptDistance& from = measure.choice.kept;
        const double aside = lift(measure, size);
        const bool across = measure.along == Along::U;
        if (place == Place::Plan && !across) continue;
        const auto a =
            across ? projector(u - from.distance_mm, v + aside) : projector(u + aside, v - from.distance_mm);
        const auto b = across ? projector(u, v + aside) : projector(u + aside, v);
        if (!a || !b) continue;
        const auto& link = keptOf(plate, measure.along);
        const bool end =
            from.from == From::LeftCorner || from.from == From::RightCorner || from.from == From::Floor;
        // Something nearer than its own number would only hide the plate; while it is dragged, and when it is
        // kept, it counts all the same.
        constexpr float kWorth_px = 40;
        if (!end && !(link && same(*link, from)) && state.drag.plate.empty() &&
            std::hypot(a->x - b->x, a->y - b->y) < kWorth_px)
            continue;
        measureLine(list, *a, *b, s);
        const auto middle = shownMiddle(*a, *b);
        if (!middle) continue;
        const auto& kept = keptOf(plate, measure.along);
        const bool is_kept = kept && same(*kept, from);
        const std::string name = placeName(place, from) + (across ? "" : ":height");
        if (drawLabel(state,
                      {*middle, edit::shownLength(std::abs(from.distance_mm), state.plan().units), is_kept},
                      name, taken)) {
            over = true;
            if (!state.typing) ImGui::SetTooltip("From %s. Click to type it.", measure.choice.name.c_str());
            if (ImGui::IsMouseClicked(ImGuiMouseButton_Left))
                state.typing = {measure.along,
                                from,
                                plate.id,
                                edit::shownLength(std::abs(from.distance_mm), state.plan().units),
                                {},
                                is_kept,
                                *middle,
                                true};
        }
    }
    if (state.drag.moving && state.drag.plate == plate.id && state.drag.place == place) {
        for (const auto* guide : {&state.drag.along, &state.drag.height})
            if (*guide) guideLine(list, **guide, projector, s);
        guideWords(state, state.drag.along, state.drag.height);
    }
    return over;
}

void drawPlacing(State& state, const Spot& spot, const Projector& projector) {
    const plan::Vec2 half = plateSize(state, state.placing->plate) * 0.5;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    std::vector<ImVec2> corners;
    for (const auto& [x, y] : {std::pair{-1, -1}, {1, -1}, {1, 1}, {-1, 1}})
        if (const auto at = projector(spot.host.u_mm + x * half.x, spot.host.v_mm + y * half.y))
            corners.push_back(*at);
    if (corners.size() == 4) {
        list.AddConvexPolyFilled(corners.data(), 4, packed(kLight.paper, 0.75F));
        list.AddPolyline(corners.data(), 4, packed(kLight.accent), ImDrawFlags_Closed, 2 * state.scale);
    }
    for (const auto* guide : {&state.placing->along, &state.placing->height})
        if (*guide) guideLine(list, **guide, projector, state.scale);
    guideWords(state, state.placing->along, state.placing->height);
}

std::string typeDistance(State& state, const std::string& plate_id, Along along,
                         const plan::KeptDistance& from, const std::string& text, bool keep) {
    const plan::Plate* plate = plan::findPlate(state.plan(), plate_id);
    if (plate == nullptr) return {};
    const auto typed = edit::parseLengthIn(text, state.plan().units);
    if (!typed) return typed.error();
    const auto edge = edit::keptEdge(state.plan(), *plate, from, along);
    if (!edge) return edge.error();
    plan::KeptDistance kept = from;
    // A distance is typed as it is shown, without a sign: it stays on the side it is on. One typed with a
    // sign goes to the other.
    kept.distance_mm = from.distance_mm < 0 ? -*typed : *typed;
    const double at = *edge + kept.distance_mm;
    const auto frame = geometry::hostFrame(state.plan(), plate->room, plate->host);
    const double most = !frame ? 0 : along == Along::U ? frame->length_mm : frame->height_mm;
    if (at < 0 || at > most)
        return fmt::format(
            "that lies past the {}; give at most {}", along == Along::U ? "wall's end" : "top",
            edit::shownLength(kept.distance_mm < 0 ? *edge : most - *edge, state.plan().units));
    if (keep) {
        const auto command = edit::keepDistance(state.plan(), plate_id, kept, along);
        if (!command) return command.error();
        state.document.run(*command);
    } else {
        const auto& now = keptOf(*plate, along);
        if (now && same(*now, from)) state.document.run(edit::cutLink(state.plan(), plate_id, along));
        plan::Host host = plate->host;
        (along == Along::U ? host.u_mm : host.v_mm) = at;
        state.document.run(edit::movePlate(state.plan(), plate_id, host.u_mm, host.v_mm));
    }
    state.document.closeStep();
    say(state, state.document.undoName());
    return {};
}

void drawTyping(State& state) {
    if (!state.typing) return;
    Typing& typing = *state.typing;
    const float s = state.scale;
    if (typing.open) ImGui::OpenPopup("type-distance");
    ImGui::SetNextWindowPos({typing.at.x, typing.at.y}, ImGuiCond_Appearing, {0.5F, 0.5F});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {12 * s, 10 * s});
    if (ImGui::BeginPopup("type-distance")) {
        if (typing.open) ImGui::SetKeyboardFocusHere();
        typing.open = false;
        ImGui::SetNextItemWidth(140 * s);
        const bool enter =
            ImGui::InputText("##typed", &typing.text,
                             ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
        place(state, "typed");
        ImGui::SameLine();
        ImGui::Checkbox("Keep", &typing.keep);
        place(state, "typed-keep");
        if (ImGui::IsItemHovered())
            ImGui::SetTooltip("When what it is measured from moves, the plate follows");
        if (!typing.problem.empty()) {
            ImGui::PushStyleColor(ImGuiCol_Text, colour(state.tokens->fault));
            ImGui::PushTextWrapPos(ImGui::GetCursorPosX() + 240 * s);
            ImGui::TextUnformatted(typing.problem.c_str());
            ImGui::PopTextWrapPos();
            ImGui::PopStyleColor();
        }
        if (enter) {
            typing.problem =
                typeDistance(state, typing.plate, typing.along, typing.from, typing.text, typing.keep);
            if (typing.problem.empty()) ImGui::CloseCurrentPopup();
        }
        ImGui::EndPopup();
    } else if (!typing.open) {
        state.typing.reset();
    }
    ImGui::PopStyleVar();
}

} // namespace gangway::app
