// What is lit from where, and what there is to walk between. Only for dark_walk.cpp.
#pragma once

#include "checks/dark_walk.hpp"
#include "checks/floor_grid.hpp"
#include "switching/doorways.hpp"
#include "switching/net.hpp"

#include <map>
#include <memory>
#include <set>
#include <unordered_map>

namespace gangway::checks {

/// A hand's place that lights rooms: a switch, a sensor, or a lamp with its own switch.
struct LightSource {
    plan::Vec2 at_mm;
    bool sensor = false;
    std::set<std::string> lights; ///< rooms
    const plan::SwitchLeg* leg = nullptr;
};

/// Where walks of a room begin and end.
struct Stop {
    WalkEnd end;
    const switching::Entrance* entrance = nullptr; ///< of doors: into this room
    std::vector<plan::Vec2> hands_mm; ///< further places from which one reaches out at the beginning: pillows
};

/// A house at night, made in linear time. All that it is given must outlive it.
class Night {
public:
    /// `part`: a plan of which only plates, luminaires and legs are read; the house's own, or what there is
    /// of them in the rooms that are asked about.
    Night(const geometry::HouseIndex& house, const plan::Plan& part, const switching::Doorways& doorways,
          const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack);

    const geometry::HouseIndex& house() const { return house_; }
    double reach_mm() const { return reach_mm_; }
    const std::vector<LightSource>& sourcesIn(const std::string& room_id) const;
    /// A leg that lights a room, nullptr when only lamps with their own switches do; nullopt: nothing does.
    std::optional<const plan::SwitchLeg*> lightOf(const std::string& room_id) const;
    const plan::SwitchLeg* leg(const std::string& id) const { return net_.leg(id); }
    const std::vector<const switching::Entrance*>& doorsOf(const std::string& room_id) const;
    /// Doors, then stairs, then beds, then WCs. Bed sides that are not free are left out.
    std::vector<Stop> stopsOf(const plan::Room& room);
    const FloorGrid& floorOf(const plan::Room& room);

private:
    void addLeg(const plan::SwitchLeg& leg);
    void addOwn();
    void addStairs();
    void addBed(const plan::Room& room, const plan::Furniture& bed, std::vector<Stop>& stops);

    const geometry::HouseIndex& house_;
    double reach_mm_ = 0;
    const switching::Doorways& doorways_;
    switching::Net net_;
    std::unordered_map<std::string, std::vector<LightSource>> sources_;
    std::unordered_map<std::string, const plan::SwitchLeg*> light_;
    std::unordered_map<std::string, std::vector<WalkEnd>> stairs_; ///< feet and heads, by room
    std::unordered_map<std::string, std::unique_ptr<FloorGrid>> floors_;
};

/// The walks that begin in a room, as nightWalks() lists them. Adds to `looked` the ids of all rooms that
/// they depend on.
std::vector<Walk> walksFrom(Night& night, const plan::Room& room, Walks which, std::set<std::string>& looked);

} // namespace gangway::checks
