#include "scene/scene.hpp"

#include "geometry/house_index.hpp"
#include "scene/building_parts.hpp"
#include "scene/drawn_objects.hpp"

namespace gangway::scene {

Scene build(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
            const std::filesystem::path& base) {
    Scene scene;
    const geometry::HouseIndex house(plan);
    for (const plan::Room& room : plan.rooms)
        detail::addRoom(scene, house, room, detail::elevationOf(house, room.id));
    for (const plan::Furniture& piece : plan.furniture)
        detail::drawFurniture(scene, house, piece, base);
    for (const plan::Plate& plate : plan.plates)
        detail::drawPlate(scene, house, catalogue, plate);
    for (const plan::Luminaire& luminaire : plan.luminaires)
        detail::drawLuminaire(scene, house, luminaire);
    return scene;
}

} // namespace gangway::scene
