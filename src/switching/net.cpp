#include "switching/net.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace gangway::switching {

namespace {

template <class T>
void indexById(const std::vector<T>& list, std::unordered_map<std::string_view, const T*>& index) {
    index.reserve(list.size());
    for (const T& element : list)
        index.emplace(element.id, &element);
}

template <class T>
const T* found(const std::unordered_map<std::string_view, const T*>& index, std::string_view id) {
    const auto at = index.find(id);
    return at == index.end() ? nullptr : at->second;
}

/// A leg that names something twice counts once.
void addOnce(std::vector<const plan::SwitchLeg*>& legs, const plan::SwitchLeg* leg) {
    if (legs.empty() || legs.back() != leg) legs.push_back(leg);
}

/// "a" to "z" without i, l and o, then "aa" and so on.
std::string letterNumber(std::size_t number) {
    static constexpr std::string_view kLetters = "abcdefghjkmnpqrstuvwxyz";
    std::string letters(1, kLetters[number % kLetters.size()]);
    for (number /= kLetters.size(); number > 0; number = (number - 1) / kLetters.size())
        letters.insert(letters.begin(), kLetters[(number - 1) % kLetters.size()]);
    return letters;
}

} // namespace

Net::Net(const plan::Plan& plan, const catalogue::Catalogue& catalogue)
    : plan_(&plan), catalogue_(&catalogue), marks_(legMarks(plan)) {
    indexById(plan.legs, legs_);
    indexById(plan.plates, plates_);
    indexById(plan.luminaires, luminaires_);
    indexById(plan.rooms, rooms_);
    std::unordered_map<std::string_view, const catalogue::ModuleType*> modules;
    for (const auto& module : catalogue.modules)
        modules.emplace(module.id, &module);
    std::unordered_map<std::string_view, const catalogue::PlateFormat*> formats;
    for (const auto& format : catalogue.formats)
        formats.emplace(format.id, &format);
    for (const plan::Plate& plate : plan.plates) {
        const std::size_t first = ways_.size();
        const auto format = formats.find(plate.format);
        for (std::size_t m = 0; m < plate.modules.size(); ++m) {
            const auto type = modules.find(plate.modules[m].type);
            if (type == modules.end() || type->second->ways == 0) continue;
            const catalogue::ModuleType& made =
                format == formats.end() ? *type->second : moduleFor(*type->second, *format->second);
            for (int way = 1; way <= made.ways; ++way)
                ways_.push_back({.ref = {plate.id, static_cast<int>(m) + 1, way},
                                 .plate = &plate,
                                 .module = &made,
                                 .action = made.action,
                                 .dimmer = made.kind == catalogue::ModuleKind::Dimmer,
                                 .legs = {}});
        }
        if (ways_.size() > first) plate_ways_.emplace(plate.id, std::pair{first, ways_.size() - first});
    }
    for (const plan::SwitchLeg& leg : plan.legs) {
        for (const plan::WayRef& ref : leg.controls)
            if (const Way* way = this->way(ref))
                addOnce(ways_[static_cast<std::size_t>(way - ways_.data())].legs, &leg);
        for (const std::string& id : leg.luminaires)
            addOnce(lamp_legs_[id], &leg);
        for (const std::string& id : leg.plates)
            addOnce(plate_legs_[id], &leg);
    }
}

std::span<const Way> Net::waysOf(std::string_view plate_id) const {
    const auto at = plate_ways_.find(plate_id);
    if (at == plate_ways_.end()) return {};
    return std::span(ways_).subspan(at->second.first, at->second.second);
}

const Way* Net::way(const plan::WayRef& ref) const {
    const auto ways = waysOf(ref.plate);
    const auto at = std::ranges::find_if(
        ways, [&](const Way& way) { return way.ref.module == ref.module && way.ref.way == ref.way; });
    return at == ways.end() ? nullptr : &*at;
}

const plan::SwitchLeg* Net::leg(std::string_view id) const {
    return found(legs_, id);
}
const plan::Plate* Net::plate(std::string_view id) const {
    return found(plates_, id);
}
const plan::Luminaire* Net::luminaire(std::string_view id) const {
    return found(luminaires_, id);
}
const plan::Room* Net::room(std::string_view id) const {
    return found(rooms_, id);
}

std::span<const plan::SwitchLeg* const> Net::legsOfLuminaire(std::string_view id) const {
    const auto at = lamp_legs_.find(id);
    if (at == lamp_legs_.end()) return {};
    return at->second;
}

std::span<const plan::SwitchLeg* const> Net::legsOfPlate(std::string_view id) const {
    const auto at = plate_legs_.find(id);
    if (at == plate_legs_.end()) return {};
    return at->second;
}

bool Net::dimmed(const plan::SwitchLeg& leg) const {
    return std::ranges::any_of(leg.controls, [&](const plan::WayRef& ref) {
        const Way* way = this->way(ref);
        return way != nullptr && way->dimmer;
    });
}

LoadWindow Net::loadWindow(const Way& way) const {
    const plan::Module& module = way.plate->modules[static_cast<std::size_t>(way.ref.module) - 1];
    return {module.min_load_w.value_or(way.module->min_load_w),
            module.max_load_w.value_or(way.module->max_load_w)};
}

bool hasOwnSwitch(const plan::Luminaire& luminaire) {
    using Kind = plan::Luminaire::Kind;
    return luminaire.own_switch || luminaire.kind == Kind::Floor || luminaire.kind == Kind::Table;
}

std::string wayName(const Net& net, const plan::WayRef& ref) {
    const plan::Plate* plate = net.plate(ref.plate);
    const std::string& name = plate == nullptr || plate->tag.empty() ? ref.plate : plate->tag;
    const auto ways = net.waysOf(ref.plate);
    if (ways.size() < 2) return name;
    const Way* way = net.way(ref);
    if (way == nullptr) return fmt::format("{}, module {}, way {}", name, ref.module, ref.way);
    return fmt::format("{}, way {}", name, way - ways.data() + 1);
}

std::string legName(const plan::SwitchLeg& leg) {
    if (leg.letter.empty()) return leg.name.empty() ? leg.id : leg.name;
    return leg.name.empty() ? leg.letter : fmt::format("{} {}", leg.letter, leg.name);
}

std::map<std::string, std::string> legMarks(const plan::Plan& plan) {
    std::set<std::string> taken;
    for (const plan::SwitchLeg& leg : plan.legs)
        taken.insert(leg.letter);
    std::map<std::string, std::string> marks;
    std::size_t next = 0;
    for (const plan::SwitchLeg& leg : plan.legs) {
        std::string mark = leg.letter;
        while (mark.empty() || (leg.letter.empty() && taken.contains(mark)))
            mark = letterNumber(next++);
        marks.emplace(leg.id, std::move(mark));
    }
    return marks;
}

const std::string& legMark(const Net& net, const plan::SwitchLeg& leg) {
    const auto at = net.marks().find(leg.id);
    return at == net.marks().end() ? leg.id : at->second;
}

} // namespace gangway::switching
