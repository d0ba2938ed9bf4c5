// Which device uses which outlet: those that are decided, and the best that can be done for the others.
#pragma once

#include "checks/lead_path.hpp"

#include <memory>
#include <unordered_map>

namespace gangway::checks {

/// Rooms made ready for leads when they are first asked for. Facts must outlive it.
class LeadRooms {
public:
    explicit LeadRooms(const Facts& facts) : facts_(facts) {}
    /// nullptr when there is no such room.
    const LeadRoom* room(const std::string& id);

private:
    const Facts& facts_;
    std::unordered_map<std::string, std::unique_ptr<LeadRoom>> rooms_;
};

/// What is plugged into one plate.
struct PlateUse {
    const Point* point = nullptr;
    int outlets = 0;    ///< socket outlets and fixed connections
    int free = 0;       ///< not taken by decided plugs; less than 0 when there are too many
    int given = 0;      ///< of the free ones, taken by proposals
    double watts = 0;   ///< of decided devices
    double limit_w = 0; ///< what its socket outlets carry; 0: not stated
};

struct DeviceOutlet {
    const plan::Device* device = nullptr;
    const plan::Plate* plate = nullptr; ///< decided, else proposed; nullptr: none
    bool decided = false;
    std::optional<LeadWay> way;        ///< to it
    const plan::Plate* data = nullptr; ///< the nearest data outlet, for devices that want one
    std::string why;                   ///< of none: "no free socket outlet in reach; the nearest ..."
};

/// Both in the plan's order, room by room; plates without outlets that nothing is plugged into are left out.
/// Pointers live as long as the facts and the plan. Devices without a decided plate get outlets of their room
/// so that as many as can be have one and the ways of the leads together are shortest; only within the lead
/// less the pack's slack and across nothing. A device that wants data gets a socket only where a data outlet
/// is in reach as well.
struct OutletAssignment {
    std::vector<DeviceOutlet> devices;
    std::vector<PlateUse> plates;
    PlateUse* use(const std::string& plate_id);
    const PlateUse* use(const std::string& plate_id) const;
    std::unordered_map<std::string, std::size_t> index;
};
/// Of one room: its devices, and its plates.
OutletAssignment assignOutlets(const Facts& facts, LeadRooms& rooms, const plan::Room& room);
/// Of the whole plan.
OutletAssignment assignOutlets(const Facts& facts, LeadRooms& rooms);

/// The length a lead may lie along: less the pack's slack; as far as one likes when it is not stated.
double reachOf(const Facts& facts, const plan::Device& device);

} // namespace gangway::checks
