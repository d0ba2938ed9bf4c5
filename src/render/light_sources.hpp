// Lamps and windows as the lamp pass wants them.
#pragma once

#include "render/part_index.hpp"
#include "render/renderer.hpp"

#include <vector>

namespace gangway::render {

struct LightSource {
    glm::vec3 position{0};
    glm::vec3 direction{0, -1, 0};
    glm::vec3 colour{1};    ///< light on a surface facing the source at 1 m, in the picture's units
    glm::vec2 beam{-3, -2}; ///< cosines: where the beam ends, and where it begins to fall off
    bool pane = false;      ///< a window: shines with the cosine of the angle to its front
    float soft_size_m2 = 0.02f;
    float reach_m = 8; ///< further away it adds nothing one could see
    int room = 0;      ///< number in the part index; a window lights only this room
    int storey = 0;
    std::string luminaire; ///< empty: a window
};

/// Lamps in the scene's order, then one source a window.
std::vector<LightSource> lightSources(const scene::Scene& scene, const PartIndex& index);

/// The part of its light that a source gives in a view: for a window that of the daylight, 0 to 1; for a
/// lamp its level, and more as the daylight goes and the eye gets used to the dusk, up to kUsedToDusk.
float levelOf(const LightSource& source, const View& view);
inline constexpr float kUsedToDusk = 2.0f;
/// A source's colour times its level; in the evening less warm than by day, since the eye takes lamplight
/// for white when there is no daylight beside it.
glm::vec3 shownLight(const LightSource& source, const View& view);

/// For each part the level of the lamp it belongs to when it glows, else 1.
std::vector<float> litParts(const scene::Scene& scene, const View& view);

} // namespace gangway::render
