#include "scene/touch.hpp"

#include "geometry/host_at.hpp"
#include "scene/drawn_objects.hpp"

namespace gangway::scene {

std::optional<plan::Host> hostAt(const geometry::HouseIndex& house, const Touch& touch) {
    if (glm::length(touch.normal) <= 0) return std::nullopt;
    const plan::Furniture* piece = house.furniture(touch.furniture);
    if (!touch.furniture.empty() && piece == nullptr) return std::nullopt;
    plan::Vec3 point_mm = toHouse(touch.point);
    point_mm.z -= detail::elevationOf(house, piece != nullptr ? piece->room : touch.room);
    const plan::Vec3 normal = toHouse(touch.normal);
    return piece != nullptr ? geometry::furnitureHostAt(*piece, point_mm, normal)
                            : geometry::hostAt(house, touch.room, point_mm, normal);
}

} // namespace gangway::scene
