// Checks kept up to date while a plan is edited: after an edit only what it can touch is looked at again.
#pragma once

#include "checks/checks.hpp"

#include <cstdint>
#include <set>
#include <string>
#include <unordered_map>

namespace gangway::checks {

/// Ids of what was changed, added or removed.
struct Edited {
    bool everything = false; ///< rooms, openings, storeys, the pack: all is checked anew
    std::set<std::string> plates;
    std::set<std::string> furniture;
    std::set<std::string> luminaires;
    std::set<std::string> devices;
    std::set<std::string> legs;
};

/// Findings of one plan. Gives the same list as check() after every edit; an edit of one object costs what is
/// in the rooms about it, beside a small cost for each object of the house.
class Checker {
public:
    /// Catalogue and pack must outlive it. `base` as for check().
    Checker(const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack,
            std::filesystem::path base = {});

    /// Everything anew.
    const std::vector<plan::Finding>& all(const geometry::HouseIndex& house);
    /// After an edit since the last call of either; `house` is of the plan as it is now.
    const std::vector<plan::Finding>& again(const geometry::HouseIndex& house, const Edited& edited);
    const std::vector<plan::Finding>& findings() const { return findings_; }

private:
    /// Where a finding comes from, so that it can be replaced and keeps its place in the list.
    struct Origin {
        std::uint32_t family = 0;
        std::uint32_t room = 0;   ///< the room it was looked for in, by its place in the plan
        std::uint32_t about = 0;  ///< the room it is about, the same way; the greatest number for the house
        std::uint32_t number = 0; ///< among those of its family and room
    };
    void remember(const plan::Plan& plan);
    void forget(const std::set<std::string>& rooms, const plan::Plan& plan);
    void look(const geometry::HouseIndex& house, const std::set<std::string>& rooms, bool whole);
    void sort();
    std::set<std::string> roomsAbout(const geometry::HouseIndex& house, const Edited& edited);
    std::set<std::string> roomsOfLeg(const plan::SwitchLeg& leg) const;

    const catalogue::Catalogue& catalogue_;
    const catalogue::CountryPack& pack_;
    std::filesystem::path base_;
    std::vector<plan::Finding> findings_;
    std::vector<Origin> origins_;                          ///< one for each finding
    std::unordered_map<std::string, std::string> room_of_; ///< of plates, furniture, luminaires, devices
};

} // namespace gangway::checks
