#include "cli/shot_legs.hpp"

#include "cli/commands.hpp"
#include "geometry/house_index.hpp"
#include "scene/leg_route.hpp"
#include "scene/scene.hpp"
#include "switching/lights.hpp"

#include <algorithm>
#include <cctype>
#include <set>
#include <sstream>

namespace gangway::cli {

namespace {
using Legs = std::vector<const plan::SwitchLeg*>;
using Shots = std::expected<std::vector<LegShot>, std::string>;

Legs legsNamed(const switching::Net& net, const std::string& word) {
    Legs found;
    for (const auto& leg : net.plan().legs)
        if (leg.id == word || switching::legMark(net, leg) == word) found.push_back(&leg);
    return found;
}

std::expected<Legs, std::string> legsListed(const switching::Net& net, const std::string& list) {
    Legs legs;
    std::istringstream stream(list);
    for (std::string word; std::getline(stream, word, ',');) {
        if (word.empty()) continue;
        const Legs found = legsNamed(net, word);
        if (found.empty()) {
            std::vector<std::string> known;
            for (const auto& leg : net.plan().legs)
                known.push_back(switching::legMark(net, leg));
            return std::unexpected(noSuch("switch leg", word, known));
        }
        legs.insert(legs.end(), found.begin(), found.end());
    }
    if (legs.empty())
        return std::unexpected("--legs names no leg; give on, off, each, or marks such as L1,L2");
    return legs;
}

/// Whether a leg has a lamp, an outlet or a switch at the place.
bool isAt(const switching::Net& net, const plan::SwitchLeg& leg, const LegPlace& place) {
    const auto at = [&](const std::string& room_id) {
        const plan::Room* room = net.room(room_id);
        if (room == nullptr) return false;
        return place.room.empty() ? place.storey.empty() || room->storey == place.storey
                                  : room->id == place.room;
    };
    const auto plateAt = [&](const std::string& id) {
        const plan::Plate* plate = net.plate(id);
        return plate != nullptr && at(plate->room);
    };
    return std::ranges::any_of(leg.luminaires,
                               [&](const std::string& id) {
                                   const plan::Luminaire* lamp = net.luminaire(id);
                                   return lamp != nullptr && at(lamp->room);
                               }) ||
           std::ranges::any_of(leg.plates, plateAt) ||
           std::ranges::any_of(leg.controls, plateAt, &plan::WayRef::plate);
}

LegShot shotOf(const switching::Net& net, const geometry::HouseIndex& house, const Legs& legs) {
    switching::Lights lights;
    LegShot shot;
    for (const plan::SwitchLeg* leg : legs) {
        lights.set(net, leg->id, 100);
        for (const scene::Route& route : scene::legRoute(house, *leg)) {
            render::Line line = render::routeLine();
            for (const plan::Vec3 point : route)
                line.points_m.push_back(scene::toScene(point));
            shot.lines.push_back(std::move(line));
        }
    }
    shot.light_levels = lights.luminaires(net);
    return shot;
}

/// A mark as part of a file's name, different from those used already.
std::string nameOf(const switching::Net& net, const plan::SwitchLeg& leg, std::set<std::string>& used) {
    std::string name = switching::legMark(net, leg);
    std::ranges::replace_if(
        name, [](unsigned char c) { return std::isalnum(c) == 0 && c != '-' && c < 128; }, '-');
    for (int i = 2; used.contains(name); ++i)
        name = switching::legMark(net, leg) + "-" + std::to_string(i);
    used.insert(name);
    return name;
}

Shots eachLeg(const switching::Net& net, const geometry::HouseIndex& house, const LegPlace& place) {
    std::vector<LegShot> shots;
    std::set<std::string> used;
    for (const auto& leg : net.plan().legs) {
        if (!isAt(net, leg, place)) continue;
        shots.push_back(shotOf(net, house, {&leg}));
        shots.back().mark = nameOf(net, leg, used);
    }
    if (shots.empty()) return std::unexpected("no switch leg has a lamp, an outlet or a switch here");
    return shots;
}
} // namespace

Shots legShots(const plan::Plan& plan, const catalogue::Catalogue& catalogue, const std::string& word,
               const LegPlace& place) {
    if (word.empty() || word == "on") return std::vector<LegShot>(1);
    const switching::Net net(plan, catalogue);
    const geometry::HouseIndex house(plan);
    if (word == "each") return eachLeg(net, house, place);
    if (word == "off") return std::vector<LegShot>{shotOf(net, house, {})};
    const auto legs = legsListed(net, word);
    if (!legs) return std::unexpected(legs.error());
    return std::vector<LegShot>{shotOf(net, house, *legs)};
}

} // namespace gangway::cli
