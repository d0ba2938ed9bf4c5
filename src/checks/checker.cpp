#include "checks/checker.hpp"

#include "checks/accepted.hpp"
#include "checks/rules.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <string_view>
#include <tuple>

namespace gangway::checks {

namespace {
constexpr std::uint32_t kHouse = std::numeric_limits<std::uint32_t>::max();
/// What is on a wall concerns the room behind it; furniture the places beside it.
constexpr double kAboutMm = 700;

/// Rooms by their place in the plan.
class RoomOrder {
public:
    explicit RoomOrder(const plan::Plan& plan) {
        for (std::size_t i = 0; i < plan.rooms.size(); ++i)
            rooms_.emplace(plan.rooms[i].id, static_cast<std::uint32_t>(i));
    }
    std::uint32_t room(std::string_view id) const {
        const auto found = rooms_.find(id);
        return found == rooms_.end() ? kHouse : found->second;
    }

private:
    std::unordered_map<std::string_view, std::uint32_t> rooms_;
};

void boxOf(const plan::Furniture& piece, plan::Vec2& low, plan::Vec2& high) {
    const double reach = std::hypot(piece.size.width_mm, piece.size.depth_mm) / 2;
    low = piece.at_mm - plan::Vec2{reach, reach};
    high = piece.at_mm + plan::Vec2{reach, reach};
}

void addNear(const geometry::HouseIndex& house, const std::string& room_id, plan::Vec2 low, plan::Vec2 high,
             std::set<std::string>& rooms) {
    const plan::Room* own = house.room(room_id);
    if (own == nullptr) return;
    rooms.insert(room_id);
    const plan::Vec2 about{kAboutMm, kAboutMm};
    for (const plan::Room* room : house.roomsNear(own->storey, low - about, high + about))
        rooms.insert(room->id);
}
} // namespace

Checker::Checker(const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack,
                 std::filesystem::path base)
    : catalogue_(catalogue), pack_(pack), base_(std::move(base)) {}

void Checker::remember(const plan::Plan& plan) {
    room_of_.clear();
    const auto take = [&](const auto& list) {
        for (const auto& element : list)
            room_of_[element.id] = element.room;
    };
    take(plan.plates);
    take(plan.furniture);
    take(plan.luminaires);
    take(plan.devices);
}

void Checker::sort() {
    std::vector<std::size_t> order(findings_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto key = [&](std::size_t i) {
        const Origin& from = origins_[i];
        return std::tuple(-static_cast<int>(findings_[i].severity), from.about, from.family, from.room,
                          from.number);
    };
    std::ranges::sort(order, [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
    std::vector<plan::Finding> findings;
    std::vector<Origin> origins;
    findings.reserve(order.size());
    origins.reserve(order.size());
    for (const std::size_t i : order) {
        findings.push_back(std::move(findings_[i]));
        origins.push_back(origins_[i]);
    }
    findings_ = std::move(findings);
    origins_ = std::move(origins);
}

std::set<std::string> Checker::roomsOfLeg(const plan::SwitchLeg& leg) const {
    std::set<std::string> rooms;
    const auto add = [&](const std::string& id) {
        if (const auto in = room_of_.find(id); in != room_of_.end()) rooms.insert(in->second);
    };
    for (const plan::WayRef& way : leg.controls)
        add(way.plate);
    std::ranges::for_each(leg.luminaires, add);
    std::ranges::for_each(leg.plates, add);
    return rooms;
}

/// Looks in the given rooms, in all when `whole`, and at the house.
void Checker::look(const geometry::HouseIndex& house, const std::set<std::string>& rooms, bool whole) {
    const plan::Plan& plan = house.plan();
    const RoomOrder order(plan);
    std::set<std::string> around = rooms;
    for (const std::string& id : rooms)
        if (const plan::Room* room = house.room(id); room != nullptr && !whole) {
            plan::Vec2 low = room->outline.front();
            plan::Vec2 high = low;
            for (const plan::Vec2 corner : room->outline) {
                low = {std::min(low.x, corner.x), std::min(low.y, corner.y)};
                high = {std::max(high.x, corner.x), std::max(high.y, corner.y)};
            }
            addNear(house, id, low, high, around);
        }
    for (const plan::SwitchLeg& leg : plan.legs) {
        if (whole) break;
        std::set<std::string> tied = roomsOfLeg(leg);
        if (std::ranges::any_of(tied, [&](const std::string& id) { return rooms.contains(id); }))
            around.merge(tied);
    }
    const Facts facts(house, catalogue_, pack_, base_, whole ? nullptr : &around);
    const auto about = [&](const plan::Finding& finding) {
        for (const std::string& id : finding.objects) {
            if (const auto room = order.room(id); room != kHouse) return room;
            const auto found = room_of_.find(id);
            if (found != room_of_.end()) return order.room(found->second);
            for (const plan::Opening& opening : plan.openings)
                if (opening.id == id) return order.room(opening.room);
        }
        return kHouse;
    };
    Findings found;
    const auto take = [&](std::size_t family, std::uint32_t room) {
        for (std::size_t i = 0; i < found.size(); ++i) {
            origins_.push_back(
                {static_cast<std::uint32_t>(family), room, about(found[i]), static_cast<std::uint32_t>(i)});
            findings_.push_back(std::move(found[i]));
        }
        found.clear();
    };
    const std::span<const Family> all_families = families();
    for (std::size_t family = 0; family < all_families.size(); ++family) {
        if (all_families[family].in_house != nullptr) {
            all_families[family].in_house(facts, found);
            take(family, kHouse);
            continue;
        }
        for (std::size_t i = 0; i < plan.rooms.size(); ++i) {
            if (!whole && !rooms.contains(plan.rooms[i].id)) continue;
            all_families[family].in_room(facts, plan.rooms[i], found);
            take(family, static_cast<std::uint32_t>(i));
        }
    }
    markAccepted(plan, findings_);
    sort();
}

const std::vector<plan::Finding>& Checker::all(const geometry::HouseIndex& house) {
    findings_.clear();
    origins_.clear();
    remember(house.plan());
    look(house, {}, true);
    return findings_;
}

std::set<std::string> Checker::roomsAbout(const geometry::HouseIndex& house, const Edited& edited) {
    const plan::Plan& plan = house.plan();
    std::set<std::string> rooms;
    std::set<std::string> ids;
    const auto touch = [&](const auto& list, const std::set<std::string>& touched, const auto& near) {
        for (const std::string& id : touched) {
            ids.insert(id);
            if (const auto was = room_of_.find(id); was != room_of_.end()) rooms.insert(was->second);
            room_of_.erase(id);
        }
        if (touched.empty()) return;
        for (const auto& element : list)
            if (touched.contains(element.id)) {
                room_of_[element.id] = element.room;
                near(element);
            }
    };
    touch(plan.plates, edited.plates, [&](const plan::Plate& plate) {
        const auto at = geometry::hostPoint(house, plate.room, plate.host);
        if (at) addNear(house, plate.room, {at->x, at->y}, {at->x, at->y}, rooms);
        rooms.insert(plate.room);
    });
    touch(plan.furniture, edited.furniture, [&](const plan::Furniture& piece) {
        plan::Vec2 low, high;
        boxOf(piece, low, high);
        addNear(house, piece.room, low, high, rooms);
    });
    const auto own = [&](const auto& element) { rooms.insert(element.room); };
    touch(plan.luminaires, edited.luminaires, own);
    touch(plan.devices, edited.devices, own);
    // A leg ties rooms together: what is tied to an edited point is looked at too.
    for (const plan::SwitchLeg& leg : plan.legs) {
        const auto tied = [&](const std::string& id) { return ids.contains(id); };
        const bool concerned =
            edited.legs.contains(leg.id) || std::ranges::any_of(leg.luminaires, tied) ||
            std::ranges::any_of(leg.plates, tied) ||
            std::ranges::any_of(leg.controls, [&](const plan::WayRef& way) { return tied(way.plate); });
        if (!concerned) continue;
        rooms.merge(roomsOfLeg(leg));
    }
    // What spoke of an edited object may be silent now.
    for (std::size_t i = 0; i < findings_.size(); ++i)
        if (origins_[i].room < plan.rooms.size() &&
            std::ranges::any_of(
                findings_[i].objects,
                [&](const std::string& id) { return ids.contains(id) || edited.legs.contains(id); }))
            rooms.insert(plan.rooms[origins_[i].room].id);
    return rooms;
}

void Checker::forget(const std::set<std::string>& rooms, const plan::Plan& plan) {
    std::size_t kept = 0;
    for (std::size_t i = 0; i < findings_.size(); ++i) {
        const Origin from = origins_[i];
        if (from.room == kHouse || rooms.contains(plan.rooms[from.room].id)) continue;
        if (kept != i) findings_[kept] = std::move(findings_[i]);
        origins_[kept] = from;
        ++kept;
    }
    findings_.resize(kept);
    origins_.resize(kept);
}

const std::vector<plan::Finding>& Checker::again(const geometry::HouseIndex& house, const Edited& edited) {
    if (edited.everything || room_of_.empty()) return all(house);
    const std::set<std::string> rooms = roomsAbout(house, edited);
    forget(rooms, house.plan());
    look(house, rooms, false);
    return findings_;
}

} // namespace gangway::checks
