// The families of rules, in the order in which they speak of a room, and a check of a whole plan.
#include "checks/checker.hpp"
#include "checks/rules.hpp"
#include "switching/prove.hpp"

#include <array>

namespace gangway::checks {

namespace {
void findSwitching(const Facts& facts, Findings& findings) {
    auto proven = switching::prove(facts.house(), facts.catalogue(), facts.pack());
    std::ranges::move(proven, std::back_inserter(findings));
}

constexpr auto kFamilies = std::to_array<Family>({
    {nullptr, findSwitching},
    {findPlaces, nullptr},
    {findHeights, nullptr},
    {findBoxes, nullptr},
    {findFloor, nullptr},
    {findLamps, nullptr},
    {findLeads, nullptr},
    {nullptr, findCircuitWatts},
    {nullptr, findDark},
    {findWet, nullptr},
    {findIes, nullptr},
    {nullptr, findMarks},
    {findZones, nullptr},
    {findStructure, nullptr},
    {findCounts, nullptr},
    {findSight, nullptr},
    {findComfort, nullptr},
    {findSweeps, nullptr},
});
} // namespace

std::span<const Family> families() {
    return kFamilies;
}

std::vector<plan::Finding> check(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                                 const catalogue::CountryPack& pack, const std::filesystem::path& base) {
    return Checker(catalogue, pack, base).all(house);
}

} // namespace gangway::checks
