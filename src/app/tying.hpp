// Tying ways to lamps: pick a way and click lamps, or pick lamps and then the way; proposals, taken one by
// one.
#pragma once

#include "switching/suggest.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

struct ImVec2;

namespace gangway::app {

struct State;
struct Rect;

/// Texts of the circuit that is open.
struct CircuitForm {
    std::string circuit;
    std::uint64_t version = 0;
    std::string name, rated, protection;
};

/// What the panel "Switching" remembers.
struct Tying {
    std::optional<plan::WayRef> way; ///< picked: lamps that are clicked are tied to it
    std::set<std::string> lamps;     ///< picked first: the way that is clicked next ties them
    bool taking = false;             ///< lamps are being picked first
    std::string proposals_room;      ///< room the proposals are for; empty: none were asked for
    std::uint64_t proposals_version = 0;
    std::vector<switching::Suggestion> proposals;
    std::set<std::string> put_aside; ///< titles of proposals not wanted
    std::string mark_text, name_text, circuit_text;
    std::string text_leg; ///< leg the three texts are of, with the plan's version
    std::uint64_t text_version = 0;
    std::string circuit; ///< the one that is open
    CircuitForm circuit_form;
};

/// True while clicks on lamps and plates belong to the panel.
bool tying(const State& state);
/// Picks a way, or lets it go when it is picked; with lamps picked already it ties them.
void pickWay(State& state, const plan::WayRef& way);
/// With a way picked the lamp is tied to it, or untied when it hangs there already; else it is picked.
void clickLamp(State& state, const std::string& luminaire_id);
/// Ties, or picks, all of them at once: what a box was drawn around.
void takeLamps(State& state, const std::vector<std::string>& luminaire_ids);
/// The same for a socket outlet or motor that is to be switched.
void clickFedPlate(State& state, const std::string& plate_id);
/// Turns what was clicked on stage or plan since the last frame into ties.
void takeTyingClicks(State& state);
/// What Esc lets go of; true when there was something.
bool endsTying(State& state);

/// "L3 under-unit lights, 3 lamps", or "free".
std::string feedsInWords(const switching::Net& net, const switching::Way& way);

/// The side panel's contents.
void tyingPanel(State& state);
/// Circuits with their loads, and the boxes of the one that is open.
void circuitLines(State& state);
/// "Worked by K-01, way 2: L3 under-unit lights", or what works it otherwise.
std::string workedInWords(State& state, const plan::Luminaire& lamp);
/// On the card of a switch plate: each way, what it feeds, which are free.
void wayRows(State& state, const std::string& plate_id);

} // namespace gangway::app
