#include "checks/point.hpp"

#include "catalogue/plug_shapes.hpp"
#include "checks/plinths.hpp"
#include "plan/furniture_kinds.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace gangway::checks {

namespace {
using catalogue::ModuleKind;

std::string wallKey(const std::string& room, const std::string& wall) {
    return room + '\n' + wall;
}

/// The deepest of what is plugged into a plate decides the depth; where nothing is said, a straight plug.
void takePlug(const catalogue::CountryPack& pack, Point& point) {
    if (!point.socket && !point.data) return;
    auto plug = point.socket ? plan::Device::Plug::Straight : plan::Device::Plug::Flat;
    const auto depth = [&](plan::Device::Plug kind) { return pack.limit(catalogue::plugLimit(kind)).value; };
    if (point.socket && !point.devices.empty())
        plug = std::ranges::max(point.devices, {}, [&](const plan::Device* device) {
                   return depth(device->plug);
               })->plug;
    const bool flat = plug == plan::Device::Plug::Flat;
    const bool block = plug == plan::Device::Plug::PowerBlock;
    point.plug_limit = catalogue::plugLimit(plug);
    point.plug_mm = depth(plug);
    point.plug_words = flat ? "a flat plug" : block ? "a power block" : "a straight plug";
}

/// Whether a leaf stands so that it hides a wall: more along it than away from it.
bool hides(const geometry::Leaf& leaf, const geometry::Frame& frame, double angle_deg) {
    const plan::Vec2 along = leaf.open_mm - leaf.hinge_mm;
    const double size = length(along);
    if (size == 0) return false;
    const double out = std::abs(dot(along, plan::Vec2{frame.w.x, frame.w.y})) / size;
    return out <= std::sin(angle_deg * std::numbers::pi / 180);
}

/// A leaf across a passage, with its doorway on this side of it, hides nothing from who comes in.
bool partsFromDoorway(const geometry::Leaf& leaf, plan::Vec2 place) {
    const plan::Vec2 along = leaf.open_mm - leaf.hinge_mm;
    return cross(along, leaf.closed_mm - leaf.hinge_mm) * cross(along, place - leaf.hinge_mm) <= 0;
}

void addLeaf(const geometry::Leaf& leaf, double reach_mm, WallScene& scene) {
    LeafShadow shadow{leaf.opening, {}, 1e300};
    double left = 1e300;
    double right = -1e300;
    for (const plan::Vec2 corner : leaf.standing_mm) {
        const plan::Vec3 at = geometry::toFrame(scene.frame, {corner.x, corner.y, 0});
        left = std::min(left, at.x);
        right = std::max(right, at.x);
        shadow.near_mm = std::min(shadow.near_mm, at.z);
    }
    if (leaf.standing_mm.empty() || shadow.near_mm < -1 || shadow.near_mm > reach_mm || right <= 0 ||
        left >= scene.frame.length_mm)
        return;
    const plan::Vec3 middle = geometry::toHouse(scene.frame, {(left + right) / 2, 0, 0});
    if (!partsFromDoorway(leaf, {middle.x, middle.y})) return;
    shadow.area_mm = rectangle(left, right, leaf.bottom_mm, leaf.top_mm);
    scene.leaves.push_back(std::move(shadow));
}
} // namespace

Point pointOf(const catalogue::Catalogue& catalogue, const catalogue::CountryPack& pack,
              const plan::Plate& plate, std::vector<const plan::Device*> devices) {
    Point point;
    point.devices = std::move(devices);
    point.plate = &plate;
    point.made = catalogue::compose(catalogue, plate);
    point.half_mm = {point.made.width_mm / 2, point.made.height_mm / 2};
    for (const catalogue::Gang& gang : point.made.gangs) {
        if (gang.module == nullptr) continue;
        const ModuleKind kind = gang.module->kind;
        point.socket = point.socket || (gang.module->outlets > 0 && kind == ModuleKind::Socket);
        point.control = point.control || kind == ModuleKind::Switch || kind == ModuleKind::Dimmer ||
                        kind == ModuleKind::Control;
        point.data =
            point.data || kind == ModuleKind::Data || kind == ModuleKind::Tv || kind == ModuleKind::Telephone;
    }
    takePlug(pack, point);
    return point;
}

namespace {
FactParts partsOf(const plan::Plan& plan, const std::set<std::string>* rooms) {
    FactParts parts;
    for (const plan::Plate& plate : plan.plates)
        if (rooms == nullptr || rooms->contains(plate.room)) parts.plates.push_back(&plate);
    for (const plan::Luminaire& lamp : plan.luminaires)
        parts.lamps.push_back(&lamp);
    for (const plan::Device& device : plan.devices)
        parts.devices.push_back(&device);
    for (const plan::SwitchLeg& leg : plan.legs)
        parts.legs.push_back(&leg);
    return parts;
}
} // namespace

Facts::Facts(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
             const catalogue::CountryPack& pack, std::filesystem::path base,
             const std::set<std::string>* rooms)
    : Facts(house, catalogue, pack, std::move(base), partsOf(house.plan(), rooms)) {}

Facts::Facts(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
             const catalogue::CountryPack& pack, std::filesystem::path base, const FactParts& parts)
    : house_(house), catalogue_(catalogue), pack_(pack), base_(std::move(base)) {
    std::unordered_map<std::string_view, std::vector<const plan::Device*>> devices;
    for (const plan::Device* device : parts.devices) {
        devices[device->plate].push_back(device);
        devices_in_room_[device->room].push_back(device);
    }
    points_.reserve(parts.plates.size());
    for (const plan::Plate* plate : parts.plates) {
        const auto plugged = devices.find(plate->id);
        points_.push_back(
            pointOf(catalogue, pack, *plate,
                    plugged == devices.end() ? std::vector<const plan::Device*>{} : plugged->second));
    }
    for (const Point& point : points_) {
        by_id_.emplace(point.plate->id, &point);
        in_room_[point.plate->room].push_back(&point);
        if (point.plate->host.kind == plan::Host::Kind::Wall)
            on_wall_[wallKey(point.plate->room, point.plate->host.wall)].push_back(&point);
    }
    for (const plan::Luminaire* lamp : parts.lamps) {
        lamps_in_room_[lamp->room].push_back(lamp);
        lamp_by_id_.emplace(lamp->id, lamp);
    }
    for (const plan::SwitchLeg* leg : parts.legs) {
        for (const plan::WayRef& control : leg->controls)
            ways_[control.plate].push_back({control.module, control.way, leg});
        for (const std::string& lamp : leg->luminaires)
            legs_[lamp].push_back(leg);
    }
    for (auto& [plate, ways] : ways_)
        std::ranges::stable_sort(ways, {},
                                 [](const WorkedWay& way) { return std::pair(way.module, way.way); });
}

namespace {
template <class Map>
const auto& listIn(const Map& map, const std::string& key) {
    static const typename Map::mapped_type kNone;
    const auto found = map.find(key);
    return found == map.end() ? kNone : found->second;
}
} // namespace

const std::vector<const Point*>& Facts::pointsOn(const std::string& room_id,
                                                 const std::string& wall_id) const {
    return listIn(on_wall_, wallKey(room_id, wall_id));
}

const std::vector<const Point*>& Facts::pointsIn(const std::string& room_id) const {
    return listIn(in_room_, room_id);
}

const std::vector<const plan::Luminaire*>& Facts::lampsIn(const std::string& room_id) const {
    return listIn(lamps_in_room_, room_id);
}

const std::vector<const plan::Device*>& Facts::devicesIn(const std::string& room_id) const {
    return listIn(devices_in_room_, room_id);
}

const Point* Facts::point(const std::string& plate_id) const {
    const auto found = by_id_.find(plate_id);
    return found == by_id_.end() ? nullptr : found->second;
}

const plan::Luminaire* Facts::lamp(const std::string& id) const {
    const auto found = lamp_by_id_.find(id);
    return found == lamp_by_id_.end() ? nullptr : found->second;
}

const std::vector<WorkedWay>& Facts::waysOf(const std::string& plate_id) const {
    return listIn(ways_, plate_id);
}

const std::vector<const plan::SwitchLeg*>& Facts::legsOf(const std::string& lamp_id) const {
    return listIn(legs_, lamp_id);
}

WallScene sceneOf(const Facts& facts, const plan::Room& room, std::size_t wall) {
    WallScene scene;
    scene.room = &room;
    scene.wall = wall;
    scene.frame = geometry::wallFrame(room, wall);
    scene.holes = geometry::faceHoles(facts.house(), {room.id, wall});
    scene.obstacles = geometry::obstaclesBefore(facts.house(), room.id, scene.frame,
                                                facts.limit("coverReach"), {}, facts.base());
    scene.behind_plinths = behindPlinths(facts, scene);
    scene.points = facts.pointsOn(room.id, room.walls[wall].id);
    for (const plan::Opening* door : facts.house().doorsInto(room.id))
        for (const geometry::Leaf& leaf : geometry::doorLeaves(facts.house(), *door))
            if (leaf.swings_into == room.id && hides(leaf, scene.frame, facts.limit("leafAngle")))
                addLeaf(leaf, leaf.width_mm, scene);
    return scene;
}

std::optional<WallScene> faceSceneOf(const Facts& facts, const Point& point) {
    const plan::Host& host = point.plate->host;
    const plan::Room* room = facts.house().room(point.plate->room);
    const auto frame = geometry::hostFrame(facts.house(), point.plate->room, host);
    if (host.kind != plan::Host::Kind::Furniture || room == nullptr || !frame) return std::nullopt;
    WallScene scene;
    scene.room = room;
    scene.host = facts.house().furniture(host.furniture);
    scene.frame = *frame;
    scene.obstacles = geometry::obstaclesBefore(facts.house(), room->id, *frame, facts.limit("coverReach"),
                                                host.furniture, facts.base());
    for (const Point* other : facts.pointsIn(room->id))
        if (other->plate->host.kind == host.kind && other->plate->host.furniture == host.furniture &&
            other->plate->host.face == host.face)
            scene.points.push_back(other);
    return scene;
}

std::vector<Bar> barsFor(const Facts& facts, const WallScene& scene, const Point& point) {
    std::vector<Bar> bars;
    if (scene.host != nullptr) {
        barFace(scene, bars);
        barFurniture(facts, scene, point, bars);
        barAbove(facts, scene, point, bars);
        barPlates(scene, point, bars);
        return bars;
    }
    barBuilding(facts, scene, point, bars);
    barFurniture(facts, scene, point, bars);
    barAbove(facts, scene, point, bars);
    barHeat(facts, scene, point, bars);
    barLeaves(scene, point, bars);
    barPlates(scene, point, bars);
    return bars;
}

Interval wholeWall(const WallScene& scene, const Point& point) {
    return {point.half_mm.x, scene.frame.length_mm - point.half_mm.x};
}

Interval reachedByLeads(const Facts& facts, const WallScene& scene, const Point& point) {
    Interval reached = wholeWall(scene, point);
    for (const plan::Device* device : point.devices) {
        if (device->lead_mm <= 0) continue;
        const plan::Vec3 exit = geometry::toFrame(scene.frame, device->lead_exit_mm);
        const double along = device->lead_mm - facts.limit("leadSlack") - std::abs(exit.z) -
                             std::abs(exit.y - point.plate->host.v_mm);
        reached.from_mm = std::max(reached.from_mm, exit.x - along);
        reached.to_mm = std::min(reached.to_mm, exit.x + along);
    }
    return reached;
}

std::string pieceName(const plan::Furniture& piece) {
    if (!piece.name.empty()) return piece.name;
    const plan::FurnitureKind* kind = plan::findFurnitureKind(piece.kind);
    return kind == nullptr ? piece.id : std::string(kind->name);
}

const std::string& openingName(const plan::Opening& opening) {
    return opening.name.empty() ? opening.id : opening.name;
}

} // namespace gangway::checks
