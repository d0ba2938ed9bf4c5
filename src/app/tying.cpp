#include "app/tying.hpp"

#include "app/edit_actions.hpp"
#include "app/lamps.hpp"
#include "edit/leg_edits.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gangway::app {

namespace {
const plan::SwitchLeg* legOf(State& state, const plan::WayRef& ref) {
    const switching::Way* way = netOf(state).way(ref);
    return way == nullptr || way->legs.empty() ? nullptr : way->legs.front();
}

bool holds(const std::vector<std::string>& list, const std::string& id) {
    return std::ranges::find(list, id) != list.end();
}

/// The plate has something to be switched and no way of its own.
bool canBeFed(State& state, const plan::Plate& plate) {
    return netOf(state).waysOf(plate.id).empty();
}
} // namespace

bool tying(const State& state) {
    return state.panel == Panel::Switching && state.seat == Seat::Designer &&
           (state.tying.way || state.tying.taking);
}

void pickWay(State& state, const plan::WayRef& way) {
    Tying& now = state.tying;
    if (!now.lamps.empty()) {
        const edit::Fed fed{{now.lamps.begin(), now.lamps.end()}, {}};
        now.lamps.clear();
        now.taking = false;
        runArranged(state, edit::tieWay(state.plan(), way, fed));
        now.way = way;
        return;
    }
    now.taking = false;
    if (now.way == way)
        now.way.reset();
    else
        now.way = way;
}

void clickLamp(State& state, const std::string& luminaire_id) {
    Tying& now = state.tying;
    if (!now.way) {
        now.taking = true;
        if (now.lamps.erase(luminaire_id) == 0) now.lamps.insert(luminaire_id);
        if (now.lamps.empty()) now.taking = false;
        return;
    }
    const plan::SwitchLeg* leg = legOf(state, *now.way);
    const edit::Fed fed{{luminaire_id}, {}};
    if (leg != nullptr && holds(leg->luminaires, luminaire_id))
        runArranged(state, edit::untie(state.plan(), leg->id, fed));
    else
        runArranged(state, edit::tieWay(state.plan(), *now.way, fed));
}

void takeLamps(State& state, const std::vector<std::string>& luminaire_ids) {
    if (luminaire_ids.empty()) return;
    if (state.tying.way) {
        runArranged(state, edit::tieWay(state.plan(), *state.tying.way, {luminaire_ids, {}}));
        return;
    }
    state.tying.taking = true;
    state.tying.lamps.insert(luminaire_ids.begin(), luminaire_ids.end());
}

void clickFedPlate(State& state, const std::string& plate_id) {
    if (!state.tying.way) return;
    const plan::SwitchLeg* leg = legOf(state, *state.tying.way);
    const edit::Fed fed{{}, {plate_id}};
    if (leg != nullptr && holds(leg->plates, plate_id))
        runArranged(state, edit::untie(state.plan(), leg->id, fed));
    else
        runArranged(state, edit::tieWay(state.plan(), *state.tying.way, fed));
}

void takeTyingClicks(State& state) {
    // What is pressed is chosen, and chosen once more when it is let go: one click is one tie.
    if (!tying(state) || ImGui::IsMouseDown(ImGuiMouseButton_Left)) return;
    if (state.thing && state.thing->kind == sheets::PlanThing::Luminaire) {
        const std::string lamp = state.thing->id;
        state.thing.reset();
        clickLamp(state, lamp);
    }
    if (state.selected.empty() || !state.tying.way || state.selected == state.tying.way->plate) return;
    const plan::Plate* plate = plan::findPlate(state.plan(), state.selected);
    if (plate == nullptr || !canBeFed(state, *plate)) return;
    state.selected.clear();
    clickFedPlate(state, std::string(plate->id));
}

bool endsTying(State& state) {
    Tying& now = state.tying;
    const bool something = now.way || now.taking;
    now.way.reset();
    now.lamps.clear();
    now.taking = false;
    return something;
}

std::string feedsInWords(const switching::Net& net, const switching::Way& way) {
    if (way.legs.empty()) return "free";
    const plan::SwitchLeg& leg = *way.legs.front();
    std::vector<std::string> parts;
    if (!leg.luminaires.empty())
        parts.push_back(
            fmt::format("{} {}", leg.luminaires.size(), leg.luminaires.size() == 1 ? "lamp" : "lamps"));
    for (const std::string& id : leg.plates) {
        const plan::Plate* plate = net.plate(id);
        if (plate != nullptr) parts.push_back(plate->tag.empty() ? id : plate->tag);
    }
    std::string words = switching::legName(leg);
    for (const std::string& part : parts)
        words += fmt::format(", {}", part);
    if (parts.empty()) words += ", feeds nothing";
    if (way.legs.size() > 1) words += fmt::format(" and {} more", way.legs.size() - 1);
    return words;
}

std::string workedInWords(State& state, const plan::Luminaire& lamp) {
    const switching::Net& net = netOf(state);
    const auto legs = net.legsOfLuminaire(lamp.id);
    if (legs.empty()) return switching::hasOwnSwitch(lamp) ? "It has its own switch" : "Nothing works it yet";
    std::string words;
    for (const plan::WayRef& ref : legs.front()->controls)
        words += fmt::format("{}{}", words.empty() ? "Worked by " : " and ", switching::wayName(net, ref));
    if (words.empty()) words = "No switch works it yet";
    return fmt::format("{}: {}", words, switching::legName(*legs.front()));
}

} // namespace gangway::app
