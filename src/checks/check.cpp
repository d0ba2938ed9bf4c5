#include "checks/checks.hpp"

#include "checks/accepted.hpp"
#include "checks/rules.hpp"
#include "switching/prove.hpp"

#include <algorithm>
#include <limits>
#include <string_view>
#include <unordered_map>

namespace gangway::checks {

namespace {

/// Which room an object is in, by its place in the plan's list of rooms.
class RoomOrder {
public:
    explicit RoomOrder(const plan::Plan& plan) {
        for (std::size_t i = 0; i < plan.rooms.size(); ++i)
            rooms_.emplace(plan.rooms[i].id, i);
        take(plan.plates);
        take(plan.luminaires);
        take(plan.openings);
        take(plan.furniture);
    }

    /// Of the finding's first object that is in a room; findings about no room come last.
    std::size_t of(const plan::Finding& finding) const {
        for (const std::string& id : finding.objects) {
            if (const auto room = rooms_.find(id); room != rooms_.end()) return room->second;
            if (const auto at = within_.find(id); at != within_.end()) return at->second;
        }
        return std::numeric_limits<std::size_t>::max();
    }

private:
    template <class T>
    void take(const std::vector<T>& list) {
        for (const T& element : list)
            if (const auto room = rooms_.find(element.room); room != rooms_.end())
                within_.emplace(element.id, room->second);
    }

    std::unordered_map<std::string_view, std::size_t> rooms_;
    std::unordered_map<std::string_view, std::size_t> within_;
};

} // namespace

std::vector<plan::Finding> check(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                 const catalogue::CountryPack& pack, const std::filesystem::path& base) {
    auto findings = switching::prove(house, catalogue, pack);
    const Facts facts(house, catalogue, pack, base);
    findPlaces(facts, findings);
    findHeights(facts, findings);
    findBoxes(facts, findings);
    findFloor(facts, findings);
    findLamps(facts, findings);
    findLeads(facts, findings);
    findWet(facts, findings);
    findLight(facts, findings);
    for (const plan::Room& room : house.plan().rooms) {
        findZones(facts, room, findings);
        findStructure(facts, room, findings);
        findCounts(facts, room, findings);
        findSight(facts, room, findings);
        findComfort(facts, room, findings);
        findSweeps(facts, room, findings);
    }
    markAccepted(house.plan(), findings);
    const RoomOrder order(house.plan());
    std::ranges::stable_sort(findings, [&](const plan::Finding& a, const plan::Finding& b) {
        if (a.severity != b.severity) return a.severity > b.severity;
        return order.of(a) < order.of(b);
    });
    return findings;
}

} // namespace gangway::checks
