#include "checks/night.hpp"

#include "checks/point.hpp"
#include "geometry/plan_outline.hpp"

#include <algorithm>

namespace gangway::checks {

namespace {
/// Where the head lies, from the back of the bed; common practice, no source.
constexpr double kPillowMm = 430;
/// One stands so far from the side of a bed; common practice, no source.
constexpr double kBesideMm = 300;
constexpr double kStepMm = 100;
constexpr double kSameMm = 600;

bool isForLight(const switching::Way& way) {
    using Action = catalogue::WayAction;
    return way.action != Action::None && way.action != Action::Motor && way.action != Action::Heating;
}

template <class Map>
const auto& listIn(const Map& map, const std::string& key) {
    static const typename Map::mapped_type kNone;
    const auto found = map.find(key);
    return found == map.end() ? kNone : found->second;
}

/// Sides of a bed that one gets out at: -1 left, 1 right, as one faces it from its foot.
std::vector<int> sidesOf(const plan::Furniture& bed) {
    if (bed.kind != "bunk-bed") return {-1, 1};
    const auto open = std::ranges::find(bed.with, "openSide", [](const auto& value) { return value.first; });
    return {open != bed.with.end() && open->second < 0.5 ? -1 : 1};
}
} // namespace

Night::Night(const geometry::HouseIndex& house, const plan::Plan& part, const switching::Doorways& doorways,
             const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack)
    : house_(house), reach_mm_(pack.limit("darkReach").value), doorways_(doorways), net_(part, catalogue) {
    for (const plan::SwitchLeg& leg : part.legs)
        addLeg(leg);
    addOwn();
    addStairs();
}

void Night::addLeg(const plan::SwitchLeg& leg) {
    std::set<std::string> rooms;
    for (const std::string& id : leg.luminaires)
        if (const plan::Luminaire* lamp = net_.luminaire(id)) rooms.insert(lamp->room);
    if (rooms.empty()) return;
    for (const plan::WayRef& ref : leg.controls) {
        const switching::Way* way = net_.way(ref);
        if (way == nullptr || !isForLight(*way)) continue;
        const auto at = geometry::hostPoint(house_, way->plate->room, way->plate->host);
        if (!at) continue;
        const bool sensor = way->action == catalogue::WayAction::Sensor;
        sources_[way->plate->room].push_back({{at->x, at->y}, sensor, rooms, &leg});
        for (const std::string& room : rooms)
            light_.emplace(room, &leg);
    }
}

void Night::addOwn() {
    for (const plan::Luminaire& lamp : net_.plan().luminaires) {
        if (!switching::hasOwnSwitch(lamp) || !net_.legsOfLuminaire(lamp.id).empty()) continue;
        const auto at = geometry::hostPoint(house_, lamp.room, lamp.host);
        if (!at) continue;
        sources_[lamp.room].push_back({{at->x, at->y}, false, {lamp.room}, nullptr});
        light_.emplace(lamp.room, nullptr);
    }
}

void Night::addStairs() {
    const plan::Plan& plan = house_.plan();
    for (const plan::Furniture& piece : plan.furniture) {
        if (piece.kind != "stair") continue;
        const plan::Room* room = house_.room(piece.room);
        const plan::Storey* lower = room == nullptr ? nullptr : plan::findStorey(plan, room->storey);
        if (lower == nullptr) continue;
        const geometry::Rise rise = geometry::stairRise(piece);
        const std::string name = pieceName(piece);
        const auto add = [&](const plan::Room& where, plan::Vec2 at, const std::string& end) {
            stairs_[where.id].push_back({WalkEnd::Kind::Stair, piece.id, end + " of " + name, where.id, at});
        };
        add(*room, rise.foot_mm, "the foot");
        const plan::Storey* upper = geometry::storeyReached(plan, *lower, piece);
        if (upper == nullptr) continue;
        // A step on, since the flight ends before the room it leads to begins.
        const plan::Vec2 along = rise.head_mm - rise.foot_mm;
        const double run = length(along);
        const plan::Vec2 on = rise.head_mm + (run > 0 ? along * (kBesideMm / run) : plan::Vec2{});
        if (const plan::Room* there = geometry::roomAt(house_, upper->id, on)) add(*there, on, "the head");
    }
}

const std::vector<LightSource>& Night::sourcesIn(const std::string& room_id) const {
    return listIn(sources_, room_id);
}

std::optional<const plan::SwitchLeg*> Night::lightOf(const std::string& room_id) const {
    const auto found = light_.find(room_id);
    return found == light_.end() ? std::nullopt : std::optional(found->second);
}

const std::vector<const switching::Entrance*>& Night::doorsOf(const std::string& room_id) const {
    return doorways_.into(room_id);
}

const FloorGrid& Night::floorOf(const plan::Room& room) {
    auto& floor = floors_[room.id];
    if (!floor) floor = std::make_unique<FloorGrid>(house_, room);
    return *floor;
}

/// Beside the pillow, or as far down from it as furniture beside the bed asks.
void Night::addBed(const plan::Room& room, const plan::Furniture& bed, std::vector<Stop>& stops) {
    const double back = bed.size.depth_mm / 2;
    const auto house = [&](double x, double y) {
        const plan::Vec3 at = geometry::fromLocal(bed, plan::Vec3{x, y, 0});
        return plan::Vec2{at.x, at.y};
    };
    const std::vector<int> sides = sidesOf(bed);
    for (const int side : sides)
        for (double y = back - kPillowMm; y >= -back; y -= kStepMm) {
            const plan::Vec2 at = house(side * (bed.size.width_mm / 2 + kBesideMm), y);
            if (!floorOf(room).isFree(at)) continue;
            const std::string name = pieceName(bed) + (sides.size() < 2 ? ""
                                                       : side < 0       ? ", left side"
                                                                        : ", right side");
            const double pillow = sides.size() < 2 ? 0 : side * bed.size.width_mm / 4;
            stops.push_back({{WalkEnd::Kind::Bed, bed.id, name, room.id, at},
                             nullptr,
                             {house(pillow, back - kPillowMm)}});
            break;
        }
}

std::vector<Stop> Night::stopsOf(const plan::Room& room) {
    std::vector<Stop> stops;
    for (const switching::Entrance* door : doorsOf(room.id))
        stops.push_back({{WalkEnd::Kind::Door, door->opening->id, switching::openingName(*door->opening),
                          room.id, door->middle_mm},
                         door,
                         {}});
    // A stair that ends at an opening without a room behind is that opening.
    for (const WalkEnd& end : listIn(stairs_, room.id))
        if (std::ranges::none_of(doorsOf(room.id), [&](const switching::Entrance* door) {
                return door->from.empty() && length(door->middle_mm - end.at_mm) <= kSameMm;
            }))
            stops.push_back({end, nullptr, {}});
    for (const plan::Furniture* piece : house_.furnitureIn(room.id))
        if (piece->kind == "bed" || piece->kind == "bunk-bed") addBed(room, *piece, stops);
    for (const plan::Furniture* piece : house_.furnitureIn(room.id))
        if (piece->kind == "wc")
            stops.push_back(
                {{WalkEnd::Kind::Wc, piece->id, pieceName(*piece), room.id, piece->at_mm}, nullptr, {}});
    return stops;
}

} // namespace gangway::checks
