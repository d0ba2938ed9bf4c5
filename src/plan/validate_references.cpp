// What devices, anchors, switch legs and agreements point at.
#include "plan/validation.hpp"

#include <algorithm>

namespace gangway::plan {

namespace {

template <class T>
bool holds(const std::vector<T>& list, const std::string& id) {
    return std::ranges::find(list, id, &T::id) != list.end();
}

template <class T>
void addIds(const std::vector<T>& list, std::vector<std::string>& ids) {
    for (const T& element : list)
        ids.push_back(element.id);
}

void validateAnchors(Validation& v) {
    const Plan& plan = v.plan();
    for (std::size_t i = 0; i < plan.plates.size(); ++i) {
        const Plate& plate = plan.plates[i];
        if (plate.anchor.empty() || !v.sound("plates", i) || v.furniture(plate.anchor) != nullptr) continue;
        if (holds(plan.devices, plate.anchor) || holds(plan.openings, plate.anchor) ||
            holds(plan.luminaires, plate.anchor))
            continue;
        std::vector<std::string> known;
        addIds(plan.furniture, known);
        addIds(plan.devices, known);
        const std::string near = nearestWord(plate.anchor, known);
        v.error(fmt::format("/plates/{}/anchor", i),
                fmt::format("plate '{}': there is no furniture or device '{}' to belong to; {}", plate.id,
                            plate.anchor,
                            near.empty() ? "name one that is there, or leave 'anchor' out"
                                         : fmt::format("did you mean '{}'?", near)));
    }
}

/// Only said, not refused: the plate stands where it stands, it will just not follow.
void validateKept(Validation& v, const KeptDistance& kept, bool along, const std::string& pointer,
                  const std::string& subject) {
    using From = KeptDistance::From;
    using Edge = KeptDistance::Edge;
    const Plan& plan = v.plan();
    const bool corner = kept.from == From::LeftCorner || kept.from == From::RightCorner;
    if (along ? kept.from == From::Floor : corner) {
        v.warning(pointer + "/from", along ? fmt::format("{}: a distance along the wall can't be kept from "
                                                         "the floor; it does not follow anything",
                                                         subject)
                                           : fmt::format("{}: a height can't be kept from a corner; it does "
                                                         "not follow anything",
                                                         subject));
        return;
    }
    if (corner || kept.from == From::Floor) return;
    const bool upright = kept.edge == Edge::Top || kept.edge == Edge::Bottom;
    if (kept.edge != Edge::Centre && upright == along)
        v.warning(pointer + "/edge", fmt::format("{}: that edge has no place {}; it does not follow anything",
                                                 subject, along ? "along the wall" : "in height"));
    const bool there = kept.from == From::Opening     ? holds(plan.openings, kept.id)
                       : kept.from == From::Furniture ? v.furniture(kept.id) != nullptr
                                                      : v.plate(kept.id) != nullptr;
    if (!there)
        v.warning(pointer + "/id",
                  fmt::format("{}: '{}', which its distance is kept from, is not in the plan; "
                              "cut the link or name another",
                              subject, kept.id));
}

void validateKeptDistances(Validation& v) {
    const Plan& plan = v.plan();
    for (std::size_t i = 0; i < plan.plates.size(); ++i) {
        const Plate& plate = plan.plates[i];
        if (!v.sound("plates", i)) continue;
        const std::string subject = fmt::format("plate '{}'", plate.id);
        if (plate.kept_along)
            validateKept(v, *plate.kept_along, true, fmt::format("/plates/{}/keptAlong", i), subject);
        if (plate.kept_height)
            validateKept(v, *plate.kept_height, false, fmt::format("/plates/{}/keptHeight", i), subject);
    }
}

void validateDevices(Validation& v) {
    const Plan& plan = v.plan();
    for (std::size_t i = 0; i < plan.devices.size(); ++i) {
        const Device& device = plan.devices[i];
        if (!v.sound("devices", i)) continue;
        const std::string pointer = fmt::format("/devices/{}", i);
        const std::string subject = fmt::format("device '{}'", device.id);
        v.refers(plan.rooms, "rooms", device.room, pointer + "/room", subject, "room");
        if (!device.furniture.empty())
            v.refers(plan.furniture, "furniture", device.furniture, pointer + "/furniture", subject,
                     "furniture");
        if (!device.plate.empty())
            v.refers(plan.plates, "plates", device.plate, pointer + "/plate", subject, "plate");
    }
}

void validateWay(Validation& v, const WayRef& way, const std::string& pointer, const std::string& subject) {
    if (!v.refers(v.plan().plates, "plates", way.plate, pointer + "/plate", subject, "plate")) return;
    const Plate* plate = v.plate(way.plate);
    const auto index = static_cast<std::size_t>(plate - v.plan().plates.data());
    if (!v.sound("plates", index)) return;
    const auto count = static_cast<int>(plate->modules.size());
    if (way.module >= 1 && way.module <= count) return;
    v.error(pointer + "/module",
            fmt::format("{}: plate '{}' has no module {}; {}", subject, way.plate, way.module,
                        count == 0 ? std::string("it has none, so add a switch to it or remove this control")
                        : count == 1 ? std::string("its only module is 1")
                                     : fmt::format("give 1 to {}", count)));
}

void validateLegs(Validation& v) {
    const Plan& plan = v.plan();
    for (std::size_t i = 0; i < plan.legs.size(); ++i) {
        const SwitchLeg& leg = plan.legs[i];
        if (!v.sound("legs", i)) continue;
        const std::string pointer = fmt::format("/legs/{}", i);
        const std::string subject = fmt::format("leg '{}'", leg.id);
        for (std::size_t k = 0; k < leg.controls.size(); ++k)
            validateWay(v, leg.controls[k], fmt::format("{}/controls/{}", pointer, k), subject);
        for (std::size_t k = 0; k < leg.luminaires.size(); ++k)
            v.refers(plan.luminaires, "luminaires", leg.luminaires[k],
                     fmt::format("{}/luminaires/{}", pointer, k), subject, "luminaire");
        for (std::size_t k = 0; k < leg.plates.size(); ++k)
            v.refers(plan.plates, "plates", leg.plates[k], fmt::format("{}/plates/{}", pointer, k), subject,
                     "plate");
    }
}

void validateScenes(Validation& v) {
    const Plan& plan = v.plan();
    for (std::size_t i = 0; i < plan.scenes.size(); ++i)
        for (std::size_t k = 0; v.sound("scenes", i) && k < plan.scenes[i].levels.size(); ++k)
            v.refers(plan.legs, "legs", plan.scenes[i].levels[k].leg,
                     fmt::format("/scenes/{}/levels/{}/leg", i, k),
                     fmt::format("scene '{}'", plan.scenes[i].id), "leg");
}

/// An answer outlives its plate: it was given, and deleting the plate does not make it ungiven.
void validateAgreements(Validation& v) {
    const std::vector<Agreement>& list = v.plan().agreements;
    for (std::size_t i = 0; i < list.size(); ++i)
        if (v.sound("agreements", i) && v.plate(list[i].plate) == nullptr)
            v.warning(
                fmt::format("/agreements/{}/plate", i),
                fmt::format("agreement: plate '{}' is no longer there; the answer is kept", list[i].plate));
}

} // namespace

void validateReferences(Validation& v) {
    validateAnchors(v);
    validateKeptDistances(v);
    validateDevices(v);
    validateLegs(v);
    validateScenes(v);
    validateAgreements(v);
}

} // namespace gangway::plan
