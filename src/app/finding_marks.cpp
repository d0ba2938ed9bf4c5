// Findings over stage, strip and plan: what the open one is about, what was measured, what its remedy would
// do; and a small shape at every plate that has one.
#include "app/finding_parts.hpp"
#include "edit/finding_edits.hpp"
#include "edit/number_shown.hpp"
#include "geometry/walls.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {
using plan::Finding;
using plan::Severity;
using plan::Vec3;

// The marks lie on the picture and not on the screen's paper: both themes draw them alike.
constexpr const Tokens& kOn = kLight;

std::vector<ImVec2> hullOf(std::vector<ImVec2> points) {
    std::ranges::sort(points, [](ImVec2 a, ImVec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
    std::vector<ImVec2> hull;
    const auto turn = [](ImVec2 a, ImVec2 b, ImVec2 c) {
        return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    };
    for (const int pass : {0, 1}) {
        const std::size_t start = hull.size();
        for (const ImVec2 point : points) {
            while (hull.size() >= start + 2 && turn(hull[hull.size() - 2], hull.back(), point) <= 0)
                hull.pop_back();
            hull.push_back(point);
        }
        hull.pop_back();
        if (pass == 0) std::ranges::reverse(points);
    }
    return hull;
}

/// Where a body is seen. Of an edge that goes behind the eye the part before it counts.
std::vector<ImVec2> outlineOf(const std::vector<Vec3>& corners, const PointProjector& project) {
    std::vector<ImVec2> points;
    for (const Vec3 corner : corners) {
        if (const auto at = project(corner)) {
            points.push_back(*at);
            continue;
        }
        for (const Vec3 other : corners) {
            if (!project(other)) continue;
            Vec3 seen = other;
            Vec3 hidden = corner;
            for (int i = 0; i < 10; ++i) {
                const Vec3 middle = (seen + hidden) * 0.5;
                (project(middle) ? seen : hidden) = middle;
            }
            points.push_back(*project(seen));
        }
    }
    return points.size() < 2 ? points : hullOf(std::move(points));
}

/// A line that is seen on any ground: paper under ink.
void outline(ImDrawList& list, const std::vector<ImVec2>& points, unsigned ink, float thick) {
    if (points.size() < 2) return;
    const auto count = static_cast<int>(points.size());
    list.AddPolyline(points.data(), count, packed(kOn.paper, 0.75F), ImDrawFlags_Closed, thick + 2.6F);
    list.AddPolyline(points.data(), count, packed(ink), ImDrawFlags_Closed, thick);
}

void dashes(ImDrawList& list, ImVec2 a, ImVec2 b, unsigned ink, float s) {
    const float length = std::hypot(b.x - a.x, b.y - a.y);
    if (length < 1) return;
    list.AddLine(a, b, packed(kOn.paper, 0.6F), 4 * s);
    const float dash = 7 * s;
    for (float from = 0; from < length; from += 1.6F * dash) {
        const float to = std::min(length, from + dash);
        list.AddLine({a.x + (b.x - a.x) * from / length, a.y + (b.y - a.y) * from / length},
                     {a.x + (b.x - a.x) * to / length, a.y + (b.y - a.y) * to / length}, packed(ink), 2 * s);
    }
}

void ghost(ImDrawList& list, const std::vector<ImVec2>& points, float s) {
    if (points.size() > 2)
        list.AddConvexPolyFilled(points.data(), static_cast<int>(points.size()), packed(kOn.accent, 0.28F));
    for (std::size_t i = 0; i < points.size(); ++i)
        dashes(list, points[i], points[(i + 1) % points.size()], kOn.accent, s);
}

ImVec2 middleOf(const std::vector<ImVec2>& points) {
    ImVec2 sum{0, 0};
    for (const ImVec2 point : points) {
        sum.x += point.x / static_cast<float>(points.size());
        sum.y += point.y / static_cast<float>(points.size());
    }
    return sum;
}

Rect around(const std::vector<ImVec2>& points) {
    Rect rect{1e6F, 1e6F, 0, 0};
    ImVec2 high{-1e6F, -1e6F};
    for (const ImVec2 point : points) {
        rect.x = std::min(rect.x, point.x);
        rect.y = std::min(rect.y, point.y);
        high = {std::max(high.x, point.x), std::max(high.y, point.y)};
    }
    rect.width = std::max(0.0F, high.x - rect.x);
    rect.height = std::max(0.0F, high.y - rect.y);
    return rect;
}

bool overlap(const Rect& a, const Rect& b) {
    return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/// The number beside its line: clear of the plate, whole within the view.
void label(State& state, const std::string& text, ImVec2 at, const Rect& clear_of, unsigned ink,
           const char* name) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    const ImFont& strong = *state.fonts.strong;
    const ImVec2 extent = strong.CalcTextSizeA(strong.FontSize, 1e4F, 0, text.c_str());
    const ImVec2 size{extent.x + 16 * s, extent.y + 8 * s};
    const float gap = 14 * s;
    const ImVec2 low = list.GetClipRectMin();
    const ImVec2 high = list.GetClipRectMax();
    Rect best{at.x + gap, at.y - size.y / 2, size.x, size.y};
    // Below first: above a plate stand its state and its tag.
    for (const ImVec2 corner :
         {ImVec2{at.x - size.x / 2, at.y + gap}, ImVec2{at.x - size.x / 2, at.y - gap - size.y},
          ImVec2{at.x + gap, at.y - size.y / 2}, ImVec2{at.x - gap - size.x, at.y - size.y / 2},
          ImVec2{clear_of.x, clear_of.y + clear_of.height + gap},
          ImVec2{clear_of.x, clear_of.y - gap - size.y}}) {
        const Rect rect{corner.x, corner.y, size.x, size.y};
        const bool inside = rect.x > low.x + 4 && rect.y > low.y + 4 && rect.x + size.x < high.x - 4 &&
                            rect.y + size.y < high.y - 4;
        if (!inside || overlap(rect, clear_of)) continue;
        best = rect;
        break;
    }
    best.x = std::clamp(best.x, low.x + 6, std::max(low.x + 6, high.x - 6 - size.x));
    best.y = std::clamp(best.y, low.y + 6, std::max(low.y + 6, high.y - 6 - size.y));
    const ImVec2 end{best.x + size.x, best.y + size.y};
    list.AddRectFilled({best.x, best.y}, end, packed(kOn.raised, 0.96F), 6 * s);
    list.AddRect({best.x, best.y}, end, packed(ink), 6 * s, 0, 1.4F * s);
    list.AddText(&strong, strong.FontSize, {best.x + 8 * s, best.y + 4 * s}, packed(kOn.ink), text.c_str());
    state.places[name] = best;
}

/// A line with a stroke across each end; a short one gets its strokes from outside, so that it can be seen.
void dimension(ImDrawList& list, ImVec2 a, ImVec2 b, unsigned ink, float s) {
    const float length = std::max(0.01F, std::hypot(b.x - a.x, b.y - a.y));
    const ImVec2 along = length < 0.5F ? ImVec2{1, 0} : ImVec2{(b.x - a.x) / length, (b.y - a.y) / length};
    const ImVec2 across{-along.y * 9 * s, along.x * 9 * s};
    const float reach = length < 24 * s ? 16 * s : 0;
    const ImVec2 from{a.x - along.x * reach, a.y - along.y * reach};
    const ImVec2 to{b.x + along.x * reach, b.y + along.y * reach};
    for (const auto& [rgb, alpha, wide] :
         {std::tuple{kOn.paper, 0.85F, 5.0F * s}, std::tuple{ink, 1.0F, 2.2F * s}}) {
        list.AddLine(from, to, packed(rgb, alpha), wide);
        for (const ImVec2 end : {a, b})
            list.AddLine({end.x - across.x, end.y - across.y}, {end.x + across.x, end.y + across.y},
                         packed(rgb, alpha), wide);
    }
}

void drawPreview(State& state, const PointProjector& project) {
    const RemedyPreview& preview = state.findings.preview;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    const auto outlineAt = [&](const std::vector<Vec3>& corners) { return outlineOf(corners, project); };
    if (preview.move && state.derived.house) {
        const auto there = outlineAt(movedCorners(state, *preview.move));
        const auto* plate = plan::findPlate(state.plan(), preview.move->plate);
        if (there.empty() || plate == nullptr) return;
        ghost(list, there, s);
        const auto here = outlineAt(plateCorners(*state.derived.house, state.catalogue, *plate));
        if (!here.empty()) dashes(list, middleOf(here), middleOf(there), kOn.accent, s);
        state.places["finding-ghost"] = around(there);
    } else if (preview.plug && state.derived.house) {
        const auto* plate = plan::findPlate(state.plan(), preview.plug->plate);
        const auto device = std::ranges::find(state.plan().devices, preview.plug->device, &plan::Device::id);
        if (plate == nullptr || device == state.plan().devices.end()) return;
        const auto there = outlineAt(plateCorners(*state.derived.house, state.catalogue, *plate));
        const auto lead = project(device->lead_exit_mm);
        ghost(list, there, s);
        if (lead && !there.empty()) dashes(list, *lead, middleOf(there), kOn.accent, s);
    } else if (!preview.rehang.empty()) {
        plan::Plan hung = state.plan();
        const auto swap = edit::rehangDoor(hung, preview.rehang);
        if (!swap) return;
        edit::Delta delta;
        edit::Draft draft(hung, delta);
        swap->apply(draft);
        for (const auto& opening : hung.openings)
            if (opening.id == preview.rehang)
                for (const auto& leaf : geometry::doorLeaves(hung, opening)) {
                    std::vector<Vec3> corners;
                    for (const plan::Vec2 at : leaf.standing_mm)
                        corners.insert(corners.end(),
                                       {Vec3{at.x, at.y, leaf.bottom_mm}, Vec3{at.x, at.y, leaf.top_mm}});
                    ghost(list, outlineAt(corners), s);
                }
    }
}

unsigned markInk(const Finding& finding) {
    return finding.severity == Severity::Hint ? kOn.ink : severityInk(kOn, finding.severity);
}

void drawMeasured(State& state, const Finding& finding, const FindingPlace& place,
                  const PointProjector& project, const Rect& plate, bool words) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::string text = measureWords(state, finding);
    const unsigned ink = markInk(finding);
    if (place.gap) {
        const auto from = project(place.gap->from_mm);
        const auto to = project(place.gap->to_mm);
        if (!from || !to) return;
        dimension(list, *from, *to, ink, state.scale);
        if (words && !text.empty())
            label(state, text, {(from->x + to->x) / 2, (from->y + to->y) / 2}, plate, ink, "finding-measure");
        return;
    }
    const auto at = place.at_mm ? project(*place.at_mm) : std::nullopt;
    if (!at) return;
    if (plate.width <= 0) {
        list.AddCircleFilled(*at, 11 * state.scale, packed(kOn.paper, 0.85F), 24);
        severityShape(list, finding.severity, *at, 7 * state.scale, packed(ink), 2 * state.scale);
    }
    if (words && !text.empty()) label(state, text, *at, plate, ink, "finding-measure");
}
} // namespace

const char* severityWord(Severity severity) {
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

unsigned severityInk(const Tokens& tokens, Severity severity) {
    switch (severity) {
    case Severity::Fault:
        return tokens.fault;
    case Severity::Warn:
        return tokens.query;
    case Severity::Hint:
        break;
    }
    return tokens.soft_ink;
}

void severityShape(ImDrawList& list, Severity severity, ImVec2 c, float r, ImU32 ink, float thick) {
    if (severity == Severity::Fault)
        list.AddTriangle({c.x - r, c.y + r * 0.85F}, {c.x + r, c.y + r * 0.85F}, {c.x, c.y - r}, ink, thick);
    else if (severity == Severity::Warn)
        list.AddQuad({c.x, c.y - r}, {c.x + r, c.y}, {c.x, c.y + r}, {c.x - r, c.y}, ink, thick);
    else
        list.AddCircle(c, r * 0.8F, ink, 20, thick);
}

std::string measureWords(const State& state, const Finding& finding) {
    if (!finding.value_mm) return {};
    const auto words = [&](double length_mm) { return edit::lengthInWords(length_mm, state.plan().units); };
    if (finding.limit_mm.value_or(0) == 0 || *finding.limit_mm == *finding.value_mm)
        return words(*finding.value_mm);
    // A finding says on which side of its limit the measure lies: it is on the wrong one.
    return fmt::format("{}, at {} {}", words(*finding.value_mm),
                       *finding.value_mm < *finding.limit_mm ? "least" : "most", words(*finding.limit_mm));
}

void drawFindingMarks(State& state, const PointProjector& project, Place view) {
    const Finding* finding = openOne(state);
    if (finding == nullptr) return;
    const FindingPlace place = placeOfFinding(state, *finding);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    Rect plate;
    // The first body last, so that its outline is on top.
    for (std::size_t i = place.bodies.size(); i-- > 0;) {
        const FindingBody& body = place.bodies[i];
        const auto points = outlineOf(body.corners_mm, project);
        if (points.empty()) continue;
        const bool first = i == 0;
        outline(list, points, first ? markInk(*finding) : kOn.ink, (first ? 2.6F : 1.6F) * s);
        if (first && body.kind != FindingBody::Kind::Furniture) plate = around(points);
        if (view == Place::Stage) state.places["finding-body:" + body.id] = around(points);
    }
    drawMeasured(state, *finding, place, project, plate, view != Place::Strip);
    drawPreview(state, project);
}

void drawFindingOnStage(State& state, const render::View& view) {
    const Finding* finding = openOne(state);
    const auto at = findingAt(state, state.findings.open);
    const auto* room = at ? plan::findRoom(state.plan(), state.findings.rooms[*at]) : nullptr;
    if (finding == nullptr || room == nullptr || room->storey != state.storey) return;
    // From another room it would shine through the wall.
    if (state.stance == Stance::Walk && room->id != state.room) return;
    const double elevation_mm = elevationOf(state, room->storey);
    drawFindingMarks(
        state,
        [&](Vec3 point) -> std::optional<ImVec2> {
            const auto pixel = render::project(view, scene::toScene(point, elevation_mm));
            if (!pixel) return std::nullopt;
            return ImVec2{state.stage.x + pixel->x, state.stage.y + pixel->y};
        },
        Place::Stage);
}

bool findingBadge(State& state, const std::string& plate_id, ImVec2 at, bool over, const char* view) {
    const auto found = state.findings.plates.find(plate_id);
    if (state.seat != Seat::Designer || found == state.findings.plates.end()) return false;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    const float r = 4.5F * s;
    const std::size_t worst = found->second.front(); // the list is sorted, faults first
    const Finding& finding = state.findings.list[worst];
    list.AddCircleFilled(at, r + 2.5F * s, packed(kOn.paper, 0.92F), 20);
    severityShape(list, finding.severity, {at.x, at.y - (finding.severity == Severity::Fault ? 0.5F * s : 0)},
                  r, packed(severityInk(kOn, finding.severity)), 1.8F * s);
    state.places[fmt::format("badge:{}:{}", view, plate_id)] = {at.x, at.y, 0, 0};
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    if (!over || std::hypot(mouse.x - at.x, mouse.y - at.y) > r + 4 * s) return false;
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(340 * s);
    for (const std::size_t i : found->second)
        ImGui::TextUnformatted(fmt::format("{}: {}", severityWord(state.findings.list[i].severity),
                                           state.findings.list[i].message)
                                   .c_str());
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
    const ImVec2 dragged = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0);
    if (ImGui::IsMouseReleased(ImGuiMouseButton_Left) && std::hypot(dragged.x, dragged.y) < 5)
        openFinding(state, std::string(state.findings.ids[worst]));
    return true;
}

bool findingsOnPlan(State& state, const std::function<ImVec2(plan::Vec2)>& to_screen, bool over) {
    bool on_badge = false;
    std::set<std::string> marked; // a plate's tag is a hit of its own
    for (const auto& hit : state.plan_picture.symbols.hits) {
        if (hit.kind != sheets::PlanThing::Plate || !marked.insert(hit.id).second) continue;
        ImVec2 corner{-1e6F, 1e6F};
        for (const plan::Vec2 point : hit.outline_mm) {
            const ImVec2 at = to_screen(point);
            corner = {std::max(corner.x, at.x), std::min(corner.y, at.y)};
        }
        on_badge = findingBadge(state, hit.id, corner, over, "plan") || on_badge;
    }
    const auto at = findingAt(state, state.findings.open);
    const auto* room = at ? plan::findRoom(state.plan(), state.findings.rooms[*at]) : nullptr;
    if (room == nullptr || room->storey == state.storey)
        drawFindingMarks(
            state, [&](Vec3 point) { return std::optional(to_screen({point.x, point.y})); }, Place::Plan);
    return on_badge;
}

} // namespace gangway::app
