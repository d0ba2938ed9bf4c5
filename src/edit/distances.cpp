// The live numbers beside a plate.
#include "edit/snapping.hpp"
#include "edit/wall_marks.hpp"

#include <cmath>
#include <fmt/format.h>

namespace gangway::edit {
namespace {

void offer(std::optional<NearestEdge>& nearest, const std::string& name, const char* side, double edge_mm,
           double u_mm, double width_mm) {
    const double centre = u_mm - edge_mm;
    if (nearest && std::abs(nearest->centre_mm) <= std::abs(centre)) return;
    nearest = NearestEdge{fmt::format("{}, {} edge", name, side), centre, std::abs(centre) - width_mm / 2};
}

std::optional<NearestEdge> nearestEdge(const geometry::HouseIndex& house, const std::string& room_id,
                                       const plan::Host& host, double width_mm) {
    std::optional<NearestEdge> nearest;
    for (const detail::WallMark& mark : detail::wallMarks(house, room_id, host.wall)) {
        offer(nearest, mark.name, "left", mark.left_mm, host.u_mm, width_mm);
        offer(nearest, mark.name, "right", mark.right_mm, host.u_mm, width_mm);
    }
    return nearest;
}

std::optional<NearestPlate> nearestPlate(const plan::Plan& plan, const std::string& room_id,
                                         const plan::Host& host, const std::string& except) {
    std::optional<NearestPlate> nearest;
    for (const plan::Plate& plate : plan.plates) {
        if (plate.room != room_id || plate.id == except || !detail::sameHost(plate.host, host)) continue;
        const double along = host.u_mm - plate.host.u_mm;
        const double height = host.v_mm - plate.host.v_mm;
        const double distance = std::hypot(along, height);
        if (nearest && nearest->distance_mm <= distance) continue;
        nearest = NearestPlate{plate.id, detail::nameOf(plate), along, height, distance};
    }
    return nearest;
}

} // namespace

std::expected<Distances, std::string> distances(const geometry::HouseIndex& house, const std::string& room_id,
                                                const plan::Host& host, plan::Vec2 plate_size_mm,
                                                const std::string& except_plate) {
    const auto frame = geometry::hostFrame(house, room_id, host);
    if (!frame) return std::unexpected(frame.error());
    Distances found;
    found.left_mm = host.u_mm;
    found.right_mm = frame->length_mm - host.u_mm;
    if (detail::isUpright(*frame)) {
        found.floor_mm = host.v_mm;
        const plan::Vec3 at = geometry::toHouse(*frame, {host.u_mm, 0, 0});
        if (const plan::Room* room = house.room(room_id))
            found.ceiling_mm = geometry::ceilingHeightAt(*room, {at.x, at.y}) - host.v_mm;
    }
    if (host.kind == plan::Host::Kind::Wall) found.edge = nearestEdge(house, room_id, host, plate_size_mm.x);
    found.plate = nearestPlate(house.plan(), room_id, host, except_plate);
    return found;
}

} // namespace gangway::edit
