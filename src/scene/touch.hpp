// From what is pointed at on the stage to what a plate would be mounted on there.
#pragma once

#include "geometry/house_index.hpp"
#include "scene/scene.hpp"

#include <optional>

namespace gangway::scene {

/// A place on a surface of the stage, as the renderer's pick gives it.
struct Touch {
    std::string room;
    std::string furniture; ///< id of the piece that was hit; empty: the room itself
    glm::vec3 point{0};    ///< metres
    glm::vec3 normal{0};   ///< out of the surface
};

/// geometry::hostAt or furnitureHostAt of the place; nullopt where nothing can be mounted.
std::optional<plan::Host> hostAt(const geometry::HouseIndex& house, const Touch& touch);

} // namespace gangway::scene
