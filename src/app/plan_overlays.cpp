// What is laid over the drawn plan: zones of baths and showers, and ways at night with their dark stretches.
#include "app/finding_parts.hpp"
#include "app/overlay_parts.hpp"
#include "edit/number_shown.hpp"
#include "geometry/frames.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {
// On the picture's paper in both themes.
constexpr unsigned kNight = 0x4B4F8C;

/// Made again when the plan or the pack changed and nothing is being dragged: ways cost what the house costs.
void refresh(State& state) {
    Overlays& overlays = state.overlays;
    const auto* pack = findingPack(state);
    const auto version = state.document.version();
    const bool dragging = !state.drag.plate.empty() || state.furnish.drag.has_value();
    if (pack == nullptr || !state.derived.house || state.derived.version != version || dragging) return;
    if (overlays.plan_version == version && overlays.plan_pack == pack->id) return;
    overlays.plan_version = version;
    overlays.plan_pack = pack->id;
    overlays.zones = wetVolumesOf(state);
    overlays.walks = checks::nightWalks(*state.derived.house, state.catalogue, *pack);
}

bool onThisStorey(const State& state, const std::string& room_id) {
    const auto* room = plan::findRoom(state.plan(), room_id);
    return room != nullptr && room->storey == state.storey;
}

using ToScreen = std::function<ImVec2(plan::Vec2)>;

/// A zone, or two of nearly one outline, as the inside of a tray and what is over it are.
struct ZoneOnScreen {
    const plan::Furniture* piece = nullptr;
    std::vector<plan::Vec2> outline_px;
    ImVec2 low, high;
    std::string numbers; ///< "2", "0, 1"
};

bool sameOutline(const ZoneOnScreen& a, const ZoneOnScreen& b, float slack_px) {
    const auto near = [slack_px](ImVec2 p, ImVec2 q) {
        return std::abs(p.x - q.x) < slack_px && std::abs(p.y - q.y) < slack_px;
    };
    return a.piece == b.piece && near(a.low, b.low) && near(a.high, b.high);
}

/// Of the storey, the outer ones before those that they hold.
std::vector<ZoneOnScreen> zonesOnScreen(const State& state, const ToScreen& to_screen) {
    std::vector<ZoneOnScreen> seen;
    const auto& zones = state.overlays.zones;
    for (auto zone = zones.rbegin(); zone != zones.rend(); ++zone) {
        if (zone->piece == nullptr || zone->outline_mm.empty() || !onThisStorey(state, zone->piece->room))
            continue;
        ZoneOnScreen one{
            zone->piece, {}, to_screen(zone->outline_mm.front()), {}, fmt::to_string(zone->number)};
        one.high = one.low;
        for (const plan::Vec2 corner : zone->outline_mm) {
            const ImVec2 at = to_screen(corner);
            one.outline_px.push_back({at.x, at.y});
            one.low = {std::min(one.low.x, at.x), std::min(one.low.y, at.y)};
            one.high = {std::max(one.high.x, at.x), std::max(one.high.y, at.y)};
        }
        if (!seen.empty() && sameOutline(seen.back(), one, 12 * state.scale))
            seen.back().numbers = one.numbers + ", " + seen.back().numbers;
        else
            seen.push_back(std::move(one));
    }
    return seen;
}

/// Whether words have room at a place: within their zone and on none that lies in it.
bool hasRoom(const std::vector<ZoneOnScreen>& zones, std::size_t zone, ImVec2 low, ImVec2 extent) {
    for (const float x : {0.0F, 0.5F, 1.0F})
        for (const float y : {0.0F, 1.0F}) {
            const plan::Vec2 at{low.x + x * extent.x, low.y + y * extent.y};
            if (!geometry::insidePolygon(zones[zone].outline_px, at)) return false;
            for (std::size_t inner = zone + 1; inner < zones.size(); ++inner)
                if (zones[inner].piece == zones[zone].piece &&
                    geometry::insidePolygon(zones[inner].outline_px, at))
                    return false;
        }
    return true;
}

/// In a corner of the zone that has room for it: "zone 2", or else its number alone.
void nameZone(const State& state, const std::vector<ZoneOnScreen>& zones, std::size_t index) {
    const ZoneOnScreen& zone = zones[index];
    const ImFont& small = *state.fonts.small;
    const float s = state.scale;
    const char* kind = zone.numbers.size() > 1 ? "zones " : "zone ";
    for (const std::string& words : {kind + zone.numbers, zone.numbers}) {
        const ImVec2 extent = small.CalcTextSizeA(small.FontSize, 1e4F, 0, words.c_str());
        const float left = zone.low.x + 5 * s;
        const float right = zone.high.x - 5 * s - extent.x;
        const float upper = zone.low.y + 4 * s;
        const float lower = zone.high.y - 4 * s - extent.y;
        const float middle = (zone.low.y + zone.high.y - extent.y) / 2;
        for (const ImVec2 at : {ImVec2{left, upper}, ImVec2{right, upper}, ImVec2{left, lower},
                                ImVec2{right, lower}, ImVec2{right, middle}, ImVec2{left, middle}}) {
            if (!hasRoom(zones, index, at, extent)) continue;
            ImDrawList& list = *ImGui::GetWindowDrawList();
            list.AddRectFilled({at.x - 3 * s, at.y - s}, {at.x + extent.x + 3 * s, at.y + extent.y + s},
                               packed(kLight.paper, 0.88F), 3 * s);
            list.AddText(&small, small.FontSize, at, packed(kWater), words.c_str());
            return;
        }
    }
}

void zones(State& state, const ToScreen& to_screen) {
    const auto project = [&to_screen](double x, double y) { return std::optional(to_screen({x, y})); };
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const HardEdges hard(list);
    for (const checks::WetVolume& zone : state.overlays.zones) {
        if (zone.piece == nullptr || !onThisStorey(state, zone.piece->room)) continue;
        hatched(list, zone.outline_mm, project, kWater, false, state.scale);
        state.places[fmt::format("plan:zone:{}:{}", zone.piece->id, zone.number)] = {state.stage.x,
                                                                                     state.stage.y, 1, 1};
    }
    const auto seen = zonesOnScreen(state, to_screen);
    for (std::size_t i = 0; i < seen.size(); ++i)
        nameZone(state, seen, i);
}

/// The points of a way from one of its places to another.
std::vector<plan::Vec2> partOf(const std::vector<plan::Vec2>& way, plan::Vec2 from, plan::Vec2 to) {
    const auto alongOf = [&way](plan::Vec2 at) {
        double nearest = 1e300;
        double along = 0;
        double walked = 0;
        for (std::size_t i = 0; i + 1 < way.size(); ++i) {
            const plan::Vec2 step = way[i + 1] - way[i];
            const double length_mm = plan::length(step);
            const double part =
                length_mm > 0 ? std::clamp(plan::dot(at - way[i], step) / (length_mm * length_mm), 0.0, 1.0)
                              : 0;
            const double off = plan::length(at - (way[i] + step * part));
            if (off < nearest) {
                nearest = off;
                along = walked + part * length_mm;
            }
            walked += length_mm;
        }
        return along;
    };
    const double begin = alongOf(from);
    const double end = alongOf(to);
    std::vector<plan::Vec2> part = {from};
    double walked = 0;
    for (std::size_t i = 0; i < way.size(); ++i) {
        if (i > 0) walked += plan::length(way[i] - way[i - 1]);
        if (walked > begin && walked < end) part.push_back(way[i]);
    }
    part.push_back(to);
    return part;
}

void line(ImDrawList& list, const std::vector<plan::Vec2>& way, const ToScreen& to_screen, ImU32 ink,
          float thick) {
    std::vector<ImVec2> points;
    for (const plan::Vec2 at : way)
        points.push_back(to_screen(at));
    list.AddPolyline(points.data(), static_cast<int>(points.size()), ink, ImDrawFlags_None, thick);
}

/// Words on their own ground in the middle of the dark stretch.
void darkWords(const State& state, const checks::Walk& walk, const ToScreen& to_screen, unsigned ink) {
    const ImFont& small = *state.fonts.small;
    const std::string words = edit::lengthInWords(walk.dark_mm, state.plan().units) + " dark";
    const ImVec2 at = to_screen((walk.dark_from_mm + walk.dark_to_mm) * 0.5);
    const ImVec2 extent = small.CalcTextSizeA(small.FontSize, 1e4F, 0, words.c_str());
    const float s = state.scale;
    const ImVec2 low{at.x - extent.x / 2, at.y - extent.y - 7 * s};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled({low.x - 4 * s, low.y - 2 * s}, {low.x + extent.x + 4 * s, low.y + extent.y + 2 * s},
                       packed(kLight.raised, 0.95F), 4 * s);
    list.AddText(&small, small.FontSize, low, packed(ink), words.c_str());
}

/// All ways thin; what is dark of them thick, and as a fault where it is longer than the pack lets it be.
void nights(State& state, const ToScreen& to_screen) {
    constexpr double kWorthShowing_mm = 300; // shorter ones are the step to the switch
    const double most_mm = findingPack(state)->limit("darkStretch").value;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float s = state.scale;
    for (const checks::Walk& walk : state.overlays.walks)
        if (onThisStorey(state, walk.from.room))
            line(list, walk.points_mm, to_screen, packed(kNight, 0.45F), 1.6F * s);
    const checks::Walk* longest = nullptr;
    for (const checks::Walk& walk : state.overlays.walks) {
        if (!onThisStorey(state, walk.from.room) || walk.dark_mm < kWorthShowing_mm) continue;
        const bool wrong = walk.dark_mm > most_mm;
        line(list, partOf(walk.points_mm, walk.dark_from_mm, walk.dark_to_mm), to_screen,
             packed(wrong ? kLight.fault : kNight, 0.85F), (wrong ? 5 : 3.5F) * s);
        if (longest == nullptr || walk.dark_mm > longest->dark_mm) longest = &walk;
        state.places[fmt::format("plan:dark:{}:{}", walk.from.id, walk.to.id)] = {
            to_screen(walk.dark_from_mm).x, to_screen(walk.dark_from_mm).y, 1, 1};
    }
    if (longest != nullptr)
        darkWords(state, *longest, to_screen, longest->dark_mm > most_mm ? kLight.fault : kNight);
}
} // namespace

void drawPlanOverlays(State& state, const std::function<ImVec2(plan::Vec2)>& to_screen) {
    const Overlays& overlays = state.overlays;
    if (state.seat != Seat::Designer || findingPack(state) == nullptr || (!overlays.wet && !overlays.night))
        return;
    refresh(state);
    if (overlays.wet) zones(state, to_screen);
    if (overlays.night) nights(state, to_screen);
}

} // namespace gangway::app
