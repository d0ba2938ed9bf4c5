// Which way of a switch a finger on its plate works.
#pragma once

#include "catalogue/catalogue.hpp"
#include "geometry/house_index.hpp"

#include <glm/glm.hpp>

#include <optional>
#include <vector>

namespace gangway::scene {

/// Where a way is worked on its plate's front: a box in mm from the plate's centre, x right, y up as seen
/// from the room.
struct Rocker {
    plan::WayRef way;
    plan::Vec2 centre_mm;
    double width_mm = 0;
    double height_mm = 0;
};

/// The rockers, knobs and keys of a plate, module by module, and within a module from the left, then from the
/// top. A front with twice or three times as many as the module has ways gives two or three to each in that
/// order. Any other number: the box round them is shared out in equal parts, side by side or one above the
/// other as they lie; with none on the front its whole face is, side by side.
[[nodiscard]] std::vector<Rocker> rockersOf(const catalogue::Catalogue& catalogue, const plan::Plate& plate);
/// The way at a point of the plate's front, as rockersOf gives it; empty beside them.
[[nodiscard]] std::optional<plan::WayRef> rockerAt(const catalogue::Catalogue& catalogue,
                                                   const plan::Plate& plate, plan::Vec2 at_mm);
/// The same for a point of the scene (metres), as picking gives it.
[[nodiscard]] std::optional<plan::WayRef> rockerAt(const geometry::HouseIndex& house,
                                                   const catalogue::Catalogue& catalogue,
                                                   const plan::Plate& plate, glm::vec3 point_m);
/// Where a point of a plate's front is in the scene (metres); empty when its host is missing.
[[nodiscard]] std::optional<glm::vec3> onPlate(const geometry::HouseIndex& house, const plan::Plate& plate,
                                               plan::Vec2 at_mm);

} // namespace gangway::scene
