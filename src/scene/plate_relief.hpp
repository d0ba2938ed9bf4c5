// A composed plate as a body in relief: frame with a bevelled edge, modules with wells, pins, rockers and
// knobs. Inside scene only.
#pragma once

#include "catalogue/catalogue.hpp"
#include "scene/object_parts.hpp"
#include "scene/solids.hpp"

namespace gangway::scene::detail {

/// Adds the plate, centred on the placement's origin: x right, y up, z out of the host's surface. Recesses
/// deeper than the frame stands out are drawn shallower in proportion, because the host's surface is not cut
/// behind a plate.
void addPlate(ObjectParts& parts, const catalogue::Catalogue& catalogue,
              const catalogue::ComposedPlate& plate, const Placement& placement);

} // namespace gangway::scene::detail
