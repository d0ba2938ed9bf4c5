// What can be laid over the walls: zones of baths and showers, cable zones, what a person reaches, margins of
// the chosen plate; and where there is room for the plate in hand.
#pragma once

#include "app/placing.hpp"
#include "checks/cable_zones.hpp"
#include "checks/dark_walk.hpp"
#include "checks/margins.hpp"
#include "checks/reach_shell.hpp"
#include "checks/stretches.hpp"
#include "checks/wet_zones.hpp"

#include <cstdint>

namespace gangway::app {

struct State;

/// What is laid over one wall.
struct WallOverlay {
    std::vector<checks::ZoneArea> cables;
    std::vector<checks::WetWallArea> wet;
    std::vector<checks::ReachColumn> reach;
};

struct Overlays {
    bool wet = false;    ///< bath and shower zones, on the stage as volumes
    bool cables = false; ///< cable zones
    bool margins = false;
    bool plugs = false; ///< plugs and free outlets, on the stage as bodies
    bool night = false; ///< ways at night, on the plan
    std::string body; ///< id of the body whose reach is shown; empty: nobody's
    // Kept until what it was made for changes.
    std::string key;
    std::vector<WallOverlay> walls; ///< of the room one stands in
    std::string margin_key;
    checks::MarginPicture margin;
    std::uint64_t plan_version = 0; ///< of the document that the two below are of
    std::string plan_pack;
    std::vector<checks::WetVolume> zones; ///< of the whole house
    std::vector<checks::Walk> walks;      ///< at night, of the whole house
};

/// The plate in hand (placed, dragged or chosen) and where on its wall it may sit.
struct Leeway {
    std::string key;
    plan::Plate plate;
    std::string room;
    std::size_t wall = 0;
    plan::Vec2 half_mm;
    checks::Interval whole;
    std::vector<checks::Bar> bars;
};

/// Of the panel "Layers": what is laid over the walls.
void overlayRows(State& state);
/// Over one wall of a room, before plates' outlines and findings. The margin picture lies on the strip alone:
/// on the stage it would cover what stands before the wall.
void drawOverlays(State& state, const plan::Room& room, std::size_t wall, const Projector& project,
                  Place place);
/// Under the strip of a wall: where the plate in hand may sit at its height, what closes each gap, and its
/// margin, in words over the wall beside its name.
void drawLeeway(State& state, const plan::Room& room, std::size_t wall, const Projector& project);
/// Zones of all baths and showers of the house, for the stage.
std::vector<checks::WetVolume> wetVolumesOf(const State& state);

} // namespace gangway::app
