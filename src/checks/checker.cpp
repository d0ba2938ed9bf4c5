#include "checks/checker.hpp"

#include "checks/accepted.hpp"
#include "checks/ledger.hpp"
#include "checks/night.hpp"
#include "checks/part_of_plan.hpp"
#include "checks/rules.hpp"

#include <algorithm>
#include <functional>
#include <iterator>
#include <limits>
#include <numeric>
#include <tuple>

namespace gangway::checks {

namespace {
constexpr std::uint32_t kHouse = std::numeric_limits<std::uint32_t>::max();
using Reads = Family::Reads;
using switching::Speaks;

std::uint64_t bitOf(const std::string& id) {
    return std::uint64_t{1} << (std::hash<std::string>{}(id) % 64);
}

bool sameAcceptances(const std::vector<plan::Acceptance>& a, const std::vector<plan::Acceptance>& b) {
    return std::ranges::equal(a, b, [](const plan::Acceptance& one, const plan::Acceptance& other) {
        return one.id == other.id && one.facts == other.facts && one.note == other.note;
    });
}

/// Every id that an edit names.
std::vector<std::string> idsOf(const Edited& edited) {
    std::vector<std::string> ids;
    for (const auto* set :
         {&edited.plates, &edited.furniture, &edited.luminaires, &edited.devices, &edited.legs})
        ids.insert(ids.end(), set->begin(), set->end());
    return ids;
}
} // namespace

/// What is looked at again; the rest is kept.
struct LookedFor {
    bool whole = false;
    RoomSet rooms;
    RoomSet walks; ///< rooms whose walks at night begin there
    bool stairs = false;
    bool circuits = false;
    bool legs = false;
};

Checker::Checker(const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack,
                 std::filesystem::path base)
    : catalogue_(catalogue), pack_(pack), base_(std::move(base)), ledger_(std::make_unique<Ledger>()) {}

Checker::Checker(Checker&&) noexcept = default;
Checker::~Checker() = default;

Checker::Origin Checker::originOf(const plan::Finding& finding) const {
    Origin origin;
    origin.about = kHouse;
    for (const std::string& id : finding.objects) {
        origin.names |= bitOf(id);
        if (origin.about != kHouse) continue;
        if (const auto room = ledger_->roomAbout(id); room < ledger_->rooms()) origin.about = room;
    }
    return origin;
}

void Checker::add(std::uint32_t family, std::uint32_t room, std::vector<plan::Finding>& findings,
                  std::vector<Found>& found) const {
    for (std::uint32_t i = 0; i < findings.size(); ++i) {
        Origin origin = originOf(findings[i]);
        origin.family = family;
        origin.room = room;
        origin.number = i;
        found.push_back({origin, std::move(findings[i])});
    }
    findings.clear();
}

void Checker::lookAtSwitching(const geometry::HouseIndex& house, const LookedFor& what, std::uint32_t family,
                              std::vector<Found>& found) {
    const auto take = [&](std::vector<switching::Proven> proven) {
        std::unordered_map<std::uint64_t, std::uint32_t> numbers; // by rule and room
        for (switching::Proven& one : proven) {
            const std::uint32_t room = one.room.empty() ? kHouse : ledger_->roomNumber(one.room);
            if (room != kHouse && !what.whole && !what.rooms.contains(room)) continue;
            Origin origin = originOf(one.finding);
            origin.family = family;
            origin.rule = static_cast<std::uint32_t>(one.rule);
            origin.room = room;
            origin.number = numbers[(std::uint64_t{origin.rule} << 32) | room]++;
            found.push_back({origin, std::move(one.finding)});
        }
    };
    const auto prove = [&](const plan::Plan& part, std::initializer_list<Speaks> speaks) {
        take(switching::provePart(house, part, *doorways_, catalogue_, pack_, speaks));
    };
    const plan::Plan& plan = house.plan();
    if (what.whole) return prove(plan, {Speaks::OfRoom, Speaks::OfStairs, Speaks::OfCircuits});
    prove(partOfRooms(plan, *ledger_, what.rooms), {Speaks::OfRoom});
    if (what.stairs) prove(partOfStairs(house, *ledger_), {Speaks::OfStairs});
    if (what.circuits) prove(plan, {Speaks::OfCircuits});
}

/// A walk may lead into rooms that were not thought of; then it is taken again with what is there.
void Checker::lookAtWalks(const geometry::HouseIndex& house, const LookedFor& what, std::uint32_t family,
                          std::vector<Found>& found) {
    const plan::Plan& plan = house.plan();
    RoomSet known = what.walks;
    for (const std::uint32_t room : what.walks)
        known.insert(walked_[room].begin(), walked_[room].end());
    const Facts facts(house, catalogue_, pack_, base_, FactParts{});
    for (bool again = true; again;) {
        again = false;
        std::vector<Found> walks;
        std::optional<plan::Plan> part;
        if (!what.whole) part = partOfRooms(plan, *ledger_, known);
        Night night(house, part ? *part : plan, *doorways_, catalogue_, pack_);
        std::vector<plan::Finding> findings;
        for (const std::uint32_t room : what.walks) {
            std::set<std::string> looked;
            findDark(facts, night, plan.rooms[room], looked, findings);
            add(family, room, findings, walks);
            walked_[room].clear();
            for (const std::string& id : looked)
                walked_[room].insert(ledger_->roomNumber(id));
            for (const std::uint32_t other : walked_[room])
                again = known.insert(other).second || again;
        }
        if (again && !what.whole) continue;
        std::ranges::move(walks, std::back_inserter(found));
        return;
    }
}

std::vector<Checker::Found> Checker::look(const geometry::HouseIndex& house, const LookedFor& what) {
    const plan::Plan& plan = house.plan();
    RoomSet around;
    if (!what.whole) {
        ledger_->addNeighbours(house, what.rooms, around);
        RoomSet tied;
        ledger_->addTied(plan, what.rooms, tied);
        around.merge(tied);
    }
    const Facts facts = what.whole
                            ? Facts(house, catalogue_, pack_, base_)
                            : Facts(house, catalogue_, pack_, base_, factsOfRooms(plan, *ledger_, around));
    std::vector<Found> found;
    std::vector<plan::Finding> findings;
    const std::span<const Family> all_families = families();
    for (std::uint32_t family = 0; family < all_families.size(); ++family) {
        const Family& rules = all_families[family];
        if (rules.reads == Reads::Switching) {
            lookAtSwitching(house, what, family, found);
        } else if (rules.reads == Reads::Walks) {
            lookAtWalks(house, what, family, found);
        } else if (rules.reads == Reads::Room) {
            for (const std::uint32_t room : what.rooms) {
                if (room == ledger_->rooms()) continue;
                rules.in_room(facts, plan.rooms[room], findings);
                add(family, room, findings, found);
            }
        } else if (rules.reads == Reads::Circuits ? what.circuits : what.legs) {
            rules.in_house(facts, findings);
            add(family, kHouse, findings, found);
        }
    }
    return found;
}

bool Checker::isLookedFor(const Origin& origin, const LookedFor& what) const {
    const Reads reads = families()[origin.family].reads;
    if (origin.room != kHouse)
        return reads == Reads::Walks ? what.walks.contains(origin.room) : what.rooms.contains(origin.room);
    if (reads == Reads::Switching)
        return switching::speaksOf(origin.rule) == Speaks::OfStairs ? what.stairs : what.circuits;
    return reads == Reads::Circuits ? what.circuits : what.legs;
}

/// All are marked anew when what is accepted has changed, else only what was found now.
void Checker::accept(const plan::Plan& plan, std::vector<Found>& found) {
    if (!sameAcceptances(plan.accepted, accepted_)) {
        accepted_ = plan.accepted;
        markAccepted(plan, findings_);
    }
    if (accepted_.empty()) return;
    std::vector<plan::Finding> one(1);
    for (Found& each : found) {
        std::swap(one.front(), each.finding);
        markAccepted(plan, one);
        std::swap(one.front(), each.finding);
    }
}

/// Faults first, then by the room that is spoken of and the order of families: the list is kept in that
/// order, and what was found now is merged into it.
void Checker::replace(const plan::Plan& plan, const LookedFor& what, std::vector<Found> found) {
    const auto key = [](const plan::Finding& finding, const Origin& from) {
        return std::tuple(-static_cast<int>(finding.severity), from.about, from.family, from.rule, from.room,
                          from.number);
    };
    std::vector<std::uint32_t> order(found.size());
    std::iota(order.begin(), order.end(), 0U);
    std::ranges::sort(order, {}, [&](std::uint32_t i) { return key(found[i].finding, found[i].origin); });
    std::size_t kept = 0;
    for (std::size_t i = 0; i < findings_.size(); ++i) {
        if (what.whole || isLookedFor(origins_[i], what)) continue;
        if (kept != i) findings_[kept] = std::move(findings_[i]);
        origins_[kept++] = origins_[i];
    }
    findings_.resize(kept);
    origins_.resize(kept);
    accept(plan, found);
    findings_.resize(kept + found.size());
    origins_.resize(kept + found.size());
    // From the end, so that only what comes after the first new one is moved.
    for (std::size_t to = findings_.size(), next = found.size(); next > 0;) {
        Found& last = found[order[next - 1]];
        const bool keep =
            kept > 0 && key(findings_[kept - 1], origins_[kept - 1]) > key(last.finding, last.origin);
        --to;
        if (keep)
            --kept;
        else
            --next;
        findings_[to] = std::move(keep ? findings_[kept] : last.finding);
        origins_[to] = keep ? origins_[kept] : last.origin;
    }
}

const std::vector<plan::Finding>& Checker::all(const geometry::HouseIndex& house) {
    findings_.clear();
    origins_.clear();
    ledger_->remember(house);
    doorways_ = std::make_unique<switching::Doorways>(house);
    walked_.assign(ledger_->rooms(), {});
    LookedFor what{true, {}, {}, true, true, true};
    for (std::uint32_t room = 0; room < ledger_->rooms(); ++room)
        what.rooms.insert(what.rooms.end(), room);
    what.walks = what.rooms;
    replace(house.plan(), what, look(house, what));
    return findings_;
}

bool Checker::mustLookAnew(const geometry::HouseIndex& house, const Edited& edited) const {
    const plan::Plan& plan = house.plan();
    if (edited.everything || doorways_ == nullptr || plan.rooms.size() != ledger_->rooms() ||
        plan.openings.size() != ledger_->openings() || plan.legs.empty() == ledger_->hasLegs())
        return true;
    return std::ranges::any_of(edited.furniture, [&](const std::string& id) {
        const plan::Furniture* piece = house.furniture(id);
        return ledger_->isStair(id) || (piece != nullptr && piece->kind == "stair");
    });
}

/// What named an edited object may be silent now, or be about another room.
void Checker::addNamed(const Edited& edited, LookedFor& what) const {
    const std::vector<std::string> ids = idsOf(edited);
    std::uint64_t bits = 0;
    for (const std::string& id : ids)
        bits |= bitOf(id);
    for (std::size_t i = 0; i < findings_.size(); ++i) {
        const Origin& from = origins_[i];
        if ((from.names & bits) == 0 || isLookedFor(from, what)) continue;
        const auto is_edited = [&](const std::string& id) { return std::ranges::find(ids, id) != ids.end(); };
        if (std::ranges::none_of(findings_[i].objects, is_edited)) continue;
        const Reads reads = families()[from.family].reads;
        if (from.room != kHouse)
            (reads == Reads::Walks ? what.walks : what.rooms).insert(from.room);
        else if (reads == Reads::Legs)
            what.legs = true;
        else if (reads == Reads::Switching && switching::speaksOf(from.rule) == Speaks::OfStairs)
            what.stairs = true;
        else
            what.circuits = true;
    }
}

/// Looks at the plan as it was, notes how it is now, and looks again.
LookedFor Checker::concerned(const geometry::HouseIndex& house, const Edited& edited) {
    LookedFor what;
    ledger_->addConcerned(house, edited, what.rooms);
    const std::size_t mark = ledger_->circuitMark(edited);
    bool legs = ledger_->concernsLegs(edited);
    ledger_->keepUp(house, edited);
    ledger_->addConcerned(house, edited, what.rooms);
    legs = legs || ledger_->concernsLegs(edited);
    what.legs = !edited.legs.empty();
    what.circuits = what.legs || mark != ledger_->circuitMark(edited);
    what.stairs = legs && ledger_->hasStairs();
    addNamed(edited, what);
    for (std::uint32_t room = 0; room < walked_.size(); ++room)
        if (what.rooms.contains(room) || std::ranges::any_of(walked_[room], [&](std::uint32_t passed) {
                return what.rooms.contains(passed);
            }))
            what.walks.insert(room);
    return what;
}

const std::vector<plan::Finding>& Checker::again(const geometry::HouseIndex& house, const Edited& edited) {
    if (mustLookAnew(house, edited)) return all(house);
    doorways_->pointTo(house.plan());
    const LookedFor what = concerned(house, withHosted(house.plan(), edited));
    replace(house.plan(), what, look(house, what));
    return findings_;
}

} // namespace gangway::checks
