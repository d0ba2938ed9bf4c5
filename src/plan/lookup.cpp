#include "plan/plan.hpp"

#include <algorithm>

namespace gangway::plan {

namespace {
template <class T>
const T* byId(const std::vector<T>& list, const std::string& id) {
    const auto found = std::ranges::find(list, id, &T::id);
    return found == list.end() ? nullptr : &*found;
}
} // namespace

const Storey* findStorey(const Plan& plan, const std::string& id) {
    return byId(plan.storeys, id);
}
const Room* findRoom(const Plan& plan, const std::string& id) {
    return byId(plan.rooms, id);
}
const Furniture* findFurniture(const Plan& plan, const std::string& id) {
    return byId(plan.furniture, id);
}
const Plate* findPlate(const Plan& plan, const std::string& id) {
    return byId(plan.plates, id);
}
const Luminaire* findLuminaire(const Plan& plan, const std::string& id) {
    return byId(plan.luminaires, id);
}
const Layer* findLayer(const Plan& plan, const std::string& id) {
    return byId(plan.layers, id);
}

const Plate* findPlateByName(const Plan& plan, const std::string& name) {
    if (const Plate* plate = findPlate(plan, name)) return plate;
    if (name.empty()) return nullptr;
    const auto found = std::ranges::find(plan.plates, name, &Plate::tag);
    return found == plan.plates.end() ? nullptr : &*found;
}

std::optional<std::size_t> wallIndex(const Room& room, const std::string& wall_id) {
    const auto found = std::ranges::find(room.walls, wall_id, &Wall::id);
    if (found == room.walls.end()) return std::nullopt;
    return static_cast<std::size_t>(found - room.walls.begin());
}

// Answers are only ever appended, so the last in the list is the latest; clocks of two computers may differ.
const Agreement* latestAgreement(const Plan& plan, const std::string& plate_id) {
    const auto& list = plan.agreements;
    const auto found = std::find_if(list.rbegin(), list.rend(),
                                    [&](const Agreement& agreement) { return agreement.plate == plate_id; });
    return found == list.rend() ? nullptr : &*found;
}

} // namespace gangway::plan
