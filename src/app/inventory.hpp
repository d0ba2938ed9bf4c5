// What is plugged in where: the devices of each room and their outlets, kept until what they hang on changes;
// shown in the docket, on the cards of plates and as bodies on the stage.
#pragma once

#include "catalogue/plug_places.hpp"
#include "plan/plan.hpp"
#include "render/renderer.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace gangway::app {

struct State;

/// A device and the outlet it has, or could have.
struct DeviceRow {
    std::string device;
    std::string name;
    double watts = 0;
    double lead_mm = 0; ///< 0: not stated
    std::string plate;  ///< decided, else proposed; empty: none
    bool decided = false;
    std::optional<double> way_mm; ///< of the lead to it
    std::string crosses;          ///< what the lead would lie across, in words
    std::string data;             ///< plate of the nearest data outlet, for a device that wants one
    std::string why;              ///< of none
};

/// A plate with outlets.
struct OutletRow {
    std::string plate;
    int outlets = 0;
    int taken = 0;      ///< by decided plugs
    int proposed = 0;   ///< by proposals
    int blocked = 0;    ///< hidden by a body beside them
    double watts = 0;   ///< of decided devices
    double limit_w = 0; ///< 0: not stated
};

struct RoomInventory {
    std::vector<DeviceRow> devices;
    std::vector<OutletRow> plates;
    catalogue::PlugPlaces places; ///< of the room's plates
};

/// Something that is often forgotten in a room of its use.
struct ForgottenRow {
    std::string room;
    std::string name;
};

struct Inventory {
    std::uint64_t version = 0; ///< of the document that `rooms` is of
    std::string pack;
    std::map<std::string, RoomInventory> rooms; ///< those that were asked about
    std::uint64_t forgotten_version = 0;
    std::vector<ForgottenRow> forgotten;
    std::set<std::string> drawn;  ///< rooms whose bodies are on the stage as `rooms` has them
    std::set<std::string> redraw; ///< plates that were drawn anew without their plugs
};

/// Of a room of the plan. During a drag it is kept as it was before.
const RoomInventory& inventoryOf(State& state, const std::string& room_id);
/// Makes that of all rooms, at less cost than one after the other.
void fillInventory(State& state);
/// Forgets the rooms that were changed since they were looked at.
void forgetTouched(State& state);
/// What is often forgotten, of all rooms.
const std::vector<ForgottenRow>& forgottenOf(State& state);

/// The docket's tab "Devices": of one room, or of the whole house when `room` is empty.
void deviceRows(State& state, const std::string& room);
/// On the card of a plate: its outlets, what is in each, and the watts.
void outletLines(State& state, const std::string& plate_id);

/// The plate that is offered where a socket is missing: like most of the room's, else of the house's, else of
/// the plan's library; nullopt when there is none to go by.
std::optional<plan::Plate> usualSocket(const State& state, const std::string& room_id);

/// stage_plugs.cpp, once a frame after derive(): plates whose plugs have changed are drawn anew, when plugs
/// are shown.
void drawPlugsAnew(State& state, render::Renderer& renderer);

} // namespace gangway::app
