// How large plugs and power blocks are, by kind and type, and which of a country pack's limits says how deep.
#pragma once

#include "plan/plan.hpp"

#include <string>

namespace gangway::catalogue {

/// A plug's body as it is seen square to the plate, about the middle of the outlet's pins. How far it stands
/// out is the country pack's.
struct PlugShape {
    double width_mm = 0;
    double height_mm = 0;
    double corner_mm = 0;
    double top_part = 1; ///< width at the top, as a part of the width at the bottom
    double cord_mm = 0;  ///< diameter
    /// Where the cord leaves: out of the end away from the plate, or down out of the lower side.
    enum class Cord { Behind, Below };
    Cord cord = Cord::Behind;
    const char* source = "";
};

/// `type`: the letter of IEC TR 60083; any other word gives a plug of middling size.
PlugShape plugShape(plan::Device::Plug kind, const std::string& type);

/// Id of the country pack's limit for the free depth that a plug needs: "plugStraight".
const char* plugLimit(plan::Device::Plug kind);

} // namespace gangway::catalogue
