// The lamps of the stage: which are on, what works them, and what a click on a rocker or lamp does.
#pragma once

#include "render/renderer.hpp"
#include "switching/lights.hpp"
#include "switching/net.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace gangway::app {

struct State;

/// A dimmer's knob under a pressed button.
struct KnobDrag {
    plan::WayRef way;
    double start_percent = 100;
    float start_y = 0; ///< pixels
    bool moved = false;
};

/// What the window knows of lamps.
struct Lamps {
    switching::Lights lights;
    std::optional<switching::Net> net; ///< of the document's plan at `net_version`
    std::uint64_t net_version = 0;
    std::set<std::string> known;         ///< legs and lamps with their own switch that were met before
    std::map<std::string, float> levels; ///< by luminaire, for the stage
    unsigned long levels_version = 0;    ///< of `lights`
    bool evening = false;
    std::optional<KnobDrag> knob;
    std::optional<plan::WayRef> hovered_way;
    std::string hovered_lamp;
    std::vector<render::Line> route; ///< of what is hovered
    bool bar_open = false;           ///< designer: the scenes are unfolded
    std::string scene;               ///< the one that was shown last
    std::string new_scene;           ///< name being typed
};

/// The switching of the plan as it is now; made anew when the plan changed. Legs that are new are on.
const switching::Net& netOf(State& state);
/// Brings the lamps' levels up to what is on; once a frame before the stage is drawn.
void deriveLamps(State& state);
/// Levels, daylight and the hovered route, into the stage's view.
void lightView(const State& state, render::View& view);
/// What the stage's picture depends on of the lamps, as text.
std::string lightKey(const State& state);

/// A click on the stage: works the rocker, dimmer or own switch that was hit. True when there was one.
bool clickLights(State& state, const render::Pick& hit);
/// A press on a dimmer's knob begins a drag; true when it did.
bool pressKnob(State& state, const render::Pick& hit);
/// True while a knob is dragged: up is brighter. Let go without moving it, the lamps turn over.
bool dragKnob(State& state);
/// What the pointer is over, for the route and the words beside it.
void hoverLights(State& state, const render::Pick& hit);
void noHover(State& state);
/// The words beside the pointer, and the knob's level while it is dragged.
void drawLightWords(State& state);
/// Where the rockers of visible plates are on screen, for the report.
void placeRockers(State& state, const render::Renderer& renderer, const render::View& view);

void setAllLights(State& state, bool on);
void nextScene(State& state);
void toggleEvening(State& state);

// scenes_bar.cpp
/// Scenes, all on, all off, evening: at the stage's lower left.
void drawScenesBar(State& state);

} // namespace gangway::app
