#include "checks/outlet_assignment.hpp"

#include "checks/least_cost.hpp"
#include "checks/rules.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <limits>
#include <map>

namespace gangway::checks {

namespace {
using catalogue::ModuleKind;

bool hasData(const Point& point) {
    return std::ranges::any_of(point.made.gangs, [](const catalogue::Gang& gang) {
        return gang.module != nullptr && gang.module->kind == ModuleKind::Data;
    });
}

PlateUse useOf(const Facts& facts, const Point& point) {
    PlateUse use;
    use.point = &point;
    for (const catalogue::Gang& gang : point.made.gangs) {
        if (gang.module == nullptr) continue;
        if (gang.module->kind == ModuleKind::CordOutlet) ++use.outlets;
        if (gang.module->kind != ModuleKind::Socket) continue;
        use.outlets += gang.module->outlets;
        use.limit_w += gang.module->outlets * gang.module->rated_current_a * facts.pack().volts.value;
    }
    use.limit_w *= facts.pack().circuit_part.value;
    use.free = use.outlets - static_cast<int>(point.devices.size());
    for (const plan::Device* device : point.devices)
        use.watts += device->watts;
    return use;
}

bool isWithin(const Facts& facts, const plan::Device& device, const LeadWay& way) {
    constexpr double kTouchMm = 1e-6;
    return way.crossings.empty() && way.length_mm <= reachOf(facts, device) + kTouchMm;
}

/// Ways of one device to the plates of its room, and the nearest data outlet.
struct Options {
    std::vector<std::pair<const Point*, LeadWay>> sockets; ///< nearest first
    const plan::Plate* data = nullptr;
};

Options optionsOf(const Facts& facts, const LeadRoom& room, const plan::Device& device) {
    Options options;
    double nearest = std::numeric_limits<double>::infinity();
    for (const Point* point : facts.pointsIn(device.room)) {
        const bool data = device.data && hasData(*point);
        if (!point->socket && !data) continue;
        LeadWay way = room.way(device, *point->plate);
        if (data && isWithin(facts, device, way) && way.length_mm < nearest) {
            nearest = way.length_mm;
            options.data = point->plate;
        }
        if (point->socket) options.sockets.emplace_back(point, std::move(way));
    }
    std::ranges::stable_sort(options.sockets, {}, [](const auto& one) { return one.second.length_mm; });
    return options;
}

std::string whyNone(const Facts& facts, const plan::Device& device, const Options& options) {
    if (options.sockets.empty()) return "there is no socket outlet in the room";
    const auto within = std::ranges::find_if(
        options.sockets, [&](const auto& one) { return isWithin(facts, device, one.second); });
    if (within == options.sockets.end()) {
        const auto& [point, way] = options.sockets.front();
        if (way.length_mm <= reachOf(facts, device))
            return fmt::format("the lead to the nearest socket, {}, would lie {}", point->tag(),
                               crossingWords(way));
        return fmt::format("the nearest socket, {}, is {} mm away, with a lead of {} mm", point->tag(),
                           mm(way.length_mm), mm(device.lead_mm));
    }
    if (device.data && options.data == nullptr) return "there is no data outlet in reach of it";
    return "every socket outlet in reach of it is taken";
}

/// Gives outlets to the devices at these places of the list, which have none yet.
void assignOpen(const Facts& facts, const LeadRoom& room, const std::vector<std::size_t>& open,
                OutletAssignment& all) {
    std::vector<Options> options;
    std::vector<Choice> choices;
    std::map<std::string, std::size_t> places;
    std::vector<PlateUse*> uses;
    std::vector<int> free;
    for (std::size_t who = 0; who < open.size(); ++who) {
        const plan::Device& device = *all.devices[open[who]].device;
        options.push_back(optionsOf(facts, room, device));
        if (device.data && options.back().data == nullptr) continue;
        for (const auto& [point, way] : options.back().sockets) {
            if (!isWithin(facts, device, way)) continue;
            const auto [at, is_new] = places.emplace(point->plate->id, uses.size());
            if (is_new) {
                uses.push_back(all.use(point->plate->id));
                free.push_back(uses.back()->free);
            }
            choices.push_back({who, at->second, way.length_mm});
        }
    }
    const auto given = leastCost(open.size(), free, choices);
    for (std::size_t who = 0; who < open.size(); ++who) {
        DeviceOutlet& outlet = all.devices[open[who]];
        outlet.data = options[who].data;
        if (!given[who]) {
            outlet.why = whyNone(facts, *outlet.device, options[who]);
            continue;
        }
        PlateUse& use = *uses[*given[who]];
        ++use.given;
        outlet.plate = use.point->plate;
        outlet.way = std::ranges::find(options[who].sockets, use.point, [](const auto& one) {
                         return one.first;
                     })->second;
    }
}
} // namespace

const LeadRoom* LeadRooms::room(const std::string& id) {
    const plan::Room* room = facts_.house().room(id);
    if (room == nullptr) return nullptr;
    auto& made = rooms_[id];
    if (!made) made = std::make_unique<LeadRoom>(facts_, *room);
    return made.get();
}

PlateUse* OutletAssignment::use(const std::string& plate_id) {
    const auto found = index.find(plate_id);
    return found == index.end() ? nullptr : &plates[found->second];
}

const PlateUse* OutletAssignment::use(const std::string& plate_id) const {
    const auto found = index.find(plate_id);
    return found == index.end() ? nullptr : &plates[found->second];
}

double reachOf(const Facts& facts, const plan::Device& device) {
    return device.lead_mm > 0 ? device.lead_mm - facts.limit("leadSlack")
                              : std::numeric_limits<double>::infinity();
}

namespace {
void addRoom(const Facts& facts, LeadRooms& rooms, const plan::Room& room, OutletAssignment& all) {
    for (const Point* point : facts.pointsIn(room.id)) {
        const PlateUse use = useOf(facts, *point);
        if (use.outlets == 0 && point->devices.empty()) continue;
        all.index.emplace(point->plate->id, all.plates.size());
        all.plates.push_back(use);
    }
    std::vector<std::size_t> open;
    for (const plan::Device* device : facts.devicesIn(room.id)) {
        DeviceOutlet outlet;
        outlet.device = device;
        const Point* point = facts.point(device->plate);
        // A plate of a room that the facts leave out is looked for in the plan.
        if (point != nullptr)
            outlet.plate = point->plate;
        else if (!device->plate.empty())
            outlet.plate = plan::findPlate(facts.plan(), device->plate);
        outlet.decided = outlet.plate != nullptr;
        if (!outlet.decided)
            open.push_back(all.devices.size());
        else if (const LeadRoom* there = rooms.room(outlet.plate->room))
            outlet.way = there->way(*device, *outlet.plate);
        all.devices.push_back(std::move(outlet));
    }
    if (!open.empty()) assignOpen(facts, *rooms.room(room.id), open, all);
}
} // namespace

OutletAssignment assignOutlets(const Facts& facts, LeadRooms& rooms, const plan::Room& room) {
    OutletAssignment all;
    addRoom(facts, rooms, room, all);
    return all;
}

OutletAssignment assignOutlets(const Facts& facts, LeadRooms& rooms) {
    OutletAssignment all;
    for (const plan::Room& room : facts.plan().rooms)
        addRoom(facts, rooms, room, all);
    return all;
}

} // namespace gangway::checks
