// One plate on a piece of wall, to be turned and looked at from near: the picture of the plate bench.
#pragma once

#include "catalogue/catalogue.hpp"
#include "scene/scene.hpp"

namespace gangway::scene {

/// The preview stands this many times larger than life in the scene, because the renderer's ink, occlusion
/// and shadows are made for things of furniture's size.
inline constexpr float kPreviewScale = 10;

/// The plate's centre on the wall's face is the scene's origin; x right, y up, z out of the wall. The plate's
/// parts carry its id, the wall's the object "wall". `wall_colour` is "#RRGGBB"; empty: as rooms have it. Lit
/// by the sun from the upper left and a lamp from the right.
[[nodiscard]] Scene platePreview(const catalogue::Catalogue& catalogue, const plan::Plate& plate,
                                 const std::string& wall_colour = {});

/// Looks at the middle of a plate of that size (catalogue::ComposedPlate) so that it just fills a picture of
/// this aspect (width / height), with some wall round it. Yaw 0 and pitch 0: square to it; positive yaw shows
/// its right edge, positive pitch its upper edge. Radians, each within 1.4 of 0.
[[nodiscard]] Camera plateCamera(double width_mm, double height_mm, float yaw, float pitch, float aspect);

/// A point of the preview as mm from the plate's centre: x right, y up, z out of the wall.
plan::Vec3 toPlate(glm::vec3 preview_m);

} // namespace gangway::scene
