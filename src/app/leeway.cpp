// Where the plate in hand may sit on its wall, while it is placed, dragged or chosen.
#include "app/overlays.hpp"

#include "app/finding_parts.hpp"
#include "app/panels.hpp"
#include "edit/number_shown.hpp"
#include "geometry/walls.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {
constexpr const Tokens& kOn = kLight; // on the strip's paper in both themes

/// The plate in hand where it is now; nullopt when there is none, or it is on no wall.
std::optional<plan::Plate> inHand(const State& state) {
    if (state.placing && state.placing->spot) {
        plan::Plate plate = state.placing->plate;
        plate.room = state.placing->spot->room;
        plate.host = state.placing->spot->host;
        if (plate.host.kind != plan::Host::Kind::Wall) return std::nullopt;
        return plate;
    }
    std::string id = state.drag.plate.empty() ? state.selected : state.drag.plate;
    if (id.empty()) id = findingPlate(state);
    const plan::Plate* plate = plan::findPlate(state.plan(), id);
    if (plate == nullptr || plate->host.kind != plan::Host::Kind::Wall) return std::nullopt;
    return *plate;
}

/// Bars of the plate's wall; they do not depend on its place along it, but on the plates beside it.
void refresh(State& state, const plan::Plate& plate, const plan::Room& room, std::size_t wall) {
    Leeway& leeway = state.leeway;
    std::string make = plate.format;
    for (const plan::Module& module : plate.modules)
        make += ',' + module.type;
    const std::string key = fmt::format("{} {} {} {} {} {} {} {}", state.document.version(), plate.id,
                                        room.id, wall, make, static_cast<int>(plate.direction),
                                        static_cast<int>(plate.use), static_cast<int>(plate.sight));
    if (leeway.key == key) {
        leeway.plate.host = plate.host;
        return;
    }
    const std::set<std::string> only = {room.id};
    const checks::Facts facts(*state.derived.house, state.catalogue, *findingPack(state),
                              state.document.file().parent_path(), &only);
    const checks::WallScene scene = checks::sceneOf(facts, room, wall);
    const checks::Point point = checks::pointOf(state.catalogue, *findingPack(state), plate);
    leeway = {key,
              plate,
              room.id,
              wall,
              point.half_mm,
              checks::wholeWall(scene, point),
              checks::barsFor(facts, scene, point)};
}

std::string closedBy(const checks::Bar* bar, const char* otherwise) {
    return bar == nullptr ? otherwise : bar->name;
}

/// A bar with stops at its ends; true when the pointer is on it.
bool stretchBar(State& state, ImVec2 from, ImVec2 to, unsigned ink) {
    const float s = state.scale;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float y = from.y;
    const float width = std::max(to.x - from.x, 2 * s);
    list.AddRectFilled({from.x - s, y - 4 * s}, {from.x + width + s, y + 4 * s}, packed(kOn.paper, 0.9F));
    list.AddRectFilled({from.x, y - 2.5F * s}, {from.x + width, y + 2.5F * s}, packed(ink));
    for (const float x : {from.x, from.x + width})
        list.AddLine({x, y - 5 * s}, {x, y + 5 * s}, packed(ink), 1.5F * s);
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    return ImGui::IsWindowHovered() && mouse.x > from.x - 4 * s && mouse.x < from.x + width + 4 * s &&
           std::abs(mouse.y - y) < 7 * s;
}

std::string said(const State& state, double mm) {
    return edit::lengthInWords(mm, state.plan().units);
}

void tell(const State& state, const checks::Stretch& stretch, bool warned) {
    ImGui::BeginTooltip();
    ImGui::TextUnformatted(fmt::format("{} {} to {} from the left corner",
                                       warned ? "With a warning:" : "Free:", said(state, stretch.u.from_mm),
                                       said(state, stretch.u.to_mm))
                               .c_str());
    ImGui::TextDisabled("%s", fmt::format("left of it: {}", closedBy(stretch.left, "the corner")).c_str());
    ImGui::TextDisabled("%s", fmt::format("right of it: {}", closedBy(stretch.right, "the corner")).c_str());
    ImGui::EndTooltip();
}

/// Words on their own ground over the wall.
void words(const State& state, ImVec2 at, const std::string& text, unsigned ink) {
    const ImFont& small = *state.fonts.small;
    const ImVec2 extent = small.CalcTextSizeA(small.FontSize, 1e4F, 0, text.c_str());
    const float s = state.scale;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({at.x - 4 * s, at.y - 2 * s}, {at.x + extent.x + 4 * s, at.y + extent.y + 2 * s},
                       packed(kOn.raised, 0.96F), 4 * s);
    list.AddRect({at.x - 4 * s, at.y - 2 * s}, {at.x + extent.x + 4 * s, at.y + extent.y + 2 * s},
                 packed(ink), 4 * s);
    list.AddText(&small, small.FontSize, at, packed(ink), text.c_str());
}

/// "may be 34 mm off, then the front door".
void margin(State& state, ImVec2 at) {
    const Leeway& leeway = state.leeway;
    const plan::Vec2 centre{leeway.plate.host.u_mm, leeway.plate.host.v_mm};
    const auto found = checks::marginOf(leeway.bars, leeway.half_mm, centre, leeway.whole);
    const std::string by = closedBy(found.bar, "the corner");
    const bool wrong = found.mm <= 0;
    words(state, at,
          wrong ? fmt::format("too near: {}", by)
                : fmt::format("may be {} off, then {}", said(state, found.mm), by),
          wrong ? kOn.fault : kOn.ink);
}

/// The height nearest to v at which something of the wall is free of faults, to a whole mm; nullopt: none is.
/// Gaps less than a step high are not looked for: nobody sets out a plate in one.
std::optional<double> nearestHeight(const Leeway& leeway, double v_mm) {
    constexpr double kStep_mm = 25;
    constexpr double kFarthest_mm = 2500;
    const auto has_place = [&](double v) {
        return v > leeway.half_mm.y &&
               !checks::freeStretches(leeway.bars, leeway.half_mm, v, leeway.whole, plan::Severity::Fault)
                    .empty();
    };
    for (double off = kStep_mm; off <= kFarthest_mm; off += kStep_mm)
        for (const double way : {1.0, -1.0}) {
            if (!has_place(v_mm + way * off)) continue;
            double least = off;
            while (least > off - kStep_mm + 1 && has_place(v_mm + way * (least - 1)))
                --least;
            return v_mm + way * least;
        }
    return std::nullopt;
}

/// The bar of at least a warning that takes a centre; nullptr: none does.
const checks::Bar* warningAt(const Leeway& leeway, double u_mm, double v_mm) {
    return checks::marginOf(leeway.bars, leeway.half_mm, {u_mm, v_mm}, leeway.whole).bar;
}

/// That there is no place at the height, and the nearest compromise: the place with a warning only, or else
/// the nearest height at which the plate may stay where it is.
std::string noPlace(const State& state, const std::vector<checks::Stretch>& with_warnings, double v_mm) {
    const Leeway& leeway = state.leeway;
    const double u_mm = leeway.plate.host.u_mm;
    if (const auto near = checks::nearestFree(with_warnings, u_mm)) {
        const auto* bar = warningAt(leeway, *near, v_mm);
        return fmt::format("No place without a warning at {}. Nearest compromise: {}{}", said(state, v_mm),
                           said(state, *near), bar == nullptr ? "" : ", against " + bar->name);
    }
    const std::string none = fmt::format("There is no place on this wall at {}.", said(state, v_mm));
    const auto height = nearestHeight(leeway, v_mm);
    return height ? fmt::format("{} Nearest height with one: {}", none, said(state, *height)) : none;
}

double highestOf(const plan::Room& room, std::size_t wall) {
    double high = 0;
    for (const plan::Vec2 corner : geometry::wallOutline(room, wall))
        high = std::max(high, corner.y);
    return high;
}
} // namespace

void drawLeeway(State& state, const plan::Room& room, std::size_t wall, const Projector& project) {
    if (state.seat != Seat::Designer || !state.derived.house || findingPack(state) == nullptr) return;
    const auto plate = inHand(state);
    if (!plate) state.leeway.key.clear();
    if (!plate || plate->room != room.id || room.walls[wall].id != plate->host.wall) return;
    refresh(state, *plate, room, wall);
    const Leeway& leeway = state.leeway;
    const double v = plate->host.v_mm;
    const auto stretches = [&](plan::Severity least) {
        return checks::freeStretches(leeway.bars, leeway.half_mm, v, leeway.whole, least);
    };
    auto free = stretches(plan::Severity::Warn);
    const bool warned = free.empty();
    if (warned) free = stretches(plan::Severity::Fault);
    const auto corner = project(0, 0);
    const auto head = project(0, highestOf(room, wall));
    if (!corner || !head) return;
    const float y = corner->y + 8 * state.scale;
    for (std::size_t i = 0; i < free.size(); ++i) {
        const auto from = project(free[i].u.from_mm, 0);
        const auto to = project(free[i].u.to_mm, 0);
        if (!from || !to) continue;
        const bool on = stretchBar(state, {from->x, y}, {to->x, y}, warned ? kOn.query : kOn.agreed);
        state.places[fmt::format("free:{}", i)] = {from->x, y, to->x - from->x, 1};
        if (on) tell(state, free[i], warned);
    }
    state.places[!warned        ? "leeway:margin"
                 : free.empty() ? "leeway:none"
                                : "leeway:warned"] = {corner->x, y, 1, 1};
    const ImVec2 beside_name{head->x + 62 * state.scale, head->y - 15 * state.scale};
    if (warned)
        words(state, beside_name, noPlace(state, free, v), free.empty() ? kOn.fault : kOn.query);
    else
        margin(state, beside_name);
}

} // namespace gangway::app
