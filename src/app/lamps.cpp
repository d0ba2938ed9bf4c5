#include "app/lamps.hpp"

#include "app/panels.hpp"
#include "app/state.hpp"
#include "app/tying.hpp"
#include "scene/leg_route.hpp"
#include "scene/rocker_at.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gangway::app {

namespace {
using switching::Net;
using switching::Way;

constexpr float kPercentPerPixel = 0.5F;
constexpr float kKnobSlack_px = 4;

/// What is met for the first time is on, so that a new leg does not leave its lamps dark.
void turnOnNew(Lamps& lamps) {
    const Net& net = *lamps.net;
    for (const plan::SwitchLeg& leg : net.plan().legs)
        if (lamps.known.insert("leg " + leg.id).second) lamps.lights.set(net, leg.id, 100);
    for (const plan::Luminaire& lamp : net.plan().luminaires)
        if (switching::hasOwnSwitch(lamp) && lamps.known.insert("lamp " + lamp.id).second)
            lamps.lights.flipOwn(lamp.id);
}

/// The way under the pointer's hit.
const Way* wayUnder(State& state, const render::Pick& hit) {
    if (hit.kind != scene::PartKind::Plate || !state.derived.house) return nullptr;
    const plan::Plate* plate = plan::findPlate(state.plan(), hit.object);
    if (plate == nullptr) return nullptr;
    const auto ref = scene::rockerAt(*state.derived.house, state.catalogue, *plate, hit.point);
    return ref ? netOf(state).way(*ref) : nullptr;
}

bool lightsSomething(const Way& way) {
    using catalogue::WayAction;
    return way.action != WayAction::Motor && way.action != WayAction::Heating;
}

std::string levelWords(const Lamps& lamps, const std::string& leg_id) {
    const double percent = lamps.lights.percent(leg_id);
    if (percent <= 0) return "off";
    return percent >= 99.5 ? "on" : fmt::format("on at {:.0f} %", percent);
}

std::string wayWords(State& state, const Way& way) {
    const Net& net = netOf(state);
    std::string words = switching::wayName(net, way.ref);
    if (way.legs.empty()) return words + ": works nothing yet";
    for (const plan::SwitchLeg* leg : way.legs)
        words += fmt::format("\n{}: {}", switching::legName(*leg), levelWords(state.lamps, leg->id));
    return words;
}

std::vector<const plan::SwitchLeg*> hoveredLegs(State& state) {
    const Net& net = netOf(state);
    if (state.lamps.hovered_way) {
        const Way* way = net.way(*state.lamps.hovered_way);
        return way == nullptr ? std::vector<const plan::SwitchLeg*>{} : way->legs;
    }
    const auto legs = net.legsOfLuminaire(state.lamps.hovered_lamp);
    return {legs.begin(), legs.end()};
}

void routeOfHovered(State& state) {
    state.lamps.route.clear();
    if (!state.derived.house) return;
    for (const plan::SwitchLeg* leg : hoveredLegs(state))
        for (const scene::Route& route : scene::legRoute(*state.derived.house, *leg)) {
            render::Line line = render::routeLine();
            for (const plan::Vec3 point : route)
                line.points_m.push_back(scene::toScene(point));
            state.lamps.route.push_back(std::move(line));
        }
}

void work(State& state, const Way& way) {
    const plan::WayRef ref = way.ref;
    state.lamps.lights.flip(netOf(state), ref);
    state.lamps.scene.clear();
    if (const Way* worked = netOf(state).way(ref)) {
        std::string words = wayWords(state, *worked);
        std::ranges::replace(words, '\n', ' ');
        say(state, words);
    }
}
} // namespace

const Net& netOf(State& state) {
    Lamps& lamps = state.lamps;
    if (!lamps.net || lamps.net_version != state.document.version()) {
        lamps.net.emplace(state.plan(), state.catalogue);
        lamps.net_version = state.document.version();
        turnOnNew(lamps);
        lamps.levels_version = lamps.lights.version() + 1; // levels are due even when nothing was worked
    }
    return *lamps.net;
}

void deriveLamps(State& state) {
    Lamps& lamps = state.lamps;
    const Net& net = netOf(state);
    if (lamps.levels_version == lamps.lights.version()) return;
    lamps.levels = lamps.lights.luminaires(net);
    // What nothing works yet stays lit, so that a plan without legs is not dark.
    std::erase_if(lamps.levels, [&](const auto& entry) {
        const plan::Luminaire* lamp = net.luminaire(entry.first);
        return lamp != nullptr && net.legsOfLuminaire(entry.first).empty() && !switching::hasOwnSwitch(*lamp);
    });
    lamps.levels_version = lamps.lights.version();
}

void lightView(const State& state, render::View& view) {
    view.light_levels = state.lamps.levels;
    view.lines = state.lamps.route;
    if (state.lamps.evening) render::setEvening(view);
}

std::string lightKey(const State& state) {
    const Lamps& lamps = state.lamps;
    std::string key = fmt::format(" {} {} {}", lamps.lights.version(), lamps.evening, lamps.hovered_lamp);
    if (lamps.hovered_way)
        key += fmt::format(" {} {} {}", lamps.hovered_way->plate, lamps.hovered_way->module,
                           lamps.hovered_way->way);
    return key;
}

bool clickLights(State& state, const render::Pick& hit) {
    if (const Way* way = wayUnder(state, hit)) {
        if (state.panel == Panel::Switching && state.seat == Seat::Designer) {
            pickWay(state, plan::WayRef(way->ref));
            return true;
        }
        // A dimmer is worked by its drag, which also knows a knob that was only tapped.
        if (!lightsSomething(*way) || way->dimmer) return false;
        work(state, *way);
        return true;
    }
    const plan::Luminaire* lamp = plan::findLuminaire(state.plan(), hit.object);
    if (lamp == nullptr || !switching::hasOwnSwitch(*lamp) || !netOf(state).legsOfLuminaire(lamp->id).empty())
        return false;
    state.lamps.lights.flipOwn(lamp->id);
    return true;
}

bool pressKnob(State& state, const render::Pick& hit) {
    const Way* way = wayUnder(state, hit);
    if (way == nullptr || !way->dimmer || (state.panel == Panel::Switching && state.seat == Seat::Designer))
        return false;
    const double percent = way->legs.empty() ? 0 : state.lamps.lights.percent(way->legs.front()->id);
    state.lamps.knob = KnobDrag{way->ref, percent, ImGui::GetIO().MousePos.y, false};
    return true;
}

bool dragKnob(State& state) {
    if (!state.lamps.knob) return false;
    KnobDrag& knob = *state.lamps.knob;
    const ImGuiIO& io = ImGui::GetIO();
    const float up = knob.start_y - io.MousePos.y;
    knob.moved = knob.moved || std::abs(up) > kKnobSlack_px;
    if (knob.moved) {
        const double wanted = knob.start_percent + static_cast<double>(up * kPercentPerPixel);
        state.lamps.lights.dim(netOf(state), knob.way, std::clamp(std::round(wanted), 1.0, 100.0));
        state.lamps.scene.clear();
    }
    if (ImGui::IsMouseDown(ImGuiMouseButton_Left)) return true;
    const KnobDrag done = knob;
    state.lamps.knob.reset();
    if (!done.moved) {
        choosePlate(state, done.way.plate, false);
        if (const Way* way = netOf(state).way(done.way)) work(state, *way);
    }
    return true;
}

void hoverLights(State& state, const render::Pick& hit) {
    Lamps& lamps = state.lamps;
    const Way* way = wayUnder(state, hit);
    std::optional<plan::WayRef> hovered;
    if (way != nullptr) hovered = way->ref;
    const plan::Luminaire* lamp = plan::findLuminaire(state.plan(), hit.object);
    const std::string hovered_lamp = lamp == nullptr ? std::string() : lamp->id;
    if (hovered == lamps.hovered_way && hovered_lamp == lamps.hovered_lamp) return;
    lamps.hovered_way = hovered;
    lamps.hovered_lamp = hovered_lamp;
    routeOfHovered(state);
}

void noHover(State& state) {
    state.lamps.hovered_way.reset();
    state.lamps.hovered_lamp.clear();
    state.lamps.route.clear();
}

void drawLightWords(State& state) {
    const Lamps& lamps = state.lamps;
    std::string words;
    if (lamps.knob && lamps.knob->moved) {
        words = fmt::format("{:.0f} %", lamps.lights.dimmedTo(netOf(state), lamps.knob->way));
    } else if (lamps.hovered_way) {
        if (const Way* way = netOf(state).way(*lamps.hovered_way)) words = wayWords(state, *way);
    } else if (const auto* lamp = plan::findLuminaire(state.plan(), lamps.hovered_lamp)) {
        words = fmt::format("{}\n{}",
                            lamp->tag.empty() ? lamp->name : fmt::format("{}  {}", lamp->tag, lamp->name),
                            workedInWords(state, *lamp));
    }
    if (words.empty()) return;
    // The stage's own window has no padding, and what lies behind the words is a picture.
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {12 * state.scale, 8 * state.scale});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 8 * state.scale);
    ImGui::SetNextWindowBgAlpha(1);
    ImGui::BeginTooltip();
    ImGui::TextUnformatted(words.c_str());
    if (!lamps.route.empty())
        ImGui::TextColored(colour(state.tokens->soft_ink), "The line shows control, not cable route.");
    ImGui::EndTooltip();
    ImGui::PopStyleVar(2);
}

void placeRockers(State& state, const render::Renderer& renderer, const render::View& view) {
    if (state.options.report.empty() || !state.derived.house) return;
    constexpr float kHalf_px = 2;
    for (const plan::Plate& plate : state.plan().plates) {
        if (plate.room != state.room || netOf(state).waysOf(plate.id).empty()) continue;
        int number = 0;
        for (const scene::Rocker& rocker : scene::rockersOf(state.catalogue, plate)) {
            ++number;
            const auto at_m = scene::onPlate(*state.derived.house, plate, rocker.centre_mm);
            const auto pixel = at_m ? render::project(view, *at_m) : std::nullopt;
            if (!pixel || !state.stage.holds(state.stage.x + pixel->x, state.stage.y + pixel->y)) continue;
            const auto hit = renderer.pick(view, static_cast<int>(pixel->x), static_cast<int>(pixel->y));
            if (hit.object != plate.id) continue;
            state.places[fmt::format("rocker {}/{}", plate.tag.empty() ? plate.id : plate.tag, number)] = {
                state.stage.x + pixel->x - kHalf_px, state.stage.y + pixel->y - kHalf_px, 2 * kHalf_px,
                2 * kHalf_px};
        }
    }
}

void setAllLights(State& state, bool on) {
    state.lamps.lights.setAll(netOf(state), on);
    state.lamps.scene.clear();
    say(state, on ? "All lamps on" : "All lamps off");
}

void nextScene(State& state) {
    const auto& scenes = state.plan().scenes;
    if (scenes.empty()) {
        say(state, "No scene is kept yet");
        return;
    }
    const auto shown = std::ranges::find(scenes, state.lamps.scene, &plan::LightScene::id);
    const std::size_t next =
        shown == scenes.end() ? 0 : (static_cast<std::size_t>(shown - scenes.begin()) + 1) % scenes.size();
    state.lamps.lights.show(netOf(state), scenes[next]);
    state.lamps.scene = scenes[next].id;
    say(state, scenes[next].name);
}

void toggleEvening(State& state) {
    state.lamps.evening = !state.lamps.evening;
    say(state, state.lamps.evening ? "Evening: lamps and a little dusk" : "Day");
}

} // namespace gangway::app
