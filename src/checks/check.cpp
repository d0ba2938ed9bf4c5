// The families of rules, in the order in which they speak of a room, and a check of a whole plan.
#include "checks/checker.hpp"
#include "checks/rules.hpp"

#include <array>

namespace gangway::checks {

namespace {
using Reads = Family::Reads;

constexpr auto kFamilies = std::to_array<Family>({
    {Reads::Switching, nullptr, nullptr},
    {Reads::Room, findPlaces, nullptr},
    {Reads::Room, findHeights, nullptr},
    {Reads::Room, findBoxes, nullptr},
    {Reads::Room, findFloor, nullptr},
    {Reads::Room, findLamps, nullptr},
    {Reads::Room, findLeads, nullptr},
    {Reads::Circuits, nullptr, findCircuitWatts},
    {Reads::Walks, nullptr, nullptr},
    {Reads::Room, findWet, nullptr},
    {Reads::Room, findIes, nullptr},
    {Reads::Legs, nullptr, findMarks},
    {Reads::Room, findZones, nullptr},
    {Reads::Room, findStructure, nullptr},
    {Reads::Room, findCounts, nullptr},
    {Reads::Room, findSight, nullptr},
    {Reads::Room, findComfort, nullptr},
    {Reads::Room, findSweeps, nullptr},
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
