// Luminaires by kind as simple bodies, and the light each gives. Inside scene only.
#pragma once

#include "plan/plan.hpp"
#include "scene/object_parts.hpp"
#include "scene/solids.hpp"

namespace gangway::scene::detail {

/// Where a luminaire shines from, in the local frame of its host (x, y on the surface, z out of it), mm.
struct LightPoint {
    Vec3 at;
    Vec3 direction{0, 0, 1};
    double beam_deg = 0; ///< full angle; 0: all round
};

/// Adds the body, standing on the placement's origin with z out of the host's surface, and says where its
/// light is: just outside the body, so that the body does not shade its own light; inside open shades, which
/// are meant to.
LightPoint addLuminaire(ObjectParts& parts, const plan::Luminaire& luminaire, const Placement& placement);

} // namespace gangway::scene::detail
