// Which parts a view shows, and how: solid, see-through, or as a cap of a cut wall. The same answer
// serves drawing, shadows and picking.
#pragma once

#include "render/part_index.hpp"
#include "render/renderer.hpp"

#include <vector>

namespace gangway::render {

enum class Shown : std::uint8_t {
    No,
    Solid,
    Ghost,     ///< faded, to show what is behind
    Glass,     ///< translucent by its material
    FloorLine, ///< the cap of a wall cut away in the lid-off view, laid down on the floor
};

/// One answer a part, without looking at where the camera points.
std::vector<Shown> shownParts(const PartIndex& index, const View& view);

/// Six planes of a view-projection matrix, a point inside has dot(xyz, p) + w >= 0.
/// Gribb and Hartmann, Fast Extraction of Viewing Frustum Planes (2001).
class Frustum {
public:
    explicit Frustum(const glm::mat4& view_projection);
    bool touches(glm::vec3 low, glm::vec3 high) const;

private:
    std::array<glm::vec4, 6> planes_;
};

} // namespace gangway::render
