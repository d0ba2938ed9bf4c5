// What every command ends with: following, forgetting what is gone, staying on walls.
#include "edit/kept_distances.hpp"
#include "edit/room_outline.hpp"
#include "geometry/frames.hpp"

#include <algorithm>
#include <cmath>
#include <unordered_map>
#include <unordered_set>

namespace gangway::edit {
namespace {

using From = plan::KeptDistance::From;
using Ids = std::unordered_set<std::string>;

constexpr double kStill_mm = 1e-9; ///< arithmetic's own play; a plate that stands stays to the bit

template <class T>
Ids idsOf(const std::vector<T>& list) {
    Ids ids;
    for (const T& element : list)
        ids.insert(element.id);
    return ids;
}

/// Removes from the end, so that indices before stay what they are.
template <class T, class Gone>
void removeWhere(Draft& draft, Gone gone) {
    for (std::size_t i = List<T>::of(draft.plan()).size(); i-- > 0;)
        if (gone(List<T>::of(draft.plan())[i])) draft.remove<T>(i);
}
template <class T, class Wrong, class Mend>
void mendWhere(Draft& draft, Wrong wrong, Mend mend) {
    for (std::size_t i = 0; i < List<T>::of(draft.plan()).size(); ++i)
        if (wrong(List<T>::of(draft.plan())[i])) mend(draft.change<T>(i));
}

/// What stood in a room or on a piece that is gone goes with it.
void removeHomeless(Draft& draft) {
    const plan::Plan& plan = draft.plan();
    const Ids rooms = idsOf(plan.rooms);
    removeWhere<plan::Opening>(draft, [&](const auto& o) { return !rooms.contains(o.room); });
    removeWhere<plan::Furniture>(draft, [&](const auto& f) { return !rooms.contains(f.room); });
    const Ids pieces = idsOf(plan.furniture);
    const auto homeless = [&](const auto& mounted) {
        if (!rooms.contains(mounted.room)) return true;
        return mounted.host.kind == plan::Host::Kind::Furniture && !pieces.contains(mounted.host.furniture);
    };
    removeWhere<plan::Plate>(draft, homeless);
    removeWhere<plan::Luminaire>(draft, homeless);
    removeWhere<plan::Device>(draft, [&](const auto& d) { return !rooms.contains(d.room); });
    mendWhere<plan::Opening>(
        draft, [&](const auto& o) { return !o.joins.empty() && !rooms.contains(o.joins); },
        [](plan::Opening& o) { o.joins.clear(); });
}

bool refersWrongly(const plan::KeptDistance& kept, const Ids& openings, const Ids& pieces,
                   const Ids& plates) {
    return (kept.from == From::Opening && !openings.contains(kept.id)) ||
           (kept.from == From::Furniture && !pieces.contains(kept.id)) ||
           (kept.from == From::Plate && !plates.contains(kept.id));
}

void cutLooseEnds(Draft& draft) {
    const plan::Plan& plan = draft.plan();
    const Ids openings = idsOf(plan.openings);
    const Ids pieces = idsOf(plan.furniture);
    const Ids plates = idsOf(plan.plates);
    const Ids devices = idsOf(plan.devices);
    const Ids lamps = idsOf(plan.luminaires);
    const auto loose = [&](const std::optional<plan::KeptDistance>& kept) {
        return kept && refersWrongly(*kept, openings, pieces, plates);
    };
    const auto lostAnchor = [&](const plan::Plate& p) {
        return !p.anchor.empty() && !pieces.contains(p.anchor) && !devices.contains(p.anchor) &&
               !openings.contains(p.anchor) && !lamps.contains(p.anchor);
    };
    mendWhere<plan::Plate>(
        draft, [&](const auto& p) { return loose(p.kept_along) || loose(p.kept_height) || lostAnchor(p); },
        [&](plan::Plate& p) {
            if (loose(p.kept_along)) p.kept_along.reset();
            if (loose(p.kept_height)) p.kept_height.reset();
            if (lostAnchor(p)) p.anchor.clear();
        });
    const auto lostPiece = [&](const auto& d) {
        return !d.furniture.empty() && !pieces.contains(d.furniture);
    };
    const auto lostPlate = [&](const auto& d) { return !d.plate.empty() && !plates.contains(d.plate); };
    mendWhere<plan::Device>(
        draft, [&](const auto& d) { return lostPiece(d) || lostPlate(d); },
        [&](plan::Device& d) {
            if (lostPiece(d)) d.furniture.clear();
            if (lostPlate(d)) d.plate.clear();
        });
}

/// Light scenes forget legs that are gone.
void mendScenes(Draft& draft) {
    if (draft.plan().scenes.empty() || (draft.touched().legs.empty() && !draft.touched().lighting)) return;
    const Ids legs = idsOf(draft.plan().legs);
    const auto lost = [&](const plan::LightScene::Level& level) { return !legs.contains(level.leg); };
    mendWhere<plan::LightScene>(
        draft, [&](const auto& scene) { return std::ranges::any_of(scene.levels, lost); },
        [&](plan::LightScene& scene) { std::erase_if(scene.levels, lost); });
}

/// Legs forget ways and lamps that are gone; a leg with nothing left at either end goes too. Without a change
/// of structure only the ways of touched plates can be gone.
void mendLegs(Draft& draft, bool structure) {
    const plan::Plan& plan = draft.plan();
    std::unordered_map<std::string, int> modules; // of the plates that count
    for (const auto& plate : plan.plates)
        if (structure || draft.touched().plates.contains(plate.id))
            modules.emplace(plate.id, static_cast<int>(plate.modules.size()));
    const Ids lamps = structure ? idsOf(plan.luminaires) : Ids{};
    const auto lostWay = [&](const plan::WayRef& way) {
        const auto found = modules.find(way.plate);
        return found == modules.end() ? structure : way.module > found->second;
    };
    const auto lostLamp = [&](const std::string& id) { return structure && !lamps.contains(id); };
    const auto lostPlate = [&](const std::string& id) { return structure && !modules.contains(id); };
    mendWhere<plan::SwitchLeg>(
        draft,
        [&](const auto& leg) {
            return std::ranges::any_of(leg.controls, lostWay) ||
                   std::ranges::any_of(leg.luminaires, lostLamp) ||
                   std::ranges::any_of(leg.plates, lostPlate);
        },
        [&](plan::SwitchLeg& leg) {
            std::erase_if(leg.controls, lostWay);
            std::erase_if(leg.luminaires, lostLamp);
            std::erase_if(leg.plates, lostPlate);
        });
    const auto& touched = draft.touched().legs;
    removeWhere<plan::SwitchLeg>(draft, [&](const auto& leg) {
        return touched.contains(leg.id) && leg.controls.empty() && leg.luminaires.empty() &&
               leg.plates.empty();
    });
    mendScenes(draft);
}

/// A place in a floor or ceiling that is still in the room.
plan::Host inRoom(const plan::Room& room, plan::Host host) {
    const plan::Vec2 low = detail::southWest(room);
    const plan::Vec2 asked{host.u_mm, host.v_mm};
    const plan::Vec2 at = detail::nearestInside(room, low + asked) - low;
    if (plan::length(at - asked) < kStill_mm) return host;
    host.u_mm = at.x;
    host.v_mm = at.y;
    return host;
}

/// A place on a room's surfaces that is still on them.
plan::Host onHost(const plan::Plan& plan, const std::string& room_id, plan::Host host) {
    const plan::Room* room = plan::findRoom(plan, room_id);
    if (room == nullptr || host.kind == plan::Host::Kind::Furniture) return host;
    if (host.kind != plan::Host::Kind::Wall) return inRoom(*room, host);
    const auto wall = plan::wallIndex(*room, host.wall);
    if (!wall) return host;
    const geometry::WallEdge edge = geometry::wallEdge(*room, *wall);
    const double length = plan::length(edge.to_mm - edge.from_mm);
    host.u_mm = std::clamp(host.u_mm, 0.0, length);
    const double part = length > 0 ? host.u_mm / length : 0;
    const double ceiling =
        geometry::ceilingHeightAt(*room, edge.from_mm + (edge.to_mm - edge.from_mm) * part);
    host.v_mm = std::clamp(host.v_mm, 0.0, std::max(0.0, ceiling));
    return host;
}

template <class T>
void stayOnHosts(Draft& draft, bool all, const std::set<std::string>& touched) {
    const auto& list = List<T>::of(draft.plan());
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (!all && !touched.contains(list[i].id)) continue;
        const plan::Host host = onHost(draft.plan(), list[i].room, list[i].host);
        if (!(host == list[i].host)) draft.change<T>(i).host = host;
    }
}

/// Where a plate is by what it is kept from.
plan::Host followed(const plan::Plan& plan, const plan::Plate& plate) {
    plan::Host host = plate.host;
    if (plate.kept_along)
        if (const auto edge = keptEdge(plan, plate, *plate.kept_along, Along::U))
            host.u_mm = *edge + plate.kept_along->distance_mm;
    if (plate.kept_height)
        if (const auto edge = keptEdge(plan, plate, *plate.kept_height, Along::V))
            host.v_mm = *edge + plate.kept_height->distance_mm;
    return onHost(plan, plate.room, host);
}

bool keptFromOneOf(const plan::Plate& plate, const std::set<std::string>& plates) {
    const auto is = [&](const std::optional<plan::KeptDistance>& kept) {
        return kept && kept->from == From::Plate && plates.contains(kept->id);
    };
    return is(plate.kept_along) || is(plate.kept_height);
}

/// Chains of plates are followed link by link; more links than this are not followed to the end in one go.
constexpr int kLongestChain = 64;

void follow(Draft& draft, bool all) {
    std::set<std::string> moved = draft.touched().plates;
    for (int link = 0; link < kLongestChain && (all || !moved.empty()); ++link) {
        std::set<std::string> next;
        for (std::size_t i = 0; i < draft.plan().plates.size(); ++i) {
            const plan::Plate& plate = draft.plan().plates[i];
            if (!plate.kept_along && !plate.kept_height) continue;
            if (!all && !keptFromOneOf(plate, moved)) continue;
            const plan::Host host = followed(draft.plan(), plate);
            if (std::abs(host.u_mm - plate.host.u_mm) < kStill_mm &&
                std::abs(host.v_mm - plate.host.v_mm) < kStill_mm)
                continue;
            next.insert(plate.id);
            draft.change<plan::Plate>(i).host = host;
        }
        moved = std::move(next);
        all = false;
    }
}

} // namespace

void settle(Draft& draft) {
    const bool structure = draft.structureTouched();
    if (structure) {
        removeHomeless(draft);
        cutLooseEnds(draft);
    }
    if (structure || !draft.touched().plates.empty() || !draft.touched().legs.empty() ||
        draft.touched().lighting)
        mendLegs(draft, structure);
    stayOnHosts<plan::Plate>(draft, structure, draft.touched().plates);
    stayOnHosts<plan::Luminaire>(draft, structure, draft.touched().luminaires);
    if (structure || !draft.touched().plates.empty()) follow(draft, structure);
}

} // namespace gangway::edit
