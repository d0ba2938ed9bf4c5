// What stands in which room and which leg ties it, kept while a plan is edited. Only for this folder.
#pragma once

#include "checks/checker.hpp"

#include <array>

namespace gangway::checks {

/// Rooms by their place in the plan; the number after the last is for what is in no room.
using RoomSet = std::set<std::uint32_t>;

/// Made in time linear in the plan. It holds no pointers into it, only places in its lists, so that it lives
/// on when the plan changes; after an edit it costs what was edited, and the list again where one grew or
/// shrank.
class Ledger {
public:
    void remember(const geometry::HouseIndex& house);
    void keepUp(const geometry::HouseIndex& house, const Edited& edited);

    std::uint32_t rooms() const { return rooms_; }
    std::uint32_t roomNumber(const std::string& id) const;
    /// The room that an object of a finding is in, or is, or whose opening it is; rooms() for none.
    std::uint32_t roomAbout(const std::string& id) const;
    const std::vector<std::uint32_t>& platesIn(std::uint32_t room) const { return plates_.in_room[room]; }
    const std::vector<std::uint32_t>& lampsIn(std::uint32_t room) const { return lamps_.in_room[room]; }
    const std::vector<std::uint32_t>& devicesIn(std::uint32_t room) const { return devices_.in_room[room]; }
    const std::vector<std::uint32_t>& legsOfPlate(const std::string& id) const;
    const std::vector<std::uint32_t>& legsOfLamp(const std::string& id) const;
    /// Places in the plan's lists; nullopt for none.
    std::optional<std::uint32_t> plateAt(const std::string& id) const { return at(plates_, id); }
    std::optional<std::uint32_t> lampAt(const std::string& id) const { return at(lamps_, id); }
    /// Ids of what is plugged into a plate.
    const std::set<std::string>& devicesOn(const std::string& plate) const;
    std::optional<std::uint32_t> deviceAt(const std::string& id) const { return at(devices_, id); }

    bool isStair(const std::string& furniture) const { return stairs_.contains(furniture); }
    bool hasStairs() const { return !stairs_.empty(); }
    std::size_t openings() const { return opening_rooms_.size(); }
    bool hasLegs() const { return !leg_rooms_.empty(); }

    /// Adds the rooms that an edit concerns, as the plan is known now: of what was edited, about it, and of
    /// all that legs and plugs tie to it.
    void addConcerned(const geometry::HouseIndex& house, const Edited& edited, RoomSet& rooms) const;
    /// Adds the rooms of all that shares a leg, or a plug, with what is in the given rooms.
    void addTied(const plan::Plan& plan, const RoomSet& rooms, RoomSet& tied) const;
    /// Adds the given rooms and those beside them.
    void addNeighbours(const geometry::HouseIndex& house, const RoomSet& rooms, RoomSet& around) const;
    /// A number that changes with what circuits are reckoned from.
    std::size_t circuitMark(const Edited& edited) const;
    /// Whether an edit concerns what a leg works or is worked from.
    bool concernsLegs(const Edited& edited) const;

private:
    struct Entry {
        std::uint32_t room = 0;
        std::uint32_t at = 0; ///< in the plan's list
        std::size_t mark = 0; ///< of what circuits are reckoned from
        plan::Vec2 low_mm, high_mm;
        std::string plugged; ///< devices: id of the plate
    };
    struct List {
        std::unordered_map<std::string, Entry> by_id;
        std::vector<std::vector<std::uint32_t>> in_room; ///< in the plan's order
    };
    template <class T>
    Entry entryOf(const geometry::HouseIndex& house, const T& element) const;
    template <class T>
    void fill(const geometry::HouseIndex& house, const std::vector<T>& elements, List& list);
    template <class T>
    void renew(const geometry::HouseIndex& house, const std::vector<T>& elements,
               const std::set<std::string>& touched, List& list);
    void fillLegs(const plan::Plan& plan);
    void noteLegRooms(const plan::SwitchLeg& leg, std::vector<std::uint32_t>& rooms) const;
    void addNear(const geometry::HouseIndex& house, std::uint32_t room, plan::Vec2 low_mm, plan::Vec2 high_mm,
                 RoomSet& rooms) const;
    static std::optional<std::uint32_t> at(const List& list, const std::string& id);

    std::uint32_t rooms_ = 0;
    std::unordered_map<std::string, std::uint32_t> room_numbers_;
    std::unordered_map<std::string, std::uint32_t> opening_rooms_;
    List plates_, furniture_, lamps_, devices_;
    std::set<std::string> stairs_;
    std::unordered_map<std::string, std::set<std::string>> plugged_; ///< devices by plate
    std::unordered_map<std::string, std::vector<std::uint32_t>> legs_of_plate_, legs_of_lamp_;
    std::unordered_map<std::string, std::uint32_t> leg_at_;
    std::vector<std::vector<std::uint32_t>> leg_rooms_; ///< of the members of each leg
};

/// What is edited, with what stands on edited furniture.
Edited withHosted(const plan::Plan& plan, const Edited& edited);

} // namespace gangway::checks
