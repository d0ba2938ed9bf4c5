#include "app/finding_place.hpp"

#include "geometry/furniture.hpp"
#include "geometry/walls.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gangway::app {

namespace {
using plan::Vec2;
using plan::Vec3;
using Kind = FindingBody::Kind;

constexpr double kSame_mm = 1;         ///< a gap this near to the finding's value is what was measured
constexpr double kLampHeight_mm = 200; ///< how much of a lamp below its ceiling is outlined

std::vector<Vec3> prism(const std::vector<Vec2>& outline, double low_mm, double high_mm) {
    std::vector<Vec3> corners;
    for (const double z : {low_mm, high_mm})
        for (const Vec2 at : outline)
            corners.push_back({at.x, at.y, z});
    return corners;
}

std::vector<Vec3> boxAround(Vec3 at, double half_mm, double low_mm, double high_mm) {
    return prism({{at.x - half_mm, at.y - half_mm},
                  {at.x - half_mm, at.y + half_mm},
                  {at.x + half_mm, at.y + half_mm},
                  {at.x + half_mm, at.y - half_mm}},
                 low_mm, high_mm);
}

} // namespace

std::vector<Vec3> lampCorners(const geometry::HouseIndex& house, const plan::Luminaire& lamp) {
    const auto at = geometry::hostPoint(house, lamp.room, lamp.host);
    if (!at) return {};
    const double half = (lamp.size_mm > 0 ? lamp.size_mm : 200) / 2;
    if (lamp.kind == plan::Luminaire::Kind::Linear) {
        const double turn = lamp.turn_deg * 3.14159265358979 / 180;
        const Vec2 along{std::cos(turn) * half, std::sin(turn) * half};
        const Vec2 across{-std::sin(turn) * 40, std::cos(turn) * 40};
        const Vec2 c{at->x, at->y};
        return prism({c - along - across, c - along + across, c + along + across, c + along - across},
                     at->z - 80, at->z);
    }
    if (lamp.host.kind == plan::Host::Kind::Ceiling) {
        const double under = at->z - (lamp.drop_mm > 0 ? lamp.drop_mm : kLampHeight_mm / 4);
        const double top = lamp.drop_mm > 0 ? under + kLampHeight_mm : at->z;
        return boxAround(*at, half, under, std::min(top, at->z));
    }
    return boxAround(*at, half, at->z - half, at->z + half);
}

namespace {
std::vector<Vec3> holeCorners(const geometry::HouseIndex& house, const plan::Opening& opening) {
    const plan::Room* room = house.room(opening.room);
    const auto wall = room == nullptr ? std::nullopt : plan::wallIndex(*room, opening.wall);
    if (!wall) return {};
    const auto frame = geometry::wallFrame(*room, *wall);
    std::vector<Vec3> corners;
    for (const double u : {opening.left_mm, opening.left_mm + opening.width_mm})
        for (const double v : {opening.sill_mm, opening.sill_mm + opening.height_mm})
            corners.push_back(geometry::toHouse(frame, {u, v, 0}));
    return corners;
}

const plan::Opening* openingOf(const plan::Plan& plan, const std::string& id) {
    const auto at = std::ranges::find(plan.openings, id, &plan::Opening::id);
    return at == plan.openings.end() ? nullptr : &*at;
}

const plan::Device* deviceOf(const plan::Plan& plan, const std::string& id) {
    const auto at = std::ranges::find(plan.devices, id, &plan::Device::id);
    return at == plan.devices.end() ? nullptr : &*at;
}

std::string storeyOf(const geometry::HouseIndex& house, const std::string& room_id) {
    const plan::Room* room = house.room(room_id);
    return room == nullptr ? std::string() : room->storey;
}

/// The leaf where the rule is about an open leaf, else the hole.
void addOpening(const geometry::HouseIndex& house, const plan::Finding& finding, const plan::Opening& opening,
                std::vector<FindingBody>& bodies) {
    if (finding.rule.find("leaf") != std::string::npos || finding.rule.find("sweep") != std::string::npos ||
        !finding.rehang.empty())
        for (const auto& leaf : geometry::doorLeaves(house, opening))
            if (!leaf.standing_mm.empty())
                bodies.push_back(
                    {Kind::Leaf, opening.id, prism(leaf.standing_mm, leaf.bottom_mm, leaf.top_mm)});
    if (bodies.empty() || bodies.back().id != opening.id)
        bodies.push_back({Kind::Opening, opening.id, holeCorners(house, opening)});
}

void addBody(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
             const plan::Finding& finding, const std::string& id, FindingPlace& place) {
    const plan::Plan& plan = house.plan();
    std::string room;
    std::vector<FindingBody> bodies;
    if (const auto* plate = plan::findPlate(plan, id)) {
        room = plate->room;
        bodies.push_back({Kind::Plate, id, plateCorners(house, catalogue, *plate)});
    } else if (const auto* lamp = plan::findLuminaire(plan, id)) {
        room = lamp->room;
        bodies.push_back({Kind::Lamp, id, lampCorners(house, *lamp)});
    } else if (const auto* piece = house.furniture(id)) {
        room = piece->room;
        bodies.push_back(
            {Kind::Furniture, id,
             prism(geometry::footprint(*piece), piece->bottom_mm, piece->bottom_mm + piece->size.height_mm)});
    } else if (const auto* opening = openingOf(plan, id)) {
        room = opening->room;
        addOpening(house, finding, *opening, bodies);
    } else if (const auto* device = deviceOf(plan, id)) {
        room = device->room;
        const Vec3 exit = device->lead_exit_mm;
        bodies.push_back({Kind::Device, id, boxAround(exit, 40, exit.z - 40, exit.z + 40)});
        if (const auto* in = house.furniture(device->furniture))
            bodies.push_back(
                {Kind::Furniture, in->id,
                 prism(geometry::footprint(*in), in->bottom_mm, in->bottom_mm + in->size.height_mm)});
    }
    std::erase_if(bodies, [](const FindingBody& body) { return body.corners_mm.empty(); });
    const std::string storey = storeyOf(house, place.room);
    if (!bodies.empty() && (storey.empty() || storeyOf(house, room) == storey))
        for (auto& body : bodies)
            place.bodies.push_back(std::move(body));
}

/// A leg or a circuit, and nothing that has a place: ids are unique only among things of one kind.
bool isOfPlan(const geometry::HouseIndex& house, const std::string& id) {
    const plan::Plan& plan = house.plan();
    if (plan::findPlate(plan, id) != nullptr || plan::findLuminaire(plan, id) != nullptr ||
        house.furniture(id) != nullptr || house.room(id) != nullptr || openingOf(plan, id) != nullptr ||
        deviceOf(plan, id) != nullptr)
        return false;
    const auto is = [&id](const auto& one) { return one.id == id; };
    return std::ranges::any_of(plan.legs, is) || std::ranges::any_of(plan.circuits, is);
}

/// Out of the surface that the first plate or lamp is on, or the front of the piece it is about.
void lookSquareAt(const geometry::HouseIndex& house, const plan::Finding& finding, FindingPlace& place) {
    const plan::Plan& plan = house.plan();
    for (const std::string& id : finding.objects) {
        const auto* plate = plan::findPlate(plan, id);
        const auto* lamp = plan::findLuminaire(plan, id);
        if (plate == nullptr && lamp == nullptr) continue;
        const auto& room = plate != nullptr ? plate->room : lamp->room;
        const auto& host = plate != nullptr ? plate->host : lamp->host;
        const bool hangs = lamp != nullptr && lamp->drop_mm > 0;
        if (const auto frame = geometry::hostFrame(house, room, host); frame && !hangs) place.away = frame->w;
        place.mounted_on = host.furniture;
        return;
    }
    for (const FindingBody& body : place.bodies)
        if (body.kind == Kind::Furniture)
            if (const auto* piece = house.furniture(body.id))
                if (const auto front = geometry::furnitureFaceFrame(*piece, "front")) {
                    place.away = front->w;
                    return;
                }
}

struct Bounds {
    Vec3 low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(),
             std::numeric_limits<double>::infinity()};
    Vec3 high = low * -1;
};

Bounds boundsIn(const geometry::Frame& frame, const FindingBody& body) {
    Bounds bounds;
    for (const Vec3 corner : body.corners_mm) {
        const Vec3 at = geometry::toFrame(frame, corner);
        bounds.low = {std::min(bounds.low.x, at.x), std::min(bounds.low.y, at.y),
                      std::min(bounds.low.z, at.z)};
        bounds.high = {std::max(bounds.high.x, at.x), std::max(bounds.high.y, at.y),
                       std::max(bounds.high.z, at.z)};
    }
    return bounds;
}

/// Between the edges of two bodies on a wall, or from the wall to what stands before it: the one that is as
/// long as what was measured, negative where they overlap.
std::optional<plan::Gap> gapBetween(const geometry::Frame& frame, const Bounds& plate, const Bounds& other,
                                    double value_mm) {
    const double u = (plate.low.x + plate.high.x) / 2;
    const double v = (plate.low.y + plate.high.y) / 2;
    const auto gap = [&](Vec3 from, Vec3 to) {
        return plan::Gap{geometry::toHouse(frame, from), geometry::toHouse(frame, to)};
    };
    const auto is = [value_mm](double measured) { return std::abs(measured - value_mm) < kSame_mm; };
    constexpr double kBefore_mm = 10; // clear of the plate's face
    if (is(other.low.x - plate.high.x))
        return gap({plate.high.x, v, kBefore_mm}, {other.low.x, v, kBefore_mm});
    if (is(plate.low.x - other.high.x))
        return gap({plate.low.x, v, kBefore_mm}, {other.high.x, v, kBefore_mm});
    if (is(other.low.y - plate.high.y))
        return gap({u, plate.high.y, kBefore_mm}, {u, other.low.y, kBefore_mm});
    if (is(plate.low.y - other.high.y))
        return gap({u, plate.low.y, kBefore_mm}, {u, other.high.y, kBefore_mm});
    if (is(other.low.z)) return gap({u, v, 0}, {u, v, other.low.z});
    return std::nullopt;
}

void findGap(const geometry::HouseIndex& house, const plan::Finding& finding, FindingPlace& place) {
    place.gap = finding.gap;
    if (place.gap || !finding.value_mm || place.bodies.empty()) return;
    const auto* plate = plan::findPlate(house.plan(), place.bodies.front().id);
    if (plate == nullptr) return;
    const auto frame = geometry::hostFrame(house, plate->room, plate->host);
    if (!frame) return;
    const Bounds own = boundsIn(*frame, place.bodies.front());
    for (std::size_t i = 1; i < place.bodies.size() && !place.gap; ++i)
        place.gap = gapBetween(*frame, own, boundsIn(*frame, place.bodies[i]), *finding.value_mm);
}
} // namespace

std::vector<Vec3> plateCorners(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                               const plan::Plate& plate) {
    const auto frame = geometry::hostFrame(house, plate.room, plate.host);
    if (!frame) return {};
    const auto made = catalogue::compose(catalogue, plate);
    std::vector<Vec3> corners;
    for (const auto& [x, y] : {std::pair{-0.5, -0.5}, {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}})
        corners.push_back(geometry::toHouse(
            *frame, {plate.host.u_mm + x * made.width_mm, plate.host.v_mm + y * made.height_mm, 0}));
    return corners;
}

std::string roomOf(const plan::Plan& plan, const plan::Finding& finding) {
    std::string through; // a door has a room on either side, a leg lamps in several: when nothing says more
    for (const std::string& id : finding.objects) {
        if (const auto* plate = plan::findPlate(plan, id)) return plate->room;
        if (const auto* lamp = plan::findLuminaire(plan, id)) return lamp->room;
        if (const auto* room = plan::findRoom(plan, id)) return room->id;
        if (const auto* piece = plan::findFurniture(plan, id)) return piece->room;
        if (const auto* device = deviceOf(plan, id)) return device->room;
        if (const auto* opening = openingOf(plan, id)) through = opening->room;
        const auto leg = std::ranges::find(plan.legs, id, &plan::SwitchLeg::id);
        if (leg == plan.legs.end() || leg->luminaires.empty() || !through.empty()) continue;
        if (const auto* lamp = plan::findLuminaire(plan, leg->luminaires.front())) through = lamp->room;
    }
    return through;
}

FindingPlace placeOf(const geometry::HouseIndex& house, const catalogue::Catalogue& catalogue,
                     const plan::Finding& finding) {
    FindingPlace place;
    place.room = roomOf(house.plan(), finding);
    place.at_mm = finding.place_mm;
    place.of_plan = finding.objects.empty() ? !finding.place_mm : isOfPlan(house, finding.objects.front());
    for (const std::string& id : finding.objects) {
        addBody(house, catalogue, finding, id, place);
        const auto leg = std::ranges::find(house.plan().legs, id, &plan::SwitchLeg::id);
        if (!place.of_plan || leg == house.plan().legs.end()) continue;
        for (const std::string& lamp : leg->luminaires)
            addBody(house, catalogue, finding, lamp, place);
    }
    lookSquareAt(house, finding, place);
    findGap(house, finding, place);
    return place;
}

} // namespace gangway::app
