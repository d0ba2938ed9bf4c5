#include "edit/leg_edits.hpp"

#include "edit/plate_edits.hpp"
#include "edit/plate_name.hpp"
#include "edit/wording.hpp"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>
#include <map>
#include <set>

namespace gangway::edit {
namespace {

using plan::SwitchLeg;

const SwitchLeg* findLeg(const plan::Plan& plan, const std::string& id) {
    const auto at = std::ranges::find(plan.legs, id, &SwitchLeg::id);
    return at == plan.legs.end() ? nullptr : &*at;
}

std::string noLeg(const std::string& id) {
    return fmt::format("there is no leg '{}'", id);
}

std::string legWord(const SwitchLeg& leg) {
    return leg.letter.empty() ? leg.name.empty() ? leg.id : leg.name : leg.letter;
}

std::string wayWord(const plan::Plan& plan, const plan::WayRef& way) {
    return way.way == 1 && way.module == 1
               ? detail::plateName(plan, way.plate)
               : fmt::format("{} module {} way {}", detail::plateName(plan, way.plate), way.module, way.way);
}

std::string fedWord(const plan::Plan& plan, const Fed& fed) {
    std::vector<std::string> parts;
    if (fed.luminaires.size() == 1)
        parts.push_back(detail::lampName(*plan::findLuminaire(plan, fed.luminaires.front())));
    else if (!fed.luminaires.empty())
        parts.push_back(detail::counted(fed.luminaires.size(), "luminaire", "luminaires"));
    if (fed.plates.size() == 1)
        parts.push_back(detail::plateName(plan, fed.plates.front()));
    else if (!fed.plates.empty())
        parts.push_back(detail::counted(fed.plates.size(), "plate", "plates"));
    return detail::listed(parts);
}

/// What stands in the way of a way, or empty.
std::string problemWith(const plan::Plan& plan, const plan::WayRef& way) {
    const plan::Plate* plate = plan::findPlate(plan, way.plate);
    if (plate == nullptr) return fmt::format("there is no plate '{}'", way.plate);
    if (way.module < 1 || static_cast<std::size_t>(way.module) > plate->modules.size())
        return fmt::format("{} has no module {}", detail::plateName(plan, way.plate), way.module);
    if (way.way < 1) return fmt::format("ways are counted from 1, not {}", way.way);
    return {};
}

std::string problemWith(const plan::Plan& plan, const Fed& fed) {
    for (const std::string& id : fed.luminaires)
        if (plan::findLuminaire(plan, id) == nullptr) return fmt::format("there is no luminaire '{}'", id);
    for (const std::string& id : fed.plates)
        if (plan::findPlate(plan, id) == nullptr) return fmt::format("there is no plate '{}'", id);
    return {};
}

template <class T>
bool holds(const std::vector<T>& list, const T& value) {
    return std::ranges::find(list, value) != list.end();
}

void addMissing(std::vector<std::string>& list, const std::vector<std::string>& more) {
    for (const std::string& id : more)
        if (!holds(list, id)) list.push_back(id);
}

bool sameWay(const plan::WayRef& a, const plan::WayRef& b) {
    return a.plate == b.plate && a.module == b.module && a.way == b.way;
}

bool dead(const SwitchLeg& leg) {
    return leg.controls.empty() && leg.luminaires.empty() && leg.plates.empty();
}

/// Takes luminaires and ways off every leg but `kept_id`; legs with nothing left go.
void takeFromOthers(Draft& draft, const std::string& kept_id, const std::vector<std::string>& luminaires,
                    const std::vector<plan::WayRef>& ways) {
    const auto lamp = [&](const std::string& id) { return holds(luminaires, id); };
    const auto way = [&](const plan::WayRef& ref) {
        return std::ranges::any_of(ways, [&](const plan::WayRef& each) { return sameWay(each, ref); });
    };
    for (std::size_t i = draft.plan().legs.size(); i-- > 0;) {
        const SwitchLeg& leg = draft.plan().legs[i];
        if (leg.id == kept_id) continue;
        if (!std::ranges::any_of(leg.luminaires, lamp) && !std::ranges::any_of(leg.controls, way)) continue;
        SwitchLeg& changed = draft.change<SwitchLeg>(i);
        std::erase_if(changed.luminaires, lamp);
        std::erase_if(changed.controls, way);
        if (dead(changed)) draft.remove<SwitchLeg>(i);
    }
}

std::string freeLegId(const plan::Plan& plan, const std::string& wanted) {
    return detail::freeId(wanted, "leg", [&](const std::string& id) { return findLeg(plan, id) != nullptr; });
}

/// "L12" is L and 12; nullopt for anything that is not one letter or more and a number.
std::optional<std::pair<std::string, int>> numbered(const std::string& mark) {
    const std::size_t digits = mark.find_first_of("0123456789");
    constexpr std::size_t kMostDigits = 6;
    if (digits == std::string::npos || digits == 0 || mark.size() - digits > kMostDigits ||
        mark.find_first_not_of("0123456789", digits) != std::string::npos)
        return std::nullopt;
    return std::pair{mark.substr(0, digits), std::stoi(mark.substr(digits))};
}

/// a, b ... z without i, l and o, then aa, ab ...
std::string smallLetters(std::size_t index) {
    static constexpr std::string_view kLetters = "abcdefghjkmnpqrstuvwxyz";
    std::string mark;
    for (std::size_t rest = index + 1; rest > 0; rest = (rest - 1) / kLetters.size())
        mark.insert(mark.begin(), kLetters[(rest - 1) % kLetters.size()]);
    return mark;
}

std::string problemWith(const plan::Plan& plan, const SwitchLeg& leg) {
    for (const SwitchLeg& other : plan.legs)
        if (other.id != leg.id && !leg.letter.empty() && other.letter == leg.letter)
            return fmt::format("another leg is marked {}", leg.letter);
    return {};
}

} // namespace

std::string nextLegMark(const plan::Plan& plan) {
    std::set<std::string> taken;
    std::map<std::string, int> prefixes; // how many marks have them
    for (const SwitchLeg& leg : plan.legs) {
        taken.insert(leg.letter);
        if (const auto parts = numbered(leg.letter)) ++prefixes[parts->first];
    }
    const auto most =
        std::ranges::max_element(prefixes, {}, [](const auto& prefix) { return prefix.second; });
    for (int number = 1; most != prefixes.end(); ++number)
        if (std::string mark = fmt::format("{}{}", most->first, number); !taken.contains(mark)) return mark;
    for (std::size_t index = 0;; ++index)
        if (std::string mark = smallLetters(index); !taken.contains(mark)) return mark;
}

namespace {
/// ", taken from L4" when other legs worked some of the lamps.
std::string takenWord(const plan::Plan& plan, const std::string& kept_id, const Fed& fed) {
    std::string legs;
    for (const SwitchLeg& leg : plan.legs) {
        const auto taken = [&](const std::string& lamp) { return holds(leg.luminaires, lamp); };
        if (leg.id != kept_id && std::ranges::any_of(fed.luminaires, taken))
            legs += (legs.empty() ? ", taken from " : ", ") + legWord(leg);
    }
    return legs;
}
} // namespace

Refusable tieWay(const plan::Plan& plan, const plan::WayRef& way, const Fed& fed) {
    if (std::string problem = problemWith(plan, way); !problem.empty()) return std::unexpected(problem);
    for (const SwitchLeg& leg : plan.legs)
        if (std::ranges::any_of(leg.controls, [&](const auto& each) { return sameWay(each, way); }))
            return tieToLeg(plan, leg.id, fed);
    if (fed.empty()) return std::unexpected("choose the lamps it is to work");
    if (std::string problem = problemWith(plan, fed); !problem.empty()) return std::unexpected(problem);
    SwitchLeg leg;
    leg.letter = nextLegMark(plan);
    leg.id = freeLegId(plan, leg.letter);
    leg.controls = {way};
    addMissing(leg.luminaires, fed.luminaires);
    addMissing(leg.plates, fed.plates);
    std::string name =
        fmt::format("Tie {} to {}{}", wayWord(plan, way), fedWord(plan, fed), takenWord(plan, leg.id, fed));
    return Command{std::move(name), "", [leg = std::move(leg)](Draft& draft) {
                       takeFromOthers(draft, leg.id, leg.luminaires, {});
                       draft.add(leg);
                   }};
}

Refusable tieToLeg(const plan::Plan& plan, const std::string& leg_id, const Fed& fed) {
    const SwitchLeg* leg = findLeg(plan, leg_id);
    if (leg == nullptr) return std::unexpected(noLeg(leg_id));
    if (fed.empty()) return std::unexpected("choose the lamps it is to work");
    if (std::string problem = problemWith(plan, fed); !problem.empty()) return std::unexpected(problem);
    std::string name =
        fmt::format("Tie {} to {}{}", legWord(*leg), fedWord(plan, fed), takenWord(plan, leg_id, fed));
    return Command{std::move(name), "", [leg_id, fed](Draft& draft) {
                       takeFromOthers(draft, leg_id, fed.luminaires, {});
                       SwitchLeg* changed = draft.change<SwitchLeg>(leg_id);
                       if (changed == nullptr) return;
                       addMissing(changed->luminaires, fed.luminaires);
                       addMissing(changed->plates, fed.plates);
                   }};
}

Refusable untie(const plan::Plan& plan, const std::string& leg_id, const Fed& fed) {
    const SwitchLeg* leg = findLeg(plan, leg_id);
    if (leg == nullptr) return std::unexpected(noLeg(leg_id));
    if (std::string problem = problemWith(plan, fed); !problem.empty()) return std::unexpected(problem);
    std::string name = fmt::format("Untie {} from {}", fedWord(plan, fed), legWord(*leg));
    return Command{std::move(name), "", [leg_id, fed](Draft& draft) {
                       SwitchLeg* changed = draft.change<SwitchLeg>(leg_id);
                       if (changed == nullptr) return;
                       std::erase_if(changed->luminaires,
                                     [&](const std::string& id) { return holds(fed.luminaires, id); });
                       std::erase_if(changed->plates,
                                     [&](const std::string& id) { return holds(fed.plates, id); });
                   }};
}

Refusable joinWay(const plan::Plan& plan, const std::string& leg_id, const plan::WayRef& way) {
    const SwitchLeg* leg = findLeg(plan, leg_id);
    if (leg == nullptr) return std::unexpected(noLeg(leg_id));
    if (std::string problem = problemWith(plan, way); !problem.empty()) return std::unexpected(problem);
    if (std::ranges::any_of(leg->controls, [&](const auto& each) { return sameWay(each, way); }))
        return std::unexpected(fmt::format("{} works {} already", wayWord(plan, way), legWord(*leg)));
    std::string name = fmt::format("Let {} work {}", wayWord(plan, way), legWord(*leg));
    return Command{std::move(name), "", [leg_id, way](Draft& draft) {
                       takeFromOthers(draft, leg_id, {}, {way});
                       if (SwitchLeg* changed = draft.change<SwitchLeg>(leg_id))
                           changed->controls.push_back(way);
                   }};
}

Refusable partWay(const plan::Plan& plan, const std::string& leg_id, const plan::WayRef& way) {
    const SwitchLeg* leg = findLeg(plan, leg_id);
    if (leg == nullptr) return std::unexpected(noLeg(leg_id));
    std::string name = fmt::format("Take {} off {}", wayWord(plan, way), legWord(*leg));
    return Command{std::move(name), "", [leg_id, way](Draft& draft) {
                       if (SwitchLeg* changed = draft.change<SwitchLeg>(leg_id))
                           std::erase_if(changed->controls,
                                         [&](const auto& each) { return sameWay(each, way); });
                   }};
}

Refusable changeLeg(const plan::Plan& plan, SwitchLeg leg, const std::string& what,
                    const std::string& merge_key) {
    if (findLeg(plan, leg.id) == nullptr) return std::unexpected(noLeg(leg.id));
    if (std::string problem = problemWith(plan, leg); !problem.empty()) return std::unexpected(problem);
    if (std::string problem = problemWith(plan, Fed{leg.luminaires, leg.plates}); !problem.empty())
        return std::unexpected(problem);
    for (const plan::WayRef& way : leg.controls)
        if (std::string problem = problemWith(plan, way); !problem.empty()) return std::unexpected(problem);
    return Command{what, merge_key, [leg = std::move(leg)](Draft& draft) {
                       if (SwitchLeg* changed = draft.change<SwitchLeg>(leg.id)) *changed = leg;
                   }};
}

Refusable removeLegs(const plan::Plan& plan, const std::vector<std::string>& leg_ids) {
    if (leg_ids.empty()) return std::unexpected("choose a leg to remove");
    for (const std::string& id : leg_ids)
        if (findLeg(plan, id) == nullptr) return std::unexpected(noLeg(id));
    const std::string what = leg_ids.size() == 1 ? legWord(*findLeg(plan, leg_ids.front()))
                                                 : fmt::format("{} legs", leg_ids.size());
    return Command{fmt::format("Remove {}", what), "", [leg_ids](Draft& draft) {
                       for (const std::string& id : leg_ids)
                           draft.remove<SwitchLeg>(id);
                   }};
}

Refusable applySwitching(const plan::Plan& plan, const Switching& switching, const std::string& what) {
    const SwitchLeg& leg = switching.leg;
    if (leg.id.empty()) return std::unexpected("the leg has no id");
    if (std::string problem = problemWith(plan, leg); !problem.empty()) return std::unexpected(problem);
    if (std::string problem = problemWith(plan, Fed{leg.luminaires, leg.plates}); !problem.empty())
        return std::unexpected(problem);
    for (const plan::Plate& plate : switching.plates)
        if (plan::findPlate(plan, plate.id) != nullptr)
            return std::unexpected(fmt::format("there is a plate '{}' already", plate.id));
    for (const Switching::ModuleType& module : switching.modules)
        if (std::string problem = problemWith(plan, plan::WayRef{module.plate, module.module, 1});
            !problem.empty())
            return std::unexpected(problem);
    return Command{what, "", [switching](Draft& draft) {
                       for (const plan::Plate& plate : switching.plates)
                           draft.add(plate);
                       for (const Switching::ModuleType& module : switching.modules)
                           if (plan::Plate* plate = draft.change<plan::Plate>(module.plate))
                               plate->modules[static_cast<std::size_t>(module.module) - 1].type = module.type;
                       takeFromOthers(draft, switching.leg.id, switching.leg.luminaires,
                                      switching.leg.controls);
                       if (SwitchLeg* changed = draft.change<SwitchLeg>(switching.leg.id))
                           *changed = switching.leg;
                       else
                           draft.add(switching.leg);
                   }};
}

} // namespace gangway::edit
