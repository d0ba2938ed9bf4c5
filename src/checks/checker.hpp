// Checks kept up to date while a plan is edited: after an edit only what it can touch is looked at again.
#pragma once

#include "checks/checks.hpp"

#include <cstdint>
#include <memory>
#include <set>
#include <string>
#include <unordered_map>

namespace gangway::checks {

class Ledger;
struct LookedFor;

/// Ids of what was changed, added or removed. Acceptances need no telling.
struct Edited {
    /// Rooms, openings, storeys, circuits, what holds for the whole plan, the pack: all is checked anew.
    bool everything = false;
    std::set<std::string> plates;
    std::set<std::string> furniture;
    std::set<std::string> luminaires;
    std::set<std::string> devices;
    std::set<std::string> legs;
};

/// Findings of one plan. Gives the same list as check() after every edit; an edit of one object costs what is
/// in the rooms about it and in those that legs, plugs and ways at night tie to them. Only where lists of the
/// plan grew or shrank, a leg was edited, or a circuit may carry more or less is there a small cost for each
/// object of the house. A stair that is edited, and the first and the last leg, cost a whole check.
class Checker {
public:
    /// Catalogue and pack must outlive it. `base` as for check().
    Checker(const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack,
            std::filesystem::path base = {});
    Checker(Checker&&) noexcept;
    ~Checker();

    /// Everything anew.
    const std::vector<plan::Finding>& all(const geometry::HouseIndex& house);
    /// After an edit since the last call of either; `house` is of the plan as it is now.
    const std::vector<plan::Finding>& again(const geometry::HouseIndex& house, const Edited& edited);
    const std::vector<plan::Finding>& findings() const { return findings_; }

private:
    /// Where a finding comes from, so that it can be replaced and keeps its place in the list.
    struct Origin {
        std::uint32_t about = 0;  ///< the room it is about, by its place in the plan; the greatest: the house
        std::uint32_t family = 0; ///< of rules
        std::uint32_t rule = 0;   ///< among those of the family, where it speaks of a room by rules
        std::uint32_t room = 0;   ///< the room it was looked for in, numbered as `about`
        std::uint32_t number = 0; ///< among those of its family, rule and room
        std::uint64_t names =
            0; ///< a bit for each of its objects, by hash: what it can't name is seen at once
        bool operator==(const Origin&) const = default;
    };
    struct Found {
        Origin origin;
        plan::Finding finding;
    };
    using RoomSet = std::set<std::uint32_t>;

    bool mustLookAnew(const geometry::HouseIndex& house, const Edited& edited) const;
    LookedFor concerned(const geometry::HouseIndex& house, const Edited& edited);
    void addNamed(const Edited& edited, LookedFor& what) const;
    std::vector<Found> look(const geometry::HouseIndex& house, const LookedFor& what);
    void lookAtSwitching(const geometry::HouseIndex& house, const LookedFor& what, std::uint32_t family,
                         std::vector<Found>& found);
    void lookAtWalks(const geometry::HouseIndex& house, const LookedFor& what, std::uint32_t family,
                     std::vector<Found>& found);
    void add(std::uint32_t family, std::uint32_t room, std::vector<plan::Finding>& findings,
             std::vector<Found>& found) const;
    Origin originOf(const plan::Finding& finding) const;
    bool isLookedFor(const Origin& origin, const LookedFor& what) const;
    void replace(const plan::Plan& plan, const LookedFor& what, std::vector<Found> found);
    void accept(const plan::Plan& plan, std::vector<Found>& found);

    const catalogue::Catalogue& catalogue_;
    const catalogue::CountryPack& pack_;
    std::filesystem::path base_;
    std::vector<plan::Finding> findings_;
    std::vector<Origin> origins_; ///< one for each finding
    std::unique_ptr<Ledger> ledger_;
    std::unique_ptr<switching::Doorways> doorways_;
    std::vector<RoomSet> walked_; ///< for each room, the rooms that its walks at night depend on
    std::vector<plan::Acceptance> accepted_;
};

} // namespace gangway::checks
